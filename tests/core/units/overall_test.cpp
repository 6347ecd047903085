// The length of a whole piece as it is said aloud.
#include "core/units/overall.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "core/units/units.hpp"

namespace fayline::units {
namespace overall_test {

TEST(Overall, IsSaidInFeetAndInches) {
    const auto said = [](double feet) { return writeOverall(feet * foot_m, LengthNotation::feetInchesEighths); };
    EXPECT_EQ(said(16), "16 ft 0 in");
    EXPECT_EQ(said(15.99), "16 ft 0 in");
    EXPECT_EQ(said(2.5), "2 ft 6 in");
    EXPECT_EQ(said(4877 / 12.0), "406 ft");
    EXPECT_EQ(said(0.625), "7 1/2 in");
    EXPECT_EQ(said(0.999), "1 ft 0 in");
    EXPECT_EQ(said(99.99), "100 ft");
    EXPECT_EQ(said(0), "0 in");
    EXPECT_EQ(writeOverall(2.5 * foot_m, LengthNotation::inches), "2 ft 6 in");
}

TEST(Overall, IsSaidInMetres) {
    const auto said = [](double length_m) { return writeOverall(length_m, LengthNotation::millimetres); };
    EXPECT_EQ(said(4.877), "4.88 m");
    EXPECT_EQ(said(123.9), "124 m");
    EXPECT_EQ(said(0.4877), "488 mm");
    EXPECT_EQ(said(0.9996), "1.00 m");
    EXPECT_EQ(said(NAN), "\u2013");
}

}  // namespace overall_test
}  // namespace fayline::units
