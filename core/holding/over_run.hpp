// How far strips and form must run past the trim lines for the ends to lie down.
#pragma once

#include <atomic>
#include <optional>

#include "core/holding/held.hpp"

namespace fayline::holding {

// What would bring one end down. An end lies down when no gap from its trim line to the next station within it is above
// holding.gapLimit; everything else stays as it is.
//
// Over-run: strips and what they lie on run on by as much (of a posted form a post stands under the clamp), and at the
// far end stands the strongest clamp of the tools, its pad wholly on; clamps whose pads would lie under it make way.
// Told to 5 mm: the least found from 0 up, tried 20 mm apart to 200 mm, 50 to 500 and 100 to 1000 and then halved.
// Stronger clamp: the least strength of the last station that does it, nothing else changed; tried from 100 N up half
// as much again each time, told to 1 %. A much stronger one may lift the stack on its near side. Caul: sawn to the
// curve of the outside, as wide as the stack and of the outermost strip's wood, from the last station but one to the
// end of the strips. It is a lever: the last clamp presses it, and it the end. (A caul that is straight by nature would
// lift the end, for it too has to be bent.) Told to half a millimetre.
struct EndNeed {
    std::optional<double> overRun_m;        // past the trim line; absent: none up to a metre does it
    double clamp_N = 0;                     // that clamp's strength
    std::optional<double> strongerClamp_N;  // absent: none up to 50 kN, or no station holds
    std::optional<double> caul_m;  // thickness; 0: none is needed; absent: none up to 60 mm, or no two stations
    double gap_m = 0;              // at the trim line as the piece stands
    bool searched = true;          // false: the trials that may be made were not enough, or it was stopped
};

struct OverRun {
    EndNeed start;
    EndNeed end;
    int steps = 0;  // of Newton's method, in all trials
};

// Both ends. `held` is the piece as it stands, to begin from. `stop` is looked at within every step of a trial, and
// what all trials may cost is bounded by counted work; what is not yet found then is absent, or not yet the least. Where
// the stack springs away at three over-runs in a row, longer ones are not tried. Where there is no contact to solve all
// is absent.
//   (1) with what it says the end lies down, with 10 mm less over-run it does not
// A trial is one contact of the whole piece; each of the sample pieces takes 20 to 60 ms.
OverRun overRunNeeded(const StackOnForm& work, const Held& held, const std::atomic<bool>& stop);

}  // namespace fayline::holding
