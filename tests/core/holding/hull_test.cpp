#include "core/holding/props/hull.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "core/units/input_error.hpp"
#include "core/units/scale.hpp"
#include "tests/core/holding/made_props.hpp"
#include "tests/refusal.hpp"

namespace fayline::holding {
namespace hull_test {

using units::InputError;

struct Case {
    model::Hull hull;
    std::vector<Push> pushes;
};

// A hull on two to six blocks with its weight between the outer ones, and one to four pushes, mostly upward.
Case randomCase(std::mt19937& random) {
    std::uniform_real_distribution<double> share(0, 1);
    Case made;
    const int blocks = 2 + static_cast<int>(5 * share(random));
    for (int i = 0; i < blocks; ++i) made.hull.blocks.push_back({3 * share(random), 0.4 * share(random), {}});
    const auto [least, most] =
        std::ranges::minmax_element(made.hull.blocks, [](const auto& a, const auto& b) { return a.x_m < b.x_m; });
    made.hull.centreX_m = least->x_m + (most->x_m - least->x_m) * (0.02 + 0.96 * share(random));
    made.hull.centreY_m = share(random);
    made.hull.weight_kg = 100 + 2000 * share(random);
    made.hull.friction = 0.6 * share(random);
    const int pushes = 1 + static_cast<int>(4 * share(random));
    for (int i = 0; i < pushes; ++i) {
        made.pushes.push_back({i,
                               {4 * share(random) - 0.5, share(random)},
                               {1500 * (share(random) - 0.5), 2500 * (share(random) - 0.15)}});
    }
    return made;
}

std::vector<Push> times(std::vector<Push> pushes, double factor) {
    for (Push& push : pushes) {
        push.force_N.x_m *= factor;
        push.force_N.y_m *= factor;
    }
    return pushes;
}

bool fails(const HullPlan& plan) {
    return plan.lifts || plan.tips || plan.slides;
}

TEST(Hull, WithoutWeightThereIsNothingToSay) {
    EXPECT_FALSE(hullPlan(model::Hull{}, {}));
}

TEST(Hull, WithWeightAndNoBlockIsRefusedWithWhatWouldDo) {
    model::Hull hull;
    hull.weight_kg = 500;
    const InputError error = made::refusal([&] { (void)hullPlan(hull, {}); });
    EXPECT_EQ(error.path(), "holding.hull.blocks");
    EXPECT_NE(error.accepted().find("block"), std::string::npos);
}

TEST(Hull, OnOneBlockItStandsOnlyRightAboveIt) {
    model::Hull hull{.weight_kg = 500, .centreX_m = 1.1, .blocks = {{1.1, 0, {}}}};
    EXPECT_TRUE(hullPlan(hull, {})->standsAtRest);
    EXPECT_TRUE(std::isinf(hullPlan(hull, {})->margin));
    EXPECT_EQ(hullPlan(hull, {{0, {1.2, 0}, {0, 10}}})->margin, 0);
    EXPECT_TRUE(hullPlan(hull, {{0, {1.2, 0}, {0, 10}}})->tips);
    hull.centreX_m = 1.2;
    const HullPlan plan = *hullPlan(hull, {});
    EXPECT_FALSE(plan.standsAtRest);
    EXPECT_TRUE(plan.tips);
    EXPECT_EQ(plan.margin, 0);
}

TEST(Hull, PushedDownItStandsTheFirmer) {
    model::Hull hull{.weight_kg = 500, .centreX_m = 1, .blocks = {{0, 0, {}}, {2, 0, {}}}};
    const HullPlan plan = *hullPlan(hull, {{0, {1.4, 0.5}, {0, -3000}}});
    EXPECT_TRUE(std::isinf(plan.margin));
    EXPECT_EQ(plan.failsBy, HullPlan::Failure::never);
    EXPECT_TRUE(std::isinf(plan.mostPush_N));
    EXPECT_EQ(plan.worstProp, -1);
    EXPECT_NEAR(plan.blocks[0].push_N + plan.blocks[1].push_N, 500 * units::standardGravity_m_s2 + 3000, 1e-6);
}

TEST(Hull, WithoutFrictionTheLeastLevelPushMovesIt) {
    model::Hull hull{.weight_kg = 500, .centreX_m = 1, .friction = 0, .blocks = {{0, 0, {}}, {2, 0, {}}}};
    EXPECT_EQ(hullPlan(hull, {{0, {1, 0}, {1, 0}}})->margin, 0);
    EXPECT_TRUE(hullPlan(hull, {{0, {1, 0}, {1, 0}}})->slides);
    EXPECT_FALSE(hullPlan(hull, {{0, {1, 0}, {0, 100}}})->slides);
    // Two that oppose each other leave nothing level.
    const HullPlan plan = *hullPlan(hull, {{0, {1, 0.2}, {300.1, 100}}, {1, {1, 0.2}, {-300.1, 100}}});
    EXPECT_FALSE(plan.slides);
    EXPECT_GT(plan.margin, 1);
}

// Sums of forces and moments, written anew; and that pushes follow from one line over the arms.
TEST(Hull, OnRandomBlocksThePushesBalanceAndShareAsSpringsWould) {
    std::mt19937 random(51);
    int balanced = 0;
    int freed = 0;
    for (int round = 0; round < 2000; ++round) {
        const Case made = randomCase(random);
        const HullPlan plan = *hullPlan(made.hull, made.pushes);
        if (plan.lifts || plan.tips) continue;
        ++balanced;
        freed += plan.freesBlock;
        const double weight = made.hull.weight_kg * units::standardGravity_m_s2;
        double right = 0;
        double up = -weight;
        double turn = -weight * made.hull.centreX_m;
        for (const Push& push : made.pushes) {
            right += push.force_N.x_m;
            up += push.force_N.y_m;
            turn += push.at.x_m * push.force_N.y_m - push.at.y_m * push.force_N.x_m;
        }
        double carried = 0;
        for (const BlockPush& block : plan.blocks) carried += block.push_N;
        EXPECT_NEAR(carried + up, 0, 1e-9 * weight);
        std::vector<std::pair<double, double>> arms;  // and pushes
        for (const BlockPush& block : plan.blocks) {
            const double level = -right * block.push_N / carried;
            turn += block.x_m * block.push_N - block.y_m * level;
            EXPECT_GE(block.push_N, 0);
            arms.emplace_back(block.x_m + right / carried * block.y_m, block.push_N);
        }
        EXPECT_NEAR(turn, 0, 1e-8 * weight) << round;

        std::ranges::sort(arms);
        std::vector<std::pair<double, double>> touched;
        for (const auto& each : arms) {
            if (each.second > 0) touched.push_back(each);
        }
        if (touched.size() < 2) continue;
        const auto& [first, atFirst] = touched.front();
        const auto& [last, atLast] = touched.back();
        for (const auto& [arm, push] : arms) {
            const double along = atFirst + (atLast - atFirst) * (arm - first) / (last - first);
            EXPECT_NEAR(push, std::max(0.0, along), 1e-6 * weight) << round;
        }
    }
    EXPECT_GT(balanced, 500);
    EXPECT_GT(freed, 50);
}

// The margin comes from conditions that are linear in the factor, the standing from a balance at one factor.
TEST(Hull, AtRandomJustBelowTheMarginItStandsAndJustAboveItFails) {
    std::mt19937 random(52);
    int tips = 0;
    int slides = 0;
    int lifts = 0;
    for (int round = 0; round < 2000; ++round) {
        Case made = randomCase(random);
        if (round % 3 == 0) made.hull.friction = 10;
        if (round % 5 == 0) {  // straight through the weight
            made.pushes = {{0, {made.hull.centreX_m, 0}, {0, 1000}}};
        }
        const HullPlan plan = *hullPlan(made.hull, made.pushes);
        ASSERT_TRUE(plan.standsAtRest);
        if (std::isinf(plan.margin)) {
            for (const double factor : {0.5, 1.0, 10.0, 1000.0})
                EXPECT_FALSE(fails(*hullPlan(made.hull, times(made.pushes, factor)))) << round << " " << factor;
            continue;
        }
        for (const double share : {0.1, 0.5, 0.9, 1 - 1e-6})
            EXPECT_FALSE(fails(*hullPlan(made.hull, times(made.pushes, share * plan.margin)))) << round << " " << share;
        const HullPlan above = *hullPlan(made.hull, times(made.pushes, plan.margin * (1 + 1e-6)));
        EXPECT_TRUE(fails(above)) << round;
        if (plan.failsBy == HullPlan::Failure::tips) tips += above.tips;
        if (plan.failsBy == HullPlan::Failure::slides) slides += above.slides;
        if (plan.failsBy == HullPlan::Failure::lifts) lifts += above.lifts;
        EXPECT_EQ(fails(plan), plan.margin < 1) << round;
    }
    EXPECT_GT(tips, 200);
    EXPECT_GT(slides, 200);
    EXPECT_GT(lifts, 200);
}

TEST(Hull, WeightAndPushesTimesOneFactorHaveTheSameMargin) {
    std::mt19937 random(53);
    for (int round = 0; round < 300; ++round) {
        const Case made = randomCase(random);
        Case heavier = made;
        heavier.hull.weight_kg *= 3.7;
        heavier.pushes = times(made.pushes, 3.7);
        const HullPlan one = *hullPlan(made.hull, made.pushes);
        const HullPlan other = *hullPlan(heavier.hull, heavier.pushes);
        if (std::isinf(one.margin)) {
            EXPECT_TRUE(std::isinf(other.margin));
        } else {
            EXPECT_NEAR(one.margin, other.margin, 1e-9 * one.margin);
        }
        EXPECT_EQ(one.worstProp, other.worstProp);
        for (std::size_t i = 0; i < one.blocks.size(); ++i)
            EXPECT_NEAR(3.7 * one.blocks[i].push_N, other.blocks[i].push_N, 1e-6 * one.weight_N);
    }
}

TEST(Hull, MirroredItStandsTheSame) {
    std::mt19937 random(54);
    for (int round = 0; round < 300; ++round) {
        const Case made = randomCase(random);
        Case mirrored = made;
        mirrored.hull.centreX_m *= -1;
        for (model::Block& block : mirrored.hull.blocks) block.x_m *= -1;
        for (Push& push : mirrored.pushes) {
            push.at.x_m *= -1;
            push.force_N.x_m *= -1;
        }
        const HullPlan one = *hullPlan(made.hull, made.pushes);
        const HullPlan other = *hullPlan(mirrored.hull, mirrored.pushes);
        EXPECT_EQ(one.tips, other.tips);
        EXPECT_EQ(one.slides, other.slides);
        if (!std::isinf(one.margin)) {
            EXPECT_NEAR(one.margin, other.margin, 1e-9 * one.margin);
        }
        for (std::size_t i = 0; i < one.blocks.size(); ++i)
            EXPECT_NEAR(one.blocks[i].push_N, other.blocks[i].push_N, 1e-6 * one.weight_N);
    }
}

// Moved sideways as a whole, blocks, weight and pushes, nothing changes: moments may be taken about any place.
TEST(Hull, MovedAsAWholeItStandsTheSame) {
    std::mt19937 random(55);
    for (int round = 0; round < 300; ++round) {
        const Case made = randomCase(random);
        Case moved = made;
        moved.hull.centreX_m += 7;
        moved.hull.centreY_m -= 2;
        for (model::Block& block : moved.hull.blocks) {
            block.x_m += 7;
            block.y_m -= 2;
        }
        for (Push& push : moved.pushes) {
            push.at.x_m += 7;
            push.at.y_m -= 2;
        }
        const HullPlan one = *hullPlan(made.hull, made.pushes);
        const HullPlan other = *hullPlan(moved.hull, moved.pushes);
        if (!std::isinf(one.margin)) {
            EXPECT_NEAR(one.margin, other.margin, 1e-8 * one.margin) << round;
        }
        for (std::size_t i = 0; i < one.blocks.size(); ++i)
            EXPECT_NEAR(one.blocks[i].push_N, other.blocks[i].push_N, 1e-6 * one.weight_N);
    }
}

TEST(Hull, ABlockMovedUnderTheLoadCarriesMoreAndAFurtherOneWidensTheMargin) {
    model::Hull hull{.weight_kg = 500, .centreX_m = 1, .blocks = {{0, 0, {}}, {2, 0, {}}}};
    const std::vector<Push> pushes{{0, {2.5, 0}, {0, 800}}};
    const HullPlan before = *hullPlan(hull, pushes);
    hull.blocks[0].x_m = 0.5;
    const HullPlan nearer = *hullPlan(hull, pushes);
    EXPECT_GT(nearer.blocks[0].push_N, before.blocks[0].push_N);
    hull.blocks[0].x_m = -0.5;
    EXPECT_LT(hullPlan(hull, pushes)->blocks[0].push_N, before.blocks[0].push_N);
    EXPECT_GT(hullPlan(hull, pushes)->blocks[1].push_N, before.blocks[1].push_N);
    // It tips up about block 0, so that block further out holds more against it... up at 2.5 m from 0: 500 g x 1 / 2.5.
    EXPECT_GT(before.margin, nearer.margin);
}

// Two blocks at one place are one that is twice as stiff; a thousand are no trouble.
TEST(Hull, BlocksAtOnePlaceShareEvenly) {
    model::Hull hull{.weight_kg = 600, .centreX_m = 0.5, .blocks = {{0, 0, {}}, {1, 0, {}}, {0, 0, {}}, {1, 0, {}}}};
    const HullPlan plan = *hullPlan(hull, {});
    for (const BlockPush& block : plan.blocks) EXPECT_NEAR(block.push_N, plan.weight_N / 4, 1e-9);
    hull.blocks.assign(1000, {0.5, 0, {}});
    const HullPlan thousand = *hullPlan(hull, {});
    for (const BlockPush& block : thousand.blocks) EXPECT_NEAR(block.push_N, plan.weight_N / 1000, 1e-9);
}

// Along the prop from foot to head: straight up under the stack with its whole thrust, aslant in parts.
TEST(Hull, PropsPushTheBoatFromFootToHead) {
    made::PropWork work(0.0);
    work.piece.holding.stations = {made::propAt(0.2), made::propAt(0.8)};
    work.piece.holding.stations[1].strut.footX_m = 0.2;
    work.piece.holding.stations[1].strut.footY_m = -made::depth_m - 0.8;
    work.piece.holding.stations[0].strut.footY_m = -made::depth_m - 0.8;
    const std::vector<PropPlan> plans = work.plans({1000, 800});
    const std::vector<Push> pushes = pushesOf(work.onForm(), plans);
    ASSERT_EQ(pushes.size(), 2u);
    EXPECT_NEAR(pushes[0].force_N.x_m, 0, 1e-9);
    EXPECT_NEAR(pushes[0].force_N.y_m, 1000, 1e-9);
    EXPECT_EQ(pushes[1].at, plans[1].head);
    EXPECT_NEAR(pushes[1].force_N.y_m, 800, 1e-9);  // the pull is square to the level stack
    EXPECT_NEAR(pushes[1].force_N.x_m, 600, 1e-9);  // leaning 3 in 4
    EXPECT_NEAR(std::hypot(pushes[1].force_N.x_m, pushes[1].force_N.y_m), plans[1].thrust_N, 1e-9);
}

}  // namespace hull_test
}  // namespace fayline::holding
