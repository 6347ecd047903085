// Which coordinate of the points of a table is a line of the grid: a proposal, for the user to take or leave.
#pragma once

#include <vector>

#include "core/line/line.hpp"
#include "core/line/read.hpp"

namespace fayline::line {

// For each of `points` (metres, as written before any take-off) which coordinate was probably read. A column that is
// evenly spaced throughout (4 points or more) is the grid of all. Else, of the round spacings 1 ft, 6 in, 3 in, 250 mm,
// 200 mm, 100 mm and 50 mm, the one on which the most points, 3 or more, have just one coordinate, the other then being
// read (the widest of equals); points that have both or neither on it are Read::both. `readTo_m` is the step of reading: a spacing below 16 of
// it is met by chance too often to count. Common practice, no source.
std::vector<Read> gridOf(const std::vector<Xy>& points, double readTo_m);

}  // namespace fayline::line
