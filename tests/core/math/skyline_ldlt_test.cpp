// Factors of symmetric matrices stored by their skyline, against Eigen's dense ones.
#include "core/math/skyline_ldlt.hpp"

#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <random>

namespace fayline::math {
namespace skyline_ldlt_test {

struct Made {
    SkylineLdlt profile;
    Eigen::MatrixXd dense;
};

// Band of three below the diagonal with a few long rows, diagonal entries of either sign.
Made randomMatrix(std::mt19937& engine, std::size_t rows, bool definite) {
    std::uniform_real_distribution<double> value(-1, 1);
    std::vector<std::size_t> first(rows);
    for (std::size_t row = 0; row < rows; ++row) first[row] = row % 7 == 6 ? row / 2 : row < 3 ? 0 : row - 3;
    Made made{SkylineLdlt(first), Eigen::MatrixXd::Zero(static_cast<int>(rows), static_cast<int>(rows))};
    for (std::size_t row = 0; row < rows; ++row)
        for (std::size_t column = first[row]; column <= row; ++column) {
            double entry = value(engine);
            if (column == row) entry = (definite || row % 7 != 6 ? 1 : -1) * (static_cast<double>(rows) + entry);
            made.profile(row, column) = entry;
            made.dense(static_cast<int>(row), static_cast<int>(column)) = entry;
            made.dense(static_cast<int>(column), static_cast<int>(row)) = entry;
        }
    return made;
}

TEST(SkylineLdlt, SolvesAsTheDenseMatrixDoes) {
    std::mt19937 engine(3);
    for (const std::size_t rows : {1u, 2u, 5u, 40u})
        for (const bool definite : {true, false}) {
            Made made = randomMatrix(engine, rows, definite);
            std::vector<double> right(rows);
            for (std::size_t i = 0; i < rows; ++i) right[i] = static_cast<double>(i) - 2.5;
            const Eigen::VectorXd expected =
                made.dense.fullPivLu().solve(Eigen::Map<Eigen::VectorXd>(right.data(), static_cast<int>(rows)));
            ASSERT_TRUE(made.profile.factorise());
            made.profile.solve(right);
            for (std::size_t i = 0; i < rows; ++i) EXPECT_NEAR(right[i], expected[static_cast<int>(i)], 1e-12);
        }
}

TEST(SkylineLdlt, NegativePivotsAreAsManyAsNegativeEigenvalues) {
    std::mt19937 engine(5);
    for (int tries = 0; tries < 50; ++tries) {
        Made made = randomMatrix(engine, 30, tries % 2 == 0);
        for (int i = 0; i < 30; ++i) made.dense(i, i) *= 0.05;
        for (std::size_t i = 0; i < 30; ++i) made.profile(i, i) *= 0.05;
        const auto values = made.dense.selfadjointView<Eigen::Lower>().eigenvalues();
        ASSERT_TRUE(made.profile.factorise());
        EXPECT_EQ(static_cast<long>(made.profile.negativePivots()), (values.array() < 0).count());
    }
}

TEST(SkylineLdlt, APivotOfNothingIsSaid) {
    SkylineLdlt nothing({0, 0});
    EXPECT_FALSE(nothing.factorise());
    SkylineLdlt dependent({0, 0});
    dependent(0, 0) = dependent(1, 0) = dependent(1, 1) = 1;
    EXPECT_FALSE(dependent.factorise());
}

TEST(SkylineLdlt, ClearedItCanBeFilledAgain) {
    SkylineLdlt matrix({0, 0});
    for (int times = 0; times < 2; ++times) {
        matrix.clear();
        matrix(0, 0) = 2;
        matrix(0, 1) = 1;
        matrix(1, 1) = 2;
        ASSERT_TRUE(matrix.factorise());
        std::vector<double> right{3, 3};
        matrix.solve(right);
        EXPECT_NEAR(right[0], 1, 1e-15);
        EXPECT_NEAR(right[1], 1, 1e-15);
    }
}

}  // namespace skyline_ldlt_test
}  // namespace fayline::math
