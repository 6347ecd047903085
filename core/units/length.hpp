// Lengths as the trade writes them.
#pragma once

#include <string>
#include <string_view>

#include "core/units/input_error.hpp"

namespace fayline::units {

enum class LengthNotation {
    feetInchesEighths,  // 2-3-4+: 2 ft 3 4/8 in and a sixteenth more; - takes a sixteenth off
    inches,             // 27 1/2
    millimetres,        // 698.5
};

// The longest length that is read, either way of zero. Far beyond any boat: what is longer is a slip of the key.
inline constexpr double longestLength_m = 1000;

// The length written as `text`, in metres.
//
// Reads, whatever `assumed` is: 2-3-4, 2-3-4+, 2-3-4-, 2'-3 1/2", 2' 3", 2'-3-4, 2', 2 ft 3 in, 27 1/2 in, 27.5 in,
// 27 1/2", 698.5 mm, 698,5 mm, 0.6985 m, 69.85 cm, each with a minus sign before it for a negative length. `assumed`
// decides only what a bare number means: 27.5 and 698.5 are inches in feetInchesEighths and inches, else millimetres;
// a bare fraction (27 1/2, 3/8) is always inches. Blank space around and between parts does not matter. What a
// spreadsheet pastes is read as well: prime marks and curly quotes for ' and ", '' for ", the signs for a quarter to
// seven eighths, the long dashes and the true minus sign, hard and narrow spaces, exponents (6.985E2).
//
// Where a text could mean two things:
//   the + or - at the end changes the length away from zero: -2-3-4+ is a sixteenth further below zero than -2-3-4
//   8 eighths are read only with - after them: 2-3-8- is 2-3-7+ as it is called out from a rule; 0-0-0- is an error
//   two whole numbers, 2-3, are an error: they may be feet and inches or inches and eighths. With a fraction, a
//     decimal or a mark in the second (2-3 1/2, 2-3.5, 2-3") they are feet and inches, and 27-1/2 is 27 1/2 inches
//   a comma is a decimal mark. One to three digits, not 0 alone, before and exactly three after it (1,250 mm) are an
//     error, because elsewhere that is 1250; in metres it is read, since 1250 m would be beyond the longest length
//
// Throws InputError with an empty path for anything else: empty text, more than 64 bytes, numbers that are not finite,
// lengths beyond longestLength_m. wrong() names the part that is wrong: "13 inches" in 2-13-4, "9 eighths" in 2-3-9,
// "a fraction over 0" in 1/0. Its text is valid UTF-8 whatever bytes `text` holds.
//   (1) decimal and fractional forms of one length give the same double: 27.5 in, 27 1/2 in, 2-3-4, 698.5 mm
double readLength(std::string_view text, LengthNotation assumed);

// `length_m` in the given notation, without unit except the marks that belong to the notation: feet-inches-eighths to
// the nearest sixteenth (halves away from zero), inches as a whole number and fraction where that is within 0.005 mm
// of a 64th, else with three decimals; millimetres with one decimal, none where it is .0. A length that is not finite
// is written as a dash; one that rounds to zero has no sign.
//   (1) readLength(writeLength(x, n), n) is within half the step of the notation of x
//   (2) every multiple of 1/16 in from -100 ft to 100 ft comes back exactly in feet-inches-eighths and inches
std::string writeLength(double length_m, LengthNotation notation);

// The same with its unit, for a sentence: "2-3-4+", "27 1/2 in", "698.5 mm".
std::string writeLengthWithUnit(double length_m, LengthNotation notation);

}  // namespace fayline::units
