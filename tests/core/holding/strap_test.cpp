#include "core/holding/strap.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "core/laminate/parallels.hpp"
#include "core/laminate/stack.hpp"
#include "core/units/input_error.hpp"
#include "tests/core/holding/held_by_hand.hpp"
#include "tests/refusal.hpp"

namespace fayline::holding {
namespace strap_test {

using made::Workpiece;

constexpr double degree = std::numbers::pi / 180;

model::Station strapFrom(double from_m, double to_m, double tension_N = 1000, double friction = 0.3) {
    model::Station strap;
    strap.kind = model::HoldKind::strap;
    strap.at_m = from_m;
    strap.strap.to_m = to_m;
    strap.most_N = tension_N;
    strap.strap.friction = friction;
    return strap;
}

double sumOf(const StrapPlan& plan) {
    double sum = 0;
    for (std::size_t i = 1; i < plan.places.size(); ++i) {
        sum += (plan.places[i].thrust_N_m + plan.places[i - 1].thrust_N_m) / 2 *
               (plan.places[i].at_m - plan.places[i - 1].at_m);
    }
    return sum;
}

TEST(Strap, OnAStraightOrHollowOutsideItPressesNothingAndLosesNothing) {
    for (const double radius : {0.0, -0.8, 2000.0}) {
        const Workpiece made(radius);
        const StrapPlan plan = strapPlan(strapFrom(0.1, 1.1), 0, made.work());
        EXPECT_EQ(plan.total_N, 0) << radius;
        EXPECT_EQ(plan.leastTension_N, 1000);
        EXPECT_NEAR(plan.idle_m, 1.0, 1e-12);
        EXPECT_NEAR(plan.longestIdle_m, 1.0, 1e-12);
        EXPECT_NEAR(plan.longestIdleFrom_m, 0.1, 1e-12);
        for (const StrapPlace& place : plan.places) EXPECT_EQ(place.thrust_N_m, 0);
    }
}

// Drawn at its end: there it pulls with all it was drawn to, at the other end with what the bend of 0.8 m over 0.8 rad
// leaves (Euler: e^(-0.3 turned)); drawn at both, with all of it at either.
TEST(Strap, ItsEndsPullOnWhatHoldsThemWithTheTensionLeftThere) {
    const Workpiece made(0.8);
    model::Station strap = strapFrom(0.2, 1.0);
    const StrapPlan plan = strapPlan(strap, 0, made.work());
    EXPECT_EQ(plan.endPull_N, 1000);
    EXPECT_NEAR(plan.startPull_N, 1000 * std::exp(-0.3 * plan.turned_rad), 1e-6);
    EXPECT_NEAR(plan.turned_rad, 1.0, 0.01);
    strap.strap.pullsFrom = model::PullsFrom::both;
    const StrapPlan both = strapPlan(strap, 0, made.work());
    EXPECT_EQ(both.startPull_N, 1000);
    EXPECT_EQ(both.endPull_N, 1000);
    strap.strap.to_m.reset();
    EXPECT_EQ(strapPlan(strap, 0, made.work()).endPull_N, 0);  // it goes round nothing
}

// The angle turned is that of the line; the thrust per length of the line is the tension over the line's own radius.
TEST(Strap, ItsTensionFallsByTheAngleFromWhereItIsPulled) {
    const double radius = 0.8;
    const Workpiece made(radius);
    model::Station strap = strapFrom(0.2, 1.0);
    const auto tension = [&](double at) { return strapThrust_N_m(layStrap(strap, 0, made.work()), made.work(), at); };
    EXPECT_NEAR(tension(0.9) * radius, 1000 * std::exp(-0.3 * 0.1 / radius), 1e-6);
    EXPECT_NEAR(tension(0.3) * radius, 1000 * std::exp(-0.3 * 0.7 / radius), 1e-6);
    strap.strap.pullsFrom = model::PullsFrom::start;
    EXPECT_NEAR(tension(0.3) * radius, 1000 * std::exp(-0.3 * 0.1 / radius), 1e-6);
    strap.strap.pullsFrom = model::PullsFrom::both;
    EXPECT_NEAR(tension(0.3) * radius, 1000 * std::exp(-0.3 * 0.1 / radius), 1e-6);
    EXPECT_NEAR(tension(0.9) * radius, 1000 * std::exp(-0.3 * 0.1 / radius), 1e-6);
    EXPECT_NEAR(strapPlan(strap, 0, made.work()).leastTension_N, 1000 * std::exp(-0.3 * 0.4 / radius), 0.01);
    strap.pull_N = 250;
    EXPECT_NEAR(tension(0.9) * radius, 250 * std::exp(-0.3 * 0.1 / radius), 1e-6);
    EXPECT_EQ(tension(0.199), 0);
    EXPECT_EQ(tension(1.001), 0);
}

TEST(Strap, WhichEndIsNamedFirstDoesNotMatter) {
    const Workpiece made(0.8);
    const StrapPlan one = strapPlan(strapFrom(0.2, 1.0), 0, made.work());
    const StrapPlan other = strapPlan(strapFrom(1.0, 0.2), 0, made.work());
    EXPECT_EQ(one.total_N, other.total_N);
    EXPECT_EQ(one.places.front().at_m, 0.2);
    EXPECT_EQ(other.places.back().at_m, 1.0);
}

// Two round bends with a hollow between. The strap lies straight across the hollow along the line that touches both
// bends, so each of them is left by half the hollow's angle before its end. Geometry of arcs (D).
TEST(Strap, AHollowIsBridgedFromBendToBend) {
    const double round = 0.5;
    const double hollow = 0.8;
    const double bend = round * 60 * degree;
    const double dip = hollow * 40 * degree;
    Workpiece made(0);
    made.line = made::lineOf([&](double s) { return s < bend || s > bend + dip ? -1 / round : 1 / hollow; },
                             2 * bend + dip, 0, {}, 600);
    const model::Station strap = strapFrom(0, made.line.length());
    const StrapPlan plan = strapPlan(strap, 0, made.work());
    EXPECT_NEAR(plan.turned_rad, 80 * degree, 0.02);
    EXPECT_NEAR(plan.idle_m, dip + 2 * round * 20 * degree, 0.011);
    EXPECT_NEAR(plan.longestIdleFrom_m, round * 40 * degree, 0.006);
    EXPECT_NEAR(plan.leastTension_N, 1000 * std::exp(-0.3 * 80 * degree), 6);
    const Strap laid = layStrap(strap, 0, made.work());
    EXPECT_GT(bearingTension_N(laid, round * 39 * degree), 0);
    EXPECT_EQ(bearingTension_N(laid, round * 41.2 * degree), 0);
    EXPECT_EQ(bearingTension_N(laid, bend + dip / 2), 0);
    // The tension that it keeps on the far side is the one with which it left the near side.
    EXPECT_NEAR(bearingTension_N(laid, round * 39 * degree), 1000 * std::exp(-0.3 * 41 * degree), 6);
}

// What friction takes from the tension and what the strap presses hold the pulls at its two ends in balance, in the
// plane.
TEST(Strap, ThrustAndFrictionBalanceItsTwoEnds) {
    Workpiece made(0);
    made.line = made::lineOf([](double s) { return -0.4 - 1.2 * std::pow(std::sin(2 * s), 2); }, 1.6);
    made.piece.stack.strips[0].tapersTo_m = 0.003;
    const Strap strap = layStrap(strapFrom(0.1, 1.5), 0, made.work());
    const auto direction = [&](double at) {
        const line::Xy a = laminate::pointBeside(made.line.at(at - 1e-5), 1,
                                                 laminate::faceDistance(made.piece.stack, {}, made.line, 8, at - 1e-5));
        const line::Xy b = laminate::pointBeside(made.line.at(at + 1e-5), 1,
                                                 laminate::faceDistance(made.piece.stack, {}, made.line, 8, at + 1e-5));
        const double run = std::hypot(b.x_m - a.x_m, b.y_m - a.y_m);
        return line::Xy{(b.x_m - a.x_m) / run, (b.y_m - a.y_m) / run};
    };
    constexpr int steps = 1400;
    const double step = 1.4 / steps;
    line::Xy sum{};
    for (int i = 0; i < steps; ++i) {
        const double at = 0.1 + (i + 0.5) * step;
        const line::Xy along = direction(at);
        const double thrust = strapThrust_N_m(strap, made.work(), at) * step;
        const double drag =
            bearingTension_N(strap, at + step / 2 - 1e-9) - bearingTension_N(strap, at - step / 2 + 1e-9);
        sum.x_m += thrust * along.y_m + drag * along.x_m;  // toward the form: to the right of the way along
        sum.y_m += -thrust * along.x_m + drag * along.y_m;
    }
    const line::Xy first = direction(0.1 + 1e-4);
    const line::Xy last = direction(1.5 - 1e-4);
    const double atFirst = strap.tension_N.front();
    const double atLast = strap.tension_N.back();
    EXPECT_NEAR(sum.x_m, atLast * last.x_m - atFirst * first.x_m, 1e-3 * 1000);
    EXPECT_NEAR(sum.y_m, atLast * last.y_m - atFirst * first.y_m, 1e-3 * 1000);
}

TEST(Strap, PerLengthOfAParallelItIsTheTensionTimesItsCurvature) {
    const Workpiece made(0.8);
    const Strap strap = layStrap(strapFrom(0.1, 1.1), 0, made.work());
    const double d = 0.024;
    EXPECT_NEAR(bearingTension_N(strap, 0.6) / (0.8 + d), strapThrust_N_m(strap, made.work(), 0.6) / (1 + d / 0.8),
                1e-6);
}

TEST(Strap, TheContactIsPressedByTheSameThrust) {
    Workpiece made(0.8);
    made.clamp(-0.05);
    made.clamp(1.25);
    made.piece.holding.stations.push_back(strapFrom(0.1, 1.1));
    const Held held = hold(made.work());
    EXPECT_NEAR(held.stations[1].pull_N, strapPlan(made.piece.holding.stations[2], 2, made.work()).total_N, 1);
    EXPECT_EQ(held.stations[1].index, 2);
}

TEST(Strap, BeyondTheStripsThereIsNothingToPress) {
    const Workpiece made(0.8);
    const StrapPlan plan = strapPlan(strapFrom(-3, 1e5), 0, made.work());
    EXPECT_NEAR(plan.places.front().at_m, -0.1, 1e-12);
    EXPECT_NEAR(plan.places.back().at_m, 1.3, 1e-12);
    EXPECT_NEAR(plan.turned_rad, 1.4 / 0.8, 1e-9);
}

TEST(Strap, WithoutAnotherEndItGoesRoundNothing) {
    const Workpiece made(0.8);
    model::Station strap = strapFrom(0.2, 1.0);
    strap.strap.to_m.reset();
    const StrapPlan plan = strapPlan(strap, 3, made.work());
    EXPECT_TRUE(plan.lacksEnd);
    EXPECT_EQ(plan.total_N, 0);
    EXPECT_EQ(bearingTension_N(layStrap(strap, 3, made.work()), 0.2), 0);
    strap.strap.to_m = strap.at_m;
    EXPECT_FALSE(strapPlan(strap, 3, made.work()).lacksEnd);
    EXPECT_EQ(strapPlan(strap, 3, made.work()).total_N, 0);
    strap.strap.to_m = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(made::refusal([&] { strapPlan(strap, 3, made.work()); }).path(), "holding.stations[3].to_mm");
}

// On lines of all kinds: finite, between nothing and the tension it is pulled with, the summed thrust that of the
// places, no more turn than the line has, and the same piece seen in a mirror gives the same.
TEST(Strap, OnRandomPiecesNothingIsBeyondReason) {
    std::mt19937 generator(7);
    const auto between = [&](double low, double high) {
        return low + (high - low) * (static_cast<double>(generator()) / 4294967296.0);
    };
    for (int i = 0; i < 200; ++i) {
        const double mean = between(-2, 2);
        const double sway = between(0, 3);
        const double wave = between(0.4, 3);
        const double length = between(0.2, 4);
        const auto curvature = [&](double s) { return mean + sway * std::sin(2 * std::numbers::pi * s / wave); };
        Workpiece made(0);
        made.line = made::lineOf(curvature, length);
        made.piece.stack.strips[0].count = 1 + static_cast<int>(between(0, i % 5 ? 12 : 80));  // some without room
        if (i % 4 == 0) made.piece.stack.strips[0].tapersTo_m = between(0.002, 0.012);
        model::Station strap = strapFrom(between(-0.3, length), between(0, length + 0.3), 1500, between(0, 1));
        strap.strap.pullsFrom = static_cast<model::PullsFrom>(i % 3);
        const StrapPlan plan = strapPlan(strap, 0, made.work());
        ASSERT_TRUE(std::isfinite(plan.total_N));
        EXPECT_GE(plan.total_N, 0);
        EXPECT_LE(plan.total_N, 1500 * plan.turned_rad * (1 + 1e-9));
        EXPECT_LE(plan.leastTension_N, 1500);
        EXPECT_LE(plan.longestIdle_m, plan.idle_m + 1e-12);
        for (const StrapPlace& place : plan.places) {
            ASSERT_TRUE(std::isfinite(place.thrust_N_m) && place.thrust_N_m >= 0);
            ASSERT_TRUE(place.tension_N <= 1500 * (1 + 1e-9) && place.tension_N >= plan.leastTension_N - 1e-6);
        }
        EXPECT_NEAR(sumOf(plan), plan.total_N, 0.02 * plan.total_N + 60) << i;

        Workpiece mirrored = made;
        mirrored.line = made::lineOf([&](double s) { return -curvature(s); }, length);
        mirrored.piece.line.stripsOn = model::Side::right;
        EXPECT_NEAR(strapPlan(strap, 0, mirrored.work()).total_N, plan.total_N, 1e-6 * 1500 + 0.02 * plan.total_N) << i;
    }
}

}  // namespace strap_test
}  // namespace fayline::holding
