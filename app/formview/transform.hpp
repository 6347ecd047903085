// From metres in the plane of the piece to pixels on the screen and back. y points up in the drawing.
#pragma once

#include <QPointF>
#include <QRectF>
#include <QTransform>

#include "core/line/line.hpp"

namespace fayline::app {

// A rectangle in the plane of the piece, metres; empty until something is put in.
struct Bounds {
    double left_m = 0;
    double right_m = 0;
    double low_m = 0;
    double high_m = 0;
    bool empty = true;

    void include(const line::Xy& place);  // a place that is not finite is left out
    double width_m() const { return right_m - left_m; }
    double height_m() const { return high_m - low_m; }
};

// Even in both directions, never turned.
//   (1) toDrawing(toScreen(p)) is p within rounding, at every scale
//   (2) zoomedAbout(c, f) leaves the place under c under c
struct Transform {
    double pixelsPerMetre = 200;
    QPointF zero;  // where the origin of the drawing lies on the screen

    QPointF toScreen(const line::Xy& place) const;
    line::Xy toDrawing(const QPointF& pixel) const;
    QTransform matrix() const;  // the same for a painter that is given metres

    // The scale stays between 1:2000 and 100:1 of a usual screen; the factor is cut short there.
    Transform zoomedAbout(const QPointF& centre, double factor) const;
    Transform movedBy(const QPointF& pixels) const;
};

// `bounds` as large as it goes into `room`, in its middle. Bounds of no size lie in the middle at a metre to the room.
Transform fitted(const Bounds& bounds, const QRectF& room);

}  // namespace fayline::app
