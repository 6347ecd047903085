// What is said of the moments while stations are being closed: by the sample that is held in place under a boat, with
// the boat made lighter, and by states written by hand.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "core/export/print.hpp"
#include "core/io/file.hpp"
#include "core/plan/findings/closing_texts.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/hull_texts.hpp"
#include "core/plan/study/holding_study.hpp"
#include "tests/core/plan/held_scene.hpp"
#include "tests/core/plan/studied.hpp"

namespace fayline::plan {
namespace closing_findings_test {

model::Boat inPlace() {
    return io::loadBoat(std::filesystem::path(FAYLINE_SAMPLES) / "marram_in_place.fayline");
}

const Plan& closedPlan(const model::Boat& boat) {
    return made::studied(boat, {Study::closing});
}

// The margin is weight over what lifts, tips or slides it: half the boat bears half of it (property of hullPlan).
TEST(ClosingFindings, ABoatThatStandsWithAllClosedIsToldToTipAtOneTurn) {
    model::Boat boat = inPlace();
    const Plan& heavy = closedPlan(boat);
    const Finding margin = foundIn(heavy.findings, Code::boatMarginWhileClosing);
    EXPECT_EQ(margin.severity, Severity::caution);
    EXPECT_EQ(margin.limit, 2);
    ASSERT_TRUE(heavy.holding.hull->margin > 2);
    EXPECT_EQ(findingOf(heavy.findings, Code::boatMargin), nullptr);

    // So light that it tips at the worst turn, and still has more than the margin asked for with all closed.
    const double lighter = 0.95 / margin.value;
    ASSERT_GT(heavy.holding.hull->margin * lighter, 2);
    boat.pieces.front().holding.hull.weight_kg *= lighter;
    const Plan& light = closedPlan(boat);
    const Finding tips = foundIn(light.findings, Code::boatTipsWhileClosing);
    EXPECT_EQ(tips.severity, Severity::stop);
    EXPECT_TRUE(tips.text.is(texts::boatTips));
    EXPECT_EQ(textOf(tips, inMillimetres).find("When prop 5 goes on, the props push with "), 0u) << english(tips);
    EXPECT_TRUE(textOf(tips, inMillimetres).ends_with("Weight and shore it; nobody under it.")) << english(tips);
    EXPECT_EQ(findingOf(light.findings, Code::boatTips), nullptr);
    EXPECT_EQ(findingOf(light.findings, Code::boatMarginWhileClosing), nullptr);
    const holding::HullPlan& worst =
        *light.holdingStudy->closingLoads.hulls[light.holdingStudy->closingLoads.worstHull];
    EXPECT_NEAR(worst.margin, 0.95, 1e-6);
    EXPECT_NEAR(tips.value, worst.totalPush_N, 1e-9);
    EXPECT_NEAR(tips.limit, worst.totalPush_N * 0.95 / 2, 1e-3);
}

// What is said of another order is what that order, asked for itself, has.
TEST(ClosingFindings, AnotherOrderIsAdvisedByItsOwnNumbers) {
    model::Boat boat = inPlace();
    const Plan& plan = closedPlan(boat);
    ASSERT_EQ(plan.holdingStudy->otherOrders.size(), 2u);
    for (const OtherOrder& order : plan.holdingStudy->otherOrders) {
        EXPECT_NE(order.from, boat.pieces.front().holding.from);
        model::Boat begun = boat;
        begun.pieces.front().holding.from = order.from;
        const Plan& its = closedPlan(begun);
        ASSERT_EQ(its.holdingStudy->closingLoads.worstHull, order.loads.worstHull);
        const auto worst = static_cast<std::size_t>(order.loads.worstHull);
        EXPECT_NEAR(its.holdingStudy->closingLoads.hulls[worst]->margin, order.loads.hulls[worst]->margin, 1e-9);
    }
}

TEST(ClosingFindings, ThePrintedPlanTellsTheBoatsMarginAtEveryTurn) {
    const model::Boat boat = inPlace();
    const Plan& plan = closedPlan(boat);
    const auto json = nlohmann::json::parse(made::printed(boat))["pieces"][0]["holding"];
    double least = 1e9;
    for (const auto& station : json["stations"]) {
        const auto& closing = station["closing"];
        for (const char* key : {"hull_margin", "hull_fails_by", "worst_prop", "total_push_N", "most_pull_N"}) {
            EXPECT_TRUE(closing.contains(key)) << key;
        }
        EXPECT_GE(closing["most_pull_N"].get<double>(), closing["pull_N"].get<double>() - 1e-3);
        if (closing["hull_margin"].is_number()) least = std::min(least, closing["hull_margin"].get<double>());
        const bool strut = station["kind"] == "prop" || station["kind"] == "jack";
        EXPECT_EQ(closing.contains("most_thrust_N"), strut);
    }
    EXPECT_NEAR(least, findingOf(plan.findings, Code::boatMarginWhileClosing)->value, 5e-4);  // printed so
}

// Two stations on a gentle bend; the pulls of the first step are written by hand.
struct ByHand {
    model::Piece piece = made::bend(3.0, 0.6);
    Shop shop = made::shop();
    Plan plan;
    HoldingStudy study;

