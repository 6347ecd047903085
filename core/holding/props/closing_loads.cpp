#include "core/holding/props/closing_loads.hpp"

#include <cstddef>

namespace fayline::holding {

namespace {

void raise(MostBorne& most, double load_N, int step) {
    if (load_N > most.most_N) most = {load_N, step};
}

void addHull(ClosingLoads& loads, const StackOnForm& work, const ClosingStep& step, int at) {
    if (step.closed.empty()) {
        loads.hulls.emplace_back();
        return;
    }
    const std::vector<Push> pushes = pushesOf(work, propPlans(work, step.closed));
    loads.hulls.push_back(hullPlan(work.piece.holding.hull, pushes));
    const std::optional<HullPlan>& hull = loads.hulls.back();
    if (!hull || pushes.empty()) return;
    const bool first = loads.worstHull < 0;
    if (first || hull->margin < loads.hulls[loads.worstHull]->margin) loads.worstHull = at;
    if (loads.failingHull < 0 && (hull->lifts || hull->tips || hull->slides)) loads.failingHull = at;
}

// All stations, along the line as the last step that settled has them numbered, each with its greatest pull.
Held atGreatestPulls(const std::vector<ClosingStep>& steps, const std::vector<MostBorne>& pulls) {
    Held held;
    for (auto step = steps.rbegin(); step != steps.rend() && held.stations.empty(); ++step) {
        held.stations = step->closed;
    }
    for (HeldStation& station : held.stations) station.pull_N = pulls[station.index].most_N;
    return held;
}

}  // namespace

ClosingLoads closingLoads(const StackOnForm& work, const std::vector<ClosingStep>& steps) {
    ClosingLoads loads;
    loads.pulls.resize(work.piece.holding.stations.size());
    if (work.piece.form.kind == model::FormKind::posts) loads.posts.resize(work.piece.form.posts.size());
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const ClosingStep& step = steps[i];
        const int at = static_cast<int>(i);
        for (const HeldStation& held : step.closed) {
            raise(loads.pulls[held.index], held.pull_N, at);
        }
        for (std::size_t k = 0; k < step.posts.size(); ++k) raise(loads.posts[k], step.posts[k].thrust_N, at);
        addHull(loads, work, step, at);
    }
    const Held greatest = atGreatestPulls(steps, loads.pulls);
    loads.props = propPlans(work, greatest);
    loads.screws = screwPlans(work, greatest);
    loads.atHand = atHand(work, greatest);
    return loads;
}

}  // namespace fayline::holding
