#include "core/holding/bending.hpp"

namespace fayline::holding {

// f = B/2 (K^2 / J - 2 k0 K + k0^2 J).
std::array<double, 6> bendingSecond(const RodPlace& place, const Turning& turning) {
    const double u = 1 / turning.path;
    const double b = place.stiffness_N_m2;
    const double ratio = turning.turn * u;                                                     // K / J
    const double moment = b * (ratio - place.natural_per_m);                                   // f_K
    const double along = b / 2 * (place.natural_per_m * place.natural_per_m - ratio * ratio);  // f_J
    const double bu = b * u;                                                                   // f_KK
    const double cross = -bu * ratio;                                                          // f_KJ
    const double pathTwice = bu * ratio * ratio;                                               // f_JJ
    const auto& k = turning.turnFirst;
    const auto& j = turning.pathFirst;
    const auto& kk = turning.turnSecond;
    const auto& jj = turning.pathSecond;
    return {bu * k[0] * k[0] + 2 * cross * k[0] * j[0] + pathTwice * j[0] * j[0] + moment * kk[0] + along * jj[0],
            bu * k[0] * k[1] + cross * (k[0] * j[1] + k[1] * j[0]) + pathTwice * j[0] * j[1] + moment * kk[1] +
                along * jj[1],
            (bu * k[0] + cross * j[0]) * k[2] + moment * kk[2],
            bu * k[1] * k[1] + 2 * cross * k[1] * j[1] + pathTwice * j[1] * j[1] + moment * kk[3] + along * jj[2],
            (bu * k[1] + cross * j[1]) * k[2] + moment * kk[4],
            bu * k[2] * k[2]};
}

std::array<double, 6> bendingSecondPositive(const RodPlace& place, const Turning& turning) {
    // r = sqrt(B) (K J^-1/2 - k0 J^1/2).
    const double root = std::sqrt(place.stiffness_N_m2 / turning.path);
    const double byPath = -root / 2 * (turning.turn / turning.path + place.natural_per_m);
    const double r0 = root * turning.turnFirst[0] + byPath * turning.pathFirst[0];
    const double r1 = root * turning.turnFirst[1] + byPath * turning.pathFirst[1];
    const double r2 = root * turning.turnFirst[2];
    return {r0 * r0, r0 * r1, r0 * r2, r1 * r1, r1 * r2, r2 * r2};
}

}  // namespace fayline::holding
