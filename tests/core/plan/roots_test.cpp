// Which finding follows from which, and in what order causes and consequences stand.
#include "core/plan/findings/roots.hpp"

#include <gtest/gtest.h>

#include <filesystem>

#include "core/io/file.hpp"
#include "core/plan/findings/cures.hpp"
#include "tests/core/plan/made_pieces.hpp"
#include "tests/core/plan/studied.hpp"

namespace fayline::plan {
namespace roots_test {

Finding at(Code code, double at_m) {
    Finding finding = found(code);
    finding.at_m = at_m;
    return finding;
}

std::vector<Code> codesOf(const std::vector<Finding>& findings) {
    std::vector<Code> codes;
    for (const Finding& finding : findings) codes.push_back(finding.code);
    return codes;
}

TEST(Roots, TheWorstComesFirstThenAlongTheLineAndFactsAfterAll) {
    std::vector<Finding> findings{found(Code::nothingToPull), at(Code::hangsOnPads, 2), at(Code::fallsInside, 1),
                                  found(Code::bendForLoad), at(Code::gapOverLimit, 3)};
    hangFindings(findings, std::nullopt);
    EXPECT_EQ(codesOf(findings), (std::vector<Code>{Code::gapOverLimit, Code::fallsInside, Code::hangsOnPads,
                                                    Code::bendForLoad, Code::nothingToPull}));
    for (const Finding& finding : findings) EXPECT_EQ(finding.root, -1);
}

TEST(Roots, AConsequenceStandsBehindItsCauseWhichTakesTheWorstSeverity) {
    std::vector<Finding> findings{at(Code::chanceOfBreaking, 1), at(Code::fallsInside, 0.5),
                                  found(Code::breakingRemedies), at(Code::stripBreaksOnForm, 1)};
    findings[3].severity = Severity::caution;
    findings[0].severity = Severity::stop;
    hangFindings(findings, std::nullopt);
    EXPECT_EQ(codesOf(findings), (std::vector<Code>{Code::stripBreaksOnForm, Code::chanceOfBreaking,
                                                    Code::breakingRemedies, Code::fallsInside}));
    EXPECT_EQ(findings[0].severity, Severity::stop);
    EXPECT_EQ(findings[0].root, -1);
    EXPECT_EQ(findings[1].root, 0);
    EXPECT_EQ(findings[2].root, 0);
    EXPECT_EQ(findings[3].root, -1);
}

TEST(Roots, WhatMovesAPieceLaterHangsUnderWhatItComesTo) {
    std::vector<Finding> findings{found(Code::thickPiece), found(Code::planingMovesIt), found(Code::moistureMovesIt),
                                  found(Code::movesLater)};
    hangFindings(findings, std::nullopt);
    EXPECT_EQ(findings[0].code, Code::movesLater);
    EXPECT_EQ(std::ranges::count(findings, -1, &Finding::root), 1);
}

TEST(Roots, OfSeveralPropsThatSlipTheOneWhoseTurnItIsCarriesTheBoat) {
    std::vector<Finding> findings{at(Code::propSlipsAtHead, 1), at(Code::propSlipsAtHead, 2),
                                  at(Code::boatMarginWhileClosing, 2)};
    hangFindings(findings, std::nullopt);
    ASSERT_EQ(findings[2].code, Code::boatMarginWhileClosing);
    EXPECT_EQ(findings[findings[2].root].at_m, 2);
}

TEST(Roots, WhatTheCorrectedPieceDoesNotHaveFollowsFromTheMisreadOffset) {
    Finding misread = found(Code::offsetMisread);
    misread.point = 4;
    std::vector<Finding> findings{at(Code::gapOverLimit, 1), at(Code::hangsOnPads, 1), misread,
                                  at(Code::hangsOnPads, 2), found(Code::nothingToPull)};
    std::vector<Finding> nothingKnown = findings;
    hangFindings(nothingKnown, std::nullopt);
    EXPECT_EQ(nothingKnown[0].severity, Severity::caution);
    EXPECT_EQ(nothingKnown[0].code, Code::offsetMisread);
    hangFindings(findings, std::vector{at(Code::hangsOnPads, 1.9)});
    EXPECT_EQ(codesOf(findings), (std::vector<Code>{Code::offsetMisread, Code::gapOverLimit, Code::hangsOnPads,
                                                    Code::hangsOnPads, Code::nothingToPull}));
    EXPECT_EQ(findings[0].severity, Severity::stop);
    EXPECT_EQ(findings[1].root, 0);
    EXPECT_EQ(findings[2].at_m, 1);  // one of the two is there in the corrected piece too: the nearer
    EXPECT_EQ(findings[2].root, 0);
    EXPECT_EQ(findings[3].root, -1);
    EXPECT_EQ(findings[4].root, -1);
}

// A correction after which nothing is found explains all; where none is known, nothing is explained.
TEST(Roots, ASlipThatSeveralOffsetsShareCarriesAllThatEndsWithIt) {
    Finding shared = found(Code::offsetsShareASlip);
    shared.point = 2;
    std::vector<Finding> findings{at(Code::gapOverLimit, 1), shared, at(Code::hangsOnPads, 2)};
    hangFindings(findings, std::vector<Finding>{});
    EXPECT_EQ(codesOf(findings), (std::vector<Code>{Code::offsetsShareASlip, Code::gapOverLimit, Code::hangsOnPads}));
    EXPECT_EQ(findings[0].root, -1);
    EXPECT_EQ(findings[1].root, 0);
    EXPECT_EQ(findings[2].root, 0);
    EXPECT_EQ(findings[0].severity, Severity::stop);
}

TEST(Roots, HungTwiceIsTheSame) {
    const model::Boat boat = io::loadBoat(std::filesystem::path(FAYLINE_SAMPLES) / "marram_misread.fayline");
    const Plan& plan = made::studied(boat);
    std::vector<Finding> again = plan.findings;
    hangFindings(again, plan.ifCorrected);
    EXPECT_EQ(codesOf(again), codesOf(plan.findings));
    for (std::size_t i = 0; i < again.size(); ++i) EXPECT_EQ(again[i].root, plan.findings[i].root);
}

// The sample with one offset read an inch off: that offset, and hardly anything beside it.
TEST(Roots, TheMisreadSampleHasOneCauseOfItsStops) {
    const model::Boat boat = io::loadBoat(std::filesystem::path(FAYLINE_SAMPLES) / "marram_misread.fayline");
    const Plan& plan = made::studied(boat);
    ASSERT_TRUE(plan.ifCorrected);
    EXPECT_EQ(plan.findings.front().code, Code::offsetMisread);
    EXPECT_EQ(plan.findings.front().severity, Severity::stop);
    EXPECT_EQ(verdictOf(plan).stops(), 1);
    const std::optional<Cure> cure = cureOf(boat.pieces.front(), plan, plan.findings.front());
    ASSERT_TRUE(cure);
    EXPECT_EQ(writeText(cure->name, inMillimetres), "Correct WL 24");
    const Plan cured = makePlan(cure->piece, shopOf(boat));
    EXPECT_EQ(std::ranges::count(cured.findings, Severity::stop, &Finding::severity), 0);
}

// Dragged off by 50 mm, so that no slip of writing explains it: what follows stands under it all the same.
TEST(Roots, AnOffsetThatNoSlipExplainsCarriesWhatFollowsToo) {
    model::Boat boat = io::loadBoat(std::filesystem::path(FAYLINE_SAMPLES) / "marram.fayline");
    boat.pieces.resize(1);
    const int stopsBefore = verdictOf(made::studied(boat)).stops();
    model::Point& point = boat.pieces.front().line.points[6];
    point.x_m += 0.0507;
    point.written = {};
    const Plan& plan = made::studied(boat);
    ASSERT_EQ(plan.findings.front().code, Code::offsetMisread);
    EXPECT_EQ(plan.findings.front().point, 6);
    EXPECT_FALSE(cureOf(boat.pieces.front(), plan, plan.findings.front()));
    EXPECT_EQ(plan.findings.front().severity, Severity::stop);
    EXPECT_EQ(verdictOf(plan).stops(), stopsBefore + 1);
}

// A sound piece shows at most five.
TEST(Roots, SoundSamplesShowFewCauses) {
    for (const model::Piece& piece : io::loadBoat(std::filesystem::path(FAYLINE_SAMPLES) / "marram.fayline").pieces) {
        model::Boat boat = io::loadBoat(std::filesystem::path(FAYLINE_SAMPLES) / "marram.fayline");
        boat.pieces = {piece};
        const Verdict verdict = verdictOf(made::studied(boat));
        EXPECT_LE(verdict.stops() + verdict.cautions() + verdict.notes(), 5) << piece.name;
        EXPECT_EQ(verdict.stops(), 0) << piece.name;
    }
}

// Each cure is one step that takes its finding away, or makes it milder.
TEST(Cures, TakeTheirFindingAway) {
    for (const char* sample : {"marram.fayline", "marram_misread.fayline", "marram_in_place.fayline"}) {
        model::Boat boat = io::loadBoat(std::filesystem::path(FAYLINE_SAMPLES) / sample);
        boat.pieces.resize(1);
        const Plan& plan = made::studied(boat);
        for (const Finding& finding : plan.findings) {
            if (finding.root >= 0) continue;
            const std::optional<Cure> cure = cureOf(boat.pieces.front(), plan, finding);
            if (!cure) continue;
            model::Boat cured = boat;
            cured.pieces = {cure->piece};
            const Plan& then = made::studied(cured);
            const auto same = std::ranges::find_if(then.findings, [&](const Finding& other) {
                return other.code == finding.code && other.severity <= finding.severity;
            });
            EXPECT_TRUE(same == then.findings.end()) << sample << ": " << codeWord(finding.code);
        }
    }
}

}  // namespace roots_test
}  // namespace fayline::plan
