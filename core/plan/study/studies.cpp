#include "core/plan/study/studies.hpp"

#include <algorithm>
#include <utility>

#include "core/plan/findings/cures.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/roots.hpp"
#include "core/plan/parts.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/breaking.hpp"
#include "core/plan/study/choices.hpp"
#include "core/plan/study/holding_study.hpp"
#include "core/plan/study/stock_study.hpp"
#include "core/units/input_error.hpp"

namespace fayline::plan {

namespace {

constexpr std::array ofHolding{Study::closing, Study::overRun, Study::proposal, Study::carried};

// Of a stack that is not pressed neither closing, over-run nor stations are worked out: they stay empty.
bool pressed(const Plan& plan) {
    return plan.holding.held.outcome != holding::Outcome::notPressed;
}

// The study of holding, begun where there is none: each of its parts is awaited until it is put in.
HoldingStudy& holdingOf(Plan& plan, Study part) {
    if (!plan.holdingStudy) plan.holdingStudy.emplace().awaited.insert(ofHolding.begin(), ofHolding.end());
    plan.holdingStudy->awaited.erase(part);
    return *plan.holdingStudy;
}

// Whether something bears more than it may at one moment of the closing.
bool bearsTooMuch(const std::vector<Finding>& findings) {
    return std::ranges::any_of(findings, [](const Finding& finding) {
        return isWhileClosing(finding.code) && finding.code != Code::snapsWhileClosing;
    });
}

std::vector<OtherOrder> otherOrders(const model::Piece& piece, const Shop& shop, const Plan& plan,
                                    const std::atomic<bool>& stop) {
    std::vector<OtherOrder> orders;
    for (const model::From from : {model::From::start, model::From::middle, model::From::end}) {
        if (from == piece.holding.from || stop) continue;
        model::Piece begun = piece;
        begun.holding.from = from;
        const holding::StackOnForm work = workOf(begun, shop, plan.line.fair.line, plan.form);
        const std::vector<holding::ClosingStep> steps = holding::closeInOrder(work, stop);
        // An order that does not settle throughout is none to advise.
        const bool settled = std::ranges::all_of(
            steps, [](const holding::ClosingStep& step) { return step.outcome == holding::Outcome::settled; });
        if (settled && !stop) orders.push_back({from, holding::closingLoads(work, steps)});
    }
    return orders;
}

Part closingPart(const model::Piece& piece, const Shop& shop, const Plan& plan, const std::atomic<bool>& stop) {
    if (!pressed(plan)) return [](Plan& into) { holdingOf(into, Study::closing); };
    const holding::StackOnForm work = workOf(piece, shop, plan.line.fair.line, plan.form);
    HoldingStudy study{.closing = holding::closeInOrder(work, stop),
                       .awaited = {Study::overRun, Study::proposal, Study::carried}};
    if (stop) return {};
    study.closingLoads = holding::closingLoads(work, study.closing);
    if (bearsTooMuch(studyFindings(piece, shop, plan, study))) {
        study.otherOrders = otherOrders(piece, shop, plan, stop);
        if (stop) return {};
    }
    return [study = std::move(study)](Plan& into) {
        HoldingStudy& all = holdingOf(into, Study::closing);
        all.closing = study.closing;
        all.closingLoads = study.closingLoads;
        all.otherOrders = study.otherOrders;
    };
}

Part overRunPart(const model::Piece& piece, const Shop& shop, const Plan& plan, const std::atomic<bool>& stop) {
    if (!pressed(plan)) return [](Plan& into) { holdingOf(into, Study::overRun); };
    const holding::StackOnForm work = workOf(piece, shop, plan.line.fair.line, plan.form);
    const holding::OverRun overRun = holding::overRunNeeded(work, plan.holding.held, stop);
    if (stop) return {};
    return [overRun](Plan& into) { holdingOf(into, Study::overRun).overRun = overRun; };
}

Part proposalPart(const model::Piece& piece, const Shop& shop, const Plan& plan, const std::atomic<bool>& stop) {
    if (!pressed(plan)) return [](Plan& into) { holdingOf(into, Study::proposal); };
    const holding::StackOnForm work = workOf(piece, shop, plan.line.fair.line, plan.form);
    holding::Proposal proposal = holding::propose(work, stop);
    if (stop) return {};
    return [proposal = std::move(proposal)](Plan& into) { holdingOf(into, Study::proposal).proposal = proposal; };
}

Part carriedPart(const model::Piece& piece, const Shop& shop, const Plan& plan, const std::atomic<bool>& stop) {
    if (stop) return {};
    const holding::Carried carried = holding::carriedAt(workOf(piece, shop, plan.line.fair.line, plan.form), 2);
    return [carried](Plan& into) { holdingOf(into, Study::carried).carried = carried; };
}

Part dayPart(const model::Piece& piece, const Shop& shop, const Plan& plan, const std::atomic<bool>& stop) {
    math::Shared<DayStudy> study = studyDay(piece, shop, plan.line.fair.line, plan.day, stop);
    if (!study) return {};
    return [study = std::move(study)](Plan& into) { into.dayStudy = study; };
}

Part choicesPart(const model::Piece& piece, const Shop& shop, const Plan& plan, const std::atomic<bool>& stop) {
    math::Shared<Choices> choices = choicesFor(piece, shop, plan, stop);
    if (!choices) return {};
    return [choices = std::move(choices)](Plan& into) { into.choices = choices; };
}

Part breakingPart(const model::Piece& piece, const Shop& shop, const Plan& plan, const std::atomic<bool>& stop) {
    if (!plan.choices) return {};  // they were stopped or failed, and that is told of them
    math::Shared<BreakingStudy> study = studyBreaking(piece, shop, plan, *plan.choices, stop);
    if (!study) return {};
    return [study = std::move(study)](Plan& into) { into.breaking = study; };
}

Part stockPart(const model::Piece& piece, const Shop& shop, const Plan& plan, const std::atomic<bool>& stop) {
    math::Shared<StockStudy> study = stockFor(piece, shop, plan, stop);
    if (!study) return {};
    return [study = std::move(study)](Plan& into) { into.stock = study; };
}

Part misreadPart(const model::Piece&, const Shop& shop, const Plan& plan, const std::atomic<bool>& stop) {
    if (stop) return {};
    LinePlan line = plan.line;
    if (!line.misreadSought && !seekMisread(line, shop.display, stop)) return {};
    return [line = std::move(line)](Plan& into) {
        into.line.misread = line.misread;
        into.line.misreadSought = line.misreadSought;
    };
}

// What the record of earlier pieces says, and what this one's own says of springing it home.
Part learnedPart(const model::Piece& piece, const Shop& shop, const Plan& plan, const std::atomic<bool>& stop) {
    Plan with = plan;
    with.learned = learnedOf(shop, stop);
    if (stop) return {};
    with.sprungHome = sprungHomeOf(piece, shop, with);
    return [learned = std::move(with.learned), home = std::move(with.sprungHome)](Plan& into) {
        into.learned = learned;
        into.sprungHome = home;
        into.learnedSought = true;
    };
}

// What would be found with the misread offsets put right: by every other study.
Part correctedPart(const model::Piece& piece, const Shop& shop, const Plan& plan, const std::atomic<bool>& stop) {
    const std::optional<model::Piece> corrected = withOffsetsCorrected(piece, plan);
    if (!corrected) return [](Plan& into) { into.correctedSought = true; };
    std::optional<Plan> made;
    try {
        made = makePlan(*corrected, shop, &plan, stop);
    } catch (const units::InputError&) {  // no line either: nothing to tell apart
        return [](Plan& into) { into.correctedSought = true; };
    }
    for (const StudyWork& work : studies()) {
        if (!made || stop) return {};
        if (work.study == Study::corrected || work.study == Study::learned) continue;
        const Part part = work.work(*corrected, shop, *made, stop);
        if (!part) return {};
        part(*made);
    }
    wordStudies(*corrected, shop, *made);
    return [findings = made->findings](Plan& into) {
        into.correctedSought = true;
        into.ifCorrected = findings;
    };
}

}  // namespace

// Those that take longest first, so that none begins when all others have ended.
const StudyTable& studies() {
    static constexpr StudyTable all{{{Study::proposal, {}, proposalPart},
                                     {Study::choices, {}, choicesPart},
                                     {Study::stock, {}, stockPart},
                                     {Study::overRun, {}, overRunPart},
                                     {Study::misread, {}, misreadPart},
                                     {Study::closing, {}, closingPart},
                                     {Study::day, {}, dayPart},
                                     {Study::breaking, Study::choices, breakingPart},
                                     {Study::learned, {}, learnedPart},
                                     {Study::carried, {}, carriedPart},
                                     {Study::corrected, Study::misread, correctedPart}}};
    return all;
}

bool has(const Plan& plan, Study study) {
    switch (study) {
        case Study::closing:
        case Study::overRun:
        case Study::proposal:
        case Study::carried:
            return plan.holdingStudy && !plan.holdingStudy->awaited.contains(study);
        case Study::day:
            return plan.dayStudy.has_value();
        case Study::choices:
            return plan.choices.has_value();
        case Study::breaking:
            return plan.breaking.has_value();
        case Study::stock:
            return plan.stock.has_value();
        case Study::misread:
            return plan.line.misreadSought;
        case Study::learned:
            return plan.learnedSought;
        case Study::corrected:
            return plan.correctedSought;
    }
    return false;
}

bool isStudied(const Plan& plan) {
    return std::ranges::all_of(allStudies, [&](Study study) { return has(plan, study); });
}

void wordStudies(const model::Piece& piece, const Shop& shop, Plan& plan) {
    std::vector<Finding> findings = allFindings(piece, shop, plan);
    const auto add = [&findings](const std::vector<Finding>& some) {
        findings.insert(findings.end(), some.begin(), some.end());
    };
    if (plan.holdingStudy) {
        HoldingStudy& study = *plan.holdingStudy;
        study.findings = studyFindings(piece, shop, plan, study);
        add(study.findings);
    }
    if (plan.dayStudy) add(dayStudyFindings(plan, *std::as_const(plan.dayStudy)));
    if (plan.choices) add(choiceFindings(shop, *std::as_const(plan.choices)));
    add(breakingFindings(plan));
    add(stockFindings(piece, plan));
    hangFindings(findings, plan.ifCorrected);
    plan.findings = std::move(findings);
    plan.answers = answersOf(piece, shop, plan);
}

}  // namespace fayline::plan
