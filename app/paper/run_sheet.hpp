// The sheet that hangs in the shed on the day: task after task with wall times, who does it, and room for what really
// happened.
#pragma once

#include "app/paper/sheet.hpp"
#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::app::paper {

// For each gluing sheets of its own: how the strips are numbered and in which order they come, the tasks by their
// beginning, when each face goes off, and what follows. Of a gluing after the first also what its cured face needs.
std::vector<Sheet> runSheet(const model::Piece& piece, const plan::Plan& plan, const Page& page);

}  // namespace fayline::app::paper
