// What would keep strips whole, and what becomes of the plan when one breaks: told where spares are asked for.
#include <string>
#include <vector>

#include "core/plan/breaking_wording.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/wording.hpp"

namespace fayline::plan {

namespace {

constexpr double breakingConfidence = 0.95;

Finding note(Code code, const std::string& unit, const measure::Source& source) {
    Finding finding;
    finding.severity = Severity::note;
    finding.code = code;
    finding.unit = unit;
    finding.source = source;
    return finding;
}

std::string briefly(const BreakingRemedy& remedy) {
    return remedy.what + " (" + chanceText(remedy.chance) + (remedy.enough ? ")" : ", not enough by itself)");
}

void addRemedies(std::vector<Finding>& findings, const Plan& plan) {
    const std::vector<BreakingRemedy>& remedies = plan.breaking->remedies;
    if (remedies.empty()) return;
    Finding finding = note(Code::breakingRemedies, "pct",
                           {"scatter of strength and stiffness, Wood Handbook Table 5-6; each stack worked out anew",
                            measure::Mark::fromMemory});
    finding.value = 100 * plan.stack.chanceAnyBreaks;
    finding.limit = 100 * (1 - breakingConfidence);
    std::vector<std::string> each;
    for (const BreakingRemedy& remedy : remedies) each.push_back(briefly(remedy));
    finding.text = "What would keep strips whole, each with the chance that any breaks, worked out for this line: " +
                   listed(each) + ". Soaking cold is not known to let wood bend further.";
    findings.push_back(finding);
}

void addLostStrip(std::vector<Finding>& findings, const Plan& plan) {
    if (!plan.breaking->lostStrip || plan.stack.spares == 0) return;
    const LostStrip& lost = *plan.breaking->lostStrip;
    Finding finding = note(Code::oneStripFewer, "pct",
                           {"the plan worked out anew for the strips that are left; the advice: common practice, no "
                            "source",
                            measure::Mark::commonPractice});
    finding.strip = lost.fewer.place;
    finding.value = 100 * lost.chance;
    finding.limited = false;
    finding.text = lost.sentence + " " + lost.whatToDo;
    findings.push_back(finding);
}

}  // namespace

std::vector<Finding> breakingFindings(const Plan& plan) {
    std::vector<Finding> findings;
    if (!plan.breaking) return findings;
    addRemedies(findings, plan);
    addLostStrip(findings, plan);
    return findings;
}

}  // namespace fayline::plan
