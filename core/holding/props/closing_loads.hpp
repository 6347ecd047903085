// What the boat, the props, the screws and the posts bear while the stations are closed one after the other.
//
// At its turn a station may pull many times what is left for it once its neighbours pull too, and what was closed
// before it pulls otherwise than in the end. So each step of the closing is judged for itself, as it stands with that
// step's station closed and those after it open. Where a prop stands and how it leans does not change meanwhile:
// whether it slips does not hang on the moment.
#pragma once

#include <optional>
#include <vector>

#include "core/holding/closing.hpp"
#include "core/holding/props/hull.hpp"
#include "core/holding/props/prop.hpp"
#include "core/holding/props/screw.hpp"

namespace fayline::holding {

// The most that something bears at any step.
struct MostBorne {
    double most_N = 0;  // 0 where it bears nothing at any step
    int step = -1;      // the first step, counted from 0, at which it bears that; -1: none
};

struct ClosingLoads {
    std::vector<MostBorne> pulls;   // square to the form, of every station, in the order of the file
    std::vector<PropPlan> props;    // each as it is at its own greatest pull
    std::vector<ScrewPlan> screws;  // the same
    std::vector<MostBorne> posts;   // of a posted form, in the order of the file
    AtHand atHand;                  // with tools that give each station its greatest pull
    // The boat at every step; absent where no weight is given and at a step that did not settle.
    std::vector<std::optional<HullPlan>> hulls;
    int worstHull = -1;    // the first step with the least margin; -1: no prop pushes on a boat of known weight
    int failingHull = -1;  // the first step at which the boat lifts, tips or slides
};

// `steps` are those of closeInOrder for the same piece. Throws InputError as propPlans, screwPlans and hullPlan do.
//   (1) all numbers are no less than those of the last step, at which all stations are closed
ClosingLoads closingLoads(const StackOnForm& work, const std::vector<ClosingStep>& steps);

}  // namespace fayline::holding
