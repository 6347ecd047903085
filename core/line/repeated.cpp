#include "core/line/repeated.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cctype>
#include <cmath>
#include <limits>
#include <map>
#include <optional>

#include "core/units/units.hpp"

namespace fayline::line {

namespace {

constexpr int mostRows = 40;       // the model is dense; longer rows are seldom read from one table
constexpr double standsOut = 2.5;  // standard deviations: below, all points agree and nothing is looked for
constexpr double agrees = 3.5;     // ... within which all must agree once the kind is put right
// By how much the logarithm of the likelihood must rise, and by how much more than for any one point moved at will. A
// shift of a kind shows only where the kind meets the others, so much of the evidence fits other slips as well.
constexpr double leastEvidence = 12;
constexpr double leastLead = 8;

std::vector<LeftOut> judgeAll(const std::vector<Xy>& points, double readTo_m, const std::vector<Read>& reads) {
    return leaveEachOut(points, std::vector<bool>(points.size(), false), readTo_m, reads);
}

double largestTimes(const std::vector<LeftOut>& judged) {
    double largest = 0;
    for (const LeftOut& one : judged) largest = std::max(largest, std::abs(one.times()));
    return largest;
}

// Logarithm of the likelihood of all points together, at the strength of wandering that suits them best, up to a
// constant.
double likelihood(const std::vector<Xy>& points, double readTo_m) {
    const int n = static_cast<int>(points.size());
    Eigen::VectorXd s(n);
    s[0] = 0;
    for (int i = 1; i < n; ++i)
        s[i] = s[i - 1] + std::hypot(points[i].x_m - points[i - 1].x_m, points[i].y_m - points[i - 1].y_m);
    const double length = s[n - 1];
    s /= length;

    Eigen::MatrixXd processNoise(n, n);
    Eigen::MatrixXd level(n, 3);
    Eigen::MatrixXd xy(n, 2);
    for (int i = 0; i < n; ++i) {
        for (int j = 0; j < n; ++j) processNoise(i, j) = processNoiseCovariance(s[i], s[j]);
        level.row(i) << 1, s[i], s[i] * s[i];
        xy.row(i) << points[i].x_m - points[0].x_m, points[i].y_m - points[0].y_m;
    }

    double best = -std::numeric_limits<double>::infinity();
    for (int step = -6; step <= 5; ++step) {
        Eigen::MatrixXd spread = length * length * std::pow(10.0, step) * processNoise;
        spread.diagonal().array() += readTo_m * readTo_m / 12;
        const Eigen::LLT<Eigen::MatrixXd> factor(spread);
        if (factor.info() != Eigen::Success) continue;
        const Eigen::MatrixXd solvedLevel = factor.solve(level);
        const Eigen::Matrix3d information = level.transpose() * solvedLevel;
        const Eigen::LLT<Eigen::Matrix3d> informationFactor(information);
        const Eigen::MatrixXd mean = informationFactor.solve(solvedLevel.transpose() * xy);
        const Eigen::MatrixXd rest = xy - level * mean;
        const double squares = (rest.array() * factor.solve(rest).array()).sum();
        best = std::max(best, -0.5 * squares - 2 * factor.matrixLLT().diagonal().array().log().sum() -
                                  2 * informationFactor.matrixLLT().diagonal().array().log().sum());
    }
    return best;
}

// The likelihood when the one point that gains most by it is moved onto the line that its neighbours foretell.
double likelihoodWithOneMoved(const std::vector<Xy>& points, const std::vector<LeftOut>& judged, double readTo_m) {
    double best = -std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (std::abs(judged[i].times()) < standsOut) continue;
        std::vector<Xy> moved = points;
        moved[i].x_m += judged[i].away_m * judged[i].direction.y_m;
        moved[i].y_m -= judged[i].away_m * judged[i].direction.x_m;
        best = std::max(best, likelihood(moved, readTo_m));
    }
    return best;
}

struct Step {
    double by_m;
    std::string name;
};

std::vector<Step> stepsOf(double takeOff_m, units::LengthNotation notation) {
    std::vector<Step> steps;
    if (notation == units::LengthNotation::millimetres) {
        steps = {{0.010, "10 mm"}, {0.100, "100 mm"}, {0.005, "5 mm"}};
    } else {
        steps = {{units::inch_m, "1 inch"},
                 {units::foot_m, "1 foot"},
                 {units::inch_m / 2, "half an inch"},
                 {units::inch_m / 8, "1 eighth"}};
    }
    if (takeOff_m != 0) steps.push_back({std::abs(takeOff_m), "one thickness"});
    return steps;
}

}  // namespace

std::vector<std::vector<int>> kindsOfPoints(const std::vector<std::string>& labels) {
    std::map<std::string, std::vector<int>> kinds;
    for (int i = 0; i < static_cast<int>(labels.size()); ++i) {
        std::string letters;
        for (const char c : labels[i])
            if (std::isalpha(static_cast<unsigned char>(c))) letters += static_cast<char>(std::tolower(c));
        if (!letters.empty()) kinds[letters].push_back(i);
    }
    std::vector<std::vector<int>> large;
    for (const auto& [letters, members] : kinds)
        if (members.size() >= 3 && members.size() + 3 <= labels.size()) large.push_back(members);
    return large;
}

std::vector<RepeatedSlip> repeatedSlips(const std::vector<Xy>& points, const std::vector<LeftOut>& judged,
                                        const std::vector<std::string>& labels, double readTo_m, double takeOff_m,
                                        units::LengthNotation notation, const std::vector<Read>& reads,
                                        const std::atomic<bool>& stop) {
    if (static_cast<int>(points.size()) > mostRows) return {};
    const std::vector<std::vector<int>> kinds = kindsOfPoints(labels);
    if (kinds.empty()) return {};
    if (largestTimes(judged) < standsOut) return {};

    const double asRead = likelihood(points, readTo_m);
    double best = std::max(asRead + leastEvidence, likelihoodWithOneMoved(points, judged, readTo_m) + leastLead);
    std::optional<RepeatedSlip> found;
    for (const std::vector<int>& kind : kinds) {
        for (const char axis : {'x', 'y'}) {
            const Read grid = axis == 'x' ? Read::y : Read::x;
            if (std::ranges::any_of(kind, [&](int i) { return reads[i] == grid; })) continue;
            for (const Step& step : stepsOf(takeOff_m, notation)) {
                for (const double back_m : {step.by_m, -step.by_m}) {
                    if (stop) return {};
                    std::vector<Xy> righted = points;
                    for (const int i : kind) (axis == 'x' ? righted[i].x_m : righted[i].y_m) += back_m;
                    const double now = likelihood(righted, readTo_m);
                    if (now <= best || largestTimes(judgeAll(righted, readTo_m, reads)) > agrees) continue;
                    best = now;
                    found = {kind, axis, back_m, step.name + (back_m < 0 ? " high" : " low")};
                }
            }
        }
    }
    if (!found) return {};
    return {*found};
}

}  // namespace fayline::line
