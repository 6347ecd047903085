// What takes longer than a frame about how a piece is held.
#pragma once

#include <set>
#include <vector>

#include "core/holding/closing.hpp"
#include "core/holding/over_run.hpp"
#include "core/holding/propose/propose.hpp"
#include "core/holding/props/closing_loads.hpp"
#include "core/plan/plan.hpp"

namespace fayline::plan {

// The closing begun elsewhere than the piece has it.
struct OtherOrder {
    model::From from = model::From::start;
    holding::ClosingLoads loads;
};

struct HoldingStudy {
    std::vector<holding::ClosingStep> closing;  // in the order of closing
    holding::ClosingLoads closingLoads;         // what bears at those steps
    std::vector<OtherOrder> otherOrders;        // only where something bears too much while closing
    holding::OverRun overRun;
    holding::Proposal proposal;
    holding::Carried carried;
    std::set<Study> awaited;        // of closing, overRun, proposal, carried: its members above say nothing yet
    std::vector<Finding> findings;  // those that follow from what is not awaited
};

}  // namespace fayline::plan
