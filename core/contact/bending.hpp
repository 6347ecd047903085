// The bending energy of the rod per length of form, and the stretch of its path against the form, by gap and slope.
//
// With a = 1 + k v, W = a^2 + v'^2 and J = sqrt(W) the rod turns by K = k - psi' along the form, psi' = N / W,
// N = a v'' - v' (k v' + k' v); its curvature is K / J and its energy per length of form B/2 (K/J - k0)^2 J.
// `Number` is double, or a Pair of two elements. Signs as in contact.hpp. Checked against automatic differentiation in
// tests/core/contact/bending_test.cpp.
#pragma once

#include <array>

#include "core/contact/pair.hpp"
#include "core/math/hermite.hpp"

namespace fayline::contact {

// The rod's gap and its first two derivatives.
template <typename Number>
using BasicGap = math::HermiteValues<Number>;
using Gap = BasicGap<double>;

// Rod and form at one place.
template <typename Number>
struct BasicRodPlace {
    Number curvature_per_m{};                // k
    Number curvatureRate_per_m2{};           // k'
    Number stiffness_N_m2 = Number{} + 1.0;  // B
    Number natural_per_m{};                  // k0
};
using RodPlace = BasicRodPlace<double>;

// Where this is not above 0 the state is out of reach: no square to the form meets the rod.
template <typename Number = double>
inline Number squareLeft(const BasicRodPlace<Number>& place, const BasicGap<Number>& gap) {
    return 1.0 + place.curvature_per_m * gap.value;
}

// J - 1 without loss of digits where it is small, of a J that is known.
template <typename Number = double>
inline Number stretchValue(const BasicRodPlace<Number>& place, const BasicGap<Number>& gap, Number path) {
    const Number kv = place.curvature_per_m * gap.value;
    return (kv * (2.0 + kv) + gap.slope * gap.slope) / (1.0 + path);
}
template <typename Number = double>
inline Number stretchValue(const BasicRodPlace<Number>& place, const BasicGap<Number>& gap) {
    const Number left = squareLeft(place, gap);
    return stretchValue(place, gap, squareRoot(left * left + gap.slope * gap.slope));
}

// K and J with their first derivatives. squareLeft > 0.
template <typename Number>
struct BasicTurning {
    Number turn{};                      // K
    std::array<Number, 3> turnFirst{};  // by v, v', v''
    Number path{};                      // J
    Number perPath{};                   // 1 / J
    std::array<Number, 2> pathFirst{};  // by v, v'
};
using Turning = BasicTurning<double>;

template <typename Number>
inline BasicTurning<Number> turningOf(const BasicRodPlace<Number>& place, const BasicGap<Number>& gap) {
    const Number k = place.curvature_per_m;
    const Number rate = place.curvatureRate_per_m2;
    const Number a = squareLeft(place, gap);
    const Number path = squareRoot(a * a + gap.slope * gap.slope);
    const Number u = 1.0 / path;
    const Number perSquare = u * u;
    const Number q = (a * gap.bend - gap.slope * (k * gap.slope + rate * gap.value)) * perSquare;
    return {k - q,
            {(gap.slope * rate - k * gap.bend + 2.0 * q * k * a) * perSquare,
             (2.0 * gap.slope * (k + q) + rate * gap.value) * perSquare, -a * perSquare},
            path,
            u,
            {k * a * u, gap.slope * u}};
}

// The second derivatives: of K in the order vv, vv', vv'', v'v', v'v'' (that by v'' twice is 0); of J vv, vv', v'v'.
template <typename Number>
struct BasicTurningSecond {
    std::array<Number, 5> turn{};
    std::array<Number, 3> path{};
};

template <typename Number>
inline BasicTurningSecond<Number> turningSecond(const BasicRodPlace<Number>& place, const BasicGap<Number>& gap,
                                                const BasicTurning<Number>& turning) {
    const Number k = place.curvature_per_m;
    const Number perSquare = turning.perPath * turning.perPath;
    const Number q = k - turning.turn;
    const auto& first = turning.turnFirst;
    const Number byGap = 2.0 * k * squareLeft(place, gap);
    const Number bySlope = 2.0 * gap.slope;
    const auto& path = turning.pathFirst;
    // -(N_ij - Q_i W_j - Q_j W_i - Q W_ij) / W with Q = N / W and Q_i = -K_i.
    return {{(2.0 * (q * k * k - first[0] * byGap)) * perSquare,
             (place.curvatureRate_per_m2 - first[0] * bySlope - first[1] * byGap) * perSquare,
             -(k + first[2] * byGap) * perSquare, (2.0 * (k + q - first[1] * bySlope)) * perSquare,
             -first[2] * bySlope * perSquare},
            {(k * k - path[0] * path[0]) * turning.perPath, -path[0] * path[1] * turning.perPath,
             (1.0 - path[1] * path[1]) * turning.perPath}};
}

// The energy per length, N.
template <typename Number>
inline Number bendingValue(const BasicRodPlace<Number>& place, const BasicTurning<Number>& turning) {
    const Number excess = turning.turn * turning.perPath - place.natural_per_m;
    return place.stiffness_N_m2 * 0.5 * excess * excess * turning.path;
}

// Its first derivatives by (v, v', v'').
template <typename Number>
inline std::array<Number, 3> bendingFirst(const BasicRodPlace<Number>& place, const BasicTurning<Number>& turning) {
    const Number ratio = turning.turn * turning.perPath;
    const Number moment = place.stiffness_N_m2 * (ratio - place.natural_per_m);
    const Number along = place.stiffness_N_m2 * 0.5 * (place.natural_per_m * place.natural_per_m - ratio * ratio);
    return {moment * turning.turnFirst[0] + along * turning.pathFirst[0],
            moment * turning.turnFirst[1] + along * turning.pathFirst[1], moment * turning.turnFirst[2]};
}

// Its second derivatives, in the order vv, vv', vv'', v'v', v'v'', v''v'': exact, from f = B/2 (K^2 / J - 2 k0 K + k0^2
// J).
template <typename Number>
inline std::array<Number, 6> bendingSecond(const BasicRodPlace<Number>& place, const BasicTurning<Number>& turning,
                                           const BasicTurningSecond<Number>& second) {
    const Number b = place.stiffness_N_m2;
    const Number ratio = turning.turn * turning.perPath;                                         // K / J
    const Number moment = b * (ratio - place.natural_per_m);                                     // f_K
    const Number along = b * 0.5 * (place.natural_per_m * place.natural_per_m - ratio * ratio);  // f_J
    const Number bu = b * turning.perPath;                                                       // f_KK
    const auto& k = turning.turnFirst;
    const auto& j = turning.pathFirst;
    // f_KJ = -f_KK K / J and f_JJ = f_KK (K / J)^2: the three together are the square of K_i - (K / J) J_i.
    const Number k0 = k[0] - ratio * j[0];
    const Number k1 = k[1] - ratio * j[1];
    return {bu * k0 * k0 + moment * second.turn[0] + along * second.path[0],
            bu * k0 * k1 + moment * second.turn[1] + along * second.path[1],
            bu * k0 * k[2] + moment * second.turn[2],
            bu * k1 * k1 + moment * second.turn[3] + along * second.path[2],
            bu * k1 * k[2] + moment * second.turn[4],
            bu * k[2] * k[2]};
}

// Only the part that is never negative: that of the square of sqrt(B J) (K/J - k0), which drops the second derivatives
// of the root.
template <typename Number>
inline std::array<Number, 6> bendingSecondPositive(const BasicRodPlace<Number>& place,
                                                   const BasicTurning<Number>& turning) {
    // r = sqrt(B) (K J^-1/2 - k0 J^1/2).
    const Number root = squareRoot(place.stiffness_N_m2 * turning.perPath);
    const Number byPath = -0.5 * root * (turning.turn * turning.perPath + place.natural_per_m);
    const Number r0 = root * turning.turnFirst[0] + byPath * turning.pathFirst[0];
    const Number r1 = root * turning.turnFirst[1] + byPath * turning.pathFirst[1];
    const Number r2 = root * turning.turnFirst[2];
    return {r0 * r0, r0 * r1, r0 * r2, r1 * r1, r1 * r2, r2 * r2};
}

}  // namespace fayline::contact
