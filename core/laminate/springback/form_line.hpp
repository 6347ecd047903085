// The line of the form from which the piece springs back to the wanted line, and other bent shapes of the piece. The
// model turns sections of the stack against one another about the neutral axis and integrates both ways from a fixed
// place.
//
// `at_m`, the arc length along the WANTED line, names a place throughout (stations, trim lines and posts keep their
// names). A section is square to the wanted line. Bending turns it as a whole about the point where it cuts the neutral
// axis and does not change the length of the neutral axis. With k the wanted line's curvature (stack's sign), T the
// section's turn per length of the wanted line, f and a the distances of faying surface and neutral axis, the faying
// surface goes on by (1 + f k) - (a - f)(T - k) along the section's heading. Where a strip ends the neutral axis jumps
// and the faying surface does not.
#pragma once

#include <vector>

#include "core/laminate/parallels.hpp"
#include "core/line/line.hpp"
#include "core/math/shared.hpp"

namespace fayline::laminate {

class FormLine {
public:
    // One section.
    struct Node {
        double at_m = 0;    // along the wanted line
        double s_m = 0;     // along the neutral axis, 0 at the fixed place
        double axis_m = 0;  // distance of the neutral axis from the faying surface, outwards
        line::Xy faying;
        line::Xy slope;               // d faying / d at_m
        double heading_rad = 0;       // of the section: that of a line alongside, continuous
        double turn_per_m = 0;        // d heading / d at_m
        double curvature_per_m = 0;   // of the faying surface, positive to the left
        double curvatureRate_m2 = 0;  // d curvature / d at_m
    };

    FormLine() = default;  // empty
    FormLine(std::vector<Node> nodes, double side);

    bool empty() const { return nodes_.empty(); }
    double from_m() const { return empty() ? 0 : nodes_.front().at_m; }  // along the wanted line, run-on included
    double to_m() const { return empty() ? 0 : nodes_.back().at_m; }

    // Faying surface and neutral axis where the wanted line has arc length `at_m`. Of the Place returned at_m stays
    // that of the wanted line; heading and curvature are the curve's own (of the axis: the section's heading; curvature
    // by its turn). Beyond from_m and to_m: an arc. Between nodes within 1e-6 m. An empty one: all 0.
    line::Place faying(double at_m) const;
    line::Place axis(double at_m) const;
    // Turn of the sections per length of the wanted line, positive to the left, and the heading of the one there.
    struct Section {
        double heading_rad = 0;
        double turn_per_m = 0;
    };
    Section section(double at_m) const;
    // On the section, away from the form, `distance_m` from the faying surface.
    line::Xy beside(double at_m, double distance_m) const;

    // Ascending in at_m; two at one place where a strip ends and at the trim lines.
    const std::vector<Node>& nodes() const { return nodes_; }
    double side() const { return side_; }  // +1 where the stack lies to the left

private:
    Node at(double at_m) const;

    math::SharedList<Node> nodes_;
    double side_ = 1;
};

// The wanted line where a shape has its nodes.
struct Ground {
    struct Place {
        line::Place line;
        double faying_m = 0;     // distance of the faying surface from the line, outwards
        double fayingSlope = 0;  // its change along the line; 0 unless strips taper
    };
    double side = 1;
    // Ascending; two at a break (a trim line, the end of a strip), with slope and rate of the side that each is on.
    std::vector<Place> places;
    std::size_t fixed = 0;  // where every shape lies on the wanted one, in place and heading
    std::size_t start = 0;  // the trim lines
    std::size_t end = 0;
};

// A part's own: at each place of the ground.
struct Turned {
    std::vector<double> axisFromLine_m;  // of the neutral axis, outwards
    std::vector<double> share;           // T / k
    std::vector<double> more_per_m;      // added to T; empty: nothing
    double lengths = 1;                  // along the grain, over what they were
};

// The shape of that. Error: 1e-6 m over 10 m (its nodes 10 mm apart, curvature a spline between them).
FormLine shapeOf(const Ground& ground, const Turned& turned);

}  // namespace fayline::laminate
