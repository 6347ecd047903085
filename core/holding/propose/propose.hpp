// Stations proposed: the fewest that meet gap limit and strength everywhere between the trim lines and, for a glue that
// needs it, pressing; or the best that the tools allow.
#pragma once

#include <atomic>
#include <optional>
#include <vector>

#include "core/holding/held.hpp"

namespace fayline::holding {

// What sets the spacing to the one before: of pressing and gap the condition that would first be broken further off;
// strength instead of gap where one of the two stations pulls with all it has; `end` for the first and for one that is
// there for the end of the piece.
enum class Governs { gap, strength, pressing, fixedOne, end };
const char* governsWord(Governs governs);  // "gap", ..., "fixed", "end": as in the printed plan

struct Proposed {
    model::Station station;
    Governs governedBy = Governs::gap;
    double pull_N = 0;
    double gap_m = 0;
    HoldState state = HoldState::slack;
};

struct Proposal {
    std::vector<Proposed> stations;  // along the line, fixed ones among them
    bool met = true;                 // false: no number of the tools there are meets every condition
    std::optional<Governs> unmet;    // which condition; absent: all met
    int tools = 0;                   // clamps (and their like) that the tools list has in all
    int withoutPressing = 0;         // how many would do for gap and strength alone, those kept among them
    int forEverything = 0;           // how many would press everywhere too, those kept among them; 0: no number does
    bool pressingIsWish = false;     // of a glue that fills gaps
    bool withinCounts = true;        // not more than `tools`
    double largestSpacing_m = 0;     // between neighbours that close the gap, where between them there is line
    // Where pressing is unmet for want of tools: as thick cauls, up to 60 mm, would let as many tools as there are
    // press everywhere.
    std::optional<double> caul_m;
    LargestGap largest;
    bool searched = true;  // false: of a very long piece, that fewer do not do was not looked for to the end
    bool finished = true;  // false: stopped before the end
};

// Stations of the tools of `piece.holding.tools` (clamps before others, the strongest first; without tools: what the
// stations there are show, else the default station) on a grid of `grid_m` from the strips' start to their end, at most
// 2000 places. Fixed stations keep their place; those of other kinds than clamps and side clamps are kept too. No pad
// lies on another; on posts, stations stand in the middle of one or with the whole pad on one.
//
// Between the trim lines the gap must stay within its limit (up to a micrometre more). For a glue that fills gaps
// (work.wanted.contactIsEnough) pressing everywhere is a wish: the stations are the fewest for gap and strength, and
// `forEverything` tells how many would press everywhere besides. For any other, and where the glue is not known, it is
// a condition: every place must lie within the spacing that pressing allows (pressing.hpp), half of it to each side of
// a pad. Where that asks for more stations than there are tools, and gap and strength alone do not, all the tools are
// spread so that they press as evenly as they can (propose_spread.hpp), and `unmet` says that it is pressing. Where
// pads cannot press more than a quarter of the line, as between posts, `unmet` says so and the stations are those for
// gap and strength alone. Where the gap cannot be closed with as many stations as there is room for, they come within a
// twentieth of what those leave. Of mixed tools the number is the least for the strongest of them, else what could be
// found.
//   (1) on a small piece no smaller number on the same grid meets the conditions (tests/core/holding/propose_test.cpp):
//       so it was on all but one of 387 random small pieces, of which 205 could be held; that one had one too many
// The sample stem takes about 80 ms, posts 110 ms, 20 m with 2000 places some seconds. `stop` is looked at between
// trials.
Proposal propose(const StackOnForm& work, const std::atomic<bool>& stop, double grid_m = 0.01);

// The piece with the proposed stations in place of its own.
std::vector<model::Station> stationsOf(const Proposal& proposal);

}  // namespace fayline::holding
