#include <gtest/gtest.h>

#include "core/stock/measure.hpp"
#include "core/stock/stock.hpp"
#include "core/units/input_error.hpp"

namespace fayline::stock {
namespace first_cut_plan_test {

Job stem() {
    Job job;
    for (int place = 1; place <= 8; ++place)
        job.strips.push_back(
            {.piece = "stem", .place = place, .species = "oak", .length_m = 2, .width_m = 0.03, .thickness_m = 0.006});
    job.boards.push_back(
        {.name = "A", .species = "oak", .length_m = 2.4, .width_m = 0.15, .thickness_m = 0.032, .count = 2});
    return job;
}

// 0.15 + 0.0024 over 0.007 + 0.0024: sixteen lanes, so one board gives all eight.
TEST(FirstCutPlan, GivesEightStripsOfOneBoard) {
    const CutPlan plan = firstCutPlan(stem());
    EXPECT_TRUE(plan.missing.empty());
    EXPECT_EQ(plan.cuts.size(), 8u);
    EXPECT_EQ(plan.boards.size(), 1u);
    EXPECT_EQ(plan.yields.at(0).ripped, 16);
    EXPECT_EQ(plan.yields.at(0).resawn, 4 * 3);
}

TEST(FirstCutPlan, ScarfsStripsThatNoBoardGivesWholeAndStaggersThem) {
    Job job = stem();
    for (Strip& strip : job.strips) strip.length_m = 3.5;
    job.boards[0].count = 4;
    const CutPlan plan = firstCutPlan(job);
    ASSERT_TRUE(plan.missing.empty());
    ASSERT_EQ(plan.scarfs.size(), 8u);
    for (std::size_t i = 1; i < plan.scarfs.size(); ++i)
        EXPECT_GE(std::abs(plan.scarfs[i].at_m - plan.scarfs[i - 1].at_m), 24 * 0.006 - 1e-9);
    EXPECT_NEAR(plan.scarfs[0].length_m, 12 * 0.006, 1e-12);
}

TEST(FirstCutPlan, NamesWhatIsNoNumber) {
    Job job = stem();
    job.boards[0].width_m = -1;
    EXPECT_THROW(firstCutPlan(job), units::InputError);
}

}  // namespace first_cut_plan_test
}  // namespace fayline::stock
