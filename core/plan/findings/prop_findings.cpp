#include <algorithm>

#include "core/math/count.hpp"
#include "core/model/hold_traits.hpp"
#include "core/plan/findings/holding_scene.hpp"
#include "core/plan/findings/prop_texts.hpp"
#include "core/units/units.hpp"

namespace fayline::plan {

namespace {

using holding::Slips;
using units::Mark;
using units::toMillimetres;

units::Source geometry() {
    return {"geometry of the prop (derived)", Mark::derived};
}

const model::Strut& strutOf(const HoldingScene& scene, const holding::PropPlan& prop) {
    return scene.station(prop.index).strut;
}

void addSlip(std::vector<Finding>& findings, const HoldingScene& scene, const holding::PropPlan& prop, Slips end) {
    const bool head = end == Slips::head;
    const bool stopped = strutOf(scene, prop).stoppedAt(head ? model::Stop::head : model::Stop::foot);
    if ((prop.slips != end && prop.slips != Slips::both) || stopped) return;
    const double leans_rad = head ? prop.slant_rad : prop.footSlant_rad;
    const double holds_rad = holding::coneOf(head ? prop.headFriction : prop.footFriction);
    Finding finding = foundAgainst(head ? Code::propSlipsAtHead : Code::propSlipsAtFoot,
                                   head ? prop.frictionSource : prop.footFrictionSource, units::toDegrees(leans_rad),
                                   units::toDegrees(holds_rad));
    finding.at_m = scene.at_m(prop.index);
    finding.text.args = {scene.nameAt(prop.index), put::angleBeside(leans_rad, holds_rad),
                         put::angleBeside(holds_rad, leans_rad)};
    if (prop.footThatHolds) {
        finding.text.phrase = head ? texts::headSlips : texts::footSlips;
        finding.text.args.push_back(put::length(prop.footThatHolds->x_m));
    } else {
        finding.text.phrase = head ? texts::headSlipsAnywhere : texts::footSlipsAnywhere;
    }
    finding.details.emplace_back(head ? texts::headSlipsWhy : texts::footSlipsWhy);
    findings.push_back(finding);
}

// Said once, beside the props.
void addCautions(std::vector<Finding>& findings, const HoldingScene& scene) {
    const auto& props = scene.plan.holding.props;
    if (props.empty()) return;
    const bool overhead = std::ranges::any_of(
        props, [&scene](const holding::PropPlan& prop) { return strutOf(scene, prop).to == model::PropTo::overhead; });
    double total = 0;
    for (const holding::PropPlan& prop : props) total += prop.thrust_N;
    Finding finding =
        foundWithoutLimit(Code::propsCanFly, {"29 CFR 1926.305(c): secure a load at once after it is raised; WAC "
                                              "296-307-22509: never work under a load held by jacks alone",
                                              Mark::published});
    finding.value = total;
    finding.text = {texts::propsCanFly, {put::force(total)}};
    finding.details.emplace_back(texts::propsCanFlyMore);
    findings.push_back(finding);
    if (!overhead) return;
    Finding roof = foundWithoutLimit(Code::propsPushOverhead,
                                     {"engineering judgement (common practice, no source)", Mark::commonPractice});
    roof.value = total;
    roof.text = texts::propsPushOverhead;
    findings.push_back(roof);
}

// What was taken where nothing was given, said once for all props.
void addPropAssumptions(std::vector<Finding>& findings, const HoldingScene& scene) {
    std::vector<int> feet;
    std::vector<int> sections;
    const holding::PropPlan* first = nullptr;
    for (const holding::PropPlan& prop : scene.plan.holding.props) {
        if (prop.footAssumed) feet.push_back(prop.index);
        if (!prop.sectionAssumed || !prop.woodenColumn) continue;
        sections.push_back(prop.index);
        if (!first) first = &prop;
    }
    const units::Source assumed{"assumed: common practice, no source", Mark::commonPractice};
    if (!feet.empty()) {
        findings.push_back(said(foundWithoutLimit(Code::propFootAssumed, assumed), scene.at_m(feet.front()),
                                {texts::footAssumed, {scene.names(feet)}, math::countOf(feet)}));
    }
    if (!first) return;
    Finding finding = foundWithoutLimit(Code::propSectionAssumed, assumed);
    finding.at_m = scene.at_m(first->index);
    finding.value = toMillimetres(std::min(first->section_m[0], first->section_m[1]));
    finding.text = {texts::sectionAssumed,
                    {scene.names(sections), put::thickness(first->section_m[0]), put::thickness(first->section_m[1])},
                    math::countOf(sections)};
    findings.push_back(finding);
}

}  // namespace

void addPropStrength(std::vector<Finding>& findings, const HoldingScene& scene, const holding::PropPlan& prop,
                     const LoadCase& moment) {
    const Message who = moment.subject(scene, prop.index);
    if (prop.thrust_N > prop.allowable_N) {
        Finding finding =
            foundAgainst(moment.code(Code::propBuckles), prop.columnSource, prop.thrust_N, prop.allowable_N);
        finding.at_m = scene.at_m(prop.index);
        finding.text = withForces(texts::propBuckles, who, prop.thrust_N, prop.allowable_N);
        if (prop.bucklesAt_N) {
            finding.details.push_back(
                {texts::propBucklesWhy, {put::length(prop.length_m), put::force(*prop.bucklesAt_N)}});
        }
        moment.tellInstead(finding);
        findings.push_back(finding);
    } else if (prop.tooSlender && !moment.turnOf) {
        Finding finding =
            foundAgainst(Code::propTooSlender, prop.columnSource, toMillimetres(prop.length_m),
                         toMillimetres(holding::mostSlender * std::min(prop.section_m[0], prop.section_m[1])));
        finding.at_m = scene.at_m(prop.index);
        finding.text = {texts::propTooSlender, {who, put::length(prop.length_m)}};
        finding.details.emplace_back(texts::propTooSlenderWhy);
        findings.push_back(finding);
    }
    if (prop.thrust_N > prop.most_N * (1 + 1e-9)) {
        const bool rated = model::traitsOf(scene.station(prop.index).kind).isRated;
        const units::Source given{"the most that you give it", Mark::derived};
        const units::Source rule{"29 CFR 1926.305(a): the rated capacity is never exceeded", Mark::published};
        Finding finding = foundAgainst(moment.code(rated ? Code::jackOverRating : Code::propOverStrength),
                                       rated ? rule : given, prop.thrust_N, prop.most_N);
        finding.at_m = scene.at_m(prop.index);
        finding.text =
            withForces(rated ? texts::jackOverRating : texts::propOverStrength, who, prop.thrust_N, prop.most_N);
        moment.tellInstead(finding);
        findings.push_back(finding);
    }
}

void addProps(std::vector<Finding>& findings, const HoldingScene& scene) {
    for (const holding::PropPlan& prop : scene.plan.holding.props) {
        if (prop.footAboveHead) {
            Finding finding = foundAgainst(Code::propFootAboveHead, geometry(), toMillimetres(prop.foot.y_m),
                                           toMillimetres(prop.head.y_m));
            finding.at_m = scene.at_m(prop.index);
            const bool overhead = strutOf(scene, prop).to == model::PropTo::overhead;
            finding.text = {overhead ? texts::footBelowHead : texts::footAboveHead, {scene.nameAt(prop.index)}};
            findings.push_back(finding);
            continue;
        }
        if (prop.cannotPress) {
            findings.push_back(
                said(foundAgainst(Code::propCannotPress, geometry(), units::toDegrees(prop.slant_rad), 90),
                     scene.at_m(prop.index),
                     {texts::propCannotPress, {scene.nameAt(prop.index), put::angle(prop.slant_rad)}}));
            continue;
        }
        addSlip(findings, scene, prop, Slips::head);
        addSlip(findings, scene, prop, Slips::foot);
        addPropStrength(findings, scene, prop, {});
    }
    addPropAssumptions(findings, scene);
    addCautions(findings, scene);
}

}  // namespace fayline::plan
