#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>

#include "core/export/print.hpp"
#include "core/plan/findings/answer_texts.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/form_texts.hpp"
#include "core/plan/findings/form_wording.hpp"
#include "core/units/input_error.hpp"
#include "tests/core/plan/made_pieces.hpp"
#include "tests/core/plan/whole_line.hpp"
#include "tests/refusal.hpp"

namespace fayline::plan {
namespace form_findings_test {

using made::planOf;

const Answer& answerOf(const Plan& plan) {
    return plan.answers[static_cast<std::size_t>(Question::form)];
}

TEST(FormFindings, SpringbackIsReportedWithTheEndsOpening) {
    const Plan plan = planOf(made::bendOf(5));
    const Finding told = whole(plan, Code::springback);
    EXPECT_EQ(told.severity, Severity::note);
    EXPECT_NEAR(told.value, 1000 * plan.form.parts[0].uncorrected.end_m, 1e-9);
    EXPECT_EQ(levelOf(told), Level::fact);
    EXPECT_TRUE(told.text.is(texts::springsOpen));
    EXPECT_NEAR(1000 * told.text.args[0].value, told.value, 1e-9);
    EXPECT_EQ(told.text.args[1], put::place(plan.line.fair.line.length(), plan.line.fair.line.length()));
    EXPECT_NEAR(told.text.args[2].value, 2 * told.text.args[0].value, 1e-12);
    EXPECT_TRUE(details(told, texts::givesBack));
    EXPECT_TRUE(details(told, texts::measuredTwice));
    EXPECT_TRUE(details(told, texts::riseGoes));
    EXPECT_TRUE(textOf(told, inMillimetres).starts_with("Springs open 19 mm at the end (0 to 38 mm). The form"))
        << english(told);
    EXPECT_FALSE(find(plan, Code::formImpossible));
    const Answer answer = answerOf(plan);
    EXPECT_TRUE(answer.sentence.is(texts::opensEnd));
    EXPECT_EQ(writeWithin(answer.figures, inMillimetres), "3.7 %, 19 mm");
    EXPECT_TRUE(answer.more.front().is(texts::overbent));
}

TEST(FormFindings, AFormThatDoesNotAllowForItIsACaution) {
    model::Piece piece = made::bendOf(5);
    piece.form.allowsForSpringback = false;
    piece.holding.from = model::From::end;
    const Plan plan = planOf(piece);
    const Finding told = whole(plan, Code::springbackNotAllowedFor);
    EXPECT_EQ(told.severity, Severity::caution);
    EXPECT_TRUE(told.text.is(texts::springsOpenUncorrected));
    EXPECT_EQ(told.text.args[1], put::place(0, plan.line.fair.line.length()));
    EXPECT_FALSE(find(plan, Code::springback));
    EXPECT_NE(answerText(answerOf(plan), inMillimetres).find("does not allow for it"), std::string::npos);
}

TEST(FormFindings, AStackThatNoFormBendsIsAStopThatSaysWhatWouldDo) {
    const Plan plan = planOf(made::bendOf(1));
    const Finding told = whole(plan, Code::formImpossible);
    EXPECT_EQ(told.severity, Severity::stop);
    EXPECT_TRUE(told.text.is(texts::formImpossible));
    EXPECT_TRUE(details(told, texts::springBackLess));
    EXPECT_NEAR(told.value, 100, 1e-6);
    EXPECT_EQ(answerOf(plan).worst, Severity::stop);
}

TEST(FormFindings, TheRecordsFactorIsSaidToBeTheUsers) {
    model::Piece piece = made::bendOf(5);
    const double before = planOf(piece).form.parts[0].uncorrected.end_m;
    piece.form.springbackFactor = 1.5;
    const Plan plan = planOf(piece);
    const Finding told = whole(plan, Code::springbackFactor);
    EXPECT_EQ(told.text.args[0].value, 1.5);
    EXPECT_NE(english(told).find("as you set it"), std::string::npos);
    EXPECT_NEAR(plan.form.parts[0].uncorrected.end_m, 1.5 * before, 0.03 * before);
    EXPECT_FALSE(find(planOf(made::bendOf(5)), Code::springbackFactor));
}

TEST(FormFindings, MoistureIsReportedWithItsSign) {
    model::Piece piece = made::bendOf(8);
    piece.stack.moisture = 0.08;
    piece.stack.serviceMoisture = 0.14;
    const Finding wetter = whole(planOf(piece), Code::moistureMovesIt);
    EXPECT_GT(wetter.value, 1);
    EXPECT_TRUE(wetter.text.is(texts::moistureOpens));
    EXPECT_TRUE(details(wetter, texts::swellsOpens));
    std::swap(piece.stack.moisture, piece.stack.serviceMoisture);
    const Plan plan = planOf(piece);
    const Finding drier = whole(plan, Code::moistureMovesIt);
    EXPECT_LT(drier.value, -1);
    EXPECT_TRUE(drier.text.is(texts::moistureCloses));
    EXPECT_TRUE(details(drier, texts::shrinksTightens));
    piece.stack.serviceMoisture = piece.stack.moisture;
    EXPECT_FALSE(find(planOf(piece), Code::moistureMovesIt));
}

TEST(FormFindings, AWoodWhoseShrinkageIsNotKnownSaysSo) {
    model::Boat boat;
    model::OwnSpecies own{.id = "mystery", .name = "Mystery wood", .mor_Pa = 100e6, .moe_Pa = 12e9};
    boat.species = {own};
    model::Piece piece = made::bendOf(8);
    piece.stack.strips[0].species = "mystery";
    const Plan plan = makePlan(piece, shopOf(boat));
    EXPECT_FALSE(plan.form.moisture.known);
    const Finding told = whole(plan, Code::shrinkageUnknown);
    EXPECT_EQ(told.text.args[0].words, "Mystery wood");
}

TEST(FormFindings, MoistureThatNoWoodHasIsAStopThatSaysWhatWouldDo) {
    model::Piece piece = made::bendOf(8);
    piece.stack.serviceMoisture = 0.45;
    const Finding told = whole(planOf(piece), Code::serviceMoistureOutOfRange);
    EXPECT_EQ(told.severity, Severity::stop);
    EXPECT_EQ(english(told),
              "A moisture of 45 % in service is outside what wood in air can have (4 to 30 %). Correct it.");
    piece.stack.serviceMoisture = 0.12;
    piece.stack.moisture = 0.02;
    EXPECT_TRUE(find(planOf(piece), Code::moistureOutOfRange));
    EXPECT_FALSE(find(planOf(made::bendOf(8)), Code::moistureOutOfRange));
}

TEST(FormFindings, ADryFaceShowsHowThePartOutsideItStands) {
    model::Piece piece = made::bendOf(4);
    piece.stack.strips[0].dryFace = true;
    piece.stack.strips.push_back(model::Strips{.count = 2});
    const Plan plan = planOf(piece);
    ASSERT_EQ(plan.form.parts.size(), 2u);
    const Finding told = whole(plan, Code::partOffLine);
    // Two strips give back a quarter, four a sixteenth for which the form allows: the outer part stands open.
    EXPECT_GT(told.value, 10);
    EXPECT_TRUE(told.text.is(texts::partOpen));
    EXPECT_EQ(told.text.args[0].value, 5);
    EXPECT_EQ(told.text.args[1].value, 6);
    EXPECT_NEAR(plan.form.parts[0].offWanted.end_m, 0, 1e-7);
}

TEST(FormFindings, GluingsAddUpAndSayWhatTheFirstWouldDo) {
    model::Piece piece = made::bendOf(6);
    EXPECT_FALSE(find(planOf(piece), Code::gluingsAddUp));
    piece.stack.gluings = {2};
    const Plan plan = planOf(piece);
    ASSERT_TRUE(find(plan, Code::gluingsAddUp));
    ASSERT_EQ(plan.form.gluings.size(), 2u);
    EXPECT_NEAR(plan.form.gluings[0].ratio, 0.25, 0.02);
    EXPECT_NEAR(plan.form.gluings[1].ratio, planOf(made::bendOf(6)).form.parts[0].ratioAtTightest, 1e-4);
}

TEST(FormFindings, PlaningIsReportedAndImpossibleDepthsRefused) {
    model::Piece piece = made::bendOf(6);
    piece.stack.planedAfter = {model::Planed{0, 0, 0, {}}, model::Planed{0.9, 0, 0.02, {}}};
    EXPECT_TRUE(find(planOf(piece), Code::planingMovesIt));
    piece.stack.planedAfter[1].outside_m = 0.1;
    EXPECT_EQ(made::refusal([&] { planOf(piece); }).path(), "stack.planed_after[1]");
}

// The sum decides, with its sign: what moisture closes planing may open.
TEST(FormFindings, WhatMovesItLaterIsOneFindingAboveWhatThePieceMayLieOff) {
    model::Piece piece = made::bendOf(6);
    piece.line.fairWithin_m = 1e-6;
    piece.stack.moisture = 0.10;
    piece.stack.serviceMoisture = 0.12;
    piece.stack.planedAfter = {model::Planed{0, 0, 0, {}}, model::Planed{0.9, 0, 0.02, {}}};
    Plan plan = planOf(piece);
    const double planed_mm = find(plan, Code::planingMovesIt)->value;
    const double both_mm = planed_mm + find(plan, Code::moistureMovesIt)->value;
    for (const double part : {0.9, 1.1}) {
        piece.holding.gapLimit_m = part * std::abs(both_mm) / 1000;
        plan = planOf(piece);
        const std::optional<Finding> later = find(plan, Code::movesLater);
        ASSERT_EQ(later.has_value(), part < 1) << part;
        ASSERT_TRUE(find(plan, Code::planingMovesIt));
        EXPECT_FALSE(isCause(*find(plan, Code::planingMovesIt)));
        EXPECT_FALSE(isCause(*find(plan, Code::moistureMovesIt)));
        if (!later) continue;
        EXPECT_NEAR(later->value, both_mm, 1e-3 * std::abs(both_mm));
        EXPECT_NEAR(later->limit, 1000 * piece.holding.gapLimit_m, 1e-9);
        EXPECT_TRUE(details(*later, planed_mm < 0 ? texts::planedIn : texts::planedOpen));
        EXPECT_TRUE(isCause(*later));
    }
}

TEST(FormFindings, StripsThatBreakOnlyOnTheFormAreAStop) {
    model::Piece piece = made::bendOf(2);
    // Two strips of which the form asks for a third more bend: strained to nine tenths on the line.
    const Plan before = planOf(piece);
    const laminate::Strip& strip = before.stack.strips.front();
    piece.stack.strips[0].thickness_m *= 0.9 * strip.breakingStrain / strip.strain;
    const Plan plan = planOf(piece);
    EXPECT_TRUE(find(plan, Code::stripBreaksOnForm));
    piece.form.allowsForSpringback = false;
    EXPECT_FALSE(find(planOf(piece), Code::stripBreaksOnForm));
}

TEST(FormFindings, NothingIsSaidOfSpringbackWhereNothingLetsGoOrBends) {
    model::Piece piece = made::bendOf(5);
    piece.form.kind = model::FormKind::inPlace;
    const Plan inPlace = planOf(piece);
    EXPECT_FALSE(find(inPlace, Code::springback));
    EXPECT_TRUE(answerOf(inPlace).sentence.is(texts::staysOnBoat));
    const Plan straight = planOf(made::pieceOn(made::straight(1.5), 9));
    EXPECT_FALSE(find(straight, Code::springback));
    EXPECT_FALSE(find(straight, Code::moistureMovesIt));
}

TEST(FormFindings, TheAnswerSaysWhetherAnEndWantsAFastening) {
    model::Piece piece = made::bend(0.4, 1.2, {.count = 5});
    piece.form.kind = model::FormKind::inPlace;
    const Plan plan = planOf(piece);
    ASSERT_TRUE(plan.form.stressLeft && plan.form.stressLeft->end.wantsFastening);
    EXPECT_TRUE(answerOf(plan).more.front().is(texts::fastenAtBoth));
    piece = made::bend(6.0, 0.2);
    piece.form.kind = model::FormKind::inPlace;
    EXPECT_TRUE(answerOf(planOf(piece)).more.front().is(texts::glueHoldsEnds));
}

TEST(FormWording, TheRuleIsToldInBothItsMeanings) {
    model::Piece piece = made::bendOf(5);
    const Plan plan = planOf(piece);
    const std::string text = writeTexts(ruleTexts(piece.stack, plan.form), plan.display);
    EXPECT_NE(text.find("y = x / n^2"), std::string::npos);
    EXPECT_NE(text.find("y = x / (n^2 - 1)"), std::string::npos);
    EXPECT_NE(text.find("1/25"), std::string::npos);
    EXPECT_NE(text.find("1/24"), std::string::npos);
    piece.stack.strips.push_back(model::Strips{.count = 1, .thickness_m = 0.003});
    EXPECT_TRUE(ruleTexts(piece.stack, planOf(piece).form).back().is(texts::ruleNotAlike));
    piece.form.letGo = false;
    EXPECT_TRUE(ruleTexts(piece.stack, planOf(piece).form).empty());
}

TEST(FormWording, DistancesReadAsATapeDoes) {
    units::Display display;
    EXPECT_EQ(tapeText(0.00912, display), "9.1 mm");
    EXPECT_EQ(tapeText(-0.2683, display), "268 mm");
    display.lengths = units::LengthNotation::feetInchesEighths;
    EXPECT_EQ(tapeText(0.0095, display), "3/8 in");
}

TEST(PrintForm, HasTheKeysThatScriptsRelyOn) {
    model::Boat boat;
    model::Piece piece = made::bendOf(5);
    piece.stack.planedAfter = {model::Planed{0, 0, 0.003, {}}};
    boat.pieces = {piece};
    const auto form = nlohmann::json::parse(printPlans(boat))["pieces"][0]["form"];
    const Plan plan = planOf(piece);
    EXPECT_NEAR(form["springback_ratio"].get<double>(), plan.form.parts[0].ratioAtTightest, 1e-8);
    EXPECT_NEAR(form["tightest_radius_mm"].get<double>(), 1000 * plan.form.tightestRadius_m, 1e-5);
    for (const char* key : {"chord_mm", "rise_mm", "start_mm", "end_mm"}) {
        EXPECT_TRUE(form["opens"][key].is_number()) << key;
    }
    EXPECT_TRUE(form["moisture"]["curvature_change_pct"].is_number());
    EXPECT_TRUE(form["stress_left"].is_null());
    EXPECT_TRUE(form["planed"]["end_mm"].is_number());
    double before = -1e9;
    for (const auto& point : form["points"]) {
        const double at = point["at_mm"];
        EXPECT_GT(at, before);
        EXPECT_LT(at - before, before < -1e8 ? 1e18 : 10.001);
        before = at;
        const line::Place place = plan.form.line.faying(at / 1000);
        EXPECT_NEAR(point["x_mm"].get<double>(), 1000 * place.x_m, 1e-3);
        EXPECT_NEAR(point["y_mm"].get<double>(), 1000 * place.y_m, 1e-3);
    }
    EXPECT_NEAR(form["points"][0]["at_mm"].get<double>(), -100, 1e-9);
}

}  // namespace form_findings_test
}  // namespace fayline::plan
