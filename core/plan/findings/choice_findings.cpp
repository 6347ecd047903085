#include "core/plan/findings/choice_texts.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/choices.hpp"
#include "core/units/units.hpp"

namespace fayline::plan {

namespace {

using units::toMillimetres;

const units::Source& fromStock() {
    static const units::Source source{"your own list of boards, with its kerf and planing", units::Mark::derived};
    return source;
}

void addNoStrip(std::vector<Finding>& findings, const Shop& shop, const Choices& choices) {
    if (choices.noStripFrom.empty()) return;
    findings.push_back(said(foundWithoutLimit(Code::stockTooSmall, fromStock(), toMillimetres(choices.boardWidth_m)),
                            {texts::stockTooSmall,
                             {woodName(shop.species, choices.noStripFrom), put::atLeast(choices.boardWidth_m),
                              put::atLeast(choices.boardThick_m)}}));
}

void addPresentNotSawn(std::vector<Finding>& findings, const Choices& choices) {
    if (!choices.noStripFrom.empty()) return;
    for (const Choice& choice : choices.all) {
        if (!choice.asItIs || !choice.whyNot.is(texts::noBoardLargeEnough)) continue;
        findings.push_back(
            said(foundWithoutLimit(Code::stripsNotFromStock, fromStock(), toMillimetres(choice.thickness_m)),
                 {texts::stripsNotFromStock, {put::thickness(choice.thickness_m)}}, {texts::choicesShowThem}));
    }
}

}  // namespace

std::vector<Finding> choiceFindings(const Shop& shop, const Choices& choices) {
    std::vector<Finding> findings;
    addNoStrip(findings, shop, choices);
    addPresentNotSawn(findings, choices);
    return findings;
}

}  // namespace fayline::plan
