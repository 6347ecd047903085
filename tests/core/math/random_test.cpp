// Draws and the functions that they are made with, against the library's and against moments that are known.
#include "core/math/random.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace fayline::math {
namespace random_test {

TEST(Random, UniformDrawsAreTheGeneratorsUpperBits) {
    // The ten-thousandth number of mt19937_64 by its own seed: ISO C++, [rand.predef].
    std::mt19937_64 generator;
    for (int i = 1; i < 10'000; ++i) uniformDraw(generator);
    EXPECT_EQ(uniformDraw(generator), static_cast<double>(9981545732273789042ull >> 11) / 9007199254740992.0);
}

TEST(Random, LogarithmAndPowerAreThoseOfTheLibrary) {
    std::mt19937_64 generator(11);
    for (int i = 0; i < 20'000; ++i) {
        const double x = std::exp(60 * uniformDraw(generator) - 40);
        EXPECT_NEAR(logOf(x), std::log(x), 5e-16 * std::max(1.0, std::abs(std::log(x))));
        const double y = 20 * uniformDraw(generator) - 10;
        EXPECT_NEAR(expOf(y) / std::exp(y), 1, 2e-15) << y;
    }
    EXPECT_EQ(logOf(1), 0);
    EXPECT_EQ(expOf(0), 1);
}

TEST(Random, NormalDrawsHaveTheMomentsOfTheNormalDistribution) {
    std::mt19937_64 generator(12);
    constexpr int count = 200'000;
    double sum = 0;
    double squares = 0;
    double fourth = 0;
    double product = 0;
    for (int i = 0; i < count; ++i) {
        const TwoNormal two = normalDraws(generator);
        sum += two.one + two.other;
        squares += two.one * two.one + two.other * two.other;
        fourth += std::pow(two.one, 4) + std::pow(two.other, 4);
        product += two.one * two.other;
    }
    const double n = 2.0 * count;
    // Standard errors: 1, sqrt 2, sqrt 96 over sqrt n; of the product 1 over sqrt count.
    EXPECT_NEAR(sum / n, 0, 3.3 / std::sqrt(n));
    EXPECT_NEAR(squares / n, 1, 3.3 * std::sqrt(2 / n));
    EXPECT_NEAR(fourth / n, 3, 3.3 * std::sqrt(96 / n));
    EXPECT_NEAR(product / count, 0, 3.3 / std::sqrt(static_cast<double>(count)));
}

// Source: mean and variance of the triangular distribution, (a + b + c) / 3 and (a^2 + b^2 + c^2 - ab - ac - bc) / 18.
TEST(Random, TriangularDrawsHaveMeanAndVarianceOfTheTriangle) {
    const Triangular triangular{0.7, 1, 1.9};
    constexpr int count = 100'000;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < count; ++i) {
        const double draw = triangularDraw(triangular, (i + 0.5) / count);
        sum += draw;
        squares += draw * draw;
    }
    const double mean = sum / count;
    EXPECT_NEAR(mean, 1.2, 1e-6);
    EXPECT_NEAR(squares / count - mean * mean, (0.49 + 1 + 3.61 - 0.7 - 1.33 - 1.9) / 18, 1e-6);
    EXPECT_EQ(triangularDraw(triangular, 0), 0.7);
    EXPECT_NEAR(triangularDraw(triangular, 0.25), 1, 1e-15);
    EXPECT_EQ(triangularDraw({1, 1, 1}, 0.3), 1);
}

}  // namespace random_test
}  // namespace fayline::math
