// Where a drawing comes to lie on a sheet.
#pragma once

#include "app/paper/sheet.hpp"

namespace fayline::app::paper {

// From the drawing's millimetres (y upwards) to those of a sheet (y downwards), at `scale`.
struct Placing {
    QRectF from;
    QPointF lowerLeft;
    double scale = 1;

    QPointF operator()(const QPointF& place) const {
        return {lowerLeft.x() + (place.x() - from.left()) * scale, lowerLeft.y() - (place.y() - from.top()) * scale};
    }
    QPointF direction(const QPointF& way) const { return {way.x(), -way.y()}; }
    QPolygonF operator()(const QPolygonF& line) const {
        QPolygonF placed;
        for (const QPointF& place : line) placed << (*this)(place);
        return placed;
    }
};

}  // namespace fayline::app::paper
