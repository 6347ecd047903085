// The line of a form that lets go to the wanted one, and shapes that are made the same way: curvature along the stack's
// neutral axis, integrated both ways from a fixed place, moved square to it to the faying surface.
//
// A place is named by `at_m` along the WANTED line throughout (stations, trim lines and posts keep their names); arc
// length along the neutral axis is what wanted piece, form and released piece have in common.
#pragma once

#include <functional>
#include <vector>

#include "core/line/line.hpp"
#include "core/stack/parallels.hpp"

namespace fayline::stack {

class FormLine {
public:
    FormLine() = default;  // empty

    bool empty() const { return nodes_.empty(); }
    double from_m() const;  // along the wanted line, run-on included
    double to_m() const;

    // Faying surface and neutral axis where the wanted line has arc length `at_m`. Of the Place returned at_m stays
    // that of the wanted line; heading and curvature are the curve's own. Beyond from_m and to_m: an arc.
    line::Place faying(double at_m) const;
    line::Place axis(double at_m) const;
    // Square to it, away from the form, `distance_m` from the faying surface.
    line::Xy beside(double at_m, double distance_m) const;

    struct Node {
        double at_m = 0;    // along the wanted line
        double s_m = 0;     // along the neutral axis, 0 at the fixed place
        double axis_m = 0;  // distance of the neutral axis from the faying surface, outwards
        line::Place axis;   // of the neutral axis
    };
    FormLine(std::vector<Node> nodes, double side) : nodes_(std::move(nodes)), side_(side) {}
    const std::vector<Node>& nodes() const { return nodes_; }
    double side() const { return side_; }

private:
    std::vector<Node> nodes_;  // ascending in at_m
    double side_ = 1;          // +1 where the stack lies to the left
};

// A shape of the neutral axis whose curvature is `of(at_m, k)`, k being that of the wanted line's own neutral axis
// there (stack's sign), from the wanted line's strips-from to strips-to places, held to the wanted line at `fixedAt_m`
// in place and heading. `axisAt` is the axis' distance from the wanted faying surface. Error: 1e-6 m over 10 m.
FormLine shapeFrom(const line::Line& wanted, double side, const Distance& fayingFromLine,
                   const std::function<double(double at_m)>& axisAt, double from_m, double to_m, double fixedAt_m,
                   const std::function<double(double at_m, double k)>& of);

}  // namespace fayline::stack
