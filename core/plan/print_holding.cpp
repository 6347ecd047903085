#include <cmath>
#include <utility>

#include "core/holding/kinds.hpp"
#include "core/measure/units.hpp"
#include "core/plan/print_json.hpp"

namespace fayline::plan {

namespace {

// Pulls and pushes to a tenth of a newton, gaps to a tenth of a micrometre, moments to a hundredth of a newton metre:
// what lies below is the solver's own error.
Json newtons(double force_N) {
    return number(force_N, 1);
}

Json gapMm(double gap_m) {
    return number(measure::toMillimetres(gap_m), 4);
}

Json optionalNewtons(const std::optional<double>& force_N) {
    return force_N ? newtons(*force_N) : Json(nullptr);
}

Json degrees(double angle_rad) {
    return number(measure::toDegrees(angle_rad), 2);
}

const char* outcomeWord(holding::Outcome outcome) {
    switch (outcome) {
        case holding::Outcome::settled:
            return "settled";
        case holding::Outcome::snaps:
            return "snaps";
        case holding::Outcome::notSettled:
            return "not settled";
        case holding::Outcome::notPressed:
            return "not pressed";
    }
    return "settled";
}

// Why no contact is worked out; null where it is.
Json notPressedWord(holding::NotPressed why) {
    switch (why) {
        case holding::NotPressed::none:
            return nullptr;
        case holding::NotPressed::breaks:
            return "breaks";
        case holding::NotPressed::noRoom:
            return "no room";
        case holding::NotPressed::crosses:
            return "crosses itself";
        case holding::NotPressed::wanders:
            return "wanders";
        case holding::NotPressed::unsupported:
            return "unsupported";
    }
    return nullptr;
}

// What there is only in a state of balance.
Json ifKnown(bool known, Json value) {
    return known ? std::move(value) : Json(nullptr);
}

const char* slipsWord(holding::Slips slips) {
    switch (slips) {
        case holding::Slips::no:
            return "no";
        case holding::Slips::head:
            return "head";
        case holding::Slips::foot:
            return "foot";
        case holding::Slips::both:
            return "both";
    }
    return "no";
}

const char* stateWord(holding::HoldState state) {
    switch (state) {
        case holding::HoldState::slack:
            return "slack";
        case holding::HoldState::closes:
            return "closes";
        case holding::HoldState::full:
            return "full";
        case holding::HoldState::given:
            return "given";
    }
    return "closes";
}

Json printProp(const holding::PropPlan& prop) {
    return {{"thrust_N", newtons(prop.thrust_N)},
            {"angle_deg", degrees(prop.slant_rad)},
            {"slips", slipsWord(prop.slips)},
            {"buckles_at_N", optionalNewtons(prop.bucklesAt_N)},
            {"allowable_N", newtons(prop.allowable_N)},
            {"length_mm", mm(prop.length_m)},
            {"foot_x_mm", mm(prop.foot.x_m)},
            {"foot_y_mm", mm(prop.foot.y_m)},
            {"foot_angle_deg", degrees(prop.footSlant_rad)}};
}

Json printScrew(const holding::ScrewPlan& screw) {
    return {{"withdrawal_N", newtons(screw.withdrawalUltimate_N)},
            {"withdrawal_allowable_N", newtons(screw.withdrawalAllowable_N)},
            {"steel_N", newtons(screw.steelUltimate_N)},
            {"steel_allowable_N", newtons(screw.steelAllowable_N)},
            {"washer_MPa", number(screw.washerPressure_Pa / 1e6, 3)},
            {"washer_may_MPa", screw.washerKnown ? number(screw.washerMay_Pa / 1e6, 3) : Json(nullptr)},
            {"clearance_hole_mm", mm(screw.clearanceHole_m)},
            {"pilot_hole_mm", mm(screw.pilotHole_m)},
            {"length_mm", mm(screw.length_m)}};
}

Json printStrap(const holding::StrapPlan& strap) {
    return {{"total_N", newtons(strap.total_N)},
            {"idle_mm", mm(strap.idle_m)},
            {"least_tension_N", newtons(strap.leastTension_N)},
            {"start_pull_N", newtons(strap.startPull_N)},
            {"end_pull_N", newtons(strap.endPull_N)},
            // Where its ends are made fast is not given, so neither is what they press on the stack.
            {"ends_press_N", nullptr}};
}

template <typename Parts>
const typename Parts::value_type* partOf(const Parts& parts, int index) {
    for (const auto& part : parts) {
        if (part.index == index) return &part;
    }
    return nullptr;
}

// What sets a station's spacing, by the proposal's own words; only known where the plan was worked out at length.
Json governedBy(const std::optional<HoldingStudy>& study, double at_m) {
    if (!study) return nullptr;
    constexpr double same_m = 1e-6;
    for (const holding::Proposed& proposed : study->proposal.stations) {
        if (std::abs(proposed.station.at_m - at_m) < same_m) return holding::governsWord(proposed.governedBy);
    }
    return nullptr;
}

const char* failureWord(holding::HullPlan::Failure failure) {
    switch (failure) {
        case holding::HullPlan::Failure::never:
            return "never";
        case holding::HullPlan::Failure::lifts:
            return "lifts";
        case holding::HullPlan::Failure::tips:
            return "tips";
        case holding::HullPlan::Failure::slides:
            return "slides";
    }
    return "never";
}

// What a step of the closing asks, and the most that its station and prop bear at any step.
Json printClosing(const HoldingPlan& holding, const HoldingStudy& study, const holding::ClosingStep& step,
                  bool closesGap) {
    const bool known = holding::inBalance(step.outcome);
    Json printed{{"order", step.order},
                 {"pull_N", ifKnown(known, newtons(step.pull_N))},
                 {"gap_mm", ifKnown(known && closesGap, gapMm(step.gap_m))},
                 {"stands_off_mm", number(measure::toMillimetres(step.standsOff_m), 3)},
                 {"tail_off_mm", ifKnown(known, number(measure::toMillimetres(step.tailOff_m), 2))},
                 {"tip_x_mm", ifKnown(known, number(measure::toMillimetres(step.tip.x_m), 2))},
                 {"tip_y_mm", ifKnown(known, number(measure::toMillimetres(step.tip.y_m), 2))},
                 {"floor_in_the_way", ifKnown(known, step.floorInTheWay)},
                 {"snap_undecided", step.snapUndecided}};
    const holding::ClosingLoads& loads = study.closingLoads;
    const auto station = static_cast<std::size_t>(step.index);
    if (station < loads.pulls.size()) {
        const holding::MostBorne& most = loads.pulls[station];
        printed["most_pull_N"] = newtons(most.most_N);
        printed["most_pull_order"] = most.step < 0 ? Json(nullptr) : Json(most.step + 1);
    }
    if (const auto* prop = partOf(loads.props, step.index)) printed["most_thrust_N"] = newtons(prop->thrust_N);
    const auto row = static_cast<std::size_t>(step.order - 1);
    if (row < loads.hulls.size() && loads.hulls[row]) {
        const holding::HullPlan& hull = *loads.hulls[row];
        const holding::StationPlace* worst = partOf(holding.stations, hull.worstProp);
        printed["total_push_N"] = newtons(hull.totalPush_N);
        printed["hull_margin"] = number(hull.margin, 3);
        printed["hull_fails_by"] = failureWord(hull.failsBy);
        printed["worst_prop"] = worst ? Json(worst->number) : Json(nullptr);
    }
    return printed;
}

Json printStation(const boat::Piece& piece, const Plan& plan, std::size_t row) {
    const HoldingPlan& holding = plan.holding;
    const holding::StationPlace& place = holding.stations[row];
    const boat::Station& station = piece.holding.stations[static_cast<std::size_t>(place.index)];
    Json printed{{"number", place.number},          {"kind", boat::holdWord(station.kind)},
                 {"at_mm", mm(place.at_m)},         {"along_outside_mm", mm(place.alongOutside_m)},
                 {"x_mm", mm(place.onOutside.x_m)}, {"y_mm", mm(place.onOutside.y_m)}};
    if (const holding::HeldStation* held = partOf(holding.held.stations, place.index)) {
        const bool known = holding::inBalance(holding.held.outcome);
        printed["pull_N"] = ifKnown(known, newtons(held->pull_N));
        printed["most_N"] = newtons(held->most_N);
        printed["gap_mm"] = ifKnown(known && holding::closesGap(station), gapMm(held->gap_m));
        printed["state"] = ifKnown(known, stateWord(held->state));
    }
    printed["governed_by"] = governedBy(plan.holdingStudy, place.at_m);
    if (plan.holdingStudy) {
        if (const auto* step = partOf(plan.holdingStudy->closing, place.index))
            printed["closing"] = printClosing(plan.holding, *plan.holdingStudy, *step, holding::closesGap(station));
    }
    if (const auto* prop = partOf(holding.props, place.index)) printed["prop"] = printProp(*prop);
    if (const auto* screw = partOf(holding.screws, place.index)) printed["screw"] = printScrew(*screw);
    if (const auto* strap = partOf(holding.straps, place.index)) printed["strap"] = printStrap(*strap);
    return printed;
}

Json printProposed(const holding::Proposed& proposed) {
    const boat::Station& station = proposed.station;
    return {{"kind", boat::holdWord(station.kind)},
            {"at_mm", mm(station.at_m)},
            {"most_N", newtons(station.most_N)},
            {"pad_mm", mm(station.pad_m)},
            {"fixed", station.fixed},
            {"pull_N", newtons(proposed.pull_N)},
            {"gap_mm", holding::closesGap(station) ? gapMm(proposed.gap_m) : Json(nullptr)},
            {"governed_by", holding::governsWord(proposed.governedBy)}};
}

Json printEnd(const holding::EndNeed& need) {
    return {{"over_run_mm", optionalMm(need.overRun_m)},
            {"clamp_N", newtons(need.clamp_N)},
            {"stronger_clamp_N", optionalNewtons(need.strongerClamp_N)},
            {"caul_mm", optionalMm(need.caul_m)}};
}

void addStudy(Json& printed, const HoldingStudy& study, const holding::Held& held) {
    printed["carried"] = {{"points", study.carried.points},
                          {"weight_N", newtons(study.carried.weight_N)},
                          {"sag_mm", number(measure::toMillimetres(study.carried.sag_m), 2)},
                          {"strain_pct", number(100 * study.carried.strain, 4)}};
    if (held.outcome == holding::Outcome::notPressed) {
        for (const char* skipped : {"proposed", "proposal", "over_run_needed"}) printed[skipped] = nullptr;
        return;
    }
    Json proposed = Json::array();
    for (const holding::Proposed& station : study.proposal.stations) proposed.push_back(printProposed(station));
    printed["proposed"] = proposed;
    printed["proposal"] = {
        {"met", study.proposal.met},
        {"unmet", study.proposal.unmet.empty() ? Json(nullptr) : Json(study.proposal.unmet)},
        {"tools", study.proposal.tools},
        {"pressing_is_wish", study.proposal.pressingIsWish},
        {"within_counts", study.proposal.withinCounts},
        {"without_pressing", study.proposal.withoutPressing},
        {"for_everything", study.proposal.forEverything > 0 ? Json(study.proposal.forEverything) : Json(nullptr)},
        {"largest_spacing_mm", mm(study.proposal.largestSpacing_m)},
        {"caul_mm", optionalMm(study.proposal.caul_m)}};
    printed["over_run_needed"] = {{"start_mm", optionalMm(study.overRun.start.overRun_m)},
                                  {"end_mm", optionalMm(study.overRun.end.overRun_m)},
                                  {"start", printEnd(study.overRun.start)},
                                  {"end", printEnd(study.overRun.end)}};
}

Json printPost(const Plan& plan, const holding::PostLoad& post) {
    Json printed{{"at_mm", mm(post.at_m)}, {"thrust_N", newtons(post.thrust_N)}, {"holds_N", newtons(post.holds_N)}};
    const auto place = static_cast<std::size_t>(post.index);
    if (!plan.holdingStudy || place >= plan.holdingStudy->closingLoads.posts.size()) return printed;
    const holding::MostBorne& most = plan.holdingStudy->closingLoads.posts[place];
    printed["most_thrust_N"] = newtons(most.most_N);
    printed["most_thrust_order"] = most.step < 0 ? Json(nullptr) : Json(most.step + 1);
    return printed;
}

Json printHull(const HoldingPlan& holding) {
    const std::optional<holding::HullPlan>& hull = holding.hull;
    if (!hull) return nullptr;
    const holding::StationPlace* worst = partOf(holding.stations, hull->worstProp);
    Json blocks = Json::array();
    for (const holding::BlockPush& block : hull->blocks) {
        blocks.push_back({{"x_mm", mm(block.x_m)}, {"push_N", newtons(block.push_N)}, {"lifts", block.lifts}});
    }
    return {{"blocks", blocks},
            {"lifts", hull->lifts},
            {"tips", hull->tips},
            {"slides", hull->slides},
            {"margin", number(hull->margin, 3)},
            {"most_push_N", newtons(hull->mostPush_N)},
            {"total_push_N", newtons(hull->totalPush_N)},
            {"worst_prop", worst ? Json(worst->number) : Json(nullptr)}};
}

}  // namespace

Json printHolding(const boat::Piece& piece, const Plan& plan) {
    const holding::Held& held = plan.holding.held;
    Json stations = Json::array();
    for (std::size_t i = 0; i < plan.holding.stations.size(); ++i) stations.push_back(printStation(piece, plan, i));
    Json printed{{"outcome", outcomeWord(held.outcome)},
                 {"not_pressed", notPressedWord(held.notPressed)},
                 {"stations", stations}};
    if (plan.holdingStudy) addStudy(printed, *plan.holdingStudy, held);
    const bool known = holding::inBalance(held.outcome);
    printed["largest_gap"] = {
        {"at_mm", ifKnown(known, mm(held.largest.at_m))},
        {"gap_mm", ifKnown(known, gapMm(held.largest.gap_m))},
        {"if_pads_hold_mm", ifKnown(holding::inBalance(held.ifPadsHold.outcome), gapMm(held.largestIfPadsHold_m))},
        {"if_pads_slide_mm", ifKnown(holding::inBalance(held.ifPadsSlide.outcome), gapMm(held.largestIfPadsSlide_m))}};
    printed["falls_inside"] = {{"at_mm", ifKnown(known, mm(held.fallsInside.at_m))},
                               {"by_mm", ifKnown(known, gapMm(held.fallsInside.gap_m))}};
    printed["gap_at_start_mm"] = ifKnown(known, gapMm(held.gapAtStart_m));
    printed["gap_at_end_mm"] = ifKnown(known, gapMm(held.gapAtEnd_m));
    Json samples = Json::array();
    for (const holding::HeldSample& sample : held.samples) {
        samples.push_back({{"at_mm", mm(sample.at_m)},
                           {"gap_mm", gapMm(sample.gap_m)},
                           {"pressure_kPa", number(sample.pressure_Pa / 1e3, 2)},
                           {"moment_N_m", number(sample.moment_N_m, 2)}});
    }
    printed["samples"] = samples;
    if (!plan.holding.posts.empty()) {
        Json posts = Json::array();
        for (const holding::PostLoad& post : plan.holding.posts) posts.push_back(printPost(plan, post));
        printed["posts"] = posts;
    }
    printed["hull"] = printHull(plan.holding);
    return printed;
}

}  // namespace fayline::plan
