// Numbers as text, the same in every country's settings: a point for the decimals, no grouping, no exponent.
#pragma once

#include <string>

namespace fayline::units {

// What stands where a number that is not finite would.
inline constexpr const char* noFigure = "\u2013";

// `value` with exactly `decimals` figures after the point, halves away from zero; no sign when it rounds to zero.
std::string fixedFigures(double value, int decimals);

// The same without trailing zeros: 698.5, 698.
std::string upToDecimals(double value, int decimals);

// Inches as a whole number and fraction in lowest terms where `inches` is within `within` (in) of a 64th
// ("27 1/2", "-3/8", "0"), else with three decimals.
std::string inchFigures(double inches, double within);

}  // namespace fayline::units
