#include "core/line/slips.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace fayline::line {
namespace slips_test {

using units::LengthNotation;

std::vector<Slip> slipsOf(const std::string& x, const std::string& y, double takeOff_m = 0,
                          LengthNotation notation = LengthNotation::feetInchesEighths) {
    return possibleSlips({x, y}, {units::readLength(x, notation), units::readLength(y, notation)}, takeOff_m, notation);
}

const Slip* withSaying(const std::vector<Slip>& slips, char axis, const std::string& says) {
    const auto found =
        std::ranges::find_if(slips, [&](const Slip& slip) { return slip.axis == axis && slip.says == says; });
    return found == slips.end() ? nullptr : &*found;
}

TEST(Slips, AnInchTooHighIsWrittenAnInchLower) {
    const auto slips = slipsOf("1-0-6+", "2-0-0");
    const Slip* slip = withSaying(slips, 'x', "1 inch high");
    ASSERT_TRUE(slip);
    EXPECT_EQ(slip->written[0], "0-11-6+");
    EXPECT_EQ(slip->written[1], "2-0-0");
    EXPECT_NEAR(slip->value_m[0], 0.3000375, 1e-12);
}

TEST(Slips, InchesAndEighthsSwap) {
    const auto slips = slipsOf("0-6-5", "0-3-0");
    const Slip* slip = withSaying(slips, 'x', "inches and eighths swapped");
    ASSERT_TRUE(slip);
    EXPECT_EQ(slip->written[0], "0-5-6");
}

TEST(Slips, ASwapThatCannotBeReadIsLeftOut) {
    // 0-9-2 swapped would be 0-2-9: nine eighths.
    EXPECT_FALSE(withSaying(slipsOf("0-9-2", "0-3-0"), 'x', "inches and eighths swapped"));
}

TEST(Slips, ASwapOfEqualFieldsIsLeftOut) {
    EXPECT_FALSE(withSaying(slipsOf("0-5-5", "0-3-0"), 'x', "inches and eighths swapped"));
}

TEST(Slips, APlusIsDroppedOrTurnedRound) {
    EXPECT_TRUE(withSaying(slipsOf("0-5-5", "0-3-0"), 'x', "a + dropped"));
    EXPECT_TRUE(withSaying(slipsOf("0-5-5+", "0-3-0"), 'x', "+ and - turned round"));
    EXPECT_FALSE(withSaying(slipsOf("0-5-5+", "0-3-0"), 'x', "a + dropped"));
}

TEST(Slips, CoordinatesExchangeBothTextsAndValues) {
    const auto slips = slipsOf("1-0-6+", "2-0-0");
    const Slip* slip = withSaying(slips, 'b', "x and y exchanged");
    ASSERT_TRUE(slip);
    EXPECT_EQ(slip->written[0], "2-0-0");
    EXPECT_NEAR(slip->value_m[0], 0.6096, 1e-12);
}

TEST(Slips, MillimetresSlipByTens) {
    const auto slips = slipsOf("317 mm", "52 mm", 0, LengthNotation::millimetres);
    const Slip* slip = withSaying(slips, 'x', "10 mm low");
    ASSERT_TRUE(slip);
    EXPECT_EQ(slip->written[0], "327 mm");
    EXPECT_TRUE(withSaying(slips, 'x', "two figures swapped"));
    EXPECT_FALSE(withSaying(slips, 'x', "1 inch low"));
}

TEST(Slips, MillimetresWrittenInABoatOfFeetAndInchesStayMillimetres) {
    const auto slips = slipsOf("317 mm", "52 mm");
    EXPECT_TRUE(withSaying(slips, 'y', "10 mm high"));
    EXPECT_FALSE(withSaying(slips, 'y', "1 inch high"));
}

TEST(Slips, AThicknessIsOfferedOnlyWhereOneIsTakenOff) {
    EXPECT_TRUE(withSaying(slipsOf("0-5-5", "0-3-0", 0.019), 'x', "one thickness high"));
    EXPECT_FALSE(withSaying(slipsOf("0-5-5", "0-3-0"), 'x', "one thickness high"));
}

TEST(Slips, EveryOfferedTextReadsAsTheOfferedValue) {
    for (const auto& slip : slipsOf("1-3-7+", "-0-8-0+", 0.019)) {
        for (const int axis : {0, 1}) {
            EXPECT_NEAR(units::readLength(slip.written[axis], LengthNotation::feetInchesEighths), slip.value_m[axis],
                        1e-9)
                << slip.says << " " << slip.written[axis];
        }
    }
}

TEST(Slips, AChosenWaterlineIsARarerSlipThanAMeasuredOffset) {
    const auto slips = slipsOf("0-11-6+", "2-0-0");
    EXPECT_LT(withSaying(slips, 'x', "1 inch low")->unlikely, withSaying(slips, 'y', "1 inch low")->unlikely);
}

}  // namespace slips_test
}  // namespace fayline::line
