// The cards that stand by the scale: cup after cup, what goes into each, for what, and by when it is to be used up.
#pragma once

#include "app/paper/sheet.hpp"
#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::app::paper {

// Whether anything of the piece is glued: strips to each other, or the first of them to the boat.
bool isGlued(const model::Piece& piece);

// One card for each cup in the order of use, with parts by weight or by the cup's marks as the piece says, wall times
// of the planned start, room for the real ones, how hot it would get; cautions at the foot.
std::vector<Sheet> batchCards(const model::Piece& piece, const plan::Plan& plan, const Page& page);

}  // namespace fayline::app::paper
