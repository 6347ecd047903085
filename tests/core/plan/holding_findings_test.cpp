// Each finding about the holding appears when it should, and only then. The states are written by hand; that they come
// out of a piece is checked in tests/core/holding.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/plan/findings.hpp"
#include "tests/core/plan/made_pieces.hpp"

namespace fayline::plan {
namespace {

int countOf(const std::vector<Finding>& findings, Code code) {
    return static_cast<int>(
        std::count_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.code == code; }));
}

Finding the(const std::vector<Finding>& findings, Code code) {
    EXPECT_EQ(countOf(findings, code), 1) << code;
    const auto found = std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.code == code; });
    return found == findings.end() ? Finding{} : *found;
}

// A gentle bend, three clamps that close their gaps, everything in order.
struct Scene {
    boat::Piece piece = made::bend(3.0, 0.6);
    Shop shop = made::shop();
    Plan plan;

    Scene() {
        piece.holding.stations = {boat::Station{.at_m = 0.1}, boat::Station{.at_m = 0.15}, boat::Station{.at_m = 0.2}};
        piece.glue.pasteYield_Pa = 0;
        shop.display.lengths = measure::LengthNotation::millimetres;
        plan = makePlan(piece, shop);
        plan.holding = HoldingPlan{};
        plan.holding.held.samples = {{0, 0, 0, 0}, {0.15, 0.0001, 1000, 1}, {plan.line.fair.line.length(), 0, 0, 0}};
        for (int i = 0; i < 3; ++i) {
            holding::StationPlace place;
            place.index = i;
            place.number = i + 1;
            place.at_m = piece.holding.stations[std::size_t(i)].at_m;
            plan.holding.stations.push_back(place);
            plan.holding.held.stations.push_back({i, i + 1, place.at_m, 500, 2500, 0, holding::HoldState::closes});
            holding::PressingNeed need;
            need.spacing_m = std::numeric_limits<double>::infinity();
            plan.holding.pressing.push_back(need);
        }
    }

    std::vector<Finding> findings() const { return holdingFindings(piece, shop, plan); }
};

TEST(HoldingFindings, AStackThatLiesDownHasNothingSaidOfIt) {
    EXPECT_TRUE(Scene().findings().empty());
}

TEST(HoldingFindings, AGapOverTheLimitStopsWithItsPlaceAndBothNumbers) {
    Scene scene;
    scene.plan.holding.held.samples[1].gap_m = 0.0005;
    EXPECT_EQ(countOf(scene.findings(), Code::gapOverLimit), 0);
    scene.plan.holding.held.samples[1].gap_m = 0.00172;
    const Finding finding = the(scene.findings(), Code::gapOverLimit);
    EXPECT_EQ(finding.severity, Severity::stop);
    EXPECT_NEAR(finding.value, 1.72, 1e-9);
    EXPECT_NEAR(finding.limit, 0.5, 1e-9);
    EXPECT_EQ(finding.at_m, 0.15);
    EXPECT_NE(english(finding).find("1.72 mm"), std::string::npos) << english(finding);
    EXPECT_NE(english(finding).find("0.50 mm"), std::string::npos) << english(finding);
}

TEST(HoldingFindings, AStackThatCutsTheCornerBetweenPostsCautions) {
    Scene scene;
    scene.plan.holding.held.fallsInside = {0.12, 0.0009};
    const Finding finding = the(scene.findings(), Code::fallsInside);
    EXPECT_NEAR(finding.value, 0.9, 1e-9);
    EXPECT_EQ(finding.at_m, 0.12);
}

TEST(HoldingFindings, AnEndThatStandsOffIsSaidOfThatEnd) {
    Scene scene;
    scene.plan.holding.held.gapAtEnd_m = 0.002;
    EXPECT_NEAR(the(scene.findings(), Code::gapAtTrim).at_m.value(), scene.plan.line.fair.line.length(), 1e-12);
    scene.plan.holding.held.gapAtStart_m = 0.001;
    EXPECT_EQ(countOf(scene.findings(), Code::gapAtTrim), 2);
}

