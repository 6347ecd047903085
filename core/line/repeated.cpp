#include "core/line/repeated.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cctype>
#include <cmath>
#include <limits>
#include <map>

#include "core/line/leave_out.hpp"
#include "core/measure/units.hpp"

namespace fayline::line {

namespace {

constexpr int mostPoints = 60;     // the model is dense; longer rows are read from one table seldom
constexpr double standsOut = 4.0;  // standard deviations from which a point does not agree with the others
constexpr double agrees = 3.5;
constexpr double shiftIsSeen = 6.0;

double largestTimes(const std::vector<Xy>& points, double readTo_m) {
    double largest = 0;
    for (const LeftOut& judged : leaveEachOut(points, std::vector<bool>(points.size(), false), readTo_m))
        largest = std::max(largest, std::abs(judged.times()));
    return largest;
}

bool onePointAloneExplains(const std::vector<Xy>& points, double readTo_m) {
    std::vector<bool> aside(points.size(), false);
    for (std::size_t i = 0; i < points.size(); ++i) {
        aside[i] = true;
        const std::vector<LeftOut> judged = leaveEachOut(points, aside, readTo_m);
        bool agree = true;
        for (std::size_t k = 0; k < judged.size(); ++k) agree &= k == i || std::abs(judged[k].times()) < agrees;
        aside[i] = false;
        if (agree) return true;
    }
    return false;
}

struct Shift {
    double by_m = 0;
    double scatter_m = std::numeric_limits<double>::infinity();
};

// The shift of coordinate `axis` of the points in `kind` that agrees best with one fair line.
Shift bestShift(const std::vector<Xy>& points, const std::vector<int>& kind, char axis, double readTo_m) {
    const int n = static_cast<int>(points.size());
    Eigen::VectorXd s(n);
    s[0] = 0;
    for (int i = 1; i < n; ++i)
        s[i] = s[i - 1] + std::hypot(points[i].x_m - points[i - 1].x_m, points[i].y_m - points[i - 1].y_m);
    s /= s[n - 1];

    Eigen::MatrixXd wander(n, n);
    Eigen::MatrixXd level(n, 4);
    Eigen::VectorXd value(n);
    for (int i = 0; i < n; ++i) {
        for (int j = 0; j < n; ++j) wander(i, j) = wanderCovariance(s[i], s[j]);
        level.row(i) << 1, s[i], s[i] * s[i], 0;
        value[i] = axis == 'x' ? points[i].x_m - points[0].x_m : points[i].y_m - points[0].y_m;
    }
    for (const int i : kind) level(i, 3) = 1;

    const double noise = readTo_m * readTo_m / 12;
    const double span = std::hypot(points[n - 1].x_m - points[0].x_m, points[n - 1].y_m - points[0].y_m);
    Shift best;
    double bestLikelihood = -std::numeric_limits<double>::infinity();
    for (int step = -6; step <= 5; ++step) {
        Eigen::MatrixXd spread = span * span * std::pow(10.0, step) * wander;
        spread.diagonal().array() += noise;
        const Eigen::LLT<Eigen::MatrixXd> factor(spread);
        if (factor.info() != Eigen::Success) continue;
        const Eigen::MatrixXd solvedLevel = factor.solve(level);
        const Eigen::Matrix4d information = level.transpose() * solvedLevel;
        const Eigen::LLT<Eigen::Matrix4d> informationFactor(information);
        const Eigen::Vector4d mean = informationFactor.solve(solvedLevel.transpose() * value);
        const Eigen::VectorXd rest = value - level * mean;
        const double likelihood = -0.5 * rest.dot(factor.solve(rest)) -
                                  factor.matrixLLT().diagonal().array().log().sum() -
                                  informationFactor.matrixLLT().diagonal().array().log().sum();
        if (likelihood <= bestLikelihood) continue;
        bestLikelihood = likelihood;
        const Eigen::Vector4d unit = informationFactor.solve(Eigen::Vector4d::Unit(3));
        best = {mean[3], std::sqrt(std::max(unit[3], 0.0))};
    }
    return best;
}

struct Step {
    double by_m;
    std::string name;
};

std::vector<Step> stepsOf(double takeOff_m, measure::LengthNotation notation) {
    std::vector<Step> steps;
    if (notation == measure::LengthNotation::millimetres) {
        steps = {{0.010, "10 mm"}, {0.100, "100 mm"}, {0.005, "5 mm"}};
    } else {
        steps = {{measure::inch_m, "1 inch"},
                 {measure::foot_m, "1 foot"},
                 {measure::inch_m / 2, "half an inch"},
                 {measure::inch_m / 8, "1 eighth"}};
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

std::vector<RepeatedSlip> repeatedSlips(const std::vector<Xy>& points, const std::vector<std::string>& labels,
                                        double readTo_m, double takeOff_m, measure::LengthNotation notation) {
    std::vector<RepeatedSlip> found;
    if (static_cast<int>(points.size()) > mostPoints) return found;
    const std::vector<std::vector<int>> kinds = kindsOfPoints(labels);
    if (kinds.empty() || largestTimes(points, readTo_m) < standsOut) return found;
    if (onePointAloneExplains(points, readTo_m)) return found;

    for (const std::vector<int>& kind : kinds) {
        for (const char axis : {'x', 'y'}) {
            const Shift shift = bestShift(points, kind, axis, readTo_m);
            if (std::abs(shift.by_m) < shiftIsSeen * shift.scatter_m) continue;
            for (const Step& step : stepsOf(takeOff_m, notation)) {
                if (std::abs(std::abs(shift.by_m) - step.by_m) > 3 * shift.scatter_m + readTo_m) continue;
                const double back_m = shift.by_m > 0 ? -step.by_m : step.by_m;
                std::vector<Xy> righted = points;
                for (const int i : kind) (axis == 'x' ? righted[i].x_m : righted[i].y_m) += back_m;
                if (largestTimes(righted, readTo_m) > agrees) continue;
                found.push_back({kind, axis, back_m, step.name + (back_m < 0 ? " high" : " low")});
                break;
            }
        }
    }
    // Two ways of saying the same (this kind is high, all others are low) would confuse: the smaller group is blamed.
    std::sort(found.begin(), found.end(),
              [](const RepeatedSlip& a, const RepeatedSlip& b) { return a.points.size() < b.points.size(); });
    if (found.size() > 1) found.resize(1);
    return found;
}

}  // namespace fayline::line
