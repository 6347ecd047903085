// How much less the grid's coordinate of a point scatters than the one that was read.
#pragma once

#include <cmath>

#include "core/model/read.hpp"

namespace fayline::line {

using model::Read;

// The grid is drawn ten times as truly as a reading is taken: common practice, no source. A line that runs along the
// read axis would else be held to the grid without any play.
inline constexpr double gridScatter = 0.1;

// How much of a reading's scatter lies square to a line that runs along the unit vector (alongX, alongY): 1 where both
// coordinates were read, down to `gridScatter` where the line runs along the axis that was read.
inline double scatterShare(Read read, double alongX, double alongY) {
    if (read == Read::both) return 1;
    const double square = read == Read::x ? alongY : alongX;
    const double grid = read == Read::x ? alongX : alongY;
    return std::hypot(square, gridScatter * grid);
}

}  // namespace fayline::line
