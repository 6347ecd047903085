// The sheet that hangs by the form while the stack is closed: station after station, to be ticked off.
#pragma once

#include "app/paper/sheet.hpp"
#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::app::paper {

// Steps in the order of closing, with what each needs and where the free tail then is; how the stack is carried there;
// cautions. A plan whose closing is not worked out gives a sheet that says so.
std::vector<Sheet> closingSheet(const model::Piece& piece, const plan::Plan& plan, const Page& page);

}  // namespace fayline::app::paper
