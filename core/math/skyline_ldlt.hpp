// A symmetric matrix stored by its skyline (profile), and its factors L D L^T.
//
// Each row holds all entries from its first column to the diagonal (Jennings, Comput. J. 9, 1966, from memory). The
// factors keep that shape, since no rows are exchanged. The signs of the pivots tell how many eigenvalues of the matrix
// are negative (Sylvester's law of inertia). A matrix that is not definite may meet a pivot of 0: factorise() says so.
// Eigen has no factor that keeps a skyline.
#pragma once

#include <cstddef>
#include <vector>

namespace fayline::math {

class SkylineLdlt {
public:
    SkylineLdlt() = default;
    // `first[row]` <= row is the column where the row begins.
    explicit SkylineLdlt(std::vector<std::size_t> first);

    std::size_t rows() const { return first_.size(); }
    void clear();
    // The entry at `row` and `column`, in whichever order; inside the shape.
    double& operator()(std::size_t row, std::size_t column) {
        return row >= column ? values_[start_[row] + column] : values_[start_[column] + row];
    }

    // One row, its columns from where it begins to the diagonal.
    class Row {
    public:
        Row(double* entries, std::size_t first) : entries_(entries), first_(first) {}
        double& operator[](std::size_t column) const { return entries_[column - first_]; }

    private:
        double* entries_;
        std::size_t first_;
    };
    Row row(std::size_t row) { return {values_.data() + (start_[row] + first_[row]), first_[row]}; }

    // Puts the factors in place of the matrix. False: a pivot of 0 or that is no number.
    bool factorise();
    std::size_t negativePivots() const { return negative_; }
    // Of the factors: `right` becomes the solution.
    void solve(std::vector<double>& right) const;

private:
    std::vector<std::size_t> first_;
    std::vector<std::size_t> start_;  // where column 0 of each row would stand
    std::vector<double> values_;
    std::vector<double> inverse_;  // of the pivots
    std::size_t negative_ = 0;
};

}  // namespace fayline::math
