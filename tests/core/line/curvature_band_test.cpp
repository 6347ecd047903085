// The band of curvature against the truth, for known curves whose points were rounded.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <functional>
#include <random>
#include <string>
#include <vector>

#include "core/line/fair.hpp"
#include "core/units/units.hpp"

namespace fayline::line {
namespace curvature_band_test {

// A curve given by its curvature along its length; place and heading by summing it up finely.
struct Known {
    std::string name;
    double length_m;
    std::function<double(double)> curvature;  // of the arc length

    std::vector<Place> walked(int parts) const {
        std::vector<Place> places;
        double x = 0.37, y = -0.21, heading = 0.3;
        constexpr int fine = 40;
        const double step = length_m / (parts * fine);
        for (int i = 0; i <= parts * fine; ++i) {
            const double s = i * step;
            if (i % fine == 0) places.push_back({s, x, y, heading, curvature(s), 0});
            const double midway = heading + curvature(s + step / 4) * step / 2;
            x += std::cos(midway) * step;
            y += std::sin(midway) * step;
            heading += curvature(s + step / 2) * step;
        }
        return places;
    }
};

// Curvature along a curve given by its parameter, by arc length.
Known byParameter(const std::string& name, double from, double to, const std::function<double(double)>& speed,
                  const std::function<double(double)>& curvature) {
    constexpr int parts = 4000;
    std::vector<double> length{0}, bend{curvature(from)};
    for (int i = 1; i <= parts; ++i) {
        const double t = from + (to - from) * i / parts;
        length.push_back(length.back() + speed(t - (to - from) / parts / 2) * (to - from) / parts);
        bend.push_back(curvature(t));
    }
    return {name, length.back(), [length, bend](double s) {
                const auto after = std::lower_bound(length.begin() + 1, length.end() - 1, s);
                const auto i = static_cast<std::size_t>(after - length.begin());
                const double share = (s - length[i - 1]) / (length[i] - length[i - 1]);
                return bend[i - 1] + share * (bend[i] - bend[i - 1]);
            }};
}

std::vector<Known> knownCurves() {
    const auto ellipse = [](const std::string& name, double a, double b) {
        const auto speed = [a, b](double t) { return std::hypot(a * std::sin(t), b * std::cos(t)); };
        return byParameter(name, 0, std::acos(-1.0) / 2, speed,
                           [=](double t) { return a * b / std::pow(speed(t), 3); });
    };
    const auto spiral = [](const std::string& name, double from, double to, double length) {  // radius linear along it
        return Known{name, length, [=](double s) { return 1 / (from + (to - from) * s / length); }};
    };
    const auto parabola = [](double focal, double from, double to) {
        return byParameter(
            "parabola", from, to, [=](double t) { return std::sqrt(1 + t * t / (4 * focal * focal)); },
            [=](double t) { return 1 / (2 * focal) / std::pow(1 + t * t / (4 * focal * focal), 1.5); });
    };
    return {{"circle", 1.8, [](double) { return 1 / 1.2; }},
            {"clothoid", 2.0, [](double s) { return 0.1 + 0.6 * s; }},
            {"clothoid from straight", 1.5, [](double s) { return 0.9 * s; }},
            ellipse("ellipse quarter 3:2", 1.5, 1.0),
            ellipse("ellipse quarter 2:1", 1.6, 0.8),
            spiral("logarithmic spiral", 2.0, 0.7, 1.9),
            spiral("logarithmic spiral, wide", 6.0, 2.0, 4.0),
            parabola(0.8, -1.2, 1.5),
            {"sine in curvature", 2.4, [](double s) { return 0.6 + 0.4 * std::sin(2.6 * s); }},
            {"reverse", 2.5, [](double s) { return 0.7 * std::cos(1.3 * s); }},
            {"bump in the middle", 2.2, [](double s) { return 0.2 + 0.8 * std::exp(-std::pow((s - 1.1) / 0.5, 2)); }},
            {"hyperbola-like end", 2.0, [](double s) { return 1 / (0.6 + 0.9 * s * s); }}};
}

TEST(CurvatureBand, HoldsTheTruthNinetyToNinetyNineTimesOfAHundredAtEachPlace) {
    constexpr int places = 20;
    constexpr int each = 50;
    std::mt19937 random(20260502);
    std::vector<int> within(places + 1, 0);
    int count = 0;
    for (const Known& known : knownCurves()) {
        std::vector<int> own(places + 1, 0);
        for (int trial = 0; trial < each; ++trial) {
            const int points = std::uniform_int_distribution<>(9, 21)(random);
            FairInput input;
            input.readTo_m = trial % 2 == 0 ? units::inch_m / 16 : units::inch_m / 8;
            input.fairWithin_m = input.readTo_m;
            const double turn = std::uniform_real_distribution<>(0, 6.28)(random);
            const double shift = std::uniform_real_distribution<>(0, 0.01)(random);
            const auto turned = [&](const Place& at) {
                return Xy{shift + std::cos(turn) * at.x_m - std::sin(turn) * at.y_m,
                          std::sin(turn) * at.x_m + std::cos(turn) * at.y_m};
            };
            const auto rounded = [&](double v) { return input.readTo_m * std::round(v / input.readTo_m); };
            for (const Place& at : known.walked(points - 1)) {
                const Xy xy = turned(at);
                input.points.push_back({rounded(xy.x_m), rounded(xy.y_m)});
            }
            // Half of them are walked from the other end, so that each end of the table meets tight and slack ones.
            const bool back = trial % 4 >= 2;
            if (back) std::ranges::reverse(input.points);
            const FairLine line = fair(input);
            EXPECT_TRUE(line.settled) << known.name;
            ++count;
            const std::vector<Place> truth = known.walked(places);
            for (int i = 0; i <= places; ++i) {
                const Xy xy = turned(truth[i]);
                const double at_m = line.line.nearest(xy.x_m, xy.y_m).at_m;
                const double off = line.line.at(at_m).curvature_per_m - (back ? -1 : 1) * truth[i].curvature_per_m;
                if (std::abs(off) > 1.96 * curvatureSd(line, at_m)) continue;
                ++within[back ? places - i : i];
                ++own[i];
            }
        }
        std::printf("%-26s", known.name.c_str());
        for (const int one : own) std::printf(" %3d", one * 100 / each);
        std::printf(" of 100\n");
    }
    ASSERT_EQ(count, 600);
    for (int i = 0; i <= places; ++i) {
        const double share = static_cast<double>(within[i]) / count;
        EXPECT_GE(share, 0.90) << "place " << i << " of " << places;
        EXPECT_LE(share, 0.99) << "place " << i << " of " << places;
    }
}

}  // namespace curvature_band_test
}  // namespace fayline::line