TEST(HoldingFindings, AClampAtItsStrengthIsANoteWithinTheLimitAndACautionBeyond) {
    Scene scene;
    scene.plan.holding.held.stations[1] = {1, 2, 0.15, 2500, 2500, 0.0003, holding::HoldState::full};
    EXPECT_EQ(the(scene.findings(), Code::atItsStrength).severity, Severity::note);
    scene.plan.holding.held.stations[1].gap_m = 0.0008;
    const Finding finding = the(scene.findings(), Code::atItsStrength);
    EXPECT_EQ(finding.severity, Severity::caution);
    EXPECT_EQ(finding.value, 2500);
    EXPECT_NE(english(finding).find("Clamp 2"), std::string::npos) << english(finding);
}

TEST(HoldingFindings, PadsThatMatterAreACautionOnceTheAnswersPartByMoreThanTheLimit) {
    Scene scene;
    scene.plan.holding.held.largestIfPadsHold_m = 0.0059;
    scene.plan.holding.held.largestIfPadsSlide_m = 0.0055;
    EXPECT_EQ(countOf(scene.findings(), Code::hangsOnPads), 0);
    scene.plan.holding.held.largestIfPadsSlide_m = 0.0028;
    EXPECT_NEAR(the(scene.findings(), Code::hangsOnPads).value, 3.1, 1e-9);
}

TEST(HoldingFindings, AStackThatSnapsOrDoesNotSettleSaysSo) {
    Scene scene;
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
    Scene scene;
    scene.plan.holding.held.stations[0].state = holding::HoldState::slack;
    scene.plan.holding.held.stations[2].state = holding::HoldState::slack;
    EXPECT_NE(english(the(scene.findings(), Code::nothingToPull)).find("Clamps 1 and 3"), std::string::npos);
    scene.plan.holding.held.stations[2].most_N = 0;
    const std::vector<Finding> findings = scene.findings();
    EXPECT_NE(english(the(findings, Code::nothingToPull)).find("Clamp 1 has"), std::string::npos);
    EXPECT_EQ(the(findings, Code::noStrength).at_m, 0.2);
}

TEST(HoldingFindings, StationsOffWhatTheStripsAreBentOnAreNamed) {
    Scene scene;
    scene.piece.form.kind = boat::FormKind::posts;
    scene.piece.form.posts = {boat::Post{.at_m = 0.1}, boat::Post{.at_m = 0.2}};
    const Finding finding = the(scene.findings(), Code::stationOffTheForm);
    EXPECT_EQ(finding.at_m, 0.15);
    EXPECT_NEAR(finding.value, 50 - 19, 1e-6);
    scene.piece.form.posts.clear();
    EXPECT_EQ(countOf(scene.findings(), Code::stationOffTheForm), 3);
    scene.piece.form.kind = boat::FormKind::inPlace;
    scene.piece.holding.stations[0].at_m = -0.05;
    EXPECT_NEAR(the(scene.findings(), Code::stationOffTheForm).value, 50, 1e-6);
}

TEST(HoldingFindings, PadsTooFarApartToPressAreSaidOnceWhereItIsWorst) {
    Scene scene;
    for (holding::PressingNeed& need : scene.plan.holding.pressing) need.spacing_m = 0.045;
    scene.plan.holding.held.stations[2].at_m = 0.24;
    const Finding finding = the(scene.findings(), Code::notPressed);
    EXPECT_NEAR(finding.value, 90, 1e-6);
    EXPECT_NEAR(finding.limit, 45, 1e-6);
    // Told to 10 mm, downward; of a mix that reaches further, how far.
    EXPECT_NE(english(finding).find("pads no further apart than 40 mm reach every place"), std::string::npos)
        << english(finding);
    EXPECT_EQ(english(finding).find("half as stiff"), std::string::npos) << english(finding);
    for (holding::PressingNeed& need : scene.plan.holding.pressing) need.thinnerSpacing_m = 0.053;
    EXPECT_NE(english(the(scene.findings(), Code::notPressed)).find("A mix half as stiff: 50 mm."), std::string::npos);
    // A clamp across the stack presses no glue out.
    scene.piece.holding.stations[1].side = true;
    EXPECT_NEAR(the(scene.findings(), Code::notPressed).value, 140, 1e-6);
}

