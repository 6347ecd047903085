#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

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

void addSlip(std::vector<Finding>& findings, const HoldingScene& scene, const holding::PropPlan& prop, Slips end) {
    const bool head = end == Slips::head;
    const boat::Stop stop = scene.station(prop.index).stop;
    const bool stopped = stop == boat::Stop::both || stop == (head ? boat::Stop::head : boat::Stop::foot);
    if ((prop.slips != end && prop.slips != Slips::both) || stopped) return;
    const double friction = head ? prop.headFriction : prop.footFriction;
    Finding finding = aboutHolding(Severity::stop, head ? "prop_slips_at_head" : "prop_slips_at_foot", "deg",
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

void addStrength(std::vector<Finding>& findings, const HoldingScene& scene, const holding::PropPlan& prop) {
    const boat::Station& station = scene.station(prop.index);
    const std::string who = scene.name(prop.index) + ", " + scene.place(scene.at_m(prop.index)) + ", ";
    if (prop.thrust_N > prop.bucklesAt_N) {
        Finding finding = aboutHolding(Severity::stop, "prop_buckles", "N", prop.columnSource);
        finding.at_m = scene.at_m(prop.index);
        finding.value = prop.thrust_N;
        finding.limit = prop.bucklesAt_N;
        finding.text = who + "is thrust with " + scene.force(prop.thrust_N) + "; a column of " +
                       measure::writeLength(prop.length_m, scene.shop.display) + " like it may carry " +
                       scene.force(prop.bucklesAt_N) + ". Take a thicker or a shorter one.";
        findings.push_back(finding);
    } else if (prop.tooSlender) {
        Finding finding = aboutHolding(Severity::caution, "prop_too_slender", "mm", prop.columnSource);
        finding.at_m = scene.at_m(prop.index);
        finding.value = toMillimetres(prop.length_m);
        finding.limit = toMillimetres(holding::mostSlender * std::min(prop.section_m[0], prop.section_m[1]));
        finding.text = who + "is longer than fifty times its least side; the rule for columns goes no further.";
        findings.push_back(finding);
    }
    if (station.kind == boat::HoldKind::prop && prop.thrust_N > prop.most_N * (1 + 1e-9)) {
        Finding finding =
            aboutHolding(Severity::stop, "prop_over_strength", "N", {"the most that you give it", Mark::derived});
        finding.at_m = scene.at_m(prop.index);
        finding.value = prop.thrust_N;
        finding.limit = prop.most_N;
        finding.text = who + "is asked for " + scene.force(prop.thrust_N) + " along itself, and is given as good for " +
                       scene.force(prop.most_N) + ".";
        findings.push_back(finding);
    }
    if (station.kind == boat::HoldKind::jack && prop.thrust_N > prop.most_N * (1 + 1e-9)) {
        Finding finding = aboutHolding(Severity::stop, "jack_over_rating", "N",
                                       {"29 CFR 1926.305(a): the rated capacity is never exceeded", Mark::published});
        finding.at_m = scene.at_m(prop.index);
        finding.value = prop.thrust_N;
        finding.limit = prop.most_N;
        finding.text =
            who + "is asked for " + scene.force(prop.thrust_N) + " and is rated for " + scene.force(prop.most_N) + ".";
        findings.push_back(finding);
    }
}

// Said once, beside the props.
void addCautions(std::vector<Finding>& findings, const HoldingScene& scene) {
    const auto& props = scene.plan.holding.props;
    if (props.empty()) return;
    const bool overhead = std::any_of(props.begin(), props.end(), [&scene](const holding::PropPlan& prop) {
        return scene.station(prop.index).to == boat::PropTo::overhead;
    });
    double total = 0;
    for (const holding::PropPlan& prop : props) total += prop.thrust_N;
    Finding finding = aboutHolding(Severity::note, "props_can_fly", "N",
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
    Finding roof = aboutHolding(Severity::caution, "props_push_overhead", "N",
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
        Finding finding = aboutHolding(Severity::note, "prop_foot_assumed", "mm", assumed);
        finding.at_m = scene.at_m(feet.front());
        finding.limited = false;
        finding.text = scene.names(feet) + (feet.size() == 1 ? " is" : " are") +
                       " given no foot: reckoned straight below the head. Give where the foot stands.";
        findings.push_back(finding);
    }
    if (!first) return;
    Finding finding = aboutHolding(Severity::note, "prop_section_assumed", "mm", assumed);
    finding.at_m = scene.at_m(first->index);
    finding.limited = false;
    finding.value = toMillimetres(std::min(first->section_m[0], first->section_m[1]));
    finding.text = scene.names(sections) + (sections.size() == 1 ? " is" : " are") + " given no section: reckoned as " +
                   measure::writeThickness(first->section_m[0], scene.shop.display) + " by " +
                   measure::writeThickness(first->section_m[1], scene.shop.display) + " of sound softwood.";
    findings.push_back(finding);
}

void addScrewAssumptions(std::vector<Finding>& findings, const HoldingScene& scene) {
    std::vector<int> sizes;
    bool backbone = false;
    for (const holding::ScrewPlan& screw : scene.plan.holding.screws) {
        if (screw.sizesAssumed) sizes.push_back(screw.index);
        backbone = backbone || screw.backboneAssumed;
    }
    if (sizes.empty() && !backbone) return;
    const holding::ScrewPlan& first = scene.plan.holding.screws.front();
    Finding finding = aboutHolding(Severity::note, "screw_assumed", "mm",
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

void addProps(std::vector<Finding>& findings, const HoldingScene& scene) {
    for (const holding::PropPlan& prop : scene.plan.holding.props) {
        if (prop.footAboveHead) {
            Finding finding = aboutHolding(Severity::stop, "prop_foot_above_head", "mm", geometry());
            finding.at_m = scene.at_m(prop.index);
            finding.value = toMillimetres(prop.foot.y_m);
            finding.limit = toMillimetres(prop.head.y_m);
            const bool overhead = scene.station(prop.index).to == boat::PropTo::overhead;
            finding.text =
                scene.name(prop.index) + ", " + scene.place(scene.at_m(prop.index)) +
                (overhead ? ", goes to what is overhead and has its foot below its head: give a foot above it."
                          : ", stands on the floor and has its foot above its head: it can push nothing. "
                            "Give a foot below it.");
            findings.push_back(finding);
            continue;
        }
        if (prop.cannotPress) {
            Finding finding = aboutHolding(Severity::stop, "prop_cannot_press", "deg", geometry());
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
        addStrength(findings, scene, prop);
    }
    addPropAssumptions(findings, scene);
    addCautions(findings, scene);
}

void addScrews(std::vector<Finding>& findings, const HoldingScene& scene) {
    for (const holding::ScrewPlan& screw : scene.plan.holding.screws) {
        const std::string who = scene.name(screw.index) + ", " + scene.place(scene.at_m(screw.index)) + ", ";
        const auto add = [&](Severity severity, const std::string& code, const std::string& unit, double value,
                             double limit, const measure::Source& source, const std::string& text) {
            Finding finding = aboutHolding(severity, code, unit, source);
            finding.at_m = scene.at_m(screw.index);
            finding.value = value;
            finding.limit = limit;
            finding.text = text;
            findings.push_back(finding);
        };
        if (screw.pull_N > screw.withdrawalUltimate_N) {
            add(Severity::stop, "screw_draws_out", "N", screw.pull_N, screw.withdrawalUltimate_N,
                screw.withdrawalSource,
                who + "draws out: it is asked for " + scene.force(screw.pull_N) + ", and the wood gives way at " +
                    scene.force(screw.withdrawalUltimate_N) + " in the mean. Take a thicker or longer one, or two.");
        } else if (screw.pull_N > screw.withdrawalAllowable_N) {
            add(Severity::caution, "screw_draws_out", "N", screw.pull_N, screw.withdrawalAllowable_N,
                screw.withdrawalSource,
                who + "is asked for " + scene.force(screw.pull_N) + ", more than the " +
                    scene.force(screw.withdrawalAllowable_N) +
                    " that screws are loaded with for good. It draws out at " +
                    scene.force(screw.withdrawalUltimate_N) + " in the mean.");
        }
        if (!screw.washerKnown) {
            add(Severity::note, "washer_unknown", "MPa", screw.washerPressure_Pa / 1e6, 0, screw.washerSource,
                "The washer of " + lowered(who) + "presses the outer strip with " +
                    measure::writeStress(screw.washerPressure_Pa) +
                    "; what its wood bears across the grain is not in the table.");
            findings.back().limited = false;
        } else if (screw.washerPressure_Pa > screw.washerMay_Pa) {
            add(Severity::caution, "washer_crushes", "MPa", screw.washerPressure_Pa / 1e6, screw.washerMay_Pa / 1e6,
                screw.washerSource,
                "The washer of " + lowered(who) + "presses the outer strip with " +
                    measure::writeStress(screw.washerPressure_Pa) + ", and the wood bears " +
                    measure::writeStress(screw.washerMay_Pa) + ". Take a larger washer or a pad under it.");
        }
        if (screw.fromEdge_m < screw.fromEdgeNeeded_m) {
            add(Severity::caution, "screw_near_edge", "mm", toMillimetres(screw.fromEdge_m),
                toMillimetres(screw.fromEdgeNeeded_m), screw.spacingSource,
                who + "has " + scene.span(screw.fromEdge_m) + " to the edge and needs " +
                    scene.span(screw.fromEdgeNeeded_m) + " not to split it.");
        }
        if (screw.fromEnd_m < screw.fromEndNeeded_m) {
            add(Severity::caution, "screw_near_end", "mm", toMillimetres(screw.fromEnd_m),
                toMillimetres(screw.fromEndNeeded_m), screw.spacingSource,
                who + "has " + scene.span(screw.fromEnd_m) + " to the end and needs " +
                    scene.span(screw.fromEndNeeded_m) + " not to split it.");
        }
    }
    if (scene.plan.holding.screws.empty()) return;
    addScrewAssumptions(findings, scene);
    const holding::ScrewPlan& first = scene.plan.holding.screws.front();
    Finding finding =
        aboutHolding(Severity::note, "screw_head", "mm", {"common practice, no source", Mark::commonPractice});
    finding.limited = false;
    finding.value = toMillimetres(first.clearanceHole_m);
    finding.text = "Temporary screws draw only through a clearance hole in the whole stack, here " +
                   measure::writeThickness(first.clearanceHole_m, scene.shop.display) +
                   ", with a flat head on a washer: a tapered head under the pull splits the strip. Wax them, or the "
                   "glue keeps them.";
    findings.push_back(finding);
}

namespace {

// What happens at the margin, as it is said of the boat.
const char* failureWord(holding::HullPlan::Failure failure) {
    switch (failure) {
        case holding::HullPlan::Failure::lifts:
            return "lifts off its blocks";
        case holding::HullPlan::Failure::tips:
            return "tips";
        case holding::HullPlan::Failure::slides:
            return "slides";
        case holding::HullPlan::Failure::never:
            break;
    }
    return "lifts, tips or slides";
}

}  // namespace

void addHull(std::vector<Finding>& findings, const HoldingScene& scene) {
    if (!scene.plan.holding.hull) return;
    const holding::HullPlan& hull = *scene.plan.holding.hull;
    const auto add = [&](Severity severity, const std::string& code, double value, double limit,
                         const std::string& unit, const std::string& text) {
        Finding finding = aboutHolding(severity, code, unit, hull.source);
        finding.value = value;
        finding.limited = std::isfinite(limit);
        finding.limit = finding.limited ? limit : 0;
        finding.text = text;
        findings.push_back(finding);
    };
    if (!hull.standsAtRest) {
        add(Severity::stop, "boat_does_not_stand", 0, std::numeric_limits<double>::infinity(), "N",
            "The boat does not stand on its blocks by its own weight: its centre of weight lies beyond them. Check "
            "their places, and shore it before anything else.");
    }
    std::string most;
    if (std::isfinite(hull.mostPush_N)) {
        most =
            " With a margin of two it bears " + scene.force(hull.mostPush_N) + " of push in all, in these directions.";
    }
    const std::string worst =
        hull.worstProp >= 0 ? " " + scene.name(hull.worstProp) + " takes the most off the margin." : std::string();
    const std::string pushed = " They push with " + scene.force(hull.totalPush_N) + " in all.";
    if (hull.lifts) {
        add(Severity::stop, "boat_lifts", hull.totalPush_N, hull.mostPush_N, "N",
            "The props lift the boat off its blocks." + pushed + most + worst);
    } else if (hull.tips && hull.standsAtRest) {
        add(Severity::stop, "boat_tips", hull.totalPush_N, hull.mostPush_N, "N",
            "The props tip the boat about its outermost block." + pushed + most + worst);
    }
    if (hull.slides) {
        add(Severity::stop, "boat_slides", hull.level_N, hull.frictionMay_N, "N",
            "The props push the boat along the floor with " + scene.force(hull.level_N) + ", and its blocks hold " +
                scene.force(hull.frictionMay_N) + " by friction." + worst);
    }
    const bool fails = hull.lifts || hull.tips || hull.slides || !hull.standsAtRest;
    if (!fails && hull.margin < holding::marginAsked) {
        add(Severity::caution, "boat_margin", hull.margin, holding::marginAsked, "ratio",
            "All pushes may grow " + measure::writeNumber(hull.margin, 2) + "-fold before the boat " +
                failureWord(hull.failsBy) + "; twofold is wanted." + pushed + most + worst);
    }
    if (!fails && hull.freesBlock) {
        std::vector<std::string> free;
        for (const holding::BlockPush& block : hull.blocks) {
            if (block.lifts) free.push_back("x " + measure::writeLength(block.x_m, scene.shop.display));
        }
        add(Severity::caution, "block_comes_free", static_cast<double>(free.size()), 0, "",
            "The boat comes free of its block at " + listed(free) +
                " while the props push; the others bear it. Make it fast there.");
    }
    Finding finding = aboutHolding(Severity::note, "boat_overhead", "N",
                                   {"29 CFR 1926.305(c): crib, block or secure a load at once", Mark::published});
    finding.limited = false;
    finding.value = hull.totalPush_N;
    finding.text =
        "The boat is reckoned as rigid on blocks that only push. Shore and block it for itself before anyone is "
        "under it; local rules and licensed practice come first.";
    findings.push_back(finding);
}

}  // namespace fayline::plan
