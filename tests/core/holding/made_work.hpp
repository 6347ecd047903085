// A piece on a made line, as core/holding takes it, and the same piece seen in other ways.
#pragma once

#include <functional>
#include <utility>
#include <vector>

#include "core/holding/held.hpp"
#include "tests/core/laminate/made_lines.hpp"

namespace fayline::made {

struct Work {
    model::Piece piece;
    line::Line line;
    std::vector<wood::Species> species = wood::builtInSpecies();

    operator holding::StackOnForm() const { return {piece, line, species}; }
};

inline model::Station clampAt(double at_m, double most_N = 2500, double pad_m = 0.04) {
    return {.at_m = at_m, .most_N = most_N, .pad_m = pad_m};
}

inline std::vector<model::Station> clampsAt(const std::vector<double>& places_m, double most_N = 2500) {
    std::vector<model::Station> stations;
    for (const double at_m : places_m) stations.push_back(clampAt(at_m, most_N));
    return stations;
}

// Curvature of the invented boat's stem, turning right: round on the left.
inline double stemCurvature(double s) {
    return -(0.10 + 1.513 / std::pow(std::cosh((s - 0.62) / 0.34), 2));
}

// A line with a round and a hollow stretch.
inline double reverseCurvature(double s) {
    return -1.1 * std::sin(2 * std::numbers::pi * s / 1.1);
}

// Strips of white oak a quarter of an inch thick on the left of a line of this curvature.
inline Work workOn(const std::function<double(double)>& curvature, double length_m, int strips,
                   const std::vector<model::Station>& stations, double heading_rad = 0, line::Xy start = {}) {
    Work work;
    work.line = lineOf(curvature, length_m, heading_rad, start);
    work.piece.stack.strips[0].count = strips;
    work.piece.holding.stations = stations;
    return work;
}

// The stem of nine strips held by six clamps.
inline const std::vector<double> onStem{0.04, 0.3, 0.62, 1.0, 1.33, 1.76};

inline Work clampedStem() {
    return workOn(stemCurvature, 1.8, 9, clampsAt(onStem));
}

// The piece walked from its other end.
inline Work fromOtherEnd(const Work& given, const std::function<double(double)>& curvature) {
    Work work = given;
    const double length = given.line.length();
    work.line = lineOf([&](double s) { return -curvature(length - s); }, length);
    model::Piece& piece = work.piece;
    piece.line.stripsOn = piece.line.stripsOn == model::Side::left ? model::Side::right : model::Side::left;
    for (model::Station& station : piece.holding.stations) {
        station.at_m = length - station.at_m;
        auto& strap = station.strap;
        if (strap.to_m) strap.to_m = length - *strap.to_m;
        if (strap.pullsFrom != model::PullsFrom::both) {
            strap.pullsFrom =
                strap.pullsFrom == model::PullsFrom::start ? model::PullsFrom::end : model::PullsFrom::start;
        }
    }
    for (model::Post& post : piece.form.posts) post.at_m = length - post.at_m;
    for (model::Width& width : piece.stack.widths) width.at_m = length - width.at_m;
    for (model::Pin& pin : piece.stack.pins) pin.at_m = length - pin.at_m;
    for (model::Strips& strips : piece.stack.strips) {
        if (strips.tapersTo_m) std::swap(strips.thickness_m, *strips.tapersTo_m);
    }
    std::swap(piece.stack.runsPastStart_m, piece.stack.runsPastEnd_m);
    std::swap(piece.stack.scarfedStart, piece.stack.scarfedEnd);
    std::swap(piece.form.carriesOnStart_m, piece.form.carriesOnEnd_m);
    if (piece.holding.from != model::From::middle) {
        piece.holding.from = piece.holding.from == model::From::start ? model::From::end : model::From::start;
    }
    return work;
}

}  // namespace fayline::made
