#include "core/laminate/springback/form_plan.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "core/units/input_error.hpp"
#include "tests/core/laminate/made_lines.hpp"
#include "tests/core/laminate/made_stacks.hpp"
#include "tests/refusal.hpp"

namespace fayline::laminate {
namespace form_plan_test {

using made::formOn;
using made::pieceOf;
using made::stackOf;
using model::Describes;
using model::Side;

double apart(const line::Place& a, const line::Place& b) {
    return std::hypot(a.x_m - b.x_m, a.y_m - b.y_m);
}

// Source: geometry (D). Four strips of 5 mm on an arc of radius 600 mm: the axis lies at 610 mm, the form's axis at
// 610 (1 - rho), its faying surface 10 mm inside that; and it turns by 1 / (1 - rho) as much.
TEST(Form, OfAnArcIsATighterArc) {
    const line::Line line = made::arc(-0.6, 1.2);
    const FormPlan plan = formOn(line, pieceOf(stackOf(4, 0.005)));
    const double rho = plan.parts[0].ratioAtTightest;
    EXPECT_NEAR(rho, 1.0 / 16, 1e-4);
    EXPECT_TRUE(plan.corrected && plan.possible && plan.letsGo);
    const double radius = 0.61 * (1 - rho) - 0.01;
    EXPECT_NEAR(plan.tightestRadius_m, radius, 1e-9);
    const line::Place start = plan.line.faying(0);
    const line::Place end = plan.line.faying(line.length());
    EXPECT_LT(apart(start, line.at(0)), 1e-9);
    EXPECT_NEAR(end.heading_rad - start.heading_rad, -1.2 / (1 - rho), 1e-9);
    EXPECT_NEAR(apart(start, end), 2 * radius * std::sin(0.6 / (1 - rho)), 1e-8);
}

TEST(Form, LetsGoToTheWantedLine) {
    const line::Line line =
        made::lineOf([](double s) { return -0.2 - 1.3 * std::exp(-20 * (s - 0.5) * (s - 0.5)); }, 1.4);
    for (const double fixed : {0.0, 0.5, 1.4}) {
        model::Piece piece = pieceOf(stackOf(5, 0.006, 0.0002));
        piece.form.fixedAt_m = fixed;
        const FormPlan plan = formOn(line, piece);
        for (double s = 0; s <= 1.4; s += 0.013) {
            EXPECT_LT(apart(plan.parts[0].released.faying(s), line.at(s)), 1e-8) << s;
        }
        EXPECT_LT(apart(plan.line.faying(fixed), line.at(fixed)), 1e-9);
        EXPECT_NEAR(plan.line.faying(fixed).heading_rad, line.at(fixed).heading_rad, 1e-9);
    }
}

// Source: geometry (D). Arc of radius R turning by a, the piece on the line itself: let go it is an arc of R' with the
// same axis length.
TEST(Form, UncorrectedItOpensAsTheArcsSay) {
    const double turn = 1.0;
    const line::Line line = made::arc(-0.8, turn);
    model::Piece piece = pieceOf(stackOf(4, 0.005));
    piece.form.allowsForSpringback = false;
    const FormPlan plan = formOn(line, piece);
    EXPECT_FALSE(plan.corrected);
    EXPECT_LT(apart(plan.line.faying(0.8), line.at(0.8)), 1e-9);
    const double rho = plan.parts[0].ratioAtTightest;
    const double less = turn * (1 - rho);
    const double radius = 0.81 / (1 - rho) - 0.01;
    const Opening& opening = plan.parts[0].uncorrected;
    EXPECT_NEAR(opening.chordFrom_m, 1.6 * std::sin(0.5), 1e-9);
    EXPECT_NEAR(opening.chordTo_m, 2 * radius * std::sin(less / 2), 1e-8);
    EXPECT_NEAR(opening.chord_m, opening.chordTo_m - opening.chordFrom_m, 1e-12);
    EXPECT_NEAR(opening.riseFrom_m, 0.8 * (1 - std::cos(0.5)), 1e-7);
    EXPECT_NEAR(opening.riseTo_m, radius * (1 - std::cos(less / 2)), 1e-7);
    EXPECT_GT(opening.rise_m, 0);
    // Laid together at the start, heading along x, turning right: ends at (R sin, -R (1 - cos)).
    const double dx = radius * std::sin(less) - 0.8 * std::sin(turn);
    const double dy = -radius * (1 - std::cos(less)) + 0.8 * (1 - std::cos(turn));
    EXPECT_NEAR(opening.end_m, dx * std::sin(turn) + dy * std::cos(turn), 1e-8);
    EXPECT_GT(opening.end_m, 0.005);
    EXPECT_NEAR(opening.start_m, opening.end_m, 1e-8);
    EXPECT_NEAR(plan.parts[0].opens.end_m, opening.end_m, 1e-9);
}

// The form's own bend decides what it gives back: the tighter, the slower the two come to rest on each other. What
// comes off a form that is said to have settled lies on the wanted line; what does not settle is said to.
TEST(Form, SettlesOnWhatItGivesBackOrSaysThatItDoesNot) {
    int settled = 0;
    int unsettled = 0;
    for (const double factor : {1.0, 2.0, 3.0, 3.4, 3.6, 3.7}) {
        for (const double radius : {0.08, 0.15, 0.3, 0.6, 1.2}) {
            model::Piece piece;
            piece.stack = made::stackOf(2, 0.012);
            piece.form.springbackFactor = factor;
            const line::Line line = made::arc(-radius, radius);
            const StackPlan stack = made::planOn(line, piece.stack);
            const FormPlan form = planForm(piece, line, wood::builtInSpecies(), stack);
            if (!form.possible) continue;
            EXPECT_EQ(form.settled, form.unsettled == 0);
            unsettled += form.settled ? 0 : 1;
            if (!form.settled) continue;
            ++settled;
            EXPECT_NEAR(form.parts[0].offWanted.end_m, 0, 2e-5 * line.length()) << factor << " " << radius;
        }
    }
    EXPECT_GT(settled, 10);
    EXPECT_GT(unsettled, 0);
}

TEST(Form, OneStripOnItsOwnHasNoForm) {
    const FormPlan plan = formOn(made::arc(-0.6, 1.2), pieceOf(stackOf(1, 0.005)));
    EXPECT_FALSE(plan.possible);
    EXPECT_FALSE(plan.corrected);
    EXPECT_NEAR(plan.impossibleRatio, 1, 1e-9);
    EXPECT_LT(apart(plan.line.faying(0.3), made::arc(-0.6, 1.2).at(0.3)), 1e-9);
}

TEST(Form, NothingIsCorrectedWhereNothingLetsGo) {
    for (const bool inPlace : {true, false}) {
        model::Piece piece = pieceOf(stackOf(1, 0.005));
        piece.form.letGo = inPlace;
        if (inPlace) piece.form.kind = model::FormKind::inPlace;
        const FormPlan plan = formOn(made::arc(-0.6, 1.2), piece);
        EXPECT_FALSE(plan.letsGo);
        EXPECT_FALSE(plan.corrected);
        EXPECT_TRUE(plan.possible);
        EXPECT_EQ(plan.parts[0].opens.end_m, 0);
        EXPECT_NEAR(plan.tightestRadius_m, 0.6, 1e-9);
    }
}

TEST(Form, IsFixedAtThePinElseWhereClosingBegins) {
    const line::Line line = made::arc(-0.6, 1.2);
    model::Piece piece = pieceOf(stackOf(4, 0.005));
    EXPECT_EQ(formOn(line, piece).fixedAt_m, 0);
    piece.holding.from = model::From::middle;
    EXPECT_NEAR(formOn(line, piece).fixedAt_m, 0.36, 1e-12);
    piece.holding.from = model::From::end;
    EXPECT_NEAR(formOn(line, piece).fixedAt_m, 0.72, 1e-12);
    piece.stack.pins = {model::Pin{0.2, {}}};
    EXPECT_NEAR(formOn(line, piece).fixedAt_m, 0.2, 1e-12);
    piece.form.fixedAt_m = 0.5;
    EXPECT_NEAR(formOn(line, piece).fixedAt_m, 0.5, 1e-12);
    piece.form.fixedAt_m = 5.0;
    EXPECT_EQ(made::refusal([&] { formOn(line, piece); }).path(), "form.fixed_at_mm");
}

}  // namespace form_plan_test
}  // namespace fayline::laminate
