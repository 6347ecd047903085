#include "core/glue/adhesive.hpp"

#include <cmath>

#include "core/glue/ratio.hpp"
#include "core/units/display.hpp"
#include "core/units/input_error.hpp"

namespace fayline::glue {

Adhesive::Adhesive() = default;
Adhesive::Adhesive(const Adhesive& other) = default;
Adhesive::Adhesive(Adhesive&& other) noexcept = default;
Adhesive& Adhesive::operator=(const Adhesive& other) = default;
Adhesive& Adhesive::operator=(Adhesive&& other) noexcept = default;
Adhesive::~Adhesive() = default;

double Adhesive::mixDensity_kg_m3() const {
    const double first = firstByWeight();
    return 1 / (first / density_kg_m3[0] + (1 - first) / density_kg_m3[1]);
}

Adhesive ownAdhesive(const model::OwnAdhesive& own) {
    const units::Source source = own.source.empty() ? units::Source{"the user's own value", units::Mark::commonPractice}
                                                    : units::Source{own.source, units::Mark::fromMemory};
    Adhesive adhesive;
    adhesive.id = own.id;
    adhesive.name = adhesive.family = own.name.empty() ? own.id : own.name;
    adhesive.kind = own.kind;
    adhesive.partsByVolume = own.partsByVolume;
    adhesive.partsByWeight = own.partsByWeight;
    if (own.partsByVolume[1] > 0) {
        adhesive.mix = units::writeNumber(own.partsByVolume[0] / own.partsByVolume[1]) + ":1";
    }
    adhesive.density_kg_m3 = own.density_kg_m3;
    adhesive.potLives.push_back({own.potLife_s, own.potLifeAt_C, own.potLifeMass_kg});
    for (const model::PotLife& more : own.morePotLives) {
        adhesive.potLives.push_back({more.lasts_s, more.at_C, more.mass_kg});
    }
    adhesive.openTime_s = own.openTime_s;
    adhesive.openTimeAt_C = own.openTimeAt_C;
    adhesive.least_C = own.least_C;
    adhesive.handling_s = own.handling_s;
    adhesive.fullCure_s = own.fullCure_s;
    adhesive.cureAt_C = own.cureAt_C;
    adhesive.spread_kg_m2 = own.spread_kg_m2;
    adhesive.ratioSource = adhesive.densitySource = adhesive.potLifeSource = adhesive.openTimeSource = source;
    adhesive.leastSource = adhesive.cureSource = adhesive.spreadSource = source;
    adhesive.own = true;
    return adhesive;
}

const Adhesive* nearestOf(const std::vector<Adhesive>& adhesives, std::string_view family, std::string_view mix,
                          std::string_view speed) {
    const Adhesive* best = nullptr;
    int bestAlike = -1;
    for (const Adhesive& one : adhesives) {
        const int alike = 2 * (one.mix == mix) + (one.speed == speed);
        if (one.family != family || alike <= bestAlike) continue;
        best = &one;
        bestAlike = alike;
    }
    return best;
}

const Adhesive* findAdhesive(const std::vector<Adhesive>& adhesives, std::string_view id) {
    for (const Adhesive& one : adhesives) {
        if (one.id == id) return &one;
    }
    return nullptr;
}

void checkRatios(const Adhesive& adhesive, const std::string& path) {
    const auto check = [&](const std::array<double, 2>& parts, const char* key) {
        const bool onePart = adhesive.kind == model::AdhesiveKind::polyurethane && parts[1] == 0;
        if (!(parts[0] > 0) || (!(parts[1] > 0) && !onePart)) {
            throw units::InputError(path + "." + key, "a part of nothing cannot be mixed",
                                    "give both parts above 0, as [2, 1]; a one-part polyurethane as [1, 0]");
        }
    };
    check(adhesive.partsByVolume, "parts_by_volume");
    check(adhesive.partsByWeight, "parts_by_weight");
    const auto& density = adhesive.density_kg_m3;
    if ((adhesive.partsByVolume[1] == 0) != (adhesive.partsByWeight[1] == 0)) {
        throw units::InputError(path + ".parts_by_weight", "has a second part where parts_by_volume has none",
                                "give both ratios of the same two parts");
    }
    if (adhesive.onePart()) return;
    const double byVolume =
        adhesive.partsByVolume[0] * density[0] / (adhesive.partsByVolume[1] * density[1]);  // as masses
    const double byWeight = adhesive.partsByWeight[0] / adhesive.partsByWeight[1];
    if (std::abs(std::log(byVolume / byWeight)) > std::log1p(ratiosAgreeWithin)) {
        throw units::InputError(path + ".parts_by_weight",
                                "contradicts parts_by_volume: by the densities the ratio by volume weighs " +
                                    units::writeNumber(byVolume, 4) + " to 1, not " + units::writeNumber(byWeight, 4),
                                "give ratios and densities from one data sheet");
    }
}

}  // namespace fayline::glue
