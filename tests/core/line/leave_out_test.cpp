#include "core/line/leave_out.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace fayline::line {
namespace leave_out_test {

constexpr double sixteenth_m = 0.0015875;

std::vector<Xy> arc(double radius_m, double turn_rad, int count) {
    std::vector<Xy> points;
    for (int i = 0; i < count; ++i) {
        const double angle = turn_rad * i / (count - 1);
        points.push_back({std::round(radius_m * std::sin(angle) / sixteenth_m) * sixteenth_m,
                          std::round(radius_m * (1 - std::cos(angle)) / sixteenth_m) * sixteenth_m});
    }
    return points;
}

// Source: the integral of (s-u)^2 (t-u)^2 / 4 from 0 to the lesser of s and t, by Simpson's rule in many steps (D).
TEST(LeaveOut, CovarianceIsThatOfWhiteNoiseSummedThreeTimes) {
    for (const auto& [s, t] : std::vector<std::pair<double, double>>{{0.3, 0.8}, {0.5, 0.5}, {1, 0.1}}) {
        const int steps = 1000;
        const double to = std::min(s, t);
        double sum = 0;
        for (int i = 0; i <= steps; ++i) {
            const double u = to * i / steps;
            const double weight = i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight * (s - u) * (s - u) * (t - u) * (t - u) / 4;
        }
        EXPECT_NEAR(processNoiseCovariance(s, t), sum * to / steps / 3, 1e-12);
    }
}

TEST(LeaveOut, PointsOfAnArcAgreeWithinTheirRounding) {
    const auto points = arc(1.2, 1.0, 12);
    for (const LeftOut& judged : leaveEachOut(points, std::vector<bool>(12, false), sixteenth_m))
        EXPECT_LT(std::abs(judged.times()), 4);
}

TEST(LeaveOut, APointMovedSquareToTheLineIsAwayByThatMuch) {
    auto points = arc(1.2, 1.0, 12);
    const double angle = 5.0 / 11;
    points[5].x_m -= 0.02 * std::sin(angle);
    points[5].y_m += 0.02 * std::cos(angle);  // to the left, toward the middle of the arc
    const LeftOut judged = leaveOneOut(points, std::vector<bool>(12, false), 5, sixteenth_m);
    EXPECT_NEAR(judged.away_m, 0.02, 0.0015);
    EXPECT_GT(judged.times(), 10);
}

TEST(LeaveOut, ThePointSetAsideDoesNotSpeakOfOthers) {
    auto points = arc(1.2, 1.0, 12);
    std::vector<bool> aside(12, false);
    const LeftOut before = leaveOneOut(points, aside, 6, sixteenth_m);
    points[5].y_m += 0.05;
    aside[5] = true;
    const LeftOut without = leaveOneOut(points, aside, 6, sixteenth_m);
    EXPECT_NEAR(without.away_m, before.away_m, 0.002);
}

TEST(LeaveOut, TurnedAndMirroredPointsAreJudgedAlike) {
    auto points = arc(1.2, 1.0, 12);
    points[4].y_m += 0.004;
    std::vector<Xy> turned;
    std::vector<Xy> mirrored;
    for (const Xy& p : points) {
        turned.push_back(
            {p.x_m * std::cos(0.7) - p.y_m * std::sin(0.7), p.x_m * std::sin(0.7) + p.y_m * std::cos(0.7)});
        mirrored.push_back({p.x_m, -p.y_m});
    }
    const std::vector<bool> none(12, false);
    for (int i = 0; i < 12; ++i) {
        const double times = leaveOneOut(points, none, i, sixteenth_m).times();
        EXPECT_NEAR(leaveOneOut(turned, none, i, sixteenth_m).times(), times, 1e-6 * (1 + std::abs(times)));
        EXPECT_NEAR(leaveOneOut(mirrored, none, i, sixteenth_m).times(), -times, 1e-6 * (1 + std::abs(times)));
    }
}

TEST(LeaveOut, FourNeighboursSayNothing) {
    EXPECT_EQ(leaveOneOut(arc(1.2, 1.0, 5), std::vector<bool>(5, false), 2, sixteenth_m).scatter_m, 0);
}

}  // namespace leave_out_test
}  // namespace fayline::line
