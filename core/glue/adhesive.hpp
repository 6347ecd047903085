// The glues: what their data sheets say, each value with its source and mark.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/boat/boat.hpp"
#include "core/measure/source.hpp"

namespace fayline::glue {

// How long a mix of this mass stays usable in its cup, in air of this temperature.
struct PotLifePoint {
    double lasts_s = 0;
    double at_C = 0;
    double mass_kg = 0;
};

struct Adhesive {
    std::string id;
    std::string name;
    boat::AdhesiveKind kind = boat::AdhesiveKind::epoxy;
    std::array<double, 2> partsByVolume{};  // resin, hardener
    std::array<double, 2> partsByWeight{};
    std::array<double, 2> density_kg_m3{};
    std::vector<PotLifePoint> potLives;  // one or more
    double openTime_s = 0;               // of a spread film
    double openTimeAt_C = 0;
    double least_C = 0;  // the hardener's lowest temperature
    double handling_s = 0;
    double fullCure_s = 0;
    double cureAt_C = 0;
    double spread_kg_m2 = 0;
    measure::Source source;  // of the whole row
    std::string warning;     // what a user should know of it; empty: nothing
    bool own = false;        // the user's own
};

// The glues of resources/adhesives.json, built into the program, in the order of the file.
const std::vector<Adhesive>& builtInAdhesives();

// As readSpecies does for woods. Throws InputError with a path ("adhesives[2].pot_life_min").
std::vector<Adhesive> readAdhesives(std::string_view text);

// A glue of the user's own file. Throws InputError (`adhesives[i].parts_by_weight: ...` from `path` on) for a ratio of
// nothing, ratios by weight and by volume that the densities contradict by more than a tenth, and the like.
Adhesive ownAdhesive(const boat::OwnAdhesive& own, const std::string& path);

const Adhesive* findAdhesive(const std::vector<Adhesive>& adhesives, std::string_view id);

}  // namespace fayline::glue
