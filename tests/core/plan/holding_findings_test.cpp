// Each finding about the holding appears when it should, and only then. The states are written by hand; that they come
// out of a piece is checked in tests/core/holding.
#include <gtest/gtest.h>

#include <limits>

#include "core/holding/props/hull.hpp"
#include "core/holding/props/screw.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/holding_texts.hpp"
#include "core/plan/findings/hull_texts.hpp"
#include "core/plan/findings/tool_texts.hpp"
#include "tests/core/plan/held_scene.hpp"

namespace fayline::plan {
namespace holding_findings_test {

TEST(HoldingFindings, AStackThatLiesDownHasNothingSaidOfIt) {
    EXPECT_TRUE(HeldScene().findings().empty());
}

TEST(HoldingFindings, AGapOverTheLimitStopsWithItsPlaceAndBothNumbers) {
    HeldScene scene;
    scene.plan.holding.held.samples[1].gap_m = 0.0005;
    EXPECT_EQ(countOf(scene.findings(), Code::gapOverLimit), 0);
    scene.plan.holding.held.samples[1].gap_m = 0.00172;
    const Finding finding = the(scene.findings(), Code::gapOverLimit);
    EXPECT_EQ(finding.severity, Severity::stop);
    EXPECT_NEAR(finding.value, 1.72, 1e-9);
    EXPECT_NEAR(finding.limit, 0.5, 1e-9);
    EXPECT_EQ(finding.at_m, 0.15);
    EXPECT_TRUE(finding.text.is(texts::gapOverLimit));
    EXPECT_EQ(textOf(finding, inMillimetres),
              "Gap 1.72 mm at 150 mm (allowed 0.50 mm). Set a clamp there, or a stronger one.");
}

TEST(HoldingFindings, AStackThatCutsTheCornerBetweenPostsCautions) {
    HeldScene scene;
    scene.plan.holding.held.fallsInside = {0.12, 0.0009};
    const Finding finding = the(scene.findings(), Code::fallsInside);
    EXPECT_NEAR(finding.value, 0.9, 1e-9);
    EXPECT_EQ(finding.at_m, 0.12);
}

TEST(HoldingFindings, AnEndThatStandsOffIsSaidOfThatEnd) {
    HeldScene scene;
    scene.plan.holding.held.gapAtEnd_m = 0.002;
    EXPECT_NEAR(the(scene.findings(), Code::gapAtTrim).at_m.value(), scene.plan.line.fair.line.length(), 1e-12);
    scene.plan.holding.held.gapAtStart_m = 0.001;
    EXPECT_EQ(countOf(scene.findings(), Code::gapAtTrim), 2);
}

TEST(HoldingFindings, AClampAtItsStrengthIsANoteWithinTheLimitAndACautionBeyond) {
    HeldScene scene;
    scene.plan.holding.held.stations[1] = {1, 2, 0.15, 2500, 2500, 0.0003, holding::HoldState::full};
    EXPECT_EQ(the(scene.findings(), Code::atItsStrength).severity, Severity::note);
    scene.plan.holding.held.stations[1].gap_m = 0.0008;
    const Finding finding = the(scene.findings(), Code::atItsStrength);
    EXPECT_EQ(finding.severity, Severity::caution);
    EXPECT_EQ(finding.value, 2500);
    EXPECT_TRUE(finding.text.is(texts::leavesGap));
    EXPECT_EQ(english(finding).find("Clamp 2 at 150 mm pulls all it can (2500 N)"), 0u) << english(finding);
}

TEST(HoldingFindings, PadsThatMatterAreACautionOnceTheAnswersPartByMoreThanTheLimit) {
    HeldScene scene;
    scene.plan.holding.held.largestIfPadsHold_m = 0.0059;
    scene.plan.holding.held.largestIfPadsSlide_m = 0.0055;
    EXPECT_EQ(countOf(scene.findings(), Code::hangsOnPads), 0);
    scene.plan.holding.held.largestIfPadsSlide_m = 0.0028;
    EXPECT_NEAR(the(scene.findings(), Code::hangsOnPads).value, 3.1, 1e-9);
}

TEST(HoldingFindings, AStackThatSnapsOrDoesNotSettleSaysSo) {
    HeldScene scene;
    scene.plan.holding.held.outcome = holding::Outcome::snaps;
    EXPECT_EQ(the(scene.findings(), Code::stackSnaps).severity, Severity::caution);
    scene.plan.holding.held.outcome = holding::Outcome::notConverged;
    EXPECT_EQ(countOf(scene.findings(), Code::stackSnaps), 0);
    scene.plan.holding.held.samples.clear();
    EXPECT_EQ(countOf(scene.findings(), Code::holdingNotSettled), 1);
    scene.plan.holding.held.ifPadsHold.springsAway = true;
    EXPECT_EQ(the(scene.findings(), Code::springsAway).severity, Severity::stop);
}

TEST(HoldingFindings, ClampsWithoutStrengthOrAnythingToPullAreNamed) {
    HeldScene scene;
    scene.plan.holding.held.stations[0].state = holding::HoldState::slack;
    scene.plan.holding.held.stations[2].state = holding::HoldState::slack;
    EXPECT_EQ(textOf(the(scene.findings(), Code::nothingToPull), inMillimetres), "Clamps 1 and 3: snug is enough.");
    scene.plan.holding.held.stations[2].most_N = 0;
    const std::vector<Finding> findings = scene.findings();
    EXPECT_EQ(textOf(the(findings, Code::nothingToPull), inMillimetres), "Clamp 1: snug is enough.");
    EXPECT_EQ(the(findings, Code::noStrength).at_m, 0.2);
}

TEST(HoldingFindings, StationsOffWhatTheStripsAreBentOnAreNamed) {
    HeldScene scene;
    scene.piece.form.kind = model::FormKind::posts;
    scene.piece.form.posts = {model::Post{.at_m = 0.1}, model::Post{.at_m = 0.2}};
    const Finding finding = the(scene.findings(), Code::stationOffTheForm);
    EXPECT_EQ(finding.at_m, 0.15);
    EXPECT_NEAR(finding.value, 50 - 19, 1e-6);
    scene.piece.form.posts.clear();
    EXPECT_EQ(countOf(scene.findings(), Code::stationOffTheForm), 3);
    scene.piece.form.kind = model::FormKind::inPlace;
    scene.piece.holding.stations[0].at_m = -0.05;
    EXPECT_NEAR(the(scene.findings(), Code::stationOffTheForm).value, 50, 1e-6);
}

TEST(HoldingFindings, PadsTooFarApartToPressAreSaidOnceWhereItIsWorst) {
    HeldScene scene;
    for (holding::PressingNeed& need : scene.plan.holding.pressing) need.spacing_m = 0.045;
    scene.plan.holding.held.stations[2].at_m = 0.24;
    const Finding finding = the(scene.findings(), Code::notPressed);
    EXPECT_NEAR(finding.value, 90, 1e-6);
    EXPECT_NEAR(finding.limit, 45, 1e-6);
    // Told to 10 mm, downward; of a mix that reaches further, how far.
    EXPECT_EQ(textOf(finding, inMillimetres),
              "Clamps 2 and 3 are 90 mm apart, and squeeze-out reaches 40 mm. Add clamps or cauls.");
    EXPECT_FALSE(finding.details.back().is(texts::thinnerMix));
    for (holding::PressingNeed& need : scene.plan.holding.pressing) need.thinnerSpacing_m = 0.053;
    const Message thinner = the(scene.findings(), Code::notPressed).details.back();
    EXPECT_TRUE(thinner.is(texts::thinnerMix));
    EXPECT_EQ(thinner.args[0].value, 0.053);
    // A clamp across the stack presses no glue out.
    scene.piece.holding.stations[1].side = true;
    EXPECT_NEAR(the(scene.findings(), Code::notPressed).value, 140, 1e-6);
}

// A glue that fills gaps is pressed out as a wish: one note, once the study knows how many stations that would take.
// A glue that wants 150 psi in hardwood (FAA AC 43.13-1B chapter 1, M): 1 034.2 kPa. Two clamps of 2 500 N 50 mm apart
// on strips 51 + 2 x 3 mm wide give 2 500 / (0.05 x 0.057) = 877.2 kPa at most.
TEST(HoldingFindings, AGlueThatWantsPressureIsToldWhatTheClampsGive) {
    model::Boat boat;
    boat.display.lengths = units::LengthNotation::millimetres;
    model::OwnAdhesive own{.id = "mine", .kind = model::AdhesiveKind::resorcinol};
    boat.adhesives = {own};
    model::Piece piece = made::bend(3.0, 0.6);
    piece.holding.cauls.thickness_m = 0.05;  // so that pads reach every place
    for (int i = 0; i < 37; ++i) piece.holding.stations.push_back(model::Station{.at_m = 0.05 * i});
    piece.glue.pasteYield_Pa = 0;
    const auto findings = [&] { return makePlan(piece, shopOf(boat)).findings; };
    EXPECT_EQ(countOf(findings(), Code::pressureBelowWanted), 0);  // another glue
    piece.glue.adhesive = "mine";
    const Finding finding = the(findings(), Code::pressureBelowWanted);
    EXPECT_NEAR(finding.limit, 1034.2, 0.1);
    EXPECT_NEAR(finding.value, 877.2, 0.1);
    EXPECT_EQ(finding.source.mark, units::Mark::fromMemory);
    EXPECT_NE(finding.source.text.find("43.13"), std::string::npos);
    EXPECT_NE(english(finding).find("press the glue with 877 kPa at most, and it needs 1030 kPa"), std::string::npos)
        << english(finding);
    for (model::Station& station : piece.holding.stations) station.most_N = 3000;  // 1 052.6 kPa
    EXPECT_EQ(countOf(findings(), Code::pressureBelowWanted), 0);
    EXPECT_EQ(countOf(findings(), Code::notPressed), 0);
    // Thickened epoxy asks for contact only.
    boat.adhesives[0].kind = model::AdhesiveKind::epoxy;
    for (model::Station& station : piece.holding.stations) station.most_N = 100;
    EXPECT_EQ(countOf(findings(), Code::pressureBelowWanted), 0);
    EXPECT_EQ(countOf(findings(), Code::notPressed), 0);
}

TEST(HoldingFindings, APadThatCrushesTheOuterStripCautions) {
    HeldScene scene;
    // White oak 7.4 MPa across the grain, half of it for pads: 3.7 MPa on 40 mm by 51 mm is 7.5 kN.
    scene.plan.holding.held.stations[1].pull_N = 7400;
    EXPECT_EQ(countOf(scene.findings(), Code::padCrushes), 0);
    scene.plan.holding.held.stations[1].pull_N = 7700;
    EXPECT_EQ(the(scene.findings(), Code::padCrushes).severity, Severity::caution);
    scene.piece.holding.cauls.thickness_m = 0.01;
    EXPECT_EQ(countOf(scene.findings(), Code::padCrushes), 0);
}

TEST(HoldingFindings, PostsJacksAndTooFewToolsStop) {
    HeldScene scene;
    scene.plan.holding.posts = {{0, 0.1, 2900, 3000}, {1, 0.2, 3100, 3000}};
    EXPECT_NEAR(the(scene.findings(), Code::postGivesWay).value, 3100, 1e-9);
    scene.plan.holding.atHand.counts = {{.kind = model::HoldKind::clamp, .asked = 3, .there = 2, .withoutTool = {2}}};
    EXPECT_EQ(the(scene.findings(), Code::toolsShort).severity, Severity::stop);
}

TEST(HoldingFindings, APropIsHeldAgainstSlipBucklingAndItsRating) {
    HeldScene scene;
    scene.piece.holding.stations[1].kind = model::HoldKind::jack;
    holding::PropPlan prop{.index = 1,
                           .head = {0.15, 0.5},
                           .foot = {0.15, 0},
                           .length_m = 0.5,
                           .thrust_N = 500,
                           .allowable_N = 9000,
                           .most_N = 2500};
    scene.plan.holding.props = {prop};
    std::vector<Finding> findings = scene.findings();
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].code, Code::propsCanFly);

