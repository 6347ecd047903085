#include "core/holding/held.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/holding/pressed.hpp"
#include "tests/core/holding/made_work.hpp"

namespace fayline::holding {
namespace held_test {

using made::clampedStem;
using made::onStem;
using made::Work;

Work reverse() {
    Work work = made::workOn(made::reverseCurvature, 1.1, 5, made::clampsAt({-0.03, 0.2, 0.45, 0.75, 0.9, 1.13}, 900));
    work.piece.stack.runsPastStart_m = 0.06;
    work.piece.stack.runsPastEnd_m = 0.09;
    return work;
}

// Everything that is told of the two answers agrees; `mirrored` counts the places from the other end.
void expectSame(const Held& one, const Held& other, double mirroredLength_m = 0) {
    const double tolerance = std::max(1e-9, 1e-6 * one.largest.gap_m);
    const auto there = [&](double at_m) { return mirroredLength_m > 0 ? mirroredLength_m - at_m : at_m; };
    EXPECT_EQ(one.outcome, Outcome::settled);
    EXPECT_EQ(other.outcome, Outcome::settled);
    EXPECT_NEAR(one.largest.gap_m, other.largest.gap_m, tolerance);
    EXPECT_NEAR(one.largestIfPadsHold_m, other.largestIfPadsHold_m, tolerance);
    EXPECT_NEAR(one.largestIfPadsSlide_m, other.largestIfPadsSlide_m, tolerance);
    EXPECT_NEAR(one.gapAtStart_m, mirroredLength_m > 0 ? other.gapAtEnd_m : other.gapAtStart_m, tolerance);
    EXPECT_NEAR(one.gapAtEnd_m, mirroredLength_m > 0 ? other.gapAtStart_m : other.gapAtEnd_m, tolerance);
    ASSERT_EQ(one.stations.size(), other.stations.size());
    for (std::size_t i = 0; i < one.stations.size(); ++i) {
        const HeldStation& station =
            mirroredLength_m > 0 ? other.stations[other.stations.size() - 1 - i] : other.stations[i];
        EXPECT_EQ(one.stations[i].index, station.index);
        EXPECT_NEAR(one.stations[i].at_m, there(station.at_m), 1e-9);
        EXPECT_NEAR(one.stations[i].pull_N, station.pull_N, 1e-5 * (1 + station.pull_N)) << i;
        EXPECT_NEAR(one.stations[i].gap_m, station.gap_m, tolerance);
    }
}

TEST(Held, IsTheSameForAPieceWalkedFromItsOtherEnd) {
    for (const model::Pads pads : {model::Pads::hold, model::Pads::slide}) {
        Work work = clampedStem();
        work.piece.holding.pads = pads;
        work.piece.stack.scarfedStart = model::Scarf{.slope = 10};
        work.piece.stack.widths = {{.at_m = 0, .width_m = 0.06}, {.at_m = 1.8, .width_m = 0.051}};
        const Work other = made::fromOtherEnd(work, made::stemCurvature);
        expectSame(hold(work), hold(other), 1.8);
    }
    const Work work = reverse();
    expectSame(hold(work), hold(made::fromOtherEnd(work, made::reverseCurvature)), 1.1);
}

TEST(Held, IsTheSameForATaperedPieceWalkedFromItsOtherEnd) {
    Work work = reverse();
    work.piece.stack.strips[0].tapersTo_m = 0.004;
    expectSame(hold(work), hold(made::fromOtherEnd(work, made::reverseCurvature)), 1.1);
}

TEST(Held, IsTheSameForAMirroredPiece) {
    const Work work = reverse();
    Work other = work;
    other.line = made::lineOf([](double s) { return -made::reverseCurvature(s); }, 1.1);
    other.piece.line.stripsOn = model::Side::right;
    expectSame(hold(work), hold(other));
}

TEST(Held, IsTheSameForAPieceTurnedInThePlane) {
    Work work = reverse();
    Work turned = work;
    turned.line = made::lineOf(made::reverseCurvature, 1.1, 2.1, {3, -2});
    expectSame(hold(work), hold(turned));
}

// Source: the tail of a strip drawn round a circle by its end (D): from the last contact to the pull EI / (P R) long,
// and tail^2 / (6 R) off there. R = 1.5 m to the middle of the strip, tail 150 mm.
TEST(Held, LeavesTheTailOfAStripDrawnRoundACircle) {
    const double radius = 1.5;
    const double tail = 0.15;
    Work work = made::workOn([&](double) { return -1 / (radius - 0.003); }, 1.2, 1, {});
    work.piece.stack.strips[0].thickness_m = 0.006;
    work.piece.stack.strips[0].moe_Pa = 11e9;
    work.piece.stack.ripAllowance_m = 0;
    work.piece.stack.widths = {{.at_m = 0, .width_m = 0.05}};
    work.piece.stack.runsPastEnd_m = 0;
    const double stiffness = 11e9 * 0.05 * std::pow(0.006, 3) / 12;
    model::Station end = made::clampAt(1.2, 2500, 0);
    end.pull_N = stiffness / (tail * radius);
    work.piece.holding.stations = {made::clampAt(0.1), made::clampAt(0.6), end};
    const Held held = hold(work);
    EXPECT_EQ(held.outcome, Outcome::settled);
    EXPECT_NEAR(held.gapAtEnd_m, tail * tail / (6 * radius), 0.02 * tail * tail / (6 * radius));
    EXPECT_EQ(held.stations.back().state, HoldState::given);
    EXPECT_NEAR(held.stations.back().pull_N, *end.pull_N, 1e-9);
    // The last place that is pressed lies a tail before the pull.
    double lastPressed_m = 0;
    for (const HeldSample& sample : held.samples) {
        if (sample.pressure_Pa > 0) lastPressed_m = sample.at_m;
    }
    EXPECT_NEAR(1.2 - lastPressed_m, tail * (radius - 0.003) / radius, 0.01);  // samples are 10 mm apart
}

TEST(Held, TwiceTheStiffnessAtTwiceThePullsLeavesTheSameGaps) {
    Work work = clampedStem();
    for (model::Station& station : work.piece.holding.stations) station.pull_N = 300;
    work.piece.stack.strips[0].moe_Pa = 10e9;
    const Held one = hold(work);
    for (model::Station& station : work.piece.holding.stations) station.pull_N = 600;
    work.piece.stack.strips[0].moe_Pa = 20e9;
    const Held two = hold(work);
    EXPECT_GT(one.largest.gap_m, 1e-4);
    EXPECT_NEAR(one.largest.gap_m, two.largest.gap_m, 1e-6 * one.largest.gap_m);
}

TEST(Held, AScarfedEndIsPulledDownWithLessAndStandsOffLess) {
    Work work = clampedStem();
    work.piece.holding.stations.back().at_m = 1.70;
    const Held whole = hold(work);
    work.piece.stack.scarfedEnd = model::Scarf{.slope = 10};
    const Held scarfed = hold(work);
    EXPECT_GT(whole.gapAtEnd_m, 1e-4);
    EXPECT_LT(scarfed.gapAtEnd_m, 0.95 * whole.gapAtEnd_m);
    // Three or four of nine strips are left beyond it, all nine run on its other side.
    EXPECT_LT(scarfed.stations.back().pull_N, 0.9 * whole.stations.back().pull_N);
}

TEST(Held, OnlyPostsBearSoThatAHollowBetweenThemStandsOpen) {
    Work work = made::workOn([](double) { return 0.5; }, 1.2, 4, made::clampsAt({0, 0.4, 0.8, 1.2}));
    const double onSolid = hold(work).largest.gap_m;
    work.piece.form.kind = model::FormKind::posts;
    for (const double at_m : {0.0, 0.4, 0.8, 1.2}) work.piece.form.posts.push_back({.at_m = at_m});
    const Held onPosts = hold(work);
    EXPECT_EQ(onPosts.outcome, Outcome::settled);
    EXPECT_GT(onPosts.largest.gap_m, 1e-4);
    for (const HeldSample& sample : onPosts.samples) {
        double off = 1;
        for (const model::Post& post : work.piece.form.posts) off = std::min(off, std::abs(sample.at_m - post.at_m));
        if (off > 0.019 + 1e-6) {
            EXPECT_EQ(sample.pressure_Pa, 0) << sample.at_m;
        }
    }
    EXPECT_GE(onPosts.largest.gap_m, onSolid);
}

TEST(Held, BetweenPostsARoundStackCutsTheCorner) {
    Work work = made::workOn([](double) { return -0.8; }, 1.2, 4, made::clampsAt({0, 0.6, 1.2}));
    EXPECT_EQ(hold(work).fallsInside.gap_m, 0);
    work.piece.form.kind = model::FormKind::posts;
    for (const double at_m : {0.0, 0.6, 1.2}) work.piece.form.posts.push_back({.at_m = at_m});
    const Held held = hold(work);
    // Two spans that are straight by nature over a middle post: inside by a few thousandths of the span.
    EXPECT_GT(held.fallsInside.gap_m, 0.001);
    EXPECT_LT(held.fallsInside.gap_m, 0.6 * 0.6 * 0.8 / 8);
}

TEST(Held, InPlaceNothingSupportsTheStackBeyondTheTrimLines) {
    Work work = made::workOn([](double) { return 0.4; }, 1.0, 4, made::clampsAt({0.05, 0.5, 0.95}));
    work.piece.form.kind = model::FormKind::inPlace;
    for (const HeldSample& sample : hold(work).samples) {
        if (sample.at_m < -1e-6 || sample.at_m > 1.0 + 1e-6) {
            EXPECT_EQ(sample.pressure_Pa, 0) << sample.at_m;
        }
    }
    work.piece.form.carriesOnEnd_m = 0.15;  // a hollow: the end of the strips bears on what carries on
    EXPECT_GT(hold(work).samples.back().pressure_Pa, 0);
}

TEST(Held, ThinnerStripsTowardTheEndAreHeldDownThereWithLess) {
    Work work = clampedStem();
    const double level = hold(work).stations.back().pull_N;
    work.piece.stack.strips[0].tapersTo_m = 0.003;
    EXPECT_LT(hold(work).stations.back().pull_N, 0.5 * level);  // an eighth of the stiffness at the clamp, more before
}

TEST(Held, MixedStripsPullInAnyOrderLikeOnesOfTheSameStiffness) {
    Work mixed = clampedStem();
    mixed.piece.stack.strips = {model::Strips{.count = 4, .moe_Pa = 11e9}, model::Strips{.count = 4, .moe_Pa = 5e9}};
    Work other = mixed;
    std::swap(other.piece.stack.strips[0], other.piece.stack.strips[1]);
    Work even = clampedStem();
    even.piece.stack.strips = {model::Strips{.count = 8, .moe_Pa = 8e9}};
    const Held one = hold(mixed);
    const Held two = hold(other);
    const Held alike = hold(even);
    for (std::size_t i = 0; i < one.stations.size(); ++i) {
        EXPECT_NEAR(one.stations[i].pull_N, two.stations[i].pull_N, 1e-6 * (1 + one.stations[i].pull_N));
        // The soft strips crush more: a foundation 14 % softer, whose length against the stiffness is 4 % longer.
        EXPECT_NEAR(one.stations[i].pull_N, alike.stations[i].pull_N, 0.05 * alike.stations[i].pull_N);
    }
}

TEST(Held, StripsThatHaveTakenHalfTheCurveAskForHalfThePull) {
    Work work = clampedStem();
    work.piece.stack.strips[0].moe_Pa = 11e9;
    const Held straight = hold(work);
    work.piece.stack.strips[0].bentBefore = model::BentBefore{.how = model::Softened::steamed, .set = 0.5};
    const Held bent = hold(work);
    EXPECT_NEAR(bent.stations[0].pull_N, straight.stations[0].pull_N / 2, 0.05 * straight.stations[0].pull_N);
    work.piece.stack.strips[0].bentBefore->set = 1;
    const Held wholly = hold(work);
    EXPECT_EQ(wholly.outcome, Outcome::settled);
    EXPECT_LT(wholly.largest.gap_m, 1e-7);
    for (const HeldStation& station : wholly.stations) EXPECT_LT(station.pull_N, 1);
}

TEST(Held, TellsTheContactHowFastTheCurvatureChanges) {
    const Work work = reverse();
    const Pressed pressed = pressAll(makeReady(work), work, work.piece.holding.stations);
    const Rod& rod = pressed.problem.rod;
    const std::vector<double> places = gaussPlaces(rod.mesh);
    ASSERT_EQ(places.size(), rod.curvature_per_m.size());
    for (std::size_t i = 1; i < places.size(); ++i) {
        const double change = rod.curvature_per_m[i] - rod.curvature_per_m[i - 1];
        const double step = places[i] - places[i - 1];
        if (places[i - 1] < 0 || places[i] > alongMiddle(makeReady(work).middle, 1.1)) continue;
        // The rate is 6 per square metre at most and changes by 36 in a metre.
        EXPECT_NEAR(change, step * (rod.curvatureRate_per_m2[i] + rod.curvatureRate_per_m2[i - 1]) / 2, 1e-5) << i;
    }
    EXPECT_GT(*std::ranges::max_element(rod.curvatureRate_per_m2), 4);
}

TEST(Held, AFootAsideLeavesAPropItsShareSquareToTheStack) {
    // A straight horizontal line, the strips below: a prop pushes up.
    Work work = made::workOn([](double) { return 0.0; }, 1.0, 2, made::clampsAt({0.5}));
    work.piece.line.stripsOn = model::Side::right;
    model::Station& prop = work.piece.holding.stations[0];
    prop.kind = model::HoldKind::prop;
    prop.most_N = 1000;
    EXPECT_NEAR(hold(work).stations[0].most_N, 1000, 1e-9);  // without a foot: straight below
    const double depth = 2 * 0.00635 + work.piece.stack.glueLine_m;
    prop.strut.footX_m = 0.5 - 0.3;
    prop.strut.footY_m = -depth - 0.4;
    EXPECT_NEAR(hold(work).stations[0].most_N, 1000 * 0.8, 1e-6);
    prop.strut.footY_m = -depth + 0.4;  // above its head it would pull
    EXPECT_EQ(hold(work).stations[0].most_N, 0);
    EXPECT_EQ(hold(work).stations[0].pull_N, 0);
}

TEST(Held, ACaulWidensThePadByTwiceItsThickness) {
    Work work = clampedStem();
    const Ready ready = makeReady(work);
    EXPECT_NEAR(pressAll(ready, work, work.piece.holding.stations).problem.holds[2].pad_m, 0.04, 1e-12);
    work.piece.holding.cauls.thickness_m = 0.02;
    EXPECT_NEAR(pressAll(ready, work, work.piece.holding.stations).problem.holds[2].pad_m, 0.08, 1e-12);
    work.piece.holding.stations[2].kind = model::HoldKind::screw;
    work.piece.holding.stations[2].screw.washer_m = 0.025;
    EXPECT_NEAR(pressAll(ready, work, work.piece.holding.stations).problem.holds[2].pad_m, 0.065, 1e-12);
}

// Source: belt friction (D): the thrust of a strap pulled from one end on a round stretch is its tension times the
// turn, T (1 - exp(-mu turn)) / mu in all. Turn 0.5 between its ends.
TEST(Held, AStrapPressesByItsTensionTimesTheTurn) {
    Work work = made::workOn([](double) { return -1.0; }, 1.0, 3, made::clampsAt({0.1, 0.9}));
    model::Station strap = made::clampAt(0.25, 2000);
    strap.kind = model::HoldKind::strap;
    strap.strap.to_m = 0.75;
    strap.strap.pullsFrom = model::PullsFrom::end;
    work.piece.holding.stations.push_back(strap);
    const Held held = hold(work);
    const double thrust = 2000 * (1 - std::exp(-0.3 * 0.5)) / 0.3;
    ASSERT_EQ(held.stations[1].index, 2);
    EXPECT_NEAR(held.stations[1].pull_N, thrust, 0.005 * thrust);
    EXPECT_NEAR(held.stations[1].most_N, thrust, 0.005 * thrust);
    EXPECT_EQ(held.stations[1].state, HoldState::given);
    work.piece.holding.stations[2].pull_N = 500;
    EXPECT_NEAR(hold(work).stations[1].pull_N, thrust / 4, 0.005 * thrust);
    EXPECT_NEAR(hold(work).stations[1].most_N, thrust, 0.005 * thrust);
}

TEST(Held, WhatIsPressedOnTheFormIsWhatTheStationsPull) {
    // Of a straight piece, where square to the form is one direction.
    Work work = made::workOn([](double) { return 0.0; }, 1.0, 3, made::clampsAt({0.2, 0.5, 0.8}));
    for (model::Station& station : work.piece.holding.stations) station.pull_N = 700;
    work.piece.stack.strips[0].moe_Pa = 11e9;
    const Held held = hold(work);
    double pressed = 0;
    const double width = 0.051 + 2 * 0.003;
    for (std::size_t i = 1; i < held.samples.size(); ++i) {
        const double step = held.samples[i].at_m - held.samples[i - 1].at_m;
        pressed += (held.samples[i].pressure_Pa + held.samples[i - 1].pressure_Pa) / 2 * step * width;
    }
    EXPECT_NEAR(pressed, 2100, 0.02 * 2100);  // summed up over samples 10 mm apart
    EXPECT_GT(held.greatestPressure_Pa, 0);
}

TEST(Held, TellsSamplesFromEndToEndWithTheTrimLines) {
    const Held held = hold(clampedStem());
    EXPECT_NEAR(held.samples.front().at_m, -0.1, 1e-9);
    EXPECT_NEAR(held.samples.back().at_m, 1.95, 1e-9);
    bool start = false;
    bool end = false;
    for (std::size_t i = 0; i < held.samples.size(); ++i) {
        start = start || std::abs(held.samples[i].at_m) < 1e-12;
        end = end || std::abs(held.samples[i].at_m - 1.8) < 1e-9;
        EXPECT_TRUE(std::isfinite(held.samples[i].gap_m + held.samples[i].pressure_Pa + held.samples[i].moment_N_m));
        if (i > 0) {
            EXPECT_LT(held.samples[i].at_m - held.samples[i - 1].at_m, 0.01 + 1e-9);
        }
        if (i > 0) {
            EXPECT_GT(held.samples[i].at_m, held.samples[i - 1].at_m);
        }
    }
    EXPECT_TRUE(start && end);
}

TEST(Held, BeginningFromTheLastAnswerChangesNothingButTheTime) {
    Work work = clampedStem();
    const Held before = hold(work);
    work.piece.holding.stations[3].at_m += 0.004;
    work.piece.stack.runsPastEnd_m += 0.003;
    const Held cold = hold(work);
    const Held warm = hold(work, &before);
    expectSame(cold, warm);
    EXPECT_LT(warm.steps, cold.steps);
}

TEST(Held, OtherStationsAnswerLikeAPieceThatHasThem) {
    Work work = clampedStem();
    const std::vector<model::Station> others = made::clampsAt({1.76, 0.05, 0.7});
    const Held tried = holdWith(work, others);
    work.piece.holding.stations = others;
    const Held had = hold(work);
    EXPECT_NEAR(tried.largest.gap_m, had.largest.gap_m, 1e-9);
    EXPECT_EQ(tried.stations[0].index, 1);
    EXPECT_EQ(tried.stations[2].number, 3);
}

}  // namespace held_test
}  // namespace fayline::holding
