// What goes to the saw: each strip with its board and sizes, the boards with their rips drawn; and what is to be
// bought.
#pragma once

#include <vector>

#include "app/paper/sheet.hpp"
#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::app::paper {

// For `page` lying. Throws InputError as layOut does. Piece and plan outlive the call only.
std::vector<Sheet> cutList(const model::Piece& piece, const plan::Plan& plan, const Page& page);

// For `page` upright.
std::vector<Sheet> buyingList(const model::Piece& piece, const plan::Plan& plan, const std::vector<wood::Species>& species,
                              const Page& page);

}  // namespace fayline::app::paper
