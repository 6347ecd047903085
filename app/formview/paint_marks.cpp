// Points with their misfit, stations, findings, the tightest place.
#include <cmath>
#include <numbers>

#include "app/formview/paint.hpp"

namespace fayline::app {

namespace {

void paintMisfit(QPainter& painter, const QLineF& misfit, const Theme& theme) {
    painter.setPen(pen(theme.ground, 4));
    painter.drawLine(misfit);
    painter.setPen(pen(theme.ink, 1.4));
    painter.drawLine(misfit);
    // A short bar at the end, square to it: the miss is read from line to bar.
    const QLineF along = misfit.unitVector();
    const QPointF side(-(along.dy()) * 3.5, along.dx() * 3.5);
    painter.drawLine(misfit.p2() - side, misfit.p2() + side);
}

void paintPoint(QPainter& painter, const PointMark& mark, bool chosen, const Theme& theme) {
    if (!mark.takeOff.isNull()) {
        painter.setPen(pen(theme.ground, 3));
        painter.drawLine(mark.takeOff);
        painter.setPen(pen(theme.ink, 1.2, Qt::DotLine));
        painter.drawLine(mark.takeOff);
    }
    const QColor colour = chosen ? theme.accent : theme.ink;
    if (mark.suspect) {
        painter.setPen(pen(theme.caution, 1.8));
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(severityShape(plan::Severity::caution, mark.at, 11));
    }
    painter.setPen(pen(colour, 1.4));
    painter.setBrush(mark.mustPass ? colour : theme.ground);
    if (mark.mustPass) {
        painter.drawRect(QRectF(mark.at.x() - 3.2, mark.at.y() - 3.2, 6.4, 6.4));
    } else {
        painter.drawEllipse(mark.at, 3.4, 3.4);
    }
    if (!chosen) return;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(pen(theme.accent, 1.6));
    painter.drawEllipse(mark.at, 8, 8);
}

void paintStation(QPainter& painter, const StationMark& mark, bool chosen, const Theme& theme) {
    const QColor colour = chosen ? theme.accent : theme.ink;
    if (!mark.strap.band.isEmpty() || !mark.strap.idle.isEmpty()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(pen(colour, 1.2, Qt::DashLine));
        painter.drawPath(mark.strap.idle);
        painter.setPen(pen(colour, 2.4));
        painter.drawPath(mark.strap.band);
        painter.setPen(pen(colour, 1));
        painter.drawPath(mark.strap.thrust);
    }
    painter.setPen(pen(colour, 1.2, Qt::DashLine));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(mark.shape.hidden);
    painter.setPen(pen(colour, 1.4));
    painter.drawPath(mark.shape.strokes);
    painter.setBrush(theme.ground);
    painter.drawPath(mark.shape.body);
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour);
    painter.drawPath(mark.shape.solid);
}

// An arrow from the hollow side on to the stack, as a radius is marked on a drawing.
void paintRadius(QPainter& painter, const QLineF& radius, const Theme& theme) {
    if (radius.isNull()) return;
    painter.setPen(pen(theme.ink, 1.2));
    painter.drawLine(radius);
    const QLineF back = QLineF(radius.p2(), radius.p1()).unitVector();
    const QPointF way(back.dx(), back.dy());
    const QPointF side(-way.y(), way.x());
    QPolygonF head;
    head << radius.p2() << radius.p2() + way * 9 + side * 2.6 << radius.p2() + way * 9 - side * 2.6;
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme.ink);
    painter.drawPolygon(head);
}

}  // namespace

QPainterPath severityShape(plan::Severity severity, const QPointF& centre, double half) {
    QPainterPath path;
    if (severity == plan::Severity::note) {
        path.addEllipse(centre, half * 0.8, half * 0.8);
        return path;
    }
    const int corners = severity == plan::Severity::stop ? 8 : 3;
    const double turn = corners == 8 ? std::numbers::pi / 8 : -std::numbers::pi / 2;
    QPolygonF figure;
    for (int i = 0; i < corners; ++i) {
        const double angle = turn + i * 2 * std::numbers::pi / corners;
        figure << centre + QPointF(std::cos(angle), std::sin(angle)) * half;
    }
    path.addPolygon(figure);
    path.closeSubpath();
    return path;
}

QColor severityColour(plan::Severity severity, const Theme& theme) {
    switch (severity) {
        case plan::Severity::stop:
            return theme.stop;
        case plan::Severity::caution:
            return theme.caution;
        case plan::Severity::note:
            return theme.note;
    }
    return theme.note;
}

void paint::marks(QPainter& painter, const Sheet& sheet, const ViewChoice& choice, const Theme& theme) {
    paint::trims(painter, sheet, choice, theme);
    const double worked = paint::opacityOf(sheet);
    painter.setOpacity(worked);
    paintRadius(painter, sheet.radius, theme);
    for (const FindingMark& mark : sheet.findings) {
        const QColor colour = severityColour(mark.severity, theme);
        painter.setPen(pen(colour, 1.2));
        painter.drawLine(mark.tick);
        painter.setPen(pen(colour, 1.6));
        painter.setBrush(theme.ground);
        painter.drawPath(severityShape(mark.severity, mark.at, 7.5));
        painter.setBrush(colour);
        painter.setPen(Qt::NoPen);
        painter.drawEllipse(mark.at, 1.6, 1.6);
    }
    painter.setOpacity(1);
    paint::standing(painter, sheet, choice, theme);
    for (const StationMark& mark : sheet.stations) paintStation(painter, mark, mark.index == choice.station, theme);
    painter.setOpacity(worked);
    paint::forces(painter, sheet, choice, theme);
    paint::troubles(painter, sheet, choice, theme);
    for (const PointMark& mark : sheet.points) {
        if (!mark.misfit.isNull()) paintMisfit(painter, mark.misfit, theme);
    }
    painter.setOpacity(1);
    for (const PointMark& mark : sheet.points) paintPoint(painter, mark, mark.index == choice.point, theme);
}

}  // namespace fayline::app
