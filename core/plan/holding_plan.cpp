#include <algorithm>

#include "core/holding/loose_stack.hpp"
#include "core/model/hold_traits.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/not_pressed.hpp"
#include "core/plan/parts.hpp"
#include "core/plan/shop.hpp"

namespace fayline::plan {

namespace {

std::vector<holding::PressingNeed> pressingOf(const holding::StackOnForm& work, const holding::Held& held) {
    std::vector<holding::PressingNeed> needs;
    if (held.stations.empty()) return needs;
    const holding::LooseStack loose =
        holding::looseStack(work.piece.stack, work.piece.line.describes, work.line.length(), work.species);
    for (const holding::HeldStation& station : held.stations) {
        const model::Station& given = work.piece.holding.stations[station.index];
        needs.push_back(holding::pressingNeed(work, loose, station.at_m, given.pad_m, station.most_N));
    }
    return needs;
}

// The last try of a state that is none may hold gaps of hundreds of metres: nobody shall read or cut by it.
void forgetLastTry(holding::Held& held) {
    held.samples.clear();
    for (holding::HeldStation& station : held.stations) {
        station.pull_N = station.gap_m = 0;
        station.state = holding::HoldState::slack;
    }
    held.largest = held.fallsInside = {};
    held.gapAtStart_m = held.gapAtEnd_m = 0;
    held.greatestPressure_Pa = held.greatestPressureAt_m = 0;
}

// A stack with any hardwood in it wants what hardwood wants.
bool hasHardwood(const model::Stack& stack, const std::vector<wood::Species>& species) {
    return std::ranges::any_of(stack.strips, [&](const model::Strips& strips) {
        const wood::Species* wood = wood::findSpecies(species, strips.species);
        return wood && wood->hardwood;
    });
}

}  // namespace

const laminate::FormLine* bentOver(const laminate::FormPlan& form) {
    return form.corrected && !form.line.empty() ? &form.line : nullptr;
}

holding::StackOnForm workOf(const model::Piece& piece, const Shop& shop, const line::Line& line,
                            const laminate::FormPlan& form) {
    holding::StackOnForm work{piece, line, shop.species, bentOver(form)};
    const glue::Adhesive* adhesive = glue::findAdhesive(shop.adhesives, piece.glue.adhesive);
    if (adhesive) work.wanted = holding::wantedPressure(adhesive->kind, hasHardwood(piece.stack, shop.species));
    return work;
}

HoldingPlan planHolding(const model::Piece& piece, const Shop& shop, const Plan& made, const HoldingPlan* before,
                        const std::atomic<bool>& stop) {
    const line::Line& line = made.line.fair.line;
    holding::Effort effort{&stop};
    holding::StackOnForm work = workOf(piece, shop, line, made.form);
    work.effort = &effort;
    work.ruledOut = ruledOut(piece.line, line, made.stack);
    HoldingPlan plan{
        .stations = holding::stationPlaces(piece.holding, piece.stack, piece.line.describes, piece.line.stripsOn, line),
        .held = holding::hold(work, before ? &before->held : nullptr)};
    if (!holding::inBalance(plan.held.outcome)) forgetLastTry(plan.held);
    plan.pressing = pressingOf(work, plan.held);
    plan.props = holding::propPlans(work, plan.held);
    plan.screws = holding::screwPlans(work, plan.held);
    for (std::size_t i = 0; i < piece.holding.stations.size(); ++i) {
        const model::Station& station = piece.holding.stations[i];
        if (!model::is<model::Strap>(station.kind)) continue;
        plan.straps.push_back(holding::strapPlan(station, static_cast<int>(i), work));
    }
    plan.posts = holding::postLoads(work, plan.held);
    plan.atHand = holding::atHand(work, plan.held);
    plan.hull = holding::hullPlan(piece.holding.hull, holding::pushesOf(work, plan.props));
    return plan;
}

}  // namespace fayline::plan
