// The edge of the form with gaps and pressure, arrows of forces, floor, props in trouble, the hull on its blocks.

#include "app/formview/paint.hpp"

namespace fayline::app {

namespace {

constexpr double head_px = 7;        // length of an arrow's head
constexpr double halfHead_px = 3.4;  // half its width

// A triangle with its tip at `tip`, pointing along `way`.
void addHead(QPainterPath& path, const QPointF& tip, const QPointF& way, double length) {
    const QPointF side = QPointF(-way.y(), way.x()) * (halfHead_px * length / head_px);
    path.moveTo(tip);
    path.lineTo(tip - way * length + side);
    path.lineTo(tip - way * length - side);
    path.closeSubpath();
}

// All arrows of one colour.
struct Arrows {
    QPainterPath shafts;
    QPainterPath heads;
    QPainterPath hollow;

    void add(const ForceArrow& arrow) {
        const QPointF tip = arrow.shaft.p2();
        if (arrow.state == ForceState::slack) {
            addHead(hollow, tip, arrow.way, head_px);
            return;
        }
        const double length = std::min(head_px, arrow.shaft.length());
        shafts.moveTo(arrow.shaft.p1());
        shafts.lineTo(tip - arrow.way * (length * 0.8));
        addHead(heads, tip, arrow.way, length);
        const QPointF side = QPointF(-arrow.way.y(), arrow.way.x()) * 5;
        if (arrow.state == ForceState::full) {
            for (const double at : {0.0, 3.5}) {
                shafts.moveTo(arrow.shaft.p1() + arrow.way * at - side);
                shafts.lineTo(arrow.shaft.p1() + arrow.way * at + side);
            }
        }
        if (arrow.state == ForceState::over) addHead(heads, tip - arrow.way * head_px, arrow.way, length);
    }

