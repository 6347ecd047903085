// Measures of boards and scarfs.
#pragma once

#include <optional>

#include "core/units/source.hpp"

namespace fayline::stock {

// One board foot: 144 cubic inches (D).
inline constexpr double boardFoot_m3 = 144 * 0.0254 * 0.0254 * 0.0254;

// Strips that a board gives across: floor((width + kerf) / (strip as sawn + kerf)), D. Arguments in metres, > 0.
int stripsAcross(double width_m, double sawn_m, double kerf_m);

// What a scarf of 1 in `slope` takes of a strip, metres: each scarf adds as much to the wood (D).
double scarfLength_m(double slope, double thickness_m);

// Its glue area, square metres: width * thickness * sqrt(1 + slope^2) (D).
double scarfArea_m2(double slope, double thickness_m, double width_m);

// Strength over that of clear wood in tension: 0.90 from 1 in 12 on, 0.85 at 10, 0.80 at 8, 0.65 at 5, linear between;
// none below 5, where the table ends. Source: Freas and Selbo, USDA Technical Bulletin 1069, 1954 (M).
std::optional<double> scarfStrength(double slope);
units::Source scarfStrengthSource();

}  // namespace fayline::stock
