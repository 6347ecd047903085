#include "core/model/new_piece.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "core/units/input_error.hpp"
#include "core/units/units.hpp"

namespace fayline::model {

namespace {

void requireAbove0(double length_m, const char* path, const char* what) {
    if (!(length_m > 0)) throw units::InputError(path, std::string("not ") + what, "give a length above 0");
}

// Mirrors and scales about the middle between the ends and the start.
class Move {
public:
    Move(const Piece& piece, const CopyAs& as)
        : as_(as), start_(piece.line.points.front()), end_(piece.line.points.back()) {}

    double x_m(double x_m) const { return moved(x_m, start_.x_m, end_.x_m, as_.endForEnd); }
    double y_m(double y_m) const { return moved(y_m, start_.y_m, end_.y_m, as_.upsideDown); }
    double heading_rad(double heading_rad) const {
        if (as_.endForEnd) heading_rad = std::numbers::pi - heading_rad;
        if (as_.upsideDown) heading_rad = -heading_rad;
        return std::remainder(heading_rad, 2 * std::numbers::pi);
    }

private:
    double moved(double value_m, double start_m, double end_m, bool mirror) const {
        const double from_m = mirror ? end_m : start_m;  // where the start then is
        if (mirror) value_m = start_m + end_m - value_m;
        return as_.scale == 1 ? value_m : from_m + as_.scale * (value_m - from_m);
    }

    CopyAs as_;
    Point start_;
    Point end_;
};

void moveHolding(Holding& holding, const Move& move, double scale) {
    for (Station& station : holding.stations) {
        station.at_m *= scale;
        if (station.strap.to_m) *station.strap.to_m *= scale;
        if (station.strut.footX_m) station.strut.footX_m = move.x_m(*station.strut.footX_m);
        if (station.strut.footY_m) station.strut.footY_m = move.y_m(*station.strut.footY_m);
    }
    holding.hull.centreX_m = move.x_m(holding.hull.centreX_m);
    holding.hull.centreY_m = move.y_m(holding.hull.centreY_m);
    for (Block& block : holding.hull.blocks) {
        block.x_m = move.x_m(block.x_m);
        block.y_m = move.y_m(block.y_m);
    }
}

}  // namespace

Piece newPiece(const std::string& name, const units::Display& display) {
    const bool metric = display.lengths == units::LengthNotation::millimetres;
    const auto either = [metric](double mm, double inches) {
        return metric ? units::fromMillimetres(mm) : inches * units::inch_m;
    };
    Piece piece;
    piece.name = name;
    // Round upward, so that strips on the left lie outside the bend as on a form.
    piece.line.points = {Point{.label = "Start"},
                         Point{.label = "Middle", .x_m = either(600, 24), .y_m = either(90, 3.5)},
                         Point{.label = "End", .x_m = either(1200, 48)}};
    piece.line.readTo_m = either(1, 1.0 / 16);
    piece.line.fairWithin_m = either(1.5, 1.0 / 16);
    for (Strips& strips : piece.stack.strips) strips.thickness_m = either(6, 0.25);
    for (Width& width : piece.stack.widths) width.width_m = either(50, 2);
    piece.stack.ripAllowance_m = either(3, 1.0 / 8);
    piece.stack.runsPastStart_m = either(100, 4);
    piece.stack.runsPastEnd_m = either(150, 6);
    return piece;
}

bool isUntouchedSample(const std::vector<Point>& points) {
    return std::ranges::any_of(std::array{units::metricShop, units::inchShop}, [&](const units::Display& display) {
        return points == newPiece("", display).line.points;
    });
}

double Arc::radius_m() const {
    return chord_m * chord_m / (8 * rise_m) + rise_m / 2;
}

double Arc::turn_rad() const {
    return 4 * std::atan2(2 * rise_m, chord_m);
}

double Arc::length_m() const {
    return radius_m() * turn_rad();
}

Arc arcOfRise(double chord_m, double rise_m) {
    requireAbove0(chord_m, "chord", "a length between two ends");
    requireAbove0(rise_m, "rise", "a height");
    if (rise_m > chord_m / 2)
        throw units::InputError("rise", "more than half the length between the ends",
                                "give half of that at most, for a half circle");
    return {chord_m, rise_m};
}

Arc arcOfRadius(double chord_m, double radius_m) {
    requireAbove0(chord_m, "chord", "a length between two ends");
    requireAbove0(radius_m, "radius", "a radius");
    if (radius_m < chord_m / 2)
        throw units::InputError("radius", "less than half the length between the ends",
                                "give half of that at least, for a half circle");
    // radius - sqrt(radius^2 - chord^2 / 4), without the difference of two numbers that are nearly equal.
    const double half_m = chord_m / 2;
    return {chord_m, half_m * half_m / (radius_m + std::sqrt((radius_m - half_m) * (radius_m + half_m)))};
}

std::vector<Point> arcPoints(const Arc& arc) {
    constexpr int fewest = 9;
    const int steps = std::max(fewest - 1, 2 * static_cast<int>(std::ceil(units::toDegrees(arc.turn_rad()) / 20)));
    std::vector<Point> points;
    for (int i = 0; i <= steps; ++i) {
        // From the top, so that both halves are alike to the last bit.
        const double angle_rad = arc.turn_rad() * (i - steps / 2) / steps;
        const double down_m = 2 * arc.radius_m() * std::pow(std::sin(angle_rad / 2), 2);
        points.push_back({.label = std::to_string(i + 1),
                          .x_m = arc.chord_m / 2 + arc.radius_m() * std::sin(angle_rad),
                          .y_m = arc.rise_m - down_m});
    }
    points.front() = {.label = "Start"};
    points.back() = {.label = "End", .x_m = arc.chord_m};
    return points;
}

LineInput beamLine(LineInput line, double length_m, double roundUp_m) {
    line.points = arcPoints(arcOfRise(length_m, roundUp_m));
    line.describes = Describes::outerFace;
    return line;
}

Piece copyOf(const Piece& piece, const CopyAs& as) {
    Piece copy = piece;
    copy.id.clear();
    copy.record.clear();
    if (piece.line.points.empty() || as == CopyAs{}) return copy;
    const Move move(piece, as);
    for (Point& point : copy.line.points) {
        const Point before = point;
        point.x_m = move.x_m(before.x_m);
        point.y_m = move.y_m(before.y_m);
        if (point.x_m != before.x_m) point.written[0].clear();
        if (point.y_m != before.y_m) point.written[1].clear();
    }
    if (copy.line.startHeading_rad) copy.line.startHeading_rad = move.heading_rad(*copy.line.startHeading_rad);
    if (copy.line.endHeading_rad) copy.line.endHeading_rad = move.heading_rad(*copy.line.endHeading_rad);
    if (as.endForEnd != as.upsideDown) copy.line.stripsOn = copy.line.stripsOn == Side::left ? Side::right : Side::left;
    for (Width& width : copy.stack.widths) width.at_m *= as.scale;
    for (Pin& pin : copy.stack.pins) pin.at_m *= as.scale;
    for (Planed& planed : copy.stack.planedAfter) planed.at_m *= as.scale;
    for (Post& post : copy.form.posts) post.at_m *= as.scale;
    if (copy.form.fixedAt_m) *copy.form.fixedAt_m *= as.scale;
    moveHolding(copy.holding, move, as.scale);
    return copy;
}

}  // namespace fayline::model