    scene.plan.holding.props[0].slips = holding::Slips::foot;
    scene.plan.holding.props[0].footSlant_rad = 0.4;
    EXPECT_EQ(the(scene.findings(), Code::propSlipsAtFoot).severity, Severity::stop);
    // Degrees are whole unless that would tell the two alike.
    scene.plan.holding.props[0].footFriction = 0.2;
    EXPECT_EQ(textOf(the(scene.findings(), Code::propSlipsAtFoot), inMillimetres),
              "Jack 2 at 150 mm slips at its foot: it leans 23\u00b0 (holds to 11\u00b0), and no other place would do. "
              "Fit a stop there.");
    scene.plan.holding.props[0].footSlant_rad = 0.2;
    scene.plan.holding.props[0].footThatHolds = line::Xy{0.25, 0};
    EXPECT_EQ(textOf(the(scene.findings(), Code::propSlipsAtFoot), inMillimetres),
              "Jack 2 at 150 mm slips at its foot: it leans 11.5\u00b0 (holds to 11.3\u00b0). Fit a stop there, or set "
              "its foot at x 250 mm.");
    scene.piece.holding.stations[1].strut.stop = model::Stop::foot;
    EXPECT_EQ(countOf(scene.findings(), Code::propSlipsAtFoot), 0);
    scene.plan.holding.props[0].thrust_N = 9500;
    findings = scene.findings();
    EXPECT_EQ(countOf(findings, Code::propBuckles), 1);
    EXPECT_EQ(countOf(findings, Code::jackOverRating), 1);
    scene.plan.holding.props[0].footAboveHead = true;
    findings = scene.findings();
    EXPECT_EQ(the(findings, Code::propFootAboveHead).severity, Severity::stop);
    EXPECT_EQ(countOf(findings, Code::propBuckles), 0);
}

