#include "core/laminate/springback/form_line.hpp"

#include <algorithm>
#include <cmath>

#include "core/math/hermite.hpp"

namespace fayline::laminate {

namespace {

// The Hermite cubic with the slopes' terms summed first. On a flat stretch the last digits of a form decide which place
// is the furthest off, so the order of the sums is kept.
math::HermiteCubic cubicOf(double from, double slopeFrom, double to, double slopeTo, double length) {
    return {{from, length * slopeFrom, 3 * (to - from) - length * (2 * slopeFrom + slopeTo),
             2 * (from - to) + length * (slopeFrom + slopeTo)},
            length};
}

// One stretch between two places of the ground.
struct Stretch {
    double length_m = 0;
    double middleK = 0;     // wanted curvature in the middle, stack's sign
    double turnedHalf = 0;  // of the wanted line up to the middle, stack's sign
    double moreHalf = 0;    // T - k summed up to the middle and over the whole
    double moreWhole = 0;
    double moreMiddle = 0;
};

double curvatureAt(const Ground& ground, std::size_t i) {
    return stackCurvature(ground.places[i].line, ground.side);
}

double moreAt(const Turned& turned, std::size_t i, double k) {
    const double more = turned.more_per_m.empty() ? 0.0 : turned.more_per_m[i];
    return (turned.share[i] - 1) * k + more;
}

Stretch stretchAfter(const Ground& ground, const Turned& turned, std::size_t i) {
    const Ground::Place& a = ground.places[i];
    const Ground::Place& b = ground.places[i + 1];
    Stretch s;
    s.length_m = b.line.at_m - a.line.at_m;
    const double k0 = curvatureAt(ground, i);
    const double k1 = curvatureAt(ground, i + 1);
    const math::HermiteCubic k = cubicOf(k0, -ground.side * a.line.curvatureRate_per_m2, k1,
                                         -ground.side * b.line.curvatureRate_per_m2, s.length_m);
    s.middleK = k.at(0.5);
    s.turnedHalf = k.integral(0.5);
    const double more = turned.more_per_m.empty() ? 0.0 : (turned.more_per_m[i] + turned.more_per_m[i + 1]) / 2;
    s.moreMiddle = ((turned.share[i] + turned.share[i + 1]) / 2 - 1) * s.middleK + more;
    const double more0 = moreAt(turned, i, k0);
    const double more1 = moreAt(turned, i + 1, k1);
    s.moreHalf = s.length_m * (5 * more0 + 8 * s.moreMiddle - more1) / 24;
    s.moreWhole = s.length_m * (more0 + 4 * s.moreMiddle + more1) / 6;
    return s;
}

// How far the faying surface goes on per length of the wanted line, along the section's heading.
double goesOn(double k, double faying_m, double axis_m, double more, double lengths) {
    return ((1 + faying_m * k) - (axis_m - faying_m) * more) * lengths;
}

line::Xy stepOf(double along, double aside, double heading_rad, double side) {
    const double c = std::cos(heading_rad);
    const double s = std::sin(heading_rad);
    return {along * c - side * aside * s, along * s + side * aside * c};
}

// Rates of the curvature by neighbouring nodes, one-sided where a stretch begins or ends.
void rateCurvature(std::vector<FormLine::Node>& nodes) {
    const auto slope = [&](std::size_t i) {
        return (nodes[i + 1].curvature_per_m - nodes[i].curvature_per_m) / (nodes[i + 1].at_m - nodes[i].at_m);
    };
    const auto joined = [&](std::size_t i) { return i + 1 < nodes.size() && nodes[i + 1].at_m > nodes[i].at_m; };
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        const bool before = i > 0 && joined(i - 1);
        const bool after = joined(i);
        double rate = 0;
        if (before && after) {
            const double h0 = nodes[i].at_m - nodes[i - 1].at_m;
            const double h1 = nodes[i + 1].at_m - nodes[i].at_m;
            rate = (h1 * slope(i - 1) + h0 * slope(i)) / (h0 + h1);
        } else if (after) {
            rate = slope(i);
            if (joined(i + 1)) {
                const double h0 = nodes[i + 1].at_m - nodes[i].at_m;
                const double h1 = nodes[i + 2].at_m - nodes[i + 1].at_m;
                rate -= (slope(i + 1) - slope(i)) * h0 / (h0 + h1);
            }
        } else if (before) {
            rate = slope(i - 1);
            if (i > 1 && joined(i - 2)) {
                const double h0 = nodes[i - 1].at_m - nodes[i - 2].at_m;
                const double h1 = nodes[i].at_m - nodes[i - 1].at_m;
                rate += (slope(i - 1) - slope(i - 2)) * h1 / (h0 + h1);
            }
        }
        nodes[i].curvatureRate_m2 = rate;
    }
}

// Heading, step and curvature of the faying surface at one place of the ground.
FormLine::Node nodeAt(const Ground& ground, const Turned& turned, std::size_t i, double moreTurn) {
    const Ground::Place& place = ground.places[i];
    const double side = ground.side;
    const double k = curvatureAt(ground, i);
    const double more = moreAt(turned, i, k);
    const double along = goesOn(k, place.faying_m, turned.axisFromLine_m[i], more, turned.lengths);
    const double aside = place.fayingSlope;
    FormLine::Node node{.at_m = place.line.at_m,
                        .axis_m = turned.axisFromLine_m[i] - place.faying_m,
                        .heading_rad = place.line.heading_rad - side * moreTurn,
                        .turn_per_m = -side * (k + more)};
    node.slope = stepOf(along, aside, node.heading_rad, side);
    // The faying surface's own heading is aside by atan(aside / along); its change where strips taper.
    const double alongRate = aside * k + place.faying_m * (-side * place.line.curvatureRate_per_m2);
    const double run2 = along * along + aside * aside;
    node.curvature_per_m = (node.turn_per_m - side * aside * alongRate / run2) / std::sqrt(run2);
    return node;
}

}  // namespace

