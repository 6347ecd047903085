// Banded conditions, against Eigen's dense least squares.
#include "core/math/banded_least_squares.hpp"

#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <random>

namespace fayline::math {
namespace banded_least_squares_test {

// The straight line through (0, 1), (1, 3), (2, 4), (3, 4): 1.5 + x, left over 1 (normal equations by hand, D).
TEST(BandedLeastSquares, AStraightLineThroughFourPoints) {
    BandedLeastSquares<2, 1> squares;
    squares.clear(2);
    const double values[] = {1, 3, 4, 4};
    for (int i = 0; i < 4; ++i) squares.add(0, {1, static_cast<double>(i), values[i]});
    std::vector<double> found;
    ASSERT_TRUE(squares.solve(0, found));
    EXPECT_NEAR(found[0], 1.5, 1e-14);
    EXPECT_NEAR(found[1], 1, 1e-14);
    EXPECT_NEAR(squares.left(0), 1, 1e-14);
}

TEST(BandedLeastSquares, SolvesAsTheDenseMatrixDoes) {
    constexpr int unknowns = 20;
    std::mt19937 engine(4);
    std::uniform_real_distribution<double> draw(-1, 1);
    BandedLeastSquares<6, 2> squares;
    squares.clear(unknowns);
    Eigen::MatrixXd dense = Eigen::MatrixXd::Zero(3 * (unknowns - 5), unknowns);
    Eigen::MatrixXd right(dense.rows(), 2);
    for (int i = 0; i < dense.rows(); ++i) {
        const int first = i / 3;
        BandedLeastSquares<6, 2>::Row row;
        for (double& entry : row) entry = draw(engine);
        for (int k = 0; k < 6; ++k) dense(i, first + k) = row[k];
        right.row(i) << row[6], row[7];
        squares.add(first, row);
    }
    const Eigen::MatrixXd wanted = dense.householderQr().solve(right);
    for (int r = 0; r < 2; ++r) {
        std::vector<double> found;
        ASSERT_TRUE(squares.solve(r, found));
        for (int i = 0; i < unknowns; ++i) EXPECT_NEAR(found[i], wanted(i, r), 1e-11);
        EXPECT_NEAR(squares.left(r), (dense * wanted.col(r) - right.col(r)).squaredNorm(), 1e-12);
    }
}

TEST(BandedLeastSquares, WhatIsNotDeterminedIsSaid) {
    BandedLeastSquares<2, 1> squares;
    squares.clear(2);
    squares.add(0, {1, 1, 1});
    std::vector<double> found;
    EXPECT_FALSE(squares.solve(0, found));
}

}  // namespace banded_least_squares_test
}  // namespace fayline::math
