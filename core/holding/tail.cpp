#include "core/holding/tail.hpp"

#include <algorithm>
#include <cmath>

#include "core/holding/gaps.hpp"
#include "core/holding/hermite.hpp"

namespace fayline::holding {

namespace {

constexpr double step_m = 0.01;

line::Xy plus(const line::Xy& a, double times, const line::Xy& b) {
    return {a.x_m + times * b.x_m, a.y_m + times * b.y_m};
}

double dot(const line::Xy& a, const line::Xy& b) {
    return a.x_m * b.x_m + a.y_m * b.y_m;
}

// By how much the rod is longer than the stretch of form under it, between two places that are nodes or its ends.
double surplus(const Problem& problem, const Contact& contact, double from_s_m, double to_s_m) {
    const std::vector<double>& nodes = contact.nodes_m;
    double sum = 0;
    for (std::size_t e = 0; e + 1 < nodes.size(); ++e) {
        const double length = nodes[e + 1] - nodes[e];
        const double middle = (nodes[e] + nodes[e + 1]) / 2;
        if (middle < from_s_m || middle > to_s_m) continue;
        for (std::size_t g = 0; g < gaussPart.size(); ++g) {
            const GapAt gap = gapAt(contact, nodes[e] + gaussPart[g] * length);
            const double a = 1 + problem.rod.curvature_per_m[3 * e + g] * gap.gap_m;
            sum += gaussWeight[g] * length * (std::hypot(a, gap.slope) - 1);
        }
    }
    return sum;
}

// Curvature that the strips have taken before, at a place of the strips that lies at `s_m` when they are down.
double takenCurvature(const Ready& ready, double s_m) {
    const MiddlePlace place = middleAt(ready.middle, s_m);
    return sectionAt(ready.loose, place.at_m).set * place.curvature_per_m;
}

bool bentBefore(const Ready& ready) {
    return std::any_of(ready.loose.strips.begin(), ready.loose.strips.end(),
                       [](const LooseStrip& strip) { return strip.set > 0; });
}

// Turns both directions toward the form.
void turn(Tail& tail, double angle_rad) {
    const line::Xy ahead = tail.ahead;
    tail.ahead = {std::cos(angle_rad) * ahead.x_m - std::sin(angle_rad) * tail.away.x_m,
                  std::cos(angle_rad) * ahead.y_m - std::sin(angle_rad) * tail.away.y_m};
    tail.away = {std::cos(angle_rad) * tail.away.x_m + std::sin(angle_rad) * ahead.x_m,
                 std::cos(angle_rad) * tail.away.y_m + std::sin(angle_rad) * ahead.y_m};
}

void runOn(Tail& tail, const Ready& ready, double length_m, double lastsTo_s_m, double sense) {
    if (!(length_m > 0)) return;
    if (!bentBefore(ready)) {
        tail.points.push_back(plus(tail.points.back(), length_m, tail.ahead));
        return;
    }
    const int steps = std::max(1, static_cast<int>(std::ceil(length_m / step_m)));
    const double step = length_m / steps;
    for (int i = 0; i < steps; ++i) {
        const double left = length_m - (i + 0.5) * step;
        const double bend = step * takenCurvature(ready, lastsTo_s_m - sense * left);
        turn(tail, bend / 2);
        tail.points.push_back(plus(tail.points.back(), step, tail.ahead));
        turn(tail, bend / 2);
    }
}

}  // namespace

Tail tailOf(const Ready& ready, const StackOnForm& work, const Problem& problem, const Contact& contact, bool atEnd) {
    const double sense = atEnd ? 1 : -1;
    const double s = atEnd ? contact.nodes_m.back() : contact.nodes_m.front();
    const double stripsEnd = alongMiddle(ready.middle, atEnd ? ready.strips.to_m : ready.strips.from_m);
    const double used =
        atEnd ? surplus(problem, contact, problem.anchor_m, s) : surplus(problem, contact, s, problem.anchor_m);

    const GapAt gap = gapAt(contact, s);
    const MiddleFrame frame = middleFrame(ready.middle, work.line, s);
    const double psi = std::atan2(gap.slope, 1 + middleAt(ready.middle, s).curvature_per_m * gap.gap_m);
    Tail tail;
    tail.points = {plus(frame.point, gap.gap_m, frame.away)};
    tail.ahead = frame.ahead;
    tail.away = frame.away;
    turn(tail, -psi);
    tail.ahead = {sense * tail.ahead.x_m, sense * tail.ahead.y_m};
    runOn(tail, ready, sense * (stripsEnd - s) - used, stripsEnd, sense);

    const MiddleFrame end = middleFrame(ready.middle, work.line, stripsEnd);
    const line::Xy endAhead{sense * end.ahead.x_m, sense * end.ahead.y_m};
    tail.endTurn_rad = std::atan2(-dot(endAhead, tail.away), dot(endAhead, tail.ahead));
    return tail;
}

StandOff standOff(const Tail& tail, const MiddleFrame& frame) {
    double nearest = std::numeric_limits<double>::infinity();
    const auto away = [&](const line::Xy& point) { return plus(point, -1, frame.point); };
    for (std::size_t i = 0; i + 1 < tail.points.size(); ++i) {
        const line::Xy from = away(tail.points[i]);
        const line::Xy to = away(tail.points[i + 1]);
        const double before = dot(from, frame.ahead);
        const double after = dot(to, frame.ahead);
        if ((before <= 0) != (after <= 0) || before == 0) {
            const double share = before == after ? 0 : before / (before - after);
            return {dot(from, frame.away) + share * (dot(to, frame.away) - dot(from, frame.away)), true};
        }
    }
    for (std::size_t i = 0; i < tail.points.size(); ++i) {
        const line::Xy from = away(tail.points[i]);
        const line::Xy span = i + 1 < tail.points.size() ? plus(tail.points[i + 1], -1, tail.points[i]) : line::Xy{};
        const double length2 = dot(span, span);
        const double share = length2 > 0 ? std::clamp(-dot(from, span) / length2, 0.0, 1.0) : 0;
        const line::Xy at = plus(from, share, span);
        nearest = std::min(nearest, std::hypot(at.x_m, at.y_m));
    }
    return {std::isfinite(nearest) ? nearest : 0, false};
}

line::Xy outerTip(const Tail& tail, const Ready& ready, bool atEnd) {
    const double at_m = atEnd ? ready.strips.to_m : ready.strips.from_m;
    double outer_m = 0;
    for (const LooseStrip* strip : stripsThere(ready.loose, at_m)) {
        outer_m = strip->layer.outer.at(at_m) - ready.middle.distance.at(at_m);
    }
    return plus(plus(tail.points.back(), outer_m, tail.away), outer_m * tail.endTurn_rad, tail.ahead);
}

}  // namespace fayline::holding
