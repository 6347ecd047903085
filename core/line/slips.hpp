// Slips of the pen and the eye: what could have been meant where something else was written.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "core/line/read.hpp"
#include "core/units/length.hpp"

namespace fayline::line {

// One way in which a pair of coordinates could have been meant.
struct Slip {
    char axis = 'x';                     // the coordinate that was miswritten; 'b' where both were (exchanged)
    std::string says;                    // what is wrong with what was written: "1 inch high", "digits swapped"
    std::array<std::string, 2> written;  // x and y as they would be written rightly
    std::array<double, 2> value_m{};     // the same in metres
    bool decimalPoint = false;           // ten times what was meant, or a tenth
    double unlikely = 0;                 // the greater, the rarer: minus the logarithm of how often, up to a constant
};

// The slips that could have led to `written` (x and y; an empty text stands for the value written in `notation`), of
// which `value_m` are the values: a foot, an inch, an eighth or a sixteenth off (feet and inches), 10 or 100 mm off
// (millimetres), a + or - dropped, added or turned round, the decimal point a place off, two figures or two fields
// swapped, one figure taken for one that looks alike (1 and 7, 3 and 8, 6 and 0), x and y exchanged, and a thickness
// `takeOff_m` taken off or left on twice. Slips that change nothing or that cannot be read are left out. Only the
// coordinate that was `read` can be miswritten. How rare each is: common practice, no source.
std::vector<Slip> possibleSlips(const std::array<std::string, 2>& written, const std::array<double, 2>& value_m,
                                double takeOff_m, units::LengthNotation notation, Read read = Read::both);

}  // namespace fayline::line
