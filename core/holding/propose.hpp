// Stations proposed: the fewest that meet gap limit, strength and pressing everywhere between the trim lines.
#pragma once

#include <atomic>
#include <string>
#include <vector>

#include "core/holding/held.hpp"

namespace fayline::holding {

enum class Governs { gap, strength, pressing, fixedOne, end };  // what sets the spacing to the one before
const char* governsWord(Governs governs);                       // "gap", ..., "fixed", "end": as in the printed plan

struct Proposed {
    boat::Station station;
    Governs governedBy = Governs::gap;
    double pull_N = 0;
    double gap_m = 0;
};

struct Proposal {
    std::vector<Proposed> stations;  // along the line, fixed ones among them
    bool met = true;                 // false: no number of the tools there are meets every condition
    std::string unmet;               // which condition, one of governsWord; empty: all met
    int tools = 0;                   // clamps (and their like) that the tools list has in all
    int withoutPressing = 0;         // how many would do for gap and strength alone
    bool withinCounts = true;        // not more than `tools`
    LargestGap largest;
    bool finished = true;  // false: stopped before the end
};

// Stations of the tools of `piece.holding.tools` (clamps before others, the strongest first; without tools: what the
// stations there are show, else the default station) on a grid of `grid_m` from the strips' start to their end.
// Fixed stations keep their place; those of other kinds than clamps are kept too.
//   (1) on a small piece no smaller number on the same grid meets the conditions (tests/core/holding/propose_test.cpp)
// `stop` is looked at between trials.
Proposal propose(const StackOnForm& work, const std::atomic<bool>& stop, double grid_m = 0.01);

// The piece with the proposed stations in place of its own.
std::vector<boat::Station> stationsOf(const Proposal& proposal);

}  // namespace fayline::holding
