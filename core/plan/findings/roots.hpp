// Which finding follows from which: one cause, told first, with its consequences under it.
#pragma once

#include <optional>
#include <vector>

#include "core/plan/plan.hpp"

namespace fayline::plan {

// Hangs each finding that follows from another under that one (`root`), gives a cause the severity of its worst
// consequence, and sorts: misread offsets first, since all goes by the line; then the worst; of these what is about
// an offset; then along the line, those without a place last; facts after all; consequences behind their cause. Equals
// keep their order.
//
// A consequence is told by a table of codes: the same bend or gap by a second rule, what a repair would be, what a plan
// that does not settle cannot know. And where the plan with the misread offsets corrected (`ifCorrected`) has no
// such finding, or one less bad, it follows from the first of those offsets.
void hangFindings(std::vector<Finding>& findings, const std::optional<std::vector<Finding>>& ifCorrected);

}  // namespace fayline::plan
