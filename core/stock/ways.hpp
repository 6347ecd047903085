// The ways to make each strip: whole where a lane gives it, else with the fewest scarfs.
#pragma once

#include "core/stock/problem.hpp"

namespace fayline::stock {

// More ways than this of one strip are thinned out: their step is doubled.
inline constexpr int mostWays = 64;

// Fills Wanted::ways and Problem::items, and tells in Problem::troubles why there is none.
void addWays(Problem& problem, const Job& job, bool mayForce);

}  // namespace fayline::stock
