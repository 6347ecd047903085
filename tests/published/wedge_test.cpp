// Folding wedges: the angle below which a pair stays in by itself.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/holding/at_hand.hpp"

namespace fayline::holding {
namespace {

// A wedge of angle `angle_rad` squeezed between two faces without another force on it: both faces push along one line.
// It stays if some line lies within the friction cone of either face, each face's normal being half the angle off the
// line that halves the wedge.
bool stays(double angle_rad, double friction) {
    for (int i = -1000; i <= 1000; ++i) {
        const double lean = std::atan(friction) * i / 250;  // of the line from square to the middle of the wedge
        const bool upper = std::abs(lean - angle_rad / 2) <= std::atan(friction);
        const bool lower = std::abs(lean + angle_rad / 2) <= std::atan(friction);
        if (upper && lower) return true;
    }
    return false;
}

// Source: statics of a wedge with friction at both faces (D); at 0.1, the low friction to count on where slipping is
// the hazard, 11.4 degrees.
TEST(PublishedWedge, HoldsItselfBelowTwiceTheAngleOfFriction) {
    EXPECT_NEAR(wedgeHoldsItself(0.1) * 180 / std::numbers::pi, 11.4, 0.05);
    for (const double friction : {0.05, 0.1, 0.2, 0.3, 0.6}) {
        const double angle = wedgeHoldsItself(friction);
        EXPECT_TRUE(stays(angle * 0.999, friction)) << friction;
        EXPECT_FALSE(stays(angle * 1.001, friction)) << friction;
    }
    EXPECT_EQ(wedgeHoldsItself(0), 0);
}

}  // namespace
}  // namespace fayline::holding
