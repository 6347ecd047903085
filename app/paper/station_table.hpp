// The table of stations and of all other marks, with what the line and the strips come to.
#pragma once

#include "app/paper/sheet.hpp"
#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"
#include "core/wood/species.hpp"

namespace fayline::app::paper {

// Sheets of the table, as many as its rows need, and after them those of the pulls (pull_table.hpp). Lengths stand in
// the boat's display units and in millimetres. `species` names the woods: the user's own before the built-in ones.
std::vector<Sheet> stationTable(const model::Piece& piece, const plan::Plan& plan,
                                const std::vector<wood::Species>& species, const Page& page);

}  // namespace fayline::app::paper
