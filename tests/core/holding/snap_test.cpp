// A stack that bridges a deep hollow and is pulled down in its middle. Over two lips that let it slide in, the pull
// that it resists with is greatest before it is down and falls from there on (beam on two smooth supports under a large
// deflection, D): a pull that goes on growing makes it jump; a screw that is turned on does not.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/contact/gaps.hpp"
#include "core/holding/closing.hpp"
#include "tests/core/holding/made_work.hpp"

namespace fayline::holding {
namespace snap_test {

const std::atomic<bool> goOn{false};
constexpr double radius_m = 0.5;  // of the hollow
constexpr double lip_m = 0.1;     // radius of the lips
constexpr double tail_m = 0.4;
constexpr double deep_rad = 1.15;
constexpr double both_N = 140;  // over the deep hollow it rests open and down under this

// The hollow turns by twice `half_rad`, each lip back by half_rad; what lies beyond is straight and in one line.
struct Hollow {
    double half_rad = 0;

    double hollow_m() const { return radius_m * half_rad; }
    double lips_m() const { return lip_m * half_rad; }
    double length_m() const { return 2 * (hollow_m() + lips_m() + tail_m); }
    double middle_m() const { return length_m() / 2; }
    // Of the form, convex above 0; a little rounded where one arc goes over into the next.
    double curvature(double s) const {
        const auto beyond = [](double off) { return 0.5 * (1 + std::tanh(off / 0.01)); };
        const double off = std::abs(s - middle_m());
        return -1 / radius_m * (1 - beyond(off - hollow_m())) +
               1 / lip_m * (beyond(off - hollow_m()) - beyond(off - hollow_m() - lips_m()));
    }
};

Problem pulledDown(const Hollow& hollow, double pull_N) {
    Problem problem;
    const double middle = hollow.middle_m();
    problem.rod.mesh = contact::meshBetween(0, hollow.length_m(), {middle - 0.01, middle, middle + 0.01}, 0.01);
    for (const double s : gaussPlaces(problem.rod.mesh)) {
        problem.rod.curvature_per_m.push_back(hollow.curvature(s));
        problem.rod.curvatureRate_per_m2.push_back((hollow.curvature(s + 1e-6) - hollow.curvature(s - 1e-6)) / 2e-6);
        problem.rod.stiffness_N_m2.push_back(20);
        problem.rod.natural_per_m.push_back(0);
        problem.rod.foundation_N_m2.push_back(2e7);
        problem.rod.load_N_m.push_back(0);
    }
    problem.anchor_m = middle;
    problem.holds = {{.at_m = middle, .pad_m = 0.02, .most_N = 1e5, .pull_N = pull_N}};
    return problem;
}

// The state after the pull has grown from a third to what it is, a hundredth at a time.
Contact grownTo(const Hollow& hollow, double pull_N) {
    Contact contact = solve(pulledDown(hollow, pull_N / 3));
    for (int i = 1; i <= 100; ++i) contact = solve(pulledDown(hollow, pull_N / 3 * (1 + 0.02 * i)), &contact);
    return contact;
}

// The state after the pull has fallen to what it is from half as much again.
Contact fallenTo(const Hollow& hollow, double pull_N) {
    const Contact contact = solve(pulledDown(hollow, 1.5 * pull_N));
    return solve(pulledDown(hollow, pull_N), &contact);
}

double gapInTheMiddle(const Hollow& hollow, const Contact& contact) {
    return gapAt(contact, hollow.middle_m()).gap_m;
}

TEST(Snap, OverADeepHollowOnePullHasTwoStatesOfBalance) {
    const Hollow deep{deep_rad};
    const Contact up = grownTo(deep, both_N);
    const Contact down = fallenTo(deep, both_N);
    ASSERT_NE(up.outcome, Outcome::notConverged);
    ASSERT_NE(down.outcome, Outcome::notConverged);
    EXPECT_GT(gapInTheMiddle(deep, up), 0.05);
    EXPECT_LT(gapInTheMiddle(deep, down), 1e-4);
    EXPECT_LT(up.residual, 1e-8);
    EXPECT_LT(down.residual, 1e-8);
    // Less deep, the same pull has one state however it has come about.
    const Hollow shallow{std::numbers::pi / 4};
    for (const double pull_N : {100.0, 200.0, 240.0}) {
        const Contact grown = grownTo(shallow, pull_N);
        const Contact fallen = fallenTo(shallow, pull_N);
        EXPECT_NEAR(gapInTheMiddle(shallow, grown), gapInTheMiddle(shallow, fallen), 1e-8) << pull_N;
    }
}

// Between the two lies a state of balance that is none to rest in: the stack leaves it for one or the other. Begun ever
// nearer to where it parts to either side, the solver comes by it, and says that the stack snaps.
TEST(Snap, TheContactSaysSoWhereItPassesABalanceThatDoesNotHold) {
    const Hollow deep{deep_rad};
    const Problem problem = pulledDown(deep, both_N);
    const Contact up = grownTo(deep, both_N);
    const Contact down = fallenTo(deep, both_N);
    const auto between = [&](double part) {
        Contact start = up;
        for (std::size_t i = 0; i < start.gap_m.size(); ++i) {
            start.gap_m[i] += part * (down.gap_m[i] - up.gap_m[i]);
            start.slope[i] += part * (down.slope[i] - up.slope[i]);
        }
        return start;
    };
    double toUp = 0;
    double toDown = 1;
    bool snapped = false;
    for (int i = 0; i < 40; ++i) {
        const double part = (toUp + toDown) / 2;
        const Contact start = between(part);
        const Contact found = solve(problem, &start);
        ASSERT_NE(found.outcome, Outcome::notConverged);
        snapped = snapped || found.outcome == Outcome::snaps;
        (gapInTheMiddle(deep, found) > 0.02 ? toUp : toDown) = part;
    }
    EXPECT_GT(toUp, 0);
    EXPECT_LT(toDown, 1);
    EXPECT_TRUE(snapped);
}

// The same as a piece, over a hollow that turns by 132 degrees: held at one lip, then pulled down in the middle. With
// pads that slide it bears a pull of 211.6 N with the middle 78 mm off; then that falls to 11 mm (found by halving, D).
made::Work overHollow(double half_rad, const model::Station& middle) {
    const Hollow hollow{half_rad};
    made::Work work = made::workOn([hollow](double s) { return -hollow.curvature(s); }, hollow.length_m(), 1,
                                   {made::clampAt(tail_m)});
    work.piece.stack.runsPastStart_m = work.piece.stack.runsPastEnd_m = 0;
    work.piece.stack.strips[0].breaksAt = 0.1;  // of a strip that bears such a bend
    work.piece.holding.stations.push_back(middle);
    work.piece.holding.stations.back().at_m = hollow.middle_m();
    work.piece.holding.pads = model::Pads::slide;
    return work;
}

model::Station given(double pull_N) {
    model::Station station = made::clampAt(0, 2500, 0.01);
    station.pull_N = pull_N;
    return station;
}

TEST(Snap, AGivenPullThatTheStackJumpsUnderIsToldWhileClosing) {
    const auto lastStep = [](const made::Work& work) { return closeInOrder(work, goOn).back(); };
    // The growth of some of these is halved an odd number of times before it jumps, of others an even one.
    for (const double pull_N : {230.0, 300.0, 320.0, 340.0, 360.0, 440.0, 560.0, 600.0}) {
        const ClosingStep jumps = lastStep(overHollow(deep_rad, given(pull_N)));
        EXPECT_EQ(jumps.outcome, Outcome::snaps) << pull_N;
        EXPECT_LT(jumps.gap_m, 0.012);
    }
    // Less only bends it; a screw draws it down evenly; nothing jumps over a shallower hollow. Pads that hold keep the
    // strip from sliding in over the lip until the clamp there pulls with all it has: it jumps at 223 N, where the
    // balance found does not hold.
    for (const double pull_N : {110.0, 200.0}) {
        const ClosingStep bent = lastStep(overHollow(deep_rad, given(pull_N)));
        EXPECT_EQ(bent.outcome, Outcome::settled) << pull_N;
        EXPECT_GT(bent.gap_m, 0.1);
    }
    made::Work holding = overHollow(deep_rad, given(300));
    holding.piece.holding.pads = model::Pads::hold;
    EXPECT_EQ(lastStep(holding).outcome, Outcome::snaps);
    EXPECT_EQ(lastStep(overHollow(deep_rad, made::clampAt(0, 2500, 0.01))).outcome, Outcome::settled);
    EXPECT_EQ(lastStep(overHollow(std::numbers::pi / 4, given(600))).outcome, Outcome::settled);
}

}  // namespace snap_test
}  // namespace fayline::holding
