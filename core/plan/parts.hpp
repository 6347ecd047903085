// The stages of makePlan that have files of their own.
#pragma once

#include "core/laminate/springback/learned.hpp"
#include "core/laminate/springback/sprung_home.hpp"
#include "core/line/line.hpp"
#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::plan {

// What the fair line is made of.
line::FairInput fairInputOf(const model::LineInput& input);

// Whether the record of a piece has a springback that was read.
bool springbackRead(const model::Piece& piece);

// What the shop's recorded pieces say about springback; none where there are none, or where `stop` was set.
std::optional<laminate::Learned> learnedOf(const Shop& shop, const std::atomic<bool>& stop);

// What it takes to spring the piece home, by its own last reading where `plan` has learned of one: then of the piece as
// it was when that was read.
std::optional<laminate::SprungHome> sprungHomeOf(const model::Piece& piece, const Shop& shop, const Plan& plan);

// Looks for misread offsets among those of the line. False: stopped before it was through.
bool seekMisread(LinePlan& plan, const units::Display& display, const std::atomic<bool>& stop);

// The piece as core/holding takes it, with the pressure that its glue wants where its kind is known. The arguments
// outlive it.
holding::StackOnForm workOf(const model::Piece& piece, const Shop& shop, const line::Line& line,
                            const laminate::FormPlan& form);

// How the piece is held: what follows the hand. Of `made` line, stack and form are there. `before`: an earlier plan to
// begin the contact from. Once `stop` is set what comes back means nothing.
HoldingPlan planHolding(const model::Piece& piece, const Shop& shop, const Plan& made, const HoldingPlan* before,
                        const std::atomic<bool>& stop);

// What the stack is bent over, where that is not the wanted line itself.
const laminate::FormLine* bentOver(const laminate::FormPlan& form);

}  // namespace fayline::plan
