#include "core/holding/props/screw.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "core/units/input_error.hpp"
#include "tests/core/holding/made_props.hpp"
#include "tests/refusal.hpp"

namespace fayline::holding {
namespace screw_test {

using made::propAt;
using made::PropWork;
using units::InputError;

model::Station screwAt(double at_m) {
    model::Station station = propAt(at_m, model::HoldKind::screw);
    station.screw.diameter_m = 0.005;
    station.screw.intoBackbone_m = 0.040;
    station.screw.washer_m = 0.025;
    return station;
}

// On paper (D), white oak of G 0.68 and 1 070 psi = 7.3774 MPa across the grain, screw 5 mm, 40 mm in, 25 mm washer,
// 24 mm of strips 57 mm wide with the allowance: withdrawal 108.2477 x 0.4624 x 5 x 40 = 10 010.75 N, allowable
// 19.6501 x 0.4624 x 5 x 40 = 1 817.24 N; washer less hole pi/4 (25^2 - 5.5^2) = 467.11 mm2, 1 000 N on it 2.1408 MPa
// against 7.3774 / 2 x (25 + 9.525) / 25 = 5.0941 MPa; root 3.333, hole in hardwood 3.0 mm.
TEST(Screw, WorkedOnPaper) {
    PropWork work(0.0);
    work.piece.holding.stations = {screwAt(0.4)};
    const ScrewPlan plan = work.screws({1000}).at(0);
    EXPECT_EQ(plan.pull_N, 1000);
    EXPECT_NEAR(plan.withdrawalUltimate_N, 10010.75, 0.01);
    EXPECT_NEAR(plan.withdrawalAllowable_N, 1817.24, 0.01);
    EXPECT_FALSE(plan.lag);
    EXPECT_TRUE(plan.backboneAssumed);
    EXPECT_EQ(plan.backbone, "White oak");
    EXPECT_FALSE(plan.sizesAssumed);
    EXPECT_NEAR(plan.washerPressure_Pa / 1e6, 2.1408, 0.0001);
    EXPECT_TRUE(plan.washerKnown);
    EXPECT_NEAR(plan.washerMay_Pa / 1e6, 5.0941, 0.0005);
    EXPECT_NEAR(plan.clearanceHole_m, 0.0055, 1e-12);
    EXPECT_NEAR(plan.pilotHole_m, 0.0030, 1e-9);
    EXPECT_NEAR(plan.depth_m, 0.024, 1e-12);
    EXPECT_NEAR(plan.length_m, 0.002 + 0.024 + 0.040, 1e-12);
    EXPECT_NEAR(plan.fromEdge_m, 0.0285, 1e-12);
    EXPECT_NEAR(plan.fromEdgeNeeded_m, 0.025, 1e-12);
    EXPECT_NEAR(plan.fromEnd_m, 0.4, 1e-9);
    EXPECT_NEAR(plan.fromEndNeeded_m, 0.050, 1e-12);
    EXPECT_NEAR(plan.laterDiameter_m, 0.006, 1e-12);
}

// The core of a wood screw, two thirds of the shank (P*), of steel of property class 4.6, 400 MPa (ISO 898-1, P*):
// pi/4 x 4^2 mm2 x 400 N/mm2 = 5 026.5 N for 6 mm, 3 490.7 N for 5 mm; white oak would hold 10 kN.
TEST(Screw, TheSteelBreaksBeforeADenseWoodLetsGo) {
    EXPECT_NEAR(coreBreaks_N(0.004), 5026.5, 0.1);
    PropWork work(0.0);
    work.piece.holding.stations = {screwAt(0.4)};
    const ScrewPlan five = work.screws({1000}).at(0);
    EXPECT_NEAR(five.steelUltimate_N, 3490.7, 0.1);
    EXPECT_NEAR(five.steelAllowable_N, 1745.3, 0.1);
    EXPECT_EQ(five.ultimate_N(), five.steelUltimate_N);
    EXPECT_EQ(five.allowable_N(), five.steelAllowable_N);
    work.piece.holding.stations[0].screw.diameter_m = 0.006;
    EXPECT_NEAR(work.screws({1000}).at(0).ultimate_N(), 5026.5, 0.1);
    // A short one in soft wood draws out.
    work.piece.holding.backbone.species = "cedar_n_white";
    work.piece.holding.stations[0].screw.intoBackbone_m = 0.02;
    const ScrewPlan soft = work.screws({1000}).at(0);
    EXPECT_EQ(soft.ultimate_N(), soft.withdrawalUltimate_N);
    EXPECT_EQ(soft.allowable_N(), soft.withdrawalAllowable_N);
}

TEST(Screw, TheBackbonesWoodDecidesWhatItHoldsAndHowItIsBored) {
    PropWork work(0.0);
    work.piece.holding.stations = {screwAt(0.4)};
    const ScrewPlan oak = work.screws({1000})[0];
    work.piece.holding.backbone.species = "douglas_fir_coast";
    const ScrewPlan fir = work.screws({1000})[0];
    EXPECT_FALSE(fir.backboneAssumed);
    const double gravity = wood::findSpecies(wood::builtInSpecies(), "douglas_fir_coast")->sg.value;
    EXPECT_NEAR(fir.withdrawalAllowable_N / oak.withdrawalAllowable_N, std::pow(gravity / 0.68, 2), 1e-9);
    EXPECT_NEAR(fir.pilotHole_m / oak.pilotHole_m, 7.0 / 9, 1e-9);
    EXPECT_EQ(fir.washerMay_Pa, oak.washerMay_Pa);
    work.piece.holding.backbone.species = "douglas";
    const InputError error = made::refusal([&] { (void)work.screws({1000}); });
    EXPECT_EQ(error.path(), "holding.backbone.species");
    EXPECT_NE(error.accepted().find("douglas_fir"), std::string::npos) << error.accepted();
}

TEST(Screw, WhatIsNotGivenIsTakenAndSaid) {
    PropWork work(0.0);
    work.piece.holding.stations = {propAt(0.4, model::HoldKind::screw)};
    const ScrewPlan plan = work.screws({1000})[0];
    EXPECT_TRUE(plan.sizesAssumed);
    EXPECT_EQ(plan.diameter_m, 0.005);
    EXPECT_EQ(plan.intoBackbone_m, 0.038);
    EXPECT_EQ(plan.washer_m, 0.025);
    work.piece.holding.stations[0].screw.diameter_m = 0.020;
    const ScrewPlan thick = work.screws({1000})[0];
    EXPECT_NEAR(thick.washer_m, 0.060, 1e-12);
    EXPECT_TRUE(thick.lag);
    EXPECT_NEAR(thick.clearanceHole_m, 0.021, 1e-12);
    EXPECT_NEAR(thick.laterDiameter_m, 0.024, 1e-12);
}

TEST(Screw, AWasherThatFallsIntoItsHoleIsRefused) {
    PropWork work(0.0);
    work.piece.holding.stations = {propAt(0.2), screwAt(0.4)};
    work.piece.holding.stations[1].screw.washer_m = 0.0055;
    EXPECT_EQ(made::refusal([&] { (void)work.screws({0, 1000}); }).path(), "holding.stations[1].washer_mm");
    work.piece.holding.stations[1].screw.washer_m = 0.0056;
    EXPECT_GT(work.screws({0, 1000})[0].washerPressure_Pa, 100e6);
}

TEST(Screw, NearTheStripsEndTheWasherMayPressLess) {
    PropWork work(0.0);
    work.piece.stack.runsPastStart_m = 0.0;
    work.piece.holding.stations = {screwAt(0.05), screwAt(0.5)};
    const auto plans = work.screws({1000, 1000});
    EXPECT_EQ(plans[0].bearingFactor, 1);
    EXPECT_NEAR(plans[1].bearingFactor, 34.525 / 25, 1e-9);
    EXPECT_LT(plans[0].washerMay_Pa, plans[1].washerMay_Pa);
}

TEST(Screw, ACaulSpreadsTheWasherAndLengthensTheScrew) {
    PropWork work(0.0);
    work.piece.holding.stations = {screwAt(0.4)};
    const ScrewPlan bare = work.screws({1000})[0];
    work.piece.holding.cauls.thickness_m = 0.012;
    const ScrewPlan caul = work.screws({1000})[0];
    EXPECT_NEAR(caul.length_m - bare.length_m, 0.012, 1e-12);
    const double area = 3.14159265358979 / 4 * (0.049 * 0.049 - 0.0055 * 0.0055);
    EXPECT_NEAR(caul.washerPressure_Pa, 1000 / area, 1);
}

TEST(Screw, InTheOverRunTheStripsOwnEndCounts) {
    PropWork work(0.0);  // strips run 100 mm past the start and 150 mm past the end
    work.piece.holding.stations = {screwAt(-0.04), screwAt(0.03), screwAt(1.10)};
    const auto plans = work.screws({1, 1, 1});
    EXPECT_NEAR(plans[0].fromEnd_m, 0.06, 1e-9);
    EXPECT_NEAR(plans[1].fromEnd_m, 0.03, 1e-9);
    EXPECT_NEAR(plans[2].fromEnd_m, 0.05, 1e-9);
}

TEST(Screw, AWoodWithoutStrengthAcrossTheGrainIsSaidToBeUnknown) {
    PropWork work(0.0);
    work.piece.stack.strips[0].species = "iroko";
    work.piece.holding.stations = {screwAt(0.4)};
    const ScrewPlan plan = work.screws({1000})[0];
    EXPECT_FALSE(plan.washerKnown);
    EXPECT_EQ(plan.washerMay_Pa, 0);
    EXPECT_TRUE(std::isfinite(plan.washerPressure_Pa));
}

}  // namespace screw_test
}  // namespace fayline::holding
