// Looks at a cut list by means of its own: it knows the job and the plan as their headers word them, nothing of how the
// plan was made.
#pragma once

#include <string>
#include <vector>

#include "core/stock/cut_plan.hpp"
#include "core/stock/job.hpp"

namespace fayline::stock {

// What is wrong with a cut list, in words; empty: nothing.
std::vector<std::string> wrongIn(const Job& job, const CutPlan& plan);

}  // namespace fayline::stock