FormLine::FormLine(std::vector<Node> nodes, double side) : nodes_(std::move(nodes)), side_(side) {}

FormLine::Node FormLine::at(double at_m) const {
    if (nodes_.empty()) return {};
    auto after = std::upper_bound(nodes_.begin(), nodes_.end(), at_m,
                                  [](double at, const Node& node) { return at < node.at_m; });
    if (after == nodes_.begin() || (after == nodes_.end() && at_m > nodes_.back().at_m)) {
        // An arc of the end's curvature.
        Node node = after == nodes_.begin() ? nodes_.front() : nodes_.back();
        const double h = at_m - node.at_m;
        const double half = node.turn_per_m * h / 2;
        const double chord = std::abs(half) < 1e-8 ? h : h * std::sin(half) / half;
        node.faying = node.faying + chord * math::turned(node.slope, half);
        node.slope = math::turned(node.slope, 2 * half);
        node.s_m += h * (1 - side_ * node.axis_m * node.curvature_per_m) * math::hypot(node.slope);
        node.heading_rad += 2 * half;
        node.curvatureRate_m2 = 0;
        node.at_m = at_m;
        return node;
    }
    if (after == nodes_.end()) return nodes_.back();
    const Node& a = *(after - 1);
    const Node& b = *after;
    const double h = b.at_m - a.at_m;
    const double u = (at_m - a.at_m) / h;
    const math::HermiteCubic x = cubicOf(a.faying.x_m, a.slope.x_m, b.faying.x_m, b.slope.x_m, h);
    const math::HermiteCubic y = cubicOf(a.faying.y_m, a.slope.y_m, b.faying.y_m, b.slope.y_m, h);
    const math::HermiteCubic heading = cubicOf(a.heading_rad, a.turn_per_m, b.heading_rad, b.turn_per_m, h);
    const math::HermiteCubic curvature =
        cubicOf(a.curvature_per_m, a.curvatureRate_m2, b.curvature_per_m, b.curvatureRate_m2, h);
    return Node{.at_m = at_m,
                .s_m = a.s_m + u * (b.s_m - a.s_m),
                .axis_m = a.axis_m + u * (b.axis_m - a.axis_m),
                .faying = {x.at(u), y.at(u)},
                .slope = {x.slope(u), y.slope(u)},
                .heading_rad = heading.at(u),
                .turn_per_m = heading.slope(u),
                .curvature_per_m = curvature.at(u),
                .curvatureRate_m2 = curvature.slope(u)};
}

