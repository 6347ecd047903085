#include "core/holding/pressing.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "tests/core/holding/held_by_hand.hpp"

namespace fayline::holding {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

TEST(Pressing, ThinningUnderASteadyPressureTakesTheTimeItsSpeedAddsUpTo) {
    const double viscosity = 5;
    const double width = 0.06;
    const double pressure = 20000;
    // The film's own speed under that pressure, stepped from one film to the other (midpoint rule).
    double film = 0.0005;
    double time = 0;
    const double step = 1e-3;
    const auto speed = [&](double h) { return pressure / pressureToThin(viscosity, width, h, 1.0); };
    while (film > 0.0002) {
        film -= step * speed(film - step / 2 * speed(film));
        time += step;
    }
    EXPECT_NEAR(timeToThin(viscosity, width, 0.0005, film, pressure), time, 1e-4 * time);
    EXPECT_NEAR(timeToThin(viscosity, width, 0.0005, 0.0002, pressure) /
                    timeToThin(viscosity, width, 0.0005, 0.0002, 2 * pressure),
                2, 1e-12);
}

TEST(Pressing, WhatCannotBeIsInfiniteAndWhatNeedsNothingIsNothing) {
    EXPECT_EQ(pressureForFilm(0, 0.05, 0.0002), 0);
    EXPECT_EQ(pressureForFilm(100, 0.05, 0), infinite);
    EXPECT_EQ(pressureForFilm(0, 0.05, 0), 0);
    EXPECT_EQ(filmUnderPressure(0, 0.05, 1e4), 0);
    EXPECT_EQ(filmUnderPressure(100, 0.05, 0), infinite);
    EXPECT_EQ(pressureToThin(2, 0.05, 0.0002, 0), 0);
    EXPECT_EQ(pressureToThin(2, 0.05, 0, 1e-6), infinite);
    EXPECT_EQ(timeToThin(2, 0.05, 0.0002, 0.0003, 1e4), 0);
    EXPECT_EQ(timeToThin(2, 0.05, 0.0003, 0, 1e4), infinite);
    EXPECT_EQ(timeToThin(2, 0.05, 0.0003, 0.0002, 0), infinite);
    EXPECT_EQ(spreadLength(0.04, 0), 0.04);
    EXPECT_NEAR(spreadLength(0.04, 0.02), 0.08, 1e-15);
}

TEST(Pressing, ACaulAndSacrificialStripsSpreadThePadFurther) {
    made::Workpiece made(0.8);
    const auto need = [&] { return pressingNeed(made.piece, made.line, 0.6, 0.04, 2500); };
    // 100 Pa x 50 mm over twice 0.15 mm, on 50 mm.
    made.piece.stack.glueLine_m = 0.00015;
    EXPECT_NEAR(need().pressure_Pa, 100 * 0.05 / 0.0003, 1e-6);
    EXPECT_NEAR(need().pull_N_m, 100 * 0.05 / 0.0003 * 0.05, 1e-6);
    EXPECT_NEAR(need().above_m, 0.006, 1e-12);
    EXPECT_NEAR(need().spacing_m, 0.052, 1e-12);
    EXPECT_TRUE(need().bySpread);
    made.piece.holding.cauls.thickness_m = 0.02;
    EXPECT_NEAR(need().spread_m, 0.092, 1e-12);
    made.piece.stack.strips.push_back(boat::Strips{.count = 2, .thickness_m = 0.005, .sacrificial = true});
    EXPECT_NEAR(need().above_m, 0.006 + 0.010 + 2 * 0.00015 + 0.02, 1e-12);
    // A wide caul no longer helps a weak clamp.
    made.piece.holding.cauls.thickness_m = 5;
    EXPECT_FALSE(need().bySpread);
    EXPECT_NEAR(need().spacing_m, 2500 / need().pull_N_m, 1e-9);
}

TEST(Pressing, WhereTheOuterStripsHaveEndedTheNextOneIsTheOutermost) {
    made::Workpiece made(0.8);
    made.piece.stack.strips = {boat::Strips{.count = 4, .thickness_m = 0.010},
                               boat::Strips{.count = 1, .thickness_m = 0.004}};
    made.piece.stack.scarfedEnd = boat::Scarf{10};
    made.piece.stack.runsPastEnd_m = 0;
    const auto above = [&](double at) { return pressingNeed(made.piece, made.line, at, 0.04, 2500).above_m; };
    EXPECT_NEAR(above(0.5), 0.004, 1e-12);
    EXPECT_NEAR(above(made.line.length() - 0.35), 0.010, 1e-12);
}

TEST(Pressing, ThinGlueAsksNothingAndAGlueThatWantsPressureAsksForIt) {
    made::Workpiece made(0.8);
    made.piece.stack.glueLine_m = 0.00015;
    made.piece.glue.pasteYield_Pa = 0;
    PressingNeed need = pressingNeed(made.piece, made.line, 0.6, 0.04, 2500);
    EXPECT_EQ(need.pull_N_m, 0);
    EXPECT_EQ(need.spacing_m, infinite);
    need = pressingNeed(made.piece, made.line, 0.6, 0.04, 2500,
                        wantedPressure(boat::AdhesiveKind::resorcinol, true).least_Pa);
    EXPECT_TRUE(need.byGlue);
    EXPECT_NEAR(need.pull_N_m, 150 * 6894.757 * 0.05, 0.1);
    EXPECT_NEAR(need.spacing_m, 2500 / need.pull_N_m, 1e-9);
    made.piece.glue.pasteYield_Pa = 100;
    made.piece.stack.glueLine_m = 0;
    EXPECT_EQ(pressingNeed(made.piece, made.line, 0.6, 0.04, 2500).pull_N_m, 0);
}

TEST(Pressing, OnRandomPiecesTheSpacingIsTheLesserOfTheTwo) {
    std::mt19937 generator(11);
    const auto between = [&](double low, double high) {
        return low + (high - low) * (static_cast<double>(generator()) / 4294967296.0);
    };
    for (int i = 0; i < 500; ++i) {
        made::Workpiece made(i % 2 ? 0.8 : -0.8);
        made.piece.stack.widths = {boat::Width{0, between(0.005, 0.3)}, boat::Width{1, between(0.005, 0.3)}};
        made.piece.stack.glueLine_m = i % 5 ? between(0, 0.001) : 0;
        made.piece.glue.pasteYield_Pa = i % 7 ? between(0, 800) : 0;
        made.piece.stack.strips = {
            boat::Strips{.count = 1 + i % 4, .thickness_m = between(0.001, 0.02), .sacrificial = i % 11 == 0}};
        const double pad = between(0, 0.2);
        const double most = i % 13 ? between(0, 9000) : 0;
        const PressingNeed need = pressingNeed(made.piece, made.line, between(-0.2, 1.4), pad, most);
        ASSERT_TRUE(std::isfinite(need.pressure_Pa) && std::isfinite(need.spread_m));
        EXPECT_GE(need.above_m, 0);
        if (need.pull_N_m == 0) {
            EXPECT_EQ(need.spacing_m, infinite);
            continue;
        }
        EXPECT_EQ(need.spacing_m, std::min(need.spread_m, most / need.pull_N_m));
        EXPECT_EQ(need.bySpread, need.spread_m <= most / need.pull_N_m);
    }
}

}  // namespace
}  // namespace fayline::holding
