#include <algorithm>
#include <string>

#include "core/boat/hold_traits.hpp"
#include "core/math/count.hpp"
#include "core/plan/holding_scene.hpp"

namespace fayline::plan {

namespace {

using measure::Mark;
using measure::toMillimetres;

measure::Source countSource() {
    return {"your own list of tools", Mark::derived};
}

// What would do instead, as sentences.
std::string insteadText(const HoldingScene& scene, const holding::AtHand& atHand, int lacking) {
    const auto those = [lacking](int count) {
        return count >= lacking ? std::string(lacking == 1 ? "it" : "all of them") : numberWord(count) + " of them";
    };
    std::vector<std::string> ways;
    if (atHand.strapsWouldServe > 0) {
        ways.push_back("a strap round the outside, drawn to " + scene.force(atHand.strapTension_N) + ", would serve " +
                       those(atHand.strapsWouldServe));
    }
    if (atHand.wedgesWouldServe > 0) {
        ways.push_back("wedges under a bar across the form would serve " + those(atHand.wedgesWouldServe));
    }
    std::string text;
    if (!ways.empty()) text = " Instead, " + listed(ways) + ".";
    if (atHand.splitAfterStrip > 0) {
        text += " Glued in two goes, the first up to strip " + std::to_string(atHand.splitAfterStrip) +
                ", every pull falls to " + measure::writeShare(atHand.splitShare) + ", and " +
                numberWord(atHand.splitServes) + " more would be strong enough.";
    }
    return text;
}

const char* lacksText(holding::Lacks lacks) {
    switch (lacks) {
        case holding::Lacks::strength:
            return "none in your list is strong enough";
        case holding::Lacks::opening:
            return "those that are strong enough do not open far enough";
        case holding::Lacks::throat:
            return "those that are strong enough have too short a throat";
        case holding::Lacks::count:
        case holding::Lacks::nothing:
            break;
    }
    return "all that would do are in use elsewhere";
}

}  // namespace

void addToolsShort(std::vector<Finding>& findings, const HoldingScene& scene, const holding::AtHand& atHand,
                   const LoadCase& moment) {
    for (const holding::Counted& counted : atHand.counts) {
        if (counted.withoutTool.empty()) continue;
        const std::string kind(boat::holdWord(counted.kind));
        const int lacking = math::countOf(counted.withoutTool);
        const int first = counted.withoutTool.front();
        Finding finding = aboutHolding(Severity::stop, moment.code(Code::toolsShort), "", countSource());
        finding.at_m = scene.at_m(first);
        finding.value = counted.asked;
        finding.limit = counted.there;
        if (counted.asked > counted.there) {
            finding.text = capitalised(numberWord(counted.asked)) + " " + kind +
                           (counted.asked == 1 ? " is" : "s are") + " asked for and there " +
                           (counted.there == 1 ? "is " : "are ") + numberWord(counted.there) + ".";
        } else {
            const auto served = std::find_if(atHand.served.begin(), atHand.served.end(),
                                             [first](const holding::Served& s) { return s.station == first; });
            const bool known = served != atHand.served.end();
            const std::string who = scene.names(counted.withoutTool);
            finding.text = (moment.turnOf ? "For the pulls at their turns " + lowered(who) : who) +
                           (lacking == 1 ? " is" : " are") +
                           " left without a tool: " + lacksText(known ? served->lacks : holding::Lacks::count);
            if (known && served->lacks == holding::Lacks::strength) {
                finding.text += ", " + scene.force(served->needed_N) + " being needed";
            }
            finding.text += ".";
        }
        finding.text += insteadText(scene, atHand, lacking) + moment.instead;
        findings.push_back(finding);
    }
}

void addAtHand(std::vector<Finding>& findings, const HoldingScene& scene) {
    addToolsShort(findings, scene, scene.plan.holding.atHand, {});
}

void addStraps(std::vector<Finding>& findings, const HoldingScene& scene) {
    for (const holding::StrapPlan& strap : scene.plan.holding.straps) {
        if (strap.lacksEnd) {
            Finding finding = aboutHolding(Severity::caution, Code::strapWithoutEnd, "mm",
                                           {"geometry of the strap (derived)", Mark::derived});
            finding.at_m = scene.at_m(strap.index);
            finding.limited = false;
            finding.text = scene.name(strap.index) +
                           " is given no place to which it goes round, and presses nothing; give the other end.";
            findings.push_back(finding);
            continue;
        }
        constexpr double reported_m = 0.02;
        if (!(strap.longestIdle_m > reported_m)) continue;
        Finding finding = aboutHolding(Severity::caution, Code::strapIdle, "mm",
                                       {"belt friction, after Euler (derived)", Mark::derived});
        finding.at_m = strap.longestIdleFrom_m;
        finding.value = toMillimetres(strap.idle_m);
        finding.limit = 0;
        finding.text = scene.name(strap.index) + " presses nothing on " + scene.span(strap.idle_m) +
                       " of its way, where the outside is straight or hollow. Set clamps there.";
        findings.push_back(finding);
    }
}

}  // namespace fayline::plan
