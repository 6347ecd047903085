#include "app/formview/station_shape.hpp"

#include <QString>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/model/hold_traits.hpp"

namespace fayline::app {

namespace {

// Puts down figures given as (along, outwards) from the frame's base.
class Pen {
public:
    explicit Pen(const StationFrame& frame) : frame_(frame) {}

    QPointF at(double along, double out) const {
        return frame_.base + (frame_.along * along + frame_.outwards * out) * frame_.size;
    }
    void line(QPainterPath& path, double a0, double o0, double a1, double o1) const {
        path.moveTo(at(a0, o0));
        path.lineTo(at(a1, o1));
    }
    void figure(QPainterPath& path, std::initializer_list<QPointF> corners) const {
        QPolygonF polygon;
        for (const QPointF& corner : corners) polygon << at(corner.x(), corner.y());
        path.addPolygon(polygon);
        path.closeSubpath();
    }
    void block(QPainterPath& path, double half, double from, double to) const {
        figure(path, {{-half, from}, {half, from}, {half, to}, {-half, to}});
    }

private:
    const StationFrame& frame_;
};

double padHalf(const StationFrame& frame) {
    return std::clamp(frame.pad / 2 / frame.size, 5.0, 40.0);
}

// The screw of a clamp with its bar across, and the jaw that reaches under the form.
StationShape clamp(const StationFrame& frame) {
    const Pen pen(frame);
    StationShape shape;
    pen.block(shape.body, padHalf(frame), 0, 3.5);
    pen.line(shape.strokes, 0, 3.5, 0, 19);
    pen.block(shape.solid, 2.2, 9, 13);
    pen.line(shape.strokes, -6, 19, 6, 19);
    shape.reach = 22;
    return shape;
}

StationShape prop(const StationFrame& frame) {
    const Pen pen(frame);
    StationShape shape;
    pen.block(shape.body, padHalf(frame), 0, 3);
    if (frame.foot) {
        const QPointF head = pen.at(0, 3);
        const QPointF run = *frame.foot - head;
        const double length = std::hypot(run.x(), run.y());
        if (length > 1) {
            const QPointF side = QPointF(-run.y(), run.x()) / length * 2.5 * frame.size;
            QPolygonF strut;
            strut << head + side << *frame.foot + side << *frame.foot - side << head - side;
            shape.body.addPolygon(strut);
            shape.body.closeSubpath();
            const QPointF plate = side / 2.5 * 8;
            shape.strokes.moveTo(*frame.foot + plate);
            shape.strokes.lineTo(*frame.foot - plate);
        }
        shape.reach = 14;
        return shape;
    }
    pen.block(shape.body, 2.5, 3, 24);
    pen.line(shape.strokes, -7, 24, 7, 24);
    shape.reach = 26;
    return shape;
}

// A jack that stands on its foot: a base there, the screw with its thread up to the pad.
StationShape jackFromFoot(const StationFrame& frame) {
    const Pen pen(frame);
    StationShape shape;
    pen.block(shape.body, padHalf(frame), 0, 3);
    shape.reach = 14;
    const QPointF head = pen.at(0, 3);
    const QPointF run = head - *frame.foot;
    const double length = std::hypot(run.x(), run.y());
    if (length < 1) return shape;
    const QPointF up = run / length;
    const QPointF side(-up.y(), up.x());
    const double high = std::min(26 * frame.size, length * 0.6);
    QPolygonF base;
    base << *frame.foot + side * 9 * frame.size << *frame.foot + up * high + side * 4 * frame.size
         << *frame.foot + up * high - side * 4 * frame.size << *frame.foot - side * 9 * frame.size;
    shape.body.addPolygon(base);
    shape.body.closeSubpath();
    shape.strokes.moveTo(*frame.foot + up * high);
    shape.strokes.lineTo(head);
    const double threadTo = std::min(length - 3, high + 24 * frame.size);
    for (double at = high + 3; at < threadTo; at += 3) {
        shape.strokes.moveTo(*frame.foot + up * (at - 0.8) - side * 2.5 * frame.size);
        shape.strokes.lineTo(*frame.foot + up * (at + 0.8) + side * 2.5 * frame.size);
    }
    return shape;
}

StationShape jack(const StationFrame& frame) {
    if (frame.foot) return jackFromFoot(frame);
    const Pen pen(frame);
    StationShape shape;
    pen.block(shape.body, padHalf(frame), 0, 3);
    pen.line(shape.strokes, 0, 3, 0, 13);
    for (const double out : {5.5, 8.0, 10.5}) pen.line(shape.strokes, -2.5, out - 0.8, 2.5, out + 0.8);
    pen.figure(shape.body, {{-3.5, 13}, {3.5, 13}, {7, 24}, {-7, 24}});
    shape.reach = 26;
    return shape;
}

// Head and washer outside, shank through the stack into what lies behind.
StationShape screw(const StationFrame& frame) {
    const Pen pen(frame);
    StationShape shape;
    pen.block(shape.solid, 6, 0, 2);
    shape.body.moveTo(pen.at(-4, 2));
    shape.body.quadTo(pen.at(0, 10), pen.at(4, 2));
    shape.body.closeSubpath();
    const double through = frame.depth / frame.size;
    pen.line(shape.hidden, 0, 0, 0, -through - 12);
    pen.line(shape.strokes, -2.5, -through - 8, 0, -through - 13);
    pen.line(shape.strokes, 2.5, -through - 8, 0, -through - 13);
    shape.reach = 9;
    return shape;
}

StationShape strap(const StationFrame& frame) {
    const Pen pen(frame);
    StationShape shape;
    pen.block(shape.body, 4, 1, 8);
    pen.line(shape.strokes, -2, 8, -2, 13);
    pen.line(shape.strokes, 2, 8, 2, 13);
    shape.reach = 15;
    return shape;
}

StationShape wedge(const StationFrame& frame) {
    const Pen pen(frame);
    StationShape shape;
    pen.figure(shape.body, {{-10, 0}, {10, 0}, {10, 7}, {-10, 3}});
    pen.figure(shape.body, {{-10, 3}, {10, 7}, {10, 11}, {-10, 11}});
    shape.reach = 13;
    return shape;
}

}  // namespace

StationShape stationShape(model::HoldKind kind, const StationFrame& frame) {
    // In the order of model::HoldKind.
    static constexpr std::array draw{clamp, prop, jack, screw, strap, wedge};
    static_assert(draw.size() == model::holdTraits.size());
    StationShape shape = draw[static_cast<std::size_t>(kind)](frame);
    shape.reach *= frame.size;
    shape.body.setFillRule(Qt::WindingFill);
    return shape;
}

}  // namespace fayline::app
