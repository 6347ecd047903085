// Stacks of strips that are alike, for tests.
#pragma once

#include "core/stack/stack.hpp"
#include "core/wood/species.hpp"

namespace fayline::made {

inline boat::Stack stackOf(int count, double thickness_m, double glue_m = 0.0) {
    boat::Stack stack;
    stack.strips = {boat::Strips{.count = count, .thickness_m = thickness_m}};
    stack.glueLine_m = glue_m;
    stack.runsPastStart_m = 0;
    stack.runsPastEnd_m = 0;
    return stack;
}

inline stack::StackPlan planOn(const line::Line& line, const boat::Stack& stack, boat::Side side = boat::Side::left,
                               boat::Describes describes = boat::Describes::innerFace) {
    return stack::planStack(stack, describes, side, line, wood::builtInSpecies());
}

}  // namespace fayline::made
