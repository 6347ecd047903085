#include "core/glue/pot_life.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/units/input_error.hpp"
#include "tests/core/glue/made_glue.hpp"

namespace fayline::glue {
namespace pot_life_test {

double lasts(const Adhesive& adhesive, const Kinetics& kinetics, model::Vessel vessel, double vessel_m3, double mass_kg,
             double air_C) {
    return potLife(kinetics, fillOf(vessel, vessel_m3, mass_kg, adhesive.mixDensity_kg_m3()), air_C, air_C).lasts_s;
}

TEST(PotLife, TheDataSheetsOwnPointComesOut) {
    for (const double pot_min : {9.0, 15.0, 30.0, 60.0, 120.0}) {
        const Adhesive adhesive = made::epoxy(pot_min);
        const Kinetics kinetics = made::kineticsOf(adhesive);
        const double density = adhesive.mixDensity_kg_m3();
        EXPECT_NEAR(lasts(adhesive, kinetics, model::Vessel::cup, 2 * 0.1 / density, 0.1, 25) / (60 * pot_min), 1,
                    0.01);
        EXPECT_LT(kinetics.worstMisfit, 0.01);
    }
}

TEST(PotLife, ALargerCupGoesOffSoonerATrayLaterAndWarmerSooner) {
    std::mt19937 generator(7);
    const auto between = [&](double from, double to) {
        return std::uniform_real_distribution<double>(from, to)(generator);
    };
    for (int i = 0; i < 200; ++i) {
        const Adhesive adhesive = made::epoxy(between(10, 120));
        const Kinetics kinetics = made::kineticsOf(adhesive);
        const double mass_kg = between(0.03, 1.5);
        const double air_C = between(5, 35);
        const double vessel_m3 = 1.6 * mass_kg / adhesive.mixDensity_kg_m3();
        const double cup_s = lasts(adhesive, kinetics, model::Vessel::cup, vessel_m3, mass_kg, air_C);
        ASSERT_TRUE(std::isfinite(cup_s));
        EXPECT_LT(lasts(adhesive, kinetics, model::Vessel::cup, 2 * vessel_m3, 2 * mass_kg, air_C), cup_s);
        EXPECT_GT(lasts(adhesive, kinetics, model::Vessel::tray, 2 * vessel_m3, mass_kg, air_C), cup_s);
        EXPECT_LT(lasts(adhesive, kinetics, model::Vessel::cup, vessel_m3, mass_kg, air_C + 5), cup_s);
        // No mix outlasts a film, which does not heat itself.
        EXPECT_LE(cup_s, 1.0001 * filmReaches(kinetics, air_C, kinetics.gel));
    }
}

TEST(PotLife, AGlueThatDoesNotHeatItselfCuresAsAFilmDoes) {
    Adhesive adhesive = made::epoxy(60);
    adhesive.kind = model::AdhesiveKind::resorcinol;
    const Kinetics kinetics = made::kineticsOf(adhesive);
    const double film_s = filmReaches(kinetics, 15, kinetics.gel);
    EXPECT_NEAR(lasts(adhesive, kinetics, model::Vessel::cup, 5e-4, 0.3, 15) / film_s, 1, 1e-4);
}

// The share of time that a film takes to gel, by plain small steps of the equation.
TEST(PotLife, AFilmsTimeIsTheIntegralOfItsEquation) {
    const Kinetics kinetics = made::kineticsOf(made::epoxy(30));
    const double speed = kinetics.rate_per_s * speedAgainst(kinetics, 18, kinetics.reference_C);
    double time_s = 0;
    constexpr int steps = 200'000;
    for (int i = 0; i < steps; ++i) {
        const double alpha = kinetics.gel * (i + 0.5) / steps;
        time_s += kinetics.gel / steps / (speed * (kinetics.start + alpha) * (1 - alpha) * (1 - alpha));
    }
    EXPECT_NEAR(filmReaches(kinetics, 18, kinetics.gel) / time_s, 1, 1e-6);
}

TEST(PotLife, PointsAtTwoTemperaturesGiveBackTheEnergyTheyWereMadeWith) {
    Adhesive adhesive = made::epoxy(30);
    Kinetics made = made::kineticsOf(adhesive);
    made.energy_J_mol = 61e3;
    const double density = adhesive.mixDensity_kg_m3();
    adhesive.potLives.clear();
    for (const double air_C : {15.0, 25.0, 32.0}) {
        const Fill fill = fillOf(model::Vessel::cup, 2 * 0.1 / density, 0.1, density);
        adhesive.potLives.push_back({potLife(made, fill, air_C, air_C).lasts_s, air_C, 0.1});
    }
    const Kinetics found = made::kineticsOf(adhesive);
    EXPECT_TRUE(found.energyFitted);
    EXPECT_NEAR(found.energy_J_mol / made.energy_J_mol, 1, 1e-3);
    EXPECT_LT(found.worstMisfit, 1e-3);
}

TEST(PotLife, PointsOfTwoMassesGiveBackTheLossOfHeatTheyWereMadeWith) {
    Adhesive adhesive = made::epoxy(60);
    Kinetics made = made::kineticsOf(adhesive);
    made.lossFactor = 1.8;
    const double density = adhesive.mixDensity_kg_m3();
    adhesive.potLives.clear();
    for (const double mass_kg : {0.05, 0.5}) {
        const Fill fill = fillOf(model::Vessel::cup, 2 * mass_kg / density, mass_kg, density);
        adhesive.potLives.push_back({potLife(made, fill, 25, 25).lasts_s, 25, mass_kg});
    }
    const Kinetics found = made::kineticsOf(adhesive);
    EXPECT_TRUE(found.lossFitted);
    EXPECT_NEAR(found.lossFactor / made.lossFactor, 1, 1e-2);
}

// What the two ends stand for (D, materials C): 100 g in a cup twice as large, its walls and bottom of 3 mm of foam of
// 0.035 W/(m K), or in water at 300 W/(m2 K), its surface free; each against all of it in still air.
TEST(PotLife, TheEndsOfWhatIsAssumedAreAFoamCupAndABath) {
    const double density = 1097;
    const double mass_kg = 0.1;
    const Fill fill = fillOf(model::Vessel::cup, 2 * mass_kg / density, mass_kg, density);
    const double volume_m3 = mass_kg / density;
    const double top_m2 = volume_m3 / fill.depth_m;
    const double within = volume_m3 / fill.area_m2 / (3 * 0.2);  // the mix's own resistance, m2 K/W
    const double air = 1 / (1 / 10.0 + within);
    const auto against = [&](double outside) {
        return ((fill.area_m2 - top_m2) / (outside + within) + top_m2 * air) / (fill.area_m2 * air);
    };
    EXPECT_NEAR(fill.loss_W_m2K, air, 1e-9);
    EXPECT_NEAR(against(1 / 10.0 + 0.003 / 0.035), 0.68, 0.005);
    EXPECT_NEAR(against(1 / 300.0), 5.5, 0.05);
    EXPECT_LE(leastSheetLoss, against(1 / 10.0 + 0.003 / 0.035));
    EXPECT_GE(mostSheetLoss, against(1 / 300.0));
}

TEST(PotLife, BothEndsOfWhatIsAssumedMeetTheDataSheetInItsOwnCup) {
    for (const double pot_min : {9.0, 30.0, 120.0}) {
        const Adhesive adhesive = made::epoxy(pot_min);
        const Fitted fitted = made::fittedOf(adhesive);
        ASSERT_EQ(fitted.ends.size(), 2u);
        EXPECT_FALSE(fitted.massKnown());
        const double density = adhesive.mixDensity_kg_m3();
        for (Kinetics end : fitted.ends) {
            end.lossFactor = end.sheetLoss;  // as the sheet's cup sheds heat
            EXPECT_NEAR(lasts(adhesive, end, model::Vessel::cup, 2 * 0.1 / density, 0.1, 25) / (60 * pot_min), 1, 1e-3);
        }
    }
}

TEST(PotLife, TheRangeHoldsTheLikeliestAndIsWiderForWhatIsSlow) {
    double before = 1;
    for (const double pot_min : {12.0, 25.0, 50.0, 90.0}) {
        const Adhesive adhesive = made::epoxy(pot_min);
        const Fill fill = fillOf(model::Vessel::cup, 5e-4, 0.3, adhesive.mixDensity_kg_m3());
        const PotLifeRange range = potLifeRange(made::fittedOf(adhesive), fill, 25);
        EXPECT_LT(range.lasts_s.from, range.lasts_s.likely);
        EXPECT_GT(range.lasts_s.to, range.lasts_s.likely);
        EXPECT_LT(range.peak_C.from, range.peak_C.likely);
        EXPECT_GT(range.peak_C.to, range.peak_C.likely);
        const double wide = range.lasts_s.to / range.lasts_s.from;
        EXPECT_GT(wide, before);
        before = wide;
    }
}

TEST(PotLife, PotLivesOfTwoMassesAtOneTemperatureTakeTheRangeAway) {
    Adhesive adhesive = made::epoxy(40);
    adhesive.potLives.push_back({22 * 60.0, 25, 0.5});
    const Fitted fitted = made::fittedOf(adhesive);
    EXPECT_TRUE(fitted.likely.lossFitted);
    EXPECT_TRUE(fitted.massKnown());
    const double density = adhesive.mixDensity_kg_m3();
    for (const PotLifePoint& point : adhesive.potLives) {
        const Fill fill = fillOf(model::Vessel::cup, 2 * point.mass_kg / density, point.mass_kg, density);
        const PotLifeRange range = potLifeRange(fitted, fill, 25);
        EXPECT_EQ(range.lasts_s.from, range.lasts_s.likely);
        EXPECT_EQ(range.lasts_s.to, range.lasts_s.likely);
        EXPECT_NEAR(range.lasts_s.likely / point.lasts_s, 1, 1e-3);
        EXPECT_LT(range.peak_C.from, range.peak_C.to);  // the heat of the mix is not known all the same
    }
}

TEST(PotLife, AGlueThatDoesNotHeatItselfHasNoRange) {
    Adhesive adhesive = made::epoxy(60);
    adhesive.kind = model::AdhesiveKind::urea;
    const Fitted fitted = made::fittedOf(adhesive);
    EXPECT_TRUE(fitted.massKnown());
    EXPECT_TRUE(fitted.ends.empty());
}

// A few grams poured out in a large tray come to the air's temperature within seconds while the cure takes hours: they
// last as long as a film does.
TEST(PotLife, ALittleInALargeTrayLastsAsLongAsAFilm) {
    for (const double pot_min : {12.0, 60.0, 240.0}) {
        const Adhesive adhesive = made::epoxy(pot_min);
        const Kinetics kinetics = made::kineticsOf(adhesive);
        for (double mass_kg = 0.002; mass_kg < 0.02; mass_kg *= 1.3) {
            const double tray_s = lasts(adhesive, kinetics, model::Vessel::tray, 2e-3, mass_kg, 18);
            EXPECT_NEAR(tray_s / filmReaches(kinetics, 18, kinetics.gel), 1, 0.05) << mass_kg << " kg, " << pot_min;
        }
    }
}

// What no step of the integration leads through is said to be so: neither a time nor the end of the program.
TEST(PotLife, WhatCannotBeIntegratedIsSaidToBeSo) {
    Kinetics backwards;
    backwards.rate_per_s = -1;
    Kinetics none;
    none.rate_per_s = std::nan("");
    for (const Kinetics& kinetics : {backwards, none}) {
        const PotLifeOf life = potLife(kinetics, fillOf(model::Vessel::cup, 5e-4, 0.2, 1100), 20, 20);
        EXPECT_FALSE(life.settled);
        EXPECT_TRUE(std::isnan(life.lasts_s));
        const auto range = [&] { potLifeRange({kinetics, {}}, fillOf(model::Vessel::cup, 5e-4, 0.2, 1100), 20); };
        EXPECT_THROW(range(), units::InputError);
    }
}

TEST(PotLife, PointsThatContradictEachOtherAreRefused) {
    Adhesive adhesive = made::epoxy(30);
    adhesive.potLives.push_back({2 * 3600, 35, 0.1});  // warmer, and lasts longer
    EXPECT_THROW(made::kineticsOf(adhesive), units::InputError);
    adhesive.potLives = {{0, 25, 0.1}};
    EXPECT_THROW(made::kineticsOf(adhesive), units::InputError);
    adhesive.potLives.clear();
    EXPECT_THROW(made::kineticsOf(adhesive), units::InputError);
}

TEST(PotLife, TheCurveEndsAtItsPeakAndGoesThroughGelAtThePotLife) {
    const Adhesive adhesive = made::epoxy(30);
    const Kinetics kinetics = made::kineticsOf(adhesive);
    const PotLifeOf life = potLife(kinetics, fillOf(model::Vessel::cup, 5e-4, 0.2, 1100), 20, 20, true);
    ASSERT_GT(life.at_s.size(), 10u);
    EXPECT_EQ(life.at_s.size(), life.mix_C.size());
    EXPECT_EQ(life.at_s.size(), life.cured.size());
    EXPECT_DOUBLE_EQ(life.mix_C.front(), 20);
    EXPECT_GT(life.peak_C, smokes_C);
    for (std::size_t i = 1; i < life.at_s.size(); ++i) EXPECT_GE(life.cured[i], life.cured[i - 1]);
}

}  // namespace pot_life_test
}  // namespace fayline::glue
