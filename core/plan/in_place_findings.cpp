// What stays in a piece that nothing lets go, and what its free ends want for good.
#include <cmath>
#include <string>

#include "core/measure/units.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/wording.hpp"
#include "core/stack/in_place.hpp"

namespace fayline::plan {

namespace {

using measure::writeStress;
using stack::EndStress;

struct EndScene {
    const boat::Piece& piece;
    const measure::Display& display;
    double length_m = 0;  // of the line

    std::string end(const EndStress& end) const { return end.atStart ? "the start" : "the end"; }
    std::string base() const { return piece.form.kind == boat::FormKind::inPlace ? "the boat" : "its form"; }
};

Finding about(Severity severity, Code code, const std::string& unit, const EndStress& end) {
    Finding finding;
    finding.severity = severity;
    finding.code = code;
    finding.unit = unit;
    finding.at_m = end.at_m + (end.atStart ? end.peelFrom_m : -end.peelFrom_m);
    return finding;
}

std::string pullText(const EndScene& scene, const EndStress& end) {
    const std::string where = end.peelFrom_m > 0
                                  ? "The bend left in it pulls the piece off " + scene.base() + " " +
                                        spanText(end.peelFrom_m, scene.display) + " inside " + scene.end(end) +
                                        " (a hollow presses its very end on)"
                                  : "The bend left in it lifts " + scene.end(end) + " of the piece off " + scene.base();
    return where + " with " + writeStress(end.peel_Pa) + " across the grain; the wood parts at " +
           writeStress(end.acrossMean_Pa) + " in the mean and shall bear no more than " +
           writeStress(end.acrossStrength_Pa) + " for good";
}

Finding peel(const EndScene& scene, const EndStress& end, const stack::StressLeft& left) {
    const Severity severity = end.peel_Pa > end.acrossMean_Pa ? Severity::stop
                              : end.wantsFastening            ? Severity::caution
                                                              : Severity::note;
    Finding finding = about(severity, Code::peelAtEnd, "MPa", end);
    finding.value = end.peel_Pa / 1e6;
    finding.limit = end.acrossStrength_Pa / 1e6;
    finding.source = end.acrossSource;
    finding.source.text =
        "beam on an elastic bed (derived), E across the grain a twelfth of that along it; " + finding.source.text;
    finding.text = pullText(scene, end) + ". ";
    if (severity == Severity::stop) {
        finding.text += "Without a fastening it comes off. Thinner strips leave less in it.";
    } else if (severity == Severity::caution) {
        finding.text += "Leave the holds on until it is fastened; thinner strips leave less in it.";
    } else {
        finding.text +=
            "By that it wants no fastening. The outermost fibres of its strips stay strained as they were bent, " +
            placeText(left.surfaceStressAt_m, scene.length_m, scene.display) + " to " +
            writeStress(left.surfaceStress_Pa) + ", " + measure::writeShare(left.surfaceShare) +
            " of what breaks them.";
    }
    return finding;
}

Finding fastening(const EndScene& scene, const EndStress& end) {
    Finding finding = about(Severity::caution, Code::fasteningWanted, "N", end);
    finding.at_m = end.at_m + (end.atStart ? end.fasteningFrom_m : -end.fasteningFrom_m);
    finding.value = end.fastening_N;
    finding.limited = false;
    finding.source = {
        "beam on an elastic bed (derived), E across the grain a twelfth of that along it: common practice, no "
        "source",
        measure::Mark::commonPractice};
    finding.text = "Give " + scene.end(end) + " a permanent fastening through the stack about " +
                   spanText(end.fasteningFrom_m, scene.display) + " from " + scene.end(end) + " that holds " +
                   measure::writeForce(end.fastening_N, scene.display) +
                   " for good: there it takes the whole pull off the glue, a moment of " +
                   measure::writeMoment(std::abs(end.moment_N_m), scene.display) +
                   ". What bears rig, engine or people wants a designer or surveyor; local rules and licensed practice "
                   "come first.";
    return finding;
}

}  // namespace

std::vector<Finding> inPlaceFindings(const boat::Piece& piece, const Shop& shop, const LinePlan& line,
                                     const stack::FormPlan& form) {
    std::vector<Finding> findings;
    if (!form.stressLeft) return findings;
    const EndScene scene{piece, shop.display, line.fair.line.length()};
    const stack::StressLeft& left = *form.stressLeft;
    for (const EndStress* end : {&left.start, &left.end}) {
        if (!end->wantsFastening) continue;
        findings.push_back(peel(scene, *end, left));
        findings.push_back(fastening(scene, *end));
    }
    const EndStress& worse = left.end.peel_Pa > left.start.peel_Pa ? left.end : left.start;
    if (findings.empty() && worse.peel_Pa > 0) findings.push_back(peel(scene, worse, left));
    return findings;
}

}  // namespace fayline::plan
