// Conversion between SI and the units of files, screens and papers. The only place where such a factor stands.
//
// Exact by definition: inch, foot, pound, pound-force, ounce, US fluid ounce, degree.
#pragma once

#include <numbers>

namespace fayline::units {

inline constexpr double inch_m = 0.0254;
inline constexpr double foot_m = 0.3048;
inline constexpr double sixteenth_m = inch_m / 16;
inline constexpr double poundForce_N = 4.4482216152605;
inline constexpr double pound_kg = 0.45359237;
inline constexpr double ounce_kg = pound_kg / 16;
inline constexpr double fluidOunceUs_m3 = 29.5735295625e-6;
inline constexpr double megapascal_Pa = 1e6;
inline constexpr double psi_Pa = poundForce_N / (inch_m * inch_m);

// `value` rounded to twelve significant decimal figures, ties to even; what is not finite comes back as it is.
//
// Converting a decimal figure to SI and back is off by a few parts in 10^16, which a file would show as
// 6.3500000000000005; twelve figures take that away and keep everything that was ever measured.
//   (1) every figure of up to twelve digits comes back as the double nearest to it
double toTwelveFigures(double value);

// Millimetres to metres and back. Division by a power of ten keeps decimal figures whole: 6.35 mm becomes the double
// nearest to 0.00635. Back, the result is rounded by toTwelveFigures.
//   (1) toMillimetres(fromMillimetres(x)) == x for every x of up to twelve significant digits
double fromMillimetres(double mm);
double toMillimetres(double m);

constexpr double fromDegrees(double deg) {
    return deg * std::numbers::pi / 180;
}
constexpr double toDegrees(double rad) {
    return rad * 180 / std::numbers::pi;
}

constexpr double fromFahrenheit(double fahrenheit) {
    return (fahrenheit - 32) * 5 / 9;
}
constexpr double toFahrenheit(double celsius) {
    return celsius * 9 / 5 + 32;
}

}  // namespace fayline::units
