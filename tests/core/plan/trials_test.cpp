// Trials in words, and what they measured in a stack.
#include "core/plan/study/trials.hpp"

#include <gtest/gtest.h>

#include "core/wood/bending.hpp"
#include "tests/core/plan/made_pieces.hpp"

namespace fayline::plan {
namespace trials_test {

model::Trial oakTrial() {
    return {
        .species = "oak_white", .span_m = 0.6, .width_m = 0.05, .thickness_m = 0.006, .weight_kg = 1, .sag_m = 0.004};
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

// Weight times span cubed over 48 I sag by hand: 9.80665 x 0.216 / (48 x 9e-10 x 0.004) = 12.26 GPa.
TEST(TellTrial, SaysModulusErrorOwnWeightAndWhatTheSimpleFormulaWouldSay) {
    const TrialReported told = tellTrial(oakTrial(), wood::builtInSpecies(), {});
    ASSERT_TRUE(told.result);
    EXPECT_TRUE(told.path.empty());
    EXPECT_TRUE(has(told.sentence, "would say 12300 MPa")) << told.sentence;
    EXPECT_TRUE(has(told.sentence, "give or take " + units::writeStress(told.result->modulusError_Pa, {})));
    EXPECT_TRUE(has(told.sentence, "By its own weight it hung"));
    model::Trial unknown = oakTrial();
    unknown.species = "driftwood";
    EXPECT_TRUE(has(tellTrial(unknown, wood::builtInSpecies(), {}).sentence, "own weight is not counted"));
}

TEST(TellTrial, OneThatBrokeSaysItsStrainAndStress) {
    model::Trial trial = oakTrial();
    trial.broke = true;
    trial.weight_kg = 9;
    trial.sag_m = 0.04;
    const TrialReported told = tellTrial(trial, wood::builtInSpecies(), {});
    ASSERT_TRUE(told.result);
    EXPECT_TRUE(has(told.sentence, "It broke at a strain of " + units::writeShare(*told.result->breakingStrain)))
        << told.sentence;
}

TEST(TellTrial, WhatIsNoTrialIsSaidWithWhatWouldBeAccepted) {
    model::Trial trial = oakTrial();
    trial.sag_m = 0;
    const TrialReported told = tellTrial(trial, wood::builtInSpecies(), {});
    EXPECT_FALSE(told.result);
    EXPECT_EQ(told.path, "sag_mm");
    EXPECT_EQ(told.sentence, "0 is not a sag; give a number above 0.");
    trial.sag_m = 0.2;
    EXPECT_TRUE(has(tellTrial(trial, wood::builtInSpecies(), {}).sentence, "up to 120"));
}

TEST(MeasuredText, SaysRangesAndThatFewTrialsAreFew) {
    const std::vector<wood::WoodMeasured> one = wood::woodsMeasured({oakTrial()});
    EXPECT_TRUE(has(measuredText(one[0], wood::builtInSpecies(), {}), "White oak, one trial at 12 % moisture"))
        << measuredText(one[0], wood::builtInSpecies(), {});
    EXPECT_TRUE(has(measuredText(one[0], wood::builtInSpecies(), {}), "try more of them"));
    const std::vector<wood::WoodMeasured> five = wood::woodsMeasured(std::vector<model::Trial>(5, oakTrial()));
    EXPECT_TRUE(has(measuredText(five[0], wood::builtInSpecies(), {}),
                    "95 of 100 within " + units::writeStress(five[0].modulusError_Pa, {})));
    EXPECT_FALSE(has(measuredText(five[0], wood::builtInSpecies(), {}), "try more"));
}

TEST(TrialCaution, NamesEyesAndHands) {
    EXPECT_TRUE(has(trialCautionText(), "eyes"));
    EXPECT_TRUE(has(trialCautionText(), "hands"));
}

TEST(WithMeasured, EveryGroupOfThatWoodAndNoOtherGetsItAtTheStacksMoisture) {
    model::Stack stack;
    stack.moisture = 0.08;
    stack.strips = {model::Strips{.species = "oak_white"}, model::Strips{.species = "ash_white"},
                    model::Strips{.species = "oak_white"}};
    model::Trial broke = oakTrial();
    broke.broke = true;
    broke.weight_kg = 9;
    broke.sag_m = 0.04;
    const wood::WoodMeasured oak = wood::woodsMeasured({oakTrial(), broke})[0];
    const wood::Species& species = *wood::findSpecies(wood::builtInSpecies(), "oak_white");
    const double stiffer = wood::moistureFactorModulus(species, 0.08) / wood::moistureFactorModulus(species, 0.12);
    const model::Stack with = withMeasuredModulus(stack, oak, wood::builtInSpecies());
    ASSERT_TRUE(with.strips[0].moe_Pa && with.strips[2].moe_Pa);
    EXPECT_NEAR(*with.strips[0].moe_Pa, stiffer * *oak.modulus_Pa, 1);
    EXPECT_FALSE(with.strips[1].moe_Pa);
    EXPECT_FALSE(with.strips[0].breaksAt);
    const model::Stack breaking = withMeasuredBreaking(stack, oak, wood::builtInSpecies());
    ASSERT_TRUE(breaking.strips[0].breaksAt);
    EXPECT_FALSE(breaking.strips[0].moe_Pa);
    EXPECT_FALSE(breaking.strips[1].breaksAt);
    // Nothing broke: nothing to give.
    EXPECT_EQ(withMeasuredBreaking(stack, wood::woodsMeasured({oakTrial()})[0], wood::builtInSpecies()), stack);
}

}  // namespace trials_test
}  // namespace fayline::plan
