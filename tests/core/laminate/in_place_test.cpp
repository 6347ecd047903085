#include "core/laminate/springback/in_place.hpp"

#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <cmath>
#include <numbers>

#include "core/laminate/springback/form_plan.hpp"
#include "core/units/input_error.hpp"
#include "core/units/units.hpp"
#include "tests/core/laminate/made_lines.hpp"
#include "tests/core/laminate/made_stacks.hpp"
#include "tests/refusal.hpp"

namespace fayline::laminate {
namespace in_place_test {

using made::stackOf;
constexpr double pi = std::numbers::pi;

model::Piece inPlace(const model::Stack& stack) {
    model::Piece piece;
    piece.stack = stack;
    piece.form.kind = model::FormKind::inPlace;
    return piece;
}

StressLeft leftIn(const model::Piece& piece, const line::Line& line) {
    const StackPlan plan =
        planStack(piece.stack, piece.line.describes, piece.line.stripsOn, line, wood::builtInSpecies());
    return stressLeft(piece, line, wood::builtInSpecies(), plan);
}

// A free beam on an elastic bed by Hermite elements, put together here and apart from the formulas: movement at every
// node when `moment` turns its first end and `force` pulls back at node `forceAt`.
Eigen::VectorXd movedOnBed(double B, double c, double length, int elements, double moment, double force, int forceAt) {
    const double h = length / elements;
    Eigen::Matrix4d bend;
    bend << 12, 6 * h, -12, 6 * h, 6 * h, 4 * h * h, -6 * h, 2 * h * h, -12, -6 * h, 12, -6 * h, 6 * h, 2 * h * h,
        -6 * h, 4 * h * h;
    Eigen::Matrix4d bed;
    bed << 156, 22 * h, 54, -13 * h, 22 * h, 4 * h * h, 13 * h, -3 * h * h, 54, 13 * h, 156, -22 * h, -13 * h,
        -3 * h * h, -22 * h, 4 * h * h;
    Eigen::MatrixXd stiffness = Eigen::MatrixXd::Zero(2 * elements + 2, 2 * elements + 2);
    for (int e = 0; e < elements; ++e) {
        stiffness.block<4, 4>(2 * e, 2 * e) += B / (h * h * h) * bend + c * h / 420 * bed;
    }
    Eigen::VectorXd load = Eigen::VectorXd::Zero(2 * elements + 2);
    load(1) = -moment;  // straightens: turns the end up
    load(2 * forceAt) -= force;
    const Eigen::VectorXd solved = stiffness.ldlt().solve(load);
    Eigen::VectorXd moved(elements + 1);
    for (int i = 0; i <= elements; ++i) moved(i) = solved(2 * i);
    return moved;
}

// The share of the stress at the end that stands at `from_m` from it. Source: Hetenyi (D).
double shareOfEndStress(double decay_per_m, double from_m) {
    const double z = decay_per_m * from_m;
    return std::exp(-z) * (std::cos(z) - std::sin(z));
}

// Source: Hetenyi's functions (D), the worked example of a beam of E = 12 000 MPa, 50 x 20 mm, on a bed of 10 N/mm2:
// beta 0.0088913971 per mm. A moment of 28 117.066 N mm at the free end moves it by 2 M beta^2 / k = 0.44456985 mm, and
// the bed changes sign at pi / (4 beta) = 88.332 mm. Tolerance: the printed digits.
TEST(InPlace, EndMomentOnABedAsWorkedInNumbers) {
    const double beta = decayOf(10e6, 400.0);
    EXPECT_NEAR(beta, 8.8913971, 5e-8);
    EXPECT_NEAR(endStress(28.117066, beta, 0.05), 10e6 * 0.44456985e-3 / 0.05, 1);
    EXPECT_NEAR(pi / 4 / beta, 0.088332, 5e-7);
}

TEST(InPlace, TheBedsAnswerIsThatOfABeamCutIntoElements) {
    const double B = 11000;
    const double c = 0.9e9;
    const double beta = decayOf(c, B);
    const Eigen::VectorXd moved = movedOnBed(B, c, 12 / beta, 300, 140, 0, 0);
    for (int i = 0; i <= 100; i += 5) {
        const double at_m = 12 / beta * i / 300;
        EXPECT_NEAR(c * moved(i) / 0.05, endStress(140, beta, 0.05) * shareOfEndStress(beta, at_m),
                    1e-4 * endStress(140, beta, 0.05));
    }
}

TEST(InPlace, TheFasteningTakesThePeelOffTheEnd) {
    const double B = 11000;
    const double c = 0.9e9;
    const double beta = decayOf(c, B);
    for (const int at : {0, 5, 10, 25}) {  // 0, 0.2, 0.4, 1 over beta
        const double force = fasteningFor(140, beta, 12 / beta * at / 300);
        const Eigen::VectorXd moved = movedOnBed(B, c, 12 / beta, 300, 140, force, at);
        EXPECT_NEAR(c * moved(0) / 0.05, 0, 1e-4 * endStress(140, beta, 0.05)) << at;
    }
    EXPECT_NEAR(fasteningFor(140, beta, 0), 140 * beta, 1e-9);
    EXPECT_TRUE(std::isinf(fasteningFor(140, beta, 1.6 / beta)));
}

// Worked by hand (D): six strips of 5 mm, 40 mm wide, E = 12 GPa given, no glue lines, on a circle of 800 mm; its axis
// lies at 815 mm. Loose: 6 x 12e9 x 0.04 x 0.005^3 / 12 = 30 N m2, over 0.815 m a moment of 36.81 N m (strips' own
// radii: a hair more). Glued: 36 times as stiff, 1080 N m2. Bed: of the stack 15 mm at 1 GPa, of white oak behind it
// 15 mm at 1.1 x 1.78e6 psi / 12 = 1.12497 GPa: 15e-12 + 13.334e-12 m/Pa; c = 0.04 / 28.334e-12 = 1.41174e9 N/m2.
// beta = (1.41174e9 / 4320)^(1/4) = 23.9093 per m; peel 2 M beta^2 / b = 1.0521 MPa.
TEST(InPlace, AStackWorkedByHand) {
    model::Stack stack = stackOf(6, 0.005);
    stack.strips[0].moe_Pa = 12e9;
    stack.widths = {model::Width{.width_m = 0.04}};
    stack.moisture = stack.serviceMoisture = 0.12;
    const StressLeft left = leftIn(inPlace(stack), made::arc(-0.8, 1.0));
    for (const EndStress& end : {left.start, left.end}) {
        EXPECT_NEAR(end.moment_N_m, 36.81, 0.01);
        EXPECT_NEAR(end.base_N_m2, 1.41174e9, 0.0001e9);
        EXPECT_NEAR(end.decay_per_m, 23.9093, 0.0002);
        EXPECT_NEAR(end.peel_Pa, 1.0521e6, 0.0005e6);
        EXPECT_EQ(end.peelFrom_m, 0);
        EXPECT_NEAR(end.acrossMean_Pa, 800 * units::psi_Pa, 1);
        EXPECT_FALSE(end.wantsFastening);  // a quarter of 5.52 MPa is 1.379
        EXPECT_NEAR(end.fasteningFrom_m, 0.5 / 23.9093, 1e-6);
        EXPECT_NEAR(end.fastening_N, 36.81 * 23.9093 / 0.532281, 1);  // Hetenyi's D at 0.5, as tabled
    }
    // The outermost fibres of the strip on the form: 12 GPa x 5 mm / (2 x 802.5 mm).
    EXPECT_NEAR(left.surfaceStress_Pa, 12e9 * 0.005 / 2 / 0.8025, 1e-6 * 37e6);
    EXPECT_EQ(left.surfacePlace, 1);
}

TEST(InPlace, AHollowPressesItsEndAndPullsFurtherIn) {
    const model::Piece piece = inPlace(stackOf(6, 0.005));
    const StressLeft convex = leftIn(piece, made::arc(-0.8, 1.0));
    const StressLeft hollow = leftIn(piece, made::arc(0.83, 1.0));  // the same radius at the axis
    EXPECT_NEAR(hollow.end.moment_N_m, -convex.end.moment_N_m, 1e-3 * convex.end.moment_N_m);
    EXPECT_NEAR(hollow.end.peel_Pa / convex.end.peel_Pa, std::exp(-pi / 2), 1e-3);
    EXPECT_NEAR(hollow.end.peelFrom_m, pi / 2 / hollow.end.decay_per_m, 1e-12);
    EXPECT_GT(hollow.end.fastening_N, 0);
}

TEST(InPlace, TwiceTheWidthChangesNoStress) {
    model::Stack stack = stackOf(6, 0.005);
    const StressLeft narrow = leftIn(inPlace(stack), made::arc(-0.8, 1.0));
    stack.widths[0].width_m *= 2;
    const StressLeft wide = leftIn(inPlace(stack), made::arc(-0.8, 1.0));
    EXPECT_NEAR(wide.end.moment_N_m, 2 * narrow.end.moment_N_m, 1e-9);
    EXPECT_NEAR(wide.end.peel_Pa, narrow.end.peel_Pa, 1e-6 * narrow.end.peel_Pa);
    EXPECT_EQ(wide.surfaceStress_Pa, narrow.surfaceStress_Pa);
}

// B_solid grows with the cube of the depth while the moment of the strips grows with their number.
TEST(InPlace, ThinnerStripsOfTheSameDepthPeelLess) {
    const StressLeft thick = leftIn(inPlace(stackOf(4, 0.010)), made::arc(-1.0, 1.0));
    const StressLeft thin = leftIn(inPlace(stackOf(8, 0.005)), made::arc(-1.0, 1.0));
    EXPECT_NEAR(thin.end.peel_Pa / thick.end.peel_Pa, 0.25, 0.005);
    EXPECT_TRUE(thick.end.wantsFastening);
    EXPECT_FALSE(thin.end.wantsFastening);
}

TEST(InPlace, AScarfedEndPassesItsMomentOn) {
    model::Stack stack = stackOf(6, 0.005);
    stack.scarfedEnd = model::Scarf{.slope = 8};
    const StressLeft left = leftIn(inPlace(stack), made::arc(-0.8, 1.0));
    EXPECT_TRUE(left.end.scarfed);
    EXPECT_EQ(left.end.peel_Pa, 0);
    EXPECT_FALSE(left.end.wantsFastening);
    EXPECT_NEAR(left.end.moment_N_m, left.start.moment_N_m, 1e-3 * left.start.moment_N_m);
    EXPECT_NEAR(left.end.at_m, 0.8 - 8 * 0.025, 1e-9);
    EXPECT_FALSE(left.start.scarfed);
    EXPECT_GT(left.start.peel_Pa, 0);
}

TEST(InPlace, WhatWasBentBeforeStaysWithoutStress) {
    model::Stack stack = stackOf(6, 0.005);
    const StressLeft cold = leftIn(inPlace(stack), made::arc(-0.8, 1.0));
    stack.strips[0].bentBefore = model::BentBefore{model::Softened::steamed, 0.75, {}};
    const StressLeft steamed = leftIn(inPlace(stack), made::arc(-0.8, 1.0));
    EXPECT_NEAR(steamed.end.moment_N_m, cold.end.moment_N_m / 4, 1e-9);
    EXPECT_NEAR(steamed.surfaceStress_Pa, cold.surfaceStress_Pa / 4, 1e-3);
}

TEST(InPlace, TheWeakerOfStripAndBackboneCounts) {
    model::Piece piece = inPlace(stackOf(6, 0.005));
    piece.holding.backbone.species = "cedar_w_red";
    const StressLeft left = leftIn(piece, made::arc(-0.8, 1.0));
    EXPECT_NEAR(left.end.acrossMean_Pa, 220 * units::psi_Pa, 1);
    EXPECT_EQ(left.end.acrossSource.mark, units::Mark::commonPractice);
    piece.holding.backbone.species = "teak";  // the table for imported woods has no tension across the grain
    EXPECT_NE(leftIn(piece, made::arc(-0.8, 1.0)).end.acrossSource.text.find("lowest"), std::string::npos);
    piece.holding.backbone.species = "cheddar";
    EXPECT_EQ(made::refusal([&] { leftIn(piece, made::arc(-0.8, 1.0)); }).path(), "holding.backbone.species");
}

TEST(InPlace, AStraightPieceKeepsNothing) {
    const StressLeft left = leftIn(inPlace(stackOf(6, 0.005)), made::straight(1.0));
    EXPECT_EQ(left.start.peel_Pa, 0);
    EXPECT_EQ(left.end.fastening_N, 0);
    EXPECT_EQ(left.surfaceStress_Pa, 0);
}

TEST(InPlace, OnlyWhatIsNotLetGoKeepsStress) {
    model::Piece piece = inPlace(stackOf(6, 0.005));
    const line::Line line = made::arc(-0.8, 1.0);
    const StackPlan plan = made::planOn(line, piece.stack);
    const auto form = [&] { return planForm(piece, line, wood::builtInSpecies(), plan); };
    EXPECT_TRUE(form().stressLeft.has_value());
    piece.form.kind = model::FormKind::solid;
    EXPECT_FALSE(form().stressLeft.has_value());
    piece.form.letGo = false;
    EXPECT_TRUE(form().stressLeft.has_value());
}

}  // namespace in_place_test
}  // namespace fayline::laminate
