// Cubic Hermite interpolation: the cubic that has given values and slopes at both ends of a stretch.
//
// Source: any textbook of numerical analysis (as Stoer & Bulirsch, Introduction to Numerical Analysis, 2.1.5, from
// memory). Places within the stretch are named by their share `u` of its length, 0 to 1.
#pragma once

#include <array>

#include "core/math/quadrature.hpp"

namespace fayline::math {

// The cubic as a polynomial of u.
class HermiteCubic {
public:
    // Values and slopes (by length) at the two ends of a stretch of `length`.
    HermiteCubic(double from, double slopeFrom, double to, double slopeTo, double length)
        : c0(from),
          c1(slopeFrom * length),
          c2(3 * (to - from) - 2 * c1 - slopeTo * length),
          c3(c1 + slopeTo * length - 2 * (to - from)),
          length_(length) {}

    // By its coefficients, for who has them.
    HermiteCubic(const std::array<double, 4>& coefficients, double length)
        : c0(coefficients[0]), c1(coefficients[1]), c2(coefficients[2]), c3(coefficients[3]), length_(length) {}

    double at(double u) const { return c0 + u * (c1 + u * (c2 + u * c3)); }
    // By length.
    double slope(double u) const { return (c1 + u * (2 * c2 + 3 * u * c3)) / length_; }
    // Over the length from the stretch's beginning to u.
    double integral(double u) const { return length_ * (u * (c0 + u * (c1 / 2 + u * (c2 / 3 + u * c3 / 4)))); }

    double c0, c1, c2, c3;  // coefficients of 1, u, u^2, u^3

private:
    double length_;
};

// The same cubic by its basis, for elements of which many are worked out at the same places. `Number` is double, or a
// vector of elements that are worked out side by side.
//
// Value and slope at the two ends of an element of length h: v0, h v0', v1, h v1'.
template <typename Number>
using HermiteEnds = std::array<Number, 4>;

// What each of the four contributes to the value and its first two derivatives at one place of an element of unit
// length; on an element of length h the derivatives are to be divided by h and h^2.
struct HermiteBasis {
    std::array<double, 4> value;
    std::array<double, 4> slope;
    std::array<double, 4> bend;
};

constexpr HermiteBasis hermiteBasisAt(double u) {
    const double u2 = u * u;
    const double u3 = u2 * u;
    return {{1 - 3 * u2 + 2 * u3, u - 2 * u2 + u3, 3 * u2 - 2 * u3, u3 - u2},
            {6 * u2 - 6 * u, 1 - 4 * u + 3 * u2, 6 * u - 6 * u2, 3 * u2 - 2 * u},
            {12 * u - 6, 6 * u - 4, 6 - 12 * u, 6 * u - 2}};
}

// At Gauss's three points.
inline constexpr std::array<HermiteBasis, 3> hermiteBasisAtGauss = {
    hermiteBasisAt(gauss3At[0]), hermiteBasisAt(gauss3At[1]), hermiteBasisAt(gauss3At[2])};

template <typename Number>
struct HermiteValues {
    Number value{};
    Number slope{};
    Number bend{};  // second derivative
};

// On an element of length 1 / `inverseLength`. The difference of the values is taken first: it is exact, and the terms
// of the second derivative can be a hundred thousand times larger.
template <typename Number>
inline HermiteValues<Number> hermiteValues(const HermiteBasis& basis, const HermiteEnds<Number>& ends,
                                           Number inverseLength) {
    const Number rise = ends[2] - ends[0];
    const Number slope = basis.slope[2] * rise + basis.slope[1] * ends[1] + basis.slope[3] * ends[3];
    const Number bend = basis.bend[2] * rise + basis.bend[1] * ends[1] + basis.bend[3] * ends[3];
    return {ends[0] + basis.value[2] * rise + basis.value[1] * ends[1] + basis.value[3] * ends[3],
            slope * inverseLength, bend * (inverseLength * inverseLength)};
}

}  // namespace fayline::math
