// A piece held on its form: from strips, form and stations to gaps, pressures and pulls along the line.
//
// The rod is the stack's middle, wet: all strips loose, each at its own place, so the stiffness is the sum of E b t^3 /
// 12 of the strips that are there, with the width as bent (rip allowance on). A share of the curve that strips have
// taken before is their natural curvature. The bed is the wood across the grain, E/12 for want of a published value for
// each wood (common practice, C), all strips in series, over the form, its posts or the boat, as far as these carry on.
// What each kind of station becomes is said in pressed.hpp.
//
// Gaps here are what a feeler would find: 0 where the wood is crushed. The contacts hold the crush as well.
#pragma once

#include <optional>
#include <vector>

#include "core/boat/boat.hpp"
#include "core/holding/contact.hpp"
#include "core/holding/pressing.hpp"
#include "core/line/line.hpp"
#include "core/stack/form_line.hpp"
#include "core/wood/species.hpp"

namespace fayline::holding {

// The piece as everything in this folder sees it. All of it outlives the call.
struct StackOnForm {
    const boat::Piece& piece;
    const line::Line& line;
    const std::vector<wood::Species>& species;  // the user's own before the built-in ones
    const stack::FormLine* form = nullptr;      // what it is bent over, where that is not the wanted line itself
    WantedPressure wanted = {};                 // by the glue itself; without one: none, its paste alone counts
};

struct HeldStation {
    int index = 0;      // in boat::Holding::stations
    int number = 1;     // as on paper: along the line, from the start
    double at_m = 0;    // along the line
    double pull_N = 0;  // square to the form; of a strap its whole thrust on the form
    double most_N = 0;  // what it can pull square to the form (of a prop: its strength times the cosine of its slant)
    double gap_m = 0;   // mean under the pad; of a strap or a side clamp at at_m
    HoldState state = HoldState::slack;  // of a strap that presses: given
};

struct HeldSample {
    double at_m = 0;  // along the line
    double gap_m = 0;
    double pressure_Pa = 0;  // on the form, over the width as bent
    double moment_N_m = 0;
};

// The largest gap between the trim lines.
struct LargestGap {
    double at_m = 0;
    double gap_m = 0;
};

// Where the stack has no room on its line or nothing supports it, there is no contact: notSettled, no samples, pulls 0.
struct Held {
    Outcome outcome = Outcome::settled;  // of the chosen pads
    std::vector<HeldStation> stations;   // along the line
    std::vector<HeldSample> samples;     // every 10 mm from the strips' start to their end, and at the trim lines
    LargestGap largest;
    // Where nothing supports it (between posts) the stack may cut the corner: how far inside the line, at most.
    LargestGap fallsInside;
    double gapAtStart_m = 0;  // at the trim lines
    double gapAtEnd_m = 0;
    double largestIfPadsHold_m = 0;
    double largestIfPadsSlide_m = 0;
    double greatestPressure_Pa = 0;
    double greatestPressureAt_m = 0;
    int steps = 0;  // of Newton's method, both answers together
    // The two states found, to begin from when a little has changed.
    Contact ifPadsHold;
    Contact ifPadsSlide;
};

// How long the contact's elements are, metres.
inline constexpr double elementStep_m = 0.005;

// The piece with all its stations closed, with pads that hold and pads that slide; the chosen ones (holding.pads) fill
// stations and samples. `before`: where to begin; the answer is the same within the solver's error.
//   (1) a mirrored piece, one run from its other end and one turned in the plane: the same answer
// Throws InputError with a path (`holding.stations[3].most_N`).
Held hold(const StackOnForm& work, const Held* before = nullptr);

// The same with other stations than the piece's own (their order is that of `stations`; only the answer for the chosen
// pads: the other contact and its largest gap are left empty), for what is tried out.
Held holdWith(const StackOnForm& work, const std::vector<boat::Station>& stations, const Held* before = nullptr);

}  // namespace fayline::holding
