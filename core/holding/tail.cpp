#include "core/holding/tail.hpp"

#include <algorithm>
#include <cmath>

#include "core/contact/gaps.hpp"
#include "core/math/quadrature.hpp"
#include "core/math/table.hpp"

namespace fayline::holding {

namespace {

constexpr double step_m = 0.01;

// By how much the rod is longer than the stretch of form under it, between two places that are nodes or its ends.
double surplus(const Problem& problem, const Contact& contact, double from_s_m, double to_s_m) {
    const std::vector<double>& nodes = contact.nodes_m;
    double sum = 0;
    for (std::size_t e = 0; e + 1 < nodes.size(); ++e) {
        const double length = nodes[e + 1] - nodes[e];
        const double middle = (nodes[e] + nodes[e + 1]) / 2;
        if (middle < from_s_m || middle > to_s_m) continue;
        for (std::size_t g = 0; g < math::gauss3At.size(); ++g) {
            const GapAt gap = gapAt(contact, nodes[e] + math::gauss3At[g] * length);
            const double a = 1 + problem.rod.curvature_per_m[3 * e + g] * gap.gap_m;
            sum += math::gauss3Weight[g] * length * (std::hypot(a, gap.slope) - 1);
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
    return std::ranges::any_of(ready.loose.strips, [](const LooseStrip& strip) { return strip.set > 0; });
}

// Turns both directions toward the form.
void turn(Tail& tail, double angle_rad) {
    const line::Xy ahead = tail.ahead;
    tail.ahead = std::cos(angle_rad) * ahead - std::sin(angle_rad) * tail.away;
    tail.away = std::cos(angle_rad) * tail.away + std::sin(angle_rad) * ahead;
}

void runOn(Tail& tail, const Ready& ready, double length_m, double lastsTo_s_m, double sense) {
    if (!(length_m > 0)) return;
    if (!bentBefore(ready)) {
        tail.points.push_back(tail.points.back() + length_m * tail.ahead);
        return;
    }
    const int steps = std::max(1, static_cast<int>(std::ceil(length_m / step_m)));
    const double step = length_m / steps;
    for (int i = 0; i < steps; ++i) {
        const double left = length_m - (i + 0.5) * step;
        const double bend = step * takenCurvature(ready, lastsTo_s_m - sense * left);
        turn(tail, bend / 2);
        tail.points.push_back(tail.points.back() + step * tail.ahead);
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
    Tail tail{.points = {frame.point + gap.gap_m * frame.away}, .ahead = frame.ahead, .away = frame.away};
    turn(tail, -psi);
    tail.ahead = sense * tail.ahead;
    runOn(tail, ready, sense * (stripsEnd - s) - used, stripsEnd, sense);

    const MiddleFrame end = middleFrame(ready.middle, work.line, stripsEnd);
    const line::Xy endAhead = sense * end.ahead;
    tail.endTurn_rad = std::atan2(-dot(endAhead, tail.away), dot(endAhead, tail.ahead));
    return tail;
}

StandOff standOff(const Tail& tail, const MiddleFrame& frame) {
    double nearest = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i + 1 < tail.points.size(); ++i) {
        const line::Xy from = tail.points[i] - frame.point;
        const line::Xy to = tail.points[i + 1] - frame.point;
        const double before = dot(from, frame.ahead);
        const double after = dot(to, frame.ahead);
        if ((before <= 0) != (after <= 0) || before == 0) {
            const double share = before == after ? 0 : before / (before - after);
            return {math::between(dot(from, frame.away), dot(to, frame.away), share), true};
        }
    }
    for (std::size_t i = 0; i < tail.points.size(); ++i) {
        const line::Xy from = tail.points[i] - frame.point;
        const line::Xy span = i + 1 < tail.points.size() ? tail.points[i + 1] - tail.points[i] : line::Xy{};
        const double length2 = dot(span, span);
        const double share = length2 > 0 ? std::clamp(-dot(from, span) / length2, 0.0, 1.0) : 0;
        nearest = std::min(nearest, math::hypot(from + share * span));
    }
    return {std::isfinite(nearest) ? nearest : 0, false};
}

line::Xy outerTip(const Tail& tail, const Ready& ready, bool atEnd) {
    const double at_m = atEnd ? ready.strips.to_m : ready.strips.from_m;
    double outer_m = 0;
    for (const LooseStrip* strip : stripsThere(ready.loose, at_m)) {
        outer_m = strip->layer.outer.at(at_m) - ready.middle.distance.at(at_m);
    }
    return tail.points.back() + outer_m * tail.away + (outer_m * tail.endTurn_rad) * tail.ahead;
}

}  // namespace fayline::holding
