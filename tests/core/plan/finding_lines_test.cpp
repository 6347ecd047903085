// The one line that each finding of line, stack, wood, breaking and stock says: short, whole, and with all put in.
#include <gtest/gtest.h>

#include <cctype>
#include <set>

#include "core/plan/findings/findings.hpp"
#include "tests/core/plan/studied.hpp"

namespace fayline::plan {
namespace finding_lines_test {

constexpr std::size_t longestLine = 160;

units::Display inchShop() {
    return {.lengths = units::LengthNotation::feetInchesEighths,
            .forces = units::ForceUnit::poundForce,
            .weights = units::WeightUnit::ounce};
}

bool hasMark(const std::string& text) {
    for (std::size_t i = text.find('%'); i != std::string::npos; i = text.find('%', i + 1)) {
        if (i + 1 < text.size() && (text[i + 1] == 'n' || std::isdigit(static_cast<unsigned char>(text[i + 1])))) {
            return true;
        }
    }
    return false;
}

void expectSentence(const std::string& text) {
    ASSERT_FALSE(text.empty());
    EXPECT_TRUE(std::isupper(static_cast<unsigned char>(text.front()))) << text;
    EXPECT_TRUE(text.ends_with('.') || text.ends_with("*)")) << text;
    EXPECT_FALSE(hasMark(text)) << text;
}

// Those of the codes up to the stock's; which have been seen is put into `seen`.
void expectLines(const std::vector<Finding>& findings, std::set<Code>& seen) {
    for (const Finding& finding : findings) {
        if (finding.code > Code::stripsNotFromStock) continue;
        seen.insert(finding.code);
        for (const units::Display& display : {inMillimetres, inchShop()}) {
            const std::string line = textOf(finding, display);
            SCOPED_TRACE(codeWord(finding.code));
            expectSentence(line);
            EXPECT_LE(line.size(), longestLine) << line;
            for (const Message& detail : finding.details) expectSentence(writeText(detail, display));
        }
    }
}

model::Piece breaking() {
    model::Piece piece = made::bend(0.4, 1.5, {.count = 8, .thickness_m = 0.010});
    piece.stack.pins = {model::Pin{0.1}, model::Pin{0.5}};
    piece.stack.runsPastEnd_m = 0;
    piece.stack.scarfedStart = model::Scarf{.slope = 5};
    piece.stack.grainSlope = 0.25;
    piece.stack.moisture = 0.3;
    return piece;
}

// Pieces of one boat whose woods were tried, are not known, or carry a warning.
std::vector<model::Piece> oddPieces() {
    std::vector<model::Piece> pieces{
        made::stem(),         breaking(),           made::bend(0.06, 1.5),   made::bend(0.3, 1.5),
        made::bend(0.3, 1.5), made::bend(0.9, 1.0), made::bend(0.5, 6.0, 40)};
    pieces[2].line.stripsOn = model::Side::right;
    pieces[2].stack.strips[0].count = 20;
    pieces[3].stack.strips[0].bentBefore = model::BentBefore{model::Softened::steamed, 0.9};
    pieces[3].stack.strips[0].thickness_m = 0.014;
    pieces[4].stack.strips[0].bentBefore = model::BentBefore{model::Softened::soaked, 0.3};
    pieces[4].stack.strips[0].species = "larch_eu";
    pieces[4].glue.humidity = 0.8;
    pieces[5].stack.strips[0].count = 2;
    pieces[5].stack.strips.push_back({.count = 1, .thickness_m = 0.01, .species = "driftwood"});
    pieces[6].stack.runsPastEnd_m = 0.4;
    pieces.push_back(made::pieceOn(made::lineOf([](double s) { return std::sin(3 * s); }, 2), 15));
    return pieces;
}

model::Boat oddBoat() {
    model::Boat boat = made::boatOf(oddPieces());
    model::OwnSpecies own;
    own.id = own.name = "driftwood";
    boat.species.push_back(own);
    model::Trial trial{.species = "oak_white"};
    trial.span_m = 0.6;
    trial.width_m = 0.05;
    trial.thickness_m = 0.006;
    trial.weight_kg = 1;
    trial.sag_m = 0.003;
    trial.readTo_m = 0.00005;
    boat.trials.assign(8, trial);
    trial.broke = true;
    trial.weight_kg = 8;
    trial.sag_m = 0.030;
    boat.trials.insert(boat.trials.end(), 10, trial);
    trial.sag_m = 0;
    boat.trials.push_back(trial);
    return boat;
}

// A line whose points are at fault in every way that there is.
LinePlan lineAtFault(const model::Piece& piece) {
    LinePlan line;
    line.of = piece.line;
    line.fair.line = made::arc(-0.4, 0.6);
    for (int i = 0; i < 15; ++i) line.fair.points.push_back({0.016 * i, 0});
    std::swap(line.fair.points[8], line.fair.points[9]);
    line.fair.points[4].misfit_m = 0.001;
    line.tightest = line.fair.line.at(0.005);
    line.radiusFrom_m = 0.3;
    line.radiusTo_m = 0.5;
    line::Suspect suspect{
        .point = 2, .away_m = 0.0254, .slip = "two figures swapped", .tryWritten = {"1-11-7+", "2-3-4"}};
    line.misread.suspects = {suspect, {.point = 5, .away_m = 0.01}};
    line.misread.repeated = {{{1, 2, 3}, 'x', -0.00635, "one thickness high"}, {{1, 2, 3, 4, 5, 6}, 'y', 0.01, ""}};
    return line;
}

TEST(FindingLines, AreShortWholeSentences) {
    std::set<Code> seen;
    const model::Boat boat = oddBoat();
    for (const model::Piece& piece : boat.pieces) expectLines(makePlan(piece, shopOf(boat)).findings, seen);

    model::Piece piece = made::pieceOn(made::arc(-0.4, 0.6), 15);
    LinePlan line = lineAtFault(piece);
    expectLines(lineFindings(piece, line), seen);
    line.fair.settled = false;
    line.fair.outcome = "stopped after 40 rounds";
    expectLines(lineFindings(piece, line), seen);
    line.misread = {};
    expectLines(lineFindings(piece, line), seen);

    expectLines(made::studied(made::sparesWanted(), {Study::breaking, Study::choices}).findings, seen);
    model::Piece noBoard = made::stem();
    noBoard.stock.boards = {model::Board{.width_m = 0.04, .thickness_m = 0.02}};
    expectLines(made::studied(noBoard, {Study::choices}).findings, seen);
    noBoard.stock.boards = {model::Board{.width_m = 0.2, .thickness_m = 0.006}};
    expectLines(made::studied(noBoard, {Study::choices}).findings, seen);

    for (int code = 0; code <= static_cast<int>(Code::stripsNotFromStock); ++code) {
        EXPECT_TRUE(seen.contains(static_cast<Code>(code))) << codeWord(static_cast<Code>(code));
    }
}

}  // namespace finding_lines_test
}  // namespace fayline::plan
