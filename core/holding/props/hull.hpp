// The boat on its blocks while props push it up: does it lift, tip or slide, and by what margin.
//
// The hull is rigid in the plane of the piece (y up). Blocks only push. They bear what is level by friction, all in the
// same share of what they carry, so that every block pushes along one and the same direction. Three or more give way
// alike, as equal springs along that direction; the blocks that stay touched share what there is accordingly:
// push_i = max(0, a + b arm_i), with arm_i = x_i - (level / upright) y_i (D). Nothing else holds the boat.
#pragma once

#include <optional>
#include <vector>

#include "core/holding/props/prop.hpp"
#include "core/line/line.hpp"
#include "core/model/boat.hpp"

namespace fayline::holding {

struct Push {
    int index = 0;     // of the station
    line::Xy at;       // where it bears, metres
    line::Xy force_N;  // on the boat
};

struct BlockPush {
    int index = 0;  // in model::Hull::blocks
    double x_m = 0;
    double y_m = 0;
    double push_N = 0;    // upward, >= 0
    double atRest_N = 0;  // from the weight alone
    bool lifts = false;   // carries weight at rest and is no longer touched
};

struct HullPlan {
    // In the order of the file. Where there is no balance: off all blocks none pushes; tipping, all there is to carry
    // is on the outermost block on the side to which it tips.
    std::vector<BlockPush> blocks;
    bool lifts = false;  // off every block
    bool tips = false;   // about the outermost block: no pushes of the blocks balance it
    bool slides = false;
    bool standsAtRest = true;  // false: the weight alone tips, it stands on no blocks
    bool freesBlock = false;   // some block lifts; no failure as long as the others balance the boat
    double weight_N = 0;
    double level_N = 0;        // size of the pushes' resultant along the floor
    double frictionMay_N = 0;  // friction of the blocks bears
    // All pushes may grow by this factor before it lifts, tips or slides; infinity: never. 0: not even at rest.
    double margin = 0;
    enum class Failure { never, lifts, tips, slides };
    Failure failsBy = Failure::never;  // what happens first at the margin
    double mostPush_N = 0;          // largest total push borne with a margin of 2, directions and shares as they are;
                                    // infinity: any
    int worstProp = -1;             // station whose push takes most off the margin; -1: none does
    double marginWithoutWorst = 0;  // infinity: never fails
    double totalPush_N = 0;         // sum of the pushes' sizes
    units::Source source;
};

// The margin that is asked of props under a boat, and on which mostPush_N rests. Ours; for friction that carries a side
// force a factor of at least 2 is published (Concrete Society on falsework, P).
inline constexpr double marginAsked = 2;

// The hull of `hull` under `pushes`. Absent where no weight is given. Throws InputError (`holding.hull.blocks`) for a
// hull with weight and no block.
//   (1) all pushes and the weight times one factor: the same margin
//   (2) mirrored in x: the same margin, the same blocks
std::optional<HullPlan> hullPlan(const model::Hull& hull, const std::vector<Push>& pushes);

// What props and jacks push on the boat, from their plans: along each prop from foot to head. Clamps, straps and screws
// pull within the boat and the piece and do not count.
std::vector<Push> pushesOf(const StackOnForm& work, const std::vector<PropPlan>& props);

}  // namespace fayline::holding
