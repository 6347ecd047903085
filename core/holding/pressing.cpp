#include "core/holding/pressing.hpp"

#include <algorithm>
#include <limits>

#include "core/holding/held.hpp"
#include "core/measure/units.hpp"
#include "core/stack/layers.hpp"

namespace fayline::holding {

namespace {

using measure::Mark;

constexpr double infinite = std::numeric_limits<double>::infinity();

double over(double above, double below) {
    if (!(above > 0)) return 0;
    return below > 0 ? above / below : infinite;
}

// Wood between the outermost glue line that stays and the outside of the stack at `at_m`, metres.
double woodAbove(const boat::Stack& stack, boat::Describes describes, double lineLength_m, double at_m) {
    const std::vector<stack::Layer> layers = stack::layers(stack, describes, lineLength_m);
    const stack::Layer* outermost = nullptr;
    const stack::Layer* stays = nullptr;
    for (const stack::Layer& layer : layers) {
        if (!stack::runsOf(stack, layers, layer.place, lineLength_m).bent.holds(at_m)) continue;
        outermost = &layer;
        if (!stack.strips[static_cast<std::size_t>(layer.group)].sacrificial) stays = &layer;
    }
    if (!outermost) return 0;
    if (!stays) stays = outermost;
    return outermost->outer.at(at_m) - stays->inner.at(at_m);
}

}  // namespace

double pressureForFilm(double yield_Pa, double width_m, double film_m) {
    return over(std::max(0.0, yield_Pa) * std::max(0.0, width_m), 2 * film_m);
}

double filmUnderPressure(double yield_Pa, double width_m, double pressure_Pa) {
    return over(std::max(0.0, yield_Pa) * std::max(0.0, width_m), 2 * pressure_Pa);
}

double pressureToThin(double viscosity_Pa_s, double width_m, double film_m, double thinning_m_s) {
    if (!(viscosity_Pa_s > 0 && thinning_m_s > 0)) return 0;
    const double slender = over(width_m, film_m);
    return viscosity_Pa_s * slender * slender * over(thinning_m_s, film_m);
}

double timeToThin(double viscosity_Pa_s, double width_m, double from_m, double to_m, double pressure_Pa) {
    if (!(viscosity_Pa_s > 0 && from_m > to_m && width_m > 0)) return 0;
    if (!(to_m > 0)) return infinite;
    const double before = width_m / from_m;
    const double after = width_m / to_m;
    return over(viscosity_Pa_s * (after * after - before * before), 2 * pressure_Pa);
}

double spreadLength(double pad_m, double above_m) {
    return std::max(0.0, pad_m) + 2 * std::max(0.0, above_m);
}

WantedPressure wantedPressure(boat::AdhesiveKind kind, bool hardwood) {
    const auto psi = [](double least, double most, bool contact, const char* source) {
        return WantedPressure{least * measure::psi_Pa, most * measure::psi_Pa, contact, {source, Mark::fromMemory}};
    };
    switch (kind) {
        case boat::AdhesiveKind::epoxy:
            return psi(5, 25, true, "data sheets of thickened epoxies: contact is enough");
        case boat::AdhesiveKind::polyurethane:
            return psi(100, 200, false, "data sheets of moisture-curing polyurethanes");
        case boat::AdhesiveKind::urea:
            return psi(hardwood ? 150 : 125, hardwood ? 200 : 150, false,
                       "Selbo, Adhesive bonding of wood, USDA TB 1512: urea as resorcinol");
        case boat::AdhesiveKind::resorcinol:
            break;
    }
    return psi(hardwood ? 150 : 125, hardwood ? 200 : 150, false, "FAA AC 43.13-1B chapter 1, resorcinol");
}

PressingNeed pressingNeed(const boat::Piece& piece, const line::Line& line, double at_m, double pad_m, double most_N,
                          double least_Pa) {
    const double width = stack::ripWidthAt(piece.stack, at_m);
    const double film = piece.stack.glueLine_m;
    const double byPaste = film > 0 ? pressureForFilm(piece.glue.pasteYield_Pa, width, film) : 0;
    PressingNeed need;
    need.byGlue = least_Pa > byPaste;
    need.pressure_Pa = std::max(byPaste, least_Pa);
    need.pull_N_m = need.pressure_Pa * width;
    need.above_m = woodAbove(piece.stack, piece.line.describes, line.length(), at_m) +
                   std::max(0.0, piece.holding.cauls.thickness_m);
    need.spread_m = spreadLength(pad_m, need.above_m);
    need.source = need.byGlue ? measure::Source{"what the glue's maker or a standard asks for", Mark::fromMemory}
                              : measure::Source{
                                    "paste between plates, spread at 45 degrees through the wood above "
                                    "(derived; the spread is common practice, no source)",
                                    Mark::commonPractice};
    if (!(need.pull_N_m > 0)) {
        need.spacing_m = infinite;
        return need;
    }
    const double byStrength = std::max(0.0, most_N) / need.pull_N_m;
    need.bySpread = need.spread_m <= byStrength;
    need.spacing_m = std::min(need.spread_m, byStrength);
    return need;
}

PressingNeed pressingNeed(const StackOnForm& work, double at_m, double pad_m, double most_N) {
    PressingNeed need = pressingNeed(work.piece, work.line, at_m, pad_m, most_N, work.wanted.asked_Pa());
    if (need.byGlue) need.source = work.wanted.source;
    return need;
}

}  // namespace fayline::holding
