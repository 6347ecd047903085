#include "core/stock/stock.hpp"

#include "core/stock/first_fit.hpp"
#include "core/stock/yields.hpp"

namespace fayline::stock {

namespace {

// What is known of every plan of this problem.
CutPlan completed(const Job& job, const Problem& problem, const Cutting& cutting) {
    CutPlan plan = planOf(job, problem, cutting);
    plan.yields = yieldsOf(job, problem);
    for (const Trouble& trouble : boardTroubles(job, problem, plan.yields)) plan.troubles.push_back(trouble);
    return plan;
}

}  // namespace

CutPlan firstCutPlan(const Job& job) {
    check(job);
    const Problem problem = problemOf(job, false);
    return completed(job, problem, firstCutting(problem));
}

CutPlan bestCutPlan(const Job& job, const Effort&, const std::atomic<bool>&,
                    const std::function<void(const CutPlan&)>& better) {
    const CutPlan first = firstCutPlan(job);
    if (better) better(first);
    return first;
}

std::vector<Cure> cures(const Job&, const CutPlan&, const Effort&, const std::atomic<bool>&) {
    return {};
}

}  // namespace fayline::stock
