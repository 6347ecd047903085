// A fair line in the plane: place, heading, curvature and its rate by arc length.
//
// Signs: heading anticlockwise from +x; curvature > 0 where the line turns left, seen by someone walking from its first
// point to its last; "left" is the positive side for distances square to the line.
#pragma once

#include <array>
#include <vector>

#include "core/math/shared.hpp"
#include "core/math/vector.hpp"

namespace fayline::line {

struct Xy {
    double x_m = 0;
    double y_m = 0;

    bool operator==(const Xy&) const = default;
};

}  // namespace fayline::line

template <>
inline constexpr bool fayline::math::isVector<fayline::line::Xy> = true;

namespace fayline::line {

using math::operator+;
using math::operator-;
using math::operator*;
using math::cross;
using math::dot;

// What the line is at one place.
struct Place {
    double at_m = 0;  // arc length from the first point
    double x_m = 0;
    double y_m = 0;
    double heading_rad = 0;  // continuous along the line, not wrapped
    double curvature_per_m = 0;
    double curvatureRate_per_m2 = 0;  // d curvature / d arc length
};

// The foot of a perpendicular.
struct Nearest {
    double at_m = 0;        // 0..length
    double distance_m = 0;  // signed, > 0 to the left
};

// A line with curvature that can be differentiated once, made of pieces of polynomials of degree 5.
class Line {
public:
    Line() = default;

    // From a spline of degree 5: `knots` is ascending with the end knots six-fold, `coefficients` has
    // knots.size() - 6 members. The parameter need not be arc length; |dr/dt| > 0 is required.
    // Throws InputError at `line` for knots or coefficients of which no such line can be made.
    Line(const std::vector<double>& knots, const std::vector<Xy>& coefficients);

    double length() const { return length_m_; }  // metres

    // The line at arc length `at_m`. Before its start and past its end it runs on as an arc of the end's curvature
    // (curvatureRate 0 there). Arc length is exact to 1e-9 of the length.
    Place at(double at_m) const;

    // The place on the line (ends included, run-on arcs not) that is nearest to (x, y). The first of equals.
    Nearest nearest(double x_m, double y_m) const;

    // Place of the greatest |curvature| within 0..length, found to 1e-4 m; the first of equals.
    Place tightest() const;

    // Arc length from the start to the spline's parameter `t` (clipped to the knots). Metres.
    double lengthTo(double t) const;

private:
    // A stretch short enough that its arc length follows from one Gauss rule and that it turns less than a radian.
    struct Piece {
        double start_m;                // arc length at its start
        double length_m;               // its own
        double heading_rad;            // at its start
        double t;                      // the spline's parameter at its start
        double width;                  // of the parameter
        std::array<Xy, 6> polynomial;  // of u = 0..1 along the piece
    };

    const Piece& pieceAt(double at_m) const;
    static std::array<Xy, 4> derivatives(const Piece& piece, double u);  // r and its first three derivatives by u
    static double lengthWithin(const Piece& piece, double u);
    static double parameterWithin(const Piece& piece, double length_m);
    static Place placeWithin(const Piece& piece, double u, double at_m);
    void append(Piece piece, int depth);

    math::SharedList<Piece> pieces_;
    double length_m_ = 0;
};

// The places `step_m` apart from 0 on, and the end.
std::vector<Place> sample(const Line& line, double step_m);

// The place on the parallel at `distance_m` to the left of `place`: there the curvature is k / (1 - distance k).
// at_m stays that of the line; curvatureRate is by the parallel's own arc length. At 1 - distance k <= 0 no parallel
// can lie; the curvature is then infinite, with the line's sign, and its rate 0.
Place parallel(const Place& place, double distance_m);

// Length of the parallel at `distance_m` to the left, between two arc lengths of the line (run-on included):
// integral of (1 - distance k) ds = (to - from) - distance * (turn between them). Metres.
double parallelLength(const Line& line, double distance_m, double from_m, double to_m);

}  // namespace fayline::line
