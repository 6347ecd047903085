// A symmetric matrix whose rows begin at their first entry, and its factors.
//
// Each row holds all entries from its first column to the diagonal. Factorised without exchange of rows as
// L D L^T, which keeps that shape; the pivots' signs tell how many directions of the matrix are negative
// (Sylvester's law of inertia). A matrix with negative directions may meet a pivot of nothing: factorise() says so.
#pragma once

#include <cstddef>
#include <vector>

namespace fayline::holding {

class ProfileMatrix {
public:
    ProfileMatrix() = default;
    // `first[row]` <= row is the column where the row begins.
    explicit ProfileMatrix(std::vector<std::size_t> first);

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

    // Puts the factors in place of the matrix. False: a pivot of nothing or that is no number.
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

}  // namespace fayline::holding