TEST(HoldingFindings, TheBoatIsHeldAgainstLiftingTippingAndSliding) {
    HeldScene scene;
    holding::HullPlan hull;
    hull.margin = 3;
    scene.plan.holding.hull = hull;
    std::vector<Finding> findings = scene.findings();
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].code, Code::boatOverhead);
    scene.plan.holding.hull->margin = 1.4;
    EXPECT_EQ(the(scene.findings(), Code::boatMargin).severity, Severity::caution);
    scene.plan.holding.hull->margin = 0.8;
    scene.plan.holding.hull->lifts = true;
    scene.plan.holding.hull->slides = true;
    findings = scene.findings();
    EXPECT_EQ(the(findings, Code::boatLifts).severity, Severity::stop);
    EXPECT_EQ(the(findings, Code::boatSlides).severity, Severity::stop);
    EXPECT_EQ(countOf(findings, Code::boatMargin), 0);
}

TEST(HoldingFindings, TheBoatsMarginIsSaidAsWhatIsPushedWhatItBearsAndWhatIsWanted) {
    HeldScene scene;
    holding::HullPlan hull{.margin = 1.24,
                           .failsBy = holding::HullPlan::Failure::tips,
                           .mostPush_N = 1240,
                           .worstProp = 1,
                           .totalPush_N = 2000};
    scene.plan.holding.hull = hull;
    EXPECT_EQ(
        english(the(scene.findings(), Code::boatMargin)),
        "The props push with 2000 N, and the boat tips at 2500 N. Keep them to 1200 N, or weight and shore it. It "
        "fails at 1.2 times that push. With the margin of 2 that is wanted the props may push with 1200 N. Clamp "
        "2 takes the most off the margin.");
    hull.margin = 0.8;
    hull.mostPush_N = 800;
    hull.tips = true;
    hull.blocks = {{.index = 0, .x_m = 0.5, .push_N = 0}, {.index = 1, .x_m = 2.3, .push_N = 900}};
    scene.plan.holding.hull = hull;
    EXPECT_EQ(textOf(the(scene.findings(), Code::boatTips), inMillimetres),
              "The props push with 2000 N and tip the boat about its block at x 2300 mm (safe to 800 N). Weight and "
              "shore it; nobody under it.");
}

