#include "app/formview/edits.hpp"

#include <QObject>
#include <algorithm>
#include <cmath>
#include <set>

#include "app/formview/sheet.hpp"
#include "app/look/names.hpp"
#include "core/laminate/stack.hpp"
#include "core/units/length.hpp"
#include "core/units/units.hpp"

namespace fayline::app::edits {

namespace {

constexpr double millimetre_m = 0.001;

void put(model::Point& point, int axis, double to_m, double step_m, units::LengthNotation notation) {
    double& value_m = axis == 0 ? point.x_m : point.y_m;
    if (to_m == value_m || (step_m > 0 && rounded(to_m, step_m) == rounded(value_m, step_m))) return;
    const Typed made = typed(to_m, step_m, notation);
    value_m = made.value_m;
    point.written[axis] = made.written;
}

// "Pt 7": the first number that no point has yet, counting from how many there will be.
std::string newLabel(const model::Piece& piece) {
    std::set<std::string> labels;
    for (const auto& point : piece.line.points) labels.insert(point.label);
    for (size_t number = piece.line.points.size() + 1;; ++number) {
        const std::string label = "Pt " + std::to_string(number);
        if (!labels.contains(label)) return label;
    }
}

}  // namespace

double rounded(double length_m, double step_m) {
    if (step_m <= 0) return length_m;
    const double steps = std::round(length_m / step_m);
    return steps == 0 ? 0 : steps * step_m;
}

Typed typed(double length_m, double step_m, units::LengthNotation notation) {
    Typed made;
    made.written = units::writeLength(rounded(length_m, step_m), notation);
    made.value_m = units::readLength(made.written, notation);
    return made;
}

double stationStep(units::LengthNotation notation) {
    return notation == units::LengthNotation::millimetres ? millimetre_m : units::sixteenth_m;
}

double pointStep(const model::Piece& piece, units::LengthNotation notation) {
    return piece.line.readTo_m > 0 ? piece.line.readTo_m : stationStep(notation);
}

Change movePoint(const Shown& shown, const model::Piece& before, int index, const line::Xy& to, bool free,
                 const QString& merges) {
    Change change{QObject::tr("Move %1").arg(pointName(before, index)), merges, before};
    model::Point& point = change.after.line.points.at(index);
    const auto notation = shown.display.lengths;
    const double step_m = free ? 0 : pointStep(before, notation);
    put(point, 0, to.x_m, step_m, notation);
    put(point, 1, to.y_m, step_m, notation);
    return change;
}

Change moveStation(const Shown& shown, const model::Piece& before, int index, double at_m, const QString& merges) {
    Change change{QObject::tr("Move %1").arg(stationName(shown, index)), merges, before};
    change.after.holding.stations.at(index).at_m = rounded(at_m, stationStep(shown.display.lengths));
    return change;
}

Change moveFoot(const Shown& shown, const model::Piece& before, int index, const line::Xy& to, const QString& merges) {
    Change change{QObject::tr("Move foot of %1").arg(stationName(shown, index)), merges, before};
    auto& strut = change.after.holding.stations.at(index).strut;
    const double step_m = stationStep(shown.display.lengths);
    strut.footX_m = rounded(to.x_m, step_m);
    strut.footY_m = rounded(to.y_m, step_m);
    return change;
}

Change moveBlock(const Shown& shown, const model::Piece& before, int index, double x_m, const QString& merges) {
    Change change{QObject::tr("Move block %1").arg(index + 1), merges, before};
    change.after.holding.hull.blocks.at(index).x_m = rounded(x_m, stationStep(shown.display.lengths));
    return change;
}

Change addPoint(const Shown& shown, double at_m) {
    Change change{{}, {}, shown.piece};
    auto& points = change.after.line.points;
    const line::Line& line = shown.plan->line.fair.line;
    const line::Place onLine = line.at(at_m);
    const double out_m = shown.piece.line.takeOff_m * laminate::sideSign(shown.piece.line.stripsOn);
    const line::Place measured = line::parallel(onLine, out_m);

    model::Point point;
    point.label = newLabel(shown.piece);
    const auto notation = shown.display.lengths;
    const double step_m = pointStep(shown.piece, notation);
    const Typed x = typed(measured.x_m, step_m, notation);
    const Typed y = typed(measured.y_m, step_m, notation);
    point.x_m = x.value_m;
    point.y_m = y.value_m;
    point.written = {x.written, y.written};

    // Before the first point that lies further along.
    size_t place = points.size();
    for (size_t i = points.size(); i-- > 0;) {
        const double foot_m = line.nearest(points[i].x_m, points[i].y_m).at_m;
        if (foot_m > at_m) place = i;
    }
    change.name = QObject::tr("Add %1").arg(QString::fromStdString(point.label));
    points.insert(points.begin() + static_cast<std::ptrdiff_t>(place), point);
    return change;
}

bool canRemovePoint(const model::Piece& piece) {
    return piece.line.points.size() > 3;
}

Change removePoint(const Shown& shown, int index) {
    Change change{QObject::tr("Remove %1").arg(pointName(shown.piece, index)), {}, shown.piece};
    auto& points = change.after.line.points;
    points.erase(points.begin() + index);
    return change;
}

Change setMustPass(const Shown& shown, int index, bool mustPass) {
    const QString name = pointName(shown.piece, index);
    Change change{mustPass ? QObject::tr("Fix the line at %1").arg(name) : QObject::tr("Free the line at %1").arg(name),
                  {},
                  shown.piece};
    change.after.line.points.at(index).mustPass = mustPass;
    return change;
}

Change addStation(const Shown& shown, double at_m) {
    const auto& stations = shown.piece.holding.stations;
    model::Station made;
    const auto nearest = std::min_element(stations.begin(), stations.end(), [at_m](const auto& a, const auto& b) {
        return std::abs(a.at_m - at_m) < std::abs(b.at_m - at_m);
    });
    if (nearest != stations.end()) {
        made.kind = nearest->kind;
        made.most_N = nearest->most_N;
        made.pad_m = nearest->pad_m;
    }
    made.at_m = rounded(at_m, stationStep(shown.display.lengths));
    Change change{QObject::tr("Add a %1").arg(holdName(made.kind)), {}, shown.piece};
    change.after.holding.stations.push_back(made);
    return change;
}

Change removeStation(const Shown& shown, int index) {
    Change change{QObject::tr("Remove %1").arg(stationName(shown, index)), {}, shown.piece};
    auto& stations = change.after.holding.stations;
    stations.erase(stations.begin() + index);
    return change;
}

bool canRemoveBlock(const model::Piece& piece) {
    const model::Hull& hull = piece.holding.hull;
    return hull.blocks.size() > 1 || hull.weight_kg <= 0;
}

Change removeBlock(const Shown& shown, int index) {
    Change change{QObject::tr("Remove block %1").arg(index + 1), {}, shown.piece};
    auto& blocks = change.after.holding.hull.blocks;
    blocks.erase(blocks.begin() + index);
    return change;
}

}  // namespace fayline::app::edits
