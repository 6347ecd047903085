#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/holding/props/prop.hpp"

namespace fayline::holding {

namespace {

constexpr double pi = std::numbers::pi;
constexpr double sawn = 0.8;  // c of NDS 3.7.1

}  // namespace

double eulerLoad(double length_m, double modulus_Pa, double secondMoment_m4) {
    return pi * pi * modulus_Pa * secondMoment_m4 / (length_m * length_m);
}

// C_P = a - sqrt(a^2 - rho / c) with a = (1 + rho) / (2 c) and rho = F_cE / F_c*, written with 1 / rho: a short
// column's rho has no bound, and the difference of two near numbers is avoided.
Column ndsColumn(double length_m, double least_m, double other_m, double eMin_Pa, double along_Pa) {
    Column column;
    column.slenderness = length_m / least_m;
    const double inverse = along_Pa * column.slenderness * column.slenderness / (0.822 * eMin_Pa);
    const double a = (1 + inverse) / (2 * sawn);
    column.stability = 1 / (sawn * (a + std::sqrt(std::max(0.0, a * a - inverse / sawn))));
    column.allowable_N = column.stability * along_Pa * least_m * other_m;
    return column;
}

}  // namespace fayline::holding
