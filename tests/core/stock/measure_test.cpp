#include "core/stock/measure.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "core/stock/stock.hpp"

namespace fayline::stock {
namespace measure_test {

// Board feet: T(in) W(in) L(ft) / 12; one is 144 cubic inches, 0.002359737 m3 (D).
TEST(Measure, BoardFeet) {
    EXPECT_NEAR(boardFoot_m3, 0.002359737, 5e-10);
    const double inch = 0.0254;
    const double board_m3 = (8 * 12 * inch) * (6 * inch) * (2 * inch);  // 2 by 6, 8 ft
    EXPECT_NEAR(board_m3 / boardFoot_m3, 2 * 6 * 8 / 12.0, 1e-9);
}

// Strips from a board of width W by rip: floor((W + kerf) / (rough + kerf)) (D).
TEST(Measure, StripsAcross) {
    EXPECT_EQ(stripsAcross(0.15, 0.007, 0.0024), 16);
    EXPECT_EQ(stripsAcross(0.007, 0.007, 0.0024), 1);
    EXPECT_EQ(stripsAcross(0.0069, 0.007, 0.0024), 0);
    EXPECT_EQ(stripsAcross(0.3, 0.1, 0), 3);
}

// Scarf length slope * t, glue area b t sqrt(1 + s^2), extra stock per joint s t (D).
TEST(Measure, ScarfGeometry) {
    EXPECT_NEAR(scarfLength_m(12, 0.006), 0.072, 1e-12);
    EXPECT_NEAR(scarfArea_m2(8, 0.01, 0.05), 0.05 * 0.01 * std::sqrt(65.0), 1e-12);
    // A joint needs 10 times the section in glue surface (Wood Handbook ch. 10, P): 1 in 10 gives just so much.
    EXPECT_GE(scarfArea_m2(10, 0.01, 0.05), 10 * 0.01 * 0.05);
    EXPECT_LT(scarfArea_m2(8, 0.01, 0.05), 10 * 0.01 * 0.05);
}

// Freas and Selbo, USDA Technical Bulletin 1069, 1954 (M): 0.90 at 1 in 12 or flatter, 0.85, 0.80, 0.65.
TEST(Measure, ScarfStrength) {
    EXPECT_DOUBLE_EQ(*scarfStrength(20), 0.90);
    EXPECT_DOUBLE_EQ(*scarfStrength(12), 0.90);
    EXPECT_DOUBLE_EQ(*scarfStrength(10), 0.85);
    EXPECT_DOUBLE_EQ(*scarfStrength(8), 0.80);
    EXPECT_DOUBLE_EQ(*scarfStrength(5), 0.65);
    EXPECT_NEAR(*scarfStrength(9), 0.825, 1e-12);
    EXPECT_FALSE(scarfStrength(4.9));
    EXPECT_FALSE(scarfStrength(std::nan("")));
}

// A strip of 4 m from boards of 2.4 m: one scarf, and its length more in parts.
TEST(Measure, AScarfTakesItsLengthMore) {
    Job job;
    job.strips.push_back({.piece = "rail", .species = "oak", .length_m = 4, .width_m = 0.03, .thickness_m = 0.006});
    job.boards.push_back({.name = "A",
                          .species = "oak",
                          .length_m = 2.4,
                          .width_m = 0.15,
                          .thickness_m = 0.032,
                          .price = 30,
                          .density_kg_m3 = 700});
    const CutPlan plan = firstCutPlan(job);
    ASSERT_EQ(plan.cuts.size(), 2u);
    double sum_m = 0;
    for (const Cut& cut : plan.cuts) sum_m += cut.along.to_m - cut.along.from_m;
    EXPECT_NEAR(sum_m, 4 + 12 * 0.006, 1e-9);
    EXPECT_NEAR(plan.boards_m3, 2.4 * 0.15 * 0.032, 1e-12);
    EXPECT_NEAR(plan.boardFeet, 2.4 * 0.15 * 0.032 / 0.002359737, 1e-4);
    EXPECT_NEAR(plan.weight_kg, 700 * 2.4 * 0.15 * 0.032, 1e-9);
    EXPECT_NEAR(plan.strips_m3, 4 * 0.03 * 0.006, 1e-12);
    EXPECT_NEAR(plan.waste, 1 - plan.strips_m3 / plan.boards_m3, 1e-12);
    EXPECT_NEAR(plan.boards[0].waste, plan.waste, 1e-9);
    EXPECT_DOUBLE_EQ(plan.price, 30);
}

}  // namespace measure_test
}  // namespace fayline::stock