TEST(HoldingFindings, ScrewsAreHeldAgainstDrawingOutCrushingAndSplitting) {
    HeldScene scene;
    scene.piece.holding.stations[1].kind = model::HoldKind::screw;
    holding::ScrewPlan screw{.index = 1,
                             .pull_N = 400,
                             .withdrawalUltimate_N = 2700,
                             .withdrawalAllowable_N = 500,
                             .washerKnown = true,
                             .washerMay_Pa = 3.7e6};
    screw.fromEdge_m = screw.fromEnd_m = 0.1;
    scene.plan.holding.screws = {screw};
    std::vector<Finding> findings = scene.findings();
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].code, Code::screwHead);
    scene.plan.holding.screws[0].pull_N = 700;
    EXPECT_EQ(the(scene.findings(), Code::screwDrawsOut).severity, Severity::caution);
    scene.plan.holding.screws[0].pull_N = 2800;
    EXPECT_EQ(the(scene.findings(), Code::screwDrawsOut).severity, Severity::stop);
    // Its steel may be the weaker part.
    scene.plan.holding.screws[0].steelUltimate_N = 2600;
    scene.plan.holding.screws[0].steelAllowable_N = 450;
    EXPECT_EQ(the(scene.findings(), Code::screwBreaks).severity, Severity::stop);
    EXPECT_EQ(the(scene.findings(), Code::screwBreaks).limit, 2600);
    EXPECT_EQ(countOf(scene.findings(), Code::screwDrawsOut), 0);
    scene.plan.holding.screws[0].pull_N = 480;
    EXPECT_EQ(the(scene.findings(), Code::screwBreaks).severity, Severity::caution);
    scene.plan.holding.screws[0].washerPressure_Pa = 5e6;
    scene.plan.holding.screws[0].fromEdgeNeeded_m = 0.2;
    findings = scene.findings();
    EXPECT_EQ(countOf(findings, Code::washerCrushes), 1);
    EXPECT_EQ(countOf(findings, Code::screwNearEdge), 1);
}

