#include "core/units/units.hpp"

#include <gtest/gtest.h>

#include <charconv>
#include <cmath>
#include <limits>
#include <random>
#include <string>

#include "core/units/input_error.hpp"
#include "core/units/source.hpp"

namespace fayline::units {
namespace units_test {

double figure(const std::string& text) {
    double value = 0;
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value;
}

TEST(Millimetres, AFigureOfUpToTwelveDigitsSurvivesMetresAndBack) {
    std::mt19937_64 random(12);
    std::uniform_int_distribution<int> digitCount(1, 12);
    std::uniform_int_distribution<int> exponent(-9, 6);
    for (int i = 0; i < 200000; ++i) {
        std::string text = random() % 2 == 0 ? "-" : "";
        const int count = digitCount(random);
        for (int digit = 0; digit < count; ++digit) text += static_cast<char>('0' + random() % 10);
        text += "e" + std::to_string(exponent(random) - count);
        const double mm = figure(text);
        ASSERT_EQ(toMillimetres(fromMillimetres(mm)), mm) << text;
    }
}

TEST(Millimetres, DecimalFiguresBecomeTheNearestMetres) {
    EXPECT_EQ(fromMillimetres(6.35), 0.00635);
    EXPECT_EQ(toMillimetres(0.00635), 6.35);
    EXPECT_EQ(toMillimetres(0.1 + 0.2), 300);
}

TEST(TwelveFigures, RoundsAndLeavesTheRestAlone) {
    EXPECT_EQ(toTwelveFigures(1.0000000000004), 1);
    EXPECT_EQ(toTwelveFigures(123456789012.4), 123456789012.0);
    EXPECT_EQ(toTwelveFigures(-0.07 * 100), -7);
    EXPECT_EQ(toTwelveFigures(0), 0);
    EXPECT_TRUE(std::isnan(toTwelveFigures(std::numeric_limits<double>::quiet_NaN())));
    EXPECT_TRUE(std::isinf(toTwelveFigures(std::numeric_limits<double>::infinity())));
}

// Source: NIST Special Publication 811, appendix B.8 (M): 1 psi = 6.894757 kPa, 1 US fl oz = 29.57353 mL,
// 1 oz = 28.34952 g. Tolerance: half a unit of the last printed digit.
TEST(Units, FactorsAgreeWithThePublishedOnes) {
    EXPECT_NEAR(psi_Pa, 6894.757, 0.0005);
    EXPECT_NEAR(fluidOunceUs_m3 * 1e6, 29.57353, 0.000005);
    EXPECT_NEAR(ounce_kg * 1000, 28.34952, 0.000005);
    EXPECT_EQ(toFahrenheit(100), 212);
    EXPECT_EQ(fromFahrenheit(32), 0);
}

TEST(Marks, AreWrittenAndReadBack) {
    for (const Mark mark :
         {Mark::published, Mark::transcribed, Mark::fromMemory, Mark::commonPractice, Mark::derived}) {
        EXPECT_EQ(readMark(markText(mark)), mark);
        EXPECT_STRNE(markMeaning(mark), "");
    }
    EXPECT_STREQ(markText(Mark::transcribed), "P*");
    EXPECT_THROW(readMark("p"), InputError);
    EXPECT_THROW(readMark(""), InputError);
}

TEST(InputErrors, AreSeenFromFurtherOut) {
    const InputError inner("stack.strips[0].thickness_mm", "-6 is not a thickness", "give a number above 0");
    const InputError outer = inner.within("pieces[1].");
    EXPECT_STREQ(outer.what(), "pieces[1].stack.strips[0].thickness_mm: -6 is not a thickness; give a number above 0");
    EXPECT_STREQ(InputError("", "wrong", "accepted").what(), "wrong; accepted");
}

}  // namespace units_test
}  // namespace fayline::units
