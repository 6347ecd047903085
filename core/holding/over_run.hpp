// How far strips and form must run past the trim lines for the ends to lie down.
#pragma once

#include <atomic>
#include <optional>

#include "core/holding/held.hpp"

namespace fayline::holding {

// At one end. Absent: no over-run up to a metre does it with what is at hand.
struct EndNeed {
    std::optional<double> overRun_m;  // needed past the trim line, with the strongest clamp to hand at its far end
    double clamp_N = 0;               // that clamp's strength
    std::optional<double> strongerClamp_N;  // that would do with the over-run there is; absent: none up to 50 kN
    std::optional<double> caul_m;  // thickness of a caul, as wide as the stack, stiff enough to bring the end down
                                   // with the over-run and the clamps there are; absent: none up to 60 mm
    double gap_m = 0;              // at the trim line as the piece stands
};

struct OverRun {
    EndNeed start;
    EndNeed end;
};

// Both ends; the rest of the piece is held as it stands. `stop` is looked at between trials.
OverRun overRunNeeded(const StackOnForm& work, const Held& held, const std::atomic<bool>& stop);

}  // namespace fayline::holding
