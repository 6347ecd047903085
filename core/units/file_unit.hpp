// Numbers of the project file and the unit in which they stand there.
//
// A number is read from its figures and written as figures, not by way of a double in the file's unit: 6.35 mm is
// exactly the double nearest to 0.00635 m, and every double has figures that bring it back.
#pragma once

#include <numbers>
#include <string>
#include <string_view>

namespace fayline::units {

// SI value = number in the file * 10^tens * times.
struct FileUnit {
    int tens = 0;
    long double times = 1;
};

inline constexpr FileUnit asItIs{};                 // N, Pa, kg, degrees Celsius, numbers without a unit
inline constexpr FileUnit inMillimetres{-3};        // m
inline constexpr FileUnit inPercent{-2};            // a share of one
inline constexpr FileUnit inGrams{-3};              // kg; also g/m2
inline constexpr FileUnit inMillilitres{-6};        // m3
inline constexpr FileUnit inMegapascals{6};         // Pa
inline constexpr FileUnit inMinutes{0, 60};         // s
inline constexpr FileUnit inHours{0, 3600};         // s
inline constexpr FileUnit perMinute{0, 1.0L / 60};  // per second
inline constexpr FileUnit inDegrees{0, std::numbers::pi_v<long double> / 180};  // rad

// The SI value of a JSON number's figures (-12.5e-3): the double nearest to it in a unit that is a power of ten, within
// the last bit in the others. Infinite where it is too large for a double, 0 where it is too small.
double readInUnit(std::string_view figures, FileUnit unit);

// The fewest figures, without exponent where a person would write none, that readInUnit brings back to the bit:
// "6.35" for 0.00635 m, "51" for 0.051 m. -0 is written 0. `si` must be finite.
std::string writeInUnit(double si, FileUnit unit);

}  // namespace fayline::units
