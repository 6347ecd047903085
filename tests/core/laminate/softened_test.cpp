#include "core/laminate/softened.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "core/laminate/stack.hpp"
#include "core/units/input_error.hpp"
#include "core/wood/air.hpp"
#include "core/wood/bending.hpp"
#include "tests/core/laminate/made_lines.hpp"
#include "tests/core/laminate/made_stacks.hpp"

namespace fayline::laminate {
namespace softened_test {

using made::planOn;
using made::stackOf;

model::Stack bentBefore(model::Softened how, double set, double thickness_m = 0.006) {
    model::Stack stack = stackOf(4, thickness_m);
    stack.strips[0].bentBefore = model::BentBefore{how, set, {}};
    return stack;
}

const LimitMet* limitOf(const StackPlan& plan, LimitKind kind) {
    for (const LimitMet& limit : plan.limits) {
        if (limit.kind == kind) return &limit;
    }
    return nullptr;
}

// Mean share of the water above the air's left in a sheet open on both faces, by small steps in place and time: nothing
// of the series that the code uses.
double leftAfter(double thickness_m, double diffusion_m2_s, double time_s) {
    constexpr int cells = 40;
    const double h = thickness_m / cells;
    const int steps = static_cast<int>(std::ceil(time_s * diffusion_m2_s / (0.2 * h * h)));
    const double across = diffusion_m2_s * time_s / steps / (h * h);
    std::vector<double> wet(cells, 1.0);
    for (int step = 0; step < steps; ++step) {
        std::vector<double> next = wet;
        for (int i = 0; i < cells; ++i) {
            // Beyond the face the air: mirrored so that the face itself is at 0.
            const double before = i > 0 ? wet[i - 1] : -wet[i];
            const double after = i + 1 < cells ? wet[i + 1] : -wet[i];
            next[i] += across * (before - 2 * wet[i] + after);
        }
        wet = next;
    }
    double sum = 0;
    for (const double cell : wet) sum += cell;
    return sum / cells;
}

TEST(Softened, AStripDriesAsASheetWorkedInSmallSteps) {
    const Drying drying = dryingTime(0.006, 20, 0.5);
    ASSERT_TRUE(drying.reaches);
    EXPECT_EQ(drying.airMoisture, wood::equilibriumMoisture(20, 0.5));
    const double left = (0.12 - drying.airMoisture) / (0.30 - drying.airMoisture);
    EXPECT_NEAR(leftAfter(0.006, 4e-10, drying.shortest_s), left, 0.005 * left);
    EXPECT_NEAR(leftAfter(0.012, 1e-10, drying.longest_s), left, 0.005 * left);
}

// Common practice, no source: a quarter-inch strip wants from a day to some days on the form. Only the order is asked.
TEST(Softened, AQuarterInchTakesHoursToDays) {
    const Drying drying = dryingTime(0.00635, 20, 0.5);
    EXPECT_GT(drying.shortest_s, 2 * 3600);
    EXPECT_LT(drying.shortest_s, 24 * 3600);
    EXPECT_GT(drying.longest_s, 24 * 3600);
    EXPECT_LT(drying.longest_s, 7 * 24 * 3600);
    EXPECT_EQ(drying.source.mark, units::Mark::fromMemory);
}

TEST(Softened, TwiceTheThicknessTakesFourTimesAsLongAndDamperAirLonger) {
    const Drying thin = dryingTime(0.004, 18, 0.5);
    const Drying thick = dryingTime(0.008, 18, 0.5);
    EXPECT_NEAR(thick.shortest_s, 4 * thin.shortest_s, 1e-6);
    EXPECT_NEAR(thick.longest_s, 4 * thin.longest_s, 1e-6);
    EXPECT_GT(dryingTime(0.004, 18, 0.6).longest_s, thin.longest_s);
    EXPECT_FALSE(dryingTime(0.004, 18, 0.75).reaches);
    EXPECT_THROW(dryingTime(0.004, 18, 1.2), units::InputError);
}

TEST(Softened, OnlyHeatRaisesTheLimit) {
    EXPECT_FALSE(hotBreakingStrain(model::Softened::no, 0).has_value());
    EXPECT_FALSE(hotBreakingStrain(model::Softened::soaked, 0).has_value());
    const auto steamed = hotBreakingStrain(model::Softened::steamed, 0);
    ASSERT_TRUE(steamed.has_value());
    EXPECT_EQ(steamed->value, 0.02);  // read (P) where no source is named
    EXPECT_EQ(steamed->source.mark, units::Mark::published);
    EXPECT_NEAR(hotBreakingStrain(model::Softened::boiled, 0.05)->value, 0.02 * 0.93, 1e-12);
    EXPECT_EQ(hotBreakingStrain(model::Softened::boiled, 0.05)->source.mark, units::Mark::fromMemory);
}

TEST(Softened, HotTheWholeCurveCountsDryTheRest) {
    const line::Line line = made::arc(-0.5, 1.0);
    const StackPlan dry = planOn(line, stackOf(4, 0.006));
    const StackPlan steamed = planOn(line, bentBefore(model::Softened::steamed, 0.75));
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_NEAR(steamed.strips[i].firstStrain, dry.strips[i].strain, 1e-12);
        EXPECT_NEAR(steamed.strips[i].strain, dry.strips[i].strain / 4, 1e-12);
        EXPECT_EQ(dry.strips[i].firstBreakingStrain, 0);
        EXPECT_LT(steamed.strips[i].chanceOfBreaking, dry.strips[i].chanceOfBreaking);
    }
    ASSERT_NE(limitOf(steamed, LimitKind::breaksHot), nullptr);
    EXPECT_TRUE(limitOf(steamed, LimitKind::breaksHot)->met);
    EXPECT_EQ(limitOf(dry, LimitKind::breaksHot), nullptr);
}

// Water alone raises no limit that is known: what breaks a dry strip breaks it in its first bend, however much it
// keeps.
TEST(Softened, SoakedTheFirstBendBreaksAsADryStripDoes) {
    const line::Line line = made::arc(-0.25, 1.0);
    const StackPlan dry = planOn(line, stackOf(4, 0.006));
    const StackPlan soaked = planOn(line, bentBefore(model::Softened::soaked, 0.75));
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_NEAR(soaked.strips[i].firstStrain, dry.strips[i].strain, 1e-12);
        EXPECT_NEAR(soaked.strips[i].strain, dry.strips[i].strain / 4, 1e-12);
        EXPECT_NEAR(soaked.strips[i].chanceOfBreaking, dry.strips[i].chanceOfBreaking, 1e-12);
    }
    EXPECT_GT(dry.strips[0].chanceOfBreaking, 0.5);
    EXPECT_NEAR(limitOf(soaked, LimitKind::breaks)->value, limitOf(dry, LimitKind::breaks)->value, 1e-12);
    EXPECT_FALSE(limitOf(soaked, LimitKind::breaks)->met);
    EXPECT_EQ(limitOf(soaked, LimitKind::breaksHot), nullptr);
}

