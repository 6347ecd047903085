// What would keep strips whole, and what becomes of the plan when one breaks: told where spares are asked for.
#include <algorithm>
#include <vector>

#include "core/plan/findings/breaking_texts.hpp"
#include "core/plan/findings/breaking_wording.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/stack_texts.hpp"

namespace fayline::plan {

namespace {

constexpr double breakingConfidence = 0.95;

void addRemedies(std::vector<Finding>& findings, const Plan& plan) {
    const std::vector<BreakingRemedy>& remedies = plan.breaking->remedies;
    if (remedies.empty()) return;
    Finding finding = found(Code::breakingRemedies,
                            {"scatter of strength and stiffness, Wood Handbook Table 5-6; each stack worked out anew",
                             units::Mark::fromMemory});
    finding.value = 100 * plan.stack.chanceAnyBreaks;
    finding.limit = 100 * (1 - breakingConfidence);
    const BreakingRemedy& best = remedies.front();
    finding.text = {best.enough ? texts::remedyEnough : texts::remedyNotEnough, {best.what, put::chance(best.chance)}};
    for (const BreakingRemedy& remedy : remedies) finding.details.push_back(remedyText(remedy));
    if (std::ranges::any_of(remedies,
                            [](const BreakingRemedy& remedy) { return remedy.kind == BreakingKind::softened; })) {
        finding.details.insert(finding.details.end(), {texts::measureWhatTheyKeep, texts::steamScalds});
    }
    finding.details.emplace_back(texts::soakingColdNotKnown);
    findings.push_back(finding);
}

void addLostStrip(std::vector<Finding>& findings, const Plan& plan) {
    if (!plan.breaking->lostStrip || plan.stack.spares == 0) return;
    const LostStrip& lost = *plan.breaking->lostStrip;
    Finding finding = foundWithoutLimit(
        Code::oneStripFewer,
        {"the plan worked out anew for the strips that are left; the advice: common practice, no source",
         units::Mark::commonPractice});
    finding.strip = lost.fewer.place;
    finding.value = 100 * lost.chance;
    finding.details = lost.becomes;
    if (lost.fewer.cannot.empty()) {
        finding.text = {texts::oneStripFewer, {put::thickness(lost.fewer.lost_m), put::share(lost.fewer.stiffShare)}};
    } else {
        finding.text = lost.becomes.front();
        finding.details.erase(finding.details.begin());
    }
    finding.details.insert(finding.details.end(), lost.whatToDo.begin(), lost.whatToDo.end());
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
