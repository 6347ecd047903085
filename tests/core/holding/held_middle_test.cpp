#include <gtest/gtest.h>

#include <cmath>

#include "core/holding/loose_stack.hpp"
#include "core/holding/middle.hpp"
#include "core/laminate/stack.hpp"
#include "tests/core/laminate/made_lines.hpp"

namespace fayline::holding {
namespace held_middle_test {

double stemCurvature(double s) {
    return -(0.10 + 1.513 / std::pow(std::cosh((s - 0.62) / 0.34), 2));
}

std::vector<laminate::Layer> nineStrips(double lineLength_m, bool tapers) {
    model::Stack stack;
    stack.strips[0].count = 9;
    if (tapers) stack.strips[0].tapersTo_m = 0.004;
    return laminate::layers(stack, model::Describes::innerFace, lineLength_m);
}

class MiddleOf : public testing::TestWithParam<bool> {};

TEST_P(MiddleOf, RunsAsLongAsTheParallelBesideTheLine) {
    const line::Line line = made::lineOf(stemCurvature, 1.8);
    const Middle middle = middleOf(line, 1, nineStrips(line.length(), GetParam()));
    for (const double at_m : {-0.1, -0.003, 0.0, 0.004, 0.31, 0.62, 1.2345, 1.8, 1.95}) {
        EXPECT_NEAR(alongMiddle(middle, at_m), laminate::lengthBeside(line, 1, middle.distance, 0, at_m), 2e-8) << at_m;
    }
}

TEST_P(MiddleOf, LeadsBackToThePlaceAlongTheLine) {
    const line::Line line = made::lineOf(stemCurvature, 1.8);
    const Middle middle = middleOf(line, 1, nineStrips(line.length(), GetParam()));
    for (double at_m = -0.1; at_m < 1.95; at_m += 0.0137) {
        EXPECT_NEAR(alongLine(middle, alongMiddle(middle, at_m)), at_m, 1e-9) << at_m;
        EXPECT_NEAR(middleAt(middle, alongMiddle(middle, at_m)).at_m, at_m, 1e-9) << at_m;
    }
}

TEST_P(MiddleOf, HasTheCurvatureOfTheParallelAndTheRateAtWhichItChanges) {
    const line::Line line = made::lineOf(stemCurvature, 1.8);
    const Middle middle = middleOf(line, 1, nineStrips(line.length(), GetParam()));
    const auto curvature = [&](double s) {
        return laminate::curvatureBeside(line.at(alongLine(middle, s)), 1, middle.distance);
    };
    const double end = middle.nodes.back().s_m;
    for (double s = 0.003; s < end - 0.003; s += 0.0171) {
        const MiddlePlace place = middleAt(middle, s);
        EXPECT_NEAR(place.curvature_per_m, curvature(s), 3e-6) << s;
        const double step = 1e-4;
        // The greatest rate is about 4 per square metre.
        EXPECT_NEAR(place.curvatureRate_per_m2, (curvature(s + step) - curvature(s - step)) / (2 * step), 2e-3) << s;
    }
}

TEST_P(MiddleOf, RunsOnAsAnArcBeyondTheTrimLines) {
    const line::Line line = made::lineOf(stemCurvature, 1.8);
    const Middle middle = middleOf(line, 1, nineStrips(line.length(), GetParam()));
    for (const double at_m : {-0.05, 1.85}) {
        const MiddlePlace place = middleAt(middle, alongMiddle(middle, at_m));
        EXPECT_NEAR(place.curvature_per_m, laminate::curvatureBeside(line.at(at_m), 1, middle.distance), 1e-12);
        EXPECT_EQ(place.curvatureRate_per_m2, 0);
    }
}

INSTANTIATE_TEST_SUITE_P(LevelAndTapered, MiddleOf, testing::Bool());

TEST(Middle, PointsAwayFromTheForm) {
    const line::Line line = made::arc(-0.8, 1);  // turns right; the strips on its left lie outside
    const Middle middle = middleOf(line, 1, nineStrips(line.length(), false));
    const MiddleFrame frame = middleFrame(middle, line, alongMiddle(middle, 0.4));
    const double radius = 0.8 + middle.distance.atStart_m;
    EXPECT_NEAR(frame.point.x_m, radius * std::sin(0.5), 1e-9);
    EXPECT_NEAR(frame.point.y_m, radius * std::cos(0.5) - 0.8, 1e-9);
    EXPECT_NEAR(frame.away.x_m, std::sin(0.5), 1e-9);
    EXPECT_NEAR(frame.ahead.x_m, std::cos(0.5), 1e-9);
    EXPECT_GT(middleAt(middle, 0.4).curvature_per_m, 0);
}

TEST(Middle, HasNoRoomWhereTheStackIsDeeperThanTheHollow) {
    const line::Line line = made::arc(0.05, 1);  // hollow, radius 50 mm, under a stack of 58 mm
    EXPECT_FALSE(middleOf(line, 1, nineStrips(line.length(), false)).room);
}

// Source: beam theory (D), worked by hand. Two strips of 6 mm, 11,000 and 9,000 MPa, 56 mm wide as bent.
TEST(LooseStack, AddsUpWhatEachStripBearsByItself) {
    model::Stack stack;
    stack.strips = {model::Strips{.count = 1, .thickness_m = 0.006, .moe_Pa = 11e9},
                    model::Strips{.count = 1, .thickness_m = 0.006, .moe_Pa = 9e9}};
    stack.widths = {{.at_m = 0, .width_m = 0.05}};
    const LooseStack loose = looseStack(stack, model::Describes::innerFace, 1, wood::builtInSpecies());
    const LooseSection section = sectionAt(loose, 0.5);
    EXPECT_NEAR(section.width_m, 0.056, 1e-12);
    EXPECT_NEAR(section.stiffness_N_m2, 20e9 * 0.056 * std::pow(0.006, 3) / 12, 1e-9);  // 20.16 N m2
    const double crush = 0.006 * 12 / 11e9 + 0.006 * 12 / 9e9;
    EXPECT_NEAR(section.foundation_N_m2, 0.056 / crush, 1e-3);
}

TEST(LooseStack, LosesStripAfterStripWhereItIsScarfed) {
    model::Stack stack;
    stack.strips[0].count = 4;
    stack.glueLine_m = 0.00015;
    stack.scarfedEnd = model::Scarf{.slope = 10};
    stack.runsPastEnd_m = 0.1;
    const LooseStack loose = looseStack(stack, model::Describes::innerFace, 1, wood::builtInSpecies());
    const double one = sectionAt(loose, 1.099).stiffness_N_m2;
    // A strip and a glue line are 6.65 mm: the next strip ends 66.5 mm short.
    EXPECT_NEAR(sectionAt(loose, 1.033).stiffness_N_m2, 2 * one, 1e-9);
    EXPECT_NEAR(sectionAt(loose, 0.5).stiffness_N_m2, 4 * one, 1e-9);
    EXPECT_NEAR(sectionAt(loose, 0.5).foundation_N_m2, sectionAt(loose, 1.099).foundation_N_m2 / 4, 1e-3);
    EXPECT_EQ(stripsThere(loose, 1.033).size(), 2u);
}

TEST(LooseStack, FallsWithTheCubeOfTheThicknessAndWithTheWidthWhereItTapers) {
    model::Stack stack;
    stack.strips[0].count = 3;
    stack.strips[0].thickness_m = 0.008;
    stack.strips[0].tapersTo_m = 0.004;
    stack.ripAllowance_m = 0;
    stack.widths = {{.at_m = 0, .width_m = 0.05}, {.at_m = 1, .width_m = 0.03}};
    const LooseStack loose = looseStack(stack, model::Describes::innerFace, 1, wood::builtInSpecies());
    const double start = sectionAt(loose, 0).stiffness_N_m2;
    EXPECT_NEAR(sectionAt(loose, 1).stiffness_N_m2, start / 8 * 0.6, 1e-9);
    EXPECT_NEAR(sectionAt(loose, 0.5).stiffness_N_m2, start * std::pow(0.75, 3) * 0.8, 1e-9);
}

TEST(LooseStack, CountsTheCurveThatStripsHaveTakenByTheirStiffness) {
    model::Stack stack;
    stack.strips = {model::Strips{.count = 1, .thickness_m = 0.01, .moe_Pa = 10e9},
                    model::Strips{.count = 1, .thickness_m = 0.005, .moe_Pa = 10e9}};
    stack.strips[0].bentBefore = model::BentBefore{.how = model::Softened::steamed, .set = 0.9};
    const LooseStack loose = looseStack(stack, model::Describes::innerFace, 1, wood::builtInSpecies());
    EXPECT_NEAR(sectionAt(loose, 0.5).set, 0.9 * 8 / 9, 1e-12);
}

}  // namespace held_middle_test
}  // namespace fayline::holding
