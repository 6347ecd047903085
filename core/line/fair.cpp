#include "core/line/fair.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/line/fit.hpp"
#include "core/measure/input_error.hpp"

namespace fayline::line {

namespace {

using measure::InputError;

// The misses aimed at, as a share of what rounding to the step gives (step / sqrt 12).
constexpr double shareOfRounding = 0.6;

constexpr double equal_m = 1e-9;    // points no further apart than this are one point
constexpr double through_m = 3e-8;  // what is left of a miss where the line is to pass a point

std::string pathOf(std::size_t i) {
    return "line.points[" + std::to_string(i) + "]";
}

void check(const FairInput& input) {
    const auto& points = input.points;
    if (points.size() < 3) {
        throw InputError("line.points", std::to_string(points.size()) + " points make no line", "give 3 or more");
    }
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (!std::isfinite(points[i].x_m) || !std::isfinite(points[i].y_m)) {
            throw InputError(pathOf(i), "its place is not a number", "give both lengths");
        }
    }
    const auto nonNegative = [](double value, const char* path, const char* what) {
        if (value >= 0 && std::isfinite(value)) return;
        throw InputError(path, std::string(what) + " cannot be negative", "give 0 or more");
    };
    nonNegative(input.readTo_m, "line.read_to_mm", "the step that points were read to");
    nonNegative(input.fairWithin_m, "line.fair_within_mm", "the most that a point may be missed by");
    if (!std::isfinite(input.takeOff_m)) throw InputError("line.take_off_mm", "it is not a number", "give a length");
    for (const auto& [heading, path] : {std::pair{input.startHeading_rad, "line.start_heading_deg"},
                                        std::pair{input.endHeading_rad, "line.end_heading_deg"}}) {
        if (heading && !std::isfinite(*heading)) throw InputError(path, "it is not a number", "give an angle");
    }
    // Equal points are near each other when sorted by x.
    std::vector<std::size_t> order(points.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::sort(order.begin(), order.end(), [&](auto a, auto b) { return points[a].x_m < points[b].x_m; });
    for (std::size_t a = 0; a < order.size(); ++a) {
        for (std::size_t b = a + 1; b < order.size(); ++b) {
            const Offset& one = points[order[a]];
            const Offset& other = points[order[b]];
            if (other.x_m - one.x_m > equal_m) break;
            if (std::abs(other.y_m - one.y_m) > equal_m) continue;
            const std::size_t first = std::min(order[a], order[b]), second = std::max(order[a], order[b]);
            throw InputError(pathOf(second), "it is the same place as line.points[" + std::to_string(first) + "]",
                             "give each point once");
        }
    }
}

}  // namespace

FairLine fair(const FairInput& input) {
    check(input);
    const auto& points = input.points;
    // All is worked out from the middle of the points and in chord lengths, so that neither place nor size matters.
    Xy middle;
    double chord_m = 0;
    for (std::size_t i = 0; i < points.size(); ++i) {
        middle.x_m += points[i].x_m / static_cast<double>(points.size());
        middle.y_m += points[i].y_m / static_cast<double>(points.size());
        if (i > 0) chord_m += std::hypot(points[i].x_m - points[i - 1].x_m, points[i].y_m - points[i - 1].y_m);
    }
    FitInput wanted;
    for (const Offset& point : points) {
        wanted.points.push_back(
            {(point.x_m - middle.x_m) / chord_m, (point.y_m - middle.y_m) / chord_m, point.mustPass});
    }
    wanted.targetMiss = std::max(shareOfRounding * input.readTo_m / std::sqrt(12.0), through_m) / chord_m;
    wanted.mostMiss = input.fairWithin_m <= through_m ? 0 : input.fairWithin_m / chord_m;
    wanted.throughMiss = through_m / chord_m;
    wanted.takeOff = input.takeOff_m / chord_m;
    wanted.startHeading_rad = input.startHeading_rad;
    wanted.endHeading_rad = input.endHeading_rad;
    const FitResult found = fit(wanted);

    std::vector<Xy> coefficients;
    for (std::size_t j = 0; j < found.x.size(); ++j) {
        coefficients.push_back({middle.x_m + chord_m * found.x[j], middle.y_m + chord_m * found.y[j]});
    }
    FairLine result;
    result.line = Line(found.knots, coefficients);
    double squares = 0;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const double miss_m = chord_m * found.misses[i];
        result.points.push_back({result.line.lengthTo(found.parameters[i]), miss_m});
        squares += miss_m * miss_m;
    }
    result.rootMeanSquareMiss_m = std::sqrt(squares / static_cast<double>(points.size()));
    result.smoothing_m5 = found.smoothing * std::pow(chord_m, 5);
    result.settled = found.settled;
    result.outcome = found.outcome;
    return result;
}

}  // namespace fayline::line
