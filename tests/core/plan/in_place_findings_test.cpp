#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/in_place_texts.hpp"
#include "core/plan/plan.hpp"
#include "tests/core/plan/made_pieces.hpp"
#include "tests/core/plan/whole_line.hpp"

namespace fayline::plan {
namespace in_place_findings_test {

using made::findingsFor;

model::Piece inPlace(int count, double thickness_m, double radius_m) {
    model::Piece piece = made::bend(radius_m, 1.0, {.count = count, .thickness_m = thickness_m});
    piece.form.kind = model::FormKind::inPlace;
    return piece;
}

std::vector<Finding> all(const std::vector<Finding>& findings, Code code) {
    std::vector<Finding> found;
    std::ranges::copy_if(findings, std::back_inserter(found), [&](const Finding& f) { return f.code == code; });
    for (const Finding& finding : found) {
        if (aboutOf(code) == About::form) expectWholeLine(finding);
    }
    return found;
}

TEST(InPlaceFindings, AGentleBendOfThinStripsWantsNoFasteningAndSaysSoOnce) {
    const std::vector<Finding> findings = findingsFor(inPlace(8, 0.006, 2.5));
    const std::vector<Finding> peel = all(findings, Code::peelAtEnd);
    ASSERT_EQ(peel.size(), 1U);
    EXPECT_EQ(peel[0].severity, Severity::note);
    EXPECT_EQ(aboutOf(peel[0].code), About::form);
    EXPECT_LT(peel[0].value, peel[0].limit);
    EXPECT_EQ(levelOf(peel[0]), Level::fact);
    EXPECT_TRUE(peel[0].text.is(texts::endsStay));
    EXPECT_NEAR(peel[0].text.args[0].value, peel[0].value / peel[0].limit, 1e-9);
    EXPECT_TRUE(details(peel[0], texts::fibresStay));
    EXPECT_TRUE(all(findings, Code::fasteningWanted).empty());
}

TEST(InPlaceFindings, FewThickStripsWantTheirEndsFastened) {
    const std::vector<Finding> findings = findingsFor(inPlace(4, 0.010, 1.0));
    ASSERT_EQ(all(findings, Code::peelAtEnd).size(), 2U);
    for (const Finding& finding : all(findings, Code::peelAtEnd)) {
        EXPECT_EQ(finding.severity, Severity::caution);
        EXPECT_GT(finding.value, finding.limit);
        EXPECT_TRUE(finding.text.is(texts::endPeels));
        EXPECT_EQ(finding.source.mark, units::Mark::commonPractice);
    }
    const std::vector<Finding> fastening = all(findings, Code::fasteningWanted);
    ASSERT_EQ(fastening.size(), 2U);
    for (const Finding& finding : fastening) {
        EXPECT_EQ(finding.unit, "N");
        EXPECT_GT(finding.value, 0);
        EXPECT_NE(textOf(finding, inMillimetres).find("designer or surveyor"), std::string::npos);
        EXPECT_DOUBLE_EQ(finding.text.args[2].value, finding.value);
        EXPECT_NE(english(finding).find("Local rules"), std::string::npos);
    }
    EXPECT_GT(*fastening[0].at_m, 0);
    EXPECT_LT(*fastening[1].at_m, makePlan(inPlace(4, 0.010, 1.0), made::shop()).line.fair.line.length());
}

TEST(InPlaceFindings, OneThickStripTearsOffItsBed) {
    model::Piece piece = inPlace(2, 0.020, 1.8);
    piece.stack.strips[0].species = "cedar_w_red";
    const std::vector<Finding> peel = all(findingsFor(piece), Code::peelAtEnd);
    ASSERT_FALSE(peel.empty());
    EXPECT_EQ(peel[0].severity, Severity::stop);
    EXPECT_TRUE(peel[0].text.is(texts::endComesOff));
}

TEST(InPlaceFindings, AScarfedEndIsNotSpokenOf) {
    model::Piece piece = inPlace(4, 0.010, 1.0);
    piece.stack.scarfedEnd = model::Scarf{.slope = 10};
    const std::vector<Finding> fastening = all(findingsFor(piece), Code::fasteningWanted);
    ASSERT_EQ(fastening.size(), 1U);
    EXPECT_EQ(fastening[0].text.args[0].value, 0);  // the start
}

TEST(InPlaceFindings, WhatIsLetGoKeepsNothing) {
    model::Piece piece = inPlace(4, 0.010, 1.0);
    piece.form.kind = model::FormKind::solid;
    EXPECT_TRUE(all(findingsFor(piece), Code::peelAtEnd).empty());
    piece.form.letGo = false;
    const std::vector<Finding> kept = all(findingsFor(piece), Code::peelAtEnd);
    ASSERT_FALSE(kept.empty());
    EXPECT_TRUE(details(kept[0], texts::liftsOffForm)) << english(kept[0]);
}

TEST(RuleFindings, TwoStripsAreThickOfTheMouldingAndAShortScarfIsSteep) {
    model::Piece piece = made::bend(2.5, 1.0, {.count = 4});
    EXPECT_TRUE(all(findingsFor(piece), Code::ruleStripOfMoulding).empty());
    piece.stack.strips[0].count = 2;
    piece.stack.scarfedStart = model::Scarf{.slope = 6};
    const std::vector<Finding> findings = findingsFor(piece);
    ASSERT_EQ(all(findings, Code::ruleStripOfMoulding).size(), 1U);
    ASSERT_EQ(all(findings, Code::ruleScarfSlope).size(), 1U);
    for (Code code : {Code::ruleStripOfMoulding, Code::ruleScarfSlope}) {
        const Finding finding = all(findings, code)[0];
        EXPECT_EQ(finding.severity, Severity::note);
        EXPECT_EQ(finding.source.mark, units::Mark::fromMemory);
        EXPECT_NE(english(finding).find("classed"), std::string::npos);
    }
    piece.stack.scarfedStart->slope = 8;
    EXPECT_TRUE(all(findingsFor(piece), Code::ruleScarfSlope).empty());
}

}  // namespace in_place_findings_test
}  // namespace fayline::plan
