#include "core/line/quintic.hpp"

#include <algorithm>

namespace fayline::line {

namespace {

using Polynomial = std::array<double, 6>;

// p(u) * (a + b u), of which the degree stays below 6.
Polynomial times(const Polynomial& p, double a, double b) {
    Polynomial product{};
    for (int k = 0; k < 6; ++k) product[k] = a * p[k] + (k > 0 ? b * p[k - 1] : 0.0);
    return product;
}

}  // namespace

std::vector<QuinticInterval> quinticIntervals(const std::vector<double>& knots) {
    std::vector<QuinticInterval> intervals;
    const int last = static_cast<int>(knots.size()) - 6;
    for (int span = 5; span < last; ++span) {
        const double start = knots[span];
        const double width = knots[span + 1] - start;
        if (!(width > 0)) continue;
        QuinticInterval interval{start, width, span - 5, {}};
        auto& basis = interval.polynomial;
        basis[0][0] = 1;
        for (int degree = 1; degree <= 5; ++degree) {
            Polynomial carried{};
            for (int r = 0; r < degree; ++r) {
                const double right = knots[span + r + 1];
                const double left = knots[span + 1 - degree + r];
                Polynomial share = basis[r];
                for (double& c : share) c /= right - left;
                const Polynomial falling = times(share, right - start, -width);
                for (int k = 0; k < 6; ++k) basis[r][k] = carried[k] + falling[k];
                carried = times(share, start - left, width);
            }
            basis[degree] = carried;
        }
        intervals.push_back(interval);
    }
    return intervals;
}

std::vector<double> openKnots(const std::vector<double>& breaks) {
    const std::size_t last = breaks.size() - 1;
    std::vector<double> knots;
    for (int k = 5; k >= 1; --k) knots.push_back(breaks[0] - k * (breaks[1] - breaks[0]));
    knots.insert(knots.end(), breaks.begin(), breaks.end());
    for (int k = 1; k <= 5; ++k) knots.push_back(breaks[last] + k * (breaks[last] - breaks[last - 1]));
    return knots;
}

std::vector<double> closedKnots(const std::vector<double>& open) {
    std::vector<double> closed = open;
    std::fill(closed.begin(), closed.begin() + 5, open[5]);
    std::fill(closed.end() - 5, closed.end(), open[open.size() - 6]);
    return closed;
}

std::vector<double> closedControls(const std::vector<double>& open, const std::vector<double>& x) {
    const std::vector<double> closed = closedKnots(open);
    const int controls = static_cast<int>(x.size());
    std::vector<double> moved = x;
    for (int j = 0; j < controls; ++j) {
        if (j >= 5 && j < controls - 5) continue;
        // The polar form of the piece next to the end, at the five knots that go with the control point.
        const int span = j < 5 ? 5 : controls - 1;
        std::array<double, 6> d;
        for (int i = 0; i < 6; ++i) d[i] = x[span - 5 + i];
        for (int r = 1; r <= 5; ++r) {
            for (int i = 5; i >= r; --i) {
                const double from = open[span - 5 + i], to = open[span + 1 + i - r];
                const double share = (closed[j + r] - from) / (to - from);
                d[i] = (1 - share) * d[i - 1] + share * d[i];
            }
        }
        moved[j] = d[5];
    }
    return moved;
}

QuinticValues valuesAt(const QuinticInterval& interval, double t) {
    const double u = (t - interval.start) / interval.width;
    const double by = 1 / interval.width;
    QuinticValues values{};
    for (int j = 0; j < 6; ++j) {
        const Polynomial& p = interval.polynomial[j];
        values.value[j] = p[0] + u * (p[1] + u * (p[2] + u * (p[3] + u * (p[4] + u * p[5]))));
        values.first[j] = by * (p[1] + u * (2 * p[2] + u * (3 * p[3] + u * (4 * p[4] + u * 5 * p[5]))));
        values.second[j] = by * by * (2 * p[2] + u * (6 * p[3] + u * (12 * p[4] + u * 20 * p[5])));
        values.third[j] = by * by * by * (6 * p[3] + u * (24 * p[4] + u * 60 * p[5]));
    }
    return values;
}

int intervalAt(const std::vector<QuinticInterval>& intervals, double t) {
    const auto after = std::upper_bound(intervals.begin(), intervals.end(), t,
                                        [](double at, const QuinticInterval& interval) { return at < interval.start; });
    return after == intervals.begin() ? 0 : static_cast<int>(after - intervals.begin()) - 1;
}

}  // namespace fayline::line
