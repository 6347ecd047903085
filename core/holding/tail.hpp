// The free tail of a stack: what runs on beyond the end of a rod that is free of force there.
//
// It leaves the rod along its direction and is straight, or has the curvature that its strips have taken before. Its
// length is what is left of the strips, the slip of the rod along the form counted in (D).
#pragma once

#include <vector>

#include "core/holding/pressed.hpp"

namespace fayline::holding {

struct Tail {
    std::vector<line::Xy> points;  // of the middle: from the rod's end to the tip, one or more
    line::Xy ahead;                // at the tip, away from the rod
    line::Xy away;                 // at the tip, square to that, away from the form
    double endTurn_rad = 0;        // by how much the tip has yet to turn toward the form to lie as the form's end does
};

// Beyond the rod's end at greater s (`atEnd`), else that at smaller s.
Tail tailOf(const Ready& ready, const StackOnForm& work, const Problem& problem, const Contact& contact, bool atEnd);

// How far the tail stands off at the frame's point, along `away` (< 0: inside); where it does not come by, the way to
// its nearest point.
struct StandOff {
    double off_m = 0;
    bool comesBy = false;
};
StandOff standOff(const Tail& tail, const MiddleFrame& frame);

// Outer corner of the outermost strip that reaches the tail's tip. Strips were cut to lie flush when they are down, so
// outer ones reach further by what is yet to turn.
line::Xy outerTip(const Tail& tail, const Ready& ready, bool atEnd);

}  // namespace fayline::holding
