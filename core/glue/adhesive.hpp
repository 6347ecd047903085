// The glues: what their data sheets say, each value with its source and mark.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/boat.hpp"
#include "core/units/source.hpp"

namespace fayline::glue {

// How long a mix of this mass stays usable in its cup, in air of this temperature.
struct PotLifePoint {
    double lasts_s = 0;
    double at_C = 0;
    double mass_kg = 0;

    bool operator==(const PotLifePoint&) const = default;
};

struct Adhesive {
    Adhesive();
    Adhesive(const Adhesive& other);
    Adhesive(Adhesive&& other) noexcept;
    Adhesive& operator=(const Adhesive& other);
    Adhesive& operator=(Adhesive&& other) noexcept;
    ~Adhesive();

    std::string id;
    std::string name;
    std::string family;  // what it is called but for these two; a family that comes in one mix and speed has none
    std::string mix;     // "2:1"
    std::string speed;   // "about 25 min": its pot life as the data sheet measures it
    model::AdhesiveKind kind = model::AdhesiveKind::epoxy;
    std::array<double, 2> partsByVolume{};  // first and second part (resin, hardener); the second 0: one part
    std::array<double, 2> partsByWeight{};
    std::array<double, 2> density_kg_m3{};
    std::vector<PotLifePoint> potLives;  // one or more
    double openTime_s = 0;               // of a spread film
    double openTimeAt_C = 0;
    double least_C = 0;     // below it the glue is not to be used
    double handling_s = 0;  // clamps may come off
    double fullCure_s = 0;
    double cureAt_C = 0;
    double spread_kg_m2 = 0;
    units::Source ratioSource;
    units::Source densitySource;
    units::Source potLifeSource;
    units::Source openTimeSource;
    units::Source leastSource;
    units::Source cureSource;
    units::Source spreadSource;
    std::string warning;  // what a user should know of it; empty: nothing
    bool own = false;     // the user's own

    bool onePart() const { return partsByWeight[1] == 0; }
    // Share of the mass that is the first part, and of the volume.
    double firstByWeight() const { return partsByWeight[0] / (partsByWeight[0] + partsByWeight[1]); }
    // Of the mix before it cures, from the masses.
    double mixDensity_kg_m3() const;

    bool operator==(const Adhesive&) const = default;
};

// Ratios by weight and by volume may differ from what the densities say by so much: data sheets round both.
inline constexpr double ratiosAgreeWithin = 0.10;

// The glues of resources/adhesives.json, built into the program, in the order of the file.
const std::vector<Adhesive>& builtInAdhesives();

// The glues in the text of an adhesive file (the format of resources/adhesives.json), in its order. Throws InputError
// with a path ("adhesives[2].pot_life_min") for text that is not JSON, unknown or missing keys, impossible values, two
// glues with one id.
std::vector<Adhesive> readAdhesives(std::string_view text);

// A glue of the user's own file. Its values come from what the user wrote as source, marked as from memory since nobody
// here has read it; without one "the user's own value", marked as common practice. Nothing is checked: see planGlue.
Adhesive ownAdhesive(const model::OwnAdhesive& own);

// The glue of a family in that mix and speed, or in what of them it comes in. Null: there is no such family.
const Adhesive* nearestOf(const std::vector<Adhesive>& adhesives, std::string_view family, std::string_view mix,
                          std::string_view speed);

const Adhesive* findAdhesive(const std::vector<Adhesive>& adhesives, std::string_view id);

}  // namespace fayline::glue
