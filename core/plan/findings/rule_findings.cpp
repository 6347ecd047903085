// What rules for classed vessels usually ask of laminated frames and stems: notes, where the stack does otherwise.
#include <algorithm>

#include "core/laminate/limits.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/stack_texts.hpp"
#include "core/plan/findings/wording.hpp"

namespace fayline::plan {

namespace {

void addThickOfMoulding(std::vector<Finding>& findings, const laminate::StackPlan& plan) {
    const auto thickest = std::ranges::max_element(plan.strips, {}, &laminate::Strip::thickness_m);
    if (thickest == plan.strips.end() || plan.depth_m <= 0) return;
    const double share = thickest->thickness_m / plan.depth_m;
    if (share <= laminate::mostOfMoulding * (1 + 1e-9)) return;
    Finding finding = found(Code::ruleStripOfMoulding, laminate::classificationSource());
    finding.strip = thickest->place;
    finding.value = 100 * share;
    finding.limit = 100 * laminate::mostOfMoulding;
    finding.text = {texts::ruleStripOfMoulding,
                    {stripName(thickest->place, math::countOf(plan.strips)), put::share(share)}};
    finding.details = {{texts::ruleMoulding, {put::thickness(thickest->thickness_m), put::thickness(plan.depth_m)}},
                       texts::onlyIfClassed};
    findings.push_back(finding);
}

void addSteepScarf(std::vector<Finding>& findings, const model::Stack& stack, double length_m) {
    for (const bool atStart : {true, false}) {
        const std::optional<model::Scarf>& scarf = atStart ? stack.scarfedStart : stack.scarfedEnd;
        if (!scarf || scarf->slope >= laminate::steepestScarf) continue;
        Finding finding = found(Code::ruleScarfSlope, laminate::classificationSource());
        finding.at_m = atStart ? 0 : length_m;
        finding.value = scarf->slope;
        finding.limit = laminate::steepestScarf;
        finding.text = {texts::ruleScarfSlope,
                        {put::place(*finding.at_m, length_m), put::number(scarf->slope, 2),
                         put::number(laminate::steepestScarf, 2)}};
        finding.details.emplace_back(texts::onlyIfClassed);
        findings.push_back(finding);
    }
}

}  // namespace

std::vector<Finding> ruleFindings(const model::Piece& piece, const LinePlan& line, const laminate::StackPlan& stack) {
    std::vector<Finding> findings;
    addThickOfMoulding(findings, stack);
    addSteepScarf(findings, piece.stack, line.fair.line.length());
    return findings;
}

}  // namespace fayline::plan
