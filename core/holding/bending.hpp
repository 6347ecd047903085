// The bending energy of the rod per length of form, and the stretch of its path against the form, by gap and slope.
//
// With a = 1 + k v, W = a^2 + v'^2 and J = sqrt(W) the rod turns by K = k - psi' along the form, psi' = N / W,
// N = a v'' - v' (k v' + k' v); its curvature is K / J and its energy per length of form B/2 (K/J - k0)^2 J.
// Signs as in contact.hpp. Checked against automatic differentiation in tests/core/holding/bending_test.cpp.
#pragma once

#include <array>
#include <cmath>

#include "core/holding/hermite.hpp"

namespace fayline::holding {

// Rod and form at one place.
struct RodPlace {
    double curvature_per_m = 0;       // k
    double curvatureRate_per_m2 = 0;  // k'
    double stiffness_N_m2 = 1;        // B
    double natural_per_m = 0;         // k0
};

// A function of (v, v', v''): value, first derivatives, and second ones in the order vv vv' vv'' v'v' v'v'' v''v''.
struct Second {
    double value = 0;
    std::array<double, 3> first{};
    std::array<double, 6> second{};
};

// J - 1 with its derivatives by (v, v'); second ones in the order vv, vv', v'v'.
struct Stretch {
    double value = 0;
    std::array<double, 2> first{};
    std::array<double, 3> second{};
};

// Where this is not above 0 the state is out of reach: no square to the form meets the rod.
inline double squareLeft(const RodPlace& place, const Gap& gap) {
    return 1 + place.curvature_per_m * gap.gap;
}

// J - 1 without loss of digits where it is small.
inline double stretchValue(const RodPlace& place, const Gap& gap) {
    const double kv = place.curvature_per_m * gap.gap;
    const double surplus = kv * (2 + kv) + gap.slope * gap.slope;
    return surplus / (1 + std::sqrt(1 + surplus));
}

// K and J with the derivatives that both forms of the energy need. squareLeft > 0.
struct Turning {
    double turn = 0;  // K
    std::array<double, 3> turnFirst{};
    std::array<double, 6> turnSecond{};
    double path = 1;  // J
    std::array<double, 2> pathFirst{};
    std::array<double, 3> pathSecond{};
};

inline void turningFirst(const RodPlace& place, const Gap& gap, Turning& turning) {
    const double k = place.curvature_per_m;
    const double rate = place.curvatureRate_per_m2;
    const double a = 1 + k * gap.gap;
    const double w = a * a + gap.slope * gap.slope;
    const double q = (a * gap.bend - gap.slope * (k * gap.slope + rate * gap.gap)) / w;
    turning.path = std::sqrt(w);
    turning.pathFirst = {k * a / turning.path, gap.slope / turning.path};
    turning.turn = k - q;
    turning.turnFirst = {-(k * gap.bend - gap.slope * rate - q * 2 * k * a) / w,
                         (2 * k * gap.slope + rate * gap.gap + q * 2 * gap.slope) / w, -a / w};
}

inline Turning turningOf(const RodPlace& place, const Gap& gap) {
    Turning turning;
    turningFirst(place, gap, turning);
    const double k = place.curvature_per_m;
    const double rate = place.curvatureRate_per_m2;
    const double a = 1 + k * gap.gap;
    const double w = turning.path * turning.path;
    const double q = k - turning.turn;
    const auto& first = turning.turnFirst;
    const double byGap = 2 * k * a;
    const double bySlope = 2 * gap.slope;
    // -(N_ij - Q_i W_j - Q_j W_i - Q W_ij) / W with Q = N / W and Q_i = -K_i.
    turning.turnSecond = {-(2 * first[0] * byGap - q * 2 * k * k) / w,
                          -(-rate + first[0] * bySlope + first[1] * byGap) / w,
                          -(k + first[2] * byGap) / w,
                          -(-2 * k + 2 * first[1] * bySlope - q * 2) / w,
                          -(first[2] * bySlope) / w,
                          0};
    const auto& path = turning.pathFirst;
    turning.pathSecond = {(k * k - path[0] * path[0]) / turning.path, -path[0] * path[1] / turning.path,
                          (1 - path[1] * path[1]) / turning.path};
    return turning;
}

// The energy per length, N.
inline double bendingValue(const RodPlace& place, const Turning& turning) {
    const double excess = turning.turn / turning.path - place.natural_per_m;
    return place.stiffness_N_m2 / 2 * excess * excess * turning.path;
}

// Its first derivatives by (v, v', v'').
inline std::array<double, 3> bendingFirst(const RodPlace& place, const Turning& turning) {
    const double moment = place.stiffness_N_m2 * (turning.turn / turning.path - place.natural_per_m);
    const double along =
        place.stiffness_N_m2 / 2 *
        (place.natural_per_m * place.natural_per_m - turning.turn * turning.turn / (turning.path * turning.path));
    return {moment * turning.turnFirst[0] + along * turning.pathFirst[0],
            moment * turning.turnFirst[1] + along * turning.pathFirst[1], moment * turning.turnFirst[2]};
}

// Its second derivatives; exact, or only the part that is never negative: that of the square of
// sqrt(B J) (K/J - k0), which drops the second derivatives of the root.
std::array<double, 6> bendingSecond(const RodPlace& place, const Turning& turning);
std::array<double, 6> bendingSecondPositive(const RodPlace& place, const Turning& turning);

}  // namespace fayline::holding
