#include "core/plan/study/choices.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <nlohmann/json.hpp>

#include "core/export/print.hpp"
#include "core/plan/study/choices_naming.hpp"
#include "tests/core/plan/made_pieces.hpp"
#include "tests/core/plan/studied.hpp"

namespace fayline::plan {
namespace choices_test {

using made::choicesOf;

using Json = nlohmann::ordered_json;

const std::atomic<bool> goOn = false;

const Choice& asItIs(const Choices& choices) {
    return *std::ranges::find_if(choices.all, [](const Choice& c) { return c.asItIs; });
}

const Plan& deepPlan(const model::Piece& piece) {
    return made::studied(piece, {Study::choices});
}

bool finite(const Choice& c) {
    for (const double value :
         {c.thickness_m, c.depth_m, c.overDepth_m, c.strain, c.strainShare, c.shareOnForm, c.chanceOfBreaking,
          c.springbackRatio, c.endPull_N, c.glue_kg, c.woodLost, c.margin_s.value_or(0)}) {
        if (!std::isfinite(value)) return false;
    }
    return true;
}

TEST(ChoicesFor, TwiceOnOnePieceGivesTheSameBits) {
    model::Piece piece = made::stem();
    piece.holding.stations = {model::Station{.at_m = 0.1}, model::Station{.at_m = 1.7}};
    const Shop shop = made::shop();
    const Choices one = *choicesFor(piece, shop, makePlan(piece, shop), goOn);
    const Choices other = *choicesFor(piece, shop, makePlan(piece, shop), goOn);
    ASSERT_EQ(one.all.size(), other.all.size());
    EXPECT_EQ(one.namedIndex, other.namedIndex);
    for (std::size_t i = 0; i < one.all.size(); ++i) {
        EXPECT_EQ(std::memcmp(&one.all[i].endPull_N, &other.all[i].endPull_N, sizeof(double)), 0);
        EXPECT_EQ(std::memcmp(&one.all[i].strain, &other.all[i].strain, sizeof(double)), 0);
        EXPECT_EQ(one.all[i].named, other.all[i].named);
    }
}

TEST(ChoicesFor, StoppedGivesNothing) {
    const model::Piece piece = made::stem();
    const std::atomic<bool> stop = true;
    EXPECT_FALSE(choicesFor(piece, made::shop(), makePlan(piece, made::shop()), stop));
}

// Common practice, no source: quarter-inch white oak strips go round a small workboat's stem cold and dry.
TEST(ChoicesFor, NamesTheQuarterInchForTheStem) {
    const Choices& choices = choicesOf(made::stem());
    ASSERT_GE(choices.namedIndex, 0);
    const Choice& named = choices.all[choices.namedIndex];
    EXPECT_NEAR(named.thickness_m, 0.00635, 0.0004);
    EXPECT_LE(named.shareOnForm, surestShare);
    EXPECT_TRUE(named.paretoOptimal);
    EXPECT_FALSE(named.mixed);
    EXPECT_FALSE(named.named.empty());
}

TEST(ChoicesFor, TheImpossibleStayInTheListAndAreNeverUnbeaten) {
    int impossible = 0;
    for (const Choice& choice : choicesOf(made::stem()).all) {
        EXPECT_EQ(choice.possible, choice.whyNot.empty());
        if (choice.possible) continue;
        ++impossible;
        EXPECT_FALSE(choice.paretoOptimal);
        EXPECT_TRUE(choice.named.empty());
    }
    EXPECT_GT(impossible, 0);
}

TEST(ChoicesFor, WhereEveryStripBreaksNoneIsNamed) {
    const Choices& choices = choicesOf(made::bend(0.08, 1.0));
    EXPECT_EQ(choices.namedIndex, -1);
    for (const Choice& choice : choices.all) {
        EXPECT_FALSE(choice.possible);
        EXPECT_TRUE(finite(choice));
    }
}

TEST(Adopt, KeepsEverythingButStripsAndGluings) {
    model::Piece piece = made::stem();
    piece.stack.gluings = {4};
    piece.stack.scarfedStart = model::Scarf{};
    piece.stack.pins = {{.at_m = -0.06}};
    for (const Choice& choice : choicesOf(piece).all) {
        model::Stack adopted = adopt(piece.stack, choice);
        EXPECT_EQ(adopted.strips, choice.strips);
        EXPECT_EQ(adopted.gluings, choice.gluings);
        adopted.strips = piece.stack.strips;
        adopted.gluings = piece.stack.gluings;
        EXPECT_EQ(adopted, piece.stack);
    }
}

TEST(Adopt, OfTheStackAsItIsChangesNothing) {
    model::Piece piece = made::stem();
    piece.stack.gluings = {4};
    EXPECT_EQ(adopt(piece.stack, asItIs(choicesOf(piece))), piece.stack);
}

// Boards 20 mm thick and 40 mm wide: no strip 57 mm wide comes of them, whichever way.
TEST(ChoicesFor, BoardsTooSmallForAnyStripAreAFindingThatSaysWhatWouldDo) {
    model::Piece piece = made::stem();
    piece.stock.boards = {model::Board{.width_m = 0.04, .thickness_m = 0.02}};
    const Plan& plan = deepPlan(piece);
    ASSERT_EQ(plan.choices->all.size(), 1u);
    EXPECT_FALSE(plan.choices->all[0].possible);
    const Finding finding = foundIn(plan, Code::stockTooSmall);
    EXPECT_EQ(aboutOf(finding.code), About::stock);
    EXPECT_NEAR(finding.value, 57, 1e-9);
    EXPECT_NE(english(finding).find("white oak"), std::string::npos) << english(finding);
    EXPECT_NE(english(finding).find("57 mm"), std::string::npos) << english(finding);
    EXPECT_NE(english(finding).find("3 mm thick"), std::string::npos) << english(finding);  // 1.5 mm, twice 0.5 planed
    EXPECT_FALSE(findingOf(plan, Code::stripsNotFromStock));

    // What it says would do does.
    piece.stock.boards[0].thickness_m = 0.057;
    EXPECT_FALSE(findingOf(deepPlan(piece), Code::stockTooSmall));
    piece.stock.boards[0].width_m = 0.057;
    piece.stock.boards[0].thickness_m = 0.003;
    EXPECT_FALSE(findingOf(deepPlan(piece), Code::stockTooSmall));
}

// A board 6 mm thick gives strips of 5 mm off its face, none of a quarter of an inch.
TEST(ChoicesFor, StripsThickerThanAnyBoardGivesAreNotAmongThem) {
    model::Piece piece = made::stem();
    piece.stock.boards = {model::Board{.width_m = 0.2, .thickness_m = 0.006}};
    const Plan& plan = deepPlan(piece);
    EXPECT_GT(plan.choices->all.size(), 5u);
    for (const Choice& choice : plan.choices->all) {
        if (choice.asItIs) {
            EXPECT_FALSE(choice.possible);
        } else {
            EXPECT_LE(choice.thickness_m, 0.005 + 1e-9);
        }
    }
    EXPECT_TRUE(findingOf(plan, Code::stripsNotFromStock));
    // Boards of another wood say nothing about this one.
    piece.stock.boards[0].species = "ash_white";
    EXPECT_FALSE(findingOf(deepPlan(piece), Code::stripsNotFromStock));
}

// Ends, with numbers: a rail 30 m long, one strip, a straight line, glued in place, a hollow bend, a softened stack.
TEST(ChoicesFor, OddPiecesEndWithFiniteCounts) {
    std::vector<model::Piece> pieces{made::bend(200, 0.15), made::bend(2, 0.8), made::stem(), made::stem(),
                                     made::stem()};
    pieces[1].stack.strips[0] = {.count = 1, .thickness_m = 0.02};
    pieces[2].form.kind = model::FormKind::inPlace;
    pieces[3].line.stripsOn = model::Side::right;
    pieces[4].stack.strips[0].bentBefore = model::BentBefore{model::Softened::steamed, 1.0, {}};
    for (const model::Piece& piece : pieces) {
        const Choices& choices = choicesOf(piece);
        EXPECT_FALSE(choices.all.empty());
        for (const Choice& choice : choices.all) EXPECT_TRUE(finite(choice));
    }
}

// On a hollow bend the outside is the tight side.
TEST(ChoicesFor, ThinStripsOfAHollowBendLieOutside) {
    model::Piece piece = made::bend(2, 0.8);
    piece.line.stripsOn = model::Side::right;
    int mixed = 0;
    for (const Choice& choice : choicesOf(piece).all) {
        if (!choice.mixed) continue;
        ++mixed;
        EXPECT_GT(choice.strips.front().thickness_m, choice.strips.back().thickness_m);
    }
    EXPECT_GT(mixed, 5);
}

TEST(ChoicesFor, ArePrintedWithTheKeysThatScriptsRelyOn) {
    const Json choices = Json::parse(made::printed(made::boatOf({made::stem()})))["pieces"][0]["choices"];
    ASSERT_GT(choices.size(), 12u);
    int named = 0;
    for (const Json& choice : choices) {
        for (const char* key :
             {"thickness_mm", "count", "strain_pct", "chance_of_breaking_pct", "spares", "springback_ratio",
              "end_pull_N", "glue_g", "margin_min", "wood_lost_pct", "unbeaten", "named"}) {
            EXPECT_TRUE(choice.contains(key)) << key;
        }
        named += choice["named"].is_null() ? 0 : 1;
    }
    EXPECT_EQ(named, 1);
}

}  // namespace choices_test
}  // namespace fayline::plan
