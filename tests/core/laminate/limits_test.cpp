// What a stack is held against: breaking, radii, pins, room in a hollow, a line that meets itself.
#include "core/laminate/limits.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/laminate/stack.hpp"
#include "core/wood/bending.hpp"
#include "tests/core/laminate/made_lines.hpp"
#include "tests/core/laminate/made_stacks.hpp"

namespace fayline::laminate {
namespace limits_test {

using made::planOn;
using made::stackOf;
using model::Side;

constexpr double pi = std::numbers::pi;

const LimitMet& limitOf(const StackPlan& plan, LimitKind kind) {
    const auto found = std::ranges::find(plan.limits, kind, &LimitMet::kind);
    EXPECT_NE(found, plan.limits.end());
    return *found;
}

TEST(Stack, TwoPinsForbidSlidingOnlyWhereTheLineTurnsBetweenThem) {
    model::Stack stack = stackOf(8, 0.006, 0.0002);
    stack.pins = {model::Pin{0.3}, model::Pin{0.9}};
    const StackPlan bent = planOn(made::arc(-1.0, 1.2), stack);
    EXPECT_TRUE(bent.stagger.pinsForbidSliding);
    EXPECT_NEAR(bent.stagger.pinsSlide_m, 0.6 * 7 * 0.0062, 1e-8);
    EXPECT_FALSE(limitOf(bent, LimitKind::pins).met);
    const StackPlan flat = planOn(made::straight(1.5), stack);
    EXPECT_FALSE(flat.stagger.pinsForbidSliding);
    EXPECT_TRUE(limitOf(flat, LimitKind::pins).met);
}

TEST(Stack, PinsEitherSideOfAReverseForbidSlidingThoughTheEndsWouldMeet) {
    model::Stack stack = stackOf(8, 0.006);
    const line::Line line = made::lineOf([](double s) { return std::sin(2 * pi * s / 1.2); }, 1.2);
    stack.pins = {model::Pin{0.0}, model::Pin{0.6}, model::Pin{1.2}};
    EXPECT_TRUE(planOn(line, stack).stagger.pinsForbidSliding);
}

TEST(Stack, AHollowTighterThanTheStackIsDeepHasNoRoom) {
    const StackPlan plan = planOn(made::arc(0.03, 1.0), stackOf(8, 0.005));
    const LimitMet& limit = limitOf(plan, LimitKind::noRoom);
    EXPECT_FALSE(limit.met);
    EXPECT_NEAR(limit.value, 1 - 0.04 / 0.03, 1e-6);
    for (const Strip& strip : plan.strips) {
        EXPECT_TRUE(std::isfinite(strip.strain));
        EXPECT_LE(strip.strain, 1.0);
        EXPECT_GT(strip.leastRadius_m, 0);
    }
    EXPECT_EQ(plan.strips.back().strain, 1.0);
    EXPECT_TRUE(limitOf(planOn(made::arc(0.05, 1.0), stackOf(8, 0.005)), LimitKind::noRoom).met);
}

TEST(Stack, ARingWithOverRunRunsIntoItself) {
    model::Stack stack = stackOf(4, 0.005);
    const line::Line ring = made::arc(-0.5, 2 * pi - 0.2);
    EXPECT_TRUE(limitOf(planOn(ring, stack), LimitKind::crossesItself).met);
    stack.runsPastEnd_m = 0.2;
    const LimitMet limit = limitOf(planOn(ring, stack), LimitKind::crossesItself);
    EXPECT_FALSE(limit.met);
    EXPECT_LT(limit.at_m, 0.15);
    EXPECT_NEAR(limit.value, 0.5 * 2 * pi + limit.at_m, 0.03);
}

// An open loop whose line keeps clear of itself by 40 mm: strips of 15 mm on both passes do, of 50 mm do not.
TEST(Stack, AThickStackMeetsItselfWhereTheLineAloneWouldPass) {
    const line::Line spiral = made::lineOf([](double s) { return -1 / (0.25 + 0.0065 * s); }, 3.0);
    EXPECT_TRUE(limitOf(planOn(spiral, stackOf(1, 0.004)), LimitKind::crossesItself).met);
    EXPECT_FALSE(limitOf(planOn(spiral, stackOf(16, 0.004)), LimitKind::crossesItself).met);
}

TEST(Stack, ALineThatCrossesItselfIsFound) {
    const line::Line loop = made::lineOf([](double s) { return s > 0.5 && s < 2.5 ? 1.5 * pi : 0.0; }, 3.0);
    EXPECT_FALSE(limitOf(planOn(loop, stackOf(1, 0.003), Side::right), LimitKind::crossesItself).met);
}

TEST(Stack, ChanceOfBreakingFollowsStrainOverBreakingStrain) {
    const StackPlan plan = planOn(made::arc(-0.48, 1.0), stackOf(4, 0.00635));
    double whole = 1;
    for (const Strip& strip : plan.strips) {
        // An arc is strained evenly from end to end of the strip.
        const double even = strip.endsAt_m - strip.startsAt_m;
        EXPECT_NEAR(strip.sizeFactor, wood::sizeFactor(strip.thickness_m, even), 1e-4);
        EXPECT_EQ(strip.chanceOfBreaking,
                  wood::chanceOfBreaking(strip.strain, strip.breakingStrain * strip.sizeFactor));
        whole *= 1 - strip.chanceOfBreaking;
    }
    EXPECT_NEAR(plan.chanceAnyBreaks, 1 - whole, 1e-12);
    EXPECT_GT(plan.chanceAnyBreaks, 0.1);
    EXPECT_GT(plan.spares, 0);
}

TEST(Stack, LongStripsAreLikelierToBreakAndMeasuredOnesKeepTheirStrain) {
    const StackPlan brief = planOn(made::arc(-0.48, 0.5), stackOf(4, 0.00635));
    const StackPlan lengthy = planOn(made::arc(-0.48, 1.4), stackOf(4, 0.00635));
    EXPECT_NEAR(brief.strips[0].strain, lengthy.strips[0].strain, 1e-9);
    EXPECT_GT(lengthy.strips[0].chanceOfBreaking, 1.1 * brief.strips[0].chanceOfBreaking);
    model::Stack measured = stackOf(4, 0.00635);
    measured.strips[0].breaksAt = 0.008;
    const Strip strip = planOn(made::arc(-0.48, 1.4), measured).strips[0];
    EXPECT_EQ(strip.chanceOfBreaking, wood::chanceOfBreaking(strip.strain, 0.008));
}

// Bent hot first, then dry: the judge is the bend that is nearer to its limit, wherever the question is asked.
TEST(Stack, TheWorstStripIsThatOfEitherBend) {
    model::Stack stack = stackOf(3, 0.006);
    stack.strips.push_back(stack.strips[0]);
    stack.strips[1].count = 1;
    model::BentBefore steamed;
    steamed.how = model::Softened::steamed;
    steamed.set = 0.95;
    stack.strips[1].bentBefore = steamed;
    stack.strips[1].thickness_m = 0.030;
    const StackPlan plan = planOn(made::arc(-0.6, 1.0), stack);
    const Strip& worst = worstStrip(plan);
    EXPECT_EQ(worst.place, 4);
    EXPECT_DOUBLE_EQ(worstShare(worst), worst.firstStrain / worst.firstBreakingStrain);
    EXPECT_GT(worstShare(worst), 1);
    EXPECT_LT(worst.strain / worst.breakingStrain, plan.strips[0].strain / plan.strips[0].breakingStrain);
    EXPECT_NEAR(shareAt(worst, worst.strain / 2), worstShare(worst) / 2, 1e-12);
    EXPECT_FALSE(limitOf(plan, LimitKind::breaksHot).met);
}

TEST(Stack, StripsFarTooThickBreakAndNoNumberOfSparesHelps) {
    const StackPlan plan = planOn(made::arc(-0.4, 1.0), stackOf(4, 0.012));
    EXPECT_FALSE(limitOf(plan, LimitKind::breaks).met);
    EXPECT_FALSE(limitOf(plan, LimitKind::chance).met);
    EXPECT_EQ(plan.spares, -1);
}

TEST(Stack, EachGroupOfStripsIsHeldAgainstItsOwnLimit) {
    model::Stack stack = stackOf(2, 0.006);
    model::Strips cedar = stack.strips[0];
    cedar.species = "cedar_w_red";
    stack.strips.push_back(cedar);
    const StackPlan plan = planOn(made::arc(-0.7, 1.0), stack);
    EXPECT_EQ(limitOf(plan, LimitKind::ratioHardwood).limit, 100);
    EXPECT_EQ(limitOf(plan, LimitKind::ratioSoftwood).limit, 125);
    EXPECT_TRUE(limitOf(plan, LimitKind::ratioHardwood).met);
    EXPECT_FALSE(limitOf(plan, LimitKind::ratioSoftwood).met);
    EXPECT_EQ(limitOf(plan, LimitKind::ratioSoftwood).place, 3);  // on the smaller radius of the two
    for (const LimitMet& limit : plan.limits) EXPECT_FALSE(limit.source.text.empty());
}

TEST(Stack, LongleafPineBendsByTheLimitOfHardwoods) {
    const wood::Species* pine = wood::findSpecies(wood::builtInSpecies(), "pine_longleaf");
    ASSERT_NE(pine, nullptr);
    EXPECT_EQ(leastRatio(*pine), leastRatioHardwood);
}

}  // namespace limits_test
}  // namespace fayline::laminate
