// Each finding appears when it should, and only then.
#include "core/plan/findings/findings.hpp"

#include <gtest/gtest.h>

#include <cctype>
#include <limits>
#include <numbers>

#include "core/plan/findings/line_texts.hpp"
#include "core/plan/findings/stack_texts.hpp"
#include "tests/core/plan/made_pieces.hpp"

namespace fayline::plan {
namespace findings_test {

using made::findingsFor;

constexpr double pi = std::numbers::pi;

// A gentle bend of thin strips: nothing to say but what a bent stack stores and how its ends step.
model::Piece gentle() {
    model::Piece piece = made::bend(3.0, 0.6, {.count = 4, .thickness_m = 0.004});
    piece.glue.air_C = 22;
    piece.glue.airOverNight_C = 18;
    return piece;
}

TEST(Findings, AGentleBendHasNoStopAndNoCaution) {
    for (const Finding& finding : findingsFor(gentle())) {
        EXPECT_EQ(finding.severity, Severity::note) << english(finding);
        EXPECT_TRUE(finding.code == Code::fullCupSmokes || finding.code == Code::endsStep ||
                    finding.code == Code::storedBend || finding.code == Code::noStations ||
                    finding.code == Code::springback || finding.code == Code::moistureMovesIt ||
                    finding.code == Code::movesLater)
            << english(finding);
    }
}

TEST(Findings, APointListedAfterOneThatTheLinePassesLaterIsOutOfOrder) {
    model::Piece piece = gentle();
    EXPECT_EQ(countOf(findingsFor(piece), Code::pointsOutOfOrder), 0);
    piece.line.points.clear();
    for (const double x : {0.0, 0.1, 0.05, 0.3, 0.4}) piece.line.points.push_back({.x_m = x, .y_m = 0});
    const Finding finding = the(findingsFor(piece), Code::pointsOutOfOrder);
    EXPECT_EQ(finding.severity, Severity::caution);
    EXPECT_EQ(finding.point, 2);
    EXPECT_NEAR(finding.value, 50, 1e-6);
}

TEST(Findings, AStripStrainedPastItsBreakingStrainStops) {
    model::Piece piece = made::bend(0.4, 1.5, {.count = 8, .thickness_m = 0.010});
    const Finding finding = the(findingsFor(piece), Code::stripBreaks);
    EXPECT_EQ(finding.severity, Severity::stop);
    EXPECT_EQ(finding.unit, "pct");
    EXPECT_NEAR(finding.value, 100 * 0.010 / (2 * 0.405), 1e-3);
    EXPECT_LT(finding.limit, finding.value);
    EXPECT_EQ(finding.strip, 1);
    ASSERT_TRUE(finding.text.is(texts::stripBreaks));
    EXPECT_NEAR(finding.text.args[2].value, finding.value / finding.limit, 1e-12);
    EXPECT_NE(english(finding).find("of what white oak takes. Use strips up to"), std::string::npos)
        << english(finding);
    EXPECT_EQ(countOf(findingsFor(made::bend(0.65, 1.5)), Code::stripBreaks), 0);
}

TEST(Findings, ChanceOfBreakingStopsBeyondAThirdAndCautionsWhereSparesAreWanted) {
    model::Piece piece = made::bend(0.4, 1.5, {.count = 8, .thickness_m = 0.010});
    const Finding stop = the(findingsFor(piece), Code::chanceOfBreaking);
    EXPECT_EQ(stop.severity, Severity::stop);
    EXPECT_NEAR(stop.limit, 100.0 / 3, 1e-9);
    const Finding caution = the(findingsFor(made::bend(0.52, 1.5)), Code::chanceOfBreaking);
    EXPECT_EQ(caution.severity, Severity::caution);
    EXPECT_NEAR(caution.limit, 5, 1e-9);
    EXPECT_GT(caution.value, 5);
    EXPECT_TRUE(caution.text.is(texts::cutSpares));
    EXPECT_NEAR(100 * caution.text.args[0].value, caution.value, 1e-9);
    EXPECT_EQ(countOf(findingsFor(made::bend(0.9, 1.5)), Code::chanceOfBreaking), 0);
}

TEST(Findings, WhatABendLeavesOfTheStrengthIsOneNoteForAllRules) {
    const Finding tight = the(findingsFor(made::bend(0.5, 1.5)), Code::bendForLoad);
    EXPECT_EQ(tight.severity, Severity::note);
    EXPECT_NEAR(tight.value, 100 * (1 - 2000 * std::pow(0.00635 / 0.503175, 2)), 0.01);
    EXPECT_EQ(tight.limit, 95);
    EXPECT_TRUE(tight.text.is(texts::bendForLoad));
    EXPECT_NE(english(tight).find("NDS 5.3.8"), std::string::npos) << english(tight);
    EXPECT_NE(english(tight).find("EN 14080"), std::string::npos) << english(tight);
    EXPECT_NE(english(tight).find("EN 1995"), std::string::npos) << english(tight);
    // 98 of the 100 thicknesses of the rule: within a twentieth of it, that rule is not told.
    const Finding nearly = the(findingsFor(made::bend(0.62, 1.5)), Code::bendForLoad);
    EXPECT_EQ(english(nearly).find("NDS 5.3.8"), std::string::npos) << english(nearly);
    EXPECT_EQ(countOf(findingsFor(made::bend(3.0, 0.6)), Code::bendForLoad), 0);
    // By Eurocode's and the American rule for softwood 125 thicknesses are wanted.
    model::Piece cedar = made::bend(0.64, 1.5, {.count = 8, .species = "cedar_w_red"});
    EXPECT_NE(english(the(findingsFor(cedar), Code::bendForLoad)).find("radius of 125 times"), std::string::npos);
}

TEST(Findings, AlikeStripsInTwoGroupsAreSpokenOfOnce) {
    model::Piece piece = made::bend(0.6, 1.5);
    model::Strips last = piece.stack.strips[0];
    last.count = 1;
    last.sacrificial = true;
    piece.stack.strips.push_back(last);
    EXPECT_EQ(countOf(findingsFor(piece), Code::bendForLoad), 1);
    piece.stack.strips[1].species = "cedar_w_red";
    EXPECT_EQ(countOf(findingsFor(piece), Code::bendForLoad), 1);
}

TEST(Findings, AHollowTighterThanTheStackStops) {
    model::Piece piece = made::bend(0.06, 1.5);
    piece.line.stripsOn = model::Side::right;  // inside the bend
    piece.stack.strips[0].count = 20;
    piece.stack.strips[0].thickness_m = 0.004;
    const Finding finding = the(findingsFor(piece), Code::noRoom);
    EXPECT_EQ(finding.severity, Severity::stop);
    EXPECT_NEAR(finding.value, 80 + 19 * 0.3, 0.01);
    EXPECT_NEAR(finding.limit, 60, 0.5);
    piece.stack.strips[0].count = 4;
    EXPECT_EQ(countOf(findingsFor(piece), Code::noRoom), 0);
}

TEST(Findings, AStackThatMeetsItselfStops) {
    model::Piece piece = made::bend(0.5, 2 * pi - 0.3, 40);
    piece.stack.strips[0].thickness_m = 0.003;
    piece.stack.runsPastStart_m = 0.02;
    piece.stack.runsPastEnd_m = 0.02;
    EXPECT_EQ(countOf(findingsFor(piece), Code::stackCrossesItself), 0);
    piece.stack.runsPastEnd_m = 0.25;
    EXPECT_EQ(the(findingsFor(piece), Code::stackCrossesItself).severity, Severity::stop);
}

TEST(Findings, TwoPinsRoundABendStop) {
    model::Piece piece = gentle();
    piece.stack.pins = {model::Pin{0.2}};
    EXPECT_EQ(countOf(findingsFor(piece), Code::pinsForbidSliding), 0);
    piece.stack.pins.push_back(model::Pin{1.4});
    const Finding finding = the(findingsFor(piece), Code::pinsForbidSliding);
    EXPECT_EQ(finding.severity, Severity::stop);
    EXPECT_NEAR(finding.value, 1000 * 0.4 * 3 * 0.0043, 1e-3);
    EXPECT_EQ(finding.limit, 0.5);
    ASSERT_TRUE(finding.text.is(texts::pinsForbidSliding));
    EXPECT_NEAR(finding.text.args[0].value, 0.2, 1e-12);
}

TEST(Findings, EndsThatStepPastTheOverRunCaution) {
    model::Piece piece = made::bend(0.7, 1.5);
    const Finding note = the(findingsFor(piece), Code::endsStep);
    EXPECT_EQ(note.severity, Severity::note);
    EXPECT_NEAR(note.value, 1000 * 7 * 0.00665 * (1.5 + 0.15 / 0.7), 0.05);
    piece.stack.runsPastEnd_m = 0.05;
    const Finding fallsShort = the(findingsFor(piece), Code::endsStep);
    EXPECT_EQ(fallsShort.severity, Severity::caution);
    EXPECT_TRUE(fallsShort.text.is(texts::endFallsShort));
    EXPECT_NE(english(fallsShort).find("short at the end; you left 50 mm."), std::string::npos) << english(fallsShort);
    // Inside the bend the outermost runs past the one on the form: nothing falls short.
    piece.line.stripsOn = model::Side::right;
    piece.stack.strips[0].thickness_m = 0.003;
    EXPECT_TRUE(the(findingsFor(piece), Code::endsStep).text.is(texts::endRunsPast));
    EXPECT_EQ(countOf(findingsFor(made::pieceOn(made::straight(2), 5)), Code::endsStep), 0);
}

TEST(Findings, MoistureAndGrainBeyondTheirTablesCaution) {
    model::Piece piece = gentle();
    for (const double moisture : {0.05, 0.25}) {
        piece.stack.moisture = moisture;
        EXPECT_EQ(the(findingsFor(piece), Code::moistureBeyondTable).severity, Severity::caution) << moisture;
    }
    for (const double moisture : {0.06, 0.12, 0.20}) {
        piece.stack.moisture = moisture;
        EXPECT_EQ(countOf(findingsFor(piece), Code::moistureBeyondTable), 0) << moisture;
    }
    EXPECT_EQ(countOf(findingsFor(piece), Code::grainBeyondTable), 0);
    piece.stack.grainSlope = 0.25;
    EXPECT_EQ(the(findingsFor(piece), Code::grainBeyondTable).severity, Severity::caution);
}

TEST(Findings, AWoodWithAWarningIsTold) {
    Shop shop = made::shop();
    shop.species.own().insert(shop.species.begin(), *wood::findSpecies(shop.species, "oak_white"));
    shop.species.front().id = "odd";
    shop.species.front().warning = "Two tables disagree";
    model::Piece piece = gentle();
    EXPECT_EQ(countOf(makePlan(piece, shop).findings, Code::speciesWarning), 0);
    piece.stack.strips[0].species = "odd";
    EXPECT_NE(english(the(makePlan(piece, shop).findings, Code::speciesWarning)).find("Two tables disagree."),
              std::string::npos);
}

TEST(Findings, SoakedStripsWantToDryBeforeGlue) {
    model::Piece piece = gentle();
    piece.glue.air_C = 20;
    piece.glue.humidity = 0.5;
    piece.stack.strips[0].bentBefore = model::BentBefore{model::Softened::soaked, 0.3};
    const Finding finding = the(findingsFor(piece), Code::dryBeforeGlue);
    EXPECT_EQ(finding.severity, Severity::note);
    EXPECT_EQ(finding.unit, "days");
    EXPECT_GT(finding.value, 1);
    EXPECT_LT(finding.value, 7);
    EXPECT_FALSE(finding.limited);
    EXPECT_TRUE(finding.text.is(texts::dryBeforeGlue));
    EXPECT_TRUE(details(finding, texts::setIsYours));
    EXPECT_TRUE(details(finding, texts::bentSoaked));
    EXPECT_FALSE(details(finding, texts::steamScalds));

    piece.glue.humidity = 0.8;
    const Finding never = the(findingsFor(piece), Code::dryBeforeGlue);
    EXPECT_EQ(never.severity, Severity::caution);
    EXPECT_EQ(never.limit, 12);
    EXPECT_GT(never.value, 15);
    EXPECT_TRUE(never.text.is(texts::neverDry));
}

TEST(Findings, SteamedStripsThatTearHotStop) {
    model::Piece piece = made::bend(0.3, 1.5);
    piece.stack.strips[0].bentBefore = model::BentBefore{model::Softened::steamed, 0.9};
    EXPECT_EQ(countOf(findingsFor(piece), Code::stripBreaksHot), 0);
    EXPECT_TRUE(details(the(findingsFor(piece), Code::dryBeforeGlue), texts::bentHot));
    EXPECT_TRUE(details(the(findingsFor(piece), Code::dryBeforeGlue), texts::steamScalds));
    EXPECT_EQ(countOf(findingsFor(piece), Code::stripBreaks), 0);
    piece.stack.strips[0].thickness_m = 0.014;
    const Finding finding = the(findingsFor(piece), Code::stripBreaksHot);
    EXPECT_EQ(finding.severity, Severity::stop);
    EXPECT_GT(finding.value, finding.limit);
    EXPECT_TRUE(details(finding, texts::steelStrap));
}

TEST(Findings, ABentStackIsRopedAStraightOneIsNot) {
    const Finding finding = the(findingsFor(made::bend(0.7, 1.5)), Code::storedBend);
    EXPECT_EQ(finding.unit, "J");
    EXPECT_TRUE(details(finding, texts::localRules));
    // 10 kg lifted so far take that energy.
    ASSERT_TRUE(finding.text.is(texts::storedBend));
    EXPECT_NEAR(10 * 9.80665 * finding.text.args[1].value, finding.value, 1e-9);
    EXPECT_EQ(countOf(findingsFor(made::pieceOn(made::straight(2), 5)), Code::storedBend), 0);
}

TEST(Findings, AReverseIsTellingAndWaveringIsNot) {
    const auto reverse = [](double s) { return std::sin(2 * pi * s / 2); };
    const Finding finding = the(findingsFor(made::pieceOn(made::lineOf(reverse, 2), 15)), Code::lineReverses);
    EXPECT_EQ(finding.severity, Severity::note);
    ASSERT_TRUE(finding.at_m.has_value());
    EXPECT_NEAR(*finding.at_m, 1.0, 0.02);
    EXPECT_TRUE(finding.text.is(texts::reversesToRound)) << english(finding);
    EXPECT_EQ(countOf(findingsFor(made::stem()), Code::lineReverses), 0);
    EXPECT_EQ(countOf(findingsFor(made::pieceOn(made::straight(2), 9)), Code::lineReverses), 0);
}

// Half waves of 200 mm whose bends stand 0.16 mm off their chords (D: amplitude times (0.4 m)^2 / (16 pi)), then 3.2
// mm; the offsets are read to 1.6 mm.
TEST(Findings, WaveringWithinTheReadingIsNoReverse) {
    model::Piece piece = gentle();
    piece.line.readTo_m = units::sixteenth_m;
    const auto reversesAt = [&](double amplitude) {
        LinePlan line;
        line.fair.line = made::lineOf([&](double s) { return amplitude * std::sin(2 * pi * s / 0.4); }, 1.2);
        line.samples = line::sample(line.fair.line, 0.01);
        return countOf(lineFindings(piece, line), Code::lineReverses);
    };
    EXPECT_EQ(reversesAt(0.05), 0);
    EXPECT_EQ(reversesAt(1.0), 5);
}

TEST(Findings, AMissAtTheCeilingNamesItsPoint) {
    LinePlan line;
    const model::Piece piece = gentle();
    line.fair.line = made::arc(-3.0, 0.6);
    for (int i = 0; i < 15; ++i) line.fair.points.push_back({0.1 * i, 0});
    line.fair.points[4].misfit_m = -0.001;
    const std::vector<Finding> findings = lineFindings(piece, line);
    const Finding finding = the(findings, Code::missAtCeiling);
    EXPECT_EQ(finding.point, 4);
    EXPECT_NEAR(finding.value, 1.0, 1e-9);
    EXPECT_NE(english(finding).find("P 5"), std::string::npos);
    line.fair.points[4].misfit_m = 0.0005;
    EXPECT_TRUE(lineFindings(piece, line).empty());
    line.fair.settled = false;
    line.fair.outcome = "too many turns";
    const Finding notSettled = the(lineFindings(piece, line), Code::lineNotSettled);
    EXPECT_EQ(notSettled.severity, Severity::caution);
    EXPECT_NE(english(notSettled).find("How the fit ended: too many turns."), std::string::npos);
}

TEST(Findings, AMisreadOffsetIsToldWithItsRepair) {
    LinePlan line;
    const model::Piece piece = gentle();
    line.fair.line = made::arc(-3.0, 0.6);
    line.fair.points.own().resize(15);
    line::Suspect suspect{.point = 2,
                          .away_m = 0.0254,
                          .scatter_m = 0.0004,
                          .axis = 'y',
                          .slip = "1 inch high",
                          .tryWritten = {"", "2-3-4"}};
    line.misread.suspects.push_back(suspect);
    line.misread.repeated.push_back({{1, 2, 3}, 'x', -0.00635, "one thickness too much"});
    const std::vector<Finding> findings = lineFindings(piece, line);
    const Finding misread = the(findings, Code::offsetMisread);
    EXPECT_EQ(misread.point, 2);
    EXPECT_NEAR(misread.value, 25.4, 1e-9);
    EXPECT_EQ(textOf(misread, inMillimetres),
              "P 3 looks misread: 25.4 mm off fair. Probably 1 inch high: try y 2-3-4.");
    const Finding alike = the(findings, Code::offsetsShareASlip);
    EXPECT_EQ(english(alike),
              "P 2, P 3 and P 4 look misread alike. Take 6.35 mm off each x. Likely slip: one thickness too much.");
}

TEST(Findings, AnUncertainTightestBendIsToldAtAnEndOnly) {
    LinePlan line;
    const model::Piece piece = gentle();
    line.fair.line = made::arc(-0.4, 0.6);  // 0.24 m long
    for (int i = 0; i < 13; ++i) line.fair.points.push_back({0.02 * i, 0});
    line.tightest = line.fair.line.at(0.005);  // before the second point
    const auto withBand = [&](double share) {
        const double curvature = std::abs(line.tightest.curvature_per_m);
        line.radiusFrom_m = 1 / (curvature * (1 + share));
        line.radiusTo_m = share < 1 ? 1 / (curvature * (1 - share)) : std::numeric_limits<double>::infinity();
        return lineFindings(piece, line);
    };
    const Finding caution = the(withBand(0.3), Code::tightestBendUncertain);
    EXPECT_EQ(caution.severity, Severity::caution);
    EXPECT_NEAR(caution.value, 30, 1e-6);
    EXPECT_NEAR(caution.limit, 10, 1e-9);
    EXPECT_EQ(caution.unit, "pct");
    ASSERT_TRUE(caution.text.is(texts::tightestBendUncertain));
    EXPECT_NEAR(caution.text.args[1].value, 0.3, 1e-8);
    EXPECT_NE(english(caution).find("19 times of 20"), std::string::npos) << english(caution);
    EXPECT_EQ(the(withBand(0.2), Code::tightestBendUncertain).severity, Severity::note);
    EXPECT_NE(english(the(withBand(1.2), Code::tightestBendUncertain)).find(" or more"), std::string::npos);
    EXPECT_EQ(countOf(withBand(0.08), Code::tightestBendUncertain), 0);
    line.tightest = line.fair.line.at(0.12);  // in the middle
    EXPECT_EQ(countOf(withBand(0.3), Code::tightestBendUncertain), 0);
    line.tightest = line.fair.line.at(0.235);  // after the last but one
    EXPECT_EQ(countOf(withBand(0.3), Code::tightestBendUncertain), 1);
    line.fair.settled = false;  // its band says nothing
    EXPECT_EQ(countOf(withBand(0.3), Code::tightestBendUncertain), 0);
}

TEST(Findings, StationsOffTheStripsAndOverlappingPadsCaution) {
    model::Piece piece = gentle();
    const auto clampAt = [](double at) { return model::Station{.at_m = at, .pad_m = 0.04}; };
    piece.holding.stations = {clampAt(-0.08), clampAt(0.4), clampAt(1.93)};
    EXPECT_EQ(countOf(findingsFor(piece), Code::stationOffTheStrips), 0);
    EXPECT_EQ(countOf(findingsFor(piece), Code::padsOverlap), 0);
    piece.holding.stations.push_back(clampAt(-0.09));
    piece.holding.stations.push_back(clampAt(1.95));
    const std::vector<Finding> findings = findingsFor(piece);
    EXPECT_EQ(countOf(findings, Code::stationOffTheStrips), 2);
    EXPECT_EQ(countOf(findings, Code::padsOverlap), 2);
}

TEST(Findings, AStrapBearsFromEndToEndAndOverlapsNoPad) {
    model::Piece piece = gentle();
    model::Station strap;
    strap.kind = model::HoldKind::strap;
    strap.at_m = 0.2;
    strap.strap.to_m = 1.0;
    piece.holding.stations = {strap, model::Station{.at_m = 0.2}};
    EXPECT_EQ(countOf(findingsFor(piece), Code::padsOverlap), 0);
    EXPECT_EQ(countOf(findingsFor(piece), Code::stationOffTheStrips), 0);
    piece.holding.stations[0].strap.to_m = 9.0;
    EXPECT_EQ(countOf(findingsFor(piece), Code::stationOffTheStrips), 1);
}

// What holds for every finding, over pieces that raise many of them in each notation.
TEST(Findings, EachIsAFullSentenceWithItsSourceAndTheWorstComesFirst) {
    std::vector<model::Piece> pieces{made::stem(), made::bend(0.4, 1.5), made::bend(0.06, 1.5), gentle()};
    pieces[1].stack.strips[0].thickness_m = 0.010;
    pieces[1].stack.pins = {model::Pin{0.1}, model::Pin{0.5}};
    pieces[2].line.stripsOn = model::Side::right;
    pieces[2].stack.strips[0].count = 20;
    pieces[3].stack.strips[0].bentBefore = model::BentBefore{model::Softened::boiled, 0.2};
    pieces[3].stack.moisture = 0.3;
    for (const auto notation : {units::LengthNotation::feetInchesEighths, units::LengthNotation::inches,
                                units::LengthNotation::millimetres}) {
        Shop shop = made::shop();
        shop.display.lengths = notation;
        for (const model::Piece& piece : pieces) {
            const Plan plan = makePlan(piece, shop);
            EXPECT_FALSE(plan.findings.empty());
            for (std::size_t i = 0; i < plan.findings.size(); ++i) {
                const Finding& finding = plan.findings[i];
                EXPECT_TRUE(std::isupper(static_cast<unsigned char>(english(finding).front()))) << english(finding);
                EXPECT_EQ(english(finding).back(), '.') << english(finding);
                EXPECT_EQ(english(finding).find("nan"), std::string::npos) << english(finding);
                EXPECT_EQ(english(finding).find("inf"), std::string::npos) << english(finding);
                EXPECT_FALSE(finding.source.text.empty()) << codeWord(finding.code);
                EXPECT_TRUE(std::isfinite(finding.value) && std::isfinite(finding.limit)) << codeWord(finding.code);
                if (i > 0) {
                    EXPECT_LE(plan.findings[i - 1].severity, finding.severity);
                }
            }
        }
    }
}

}  // namespace findings_test
}  // namespace fayline::plan
