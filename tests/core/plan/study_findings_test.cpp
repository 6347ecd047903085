// Each finding that the longer look at the holding adds appears when it should. The states are written by hand.
#include <gtest/gtest.h>

#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/study_texts.hpp"
#include "core/plan/study/holding_study.hpp"
#include "tests/core/plan/held_scene.hpp"

namespace fayline::plan {
namespace study_findings_test {

TEST(StudyFindings, OfAGlueThatFillsGapsOneNoteTellsWhatPressingWouldTake) {
    HeldScene scene;
    HoldingStudy study;
    study.proposal.stations.resize(3);
    study.proposal.pressingIsWish = true;
    study.proposal.forEverything = 11;
    const auto studied = [&] { return scene.studied(study); };
    EXPECT_EQ(countOf(studied(), Code::notPressed), 0);  // it is pressed everywhere
    for (holding::PressingNeed& need : scene.plan.holding.pressing) {
        need.spacing_m = 0.045;
        need.isWish = true;
    }
    EXPECT_EQ(countOf(scene.findings(), Code::notPressed), 0);
    const Finding note = the(studied(), Code::notPressed);
    EXPECT_EQ(note.severity, Severity::note);
    EXPECT_EQ(english(note),
              "This glue fills gaps, so contact is enough. Squeeze-out everywhere would take eleven stations. Clamps 2 "
              "and 3 might then be 40 mm apart, not 50 mm.");
    EXPECT_NEAR(note.value, 50, 1e-6);
    EXPECT_NEAR(note.limit, 45, 1e-6);
    EXPECT_EQ(studied().size(), 1U);  // and nothing else of it
    study.proposal.forEverything = 0;
    EXPECT_TRUE(the(studied(), Code::notPressed).text.is(texts::contactIsEnoughAlone));
    // On posts that is so whatever the number, and it is said at once.
    scene.piece.form.kind = model::FormKind::posts;
    for (const model::Station& station : scene.piece.holding.stations)
        scene.piece.form.posts.push_back(model::Post{.at_m = station.at_m});
    EXPECT_EQ(countOf(studied(), Code::notPressed), 0);
    EXPECT_EQ(countOf(scene.findings(), Code::notPressed), 0);  // nothing asks for it
    for (holding::PressingNeed& need : scene.plan.holding.pressing) need.pad.push_N_m = 800;
    EXPECT_EQ(the(scene.findings(), Code::notPressed).severity, Severity::note);
    // Of one that must be pressed it is a risk.
    for (holding::PressingNeed& need : scene.plan.holding.pressing) need.isWish = false;
    EXPECT_EQ(the(scene.findings(), Code::notPressed).severity, Severity::caution);
}

TEST(StudyFindings, SayWhatOverRunClosingAndProposalAdd) {
    HeldScene scene;
    HoldingStudy study;
    EXPECT_TRUE(scene.studied(study).empty());
    study.overRun.end.gap_m = 0.002;
    study.overRun.end.overRun_m = 0.21;
    study.overRun.end.strongerClamp_N = 4000;
    const Finding over = the(scene.studied(study), Code::overRunNeeded);
    EXPECT_NEAR(over.limit, 210, 1e-9);
    EXPECT_TRUE(over.details.front().is(texts::strongerPullWould));
    EXPECT_EQ(over.details.front().args[0].value, 4000);
    study.overRun.end.overRun_m.reset();
    EXPECT_FALSE(the(scene.studied(study), Code::overRunNeeded).limited);

    holding::ClosingStep step;
    step.tailOff_m = 0.4;
    study.closing = {step, step};
    study.closing[1].index = 1;
    study.closing[1].floorInTheWay = true;
    study.closing[1].outcome = holding::Outcome::snaps;
    std::vector<Finding> findings = scene.studied(study);
    EXPECT_EQ(countOf(findings, Code::floorInTheWay), 1);
    EXPECT_EQ(countOf(findings, Code::snapsWhileClosing), 1);
    EXPECT_NEAR(the(findings, Code::tailStandsOff).value, 400, 1e-9);

    study.proposal.stations.resize(16);
    study.proposal.tools = 14;
    study.proposal.withinCounts = false;
    study.proposal.withoutPressing = 9;
    const Finding more = the(scene.studied(study), Code::moreClampsNeeded);
    EXPECT_EQ(more.value, 16);
    EXPECT_EQ(more.limit, 14);
    study.proposal.met = false;
    study.proposal.unmet = holding::Governs::strength;
    findings = scene.studied(study);
    EXPECT_EQ(countOf(findings, Code::moreClampsNeeded), 0);
    EXPECT_EQ(countOf(findings, Code::noStationsWouldDo), 1);
}

TEST(StudyFindings, TooFewToolsToPressSaysHowFarTheyHoldAndHowManyWouldBeNeeded) {
    HeldScene scene;
    HoldingStudy study;
    holding::Proposal& proposal = study.proposal;
    proposal.stations.resize(14);
    proposal.tools = 14;
    proposal.met = false;
    proposal.unmet = holding::Governs::pressing;
    proposal.forEverything = 28;
    proposal.withoutPressing = 4;
    proposal.largestSpacing_m = 0.14;
    const auto finding = [&](Code code) { return the(scene.studied(study), code); };
    const Finding few = finding(Code::moreClampsNeeded);
    EXPECT_EQ(few.value, 28);
    EXPECT_EQ(few.limit, 14);
    EXPECT_EQ(english(few),
              "14 clamps close it. For squeeze-out everywhere use 28. They hold it down everywhere, 140 mm apart at "
              "most. That is all that you have.");
    proposal.caul_m = 0.0301;
    EXPECT_EQ(textOf(finding(Code::moreClampsNeeded), scene.shop.display),
              "14 clamps close it. For squeeze-out everywhere use 28, or one long caul 31 mm thick.");
    // In sixteenths of an inch: 30.1 mm are 1.185 in, 1 1/8 in would be too thin.
    scene.shop.display.lengths = units::LengthNotation::feetInchesEighths;
    EXPECT_NE(english(finding(Code::moreClampsNeeded), scene.shop.display).find("1 3/16 in"), std::string::npos);
    proposal.stations.resize(1);
    proposal.stations[0].station.kind = model::HoldKind::screw;
    EXPECT_EQ(english(finding(Code::moreClampsNeeded), scene.shop.display).find("One screw closes it."), 0U);
    EXPECT_TRUE(finding(Code::moreClampsNeeded).details.back().is(texts::notAllThatYouHave));
    EXPECT_EQ(countOf(scene.studied(study), Code::noStationsWouldDo), 0);

    // The answer says the same in short.
    proposal.stations.assign(14, {});
    scene.plan.holdingStudy = study;
    scene.plan.display.lengths = units::LengthNotation::millimetres;
    const auto more = [&] {
        const std::vector<Answer> answers = answersOf(scene.piece, scene.shop, scene.plan);
        return answers[static_cast<std::size_t>(Question::holding)].more;
    };
    EXPECT_EQ(writeTexts(more(), inMillimetres),
              "Suggested: all your 14 clamps, 140 mm apart. For squeeze-out everywhere: 28, or a caul.");
    scene.plan.holdingStudy->proposal.unmet = holding::Governs::gap;
    EXPECT_TRUE(more().empty());
}

TEST(StudyFindings, BetweenPostsNothingPressesAndThatIsSaid) {
    HeldScene scene;
    HoldingStudy study;
    study.proposal.stations.resize(3);
    study.proposal.met = false;
    study.proposal.unmet = holding::Governs::pressing;
    study.proposal.withoutPressing = 3;
    scene.piece.form.kind = model::FormKind::posts;
    const auto one = [&] { return the(scene.studied(study), Code::noStationsWouldDo); };
    EXPECT_EQ(english(one()),
              "Between posts nothing squeezes this glue out, however many clamps. Three clamps on posts close it. "
              "Clamps stand on posts only. Gap limit and strength are met.");
    scene.piece.form.kind = model::FormKind::solid;
    EXPECT_TRUE(one().text.is(texts::nothingPressesEverywhere));
    EXPECT_TRUE(one().details.front().is(texts::notPadBesidePad));
}

}  // namespace study_findings_test
}  // namespace fayline::plan
