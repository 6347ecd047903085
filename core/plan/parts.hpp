// The stages of makePlan that have files of their own.
#pragma once

#include "core/boat/boat.hpp"
#include "core/line/line.hpp"
#include "core/plan/plan.hpp"

namespace fayline::plan {

// The piece as core/holding takes it, with the pressure that its glue wants where its kind is known. The arguments
// outlive it.
holding::StackOnForm workOf(const boat::Piece& piece, const Shop& shop, const line::Line& line,
                            const stack::FormPlan& form);

// How the piece is held: what follows the hand. `before`: an earlier plan to begin the contact from.
HoldingPlan planHolding(const boat::Piece& piece, const Shop& shop, const line::Line& line, const stack::FormPlan& form,
                        const HoldingPlan* before);

// What the stack is bent over, where that is not the wanted line itself.
const stack::FormLine* bentOver(const stack::FormPlan& form);

}  // namespace fayline::plan
