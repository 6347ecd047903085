#include "core/laminate/springback/form_line.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "core/laminate/springback/form_plan.hpp"
#include "tests/core/laminate/made_lines.hpp"
#include "tests/core/laminate/made_stacks.hpp"

namespace fayline::laminate {
namespace form_line_test {

using made::formOn;
using made::pieceOf;
using made::stackOf;
using model::Describes;
using model::Side;

double apart(const line::Xy& a, const line::Xy& b) {
    return std::hypot(a.x_m - b.x_m, a.y_m - b.y_m);
}

line::Xy xy(const line::Place& place) {
    return {place.x_m, place.y_m};
}

double wave(double s) {
    return -0.5 + 1.4 * std::sin(3 * s);
}

// Where nothing is corrected the faying surface is the parallel that it was: the exact one.
TEST(FormLine, UncorrectedIsTheFayingSurfaceOfTheStack) {
    const line::Line line = made::lineOf(wave, 1.7);
    for (const Describes describes : {Describes::innerFace, Describes::middle, Describes::outerFace}) {
        model::Piece piece = pieceOf(stackOf(4, 0.006, 0.0002), Side::right, describes);
        piece.stack.strips[0].tapersTo_m = 0.004;
        piece.form.allowsForSpringback = false;
        const FormPlan plan = formOn(line, piece);
        for (double s = 0.0003; s < 1.7; s += 0.0171) {
            const double d = faceDistance(piece.stack, describes, line, 0, s);
            const Distance inner{faceDistance(piece.stack, describes, line, 0, 0),
                                 faceDistance(piece.stack, describes, line, 0, 1.7), 1.7};
            EXPECT_LT(apart(xy(plan.line.faying(s)), pointBeside(line.at(s), -1, d)), 1e-7) << s;
            EXPECT_NEAR(plan.line.faying(s).curvature_per_m, curvatureBeside(line.at(s), -1, inner), 2e-4) << s;
            EXPECT_LT(apart(plan.line.beside(s, 0.01), pointBeside(line.at(s), -1, d + 0.01)), 1e-6) << s;
        }
    }
}

// Between nodes the line must serve papers at full size: nodes four times as close say the same.
TEST(FormLine, BetweenItsNodesItIsSmooth) {
    const line::Line line = made::lineOf(wave, 1.7);
    const FormPlan plan = formOn(line, pieceOf(stackOf(3, 0.008)));
    double most = 0;
    for (double s = 0.005; s < 1.69; s += 0.01) {
        // The place between from the line's own curvature: a step of Simpson's rule from the node before.
        const line::Place a = plan.line.faying(s - 0.004);
        const line::Place b = plan.line.faying(s);
        const line::Place c = plan.line.faying(s + 0.004);
        const double ds = apart(xy(a), xy(c));
        const double turn = c.heading_rad - a.heading_rad;
        most =
            std::max(most, std::abs(turn - ds / 6 * (a.curvature_per_m + 4 * b.curvature_per_m + c.curvature_per_m)));
        // A chord of 8 mm leans by its length squared times the curvature's rate (up to 4 per m^2) over 24.
        EXPECT_NEAR(std::atan2(c.y_m - a.y_m, c.x_m - a.x_m), b.heading_rad, 2e-5);
    }
    EXPECT_LT(most, 2e-7);
}

TEST(FormLine, PlacesAreTheSameHoweverTheNodesFall) {
    const line::Line line = made::lineOf(wave, 1.7);
    model::Piece piece = pieceOf(stackOf(3, 0.008));
    const FormPlan plan = formOn(line, piece);
    // Another run moves every node; fixed at the start all the same.
    piece.form.carriesOnStart_m = 0.0037;
    piece.stack.runsPastStart_m = 0.0037;
    piece.form.fixedAt_m = 0.0;
    const FormPlan other = formOn(line, piece);
    for (double s = 0; s < 1.7; s += 0.0031) {
        EXPECT_LT(apart(xy(plan.line.faying(s)), xy(other.line.faying(s))), 1e-7);
    }
}

TEST(FormLine, RunsOnAsAnArc) {
    const FormPlan plan = formOn(made::arc(-0.6, 1.0), pieceOf(stackOf(4, 0.005)));
    const double radius = plan.tightestRadius_m;
    const line::Place start = plan.line.faying(0);
    const line::Xy centre{start.x_m + radius * std::sin(start.heading_rad),
                          start.y_m - radius * std::cos(start.heading_rad)};
    for (const double s : {-0.3, -0.05, 0.2, 0.65, 0.9}) {
        EXPECT_NEAR(apart(xy(plan.line.faying(s)), centre), radius, 1e-8) << s;
        EXPECT_NEAR(apart(xy(plan.line.axis(s)), centre), radius + 0.01, 1e-8) << s;
    }
}

TEST(FormLine, ReachesAsFarAsStripsAndForm) {
    model::Piece piece = pieceOf(stackOf(4, 0.005));
    piece.stack.runsPastStart_m = 0.1;
    piece.stack.runsPastEnd_m = 0.15;
    piece.form.carriesOnEnd_m = 0.4;
    const FormPlan plan = formOn(made::arc(-0.6, 1.0), piece);
    EXPECT_NEAR(plan.line.from_m(), -0.1, 1e-12);
    EXPECT_NEAR(plan.line.to_m(), 1.0, 1e-9);
}

// The neutral axis keeps its length: form, released and wanted piece have it in common.
TEST(FormLine, LengthAlongTheAxisIsTheWantedPieces) {
    const FormPlan plan = formOn(made::arc(-0.6, 1.0), pieceOf(stackOf(4, 0.005)));
    EXPECT_NEAR(plan.line.nodes().back().s_m - plan.line.nodes().front().s_m, 0.61, 1e-9);
    EXPECT_NEAR(plan.parts[0].released.nodes().back().s_m, 0.61, 1e-9);
}

// Mirrored with its side, walked backwards with its side changed, turned and moved: the same form.
TEST(FormLine, MirroredReversedAndTurnedItIsTheSame) {
    model::Stack stack = stackOf(1, 0.006, 0.0002);
    stack.strips = {model::Strips{.count = 2, .thickness_m = 0.007}, model::Strips{.count = 3, .thickness_m = 0.004}};
    stack.runsPastStart_m = stack.runsPastEnd_m = 0.1;
    model::Piece piece = pieceOf(stack);
    piece.form.fixedAt_m = 0.4;
    const FormPlan plan = formOn(made::lineOf(wave, 1.7), piece);

    const FormPlan turned = formOn(made::lineOf(wave, 1.7, 1.1, {3, -2}), piece);
    piece.line.stripsOn = Side::right;
    const FormPlan mirrored = formOn(made::lineOf([](double s) { return -wave(s); }, 1.7), piece);
    const line::Place end = made::lineOf(wave, 1.7).at(1.7);
    piece.form.fixedAt_m = 1.3;
    const FormPlan back = formOn(
        made::lineOf([](double s) { return -wave(1.7 - s); }, 1.7, end.heading_rad + 3.14159265358979323846, xy(end)),
        piece);
    for (double s = -0.1; s <= 1.8; s += 0.047) {
        const line::Xy at = xy(plan.line.faying(s));
        const line::Xy t{3 + at.x_m * std::cos(1.1) - at.y_m * std::sin(1.1),
                         -2 + at.x_m * std::sin(1.1) + at.y_m * std::cos(1.1)};
        EXPECT_LT(apart(t, xy(turned.line.faying(s))), 1e-8);
        EXPECT_LT(apart({at.x_m, -at.y_m}, xy(mirrored.line.faying(s))), 1e-8);
        EXPECT_LT(apart(at, xy(back.line.faying(1.7 - s))), 1e-7);
    }
    EXPECT_NEAR(plan.parts[0].uncorrected.end_m, mirrored.parts[0].uncorrected.end_m, 1e-8);
    EXPECT_NEAR(plan.parts[0].uncorrected.end_m, back.parts[0].uncorrected.start_m, 1e-7);
    EXPECT_NEAR(plan.parts[0].uncorrected.rise_m, back.parts[0].uncorrected.rise_m, 1e-6);
    EXPECT_NEAR(plan.parts[0].uncorrected.chord_m, turned.parts[0].uncorrected.chord_m, 1e-9);
}

TEST(FormLine, AnEmptyOneIsAllNought) {
    const FormLine none;
    EXPECT_TRUE(none.empty());
    EXPECT_EQ(none.faying(1).x_m, 0);
    EXPECT_EQ(none.from_m(), 0);
}

}  // namespace form_line_test
}  // namespace fayline::laminate
