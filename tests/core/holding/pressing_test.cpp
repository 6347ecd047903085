#include "core/holding/pressing.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "tests/core/holding/held_by_hand.hpp"

namespace fayline::holding {
namespace pressing_test {

constexpr double infinite = std::numeric_limits<double>::infinity();

TEST(Pressing, WhatCannotBeIsInfiniteAndWhatNeedsNothingIsNothing) {
    EXPECT_EQ(pressureForFilm(0, 0.05, 0.0002), 0);
    EXPECT_EQ(pressureForFilm(100, 0.05, 0), infinite);
    EXPECT_EQ(pressureForFilm(0, 0.05, 0), 0);
    EXPECT_EQ(spreadLength(0.04, 0), 0.04);
    EXPECT_NEAR(spreadLength(0.04, 0.02), 0.08, 1e-15);
}

// Eight strips of 6 mm, 50 mm wide: 100 Pa x 50 mm over twice 0.15 mm, on 50 mm, is 833 N/m.
TEST(Pressing, ACaulAndSacrificialStripsReachFurther) {
    made::Workpiece made(0.8);
    const auto need = [&] { return pressingNeed(made.work(), 0.6, 0.04, 2500); };
    made.piece.stack.glueLine_m = 0.00015;
    EXPECT_NEAR(need().pressure_Pa, 100 * 0.05 / 0.0003, 1e-6);
    const double push = 100 * 0.05 / 0.0003 * 0.05;
    EXPECT_NEAR(need().pad.push_N_m, push, 1e-6);
    EXPECT_NEAR(need().pad.above_m(), 0.006, 1e-12);
    EXPECT_NEAR(need().pad.spread_m(), 0.052, 1e-12);
    EXPECT_EQ(need().by, SpacedBy::stiffness);
    const double one = need().pad.stiffness_N_m2();
    EXPECT_NEAR(need().spacing_m, std::pow(384 * one * 0.00015 / push, 0.25), 1e-12);
    // A caul of the same wood twice as thick is eight times as stiff.
    made.piece.holding.cauls.thickness_m = 0.012;
    EXPECT_NEAR(need().pad.stiffness_N_m2(), 9 * one, 1e-9 * one);
    EXPECT_NEAR(need().pad.spread_m(), 0.076, 1e-12);
    made.piece.stack.strips.push_back(model::Strips{.count = 2, .thickness_m = 0.006, .sacrificial = true});
    EXPECT_NEAR(need().pad.above_m(), 0.006 + 0.012 + 2 * 0.00015 + 0.012, 1e-12);
    EXPECT_NEAR(need().pad.stiffness_N_m2(), 11 * one, 1e-9 * one);
    // A thick caul no longer helps a weak clamp.
    made.piece.holding.cauls.thickness_m = 5;
    EXPECT_EQ(need().by, SpacedBy::strength);
    EXPECT_NEAR(need().spacing_m, 2500 / push, 1e-9);
}

TEST(Pressing, WhatTheGlueLineMayVaryByIsItsOwnThicknessUnlessGiven) {
    made::Workpiece made(0.8);
    made.piece.stack.glueLine_m = 0.00015;
    const auto need = [&] { return pressingNeed(made.work(), 0.6, 0.04, 1e6); };
    const double own = need().spacing_m;
    made.piece.holding.glueLineVaries_m = 16 * 0.00015;
    EXPECT_NEAR(need().spacing_m, 2 * own, 1e-12);
    // Nothing at all: only what lies below a pad.
    made.piece.holding.glueLineVaries_m = 0;
    EXPECT_EQ(need().by, SpacedBy::spread);
    EXPECT_NEAR(need().spacing_m, 0.04 + 2 * 0.006, 1e-12);
}

TEST(Pressing, WhereTheOuterStripsHaveEndedTheNextOneIsTheOutermost) {
    made::Workpiece made(0.8);
    made.piece.stack.strips = {model::Strips{.count = 4, .thickness_m = 0.010},
                               model::Strips{.count = 1, .thickness_m = 0.004}};
    made.piece.stack.scarfedEnd = model::Scarf{10};
    made.piece.stack.runsPastEnd_m = 0;
    const auto above = [&](double at) { return pressingNeed(made.work(), at, 0.04, 2500).pad.above_m(); };
    EXPECT_NEAR(above(0.5), 0.004, 1e-12);
    EXPECT_NEAR(above(made.line.length() - 0.35), 0.010, 1e-12);
}

TEST(Pressing, ThinGlueAsksNothingAndAGlueThatWantsPressureAsksForIt) {
    made::Workpiece made(0.8);
    made.piece.stack.glueLine_m = 0.00015;
    made.piece.glue.pasteYield_Pa = 0;
    StackOnForm work = made.work();
    PressingNeed need = pressingNeed(work, 0.6, 0.04, 2500);
    EXPECT_EQ(need.pad.push_N_m, 0);
    EXPECT_EQ(need.spacing_m, infinite);
    EXPECT_FALSE(need.isWish);
    work.wanted = wantedPressure(model::AdhesiveKind::resorcinol, true);
    need = pressingNeed(work, 0.6, 0.04, 2500);
    EXPECT_TRUE(need.byGlue);
    EXPECT_FALSE(need.isWish);
    EXPECT_NEAR(need.pad.push_N_m, 150 * 6894.757 * 0.05, 0.1);
    EXPECT_NEAR(need.spacing_m, 2500 / need.pad.push_N_m, 1e-9);
    EXPECT_EQ(need.thinnerSpacing_m, need.spacing_m);  // no mix is thinner than that asks for
    work.wanted = wantedPressure(model::AdhesiveKind::epoxy, true);
    EXPECT_TRUE(pressingNeed(work, 0.6, 0.04, 2500).isWish);
    EXPECT_EQ(pressingNeed(work, 0.6, 0.04, 2500).pad.push_N_m, 0);
    made.piece.glue.pasteYield_Pa = 100;
    made.piece.stack.glueLine_m = 0;
    EXPECT_EQ(pressingNeed(work, 0.6, 0.04, 2500).pad.push_N_m, 0);
}

TEST(Pressing, OnRandomPiecesTheSpacingIsWhatStiffnessSpreadAndStrengthAllow) {
    std::mt19937 generator(11);
    const auto between = [&](double low, double high) {
        return low + (high - low) * (static_cast<double>(generator()) / 4294967296.0);
    };
    int by[3] = {0, 0, 0};
    for (int i = 0; i < 500; ++i) {
        made::Workpiece made(i % 2 ? 0.8 : -0.8);
        made.piece.stack.widths = {model::Width{0, between(0.005, 0.3)}, model::Width{1, between(0.005, 0.3)}};
        made.piece.stack.glueLine_m = i % 5 ? between(0, 0.001) : 0;
        if (i % 3 == 0) made.piece.holding.glueLineVaries_m = i % 2 ? between(0, 0.0005) : 0;
        made.piece.glue.pasteYield_Pa = i % 7 ? between(0, 800) : 0;
        made.piece.stack.strips = {
            model::Strips{.count = 1 + i % 4, .thickness_m = between(0.001, 0.02), .sacrificial = i % 11 == 0}};
        const double pad = between(0, 0.2);
        const double most = i % 13 ? between(0, 9000) : 0;
        const PressingNeed need = pressingNeed(made.work(), between(-0.2, 1.4), pad, most);
        ASSERT_TRUE(std::isfinite(need.pressure_Pa) && std::isfinite(need.pad.spread_m()));
        EXPECT_GE(need.pad.above_m(), 0);
        if (need.pad.push_N_m == 0) {
            EXPECT_EQ(need.spacing_m, infinite);
            continue;
        }
        const double strength = most / need.pad.push_N_m;
        const double reach = std::max(need.pad.span_m(), need.pad.spread_m());
        EXPECT_EQ(need.spacing_m, std::min(reach, strength));
        EXPECT_EQ(need.by == SpacedBy::strength, strength < reach);
        EXPECT_LE(need.spacing_m, need.thinnerSpacing_m);
        ++by[static_cast<int>(need.by)];
    }
    EXPECT_GT(std::min({by[0], by[1], by[2]}), 10);
}

}  // namespace pressing_test
}  // namespace fayline::holding
