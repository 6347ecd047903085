// Whether curves in the plane run into themselves or each other.
#pragma once

#include <optional>
#include <vector>

#include "core/line/line.hpp"

namespace fayline::laminate {

struct Crossing {
    int index = 0;  // of the point before the crossing, on the curve that comes to it first
    int other = 0;  // the same where it is met again; index <= other
};

// The crossing with the smallest index of `curves`, polylines of equally many points that run side by side (point j of
// one beside point j of the others), and of the two caps that join their first and their last points. Neighbouring
// stretches, fewer than two points apart, count as joined, not as crossing. Nothing crosses: none.
// Time grows with the number of points times its logarithm as long as few of them crowd together.
std::optional<Crossing> firstCrossing(const std::vector<std::vector<line::Xy>>& curves);

}  // namespace fayline::laminate
