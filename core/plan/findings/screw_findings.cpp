#include "core/math/count.hpp"
#include "core/plan/findings/holding_scene.hpp"
#include "core/plan/findings/screw_texts.hpp"

namespace fayline::plan {

namespace {

using units::Mark;
using units::toMillimetres;

void addScrewAssumptions(std::vector<Finding>& findings, const HoldingScene& scene) {
    std::vector<int> sizes;
    bool backbone = false;
    for (const holding::ScrewPlan& screw : scene.plan.holding.screws) {
        if (screw.sizesAssumed) sizes.push_back(screw.index);
        backbone = backbone || screw.backboneAssumed;
    }
    if (sizes.empty() && !backbone) return;
    const holding::ScrewPlan& first = scene.plan.holding.screws.front();
    Finding finding =
        foundWithoutLimit(Code::screwAssumed, {"assumed: common practice, no source", Mark::commonPractice});
    finding.value = toMillimetres(first.diameter_m);
    if (backbone) finding.text = texts::backboneAssumed;
    if (!sizes.empty()) {
        if (backbone) finding.details.push_back(finding.text);
        finding.text = {texts::screwSizesAssumed, {scene.names(sizes)}, math::countOf(sizes)};
    }
    findings.push_back(finding);
}

}  // namespace

void addScrewStrength(std::vector<Finding>& findings, const HoldingScene& scene, const holding::ScrewPlan& screw,
                      const LoadCase& moment) {
    const Message who = moment.subject(scene, screw.index);
    const auto add = [&](Finding finding, const Message& text) -> Finding& {
        finding.at_m = scene.at_m(screw.index);
        finding.text = text;
        findings.push_back(std::move(finding));
        return findings.back();
    };
    const bool byWood = screw.withdrawalUltimate_N <= screw.steelUltimate_N;
    const bool allowedByWood = screw.withdrawalAllowable_N <= screw.steelAllowable_N;
    const auto byPull = [&](bool wood, double limit_N) {
        return foundAgainst(moment.code(wood ? Code::screwDrawsOut : Code::screwBreaks),
                            wood ? screw.withdrawalSource : screw.steelSource, screw.pull_N, limit_N);
    };
    if (screw.pull_N > screw.ultimate_N()) {
        Finding& finding =
            add(byPull(byWood, screw.ultimate_N()),
                withForces(byWood ? texts::screwDrawsOut : texts::screwBreaks, who, screw.pull_N, screw.ultimate_N()));
        finding.severity = Severity::stop;
        moment.tellInstead(finding);
    } else if (screw.pull_N > screw.allowable_N()) {
        Finding& finding = add(byPull(allowedByWood, screw.allowable_N()),
                               withForces(texts::screwOverLoad, who, screw.pull_N, screw.allowable_N()));
        finding.details.push_back(
            {byWood ? texts::screwDrawsOutAt : texts::screwBreaksAt, {put::force(screw.ultimate_N())}});
        moment.tellInstead(finding);
    }
    if (!screw.washerKnown && !moment.turnOf) {
        Finding finding = foundWithoutLimit(Code::washerUnknown, screw.washerSource);
        finding.value = screw.washerPressure_Pa / 1e6;
        add(finding, {texts::washerUnknown, {who, put::pressure(screw.washerPressure_Pa)}});
    } else if (screw.washerKnown && screw.washerPressure_Pa > screw.washerMay_Pa) {
        Finding& finding = add(
            foundAgainst(moment.code(Code::washerCrushes), screw.washerSource, screw.washerPressure_Pa / 1e6,
                         screw.washerMay_Pa / 1e6),
            {texts::washerCrushes, {who, put::pressure(screw.washerPressure_Pa), put::pressure(screw.washerMay_Pa)}});
        moment.tellInstead(finding);
    }
}

void addScrews(std::vector<Finding>& findings, const HoldingScene& scene) {
    for (const holding::ScrewPlan& screw : scene.plan.holding.screws) {
        addScrewStrength(findings, scene, screw, {});
        const auto caution = [&](Code code, double value_m, double limit_m, const Phrase& phrase) {
            if (!(value_m < limit_m)) return;
            findings.push_back(
                said(foundAgainst(code, screw.spacingSource, toMillimetres(value_m), toMillimetres(limit_m)),
                     scene.at_m(screw.index),
                     {phrase, {scene.nameAt(screw.index), put::span(value_m), put::span(limit_m)}}));
        };
        caution(Code::screwNearEdge, screw.fromEdge_m, screw.fromEdgeNeeded_m, texts::screwNearEdge);
        caution(Code::screwNearEnd, screw.fromEnd_m, screw.fromEndNeeded_m, texts::screwNearEnd);
    }
    if (scene.plan.holding.screws.empty()) return;
    addScrewAssumptions(findings, scene);
    const holding::ScrewPlan& first = scene.plan.holding.screws.front();
    findings.push_back(said(foundWithoutLimit(Code::screwHead, {"common practice, no source", Mark::commonPractice},
                                              toMillimetres(first.clearanceHole_m)),
                            {texts::screwHead, {put::thickness(first.clearanceHole_m)}}, {texts::screwHeadWhy}));
}

}  // namespace fayline::plan
