#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "core/units/length.hpp"
#include "core/units/units.hpp"

namespace fayline::units {
namespace length_writing_test {

constexpr auto eighths = LengthNotation::feetInchesEighths;
constexpr auto inches = LengthNotation::inches;
constexpr auto millimetres = LengthNotation::millimetres;

TEST(LengthWriting, EveryNotation) {
    EXPECT_EQ(writeLength(0.6985, eighths), "2-3-4");
    EXPECT_EQ(writeLength(0.6985 + sixteenth_m, eighths), "2-3-4+");
    EXPECT_EQ(writeLength(-0.6985, eighths), "-2-3-4");
    EXPECT_EQ(writeLength(0, eighths), "0-0-0");
    EXPECT_EQ(writeLength(-0.0001, eighths), "0-0-0");
    EXPECT_EQ(writeLength(-sixteenth_m, eighths), "-0-0-0+");
    EXPECT_EQ(writeLength(12 * inch_m - 0.0001, eighths), "1-0-0");
    EXPECT_EQ(writeLength(0.6985, inches), "27 1/2");
    EXPECT_EQ(writeLength(-0.375 * inch_m, inches), "-3/8");
    EXPECT_EQ(writeLength(27 * inch_m, inches), "27");
    EXPECT_EQ(writeLength(27.503 * inch_m, inches), "27.503");
    EXPECT_EQ(writeLength(0.00001, inches), "0");
    EXPECT_EQ(writeLength(0.6985, millimetres), "698.5");
    EXPECT_EQ(writeLength(0.698, millimetres), "698");
    EXPECT_EQ(writeLength(0.69804, millimetres), "698");
    EXPECT_EQ(writeLength(-0.00004, millimetres), "0");
    EXPECT_EQ(writeLength(-0.00005, millimetres), "-0.1");
}

TEST(LengthWriting, HalfASixteenthGoesAwayFromZero) {
    EXPECT_EQ(writeLength(sixteenth_m * 2.5, eighths), "0-0-1+");
    EXPECT_EQ(writeLength(-sixteenth_m * 2.5, eighths), "-0-0-1+");
}

TEST(LengthWriting, UnitFollowsWhereTheNotationHasNone) {
    EXPECT_EQ(writeLengthWithUnit(0.6985, eighths), "2-3-4");
    EXPECT_EQ(writeLengthWithUnit(0.6985, inches), "27 1/2 in");
    EXPECT_EQ(writeLengthWithUnit(0.6985, millimetres), "698.5 mm");
}

TEST(LengthWriting, WhatIsNotFiniteIsADash) {
    for (const auto notation : {eighths, inches, millimetres}) {
        EXPECT_EQ(writeLength(std::numeric_limits<double>::quiet_NaN(), notation), "\u2013");
        EXPECT_EQ(writeLength(std::numeric_limits<double>::infinity(), notation), "\u2013");
    }
}

// Every multiple of 1/16 in from -100 ft to 100 ft. Counted in whole sixteenths, 254/160000 m each by definition.
TEST(LengthRoundTrip, EverySixteenthFromMinusToPlusAHundredFeet) {
    constexpr int most = 100 * 192;
    for (int count = -most; count <= most; ++count) {
        const double length_m = count * 254.0 / 160000;
        for (const auto notation : {eighths, inches}) {
            const std::string text = writeLength(length_m, notation);
            for (const auto assumed : {notation, millimetres}) {
                if (assumed == millimetres && notation == inches && text.find('/') == std::string::npos) continue;
                ASSERT_EQ(readLength(text, assumed), length_m) << text;
            }
            ASSERT_EQ(writeLength(readLength(text, notation), notation), text);
        }
        // The other way of calling the same sixteenth: one eighth up and one sixteenth off.
        if (count > 0 && count % 2 != 0) {
            const std::string text = std::to_string(count / 192) + "-" + std::to_string(count % 192 / 16) + "-" +
                                     std::to_string(count % 16 / 2 + 1) + "-";
            ASSERT_EQ(readLength(text, eighths), length_m) << text;
            ASSERT_EQ(readLength("-" + text, eighths), -length_m) << text;
        }
    }
}

TEST(LengthRoundTrip, AnyLengthComesBackWithinHalfAStep) {
    std::mt19937_64 random(3);
    std::uniform_real_distribution<double> length(-40, 40);
    // A millionth of a step for rounding of the halves themselves.
    constexpr double slack = 1 + 1e-6;
    for (int i = 0; i < 20000; ++i) {
        const double length_m = length(random);
        const auto miss = [length_m](LengthNotation notation) {
            return std::abs(readLength(writeLength(length_m, notation), notation) - length_m);
        };
        ASSERT_LE(miss(eighths), sixteenth_m / 2 * slack);
        ASSERT_LE(miss(inches), 0.0005 * inch_m * slack);
        ASSERT_LE(miss(millimetres), 0.00005 * slack);
    }
}

}  // namespace length_writing_test
}  // namespace fayline::units
