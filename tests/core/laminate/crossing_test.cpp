#include "core/laminate/crossing.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace fayline::laminate {
namespace crossing_test {

using line::Xy;

TEST(Crossing, AnEightCrossesInItsMiddle) {
    const auto crossing = firstCrossing({{{0, 0}, {2, 2}, {4, 2}, {4, 0}, {2, 0}, {0, 2}}});
    ASSERT_TRUE(crossing.has_value());
    EXPECT_EQ(crossing->index, 0);
    EXPECT_EQ(crossing->other, 4);
}

TEST(Crossing, NeighboursAndOpenCurvesDoNotCross) {
    EXPECT_FALSE(firstCrossing({{{0, 0}, {1, 0}, {2, 0.5}, {3, 0}, {2, -1}}}).has_value());
    EXPECT_FALSE(firstCrossing({}).has_value());
    EXPECT_FALSE(firstCrossing({{{0, 0}}}).has_value());
}

// A band that comes round and runs into its own beginning through the cap, between two of the curves.
TEST(Crossing, ABandThatEntersItsOwnBeginningMeetsTheCapOnly) {
    const std::vector<Xy> inner{{0, 0}, {20, 0}, {40, 0}, {60, 40}, {40, 80}, {-40, 80}, {-80, 40}, {-40, 12}, {5, 12}};
    const std::vector<Xy> middle{{0, 10},   {20, 10},  {40, 10},  {55, 40}, {40, 75},
                                 {-40, 75}, {-75, 40}, {-40, 13}, {5, 13}};
    const std::vector<Xy> outer{{0, 20},   {20, 20},  {40, 20},  {50, 40}, {40, 70},
                                {-40, 70}, {-70, 40}, {-40, 14}, {5, 14}};
    const auto crossing = firstCrossing({inner, middle, outer});
    ASSERT_TRUE(crossing.has_value());
    EXPECT_EQ(crossing->index, 0);
    EXPECT_EQ(crossing->other, 7);
    // Walked backwards it is the last cap that is met.
    std::vector<std::vector<Xy>> back;
    for (const auto& curve : {inner, middle, outer}) back.emplace_back(curve.rbegin(), curve.rend());
    EXPECT_TRUE(firstCrossing(back).has_value());
}

// A kilometre of cap beside stretches of a millimetre lies in as many cells as it is long in them at most; by boxes it
// would be 5e11.
TEST(Crossing, ADeepStacksCapLiesInFewCells) {
    std::vector<Xy> inner;
    std::vector<Xy> outer;
    for (int i = 0; i < 20; ++i) {
        inner.push_back({0.001 * i, 0});
        outer.push_back({700 + 0.001 * i, 700});
    }
    EXPECT_FALSE(firstCrossing({inner, outer}).has_value());
    inner[10] = {350.5, 350.4};  // out through the first cap and back
    EXPECT_TRUE(firstCrossing({inner, outer}).has_value());
}

// Against every pair looked at in turn, on walks at random.
TEST(Crossing, FindsWhatLookingAtEveryPairFinds) {
    std::mt19937 generator(7);
    const auto between = [&](double low, double high) {
        return low + (high - low) * (static_cast<double>(generator()) / 4294967296.0);
    };
    const auto cross = [](Xy o, Xy a, Xy b) {
        return (a.x_m - o.x_m) * (b.y_m - o.y_m) - (a.y_m - o.y_m) * (b.x_m - o.x_m);
    };
    int found = 0;
    for (int trial = 0; trial < 200; ++trial) {
        std::vector<Xy> walk{{0, 0}};
        double heading = 0;
        for (int i = 0; i < 40; ++i) {
            heading += between(-0.9, 1.0);
            walk.push_back({walk.back().x_m + 0.01 * std::cos(heading), walk.back().y_m + 0.01 * std::sin(heading)});
        }
        std::optional<std::pair<int, int>> first;
        for (int i = 0; i < 40 && !first; ++i) {
            for (int j = i + 2; j < 40 && !first; ++j) {
                const Xy a = walk[i], b = walk[i + 1], c = walk[j], d = walk[j + 1];
                if (cross(a, b, c) * cross(a, b, d) < 0 && cross(c, d, a) * cross(c, d, b) < 0) first = {i, j};
            }
        }
        const auto crossing = firstCrossing({walk});
        ASSERT_EQ(crossing.has_value(), first.has_value()) << trial;
        if (!first) continue;
        ++found;
        EXPECT_EQ(crossing->index, first->first);
        EXPECT_EQ(crossing->other, first->second);
    }
    EXPECT_GT(found, 20);
    EXPECT_LT(found, 180);
}

}  // namespace crossing_test
}  // namespace fayline::laminate
