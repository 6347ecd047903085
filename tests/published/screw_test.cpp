// Screws out of side grain.
#include "core/holding/props/screw.hpp"

#include <gtest/gtest.h>

#include "core/units/units.hpp"

namespace fayline::holding {
namespace screw_test {

using units::inch_m, units::poundForce_N;

constexpr double perInch = poundForce_N / inch_m;  // N/m in a pound-force per inch

// Source: NDS withdrawal of wood screws (read on an engineering reference page, P): G = 0.45, D = 0.190 in gives
// 109 lbf per inch as printed, 2 850 G^2 D = 109.65 exactly (D).
TEST(PublishedScrew, AllowableWithdrawalOfAWoodScrew) {
    EXPECT_NEAR(screwAllowable_N_m(0.45, 0.190 * inch_m) / perInch, 109, 1);
    EXPECT_NEAR(screwAllowable_N_m(0.45, 0.190 * inch_m) / perInch, 109.65, 0.005);
}

// Source: Wood Handbook ch. 8 (M): p = 108.25 G^2 D L in newtons and millimetres; G = 0.48, D = 4.83 mm, L = 25 mm
// gives 3 011.6 N (D, from 15 700 lbf and inches).
TEST(PublishedScrew, UltimateWithdrawalOfAWoodScrew) {
    EXPECT_NEAR(screwUltimate_N_m(0.48, 0.00483) * 0.025, 3011.6, 3011.6 * 0.005 / 108.25);
    EXPECT_NEAR(screwUltimate_N_m(1, 0.001) / 1000, 108.25, 0.005);
}

// Source: NDS 12.2.1, 1 800 G^1.5 D^0.75 lbf/in: G = 0.50, D = 0.375 in gives 304.97 (D); its table prints 305 (M).
// In newtons and millimetres 27.86 G^1.5 D^0.75 (D); ultimate 125.4 (Wood Handbook, M).
TEST(PublishedScrew, WithdrawalOfALagScrew) {
    EXPECT_NEAR(lagAllowable_N_m(0.50, 0.375 * inch_m) / perInch, 304.97, 0.005);
    EXPECT_NEAR(lagAllowable_N_m(1, 0.001) / 1000, 27.86, 0.005);
    EXPECT_NEAR(lagUltimate_N_m(1, 0.001) / 1000, 125.375, 0.0005);
}

// Source: the two pairs of factors (D): 5.51 for wood screws, 4.5 for lag screws, whatever wood and diameter.
TEST(PublishedScrew, UltimateOverAllowable) {
    for (const double gravity : {0.32, 0.5, 0.72}) {
        for (const double diameter : {0.004, 0.008}) {
            EXPECT_NEAR(screwUltimate_N_m(gravity, diameter) / screwAllowable_N_m(gravity, diameter), 5.51, 0.005);
            EXPECT_NEAR(lagUltimate_N_m(gravity, diameter) / lagAllowable_N_m(gravity, diameter), 4.5, 1e-9);
        }
    }
}

}  // namespace screw_test
}  // namespace fayline::holding