    void paint(QPainter& painter, const QColor& colour, const QColor& ground) const {
        painter.setBrush(Qt::NoBrush);
        if (!shafts.isEmpty()) {
            painter.setPen(pen(ground, 4.5));
            painter.drawPath(shafts);
            painter.setPen(pen(colour, 1.8));
            painter.drawPath(shafts);
            painter.setPen(Qt::NoPen);
            painter.setBrush(colour);
            painter.drawPath(heads);
        }
        if (!hollow.isEmpty()) {
            painter.setPen(pen(colour, 1.2));
            painter.setBrush(ground);
            painter.drawPath(hollow);
        }
    }
};

void paintBlock(QPainter& painter, const BlockMark& block, bool chosen, const Theme& theme) {
    const QColor colour = chosen ? theme.accent : block.lifts ? theme.stop : theme.ink;
    painter.setPen(pen(colour, 1.4, block.lifts ? Qt::DashLine : Qt::SolidLine));
    painter.setBrush(theme.ground);
    painter.drawRect(block.body);
    // End grain: the two diagonals of a baulk.
    painter.setPen(pen(colour, 0.8));
    painter.drawLine(block.body.topLeft(), block.body.bottomRight());
    painter.drawLine(block.body.topRight(), block.body.bottomLeft());
    if (block.lifts) {
        painter.setPen(pen(theme.stop, 1.6));
        painter.drawPath(severityShape(plan::Severity::stop, block.body.center() + QPointF(0, 18), 6.5));
    }
}

// A disc in quarters, two of them filled.
void paintCentre(QPainter& painter, const QPointF& centre, const Theme& theme) {
    constexpr double half = 6.5;
    const QRectF disc(centre.x() - half, centre.y() - half, 2 * half, 2 * half);
    painter.setPen(pen(theme.ink, 1.2));
    painter.setBrush(theme.ground);
    painter.drawEllipse(disc);
    painter.setBrush(theme.ink);
    painter.drawPie(disc, 0, 90 * 16);
    painter.drawPie(disc, 180 * 16, 90 * 16);
}

}  // namespace

void paint::formEdge(QPainter& painter, const Sheet& sheet, const Theme& theme) {
    const FormEdge& edge = sheet.edge;
    painter.setPen(Qt::NoPen);
    if (!edge.pressure.isEmpty()) painter.fillPath(edge.pressure, mix(theme.ground, theme.note, 0.55));
    painter.setBrush(Qt::NoBrush);
    painter.setPen(pen(mix(theme.ground, theme.faint, 0.6), 1));
    painter.drawPath(sheet.formSide);
    if (!sheet.boatSide.isEmpty()) {
        smooth(painter, {sheet.boatSide}, {}, pen(theme.faint, 1));
    }
    if (!edge.gaps) return;
    painter.fillPath(edge.gapsWithin, mix(theme.ground, theme.note, theme.dark ? 0.3 : 0.2));
    painter.fillPath(edge.gapsOver, theme.ground);  // bars on bare ground: nobody takes it for wood
    painter.setPen(pen(theme.caution, 1.2));
    painter.drawPath(edge.barsOver);
    smooth(painter, edge.overOutline, {}, pen(theme.caution, 1.6));
    smooth(painter, edge.freeEdge, {}, pen(theme.faint, 1, Qt::DotLine));
    smooth(painter, edge.edge, {}, pen(theme.ink, 1.2));
}

void paint::trims(QPainter& painter, const Sheet& sheet, const ViewChoice& choice, const Theme& theme) {
    for (size_t i = 0; i < sheet.trims.size(); ++i) {
        const QColor colour = static_cast<int>(i) == choice.trim ? theme.accent : theme.ink;
        QPen dashes = pen(colour, 1.2);
        dashes.setDashPattern({9, 3, 2, 3});
        painter.setPen(dashes);
        painter.drawLine(sheet.trims[i]);
        if (i >= sheet.grips.size()) continue;
        const QPointF grip = sheet.grips[i];
        painter.setPen(pen(colour, 1.3));
        painter.setBrush(static_cast<int>(i) == choice.trim ? colour : theme.ground);
        const double half = 4;
        painter.drawPolygon(QPolygonF(
            {grip + QPointF(0, -half), grip + QPointF(half, 0), grip + QPointF(0, half), grip + QPointF(-half, 0)}));
    }
}

void paint::standing(QPainter& painter, const Sheet& sheet, const ViewChoice& choice, const Theme& theme) {
    painter.setBrush(Qt::NoBrush);
    for (const GroundMark& mark : sheet.ground) {
        painter.setPen(pen(mix(theme.ground, theme.faint, 0.7), 1));
        painter.drawPath(mark.strokes);
        painter.setPen(pen(theme.ink, 1.4));
        painter.drawLine(mark.line);
    }
    Arrows pushes;
    for (const BlockMark& block : sheet.hull.blocks) {
        paintBlock(painter, block, block.index == choice.block, theme);
        if (block.push) pushes.add(*block.push);
    }
    pushes.paint(painter, theme.ink, theme.ground);
    QPainterPath far;
    for (const FarMark& mark : sheet.far) addHead(far, mark.at, mark.way, 12);
    painter.setPen(pen(theme.ink, 1.2));
    painter.setBrush(theme.ground);
    painter.drawPath(far);
    if (sheet.hull.centre) paintCentre(painter, *sheet.hull.centre, theme);
}

void paint::forces(QPainter& painter, const Sheet& sheet, const ViewChoice& choice, const Theme& theme) {
    Arrows ordinary;
    Arrows limits;
    Arrows chosen;
    for (const ForceArrow& arrow : sheet.forces) {
        if (arrow.station >= 0 && arrow.station == choice.station) {
            chosen.add(arrow);
        } else if (arrow.state == ForceState::full || arrow.state == ForceState::over) {
            limits.add(arrow);
        } else {
            ordinary.add(arrow);
        }
    }
    ordinary.paint(painter, theme.ink, theme.ground);
    limits.paint(painter, theme.caution, theme.ground);
    chosen.paint(painter, theme.accent, theme.ground);
}

void paint::troubles(QPainter& painter, const Sheet& sheet, const ViewChoice& choice, const Theme& theme) {
    for (const PropTrouble& trouble : sheet.troubles) {
        const plan::Severity severity = trouble.stop ? plan::Severity::stop : plan::Severity::caution;
        painter.setPen(pen(severityColour(severity, theme), 1.6));
        painter.setBrush(theme.ground);
        painter.drawPath(severityShape(severity, trouble.at, 7));
        if (!trouble.towards || trouble.station != choice.station) continue;
        // Where the foot would hold, for the hand that is about to move it.
        painter.setPen(pen(theme.accent, 1.2, Qt::DotLine));
        painter.drawLine(trouble.at, *trouble.towards);
        painter.setPen(pen(theme.accent, 1.4));
        painter.setBrush(Qt::NoBrush);
        painter.drawEllipse(*trouble.towards, 5, 5);
    }
    for (const StationMark& mark : sheet.stations) {
        if (!choice.foot || mark.index != choice.station || !mark.frame.foot) continue;
        painter.setPen(pen(theme.accent, 1.6));
        painter.setBrush(Qt::NoBrush);
        painter.drawEllipse(*mark.frame.foot, 8, 8);
    }
}

void paint::forceScale(QPainter& painter, const QLineF& bar, const Theme& theme) {
    ForceArrow arrow;
    arrow.shaft = bar;
    arrow.way = QPointF(1, 0);
    Arrows one;
    one.add(arrow);
    painter.setPen(pen(theme.ink, 1.2));
    painter.drawLine(bar.p1() + QPointF(0, -4), bar.p1() + QPointF(0, 4));
    one.paint(painter, theme.ink, theme.ground);
}

}  // namespace fayline::app
