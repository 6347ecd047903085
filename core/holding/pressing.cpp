#include "core/holding/pressing.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/holding/held.hpp"
#include "core/holding/loose_stack.hpp"
#include "core/laminate/layers.hpp"
#include "core/units/units.hpp"

namespace fayline::holding {

namespace {

using units::Mark;

constexpr double unlimited = std::numeric_limits<double>::infinity();

double over(double above, double below) {
    if (!(above > 0)) return 0;
    return below > 0 ? above / below : unlimited;
}

// What lies above the outermost glue line that stays, and how stiff it is.
void setAbove(PadReach& reach, const model::Stack& stack, const LooseStack& loose, double at_m) {
    const std::vector<const LooseStrip*> there = stripsThere(loose, at_m);
    if (there.empty()) return;
    const auto isSacrificial = [&](const LooseStrip* strip) { return stack.strips[strip->layer.group].sacrificial; };
    const auto stays = std::find_if_not(there.rbegin(), there.rend(), isSacrificial);
    const std::size_t lowest =
        stays == there.rend() ? there.size() - 1 : static_cast<std::size_t>(there.rend() - stays - 1);
    const double width = sectionAt(loose, at_m).width_m;
    reach.strips_m = there.back()->layer.outer.at(at_m) - there[lowest]->layer.inner.at(at_m);
    for (std::size_t i = lowest; i < there.size(); ++i) {
        const double t = there[i]->layer.thicknessAt(at_m);
        reach.strips_N_m2 += there[i]->modulus_Pa * width * t * t * t / 12;
    }
    reach.caulModulus_N_m = there.back()->modulus_Pa * width;
}

}  // namespace

double pressureForFilm(double yield_Pa, double width_m, double film_m) {
    return over(std::max(0.0, yield_Pa) * std::max(0.0, width_m), 2 * film_m);
}

double spreadLength(double pad_m, double above_m) {
    return std::max(0.0, pad_m) + 2 * std::max(0.0, above_m);
}

WantedPressure wantedPressure(model::AdhesiveKind kind, bool hardwood) {
    const auto psi = [](double least, double most, bool contact, const char* source) {
        return WantedPressure{least * units::psi_Pa, most * units::psi_Pa, contact, {source, Mark::fromMemory}};
    };
    switch (kind) {
        case model::AdhesiveKind::epoxy:
            return psi(5, 25, true, "data sheets of thickened epoxies: contact is enough");
        case model::AdhesiveKind::polyurethane:
            return psi(100, 200, false, "data sheets of moisture-curing polyurethanes");
        case model::AdhesiveKind::urea:
            return psi(hardwood ? 150 : 125, hardwood ? 200 : 150, false,
                       "Selbo, Adhesive bonding of wood, USDA TB 1512: urea as resorcinol");
        case model::AdhesiveKind::resorcinol:
            break;
    }
    return psi(hardwood ? 150 : 125, hardwood ? 200 : 150, false, "FAA AC 43.13-1B chapter 1, resorcinol");
}

double spanForRise(double stiffness_N_m2, double push_N_m, double rise_m) {
    return std::pow(over(384 * std::max(0.0, stiffness_N_m2) * std::max(0.0, rise_m), std::max(0.0, push_N_m)), 0.25);
}

double PadReach::byStrength_m() const {
    return push_N_m > 0 ? std::max(0.0, most_N) / push_N_m : unlimited;
}

double PadReach::spacing_m() const {
    return push_N_m > 0 ? std::min(byStrength_m(), std::max(span_m(), spread_m())) : unlimited;
}

PressingNeed pressingNeed(const StackOnForm& work, const LooseStack& loose, double at_m, double pad_m, double most_N) {
    const model::Piece& piece = work.piece;
    const double width = laminate::ripWidthAt(piece.stack, at_m);
    const double film = piece.stack.glueLine_m;
    const double least_Pa = work.wanted.asked_Pa();
    const double byPaste = film > 0 ? pressureForFilm(piece.glue.pasteYield_Pa, width, film) : 0;
    PressingNeed need{.pressure_Pa = std::max(byPaste, least_Pa), .byGlue = least_Pa > byPaste};
    need.pad.pad_m = pad_m;
    need.pad.most_N = most_N;
    need.pad.push_N_m = need.pressure_Pa * width;
    need.pad.varies_m = piece.holding.glueLineVaries_m.value_or(film);
    need.pad.caul_m = std::max(0.0, piece.holding.cauls.thickness_m);
    setAbove(need.pad, piece.stack, loose, at_m);
    need.spacing_m = need.pad.spacing_m();
    PadReach thinner = need.pad;
    thinner.push_N_m = std::max(byPaste / 2, least_Pa) * width;
    need.thinnerSpacing_m = thinner.spacing_m();
    need.isWish = work.wanted.contactIsEnough;
    need.by = need.pad.byStrength_m() < std::max(need.pad.span_m(), need.pad.spread_m()) ? SpacedBy::strength
              : need.pad.span_m() >= need.pad.spread_m()                                 ? SpacedBy::stiffness
                                                                                         : SpacedBy::spread;
    need.source = need.byGlue ? work.wanted.source
                              : units::Source{
                                    "paste between plates, loose strips built in over the pads (derived); what a paste "
                                    "of filled epoxy yields at is not published (looked for), nor are the 45 degrees "
                                    "below a pad: common practice",
                                    Mark::commonPractice};
    return need;
}

PressingNeed pressingNeed(const StackOnForm& work, double at_m, double pad_m, double most_N) {
    const model::Piece& piece = work.piece;
    return pressingNeed(work, looseStack(piece.stack, piece.line.describes, work.line.length(), work.species), at_m,
                        pad_m, most_N);
}

}  // namespace fayline::holding
