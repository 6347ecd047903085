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

double wanderCovariance(double s, double t) {
    const double a = std::min(s, t);
    const double b = std::max(s, t);
    return a * a * a * (a * a / 120 - a * b / 24 + b * b / 12);
}

LeftOut leaveOneOut(const std::vector<Xy>& points, const std::vector<bool>& leftOut, int point, double readTo_m) {
    const Window window = windowAround(points, leftOut, point);
    const int n = static_cast<int>(window.members.size());
    if (n < fewestPoints) return {};

    Matrix wander(n, n);
    Vector wanderJudged(n);
    ThreeColumns level(n, 3);
    TwoColumns xy(n, 2);
    for (int i = 0; i < n; ++i) {
        for (int j = 0; j <= i; ++j) wander(i, j) = wander(j, i) = wanderCovariance(window.s[i], window.s[j]);
        wanderJudged[i] = wanderCovariance(window.s[i], window.judged);
        level.row(i) << 1, window.s[i], window.s[i] * window.s[i];
        xy.row(i) << points[window.members[i]].x_m, points[window.members[i]].y_m;
    }
    xy.rowwise() -= xy.row(0).eval();
    const Eigen::Vector3d levelJudged(1, window.judged, window.judged * window.judged);
    const Eigen::Vector3d rateJudged(0, 1, 2 * window.judged);

    const double noise = readTo_m * readTo_m / 12;
    LeftOut best;
    double bestLikelihood = -std::numeric_limits<double>::infinity();
    // Strength of the wandering, in steps of a factor 10 in variance around what a turn of one radian would need.
    const double span = xy.row(n - 1).norm() + xy.row(n / 2).norm();
    for (int step = -8; step <= 4; ++step) {
        const double strength = span * span * std::pow(10.0, step);
        Matrix spread = strength * wander;
        spread.diagonal().array() += noise;
        const Eigen::LLT<Matrix> factor(spread);
        if (factor.info() != Eigen::Success) continue;
        const ThreeColumns solvedLevel = factor.solve(level);
        const Eigen::Matrix3d levelSpread = level.transpose() * solvedLevel;
        const Eigen::LLT<Eigen::Matrix3d> levelFactor(levelSpread);
        const TwoColumns solvedXy = factor.solve(xy);
        const Eigen::Matrix<double, 3, 2> mean = levelFactor.solve(level.transpose() * solvedXy);
        const TwoColumns rest = xy - level * mean;
        const TwoColumns solvedRest = factor.solve(rest);

        const double squares = (rest.array() * solvedRest.array()).sum();
        const double logSpread = 2 * factor.matrixLLT().diagonal().array().log().sum();
        const double logLevel = 2 * levelFactor.matrixLLT().diagonal().array().log().sum();
        const double likelihood = -0.5 * squares - logSpread - logLevel;  // both coordinates
        if (likelihood <= bestLikelihood) continue;
        bestLikelihood = likelihood;

        const Vector weight = strength * wanderJudged;
        const Eigen::RowVector2d foretold = levelJudged.transpose() * mean + weight.transpose() * solvedRest;
        // Direction of the line there, from the mean parabola and the wandering's own slope by a small difference.
        constexpr double small = 1e-3;
        Vector weightAhead(n);
        for (int i = 0; i < n; ++i)
            weightAhead[i] =
                strength * (wanderCovariance(window.s[i], window.judged + small) - wanderJudged[i]) / small;
        Eigen::RowVector2d direction = rateJudged.transpose() * mean + weightAhead.transpose() * solvedRest;
        direction.normalize();

        const Vector solvedWeight = factor.solve(weight);
        const Eigen::Vector3d unexplained = levelJudged - level.transpose() * solvedWeight;
        const double variance = strength * wanderCovariance(window.judged, window.judged) - weight.dot(solvedWeight) +
                                unexplained.dot(levelFactor.solve(unexplained)) + noise;

        const Xy& origin = points[window.members[0]];
        best.scatter_m = std::sqrt(std::max(variance, noise));
        best.foretold = {origin.x_m + foretold[0], origin.y_m + foretold[1]};
        best.direction = {direction[0], direction[1]};
    }
    if (best.scatter_m > 0) best.away_m = best.awayIfAt(points[point].x_m, points[point].y_m);
    return best;
}

std::vector<LeftOut> leaveEachOut(const std::vector<Xy>& points, const std::vector<bool>& leftOut, double readTo_m) {
    std::vector<LeftOut> judged(points.size());
    for (int i = 0; i < static_cast<int>(points.size()); ++i) judged[i] = leaveOneOut(points, leftOut, i, readTo_m);
    return judged;
}

}  // namespace fayline::line
