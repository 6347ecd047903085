#include <gtest/gtest.h>

#include <algorithm>

#include "core/stock/stock.hpp"
#include "tests/core/stock/checker.hpp"

namespace fayline::stock {
namespace cures_test {

const std::atomic<bool> never{false};

// Strips 7 mm as sawn from a board of eight lanes: (width + 2) / 9.
Job lanesOf(int lanes, int strips) {
    Job job;
    job.rules.kerf_m = 0.002;
    job.rules.sawing = Sawing::ripped;
    for (int place = 1; place <= strips; ++place)
        job.strips.push_back({.piece = "stem",
                              .place = place,
                              .species = "oak",
                              .length_m = 2,
                              .width_m = 0.03,
                              .thickness_m = 0.006,
                              .outer = place == strips});
    job.boards.push_back({.name = "A",
                          .species = "oak",
                          .length_m = 2.4,
                          .width_m = lanes * 0.009 - 0.002,
                          .thickness_m = 0.032,
                          .price = 40});
    return job;
}

const Cure* of(const std::vector<Cure>& cures, CureKind kind) {
    const auto cure = std::find_if(cures.begin(), cures.end(), [&](const Cure& one) { return one.kind == kind; });
    return cure == cures.end() ? nullptr : &*cure;
}

void areSound(const std::vector<Cure>& found, const CutPlan& plan) {
    for (const Cure& cure : found) {
        EXPECT_LT(cure.plan.missing.size(), plan.missing.size());
        for (const std::string& wrong : wrongIn(cure.job, cure.plan)) ADD_FAILURE() << wrong;
    }
    for (std::size_t i = 1; i < found.size(); ++i)
        EXPECT_LE(found[i - 1].plan.missing.size(), found[i].plan.missing.size());
}

TEST(Cures, AreNotLookedForWhereNothingIsMissing) {
    const Job job = lanesOf(8, 8);
    const CutPlan plan = bestCutPlan(job, {}, never);
    EXPECT_TRUE(plan.missing.empty());
    EXPECT_TRUE(cures(job, plan, {}, never).empty());
}

// Nine strips from eight lanes: 70 mm are nine strips of 6 mm as sawn (5 and planing) and eight saw cuts of 2 mm.
TEST(Cures, MakeStripsThinnerByTheLeastThatHelps) {
    const Job job = lanesOf(8, 9);
    const CutPlan plan = bestCutPlan(job, {}, never);
    ASSERT_EQ(plan.missing.size(), 1u);
    EXPECT_TRUE(plan.proven);
    EXPECT_EQ(plan.fewestMissing, 1);
    const std::vector<Cure> found = cures(job, plan, {}, never);
    areSound(found, plan);
    const Cure* thinner = of(found, CureKind::thinnerStrips);
    ASSERT_TRUE(thinner);
    EXPECT_NEAR(thinner->value_m, 0.005, 1e-9);  // (70 + 2) / 9 - 2 - 1 of planing
    EXPECT_TRUE(thinner->plan.missing.empty());
    const Cure* board = of(found, CureKind::anotherBoard);
    ASSERT_TRUE(board);
    EXPECT_EQ(board->count, 1);
    EXPECT_NEAR(board->extra, 2.4 * 0.07 * 0.032, 1e-12);
    // What has to be bought comes after what has not.
    EXPECT_LT(thinner - found.data(), board - found.data());
}

// Two bands of 30 mm do not lie in 60 mm of width with the saw cut between them, of 29 mm they do. Each gives
// (32 + 2) / 9 = 3 lanes.
TEST(Cures, MakeThePieceNarrower) {
    Job job = lanesOf(8, 6);
    job.rules.sawing = Sawing::resawn;
    job.boards[0].width_m = 0.06;
    const CutPlan plan = bestCutPlan(job, {}, never);
    ASSERT_EQ(plan.missing.size(), 3u);
    const std::vector<Cure> found = cures(job, plan, {}, never);
    areSound(found, plan);
    const Cure* narrower = of(found, CureKind::narrowerPiece);
    ASSERT_TRUE(narrower);
    EXPECT_NEAR(narrower->value_m, 0.029, 1e-9);
    // Ripped the other way the board gives (60 + 2) / 9 = 6.
    ASSERT_FALSE(found.empty());
    EXPECT_EQ(found.front().kind, CureKind::otherSawing);
    EXPECT_TRUE(found.front().plan.missing.empty());
}

// Of 15.5 mm come one lane of 7 mm or two of (15.5 + 2) / 2 - 2 = 6.75 mm: four strips of 6 mm do not go into three
// bands, five of 4.8 mm do, and are as deep.
TEST(Cures, TakeMoreStripsThatAreThinner) {
    Job job = lanesOf(8, 4);
    job.rules.sawing = Sawing::resawn;
    job.boards[0].width_m = 0.094;
    job.boards[0].thickness_m = 0.0155;
    const CutPlan plan = bestCutPlan(job, {}, never);
    ASSERT_EQ(plan.missing.size(), 1u);
    const std::vector<Cure> found = cures(job, plan, {}, never);
    areSound(found, plan);
    const Cure* more = of(found, CureKind::moreThinner);
    ASSERT_TRUE(more);
    EXPECT_EQ(more->count, 5);
    EXPECT_NEAR(more->value_m, 0.0048, 1e-9);
    EXPECT_EQ(more->plan.cuts.size(), 5u);
}

// A lane of 2.4 m and one of 1.3 m: a strip of 2.3 m comes whole of the first, the second strip only of scarfed parts,
// which the rule of the fewest scarfs does not let it be.
TEST(Cures, ScarfOnceMoreThanTheFewest) {
    Job job = lanesOf(1, 2);
    for (Strip& strip : job.strips) strip.length_m = 2.3;
    job.boards.push_back(job.boards[0]);
    job.boards[1].length_m = 1.3;
    job.boards[1].count = 2;
    const CutPlan plan = bestCutPlan(job, {}, never);
    ASSERT_EQ(plan.missing.size(), 1u);
    const std::vector<Cure> found = cures(job, plan, {}, never);
    areSound(found, plan);
    const Cure* scarf = of(found, CureKind::anotherScarf);
    ASSERT_TRUE(scarf);
    EXPECT_TRUE(scarf->plan.missing.empty());
    EXPECT_EQ(scarf->plan.scarfs.size(), 1u);
}

TEST(Cures, BuyABoardSoLongThatStripsComeWhole) {
    Job job = lanesOf(2, 2);
    for (Strip& strip : job.strips) {
        strip.length_m = 3.05;
        strip.tightest = Stretch{0.2, 2.85};
    }
    job.rules.leastPart_m = 1;
    job.boards[0].length_m = 0.9;
    const CutPlan plan = bestCutPlan(job, {}, never);
    ASSERT_EQ(plan.missing.size(), 2u);
    EXPECT_EQ(plan.troubles.at(0).kind, TroubleKind::lanesTooShort);
    const std::vector<Cure> found = cures(job, plan, {}, never);
    areSound(found, plan);
    const Cure* longer = of(found, CureKind::longerBoard);
    ASSERT_TRUE(longer);
    EXPECT_NEAR(longer->value_m, 3.1, 1e-9);
    EXPECT_EQ(longer->count, 1);
}

TEST(Cures, StopAtOnce) {
    const std::atomic<bool> stop{true};
    const Job job = lanesOf(8, 9);
    EXPECT_TRUE(cures(job, bestCutPlan(job, {}, stop), {}, stop).empty());
}

}  // namespace cures_test
}  // namespace fayline::stock