// A glue that fills gaps is pressed out as a wish: one note, once the study knows how many stations that would take.
TEST(HoldingFindings, OfAGlueThatFillsGapsOneNoteTellsWhatPressingWouldTake) {
    Scene scene;
    HoldingStudy study;
    study.proposal.stations.resize(3);
    study.proposal.pressingIsWish = true;
    study.proposal.forEverything = 11;
    const auto studied = [&] { return studyFindings(scene.piece, scene.shop, scene.plan, study); };
    EXPECT_EQ(countOf(studied(), Code::notPressed), 0);  // it is pressed everywhere
    for (holding::PressingNeed& need : scene.plan.holding.pressing) {
        need.spacing_m = 0.045;
        need.isWish = true;
    }
    EXPECT_EQ(countOf(scene.findings(), Code::notPressed), 0);
    const Finding note = the(studied(), Code::notPressed);
    EXPECT_EQ(note.severity, Severity::note);
    EXPECT_EQ(english(note),
              "This glue fills gaps: contact is enough. Pressed out everywhere it would take eleven stations; clamps 2 "
              "and 3 might then stand 40 mm apart, not 50 mm.");
    EXPECT_NEAR(note.value, 50, 1e-6);
    EXPECT_NEAR(note.limit, 45, 1e-6);
    EXPECT_EQ(studied().size(), 1U);  // and nothing else of it
    study.proposal.forEverything = 0;
    EXPECT_NE(english(the(studied(), Code::notPressed)).find("No number of the tools"), std::string::npos);
    // On posts that is so whatever the number, and it is said at once.
    scene.piece.form.kind = boat::FormKind::posts;
    for (const boat::Station& station : scene.piece.holding.stations)
        scene.piece.form.posts.push_back(boat::Post{.at_m = station.at_m});
    EXPECT_EQ(countOf(studied(), Code::notPressed), 0);
    EXPECT_EQ(countOf(scene.findings(), Code::notPressed), 0);  // nothing asks for it
    for (holding::PressingNeed& need : scene.plan.holding.pressing) need.pad.push_N_m = 800;
    EXPECT_EQ(the(scene.findings(), Code::notPressed).severity, Severity::note);
    // Of one that must be pressed it is a risk.
    for (holding::PressingNeed& need : scene.plan.holding.pressing) need.isWish = false;
    EXPECT_EQ(the(scene.findings(), Code::notPressed).severity, Severity::caution);
}

// A glue that wants 150 psi in hardwood (FAA AC 43.13-1B chapter 1, M): 1 034.2 kPa. Two clamps of 2 500 N 50 mm apart
// on strips 51 + 2 x 3 mm wide give 2 500 / (0.05 x 0.057) = 877.2 kPa at most.
TEST(HoldingFindings, AGlueThatWantsPressureIsToldWhatTheClampsGive) {
    boat::Boat boat;
    boat.display.lengths = measure::LengthNotation::millimetres;
    boat::OwnAdhesive own;
    own.id = "mine";
    own.kind = boat::AdhesiveKind::resorcinol;
    boat.adhesives = {own};
    boat::Piece piece = made::bend(3.0, 0.6);
    piece.holding.cauls.thickness_m = 0.05;  // so that pads reach every place
    for (int i = 0; i < 37; ++i) piece.holding.stations.push_back(boat::Station{.at_m = 0.05 * i});
    piece.glue.pasteYield_Pa = 0;
    const auto findings = [&] { return makePlan(piece, shopOf(boat)).findings; };
    EXPECT_EQ(countOf(findings(), Code::pressureBelowWanted), 0);  // another glue
    piece.glue.adhesive = "mine";
    const Finding finding = the(findings(), Code::pressureBelowWanted);
    EXPECT_NEAR(finding.limit, 1034.2, 0.1);
    EXPECT_NEAR(finding.value, 877.2, 0.1);
    EXPECT_EQ(finding.source.mark, measure::Mark::fromMemory);
    EXPECT_NE(finding.source.text.find("43.13"), std::string::npos);
    EXPECT_NE(english(finding).find("with 877 kPa at most, and this kind of glue wants 1030 kPa"), std::string::npos)
        << english(finding);
    for (boat::Station& station : piece.holding.stations) station.most_N = 3000;  // 1 052.6 kPa
    EXPECT_EQ(countOf(findings(), Code::pressureBelowWanted), 0);
    EXPECT_EQ(countOf(findings(), Code::notPressed), 0);
    // Thickened epoxy asks for contact only.
    boat.adhesives[0].kind = boat::AdhesiveKind::epoxy;
    for (boat::Station& station : piece.holding.stations) station.most_N = 100;
    EXPECT_EQ(countOf(findings(), Code::pressureBelowWanted), 0);
    EXPECT_EQ(countOf(findings(), Code::notPressed), 0);
}

