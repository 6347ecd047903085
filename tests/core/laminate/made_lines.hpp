// Lines made from a formula for their curvature, for checks that need no fairing.
#pragma once

#include <cmath>
#include <functional>
#include <vector>

#include "core/line/line.hpp"

namespace fayline::made {

// The line of curvature `curvature`(s), s in 0..length_m, from `start` with `heading_rad`. Pieces of degree 5 that have
// place, heading and curvature of the formula at every one of `pieces` joints.
inline line::Line lineOf(const std::function<double(double)>& curvature, double length_m, double heading_rad = 0,
                         line::Xy start = {}, int pieces = 200) {
    struct Joint {
        double x, y, heading, k;
    };
    // Gauss's three points on small steps for heading, then for place.
    constexpr int fine = 8;
    const double outer = std::sqrt(0.6);
    const double h = length_m / pieces / fine;
    const auto turn = [&](double from, double to) {
        const double m = (from + to) / 2;
        const double d = (to - from) / 2;
        return d * (5 * curvature(m - outer * d) + 8 * curvature(m) + 5 * curvature(m + outer * d)) / 9;
    };
    std::vector<Joint> joints{{start.x_m, start.y_m, heading_rad, curvature(0)}};
    Joint at = joints.front();
    double s = 0;
    for (int i = 1; i <= pieces; ++i) {
        for (int j = 0; j < fine; ++j, s += h) {
            const double a1 = at.heading + turn(s, s + h / 2 * (1 - outer));
            const double a2 = at.heading + turn(s, s + h / 2);
            const double a3 = at.heading + turn(s, s + h / 2 * (1 + outer));
            at.x += h / 18 * (5 * std::cos(a1) + 8 * std::cos(a2) + 5 * std::cos(a3));
            at.y += h / 18 * (5 * std::sin(a1) + 8 * std::sin(a2) + 5 * std::sin(a3));
            at.heading += turn(s, s + h);
        }
        at.k = curvature(std::min(s, length_m));
        joints.push_back(at);
    }

    const double piece = length_m / pieces;
    std::vector<double> knots(6, 0.0);
    std::vector<line::Xy> coefficients;
    for (int i = 0; i < pieces; ++i) {
        const Joint& a = joints[i];
        const Joint& b = joints[i + 1];
        const double ca = std::cos(a.heading), sa = std::sin(a.heading);
        const double cb = std::cos(b.heading), sb = std::sin(b.heading);
        const double v = piece / 5;           // first derivative over the degree
        const double w = piece * piece / 20;  // second derivative over degree 5 times 4
        if (i == 0) coefficients.push_back({a.x, a.y});
        coefficients.push_back({a.x + v * ca, a.y + v * sa});
        coefficients.push_back({a.x + 2 * v * ca - w * a.k * sa, a.y + 2 * v * sa + w * a.k * ca});
        coefficients.push_back({b.x - 2 * v * cb - w * b.k * sb, b.y - 2 * v * sb + w * b.k * cb});
        coefficients.push_back({b.x - v * cb, b.y - v * sb});
        coefficients.push_back({b.x, b.y});
        const int times = i + 1 == pieces ? 6 : 5;
        for (int j = 0; j < times; ++j) knots.push_back((i + 1) * piece);
    }
    return {knots, coefficients};
}

// An arc of a circle that turns left (radius > 0) or right (radius < 0) by `turn_rad` > 0.
inline line::Line arc(double radius_m, double turn_rad, double heading_rad = 0, line::Xy start = {}) {
    const double length = std::abs(radius_m) * turn_rad;
    return lineOf([radius_m](double) { return 1 / radius_m; }, length, heading_rad, start);
}

inline line::Line straight(double length_m) {
    return lineOf([](double) { return 0.0; }, length_m);
}

}  // namespace fayline::made
