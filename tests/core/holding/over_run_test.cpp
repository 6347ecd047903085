#include "core/holding/over_run.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "core/contact/gaps.hpp"
#include "core/holding/pressed.hpp"
#include "tests/core/holding/made_work.hpp"

namespace fayline::holding {
namespace over_run_test {

using made::Work;

const std::atomic<bool> goOn{false};

double bend(double) {
    return -0.9;
}

// Nine strips round a bend with clamps that stop short of the ends, and weaker ones in the box than on the bend.
Work shortHeld() {
    Work work = made::workOn(bend, 1.5, 9, made::clampsAt({0.1, 0.45, 0.75, 1.05, 1.38}, 4000));
    work.piece.holding.gapLimit_m = 0.0002;
    work.piece.holding.tools = {model::Tool{.name = "Bar clamp", .most_N = 700, .pad_m = 0.04},
                                model::Tool{.name = "Light clamp", .most_N = 200, .pad_m = 0.03},
                                model::Tool{.name = "Jack", .kind = model::HoldKind::jack, .most_N = 9000}};
    return work;
}

OverRun neededFor(const Work& work) {
    return overRunNeeded(work, hold(work), goOn);
}

// The piece with this over-run at its end and a bar clamp on it.
Work withOverRun(Work work, double overRun_m) {
    work.piece.stack.runsPastEnd_m = overRun_m;
    work.piece.holding.stations.push_back(made::clampAt(work.line.length() + overRun_m - 0.02, 700));
    return work;
}

// The largest gap from the last station within the end trim line to that line.
double gapNearEnd(const Held& held, const Work& work) {
    double next_m = 0;
    for (const HeldStation& station : held.stations) {
        if (station.at_m <= work.line.length()) next_m = station.at_m;
    }
    double gap = held.gapAtEnd_m;
    for (const HeldSample& sample : held.samples) {
        if (sample.at_m >= next_m && sample.at_m <= work.line.length()) gap = std::max(gap, sample.gap_m);
    }
    return gap;
}

TEST(OverRun, WhatItSaysBringsTheEndDownAndTenMillimetresLessDoNot) {
    const Work work = shortHeld();
    const EndNeed need = neededFor(work).end;
    EXPECT_GT(need.gap_m, work.piece.holding.gapLimit_m);
    EXPECT_EQ(need.clamp_N, 700);
    ASSERT_TRUE(need.overRun_m.has_value());
    EXPECT_GT(*need.overRun_m, 0.015);
    const Work enough = withOverRun(work, *need.overRun_m);
    EXPECT_LE(gapNearEnd(hold(enough), enough), work.piece.holding.gapLimit_m);
    const Work tooLittle = withOverRun(work, *need.overRun_m - 0.01);
    EXPECT_GT(gapNearEnd(hold(tooLittle), tooLittle), work.piece.holding.gapLimit_m);
}

TEST(OverRun, AStrongerClampNeedsLess) {
    Work work = shortHeld();
    const double with700 = *neededFor(work).end.overRun_m;
    work.piece.holding.tools[0].most_N = 1500;
    EXPECT_LT(*neededFor(work).end.overRun_m, with700);
    work.piece.holding.tools[0].most_N = 300;
    EXPECT_GT(*neededFor(work).end.overRun_m, with700);
}

TEST(OverRun, ALastClampAsStrongAsItSaysBringsTheEndDown) {
    Work work = shortHeld();
    work.piece.holding.stations.back().at_m = 1.56;
    work.piece.holding.stations.back().most_N = 300;
    const EndNeed need = neededFor(work).end;
    ASSERT_TRUE(need.strongerClamp_N.has_value());
    EXPECT_GT(*need.strongerClamp_N, 300);
    work.piece.holding.stations.back().most_N = *need.strongerClamp_N;
    EXPECT_LE(gapNearEnd(hold(work), work), work.piece.holding.gapLimit_m * (1 + 1e-9));
    work.piece.holding.stations.back().most_N = 0.95 * *need.strongerClamp_N;
    EXPECT_GT(hold(work).largest.gap_m, work.piece.holding.gapLimit_m);
}

TEST(OverRun, NoClampIsStrongEnoughWhereTheLastOneStandsTooFarWithin) {
    // Beyond it the stack runs on straight, whatever the pull.
    EXPECT_FALSE(neededFor(shortHeld()).end.strongerClamp_N.has_value());
}

TEST(OverRun, ACaulAsThickAsItSaysBringsTheEndDown) {
    const Work work = shortHeld();
    const EndNeed need = neededFor(work).end;
    ASSERT_TRUE(need.caul_m.has_value());
    EXPECT_GT(*need.caul_m, 0.001);
    const Ready ready = makeReady(work);
    const auto gapWith = [&](double thickness_m) {
        const Caul caul{alongMiddle(ready.middle, 1.05), alongMiddle(ready.middle, ready.strips.to_m),
                        ready.loose.strips.back().modulus_Pa, thickness_m};
        const Pressed pressed = pressAll(ready, work, work.piece.holding.stations, caul);
        return greatestGap(solve(pressed.problem), alongMiddle(ready.middle, 1.38), alongMiddle(ready.middle, 1.5))
            .gap_m;
    };
    EXPECT_LE(gapWith(*need.caul_m), work.piece.holding.gapLimit_m * (1 + 1e-6));
    EXPECT_GT(gapWith(*need.caul_m - 0.001), work.piece.holding.gapLimit_m);
}

TEST(OverRun, AnEndThatLiesDownNeedsNoCaul) {
    Work work = shortHeld();
    work.piece.holding.gapLimit_m = 0.01;
    EXPECT_EQ(neededFor(work).end.caul_m, 0.0);
    EXPECT_EQ(neededFor(work).end.overRun_m, 0.0);
}

TEST(OverRun, IsTheSameForAPieceWalkedFromItsOtherEnd) {
    Work work = shortHeld();
    work.piece.stack.runsPastEnd_m = 0.12;
    const OverRun one = neededFor(work);
    const OverRun other = neededFor(made::fromOtherEnd(work, bend));
    EXPECT_EQ(one.start.overRun_m.has_value(), other.end.overRun_m.has_value());
    EXPECT_NEAR(one.start.overRun_m.value_or(-1), other.end.overRun_m.value_or(-1), 1e-9);
    EXPECT_NEAR(one.end.overRun_m.value_or(-1), other.start.overRun_m.value_or(-1), 1e-9);
    EXPECT_NEAR(one.end.caul_m.value_or(-1), other.start.caul_m.value_or(-1), 1e-9);
    EXPECT_NEAR(one.end.strongerClamp_N.value_or(-1), other.start.strongerClamp_N.value_or(-1), 1e-9);
}

TEST(OverRun, AskedOfPostsAPostStandsUnderTheClamp) {
    Work work = shortHeld();
    work.piece.form.kind = model::FormKind::posts;
    for (const model::Station& station : work.piece.holding.stations) {
        work.piece.form.posts.push_back({.at_m = station.at_m});
    }
    work.piece.form.posts.push_back({.at_m = 1.5});
    const EndNeed need = neededFor(work).end;
    ASSERT_TRUE(need.overRun_m.has_value());
    EXPECT_LE(*need.overRun_m, 0.5);
}

TEST(OverRun, WithoutToolsAClampLikeTheStrongestThereIsIsTried) {
    Work work = shortHeld();
    work.piece.holding.tools.clear();
    EXPECT_EQ(neededFor(work).end.clamp_N, 4000);
    work.piece.holding.stations.clear();
    const EndNeed bare = neededFor(work).end;
    EXPECT_FALSE(bare.strongerClamp_N.has_value());
    EXPECT_FALSE(bare.caul_m.has_value());
    EXPECT_TRUE(std::isfinite(bare.gap_m));
}

TEST(OverRun, StopsBetweenTrialsAndSaysNothingWhereThereIsNoContact) {
    const Work work = shortHeld();
    const std::atomic<bool> stop{true};
    EXPECT_FALSE(overRunNeeded(work, hold(work), stop).end.overRun_m.has_value());
    const Work noRoom = made::workOn([](double) { return 20.0; }, 0.1, 9, made::clampsAt({0.05}));
    EXPECT_FALSE(neededFor(noRoom).end.overRun_m.has_value());
}

}  // namespace over_run_test
}  // namespace fayline::holding
