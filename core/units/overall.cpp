#include "core/units/overall.hpp"

#include <cmath>

#include "core/units/figures.hpp"
#include "core/units/units.hpp"

namespace fayline::units {

std::string writeOverall(double length_m, LengthNotation notation) {
    if (!std::isfinite(length_m)) return noFigure;
    if (notation == LengthNotation::millimetres) {
        if (length_m < 0.9995) return fixedFigures(length_m * 1000, 0) + " mm";
        return fixedFigures(length_m, length_m < 99.995 ? 2 : 0) + " m";
    }
    constexpr double eighths = 8;
    if (length_m < foot_m - inch_m / 16)
        return inchFigures(std::round(length_m / inch_m * eighths) / eighths, 0.001) + " in";
    if (length_m >= 100 * foot_m - inch_m / 2) return fixedFigures(length_m / foot_m, 0) + " ft";
    const auto inches = std::llround(length_m / inch_m);
    return std::to_string(inches / 12) + " ft " + std::to_string(inches % 12) + " in";
}

}  // namespace fayline::units
