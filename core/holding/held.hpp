// A piece held on its form: from strips, form and stations to gaps, pressures and pulls along the line.
//
// The rod is the stack's middle, wet: all strips loose, each at its own place, so the stiffness is the sum of E b t^3 /
// 12 of the strips that are there, with the width as bent (rip allowance on). A share of the curve that strips have
// taken before is their natural curvature. The foundation is the wood across the grain, E/12 for want of a published
// value for each wood (common practice, C), all strips in series, over the form, its posts or the boat, as far as these
// carry on. What each kind of station becomes is said in pressed.hpp.
//
// Gaps here are what a feeler would find: 0 where the wood is crushed. The contacts hold the crush as well.
#pragma once

#include <vector>

#include "core/contact/contact.hpp"
#include "core/contact/gaps.hpp"
#include "core/holding/pressing.hpp"
#include "core/laminate/springback/form_line.hpp"
#include "core/line/line.hpp"
#include "core/math/shared.hpp"
#include "core/model/boat.hpp"
#include "core/wood/species.hpp"

namespace fayline::holding {

// What of the contact stands in results.
using contact::AtPlace, contact::Contact, contact::Effort, contact::GapAt, contact::Hold, contact::HoldForce,
    contact::HoldState, contact::inBalance, contact::Mesh, contact::Outcome, contact::Problem, contact::Rod;

// Why no contact of stack and form is worked out.
enum class NotPressed {
    none,         // it is
    breaks,       // the worst strip would break several times over: no stack comes to lie there
    noRoom,       // the line turns within the stack
    crosses,      // the line or the stack runs into itself: no form has that shape
    wanders,      // the line does not go from point to point
    unsupported,  // the form lies nowhere under the strips
};

// The piece as everything in this folder sees it. All of it outlives the call.
struct StackOnForm {
    const model::Piece& piece;
    const line::Line& line;
    const std::vector<wood::Species>& species;  // the user's own before the built-in ones
    const laminate::FormLine* form = nullptr;   // what it is bent over, where that is not the wanted line itself
    WantedPressure wanted = {};                 // by the glue itself; without one: none, its paste alone counts
    Effort* effort = nullptr;                   // what solving may cost; without one: see hold()
    NotPressed ruledOut = NotPressed::none;     // known beforehand: no contact is solved
};

// The same with this effort.
inline StackOnForm within(const StackOnForm& work, Effort& effort) {
    StackOnForm bounded = work;
    bounded.effort = &effort;
    return bounded;
}

struct HeldStation {
    int index = 0;      // in model::Holding::stations
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

// What the strips would bear if they lay down: the greatest strain of any, as a share of what breaks it.
struct StrainShare {
    double share = 0;
    double at_m = 0;  // along the line
};

// From this share on no contact is solved: a stack of which each strip would be bent to thrice what breaks it says
// nothing of the stack that will lie there, and its state of balance, far from any that there is, is dear to find.
// Ours.
inline constexpr double breaksManyTimes = 3;

// Outcome notPressed: there are no samples and no contacts, and what is said of gaps, pulls and pressures is 0 and
// means nothing. Stations are named, with their places and what they can pull.
struct Held {
    Outcome outcome = Outcome::settled;  // of the chosen pads
    NotPressed notPressed = NotPressed::none;
    StrainShare worstStrain;
    math::SharedList<HeldStation> stations;  // along the line
    math::SharedList<HeldSample> samples;    // every 10 mm from the strips' start to their end, and at the trim lines
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

// See hold(); a look is one of Effort's: about 0.1 us. Ours.
inline constexpr double mostLooks = 3e5;
inline constexpr double mostLooksEach = 60;

// How long the contact's elements are, metres.
inline constexpr double elementStep_m = 0.005;

// The piece with all its stations closed, with pads that hold and pads that slide; the chosen ones (holding.pads) fill
// stations and samples. `before`: where to begin; the answer is the same within the solver's error.
//   (1) a mirrored piece, one run from its other end and one turned in the plane: the same answer
// Both answers together cost no more than mostLooks, or 60 looks at each element of a longer piece, of `work.effort`
// too; what has not settled by then is notConverged. A sound piece takes 30 to 60 looks at each, a hard one 1000.
// Throws InputError with a path (`holding.stations[3].most_N`).
Held hold(const StackOnForm& work, const Held* before = nullptr);

// The same with other stations than the piece's own (their order is that of `stations`; only the answer for the chosen
// pads: the other contact and its largest gap are left empty), for what is tried out.
Held holdWith(const StackOnForm& work, const std::vector<model::Station>& stations, const Held* before = nullptr);

}  // namespace fayline::holding
