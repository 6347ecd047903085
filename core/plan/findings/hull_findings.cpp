#include <cmath>
#include <utility>

#include "core/plan/findings/holding_scene.hpp"
#include "core/plan/findings/hull_texts.hpp"

namespace fayline::plan {

namespace {

using units::Mark;

// The block about which it tips: all there is to carry is on that one.
const holding::BlockPush* pivotOf(const holding::HullPlan& hull) {
    for (const holding::BlockPush& block : hull.blocks) {
        if (block.push_N > 0) return &block;
    }
    return nullptr;
}

// How far the boat is from failing, and by which prop most.
void tellMargin(Finding& finding, const HoldingScene& scene, const holding::HullPlan& hull) {
    if (std::isfinite(hull.margin) && hull.margin > 0) {
        finding.details.push_back(
            {texts::marginWanted,
             {put::number(hull.margin, 2), put::number(holding::marginAsked, 2), put::force(hull.mostPush_N)}});
    }
    if (hull.worstProp >= 0) finding.details.push_back({texts::mostOffTheMargin, {scene.name(hull.worstProp)}});
}

}  // namespace

void addHullAt(std::vector<Finding>& findings, const HoldingScene& scene, const holding::HullPlan& hull,
               const LoadCase& moment) {
    const Message props =
        moment.turnOf ? Message(texts::thePropsAtTurn, {scene.name(*moment.turnOf)}) : Message(texts::theProps);
    const auto start = [&](Code code, double value, double limit) {
        Finding finding = foundAgainst(moment.code(code), hull.source, value, std::isfinite(limit) ? limit : 0);
        finding.limited = std::isfinite(limit);
        if (moment.turnOf) finding.at_m = scene.at_m(*moment.turnOf);
        return finding;
    };
    const auto add = [&](Finding finding, Message text) {
        finding.text = std::move(text);
        tellMargin(finding, scene, hull);
        moment.tellInstead(finding);
        findings.push_back(std::move(finding));
    };
    if (hull.lifts) {
        add(start(Code::boatLifts, hull.totalPush_N, hull.mostPush_N),
            withForces(texts::boatLifts, props, hull.totalPush_N, hull.mostPush_N));
    } else if (hull.tips && hull.standsAtRest) {
        const holding::BlockPush* pivot = pivotOf(hull);
        Message text = withForces(pivot ? texts::boatTips : texts::boatTipsAboutOutermost, props, hull.totalPush_N,
                                  hull.mostPush_N);
        if (pivot) text.args.emplace_back(Message(texts::blockAt, {put::length(pivot->x_m)}));
        add(start(Code::boatTips, hull.totalPush_N, hull.mostPush_N), std::move(text));
    }
    if (hull.slides) {
        add(start(Code::boatSlides, hull.level_N, hull.frictionMay_N),
            withForces(texts::boatSlides, props, hull.level_N, hull.frictionMay_N));
    }
    if (hull.lifts || hull.tips || hull.slides || !hull.standsAtRest) return;
    if (hull.margin < holding::marginAsked) {
        const auto& phrases = moment.turnOf ? texts::boatMarginsWhileClosing : texts::boatMargins;
        Message text = withForces(phrases[static_cast<std::size_t>(hull.failsBy)], props, hull.totalPush_N,
                                  hull.margin * hull.totalPush_N);
        text.args.push_back(put::force(hull.mostPush_N));
        add(start(Code::boatMargin, hull.margin, holding::marginAsked), std::move(text));
    }
    if (!hull.freesBlock) return;
    std::vector<Message> free;
    for (const holding::BlockPush& block : hull.blocks) {
        if (block.lifts) free.push_back({texts::blockAt, {put::length(block.x_m)}});
    }
    Finding finding = start(Code::blockComesFree, static_cast<double>(free.size()), 0);
    finding.text = {texts::blockComesFree, {props, put::list(std::move(free))}};
    finding.details.emplace_back(texts::otherBlocksBear);
    findings.push_back(std::move(finding));
}

void addHull(std::vector<Finding>& findings, const HoldingScene& scene) {
    if (!scene.plan.holding.hull) return;
    const holding::HullPlan& hull = *scene.plan.holding.hull;
    if (!hull.standsAtRest) {
        findings.push_back(said(foundWithoutLimit(Code::boatDoesNotStand, hull.source), texts::boatDoesNotStand));
    }
    addHullAt(findings, scene, hull, {});
    if (!scene.plan.holding.props.empty()) return;  // whose caution says the same
    findings.push_back(
        said(foundWithoutLimit(Code::boatOverhead,
                               {"29 CFR 1926.305(c): crib, block or secure a load at once", Mark::published},
                               hull.totalPush_N),
             texts::boatOverhead, {texts::boatOverheadWhy}));
}

}  // namespace fayline::plan
