#include "core/glue/cure.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/core/glue/made_glue.hpp"

namespace fayline::glue {
namespace cure_test {

model::Glue airOf(double day_C, double night_C) {
    return {.air_C = day_C, .airOverNight_C = night_C};
}

TEST(Cure, AtTheDataSheetsOwnTemperatureClampsComeOffAfterItsTime) {
    const Adhesive adhesive = made::epoxy();  // 8 h at 25 C
    const CurePlan plan = planCure(adhesive, made::kineticsOf(adhesive), airOf(25, 25), 10 * 3600.0);
    EXPECT_NEAR(plan.clampsOff_s, 8 * 3600, 1);
    EXPECT_NEAR(plan.full_s, 72 * 3600, 1);
    EXPECT_NEAR(plan.work_s, 16 * 3600, 1);
}

TEST(Cure, TenDegreesColderTakesTheArrheniusFactorLonger) {
    const Adhesive adhesive = made::epoxy();
    const Kinetics kinetics = made::kineticsOf(adhesive);
    const CurePlan plan = planCure(adhesive, kinetics, airOf(15, 15), 0);
    EXPECT_NEAR(plan.clampsOff_s / (8 * 3600), 1 / speedAgainst(kinetics, 15, 25), 1e-6);
}

TEST(Cure, BelowTheLeastTemperatureNothingCounts) {
    const Adhesive adhesive = made::epoxy();  // not under 10 C
    const Kinetics kinetics = made::kineticsOf(adhesive);
    const CurePlan plan = planCure(adhesive, kinetics, airOf(9, 9), 0);
    EXPECT_TRUE(std::isinf(plan.clampsOff_s));
    // Closed at 18:00 on a day of 25 C with nights of 5 C: it falls under 10 C at 21:00 (5 K an hour), stands still
    // until 06:30, and goes on with the next day.
    const CurePlan night = planCure(adhesive, kinetics, airOf(25, 5), 18 * 3600.0);
    EXPECT_GT(night.clampsOff_s, 15 * 3600);
    EXPECT_LT(night.clampsOff_s, 22 * 3600);
    EXPECT_DOUBLE_EQ(night.leastAir_C, 5);
}

TEST(Cure, AHeatedTentOverNightBringsTheClampsOffSooner) {
    const Adhesive adhesive = made::epoxy();
    const Kinetics kinetics = made::kineticsOf(adhesive);
    model::Glue glue = airOf(18, 8);
    const CurePlan cold = planCure(adhesive, kinetics, glue, 12 * 3600.0);
    glue.tent = {3600, 12 * 3600.0, 30, {}};
    const CurePlan warm = planCure(adhesive, kinetics, glue, 12 * 3600.0);
    EXPECT_LT(warm.clampsOff_s, 0.6 * cold.clampsOff_s);
    EXPECT_DOUBLE_EQ(airAt(glue, 12 * 3600.0, 2 * 3600.0), 30);
    EXPECT_DOUBLE_EQ(airAt(glue, 12 * 3600.0, 1800.0), 18);
}

TEST(Cure, SqueezeOutIsSoftThenRubberThenHard) {
    const Adhesive adhesive = made::epoxy();
    const CurePlan plan = planCure(adhesive, made::kineticsOf(adhesive), airOf(20, 20), 0);
    EXPECT_GT(plan.softUntil_s, 0);
    EXPECT_GT(plan.scrapeUntil_s, plan.softUntil_s);
    EXPECT_LT(plan.scrapeUntil_s, plan.work_s);
}

}  // namespace cure_test
}  // namespace fayline::glue
