// A trim line slides along the wood.
#include <QObject>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "app/formview/edits.hpp"
#include "core/laminate/stack.hpp"

namespace fayline::app::edits {

namespace {

// Where the neighbour of the end point has its foot on the line.
double neighbourAt(const Shown& shown, TrimLine which) {
    const auto& points = shown.piece.line.points;
    const size_t neighbour = which == TrimLine::start ? 1 : points.size() - 2;
    const auto& feet = shown.plan->line.fair.points;
    if (feet.size() == points.size()) return feet[neighbour].at_m;
    return shown.plan->line.fair.line.nearest(points[neighbour].x_m, points[neighbour].y_m).at_m;
}

// How far out the trim line may go: the line runs on as an arc, which must not come round to itself.
double mostOut(const line::Line& line, TrimLine which) {
    const double end_m = which == TrimLine::start ? 0 : line.length();
    const double curvature = std::abs(line.at(end_m).curvature_per_m);
    const double quarter_m = curvature > 0 ? std::numbers::pi / 2 / curvature : line.length();
    return std::min(line.length() / 2, quarter_m);
}

// How far past its old place the trim line goes, > 0 along the line.
double shiftOf(const Shown& shown, TrimLine which, double at_m) {
    const line::Line& line = shown.plan->line.fair.line;
    const auto notation = shown.display.lengths;
    // Nearer than this two points say nothing of the line between them.
    const double least_m = std::max(0.01, 4 * pointStep(shown.piece, notation));
    const double neighbour_m = neighbourAt(shown, which);
    const double out_m = mostOut(line, which);
    double shift_m = 0;
    if (which == TrimLine::start) {
        shift_m = std::clamp(at_m, -out_m, std::max(0.0, neighbour_m - least_m));
    } else {
        const double length_m = line.length();
        shift_m = std::clamp(at_m, std::min(length_m, neighbour_m + least_m), length_m + out_m) - length_m;
    }
    // Toward nothing, so that a limit is not passed by rounding.
    const double step_m = stationStep(notation);
    return std::trunc(shift_m / step_m + std::copysign(1e-6, shift_m)) * step_m;
}

void slidePoint(model::Point& point, const Shown& shown, double at_m) {
    const line::Line& line = shown.plan->line.fair.line;
    const double out_m = shown.piece.line.takeOff_m * laminate::sideSign(shown.piece.line.stripsOn);
    const line::Place place = line::parallel(line.at(at_m), out_m);
    const auto notation = shown.display.lengths;
    const double step_m = pointStep(shown.piece, notation);
    const Typed x = typed(place.x_m, step_m, notation);
    const Typed y = typed(place.y_m, step_m, notation);
    point.x_m = x.value_m;
    point.y_m = y.value_m;
    point.written = {x.written, y.written};
}

void turn(std::optional<double>& heading_rad, const line::Line& line, double from_m, double to_m) {
    if (heading_rad) *heading_rad += line.at(to_m).heading_rad - line.at(from_m).heading_rad;
}

// Everything that is measured from the start, when the start has gone `by_m` along the line.
void measureFrom(model::Piece& piece, double by_m) {
    for (auto& station : piece.holding.stations) {
        station.at_m -= by_m;
        if (station.strap.to_m) *station.strap.to_m -= by_m;
    }
    for (auto& width : piece.stack.widths) width.at_m -= by_m;
    for (auto& pin : piece.stack.pins) pin.at_m -= by_m;
    for (auto& post : piece.form.posts) post.at_m -= by_m;
}

void lengthen(double& overRun_m, std::optional<double>& carriesOn_m, double by_m) {
    overRun_m = std::max(0.0, overRun_m + by_m);
    if (carriesOn_m) *carriesOn_m = std::max(0.0, *carriesOn_m + by_m);
}

}  // namespace

Change moveTrim(const Shown& shown, TrimLine which, double at_m, const QString& merges) {
    const bool start = which == TrimLine::start;
    Change change{start ? QObject::tr("Move trim line at the start") : QObject::tr("Move trim line at the end"), merges,
                  shown.piece};
    model::Piece& piece = change.after;
    const double shift_m = shiftOf(shown, which, at_m);
    if (shift_m == 0 || piece.line.points.size() < 3) return change;

    const line::Line& line = shown.plan->line.fair.line;
    const double was_m = start ? 0 : line.length();
    slidePoint(start ? piece.line.points.front() : piece.line.points.back(), shown, was_m + shift_m);
    if (start) {
        lengthen(piece.stack.runsPastStart_m, piece.form.carriesOnStart_m, shift_m);
        turn(piece.line.startHeading_rad, line, was_m, was_m + shift_m);
        measureFrom(piece, shift_m);
    } else {
        lengthen(piece.stack.runsPastEnd_m, piece.form.carriesOnEnd_m, -shift_m);
        turn(piece.line.endHeading_rad, line, was_m, was_m + shift_m);
    }
    return change;
}

}  // namespace fayline::app::edits
