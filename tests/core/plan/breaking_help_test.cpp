#include "core/plan/study/breaking_help.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/plan/findings/stack_texts.hpp"
#include "core/plan/study/choices_naming.hpp"
#include "tests/core/plan/made_pieces.hpp"

namespace fayline::plan {
namespace breaking_help_test {

model::Piece tooThick() {
    model::Piece piece = made::bend(0.5, 1.2, {.count = 3, .thickness_m = 0.0127});
    return piece;
}

const laminate::Strip& worstOf(const Plan& plan) {
    return *std::ranges::max_element(plan.stack.strips, [](const auto& a, const auto& b) {
        return a.strain / a.breakingStrain < b.strain / b.breakingStrain;
    });
}

double usedBy(const model::Piece& piece) {
    const Plan plan = makePlan(piece, made::shop());
    return worstOf(plan).strain / worstOf(plan).breakingStrain;
}

// What is advised, done, keeps to the share; a step thicker does not. Strips nearer to the form bend a little tighter,
// by half the difference of thickness over the radius: 0.5 %.
TEST(BreakingHelp, ThinnerStripsAsAdvisedGoRound) {
    model::Piece piece = tooThick();
    ASSERT_GT(usedBy(piece), 1);
    const Plan plan = makePlan(piece, made::shop());
    const BreakingHelp help = breakingHelp(piece, made::shop(), worstOf(plan));
    ASSERT_GT(help.thickness_m, 0);
    piece.stack.strips[0].thickness_m = help.thickness_m;
    EXPECT_LE(usedBy(piece), surestShare * 1.006);
    piece.stack.strips[0].thickness_m = help.thickness_m + 0.0005;
    EXPECT_GT(usedBy(piece), surestShare);
}

TEST(BreakingHelp, AnotherWoodAndSteamingGoRoundAsAdvised) {
    model::Piece piece = tooThick();
    piece.stack.strips[0].species = "oak_red_n";
    piece.stack.strips[0].thickness_m = 0.008;
    const Shop shop = made::shop();
    const Plan plan = makePlan(piece, shop);
    const BreakingHelp help = breakingHelp(piece, shop, worstOf(plan));
    for (const std::string& id : help.species) {
        model::Piece other = piece;
        other.stack.strips[0].species = id;
        EXPECT_LE(usedBy(other), surestShare + 1e-9) << id;
    }
    ASSERT_TRUE(help.hot);
    model::Piece steamed = piece;
    steamed.stack.strips[0].bentBefore = model::BentBefore{model::Softened::steamed, help.leastSet};
    EXPECT_NEAR(usedBy(steamed), surestShare, 1e-6);
}

TEST(BreakingHelp, TheFindingSaysIt) {
    const Plan plan = makePlan(tooThick(), made::shop());
    const auto found = std::ranges::find(plan.findings, Code::stripBreaks, &Finding::code);
    ASSERT_NE(found, plan.findings.end());
    ASSERT_GE(found->details.size(), 3U);
    EXPECT_TRUE(found->details[1].is(texts::thinnerGo));
    EXPECT_TRUE(found->details.back().is(texts::soakingNotKnown));
}

TEST(BreakingHelp, NothingThatHelpsIsSaidToo) {
    model::Piece piece = made::bend(0.03, 1.2, {.count = 2, .thickness_m = 0.006});
    const Plan plan = makePlan(piece, made::shop());
    const BreakingHelp help = breakingHelp(piece, made::shop(), worstOf(plan));
    EXPECT_EQ(help.thickness_m, 0);
    EXPECT_FALSE(help.hot);
    EXPECT_TRUE(breakingHelpTexts(help, made::shop()).back().is(texts::tooTightForStrips));
    EXPECT_TRUE(breakingAdvice(help, made::shop()).is(texts::easeBend));
}

}  // namespace breaking_help_test
}  // namespace fayline::plan
