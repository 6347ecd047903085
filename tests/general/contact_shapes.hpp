// Gauss places, Hermite shapes and the stretch of the rod's path, written apart from the project's own.
#pragma once

#include <array>
#include <cmath>

namespace fayline::general {

inline constexpr std::array<double, 3> gaussAt{0.1127016653792583, 0.5, 0.8872983346207417};
inline constexpr std::array<double, 3> gaussWeight{5.0 / 18, 8.0 / 18, 5.0 / 18};

// Cubic Hermite shapes of (gap, slope, gap, slope) at u = 0..1 of an element of length h: value and two derivatives.
struct Shapes {
    std::array<double, 4> value{};
    std::array<double, 4> first{};
    std::array<double, 4> second{};
};

inline Shapes shapesAt(double u, double h) {
    return {{1 - 3 * u * u + 2 * u * u * u, h * (u - 2 * u * u + u * u * u), 3 * u * u - 2 * u * u * u,
             h * (u * u * u - u * u)},
            {(-6 * u + 6 * u * u) / h, 1 - 4 * u + 3 * u * u, (6 * u - 6 * u * u) / h, 3 * u * u - 2 * u},
            {(-6 + 12 * u) / (h * h), (-4 + 6 * u) / h, (6 - 12 * u) / (h * h), (6 * u - 2) / h}};
}

// J and its derivatives by gap and slope (value, gap, slope, gap gap, gap slope, slope slope).
inline std::array<double, 6> stretchOf(double gap, double slope, double k) {
    const double a = 1 + k * gap;
    const double j = std::hypot(a, slope);
    return {j,
            a * k / j,
            slope / j,
            k * k / j - a * a * k * k / (j * j * j),
            -a * k * slope / (j * j * j),
            1 / j - slope * slope / (j * j * j)};
}

}  // namespace fayline::general
