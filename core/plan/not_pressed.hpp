// Where no contact of stack and form is worked out: why, and which offset is at fault.
#pragma once

#include <optional>
#include <vector>

#include "core/plan/findings/holding_scene.hpp"

namespace fayline::plan {

// A line that is this many times as long as the way from point to point does not go through them in order: a fair one
// is longer by a twentieth, round half a circle with three points by a ninth. Ours.
inline constexpr double mostWandering = 1.6;
// From here on it is none: no plan is made of it, and its fit has not gone on. Ours.
inline constexpr double noLine = line::mostTimesTheWay;

// Length of the line over the way from point to point.
double wandering(const model::LineInput& input, const line::Line& line);

// Refuses points of which no line can be made that goes from one to the next, or one longer than 500 m. Throws
// InputError at the offset that is at fault (line.points[3]), as far as that can be told; nothing once `stop` is set.
void requireLine(const LinePlan& line, const units::Display& display, const std::atomic<bool>& stop);

// What rules a contact out before any strip is looked at: a line or stack that runs into itself, or one that wanders.
holding::NotPressed ruledOut(const model::LineInput& input, const line::Line& line, const laminate::StackPlan& stack);

// The offset that makes a line turn wildly.
//
// Of the polygon through the points the squares of its turns are summed (radians squared, D): of the rows, the one
// without which the sum is least; or two neighbours that exchanged make it less still. None where that leaves more than
// a third of the sum, for then no single row explains it, or there are fewer than 4 points. Time grows with the number
// of points.
struct AtFault {
    int point = 0;  // index; of two exchanged the later
    bool exchanged = false;
};
std::optional<AtFault> offsetAtFault(const std::vector<model::Point>& points);

// One that was found misread, else the one at fault.
std::optional<AtFault> worstOffset(const LinePlan& line);

// Makes the offset what the finding is about, where one is at fault: its line says so in the pattern `one`, or that of
// two `exchanged`, and what it said stands first under it.
void leadWithOffset(Finding& finding, const HoldingScene& scene, const Phrase& one, const Phrase& exchanged);

// The finding that says so, where the plan's contact is not worked out. It leads with the offset at fault.
void addNotWorkedOut(std::vector<Finding>& findings, const HoldingScene& scene);

}  // namespace fayline::plan
