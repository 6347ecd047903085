#include "core/plan/study/choices_naming.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "core/plan/findings/choice_texts.hpp"
#include "tests/core/plan/made_pieces.hpp"

namespace fayline::plan {
namespace choices_naming_test {

// A few steps only for each count, so that choices often beat each other and are often equal.
std::vector<Choice> randomChoices(std::mt19937& random, int count) {
    std::uniform_int_distribution<int> few(1, 3);
    std::bernoulli_distribution seldom(0.2);
    std::vector<Choice> all;
    for (int i = 0; i < count; ++i) {
        Choice one{.count = few(random),
                   .shareOnForm = 0.1 * few(random),
                   .chanceOfBreaking = 0.1 * few(random),
                   .spares = few(random),
                   .springbackRatio = 0.01 * few(random),
                   .endPull_N = 100.0 * few(random),
                   .glue_kg = 0.1 * few(random),
                   .margin_s = 600.0 * few(random),
                   .woodLost = 0.1 * few(random)};
        one.thickness_m = i;  // tells them apart, counts for nothing
        one.possible = !seldom(random);
        all.push_back(one);
    }
    return all;
}

// By the definition, on the counts themselves.
bool dominates(const Choice& a, const Choice& b, bool letsGo) {
    const bool noWorse = a.shareOnForm <= b.shareOnForm && a.chanceOfBreaking <= b.chanceOfBreaking &&
                         a.spares <= b.spares && (!letsGo || a.springbackRatio <= b.springbackRatio) &&
                         a.endPull_N <= b.endPull_N && a.glue_kg <= b.glue_kg && *a.margin_s >= *b.margin_s &&
                         a.woodLost <= b.woodLost && a.count <= b.count;
    const bool better = a.shareOnForm < b.shareOnForm || a.chanceOfBreaking < b.chanceOfBreaking ||
                        a.spares < b.spares || (letsGo && a.springbackRatio < b.springbackRatio) ||
                        a.endPull_N < b.endPull_N || a.glue_kg < b.glue_kg || *a.margin_s > *b.margin_s ||
                        a.woodLost < b.woodLost || a.count < b.count;
    return noWorse && better;
}

TEST(Unbeaten, AreThoseThatNoPossibleOneDominatesInTwoThousandRandomSets) {
    std::mt19937 random(11);
    int beaten = 0;
    for (int set = 0; set < 2000; ++set) {
        const bool letsGo = set % 2 == 0;
        std::vector<Choice> all = randomChoices(random, 1 + set % 40);
        markParetoOptimal(all, letsGo);
        for (const Choice& one : all) {
            const bool dominated = std::ranges::any_of(
                all, [&](const Choice& other) { return other.possible && dominates(other, one, letsGo); });
            ASSERT_EQ(one.paretoOptimal, one.possible && !dominated);
            // What is beaten is beaten by one that is not.
            if (!one.possible || !dominated) continue;
            ++beaten;
            ASSERT_TRUE(std::ranges::any_of(
                all, [&](const Choice& other) { return other.paretoOptimal && dominates(other, one, letsGo); }));
        }
    }
    EXPECT_GT(beaten, 1000);
}

TEST(Unbeaten, DoNotDependOnTheOrder) {
    std::mt19937 random(12);
    for (int set = 0; set < 200; ++set) {
        std::vector<Choice> all = randomChoices(random, 30);
        std::vector<Choice> shuffled = all;
        std::ranges::shuffle(shuffled, random);
        markParetoOptimal(all, true);
        markParetoOptimal(shuffled, true);
        for (const Choice& one : shuffled) {
            ASSERT_EQ(one.paretoOptimal, all[static_cast<std::size_t>(one.thickness_m)].paretoOptimal);
        }
    }
}

TEST(Unbeaten, TwoThatAreEqualBothStay) {
    Choice one{.count = 5, .margin_s = 60};
    std::vector<Choice> all{one, one};
    markParetoOptimal(all, true);
    EXPECT_TRUE(all[0].paretoOptimal);
    EXPECT_TRUE(all[1].paretoOptimal);
}

// What cannot be told from another does not beat it: a tenth of a gram, a hundredth of a newton.
TEST(Unbeaten, RoundingBeatsNobody) {
    Choice one{.endPull_N = 400, .glue_kg = 0.5000};
    Choice other = one;
    other.glue_kg = 0.50004;
    other.endPull_N = 400.01;
    std::vector<Choice> all{one, other};
    markParetoOptimal(all, true);
    EXPECT_TRUE(all[1].paretoOptimal);
}

struct Named {
    std::vector<Choice> all;
    int index = -1;
};

// Choices of a let-go piece with clamps of 2,500 N.
Named nameAmong(std::vector<Choice> all) {
    model::Piece piece = made::stem();
    piece.holding.stations.push_back(model::Station{.at_m = 1, .most_N = 2500});
    const Shop shop = made::shop();
    Plan plan;
    plan.form.letsGo = true;
    for (std::size_t i = 0; i < all.size(); ++i) {
        all[i].strips = {model::Strips{.count = all[i].count}};
        all[i].paretoOptimal = all[i].possible;
    }
    const int index = nameOne(all, piece, shop, plan);
    return {all, index};
}

Choice choice(int count, double share, int spares, double springback, double pull_N, bool mixed = false) {
    return {.mixed = mixed,
            .count = count,
            .shareOnForm = share,
            .spares = spares,
            .springbackRatio = springback,
            .endPull_N = pull_N};
}

std::vector<Message> sentences(const Choice& named) {
    return named.named.args.at(0).messages;
}

TEST(Named, IsTheOneWithTheFewestStripsThatMeetsAllFour) {
    const Named named = nameAmong({choice(12, 0.3, 0, 0.01, 300), choice(8, 0.5, 0, 0.02, 900),
                                   choice(7, 0.69, 1, 0.02, 900),    // strained too much
                                   choice(6, 0.6, 2, 0.03, 900),     // two spares
                                   choice(5, 0.6, 1, 0.051, 900),    // gives back too much
                                   choice(4, 0.6, 1, 0.04, 2600)});  // too hard to draw down
    ASSERT_EQ(named.index, 1);
    const std::string why = writeText(named.all[1].named, {});
    EXPECT_EQ(why.find("Eight strips of"), 0u) << why;
    EXPECT_NE(
        why.find("the fewest with bend 50 % of breaking (at most 68 %), no spares (at most one), springback 2 % (at "
                 "most 5 %) and end pull 900 N (at most 2500 N)."),
        std::string::npos)
        << why;
    for (std::size_t i = 0; i < named.all.size(); ++i) EXPECT_EQ(named.all[i].named.empty(), i != 1);
}

TEST(Named, GoesBeforeAMixedOneOfFewerStrips) {
    EXPECT_EQ(nameAmong({choice(6, 0.5, 0, 0.02, 900, true), choice(9, 0.5, 0, 0.02, 900)}).index, 1);
    EXPECT_EQ(nameAmong({choice(6, 0.5, 0, 0.02, 900, true), choice(9, 0.8, 2, 0.02, 900)}).index, 0);
}

TEST(Named, DropsTheLastConditionsFirstAndSaysSo) {
    const Named weak = nameAmong({choice(12, 0.3, 0, 0.01, 9000), choice(8, 0.5, 0, 0.02, 9000)});
    ASSERT_EQ(weak.index, 1);
    EXPECT_TRUE(sentences(weak.all[1]).back().is(texts::noneEasyToPull));
    const Named springy = nameAmong({choice(3, 0.3, 0, 0.11, 900), choice(2, 0.5, 0, 0.25, 900)});
    ASSERT_EQ(springy.index, 1);
    EXPECT_TRUE(sentences(springy.all[1]).back().is(texts::noneSpringsSoLittle));
    const Named strained = nameAmong({choice(12, 0.9, 3, 0.01, 300), choice(8, 0.95, 3, 0.02, 900)});
    ASSERT_EQ(strained.index, 0);
    EXPECT_TRUE(sentences(strained.all[0]).front().is(texts::leastBent));
    EXPECT_EQ(sentences(strained.all[0]).front().args[1].value, 0.9);
}

TEST(Named, IsNoneWhereNoneIsPossible) {
    Choice broken = choice(3, 1.2, -1, 0.1, 9000);
    broken.possible = false;
    EXPECT_EQ(nameAmong({broken}).index, -1);
    EXPECT_EQ(nameAmong({}).index, -1);
}

}  // namespace choices_naming_test
}  // namespace fayline::plan