// Names of many stations in a row are said by the first and the last.
TEST(HoldingFindings, NamesRunsOfStationsByTheirEnds) {
    HeldScene scene;
    for (holding::HeldStation& held : scene.plan.holding.held.stations) held.state = holding::HoldState::slack;
    EXPECT_EQ(textOf(the(scene.findings(), Code::nothingToPull), inMillimetres), "Clamps 1 to 3: snug is enough.");
    scene.piece.holding.stations[1].kind = model::HoldKind::wedge;
    EXPECT_EQ(textOf(the(scene.findings(), Code::nothingToPull), inMillimetres),
              "Clamp 1, wedge 2 and clamp 3: snug is enough.");
}

TEST(HoldingFindings, ToolsThatAreShortSayHowManyMoreAndWhatWouldDoInstead) {
    HeldScene scene;
    holding::AtHand& atHand = scene.plan.holding.atHand;
    atHand.counts = {
        {.kind = model::HoldKind::clamp, .asked = 13, .there = 6, .listed = true, .withoutTool = {0, 1, 2}}};
    atHand.strapsWouldServe = 2;
    atHand.strapTension_N = 4100;
    atHand.wedgesWouldServe = 3;
    const auto shortOf = [&] { return the(scene.findings(), Code::toolsShort); };
    EXPECT_EQ(english(shortOf()),
              "Needs 13 clamps, and you have six. Get seven more. A strap round the outside, drawn to 4100 N, would do "
              "instead of two of them. Wedges under a bar across the form would do instead.");
    atHand.strapsWouldServe = 3;
    EXPECT_EQ(textOf(shortOf(), inMillimetres),
              "Needs 13 clamps, and you have six. One strap drawn to 4100 N would do instead.");
    atHand.counts[0].there = 0;
    EXPECT_TRUE(shortOf().text.is(texts::toolsShortOfAll));
    // As many as are asked for, and none that would do.
    atHand.counts[0].there = 13;
    EXPECT_TRUE(shortOf().text.is(texts::noneIsFree));
    atHand.served = {{.station = 0, .lacks = holding::Lacks::strength, .needed_N = 3000}};
    EXPECT_EQ(shortOf().text.args[1].value, 3000);
    atHand.served[0].lacks = holding::Lacks::opening;
    EXPECT_TRUE(shortOf().text.is(texts::noneOpensFar));
    atHand.served[0].lacks = holding::Lacks::throat;
    EXPECT_TRUE(shortOf().text.is(texts::noneReachesFar));
}

// Much of it in one: each line fits, with finite numbers.
TEST(HoldingFindings, EachLineFitsWithFiniteNumbers) {
    HeldScene scene;
    scene.plan.holding.held.samples[1].gap_m = 0.004;
    scene.plan.holding.held.gapAtStart_m = 0.004;
    scene.plan.holding.held.stations[0] = {0, 1, 0.1, 2500, 2500, 0.004, holding::HoldState::full};
    scene.plan.holding.held.stations[1].state = holding::HoldState::slack;
    scene.plan.holding.held.outcome = holding::Outcome::snaps;
    scene.piece.form.kind = model::FormKind::posts;
    scene.plan.holding.hull = holding::HullPlan{};
    scene.plan.holding.hull->margin = std::numeric_limits<double>::infinity();
    EXPECT_GT(scene.findings().size(), 7U);
}

}  // namespace holding_findings_test
}  // namespace fayline::plan
