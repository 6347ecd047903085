// The fair line, by this method.
//
// The line is a parametric spline of degree 5, so that it may stand upright at an end, with knots at the points and
// between them. Of all such lines it is the one for which
//
//     smoothing * integral of (d curvature / d arc length)^2 + sum of misses^2
//
// is least. Misses are measured square to the line and include the thickness to take off. A circle and a straight line
// cost nothing, so the fit meets a circle's radius whatever the smoothing. Each round of the Gauss-Newton method
// linearises rates of curvature and misses in small moves of the control points square to the line, solves the least
// squares by plane rotations, chooses the next smoothing on the same linear model, and slides the ends to the feet of
// the end points. The fit has converged when no curvature changes by more than 1e-9 of the greatest: a line that merely
// stays in place can still have its tightest place off by 200 mm.
//
// How much to smooth. Reading to a step leaves a scatter of step / sqrt(12). A rule that aims at a share of it (0.6 was
// tried) cannot tell few points from many or a simple line from a winding one: over 200 roundings of the lines of the
// sample boat Marram to 1/16 in it met the curvature within 7, 26, 10 and 12 % of the greatest (stem, tiller, rail,
// deck beam; 95 of 100) and on random lines of 6 to 40 points within 65 %. Here the rate of curvature is taken for
// chance and the smoothing is the likeliest for these points (restricted likelihood with known scatter: smoothing *
// energy / scatter^2 = effective degrees of freedom - 3; Wahba 1985, Wood 2011, from memory), with the scatter counted
// twice, since fair lines are smoother than chance. Measured: 7, 26, 9 and 1 %, random lines 21 %, and of the tightest
// radius 3.5, 4.8, 3.4 and 0.8 %; that figure changes little for a factor of 1.6 to 2.2. The tiller's 26 % stand next
// to its ends, where no points beyond say how the curvature goes on; half of its roundings stay below 11 %.
//
// How uncertain the curvature is. Three things put it off, and the squares of their standard deviations add up, all on
// the last round's linear model (M = A + smoothing P; A of the misses, P of the energy; y = M^-1 c the answer to a pull
// c on the curvature at the place). (1) The readings' own scatter: scatter^2 y'A y. (2) What smoothing has taken away:
// the misses made fair once more would change the curvature by y'(weighed misses) (Tukey's twicing, from memory); its
// square holds (1) at most once, so the greater of the two counts. (3) The ends: a line of least energy ends with its
// curvature changing no more, and true lines do not. A line that ends with a rate r is what a pull of smoothing * r on
// the end's curvature makes of it; r is taken for as much as the greatest rate on that half of the line. The plain
// posterior covariance of the chance model, counted scatter^2 M^-1, was tried: within the line it holds the truth 100
// times of 100, next to the tight end of a logarithmic spiral 62 of 100. Measured over 600 roundings of twelve known
// curves (tests/core/line/curvature_band_test.cpp): within 1.96 standard deviations lie 95 to 99 of 100 at each place,
// and at the tight ends of the spirals 92 and 98.
#include "core/line/fair.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/line/fit.hpp"
#include "core/math/table.hpp"
#include "core/units/input_error.hpp"

