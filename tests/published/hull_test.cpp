// The hull on its blocks. Source: plane equilibrium of a rigid body, worked on paper below (derived, D). Weight 1 000
// kg = 9 806.65 N by standard gravity (exact by definition). Moments anticlockwise, x to the right, y up; R_i is the
// push of block i.
#include "core/holding/props/hull.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace fayline::holding {
namespace hull_test {

constexpr double W = 9806.65;

model::Hull hullOn(const std::vector<line::Xy>& blocks, double centreX_m, double friction = 0.3) {
    model::Hull hull{.weight_kg = 1000, .centreX_m = centreX_m, .centreY_m = 1, .friction = friction};
    for (const line::Xy& at : blocks) hull.blocks.push_back({at.x_m, at.y_m, {}});
    return hull;
}

Push push(int index, double x, double y, double right_N, double up_N) {
    return {index, {x, y}, {right_N, up_N}};
}

// Two blocks at x = 0 and 2, weight at x = 0.8, no push.
//   about x = 0:  2 R1 = 0.8 W            R1 = 3 922.66
//   upward:       R0 + R1 = W             R0 = 5 883.99
TEST(PublishedHull, TwoBlocksAtRest) {
    const HullPlan plan = *hullPlan(hullOn({{0, 0}, {2, 0}}, 0.8), {});
    EXPECT_NEAR(plan.blocks[0].push_N, 5883.99, 1e-6);
    EXPECT_NEAR(plan.blocks[1].push_N, 3922.66, 1e-6);
    EXPECT_FALSE(plan.lifts || plan.tips || plan.slides || plan.freesBlock);
    EXPECT_TRUE(plan.standsAtRest);
    EXPECT_TRUE(std::isinf(plan.margin));
    EXPECT_EQ(plan.worstProp, -1);
    EXPECT_EQ(plan.mostPush_N, 0);
}

// The same under 3 000 N straight up at x = 1.5.
//   about x = 0:  2 R1 = 0.8 W - 1.5 x 3000 = 7 845.32 - 4 500     R1 = 1 672.66
//   upward:       R0 = W - 3000 - R1                               R0 = 5 133.99
// Times f: R1 = 0 at f = 7 845.32 / 4 500 = 1.743404; R0 = 0 at f = 1.2 W / (0.5 x 3000) = 7.845; all lifts at
// f = W / 3000 = 3.269. So it tips, about block 0, at 1.743404; with a margin of 2: 3000 x 1.743404 / 2 = 2 615.107 N.
TEST(PublishedHull, TwoBlocksWithAPropBetween) {
    const HullPlan plan = *hullPlan(hullOn({{0, 0}, {2, 0}}, 0.8), {push(4, 1.5, 0.3, 0, 3000)});
    EXPECT_NEAR(plan.blocks[0].push_N, 5133.99, 1e-6);
    EXPECT_NEAR(plan.blocks[1].push_N, 1672.66, 1e-6);
    EXPECT_FALSE(plan.lifts || plan.tips || plan.slides);
    EXPECT_NEAR(plan.margin, 1.743404, 1e-6);
    EXPECT_EQ(plan.failsBy, HullPlan::Failure::tips);
    EXPECT_NEAR(plan.mostPush_N, 2615.107, 1e-3);
    EXPECT_EQ(plan.worstProp, 4);
    EXPECT_TRUE(std::isinf(plan.marginWithoutWorst));
}

// Tipping about a block: 1 000 N straight up at x = 10, far over the end.
//   about x = 0:  2 R1 = 7 845.32 - 10 000 < 0: no pushing block balances it; margin 7 845.32 / 10 000 = 0.784532.
// All that is left to carry, W - 1000, then bears on block 0.
TEST(PublishedHull, TipsAboutABlock) {
    const HullPlan plan = *hullPlan(hullOn({{0, 0}, {2, 0}}, 0.8), {push(0, 10, 0, 0, 1000)});
    EXPECT_TRUE(plan.tips);
    EXPECT_FALSE(plan.lifts);
    EXPECT_NEAR(plan.margin, 0.784532, 1e-9);
    EXPECT_NEAR(plan.blocks[0].push_N, W - 1000, 1e-6);
    EXPECT_EQ(plan.blocks[1].push_N, 0);
    EXPECT_TRUE(plan.blocks[1].lifts);
}

// Lifting: 10 000 N straight up through the weight. W - 10 000 < 0; margin W / 10 000 = 0.980665.
TEST(PublishedHull, LiftsOffEveryBlock) {
    const HullPlan plan = *hullPlan(hullOn({{0, 0}, {2, 0}}, 0.8), {push(0, 0.8, 0, 0, 10000)});
    EXPECT_TRUE(plan.lifts);
    EXPECT_NEAR(plan.margin, 0.980665, 1e-9);
    for (const BlockPush& block : plan.blocks) {
        EXPECT_EQ(block.push_N, 0);
        EXPECT_TRUE(block.lifts);
    }
}

// Sliding: a prop that pushes 1 000 N to the right and 1 500 N up at x = 0.5, y = 0; mu = 0.3.
//   level:        1 000 against 0.3 (W - 1 500) = 2 491.995
//   times f:      1 000 f = 0.3 (W - 1 500 f)     f = 2 941.995 / 1 450 = 2.028962
//   about x = 0:  2 R1 = 7 845.32 - 0.5 x 1 500 = 7 095.32     R1 = 3 547.66,  R0 = 8 306.65 - R1 = 4 758.99
TEST(PublishedHull, SlidesWhenTheFrictionOfTheBlocksIsSpent) {
    HullPlan plan = *hullPlan(hullOn({{0, 0}, {2, 0}}, 0.8), {push(0, 0.5, 0, 1000, 1500)});
    EXPECT_NEAR(plan.level_N, 1000, 1e-9);
    EXPECT_NEAR(plan.frictionMay_N, 2491.995, 1e-6);
    EXPECT_FALSE(plan.slides);
    EXPECT_NEAR(plan.margin, 2.028962, 1e-6);
    EXPECT_EQ(plan.failsBy, HullPlan::Failure::slides);
    EXPECT_NEAR(plan.blocks[0].push_N, 4758.99, 1e-6);
    EXPECT_NEAR(plan.blocks[1].push_N, 3547.66, 1e-6);
    plan = *hullPlan(hullOn({{0, 0}, {2, 0}}, 0.8, 0.12), {push(0, 0.5, 0, 1000, 1500)});
    EXPECT_TRUE(plan.slides);  // 0.12 x 8 306.65 = 996.8
    EXPECT_LT(plan.margin, 1);
}

// A level push of 1 000 N to the right at x = 1, y = 1, block 1 standing 0.5 m higher. Both blocks bear the same share
// of what they carry sideways: -1000 R_i / W.
//   about x = 0, y = 0:  2 R1 + 0.5 x 1000 R1 / W = 0.8 W + 1 x 1000     R1 = 8 845.32 / 2.05098581 = 4 312.716
TEST(PublishedHull, BlocksOfDifferentHeightShareFrictionByWhatTheyCarry) {
    const HullPlan plan = *hullPlan(hullOn({{0, 0}, {2, 0.5}}, 0.8), {push(0, 1, 1, 1000, 0)});
    EXPECT_NEAR(plan.blocks[1].push_N, 4312.716, 1e-3);
    EXPECT_NEAR(plan.blocks[0].push_N, W - 4312.716, 1e-3);
    // times f: block 0 is free when 1.2 W + f (-1000 x 1 + ... ) about block 1 at (2, 0.5) is 0:
    //   1.2 W = f 1000 (1 - 0.5)     f = 23.53596; it slides before, at 0.3 W / 1000 = 2.941995
    EXPECT_NEAR(plan.margin, 2.941995, 1e-6);
    EXPECT_EQ(plan.failsBy, HullPlan::Failure::slides);
    EXPECT_NEAR(hullPlan(hullOn({{0, 0}, {2, 0.5}}, 0.8, 10), {push(0, 1, 1, 1000, 0)})->margin, 23.53596, 1e-5);
}

// Three blocks at x = 0, 1, 2 that give way alike: R_i = a + b x_i; weight at x = 1.25.
//   upward:       3 a + 3 b = W
//   about x = 0:  3 a + 5 b = 1.25 W     b = 0.125 W, a = 0.208333 W
//   R = 0.208333 W, 0.333333 W, 0.458333 W
TEST(PublishedHull, ThreeBlocksShareAsEqualSprings) {
    const HullPlan plan = *hullPlan(hullOn({{0, 0}, {1, 0}, {2, 0}}, 1.25), {});
    EXPECT_NEAR(plan.blocks[0].push_N / W, 5.0 / 24, 1e-12);
    EXPECT_NEAR(plan.blocks[1].push_N / W, 8.0 / 24, 1e-12);
    EXPECT_NEAR(plan.blocks[2].push_N / W, 11.0 / 24, 1e-12);
}

// The same with W / 3 pushed straight up at x = 0.25: what is carried, 2/3 W, has its middle at
// (1.25 W - 0.25 W / 3) / (2/3 W) = 1.75. All three touched would give a < 0, so block 0 is free:
//   R1 + R2 = 2/3 W,  R1 + 2 R2 = 1.75 x 2/3 W     R2 = W / 2, R1 = W / 6
// It still stands. Times f it tips about block 2 when (1.25 W - 0.25 f W/3) = 2 (W - f W/3): 1.75 f / 3 = 0.75, f =
// 9/7.
TEST(PublishedHull, ThreeBlocksOfWhichOneComesFree) {
    const HullPlan plan = *hullPlan(hullOn({{0, 0}, {1, 0}, {2, 0}}, 1.25), {push(0, 0.25, 0, 0, W / 3)});
    EXPECT_NEAR(plan.blocks[0].push_N, 0, 1e-9);
    EXPECT_TRUE(plan.blocks[0].lifts);
    EXPECT_TRUE(plan.freesBlock);
    EXPECT_FALSE(plan.tips || plan.lifts || plan.slides);
    EXPECT_NEAR(plan.blocks[1].push_N, W / 6, 1e-8);
    EXPECT_NEAR(plan.blocks[2].push_N, W / 2, 1e-8);
    EXPECT_NEAR(plan.margin, 9.0 / 7, 1e-12);
    EXPECT_EQ(plan.failsBy, HullPlan::Failure::tips);
}

// Two props straight up, 2 000 N each at x = 1.9 and x = 0.2, blocks at 0 and 2, weight at 0.8.
//   both:         f = 7 845.32 / (3 800 + 400) = 1.867933
//   without 1.9:  about x = 2:  f = 11 767.98 / (1.8 x 2 000) = 3.268883
//   without 0.2:  f = 7 845.32 / 3 800 = 2.064558
TEST(PublishedHull, TheWorstPropIsTheOneWhoseRemovalHelpsMost) {
    const HullPlan plan =
        *hullPlan(hullOn({{0, 0}, {2, 0}}, 0.8), {push(3, 0.2, 0, 0, 2000), push(7, 1.9, 0, 0, 2000)});
    EXPECT_NEAR(plan.margin, 1.867933, 1e-6);
    EXPECT_EQ(plan.worstProp, 7);
    EXPECT_NEAR(plan.marginWithoutWorst, 3.268883, 1e-6);
    EXPECT_NEAR(plan.totalPush_N, 4000, 1e-9);
    EXPECT_NEAR(plan.mostPush_N, 4000 * 1.867933 / 2, 1e-2);
}

}  // namespace hull_test
}  // namespace fayline::holding
