// The stages of makePlan that have files of their own.
#pragma once

#include "core/boat/boat.hpp"
#include "core/line/line.hpp"
#include "core/plan/plan.hpp"

namespace fayline::plan {

// What the fair line is made of.
line::FairInput fairInputOf(const boat::LineInput& input);

// Whether the record of a piece has a springback that was read.
bool springbackRead(const boat::Piece& piece);

// What the shop's recorded pieces say about springback; none where there are none, or where `stop` was set.
std::optional<stack::Learned> learnedOf(const Shop& shop, const std::atomic<bool>& stop);

// What it takes to spring the piece home, by its own last reading where `plan` has learned of one: then of the piece as
// it was when that was read.
std::optional<stack::SprungHome> sprungHomeOf(const boat::Piece& piece, const Shop& shop, const Plan& plan);

// Looks for misread offsets among those of the line. False: stopped before it was through.
bool seekMisread(LinePlan& plan, const measure::Display& display, const std::atomic<bool>& stop);

// The piece as core/holding takes it, with the pressure that its glue wants where its kind is known. The arguments
// outlive it.
holding::StackOnForm workOf(const boat::Piece& piece, const Shop& shop, const line::Line& line,
                            const stack::FormPlan& form);

// How the piece is held: what follows the hand. Of `made` line, stack and form are there. `before`: an earlier plan to
// begin the contact from. Once `stop` is set what comes back means nothing.
HoldingPlan planHolding(const boat::Piece& piece, const Shop& shop, const Plan& made, const HoldingPlan* before,
                        const std::atomic<bool>& stop);

// What the stack is bent over, where that is not the wanted line itself.
const stack::FormLine* bentOver(const stack::FormPlan& form);

}  // namespace fayline::plan
