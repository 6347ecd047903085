// Which of several answers is taken, and what ends the search.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "core/stock/stock.hpp"
#include "tests/core/stock/checker.hpp"

namespace fayline::stock {
namespace choices_test {

const std::atomic<bool> never{false};

Job stem(int strips) {
    Job job;
    for (int place = 1; place <= strips; ++place)
        job.strips.push_back({.piece = "stem",
                              .place = place,
                              .species = "oak",
                              .length_m = 2 + 0.01 * place,
                              .width_m = 0.03,
                              .thickness_m = 0.006,
                              .outer = place == strips});
    job.boards.push_back({.name = "A",
                          .species = "oak",
                          .length_m = 2.4,
                          .width_m = 0.06,
                          .thickness_m = 0.032,
                          .count = 4,
                          .price = 90});
    job.boards.push_back({.name = "B",
                          .species = "oak",
                          .length_m = 2.6,
                          .width_m = 0.15,
                          .thickness_m = 0.032,
                          .count = 1,
                          .price = 20});
    return job;
}

CutPlan checked(const Job& job) {
    CutPlan plan = bestCutPlan(job, {}, never);
    for (const std::string& wrong : wrongIn(job, plan)) ADD_FAILURE() << wrong;
    return plan;
}

// Six strips: one narrow board has (60 + 2.4) / 9.4 = 6 lanes and least wood, the wide one costs least.
TEST(StockChoices, GoByWoodOrByPrice) {
    Job job = stem(6);
    CutPlan plan = checked(job);
    ASSERT_EQ(plan.boards.size(), 1u);
    EXPECT_EQ(plan.boards[0].board, 0);
    EXPECT_TRUE(plan.proven);
    job.rules.aim = Aim::leastPrice;
    plan = checked(job);
    ASSERT_EQ(plan.boards.size(), 1u);
    EXPECT_EQ(plan.boards[0].board, 1);
    EXPECT_DOUBLE_EQ(plan.value, 20);
    EXPECT_EQ(plan.aim, Aim::leastPrice);
    for (Board& board : job.boards) board.price = 0;
    EXPECT_EQ(checked(job).aim, Aim::leastWood);
}

// Strips come in the order of their places, so that the grain runs on.
TEST(StockChoices, StripsOfOneBoardLieInTheirOrder) {
    const CutPlan plan = checked(stem(6));
    for (std::size_t i = 1; i < plan.cuts.size(); ++i) {
        EXPECT_GT(plan.cuts[i].across.from_m, plan.cuts[i - 1].across.from_m);
        EXPECT_EQ(plan.cuts[i].strip, plan.cuts[i - 1].strip + 1);
    }
}

TEST(StockChoices, APinnedStripComesFromItsBoardAndCopy) {
    Job job = stem(6);
    job.rules.pins = {{2, 0, 3}, {4, 1, {}}};
    const CutPlan plan = checked(job);
    EXPECT_TRUE(plan.missing.empty());
    for (const Cut& cut : plan.cuts) {
        if (cut.strip == 2) {
            EXPECT_EQ(cut.board, 0);
            EXPECT_EQ(cut.copy, 3);
        }
        if (cut.strip == 4) {
            EXPECT_EQ(cut.board, 1);
        }
    }
}

TEST(StockChoices, SparesAreLeftOutFirst) {
    Job job = stem(7);
    job.strips[1].spare = true;
    job.boards.pop_back();
    job.boards[0].count = 1;
    const CutPlan plan = checked(job);
    EXPECT_EQ(plan.missing, std::vector<int>{1});
    EXPECT_EQ(plan.fewestMissing, 1);
    EXPECT_TRUE(plan.proven);
}

// No lane spans the tightest third: a scarf lies there and says why. One that does is too few for two strips.
TEST(StockChoices, AScarfInTheBendSaysWhy) {
    Job job = stem(2);
    job.boards.pop_back();
    job.boards[0].length_m = 1.4;
    for (Strip& strip : job.strips) strip.tightest = Stretch{0.3, 1.7};
    const CutPlan plan = checked(job);
    ASSERT_TRUE(plan.missing.empty());
    int forced = 0;
    for (const ScarfCut& scarf : plan.scarfs) {
        if (scarf.forced != Forced::no) ++forced;
        EXPECT_NE(scarf.forced, Forced::boardsRunOut);
    }
    EXPECT_EQ(forced, 2);

    // Of the lane of 2.4 m one strip has its scarf past the bend; the other's halves of 1.6 m meet in it.
    job = stem(2);
    for (Strip& strip : job.strips) {
        strip.tightest = Stretch{0.7, 2};
        strip.length_m = 3;
        strip.outer = false;
    }
    job.boards = {
        {.name = "long", .species = "oak", .length_m = 2.4, .width_m = 0.007, .thickness_m = 0.03},
        {.name = "short", .species = "oak", .length_m = 1.6, .width_m = 0.007, .thickness_m = 0.03, .count = 3}};
    const CutPlan other = checked(job);
    ASSERT_TRUE(other.missing.empty());
    ASSERT_EQ(other.scarfs.size(), 2u);
    EXPECT_NE(other.scarfs[0].forced, other.scarfs[1].forced);
    for (const ScarfCut& scarf : other.scarfs) EXPECT_NE(scarf.forced, Forced::lanesTooShort);
}

// A knot under the stretch that is trimmed off costs nothing, and is told.
TEST(StockChoices, FaultsLieWhereTheyAreTrimmedOff) {
    Job job = stem(6);
    job.boards.pop_back();
    job.boards[0].bad = {{{0, 0.1}, {}}};
    job.boards[0].count = 1;  // six lanes
    for (Strip& strip : job.strips) strip.length_m = 2.35;
    EXPECT_FALSE(checked(job).missing.empty());
    for (Strip& strip : job.strips) strip.takenOff = {{2.24, 2.35}};
    const CutPlan plan = checked(job);
    EXPECT_TRUE(plan.missing.empty());
    for (const Cut& cut : plan.cuts) {
        EXPECT_TRUE(cut.faulty);
        EXPECT_TRUE(cut.turned);
    }
}

TEST(StockChoices, TheSameJobGivesTheSameBits) {
    Job job = stem(14);
    job.strips[3].length_m = 3.4;
    job.strips[4].length_m = 3.5;
    EXPECT_EQ(checked(job), checked(job));
}

// Each plan told is better than the one before; stopped after the first, that one comes back.
TEST(StockChoices, AStopGivesTheBestSoFar) {
    Job job = stem(14);
    std::atomic<bool> stop{false};
    int told = 0;
    CutPlan last;
    const CutPlan plan = bestCutPlan(job, {}, stop, [&](const CutPlan& better) {
        ++told;
        last = better;
        stop = true;
    });
    EXPECT_EQ(told, 1);
    EXPECT_EQ(plan.cuts, last.cuts);
    EXPECT_TRUE(wrongIn(job, plan).empty());
}

}  // namespace choices_test
}  // namespace fayline::stock
