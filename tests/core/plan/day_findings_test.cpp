// Findings about the timed run: each just when it should be.
#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>
#include <string>

#include "core/plan/findings/day_texts.hpp"
#include "core/plan/findings/day_words.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/study/remedies.hpp"
#include "tests/core/plan/made_pieces.hpp"
#include "tests/core/plan/whole_line.hpp"

namespace fayline::plan {
namespace day_findings_test {

const std::atomic<bool> goOn{false};

// Five strips and a glue of which a film stays open so long at the day's 20 C.
struct Made {
    model::Piece piece = made::bend(2, 0.6);
    model::Boat boat;

    explicit Made(double open_s) {
        piece.stack.strips[0].count = 5;
        piece.glue.air_C = 20;
        model::OwnAdhesive own;
        own.id = piece.glue.adhesive = "typed";
        own.openTime_s = open_s;
        own.openTimeAt_C = 20;
        boat.adhesives = {own};
    }
    Shop shop() const { return shopOf(boat); }
    Plan plan() const { return makePlan(piece, shop()); }
    // With stations to close.
    void clamp() {
        for (const double at_m : {0.2, 0.6, 1.0}) {
            piece.holding.stations.push_back({.at_m = at_m});
        }
    }
};

// From the first wetting of the worst face until it is closed, by the same crew.
double heldOpen_s(const Plan& plan) {
    const schedule::Run& run = plan.day.gluings[0].run;
    const schedule::FaceTimes& face = run.faces[run.worstFace];
    return face.closed_s - face.wetted_s;
}

TEST(DayFindings, AMarginIsShortBelowAFifthOfTheOpenTimeAndMissedBelowNothing) {
    const double held_s = heldOpen_s(Made(3600).plan());
    const Plan ample = Made(held_s / 0.8 + 1).plan();
    EXPECT_FALSE(find(ample.findings, Code::marginShort));
    EXPECT_FALSE(find(ample.findings, Code::closedTooLate));
    const Plan tight = Made(held_s / 0.8 - 1).plan();
    const Finding told = whole(tight.findings, Code::marginShort);
    EXPECT_EQ(told.severity, Severity::caution);
    EXPECT_NEAR(told.value, held_s / 60, 1e-9);
    EXPECT_NEAR(told.limit, (held_s / 0.8 - 1) / 60, 1e-9);
    EXPECT_TRUE(told.text.is(texts::spareShort));
    EXPECT_NEAR(told.text.args[1].value, held_s / 0.8 - 1 - held_s, 1e-6);
    EXPECT_FALSE(find(tight.findings, Code::closedTooLate));
    EXPECT_FALSE(find(Made(held_s + 1).plan().findings, Code::closedTooLate));
    const Plan late = Made(held_s - 1).plan();
    const Finding stop = whole(late.findings, Code::closedTooLate);
    EXPECT_EQ(stop.severity, Severity::stop);
    EXPECT_FALSE(find(late.findings, Code::marginShort));
    EXPECT_TRUE(stop.text.is(texts::closedTooLate));
    EXPECT_EQ(stop.text.args[0].messages.front(), jointName(1));
    EXPECT_TRUE(textOf(stop, inMillimetres).starts_with("Joint 1-2 is clamped ")) << english(stop);
    EXPECT_NEAR(stop.text.args[1].value, 1, 1e-6);  // second too late
    EXPECT_LT(late.day.margin_s, 0);
}

TEST(DayFindings, ACrewTooSmallForTheOpenTimeIsToldAndALargerOneIsAmongTheRemedies) {
    Made made(3600);
    const double two_s = heldOpen_s(made.plan());
    made.piece.crew.hands = 1;
    const double one_s = heldOpen_s(made.plan());
    ASSERT_GT(one_s, 1.2 * two_s);
    Made between((one_s + two_s) / 2);
    between.piece.crew.hands = 2;
    EXPECT_FALSE(find(between.plan().findings, Code::closedTooLate));
    between.piece.crew.hands = 1;
    const Plan plan = between.plan();
    EXPECT_TRUE(find(plan.findings, Code::closedTooLate));
    const auto study = studyDay(between.piece, between.shop(), plan.line.fair.line, plan.day, goOn);
    ASSERT_TRUE(study);
    const auto hands =
        std::ranges::find_if(study->remedies, [](const Remedy& remedy) { return remedy.what.is(texts::moreHands); });
    ASSERT_NE(hands, study->remedies.end());
    // As worked out for a crew of two.
    EXPECT_NEAR(hands->margin_s, (one_s + two_s) / 2 - two_s, 1e-6);
    // Each remedy is better than what there is, the best first.
    for (std::size_t i = 0; i < study->remedies.size(); ++i) {
        const Remedy& remedy = study->remedies[i];
        EXPECT_TRUE(remedy.margin_s > plan.day.margin_s || remedy.cupMargin_s > plan.day.cupMargin_s)
            << writeWithin(remedy.what, inMillimetres);
        const double before_s = i > 0 ? study->remedies[i - 1].margin_s : remedy.margin_s;
        EXPECT_LE(remedy.margin_s, before_s);
    }
}

TEST(DayFindings, APlannedBreakIsTheTwoGluingsThatItSays) {
    Made made(3600);
    made.piece.crew.hands = 1;
    made.boat.adhesives[0].openTime_s = 0.9 * heldOpen_s(made.plan());
    const Plan plan = made.plan();
    const auto study = studyDay(made.piece, made.shop(), plan.line.fair.line, plan.day, goOn);
    ASSERT_TRUE(study);
    const auto pause =
        std::ranges::find_if(study->remedies, [](const Remedy& remedy) { return remedy.breakAfterStrip > 0; });
    ASSERT_NE(pause, study->remedies.end());
    EXPECT_TRUE(pause->what.is(texts::plannedBreak));
    EXPECT_EQ(pause->what.count, pause->breakAfterStrip);
    made.piece.stack.gluings = {pause->breakAfterStrip};
    const Plan two = made.plan();
    ASSERT_EQ(two.day.gluings.size(), 2u);
    EXPECT_DOUBLE_EQ(two.day.margin_s, pause->margin_s);
    // The second begins with wiping and sanding what has cured.
    EXPECT_EQ(two.day.gluings[1].run.tasks[0].work, schedule::Work::sand);
    EXPECT_EQ(two.day.gluings[1].run.tasks[1].work, schedule::Work::wipe);
    // No other break is better.
    for (int after = 1; after < 5; ++after) {
        made.piece.stack.gluings = {after};
        EXPECT_LE(made.plan().day.margin_s, pause->margin_s + 1e-9);
    }
}

TEST(DayFindings, ABatchThatWaitsTooLongIsReported) {
    Made made(10 * 3600);
    EXPECT_FALSE(find(made.plan().findings, Code::cupWaits));
    made.piece.crew.rates.stackStrip_s = 600;  // ten minutes to turn each strip
    const Plan plan = made.plan();
    const Finding told = whole(plan.findings, Code::cupWaits);
    EXPECT_GT(told.value, told.limit);
    EXPECT_TRUE(details(told, texts::hotBatchOutdoors));
    EXPECT_LT(plan.day.cupMargin_s, 0);
}

TEST(DayFindings, AChanceBelowNineteenInTwentyIsReportedWithTheBestRemedy) {
    Made made(3600);
    const double held_s = heldOpen_s(made.plan());
    Made ample(3 * held_s);
    const Plan quiet = ample.plan();
    const auto sure = studyDay(ample.piece, ample.shop(), quiet.line.fair.line, quiet.day, goOn);
    ASSERT_TRUE(sure);
    EXPECT_GT(sure->days.chanceInTime, 0.95);
    EXPECT_TRUE(sure->remedies.empty());
    EXPECT_FALSE(find(dayStudyFindings(quiet, *sure), Code::chanceInTime));
    Made even(held_s);
    const Plan plan = even.plan();
    const auto study = studyDay(even.piece, even.shop(), plan.line.fair.line, plan.day, goOn);
    ASSERT_TRUE(study);
    const Finding told = whole(dayStudyFindings(plan, *study), Code::chanceInTime);
    EXPECT_DOUBLE_EQ(told.value, 100 * study->days.chanceInTime);
    EXPECT_DOUBLE_EQ(told.limit, 95);
    EXPECT_LT(told.value, 60);
    ASSERT_FALSE(study->remedies.empty());
    const Remedy& best = study->remedies.front();
    // The margin, the odds, what helps most and how much.
    EXPECT_EQ(told.text,
              Message(texts::chanceShortTry, {marginText(plan.day.margin_s), inHundredText(study->days.chanceInTime),
                                              best.brief, marginText(best.margin_s)}));
    EXPECT_EQ(told.details[0].args[0].value, study->days.marginFor95_s);
    EXPECT_EQ(told.details[1], Message(texts::mostTimeFrom, {best.what}));
}

TEST(DayWords, EveryWarningIsSaidInWholeSentences) {
    using enum schedule::WarningKind;
    schedule::Warning warning{.cup = 2, .inner = 3, .by_s = 120, .marginAsPlanned_s = 600};
    for (const auto kind : {cupOver, cupShort, cupForeseen, faceOff, faceLate, pace, faceShort}) {
        warning.kind = kind;
        const std::vector<Message> said = warningTexts(warning);
        ASSERT_FALSE(said.empty());
        for (const Message& message : said) expectWhole(writeText(message, inMillimetres));
        EXPECT_NE(writeTexts(said, inMillimetres).find("2 min"), std::string::npos);
    }
    warning.kind = faceLate;
    EXPECT_TRUE(warningTexts(warning).back().is(texts::fetchHands));
    warning.breakOff = schedule::BreakOff{4, 300};
    EXPECT_EQ(writeTexts(warningTexts(warning), inMillimetres),
              "The open time of joint 3-4 ends 2 min before the last clamp is on. Stop wetting after strip 4 and clamp "
              "what is wetted: 5 min to spare. Glue the rest another day.");
}

TEST(DayFindings, StationsAreClosedInTheOrderOfTheHolding) {
    Made made(3600);
    made.clamp();
    made.piece.holding.from = model::From::end;
    const Plan plan = made.plan();
    std::vector<int> closed;
    for (const schedule::Task& task : plan.day.gluings[0].run.tasks) {
        if (task.work == schedule::Work::close) closed.push_back(task.station);
    }
    EXPECT_EQ(closed, (std::vector<int>{3, 2, 1}));
}

TEST(DayFindings, AStoppedStudyGivesNothing) {
    const std::atomic<bool> stop{true};
    const Made made(600);
    const Plan plan = made.plan();
    EXPECT_FALSE(studyDay(made.piece, made.shop(), plan.line.fair.line, plan.day, stop));
}

}  // namespace day_findings_test
}  // namespace fayline::plan