    ByHand() {
        piece.holding.stations = {model::Station{.at_m = 0.1}, model::Station{.at_m = 0.2}};
        shop.display.lengths = units::LengthNotation::millimetres;
        plan = makePlan(piece, shop);
        plan.holding.held.stations[0].pull_N = 300;
        plan.holding.held.stations[1].pull_N = 300;
        for (int i = 0; i < 2; ++i) {
            holding::ClosingStep step;
            step.index = i;
            step.number = step.order = i + 1;
            for (int k = 0; k <= i; ++k) step.closed.push_back(plan.holding.held.stations[k]);
            study.closing.push_back(step);
        }
        study.closingLoads.pulls = {{2000, 0}, {300, 1}};
    }
    std::vector<Finding> findings() const { return looked(studyFindings(piece, shop, plan, study)); }
};

TEST(ClosingFindings, APropThatBucklesAtItsTurnOnlyIsAStopWithBothNumbers) {
    ByHand scene;
    holding::PropPlan prop{.index = 0, .length_m = 1.2, .thrust_N = 1400, .allowable_N = 1500, .most_N = 3000};
    scene.study.closingLoads.props = {prop};
    EXPECT_EQ(findingOf(scene.findings(), Code::propBucklesWhileClosing), nullptr);
    scene.study.closingLoads.props[0].thrust_N = 2000;
    const Finding buckles = foundIn(scene.findings(), Code::propBucklesWhileClosing);
    EXPECT_EQ(buckles.severity, Severity::stop);
    EXPECT_EQ(buckles.value, 2000);
    EXPECT_EQ(buckles.limit, 1500);
    EXPECT_EQ(textOf(buckles, inMillimetres),
              "Clamp 1, as it goes on, carries 2000 N along itself (allowed 1500 N). Use a thicker or a shorter one.");
    EXPECT_TRUE(buckles.details.front().is(texts::drawInBeside));
    EXPECT_TRUE(buckles.details.back().is(texts::noBetterOrder));
    // Once it is no more than with all closed, it has been said already.
    scene.plan.holding.held.stations[0].pull_N = 2000;
    EXPECT_EQ(findingOf(scene.findings(), Code::propBucklesWhileClosing), nullptr);
}

TEST(ClosingFindings, AScrewDrawsOutAndAPadCrushesAtTheMomentOfItsGreatestPull) {
    ByHand scene;
    holding::ScrewPlan screw{.index = 0, .pull_N = 2000, .withdrawalUltimate_N = 1900, .withdrawalAllowable_N = 500};
    scene.study.closingLoads.screws = {screw};
    scene.study.closingLoads.pulls[0] = {9000, 1};
    const std::vector<Finding> findings = scene.findings();
    EXPECT_EQ(findingOf(findings, Code::screwDrawsOutWhileClosing)->severity, Severity::stop);
    // 9 000 N on 40 mm by 51 mm is 4.4 MPa, white oak bears 3.7.
    const Finding pad = foundIn(findings, Code::padCrushesWhileClosing);
    EXPECT_EQ(english(pad).find("The pad of clamp 1, when clamp 2 goes on, presses the outer strip with "), 0u)
        << english(pad);
}

TEST(ClosingFindings, APostIsToldAtTheTurnThatPressesItMost) {
    ByHand scene;
    scene.plan.holding.posts = {{0, 0.1, 800, 3000}};
    scene.study.closingLoads.posts = {{2900, 1}};
    EXPECT_EQ(findingOf(scene.findings(), Code::postGivesWayWhileClosing), nullptr);
    scene.study.closingLoads.posts = {{3100, 1}};
    const Finding post = foundIn(scene.findings(), Code::postGivesWayWhileClosing);
    EXPECT_EQ(post.severity, Severity::stop);
    EXPECT_EQ(post.value, 3100);
    EXPECT_EQ(post.limit, 3000);
    EXPECT_EQ(textOf(post, inMillimetres),
              "When clamp 2 goes on, the post at 100 mm is pressed with 3100 N (it holds 3000 N). Brace it before the "
              "stack goes on.");
}

TEST(ClosingFindings, ToolsThatAreShortOnlyForThePullsAtTheirTurnsAreSaid) {
    ByHand scene;
    holding::Counted counted{
        .kind = model::HoldKind::clamp, .asked = 2, .there = 2, .listed = true, .withoutTool = {0}};
    scene.study.closingLoads.atHand.counts = {counted};
    scene.study.closingLoads.atHand.leftWithout = 1;
    EXPECT_EQ(findingOf(scene.findings(), Code::toolsShortWhileClosing)->severity, Severity::stop);
    scene.plan.holding.atHand = scene.study.closingLoads.atHand;
    EXPECT_EQ(findingOf(scene.findings(), Code::toolsShortWhileClosing), nullptr);
}

TEST(ClosingFindings, AStationThatClosesOnlyOnceOthersPullIsACautionWithTheWidestGap) {
    ByHand scene;
    holding::HeldStation& first = scene.study.closing[0].closed.back();
    first.state = holding::HoldState::full;
    first.most_N = scene.study.closing[0].pull_N = 2500;
    scene.study.closing[0].gap_m = 0.0004;
    scene.plan.holding.held.stations[0].state = holding::HoldState::closes;
    EXPECT_EQ(findingOf(scene.findings(), Code::atItsStrengthWhileClosing), nullptr);
    scene.study.closing[0].gap_m = 0.002;
    const Finding late = foundIn(scene.findings(), Code::atItsStrengthWhileClosing);
    EXPECT_EQ(late.severity, Severity::caution);
    EXPECT_EQ(textOf(late, inMillimetres),
              "Clamp 1 will not close at first: 2.00 mm is left. Tighten it again once all are on.");
    scene.plan.holding.held.stations[0].state = holding::HoldState::full;  // said of all closed
    EXPECT_EQ(findingOf(scene.findings(), Code::atItsStrengthWhileClosing), nullptr);
}

TEST(ClosingFindings, AShapeThatClosingLeadsToAndNoneShowsIsACaution) {
    ByHand scene;
    scene.study.closing.back().closed[0].gap_m = 0.0003;
    EXPECT_EQ(findingOf(scene.findings(), Code::restsOtherwise), nullptr);
    scene.study.closing.back().closed[0].gap_m = 0.08;
    const Finding otherwise = foundIn(scene.findings(), Code::restsOtherwise);
    EXPECT_EQ(otherwise.severity, Severity::caution);
    EXPECT_NEAR(otherwise.value, 80, 1e-9);
    EXPECT_NEAR(otherwise.limit, 1000 * scene.plan.holding.held.stations[0].gap_m, 1e-9);
    // A strap has no pad: nothing is said of a gap under it.
    scene.piece.holding.stations[0].kind = model::HoldKind::strap;
    EXPECT_EQ(findingOf(scene.findings(), Code::restsOtherwise), nullptr);
}

// A station that closes only later names them all, with the widest gap.
TEST(ClosingFindings, StationsThatCloseLaterAreNamedTogether) {
    ByHand scene;
    for (std::size_t i = 0; i < 2; ++i) {
        holding::ClosingStep& step = scene.study.closing[i];
        step.closed.back().state = holding::HoldState::full;
        step.gap_m = 0.002 + 0.001 * static_cast<double>(i);
        scene.plan.holding.held.stations[i].state = holding::HoldState::closes;
    }
    const Finding late = foundIn(scene.findings(), Code::atItsStrengthWhileClosing);
    EXPECT_EQ(late.at_m, 0.2);
    EXPECT_EQ(textOf(late, inMillimetres),
              "Clamps 1 and 2 will not close at first: up to 3.00 mm is left. Tighten them again once all are on.");
}

TEST(ClosingFindings, AreLinesThatFitWithFiniteNumbersAndSources) {
    for (const Finding& finding : looked(made::studied(inPlace()).findings)) {
        EXPECT_FALSE(finding.source.text.empty()) << codeWord(finding.code);
    }
}

}  // namespace closing_findings_test
}  // namespace fayline::plan
