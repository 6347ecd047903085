// What is at hand: whether there are as many clamps as the plan asks, whether they reach, how a pull is told to hands.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/holding/held.hpp"
#include "core/holding/strap.hpp"
#include "core/measure/source.hpp"

namespace fayline::holding {

// Of one kind: stations that want it, tools that there are.
struct Counted {
    boat::HoldKind kind = boat::HoldKind::clamp;
    int asked = 0;
    int there = 0;
    std::vector<int>
        withoutTool;  // indices of the stations that are left without one that is strong enough and reaches
};

// Which tool serves a station.
struct Served {
    int station = 0;  // index in boat::Holding::stations
    int tool = -1;    // index in boat::Holding::tools; -1: none left
    // What the tool needs to reach there and whether it does; absent where the file does not say what it has.
    double opening_m = 0;  // form (of a solid form: not known, 0), stack and caul
    std::optional<bool> opens;
    double throat_m = 0;  // over half the width as bent, so that the pull comes to the middle
    std::optional<bool> throats;
    std::optional<double> turnsPastSnug;  // from the pitch and what gives way (stack and clamp); estimate, C
};

struct AtHand {
    std::vector<Counted> counts;
    std::vector<Served> served;  // in the order of boat::Holding::stations
    // What would do where tools are short: a sentence's worth of facts.
    int splitAfterStrip = 0;   // gluing split in two after this strip halves the pulls; 0: not of use
    int strapsWouldServe = 0;  // stations short that lie where the outside is round
    int wedgesWouldServe = 0;
};
AtHand atHand(const StackOnForm& work, const Held& held);

// Turns of the screw past snug for `pull_N`: pull times what gives way, over the pitch. The stack under the pad is a
// bed of wood across the grain; frame of the clamp 1 mm for each 2.5 kN (C). Estimate.
double turnsPastSnug(double pull_N, double pitch_m, double stackCrush_m_per_N);

// A pair of folding wedges stays in by itself below this angle, radians: 2 atan mu. Facts: 11.4 degrees at mu 0.1 (D).
double wedgeHoldsItself(double friction);

// Thrust on each post of a posted form against what holds it.
struct PostLoad {
    int index = 0;  // in boat::Form::posts
    double at_m = 0;
    double thrust_N = 0;
    double holds_N = 0;
};
std::vector<PostLoad> postLoads(const StackOnForm& work, const Held& held);

}  // namespace fayline::holding
