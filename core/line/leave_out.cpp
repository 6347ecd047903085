#include "core/line/leave_out.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <limits>

namespace fayline::line {

namespace {

constexpr int neighboursEachSide = 6;
constexpr int mostPoints = 2 * neighboursEachSide;
constexpr int fewestPoints = 5;

using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::ColMajor, mostPoints + 1, mostPoints + 1>;
using Vector = Eigen::Matrix<double, Eigen::Dynamic, 1, Eigen::ColMajor, mostPoints + 1, 1>;
using TwoColumns = Eigen::Matrix<double, Eigen::Dynamic, 2, Eigen::ColMajor, mostPoints + 1, 2>;
using ThreeColumns = Eigen::Matrix<double, Eigen::Dynamic, 3, Eigen::ColMajor, mostPoints + 1, 3>;

// The neighbours of a point and the chord-length parameter of each, scaled to 0..1.
struct Window {
    std::vector<int> members;
    Vector s;
    double judged = 0;  // parameter of the point that is judged
};

Window windowAround(const std::vector<Xy>& points, const std::vector<bool>& leftOut, int point) {
    const int count = static_cast<int>(points.size());
    std::vector<int> before;
    std::vector<int> after;
    for (int i = point - 1; i >= 0 && static_cast<int>(before.size()) < mostPoints; --i)
        if (!leftOut[i]) before.push_back(i);
    for (int i = point + 1; i < count && static_cast<int>(after.size()) < mostPoints; ++i)
        if (!leftOut[i]) after.push_back(i);
    // Near an end the window reaches further to the other side.
    const int wantBefore = std::max(neighboursEachSide, mostPoints - static_cast<int>(after.size()));
    const int takeBefore = std::min<int>(static_cast<int>(before.size()), wantBefore);
    const int takeAfter =
        std::min<int>(static_cast<int>(after.size()), mostPoints - std::min(takeBefore, neighboursEachSide));

    Window window;
    for (int i = takeBefore - 1; i >= 0; --i) window.members.push_back(before[i]);
    const int firstAfter = static_cast<int>(window.members.size());
    for (int i = 0; i < takeAfter && static_cast<int>(window.members.size()) < mostPoints; ++i)
        window.members.push_back(after[i]);

    const int size = static_cast<int>(window.members.size());
    window.s.resize(size);
    double s = 0;
    for (int i = 0; i < size; ++i) {
        if (i > 0) {
            const Xy& a = points[window.members[i - 1]];
            const Xy& b = points[window.members[i]];
            s += std::hypot(b.x_m - a.x_m, b.y_m - a.y_m);
        }
        window.s[i] = s;
    }
    if (size == 0 || s <= 0) return window;

    // The judged point's own place comes from its foot on the chord between its neighbours, so that a slip along the
    // line or across it does not move it; outside the window, from the end's chord.
    const auto foot = [&](int a, int b) {
        const Xy& p = points[window.members[a]];
        const Xy& q = points[window.members[b]];
        const double chord = std::hypot(q.x_m - p.x_m, q.y_m - p.y_m);
        const double along =
            ((points[point].x_m - p.x_m) * (q.x_m - p.x_m) + (points[point].y_m - p.y_m) * (q.y_m - p.y_m)) / chord;
        return window.s[a] + along;
    };
    if (firstAfter == 0) {
        window.judged = std::min(foot(0, 1), 0.0);
    } else if (firstAfter >= size) {
        window.judged = std::max(foot(size - 2, size - 1), s);
    } else {
        window.judged = std::clamp(foot(firstAfter - 1, firstAfter), window.s[firstAfter - 1], window.s[firstAfter]);
    }
    // The noise starts a little before the first point, so that parameters are positive everywhere.
    const double shift = std::min(window.judged, 0.0);
    for (int i = 0; i < size; ++i) window.s[i] = (window.s[i] - shift) / (s - shift);
    window.judged = (window.judged - shift) / (s - shift);
    return window;
}

}  // namespace

double processNoiseCovariance(double s, double t) {
    const double a = std::min(s, t);
    const double b = std::max(s, t);
    return a * a * a * (a * a / 120 - a * b / 24 + b * b / 12);
}

namespace {

// What the neighbours in a window say for one strength of the wandering.
class Forecast {
public:
    Forecast(const Window& window, const std::vector<Xy>& points, int point, double readTo_m,
             const std::vector<Read>& reads)
        : window_(window), origin_(points[window.members[0]]) {
        const int n = static_cast<int>(window.members.size());
        const double reading = readTo_m * readTo_m / 12;
        noises_ = Vector::Constant(n, reading);
        noise_ = reading;
        if (!reads.empty()) {
            // Square to the line, which goes from each point's one neighbour to the other.
            const auto share = [&](int from, int to, int of) {
                const double dx = points[to].x_m - points[from].x_m, dy = points[to].y_m - points[from].y_m;
                const double size = std::hypot(dx, dy);
                return size > 0 ? scatterShare(reads[of], dx / size, dy / size) : 1.0;
            };
            for (int i = 0; i < n; ++i) {
                const int from = window.members[std::max(i - 1, 0)], to = window.members[std::min(i + 1, n - 1)];
                noises_[i] *= std::pow(share(from, to, window.members[i]), 2);
            }
            const auto after = std::upper_bound(window.members.begin(), window.members.end(), point);
            const int next = std::clamp(static_cast<int>(after - window.members.begin()), 1, n - 1);
            noise_ *= std::pow(share(window.members[next - 1], window.members[next], point), 2);
        }
        processNoise_.resize(n, n);
        level_.resize(n, 3);
        xy_.resize(n, 2);
        for (int i = 0; i < n; ++i) {
            for (int j = 0; j <= i; ++j)
                processNoise_(i, j) = processNoise_(j, i) = processNoiseCovariance(window.s[i], window.s[j]);
            level_.row(i) << 1, window.s[i], window.s[i] * window.s[i];
            const Xy& place = points[window.members[i]];
            xy_.row(i) << place.x_m - origin_.x_m, place.y_m - origin_.y_m;
        }
        // The scale of the strength: that of a turn of about one radian.
        span_ = xy_.row(n - 1).norm() + xy_.row(n / 2).norm();
    }

