#include <string>

#include "core/plan/holding_scene.hpp"

namespace fayline::plan {

namespace {

using measure::Mark;
using measure::toMillimetres;

void addScrewAssumptions(std::vector<Finding>& findings, const HoldingScene& scene) {
    std::vector<int> sizes;
    bool backbone = false;
    for (const holding::ScrewPlan& screw : scene.plan.holding.screws) {
        if (screw.sizesAssumed) sizes.push_back(screw.index);
        backbone = backbone || screw.backboneAssumed;
    }
    if (sizes.empty() && !backbone) return;
    const holding::ScrewPlan& first = scene.plan.holding.screws.front();
    Finding finding = aboutHolding(Severity::note, Code::screwAssumed, "mm",
                                   {"assumed: common practice, no source", Mark::commonPractice});
    finding.limited = false;
    finding.value = toMillimetres(first.diameter_m);
    if (!sizes.empty()) {
        finding.text = scene.names(sizes) + (sizes.size() == 1 ? " lacks" : " lack") +
                       " a diameter, a depth or a washer: the usual is taken for what is missing.";
    }
    if (backbone) {
        finding.text += std::string(finding.text.empty() ? "" : " ") +
                        "The backbone is reckoned to be of the wood of the strip next to it.";
    }
    findings.push_back(finding);
}

}  // namespace

void addScrewStrength(std::vector<Finding>& findings, const HoldingScene& scene, const holding::ScrewPlan& screw,
                      const LoadCase& moment) {
    const std::string who = moment.subject(scene, screw.index);
    const std::string washer = moment.subject(scene, screw.index, "The washer of ");
    const auto add = [&](Severity severity, Code code, const std::string& unit, double value, double limit,
                         const measure::Source& source, const std::string& text) {
        Finding finding = aboutHolding(severity, code, unit, source);
        finding.at_m = scene.at_m(screw.index);
        finding.value = value;
        finding.limit = limit;
        finding.text = text;
        findings.push_back(finding);
    };
    const bool byWood = screw.withdrawalUltimate_N <= screw.steelUltimate_N;
    const bool allowedByWood = screw.withdrawalAllowable_N <= screw.steelAllowable_N;
    if (screw.pull_N > screw.ultimate_N()) {
        const auto [pull, gives] = scene.forces(screw.pull_N, screw.ultimate_N());
        add(Severity::stop, moment.code(byWood ? Code::screwDrawsOut : Code::screwBreaks), "N", screw.pull_N,
            screw.ultimate_N(), byWood ? screw.withdrawalSource : screw.steelSource,
            who + (byWood ? "draws out" : "breaks") + ": it is asked for " + pull + ", and " +
                (byWood ? "the wood gives way at " : "its steel, if mild, parts at ") + gives +
                (byWood ? " in the mean. Take a thicker or longer one, or two." : ". Take a thicker one, or two.") +
                moment.instead);
    } else if (screw.pull_N > screw.allowable_N()) {
        const auto [pull, allowed] = scene.forces(screw.pull_N, screw.allowable_N());
        add(Severity::caution, moment.code(allowedByWood ? Code::screwDrawsOut : Code::screwBreaks), "N", screw.pull_N,
            screw.allowable_N(), allowedByWood ? screw.withdrawalSource : screw.steelSource,
            who + "is asked for " + pull + ", more than the " + allowed + " that screws are loaded with for good. It " +
                (byWood ? "draws out at " : "breaks at ") + scene.force(screw.ultimate_N()) +
                (byWood ? " in the mean." : ", if of mild steel.") + moment.instead);
    }
    if (!screw.washerKnown && !moment.turnOf) {
        add(Severity::note, Code::washerUnknown, "MPa", screw.washerPressure_Pa / 1e6, 0, screw.washerSource,
            washer + "presses the outer strip with " + scene.pressure(screw.washerPressure_Pa) +
                "; what its wood bears across the grain is not in the table.");
        findings.back().limited = false;
    } else if (screw.washerKnown && screw.washerPressure_Pa > screw.washerMay_Pa) {
        add(Severity::caution, moment.code(Code::washerCrushes), "MPa", screw.washerPressure_Pa / 1e6,
            screw.washerMay_Pa / 1e6, screw.washerSource,
            washer + "presses the outer strip with " + scene.pressure(screw.washerPressure_Pa) +
                ", and the wood bears " + scene.pressure(screw.washerMay_Pa) +
                ". Take a larger washer or a pad under it." + moment.instead);
    }
}

void addScrews(std::vector<Finding>& findings, const HoldingScene& scene) {
    for (const holding::ScrewPlan& screw : scene.plan.holding.screws) {
        addScrewStrength(findings, scene, screw, {});
        const std::string who = scene.name(screw.index) + ", " + scene.place(scene.at_m(screw.index)) + ", ";
        const auto caution = [&](Code code, double value_m, double limit_m, const std::string& text) {
            Finding finding = aboutHolding(Severity::caution, code, "mm", screw.spacingSource);
            finding.at_m = scene.at_m(screw.index);
            finding.value = toMillimetres(value_m);
            finding.limit = toMillimetres(limit_m);
            finding.text = text;
            findings.push_back(finding);
        };
        if (screw.fromEdge_m < screw.fromEdgeNeeded_m) {
            caution(Code::screwNearEdge, screw.fromEdge_m, screw.fromEdgeNeeded_m,
                    who + "has " + scene.span(screw.fromEdge_m) + " to the edge and needs " +
                        scene.span(screw.fromEdgeNeeded_m) + " not to split it.");
        }
        if (screw.fromEnd_m < screw.fromEndNeeded_m) {
            caution(Code::screwNearEnd, screw.fromEnd_m, screw.fromEndNeeded_m,
                    who + "has " + scene.span(screw.fromEnd_m) + " to the end and needs " +
                        scene.span(screw.fromEndNeeded_m) + " not to split it.");
        }
    }
    if (scene.plan.holding.screws.empty()) return;
    addScrewAssumptions(findings, scene);
    const holding::ScrewPlan& first = scene.plan.holding.screws.front();
    Finding finding =
        aboutHolding(Severity::note, Code::screwHead, "mm", {"common practice, no source", Mark::commonPractice});
    finding.limited = false;
    finding.value = toMillimetres(first.clearanceHole_m);
    finding.text = "Temporary screws draw only through a clearance hole in the whole stack, here " +
                   measure::writeThickness(first.clearanceHole_m, scene.shop.display) +
                   ", with a flat head on a washer: a tapered head under the pull splits the strip. Wax them, or the "
                   "glue keeps them.";
    findings.push_back(finding);
}

}  // namespace fayline::plan