TEST(HoldingFindings, APadThatCrushesTheOuterStripCautions) {
    Scene scene;
    // White oak 7.4 MPa across the grain, half of it for pads: 3.7 MPa on 40 mm by 51 mm is 7.5 kN.
    scene.plan.holding.held.stations[1].pull_N = 7400;
    EXPECT_EQ(countOf(scene.findings(), Code::padCrushes), 0);
    scene.plan.holding.held.stations[1].pull_N = 7700;
    EXPECT_EQ(the(scene.findings(), Code::padCrushes).severity, Severity::caution);
    scene.piece.holding.cauls.thickness_m = 0.01;
    EXPECT_EQ(countOf(scene.findings(), Code::padCrushes), 0);
}

TEST(HoldingFindings, PostsJacksAndTooFewToolsStop) {
    Scene scene;
    scene.plan.holding.posts = {{0, 0.1, 2900, 3000}, {1, 0.2, 3100, 3000}};
    EXPECT_NEAR(the(scene.findings(), Code::postGivesWay).value, 3100, 1e-9);
    scene.plan.holding.atHand.counts = {{.kind = boat::HoldKind::clamp, .asked = 3, .there = 2, .withoutTool = {2}}};
    EXPECT_EQ(the(scene.findings(), Code::toolsShort).severity, Severity::stop);
}

TEST(HoldingFindings, APropIsHeldAgainstSlipBucklingAndItsRating) {
    Scene scene;
    scene.piece.holding.stations[1].kind = boat::HoldKind::jack;
    holding::PropPlan prop;
    prop.index = 1;
    prop.head = {0.15, 0.5};
    prop.foot = {0.15, 0};
    prop.length_m = 0.5;
    prop.thrust_N = 500;
    prop.allowable_N = 9000;
    prop.most_N = 2500;
    scene.plan.holding.props = {prop};
    std::vector<Finding> findings = scene.findings();
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].code, Code::propsCanFly);

    scene.plan.holding.props[0].slips = holding::Slips::foot;
    scene.plan.holding.props[0].footSlant_rad = 0.4;
    EXPECT_EQ(the(scene.findings(), Code::propSlipsAtFoot).severity, Severity::stop);
    scene.piece.holding.stations[1].strut.stop = boat::Stop::foot;
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
    Scene scene;
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
    Scene scene;
    holding::HullPlan hull;
    hull.margin = 1.24;
    hull.failsBy = holding::HullPlan::Failure::tips;
    hull.totalPush_N = 2000;
    hull.mostPush_N = 1240;
    hull.worstProp = 1;
    scene.plan.holding.hull = hull;
    EXPECT_EQ(
        english(the(scene.findings(), Code::boatMargin)),
        "The props push with 2000 N in all. The boat tips at 2500 N, 1.2 times that; with the margin of 2 that is "
        "wanted they may push with 1200 N. Clamp 2 takes the most off the margin.");
    hull.margin = 0.8;
    hull.mostPush_N = 800;
    hull.tips = true;
    hull.blocks = {{.index = 0, .x_m = 0.5, .push_N = 0}, {.index = 1, .x_m = 2.3, .push_N = 900}};
    scene.plan.holding.hull = hull;
    EXPECT_EQ(
        english(the(scene.findings(), Code::boatTips)),
        "The props tip the boat about its block at x 2300 mm. They push with 2000 N in all. The boat tips at 1600 "
        "N, 0.8 times that; with the margin of 2 that is wanted they may push with 800 N. Clamp 2 takes the most "
        "off the margin.");
}

