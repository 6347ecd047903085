#include "core/laminate/springback/release.hpp"

#include <gtest/gtest.h>

#include "tests/core/laminate/made_lines.hpp"
#include "tests/core/laminate/made_stacks.hpp"

namespace fayline::laminate {
namespace release_test {

using made::stackOf;
using model::Describes;
using model::Side;

std::vector<Part> partsOn(const line::Line& line, const model::Stack& stack, Side side = Side::left,
                          Describes describes = Describes::innerFace) {
    return partsOf(stack, describes, side, line, wood::builtInSpecies());
}

// A straight line: the law itself, without the strips' different radii.
double ratioOf(const model::Stack& stack) {
    return ratioAt(partsOn(made::straight(1.0), stack).front(), 0.5, 1.0);
}

model::Strips strips(int count, double thickness_m, double moe_Pa) {
    model::Strips some;
    some.count = count;
    some.thickness_m = thickness_m;
    some.moe_Pa = moe_Pa;
    return some;
}

// Source: beam theory (D): B_slip = n E b t^3 / 12, B_solid = n^3 E b t^3 / 12.
TEST(Release, EqualStripsGiveBackOneOverTheirNumberSquared) {
    for (const int n : {2, 3, 5, 8, 12, 40}) EXPECT_NEAR(ratioOf(stackOf(n, 0.006)), 1.0 / (n * n), 1e-12) << n;
}

TEST(Release, OneStripGivesBackEverything) {
    EXPECT_NEAR(ratioOf(stackOf(1, 0.006)), 1.0, 1e-12);
}

// Source: beam theory (D), parallel axes: 1 / (1 + (n^2 - 1)(1 + g/t)^2).
TEST(Release, GlueLinesHoldStripsApartAndStiffenThem) {
    for (const int n : {2, 4, 9}) {
        const double apart = 1 + 0.0004 / 0.006;
        EXPECT_NEAR(ratioOf(stackOf(n, 0.006, 0.0004)), 1 / (1 + (n * n - 1) * apart * apart), 1e-12) << n;
    }
}

// By hand (D), per width of 1: oak 12 MPa of 6 mm on the form, pine 8 MPa of 12 mm outside it, no glue line.
//   E t: 72 and 96; middles at 3 and 12 mm; axis at (72 * 3 + 96 * 12) / 168 = 8.142857 mm
//   E t^3 / 12: 216 and 1152, together 1368
//   E t a^2: 72 * 5.142857^2 + 96 * 3.857143^2 = 1904.3265 + 1428.2449 = 3332.5714
//   rho = 1368 / (1368 + 3332.5714) = 1368 / 4700.5714 = 0.2910284
TEST(Release, TwoWoodsOfDifferentThicknessAsWorkedByHand) {
    model::Stack stack = stackOf(1, 0.006);
    stack.strips = {strips(1, 0.006, 12e9), strips(1, 0.012, 8e9)};
    const Part part = partsOn(made::straight(1.0), stack).front();
    EXPECT_NEAR(part.along.front().ratio, 0.2910284, 5e-8);
    EXPECT_NEAR(part.along.front().neutralAxis_m, 0.008142857, 5e-10);
    // The default width of 51 mm: 12e9 Pa and so on are 1e9 times the numbers above, millimetres cubed 1e-9 times.
    EXPECT_NEAR(part.along.front().wet_N_m2, 1368 * 0.051, 1e-9);
    EXPECT_NEAR(part.along.front().solid_N_m2, 4700.5714 * 0.051, 1e-5);
}

TEST(Release, StripsThatTookAShareOfTheCurveBeforeGiveBackTheRest) {
    model::Stack stack = stackOf(4, 0.006);
    stack.strips[0].bentBefore = model::BentBefore{model::Softened::steamed, 0.75, {}};
    EXPECT_NEAR(ratioOf(stack), 0.25 / 16, 1e-12);
    // Half of the strips: the others' half of the moment stays whole.
    model::Strips cold = stack.strips[0];
    cold.bentBefore.reset();
    stack.strips[0].count = cold.count = 2;
    stack.strips.push_back(cold);
    EXPECT_NEAR(ratioOf(stack), (0.25 + 1) / 2 / 16, 1e-12);
}

TEST(Release, WidthAndModulusOfAllStripsDoNotMatter) {
    model::Stack stack = stackOf(6, 0.005, 0.0002);
    const double ratio = ratioOf(stack);
    stack.widths = {model::Width{0, 0.03, {}}, model::Width{1, 0.09, {}}};
    stack.strips[0].moe_Pa = 7e9;
    EXPECT_NEAR(ratioOf(stack), ratio, 1e-12);
}

// On one form, elastic: bending the cured part back takes the moment that its strips had. By hand (D), four strips in
// two gluings of two, E b t^3 / 12 = 1 each, curvature 1: the first two, cured, have the stiffness 8 and let go to
// 1 - 2/8 = 3/4; bent back they carry 8 (1 - 3/4) = 2, and with the loose two 2 + 2 = 4; glued, the stiffness is 64:
// 4/64.
TEST(Release, TwoGluingsOnOneFormGiveBackWhatOneDoes) {
    model::Stack stack = stackOf(4, 0.006);
    stack.gluings = {2};
    EXPECT_NEAR(ratioOf(stack), (8 * (1 - 0.75) + 2) / 64, 1e-12);
}

TEST(Release, ADryFacePartsTheStack) {
    model::Stack stack = stackOf(3, 0.006);
    stack.strips[0].dryFace = true;
    stack.strips.push_back(model::Strips{.count = 5, .thickness_m = 0.006});
    const std::vector<Part> parts = partsOn(made::straight(1.0), stack);
    ASSERT_EQ(parts.size(), 2u);
    EXPECT_EQ(parts[0].lastPlace, 3);
    EXPECT_EQ(parts[1].firstPlace, 4);
    EXPECT_EQ(parts[1].lastPlace, 8);
    EXPECT_NEAR(ratioAt(parts[0], 0.3, 1), 1.0 / 9, 1e-12);
    EXPECT_NEAR(ratioAt(parts[1], 0.3, 1), 1.0 / 25, 1e-12);
}

TEST(Release, ADryOutsidePartsNothing) {
    model::Stack stack = stackOf(3, 0.006);
    stack.strips[0].dryFace = true;
    EXPECT_EQ(partsOn(made::straight(1.0), stack).size(), 1u);
}

TEST(Release, TheRecordsFactorMultipliesIt) {
    const Part part = partsOn(made::straight(1.0), stackOf(5, 0.006)).front();
    EXPECT_NEAR(ratioAt(part, 0.5, 1.7), 1.7 / 25, 1e-12);
}

// Strips of one thickness taper alike: still 1/n^2. A thin strip beside one that tapers: by the thicknesses there.
TEST(Release, TaperedStripsAreTakenSectionBySection) {
    model::Stack stack = stackOf(1, 0.006);
    stack.strips = {strips(1, 0.006, 10e9), strips(1, 0.006, 10e9)};
    stack.strips[1].tapersTo_m = 0.002;
    const Part part = partsOn(made::straight(2.0), stack).front();
    const auto two = [](double s, double t) { return (s * s * s + t * t * t) / ((s + t) * (s + t) * (s + t)); };
    EXPECT_NEAR(ratioAt(part, 0.0, 1), two(6, 6), 1e-12);
    EXPECT_NEAR(ratioAt(part, 1.0, 1), two(6, 4), 1e-12);
    EXPECT_NEAR(ratioAt(part, 2.0, 1), two(6, 2), 1e-12);
}

// Scarf 1 in 10 through four strips of 6 mm at the start: strip 2 begins 60 mm in, 3 at 120, 4 at 180.
TEST(Release, WhereAStripEndsAtAScarfTheRatioJumps) {
    model::Stack stack = stackOf(4, 0.006);
    stack.scarfedStart = model::Scarf{10, {}};
    const Part part = partsOn(made::straight(1.0), stack).front();
    EXPECT_NEAR(ratioAt(part, 0.03, 1), 1.0, 1e-12);
    EXPECT_NEAR(ratioAt(part, 0.0601, 1), 1.0 / 4, 1e-12);
    EXPECT_NEAR(ratioAt(part, 0.1799, 1), 1.0 / 9, 1e-12);
    EXPECT_NEAR(ratioAt(part, 0.1801, 1), 1.0 / 16, 1e-12);
    EXPECT_NEAR(ratioAt(part, 0.9, 1), 1.0 / 16, 1e-12);
}

// By hand (D): two strips of 20 mm round a form of radius 100 mm, axis at 120 mm. Own radii 110 and 130; each moment
// over the curvature at the axis is E I times 120/110 and 120/130: their sum over 8 E I.
TEST(Release, EachStripBendsToItsOwnRadius) {
    const Part part = partsOn(made::arc(-0.1, 1.0), stackOf(2, 0.02)).front();
    EXPECT_NEAR(part.along.front().ratio, (120.0 / 110 + 120.0 / 130) / 8, 1e-9);
}

TEST(Release, AStackMirroredOrWalkedBackwardsGivesBackTheSame) {
    model::Stack stack = stackOf(1, 0.006, 0.0002);
    stack.strips = {strips(2, 0.008, 11e9), strips(3, 0.004, 9e9)};
    const auto bend = [](double s) { return -1.2 + 0.5 * s; };
    const Part left = partsOn(made::lineOf(bend, 1.2), stack).front();
    const Part right = partsOn(made::lineOf([&](double s) { return -bend(s); }, 1.2), stack, Side::right).front();
    const Part back = partsOn(made::lineOf([&](double s) { return -bend(1.2 - s); }, 1.2), stack, Side::right).front();
    for (const double at : {0.0, 0.31, 0.7, 1.2}) {
        EXPECT_NEAR(ratioAt(left, at, 1), ratioAt(right, at, 1), 1e-12);
        EXPECT_NEAR(ratioAt(left, at, 1), ratioAt(back, 1.2 - at, 1), 1e-9);
    }
}

TEST(Release, AtOnePlaceItIsWhatTheSectionsSay) {
    model::Stack stack = stackOf(3, 0.006, 0.0002);
    const line::Line line = made::arc(-0.8, 1.0);
    EXPECT_NEAR(ratioAtPlace(stack, Describes::innerFace, Side::left, line, wood::builtInSpecies(), 0.4),
                ratioAt(partsOn(line, stack).front(), 0.4, 1), 1e-12);
}

}  // namespace release_test
}  // namespace fayline::laminate
