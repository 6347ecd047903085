#include <algorithm>
#include <cmath>
#include <string>

#include "core/plan/holding_scene.hpp"

namespace fayline::plan {

namespace {

using Failure = holding::HullPlan::Failure;
using measure::Mark;

// What the boat does at the margin.
const char* failureText(Failure failure) {
    switch (failure) {
        case Failure::lifts:
            return "lifts off its blocks";
        case Failure::tips:
            return "tips";
        case Failure::slides:
            return "slides";
        case Failure::never:
            break;
    }
    return "lifts, tips or slides";
}

std::string blockText(const HoldingScene& scene, const holding::BlockPush& block) {
    return "block at x " + measure::writeLength(block.x_m, scene.shop.display);
}

// The block about which it tips: all there is to carry is on that one.
std::string pivotText(const HoldingScene& scene, const holding::HullPlan& hull) {
    for (const holding::BlockPush& block : hull.blocks) {
        if (block.push_N > 0) return "its " + blockText(scene, block);
    }
    return "its outermost block";
}

// "push with 1800 N in all. The boat tips at 2500 N, 1.4 times that; with the margin of 2 that is wanted they may push
// with 1250 N. Prop 3 takes the most off the margin."
std::string bearsText(const HoldingScene& scene, const holding::HullPlan& hull) {
    std::string text = "push with " + scene.force(hull.totalPush_N) + " in all.";
    if (std::isfinite(hull.margin) && hull.margin > 0) {
        text += " The boat " + std::string(failureText(hull.failsBy)) + " at " +
                scene.force(hull.margin * hull.totalPush_N) + ", " + measure::writeNumber(hull.margin, 2) +
                " times that; with the margin of " + measure::writeNumber(holding::marginAsked, 2) +
                " that is wanted they may push with " + scene.force(hull.mostPush_N) + ".";
    }
    if (hull.worstProp >= 0) text += " " + scene.name(hull.worstProp) + " takes the most off the margin.";
    return text;
}

}  // namespace

void addHullAt(std::vector<Finding>& findings, const HoldingScene& scene, const holding::HullPlan& hull,
               const LoadCase& moment) {
    const auto add = [&](Severity severity, Code code, double value, double limit, const std::string& unit,
                         const std::string& text) {
        Finding finding = aboutHolding(severity, moment.code(code), unit, hull.source);
        if (moment.turnOf) finding.at_m = scene.at_m(*moment.turnOf);
        finding.value = value;
        finding.limited = std::isfinite(limit);
        finding.limit = finding.limited ? limit : 0;
        finding.text = text;
        findings.push_back(finding);
    };
    const std::string props =
        moment.turnOf ? "At the turn of " + lowered(scene.name(*moment.turnOf)) + " the props " : "The props ";
    if (hull.lifts) {
        add(Severity::stop, Code::boatLifts, hull.totalPush_N, hull.mostPush_N, "N",
            props + "lift the boat off its blocks. They " + bearsText(scene, hull) + moment.instead);
    } else if (hull.tips && hull.standsAtRest) {
        add(Severity::stop, Code::boatTips, hull.totalPush_N, hull.mostPush_N, "N",
            props + "tip the boat about " + pivotText(scene, hull) + ". They " + bearsText(scene, hull) +
                moment.instead);
    }
    if (hull.slides) {
        add(Severity::stop, Code::boatSlides, hull.level_N, hull.frictionMay_N, "N",
            props + "push the boat along the floor with " + scene.force(hull.level_N) + ", and its blocks hold " +
                scene.force(hull.frictionMay_N) + " by friction. They " + bearsText(scene, hull) + moment.instead);
    }
    if (hull.lifts || hull.tips || hull.slides || !hull.standsAtRest) return;
    if (hull.margin < holding::marginAsked) {
        add(Severity::caution, Code::boatMargin, hull.margin, holding::marginAsked, "ratio",
            props + bearsText(scene, hull) + moment.instead);
    }
    if (!hull.freesBlock) return;
    std::vector<std::string> free;
    for (const holding::BlockPush& block : hull.blocks) {
        if (block.lifts) free.push_back(blockText(scene, block));
    }
    add(Severity::caution, Code::blockComesFree, static_cast<double>(free.size()), 0, "",
        props + "lift the boat clear of its " + listed(free) + "; the others bear it. Make it fast there.");
}

void addHull(std::vector<Finding>& findings, const HoldingScene& scene) {
    if (!scene.plan.holding.hull) return;
    const holding::HullPlan& hull = *scene.plan.holding.hull;
    if (!hull.standsAtRest) {
        Finding finding = aboutHolding(Severity::stop, Code::boatDoesNotStand, "N", hull.source);
        finding.limited = false;
        finding.text =
            "The boat does not stand on its blocks by its own weight: its centre of weight lies beyond them. Check "
            "their places, and shore it before anything else.";
        findings.push_back(finding);
    }
    addHullAt(findings, scene, hull, {});
    Finding finding = aboutHolding(Severity::note, Code::boatOverhead, "N",
                                   {"29 CFR 1926.305(c): crib, block or secure a load at once", Mark::published});
    finding.limited = false;
    finding.value = hull.totalPush_N;
    finding.text =
        "The boat is reckoned as rigid on blocks that only push. Shore and block it for itself before anyone is "
        "under it; local rules and licensed practice come first.";
    findings.push_back(finding);
}

}  // namespace fayline::plan
