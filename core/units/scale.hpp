// Forces and masses as hands know them: what a bathroom scale shows.
#pragma once

#include <string>

#include "core/units/display.hpp"

namespace fayline::units {

inline constexpr double standardGravity_m_s2 = 9.80665;  // exact by definition

// The mass that weighs `force_N` under standard gravity, kilograms. Real gravity is within 0.3 % of that everywhere.
double massThatWeighs(double force_N);

// A mass as a scale for people shows it, to half a kilogram or a pound: "86.5 kg", "191 lb" where small weights are
// read in ounces; below a kilogram to a tenth. Not finite: a dash.
std::string writeOnScale(double mass_kg, const Display& display);

}  // namespace fayline::units
