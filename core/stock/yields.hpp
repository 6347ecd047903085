// How many lanes each board gives either way, and what keeps boards and strips from being used.
#pragma once

#include "core/stock/problem.hpp"

namespace fayline::stock {

// For each board and each kind of strip (its wood, its section) that it is of the wood of.
std::vector<Yield> yieldsOf(const Job& job, const Problem& problem);

// Of boards, and of strips that the planer does not take; those of strips without a way are in the problem.
std::vector<Trouble> boardTroubles(const Job& job, const Problem& problem, const std::vector<Yield>& yields);

}  // namespace fayline::stock
