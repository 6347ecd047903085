// Springing home by what a user read off the piece, and the plan with one strip fewer.
#include "core/plan/study/springing.hpp"

#include <gtest/gtest.h>

#include "core/laminate/springback/learned.hpp"
#include "core/plan/findings/breaking_texts.hpp"
#include "core/plan/findings/form_texts.hpp"
#include "core/plan/findings/form_wording.hpp"
#include "core/plan/findings/springing_texts.hpp"
#include "core/plan/study/one_fewer.hpp"
#include "core/units/input_error.hpp"
#include "tests/core/plan/made_pieces.hpp"
#include "tests/refusal.hpp"

namespace fayline::plan {
namespace springing_test {

using made::planOf;

TEST(Springing, TheEndStandsWhereItWasRead) {
    const model::Piece piece = made::bendOf(5);
    const Plan plan = planOf(piece);
    for (const double off_m : {0.012, -0.004, 0.05}) {
        const auto home = springHome(piece, plan, off_m);
        ASSERT_TRUE(home);
        EXPECT_TRUE(home->measured);
        EXPECT_NEAR(home->off.end_m, off_m, 2e-7);
        EXPECT_EQ(home->moment_N_m > 0, off_m > 0);
    }
}

// Small differences: twice as far off wants twice the pull and leaves twice the stress. Tolerance: the shape opens on a
// curve, not on a straight.
TEST(Springing, TwiceAsFarOffWantsTwiceThePull) {
    const model::Piece piece = made::bendOf(5);
    const Plan plan = planOf(piece);
    const auto one = springHome(piece, plan, 0.004);
    const auto two = springHome(piece, plan, 0.008);
    ASSERT_TRUE(one && two);
    EXPECT_NEAR(two->moment_N_m / one->moment_N_m, 2, 0.02);
    EXPECT_NEAR(two->stress_Pa / one->stress_Pa, 2, 0.02);
    EXPECT_NEAR(two->middlePull_N / one->middlePull_N, 2, 0.02);
}

TEST(Springing, WithoutAReadingItIsAsThePlanForetells) {
    model::Piece piece = made::bendOf(5);
    EXPECT_FALSE(springHome(piece, planOf(piece), std::nullopt));
    EXPECT_TRUE(springingTexts(std::nullopt, planOf(piece)).front().is(texts::comesOffOnLine));
    piece.form.allowsForSpringback = false;
    const Plan plan = planOf(piece);
    const auto home = springHome(piece, plan, std::nullopt);
    ASSERT_TRUE(home);
    EXPECT_FALSE(home->measured);
    EXPECT_NEAR(home->off.end_m, plan.form.parts[0].uncorrected.end_m, 1e-6);
    const std::vector<Message> said = springingTexts(home, plan);
    EXPECT_TRUE(said.front().is(texts::standsAsIf));
    EXPECT_EQ(said.front().args[0].messages.front(), endStands(home->off, false));
    EXPECT_TRUE(said.back().is(texts::sprungCaution));
    // The same read off the piece says the same.
    const auto read = springHome(piece, plan, home->off.end_m);
    ASSERT_TRUE(read);
    EXPECT_NEAR(read->factor, 1, 1e-4);
    EXPECT_NEAR(read->stress_Pa, home->stress_Pa, 1e-4 * home->stress_Pa);
}

TEST(Springing, WhatNoSpringbackLeavesIsRefusedAndSaysWhatCanBe) {
    const model::Piece piece = made::bendOf(5);
    const Plan plan = planOf(piece);
    EXPECT_NE(made::refusal([&] { springHome(piece, plan, 5.0); }).accepted().find("between"), std::string::npos);
    const model::Piece single = made::bendOf(1);
    EXPECT_FALSE(planOf(single).form.possible);
    EXPECT_FALSE(springHome(single, planOf(single), 0.01));
}

TEST(Springing, NothingIsSprungWhereNothingLetsGo) {
    model::Piece piece = made::bendOf(5);
    piece.form.kind = model::FormKind::inPlace;
    const Plan plan = planOf(piece);
    EXPECT_FALSE(springHome(piece, plan, 0.01));
    EXPECT_TRUE(springingTexts(std::nullopt, plan).front().is(texts::nothingComesOff));
}

TEST(Springing, MoreThanWoodBearsIsSaid) {
    model::Piece piece = made::bendOf(2);
    piece.stack.strips[0].thickness_m = 0.012;
    piece.form.allowsForSpringback = false;
    const Plan plan = planOf(piece);
    const auto home = springHome(piece, plan, std::nullopt);
    ASSERT_TRUE(home);
    ASSERT_FALSE(home->bears);
    EXPECT_NE(writeTexts(springingTexts(home, plan), plan.display).find("more than the 30 %"), std::string::npos);
}

// Source: by hand (D). Of n equal strips of t on glue lines of g, one fewer is t + g shallower. Let go each gives back
// about 1 / n^2 of its curve (the glue lines make the rest a little stiffer).
TEST(OneFewer, IsTheRuleForOneStripLess) {
    model::Piece piece = made::bendOf(5);
    piece.stack.glueLine_m = 0.00015;  // the thinner, the nearer the rule
    const Plan plan = planOf(piece);
    const OneFewer fewer = withOneFewer(piece, made::shop(), plan);
    EXPECT_TRUE(fewer.cannot.empty());
    EXPECT_EQ(fewer.stack.strips[0].count, 4);
    EXPECT_NEAR(fewer.lost_m, piece.stack.strips[0].thickness_m + piece.stack.glueLine_m, 1e-9);
    EXPECT_NEAR(fewer.ratio, 1.0 / 16, 0.005);
    EXPECT_NEAR(fewer.stiffShare, 64.0 / 125, 0.02);
    EXPECT_GT(fewer.off.end_m, 0);  // the form allows for less springback than it has
    EXPECT_TRUE(oneFewerTexts(fewer, plan)[2].is(texts::fewerEndOpen));
}

// On the wanted line itself what the end stands off is what a plan of the smaller stack says.
TEST(OneFewer, OnTheWantedLineItStandsAsItsOwnPlanSays) {
    model::Piece piece = made::bendOf(5);
    piece.form.allowsForSpringback = false;
    const Plan plan = planOf(piece);
    const OneFewer fewer = withOneFewer(piece, made::shop(), plan);
    model::Piece left = piece;
    left.stack = fewer.stack;
    const Plan own = planOf(left);
    EXPECT_NEAR(fewer.off.end_m, own.form.parts[0].uncorrected.end_m, 1e-6);
    EXPECT_NEAR(fewer.ratio, own.form.parts[0].ratioAtTightest, 1e-6);
    EXPECT_NEAR(plan.stack.depth_m - fewer.lost_m, own.stack.depth_m, 1e-12);
}

TEST(OneFewer, GluingsEndBetweenTheSameStripsAndASingleStripCannotGo) {
    model::Piece piece = made::bendOf(3);
    piece.stack.strips.push_back(model::Strips{.count = 1, .thickness_m = 0.009, .species = "oak_white"});
    piece.stack.strips.push_back(model::Strips{.count = 2, .thickness_m = 0.004, .species = "oak_white"});
    piece.stack.gluings = {3, 5};
    const Plan plan = planOf(piece);
    const OneFewer fewer = withOneFewer(piece, made::shop(), plan);
    EXPECT_EQ(fewer.place, 4);
    EXPECT_EQ(fewer.stack.strips.size(), 2U);
    EXPECT_EQ(fewer.stack.gluings, (std::vector<int>{3, 4}));
    const model::Piece single = made::bendOf(1);
    const OneFewer none = withOneFewer(single, made::shop(), planOf(single));
    EXPECT_TRUE(none.cannot.is(texts::onlyStrip));
    EXPECT_TRUE(oneFewerTexts(none, planOf(single)).front().is(texts::cannotBeGlued));
}

TEST(FormWording, SpreadIsOfBuildersUntilTheBoatsOwnPiecesSayBetter) {
    const model::Piece piece = made::bendOf(5);
    Plan plan = planOf(piece);
    const auto written = [&] { return writeTexts(spreadTexts(plan), plan.display); };
    EXPECT_NE(written().find("standard deviation 0.72"), std::string::npos);
    EXPECT_NE(written().find(tapeText(2 * plan.form.parts[0].uncorrected.end_m, plan.display)), std::string::npos);
    plan.learned.emplace();
    EXPECT_TRUE(spreadTexts(plan).front().is(texts::spreadBuilders));
    plan.learned->factor = 1.2;
    plan.learned->low = 0.8;
    plan.learned->high = 1.6;
    EXPECT_NE(written().find("0.8 and 1.6 times"), std::string::npos);
    plan.form.letsGo = false;
    EXPECT_TRUE(spreadTexts(plan).empty());
}

TEST(FormWording, MoistureHasItsSign) {
    model::Piece piece = made::bendOf(5);
    piece.stack.moisture = 0.08;
    piece.stack.serviceMoisture = 0.14;
    EXPECT_TRUE(moistureTexts(piece.stack, planOf(piece))[1].is(texts::swellsOpens));
    std::swap(piece.stack.moisture, piece.stack.serviceMoisture);
    EXPECT_TRUE(moistureTexts(piece.stack, planOf(piece))[1].is(texts::shrinksTightens));
    piece.stack.moisture = piece.stack.serviceMoisture;
    EXPECT_TRUE(moistureTexts(piece.stack, planOf(piece)).empty());
}

}  // namespace springing_test
}  // namespace fayline::plan
