// Source: a cubic is its own Hermite interpolant; its values, slopes and integrals by hand (D).
#include "core/math/hermite.hpp"

#include <gtest/gtest.h>

namespace fayline::math {
namespace hermite_test {

// 2 - 3 s + 0.5 s^2 + 0.25 s^3 and what follows from it.
double value(double s) {
    return 2 - 3 * s + 0.5 * s * s + 0.25 * s * s * s;
}
double slope(double s) {
    return -3 + s + 0.75 * s * s;
}
double bend(double s) {
    return 1 + 1.5 * s;
}
double integral(double s) {
    return 2 * s - 1.5 * s * s + 0.5 * s * s * s / 3 + 0.0625 * s * s * s * s;
}

TEST(Hermite, ACubicIsItsOwnInterpolant) {
    const double from = -1, length = 2.5;
    const HermiteCubic cubic(value(from), slope(from), value(from + length), slope(from + length), length);
    for (const double u : {0.0, 0.1, 0.5, 0.83, 1.0}) {
        const double s = from + u * length;
        EXPECT_NEAR(cubic.at(u), value(s), 1e-14);
        EXPECT_NEAR(cubic.slope(u), slope(s), 1e-14);
        EXPECT_NEAR(cubic.integral(u), integral(s) - integral(from), 1e-14);
    }
}

TEST(Hermite, TheBasisGivesTheSameCubicAndItsSecondDerivative) {
    const double from = -1, h = 2.5;
    const HermiteEnds<double> ends{value(from), h * slope(from), value(from + h), h * slope(from + h)};
    for (std::size_t i = 0; i < 3; ++i) {
        const double s = from + h * gauss3At[i];
        const auto found = hermiteValues(hermiteBasisAtGauss[i], ends, 1 / h);
        EXPECT_NEAR(found.value, value(s), 1e-14);
        EXPECT_NEAR(found.slope, slope(s), 1e-14);
        EXPECT_NEAR(found.bend, bend(s), 1e-14);
    }
}

TEST(Hermite, TheBasisIsOneAtItsOwnEndAndNothingAtTheOther) {
    const HermiteBasis start = hermiteBasisAt(0);
    const HermiteBasis end = hermiteBasisAt(1);
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_EQ(start.value[i], i == 0 ? 1 : 0);
        EXPECT_EQ(start.slope[i], i == 1 ? 1 : 0);
        EXPECT_EQ(end.value[i], i == 2 ? 1 : 0);
        EXPECT_EQ(end.slope[i], i == 3 ? 1 : 0);
    }
}

}  // namespace hermite_test
}  // namespace fayline::math