// Radius 10 thicknesses: 5 % of strain; published least radii of steamed wood go there, with a strap only.
TEST(Softened, WhatOnlyAStrapCouldBendTearsAndEachStripIsLikelyToBreak) {
    const StackPlan tight = planOn(made::arc(-0.06, 1.0), bentBefore(model::Softened::steamed, 1));
    ASSERT_NE(limitOf(tight, LimitKind::breaksHot), nullptr);
    EXPECT_FALSE(limitOf(tight, LimitKind::breaksHot)->met);
    EXPECT_EQ(tight.strips[0].strain, 0);
    EXPECT_GT(tight.strips[0].chanceOfBreaking, 0.99);
    EXPECT_EQ(tight.spares, -1);
}

TEST(Softened, SoakedStripsKeepTheDryLimit) {
    const line::Line line = made::arc(-0.5, 1.0);
    const StackPlan soaked = planOn(line, bentBefore(model::Softened::soaked, 0));
    const StackPlan dry = planOn(line, stackOf(4, 0.006));
    EXPECT_EQ(soaked.strips[0].breakingStrain, dry.strips[0].breakingStrain);
    EXPECT_EQ(limitOf(soaked, LimitKind::breaksHot), nullptr);
}

}  // namespace softened_test
}  // namespace fayline::laminate
