#include <cmath>
#include <numbers>

#include "core/laminate/springback/form_plan.hpp"

namespace fayline::laminate {

namespace {

double headingOf(const FormLine::Node& node) {
    return std::atan2(node.slope.y_m, node.slope.x_m);
}

// Greatest distance from the chord, by a parabola through the furthest node and its neighbours.
double riseOf(const FormLine& shape, std::size_t start, std::size_t end) {
    const std::vector<FormLine::Node>& nodes = shape.nodes();
    const line::Xy along = nodes[end].faying - nodes[start].faying;
    const double chord = math::hypot(along);
    if (chord <= 0) return 0;
    const auto off = [&](std::size_t i) { return cross(along, nodes[i].faying - nodes[start].faying) / chord; };
    double most = 0;
    std::size_t at = start;
    for (std::size_t i = start; i <= end; ++i) {
        if (std::abs(off(i)) <= std::abs(most)) continue;
        most = off(i);
        at = i;
    }
    // There the shape runs aslant of the chord by so much, and bends back by its curvature.
    const double aslant = cross(along, nodes[at].slope) / chord / math::hypot(nodes[at].slope);
    const double curvature = nodes[at].curvature_per_m;
    constexpr double near_m = 0.02;
    const double more = curvature != 0 ? aslant * aslant / (2 * std::abs(curvature)) : 0;
    return std::abs(most) + (std::abs(aslant) < near_m * std::abs(curvature) ? more : 0);
}

// How far the end `at` of `opened` stands off that of `other`, laid on each other at `laid`; > 0 to the left.
double standsOff(const FormLine& other, const FormLine& opened, std::size_t laid, std::size_t at) {
    const FormLine::Node& a = other.nodes()[laid];
    const FormLine::Node& b = opened.nodes()[laid];
    const line::Xy reach = other.nodes()[at].faying - a.faying;
    const line::Xy reachOpened = math::turned(opened.nodes()[at].faying - b.faying, headingOf(a) - headingOf(b));
    const line::Xy off = reachOpened - reach;
    const double heading = headingOf(other.nodes()[at]);
    return off.y_m * std::cos(heading) - off.x_m * std::sin(heading);
}

// +1 where the end `at` would open toward the left, the other end `laid` held.
double opensTo(const FormLine& shape, std::size_t laid, std::size_t at) {
    const FormLine::Node& a = shape.nodes()[laid];
    const FormLine::Node& b = shape.nodes()[at];
    // As one walks from the first to the last.
    const double turn = (b.heading_rad - a.heading_rad) * (at > laid ? 1 : -1);
    if (std::abs(turn) > std::numbers::pi / 2) return turn > 0 ? -1 : 1;
    const line::Xy heading{std::cos(headingOf(a)), std::sin(headingOf(a))};
    return cross(heading, b.faying - a.faying) > 0 ? -1 : 1;
}

}  // namespace

Opening openingOf(const Ground& ground, const FormLine& other, const FormLine& opened) {
    Opening opening;
    if (other.empty() || opened.empty()) return opening;
    const std::size_t start = ground.start;
    const std::size_t end = ground.end;
    const auto chord = [&](const FormLine& shape) {
        const line::Xy along = shape.nodes()[end].faying - shape.nodes()[start].faying;
        return math::hypot(along);
    };
    opening.chordFrom_m = chord(other);
    opening.chordTo_m = chord(opened);
    opening.riseFrom_m = riseOf(other, start, end);
    opening.riseTo_m = riseOf(opened, start, end);
    opening.chord_m = opening.chordTo_m - opening.chordFrom_m;
    opening.rise_m = opening.riseFrom_m - opening.riseTo_m;
    opening.end_m = standsOff(other, opened, start, end) * opensTo(other, start, end);
    opening.start_m = standsOff(other, opened, end, start) * opensTo(other, end, start);
    return opening;
}

}  // namespace fayline::laminate
