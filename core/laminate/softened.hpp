// Strips that are soaked, steamed or boiled, bent over the form without glue, and dried there.
//
// They are bent twice. Softened, they take the whole curve: hot, wet wood stretches further before it breaks, and has
// its own limit. Dried on the form they keep the share `set` of the curve; bent again with glue on them only the rest
// strains them, and that is dry wood with the dry limit (Strip::strain).
//
// Least radii that are published for steamed wood (2.5 times the thickness for beech, 4 for oak) hold with a steel
// strap along the outside that keeps the wood from stretching at all. They are used for nothing here: without a strap
// the outside tears long before, and dry strips never come near.
#pragma once

#include <optional>

#include "core/model/boat.hpp"
#include "core/units/source.hpp"

namespace fayline::laminate {

// Mean surface strain at which a softened strip tears on its outside, bent without a strap; lowered for the slope of
// grain by the factor of bending strength. Assumed while it is bent: heated through to 100 C, wet to 33 %.
// Only soaked: none, since no figure was found by which cold wet wood stretches further; the dry limit stands for it.
// Source: 2 % of strain in tension, read on a page about bending wood that names none itself (P), against 1 % at 17 %
// moisture and room temperature there.
std::optional<units::Cited> hotBreakingStrain(model::Softened how, double grainSlope);

// Moisture from which wood is glued with epoxy, and that of wet wood when all that is bound in it is bound (Wood
// Handbook, M).
inline constexpr double glueBelow = 0.12;
inline constexpr double wetThrough = 0.30;

struct Drying {
    bool reaches = true;     // false: in this air it never comes to 12 %
    double airMoisture = 0;  // to which wood comes in it
    double shortest_s = 0;   // both faces open to the air, quick wood
    double longest_s = 0;    // one face on the form, slow wood
    units::Source source;
};

// How long a strip of this thickness takes from wet through to 12 % in the mean, in air of `air_C` and `humidity`.
//
// Water moves across the grain by diffusion, D = 1e-10 (dense hardwood) to 4e-10 m2/s (light softwood) at about 20 C
// (from memory of books on water in wood, M); of the moisture above that of the air a sheet with both faces open still
// holds 8 / pi^2 exp(-pi^2 D time / t^2), good within 0.2 % where two fifths or less are left. One face closed: as
// twice the thickness. An estimate within a factor of two or three: air that stands, ends, free water in the pores and
// a pile without air between make it longer.
//   (1) twice the thickness: four times as long
// Throws InputError for air that wood::equilibriumMoisture refuses.
Drying dryingTime(double thickness_m, double air_C, double humidity);

}  // namespace fayline::laminate
