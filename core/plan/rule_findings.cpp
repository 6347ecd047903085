// What rules for classed vessels usually ask of laminated frames and stems: notes, where the stack does otherwise.
#include <algorithm>
#include <string>

#include "core/math/count.hpp"
#include "core/measure/units.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/wording.hpp"
#include "core/stack/limits.hpp"

namespace fayline::plan {

namespace {

using measure::writeNumber;

const std::string whereItApplies = " Such rules bind only a vessel that is classed; the society's own text governs.";

Finding note(Code code, const std::string& unit) {
    Finding finding;
    finding.severity = Severity::note;
    finding.code = code;
    finding.unit = unit;
    finding.source = stack::classificationSource();
    return finding;
}

void addThickOfMoulding(std::vector<Finding>& findings, const stack::StackPlan& plan, const measure::Display& display) {
    const auto thickest =
        std::max_element(plan.strips.begin(), plan.strips.end(),
                         [](const stack::Strip& a, const stack::Strip& b) { return a.thickness_m < b.thickness_m; });
    if (thickest == plan.strips.end() || plan.depth_m <= 0) return;
    const double share = thickest->thickness_m / plan.depth_m;
    if (share <= stack::mostOfMoulding * (1 + 1e-9)) return;
    Finding finding = note(Code::ruleStripOfMoulding, "pct");
    finding.strip = thickest->place;
    finding.value = 100 * share;
    finding.limit = 100 * stack::mostOfMoulding;
    finding.text = "Rules for classed vessels usually ask for strips no thicker than a third of the moulding; " +
                   stripText(thickest->place, math::countOf(plan.strips)) + " with " +
                   measure::writeThickness(thickest->thickness_m, display) + " is " + measure::writeShare(share) +
                   " of " + measure::writeThickness(plan.depth_m, display) + "." + whereItApplies;
    findings.push_back(finding);
}

void addSteepScarf(std::vector<Finding>& findings, const boat::Stack& stack, double length_m) {
    for (const bool atStart : {true, false}) {
        const std::optional<boat::Scarf>& scarf = atStart ? stack.scarfedStart : stack.scarfedEnd;
        if (!scarf || scarf->slope >= stack::steepestScarf) continue;
        Finding finding = note(Code::ruleScarfSlope, "ratio");
        finding.at_m = atStart ? 0 : length_m;
        finding.value = scarf->slope;
        finding.limit = stack::steepestScarf;
        finding.text = "Rules for classed vessels usually ask for scarfs of 1 in 8 to 1 in 12; the one at the " +
                       std::string(atStart ? "start" : "end") + " is 1 in " + writeNumber(scarf->slope, 2) +
                       ", steeper than 1 in " + writeNumber(stack::steepestScarf, 2) + "." + whereItApplies;
        findings.push_back(finding);
    }
}

}  // namespace

std::vector<Finding> ruleFindings(const boat::Piece& piece, const Shop& shop, const LinePlan& line,
                                  const stack::StackPlan& stack) {
    std::vector<Finding> findings;
    addThickOfMoulding(findings, stack, shop.display);
    addSteepScarf(findings, piece.stack, line.fair.line.length());
    return findings;
}

}  // namespace fayline::plan
