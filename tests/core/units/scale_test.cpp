#include "core/units/scale.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace fayline::units {
namespace scale_test {

Display pounds() {
    Display display;
    display.weights = WeightUnit::ounce;
    return display;
}

// Standard gravity 9.80665 m/s2 (3rd CGPM, 1901; from memory, M): a kilogram-force is 9.80665 N, a pound-force
// 4.4482216 N.
TEST(Scale, AKilogramForceWeighsAKilogramAndAPoundForceAPound) {
    EXPECT_DOUBLE_EQ(massThatWeighs(9.80665), 1);
    EXPECT_NEAR(massThatWeighs(4.4482216152605), 0.45359237, 1e-12);
}

TEST(Scale, ShowsHalfKilogramsOrPounds) {
    EXPECT_EQ(writeOnScale(massThatWeighs(850), {}), "86.5 kg");  // 86.676
    EXPECT_EQ(writeOnScale(massThatWeighs(850), pounds()), "191 lb");
    EXPECT_EQ(writeOnScale(massThatWeighs(2500), {}), "255 kg");  // 254.93
}

TEST(Scale, ShowsSmallMassesToATenth) {
    EXPECT_EQ(writeOnScale(0.34, {}), "0.3 kg");
    EXPECT_EQ(writeOnScale(0, {}), "0 kg");
}

TEST(Scale, ShowsADashForWhatIsNoNumber) {
    EXPECT_EQ(writeOnScale(std::numeric_limits<double>::quiet_NaN(), {}), "\u2013");
    EXPECT_EQ(writeOnScale(std::numeric_limits<double>::infinity(), pounds()), "\u2013");
}

}  // namespace scale_test
}  // namespace fayline::units
