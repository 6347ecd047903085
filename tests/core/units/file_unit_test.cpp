#include "core/units/file_unit.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstring>
#include <random>

namespace fayline::units {
namespace file_unit_test {

constexpr FileUnit all[] = {asItIs,        inMillimetres, inPercent, inGrams,   inMillilitres,
                            inMegapascals, inMinutes,     inHours,   perMinute, inDegrees};

TEST(FileUnit, ReadsTheNearestDouble) {
    EXPECT_EQ(readInUnit("6.35", inMillimetres), 0.00635);
    EXPECT_EQ(readInUnit("0.15", inMillimetres), 0.00015);
    EXPECT_EQ(readInUnit("1.5875", inMillimetres), 0.0015875);
    EXPECT_EQ(readInUnit("-12.5e-1", inPercent), -0.0125);
    EXPECT_EQ(readInUnit("12000", inMegapascals), 12e9);
    EXPECT_EQ(readInUnit("500", inMillilitres), 500e-6);
    EXPECT_EQ(readInUnit("1.5", inMinutes), 90);
    EXPECT_EQ(readInUnit("72", inHours), 72 * 3600);
    EXPECT_EQ(readInUnit("1E+2", asItIs), 100);
    EXPECT_NEAR(readInUnit("90", inDegrees), std::acos(0.0), 1e-16);
}

TEST(FileUnit, WritesAsAPersonDoes) {
    EXPECT_EQ(writeInUnit(0.051, inMillimetres), "51");
    EXPECT_EQ(writeInUnit(0.00635, inMillimetres), "6.35");
    EXPECT_EQ(writeInUnit(0.00015, inMillimetres), "0.15");
    EXPECT_EQ(writeInUnit(-0.0, inMillimetres), "0");
    EXPECT_EQ(writeInUnit(12e9, inMegapascals), "12000");
    EXPECT_EQ(writeInUnit(1e-9, inMillimetres), "0.000001");
    EXPECT_EQ(writeInUnit(1e9, asItIs), "1000000000");
    EXPECT_EQ(writeInUnit(0.12 / 60, perMinute), "0.12");
    EXPECT_EQ(writeInUnit(0.10 / 60, perMinute), "0.1");
    EXPECT_EQ(writeInUnit(90, inMinutes), "1.5");
    EXPECT_EQ(writeInUnit(std::acos(0.0), inDegrees), "90");
    EXPECT_EQ(writeInUnit(-45 * std::acos(0.0) / 90, inDegrees), "-45");
}

TEST(FileUnit, FifteenFiguresOfALengthComeBackAsTheyWere) {
    std::mt19937_64 random(1);
    for (int i = 0; i < 100'000; ++i) {
        const auto digits = std::uniform_int_distribution<long long>(1, 999'999'999'999'999)(random);
        std::string figures = std::to_string(digits);
        while (figures.size() > 1 && figures.back() == '0') figures.pop_back();
        const auto point = std::uniform_int_distribution<std::size_t>(1, figures.size())(random);
        if (point < figures.size()) figures.insert(point, ".");
        EXPECT_EQ(writeInUnit(readInUnit(figures, inMillimetres), inMillimetres), figures);
    }
}

TEST(FileUnit, EveryDoubleComesBackToTheBit) {
    std::mt19937_64 random(2);
    for (const FileUnit unit : all)
        for (int i = 0; i < 5000; ++i) {
            const double mantissa = std::uniform_real_distribution<double>(-2, 2)(random);
            const double si = std::ldexp(mantissa, std::uniform_int_distribution<int>(-60, 60)(random));
            const double back = readInUnit(writeInUnit(si, unit), unit);
            ASSERT_EQ(back, si) << writeInUnit(si, unit);
        }
}

TEST(FileUnit, WhatNoDoubleHoldsIsInfiniteOrNothing) {
    EXPECT_EQ(readInUnit("1e308", inMegapascals), INFINITY);
    EXPECT_EQ(readInUnit("-1e99999999999", asItIs), -INFINITY);
    EXPECT_EQ(readInUnit("1e-400", asItIs), 0);
    EXPECT_EQ(readInUnit("1e-323", inMillilitres), 0);
    EXPECT_EQ(readInUnit("1e9999", inHours), INFINITY);
    EXPECT_EQ(readInUnit("0e9999", inHours), 0);
    EXPECT_EQ(readInUnit("0.000", inMillimetres), 0);
}

}  // namespace file_unit_test
}  // namespace fayline::units
