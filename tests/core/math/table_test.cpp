// Source: straight lines and steps by hand (D).
#include "core/math/table.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace fayline::math {
namespace table_test {

struct Row {
    double at = 0;
    double value = 0;
};

double value(const std::vector<Row>& rows, double at) {
    return lookUp(rows, at, &Row::at, &Row::value);
}

TEST(Table, LinearFromRowToRowAndLevelBeyond) {
    const std::vector<Row> rows{{1, 10}, {2, 20}, {4, 0}};
    EXPECT_EQ(value(rows, 1.5), 15);
    EXPECT_EQ(value(rows, 3), 10);
    EXPECT_EQ(value(rows, 0), 10);
    EXPECT_EQ(value(rows, 5), 0);
    for (const Row& row : rows) EXPECT_EQ(value(rows, row.at), row.value);
}

TEST(Table, ASingleRowHoldsEverywhere) {
    for (const double at : {-1.0, 3.0, 8.0}) EXPECT_EQ(value({{3, 7}}, at), 7);
}

TEST(Table, OfTwoRowsWithOneKeyTheLaterHoldsThere) {
    const std::vector<Row> rows{{0, 1}, {1, 1}, {1, 5}, {2, 5}};
    EXPECT_EQ(value(rows, 0.999), 1);
    EXPECT_EQ(value(rows, 1), 5);
}

TEST(Table, IntervalsHoldTheirBeginning) {
    const std::vector<double> places{0, 1, 3};
    EXPECT_EQ(intervalOf(places, 0.5), 0u);
    EXPECT_EQ(intervalOf(places, 1), 1u);
    EXPECT_EQ(intervalOf(places, -2), 0u);
    EXPECT_EQ(intervalOf(places, 3), 1u);
    EXPECT_EQ(intervalOf(places, 9), 1u);
}

TEST(Table, Between) {
    EXPECT_EQ(between(2, 6, 0), 2);
    EXPECT_EQ(between(2, 6, 1), 6);
    EXPECT_EQ(between(2, 6, 0.25), 3);
}

}  // namespace table_test
}  // namespace fayline::math
