#include "core/units/display.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "core/units/figures.hpp"
#include "core/units/scale.hpp"
#include "core/units/units.hpp"

namespace fayline::units {
namespace {

constexpr double thicknessWithin_in = 0.005e-3 / inch_m;

// What goes with a unit of force, in the order of ForceUnit.
struct ForceUnits {
    double force_N;
    const char* force;
    double moment_N_m;
    const char* moment;
    double pressure_Pa;
    const char* pressure;
};
constexpr ForceUnits forceUnits[] = {
    {1, " N", 1, " N m", 1e3, " kPa"},
    {poundForce_N, " lbf", poundForce_N* foot_m, " lbf ft", psi_Pa, " psi"},
    {standardGravity_m_s2, " kgf", standardGravity_m_s2, " kgf m", 1e5, " bar"},
};

const ForceUnits& unitsOf(const Display& display) {
    return forceUnits[static_cast<std::size_t>(display.forces)];
}

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

double forceUnit_N(const Display& display) {
    return unitsOf(display).force_N;
}

std::string writeForce(double force_N, const Display& display, int figures) {
    return writeNumber(force_N / unitsOf(display).force_N, figures) + unitsOf(display).force;
}

std::string writeMoment(double moment_N_m, const Display& display) {
    return writeNumber(moment_N_m / unitsOf(display).moment_N_m) + unitsOf(display).moment;
}

std::string writePressure(double pressure_Pa, const Display& display) {
    if (!std::isfinite(pressure_Pa)) return noFigure;
    return writeNumber(pressure_Pa / unitsOf(display).pressure_Pa) + unitsOf(display).pressure;
}

std::string writeTemperature(double celsius, const Display& display) {
    if (display.temperatures == TemperatureUnit::celsius) return upToDecimals(celsius, 1) + " \u00B0C";
    return upToDecimals(toFahrenheit(celsius), 0) + " \u00B0F";
}

std::string writeStress(double stress_Pa, const Display& display) {
    if (display.forces == ForceUnit::poundForce) return writeNumber(stress_Pa / psi_Pa) + " psi";
    return writeNumber(stress_Pa / megapascal_Pa) + " MPa";
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
