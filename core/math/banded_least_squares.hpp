// Linear least squares in which every condition holds a few neighbouring unknowns, as those of splines do.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace fayline::math {

// The triangle to which such conditions reduce, by plane rotations (George & Heath 1980; rows sorted as in Lawson &
// Hanson, Solving Least Squares Problems, chapter 27). The normal equations would square a condition number that for a
// fair line is the sixth power of the number of knots.
//
// `Width` is how many unknowns a condition holds, `Rights` how many right-hand sides are carried along.
template <int Width, int Rights>
class BandedLeastSquares {
public:
    using Row = std::array<double, Width + Rights>;  // entries of the unknowns, then right-hand sides

    void clear(int unknowns) {
        rows_.assign(unknowns, Row{});
        left_.fill(0);
    }

    // Adds a condition on the unknowns from `first` on. Conditions come with ascending `first`.
    void add(int first, Row row) {
        const int last = std::min(first + Width, static_cast<int>(rows_.size()));
        for (int j = first; j < last; ++j) {
            if (row[0] != 0) rotate(rows_[j], row);
            for (int k = 0; k < Width - 1; ++k) row[k] = row[k + 1];
            row[Width - 1] = 0;
        }
        for (int r = 0; r < Rights; ++r) left_[r] += row[Width + r] * row[Width + r];
    }

    // Row j holds the entries (j, j) ... (j, j + Width - 1) and the right-hand sides.
    const std::vector<Row>& rows() const { return rows_; }

    // Sum of squares that no choice of the unknowns removes.
    double left(int right) const { return left_[right]; }

    // The unknowns for a right-hand side. False: the conditions do not determine them.
    bool solve(int right, std::vector<double>& unknowns) const {
        const int n = static_cast<int>(rows_.size());
        unknowns.assign(n, 0);
        for (int j = n - 1; j >= 0; --j) {
            double sum = rows_[j][Width + right];
            for (int k = 1; k < Width && j + k < n; ++k) sum -= rows_[j][k] * unknowns[j + k];
            unknowns[j] = sum / rows_[j][0];
            if (!std::isfinite(unknowns[j])) return false;
        }
        return true;
    }

private:
    // Turns `row` and `kept` in their common plane so that the first entry of `row` becomes 0.
    static void rotate(Row& kept, Row& row) {
        const double size = std::sqrt(kept[0] * kept[0] + row[0] * row[0]);
        const double c = kept[0] / size, s = row[0] / size;
        for (int k = 0; k < Width + Rights; ++k) {
            const double a = kept[k], b = row[k];
            kept[k] = c * a + s * b;
            row[k] = c * b - s * a;
        }
    }

    std::vector<Row> rows_;
    std::array<double, Rights> left_{};
};

}  // namespace fayline::math
