// The middle of a stack that lies down: the curve along which the contact is solved, by its own arc length s.
//
// s is 0 at the line's start and grows along the line; it is negative before the start trim line. Beyond the trim lines
// the curve runs on as an arc of its end's curvature. Signs as in core/laminate: curvature > 0 where the form is convex
// toward the stack. Source: differential geometry of parallels (D).
//
// A form that allows for springback turns each section by so much more: its turn is added to the middle's, whose length
// stays (it is not quite the neutral axis of unequal strips; that moves its curvature by less than their distance times
// the turn added, under a thousandth).
#pragma once

#include <vector>

#include "core/laminate/layers.hpp"
#include "core/laminate/parallels.hpp"
#include "core/laminate/springback/form_line.hpp"
#include "core/line/line.hpp"

namespace fayline::holding {

// The middle at one place between the trim lines.
struct MiddleNode {
    double at_m = 0;               // along the line
    double s_m = 0;                // along the middle
    double stretch = 1;            // ds / d at
    double stretchRate_per_m = 0;  // d stretch / d at
    double curvature_per_m = 0;
    double curvatureRate_per_m2 = 0;  // by s
};

// How it runs on beyond a trim line.
struct MiddleArc {
    double stretch = 1;
    double curvature_per_m = 0;
};

struct Middle {
    double side = 1;                           // +1 where the stack lies to the left of the line
    laminate::Distance distance;               // of the middle from the line
    laminate::Distance faying;                 // of the faying surface from the line
    const laminate::FormLine* form = nullptr;  // what it lies on, where that is not the wanted line
    MiddleArc before;                          // the start trim line
    MiddleArc after;                           // the end trim line
    std::vector<MiddleNode>
        nodes;         // evenly along the line, no further apart than middleStep_m, both trim lines included
    bool room = true;  // false: 1 + d k <= 0 at a face of the stack somewhere; it cannot lie there
};

// How far apart the nodes are at most, metres. Between them place and curvature are cubics: on the sample pieces within
// 1e-9 m, 1e-5 / m and 3e-3 / m^2 of the parallel itself.
inline constexpr double middleStep_m = 0.01;

// The middle of `strips` (not empty) on `line`, or on `form`, which outlives it.
Middle middleOf(const line::Line& line, double side, const std::vector<laminate::Layer>& strips,
                const laminate::FormLine* form = nullptr);

// From a place along the line to s and back, metres.
double alongMiddle(const Middle& middle, double at_m);
double alongLine(const Middle& middle, double s_m);

// Where s lies along the line, and what the curve does there.
struct MiddlePlace {
    double at_m = 0;
    double curvature_per_m = 0;
    double curvatureRate_per_m2 = 0;  // by s
};
MiddlePlace middleAt(const Middle& middle, double s_m);

// The middle in the plane: the point, the direction in which s grows, and that away from the form, square to it.
struct MiddleFrame {
    line::Xy point;
    line::Xy ahead;
    line::Xy away;
};
MiddleFrame middleFrame(const Middle& middle, const line::Line& line, double s_m);

}  // namespace fayline::holding
