// Source: Dottie's number, Wallis' cubic x^3 - 2 x - 5 (2.0945514815423265...) and roots in closed form.
#include "core/math/root.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace fayline::math {
namespace root_test {

template <typename Function>
double rootOf(const Function& function, double a, double b, int* steps = nullptr) {
    const auto counted = [&](double x) {
        if (steps) ++*steps;
        return function(x);
    };
    return illinois(counted, {a, function(a), b, function(b)}, 200,
                    [](double, double value, double) { return std::abs(value) < 1e-15; });
}

TEST(Illinois, TextbookRoots) {
    EXPECT_NEAR(rootOf([](double x) { return x * x * x - 2 * x - 5; }, 2, 3), 2.0945514815423265, 1e-15);
    EXPECT_NEAR(rootOf([](double x) { return std::cos(x) - x; }, 0, 1), 0.7390851332151607, 1e-15);
    EXPECT_NEAR(rootOf([](double x) { return std::exp(x) - 2; }, 0, 5), std::numbers::ln2, 1e-15);
}

TEST(Illinois, EitherEndMayBeTheUpperOne) {
    const auto falling = [](double x) { return 2 - x * x; };
    EXPECT_NEAR(rootOf(falling, 0, 2), std::numbers::sqrt2, 1e-15);
    EXPECT_NEAR(rootOf(falling, 2, 0), std::numbers::sqrt2, 1e-15);
}

// The plain false position keeps one end of x^10 - 1 on 0..1.3 and needs more than a hundred steps (D).
TEST(Illinois, BothEndsCloseIn) {
    int steps = 0;
    EXPECT_NEAR(rootOf([](double x) { return std::pow(x, 10) - 1; }, 0, 1.3, &steps), 1, 1e-15);
    EXPECT_LT(steps, 25);
}

TEST(Illinois, NoMoreThanTheStepsGiven) {
    int steps = 0;
    const auto function = [&](double x) {
        ++steps;
        return x - 0.1 - x * x * x;
    };
    illinois(function, {0, -0.1, 0.5, 0.275}, 3, [](double, double, double) { return false; });
    EXPECT_EQ(steps, 3);
}

TEST(Illinois, AnEndThatIsTheRootIsTaken) {
    EXPECT_EQ(rootOf([](double x) { return x - 1; }, 0, 1), 1);
}

TEST(Bisection, FindsTheChangeWithinItsWidth) {
    int asked = 0;
    const auto below = [&](double x) {
        ++asked;
        return x * x < 2;
    };
    EXPECT_NEAR(bisection(below, 0, 2, 1e-9), std::numbers::sqrt2, 1e-9);
    EXPECT_EQ(asked, 31);  // 2 / 2^31 is the first width below 1e-9
}

}  // namespace root_test
}  // namespace fayline::math
