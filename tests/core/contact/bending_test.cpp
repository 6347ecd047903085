// The rod's energy by hand against automatic differentiation.
#include "core/contact/bending.hpp"

#include <gtest/gtest.h>

#include <Eigen/Core>
#include <random>
#include <unsupported/Eigen/AutoDiff>

namespace fayline::contact {
namespace bending_test {

using First = Eigen::AutoDiffScalar<Eigen::Vector3d>;
using Nested = Eigen::AutoDiffScalar<Eigen::Matrix<First, 3, 1>>;

// Variable `index` of (v, v', v'') with both orders of derivatives.
Nested variable(double value, int index) {
    Nested nested;
    nested.value() = First(value, 3, index);
    for (int i = 0; i < 3; ++i) nested.derivatives()[i] = First(i == index ? 1.0 : 0.0, Eigen::Vector3d::Zero());
    return nested;
}

struct Parts {
    Nested bending;
    Nested stretch;
};

// As in contact.hpp; psi' from the derivatives of atan2(v', a) by its two arguments.
Parts byDefinition(const RodPlace& place, const Gap& gap) {
    const Nested v = variable(gap.value, 0);
    const Nested slope = variable(gap.slope, 1);
    const Nested bend = variable(gap.bend, 2);
    const Nested a = v * place.curvature_per_m + 1.0;
    const Nested aRate = v * place.curvatureRate_per_m2 + slope * place.curvature_per_m;
    const Nested square = a * a + slope * slope;
    const Nested turned = (a * bend - slope * aRate) / square;
    const Nested path = sqrt(square);
    const Nested excess = (turned * -1.0 + place.curvature_per_m) / path - place.natural_per_m;
    return {excess * excess * path * (place.stiffness_N_m2 / 2), path - 1.0};
}

struct Sample {
    RodPlace place;
    Gap gap;
};

std::vector<Sample> samples() {
    std::mt19937 engine(7);
    const auto between = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(engine);
    };
    std::vector<Sample> made;
    while (made.size() < 1000) {
        const Sample sample{{between(-2, 2), between(-8, 8), between(1, 500), between(-1, 1)},
                            {between(-0.05, 0.4), between(-1.5, 1.5), between(-4, 4)}};
        if (squareLeft(sample.place, sample.gap) > 0.1) made.push_back(sample);
    }
    return made;
}

constexpr int rowOf[] = {0, 0, 0, 1, 1, 2};
constexpr int columnOf[] = {0, 1, 2, 1, 2, 2};

// Tolerance: rounding, against the largest of the derivatives of that order.
TEST(Bending, DerivativesByHandAgreeWithAutomaticOnes) {
    for (const auto& [place, gap] : samples()) {
        const Nested exact = byDefinition(place, gap).bending;
        const Turning turning = turningOf(place, gap);
        const double value = bendingValue(place, turning);
        const auto first = bendingFirst(place, turning);
        const auto second = bendingSecond(place, turning, turningSecond(place, gap, turning));
        EXPECT_NEAR(value, exact.value().value(), 1e-10 * (1 + std::abs(value)));
        double largest = 0;
        for (int i = 0; i < 3; ++i) largest = std::max(largest, std::abs(exact.derivatives()[i].value()));
        for (int i = 0; i < 3; ++i) EXPECT_NEAR(first[i], exact.derivatives()[i].value(), 1e-10 * largest);
        largest = 0;
        for (int i = 0; i < 6; ++i)
            largest = std::max(largest, std::abs(exact.derivatives()[rowOf[i]].derivatives()[columnOf[i]]));
        for (int i = 0; i < 6; ++i)
            EXPECT_NEAR(second[i], exact.derivatives()[rowOf[i]].derivatives()[columnOf[i]], 1e-10 * largest);
    }
}

TEST(Bending, TheStretchOfThePathAgreesWithAutomaticDerivatives) {
    constexpr int row[] = {0, 0, 1};
    constexpr int column[] = {0, 1, 1};
    for (const auto& [place, gap] : samples()) {
        const Nested exact = byDefinition(place, gap).stretch;
        const Turning turning = turningOf(place, gap);
        EXPECT_NEAR(stretchValue(place, gap), exact.value().value(), 1e-12);
        for (int i = 0; i < 2; ++i)
            EXPECT_NEAR(turning.pathFirst[i], exact.derivatives()[i].value(),
                        1e-12 * (1 + std::abs(turning.pathFirst[i])));
        const auto second = turningSecond(place, gap, turning).path;
        for (int i = 0; i < 3; ++i)
            EXPECT_NEAR(second[i], exact.derivatives()[row[i]].derivatives()[column[i]],
                        1e-10 * (1 + std::abs(second[i])));
    }
}

TEST(Bending, ThePositivePartIsNeverNegativeAndIsAllWhereTheRodIsAsItGrew) {
    for (const auto& [place, gap] : samples()) {
        const auto second = bendingSecondPositive(place, turningOf(place, gap));
        EXPECT_GE(second[0], 0);
        EXPECT_GE(second[3], 0);
        EXPECT_GE(second[5], 0);
        EXPECT_NEAR(second[0] * second[3], second[1] * second[1], 1e-9 * (1 + second[1] * second[1]));

        RodPlace grown = place;
        const Turning turning = turningOf(place, gap);
        grown.natural_per_m = turning.turn / turning.path;
        const auto all = bendingSecond(grown, turning, turningSecond(grown, gap, turning));
        const auto part = bendingSecondPositive(grown, turning);
        for (int i = 0; i < 6; ++i) EXPECT_NEAR(part[i], all[i], 1e-9 * (1 + std::abs(all[0]) + std::abs(all[3])));
    }
}

TEST(Bending, AQuarterInchOfGapStretchesThePathToTheLastDigit) {
    const RodPlace place{1.0, 0, 1, 0};
    EXPECT_DOUBLE_EQ(stretchValue(place, {1e-12, 0, 0}), 1e-12);
    EXPECT_DOUBLE_EQ(stretchValue(place, {0.00635, 0, 0}), 0.00635);
    EXPECT_DOUBLE_EQ(stretchValue({}, {0, 1e-9, 0}), 5e-19);
}

}  // namespace bending_test
}  // namespace fayline::contact
