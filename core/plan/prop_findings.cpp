#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

#include "core/boat/hold_traits.hpp"
#include "core/plan/holding_scene.hpp"

namespace fayline::plan {

namespace {

using holding::Slips;
using measure::Mark;
using measure::toMillimetres;

std::string degreesText(double angle_rad) {
    return measure::writeNumber(measure::toDegrees(angle_rad), 2) + " degrees";
}

measure::Source geometry() {
    return {"geometry of the prop (derived)", Mark::derived};
}

const boat::Strut& strutOf(const HoldingScene& scene, const holding::PropPlan& prop) {
    return scene.station(prop.index).strut;
}

void addSlip(std::vector<Finding>& findings, const HoldingScene& scene, const holding::PropPlan& prop, Slips end) {
    const bool head = end == Slips::head;
    const bool stopped = strutOf(scene, prop).stoppedAt(head ? boat::Stop::head : boat::Stop::foot);
    if ((prop.slips != end && prop.slips != Slips::both) || stopped) return;
    const double friction = head ? prop.headFriction : prop.footFriction;
    Finding finding = aboutHolding(Severity::stop, head ? Code::propSlipsAtHead : Code::propSlipsAtFoot, "deg",
                                   head ? prop.frictionSource : prop.footFrictionSource);
    finding.at_m = scene.at_m(prop.index);
    finding.value = measure::toDegrees(head ? prop.slant_rad : prop.footSlant_rad);
    finding.limit = measure::toDegrees(holding::coneOf(friction));
    finding.text =
        scene.name(prop.index) + ", " + scene.place(scene.at_m(prop.index)) + ", slips at its " +
        (head ? "head: it leans " : "foot: it leans ") + degreesText(head ? prop.slant_rad : prop.footSlant_rad) +
        " from square to " + (head ? "the stack" : "what it stands on") + ", and friction holds " +
        degreesText(holding::coneOf(friction)) + " there. Fit a stop at its " + (head ? "head" : "foot") +
        (prop.footThatHolds
             ? ", or set its foot at x " + measure::writeLength(prop.footThatHolds->x_m, scene.shop.display) + "."
             : "; no place of its foot would do without.");
    findings.push_back(finding);
}

// Said once, beside the props.
void addCautions(std::vector<Finding>& findings, const HoldingScene& scene) {
    const auto& props = scene.plan.holding.props;
    if (props.empty()) return;
    const bool overhead = std::any_of(props.begin(), props.end(), [&scene](const holding::PropPlan& prop) {
        return strutOf(scene, prop).to == boat::PropTo::overhead;
    });
    double total = 0;
    for (const holding::PropPlan& prop : props) total += prop.thrust_N;
    Finding finding = aboutHolding(Severity::note, Code::propsCanFly, "N",
                                   {"29 CFR 1926.305(c): secure a load at once after it is raised; WAC 296-307-22509: "
                                    "never work under a load held by jacks alone",
                                    Mark::published});
    finding.limited = false;
    finding.value = total;
    finding.text = "Props and jacks push with " + scene.force(total) +
                   " in all. A prop that slips flies: keep hand and head out of its way, block the boat before anyone "
                   "is under it, and never trust a jack alone. Local rules and licensed practice come first.";
    findings.push_back(finding);
    if (!overhead) return;
    Finding roof = aboutHolding(Severity::caution, Code::propsPushOverhead, "N",
                                {"engineering judgement (common practice, no source)", Mark::commonPractice});
    roof.limited = false;
    roof.value = total;
    roof.text = "Props to what is overhead can lift it: keep their push to what that is known to carry.";
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
    const measure::Source assumed{"assumed: common practice, no source", Mark::commonPractice};
    if (!feet.empty()) {
        Finding finding = aboutHolding(Severity::note, Code::propFootAssumed, "mm", assumed);
        finding.at_m = scene.at_m(feet.front());
        finding.limited = false;
        finding.text = scene.names(feet) + (feet.size() == 1 ? " is" : " are") +
                       " given no foot: reckoned straight below the head. Give where the foot stands.";
        findings.push_back(finding);
    }
    if (!first) return;
    Finding finding = aboutHolding(Severity::note, Code::propSectionAssumed, "mm", assumed);
    finding.at_m = scene.at_m(first->index);
    finding.limited = false;
    finding.value = toMillimetres(std::min(first->section_m[0], first->section_m[1]));
    finding.text = scene.names(sections) + (sections.size() == 1 ? " is" : " are") + " given no section: reckoned as " +
                   measure::writeThickness(first->section_m[0], scene.shop.display) + " by " +
                   measure::writeThickness(first->section_m[1], scene.shop.display) + " of sound softwood.";
    findings.push_back(finding);
}

}  // namespace

void addPropStrength(std::vector<Finding>& findings, const HoldingScene& scene, const holding::PropPlan& prop,
                     const LoadCase& moment) {
    const std::string who = moment.subject(scene, prop.index);
    if (prop.thrust_N > prop.allowable_N) {
        Finding finding = aboutHolding(Severity::stop, moment.code(Code::propBuckles), "N", prop.columnSource);
        finding.at_m = scene.at_m(prop.index);
        finding.value = prop.thrust_N;
        finding.limit = prop.allowable_N;
        const auto [thrust, may] = scene.forces(prop.thrust_N, prop.allowable_N);
        finding.text = who + "is thrust with " + thrust + "; a column of " +
                       measure::writeLength(prop.length_m, scene.shop.display) + " like it may carry " + may +
                       (prop.bucklesAt_N ? ", and buckles at " + scene.force(*prop.bucklesAt_N) : std::string()) +
                       ". Take a thicker or a shorter one." + moment.instead;
        findings.push_back(finding);
    } else if (prop.tooSlender && !moment.turnOf) {
        Finding finding = aboutHolding(Severity::caution, Code::propTooSlender, "mm", prop.columnSource);
        finding.at_m = scene.at_m(prop.index);
        finding.value = toMillimetres(prop.length_m);
        finding.limit = toMillimetres(holding::mostSlender * std::min(prop.section_m[0], prop.section_m[1]));
        finding.text = who + "is longer than fifty times its least side; the rule for columns goes no further.";
        findings.push_back(finding);
    }
    if (prop.thrust_N > prop.most_N * (1 + 1e-9)) {
        const bool rated = boat::traitsOf(scene.station(prop.index).kind).isRated;
        const measure::Source given{"the most that you give it", Mark::derived};
        const measure::Source rule{"29 CFR 1926.305(a): the rated capacity is never exceeded", Mark::published};
        Finding finding =
            aboutHolding(Severity::stop, moment.code(rated ? Code::jackOverRating : Code::propOverStrength), "N",
                         rated ? rule : given);
        finding.at_m = scene.at_m(prop.index);
        finding.value = prop.thrust_N;
        finding.limit = prop.most_N;
        const auto [thrust, most] = scene.forces(prop.thrust_N, prop.most_N);
        finding.text = who + "is asked for " + thrust +
                       (rated ? " and is rated for " : " along itself, and is given as good for ") + most + "." +
                       moment.instead;
        findings.push_back(finding);
    }
}

void addProps(std::vector<Finding>& findings, const HoldingScene& scene) {
    for (const holding::PropPlan& prop : scene.plan.holding.props) {
        if (prop.footAboveHead) {
            Finding finding = aboutHolding(Severity::stop, Code::propFootAboveHead, "mm", geometry());
            finding.at_m = scene.at_m(prop.index);
            finding.value = toMillimetres(prop.foot.y_m);
            finding.limit = toMillimetres(prop.head.y_m);
            const bool overhead = strutOf(scene, prop).to == boat::PropTo::overhead;
            finding.text =
                scene.name(prop.index) + ", " + scene.place(scene.at_m(prop.index)) +
                (overhead ? ", goes to what is overhead and has its foot below its head: give a foot above it."
                          : ", stands on the floor and has its foot above its head: it can push nothing. "
                            "Give a foot below it.");
            findings.push_back(finding);
            continue;
        }
        if (prop.cannotPress) {
            Finding finding = aboutHolding(Severity::stop, Code::propCannotPress, "deg", geometry());
            finding.at_m = scene.at_m(prop.index);
            finding.value = measure::toDegrees(prop.slant_rad);
            finding.limit = 90;
            finding.text = scene.name(prop.index) + ", " + scene.place(scene.at_m(prop.index)) + ", leans " +
                           degreesText(prop.slant_rad) +
                           " from square to the stack and pushes nothing toward the form. Set its foot elsewhere.";
            findings.push_back(finding);
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
