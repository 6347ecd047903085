#include "core/plan/study/choices_counts.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>

#include "core/io/file.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/form_wording.hpp"
#include "core/plan/parts.hpp"
#include "core/plan/study/choices.hpp"
#include "tests/core/plan/made_pieces.hpp"
#include "tests/core/plan/studied.hpp"

namespace fayline::plan {
namespace choices_counts_test {

using made::choicesOf;

const std::atomic<bool> goOn = false;

model::Piece heldStem() {
    model::Piece piece = made::stem();
    for (const double at : {0.04, 0.3, 0.47, 0.62, 0.77, 1.0, 1.33, 1.76}) {
        piece.holding.stations.push_back({.at_m = at});
    }
    return piece;
}

void expectCountsOf(const Choice& choice, const Plan& plan) {
    EXPECT_EQ(choice.count, math::countOf(plan.stack.strips));
    double strain = 0;
    double share = 0;
    for (const laminate::Strip& strip : plan.stack.strips) {
        strain = std::max(strain, strip.strain);
        share = std::max(share, strip.strain / strip.breakingStrain);
        if (strip.firstStrain > 0) share = std::max(share, strip.firstStrain / strip.firstBreakingStrain);
    }
    EXPECT_DOUBLE_EQ(choice.strain, strain);
    EXPECT_DOUBLE_EQ(choice.strainShare, share);
    EXPECT_DOUBLE_EQ(choice.chanceOfBreaking, plan.stack.chanceAnyBreaks);
    EXPECT_EQ(choice.spares, plan.stack.spares);
    EXPECT_DOUBLE_EQ(choice.glue_kg, plan.day.glue.mixed_kg);
    EXPECT_DOUBLE_EQ(choice.margin_s.value_or(-1), plan.day.margin_s);
    double work_s = 0;
    for (const GluingDay& gluing : plan.day.gluings) work_s += gluing.run.closed_s;
    EXPECT_DOUBLE_EQ(choice.closed_s.value_or(0), work_s);
    double sawn_m = 0;
    double longest_m = 0;
    for (const laminate::Strip& strip : plan.stack.strips) {
        sawn_m += strip.cutLength_m;
        longest_m = std::max(longest_m, strip.cutLength_m);
    }
    EXPECT_DOUBLE_EQ(choice.stripLength_m, sawn_m + std::max(0, plan.stack.spares) * longest_m);
    EXPECT_EQ(choice.opens_m.has_value(), plan.form.letsGo);
    if (plan.form.letsGo) {
        const laminate::Opening& opening = plan.form.parts.front().uncorrected;
        const bool atStart = reportedAtStart(plan.form, plan.line.fair.line.length());
        EXPECT_DOUBLE_EQ(*choice.opens_m, atStart ? opening.start_m : opening.end_m);
    }
    const double ratio = plan.form.parts.front().ratioAtTightest;
    // On the form itself the bend is tighter, which moves rho by a share of itself (release.hpp).
    EXPECT_NEAR(choice.springbackRatio, ratio, 0.01 * ratio);
    EXPECT_NEAR(choice.shareOnForm, plan.form.mostStrained.used, 0.01 * plan.form.mostStrained.used);
}

TEST(ChoiceCounts, OfTheStackAsItIsAreThoseOfItsPlanOnEverySample) {
    int pieces = 0;
    for (const auto& entry : std::filesystem::directory_iterator(FAYLINE_SAMPLES)) {
        if (entry.path().extension() != ".fayline") continue;
        const model::Boat boat = io::loadBoat(entry.path());
        const Shop shop = shopOf(boat);
        for (const model::Piece& piece : boat.pieces) {
            const Plan plan = makePlan(piece, shop);
            const Choices choices = *choicesFor(piece, shop, plan, goOn);
            int asItIs = 0;
            for (const Choice& choice : choices.all) {
                if (!choice.asItIs) continue;
                SCOPED_TRACE(entry.path().filename().string() + " " + piece.name);
                expectCountsOf(choice, plan);
                EXPECT_NEAR(choice.overDepth_m, 0, 1e-12);
                ++asItIs;
            }
            EXPECT_EQ(asItIs, 1);
            ++pieces;
        }
    }
    EXPECT_GE(pieces, 6);
}

TEST(ChoiceCounts, AreThoseOfThePlanOnceAdopted) {
    const model::Piece piece = heldStem();
    const Shop shop = made::shop();
    const Choices& choices = choicesOf(piece);
    for (std::size_t i = 0; i < choices.all.size(); i += 6) {
        if (!choices.all[i].possible) continue;
        model::Piece adopted = piece;
        adopted.stack = adopt(piece.stack, choices.all[i]);
        SCOPED_TRACE(i);
        expectCountsOf(choices.all[i], makePlan(adopted, shop));
    }
}

// Each possible choice adopted, on a form of its own and with clamps strong enough: its own plan's pulls. What differs
// is the form, which allows for another springback.
TEST(ChoiceCounts, EndPullIsThatOfThePlanOnceAdoptedWithinTwoPercent) {
    model::Piece piece = heldStem();
    for (model::Station& station : piece.holding.stations) station.most_N = 1e5;
    const Shop shop = made::shop();
    int compared = 0;
    double worst = 0;
    for (const Choice& choice : choicesOf(piece).all) {
        if (!choice.possible) continue;
        model::Piece adopted = piece;
        adopted.stack = adopt(piece.stack, choice);
        const holding::Held held = makePlan(adopted, shop).holding.held;
        ASSERT_EQ(held.outcome, holding::Outcome::settled);
        const double pull_N = std::max(held.stations.front().pull_N, held.stations.back().pull_N);
        worst = std::max(worst, std::abs(choice.endPull_N / pull_N - 1));
        ++compared;
    }
    EXPECT_GT(compared, 25);
    EXPECT_LT(worst, 0.02);
    RecordProperty("worst_pct", std::to_string(100 * worst));
}

TEST(ChoiceCounts, EndPullIsThatOfAsStrongAClampAsNeedBe) {
    model::Piece piece = heldStem();
    const auto pullOf = [&] {
        for (const Choice& choice : choicesOf(piece).all) {
            if (choice.asItIs) return choice.endPull_N;
        }
        return 0.0;
    };
    const double strong_N = pullOf();
    EXPECT_GT(strong_N, 100);
    for (model::Station& station : piece.holding.stations) station.most_N = 50;
    EXPECT_NEAR(pullOf(), strong_N, 0.02 * strong_N);
    piece.holding.stations.back().pull_N = 5;
    EXPECT_NEAR(pullOf(), strong_N, 0.02 * strong_N);
}

// The tail rule against the contact: on an arc of 1 m radius, the last clamp at the trim line pulls what the rule says;
// the gap under it is then the limit. The tail is some 55 mm long; the small pad and the bed's crush make the rest.
TEST(ChoiceCounts, TailPullLeavesTheGapLimitUnderAStationAtTheTrimLine) {
    model::Piece piece = made::bend(1.0, 1.2, {.count = 4});
    piece.stack.runsPastEnd_m = 0.02;
    piece.form.allowsForSpringback = false;
    piece.holding.pads = model::Pads::slide;
    piece.holding.gapLimit_m = 0.0005;
    const Shop shop = made::shop();
    const Plan plan = makePlan(piece, shop);
    const line::Line& line = plan.line.fair.line;
    const double length_m = line.length();
    const double middle_m = 4 * 0.00635 / 2 + 1.5 * piece.stack.glueLine_m;
    const double pull_N = tailPull(1 / (1.0 + middle_m), piece.holding.gapLimit_m) *
                          stiffnessAt(piece, piece.stack, shop, length_m, length_m);
    piece.holding.stations = {
        {.at_m = 0.05, .most_N = 1e5}, {.at_m = 0.4, .most_N = 1e5}, {.at_m = 0.8, .most_N = 1e5}};
    piece.holding.stations.push_back({.at_m = length_m, .most_N = 1e5, .pad_m = 0.002, .pull_N = pull_N});
    const holding::Held held = holding::holdWith(workOf(piece, shop, line, plan.form), piece.holding.stations);
    ASSERT_EQ(held.outcome, holding::Outcome::settled);
    EXPECT_NEAR(held.stations.back().gap_m, piece.holding.gapLimit_m, 0.06 * piece.holding.gapLimit_m);
}

// By hand: k = 1 / m, g = 0.6 mm: a tail of sqrt(6 x 0.0006) = 60 mm; 1 / 0.06.
TEST(ChoiceCounts, TailPullByHand) {
    EXPECT_NEAR(tailPull(1, 0.0006), 16.6667, 1e-3);
    EXPECT_EQ(tailPull(0, 0.0006), 0);
    EXPECT_EQ(tailPull(-1, 0.0006), 0);
    EXPECT_EQ(tailPull(1, 0), 0);
}

TEST(ChoiceCounts, WithoutStationsThePullIsThatOfTheTail) {
    const model::Piece piece = made::bend(1.0, 1.2);
    const Shop shop = made::shop();
    for (const Choice& choice : choicesOf(piece).all) {
        if (!choice.possible) continue;
        const double stiffness = stiffnessAt(piece, adopt(piece.stack, choice), shop, 1.2, 0.6);
        EXPECT_NEAR(choice.endPull_N, tailPull(1, piece.holding.gapLimit_m) * stiffness, 0.01 * choice.endPull_N);
    }
}

// By hand: a strip of 6.35 mm takes 6.35 + 2 x 0.5 + 2.4 = 9.75 mm of board, of which 3.4 mm are lost: 34.9 %. A taper
// to half loses a quarter of the strip more: (3.4 + 1.5875) / 9.75 = 51.2 %.
TEST(ChoiceCounts, WoodLostByHand) {
    model::Piece piece = made::bend(2.0, 1.0);
    const auto lost = [&] {
        for (const Choice& choice : choicesOf(piece).all) {
            if (choice.asItIs) return choice.woodLost;
        }
        return -1.0;
    };
    EXPECT_NEAR(lost(), 3.4 / 9.75, 1e-9);
    piece.stack.strips[0].tapersTo_m = 0.00635 / 2;
    EXPECT_NEAR(lost(), (3.4 + 1.5875) / 9.75, 1e-9);
}

TEST(ChoiceCounts, ThickerStripsOfOneStackAreStrainedMorePullHarderAndTakeLessGlue) {
    const model::Piece piece = heldStem();
    const Choice* before = nullptr;
    const Choices& choices = choicesOf(piece);
    for (const Choice& choice : choices.all) {
        if (choice.mixed) break;
        if (before && choice.count < before->count) {
            EXPECT_GT(choice.strain, before->strain);
            EXPECT_GT(choice.springbackRatio, before->springbackRatio);
            EXPECT_GE(choice.chanceOfBreaking, before->chanceOfBreaking);
            EXPECT_LT(choice.glue_kg, before->glue_kg);
        }
        before = &choice;
    }
}

}  // namespace choices_counts_test
}  // namespace fayline::plan
