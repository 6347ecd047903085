// End points that lie so far from the others that no forecast reaches them: their decimal point has slipped.
#pragma once

#include <optional>
#include <vector>

#include "core/line/leave_out.hpp"
#include "core/line/slips.hpp"

namespace fayline::line {

// The slip of the end point `end` (0 or the last) that explains why the gap to its neighbour is more than three times
// as wide as any other: a decimal point a place off, after which the gap is no wider than twice the others and the
// point lies where they foretell it. `after` is then what they say of it there. None: the gap is not so wide, or no
// slip explains it. `leftOut` as in leaveEachOut. Common practice, no source: a point so far out alone would stretch
// every forecast, and its own is worth nothing.
struct FarEnd {
    Slip slip;
    LeftOut after;
};
std::optional<FarEnd> farEnd(const std::vector<Xy>& points, const std::vector<bool>& leftOut, int end, double readTo_m,
                             const std::vector<Read>& reads, const std::vector<Slip>& slips);

}  // namespace fayline::line
