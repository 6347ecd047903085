// Source: elementary geometry; the triangle of sides 3, 4 and 5.
#include "core/math/vector.hpp"

#include <gtest/gtest.h>

#include <numbers>

namespace fayline::math {
namespace vector_test {

struct Named {
    double x_m = 0;
    double y_m = 0;
};

}  // namespace vector_test

template <>
inline constexpr bool isVector<vector_test::Named> = true;

namespace vector_test {

TEST(Vector, SumsAndProducts) {
    const Vector a{3, 4}, b{-1, 2};
    EXPECT_EQ((a + b).x, 2);
    EXPECT_EQ((a + b).y, 6);
    EXPECT_EQ((a - b).x, 4);
    EXPECT_EQ((2 * a).y, 8);
    EXPECT_EQ(dot(a, b), 5);
    EXPECT_EQ(cross(a, b), 10);
    EXPECT_EQ(cross(b, a), -10);
    EXPECT_EQ(norm(a), 5);
    EXPECT_EQ(hypot(a), 5);
    EXPECT_NEAR(unit(a).x, 0.6, 1e-15);
}

TEST(Vector, Turning) {
    const Vector a{3, 4};
    EXPECT_EQ(leftOf(a).x, -4);
    EXPECT_EQ(leftOf(a).y, 3);
    EXPECT_GT(cross(a, leftOf(a)), 0);
    const Vector back = turned(turned(a, 0.7), -0.7);
    EXPECT_NEAR(back.x, 3, 1e-15);
    EXPECT_NEAR(back.y, 4, 1e-15);
    EXPECT_NEAR(turned(Vector{1, 0}, std::numbers::pi / 6).y, 0.5, 1e-15);
}

TEST(Vector, AnyStructOfTwoNumbersThatNamesItselfOne) {
    const Named a{3, 4}, b{1, 1};
    EXPECT_EQ((a - b).x_m, 2);
    EXPECT_EQ((a + 2 * b).y_m, 6);
    EXPECT_EQ(hypot(a), 5);
}

}  // namespace vector_test
}  // namespace fayline::math
