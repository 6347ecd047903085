// Source: integrals of powers, of e^x and of 1 / (1 + x^2), all known in closed form; Gauss's n points integrate
// polynomials up to degree 2 n - 1 exactly and no higher one (Abramowitz & Stegun 25.4.29).
#include "core/math/quadrature.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace fayline::math {
namespace quadrature_test {

double gauss3OfPower(int power) {
    double sum = 0;
    for (std::size_t i = 0; i < 3; ++i) sum += gauss3Weight[i] * std::pow(gauss3At[i], power);
    return sum;
}

TEST(Quadrature, ThreePointsIntegrateUpToTheFifthPower) {
    for (int power = 0; power <= 5; ++power) EXPECT_NEAR(gauss3OfPower(power), 1.0 / (power + 1), 1e-16);
    // Of x^6 the error is (3!)^4 / (7 (6!)^3) times its sixth derivative 6! (A & S 25.4.30).
    EXPECT_NEAR(1.0 / 7 - gauss3OfPower(6), 1296.0 / (7.0 * 720 * 720), 1e-16);
}

TEST(Quadrature, EightPointsIntegrateUpToTheFifteenthPower) {
    for (int power = 0; power <= 15; ++power) {
        const double found = gauss8([&](double x) { return std::pow(x, power); }, 1, 3);
        EXPECT_NEAR(found / ((std::pow(3.0, power + 1) - 1) / (power + 1)), 1, 1e-14) << power;
    }
}

TEST(Quadrature, EightPointsOfSmoothFunctions) {
    EXPECT_NEAR(gauss8([](double x) { return std::exp(x); }, 0, 1), std::numbers::e - 1, 1e-14);
    EXPECT_NEAR(4 * gauss8([](double x) { return 1 / (1 + x * x); }, 0, 1), std::numbers::pi, 1e-9);
    EXPECT_EQ(gauss8([](double) { return 1.0; }, 2, 2), 0);
    EXPECT_NEAR(gauss8([](double x) { return x; }, 1, 0), -0.5, 1e-15);
}

}  // namespace quadrature_test
}  // namespace fayline::math
