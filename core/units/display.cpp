#include "core/units/display.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "core/units/figures.hpp"
#include "core/units/units.hpp"

namespace fayline::units {
namespace {

constexpr double thicknessWithin_in = 0.005e-3 / inch_m;

std::string withSign(const std::string& figures) {
    const bool positive = !figures.starts_with('-') && figures.find_first_of("123456789") != std::string::npos;
    return positive ? "+" + figures : figures;
}

}  // namespace

std::string writeLength(double length_m, const Display& display) {
    return writeLengthWithUnit(length_m, display.lengths);
}

std::string writeThickness(double thickness_m, const Display& display) {
    if (display.lengths == LengthNotation::millimetres) return upToDecimals(toMillimetres(thickness_m), 2) + " mm";
    return inchFigures(thickness_m / inch_m, thicknessWithin_in) + " in";
}

std::string writeSmall(double distance_m, const Display& display) {
    if (display.lengths == LengthNotation::millimetres) {
        return withSign(fixedFigures(toMillimetres(distance_m), 2)) + " mm";
    }
    return withSign(fixedFigures(distance_m / inch_m, 3)) + " in";
}

std::string writeShare(double share, int figures) {
    return writeNumber(share * 100, figures) + " %";
}

std::string writeForce(double force_N, const Display& display, int figures) {
    if (display.forces == ForceUnit::newton) return writeNumber(force_N, figures) + " N";
    return writeNumber(force_N / poundForce_N, figures) + " lbf";
}

std::string writeMoment(double moment_N_m, const Display& display) {
    if (display.forces == ForceUnit::newton) return writeNumber(moment_N_m) + " N m";
    return writeNumber(moment_N_m / (poundForce_N * foot_m)) + " lbf ft";
}

std::string writePressure(double pressure_Pa, const Display& display) {
    if (!std::isfinite(pressure_Pa)) return noFigure;
    if (display.forces == ForceUnit::newton) return writeNumber(pressure_Pa / 1e3) + " kPa";
    return writeNumber(pressure_Pa / psi_Pa) + " psi";
}

std::string writeTemperature(double celsius, const Display& display) {
    if (display.temperatures == TemperatureUnit::celsius) return upToDecimals(celsius, 1) + " \u00B0C";
    return upToDecimals(toFahrenheit(celsius), 1) + " \u00B0F";
}

std::string writeStress(double stress_Pa) {
    return writeNumber(stress_Pa / 1e6) + " MPa";
}

std::string writeNumber(double value, int figures) {
    if (!std::isfinite(value)) return noFigure;
    // Round to so many figures first: 999.6 with three of them is 1000, not 999.6 with none after the point.
    std::array<char, 64> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::scientific,
                                   std::clamp(figures, 1, 17) - 1);
    double rounded = 0;
    std::from_chars(text.data(), end.ptr, rounded);
    if (rounded == 0) return "0";
    std::array<char, 400> plain{};
    const auto plainEnd = std::to_chars(plain.data(), plain.data() + plain.size(), rounded, std::chars_format::fixed);
    return {plain.data(), plainEnd.ptr};
}

}  // namespace fayline::units
