// Boats to put on paper: lines made from a given curvature, measured every so often.
#pragma once

#include <QPageLayout>
#include <cmath>
#include <functional>
#include <string>

#include "core/model/boat.hpp"

namespace fayline::test {

inline QPageLayout layoutOf(const QPageSize& size, QPageLayout::Orientation orientation = QPageLayout::Portrait) {
    return {size, orientation, QMarginsF(12.7, 12.7, 12.7, 12.7), QPageLayout::Millimeter};
}

// A piece whose points lie on the curve that starts in the origin with `heading_rad` and has `curvature` (1/m) at arc
// length s, `count` of them, evenly. Points are kept as they are: fairing interpolates them.
inline model::Piece pieceAlong(const std::string& name, double length_m, double heading_rad, int count,
                               const std::function<double(double)>& curvature) {
    model::Piece piece;
    piece.name = name;
    constexpr int steps = 200;  // between two points
    const double step_m = length_m / ((count - 1) * steps);
    double x_m = 0;
    double y_m = 0;
    double heading = heading_rad;
    for (int i = 0; i < (count - 1) * steps + 1; ++i) {
        if (i % steps == 0) {
            model::Point point;
            point.label = "WL " + std::to_string(6 * (i / steps));
            point.x_m = x_m;
            point.y_m = y_m;
            piece.line.points.push_back(point);
        }
        const double halfway = heading + curvature((i + 0.25) * step_m) * step_m / 2;
        x_m += std::cos(halfway) * step_m;
        y_m += std::sin(halfway) * step_m;
        heading += curvature((i + 0.5) * step_m) * step_m;
    }
    piece.line.fairWithin_m = 0;
    return piece;
}

inline void addStations(model::Piece& piece, double from_m, double to_m, int count) {
    for (int i = 0; i < count; ++i) {
        model::Station station;
        station.at_m = from_m + (to_m - from_m) * i / (count - 1);
        if (i % 4 == 3) station.kind = model::HoldKind::screw;
        piece.holding.stations.push_back(station);
    }
}

inline double sech2(double value) {
    return 1 / (std::cosh(value) * std::cosh(value));
}

// A stem 1.8 m long, tightest radius 0.62 m.
inline model::Piece stem() {
    model::Piece piece =
        pieceAlong("Stem", 1.8, 2.2, 12, [](double s) { return 0.10 + 1.513 * sech2((s - 0.62) / 0.34); });
    piece.line.stripsOn = model::Side::right;
    piece.stack.pins.push_back({-0.06});
    piece.stack.scarfedEnd = model::Scarf{8};
    addStations(piece, -0.05, 1.85, 11);
    return piece;
}

// A rail 6 m long with a reverse curve.
inline model::Piece longRail() {
    model::Piece piece = pieceAlong(
        "Rail", 6, 0.157, 21, [](double s) { return 0.12 * sech2((s - 1.1) / 0.84) - 0.18 * sech2((s - 3.9) / 1.4); });
    piece.line.describes = model::Describes::middle;
    addStations(piece, 0.02, 5.97, 24);
    return piece;
}

inline model::Boat boatOf(std::vector<model::Piece> pieces) {
    model::Boat boat;
    boat.name = "Marram";
    boat.pieces = std::move(pieces);
    return boat;
}

}  // namespace fayline::test
