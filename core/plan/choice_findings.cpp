#include <cmath>

#include "core/measure/units.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/wording.hpp"
#include "core/wood/species.hpp"

namespace fayline::plan {

namespace {

using measure::toMillimetres;
using measure::writeThickness;

const measure::Source& fromStock() {
    static const measure::Source source{"your own list of boards, with its kerf and planing", measure::Mark::derived};
    return source;
}

// Upward to a sixteenth or a millimetre, so that a board of that size is large enough.
std::string boardText(double size_m, const measure::Display& display) {
    const bool metric = display.lengths == measure::LengthNotation::millimetres;
    const double step_m = metric ? measure::fromMillimetres(1) : measure::sixteenth_m;
    return writeThickness(std::ceil(size_m / step_m - 1e-6) * step_m, display);
}

std::string woodText(const std::string& id, const Shop& shop) {
    const wood::Species* found = wood::findSpecies(shop.species, id);
    return found ? woodName(*found) : id;
}

void addNoStrip(std::vector<Finding>& findings, const Shop& shop, const Choices& choices) {
    if (choices.noStripFrom.empty()) return;
    Finding finding;
    finding.severity = Severity::caution;
    finding.code = Code::stockTooSmall;
    finding.source = fromStock();
    finding.unit = "mm";
    finding.value = toMillimetres(choices.boardWidth_m);
    finding.limited = false;
    const std::string width = boardText(choices.boardWidth_m, shop.display);
    finding.text = "None of the boards of " + woodText(choices.noStripFrom, shop) +
                   " gives a strip of any thickness: as bent the strips are " + width +
                   " wide. A board at least that thick would do, with strips ripped off its edge; or one at least " +
                   "that wide and " + boardText(choices.boardThick_m, shop.display) +
                   " thick, with strips sawn off its face.";
    findings.push_back(finding);
}

void addPresentNotSawn(std::vector<Finding>& findings, const Choices& choices) {
    if (!choices.noStripFrom.empty()) return;
    for (const Choice& choice : choices.all) {
        if (!choice.asItIs || choice.whyNot != notFromTheseBoards) continue;
        Finding finding;
        finding.severity = Severity::caution;
        // finding.about = About::stock;
        finding.code = Code::stripsNotFromStock;
        finding.source = fromStock();
        finding.unit = "mm";
        finding.value = toMillimetres(choice.thickness_m);
        finding.limited = false;
        finding.text =
            "No board listed is large enough for strips as thick as these. The choices show what the "
            "boards do give.";
        findings.push_back(finding);
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
