// How a clamp, prop, jack, screw, strap and wedge look on the drawing: seen from the side, standing square on the
// outside of the stack.
#pragma once

#include <QPainterPath>
#include <QPointF>
#include <optional>

#include "core/model/boat.hpp"

namespace fayline::app {

// Where a station stands, in pixels.
struct StationFrame {
    QPointF base;                 // on the outside of the stack
    QPointF along;                // unit, along the line's way
    QPointF outwards;             // unit, square to it, away from the stack
    double size = 1;              // 1: full size; less where stations stand close
    double pad = 10;              // width of the pad
    double depth = 10;            // of the stack there
    std::optional<QPointF> foot;  // of a prop or jack, where it was given
};

struct StationShape {
    QPainterPath body;     // filled with the ground, outlined
    QPainterPath solid;    // filled with ink
    QPainterPath strokes;  // lines only
    QPainterPath hidden;   // lines that lie behind something: dashed
    double reach = 0;      // how far it stands out
};

StationShape stationShape(model::HoldKind kind, const StationFrame& frame);

}  // namespace fayline::app