namespace fayline::line {

namespace {

using units::InputError;

constexpr double equal_m = 1e-9;    // points no further apart than this are one point
constexpr double through_m = 3e-8;  // what is left of a miss where the line is to pass a point

constexpr double met_m = 1e-6;    // what counts as passing a point that must be passed
constexpr double met_rad = 1e-6;  // and as keeping a heading
constexpr double mostTurnBack_rad =
    2.1;  // a third of a turn: how far a heading may differ from the way to the next point

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
    std::ranges::sort(order, [&](auto a, auto b) { return points[a].x_m < points[b].x_m; });
    for (std::size_t a = 0; a < order.size(); ++a) {
        for (std::size_t b = a + 1; b < order.size(); ++b) {
            const Offset& one = points[order[a]];
            const Offset& other = points[order[b]];
            if (other.x_m - one.x_m > equal_m) break;
            if (std::abs(other.y_m - one.y_m) > equal_m) continue;
            const std::size_t first = std::min(order[a], order[b]), second = std::max(order[a], order[b]);
            throw InputError(pathOf(second), "x and y are those of line.points[" + std::to_string(first) + "]",
                             "change one of the two, or remove it");
        }
    }
}

// No line can set out away from the point that it goes to next.
void checkHeading(std::optional<double> heading_rad, const Offset& from, const Offset& to, const char* path,
                  const char* where) {
    if (!heading_rad) return;
    const double way_rad = std::atan2(to.y_m - from.y_m, to.x_m - from.x_m);
    if (std::abs(std::remainder(*heading_rad - way_rad, 2 * std::acos(-1.0))) <= mostTurnBack_rad) return;
    const int way_deg = static_cast<int>(std::lround(way_rad * 180 / std::acos(-1.0)));
    throw InputError(path, std::string("this heading points away from the ") + where,
                     "give one within 120 degrees of " + std::to_string(way_deg) + ", the way between the two");
}

std::string outcomeOf(const FitResult& found, bool passed) {
    const std::string rounds = std::to_string(found.rounds) + " rounds";
    switch (found.end) {
        case FitEnd::settled:
            return "settled after " + rounds + (passed ? "" : ", but cannot pass all that it must");
        case FitEnd::strays:
            return "given up after " + rounds + ", three times as long as the way from point to point";
        case FitEnd::restless:
            return "given up after " + rounds + ", which went on changing how it bends";
        case FitEnd::undetermined:
            return "given up after " + rounds + ", since the points do not determine it";
        case FitEnd::stopped:
        case FitEnd::tooMany:
            break;
    }
    return "did not settle within " + rounds;
}

}  // namespace

FairLine fair(const FairInput& input) {
    const std::atomic<bool> never = false;
    return fair(input, never);
}

FairLine fair(const FairInput& input, const std::atomic<bool>& stop) {
    check(input);
    const auto& points = input.points;
    const std::size_t last = points.size() - 1;
    checkHeading(input.startHeading_rad, points[0], points[1], "line.start_heading_deg", "second point");
    checkHeading(input.endHeading_rad, points[last - 1], points[last], "line.end_heading_deg", "last gap");
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
            {(point.x_m - middle.x_m) / chord_m, (point.y_m - middle.y_m) / chord_m, point.mustPass, point.read});
    }
    wanted.scatter = std::max(input.readTo_m / std::sqrt(12.0), through_m) / chord_m;
    wanted.mostMiss = input.fairWithin_m <= through_m ? 0 : input.fairWithin_m / chord_m;
    wanted.throughMiss = through_m / chord_m;
    wanted.takeOff = input.takeOff_m / chord_m;
    wanted.startHeading_rad = input.startHeading_rad;
    wanted.endHeading_rad = input.endHeading_rad;
    const FitResult found = fit(wanted, stop);
    FairLine result;
    result.rounds = found.rounds;
    if (stop) {
        result.settled = false;
        result.outcome = "stopped after " + std::to_string(found.rounds) + " rounds";
        return result;
    }

    std::vector<Xy> coefficients;
    for (std::size_t j = 0; j < found.x.size(); ++j) {
        coefficients.push_back({middle.x_m + chord_m * found.x[j], middle.y_m + chord_m * found.y[j]});
    }
    result.line = Line(found.knots, coefficients);
    double squares = 0;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const double miss_m = chord_m * found.misses[i];
        result.points.push_back({result.line.lengthTo(found.parameters[i]), miss_m});
        squares += miss_m * miss_m;
    }
    result.rootMeanSquareMiss_m = std::sqrt(squares / static_cast<double>(points.size()));
    for (std::size_t i = 0; i < found.spreadAt.size(); ++i) {
        result.spread.push_back({result.line.lengthTo(found.spreadAt[i]), found.curvatureSpread[i] / chord_m});
    }
    result.smoothing_m5 = found.smoothing * std::pow(chord_m, 5);
    bool passed = found.headingMiss_rad <= met_rad;
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (points[i].mustPass && std::abs(result.points[i].misfit_m) > met_m) passed = false;
    }
    result.settled = found.end == FitEnd::settled && passed;
    result.outcome = outcomeOf(found, passed);
    return result;
}

double curvatureSd(const FairLine& line, double at_m) {
    const std::vector<Spread>& known = line.spread;
    if (known.empty()) return 0;
    return math::lookUp(known, at_m, &Spread::at_m, &Spread::sd_per_m);
}

}  // namespace fayline::line
