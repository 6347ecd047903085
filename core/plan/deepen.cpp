#include <utility>

#include "core/plan/findings.hpp"
#include "core/plan/plan.hpp"

namespace fayline::plan {

namespace {

std::optional<HoldingStudy> studyHolding(const boat::Piece& piece, const Shop& shop, const Plan& plan,
                                         const std::atomic<bool>& stop) {
    const holding::StackOnForm work{piece, plan.line.fair.line, shop.species};
    HoldingStudy study;
    // The proposal last: it takes longest.
    study.carried = holding::carriedAt(work, 2);
    study.closing = holding::closeInOrder(work, stop);
    if (stop) return std::nullopt;
    study.overRun = holding::overRunNeeded(work, plan.holding.held, stop);
    if (stop) return std::nullopt;
    study.proposal = holding::propose(work, stop);
    if (stop) return std::nullopt;
    study.findings = studyFindings(piece, shop, plan, study);
    return study;
}

}  // namespace

std::optional<Plan> deepen(const boat::Piece& piece, const Shop& shop, const Plan& plan,
                           const std::atomic<bool>& stop) {
    std::optional<HoldingStudy> study = studyHolding(piece, shop, plan, stop);
    if (!study) return std::nullopt;
    Plan deeper = plan;
    deeper.holdingStudy = std::move(study);
    deeper.findings = allFindings(piece, shop, deeper);
    deeper.findings.insert(deeper.findings.end(), deeper.holdingStudy->findings.begin(),
                           deeper.holdingStudy->findings.end());
    sortFindings(deeper.findings);
    deeper.answers = answersOf(piece, shop, deeper);
    return deeper;
}

}  // namespace fayline::plan
