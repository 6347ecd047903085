#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "core/units/length.hpp"
#include "tests/refusal.hpp"

namespace fayline::units {
namespace length_reading_test {

constexpr auto eighths = LengthNotation::feetInchesEighths;
constexpr auto inches = LengthNotation::inches;
constexpr auto millimetres = LengthNotation::millimetres;

// Sixteenths of an inch in metres, from whole numbers: 1/16 in is 254/160000 m by definition of the inch.
double sixteenths(double count) {
    return count * 254 / 160000;
}

struct Reading {
    const char* text;
    double expected_m;
};

TEST(LengthReading, FeetInchesEighthsInEveryShape) {
    const std::vector<Reading> readings{
        {"2-3-4", sixteenths(440)},
        {"2-3-4+", sixteenths(441)},
        {"2-3-4-", sixteenths(439)},
        {"0-0-4-", sixteenths(7)},
        {"-2-3-4", -sixteenths(440)},
        {"-2-3-4+", -sixteenths(441)},
        {"-2-3-4-", -sixteenths(439)},
        {" 2 - 3 - 4 + ", sixteenths(441)},
        {"2'-3 1/2\"", sixteenths(440)},
        {"2' 3\"", sixteenths(432)},
        {"2'", sixteenths(384)},
        {"2.5'", sixteenths(480)},
        {"2'3\"", sixteenths(432)},
        {"2 ft 3 in", sixteenths(432)},
        {"2ft. 3in.", sixteenths(432)},
        {"2'-3-4", sixteenths(440)},
        {"2'-3\"-4+", sixteenths(441)},
        {"2-3 1/2", sixteenths(440)},
        {"2-3-1/2", sixteenths(440)},
        {"2-3\"", sixteenths(432)},
        {"2-3.5", sixteenths(440)},
        {"2' 1/2\"", sixteenths(392)},
        {"0-0-0", 0},
        {"-0-0-0+", -sixteenths(1)},
        {"2-3-8-", sixteenths(447)},
        {"+2-3-4", sixteenths(440)},
        {"100-0-0", sixteenths(19200)},
        {"3 FEET", sixteenths(576)},
    };
    for (const auto notation : {eighths, inches, millimetres}) {
        for (const auto& [text, expected_m] : readings) EXPECT_EQ(readLength(text, notation), expected_m) << text;
    }
}

TEST(LengthReading, InchesAndMetricWhateverIsAssumed) {
    const std::vector<Reading> readings{
        {"27 1/2 in", 0.6985},  {"27.5 in", 0.6985},   {"27 1/2\"", 0.6985},   {"27-1/2", 0.6985},
        {"27 1/2", 0.6985},     {"3 1/2", 0.0889},     {"1/2", 0.0127},        {"-3/8 in", -0.009525},
        {"698.5 mm", 0.6985},   {"698,5 mm", 0.6985},  {"0.6985 m", 0.6985},   {"0,6985 m", 0.6985},
        {"69.85 cm", 0.6985},   {".6985m", 0.6985},    {"698.5MM", 0.6985},    {"1,250 m", 1.25},
        {"0,125 mm", 0.000125}, {"1250,5 mm", 1.2505}, {"6.985E2 mm", 0.6985}, {"- 5 mm", -0.005},
        {"55/2 in", 0.6985},    {"27.5''", 0.6985},    {"1000 m", 1000},       {"12 inches", 0.3048},
    };
    for (const auto notation : {eighths, inches, millimetres}) {
        for (const auto& [text, expected_m] : readings) EXPECT_EQ(readLength(text, notation), expected_m) << text;
    }
}

TEST(LengthReading, BareNumberIsInTheAssumedUnit) {
    EXPECT_EQ(readLength("698.5", millimetres), 0.6985);
    EXPECT_EQ(readLength("27.5", inches), 0.6985);
    EXPECT_EQ(readLength("27.5", eighths), 0.6985);
    EXPECT_EQ(readLength("-27,5", eighths), -0.6985);
    EXPECT_EQ(readLength("0", millimetres), 0);
    EXPECT_FALSE(std::signbit(readLength("-0", millimetres)));
}

TEST(LengthReading, TypographicSignsThatSpreadsheetsPaste) {
    EXPECT_EQ(readLength("2\u2032-3\u00BD\u2033", millimetres), sixteenths(440));
    EXPECT_EQ(readLength("2\u2019 3 \u00BD\u201D", millimetres), sixteenths(440));
    EXPECT_EQ(readLength("27\u00BD", millimetres), 0.6985);
    EXPECT_EQ(readLength("\u00BE", millimetres), sixteenths(12));
    EXPECT_EQ(readLength("\u00BC in", millimetres), sixteenths(4));
    EXPECT_EQ(readLength("3\u215E", millimetres), sixteenths(62));
    EXPECT_EQ(readLength("\u22122-3-4", millimetres), -sixteenths(440));
    EXPECT_EQ(readLength("2\u20133\u20134", millimetres), sixteenths(440));
    EXPECT_EQ(readLength("698,5\u00A0mm", inches), 0.6985);
    EXPECT_EQ(readLength("27 1\u20442 in", inches), 0.6985);
}

struct Nonsense {
    const char* text;
    const char* namedPart;  // must stand in wrong()
};

TEST(LengthReading, NonsenseNamesTheWrongPart) {
    const std::vector<Nonsense> list{
        {"", "nothing is written"},
        {"   ", "nothing is written"},
        {"2-13-4", "13 inches"},
        {"2-12-0", "12 inches"},
        {"2-3-9", "9 eighths"},
        {"2-3-8", "8 eighths"},
        {"2-3-8+", "8 eighths"},
        {"2-3-9-", "9 eighths"},
        {"1/0", "a fraction over 0"},
        {"3 1/0", "a fraction over 0"},
        {"3 5/4", "5/4 after 3"},
        {"2.5-3-4", "2.5 feet"},
        {"2-3.5-4", "3.5 inches"},
        {"2-3-4.5", "4.5 eighths"},
        {"2-3-4-5", "fourth number"},
        {"0-0-0-", "a sixteenth off nothing"},
        {"2-3", "may be feet and inches or inches and eighths"},
        {"2-7+", "may be feet and inches or inches and eighths"},
        {"2 3", "two numbers with nothing between them"},
        {"2 3 4", "two numbers with nothing between them"},
        {"1 250 mm", "do not go together"},
        {"2' 13\"", "13 inches"},
        {"2.5' 3\"", "2.5 feet"},
        {"2.5 1/2", "2.5 1/2 has a decimal and a fraction"},
        {"1.5/2", "1.5/2 is not a fraction of whole numbers"},
        {"1/", "under the stroke of 1/"},
        {"/2", "a number is missing before /"},
        {"-", "a sign without a number"},
        {"+", "a sign without a number"},
        {"--2", "a number is missing before -"},
        {"2--3", "a number is missing"},
        {"5+", "a + at the end without eighths"},
        {"27 1/2-", "a - at the end without eighths"},
        {"abc", "\"abc\" is not a unit"},
        {"5 furlongs", "\"furlongs\" is not a unit"},
        {"mm", "a number is missing before mm"},
        {"nan", "nan is not a length"},
        {"inf", "inf is not a length"},
        {"-inf", "inf is not a length"},
        {"1e400", "1e400 is beyond"},
        {"1e99999999999", "1e99999999999 is beyond"},
        {"1e9", "more than 1000 m"},
        {"1000.001 m", "more than 1000 m"},
        {"4000-0-0", "more than 1000 m"},
        {"99999999999999999999999999999999-0-0", "more than 1000 m"},
        {"1,250 mm", "1,250 may mean 1250 or 1.250"},
        {"1.250,5", "1.250,5 has more than one decimal mark"},
        {"1,250,000 mm", "more than one decimal mark"},
        {"2 mm 3 mm", "do not go together"},
        {"2 m 30 cm", "do not go together"},
        {"3\" 2'", "do not go together"},
        {"5 %", "\"%\" has no meaning"},
        {"=A1", "\"=\" has no meaning"},
        {"5 \u20AC", "\"\u20AC\" has no meaning"},
        {"5\xFF", "hexadecimal FF"},
        {"5\xC0\xAF", "hexadecimal C0"},
    };
    for (const auto& [text, namedPart] : list) {
        for (const auto notation : {eighths, inches, millimetres}) {
            SCOPED_TRACE(text);
            const InputError error = made::refusal([&] { readLength(text, notation); });
            EXPECT_NE(error.wrong().find(namedPart), std::string::npos) << error.what();
            EXPECT_FALSE(error.accepted().empty());
            EXPECT_TRUE(error.path().empty());
        }
    }
}

TEST(LengthReading, OverlongTextAndZeroBytesAreRefused) {
    EXPECT_THROW(readLength(std::string(65, '1'), millimetres), InputError);
    EXPECT_THROW(readLength(std::string("5\0mm", 4), millimetres), InputError);
    EXPECT_THROW(readLength(std::string(64, '9'), millimetres), InputError);
}

TEST(LengthReading, SentenceSaysWhatIsWrongAndWhatWouldDo) {
    EXPECT_STREQ(made::refusal([&] { readLength("2-13-4", millimetres); }).what(),
                 "13 inches: inches run from 0 to 11; write feet-inches-eighths like 2-3-4, for 2 feet 3 4/8 inches");
}

}  // namespace length_reading_test
}  // namespace fayline::units