    // Solves for a strength 10^`step` times the scale and returns the logarithm of its likelihood, up to a constant.
    double likelihoodAt(int step) {
        strength_ = span_ * span_ * std::pow(10.0, step);
        Matrix spread = strength_ * processNoise_;
        spread.diagonal() += noises_;
        factor_.compute(spread);
        if (factor_.info() != Eigen::Success) return -std::numeric_limits<double>::infinity();
        const ThreeColumns solvedLevel = factor_.solve(level_);
        levelFactor_.compute(level_.transpose() * solvedLevel);
        mean_ = levelFactor_.solve(solvedLevel.transpose() * xy_);
        const TwoColumns rest = xy_ - level_ * mean_;
        solvedRest_ = factor_.solve(rest);
        const double squares = (rest.array() * solvedRest_.array()).sum();
        const double logSpread = 2 * factor_.matrixLLT().diagonal().array().log().sum();
        const double logLevel = 2 * levelFactor_.matrixLLT().diagonal().array().log().sum();
        return -0.5 * squares - logSpread - logLevel;  // of both coordinates
    }

    // What follows for the judged point, at the strength last solved for.
    LeftOut foretell() const {
        const double at = window_.judged;
        const Eigen::Vector3d level(1, at, at * at);
        const Eigen::Vector3d levelRate(0, 1, 2 * at);
        constexpr double small = 1e-3;  // the wandering's own slope by a difference: only the direction hangs on it
        const int n = static_cast<int>(window_.members.size());
        Vector weight(n);
        Vector weightRate(n);
        for (int i = 0; i < n; ++i) {
            const double here = processNoiseCovariance(window_.s[i], at);
            weight[i] = strength_ * here;
            weightRate[i] = strength_ * (processNoiseCovariance(window_.s[i], at + small) - here) / small;
        }
        const Eigen::RowVector2d foretold = level.transpose() * mean_ + weight.transpose() * solvedRest_;
        Eigen::RowVector2d direction = levelRate.transpose() * mean_ + weightRate.transpose() * solvedRest_;
        direction.normalize();

        const Vector solvedWeight = factor_.solve(weight);
        const Eigen::Vector3d unexplained = level - level_.transpose() * solvedWeight;
        const double variance = strength_ * processNoiseCovariance(at, at) - weight.dot(solvedWeight) +
                                unexplained.dot(levelFactor_.solve(unexplained)) + noise_;
        return LeftOut{.scatter_m = std::sqrt(std::max(variance, noise_)),
                       .foretold = {origin_.x_m + foretold[0], origin_.y_m + foretold[1]},
                       .direction = {direction[0], direction[1]}};
    }

private:
    const Window& window_;
    Vector noises_;     // variances of the readings, square to the line
    double noise_ = 0;  // that of the judged point
    Xy origin_;
    double span_ = 0;
    Matrix processNoise_;
    ThreeColumns level_;
    TwoColumns xy_;

    double strength_ = 0;
    Eigen::LLT<Matrix> factor_;
    Eigen::LLT<Eigen::Matrix3d> levelFactor_;
    Eigen::Matrix<double, 3, 2> mean_;
    TwoColumns solvedRest_;
};

}  // namespace

LeftOut leaveOneOut(const std::vector<Xy>& points, const std::vector<bool>& leftOut, int point, double readTo_m,
                    const std::vector<Read>& reads) {
    const Window window = windowAround(points, leftOut, point);
    if (static_cast<int>(window.members.size()) < fewestPoints) return {};

    // The likeliest strength, by steps of 100 and then of 10.
    Forecast forecast(window, points, point, readTo_m, reads);
    int best = 0;
    double bestLikelihood = -std::numeric_limits<double>::infinity();
    const auto consider = [&](int step) {
        const double likelihood = forecast.likelihoodAt(step);
        if (likelihood <= bestLikelihood) return;
        bestLikelihood = likelihood;
        best = step;
    };
    for (int step = -8; step <= 4; step += 2) consider(step);
    for (const int step : {best - 1, best + 1}) consider(step);
    if (bestLikelihood == -std::numeric_limits<double>::infinity()) return {};

    forecast.likelihoodAt(best);
    LeftOut judged = forecast.foretell();
    judged.away_m = judged.awayIfAt(points[point].x_m, points[point].y_m);
    return judged;
}

// A window takes at most so many points on either side that are asked.
std::array<int, 2> reachOf(const std::vector<bool>& leftOut, int point) {
    const int last = static_cast<int>(leftOut.size()) - 1;
    int from = point, to = point;
    for (int asked = 0; from > 0 && asked <= mostPoints; --from) asked += leftOut[from - 1] ? 0 : 1;
    for (int asked = 0; to < last && asked <= mostPoints; ++to) asked += leftOut[to + 1] ? 0 : 1;
    return {from, to};
}

std::vector<LeftOut> leaveEachOut(const std::vector<Xy>& points, const std::vector<bool>& leftOut, double readTo_m,
                                  const std::vector<Read>& reads) {
    std::vector<LeftOut> judged(points.size());
    for (int i = 0; i < static_cast<int>(points.size()); ++i) {
        judged[i] = leaveOneOut(points, leftOut, i, readTo_m, reads);
    }
    return judged;
}

}  // namespace fayline::line
