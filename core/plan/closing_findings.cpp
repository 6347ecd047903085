#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <string>

#include "core/holding/kinds.hpp"
#include "core/plan/holding_scene.hpp"

namespace fayline::plan {

namespace {

using measure::Mark;
using measure::toMillimetres;

// What is said of all stations closed is not said again of a moment that is no worse than that.
constexpr double worse = 1.001;
constexpr double reported_N = 1;

bool isWorse(double load_N, double whenClosed_N) {
    return load_N > whenClosed_N * worse + reported_N;
}

const char* fromText(boat::From from) {
    switch (from) {
        case boat::From::start:
            return "from the start";
        case boat::From::middle:
            return "from the middle outwards";
        case boat::From::end:
            return "from the end";
    }
    return "from the start";
}

struct Closing {
    const HoldingScene& scene;
    const HoldingStudy& study;

    std::optional<int> turnAt(int step) const { return study.closing[step].index; }
    const holding::MostBorne& pull(int station) const { return study.closingLoads.pulls[station]; }
};

// Of the other orders the one in which the least is borne, if it is less than `now_N` by more than a twentieth.
template <typename LoadOf>
std::string otherOrderText(const Closing& closing, double now_N, const LoadOf& loadOf) {
    const OtherOrder* best = nullptr;
    for (const OtherOrder& order : closing.study.otherOrders) {
        if (!best || loadOf(order.loads) < loadOf(best->loads)) best = &order;
    }
    if (!best || !(loadOf(best->loads) < 0.95 * now_N)) return " No other order was found that asks for less.";
    return " Closed " + std::string(fromText(best->from)) + " it is " + closing.scene.force(loadOf(best->loads)) +
           " at most.";
}

// What would do where a station bears too much at its turn.
std::string insteadAt(const Closing& closing, int station) {
    const holding::MostBorne& now = closing.pull(station);
    const auto index = static_cast<std::size_t>(station);
    return " Draw the stack in beside it with another tool first, and stand clear meanwhile." +
           otherOrderText(closing, now.most_N, [index](const auto& loads) { return loads.pulls[index].most_N; });
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
        const std::string instead =
            otherOrderText(closing, most.most_N, [i](const auto& other) { return other.posts[i].most_N; });
        addPostLoad(findings, closing.scene, post, {closing.turnAt(most.step), instead});
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
        const auto end = std::find_if(stations.begin(), stations.end(),
                                      [&](const auto& station) { return station.index == step.index; });
        if (!(step.gap_m > limit) || end == stations.end() || end->state == holding::HoldState::full) continue;
        late.push_back(step.index);
        if (!widest || step.gap_m > widest->gap_m) widest = &step;
    }
    if (!widest) return;
    const bool one = late.size() == 1;
    Finding finding =
        aboutHolding(Severity::caution, LoadCase{widest->index}.code(Code::atItsStrength), "N", contactSource());
    finding.at_m = scene.at_m(widest->index);
    finding.value = widest->pull_N;
    finding.limit = widest->closed.back().most_N;
    finding.text = (one ? "At its turn " : "At their turns ") + lowered(scene.names(late)) +
                   (one ? " pulls with all it has, " + scene.force(widest->pull_N) + ", and leaves a gap of "
                        : " pull with all they have and leave gaps; the widest, under " +
                              lowered(scene.name(widest->index)) + " with " + scene.force(widest->pull_N) + ", is ") +
                   scene.small(widest->gap_m) + (one ? ". It closes" : ". They close") +
                   " only once later stations pull: go over them again then, before the glue grabs." +
                   " Drawn in beside with another tool first, the stack lies down sooner; stand clear meanwhile.";
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
    Finding finding = aboutHolding(Severity::caution, Code::restsOtherwise, "mm", contactSource());
    finding.at_m = shown->at_m;
    finding.value = toMillimetres(reached->gap_m);
    finding.limit = toMillimetres(shown->gap_m);
    finding.text =
        "Closed in this order the stack rests otherwise than is shown: " + lowered(scene.name(shown->index)) + ", " +
        scene.place(shown->at_m) + ", then leaves " + scene.small(reached->gap_m) + " and not " +
        scene.small(shown->gap_m) +
        ". Both shapes are in balance, and it can snap from one into the other: stand clear, set a station "
        "between, and draw it down with a screw.";
    findings.push_back(finding);
}

void addTools(std::vector<Finding>& findings, const Closing& closing) {
    const holding::AtHand& closed = closing.scene.plan.holding.atHand;
    holding::AtHand atTurns = closing.study.closingLoads.atHand;
    if (atTurns.leftWithout <= closed.leftWithout) return;
    std::erase_if(atTurns.counts, [&](const holding::Counted& counted) {
        return std::any_of(closed.counts.begin(), closed.counts.end(), [&](const holding::Counted& other) {
            return other.kind == counted.kind && other.withoutTool.size() >= counted.withoutTool.size();
        });
    });
    addToolsShort(findings, closing.scene, atTurns, {closing.study.closing.front().index, ""});
}

double leastMargin(const holding::ClosingLoads& loads) {
    return loads.worstHull < 0 ? std::numeric_limits<double>::infinity() : loads.hulls[loads.worstHull]->margin;
}

std::string insteadForBoat(const Closing& closing) {
    const holding::ClosingLoads& loads = closing.study.closingLoads;
    std::string text;
    if (loads.failingHull >= 0 && loads.failingHull != loads.worstHull) {
        text += " It is the worst moment; the first is the turn of " +
                lowered(closing.scene.name(*closing.turnAt(loads.failingHull))) + ".";
    }
    text +=
        " Draw the stack in there with a clamp or a screw first, which push nothing on the boat, or weight and shore "
        "it. "
        "Nobody under it meanwhile.";
    const OtherOrder* best = nullptr;
    for (const OtherOrder& order : closing.study.otherOrders) {
        if (!best || leastMargin(order.loads) > leastMargin(best->loads)) best = &order;
    }
    if (!best || !(leastMargin(best->loads) > 1.05 * leastMargin(loads)))
        return text + " No other order was found that asks for less.";
    const double margin = leastMargin(best->loads);
    return text + " Closed " + fromText(best->from) +
           (std::isfinite(margin) ? ", its margin is " + measure::writeNumber(margin, 2) + " at the worst."
                                  : ", nothing that is pushed lifts, tips or slides it.");
}

void addBoat(std::vector<Finding>& findings, const Closing& closing) {
    const std::optional<holding::HullPlan>& closed = closing.scene.plan.holding.hull;
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
        addHullAt(findings, closing.scene, *loads.hulls[i], {closing.turnAt(static_cast<int>(i)), ""});
        return;
    }
}

