// Which board gives which strip: what is asked of core/stock, what is left of boards, what is said.
#include "core/plan/study/stock_study.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/plan/findings/cures.hpp"
#include "core/plan/study/stock_job.hpp"
#include "tests/core/plan/studied.hpp"

namespace fayline::plan {
namespace stock_study_test {

const std::atomic<bool> goOn = false;

model::Board board(std::string name, double length_m, double width_m, double thickness_m, int count = 1) {
    return {
        .name = std::move(name), .length_m = length_m, .width_m = width_m, .thickness_m = thickness_m, .count = count};
}

// Six strips of 6 mm, 50 mm wide when glued, about 1.5 m long as cut.
model::Piece sixStrips() {
    model::Piece piece = made::bend(0.9, 1.2, {.count = 6, .thickness_m = 0.006});
    piece.stack.widths = {{.at_m = 0, .width_m = 0.050}};
    piece.stock.spares = 1;
    return piece;
}

const Plan& planOf(const model::Piece& piece) {
    return made::studied(piece, {Study::stock});
}

const StockStudy& studyOf(const model::Piece& piece) {
    return *planOf(piece).stock;
}

StockJob jobOf(const model::Piece& piece) {
    const model::Boat boat = made::boatOf({piece});
    return *stockJobFor(piece, shopOf(boat), planOf(piece), false, goOn);
}

// Nothing lies upon anything else or in a bad stretch, a saw cut lies between any two, and all is on the board.
void expectSound(const StockStudy& study, double kerf_m) {
    constexpr double hair_m = 1e-6;
    for (const BoardCuts& on : study.boards) {
        for (std::size_t i = 0; i < on.parts.size(); ++i) {
            const SawnPart& a = on.parts[i];
            EXPECT_GE(a.from_m, -hair_m);
            EXPECT_LE(a.from_m + a.length_m, on.board.length_m + hair_m);
            EXPECT_LE(a.acrossTo_m, on.board.width_m + hair_m);
            EXPECT_LE(a.deepTo_m, on.board.thickness_m + hair_m);
            for (std::size_t k = 0; k < i; ++k) {
                const SawnPart& b = on.parts[k];
                const bool apartAlong = a.from_m >= b.from_m + b.length_m + kerf_m - hair_m ||
                                        b.from_m >= a.from_m + a.length_m + kerf_m - hair_m;
                const bool apartAcross = a.acrossFrom_m >= b.acrossTo_m + kerf_m - hair_m ||
                                         b.acrossFrom_m >= a.acrossTo_m + kerf_m - hair_m;
                const bool apartDeep =
                    a.deepFrom_m >= b.deepTo_m + kerf_m - hair_m || b.deepFrom_m >= a.deepTo_m + kerf_m - hair_m;
                EXPECT_TRUE(apartAlong || apartAcross || apartDeep) << on.name << " " << a.place << " " << b.place;
            }
        }
    }
}

std::vector<int> placesCut(const StockStudy& study) {
    std::vector<int> places;
    for (const BoardCuts& on : study.boards)
        for (const SawnPart& part : on.parts)
            if (part.part == 1 && !part.lost) places.push_back(part.place);
    std::ranges::sort(places);
    return places;
}

// What is said about boards is one line of at most 160 characters, in every unit.
void expectShortLines(const Plan& plan) {
    units::Display feet;
    feet.lengths = units::LengthNotation::feetInchesEighths;
    for (const Finding& finding : plan.findings) {
        if (aboutOf(finding.code) != About::stock) continue;
        for (const units::Display& display : {inMillimetres, feet}) {
            const std::string line = textOf(finding, display);
            EXPECT_LE(line.size(), 160u) << line;
            EXPECT_EQ(line.find('%' + std::string("1")), std::string::npos) << line;
        }
    }
    const Answer& answer = plan.answers[static_cast<std::size_t>(Question::stock)];
    EXPECT_LE(writeText(answer.sentence, feet).size(), 90u) << writeText(answer.sentence, feet);
}

TEST(StockStudy, WithoutBoardsItSaysHowManyStripsAreNeededAndNoMore) {
    const Plan& plan = planOf(sixStrips());
    EXPECT_FALSE(plan.stock->anyBoards);
    EXPECT_EQ(plan.stock->stripsNeeded, 7);
    EXPECT_EQ(plan.stock->spares, 1);
    const Answer& answer = plan.answers[static_cast<std::size_t>(Question::stock)];
    EXPECT_EQ(writeText(answer.figures, inMillimetres), "No boards given");
    EXPECT_FALSE(answer.worst);
    EXPECT_EQ(levelOf(foundIn(plan, Code::boardsMissing)), Level::fact);
}

TEST(StockStudy, AsksForEveryStripAsItIsRippedAndCut) {
    model::Piece piece = sixStrips();
    piece.stock.boards = {board("A", 2.4, 0.15, 0.060)};
    const StockJob job = jobOf(piece);
    const Plan& plan = planOf(piece);
    ASSERT_EQ(job.job.strips.size(), 7u);
    for (std::size_t i = 0; i < 6; ++i) {
        const stock::Strip& strip = job.job.strips[i];
        EXPECT_EQ(strip.place, static_cast<int>(i) + 1);
        EXPECT_DOUBLE_EQ(strip.length_m, plan.stack.strips[i].cutLength_m);
        EXPECT_DOUBLE_EQ(strip.width_m, 0.050 + 2 * piece.stack.ripAllowance_m);
        EXPECT_DOUBLE_EQ(strip.thickness_m, 0.006);
        EXPECT_EQ(strip.outer, i == 5);
        // What runs past the trim lines is taken off at both ends.
        ASSERT_EQ(strip.takenOff.size(), 2u);
        EXPECT_NEAR(strip.takenOff[0].to_m, piece.stack.runsPastStart_m, 0.02);
        EXPECT_NEAR(strip.length_m - strip.takenOff[1].from_m, piece.stack.runsPastEnd_m, 0.02);
        // The tightest third is a third of what is left.
        ASSERT_TRUE(strip.tightest);
        const double kept_m = strip.takenOff[1].from_m - strip.takenOff[0].to_m;
        EXPECT_NEAR(strip.tightest->to_m - strip.tightest->from_m, kept_m / 3, 0.02);
    }
    EXPECT_TRUE(job.job.strips[6].spare);
    EXPECT_EQ(job.job.strips[6].place, 7);
}

TEST(StockStudy, BoardsThatSufficeGiveEveryStripOnce) {
    model::Piece piece = sixStrips();
    piece.stock.boards = {board("A", 2.4, 0.15, 0.060, 2)};
    const StockStudy& study = studyOf(piece);
    EXPECT_TRUE(study.missing.empty());
    EXPECT_EQ(placesCut(study), (std::vector{1, 2, 3, 4, 5, 6, 7}));
    expectSound(study, piece.stock.kerf_m);
    EXPECT_EQ(study.boards.size(), 2u);  // used or not
    EXPECT_EQ(study.boardsUsed, 1);
    EXPECT_NEAR(study.volume_m3, 2.4 * 0.15 * 0.060, 1e-12);
    // 7.87 x 5.91 x 2.36 in: 144 cubic inches are a board foot (facts 13, D).
    EXPECT_NEAR(study.boardFeet, (2400 / 25.4) * (150 / 25.4) * (60 / 25.4) / 144, 1e-9);
    EXPECT_GT(study.waste, 0);
    EXPECT_LT(study.waste, 1);
    // Both ways of sawing are shown: the one that is taken, and the other is no better.
    const bool ofFace = std::ranges::any_of(study.boards, &BoardCuts::ofFace);
    ASSERT_TRUE(ofFace ? study.faceWaste : study.edgeWaste);
    EXPECT_NEAR(*(ofFace ? study.faceWaste : study.edgeWaste), study.waste, 1e-6);
    const std::optional<double> other = ofFace ? study.edgeWaste : study.faceWaste;
    EXPECT_GE(other.value_or(1), study.waste - 1e-6);
}

TEST(StockStudy, PriceGoesByTheBoardTheBoardFootOrTheCubicMetre) {
    model::Board one = board("A", 2.4, 0.15, 0.060);
    one.price = 12;
    EXPECT_DOUBLE_EQ(priceOf(one), 12);
    one.pricePer = model::PricePer::cubicMetre;
    EXPECT_DOUBLE_EQ(priceOf(one), 12 * 2.4 * 0.15 * 0.060);
    one.pricePer = model::PricePer::boardFoot;
    EXPECT_NEAR(priceOf(one), 12 * 2.4 * 0.15 * 0.060 / 2.359737e-3, 1e-4);  // facts 13
}

TEST(StockStudy, BoardsThatDoNotSufficeAreACautionWithItsCount) {
    model::Piece piece = sixStrips();
    piece.stock.boards = {board("A", 2.0, 0.030, 0.060)};  // three strips of 7 mm and two saw cuts
    const Plan& plan = planOf(piece);
    EXPECT_EQ(plan.stock->missing.size(), 4u);
    const Finding finding = foundIn(plan, Code::boardsShort);
    EXPECT_EQ(finding.severity, Severity::caution);
    EXPECT_EQ(finding.value, 3);
    EXPECT_EQ(finding.limit, 7);
    const Answer& answer = plan.answers[static_cast<std::size_t>(Question::stock)];
    EXPECT_EQ(writeText(answer.figures, inMillimetres), "4 strips short");
    EXPECT_EQ(answer.worst, Severity::caution);
    expectShortLines(plan);
}

TEST(StockStudy, WhatCanBeBoughtFillsUpWhatIsMissing) {
    model::Piece piece = sixStrips();
    piece.stock.boards = {board("A", 2.0, 0.030, 0.060)};
    piece.stock.buy = {board("Long", 3.0, 0.10, 0.060, 10)};
    piece.stock.buy[0].price = 40;
    const StockStudy& study = studyOf(piece);
    EXPECT_TRUE(study.missing.empty());
    EXPECT_EQ(study.toSpend, 40);
    EXPECT_EQ(std::ranges::count_if(study.boards, &BoardCuts::toBuy), 1);
    expectSound(study, piece.stock.kerf_m);
}

TEST(StockStudy, WhatIsCutIsNotAskedForAgainAndItsWoodIsUsed) {
    model::Piece piece = sixStrips();
    piece.stock.boards = {board("A", 2.4, 0.15, 0.060)};
    const StockStudy& before = studyOf(piece);
    for (const SawnPart& part : before.boards[0].parts) {
        piece.stock.cut.push_back({.place = part.place,
                                   .board = "A",
                                   .from_m = part.from_m,
                                   .length_m = part.length_m,
                                   .acrossFrom_m = part.acrossFrom_m,
                                   .acrossTo_m = part.acrossTo_m,
                                   .deepFrom_m = part.deepFrom_m,
                                   .deepTo_m = part.deepTo_m});
    }
    EXPECT_EQ(studyOf(piece).alreadyCut, 7);
    EXPECT_TRUE(jobOf(piece).job.strips.empty());

    // One breaks at the bench: it alone is asked for again, from what is left.
    piece.stock.cut[3].lost = true;
    const StockJob job = jobOf(piece);
    ASSERT_EQ(job.job.strips.size(), 1u);
    EXPECT_EQ(job.job.strips[0].place, piece.stock.cut[3].place);
    const StockStudy& after = studyOf(piece);
    EXPECT_EQ(after.alreadyCut, 6);
    EXPECT_TRUE(after.missing.empty());
    EXPECT_EQ(after.boards[0].parts.size(), 8u);
    expectSound(after, piece.stock.kerf_m);
}

TEST(StockStudy, WhatIsLeftOfABoardIsNeverTwiceThere) {
    const stock::Board whole{.name = "A", .length_m = 2, .width_m = 0.2, .thickness_m = 0.05};
    const std::vector<model::StripCut> cut{
        {.place = 1, .board = "A", .from_m = 0, .length_m = 1.2, .acrossTo_m = 0.007, .deepTo_m = 0.05},
        {.place = 2,
         .board = "A",
         .from_m = 0.5,
         .length_m = 1.2,
         .acrossFrom_m = 0.010,
         .acrossTo_m = 0.017,
         .deepTo_m = 0.05}};
    const std::vector<Rest> rests = restOf(whole, cut, 0.003);
    ASSERT_EQ(rests.size(), 4u);  // an end of the first lane, both ends of the second, and the plank beside them
    double area = 0;
    for (const Rest& rest : rests) area += rest.board.length_m * rest.board.width_m;
    EXPECT_NEAR(area, (0.797 + 0.497 + 0.297) * 0.007 + 2 * 0.180, 1e-4);
    EXPECT_NEAR(rests[3].board.width_m, 0.180, 1e-5);
    EXPECT_NEAR(rests[3].origin.across_m, 0.020, 1e-9);
    // Resawn from the face, the rest of the plank lies under it.
    const std::vector<Rest> under =
        restOf(whole, {{.place = 1, .board = "A", .length_m = 2, .acrossTo_m = 0.2, .deepTo_m = 0.007}}, 0.003);
    ASSERT_EQ(under.size(), 1u);
    EXPECT_NEAR(under[0].board.thickness_m, 0.040, 1e-5);
    EXPECT_NEAR(under[0].origin.deep_m, 0.010, 1e-9);
}

TEST(StockStudy, BadStretchesGoWithWhatIsLeft) {
    stock::Board whole{.name = "A", .length_m = 2, .width_m = 0.2, .thickness_m = 0.05};
    whole.bad = {{.along = {1.5, 1.6}}, {.along = {0.2, 0.3}, .across = stock::Stretch{0.1, 0.2}}};
    const std::vector<Rest> rests =
        restOf(whole, {{.place = 1, .board = "A", .length_m = 1.2, .acrossTo_m = 0.007, .deepTo_m = 0.05}}, 0.003);
    ASSERT_EQ(rests.size(), 2u);
    ASSERT_EQ(rests[0].board.bad.size(), 1u);  // the end of the lane, from 1.203 on
    EXPECT_NEAR(rests[0].board.bad[0].along.from_m, 0.297, 1e-9);
    ASSERT_EQ(rests[1].board.bad.size(), 2u);
    EXPECT_NEAR(rests[1].board.bad[1].across->from_m, 0.090, 1e-9);
}

TEST(StockStudy, MoistureTooFarFromTheRestIsACaution) {
    model::Piece piece = sixStrips();
    piece.stack.moisture = 0.10;
    piece.stack.serviceMoisture = 0.12;
    piece.stock.boards = {board("A", 2.4, 0.15, 0.060)};
    piece.stock.boards[0].moisture = 0.15;  // five points and no more
    EXPECT_FALSE(findingOf(planOf(piece), Code::boardsMoistureApart));
    piece.stock.boards[0].moisture = 0.16;
    const Finding apart = foundIn(planOf(piece), Code::boardsMoistureApart);
    EXPECT_EQ(apart.value, 16);
    EXPECT_EQ(apart.limit, 10);
    EXPECT_FALSE(findingOf(planOf(piece), Code::boardsMoistureService));
    piece.stock.boards[0].moisture = 0.18;
    EXPECT_EQ(foundIn(planOf(piece), Code::boardsMoistureService).value, 18);
    expectShortLines(planOf(piece));
}

TEST(StockStudy, ShortBoardsAreScarfedAndWhatThatAsksForIsSaid) {
    model::Piece piece = sixStrips();
    piece.stock.spares = 0;
    piece.stock.scarfSlope = 8;
    piece.stock.boards = {board("A", 1.1, 0.15, 0.060, 3)};
    const Plan& plan = planOf(piece);
    ASSERT_TRUE(plan.stock->missing.empty());
    ASSERT_EQ(plan.stock->scarfs.size(), 6u);
    expectSound(*plan.stock, piece.stock.kerf_m);
    for (const ScarfPlace& scarf : plan.stock->scarfs) EXPECT_NEAR(scarf.length_m, 8 * 0.006, 1e-9);  // slope * t (D)
    const Finding steep = foundIn(plan, Code::scarfTooSteep);
    EXPECT_EQ(steep.value, 8);
    EXPECT_EQ(steep.limit, 12);
    EXPECT_NE(english(steep).find("80 %"), std::string::npos) << english(steep);  // facts 6 (M)
    EXPECT_FALSE(findingOf(plan, Code::scarfWithoutClamp));                       // no stations are set out

    // Cut, they keep their scarfs.
    model::Piece cut = piece;
    for (int place = 1; place <= 6; ++place) {
        for (int part = 1; part <= 2; ++part) {
            for (const BoardCuts& on : plan.stock->boards) {
                for (const SawnPart& one : on.parts) {
                    if (one.place != place || one.part != part) continue;
                    cut.stock.cut.push_back({.place = place,
                                             .board = on.name,
                                             .number = on.number,
                                             .from_m = one.from_m,
                                             .length_m = one.length_m,
                                             .acrossFrom_m = one.acrossFrom_m,
                                             .acrossTo_m = one.acrossTo_m,
                                             .deepFrom_m = one.deepFrom_m,
                                             .deepTo_m = one.deepTo_m});
                }
            }
        }
    }
    const StockStudy& done = studyOf(cut);
    EXPECT_EQ(done.alreadyCut, 6);
    ASSERT_EQ(done.scarfs.size(), 6u);
    for (const ScarfPlace& scarf : plan.stock->scarfs) {
        const auto same = std::ranges::find(done.scarfs, scarf.place, &ScarfPlace::place);
        ASSERT_NE(same, done.scarfs.end());
        EXPECT_NEAR(same->at_m, scarf.at_m, 1e-6);
    }

    piece.holding.stations = {{.kind = model::HoldKind::clamp, .at_m = 0}};
    EXPECT_TRUE(findingOf(planOf(piece), Code::scarfWithoutClamp));
    expectShortLines(planOf(piece));
    piece.holding.stations.clear();
    for (const ScarfPlace& scarf : plan.stock->scarfs)
        piece.holding.stations.push_back({.kind = model::HoldKind::clamp, .at_m = scarf.at_m});
    EXPECT_FALSE(findingOf(planOf(piece), Code::scarfWithoutClamp));
}

TEST(StockStudy, AStripIsPinnedToItsBoardOrThatIsSaid) {
    model::Piece piece = sixStrips();
    piece.stock.boards = {board("A", 2.4, 0.15, 0.060), board("B", 2.4, 0.15, 0.060)};
    piece.stock.pins = {{.place = 2, .board = "B"}};
    const StockStudy& study = studyOf(piece);
    EXPECT_TRUE(std::ranges::any_of(study.boards[1].parts, [](const SawnPart& part) { return part.place == 2; }));
    EXPECT_FALSE(findingOf(planOf(piece), Code::pinNotKept));
    piece.stock.pins = {{.place = 2, .board = "gone"}};
    EXPECT_EQ(foundIn(planOf(piece), Code::pinNotKept).strip, 2);
    expectShortLines(planOf(piece));
}

TEST(StockStudy, PiecesThatListNoBoardsShareThoseOfTheBoat) {
    model::Piece one = sixStrips();
    one.id = "one";
    model::Piece other = sixStrips();
    other.id = "other";
    other.name = "Other";
    model::Boat boat = made::boatOf({one, other});
    boat.boards = {board("A", 2.4, 0.20, 0.060)};  // twenty-one strips and more
    const Shop shop = shopOf(boat);
    const std::optional<StockStudy> ofOne = stockFor(one, shop, makePlan(one, shop), goOn);
    const std::optional<StockStudy> ofOther = stockFor(other, shop, makePlan(other, shop), goOn);
    EXPECT_TRUE(ofOne->missing.empty());
    EXPECT_TRUE(ofOther->missing.empty());
    EXPECT_EQ(ofOne->boards[0].parts.size(), 14u);
    expectSound(*ofOne, one.stock.kerf_m);
    // Both see the same cut list: what is the other's for the one is its own for the other.
    ASSERT_EQ(ofOther->boards[0].parts.size(), 14u);
    for (std::size_t i = 0; i < 14; ++i) {
        EXPECT_EQ(ofOne->boards[0].parts[i].place, ofOther->boards[0].parts[i].place);
        EXPECT_EQ(ofOne->boards[0].parts[i].piece.empty(), !ofOther->boards[0].parts[i].piece.empty());
    }
}

TEST(StockStudy, WhatHelpsDoesSoWhenItIsTaken) {
    model::Piece piece = sixStrips();
    piece.stock.boards = {board("A", 2.0, 0.030, 0.060)};
    const Plan& plan = planOf(piece);
    ASSERT_FALSE(plan.stock->cures.empty());
    for (const StockCure& cure : plan.stock->cures) {
        if (!cure.piece) continue;
        SCOPED_TRACE(writeText(cure.name, inMillimetres));
        EXPECT_EQ(static_cast<int>(studyOf(*cure.piece).missing.size()), cure.stillShort);
        EXPECT_LE(writeText(cure.name, inMillimetres).size(), 40u);
    }
    // A board more comes before another piece.
    EXPECT_FALSE(plan.stock->cures.front().changesPiece);
    EXPECT_TRUE(std::ranges::is_sorted(
        plan.stock->cures, {}, [](const StockCure& cure) { return std::pair(cure.stillShort, cure.changesPiece); }));
    const std::optional<Cure> offered = cureOf(piece, plan, foundIn(plan, Code::boardsShort));
    ASSERT_TRUE(offered);
    EXPECT_TRUE(studyOf(offered->piece).missing.empty());
}

TEST(StockStudy, ThinStripsThePlanerDoesNotTakeAreANote) {
    model::Piece piece = sixStrips();
    piece.stock.boards = {board("A", 2.4, 0.15, 0.060)};
    EXPECT_FALSE(findingOf(planOf(piece), Code::planerTooThick));
    piece.stock.planerLeast_m = 0.008;
    EXPECT_EQ(foundIn(planOf(piece), Code::planerTooThick).severity, Severity::note);
    expectShortLines(planOf(piece));
}

TEST(StockStudy, WhatIsWrongWithBoardsIsSaid) {
    model::Piece piece = sixStrips();
    const auto told = [&](const model::Board& one) {
        piece.stock.boards = {board("A", 2.4, 0.15, 0.060), one};
        return writeTexts(studyOf(piece).told, inMillimetres);
    };
    model::Board bad = board("B", 2.4, 0.15, 0.060);
    EXPECT_EQ(told(bad), "");
    bad.bad = {{.from_m = 0, .to_m = 1.5}, {.from_m = 1.2, .to_m = 3}};  // they overlap and cover all
    EXPECT_NE(told(bad).find("Board B is bad from end to end"), std::string::npos) << told(bad);
    model::Board other = board("B", 2.4, 0.15, 0.060);
    other.species = "ash_white";
    EXPECT_NE(told(other).find("Board B is of a wood that no strip needs"), std::string::npos) << told(other);
    EXPECT_NE(told(board("B", 2.4, 0.004, 0.060)).find("Board B"), std::string::npos);
    EXPECT_NE(told(board("B", 0.06, 0.15, 0.060)).find("Board B"), std::string::npos);
    piece.stock.kerf_m = 0.2;
    EXPECT_NE(told(board("B", 2.4, 0.15, 0.060)).find("saw cut"), std::string::npos)
        << told(board("B", 2.4, 0.15, 0.060));
}

TEST(StockStudy, EachChoiceOfStripsKnowsWhatTheBoardsGive) {
    model::Piece piece = sixStrips();
    const auto asItIs = [](const Choices& choices) { return *std::ranges::find_if(choices.all, &Choice::asItIs); };
    EXPECT_FALSE(asItIs(made::choicesOf(piece)).stripsShort);
    piece.stock.boards = {board("A", 2.4, 0.15, 0.060)};
    EXPECT_EQ(asItIs(made::choicesOf(piece)).stripsShort, 0);
    EXPECT_NEAR(*asItIs(made::choicesOf(piece)).boards_m3, 2.4 * 0.15 * 0.060, 1e-9);
    piece.stock.boards = {board("A", 2.0, 0.030, 0.060)};
    EXPECT_EQ(asItIs(made::choicesOf(piece)).stripsShort, 4);
}

TEST(StockStudy, ThousandsOfBoardsAreNoList) {
    model::Piece piece = sixStrips();
    piece.stock.boards = {board("A", 2.4, 0.15, 0.060, 100'000)};
    const StockStudy& study = studyOf(piece);
    EXPECT_TRUE(study.missing.empty());
    EXPECT_LE(study.boards.size(), 5u);
}

TEST(StockStudy, IsStopped) {
    model::Piece piece = sixStrips();
    piece.stock.boards = {board("A", 2.4, 0.15, 0.060)};
    const std::atomic<bool> stop = true;
    const model::Boat boat = made::boatOf({piece});
    EXPECT_FALSE(stockFor(piece, shopOf(boat), makePlan(piece, shopOf(boat)), stop));
}

}  // namespace stock_study_test
}  // namespace fayline::plan
