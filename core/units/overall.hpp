// The length of a whole piece, as it is said aloud: coarse enough to be compared at a glance.
#pragma once

#include <string>

#include "core/units/length.hpp"

namespace fayline::units {

// "16 ft 0 in", "406 ft" from 100 ft on, "7 1/2 in" below a foot; where lengths are in millimetres "4.88 m", "124 m"
// from 100 m on, "488 mm" below a metre. Not finite: a dash.
std::string writeOverall(double length_m, LengthNotation notation);

}  // namespace fayline::units