TEST(HoldingFindings, ScrewsAreHeldAgainstDrawingOutCrushingAndSplitting) {
    Scene scene;
    scene.piece.holding.stations[1].kind = boat::HoldKind::screw;
    holding::ScrewPlan screw;
    screw.index = 1;
    screw.pull_N = 400;
    screw.withdrawalAllowable_N = 500;
    screw.withdrawalUltimate_N = 2700;
    screw.washerMay_Pa = 3.7e6;
    screw.washerKnown = true;
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

TEST(StudyFindings, SayWhatOverRunClosingAndProposalAdd) {
    Scene scene;
    HoldingStudy study;
    EXPECT_TRUE(studyFindings(scene.piece, scene.shop, scene.plan, study).empty());
    study.overRun.end.gap_m = 0.002;
    study.overRun.end.overRun_m = 0.21;
    study.overRun.end.strongerClamp_N = 4000;
    const Finding over = the(studyFindings(scene.piece, scene.shop, scene.plan, study), Code::overRunNeeded);
    EXPECT_NEAR(over.limit, 210, 1e-9);
    EXPECT_NE(english(over).find("4000 N"), std::string::npos) << english(over);
    study.overRun.end.overRun_m.reset();
    EXPECT_FALSE(the(studyFindings(scene.piece, scene.shop, scene.plan, study), Code::overRunNeeded).limited);

    holding::ClosingStep step;
    step.tailOff_m = 0.4;
    study.closing = {step, step};
    study.closing[1].index = 1;
    study.closing[1].floorInTheWay = true;
    study.closing[1].outcome = holding::Outcome::snaps;
    std::vector<Finding> findings = studyFindings(scene.piece, scene.shop, scene.plan, study);
    EXPECT_EQ(countOf(findings, Code::floorInTheWay), 1);
    EXPECT_EQ(countOf(findings, Code::snapsWhileClosing), 1);
    EXPECT_NEAR(the(findings, Code::tailStandsOff).value, 400, 1e-9);

    study.proposal.stations.resize(16);
    study.proposal.tools = 14;
    study.proposal.withinCounts = false;
    study.proposal.withoutPressing = 9;
    const Finding more = the(studyFindings(scene.piece, scene.shop, scene.plan, study), Code::moreClampsNeeded);
    EXPECT_EQ(more.value, 16);
    EXPECT_EQ(more.limit, 14);
    study.proposal.met = false;
    study.proposal.unmet = "strength";
    findings = studyFindings(scene.piece, scene.shop, scene.plan, study);
    EXPECT_EQ(countOf(findings, Code::moreClampsNeeded), 0);
    EXPECT_EQ(countOf(findings, Code::noStationsWouldDo), 1);
}

TEST(StudyFindings, TooFewToolsToPressSaysHowFarTheyHoldAndHowManyWouldBeNeeded) {
    Scene scene;
    HoldingStudy study;
    holding::Proposal& proposal = study.proposal;
    proposal.stations.resize(14);
    proposal.tools = 14;
    proposal.met = false;
    proposal.unmet = "pressing";
    proposal.forEverything = 28;
    proposal.withoutPressing = 4;
    proposal.largestSpacing_m = 0.14;
    const auto finding = [&](Code code) {
        return the(studyFindings(scene.piece, scene.shop, scene.plan, study), code);
    };
    const Finding few = finding(Code::moreClampsNeeded);
    EXPECT_EQ(few.value, 28);
    EXPECT_EQ(few.limit, 14);
    EXPECT_EQ(english(few),
              "14 clamps, as many as you have, hold it down everywhere, 140 mm apart at most; to press this glue out "
              "everywhere 28 would be needed.");
    proposal.caul_m = 0.031;
    EXPECT_NE(english(finding(Code::moreClampsNeeded), scene.shop.display)
                  .find("Under one long caul 31 mm thick 14 clamps would do that too."),
              std::string::npos);
    // In sixteenths of an inch: 31 mm are 1.2205 in, 1 3/16 in would be too thin.
    scene.shop.display.lengths = measure::LengthNotation::feetInchesEighths;
    EXPECT_NE(english(finding(Code::moreClampsNeeded), scene.shop.display).find("1 1/4 in"), std::string::npos)
        << english(finding(Code::moreClampsNeeded));
    proposal.stations.resize(1);
    proposal.stations[0].station.kind = boat::HoldKind::screw;
    EXPECT_EQ(
        english(finding(Code::moreClampsNeeded), scene.shop.display).find("One screw of those you have holds it down"),
        0U);
    EXPECT_EQ(countOf(studyFindings(scene.piece, scene.shop, scene.plan, study), Code::noStationsWouldDo), 0);

    // The answer says the same in short.
    proposal.stations.assign(14, {});
    scene.plan.holdingStudy = study;
    scene.plan.display.lengths = measure::LengthNotation::millimetres;
    const auto answer = [&] {
        for (const Answer& each : answersOf(scene.piece, scene.shop, scene.plan)) {
            if (each.question == Question::holding) return answerText(each, inMillimetres);
        }
        return std::string();
    };
    EXPECT_NE(answer().find(" The best that your 14 clamps can do is proposed: all held down, 140 mm apart at most; to "
                            "press the glue out everywhere takes 28."),
              std::string::npos)
        << answer();
    scene.plan.holdingStudy->proposal.unmet = "gap";
    EXPECT_EQ(answer().find("proposed"), std::string::npos);
}

TEST(StudyFindings, BetweenPostsNothingPressesAndThatIsSaid) {
    Scene scene;
    HoldingStudy study;
    study.proposal.stations.resize(3);
    study.proposal.met = false;
    study.proposal.unmet = "pressing";
    study.proposal.withoutPressing = 3;
    scene.piece.form.kind = boat::FormKind::posts;
    const auto text = [&] {
        return english(the(studyFindings(scene.piece, scene.shop, scene.plan, study), Code::noStationsWouldDo));
    };
    EXPECT_EQ(text(),
              "Clamps stand on the posts only, and between posts nothing presses: no number of them presses this glue "
              "out everywhere. Three clamps on posts hold it down: gap limit and strength are met.");
    scene.piece.form.kind = boat::FormKind::solid;
    EXPECT_NE(text().find("not even pad beside pad"), std::string::npos);
}

// Over every scene above in one: full sentences, finite numbers, a source.
TEST(HoldingFindings, EachIsAFullSentenceWithFiniteNumbersAndItsSource) {
    Scene scene;
    scene.plan.holding.held.samples[1].gap_m = 0.004;
    scene.plan.holding.held.gapAtStart_m = 0.004;
    scene.plan.holding.held.stations[0] = {0, 1, 0.1, 2500, 2500, 0.004, holding::HoldState::full};
    scene.plan.holding.held.stations[1].state = holding::HoldState::slack;
    scene.plan.holding.held.outcome = holding::Outcome::snaps;
    scene.piece.form.kind = boat::FormKind::posts;
    scene.plan.holding.hull = holding::HullPlan{};
    scene.plan.holding.hull->margin = std::numeric_limits<double>::infinity();
    const std::vector<Finding> findings = scene.findings();
    EXPECT_GT(findings.size(), 7U);
    for (const Finding& finding : findings) {
        EXPECT_TRUE(std::isupper(static_cast<unsigned char>(english(finding).front()))) << english(finding);
        EXPECT_EQ(english(finding).back(), '.') << english(finding);
        EXPECT_EQ(english(finding).find("inf"), std::string::npos) << english(finding);
        EXPECT_TRUE(std::isfinite(finding.value) && std::isfinite(finding.limit)) << codeWord(finding.code);
    }
}

}  // namespace
}  // namespace fayline::plan
