#include "core/stock/stock.hpp"

#include <algorithm>
#include <cmath>

#include "core/stock/first_fit.hpp"
#include "core/stock/search.hpp"
#include "core/stock/yields.hpp"

namespace fayline::stock {

namespace {

// Costs that differ by less than this share are one.
constexpr double sameShare = 1e-6;

// The wood of the strips that have a way: no boards of less give them. For money 0.
double woodOf(const Job& job, const Problem& problem) {
    double m3 = 0;
    if (problem.aim == Aim::leastWood)
        for (std::size_t i = 0; i < job.strips.size(); ++i)
            if (!problem.wanted[i].ways.empty())
                m3 += job.strips[i].length_m * job.strips[i].width_m * job.strips[i].thickness_m;
    return m3;
}

// Fewest strips left out whose weights come to this: spares weigh 1, others more than all spares together.
int fewestOf(const Problem& problem, int leftOut) {
    int most = 1;
    for (const Wanted& wanted : problem.wanted) most = std::max(most, wanted.weight);
    return leftOut / most + (leftOut % most > 0 ? 1 : 0);
}

CutPlan completed(const Job& job, const Problem& problem, const Found& found) {
    CutPlan plan = planOf(job, problem, found.cutting);
    plan.yields = yieldsOf(job, problem);
    for (const Trouble& trouble : boardTroubles(job, problem, plan.yields)) plan.troubles.push_back(trouble);
    plan.fewestMissing = fewestOf(problem, found.leftOut);
    if (plan.missing.empty()) {
        plan.bound = std::min(std::max(found.bound, woodOf(job, problem)), plan.value);
        plan.proven = found.proven || plan.value - plan.bound <= sameShare * plan.value;
        if (plan.proven) plan.bound = plan.value;
        plan.gap = plan.value > 0 ? (plan.value - plan.bound) / plan.value : 0;
    } else {
        plan.proven = found.proven;
    }
    return plan;
}

Found firstOf(const Problem& problem) {
    Found found{.cutting = firstCutting(problem)};
    for (const Wanted& wanted : problem.wanted)
        if (wanted.ways.empty()) found.leftOut += wanted.weight;
    return found;
}

}  // namespace

CutPlan firstCutPlan(const Job& job) {
    check(job);
    const Problem problem = problemOf(job, false);
    return completed(job, problem, firstOf(problem));
}

CutPlan bestCutPlan(const Job& job, const Effort& effort, const std::atomic<bool>& stop,
                    const std::function<void(const CutPlan&)>& better) {
    check(job);
    if (job.strips.empty()) return firstCutPlan(job);
    const auto tell = [&](const Problem& problem) {
        return [&](const Found& found) {
            if (better) better(completed(job, problem, found));
        };
    };
    const Problem problem = problemOf(job, false);
    Found found = firstOf(problem);
    tell(problem)(found);
    found = search(problem, found.cutting, effort, stop, tell(problem));
    CutPlan plan = completed(job, problem, found);
    const bool bend = std::any_of(job.strips.begin(), job.strips.end(), [](const Strip& s) { return !!s.tightest; });
    if (plan.missing.empty() || !bend || stop.load(std::memory_order_relaxed)) return plan;

    const Problem forced = problemOf(job, true);
    const Found first = firstOf(forced);
    const Found other = search(forced, first.cutting, effort, stop, {});
    if (leftOutOf(forced, other.cutting) >= leftOutOf(problem, found.cutting)) return plan;
    plan = completed(job, forced, other);
    if (better) better(plan);
    return plan;
}

}  // namespace fayline::stock
