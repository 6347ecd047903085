// What is drawn at full size of a piece: its fair line, or the edge of its form. In millimetres of the boat's own x and
// y (y upwards), apart from any sheet.
#pragma once

#include <QPolygonF>
#include <QStringList>
#include <vector>

#include "app/paper/sheet.hpp"
#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::app::paper {

struct Curve {
    QPolygonF points;
    double width_mm = 0.35;
};

// A short line across a curve at a place, and what it is called.
struct CrossMark {
    QPointF on;  // the place on the curve
    QPointF from;
    QPointF to;  // the name stands beyond this end
    double width_mm = 0.2;
    QString name;
    bool bold = false;
};

// A measured point.
struct Spot {
    QPointF at;
    QPointF away;  // the direction in which its name stands best
    QString name;
};

struct Drawing {
    QString name;               // "Full-size line"
    std::vector<Curve> curves;  // decide which sheets are needed
    std::vector<CrossMark> marks;
    std::vector<Spot> spots;
    QStringList notes;  // sentences for the first sheet
    double grid_mm = 100;
    units::Display display;
};

// The fair line between the trim lines, with stations, trim lines, the tightest place and the measured points.
Drawing lineDrawing(const model::Piece& piece, const plan::Plan& plan);

// The edge of the form, where the first strip lies, as far as the form carries on.
Drawing formDrawing(const model::Piece& piece, const plan::Plan& plan);

}  // namespace fayline::app::paper
