// Where the boat's own trials say otherwise of a wood than the plan takes it.
#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "core/export/print.hpp"
#include "core/plan/findings/wood_texts.hpp"
#include "core/units/scale.hpp"
#include "core/wood/bending.hpp"
#include "tests/core/plan/made_pieces.hpp"

namespace fayline::plan {
namespace wood_findings_test {

// A strip of 600 by 50 by 6 mm that sags as one of this modulus does under 1 kg, by W L^3 / 48 E I: small sags.
model::Trial trialOf(double modulus_Pa, const std::string& species = "oak_white") {
    model::Trial trial{
        .species = species, .span_m = 0.6, .width_m = 0.05, .thickness_m = 0.006, .weight_kg = 1, .moisture = 0.10};
    const double inertia = 0.05 * std::pow(0.006, 3) / 12;
    trial.sag_m = units::standardGravity_m_s2 * std::pow(0.6, 3) / (48 * modulus_Pa * inertia);
    trial.readTo_m = 0.00005;
    return trial;
}

model::Boat boatWith(double modulus_Pa, int trials) {
    model::Boat boat;
    boat.pieces.push_back(made::bend(0.9, 1.0));
    boat.trials.assign(static_cast<std::size_t>(trials), trialOf(modulus_Pa));
    return boat;
}

Plan planOf(const model::Boat& boat) {
    return makePlan(boat.pieces[0], shopOf(boat));
}

// What the plan takes for white oak at 10 % moisture and grain of 1 in 33.
double taken() {
    return planOf(boatWith(1e10, 0)).stack.strips[0].modulus_Pa;
}

TEST(WoodFindings, AWoodMeasuredStifferIsACautionSinceItPullsHarder) {
    const double says = 1.5 * taken();
    const Plan plan = planOf(boatWith(says, 8));
    const Finding told = foundIn(plan, Code::woodMeasured);
    EXPECT_EQ(told.severity, Severity::caution);
    // Shear takes 0.2 % of that sag, own weight and the large sag under 0.1 %.
    EXPECT_NEAR(told.value, says / 1e6, 0.005 * says / 1e6);
    EXPECT_NEAR(told.limit, taken() / 1e6, 1e-9);
    EXPECT_EQ(textOf(told, inMillimetres).find("Your eight trials of white oak say it is 50 % stiffer"), 0U)
        << english(told);
    // Told, not used.
    EXPECT_EQ(plan.stack.strips[0].modulus_Pa, taken());
}

TEST(WoodFindings, AWoodMeasuredLessStiffIsANote) {
    const Plan plan = planOf(boatWith(0.6 * taken(), 8));
    const Finding told = foundIn(plan, Code::woodMeasured);
    EXPECT_EQ(told.severity, Severity::note);
    EXPECT_TRUE(told.text.is(texts::woodLessStiff)) << english(told);
}

TEST(WoodFindings, NothingIsToldWithinTheRangeOfTheTrials) {
    EXPECT_FALSE(findingOf(planOf(boatWith(1.05 * taken(), 8)), Code::woodMeasured));
    // One trial says little: half as stiff again lies within what a single strip may be off.
    EXPECT_FALSE(findingOf(planOf(boatWith(1.5 * taken(), 1)), Code::woodMeasured));
    // Another wood's trials say nothing of this one.
    model::Boat other = boatWith(2 * taken(), 8);
    for (model::Trial& trial : other.trials) trial.species = "ash_white";
    EXPECT_FALSE(findingOf(planOf(other), Code::woodMeasured));
}

TEST(WoodFindings, OnceAdoptedNothingIsLeftToTell) {
    model::Boat boat = boatWith(1.5 * taken(), 8);
    ASSERT_TRUE(shopOf(boat).measured.at(0).modulus_Pa);
    boat.pieces[0].stack.strips[0].moe_Pa = *shopOf(boat).measured[0].modulus_Pa;
    EXPECT_FALSE(findingOf(planOf(boat), Code::woodMeasured));
}

// Source: the middle trend of Wood Handbook Table 5-14 (M), as bending_test has it; the trial was dried to 6 %.
TEST(WoodFindings, AModulusMeasuredDryIsMovedToTheStacksMoisture) {
    model::Boat boat = boatWith(1.5 * taken(), 8);
    for (model::Trial& trial : boat.trials) trial.moisture = 0.06;
    const Finding* told = nullptr;
    const Plan plan = planOf(boat);
    told = findingOf(plan, Code::woodMeasured);
    ASSERT_TRUE(told);
    const wood::Species& oak = *wood::findSpecies(wood::builtInSpecies(), "oak_white");
    const double moved = wood::moistureFactorModulus(oak, 0.10) / wood::moistureFactorModulus(oak, 0.06);
    EXPECT_LT(moved, 0.99);
    EXPECT_NEAR(told->value, 1.5 * moved * taken() / 1e6, 0.005 * told->value);
}

TEST(WoodFindings, StripsThatBrokeEarlyRaiseTheChance) {
    model::Boat boat = boatWith(taken(), 0);
    boat.pieces[0].stack.strips[0].thickness_m = 0.008;
    model::Trial broke = trialOf(taken());
    broke.broke = true;
    broke.weight_kg = 8;
    broke.sag_m = 0.030;
    boat.trials.assign(10, broke);
    const Shop shop = shopOf(boat);
    ASSERT_TRUE(shop.measured.at(0).breakingStrain);
    const Plan plan = planOf(boat);
    const Finding told = foundIn(plan, Code::woodMeasuredBreaks);
    EXPECT_EQ(told.severity, Severity::caution);
    EXPECT_LT(told.value, told.limit);
    // The chance that is told is that of the plan with the measured strain adopted (moved to the same moisture).
    boat.pieces[0].stack.strips[0].breaksAt = told.value / 100;
    const Plan adopted = planOf(boat);
    EXPECT_GT(adopted.stack.chanceAnyBreaks, plan.stack.chanceAnyBreaks);
    ASSERT_TRUE(told.text.is(texts::woodBreaksSooner)) << english(told);
    EXPECT_NEAR(told.text.args[1].value, adopted.stack.chanceAnyBreaks, 1e-9);
    EXPECT_EQ(told.text.args[2].value, plan.stack.chanceAnyBreaks);
}

TEST(WoodFindings, ATrialThatSaysNothingIsNamed) {
    model::Boat boat = boatWith(taken(), 1);
    boat.trials[0].sag_m = 0;
    const Plan plan = planOf(boat);
    const Finding told = foundIn(plan, Code::trialLeftOut);
    EXPECT_NE(english(told).find("trials[0].sag_mm: 0 is not a sag; give a number above 0"), std::string::npos)
        << english(told);
}

TEST(WoodFindings, AWoodWithoutItsStrengthAcrossTheGrainSaysWhatIsNotLookedAt) {
    model::Boat boat = boatWith(1e10, 0);
    model::OwnSpecies own{.id = "driftwood", .mor_Pa = 80e6, .moe_Pa = 9000e6};
    boat.species.push_back(own);
    boat.pieces[0].stack.strips[0].species = "driftwood";
    const Plan plan = planOf(boat);
    const Finding told = foundIn(plan, Code::woodValuesMissing);
    EXPECT_NE(english(told).find("compression_across_MPa"), std::string::npos);
    EXPECT_FALSE(findingOf(plan, Code::woodByDefault));
    boat.species[0].compressionAcross_Pa = 6e6;
    EXPECT_FALSE(findingOf(planOf(boat), Code::woodValuesMissing));
}

TEST(WoodFindings, AWoodWithoutStrengthAndModulusIsTakenForAMiddlingOneAndSaidTo) {
    model::Boat boat = boatWith(1e10, 0);
    model::OwnSpecies own;
    own.id = "driftwood";
    boat.species.push_back(own);
    boat.pieces[0].stack.strips[0].species = "driftwood";
    const Plan plan = planOf(boat);
    const Finding told = foundIn(plan, Code::woodByDefault);
    EXPECT_EQ(told.severity, Severity::caution);
    EXPECT_TRUE(told.text.is(texts::woodByDefault)) << english(told);
    EXPECT_EQ(told.details.size(), 2U);
    boat.species[0].mor_Pa = 80e6;
    const Plan withStrength = planOf(boat);
    EXPECT_EQ(findingOf(withStrength, Code::woodByDefault)->severity, Severity::note);
    EXPECT_TRUE(findingOf(withStrength, Code::woodByDefault)->text.is(texts::stiffnessByDefault));
    boat.pieces[0].stack.strips[0].moe_Pa = 9000e6;
    EXPECT_FALSE(findingOf(planOf(boat), Code::woodByDefault));
    EXPECT_FALSE(findingOf(planOf(boatWith(1e10, 0)), Code::woodByDefault));
}

TEST(WoodFindings, ArePrintedWithTheStack) {
    const auto plan = nlohmann::json::parse(printPlans(boatWith(1.5 * taken(), 8)));
    const auto& woods = plan["pieces"][0]["stack"]["woods_measured"];
    ASSERT_EQ(woods.size(), 1U);
    EXPECT_EQ(woods[0]["species"], "oak_white");
    EXPECT_EQ(woods[0]["trials"], 8);
    EXPECT_NEAR(woods[0]["modulus_MPa"].get<double>(), 1.5 * taken() / 1e6, 100);
    EXPECT_FALSE(woods[0].contains("breaks_at_pct"));
}

}  // namespace wood_findings_test
}  // namespace fayline::plan
