// Belt friction: what is left of a pull after a turn, and what the belt presses.
#include "core/holding/strap.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "tests/core/holding/held_by_hand.hpp"

namespace fayline::holding {
namespace strap_test {

// A strap all round an arc of `turn_rad`, from trim line to trim line, pulled with 1000 N at its end.
StrapPlan roundArc(double turn_rad, double friction) {
    const double radius = 0.5;
    made::Workpiece made(radius, radius * turn_rad);
    model::Station strap;
    strap.kind = model::HoldKind::strap;
    strap.at_m = 0;
    strap.strap.to_m = made.line.length();
    strap.most_N = 1000;
    strap.strap.friction = friction;
    return strapPlan(strap, 0, made.work());
}

// Source: Euler and Eytelwein's rule (D): after a quarter turn exp(-mu pi/2) of the pull is left.
TEST(PublishedStrap, AfterAQuarterTurnEulersShareOfThePullIsLeft) {
    EXPECT_NEAR(roundArc(std::numbers::pi / 2, 0.3).leastTension_N, 1000 * 0.624228, 1e-3);
    EXPECT_NEAR(roundArc(std::numbers::pi / 2, 0.1).leastTension_N, 1000 * 0.854636, 1e-3);
}

// Source: the holding ratio of one whole turn as engineers' handbooks print it, to two figures (from memory, M).
TEST(PublishedStrap, OneWholeTurnHoldsAsTheHandbooksSay) {
    const double printed[][2] = {{0.1, 1.9}, {0.2, 3.5}, {0.3, 6.6}, {0.4, 12}, {0.5, 23}, {0.6, 43}};
    for (const auto& [friction, ratio] : printed) {
        const double found = 1000 / roundArc(2 * std::numbers::pi, friction).leastTension_N;
        EXPECT_NEAR(found, ratio, ratio < 10 ? 0.05 : 0.5) << friction;
    }
}

// Source: the same rule summed up (D): T (1 - exp(-mu a)) / mu over an angle a, T a without friction (a hoop).
TEST(PublishedStrap, TheWholeThrustIsThatOfAHoopLessFriction) {
    const double angle = std::numbers::pi / 2;
    EXPECT_NEAR(roundArc(angle, 0).total_N, 1000 * angle, 1e-3);
    EXPECT_NEAR(roundArc(angle, 0.3).total_N, 1000 * (1 - std::exp(-0.3 * angle)) / 0.3, 0.01);
}

}  // namespace strap_test
}  // namespace fayline::holding
