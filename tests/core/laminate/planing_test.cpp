#include "core/laminate/springback/planing.hpp"

#include <gtest/gtest.h>

#include "core/laminate/springback/form_plan.hpp"
#include "core/math/count.hpp"
#include "core/units/input_error.hpp"
#include "tests/core/laminate/made_lines.hpp"
#include "tests/core/laminate/made_stacks.hpp"
#include "tests/refusal.hpp"

namespace fayline::laminate {
namespace planing_test {

using made::stackOf;
using model::Describes;

// The strips' own radii on the flat arc below differ by 2e-8.
constexpr double flat = 1e-7;

// Curvature after planing, of a straight line's section bent to a curvature of 1: what is left of it.
double leftOf(const model::Stack& stack, double from_m, double to_m) {
    const std::vector<BentStrip> strips =
        looseStrips(stack, Describes::innerFace, 1.0, std::vector<double>(stack.strips.size(), 10e9));
    const Places all{1, math::countOf(strips)};
    // An arc so flat that the strips' own radii are nearly one.
    const line::Place place = made::arc(-1e6, 1e-6).at(0.5);
    const double ratio = releaseAt(strips, all, place, 1, 1, 0.5).ratio;
    return 1 - ratio + planedAt(strips, all, place, 1, 0.5, 1.0, {from_m, to_m}).change_per_m * 1e6;
}

// By hand (D): two strips of thickness 2, E = 1, bent to 1. Release 1/4 about the axis at 2. Half of the outer strip
// off leaves 0..3, axis at 1.5. There the strips' own bending gives the force int_2^3 (x - 3) dx = -1/2 and about 1.5
// the moment 2/3 - 5/12 = 1/4; the release int_0^3 (x - 2)/4 dx = -3/8 and the moment 9/16. The moment left, 1/4 - 9/16
// = -5/16, over 3^3/12 = 9/4: the curve tightens by 5/36, from 27/36 to 32/36.
TEST(Planing, HalfAStripOffOneOfTwoAsWorkedByHand) {
    EXPECT_NEAR(leftOf(stackOf(2, 0.002), 0, 0.003), 32.0 / 36, flat);
}

TEST(Planing, OneStripLeftIsStraightAgain) {
    const model::Stack stack = stackOf(5, 0.004, 0.0002);
    for (int i = 0; i < 5; ++i) {
        const double face = i * 0.0042;
        EXPECT_NEAR(leftOf(stack, face, face + 0.004), 0, flat) << i;
        EXPECT_NEAR(leftOf(stack, face + 0.001, face + 0.0025), 0, flat) << i;
    }
}

// Elastic: cutting strips away leaves what they would have let go to without them.
TEST(Planing, WholeStripsOffLeaveTheShapeOfTheRestAlone) {
    const model::Stack stack = stackOf(6, 0.004);
    EXPECT_NEAR(leftOf(stack, 0, 0.016), 1 - 1.0 / 16, flat);
    EXPECT_NEAR(leftOf(stack, 0.004, 0.016), 1 - 1.0 / 9, flat);
}

TEST(Planing, NothingOffChangesNothing) {
    EXPECT_NEAR(leftOf(stackOf(6, 0.004), 0, 0.024), 1 - 1.0 / 36, flat);
    EXPECT_FALSE(takesOff(stackOf(6, 0.004)));
}

TEST(Planing, SacrificialStripsComeOffBeforeTheGivenDepths) {
    model::Stack stack = stackOf(4, 0.005);
    stack.strips.push_back(model::Strips{.count = 2, .thickness_m = 0.003, .sacrificial = true});
    stack.planedAfter = {model::Planed{0.0, 0, 0.002, {}}, model::Planed{1.0, 0.001, 0.004, {}}};
    const auto strips = looseStrips(stack, Describes::innerFace, 1.0, {10e9, 10e9});
    EXPECT_TRUE(takesOff(stack));
    const Left left = leftAt(stack, strips, 0.5);
    EXPECT_NEAR(left.from_m, 0.0005, 1e-12);
    EXPECT_NEAR(left.to_m, 0.020 - 0.003, 1e-12);
    EXPECT_NEAR(leftAt(stack, strips, 2.0).to_m, 0.016, 1e-12);
}

std::string pathOf(const model::Stack& stack) {
    return made::refusedAt(
        [&] {
            checkPlaned(stack,
                        looseStrips(stack, Describes::innerFace, 1.0, std::vector<double>(stack.strips.size(), 10e9)),
                        1.0);
        },
        "");
}

TEST(Planing, MoreThanThereIsIsRefused) {
    model::Stack stack = stackOf(4, 0.005);
    stack.planedAfter = {model::Planed{0.3, 0.01, 0.009, {}}};
    EXPECT_EQ(pathOf(stack), "");
    stack.planedAfter.push_back(model::Planed{0.9, 0.01, 0.010, {}});
    EXPECT_EQ(pathOf(stack), "stack.planed_after[1]");
    stack.planedAfter.clear();
    stack.strips[0].sacrificial = true;
    EXPECT_EQ(pathOf(stack), "stack.strips");
}

// An arc of two strips planed to half of the outer one along its whole length opens less: by 5/36 of the form's curve.
TEST(Planing, OfAPieceItsEndMovesByThatChangeOfCurvature) {
    model::Piece piece;
    piece.stack = stackOf(2, 0.002);
    piece.stack.planedAfter = {model::Planed{0, 0, 0.001, {}}};
    piece.form.allowsForSpringback = false;
    const line::Line line = made::arc(-2.0, 0.2);
    const StackPlan stack =
        planStack(piece.stack, Describes::innerFace, model::Side::left, line, wood::builtInSpecies());
    const FormPlan plan = planForm(piece, line, wood::builtInSpecies(), stack);
    ASSERT_TRUE(plan.parts[0].planed);
    // Ends of arcs of one length move in proportion to their change of turn while that is small.
    const double byRelease = plan.parts[0].uncorrected.end_m;
    EXPECT_NEAR(plan.parts[0].planed->end_m / byRelease, -(5.0 / 36) / (1.0 / 4), 0.01);
}

}  // namespace planing_test
}  // namespace fayline::laminate
