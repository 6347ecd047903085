#include <algorithm>

#include "core/laminate/checks.hpp"
#include "core/laminate/springback/form_plan.hpp"
#include "core/wood/bending.hpp"

namespace fayline::laminate {

namespace {

// Moisture at which wood begins to shrink, and between which the straight line to dry is good. Source: Wood Handbook,
// dimensional change by total shrinkage (D from it).
constexpr double beginsToShrink = 0.30;
constexpr double driest = 0.06;
constexpr double wettest = 0.14;
// Along the grain from green to ovendry, 0.1 to 0.2 % in normal wood: the middle. Source: Wood Handbook p. 4-5 (P*).
constexpr double shrinksAlong = 0.0015;

}  // namespace

MoistureMove moistureMove(const model::Stack& stack, const std::vector<wood::Species>& species) {
    const std::vector<const wood::Species*> woods = woodsOf(stack, species);
    MoistureMove move;
    double depth = 0;
    double radial = 0;
    double tangential = 0;
    for (std::size_t i = 0; i < woods.size(); ++i) {
        const wood::Species& wood = *woods[i];
        if (wood.id != woods.front()->id) move.mixed = true;
        if (!wood.shrinkRadial) {
            move.known = false;
            move.unknownSpecies = wood.id;
            return move;
        }
        const double thickness = stack.strips[i].count * stack.strips[i].thickness_m;
        depth += thickness;
        radial += thickness * wood.shrinkRadial->value;
        tangential += thickness * wood.shrinkTangential.value_or(*wood.shrinkRadial).value;
        const units::Source& source = wood.shrinkRadial->source;
        if (i == 0 || wood::doubtOf(source.mark) > wood::doubtOf(move.source.mark)) move.source = source;
    }
    // Above that moisture nothing moves.
    const double by =
        (std::min(stack.serviceMoisture, beginsToShrink) - std::min(stack.moisture, beginsToShrink)) / beginsToShrink;
    move.acrossShrink = by * radial / depth;
    move.alongShrink = by * shrinksAlong;
    move.change = (1 + move.alongShrink) / (1 + move.acrossShrink) - 1;
    move.changeTangential = (1 + move.alongShrink) / (1 + by * tangential / depth) - 1;
    move.beyond = std::min(stack.moisture, stack.serviceMoisture) < driest ||
                  std::max(stack.moisture, stack.serviceMoisture) > wettest;
    return move;
}

}  // namespace fayline::laminate
