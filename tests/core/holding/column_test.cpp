#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/holding/props/prop.hpp"

namespace fayline::holding {
namespace column_test {

TEST(Column, OfNoLengthItCarriesItsWholeSection) {
    const Column column = ndsColumn(0, 0.038, 0.089, 4000e6, 10e6);
    EXPECT_EQ(column.slenderness, 0);
    EXPECT_NEAR(column.stability, 1, 1e-15);
    EXPECT_NEAR(column.allowable_N, 10e6 * 0.038 * 0.089, 1e-6);
}

// Between the two bounds it is made of: crushing, and the allowable Euler stress.
TEST(Column, CarriesNeverMoreThanCrushingOrBucklingAllow) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> share(0, 1);
    for (int round = 0; round < 1000; ++round) {
        const double least = 0.01 + 0.2 * share(random);
        const double length = std::pow(10, -2 + 4 * share(random));
        const Column column = ndsColumn(length, least, 2 * least, 4000e6, 10e6);
        const double ratio = 0.822 * 4000e6 / std::pow(length / least, 2) / 10e6;
        EXPECT_GT(column.stability, 0);
        EXPECT_LE(column.stability, std::min(1.0, ratio) * (1 + 1e-12));
        // The formula as it is printed, where it can be worked without loss.
        if (ratio > 1e-3 && ratio < 1e3) {
            const double a = (1 + ratio) / 1.6;
            EXPECT_NEAR(column.stability, a - std::sqrt(a * a - ratio / 0.8), 1e-9);
        }
    }
}

TEST(Column, LongerCarriesLess) {
    double before = ndsColumn(0.01, 0.05, 0.05, 4000e6, 10e6).allowable_N;
    for (double length = 0.1; length < 20; length *= 1.1) {
        const double now = ndsColumn(length, 0.05, 0.05, 4000e6, 10e6).allowable_N;
        EXPECT_LT(now, before);
        before = now;
    }
}

}  // namespace column_test
}  // namespace fayline::holding
