// The way through points, and the other half of what was measured from a centre line.
#include "core/model/offsets.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace fayline::model {
namespace offsets_test {

std::vector<Point> points(const std::vector<std::array<double, 2>>& places) {
    std::vector<Point> all;
    for (const auto& [x_m, y_m] : places)
        all.push_back({.label = "p" + std::to_string(all.size()), .x_m = x_m, .y_m = y_m});
    return all;
}

TEST(Offsets, TheWayThroughPointsIsThatOfItsParts) {
    EXPECT_EQ(lengthThrough({}), 0);
    EXPECT_DOUBLE_EQ(lengthThrough(points({{0, 0}, {3, 4}, {3, 5}})), 6);
}

TEST(Offsets, AHalfBeamBecomesAWholeOne) {
    std::vector<Point> half = points({{0, 0.1}, {0.5, 0.075}, {1, 0}});
    half[1].written = {"0.5 m", "75 mm"};
    half[2].written = {"-3-3-3", ""};
    EXPECT_EQ(likelyHalf(half), Axis::x);
    const std::vector<Point> whole = withOtherHalf(half, Axis::x);
    ASSERT_EQ(whole.size(), 5u);
    for (std::size_t i = 0; i < whole.size(); ++i) {
        EXPECT_EQ(whole[i].x_m, -whole[4 - i].x_m);
        EXPECT_EQ(whole[i].y_m, whole[4 - i].y_m);
    }
    EXPECT_EQ(whole[0].x_m, -1);
    EXPECT_EQ(whole[1].label, "p1\u2032");
    EXPECT_EQ(whole[1].written[0], "-0.5 m");
    EXPECT_EQ(whole[1].written[1], "75 mm");
    EXPECT_EQ(whole[0].written[0], "3-3-3");
    EXPECT_EQ(whole[2].label, "p0");
}

TEST(Offsets, AHalfWaterlineIsJoinedWhereItMeetsTheCentreLine) {
    // Wide aft, and round at the stem, which is the last point.
    const std::vector<Point> half = points({{3, 1}, {1, 0.9}, {0.1, 0.4}, {0, 0}});
    EXPECT_EQ(likelyHalf(half), Axis::y);
    const std::vector<Point> whole = withOtherHalf(half, Axis::y);
    ASSERT_EQ(whole.size(), 7u);
    EXPECT_EQ(whole[3].x_m, 0);
    EXPECT_EQ(whole[6].y_m, -1);
    // Off the centre line, at the sides of a keel, both ends of the halves are there.
    const std::vector<Point> keel = points({{0, 0.02}, {0.02, 0.3}, {0.3, 0.5}});
    EXPECT_EQ(withOtherHalf(keel, Axis::y).size(), 6u);
    EXPECT_TRUE(withOtherHalf({}, Axis::x).empty());
}

}  // namespace offsets_test
}  // namespace fayline::model
