#include "core/holding/middle.hpp"

#include <algorithm>
#include <cmath>

#include "core/math/hermite.hpp"
#include "core/math/table.hpp"

namespace fayline::holding {

namespace {

// The curve beside the line where its distance changes by `slope`. `bend_per_m3` is the line's second rate of
// curvature.
void describe(MiddleNode& node, const line::Place& place, double side, double d, double slope, double bend_per_m3) {
    const double k = laminate::stackCurvature(place, side);
    const double rate = -side * place.curvatureRate_per_m2;
    const double J = 1 + d * k;
    const double JRate = slope * k + d * rate;
    const double run = std::hypot(J, slope);
    const double runRate = J * JRate / run;
    const double turn = J * J * k + slope * (2 * slope * k + d * rate);
    const double turnRate =
        2 * J * JRate * k + J * J * rate + slope * (2 * slope * rate + slope * rate + d * bend_per_m3);
    const double cube = run * run * run;
    node.stretch = run;
    node.stretchRate_per_m = runRate;
    node.curvature_per_m = turn / cube;
    node.curvatureRate_per_m2 = (turnRate - 3 * turn * runRate / run) / cube / run;
}

bool hasRoom(const line::Place& place, double side, const std::vector<laminate::Layer>& strips) {
    return laminate::stretch(place, side, strips.front().inner.at(place.at_m)) > 0 &&
           laminate::stretch(place, side, strips.back().outer.at(place.at_m)) > 0;
}

MiddleArc arcBeyond(const line::Place& end, double side, double distance_m) {
    const double J = laminate::stretch(end, side, distance_m);
    return {J, laminate::stackCurvature(end, side) / J};
}

// Turn of the form's sections less that of the wanted line, per length of the line, stack's sign.
double addedTurn(const Middle& middle, const line::Place& place) {
    const double turn = -middle.side * middle.form->section(place.at_m).turn_per_m;
    return turn - laminate::stackCurvature(place, middle.side);
}

void turnOnForm(Middle& middle, const std::vector<line::Place>& places) {
    std::vector<double> added;
    for (const line::Place& place : places) added.push_back(addedTurn(middle, place));
    for (std::size_t i = 0; i < middle.nodes.size(); ++i) {
        const std::size_t left = i == 0 ? 0 : i - 1;
        const std::size_t right = std::min(i + 1, middle.nodes.size() - 1);
        const double rate = (added[right] - added[left]) / (places[right].at_m - places[left].at_m);
        MiddleNode& node = middle.nodes[i];
        const double stretch = node.stretch;
        node.curvature_per_m += added[i] / stretch;
        node.curvatureRate_per_m2 += (rate - added[i] * node.stretchRate_per_m / stretch) / (stretch * stretch);
    }
    middle.before.curvature_per_m += added.front() / middle.before.stretch;
    middle.after.curvature_per_m += added.back() / middle.after.stretch;
}

// The node before a place between the trim lines, found by `member`.
const MiddleNode& nodeBefore(const Middle& middle, double MiddleNode::*member, double value) {
    return middle.nodes[math::intervalOf(middle.nodes, value, member)];
}

}  // namespace

Middle middleOf(const line::Line& line, double side, const std::vector<laminate::Layer>& strips,
                const laminate::FormLine* form) {
    Middle middle{.side = side,
                  .distance = laminate::between(strips.front().inner, strips.back().outer),
                  .faying = strips.front().inner,
                  .form = form && !form->empty() ? form : nullptr};
    const double length = line.length();
    const int panels = std::max(1, static_cast<int>(std::ceil(length / middleStep_m - 1e-9)));
    std::vector<line::Place> places;
    for (int i = 0; i <= panels; ++i) places.push_back(line.at(i == panels ? length : length * i / panels));
    middle.room = std::ranges::all_of(places, [&](const line::Place& place) { return hasRoom(place, side, strips); });
    if (!middle.room) return middle;

    const double step = length / panels;
    for (int i = 0; i <= panels; ++i) {
        const line::Place& place = places[i];
        // Only a taper asks for the second rate of curvature, times its slope and the distance: differences will do.
        const line::Place& left = places[std::max(0, i - 1)];
        const line::Place& right = places[std::min(panels, i + 1)];
        const double bend = -side * (right.curvatureRate_per_m2 - left.curvatureRate_per_m2) / (right.at_m - left.at_m);
        MiddleNode node;
        node.at_m = place.at_m;
        describe(node, place, side, middle.distance.at(place.at_m), middle.distance.slopeAt(place.at_m), bend);
        if (i > 0) {
            // Length by the cubic through both ends' stretches and their rates.
            const MiddleNode& last = middle.nodes.back();
            node.s_m = last.s_m + step * (last.stretch + node.stretch) / 2 +
                       step * step * (last.stretchRate_per_m - node.stretchRate_per_m) / 12;
        }
        middle.nodes.push_back(node);
    }
    middle.before = arcBeyond(places.front(), side, middle.distance.atStart_m);
    middle.after = arcBeyond(places.back(), side, middle.distance.atEnd_m);
    if (middle.form) turnOnForm(middle, places);
    return middle;
}

double alongMiddle(const Middle& middle, double at_m) {
    const MiddleNode& last = middle.nodes.back();
    if (at_m < 0) return at_m * middle.before.stretch;
    if (at_m > last.at_m) return last.s_m + (at_m - last.at_m) * middle.after.stretch;
    const MiddleNode& from = nodeBefore(middle, &MiddleNode::at_m, at_m);
    const MiddleNode& to = *(&from + 1);
    const double step = to.at_m - from.at_m;
    return math::HermiteCubic(from.s_m, from.stretch, to.s_m, to.stretch, step).at((at_m - from.at_m) / step);
}

namespace {

double lineWithin(const MiddleNode& from, const MiddleNode& to, double s_m) {
    const double step = to.s_m - from.s_m;
    return math::HermiteCubic(from.at_m, 1 / from.stretch, to.at_m, 1 / to.stretch, step).at((s_m - from.s_m) / step);
}

}  // namespace

double alongLine(const Middle& middle, double s_m) {
    const MiddleNode& last = middle.nodes.back();
    if (s_m < 0) return s_m / middle.before.stretch;
    if (s_m > last.s_m) return last.at_m + (s_m - last.s_m) / middle.after.stretch;
    const MiddleNode& from = nodeBefore(middle, &MiddleNode::s_m, s_m);
    return lineWithin(from, *(&from + 1), s_m);
}

MiddlePlace middleAt(const Middle& middle, double s_m) {
    if (s_m < 0) return {alongLine(middle, s_m), middle.before.curvature_per_m, 0};
    if (s_m > middle.nodes.back().s_m) return {alongLine(middle, s_m), middle.after.curvature_per_m, 0};
    const MiddleNode& from = nodeBefore(middle, &MiddleNode::s_m, s_m);
    const MiddleNode& to = *(&from + 1);
    const double step = to.s_m - from.s_m;
    const double u = (s_m - from.s_m) / step;
    const math::HermiteCubic curvature(from.curvature_per_m, from.curvatureRate_per_m2, to.curvature_per_m,
                                       to.curvatureRate_per_m2, step);
    return {lineWithin(from, to, s_m), curvature.at(u), curvature.slope(u)};
}

MiddleFrame middleFrame(const Middle& middle, const line::Line& line, double s_m) {
    const line::Place on = line.at(alongLine(middle, s_m));
    const double d = middle.distance.at(on.at_m);
    const double lean =
        std::atan2(middle.side * middle.distance.slopeAt(on.at_m), laminate::stretch(on, middle.side, d));
    const double heading = (middle.form ? middle.form->section(on.at_m).heading_rad : on.heading_rad) + lean;
    const line::Xy ahead{std::cos(heading), std::sin(heading)};
    const line::Xy point = middle.form ? middle.form->beside(on.at_m, d - middle.faying.at(on.at_m))
                                       : laminate::pointBeside(on, middle.side, d);
    return {point, ahead, {-middle.side * ahead.y_m, middle.side * ahead.x_m}};
}

}  // namespace fayline::holding
