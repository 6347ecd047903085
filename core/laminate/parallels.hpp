// Curves that run beside a line at a distance that may change evenly along it: the faces and middles of strips.
//
// Signs as in stack.hpp: distances square to the line, > 0 from the form outwards; curvature > 0 where the form is
// convex toward the stack; `side` is +1 where the stack lies to the left of the line, -1 to the right.
// Source: differential geometry of r + d(s) n(s) (D).
#pragma once

#include <vector>

#include "core/line/line.hpp"

namespace fayline::laminate {

// A distance from the line, metres: linear between the trim lines (arc length 0 and length_m), level beyond them.
struct Distance {
    double atStart_m = 0;
    double atEnd_m = 0;
    double length_m = 0;  // of the line

    bool level() const { return atStart_m == atEnd_m; }
    double at(double at_m) const;
    double slopeAt(double at_m) const;  // d distance / d arc length; 0 beyond the trim lines
};

// The middle between two curves, metres.
Distance between(const Distance& one, const Distance& other);

// Curvature of the line at `place` with the stack's sign, 1/m.
double stackCurvature(const line::Place& place, double side);

// 1 + d k: length on the curve over length on the line where the distance is level. At 0 or below no strip can lie.
double stretch(const line::Place& place, double side, double distance_m);

// Curvature of the curve `distance` away from the line at `place`, 1/m, stack's sign. With J = 1 + d k, d' = slope:
//
//     (J^2 k + d' (2 d' k + d dk/ds)) / (J^2 + d'^2)^(3/2)
//
// which is k / (1 + d k) where d' = 0. The two kinks at the trim lines, where a taper begins and ends, are left out:
// they turn the curve by d' (a taper of 1 mm in 1 m by 0.06 degrees).
// Where J <= 0 there is no such curve; the caller asks `stretch` first.
double curvatureBeside(const line::Place& place, double side, const Distance& distance);

// Places of a line at which something is summed up along it, with their weights in metres. Kept from one length to the
// next, since finding the places takes longer than summing.
struct SumPlaces {
    double from_m = 0;
    double to_m = 0;
    std::vector<line::Place> places;
    std::vector<double> weights_m;
};

// Length of that curve between two places of the line, metres; negative if `to_m` lies before `from_m`.
// Level distances: exact, by the turn of the line. Others: Gauss's three points on every 10 mm, against the closed form
// for a taper round a circle within 1e-9 of itself. `kept`, if given, is used again where it fits and renewed else.
double lengthBeside(const line::Line& line, double side, const Distance& distance, double from_m, double to_m,
                    SumPlaces* kept = nullptr);

// The point `distance_m` away from `place`, square to the line.
line::Xy pointBeside(const line::Place& place, double side, double distance_m);

}  // namespace fayline::laminate
