#include "core/wood/student.hpp"

#include <gtest/gtest.h>

#include <utility>
#include <vector>

namespace fayline::wood {
namespace student_test {

// Source: the printed table of Student's distribution, two-sided 5 % (any statistics book; M). Tolerance: its rounding.
TEST(Student, TheRangeIsThatOfThePrintedTable) {
    const std::vector<std::pair<int, double>> rows{{1, 12.706}, {2, 4.303},  {3, 3.182},  {4, 2.776},  {5, 2.571},
                                                   {6, 2.447},  {10, 2.228}, {20, 2.086}, {30, 2.042}, {120, 1.980}};
    for (const auto& [freedom, range] : rows) EXPECT_NEAR(studentRange95(freedom), range, 0.00051) << freedom;
}

TEST(Student, ComesDownToTheNormalRange) {
    EXPECT_NEAR(studentRange95(100000), 1.95996, 5e-5);
}

}  // namespace student_test
}  // namespace fayline::wood
