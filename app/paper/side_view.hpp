// A small drawing to scale of what pushes a stack up and what the boat sits on.
#pragma once

#include "app/paper/listing.hpp"
#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::app::paper {

// The stack from the side with props and jacks, the floor, screws, the boat's blocks and its centre of weight, numbered
// as in the tables and with their thrusts. Its scale is round and written below it beside a bar.
// `width_mm` is what it may be wide; as high as it needs, up to a third of a sheet. Piece and plan outlive it.
Picture sideView(const model::Piece& piece, const plan::Plan& plan, double width_mm);

}  // namespace fayline::app::paper
