#include "core/model/offsets.hpp"

#include <algorithm>
#include <cmath>

namespace fayline::model {

namespace {

double Point::*member(Axis axis) {
    return axis == Axis::x ? &Point::x_m : &Point::y_m;
}

// Whether the first point is the one at the centre line.
bool startsThere(const std::vector<Point>& points, Axis across) {
    return std::abs(points.front().*member(across)) <= std::abs(points.back().*member(across));
}

Point imageOf(Point point, Axis across) {
    double& value = point.*member(across);
    std::string& text = point.written[across == Axis::x ? 0 : 1];
    if (value == 0) return point;
    value = -value;
    if (!text.empty()) {
        const bool minus = text.front() == '-';
        text = minus ? text.substr(1) : "-" + text;
    }
    if (!point.label.empty()) point.label += "\u2032";
    return point;
}

}  // namespace

double lengthThrough(const std::vector<Point>& points) {
    double length_m = 0;
    for (std::size_t i = 1; i < points.size(); ++i)
        length_m += std::hypot(points[i].x_m - points[i - 1].x_m, points[i].y_m - points[i - 1].y_m);
    return length_m;
}

std::vector<Point> withOtherHalf(const std::vector<Point>& points, Axis across) {
    if (points.empty()) return {};
    std::vector<Point> images;
    for (const Point& point : points) images.push_back(imageOf(point, across));
    std::ranges::reverse(images);
    // At the joint stands the point nearest to the centre line and its image, which are one if it lies on that.
    std::vector<Point> whole = startsThere(points, across) ? images : points;
    const std::vector<Point>& second = startsThere(points, across) ? points : images;
    const bool one = whole.back().*member(across) == 0;
    whole.insert(whole.end(), second.begin() + (one ? 1 : 0), second.end());
    return whole;
}

Axis likelyHalf(const std::vector<Point>& points) {
    if (points.size() < 2) return Axis::y;
    // The angle from square, and how far from the line the end is for the size of the whole; less is likelier.
    const auto unlikely = [&](Axis across) {
        const bool start = startsThere(points, across);
        const Point& end = start ? points.front() : points.back();
        const Point& next = start ? points[1] : points[points.size() - 2];
        const double size_m = std::max(lengthThrough(points), 1e-9);
        const double along = std::abs(next.x_m - end.x_m);
        const double up = std::abs(next.y_m - end.y_m);
        const double fromSquare = across == Axis::x ? std::atan2(up, along) : std::atan2(along, up);
        return fromSquare + 10 * std::abs(end.*member(across)) / size_m;
    };
    return unlikely(Axis::x) < unlikely(Axis::y) ? Axis::x : Axis::y;
}

}  // namespace fayline::model
