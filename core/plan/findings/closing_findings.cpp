#include <algorithm>
#include <cmath>
#include <limits>

#include "core/holding/kinds.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/closing_texts.hpp"
#include "core/plan/findings/holding_scene.hpp"
#include "core/plan/study/holding_study.hpp"

namespace fayline::plan {

namespace {

using units::Mark;
using units::toMillimetres;

// What is said of all stations closed is not said again of a moment that is no worse than that.
constexpr double worse = 1.001;
constexpr double reported_N = 1;

bool isWorse(double load_N, double whenClosed_N) {
    return load_N > whenClosed_N * worse + reported_N;
}

Message orderFrom(model::From from) {
    return from == model::From::start    ? texts::fromTheStart
           : from == model::From::middle ? texts::fromTheMiddle
                                         : texts::fromTheEnd;
}

struct Closing {
    const HoldingScene& scene;
    const HoldingStudy& study;

    std::optional<int> turnAt(int step) const { return study.closing[step].index; }
    const holding::MostBorne& pull(int station) const { return study.closingLoads.pulls[station]; }
};

// Of the other orders the one in which the least is borne, if it is less than `now_N` by more than a twentieth.
template <typename LoadOf>
Message betterOrder(const Closing& closing, double now_N, const LoadOf& loadOf) {
    const OtherOrder* best = nullptr;
    for (const OtherOrder& order : closing.study.otherOrders) {
        if (!best || loadOf(order.loads) < loadOf(best->loads)) best = &order;
    }
    if (!best || !(loadOf(best->loads) < 0.95 * now_N)) return texts::noBetterOrder;
    return {texts::betterOrder, {orderFrom(best->from), put::force(loadOf(best->loads))}};
}

// What would do where a station bears too much at its turn.
std::vector<Message> insteadAt(const Closing& closing, int station) {
    const holding::MostBorne& now = closing.pull(station);
    const auto index = static_cast<std::size_t>(station);
    return {texts::drawInBeside,
            betterOrder(closing, now.most_N, [index](const auto& loads) { return loads.pulls[index].most_N; })};
}

void addStations(std::vector<Finding>& findings, const Closing& closing) {
    const HoldingPlan& held = closing.scene.plan.holding;
    const holding::ClosingLoads& loads = closing.study.closingLoads;
    const auto momentOf = [&](int station) {
        return LoadCase{closing.turnAt(closing.pull(station).step), insteadAt(closing, station)};
    };
    for (const holding::HeldStation& station : held.held.stations) {
        const holding::MostBorne& most = closing.pull(station.index);
        if (!isWorse(most.most_N, station.pull_N)) continue;
        const LoadCase moment = momentOf(station.index);
        for (const holding::PropPlan& prop : loads.props) {
            if (prop.index == station.index) addPropStrength(findings, closing.scene, prop, moment);
        }
        for (const holding::ScrewPlan& screw : loads.screws) {
            if (screw.index == station.index) addScrewStrength(findings, closing.scene, screw, moment);
        }
        addPadCrush(findings, closing.scene, station.index, most.most_N, moment);
    }
}

void addPosts(std::vector<Finding>& findings, const Closing& closing) {
    const holding::ClosingLoads& loads = closing.study.closingLoads;
    const std::vector<holding::PostLoad>& posts = closing.scene.plan.holding.posts;
    for (std::size_t i = 0; i < std::min(posts.size(), loads.posts.size()); ++i) {
        const holding::MostBorne& most = loads.posts[i];
        if (!isWorse(most.most_N, posts[i].thrust_N)) continue;
        holding::PostLoad post = posts[i];
        post.thrust_N = most.most_N;
        const Message instead =
            betterOrder(closing, most.most_N, [i](const auto& other) { return other.posts[i].most_N; });
        addPostLoad(findings, closing.scene, post, {closing.turnAt(most.step), {instead}});
    }
}

// Stations that have closed in the end and could not at their turns, said once.
void addNotClosing(std::vector<Finding>& findings, const Closing& closing) {
    const HoldingScene& scene = closing.scene;
    const double limit = scene.piece.holding.gapLimit_m;
    const auto& stations = scene.plan.holding.held.stations;
    std::vector<int> late;
    const holding::ClosingStep* widest = nullptr;
    for (const holding::ClosingStep& step : closing.study.closing) {
        if (step.closed.empty() || step.closed.back().state != holding::HoldState::full) continue;
        const auto end =
            std::ranges::find_if(stations, [&](const auto& station) { return station.index == step.index; });
        if (!(step.gap_m > limit) || end == stations.end() || end->state == holding::HoldState::full) continue;
        late.push_back(step.index);
        if (!widest || step.gap_m > widest->gap_m) widest = &step;
    }
    if (!widest) return;
    Finding finding =
        foundAgainst(Code::atItsStrengthWhileClosing, contactSource(), widest->pull_N, widest->closed.back().most_N);
    finding.at_m = scene.at_m(widest->index);
    finding.text = {texts::tightenAgain, {scene.names(late), gapArg(widest->gap_m)}, math::countOf(late)};
    finding.details.push_back({texts::tightenAgainWhy, {scene.name(widest->index), put::force(widest->pull_N)}});
    finding.details.emplace_back(texts::drawInBeside);
    findings.push_back(finding);
}

// Two shapes in balance under the same pulls: the one that closing leads to, and the one that is shown.
void addRestsOtherwise(std::vector<Finding>& findings, const Closing& closing) {
    const HoldingScene& scene = closing.scene;
    const holding::Held& held = scene.plan.holding.held;
    if (!holding::inBalance(held.outcome)) return;
    const holding::HeldStation* shown = nullptr;
    const holding::HeldStation* reached = nullptr;
    for (const holding::HeldStation& then : closing.study.closing.back().closed) {
        for (const holding::HeldStation& now : held.stations) {
            // A strap has no pad under which a gap could be told.
            if (now.index != then.index || !holding::closesGap(scene.station(now.index))) continue;
            const bool more = !shown || std::abs(then.gap_m - now.gap_m) > std::abs(reached->gap_m - shown->gap_m);
            if (more) {
                shown = &now;
                reached = &then;
            }
        }
    }
    if (!shown || !(std::abs(reached->gap_m - shown->gap_m) > scene.piece.holding.gapLimit_m)) return;
    Finding finding =
        foundAgainst(Code::restsOtherwise, contactSource(), toMillimetres(reached->gap_m), toMillimetres(shown->gap_m));
    finding.at_m = shown->at_m;
    finding.text = {texts::restsOtherwise, {scene.nameAt(shown->index), gapArg(reached->gap_m), gapArg(shown->gap_m)}};
    finding.details.emplace_back(texts::restsOtherwiseWhy);
    findings.push_back(finding);
}

void addTools(std::vector<Finding>& findings, const Closing& closing) {
    const holding::AtHand& closed = closing.scene.plan.holding.atHand;
    holding::AtHand atTurns = closing.study.closingLoads.atHand;
    if (atTurns.leftWithout <= closed.leftWithout) return;
    std::erase_if(atTurns.counts.own(), [&](const holding::Counted& counted) {
        return std::ranges::any_of(closed.counts, [&](const holding::Counted& other) {
            return other.kind == counted.kind && other.withoutTool.size() >= counted.withoutTool.size();
        });
    });
    addToolsShort(findings, closing.scene, atTurns, {closing.study.closing.front().index});
}

double leastMargin(const holding::ClosingLoads& loads) {
    return loads.worstHull < 0 ? std::numeric_limits<double>::infinity() : loads.hulls[loads.worstHull]->margin;
}

std::vector<Message> insteadForBoat(const Closing& closing) {
    const holding::ClosingLoads& loads = closing.study.closingLoads;
    std::vector<Message> instead;
    if (loads.failingHull >= 0 && loads.failingHull != loads.worstHull) {
        instead.push_back({texts::firstTurnToFail, {closing.scene.name(*closing.turnAt(loads.failingHull))}});
    }
    instead.emplace_back(texts::drawInForBoat);
    instead.emplace_back(texts::nobodyUnder);
    const OtherOrder* best = nullptr;
    for (const OtherOrder& order : closing.study.otherOrders) {
        if (!best || leastMargin(order.loads) > leastMargin(best->loads)) best = &order;
    }
    if (!best || !(leastMargin(best->loads) > 1.05 * leastMargin(loads))) {
        instead.emplace_back(texts::noBetterOrder);
    } else if (const double margin = leastMargin(best->loads); std::isfinite(margin)) {
        instead.push_back({texts::betterOrderForBoat, {orderFrom(best->from), put::number(margin, 2)}});
    } else {
        instead.push_back({texts::orderThatSparesBoat, {orderFrom(best->from)}});
    }
    return instead;
}

void addBoat(std::vector<Finding>& findings, const Closing& closing) {
    const math::Shared<holding::HullPlan>& closed = closing.scene.plan.holding.hull;
    const holding::ClosingLoads& loads = closing.study.closingLoads;
    if (!closed || !closed->standsAtRest || loads.worstHull < 0) return;
    const holding::HullPlan& worst = *loads.hulls[loads.worstHull];
    if (closed->margin > worst.margin * worse && worst.margin < holding::marginAsked) {
        addHullAt(findings, closing.scene, worst, {closing.turnAt(loads.worstHull), insteadForBoat(closing)});
        return;
    }
    if (closed->freesBlock) return;
    for (std::size_t i = 0; i < loads.hulls.size(); ++i) {
        if (!loads.hulls[i] || !loads.hulls[i]->freesBlock || loads.hulls[i]->margin < holding::marginAsked) continue;
        addHullAt(findings, closing.scene, *loads.hulls[i], {closing.turnAt(static_cast<int>(i))});
        return;
    }
}

// Of the first step of which `holds` is so, what `phrase` says; as added, or null.
template <typename Holds>
Finding* addFirst(std::vector<Finding>& findings, const Closing& closing, const Holds& holds, Code code,
                  const units::Source& source, const Phrase& phrase) {
    const auto& steps = closing.study.closing;
    const auto step = std::ranges::find_if(steps, holds);
    if (step == steps.end()) return nullptr;
    Finding finding = foundWithoutLimit(code, source);
    finding.at_m = closing.scene.at_m(step->index);
    finding.text = {phrase, {closing.scene.name(step->index)}};
    if (code == Code::floorInTheWay) finding.value = toMillimetres(step->tip.y_m);
    findings.push_back(finding);
    return &findings.back();
}

void addTail(std::vector<Finding>& findings, const Closing& closing) {
    using holding::ClosingStep;
    const auto& steps = closing.study.closing;
    const auto onFloor = [](const ClosingStep& step) { return step.floorInTheWay; };
    addFirst(findings, closing, onFloor, Code::floorInTheWay, {"geometry of the free tail (derived)", Mark::derived},
             texts::floorInTheWay);
    addFirst(
        findings, closing, [](const ClosingStep& step) { return step.outcome == holding::Outcome::snaps; },
        Code::snapsWhileClosing, contactSource(), texts::snapsWhileClosing);
    if (Finding* may = addFirst(
            findings, closing, [](const ClosingStep& step) { return step.snapUndecided; }, Code::maySnapWhileClosing,
            contactSource(), texts::maySnapWhileClosing)) {
        may->details.emplace_back(texts::maySnapWhy);
    }
    // From where the floor is in the way the tail is not where it is said to be.
    const auto known = std::ranges::find_if(steps, onFloor);
    if (steps.size() < 2 || known == steps.begin()) return;
    const ClosingStep& widest =
        *std::ranges::max_element(std::ranges::subrange(steps.begin(), known), {}, &ClosingStep::tailOff_m);
    constexpr double reported_m = 0.05;
    if (!(widest.tailOff_m > reported_m)) return;
    Finding finding = foundWithoutLimit(
        Code::tailStandsOff,
        {"engineering judgement (common practice, no source); the distance is derived", Mark::commonPractice});
    finding.at_m = closing.scene.at_m(widest.index);
    finding.value = toMillimetres(widest.tailOff_m);
    finding.text = {texts::freeEndSticksOut, {put::length(widest.tailOff_m), closing.scene.name(widest.index)}};
    finding.details.emplace_back(texts::freeEndWhips);
    findings.push_back(finding);
}

}  // namespace

void addClosing(std::vector<Finding>& findings, const HoldingScene& scene, const HoldingStudy& study) {
    const Closing closing{scene, study};
    addTail(findings, closing);
    // A study by hand may say nothing of loads.
    if (study.closingLoads.pulls.size() != scene.piece.holding.stations.size() || study.closing.empty()) return;
    addStations(findings, closing);
    addNotClosing(findings, closing);
    addRestsOtherwise(findings, closing);
    addPosts(findings, closing);
    addTools(findings, closing);
    addBoat(findings, closing);
}

}  // namespace fayline::plan
