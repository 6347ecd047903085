// What each station does: what holds it, how hard it pulls, how that is told to hands, which gap is left.
#pragma once

#include "app/paper/sheet.hpp"
#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::app::paper {

// Sheets of the stations along the line, with the straps, the largest gaps, the over-run needed where it is worked out,
// and the stops and cautions about holding. None for a piece without stations; one that says so for a plan without
// pulls.
std::vector<Sheet> pullTable(const model::Piece& piece, const plan::Plan& plan, const Page& page);

}  // namespace fayline::app::paper
