// Fair lines made at random, the same for the same seed everywhere: what tests need that claim something of any line.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <random>
#include <vector>

#include "core/line/fair.hpp"

namespace fayline::line::test {

// A line whose curvature is a constant and three cosines, k(s) = k0 + sum a_m cos(m pi s / L + phase_m), so that its
// heading is known in closed form and its places follow from one integration.
struct RandomLine {
    double length_m = 0;
    double heading_rad = 0;  // at the start
    double curvature_per_m = 0;
    std::array<double, 3> amplitude_per_m{};
    std::array<double, 3> phase_rad{};
    std::vector<double> at_m;  // arc length of each point
    std::vector<Xy> exact;     // the points on the line
    std::vector<Offset> read;  // the same, x and y rounded to a step
    double readTo_m = 0;       // that step

    double curvature(double s_m) const {
        double k = curvature_per_m;
        for (int m = 0; m < 3; ++m) k += amplitude_per_m[m] * std::cos(wave(m) * s_m + phase_rad[m]);
        return k;
    }

    double heading(double s_m) const {
        double h = heading_rad + curvature_per_m * s_m;
        for (int m = 0; m < 3; ++m) {
            h += amplitude_per_m[m] / wave(m) * (std::sin(wave(m) * s_m + phase_rad[m]) - std::sin(phase_rad[m]));
        }
        return h;
    }

    FairInput input() const { return {.points = read, .readTo_m = readTo_m, .fairWithin_m = readTo_m}; }

private:
    double wave(int m) const { return (m + 1) * std::acos(-1.0) / length_m; }
};

// Uniform in low..high from the generator's own bits: the standard's distributions differ between libraries.
inline double between(std::mt19937& random, double low, double high) {
    return low + (high - low) * (static_cast<double>(random()) / 4294967296.0);
}

// A line 0.8 to 4 m long that turns up to 2 rad from its mean heading's start, with 6 to 40 points unevenly spaced (by
// up to 30 % of the mean), read to `readTo_m` on a grid of random place.
inline RandomLine randomLine(std::uint32_t seed, double readTo_m = 0.0015875) {
    std::mt19937 random(seed * 2654435761u + 12345u);
    random.discard(16);
    RandomLine line;
    line.readTo_m = readTo_m;
    line.length_m = between(random, 0.8, 4.0);
    line.heading_rad = between(random, -3.0, 3.0);
    line.curvature_per_m = between(random, -1, 1);
    for (int m = 0; m < 3; ++m) {
        line.amplitude_per_m[m] = between(random, -1, 1) / (m + 1);
        line.phase_rad[m] = between(random, 0, 6.28);
    }
    // Scaled to a chosen greatest turn away from the start's heading.
    double most = 0;
    for (int i = 0; i <= 200; ++i) {
        most = std::max(most, std::abs(line.heading(line.length_m * i / 200) - line.heading_rad));
    }
    const double scale = between(random, 0.2, 2.0) / std::max(most, 1e-6);
    line.curvature_per_m *= scale;
    for (double& a : line.amplitude_per_m) a *= scale;

    const int points = 6 + static_cast<int>(between(random, 0, 35));
    double sum = 0;
    line.at_m.push_back(0);
    for (int i = 1; i < points; ++i) line.at_m.push_back(sum += between(random, 0.7, 1.3));
    for (double& s : line.at_m) s *= line.length_m / sum;

    const double gridX = between(random, 0, readTo_m), gridY = between(random, 0, readTo_m);
    const auto rounded = [&](double value, double grid) {
        return readTo_m > 0 ? std::round((value - grid) / readTo_m) * readTo_m + grid : value;
    };
    Xy place{between(random, -1, 1), between(random, -1, 1)};
    for (int i = 0; i < points; ++i) {
        if (i > 0) {
            // Gauss-Legendre rule of 3 points on 24 parts of the gap: exact to rounding for such lines.
            constexpr std::array<double, 3> node{0.1127016653792583, 0.5, 0.8872983346207417};
            constexpr std::array<double, 3> weight{5.0 / 18, 8.0 / 18, 5.0 / 18};
            const double part = (line.at_m[i] - line.at_m[i - 1]) / 24;
            for (int p = 0; p < 24; ++p) {
                for (int g = 0; g < 3; ++g) {
                    const double h = line.heading(line.at_m[i - 1] + (p + node[g]) * part);
                    place.x_m += weight[g] * part * std::cos(h);
                    place.y_m += weight[g] * part * std::sin(h);
                }
            }
        }
        line.exact.push_back(place);
        line.read.push_back({rounded(place.x_m, gridX), rounded(place.y_m, gridY), false});
    }
    return line;
}

}  // namespace fayline::line::test
