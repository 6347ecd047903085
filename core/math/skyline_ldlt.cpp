#include "core/math/skyline_ldlt.hpp"

#include <algorithm>
#include <cmath>

namespace fayline::math {

SkylineLdlt::SkylineLdlt(std::vector<std::size_t> first) : first_(std::move(first)), start_(first_.size()) {
    std::size_t entries = 0;
    for (std::size_t row = 0; row < first_.size(); ++row) {
        start_[row] = entries - first_[row];  // may wrap; adding a column of the row brings it back
        entries += row - first_[row] + 1;
    }
    values_.assign(entries, 0);
    inverse_.assign(first_.size(), 0);
}

void SkylineLdlt::clear() {
    std::ranges::fill(values_, 0.0);
}

bool SkylineLdlt::factorise() {
    negative_ = 0;
    for (std::size_t row = 0; row < first_.size(); ++row) {
        const std::size_t begin = first_[row];
        double* const entry = values_.data() + (start_[row] + begin);  // of column `begin`
        for (std::size_t column = begin; column < row; ++column) {
            const std::size_t from = std::max(begin, first_[column]);
            const double* const other = values_.data() + (start_[column] + from);
            const double* const own = entry + (from - begin);
            double sum = entry[column - begin];
            for (std::size_t i = 0; i < column - from; ++i) sum -= own[i] * other[i];
            entry[column - begin] = sum;
        }
        double pivot = entry[row - begin];
        for (std::size_t column = begin; column < row; ++column) {
            const double scaled = entry[column - begin] * inverse_[column];
            pivot -= entry[column - begin] * scaled;
            entry[column - begin] = scaled;
        }
        if (!(std::abs(pivot) > 1e-300) || !std::isfinite(pivot)) return false;
        inverse_[row] = 1 / pivot;
        if (pivot < 0) ++negative_;
    }
    return true;
}

void SkylineLdlt::solve(std::vector<double>& right) const {
    for (std::size_t row = 0; row < first_.size(); ++row) {
        const double* const entry = values_.data() + (start_[row] + first_[row]);
        double sum = right[row];
        for (std::size_t column = first_[row]; column < row; ++column)
            sum -= entry[column - first_[row]] * right[column];
        right[row] = sum;
    }
    for (std::size_t row = 0; row < first_.size(); ++row) right[row] *= inverse_[row];
    for (std::size_t row = first_.size(); row-- > 0;) {
        const double* const entry = values_.data() + (start_[row] + first_[row]);
        const double value = right[row];
        for (std::size_t column = first_[row]; column < row; ++column)
            right[column] -= entry[column - first_[row]] * value;
    }
}

}  // namespace fayline::math
