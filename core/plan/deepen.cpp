#include <algorithm>
#include <utility>

#include "core/plan/findings.hpp"
#include "core/plan/parts.hpp"
#include "core/plan/plan.hpp"

namespace fayline::plan {

namespace {

// Whether something bears more than it may at one moment of the closing.
bool bearsTooMuch(const std::vector<Finding>& findings) {
    return std::any_of(findings.begin(), findings.end(), [](const Finding& finding) {
        return finding.code.ends_with("_while_closing") && finding.code != "snaps_while_closing";
    });
}

std::vector<OtherOrder> otherOrders(const boat::Piece& piece, const Shop& shop, const Plan& plan,
                                    const std::atomic<bool>& stop) {
    std::vector<OtherOrder> orders;
    for (const boat::From from : {boat::From::start, boat::From::middle, boat::From::end}) {
        if (from == piece.holding.from || stop) continue;
        boat::Piece begun = piece;
        begun.holding.from = from;
        const holding::StackOnForm work = workOf(begun, shop, plan.line.fair.line, plan.form);
        const std::vector<holding::ClosingStep> steps = holding::closeInOrder(work, stop);
        // An order that does not settle throughout is none to advise.
        const bool settled = std::all_of(steps.begin(), steps.end(), [](const holding::ClosingStep& step) {
            return step.outcome == holding::Outcome::settled;
        });
        if (settled && !stop) orders.push_back({from, holding::closingLoads(work, steps)});
    }
    return orders;
}

std::optional<HoldingStudy> studyHolding(const boat::Piece& piece, const Shop& shop, const Plan& plan,
                                         const std::atomic<bool>& stop) {
    const holding::StackOnForm work = workOf(piece, shop, plan.line.fair.line, plan.form);
    HoldingStudy study;
    // The proposal last: it takes longest.
    study.carried = holding::carriedAt(work, 2);
    if (plan.holding.held.outcome == holding::Outcome::notPressed) {
        study.findings = studyFindings(piece, shop, plan, study);
        return study;
    }
    study.closing = holding::closeInOrder(work, stop);
    if (stop) return std::nullopt;
    study.closingLoads = holding::closingLoads(work, study.closing);
    study.overRun = holding::overRunNeeded(work, plan.holding.held, stop);
    if (stop) return std::nullopt;
    study.proposal = holding::propose(work, stop);
    if (stop) return std::nullopt;
    study.findings = studyFindings(piece, shop, plan, study);
    if (!bearsTooMuch(study.findings)) return study;
    study.otherOrders = otherOrders(piece, shop, plan, stop);
    if (stop) return std::nullopt;
    study.findings = studyFindings(piece, shop, plan, study);
    return study;
}

}  // namespace

std::optional<Plan> deepen(const boat::Piece& piece, const Shop& shop, const Plan& plan,
                           const std::atomic<bool>& stop) {
    std::optional<HoldingStudy> study = studyHolding(piece, shop, plan, stop);
    if (!study) return std::nullopt;
    std::optional<DayStudy> dayStudy = studyDay(piece, shop, plan.line.fair.line, plan.day, stop);
    if (!dayStudy) return std::nullopt;
    std::optional<Choices> choices = choicesFor(piece, shop, plan, stop);
    if (!choices) return std::nullopt;
    Plan deeper = plan;
    deeper.learned = learnedOf(shop, stop);
    if (stop) return std::nullopt;
    deeper.sprungHome = sprungHomeOf(piece, shop, deeper);
    deeper.breaking = studyBreaking(piece, shop, plan, *choices);
    if (!deeper.line.misreadSought) {
        if (!seekMisread(deeper.line, shop.display, stop)) return std::nullopt;
    }
    deeper.choices = std::move(choices);
    deeper.dayStudy = std::move(dayStudy);
    deeper.holdingStudy = std::move(study);
    deeper.findings = allFindings(piece, shop, deeper);
    deeper.findings.insert(deeper.findings.end(), deeper.holdingStudy->findings.begin(),
                           deeper.holdingStudy->findings.end());
    const std::vector<Finding> ofDay = dayStudyFindings(deeper, *deeper.dayStudy);
    deeper.findings.insert(deeper.findings.end(), ofDay.begin(), ofDay.end());
    const std::vector<Finding> ofChoices = choiceFindings(shop, *deeper.choices);
    deeper.findings.insert(deeper.findings.end(), ofChoices.begin(), ofChoices.end());
    const std::vector<Finding> ofBreaking = breakingFindings(deeper);
    deeper.findings.insert(deeper.findings.end(), ofBreaking.begin(), ofBreaking.end());
    sortFindings(deeper.findings);
    deeper.answers = answersOf(piece, shop, deeper);
    return deeper;
}

}  // namespace fayline::plan
