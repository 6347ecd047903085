// What would mend boards that do not suffice, as changes of the piece that can be taken with one click.
#pragma once

#include <atomic>
#include <vector>

#include "core/plan/study/stock_job.hpp"
#include "core/plan/study/stock_study.hpp"
#include "core/stock/cut_plan.hpp"

namespace fayline::plan {

// Ranked as core/stock ranks them: the fewest strips still missing, then the least cost. Fewer once `stop` is set.
std::vector<StockCure> stockCures(const model::Piece& piece, const StockJob& job, const stock::CutPlan& found,
                                  const std::atomic<bool>& stop);

}  // namespace fayline::plan
