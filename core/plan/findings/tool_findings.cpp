#include <algorithm>

#include "core/math/count.hpp"
#include "core/model/hold_traits.hpp"
#include "core/plan/findings/holding_scene.hpp"
#include "core/plan/findings/tool_texts.hpp"

namespace fayline::plan {

namespace {

using units::Mark;
using units::toMillimetres;

// What would do instead of those `lacking`.
void tellOtherWays(Finding& finding, const holding::AtHand& atHand, int lacking) {
    const bool told = finding.text.is(texts::toolsShortButStrap);
    if (atHand.strapsWouldServe > 0 && !told) {
        const bool all = atHand.strapsWouldServe >= lacking;
        finding.details.push_back({all ? texts::strapServesAll : texts::strapServesSome,
                                   {put::force(atHand.strapTension_N), put::countWord(atHand.strapsWouldServe)}});
    }
    if (atHand.wedgesWouldServe > 0) {
        const bool all = atHand.wedgesWouldServe >= lacking;
        finding.details.push_back(
            {all ? texts::wedgesServeAll : texts::wedgesServeSome, {put::countWord(atHand.wedgesWouldServe)}});
    }
    if (atHand.splitAfterStrip > 0) {
        finding.details.push_back(
            {texts::splitServes,
             {put::countWord(atHand.splitServes), put::count(atHand.splitAfterStrip), put::share(atHand.splitShare)},
             atHand.splitServes});
    }
}

// More of a kind are asked for than there are.
Message tooFewText(const holding::Counted& counted, const holding::AtHand& atHand) {
    const Message needed = holdsOf(counted.kind, counted.asked);
    if (counted.there == 0) return {texts::toolsShortOfAll, {needed}};
    if (atHand.strapsWouldServe >= math::countOf(counted.withoutTool))
        return {texts::toolsShortButStrap, {needed, put::countWord(counted.there), put::force(atHand.strapTension_N)}};
    return {texts::toolsShort, {needed, put::countWord(counted.there), put::countWord(counted.asked - counted.there)}};
}

// There are enough of a kind, and some stations get none.
Message noneWouldDoText(const HoldingScene& scene, const holding::Counted& counted, const holding::AtHand& atHand,
                        const LoadCase& moment) {
    const int lacking = math::countOf(counted.withoutTool);
    Message who = scene.names(counted.withoutTool);
    if (moment.turnOf) who = {texts::atTheirTurns, {who}, lacking};
    const auto served = std::ranges::find(atHand.served, counted.withoutTool.front(), &holding::Served::station);
    switch (served == atHand.served.end() ? holding::Lacks::count : served->lacks) {
        case holding::Lacks::strength:
            return {texts::noneStrongEnough, {who, put::force(served->needed_N)}, lacking};
        case holding::Lacks::opening:
            return {texts::noneOpensFar, {who}, lacking};
        case holding::Lacks::throat:
            return {texts::noneReachesFar, {who}, lacking};
        case holding::Lacks::count:
        case holding::Lacks::nothing:
            break;
    }
    return {texts::noneIsFree, {who}, lacking};
}

}  // namespace

void addToolsShort(std::vector<Finding>& findings, const HoldingScene& scene, const holding::AtHand& atHand,
                   const LoadCase& moment) {
    for (const holding::Counted& counted : atHand.counts) {
        if (counted.withoutTool.empty()) continue;
        Finding finding = foundAgainst(moment.code(Code::toolsShort), {"your own list of tools", Mark::derived},
                                       counted.asked, counted.there);
        finding.at_m = scene.at_m(counted.withoutTool.front());
        finding.text = counted.asked > counted.there ? tooFewText(counted, atHand)
                                                     : noneWouldDoText(scene, counted, atHand, moment);
        tellOtherWays(finding, atHand, math::countOf(counted.withoutTool));
        moment.tellInstead(finding);
        findings.push_back(finding);
    }
}

void addAtHand(std::vector<Finding>& findings, const HoldingScene& scene) {
    addToolsShort(findings, scene, scene.plan.holding.atHand, {});
}

void addStraps(std::vector<Finding>& findings, const HoldingScene& scene) {
    for (const holding::StrapPlan& strap : scene.plan.holding.straps) {
        if (strap.lacksEnd) {
            findings.push_back(
                said(foundWithoutLimit(Code::strapWithoutEnd, {"geometry of the strap (derived)", Mark::derived}),
                     scene.at_m(strap.index), {texts::strapWithoutEnd, {scene.name(strap.index)}}));
            continue;
        }
        constexpr double reported_m = 0.02;
        if (!(strap.longestIdle_m > reported_m)) continue;
        Finding finding = foundAgainst(Code::strapIdle, {"belt friction, after Euler (derived)", Mark::derived},
                                       toMillimetres(strap.idle_m), 0);
        finding.at_m = strap.longestIdleFrom_m;
        finding.text = {texts::strapIdle,
                        {scene.name(strap.index), put::span(strap.idle_m), scene.place(strap.longestIdleFrom_m)}};
        findings.push_back(finding);
    }
}

}  // namespace fayline::plan