line::Place FormLine::faying(double at_m) const {
    const Node node = at(at_m);
    const double c = std::cos(node.heading_rad);
    const double s = std::sin(node.heading_rad);
    const double along = node.slope.x_m * c + node.slope.y_m * s;
    const double aside = node.slope.y_m * c - node.slope.x_m * s;
    const double speed = std::hypot(along, aside);
    return {at_m,
            node.faying.x_m,
            node.faying.y_m,
            node.heading_rad + (speed > 0 ? std::atan2(aside, along) : 0.0),
            node.curvature_per_m,
            speed > 0 ? node.curvatureRate_m2 / speed : 0.0};
}

line::Place FormLine::axis(double at_m) const {
    const Node node = at(at_m);
    const line::Xy xy = beside(at_m, node.axis_m);
    const double speed = math::hypot(node.slope);
    const double along = speed - side_ * node.axis_m * node.turn_per_m;
    return {at_m, xy.x_m, xy.y_m, node.heading_rad, along > 0 ? node.turn_per_m / along : 0.0, 0};
}

FormLine::Section FormLine::section(double at_m) const {
    const Node node = at(at_m);
    return {node.heading_rad, node.turn_per_m};
}

line::Xy FormLine::beside(double at_m, double distance_m) const {
    const Node node = at(at_m);
    const double left = side_ * distance_m;
    return {node.faying.x_m - left * std::sin(node.heading_rad), node.faying.y_m + left * std::cos(node.heading_rad)};
}

FormLine shapeOf(const Ground& ground, const Turned& turned) {
    const std::size_t count = ground.places.size();
    if (count == 0) return {};
    std::vector<double> moreTurn(count, 0.0);
    std::vector<double> s(count, 0.0);
    for (std::size_t i = 0; i + 1 < count; ++i) {
        const Stretch stretch = stretchAfter(ground, turned, i);
        const double axis = (turned.axisFromLine_m[i] + turned.axisFromLine_m[i + 1]) / 2;
        const double along = (6 * 1.0 + turned.axisFromLine_m[i] * curvatureAt(ground, i) + 4 * axis * stretch.middleK +
                              turned.axisFromLine_m[i + 1] * curvatureAt(ground, i + 1)) /
                             6;
        moreTurn[i + 1] = moreTurn[i] + stretch.moreWhole;
        s[i + 1] = s[i] + along * stretch.length_m * turned.lengths;
    }
    const double turnAtFixed = moreTurn[ground.fixed];
    const double sAtFixed = s[ground.fixed];

    std::vector<FormLine::Node> nodes(count);
    line::Xy xy;
    for (std::size_t i = 0; i < count; ++i) {
        nodes[i] = nodeAt(ground, turned, i, moreTurn[i] - turnAtFixed);
        nodes[i].s_m = s[i] - sAtFixed;
        nodes[i].faying = xy;
        if (i + 1 == count) break;
        const Stretch stretch = stretchAfter(ground, turned, i);
        if (stretch.length_m == 0) continue;
        const Ground::Place& a = ground.places[i];
        const Ground::Place& b = ground.places[i + 1];
        const double middleHeading =
            a.line.heading_rad - ground.side * (stretch.turnedHalf + moreTurn[i] + stretch.moreHalf - turnAtFixed);
        const double along =
            goesOn(stretch.middleK, (a.faying_m + b.faying_m) / 2,
                   (turned.axisFromLine_m[i] + turned.axisFromLine_m[i + 1]) / 2, stretch.moreMiddle, turned.lengths);
        const line::Xy middle = stepOf(along, a.fayingSlope, middleHeading, ground.side);
        const FormLine::Node next = nodeAt(ground, turned, i + 1, moreTurn[i + 1] - turnAtFixed);
        xy.x_m += stretch.length_m / 6 * (nodes[i].slope.x_m + 4 * middle.x_m + next.slope.x_m);
        xy.y_m += stretch.length_m / 6 * (nodes[i].slope.y_m + 4 * middle.y_m + next.slope.y_m);
    }
    const Ground::Place& fixed = ground.places[ground.fixed];
    const line::Xy there = pointBeside(fixed.line, ground.side, fixed.faying_m);
    const line::Xy shift{there.x_m - nodes[ground.fixed].faying.x_m, there.y_m - nodes[ground.fixed].faying.y_m};
    for (FormLine::Node& node : nodes) node.faying = {node.faying.x_m + shift.x_m, node.faying.y_m + shift.y_m};
    rateCurvature(nodes);
    return {std::move(nodes), ground.side};
}

}  // namespace fayline::laminate
