// Gauss-Legendre quadrature. Source of points and weights: Abramowitz & Stegun, Table 25.4 (M), recomputed.
#pragma once

#include <array>

namespace fayline::math {

// Three points, exact for polynomials of degree 5: on -1..1, on 0..1 (rounded by themselves, not worked out from
// those), and their weights on 0..1.
inline constexpr std::array<double, 3> gauss3Off{-0.7745966692414834, 0, 0.7745966692414834};
inline constexpr std::array<double, 3> gauss3At{0.11270166537925831, 0.5, 0.88729833462074169};
inline constexpr std::array<double, 3> gauss3Weight{5.0 / 18, 8.0 / 18, 5.0 / 18};

// The integral of `integrand`, a function of a number, between two bounds by one rule of eight points: exact for
// polynomials of degree 15.
template <typename Integrand>
double gauss8(const Integrand& integrand, double from, double to) {
    constexpr std::array<double, 4> off{0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363};
    constexpr std::array<double, 4> weight{0.3626837833783620, 0.3137066458778873, 0.2223810344533745,
                                           0.1012285362903763};
    const double length = to - from;
    double sum = 0;
    for (std::size_t i = 0; i < off.size(); ++i) {
        for (const double side : {-1.0, 1.0}) {
            sum += weight[i] * integrand(from + length * (1 + side * off[i]) / 2);
        }
    }
    return sum * length / 2;
}

}  // namespace fayline::math
