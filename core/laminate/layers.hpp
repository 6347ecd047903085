// The single strips of a stack and where each lies: thickness, distance from the line, and from where to where it runs.
#pragma once

#include <vector>

#include "core/laminate/parallels.hpp"
#include "core/line/line.hpp"
#include "core/model/boat.hpp"

namespace fayline::laminate {

// One single strip as it lies in the stack.
struct Layer {
    int place = 1;   // 1 lies on the form
    int group = 0;   // index into model::Stack::strips
    Distance inner;  // its face toward the form
    Distance middle;
    Distance outer;
    double thicknessAt(double at_m) const { return outer.at(at_m) - inner.at(at_m); }
};

// The strips from the form outwards on a line of this length. Between neighbours lies one glue line.
// `describes` says which line of the stack the given line is: its inner face (0 from it), outer face or middle.
std::vector<Layer> layers(const model::Stack& stack, model::Describes describes, double lineLength_m);

// From where to where along the line something runs, metres.
struct Run {
    double from_m = 0;
    double to_m = 0;

    bool holds(double at_m) const { return at_m >= from_m && at_m <= to_m; }
};

// Where a strip runs: as bent, over-run included, and in the finished piece.
//
// A scarf is one plane across the whole stack, 1 in slope, with its feather tip at the trim line on the form side: the
// strip on the form runs right to the trim line, and every other one ends short of it by `slope` times the distance of
// its inner face from the form (thickness at that end), which is how the matching piece, coming from beyond, laps over
// them. Strips are cut stepped alike, so the same holds for their over-run.
struct Runs {
    Run bent;
    Run finished;
};
Runs runsOf(const model::Stack& stack, const std::vector<Layer>& layers, int place, double lineLength_m);

// How many strips there are at `at_m` while the stack is being bent, over-run included. Stiffness falls where one ends.
int stripsAt(const model::Stack& stack, const std::vector<Layer>& layers, double lineLength_m, double at_m);

// Width of the strips as they are bent, metres: finished width and the allowance on each edge.
double ripWidthAt(const model::Stack& stack, double at_m);

}  // namespace fayline::laminate
