// The boat on its blocks while props push it up: does it lift, tip or slide, and by what margin.
//
// The hull is rigid in the plane of the piece (y up), the blocks push straight up, only push, and give way alike under
// load (three or more share as springs would); friction at them bears what is level.
#pragma once

#include <optional>
#include <vector>

#include "core/boat/boat.hpp"
#include "core/holding/prop.hpp"
#include "core/line/line.hpp"

namespace fayline::holding {

struct Push {
    int index = 0;     // of the station
    line::Xy at;       // where it bears, metres
    line::Xy force_N;  // on the boat
};

struct BlockPush {
    int index = 0;  // in boat::Hull::blocks
    double x_m = 0;
    double push_N = 0;   // upward, >= 0
    bool lifts = false;  // no longer touched
};

struct HullPlan {
    std::vector<BlockPush> blocks;
    bool lifts = false;  // off every block
    bool tips = false;   // off some block that it stood on, or about the last one
    bool slides = false;
    double level_N = 0;        // resultant of the pushes along the floor
    double frictionMay_N = 0;  // friction of the blocks bears
    double margin = 0;         // all pushes may grow by this factor before it lifts, tips or slides; infinity: never
    double mostPush_N = 0;     // largest total push borne with a margin of 2, directions and shares as they are
    int worstProp = -1;        // station whose push takes most off the margin; -1: none
    double totalPush_N = 0;
    measure::Source source;
};

// The hull of `hull` under `pushes`. Absent where no weight is given. Throws InputError (`holding.hull.blocks`) for a
// hull with weight and no block.
std::optional<HullPlan> hullPlan(const boat::Hull& hull, const std::vector<Push>& pushes);

// What props and jacks push on the boat, from their plans: along each prop from foot to head.
std::vector<Push> pushesOf(const StackOnForm& work, const std::vector<PropPlan>& props);

}  // namespace fayline::holding
