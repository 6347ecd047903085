// Lengths as the trade writes them.
#pragma once

#include <string>
#include <string_view>

#include "core/measure/input_error.hpp"

namespace fayline::measure {

enum class LengthNotation {
    feetInchesEighths,  // 2-3-4+: 2 ft 3 4/8 in and a sixteenth more; - takes a sixteenth off
    inches,             // 27 1/2
    millimetres,        // 698.5
};

// The length written as `text`, in metres.
//
// Reads, whatever `assumed` is: 2-3-4, 2-3-4+, 2-3-4-, 2'-3 1/2", 2' 3", 27 1/2 in, 27.5 in, 27 1/2", 698.5 mm,
// 698,5 mm, 0.6985 m, 69.85 cm, each with a minus sign before it for a negative length. `assumed` decides only what a
// bare number means: 27 1/2 (a fraction is always inches), 27.5 and 698.5 are inches in feetInchesEighths and inches, else millimetres.
// A decimal comma is read like a point. Blank space around and between parts does not matter.
//
// Throws InputError with an empty path; wrong() names the part that is wrong: "13 inches" in 2-13-4, "9 eighths" in
// 2-3-9, "a fraction over 0" in 1/0.
double readLength(std::string_view text, LengthNotation assumed);

// `length_m` in the given notation, without unit except the marks that belong to the notation: feet-inches-eighths to
// the nearest sixteenth (halves away from zero), inches as a whole number and fraction where that is within 0.005 mm
// of a 64th, else with three decimals; millimetres with one decimal, none where it is .0.
//   (1) readLength(writeLength(x, n), n) is within half the step of the notation of x
//   (2) every multiple of 1/16 in from -100 ft to 100 ft comes back exactly in feet-inches-eighths and inches
std::string writeLength(double length_m, LengthNotation notation);

// The same with its unit, for a sentence: "2-3-4+", "27 1/2 in", "698.5 mm".
std::string writeLengthWithUnit(double length_m, LengthNotation notation);

}  // namespace fayline::measure
