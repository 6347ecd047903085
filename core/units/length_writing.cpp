#include <cmath>

#include "core/units/figures.hpp"
#include "core/units/length.hpp"
#include "core/units/units.hpp"

namespace fayline::units {
namespace {

// So near to a 64th of an inch a length is written as that fraction.
constexpr double fractionWithin_in = 0.005e-3 / inch_m;

std::string feetInchesEighths(double length_m) {
    const double nearest = std::round(std::abs(length_m) / sixteenth_m);
    if (!(nearest < 1e15)) return noFigure;
    const auto sixteenths = static_cast<long long>(nearest);
    std::string text = length_m < 0 && sixteenths > 0 ? "-" : "";
    text += std::to_string(sixteenths / 192) + "-";
    text += std::to_string(sixteenths % 192 / 16) + "-";
    text += std::to_string(sixteenths % 16 / 2);
    return sixteenths % 2 == 1 ? text + "+" : text;
}

}  // namespace

std::string writeLength(double length_m, LengthNotation notation) {
    switch (notation) {
        case LengthNotation::feetInchesEighths:
            return feetInchesEighths(length_m);
        case LengthNotation::inches:
            return inchFigures(length_m / inch_m, fractionWithin_in);
        case LengthNotation::millimetres:
            break;
    }
    return upToDecimals(toMillimetres(length_m), 1);
}

std::string writeLengthWithUnit(double length_m, LengthNotation notation) {
    const std::string figures = writeLength(length_m, notation);
    switch (notation) {
        case LengthNotation::feetInchesEighths:
            return figures;
        case LengthNotation::inches:
            return figures + " in";
        case LengthNotation::millimetres:
            break;
    }
    return figures + " mm";
}

}  // namespace fayline::units
