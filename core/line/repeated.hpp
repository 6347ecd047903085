// The same slip on a whole kind of points: every height read from the wrong mark, a thickness left on every
// half-breadth.
#pragma once

#include <atomic>
#include <string>
#include <vector>

#include "core/line/leave_out.hpp"
#include "core/line/line.hpp"
#include "core/line/misread.hpp"
#include "core/units/length.hpp"

namespace fayline::line {

// The groups of points whose labels are alike but for their figures ("WL 12", "WL 18"; "3-6-0 aft", "2-0-0 aft"), each
// with at least 3 points, and with at least 3 points outside it. Indices in order.
std::vector<std::vector<int>> kindsOfPoints(const std::vector<std::string>& labels);

// The repeated slips that make all points agree where as they stand some do not: one step of reading (an inch, an
// eighth, a foot; 10 or 100 mm) or the thickness `takeOff_m` on one coordinate of a whole kind of points.
//
// Model: that of leave_out.hpp for all points at once; the repair that makes them likeliest, at most one. It shows only
// where the kind meets other points, so a repair that explains them little better than one moved point is not reported,
// and a shift along the line never is, since it moves the points onto the same line. None for more than 40 points.
// `judged` is what leaveEachOut says of the points as they stand. A coordinate that `reads` has for a line of the grid
// is not put right. None once `stop` is true.
std::vector<RepeatedSlip> repeatedSlips(const std::vector<Xy>& points, const std::vector<LeftOut>& judged,
                                        const std::vector<std::string>& labels, double readTo_m, double takeOff_m,
                                        units::LengthNotation notation, const std::vector<Read>& reads,
                                        const std::atomic<bool>& stop);

}  // namespace fayline::line
