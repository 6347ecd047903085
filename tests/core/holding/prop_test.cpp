#include "core/holding/props/prop.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "tests/core/holding/made_props.hpp"

namespace fayline::holding {
namespace prop_test {

using made::depth_m;
using made::propAt;
using made::PropWork;
using model::HoldKind;

constexpr double pi = std::numbers::pi;

TEST(Prop, StraightUnderALevelStackItGivesThePullItself) {
    PropWork work(0.0);
    work.piece.holding.stations = {propAt(0.4)};
    work.piece.holding.stations[0].strut.footX_m = 0.4;
    work.piece.holding.stations[0].strut.footY_m = -0.9;
    const PropPlan plan = work.plans({1200}).at(0);
    EXPECT_NEAR(plan.head.x_m, 0.4, 1e-12);
    EXPECT_NEAR(plan.head.y_m, -depth_m, 1e-12);
    EXPECT_NEAR(plan.length_m, 0.9 - depth_m, 1e-12);
    EXPECT_NEAR(plan.thrust_N, 1200, 1e-9);
    EXPECT_NEAR(plan.slant_rad, 0, 1e-9);
    EXPECT_EQ(plan.slips, Slips::no);
    EXPECT_FALSE(plan.footAssumed);
    EXPECT_FALSE(plan.cannotPress);
    EXPECT_FALSE(plan.footAboveHead);
}

// On paper (D): a stem that rises at 30 degrees to the right, its stack below; a prop that leans 10 degrees from the
// upright to the left is 20 degrees from square to the stack, so 1 000 N square needs 1 000 / cos 20 = 1 064.18 N.
TEST(Prop, ThrustIsThePullOverTheCosineOfTheSlant) {
    PropWork work(pi / 6);
    work.piece.holding.stations = {propAt(0.5)};
    model::Station& station = work.piece.holding.stations[0];
    const PropPlan first = work.plans({1000})[0];
    station.strut.footY_m = first.head.y_m - 1;
    station.strut.footX_m = first.head.x_m + std::tan(pi / 18);
    const PropPlan plan = work.plans({1000})[0];
    EXPECT_NEAR(plan.slant_rad, 20 * pi / 180, 1e-12);
    EXPECT_NEAR(plan.footSlant_rad, 10 * pi / 180, 1e-12);
    EXPECT_NEAR(plan.thrust_N, 1064.18, 0.005);
    EXPECT_EQ(plan.slips, Slips::head);  // wet glue
    EXPECT_EQ(plan.headFriction, 0);
    EXPECT_FALSE(plan.stopsHold);
    station.strut.stop = model::Stop::head;
    EXPECT_TRUE(work.plans({1000})[0].stopsHold);
    EXPECT_EQ(work.plans({1000})[0].slips, Slips::head);
    station.strut.stop = model::Stop::foot;
    EXPECT_FALSE(work.plans({1000})[0].stopsHold);
}

TEST(Prop, AHeadOnACaulOrOnAStripThatComesOffCountsAsDry) {
    PropWork work(0.0);
    work.piece.holding.stations = {propAt(0.5)};
    EXPECT_EQ(work.plans({1})[0].headFriction, 0);
    EXPECT_EQ(work.plans({1})[0].frictionSource.mark, units::Mark::commonPractice);
    work.piece.stack.strips.back().sacrificial = true;
    EXPECT_EQ(work.plans({1})[0].headFriction, safeFriction);
    work.piece.stack.strips.back().sacrificial = false;
    work.piece.holding.cauls.thickness_m = 0.02;
    const PropPlan plan = work.plans({1})[0];
    EXPECT_EQ(plan.headFriction, safeFriction);
    EXPECT_NEAR(plan.head.y_m, -depth_m - 0.02, 1e-12);
}

// On paper (D): with a caul the head stands within a tenth, the floor within three tenths of the height off the plumb
// line. The nearest place that holds is where the tighter of the two begins; told 2 mm within, for a tape is rounded.
TEST(Prop, TheFootThatHoldsIsTheNearestOnTheSameFloor) {
    PropWork work(0.0);
    work.piece.holding.cauls.thickness_m = 0.02;
    work.piece.holding.stations = {propAt(0.5)};
    model::Station& station = work.piece.holding.stations[0];
    const double height = 1;
    station.strut.footY_m = -depth_m - 0.02 - height;
    station.strut.footX_m = 1.5;
    PropPlan plan = work.plans({1})[0];
    EXPECT_EQ(plan.slips, Slips::both);
    ASSERT_TRUE(plan.footThatHolds);
    EXPECT_NEAR(plan.footThatHolds->x_m, 0.5 + 0.1 * height - 0.002, 1e-9);
    EXPECT_NEAR(plan.footThatHolds->y_m, *station.strut.footY_m, 1e-12);

    station.strut.stop = model::Stop::head;  // then the floor alone decides
    plan = work.plans({1})[0];
    EXPECT_NEAR(plan.footThatHolds->x_m, 0.5 + 0.3 * height - 0.002, 1e-9);

    // Standing there it holds, and a foot that holds already is not moved.
    station.strut.footX_m = plan.footThatHolds->x_m;
    plan = work.plans({1})[0];
    EXPECT_TRUE(plan.stopsHold);
    EXPECT_NEAR(plan.footThatHolds->x_m, *station.strut.footX_m, 1e-9);
}

TEST(Prop, UnderAWetStackThatSlopesMoreThanTheFloorHoldsNoFootHoldsWithoutAStop) {
    const double cone = std::atan(0.3);
    PropWork flatter(cone - 0.01);
    flatter.piece.holding.stations = {propAt(0.5)};
    PropPlan plan = flatter.plans({1})[0];
    ASSERT_TRUE(plan.footThatHolds);
    const double x = plan.head.x_m - plan.footThatHolds->x_m;
    const double y = plan.head.y_m - plan.footThatHolds->y_m;
    EXPECT_NEAR(std::atan2(-x, y), cone - 0.01, 1e-9);  // square to the stack

    PropWork steeper(cone + 0.01);
    steeper.piece.holding.stations = {propAt(0.5)};
    EXPECT_FALSE(steeper.plans({1})[0].footThatHolds);
    steeper.piece.holding.stations[0].strut.stop = model::Stop::foot;
    EXPECT_TRUE(steeper.plans({1})[0].footThatHolds);
}

// A stem that stands upright, its stack on the right: a prop from straight below would only rub along it.
TEST(Prop, StraightBelowAnUprightStemItCannotPress) {
    PropWork work(pi / 2);
    work.piece.holding.stations = {propAt(0.9)};
    PropPlan plan = work.plans({1000})[0];
    EXPECT_TRUE(plan.cannotPress);
    EXPECT_EQ(plan.thrust_N, 0);
    EXPECT_FALSE(plan.footThatHolds);
    EXPECT_TRUE(pushesOf(work.onForm(), {plan}).empty());

    work.piece.holding.stations[0].strut.stop = model::Stop::both;
    plan = work.plans({1000})[0];
    ASSERT_TRUE(plan.footThatHolds);
    EXPECT_GT(plan.footThatHolds->x_m, plan.head.x_m);
    work.piece.holding.stations[0].strut.footX_m = plan.footThatHolds->x_m;
    work.piece.holding.stations[0].strut.footY_m = plan.footThatHolds->y_m;
    plan = work.plans({1000})[0];
    EXPECT_FALSE(plan.cannotPress);
    EXPECT_TRUE(plan.stopsHold);
    EXPECT_LE(plan.slant_rad, pi / 3 + 1e-9);
    EXPECT_LT(plan.thrust_N, 2000);  // at 60 degrees, the foot 2 mm within
    EXPECT_GT(plan.thrust_N, 1980);
}

TEST(Prop, AFootAboveItsHeadIsTold) {
    PropWork work(0.0);
    work.piece.holding.stations = {propAt(0.5)};
    work.piece.holding.stations[0].strut.footX_m = 0.5;
    work.piece.holding.stations[0].strut.footY_m = 0.4;
    PropPlan plan = work.plans({1000})[0];
    EXPECT_TRUE(plan.footAboveHead);
    EXPECT_TRUE(plan.cannotPress);
    EXPECT_EQ(plan.thrust_N, 0);
    ASSERT_TRUE(plan.footThatHolds);  // on the floor where it would be reckoned without that foot
    EXPECT_LT(plan.footThatHolds->y_m, plan.head.y_m);

    // Overhead it is the other way round: under a stack it cannot press, over one on top of its form it can.
    work.piece.holding.stations[0].strut.to = model::PropTo::overhead;
    plan = work.plans({1000})[0];
    EXPECT_FALSE(plan.footAboveHead);
    EXPECT_TRUE(plan.cannotPress);
    work.piece.line.stripsOn = model::Side::left;
    plan = work.plans({1000})[0];
    EXPECT_FALSE(plan.cannotPress);
    EXPECT_NEAR(plan.slant_rad, 0, 1e-12);
    EXPECT_NEAR(plan.footSlant_rad, 0, 1e-12);
    EXPECT_NEAR(pushesOf(work.onForm(), {plan})[0].force_N.y_m, -1000, 1e-9);
    work.piece.holding.stations[0].strut.footY_m = -0.4;
    EXPECT_TRUE(work.plans({1000})[0].footAboveHead);
}

TEST(Prop, AFootThatIsNotGivenStandsStraightBelowOnTheFloorOfTheOthers) {
    PropWork work(0.0);
    work.piece.holding.stations = {propAt(0.2), propAt(0.8)};
    std::vector<PropPlan> plans = work.plans({1, 1});
    for (const PropPlan& plan : plans) {
        EXPECT_TRUE(plan.footAssumed);
        EXPECT_NEAR(plan.foot.x_m, plan.head.x_m, 1e-12);
        EXPECT_NEAR(plan.foot.y_m, plan.head.y_m - 0.6, 1e-12);
    }
    work.piece.holding.stations[1].strut.footX_m = 0.8;
    work.piece.holding.stations[1].strut.footY_m = -1.1;
    plans = work.plans({1, 1});
    EXPECT_TRUE(plans[0].footAssumed);
    EXPECT_NEAR(plans[0].foot.y_m, -1.1, 1e-12);
    EXPECT_FALSE(plans[1].footAssumed);
}

// The floor is level: without any foot given all props of a rising stem stand on one level, below the lowest head.
TEST(Prop, AssumedFeetStandOnOneLevel) {
    PropWork work(pi / 8);
    work.piece.holding.stations = {propAt(0.1), propAt(0.5), propAt(0.9)};
    const std::vector<PropPlan> plans = work.plans({1, 1, 1});
    EXPECT_NEAR(plans[0].foot.y_m, plans[0].head.y_m - 0.6, 1e-12);
    EXPECT_NEAR(plans[1].foot.y_m, plans[0].foot.y_m, 1e-12);
    EXPECT_NEAR(plans[2].foot.y_m, plans[0].foot.y_m, 1e-12);
}

TEST(Prop, ALongThinPropIsTooSlenderAndCarriesLess) {
    PropWork work(0.0);
    work.piece.holding.stations = {propAt(0.5)};
    model::Station& station = work.piece.holding.stations[0];
    station.strut.footY_m = -depth_m - 1.9;
    PropPlan plan = work.plans({1})[0];
    EXPECT_TRUE(plan.sectionAssumed);
    EXPECT_NEAR(plan.slenderness, 1.9 / 0.038, 1e-9);  // 50, just not above
    EXPECT_FALSE(plan.tooSlender);
    const double before = plan.allowable_N;
    // Euler by hand: pi^2 11 GPa 89 x 38^3 / 12 mm^4 over (1.9 m)^2 (E assumed, common practice).
    EXPECT_NEAR(*plan.bucklesAt_N, 12239, 1);
    EXPECT_LT(before, *plan.bucklesAt_N);
    station.strut.footY_m = -depth_m - 1.95;
    plan = work.plans({1})[0];
    EXPECT_TRUE(plan.tooSlender);
    EXPECT_LT(plan.allowable_N, before);
    station.strut.section_m = {0.038, 0.089};  // which way round it is written does not matter
    EXPECT_NEAR(work.plans({1})[0].allowable_N, plan.allowable_N, 1e-9);
    EXPECT_FALSE(work.plans({1})[0].sectionAssumed);
}

TEST(Prop, AJackIsKnownByItsRatedLoadUnlessItHasASection) {
    PropWork work(0.0);
    work.piece.holding.stations = {propAt(0.5, HoldKind::jack)};
    work.piece.holding.stations[0].most_N = 20000;
    PropPlan plan = work.plans({1})[0];
    EXPECT_FALSE(plan.woodenColumn);
    EXPECT_EQ(plan.allowable_N, 20000);
    EXPECT_FALSE(plan.bucklesAt_N);  // of it nothing but the rated load is known
    EXPECT_EQ(plan.most_N, 20000);
    EXPECT_EQ(plan.columnSource.mark, units::Mark::published);
    work.piece.holding.stations[0].strut.section_m = {0.089, 0.089};
    plan = work.plans({1})[0];
    EXPECT_TRUE(plan.woodenColumn);
    EXPECT_NE(plan.allowable_N, 20000);
    EXPECT_TRUE(plan.bucklesAt_N);
}

// A hollow that turns up to both sides, the stack below it; props without a foot, with one aside, and with one that is
// given in part. None is asked along itself for more than it has, and one that gives all it has is asked for just that.
TEST(Prop, WhatTheContactAsksOfItIsWithinItsStrength) {
    PropWork work(made::lineOf([](double) { return 0.5; }, 1.2, -0.3));
    for (const double at : {0.1, 0.4, 0.7, 1.0}) work.piece.holding.stations.push_back(propAt(at));
    for (model::Station& station : work.piece.holding.stations) station.most_N = 150;
    work.piece.holding.stations[1].strut.footX_m = 0.1;
    work.piece.holding.stations[1].strut.footY_m = -0.9;
    work.piece.holding.stations[2].strut.footX_m = 1.1;
    const Held held = hold(work.onForm());
    const std::vector<PropPlan> plans = propPlans(work.onForm(), held);
    ASSERT_EQ(plans.size(), 4u);
    int full = 0;
    for (std::size_t i = 0; i < plans.size(); ++i) {
        EXPECT_EQ(plans[i].number, held.stations[i].number);
        EXPECT_EQ(plans[i].index, held.stations[i].index);
        EXPECT_GT(plans[i].slant_rad, 0.01);
        EXPECT_LE(plans[i].thrust_N, 150 * (1 + 1e-9));
        if (held.stations[i].state != HoldState::full) continue;
        EXPECT_NEAR(plans[i].thrust_N, 150, 1e-6);
        ++full;
    }
    EXPECT_GT(full, 0);
}

TEST(Prop, ClampsAndSideJacksAreNoProps) {
    PropWork work(0.0);
    work.piece.holding.stations = {propAt(0.2, HoldKind::clamp), propAt(0.3, HoldKind::jack), propAt(0.4)};
    work.piece.holding.stations[1].side = true;
    const std::vector<PropPlan> plans = work.plans({1, 2, 3});
    ASSERT_EQ(plans.size(), 1u);
    EXPECT_EQ(plans[0].index, 2);
    EXPECT_EQ(plans[0].number, 3);
    EXPECT_NEAR(plans[0].thrust_N, 3, 1e-9);
}

model::Station randomProp(std::mt19937& random) {
    std::uniform_real_distribution<double> share(0, 1);
    model::Station station = propAt(share(random), share(random) < 0.5 ? HoldKind::prop : HoldKind::jack);
    if (share(random) < 0.7) station.strut.footX_m = 4 * share(random) - 2;
    if (share(random) < 0.7) station.strut.footY_m = 4 * share(random) - 2;
    if (share(random) < 0.5) station.strut.section_m = {0.02 + 0.1 * share(random), 0.02 + 0.1 * share(random)};
    if (share(random) < 0.3) station.strut.to = model::PropTo::overhead;
    station.strut.stop = static_cast<model::Stop>(static_cast<int>(4 * share(random)));
    station.most_N = 100 + 9900 * share(random);
    return station;
}

PropWork randomWork(std::mt19937& random) {
    std::uniform_real_distribution<double> share(0, 1);
    const double a = 4 * share(random) - 2;
    const double b = 4 * share(random) - 2;
    const double heading = 2 * pi * share(random);
    PropWork work(made::lineOf([=](double s) { return a + b * s; }, 1.0, heading, {share(random), share(random)}, 40));
    if (share(random) < 0.5) work.piece.line.stripsOn = model::Side::left;
    if (share(random) < 0.5) work.piece.holding.cauls.thickness_m = 0.03 * share(random);
    work.piece.holding.floor.friction = share(random);
    for (int i = 0; i < 3; ++i) work.piece.holding.stations.push_back(randomProp(random));
    return work;
}

// Turned about the y axis: x, heading's x part and the side change.
PropWork mirrored(const PropWork& work) {
    const line::Place start = work.line.at(0);
    PropWork other(made::lineOf([&](double s) { return -work.line.at(s).curvature_per_m; }, work.line.length(),
                                pi - start.heading_rad, {-start.x_m, start.y_m}, 40));
    other.piece = work.piece;
    other.piece.line.stripsOn = work.piece.line.stripsOn == model::Side::left ? model::Side::right : model::Side::left;
    for (model::Station& station : other.piece.holding.stations) {
        if (station.strut.footX_m) station.strut.footX_m = -*station.strut.footX_m;
    }
    return other;
}

TEST(Prop, AMirroredPieceHasTheMirroredPlans) {
    std::mt19937 random(41);
    int compared = 0;
    for (int round = 0; round < 100; ++round) {
        const PropWork work = randomWork(random);
        const std::vector<double> pulls{500, 700, 900};
        const std::vector<PropPlan> one = work.plans(pulls);
        const std::vector<PropPlan> other = mirrored(work).plans(pulls);
        ASSERT_EQ(one.size(), other.size());
        for (std::size_t i = 0; i < one.size(); ++i) {
            EXPECT_NEAR(one[i].head.x_m, -other[i].head.x_m, 1e-7);
            EXPECT_NEAR(one[i].foot.x_m, -other[i].foot.x_m, 1e-7);
            EXPECT_NEAR(one[i].foot.y_m, other[i].foot.y_m, 1e-7);
            EXPECT_NEAR(one[i].slant_rad, other[i].slant_rad, 1e-6);
            EXPECT_NEAR(one[i].allowable_N, other[i].allowable_N, 1e-5 * one[i].allowable_N);
            if (one[i].slant_rad < 1.5) {
                EXPECT_NEAR(one[i].thrust_N, other[i].thrust_N, 1e-4 * one[i].thrust_N);
            }
            if (one[i].footThatHolds && other[i].footThatHolds) {
                EXPECT_NEAR(one[i].footThatHolds->x_m, -other[i].footThatHolds->x_m, 1e-5);
                ++compared;
            }
        }
    }
    EXPECT_GT(compared, 50);
}

// What is said of slipping agrees with the statics of the bar: along it the force at an end is thrust times cosine
// square to the face and thrust times sine along it. And where a foot is said to hold, it does.
TEST(Prop, RandomPropsAgreeWithCoulombAndStayFinite) {
    std::mt19937 random(42);
    int holds = 0;
    for (int round = 0; round < 300; ++round) {
        PropWork work = randomWork(random);
        for (const PropPlan& plan : work.plans({500, 700, 900})) {
            for (const double value :
                 {plan.length_m, plan.thrust_N, plan.slant_rad, plan.footSlant_rad, plan.slenderness, plan.allowable_N,
                  plan.bucklesAt_N.value_or(0), plan.foot.x_m, plan.foot.y_m}) {
                EXPECT_TRUE(std::isfinite(value));
            }
            const bool foot = plan.slips == Slips::foot || plan.slips == Slips::both;
            const double along = plan.length_m * std::sin(plan.footSlant_rad);
            const double square = plan.length_m * std::cos(plan.footSlant_rad);
            EXPECT_NEAR(along, std::abs(plan.head.x_m - plan.foot.x_m), 1e-9);
            EXPECT_EQ(foot, !(square > 0 && along <= plan.footFriction * square * (1 + 1e-7))) << round;
            if (!plan.footThatHolds) continue;
            PropWork moved = work;
            model::Station& station = moved.piece.holding.stations[plan.index];
            // To a sixteenth of an inch, as it is read off; on wet glue there is but one place, square to the stack.
            constexpr double step_m = 0.0254 / 16;
            const double read_m = std::round(plan.footThatHolds->x_m / step_m) * step_m;
            const bool moves = plan.footThatHolds->x_m != plan.foot.x_m;
            const bool hasRoom = plan.headFriction > 0 || station.strut.stop == model::Stop::head ||
                                 station.strut.stop == model::Stop::both;
            station.strut.footX_m = moves && hasRoom ? read_m : plan.footThatHolds->x_m;
            station.strut.footY_m = plan.footThatHolds->y_m;
            for (const PropPlan& there : moved.plans({500, 700, 900})) {
                if (there.index != plan.index) continue;
                EXPECT_TRUE(there.stopsHold) << round;
                EXPECT_FALSE(there.cannotPress) << round;
                EXPECT_FALSE(there.footAboveHead) << round;
                ++holds;
            }
        }
    }
    EXPECT_GT(holds, 100);
}

// The furthest and the thinnest that a project file lets pass.
TEST(Prop, AtTheEndsOfWhatAFileMayHoldAllIsFinite) {
    for (const double far : {-1e6, 1e6}) {
        for (const double thin : {1e-9, 1e6}) {
            PropWork work(0.3);
            work.piece.holding.stations = {propAt(0.2), propAt(0.8)};
            work.piece.holding.stations[0].strut.footX_m = far;
            work.piece.holding.stations[1].strut.footY_m = far;
            for (model::Station& station : work.piece.holding.stations) station.strut.section_m = {thin, thin};
            work.piece.holding.hull.weight_kg = 1e9;
            work.piece.holding.hull.blocks = {{far, -far, {}}, {0, 0, {}}, {1e-9, far, {}}};
            const std::vector<PropPlan> plans = work.plans({1e9, 1e9});
            for (const PropPlan& plan : plans) {
                for (const double value :
                     {plan.thrust_N, plan.slenderness, plan.allowable_N, plan.bucklesAt_N.value_or(0)})
                    EXPECT_TRUE(std::isfinite(value));
            }
            const HullPlan hull = *hullPlan(work.piece.holding.hull, pushesOf(work.onForm(), plans));
            EXPECT_FALSE(std::isnan(hull.margin));
            EXPECT_FALSE(std::isnan(hull.mostPush_N));
            for (const BlockPush& block : hull.blocks) EXPECT_TRUE(std::isfinite(block.push_N));
        }
    }
}

TEST(Prop, AFootInItsHeadIsNoPropButFinite) {
    PropWork work(0.0);
    work.piece.holding.stations = {propAt(0.5)};
    work.piece.holding.stations[0].strut.footX_m = 0.5;
    work.piece.holding.stations[0].strut.footY_m = work.plans({1})[0].head.y_m;
    const PropPlan plan = work.plans({1})[0];
    EXPECT_TRUE(plan.cannotPress);
    EXPECT_TRUE(plan.footAboveHead);
    EXPECT_TRUE(std::isfinite(*plan.bucklesAt_N));
    EXPECT_TRUE(std::isfinite(plan.allowable_N));
}

}  // namespace prop_test
}  // namespace fayline::holding
