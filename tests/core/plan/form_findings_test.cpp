#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>

#include "core/measure/input_error.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/form_wording.hpp"
#include "core/plan/print.hpp"
#include "tests/core/plan/made_pieces.hpp"

namespace fayline::plan {
namespace {

using made::planOf;

std::optional<Finding> find(const Plan& plan, Code code) {
    const auto found = std::find_if(plan.findings.begin(), plan.findings.end(),
                                    [&](const Finding& f) { return aboutOf(f.code) == About::form && f.code == code; });
    return found == plan.findings.end() ? std::nullopt : std::optional(*found);
}

const Answer& answerOf(const Plan& plan) {
    return plan.answers[static_cast<std::size_t>(Question::form)];
}

TEST(FormFindings, SpringbackIsToldWithTheEndsOpening) {
    const Plan plan = planOf(made::bendOf(5));
    const std::optional<Finding> told = find(plan, Code::springback);
    ASSERT_TRUE(told);
    EXPECT_EQ(told->severity, Severity::note);
    EXPECT_NEAR(told->value, 1000 * plan.form.parts[0].uncorrected.end_m, 1e-9);
    EXPECT_NE(english(*told).find("the end would stand"), std::string::npos);
    EXPECT_NE(english(*told).find("open, the start laid on"), std::string::npos);
    EXPECT_NE(english(*told).find("twice"), std::string::npos);
    EXPECT_FALSE(find(plan, Code::formImpossible));
    EXPECT_NE(answerText(answerOf(plan), inMillimetres).find("gives back 3.7 % of its curve"), std::string::npos);
    EXPECT_NE(answerText(answerOf(plan), inMillimetres).find("radius of"), std::string::npos);
}

TEST(FormFindings, AFormThatDoesNotAllowForItIsACaution) {
    boat::Piece piece = made::bendOf(5);
    piece.form.allowsForSpringback = false;
    piece.holding.from = boat::From::end;
    const Plan plan = planOf(piece);
    const std::optional<Finding> told = find(plan, Code::springbackNotAllowedFor);
    ASSERT_TRUE(told);
    EXPECT_EQ(told->severity, Severity::caution);
    EXPECT_NE(english(*told).find("the start will stand"), std::string::npos);
    EXPECT_FALSE(find(plan, Code::springback));
    EXPECT_NE(answerText(answerOf(plan), inMillimetres).find("does not allow for it"), std::string::npos);
}

TEST(FormFindings, AStackThatNoFormBendsIsAStopThatSaysWhatWouldDo) {
    const Plan plan = planOf(made::bendOf(1));
    const std::optional<Finding> told = find(plan, Code::formImpossible);
    ASSERT_TRUE(told);
    EXPECT_EQ(told->severity, Severity::stop);
    EXPECT_NE(english(*told).find("thinner strips"), std::string::npos);
    EXPECT_NEAR(told->value, 100, 1e-6);
    EXPECT_EQ(answerOf(plan).worst, Severity::stop);
}

TEST(FormFindings, TheRecordsFactorIsSaidToBeTheUsers) {
    boat::Piece piece = made::bendOf(5);
    const double before = planOf(piece).form.parts[0].uncorrected.end_m;
    piece.form.springbackFactor = 1.5;
    const Plan plan = planOf(piece);
    const std::optional<Finding> told = find(plan, Code::springbackFactor);
    ASSERT_TRUE(told);
    EXPECT_NE(english(*told).find("1.5 times"), std::string::npos);
    EXPECT_NE(english(*told).find("as you set it"), std::string::npos);
    EXPECT_NEAR(plan.form.parts[0].uncorrected.end_m, 1.5 * before, 0.03 * before);
    EXPECT_FALSE(find(planOf(made::bendOf(5)), Code::springbackFactor));
}

TEST(FormFindings, MoistureIsToldWithItsSign) {
    boat::Piece piece = made::bendOf(8);
    piece.stack.moisture = 0.08;
    piece.stack.serviceMoisture = 0.14;
    const std::optional<Finding> wetter = find(planOf(piece), Code::moistureMovesIt);
    ASSERT_TRUE(wetter);
    EXPECT_GT(wetter->value, 1);
    EXPECT_NE(english(*wetter).find("the curve opens"), std::string::npos);
    std::swap(piece.stack.moisture, piece.stack.serviceMoisture);
    const Plan plan = planOf(piece);
    const std::optional<Finding> drier = find(plan, Code::moistureMovesIt);
    ASSERT_TRUE(drier);
    EXPECT_LT(drier->value, -1);
    EXPECT_NE(english(*drier).find("the curve tightens"), std::string::npos);
    EXPECT_NE(english(*drier).find("closed in"), std::string::npos);
    piece.stack.serviceMoisture = piece.stack.moisture;
    EXPECT_FALSE(find(planOf(piece), Code::moistureMovesIt));
}

TEST(FormFindings, AWoodWhoseShrinkageIsNotKnownSaysSo) {
    boat::Boat boat;
    boat::OwnSpecies own;
    own.id = "mystery";
    own.name = "Mystery wood";
    own.mor_Pa = 100e6;
    own.moe_Pa = 12e9;
    boat.species = {own};
    boat::Piece piece = made::bendOf(8);
    piece.stack.strips[0].species = "mystery";
    const Plan plan = makePlan(piece, shopOf(boat));
    EXPECT_FALSE(plan.form.moisture.known);
    const std::optional<Finding> told = find(plan, Code::shrinkageUnknown);
    ASSERT_TRUE(told);
    EXPECT_NE(english(*told).find("Mystery wood"), std::string::npos);
}

TEST(FormFindings, MoistureThatNoWoodHasIsAStopThatSaysWhatWouldDo) {
    boat::Piece piece = made::bendOf(8);
    piece.stack.serviceMoisture = 0.45;
    const std::optional<Finding> told = find(planOf(piece), Code::serviceMoistureOutOfRange);
    ASSERT_TRUE(told);
    EXPECT_EQ(told->severity, Severity::stop);
    EXPECT_NE(english(*told).find("give 4 to 30 %"), std::string::npos);
    piece.stack.serviceMoisture = 0.12;
    piece.stack.moisture = 0.02;
    EXPECT_TRUE(find(planOf(piece), Code::moistureOutOfRange));
    EXPECT_FALSE(find(planOf(made::bendOf(8)), Code::moistureOutOfRange));
}

TEST(FormFindings, ADryFaceTellsHowThePartOutsideItStands) {
    boat::Piece piece = made::bendOf(4);
    piece.stack.strips[0].dryFace = true;
    piece.stack.strips.push_back(boat::Strips{.count = 2});
    const Plan plan = planOf(piece);
    ASSERT_EQ(plan.form.parts.size(), 2u);
    const std::optional<Finding> told = find(plan, Code::partOffLine);
    ASSERT_TRUE(told);
    // Two strips give back a quarter, four a sixteenth for which the form allows: the outer part stands open.
    EXPECT_GT(told->value, 10);
    EXPECT_NEAR(plan.form.parts[0].offWanted.end_m, 0, 1e-7);
}

TEST(FormFindings, GluingsAddUpAndSayWhatTheFirstWouldDo) {
    boat::Piece piece = made::bendOf(6);
    EXPECT_FALSE(find(planOf(piece), Code::gluingsAddUp));
    piece.stack.gluings = {2};
    const Plan plan = planOf(piece);
    ASSERT_TRUE(find(plan, Code::gluingsAddUp));
    ASSERT_EQ(plan.form.gluings.size(), 2u);
    EXPECT_NEAR(plan.form.gluings[0].ratio, 0.25, 0.02);
    EXPECT_NEAR(plan.form.gluings[1].ratio, planOf(made::bendOf(6)).form.parts[0].ratioAtTightest, 1e-4);
}

TEST(FormFindings, PlaningIsToldAndImpossibleDepthsRefused) {
    boat::Piece piece = made::bendOf(6);
    piece.stack.planedAfter = {boat::Planed{0, 0, 0, {}}, boat::Planed{0.9, 0, 0.02, {}}};
    EXPECT_TRUE(find(planOf(piece), Code::planingMovesIt));
    piece.stack.planedAfter[1].outside_m = 0.1;
    try {
        planOf(piece);
        FAIL();
    } catch (const measure::InputError& error) {
        EXPECT_EQ(error.path(), "stack.planed_after[1]");
    }
}

TEST(FormFindings, StripsThatBreakOnlyOnTheFormAreAStop) {
    boat::Piece piece = made::bendOf(2);
    // Two strips of which the form asks for a third more bend: strained to nine tenths on the line.
    const Plan before = planOf(piece);
    const stack::Strip& strip = before.stack.strips.front();
    piece.stack.strips[0].thickness_m *= 0.9 * strip.breakingStrain / strip.strain;
    const Plan plan = planOf(piece);
    EXPECT_TRUE(find(plan, Code::stripBreaksOnForm));
    piece.form.allowsForSpringback = false;
    EXPECT_FALSE(find(planOf(piece), Code::stripBreaksOnForm));
}

TEST(FormFindings, NothingIsSaidOfSpringbackWhereNothingLetsGoOrBends) {
    boat::Piece piece = made::bendOf(5);
    piece.form.kind = boat::FormKind::inPlace;
    const Plan inPlace = planOf(piece);
    EXPECT_FALSE(find(inPlace, Code::springback));
    EXPECT_NE(answerText(answerOf(inPlace), inMillimetres).find("nothing lets go"), std::string::npos);
    const Plan straight = planOf(made::pieceOn(made::straight(1.5), 9));
    EXPECT_FALSE(find(straight, Code::springback));
    EXPECT_FALSE(find(straight, Code::moistureMovesIt));
}

TEST(FormFindings, TheAnswerSaysWhetherAnEndWantsAFastening) {
    boat::Piece piece = made::bend(0.4, 1.2);
    piece.stack.strips[0].count = 5;
    piece.form.kind = boat::FormKind::inPlace;
    const Plan plan = planOf(piece);
    ASSERT_TRUE(plan.form.stressLeft && plan.form.stressLeft->end.wantsFastening);
    EXPECT_NE(answerText(answerOf(plan), inMillimetres).find("for good"), std::string::npos);
    piece = made::bend(6.0, 0.2);
    piece.form.kind = boat::FormKind::inPlace;
    EXPECT_NE(answerText(answerOf(planOf(piece)), inMillimetres).find("The glue bears"), std::string::npos);
}

TEST(FormWording, TheRuleIsToldInBothItsMeanings) {
    boat::Piece piece = made::bendOf(5);
    const Plan plan = planOf(piece);
    const std::string text = ruleText(piece.stack, plan.form, plan.display);
    EXPECT_NE(text.find("y = x / n^2"), std::string::npos);
    EXPECT_NE(text.find("y = x / (n^2 - 1)"), std::string::npos);
    EXPECT_NE(text.find("1/25"), std::string::npos);
    EXPECT_NE(text.find("1/24"), std::string::npos);
    piece.stack.strips.push_back(boat::Strips{.count = 1, .thickness_m = 0.003});
    EXPECT_NE(ruleText(piece.stack, planOf(piece).form, plan.display).find("strip by strip"), std::string::npos);
    piece.form.letGo = false;
    EXPECT_EQ(ruleText(piece.stack, planOf(piece).form, plan.display), "");
}

TEST(FormWording, DistancesReadAsATapeDoes) {
    measure::Display display;
    EXPECT_EQ(tapeText(0.00912, display), "9.1 mm");
    EXPECT_EQ(tapeText(-0.2683, display), "268 mm");
    display.lengths = measure::LengthNotation::feetInchesEighths;
    EXPECT_EQ(tapeText(0.0095, display), "3/8 in");
}

TEST(PrintForm, HasTheKeysThatScriptsRelyOn) {
    boat::Boat boat;
    boat::Piece piece = made::bendOf(5);
    piece.stack.planedAfter = {boat::Planed{0, 0, 0.003, {}}};
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

}  // namespace
}  // namespace fayline::plan
