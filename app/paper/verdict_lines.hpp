// Whether the piece can be glued, and what has to be seen to first, for the top of the papers that are worked from.
#pragma once

#include <vector>

#include "app/paper/listing.hpp"
#include "core/plan/plan.hpp"

namespace fayline::app::paper {

// The verdict in bold. Below it the stops and cautions that stand for themselves, as the plan orders them: three at
// most, then how many more there are.
std::vector<Paragraph> verdictLines(const plan::Plan& plan);

}  // namespace fayline::app::paper