void addTail(std::vector<Finding>& findings, const HoldingScene& scene, const HoldingStudy& study) {
    const holding::ClosingStep* widest = nullptr;
    for (const holding::ClosingStep& step : study.closing) {
        if (step.floorInTheWay) {
            Finding finding = aboutHolding(Severity::caution, Code::floorInTheWay, "mm",
                                           {"geometry of the free tail (derived)", Mark::derived});
            finding.at_m = scene.at_m(step.index);
            finding.limited = false;
            finding.value = toMillimetres(step.tip.y_m);
            finding.text =
                "When " + lowered(scene.name(step.index)) +
                " is closed, the free end of the strips would reach below the floor. Lift the boat, or close "
                "from the other end.";
            findings.push_back(finding);
            break;
        }
        if (!widest || step.tailOff_m > widest->tailOff_m) widest = &step;
    }
    for (const holding::ClosingStep& step : study.closing) {
        if (step.outcome != holding::Outcome::snaps) continue;
        Finding finding = aboutHolding(Severity::caution, Code::snapsWhileClosing, "", contactSource());
        finding.at_m = scene.at_m(step.index);
        finding.limited = false;
        finding.text = "While " + lowered(scene.name(step.index)) +
                       " is being closed the stack can snap down. Keep fingers out, and close it slowly.";
        findings.push_back(finding);
        break;
    }
    for (const holding::ClosingStep& step : study.closing) {
        if (!step.snapUndecided) continue;
        Finding finding = aboutHolding(Severity::caution, Code::maySnapWhileClosing, "", contactSource());
        finding.at_m = scene.at_m(step.index);
        finding.limited = false;
        finding.text =
            "Whether the stack snaps while " + lowered(scene.name(step.index)) +
            " is being closed was not found out: take it that it can. Keep fingers out, and close it slowly.";
        findings.push_back(finding);
        break;
    }
    if (!widest || study.closing.size() < 2) return;
    constexpr double reported_m = 0.05;
    if (!(widest->tailOff_m > reported_m)) return;
    Finding finding = aboutHolding(
        Severity::note, Code::tailStandsOff, "mm",
        {"engineering judgement (common practice, no source); the distance is derived", Mark::commonPractice});
    finding.at_m = scene.at_m(widest->index);
    finding.limited = false;
    finding.value = toMillimetres(widest->tailOff_m);
    finding.text = "While it is being closed the free end stands off by as much as " +
                   measure::writeLength(widest->tailOff_m, scene.shop.display) + ", after " +
                   lowered(scene.name(widest->index)) +
                   ". A bent stack can whip free: rope it, and stand clear of its ends.";
    findings.push_back(finding);
}

}  // namespace

void addClosing(std::vector<Finding>& findings, const HoldingScene& scene, const HoldingStudy& study) {
    addTail(findings, scene, study);
    // A study by hand may say nothing of loads.
    if (study.closingLoads.pulls.size() != scene.piece.holding.stations.size() || study.closing.empty()) return;
    const Closing closing{scene, study};
    addStations(findings, closing);
    addNotClosing(findings, closing);
    addRestsOtherwise(findings, closing);
    addPosts(findings, closing);
    addTools(findings, closing);
    addBoat(findings, closing);
}

}  // namespace fayline::plan
