#include "core/holding/strap.hpp"

#include <algorithm>
#include <cmath>

#include "core/laminate/layers.hpp"
#include "core/laminate/parallels.hpp"
#include "core/laminate/stack.hpp"
#include "core/math/table.hpp"
#include "core/units/input_error.hpp"

namespace fayline::holding {

namespace {

constexpr double finest_m = 0.005;
constexpr double mostStrapPlaces = 2000;
constexpr double reported_m = 0.01;
constexpr double least_m = 1e-6;

// The outer face of the stack, and on which side of the line it lies.
struct Outside {
    double side = 1;
    laminate::Distance face;
};

Outside outsideOf(const StackOnForm& work) {
    const std::vector<laminate::Layer> strips =
        laminate::layers(work.piece.stack, work.piece.line.describes, work.line.length());
    const laminate::Distance face = strips.empty() ? laminate::Distance{0, 0, work.line.length()} : strips.back().outer;
    return {laminate::sideSign(work.piece.line.stripsOn), face};
}

// 0 where the outside has no room.
double turnPerLength(const Outside& outside, const line::Place& on) {
    const double room = laminate::stretch(on, outside.side, outside.face.at(on.at_m));
    if (!(room > 0)) return 0;
    return laminate::curvatureBeside(on, outside.side, outside.face) * std::hypot(room, outside.face.slopeAt(on.at_m));
}

// How much the outside turns toward the form between two places, without the kinks where a taper begins and ends;
// 0 where the outside has no room.
double turnBetween(const Outside& outside, const line::Place& from, const line::Place& to) {
    const auto room = [&](const line::Place& on) {
        return laminate::stretch(on, outside.side, outside.face.at(on.at_m));
    };
    if (!(room(from) > 0 && room(to) > 0)) return 0;
    const double slope = outside.face.slopeAt((from.at_m + to.at_m) / 2);
    const auto lean = [&](const line::Place& on) { return std::atan2(slope, room(on)); };
    return -outside.side * (to.heading_rad - from.heading_rad) - (lean(to) - lean(from));
}

// Even places from end to end, and the trim lines.
std::vector<double> placesAlong(double from_m, double to_m, double lineLength_m) {
    const double cells = std::min(mostStrapPlaces, std::ceil((to_m - from_m) / finest_m));
    std::vector<double> places;
    for (int i = 0; i < static_cast<int>(cells); ++i) places.push_back(from_m + (to_m - from_m) * i / cells);
    places.push_back(to_m);
    for (const double trim_m : {0.0, lineLength_m}) {
        const auto next = std::lower_bound(places.begin(), places.end(), trim_m);
        if (next == places.begin() || next == places.end()) continue;
        if (*next - trim_m > least_m && trim_m - *(next - 1) > least_m) places.insert(next, trim_m);
    }
    return places;
}

// Which of `points` a taut strap touches that goes round them from the first to the last: those from which every
// stretch to the next turns toward the form. `side` +1: the form lies to the right of someone walking along them.
std::vector<std::size_t> tautRound(const std::vector<line::Xy>& points, double side) {
    std::vector<std::size_t> touched;
    const auto hollow = [&](const line::Xy& a, const line::Xy& b, const line::Xy& c) {
        return side * cross(b - a, c - b) > 0;
    };
    for (std::size_t i = 0; i < points.size(); ++i) {
        while (touched.size() >= 2 && hollow(points[touched[touched.size() - 2]], points[touched.back()], points[i])) {
            touched.pop_back();
        }
        touched.push_back(i);
    }
    return touched;
}

// Turn on what is touched between each place and the next; 0 where the strap does not bear.
std::vector<double> touchedTurns(const std::vector<double>& places_m, const Outside& outside, const line::Line& line) {
    std::vector<line::Place> on;
    std::vector<line::Xy> points;
    for (const double at_m : places_m) {
        on.push_back(line.at(at_m));
        points.push_back(laminate::pointBeside(on.back(), outside.side, outside.face.at(at_m)));
    }
    const std::vector<std::size_t> touched = tautRound(points, outside.side);
    std::vector<double> turns(points.size() - 1, 0.0);
    for (std::size_t i = 1; i < touched.size(); ++i) {
        const std::size_t from = touched[i - 1];
        if (touched[i] != from + 1) continue;
        const double turn = turnBetween(outside, on[from], on[from + 1]);
        if (turn >= straight_per_m * (places_m[from + 1] - places_m[from])) turns[from] = turn;
    }
    return turns;
}

// Tension at the places when pulled with `pulled_N` from the first of them.
std::vector<double> tensionAlong(const std::vector<double>& turns, double friction, double pulled_N) {
    std::vector<double> tension{pulled_N};
    double turned = 0;
    for (const double turn : turns) {
        turned += turn;
        tension.push_back(pulled_N * std::exp(-friction * turned));
    }
    return tension;
}

std::vector<double> tensionFromEnd(std::vector<double> turns, double friction, double pulled_N) {
    std::ranges::reverse(turns);
    std::vector<double> tension = tensionAlong(turns, friction, pulled_N);
    std::ranges::reverse(tension);
    return tension;
}

std::vector<double> tensionOf(const model::Strap& strap, const std::vector<double>& turns, double pulled_N) {
    if (strap.pullsFrom == model::PullsFrom::start) return tensionAlong(turns, strap.friction, pulled_N);
    std::vector<double> tension = tensionFromEnd(turns, strap.friction, pulled_N);
    if (strap.pullsFrom == model::PullsFrom::end) return tension;
    const std::vector<double> fromStart = tensionAlong(turns, strap.friction, pulled_N);
    for (std::size_t i = 0; i < tension.size(); ++i) tension[i] = std::max(tension[i], fromStart[i]);
    return tension;
}

// Tension at `at_m` between the ends: exponential by the turn, which grows evenly from place to place.
double tensionAt(const Strap& strap, double at_m) {
    const std::vector<double>& places = strap.places_m;
    const std::size_t i = math::intervalOf(places, at_m);
    const double share = std::clamp((at_m - places[i]) / (places[i + 1] - places[i]), 0.0, 1.0);
    const double before = strap.tension_N[i];
    const double after = strap.tension_N[i + 1];
    if (!(before > 0 && after > 0)) return math::between(before, after, share);
    return before * std::pow(after / before, share);
}

void checkEnd(const model::Strap& strap, int index) {
    if (strap.to_m && !std::isfinite(*strap.to_m)) {
        throw units::InputError("holding.stations[" + std::to_string(index) + "].to_mm", "that is no number",
                                "give a place along the line");
    }
}

void addIdle(StrapPlan& plan, const Strap& strap) {
    double from = 0;
    double length = 0;
    for (std::size_t i = 0; i < strap.turn_rad.size(); ++i) {
        if (strap.turn_rad[i] > 0) {
            length = 0;
            continue;
        }
        if (length == 0) from = strap.places_m[i];
        const double step = strap.places_m[i + 1] - strap.places_m[i];
        length += step;
        plan.idle_m += step;
        if (length > plan.longestIdle_m) {
            plan.longestIdle_m = length;
            plan.longestIdleFrom_m = from;
        }
    }
}

}  // namespace

Strap layStrap(const model::Station& station, int index, const StackOnForm& work) {
    const model::Strap& said = station.strap;
    checkEnd(said, index);
    const double first = -work.piece.stack.runsPastStart_m;
    const double last = work.line.length() + work.piece.stack.runsPastEnd_m;
    const double other = said.to_m.value_or(station.at_m);
    Strap strap{.from_m = std::clamp(std::min(station.at_m, other), first, std::max(first, last)),
                .to_m = std::clamp(std::max(station.at_m, other), first, std::max(first, last)),
                .lacksEnd = !said.to_m,
                .pulled_N = station.pull_N.value_or(station.most_N)};
    const double length = strap.to_m - strap.from_m;
    if (!(length > least_m)) return strap;

    strap.places_m = placesAlong(strap.from_m, strap.to_m, work.line.length());
    strap.turn_rad = touchedTurns(strap.places_m, outsideOf(work), work.line);
    strap.tension_N = tensionOf(said, strap.turn_rad, strap.pulled_N);
    return strap;
}

double bearingTension_N(const Strap& strap, double at_m) {
    if (strap.places_m.size() < 2 || at_m < strap.from_m || at_m > strap.to_m) return 0;
    if (strap.turn_rad[math::intervalOf(strap.places_m, at_m)] == 0) return 0;
    return tensionAt(strap, at_m);
}

double strapThrust_N_m(const Strap& strap, const StackOnForm& work, double at_m) {
    const double tension = bearingTension_N(strap, at_m);
    return tension > 0 ? tension * std::max(0.0, outsideTurn_per_m(work, at_m)) : 0;
}

double outsideTurn_per_m(const StackOnForm& work, double at_m) {
    return turnPerLength(outsideOf(work), work.line.at(at_m));
}

StrapPlan strapPlan(const model::Station& station, int index, const StackOnForm& work) {
    const Strap strap = layStrap(station, index, work);
    StrapPlan plan{.index = index, .lacksEnd = strap.lacksEnd};
    if (strap.places_m.size() < 2) return plan;

    plan.leastTension_N = *std::ranges::min_element(strap.tension_N);
    plan.startPull_N = strap.tension_N.front();
    plan.endPull_N = strap.tension_N.back();
    const Outside outside = outsideOf(work);
    const double length = strap.to_m - strap.from_m;
    const int steps = static_cast<int>(std::min(mostStrapPlaces, std::ceil(length / reported_m)));
    for (int i = 0; i <= steps; ++i) {
        const double at_m = i == steps ? strap.to_m : strap.from_m + length * i / steps;
        const double tension = bearingTension_N(strap, at_m);
        const double thrust = tension * std::max(0.0, turnPerLength(outside, work.line.at(at_m)));
        plan.places.push_back({at_m, thrust, tensionAt(strap, at_m)});
    }
    for (std::size_t i = 0; i < strap.turn_rad.size(); ++i) {
        plan.turned_rad += strap.turn_rad[i];
        plan.total_N += (strap.tension_N[i] + strap.tension_N[i + 1]) / 2 * strap.turn_rad[i];
    }
    addIdle(plan, strap);
    return plan;
}

}  // namespace fayline::holding
