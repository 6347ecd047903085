// What rules for classed vessels usually ask of laminated frames and stems: notes, where the stack does otherwise.
#include <algorithm>

#include "core/math/count.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/stack_texts.hpp"
#include "core/plan/wording.hpp"
#include "core/stack/limits.hpp"

namespace fayline::plan {

namespace {

void addThickOfMoulding(std::vector<Finding>& findings, const stack::StackPlan& plan) {
    const auto thickest =
        std::max_element(plan.strips.begin(), plan.strips.end(),
                         [](const stack::Strip& a, const stack::Strip& b) { return a.thickness_m < b.thickness_m; });
    if (thickest == plan.strips.end() || plan.depth_m <= 0) return;
    const double share = thickest->thickness_m / plan.depth_m;
    if (share <= stack::mostOfMoulding * (1 + 1e-9)) return;
    Finding finding = found(Code::ruleStripOfMoulding, stack::classificationSource());
    finding.strip = thickest->place;
    finding.value = 100 * share;
    finding.limit = 100 * stack::mostOfMoulding;
    finding.text = {texts::ruleStripOfMoulding,
                    {stripName(thickest->place, math::countOf(plan.strips)), put::share(share)}};
    finding.details = {{texts::ruleMoulding, {put::thickness(thickest->thickness_m), put::thickness(plan.depth_m)}},
                       texts::onlyIfClassed};
    findings.push_back(finding);
}

void addSteepScarf(std::vector<Finding>& findings, const boat::Stack& stack, double length_m) {
    for (const bool atStart : {true, false}) {
        const std::optional<boat::Scarf>& scarf = atStart ? stack.scarfedStart : stack.scarfedEnd;
        if (!scarf || scarf->slope >= stack::steepestScarf) continue;
        Finding finding = found(Code::ruleScarfSlope, stack::classificationSource());
        finding.at_m = atStart ? 0 : length_m;
        finding.value = scarf->slope;
        finding.limit = stack::steepestScarf;
        finding.text = {
            texts::ruleScarfSlope,
            {put::place(*finding.at_m, length_m), put::number(scarf->slope, 2), put::number(stack::steepestScarf, 2)}};
        finding.details.emplace_back(texts::onlyIfClassed);
        findings.push_back(finding);
    }
}

}  // namespace

std::vector<Finding> ruleFindings(const boat::Piece& piece, const LinePlan& line, const stack::StackPlan& stack) {
    std::vector<Finding> findings;
    addThickOfMoulding(findings, stack);
    addSteepScarf(findings, piece.stack, line.fair.line.length());
    return findings;
}

}  // namespace fayline::plan
