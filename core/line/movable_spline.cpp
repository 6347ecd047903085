#include "core/line/movable_spline.hpp"

#include <algorithm>
#include <numeric>

#include "core/math/banded_least_squares.hpp"
#include "core/math/quadrature.hpp"
#include "core/math/table.hpp"

namespace fayline::line {

MovableSpline::MovableSpline(const std::vector<double>& breaks)
    : knots_(openKnots(breaks)), intervals_(quinticIntervals(knots_)) {
    for (const QuinticInterval& interval : intervals_) {
        for (const double off : math::gauss3Off) {
            gauss_.push_back(valuesAt(interval, interval.start + (1 + off) / 2 * interval.width));
        }
    }
    const std::vector<double> closed = closedKnots(knots_);
    const int count = static_cast<int>(knots_.size()) - 6;
    for (int j = 0; j < count; ++j) {
        const auto meanOf = [j](const std::vector<double>& knots) {
            return std::accumulate(knots.begin() + j + 1, knots.begin() + j + 6, 0.0) / 5;
        };
        greville_.push_back(meanOf(knots_));
        atGreville_.push_back(valuesAt(intervals_[intervalAt(intervals_, greville_[j])], greville_[j]));
        sites_.push_back(std::clamp(meanOf(closed), 0.0, 1.0));
        atSites_.push_back(valuesAt(intervals_[intervalAt(intervals_, sites_[j])], sites_[j]));
    }
    x.assign(count, 0);
    y.assign(count, 0);
    normals_.assign(count, {});
}

void MovableSpline::face() {
    for (int j = 0; j < controls(); ++j) {
        const QuinticInterval& interval = intervals_[intervalAt(intervals_, greville_[j])];
        normals_[j] = leftOf(unit(sum(atGreville_[j].first, interval.first)));
    }
}

void MovableSpline::move(const std::vector<double>& square, double share, double startAlong, double endAlong) {
    for (int j = 0; j < controls(); ++j) {
        const double along = (1 - greville_[j]) * startAlong + greville_[j] * endAlong;
        const Vector n = normals_[j];
        x[j] += share * (square[j] * n.x + along * n.y);
        y[j] += share * (square[j] * n.y - along * n.x);
    }
}

void MovableSpline::measureLength() {
    length_.assign(1, 0);
    for (std::size_t i = 0; i < intervals_.size(); ++i) {
        double own = 0;
        for (int g = 0; g < 3; ++g) {
            own +=
                math::gauss3Weight[g] * intervals_[i].width * norm(sum(gauss_[3 * i + g].first, intervals_[i].first));
        }
        length_.push_back(length_.back() + own);
    }
}

double MovableSpline::lengthTo(double t) const {
    const int i = intervalAt(intervals_, t);
    return length_[i] + (t - intervals_[i].start) / intervals_[i].width * (length_[i + 1] - length_[i]);
}

void MovableSpline::evenOut(std::vector<double>& parameters) {
    measureLength();
    math::BandedLeastSquares<6, 2> triangle;
    triangle.clear(controls());
    for (int j = 0; j < controls(); ++j) {
        const double wanted = sites_[j] * length_.back();
        const std::size_t i = math::intervalOf(length_, wanted);
        const QuinticInterval& interval = intervals_[i];
        double u = std::clamp((wanted - length_[i]) / (length_[i + 1] - length_[i]), 0.0, 1.0);
        for (int step = 0; step < 2; ++step) {
            double own = 0;
            for (int g = 0; g < 3; ++g) {
                const auto basis =
                    valuesAt(interval, interval.start + u * ((1 + math::gauss3Off[g]) / 2) * interval.width);
                own += math::gauss3Weight[g] * u * interval.width * norm(sum(basis.first, interval.first));
            }
            const auto basis = valuesAt(interval, interval.start + u * interval.width);
            u += (wanted - length_[i] - own) / (interval.width * norm(sum(basis.first, interval.first)));
            u = std::clamp(u, 0.0, 1.0);
        }
        const Vector r = sum(valuesAt(interval, interval.start + u * interval.width).value, interval.first);
        math::BandedLeastSquares<6, 2>::Row row{};
        std::copy(atSites_[j].value.begin(), atSites_[j].value.end(), row.begin());
        row[6] = r.x;
        row[7] = r.y;
        triangle.add(intervals_[intervalAt(intervals_, sites_[j])].first, row);
    }
    for (double& t : parameters) t = std::clamp(lengthTo(t) / length_.back(), 0.0, 1.0);
    triangle.solve(0, x);
    triangle.solve(1, y);
}

double MovableSpline::speedVariation() const {
    double mean = 0, least = 1e300, most = 0;
    for (std::size_t g = 0; g < gauss_.size(); ++g) {
        const QuinticInterval& interval = intervals_[g / 3];
        const double speed = norm(sum(gauss_[g].first, interval.first));
        mean += math::gauss3Weight[g % 3] * interval.width * speed;
        least = std::min(least, speed);
        most = std::max(most, speed);
    }
    return std::max(most - mean, mean - least) / mean;
}

}  // namespace fayline::line
