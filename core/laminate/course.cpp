#include "core/laminate/course.hpp"

#include <algorithm>
#include <cmath>

#include "core/laminate/stack.hpp"

namespace fayline::laminate {

namespace {

constexpr double courseStep_m = 0.01;

// Places 10 mm apart on the line's own grid, with the trim lines and the ends.
std::vector<double> placesAlong(const Run& run, double length_m) {
    const auto steps = [](double from, double to) {
        return std::max(1, static_cast<int>(std::ceil((to - from) / courseStep_m - 1e-6)));
    };
    std::vector<double> at;
    if (run.from_m < 0) {
        at.push_back(run.from_m);
        for (int i = steps(run.from_m, 0) - 1; i >= 1; --i) at.push_back(-i * courseStep_m);
    }
    at.push_back(0);
    const auto goOn = [&](double to) {
        const double from = at.back();
        const int count = steps(from, to);
        for (int i = 1; i < count; ++i) at.push_back(from + i * courseStep_m);
        at.push_back(to);
    };
    goOn(length_m);
    if (run.to_m > length_m) goOn(run.to_m);
    return at;
}

// Where the curvature peaks between two places 10 mm apart: by the false position of its rate, three times.
line::Place peakBetween(const line::Line& line, line::Place before, line::Place after) {
    line::Place middle = before;
    for (int i = 0; i < 3; ++i) {
        const double rates = before.curvatureRate_per_m2 - after.curvatureRate_per_m2;
        if (rates == 0) break;
        middle = line.at(before.at_m + (after.at_m - before.at_m) * before.curvatureRate_per_m2 / rates);
        ((middle.curvatureRate_per_m2 > 0) == (before.curvatureRate_per_m2 > 0) ? before : after) = middle;
    }
    return middle;
}

// Only peaks that could be the tightest of their sign are sought, and only where the curvature moves at all.
std::vector<line::Place> peaksOf(const line::Line& line, const std::vector<line::Place>& places) {
    double most = 0;
    double least = 0;
    for (const line::Place& place : places) {
        most = std::max(most, place.curvature_per_m);
        least = std::min(least, place.curvature_per_m);
    }
    std::vector<line::Place> peaks;
    for (std::size_t i = 1; i < places.size(); ++i) {
        const line::Place& a = places[i - 1];
        const line::Place& b = places[i];
        if (a.curvatureRate_per_m2 * b.curvatureRate_per_m2 >= 0) continue;
        const double high = std::max(a.curvature_per_m, b.curvature_per_m);
        const double low = std::min(a.curvature_per_m, b.curvature_per_m);
        if (high < 0.95 * most && low > 0.95 * least) continue;
        const double move = (b.at_m - a.at_m) * std::abs(a.curvatureRate_per_m2 - b.curvatureRate_per_m2);
        if (move < 1e-6 * std::max(std::abs(high), std::abs(low))) continue;
        peaks.push_back(peakBetween(line, a, b));
    }
    return peaks;
}

}  // namespace

Course courseOf(const model::Stack& stack, model::Side side, const line::Line& line) {
    Course course{.side = sideSign(side),
                  .length_m = line.length(),
                  .run = {-stack.runsPastStart_m, line.length() + stack.runsPastEnd_m}};
    for (const double at : placesAlong(course.run, course.length_m)) course.places.push_back(line.at(at));
    course.peaks = peaksOf(line, course.places);
    return course;
}

Peak greatest(const Course& course, const line::Line& line, const Run& run,
              const std::function<double(const line::Place&)>& value, bool refine) {
    Peak peak{-1, {}};
    const auto look = [&](const line::Place& place) {
        if (!run.holds(place.at_m)) return;
        const double found = value(place);
        // A hair's gain is rounding: on an arc the first place is the tightest.
        if (found > peak.value * (1 + 1e-12)) peak = {found, place};
    };
    for (const line::Place& place : course.places) look(place);
    for (const line::Place& place : course.peaks) look(place);
    if (run.from_m > course.run.from_m) look(line.at(run.from_m));
    if (run.to_m < course.run.to_m) look(line.at(run.to_m));
    if (!refine) return peak;

    // Golden section round the best place, for strips whose thickness moves the peak away from the line's own.
    const double golden = (std::sqrt(5.0) - 1) / 2;
    double low = std::max(run.from_m, peak.place.at_m - courseStep_m);
    double high = std::min(run.to_m, peak.place.at_m + courseStep_m);
    for (int i = 0; i < 12; ++i) {
        const line::Place left = line.at(high - golden * (high - low));
        const line::Place right = line.at(low + golden * (high - low));
        look(left);
        look(right);
        if (value(left) > value(right)) {
            high = right.at_m;
        } else {
            low = left.at_m;
        }
    }
    return peak;
}

}  // namespace fayline::laminate
