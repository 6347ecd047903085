#include <algorithm>
#include <cmath>
#include <string>

#include "core/math/count.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/holding_scene.hpp"

namespace fayline::plan {

namespace {

using measure::Mark;
using measure::toMillimetres;

void addOverRun(std::vector<Finding>& findings, const HoldingScene& scene, const holding::EndNeed& need, bool start) {
    const double limit = scene.piece.holding.gapLimit_m;
    if (!(need.gap_m > limit)) return;
    Finding finding = aboutHolding(Severity::note, Code::overRunNeeded, "mm", contactSource());
    finding.at_m = start ? 0 : scene.length_m();
    finding.value = toMillimetres(start ? scene.piece.stack.runsPastStart_m : scene.piece.stack.runsPastEnd_m);
    finding.limited = need.overRun_m.has_value();
    if (need.overRun_m) finding.limit = toMillimetres(*need.overRun_m);
    const std::string end = start ? "the start" : "the end";
    constexpr double none_m = 0.001;  // told to 5 mm
    finding.text =
        need.overRun_m && *need.overRun_m < none_m
            ? "For " + end + " to lie down, set a clamp of " + scene.force(need.clamp_N) + " right at the trim line."
        : need.overRun_m ? "For " + end + " to lie down, strips and form run " + scene.span(*need.overRun_m) +
                               " past the trim line, with a clamp of " + scene.force(need.clamp_N) + " out there."
                         : "No over-run makes " + end + " lie down with a clamp of " + scene.force(need.clamp_N) + ".";
    std::vector<std::string> others;
    if (need.strongerClamp_N) others.push_back("a pull of " + scene.force(*need.strongerClamp_N) + " where it is now");
    if (need.caul_m) others.push_back("a caul " + measure::writeThickness(*need.caul_m, scene.shop.display) + " thick");
    for (std::size_t i = 0; i < others.size(); ++i) finding.text += (i == 0 ? " Instead, " : ", or ") + others[i];
    if (!others.empty()) finding.text += others.size() == 1 ? " does it." : " would do it.";
    findings.push_back(finding);
}

measure::Source pressingSource() {
    return {
        "your own list of tools; loose strips built in over the pads (derived), 45 degrees below a pad (common "
        "practice, "
        "no source)",
        Mark::commonPractice};
}

std::string cauledText(const HoldingScene& scene, const holding::Proposal& proposal, const std::string& tools) {
    if (!proposal.caul_m) return {};
    // Upward, so that what is read is not too thin.
    const bool metric = scene.shop.display.lengths == measure::LengthNotation::millimetres;
    const double step_m = metric ? measure::fromMillimetres(1) : measure::sixteenth_m;
    const double thick_m = std::ceil(*proposal.caul_m / step_m - 1e-6) * step_m;
    return " Under one long caul " + measure::writeThickness(thick_m, scene.shop.display) + " thick " + tools +
           " would do that too.";
}

// What it would take to press a glue out everywhere that fills gaps, where that is not done: once, and as a note.
void addPressingWish(std::vector<Finding>& findings, const HoldingScene& scene, const holding::Proposal& proposal) {
    const std::optional<Apart> worst = worstApart(scene);
    if (!worst || scene.piece.form.kind == boat::FormKind::posts) return;
    Finding finding = aboutHolding(Severity::note, Code::notPressed, "mm", worst->need.source);
    finding.at_m = worst->at_m;
    finding.value = toMillimetres(worst->apart_m);
    finding.limit = toMillimetres(worst->need.spacing_m);
    finding.text = "This glue fills gaps: contact is enough. ";
    finding.text += proposal.forEverything > 0
                        ? "Pressed out everywhere it would take " + numberWord(proposal.forEverything) + " stations; " +
                              lowered(scene.names({worst->before, worst->after})) + " might then stand " +
                              scene.reach(worst->need.spacing_m) + " apart, not " + scene.span(worst->apart_m) + "."
                        : "No number of the tools there are would press it out everywhere.";
    findings.push_back(finding);
}

// All the tools there are, spread, where pressing asks for more.
void addTooFewToPress(std::vector<Finding>& findings, const HoldingScene& scene, const holding::Proposal& proposal) {
    const std::vector<boat::Station> stations = holding::stationsOf(proposal);
    const std::string tools = kindsText(stations);
    const std::string have = toolsAmong(stations) == proposal.tools ? ", as many as you have," : " of those you have";
    const std::string apart = proposal.largestSpacing_m > 0
                                  ? ", " + scene.reach(proposal.largestSpacing_m) + " apart at most"
                                  : std::string();
    Finding finding = aboutHolding(Severity::caution, Code::moreClampsNeeded, "", pressingSource());
    finding.value = proposal.forEverything;
    finding.limit = proposal.tools;
    finding.text = capitalised(tools) + have + (stations.size() == 1 ? " holds" : " hold") + " it down everywhere" +
                   apart + "; to press this glue out everywhere " + numberWord(proposal.forEverything) +
                   " would be needed." + cauledText(scene, proposal, tools);
    findings.push_back(finding);
}

// Where no number of stations presses the glue out.
void addNotToBePressed(std::vector<Finding>& findings, const HoldingScene& scene, const holding::Proposal& proposal) {
    const std::vector<boat::Station> stations = holding::stationsOf(proposal);
    const bool posts = scene.piece.form.kind == boat::FormKind::posts;
    Finding finding = aboutHolding(Severity::caution, Code::noStationsWouldDo, "", pressingSource());
    finding.limited = false;
    finding.text = posts ? "Clamps stand on the posts only, and between posts nothing presses: no number of them "
                           "presses this glue out everywhere."
                         : "No number of the tools there are presses this glue out everywhere, not even pad beside "
                           "pad.";
    finding.text += " " + capitalised(kindsText(stations)) + (posts ? " on posts" : "") +
                    (stations.size() == 1 ? " holds" : " hold") + " it down: gap limit and strength are met.";
    findings.push_back(finding);
}

void addProposal(std::vector<Finding>& findings, const HoldingScene& scene, const holding::Proposal& proposal) {
    const int count = math::countOf(proposal.stations);
    if (!proposal.met && proposal.unmet == "pressing" && count > 0) {
        if (proposal.forEverything > count) return addTooFewToPress(findings, scene, proposal);
        return addNotToBePressed(findings, scene, proposal);
    }
    if (!proposal.met) {
        Finding finding = aboutHolding(Severity::caution, Code::noStationsWouldDo, "", contactSource());
        finding.limited = false;
        const std::string fails = proposal.unmet.empty() ? std::string("gap") : proposal.unmet;
        finding.text =
            "With the tools that there are, no set of stations meets every condition; what fails is the " + fails + ".";
        findings.push_back(finding);
        return;
    }
    if (proposal.withinCounts || proposal.tools <= 0) return;
    Finding finding = aboutHolding(Severity::caution, Code::moreClampsNeeded, "",
                                   {"your own list of tools; " + contactSource().text, Mark::derived});
    finding.value = count;
    finding.limit = proposal.tools;
    finding.text = "The fewest stations that meet every condition are " + numberWord(count) +
                   ", and there are tools for " + numberWord(proposal.tools) + ".";
    if (proposal.withoutPressing > 0 && proposal.withoutPressing < count) {
        finding.text += " For gap and strength alone " + numberWord(proposal.withoutPressing) +
                        " would do; what asks for more is pressing the glue out.";
    }
    findings.push_back(finding);
}

void addCarried(std::vector<Finding>& findings, const HoldingScene& scene, const holding::Carried& carried) {
    constexpr double reported_m = 0.05;
    if (!(carried.sag_m > reported_m)) return;
    Finding finding = aboutHolding(Severity::note, Code::sagsWhenCarried, "mm",
                                   {"beam under its own weight (derived); density from specific gravity, Wood Handbook "
                                    "eq. 4-12",
                                    Mark::transcribed});
    finding.limited = false;
    finding.value = toMillimetres(carried.sag_m);
    finding.text = "Carried at " + numberWord(carried.points) + " points the loose stack sags by " +
                   measure::writeLength(carried.sag_m, scene.shop.display) + " under its " +
                   scene.force(carried.weight_N) + "; carry it on a plank, or on edge.";
    findings.push_back(finding);
}

}  // namespace

std::vector<Finding> studyFindings(const boat::Piece& piece, const Shop& shop, const Plan& plan,
                                   const HoldingStudy& study) {
    const HoldingScene scene{piece, shop, plan};
    std::vector<Finding> findings;
    const auto known = [&study](Study part) { return !study.awaited.contains(part); };
    if (plan.holding.held.outcome == holding::Outcome::notPressed) {
        if (known(Study::carried)) addCarried(findings, scene, study.carried);
        return findings;
    }
    if (known(Study::overRun) && !plan.holding.held.stations.empty()) {
        addOverRun(findings, scene, study.overRun.start, true);
        addOverRun(findings, scene, study.overRun.end, false);
    }
    if (known(Study::closing)) addClosing(findings, scene, study);
    if (known(Study::proposal)) {
        addProposal(findings, scene, study.proposal);
        if (study.proposal.pressingIsWish) addPressingWish(findings, scene, study.proposal);
    }
    if (known(Study::carried)) addCarried(findings, scene, study.carried);
    return findings;
}

}  // namespace fayline::plan
