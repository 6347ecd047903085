#include "core/line/balance.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/math/root.hpp"

namespace fayline::line {

namespace {

// The scatter of reading is counted this many times. See fair.cpp for what was measured.
constexpr double scatterCounted = 2;

// A circle and its place cost nothing: the smoothing does not take part in three of the degrees of freedom.
constexpr double freeOfCost = 3;

constexpr double leastSmoothing_log = -75;

}  // namespace

void Balance::ready() {
    order_.resize(conditions.size());
    std::iota(order_.begin(), order_.end(), 0);
    std::ranges::stable_sort(order_, [&](int a, int b) { return conditions[a].first < conditions[b].first; });
    solved_ = false;
}

const std::vector<double>& Balance::movesAt(double smoothing_log) {
    if (solved_ && smoothing_log == solvedFor_log_) return moves_;
    const int controls = static_cast<int>(energy.rows().size());
    const double root = std::exp(smoothing_log / 2);
    both_.clear(controls);
    std::size_t next = 0;
    for (int j = 0; j < controls; ++j) {
        Triangle::Row row = energy.rows()[j];
        for (double& entry : row) entry *= root;
        both_.add(j, row);
        for (; next < order_.size() && conditions[order_[next]].first == j; ++next) {
            const Condition& condition = conditions[order_[next]];
            const double weight = std::sqrt(condition.weight);
            for (int a = 0; a < 6; ++a) row[a] = weight * condition.entry[a];
            row[6] = weight * condition.value;
            both_.add(j, row);
        }
    }
    both_.solve(0, moves_);
    solved_ = true;
    solvedFor_log_ = smoothing_log;
    return moves_;
}

// R^T z = entry, on until it has faded out along the line; then R y = z, back.
std::vector<double> Balance::answerTo(int first, const std::array<double, 6>& entry) const {
    constexpr double faded = 1e-10;
    const auto& rows = both_.rows();
    const int n = static_cast<int>(rows.size());
    std::vector<double> answer(n, 0.0);
    double squares = 0;
    for (int j = first; j < n; ++j) {
        double value = j - first < 6 ? entry[j - first] : 0;
        double recent = 0;
        for (int k = 1; k < 6 && j - k >= first; ++k) {
            value -= rows[j - k][k] * answer[j - k];
            recent += answer[j - k] * answer[j - k];
        }
        answer[j] = value / rows[j][0];
        squares += answer[j] * answer[j];
        if (j - first >= 6 && recent < faded * squares) break;
    }
    for (int j = n - 1; j >= 0; --j) {
        for (int k = 1; k < 6 && j + k < n; ++k) answer[j] -= rows[j][k] * answer[j + k];
        answer[j] /= rows[j][0];
    }
    return answer;
}

Balance::Moved Balance::movedByReadings(const std::vector<double>& answer) const {
    Moved moved;
    for (const Condition& condition : conditions) {
        double by = 0;
        for (int a = 0; a < 6; ++a) by += condition.entry[a] * answer[condition.first + a];
        moved.variance += condition.weight * by * by;
        moved.again += condition.weight * by * condition.value;
    }
    return moved;
}

double Balance::missAfter(const Condition& condition) const {
    double miss = condition.value;
    for (int a = 0; a < 6; ++a) miss -= condition.entry[a] * moves_[condition.first + a];
    return miss;
}

double Balance::greatestMiss(const BalanceAims& aims, double smoothing_log) {
    movesAt(smoothing_log);
    double most = 0;
    for (const Condition& condition : conditions) {
        if (condition.read || aims.mostMiss <= 0) most = std::max(most, std::abs(missAfter(condition)));
    }
    return most;
}

// The effective degrees of freedom: the trace of the matrix that maps the points to the points of the line. It needs
// only the band of the inverse (Hutchinson & de Hoog, Numer. Math. 47, 1985, from memory).
double Balance::degreesOfFreedom() {
    const auto& rows = both_.rows();
    const int n = static_cast<int>(rows.size());
    inverse_.assign(n, {});
    const auto inverse = [&](int a, int b) { return a <= b ? inverse_[a][b - a] : inverse_[b][a - b]; };
    for (int j = n - 1; j >= 0; --j) {
        const int reach = std::min(5, n - 1 - j);
        for (int k = reach; k >= 0; --k) {
            double value = k == 0 ? 1 / rows[j][0] : 0;
            for (int l = 1; l <= reach; ++l) value -= rows[j][l] * inverse(j + l, j + k);
            inverse_[j][k] = value / rows[j][0];
        }
    }
    double trace = 0;
    for (const Condition& condition : conditions) {
        double own = 0;
        for (int a = 0; a < 6; ++a) {
            own += condition.entry[a] * condition.entry[a] * inverse_[condition.first + a][0];
            for (int b = a + 1; b < 6; ++b) {
                own += 2 * condition.entry[a] * condition.entry[b] * inverse_[condition.first + a][b - a];
            }
        }
        trace += condition.weight * own;
    }
    return trace;
}

double Balance::energyAfter() const {
    const auto& rows = energy.rows();
    const int n = static_cast<int>(rows.size());
    double sum = energy.left(0);
    for (int j = 0; j < n; ++j) {
        double value = -rows[j][6];
        for (int k = 0; k < 6 && j + k < n; ++k) value += rows[j][k] * moves_[j + k];
        sum += value * value;
    }
    return sum;
}

// The roughness (smoothing * energy / scatter^2) over the effective degrees of freedom less 3. It grows with the
// smoothing and is 1 at the smoothing of greatest restricted likelihood, see fair.cpp.
double Balance::roughnessPerFreedom(const BalanceAims& aims, double smoothing_log) {
    movesAt(smoothing_log);
    const double scatter = scatterCounted * aims.scatter;
    const double roughness = std::exp(smoothing_log) * energyAfter() / (scatter * scatter);
    return roughness / std::max(1e-9, degreesOfFreedom() - freeOfCost);
}

// The logarithm of the smoothing from `least` to `most` at which `measure` is 1, by the regula falsi on its logarithm.
// Where the conditions do not determine the moves, `measure` is no number and the start is returned.
template <class Measure>
double Balance::rootOf(const Measure& measure, double start, double least, double most, double precision,
                       const std::atomic<bool>& stop) {
    const auto off = [&](double at) { return std::log(std::clamp(measure(at), 1e-200, 1e200)); };
    double a = std::clamp(start, least, most);
    double offA = off(a);
    if (!(std::abs(offA) >= precision)) return a;
    double stride = std::clamp(1.5 * std::abs(offA), 1e-7, 3.0);
    double b = a, offB = offA;
    while ((offA > 0) == (offB > 0)) {
        if (stop || (offB > 0 ? b <= least : b >= most)) return b;
        a = b;
        offA = offB;
        b = std::clamp(offB > 0 ? b - stride : b + stride, least, most);
        offB = off(b);
        stride *= 3;
    }
    return math::illinois(off, {a, offA, b, offB, true}, 60, [&](double, double value, double width) {
        return stop || !(std::abs(value) > precision && width > precision);
    });
}

double Balance::chooseSmoothing(const BalanceAims& aims, double start_log, double reach_log, double precision,
                                const std::atomic<bool>& stop) {
    const double most = std::min(aims.mostSmoothing_log, start_log + reach_log);
    const double least = std::min(std::max(leastSmoothing_log, start_log - reach_log), most);
    const auto ceiling = [&](double mostMiss) {
        return [this, &aims, mostMiss](double at) { return greatestMiss(aims, at) / mostMiss; };
    };
    if (aims.mostMiss <= 0) return rootOf(ceiling(aims.throughMiss), start_log, least, most, precision, stop);
    const auto roughness = [&](double at) { return roughnessPerFreedom(aims, at); };
    const double at = rootOf(roughness, start_log, least, most, precision, stop);
    if (stop || greatestMiss(aims, at) <= aims.mostMiss) return at;
    return rootOf(ceiling(aims.mostMiss * (1 - 1e-7)), at, least, at, std::min(precision, 1e-9), stop);
}

}  // namespace fayline::line
