// The units a user reads in, and quantities written in them with their unit. SI in, text out.
#pragma once

#include <string>

#include "core/units/length.hpp"

namespace fayline::units {

enum class TemperatureUnit { celsius, fahrenheit };
enum class ForceUnit { newton, poundForce, kilogramForce };
enum class WeightUnit { gram, ounce };
enum class VolumeUnit { millilitre, fluidOunce };

struct Display {
    LengthNotation lengths = LengthNotation::millimetres;
    TemperatureUnit temperatures = TemperatureUnit::celsius;
    ForceUnit forces = ForceUnit::newton;
    WeightUnit weights = WeightUnit::gram;
    VolumeUnit volumes = VolumeUnit::millilitre;

    bool operator==(const Display&) const = default;
};

// All units of one kind of shop: forces as its scales show them.
inline constexpr Display metricShop{.forces = ForceUnit::kilogramForce};
inline constexpr Display inchShop{LengthNotation::feetInchesEighths, TemperatureUnit::fahrenheit, ForceUnit::poundForce,
                                  WeightUnit::ounce, VolumeUnit::fluidOunce};

// A length with its unit as a sentence needs it. `large` lengths (radii, lengths of strips) in feet-inches-eighths
// stay in that notation; small ones (thicknesses, misfits) are better read as inches with a fraction, so thickness
// and misfit have functions of their own.
std::string writeLength(double length_m, const Display& display);
// A thickness or width: "1/4 in", "6.35 mm" (up to two decimals).
std::string writeThickness(double thickness_m, const Display& display);
// A small distance such as a misfit, signed, to 0.01 mm or 0.001 in: "+0.31 mm", "-0.012 in".
std::string writeSmall(double distance_m, const Display& display);
// "61 %", "0.52 %": a share (0.61) with so many significant figures.
std::string writeShare(double share, int figures = 2);
// A force with so many significant figures; no hand feels, and no wood keeps to, more than two: "1700 N", "380 lbf".
std::string writeForce(double force_N, const Display& display, int figures = 2);
// One of the display's units of force, in newtons.
double forceUnit_N(const Display& display);
// A bending moment, three significant figures, by the unit of forces: "35 N m", "25.8 lbf ft", "3.57 kgf m".
std::string writeMoment(double moment_N_m, const Display& display);
// A pressure on a face, three significant figures, by the unit of forces: "310 kPa", "45 psi", "3.1 bar".
std::string writePressure(double pressure_Pa, const Display& display);
// To a tenth of a degree Celsius or a whole degree Fahrenheit.
std::string writeTemperature(double celsius, const Display& display);
// A stress or modulus, three significant figures: in psi where forces are read in pounds, else in MPa (N/mm^2).
std::string writeStress(double stress_Pa, const Display& display);
// A number with so many significant figures, no exponent, no trailing zeros.
std::string writeNumber(double value, int figures = 3);

}  // namespace fayline::units
