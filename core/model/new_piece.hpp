#pragma once

#include <string>
#include <vector>

#include "core/model/boat.hpp"
#include "core/units/display.hpp"

namespace fayline::model {

// A new boat's text ready to be edited is a boat without pieces; `newPiece` is a piece with three points of a gentle
// arc in it, so that there is something to see and to drag.
// What is assumed of it is round in the lengths of the display: 4 in, 6 in and 1/4 in, or 100, 150 and 6 mm.
Piece newPiece(const std::string& name, const units::Display& display = units::metricShop);

// Whether the points are still those that a new piece has of its own, in either system of units.
bool isUntouchedSample(const std::vector<Point>& points);

// A circular arc by its ends and its greatest height over the straight line between them.
struct Arc {
    double chord_m = 0;
    double rise_m = 0;

    double radius_m() const;
    double turn_rad() const;  // between its ends
    double length_m() const;
};

// The arc of at most a half circle with this chord and rise, or chord and radius. Throw InputError, with "chord",
// "rise" or "radius" as its path, for what no such arc has: a chord, rise or radius that is not above 0, a rise of more
// than half the chord, a radius of less.
Arc arcOfRise(double chord_m, double rise_m);
Arc arcOfRadius(double chord_m, double radius_m);

// Points on the arc, evenly apart, an odd number of them: from (0, 0) to (chord, 0), round upwards, the middle one at
// half the chord. About one for 10 degrees, nine at least.
std::vector<Point> arcPoints(const Arc& arc);

// A beam of `length_m` between its ends whose upper face rises by `roundUp_m` in the middle. Of the usual ways of
// drawing a beam's round, arc and parabola, which differ by less than a hundredth of the rise while that is below a
// tenth of the length, this is the arc. The line is the outer face, where the round is measured.
LineInput beamLine(LineInput line, double length_m, double roundUp_m);

struct CopyAs {
    bool endForEnd = false;  // mirrored, the start at the other end
    bool upsideDown = false;
    double scale = 1;  // above 0; 1: as large

    bool operator==(const CopyAs&) const = default;
};

// The piece for another place of the boat: line, and all that stands at places along it or in its plane, mirrored about
// the middle between its ends and scaled from its start. Strips keep their thickness and lie on the same face; what was
// recorded of the piece, and its id, are left out.
// The copy's texts of offsets are dropped where they no longer say the coordinate.
Piece copyOf(const Piece& piece, const CopyAs& as);

}  // namespace fayline::model
