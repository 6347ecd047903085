// A piece made ready for the contact: the rod on its form and the holds that stations make, from what the user gave.
//
// What a station becomes: a clamp, wedge, screw, prop or jack is a hold, its pad wider by twice the caul's thickness
// (45 degrees through the wood, common practice, C; of a screw the washer is the pad where one is given); a prop or
// jack holds square to the form with the cosine of its slant (prop_place.hpp); a pad that reaches past
// the rod's end bears with what lies on it. A strap is a load. A station off the strips and one that only keeps the
// pile in line do nothing.
#pragma once

#include <optional>
#include <vector>

#include "core/contact/contact.hpp"
#include "core/holding/held.hpp"
#include "core/holding/loose_stack.hpp"
#include "core/holding/middle.hpp"

namespace fayline::holding {

struct Ready {
    Middle middle;
    LooseStack loose;
    std::vector<laminate::Run> support;  // along the line, ascending, none touching another
    laminate::Run strips;                // along the line, over-run included
    StrainShare worstStrain;             // 0 where there is no room
    NotPressed notPressed = NotPressed::none;
    bool bears() const { return notPressed == NotPressed::none; }  // false: there is no contact to solve
};
// The strain is that of bent strips, dry where they were softened before, at the nodes of the middle and on the form.
// Throws InputError with paths from `stack.` as laminate::planStack does.
Ready makeReady(const StackOnForm& work);

// A wooden caul sawn to the curve that lies on the outside, as wide as the stack.
struct Caul {
    double from_s_m = 0;
    double to_s_m = 0;
    double modulus_Pa = 0;
    double thickness_m = 0;
};

// The contact problem of some stations.
struct Pressed {
    Problem problem;
    std::vector<int> holds;             // for each station its place in problem.holds; -1: it has none
    std::vector<double> most_N;         // for each station: what it can pull square to the form; of a strap its thrust
    std::vector<double> strapThrust_N;  // for each station: whole thrust on the form of a strap, else 0
};

// The rod runs from s = from_s_m to to_s_m, which lie within the strips (alongMiddle of `ready.strips` at most).
// Elements are no longer than `step_m`. Pads are those of the piece. Throws InputError (`holding.stations[i].most_N`,
// ...), i by the order given.
Pressed press(const Ready& ready, const StackOnForm& work, const std::vector<model::Station>& stations, double from_s_m,
              double to_s_m, const std::optional<Caul>& caul = {}, double step_m = elementStep_m);

// The whole of the strips.
Pressed pressAll(const Ready& ready, const StackOnForm& work, const std::vector<model::Station>& stations,
                 const std::optional<Caul>& caul = {});

// Whether the strips are long enough for a state: a stack that springs clear far draws its ends in, and where one has
// slipped out from under a pad the state cannot be.
bool stripsReach(const Ready& ready, const Problem& problem, const Contact& contact);

// `solve`, and notConverged where the strips do not reach.
Contact solveWithin(const Ready& ready, const Problem& problem, const Contact* start = nullptr);

// Half the pad of a station with its caul, metres along the middle.
double halfPad_m(const model::Station& station, const model::Cauls& cauls);

}  // namespace fayline::holding
