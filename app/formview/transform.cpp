#include "app/formview/transform.hpp"

#include <algorithm>
#include <cmath>

namespace fayline::app {

namespace {

constexpr double leastPixelsPerMetre = 2;
constexpr double mostPixelsPerMetre = 400000;

}  // namespace

void Bounds::include(const line::Xy& place) {
    if (!std::isfinite(place.x_m) || !std::isfinite(place.y_m)) return;
    left_m = empty ? place.x_m : std::min(left_m, place.x_m);
    right_m = empty ? place.x_m : std::max(right_m, place.x_m);
    low_m = empty ? place.y_m : std::min(low_m, place.y_m);
    high_m = empty ? place.y_m : std::max(high_m, place.y_m);
    empty = false;
}

QPointF Transform::toScreen(const line::Xy& place) const {
    return {zero.x() + place.x_m * pixelsPerMetre, zero.y() - place.y_m * pixelsPerMetre};
}

line::Xy Transform::toDrawing(const QPointF& pixel) const {
    return {(pixel.x() - zero.x()) / pixelsPerMetre, (zero.y() - pixel.y()) / pixelsPerMetre};
}

QTransform Transform::matrix() const {
    return QTransform(pixelsPerMetre, 0, 0, -pixelsPerMetre, zero.x(), zero.y());
}

Transform Transform::zoomedAbout(const QPointF& centre, double factor) const {
    const double scale = std::clamp(pixelsPerMetre * factor, leastPixelsPerMetre, mostPixelsPerMetre);
    return {scale, centre + (zero - centre) * (scale / pixelsPerMetre)};
}

Transform Transform::movedBy(const QPointF& pixels) const {
    return {pixelsPerMetre, zero + pixels};
}

Transform fitted(const Bounds& bounds, const QRectF& room) {
    constexpr double least_m = 1e-6;
    const double width_m = bounds.width_m();
    const double height_m = bounds.height_m();
    double scale = std::min(room.width(), room.height());
    if (std::max(width_m, height_m) > least_m) {
        scale = std::min(room.width() / std::max(width_m, least_m), room.height() / std::max(height_m, least_m));
    }
    scale = std::clamp(scale, leastPixelsPerMetre, mostPixelsPerMetre);
    const line::Xy middle{(bounds.left_m + bounds.right_m) / 2, (bounds.low_m + bounds.high_m) / 2};
    return {scale, room.center() - QPointF(middle.x_m * scale, -middle.y_m * scale)};
}

}  // namespace fayline::app
