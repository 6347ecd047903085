// Props, jacks and screws, and the boat on its blocks: where they stand, what they bear, what to drill.
#pragma once

#include "app/paper/sheet.hpp"
#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::app::paper {

// Whether a piece has anything to put on these sheets: a prop, a jack, a screw, or a boat with a weight.
bool hasProps(const model::Piece& piece);

// The sheets; one that says so where there is nothing to put on them or where the plan lacks it.
std::vector<Sheet> propsSheet(const model::Piece& piece, const plan::Plan& plan, const Page& page);

}  // namespace fayline::app::paper
