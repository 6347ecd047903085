#include "core/line/grid.hpp"

#include <algorithm>
#include <cmath>

namespace fayline::line {

namespace {

constexpr double sameLine_m = 1e-6;
constexpr double leastSteps = 16;
constexpr int fewestEven = 4;
constexpr int fewestRound = 3;

bool evenlySpaced(const std::vector<double>& values) {
    if (static_cast<int>(values.size()) < fewestEven) return false;
    const double step = values[1] - values[0];
    if (std::abs(step) < sameLine_m) return false;
    for (std::size_t i = 1; i < values.size(); ++i) {
        if (std::abs(values[i] - values[i - 1] - step) > sameLine_m) return false;
    }
    return true;
}

bool onGrid(double value, double spacing_m) {
    return std::abs(std::remainder(value, spacing_m)) < sameLine_m;
}

}  // namespace

std::vector<Read> gridOf(const std::vector<Xy>& points, double readTo_m) {
    std::vector<Read> reads(points.size(), Read::both);
    std::vector<double> x, y;
    for (const Xy& point : points) {
        x.push_back(point.x_m);
        y.push_back(point.y_m);
    }
    const bool evenX = evenlySpaced(x), evenY = evenlySpaced(y);
    if (evenX != evenY) return std::vector<Read>(points.size(), evenX ? Read::y : Read::x);
    for (const double spacing_m : {0.3048, 0.250, 0.200, 0.1524, 0.100, 0.0762, 0.050}) {
        if (spacing_m < leastSteps * readTo_m) continue;
        std::vector<Read> here(points.size(), Read::both);
        int known = 0;
        for (std::size_t i = 0; i < points.size(); ++i) {
            const bool gridX = onGrid(x[i], spacing_m), gridY = onGrid(y[i], spacing_m);
            if (gridX == gridY) continue;
            here[i] = gridX ? Read::y : Read::x;
            ++known;
        }
        if (known < fewestRound || known <= std::ranges::count_if(reads, [](Read r) { return r != Read::both; })) {
            continue;
        }
        reads = here;
    }
    return reads;
}

}  // namespace fayline::line
