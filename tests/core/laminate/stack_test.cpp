#include "core/laminate/stack.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/laminate/layers.hpp"
#include "core/laminate/limits.hpp"
#include "core/laminate/parallels.hpp"
#include "core/wood/bending.hpp"
#include "tests/core/laminate/made_lines.hpp"
#include "tests/core/laminate/made_stacks.hpp"

namespace fayline::laminate {
namespace stack_test {

using made::planOn;
using made::stackOf;
using model::Describes;
using model::Side;

constexpr double pi = std::numbers::pi;

// Rounding of sums and of a line made of pieces.
constexpr double fine = 1e-9;

// Source: geometry (D). A line that turns right with the strips on its left: round, each strip further out.
TEST(Stack, StripsRoundAnArcHaveTheStrainOfTheirOwnRadius) {
    const StackPlan plan = planOn(made::arc(-0.6, 1.5), stackOf(8, 0.00635, 0.00015));
    ASSERT_EQ(plan.strips.size(), 8u);
    for (const Strip& strip : plan.strips) {
        const double radius = 0.6 + (strip.place - 0.5) * 0.00635 + (strip.place - 1) * 0.00015;
        EXPECT_NEAR(strip.leastRadius_m, radius, 1e-8) << strip.place;
        EXPECT_NEAR(strip.strain, 0.00635 / (2 * radius), 1e-10) << strip.place;
        EXPECT_NEAR(strip.radiusOverThickness, radius / 0.00635, 1e-6) << strip.place;
        EXPECT_NEAR(strip.strainRadius_m, radius, 1e-8) << strip.place;
    }
    EXPECT_NEAR(plan.depth_m, 8 * 0.00635 + 7 * 0.00015, 1e-12);
}

TEST(Stack, StripsInAHollowLieOnSmallerRadiiFurtherOut) {
    const StackPlan plan = planOn(made::arc(0.6, 1.5), stackOf(4, 0.005, 0.0002));
    for (const Strip& strip : plan.strips) {
        const double radius = 0.6 - (strip.place - 0.5) * 0.005 - (strip.place - 1) * 0.0002;
        EXPECT_NEAR(strip.leastRadius_m, radius, 1e-8) << strip.place;
        EXPECT_NEAR(strip.strain, 0.005 / (2 * radius), 1e-10) << strip.place;
    }
}

TEST(Stack, TheDescribedLineMayBeTheMiddleOrTheOutside) {
    const model::Stack stack = stackOf(5, 0.006, 0.0002);
    const double depth = 5 * 0.006 + 4 * 0.0002;
    const line::Line line = made::arc(-1.0, 1.0);
    for (const auto& [describes, inside] :
         {std::pair(Describes::innerFace, 0.0), std::pair(Describes::middle, depth / 2),
          std::pair(Describes::outerFace, depth)}) {
        const StackPlan plan = planOn(line, stack, Side::left, describes);
        EXPECT_NEAR(plan.strips.front().leastRadius_m, 1.0 - inside + 0.003, 1e-8);
        EXPECT_NEAR(faceDistance(stack, describes, line, 0, 0.3), -inside, 1e-12);
        EXPECT_NEAR(faceDistance(stack, describes, line, 5, 0.3), depth - inside, 1e-12);
    }
}

// Source: length of an arc, radius times turn (D). Tolerance: 1e-6 of the length asked, 1e-9 reached.
TEST(Stack, LengthsRoundAnArcAreRadiusTimesTurn) {
    model::Stack stack = stackOf(10, 0.005, 0.0002);
    stack.runsPastStart_m = 0.1;
    stack.runsPastEnd_m = 0.15;
    const double radius = 0.8;
    const double turn = 1.2;
    const StackPlan plan = planOn(made::arc(-radius, turn), stack);
    for (const Strip& strip : plan.strips) {
        const double own = radius + (strip.place - 0.5) * 0.005 + (strip.place - 1) * 0.0002;
        EXPECT_NEAR(strip.finishedLength_m, own * turn, fine) << strip.place;
        // Past the trim lines the strips keep to the curvature of the ends.
        EXPECT_NEAR(strip.cutLength_m, own * (turn + 0.25 / radius), fine) << strip.place;
    }
}

TEST(Stack, AStraightLineStrainsNothing) {
    const StackPlan plan = planOn(made::straight(2.0), stackOf(3, 0.006));
    for (const Strip& strip : plan.strips) {
        EXPECT_EQ(strip.leastRadius_m, std::numeric_limits<double>::infinity());
        EXPECT_EQ(strip.strain, 0);
        EXPECT_EQ(strip.chanceOfBreaking, 0);
        EXPECT_NEAR(strip.finishedLength_m, 2.0, fine);
    }
    EXPECT_EQ(plan.storedEnergy_J, 0);
    EXPECT_EQ(plan.spares, 0);
    for (const LimitMet& limit : plan.limits) EXPECT_TRUE(limit.met) << static_cast<int>(limit.kind);
}

// A curve with a peak between two sampled places, at 0.6234 m.
double bump(double s) {
    return -0.1 - 1.5 / std::pow(std::cosh((s - 0.6234) / 0.3), 2);
}

TEST(Stack, TheTightestPlaceIsFoundBetweenTheSampledOnes) {
    const StackPlan plan = planOn(made::lineOf(bump, 1.5), stackOf(3, 0.006));
    for (const Strip& strip : plan.strips) {
        const double d = (strip.place - 0.5) * 0.006;
        EXPECT_NEAR(1 / strip.leastRadius_m, 1.6 / (1 + 1.6 * d), 1e-5 * 1.6) << strip.place;
        EXPECT_NEAR(strip.leastRadiusAt_m, 0.6234, 1e-3) << strip.place;
    }
}

TEST(Stack, ALineOfBothSensesTakesTheTighterOfTheTwo) {
    // Hollow 1.2 per metre at 0.5 m, round 1.0 at 1.5 m: the outermost of a thick stack is bent hardest in the hollow,
    // and on the line's own face as well.
    const auto reverse = [](double s) {
        return 1.2 / std::pow(std::cosh((s - 0.5) / 0.15), 2) - 1.0 / std::pow(std::cosh((s - 1.5) / 0.15), 2);
    };
    const StackPlan plan = planOn(made::lineOf(reverse, 2.0), stackOf(6, 0.008));
    EXPECT_NEAR(plan.strips.back().leastRadiusAt_m, 0.5, 2e-3);
    EXPECT_NEAR(plan.strips.back().leastRadius_m, 1 / 1.2 - 5.5 * 0.008, 1e-4);
    // With the points on the outer face and the strips inside it the round becomes the tighter place.
    const StackPlan inside = planOn(made::lineOf(reverse, 2.0), stackOf(20, 0.008), Side::left, Describes::outerFace);
    EXPECT_NEAR(inside.strips.front().leastRadiusAt_m, 1.5, 2e-3);
    EXPECT_NEAR(inside.strips.front().leastRadius_m, 1 / 1.0 - 19.5 * 0.008, 1e-4);
}

// Mirrored, turned round and moved lines give the same strips.
TEST(Stack, MirroredReversedAndTurnedLinesGiveTheSameStrips) {
    model::Stack stack = stackOf(6, 0.006, 0.0002);
    stack.strips[0].tapersTo_m = 0.004;
    stack.runsPastStart_m = 0.1;
    stack.runsPastEnd_m = 0.1;
    const StackPlan plan = planOn(made::lineOf(bump, 1.5), stack);
    const StackPlan mirrored = planOn(made::lineOf([](double s) { return -bump(s); }, 1.5), stack, Side::right);
    const StackPlan turned = planOn(made::lineOf(bump, 1.5, 2.1, {3.0, -4.0}), stack);
    model::Stack other = stack;
    std::swap(other.strips[0].thickness_m, *other.strips[0].tapersTo_m);
    const StackPlan reversed = planOn(made::lineOf([](double s) { return -bump(1.5 - s); }, 1.5), other, Side::right);
    for (std::size_t i = 0; i < plan.strips.size(); ++i) {
        for (const StackPlan* same : {&mirrored, &turned, &reversed}) {
            EXPECT_NEAR(same->strips[i].strain, plan.strips[i].strain, 1e-8);
            EXPECT_NEAR(same->strips[i].leastRadius_m, plan.strips[i].leastRadius_m, 1e-6);
            EXPECT_NEAR(same->strips[i].finishedLength_m, plan.strips[i].finishedLength_m, 1e-8);
            EXPECT_NEAR(same->strips[i].cutLength_m, plan.strips[i].cutLength_m, 1e-8);
        }
    }
    EXPECT_NEAR(reversed.stiffnessCured_N_m2, plan.stiffnessCured_N_m2, 1e-3 * plan.stiffnessCured_N_m2);
    EXPECT_NEAR(reversed.storedEnergy_J, plan.storedEnergy_J, 1e-6 * plan.storedEnergy_J);
}

// Source: curvature of the drawn curve by finite differences of its own points (D), apart from the closed form.
// Tolerance: second differences over 2 x 2 mm of a curve whose fourth derivative is below 1e3.
TEST(Parallels, CurvatureOfATaperIsThatOfItsOwnPoints) {
    const line::Line line = made::lineOf([](double s) { return 0.8 + 0.6 * std::sin(3 * s); }, 1.6);
    for (const double side : {1.0, -1.0}) {
        const Distance distance{0.09, 0.02, line.length()};
        for (const double s : {0.1, 0.4, 0.77, 1.2, 1.5}) {
            constexpr double h = 2e-3;
            const auto at = [&](double place) { return pointBeside(line.at(place), side, distance.at(place)); };
            const line::Xy a = at(s - h), b = at(s), c = at(s + h);
            const double x1 = (c.x_m - a.x_m) / (2 * h), y1 = (c.y_m - a.y_m) / (2 * h);
            const double x2 = (c.x_m - 2 * b.x_m + a.x_m) / (h * h), y2 = (c.y_m - 2 * b.y_m + a.y_m) / (h * h);
            const double dense = -side * (x1 * y2 - y1 * x2) / std::pow(x1 * x1 + y1 * y1, 1.5);
            EXPECT_NEAR(curvatureBeside(line.at(s), side, distance), dense, 2e-5) << s << " side " << side;
        }
    }
}

// Source: length of the drawn curve summed chord by chord over 200 000 chords (D).
TEST(Parallels, LengthOfATaperIsThatOfItsOwnPoints) {
    const line::Line line = made::arc(-0.7, 1.6);
    const Distance distance{0.08, 0.01, line.length()};
    constexpr int chords = 200000;
    const double from = -0.05;
    const double to = line.length() + 0.1;
    double sum = 0;
    line::Xy last = pointBeside(line.at(from), 1, distance.at(from));
    for (int i = 1; i <= chords; ++i) {
        const double s = from + (to - from) * i / chords;
        const line::Xy next = pointBeside(line.at(s), 1, distance.at(s));
        sum += std::hypot(next.x_m - last.x_m, next.y_m - last.y_m);
        last = next;
    }
    EXPECT_NEAR(lengthBeside(line, 1, distance, from, to), sum, 1e-7);
    EXPECT_NEAR(lengthBeside(line, 1, distance, to, from), -sum, 1e-7);
}

// Source: on an arc of radius R a taper from a to b has length element sqrt((1 + d/R)^2 + d'^2), whose integral over d
// is closed: (R / 2d') [u sqrt(u^2 + d'^2) + d'^2 asinh(u / d')] with u = 1 + d/R (D).
TEST(Parallels, LengthOfATaperRoundAnArcIsTheClosedForm) {
    const double radius = 0.9;
    const line::Line line = made::arc(-radius, 1.1);
    const Distance distance{0.01, 0.07, line.length()};
    const double slope = 0.06 / line.length();
    const auto primitive = [&](double d) {
        const double u = 1 + d / radius;
        return radius / (2 * slope) * (u * std::hypot(u, slope) + slope * slope * std::asinh(u / slope));
    };
    const double exact = primitive(0.07) - primitive(0.01);
    EXPECT_NEAR(lengthBeside(line, 1, distance, 0, line.length()), exact, 1e-9 * exact);
}

TEST(Stack, ATaperingStripIsStrainedByItsThicknessAtEachPlace) {
    model::Stack stack = stackOf(1, 0.010);
    stack.strips[0].tapersTo_m = 0.004;
    const line::Line line = made::arc(-1.0, 1.0);
    const StackPlan plan = planOn(line, stack);
    // Where it is thick it is strained most: at the start.
    EXPECT_NEAR(plan.strips[0].strainAt_m, 0, 1e-9);
    EXPECT_NEAR(plan.strips[0].strain, 0.010 / (2 * 1.005), 1e-6);
    const std::size_t middle = plan.at_m.size() / 2;
    const double t = 0.010 - 0.006 * plan.at_m[middle] / line.length();
    EXPECT_NEAR(plan.strains[0][middle], t / (2 * (1 + t / 2)), 1e-6);
}

TEST(Stack, TwiceTheThicknessOnTheSameMiddleIsTwiceTheStrain) {
    const line::Line line = made::arc(-0.9, 1.0);
    const StackPlan thin = planOn(line, stackOf(1, 0.004), Side::left, Describes::middle);
    const StackPlan thick = planOn(line, stackOf(1, 0.008), Side::left, Describes::middle);
    EXPECT_NEAR(thick.strips[0].strain, 2 * thin.strips[0].strain, 1e-12);
}

TEST(Stack, AStripBentBeforeIsStrainedByTheRestOfTheCurveOnly) {
    model::Stack stack = stackOf(4, 0.008);
    const line::Line line = made::arc(-0.7, 1.0);
    const StackPlan dry = planOn(line, stack);
    stack.strips[0].bentBefore = model::BentBefore{model::Softened::steamed, 0.75};
    const StackPlan steamed = planOn(line, stack);
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_NEAR(steamed.strips[i].strain, dry.strips[i].strain / 4, 1e-12);
        EXPECT_NEAR(steamed.strips[i].radiusOverThickness, dry.strips[i].radiusOverThickness * 4, 1e-6);
        EXPECT_EQ(steamed.strips[i].leastRadius_m, dry.strips[i].leastRadius_m);
    }
    EXPECT_NEAR(steamed.storedEnergy_J, dry.storedEnergy_J / 16, 1e-9);
}

// Source: half E I k^2 times length of each strip (D); finished width 40 mm and 3 mm on each edge.
TEST(Stack, StoredEnergyOnAnArcIsHalfStiffnessTimesCurvatureSquaredTimesLength) {
    model::Stack stack = stackOf(3, 0.006);
    stack.strips[0].moe_Pa = 12e9;
    stack.widths = {model::Width{0, 0.040}};
    const StackPlan plan = planOn(made::arc(-0.8, 1.0), stack);
    double energy = 0;
    for (int i = 0; i < 3; ++i) {
        const double radius = 0.8 + (i + 0.5) * 0.006;
        energy += 12e9 * 0.046 * std::pow(0.006, 3) / 12 / (2 * radius * radius) * radius * 1.0;
    }
    EXPECT_NEAR(plan.storedEnergy_J, energy, 1e-7 * energy);
}

// Source: two strips of moduli E and 3 E, equal thickness t, glue line 0: neutral axis 3/4 t above the middle of the
// lower strip; worked by hand (D): E b t^3 (1/12 + 9/16 + 3/12 + 3/16) = 13/12 E b t^3.
TEST(Stack, MixedWoodsAreGluedAboutTheTransformedNeutralAxis) {
    model::Stack stack = stackOf(1, 0.006);
    stack.strips[0].moe_Pa = 8e9;
    model::Strips stiff = stack.strips[0];
    stiff.moe_Pa = 24e9;
    stiff.species = "ash_white";
    stack.strips.push_back(stiff);
    stack.widths = {model::Width{0, 0.05}};
    stack.ripAllowance_m = 0;
    const StackPlan plan = planOn(made::arc(-1.0, 1.0), stack);
    const double unit = 8e9 * 0.05 * std::pow(0.006, 3);
    EXPECT_NEAR(plan.stiffnessWet_N_m2, 4 * unit / 12, 1e-9 * unit);
    EXPECT_NEAR(plan.stiffnessCured_N_m2, 13.0 / 12 * unit, 1e-9 * unit);
    EXPECT_EQ(plan.strips[1].species, "ash_white");
    EXPECT_NE(plan.strips[0].breakingStrain, plan.strips[1].breakingStrain);
}

TEST(Stack, ADryFacePartsTheCuredStackInTwo) {
    model::Stack stack = stackOf(3, 0.005);
    stack.strips.push_back(stack.strips[0]);
    stack.strips[0].moe_Pa = stack.strips[1].moe_Pa = 12e9;
    const double whole = planOn(made::arc(-1.0, 1.0), stack).stiffnessCured_N_m2;
    stack.strips[0].dryFace = true;
    const double parted = planOn(made::arc(-1.0, 1.0), stack).stiffnessCured_N_m2;
    EXPECT_NEAR(whole / parted, 4.0, 1e-9);  // (6 t)^3 against 2 (3 t)^3
}

TEST(Stack, WidthRunsLinearlyBetweenGivenOnesAndLevelBeyond) {
    model::Stack stack;
    stack.widths = {model::Width{1.0, 0.030}, model::Width{0.0, 0.050}};
    EXPECT_NEAR(widthAt(stack, -0.5), 0.050, 1e-15);
    EXPECT_NEAR(widthAt(stack, 0.25), 0.045, 1e-15);
    EXPECT_NEAR(widthAt(stack, 2.0), 0.030, 1e-15);
}

// A 1 in 10 scarf at the start: strip i, whose inner face lies (i - 1)(t + g) from the form, begins ten times that
// later.
TEST(Stack, AScarfShortensStripsByItsSlopeTimesTheirDistanceFromTheForm) {
    model::Stack stack = stackOf(6, 0.006, 0.0002);
    stack.runsPastStart_m = 0.05;
    const line::Line line = made::straight(2.0);
    stack.scarfedStart = model::Scarf{10};
    const StackPlan plan = planOn(line, stack);
    for (const Strip& strip : plan.strips) {
        const double later = 10 * (strip.place - 1) * 0.0062;
        EXPECT_NEAR(strip.finishedLength_m, 2.0 - later, 1e-9);
        EXPECT_NEAR(strip.cutLength_m, 2.05 - later, 1e-9);
        EXPECT_NEAR(strip.startsAt_m, later - 0.05, 1e-12);
    }
    const auto strips = layers(stack, Describes::innerFace, 2.0);
    EXPECT_EQ(stripsAt(stack, strips, 2.0, -0.05), 1);
    EXPECT_EQ(stripsAt(stack, strips, 2.0, 0.08), 3);
    EXPECT_EQ(stripsAt(stack, strips, 2.0, 1.0), 6);
}

TEST(Stack, StepsOfTheEndsAddUpToTheTurnTimesTheDepthBetweenMiddles) {
    model::Stack stack = stackOf(8, 0.006, 0.0002);
    stack.runsPastStart_m = 0.1;
    stack.runsPastEnd_m = 0.2;
    const line::Line line = made::lineOf(bump, 1.5);
    const double turn = -(line.at(1.7).heading_rad - line.at(-0.1).heading_rad);
    for (const double held : {0.0, 0.4, 1.5}) {
        const StackPlan plan = planStack(stack, Describes::innerFace, Side::left, line, wood::builtInSpecies(), held);
        EXPECT_NEAR(plan.stagger.start_m + plan.stagger.end_m, 7 * 0.0062 * turn, 1e-8);
        EXPECT_EQ(plan.stagger.pinnedAt_m, held);
    }
    stack.pins = {model::Pin{-0.1}};
    const StackPlan pinned = planOn(line, stack);
    EXPECT_EQ(pinned.stagger.pinnedAt_m, -0.1);
    EXPECT_NEAR(pinned.stagger.start_m, 0, 1e-12);
    EXPECT_FALSE(pinned.stagger.pinsForbidSliding);
}

TEST(Stack, FacesAndStrainsAreDrawnAtTheSamePlacesFromEndToEnd) {
    model::Stack stack = stackOf(3, 0.006, 0.0002);
    stack.runsPastStart_m = 0.095;
    stack.runsPastEnd_m = 0.13;
    const line::Line line = made::arc(-1.0, 1.0);
    const StackPlan plan = planOn(line, stack);
    ASSERT_EQ(plan.faces.size(), 4u);
    ASSERT_EQ(plan.strains.size(), 3u);
    EXPECT_EQ(plan.at_m.front(), -0.095);
    EXPECT_EQ(plan.at_m.back(), line.length() + 0.13);
    EXPECT_EQ(std::ranges::count(plan.at_m, 0.0), 1);
    EXPECT_EQ(std::ranges::count(plan.at_m, line.length()), 1);
    for (std::size_t j = 1; j < plan.at_m.size(); ++j) {
        EXPECT_GT(plan.at_m[j], plan.at_m[j - 1]);
        EXPECT_LE(plan.at_m[j], plan.at_m[j - 1] + 0.01 + 1e-9);
    }
    for (const auto& face : plan.faces) ASSERT_EQ(face.size(), plan.at_m.size());
    ASSERT_EQ(plan.width_m.size(), plan.at_m.size());
    // The line turns right from heading +x, so its centre is at (0, -1) and the strips lie on the left, outside.
    for (std::size_t j = 0; j < plan.at_m.size(); ++j) {
        EXPECT_NEAR(std::hypot(plan.faces[0][j].x_m, plan.faces[0][j].y_m + 1), 1.0, 1e-8);
        EXPECT_NEAR(std::hypot(plan.faces[3][j].x_m, plan.faces[3][j].y_m + 1), 1.0184, 1e-8);
    }
}

// While strips are bent they are wider than the finished piece by the rip allowance on each edge (D).
TEST(Stack, IsAsStiffWetAsItIsWideWhileItIsBent) {
    model::Stack stack = stackOf(4, 0.006);
    stack.strips[0].moe_Pa = 12e9;
    stack.widths = {model::Width{0, 0.040}};
    stack.ripAllowance_m = 0.003;
    const StackPlan plan = planOn(made::arc(-0.8, 1.0), stack);
    EXPECT_NEAR(plan.stiffnessWet_N_m2, 4 * 12e9 * 0.046 * std::pow(0.006, 3) / 12, 1e-9 * plan.stiffnessWet_N_m2);
    stack.ripAllowance_m = 0;
    const StackPlan finished = planOn(made::arc(-0.8, 1.0), stack);
    EXPECT_NEAR(plan.stiffnessCured_N_m2, finished.stiffnessCured_N_m2, 1e-12 * plan.stiffnessCured_N_m2);
}

}  // namespace stack_test
}  // namespace fayline::laminate
