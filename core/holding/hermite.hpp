// Cubic Hermite gaps on one element and Gauss's three points there.
#pragma once

#include <array>

namespace fayline::holding {

// Gauss's points as parts of the element's length, and their weights (exact for polynomials of degree five).
inline constexpr std::array<double, 3> gaussPart = {0.11270166537925831, 0.5, 0.88729833462074169};
inline constexpr std::array<double, 3> gaussWeight = {5.0 / 18, 8.0 / 18, 5.0 / 18};

// Gap and slope at the two ends of an element of length h: v0, h v0', v1, h v1'. Here and below `Number` is double, or
// a Pair of two elements.
template <typename Number>
using BasicEnds = std::array<Number, 4>;
using Ends = BasicEnds<double>;

// What each of the four ends contributes to the gap and its first two derivatives at one place of an element of unit
// length; on an element of length h the derivatives are to be divided by h and h^2.
struct Shape {
    std::array<double, 4> gap;
    std::array<double, 4> slope;
    std::array<double, 4> bend;
};

// At the part `u` (0 to 1) of the element.
constexpr Shape shapeAt(double u) {
    const double u2 = u * u;
    const double u3 = u2 * u;
    return {{1 - 3 * u2 + 2 * u3, u - 2 * u2 + u3, 3 * u2 - 2 * u3, u3 - u2},
            {6 * u2 - 6 * u, 1 - 4 * u + 3 * u2, 6 * u - 6 * u2, 3 * u2 - 2 * u},
            {12 * u - 6, 6 * u - 4, 6 - 12 * u, 6 * u - 2}};
}

inline constexpr std::array<Shape, 3> gaussShape = {shapeAt(gaussPart[0]), shapeAt(gaussPart[1]),
                                                    shapeAt(gaussPart[2])};

template <typename Number>
struct BasicGap {
    Number gap{};
    Number slope{};
    Number bend{};  // second derivative
};
using Gap = BasicGap<double>;

// On an element of which `lengths_per_m` make a metre. The gaps' difference is taken first: it is exact, and the terms
// of v'' are a hundred thousand times larger.
template <typename Number>
inline BasicGap<Number> gapOf(const Shape& shape, const BasicEnds<Number>& ends, Number lengths_per_m) {
    const Number rise = ends[2] - ends[0];
    const Number slope = shape.slope[2] * rise + shape.slope[1] * ends[1] + shape.slope[3] * ends[3];
    const Number bend = shape.bend[2] * rise + shape.bend[1] * ends[1] + shape.bend[3] * ends[3];
    return {ends[0] + shape.gap[2] * rise + shape.gap[1] * ends[1] + shape.gap[3] * ends[3], slope * lengths_per_m,
            bend * (lengths_per_m * lengths_per_m)};
}

}  // namespace fayline::holding
