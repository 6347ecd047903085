// The keys of the printed plan about holding: stations, what closing them asks, props and straps, the boat on its
// blocks.
//
// Pulls and pushes to a tenth of a newton, gaps to a tenth of a micrometre, moments to a hundredth of a newton metre:
// what lies below is the solver's own error.
#pragma once

#include <cmath>
#include <optional>
#include <string>

#include "core/export/print_rules.hpp"
#include "core/holding/kinds.hpp"
#include "core/model/keys.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/study/holding_study.hpp"

namespace fayline::plan::printing {

using model::holdKind, model::Station, holding::BlockPush, holding::Carried, holding::ClosingStep, holding::Contact,
    holding::EndNeed, holding::Governs, holding::Held, holding::HeldSample, holding::HeldStation, holding::HoldState,
    holding::HullPlan, holding::inBalance, holding::LargestGap, holding::MostBorne, holding::NotPressed,
    holding::Outcome, holding::OverRun, holding::PostLoad, holding::PropPlan, holding::Proposal, holding::Proposed,
    holding::ScrewPlan, holding::Slips, holding::StationPlace, holding::StrapPlan, line::Xy;
using Failure = HullPlan::Failure;

inline constexpr Figure newtons{{"N"}, 1};
inline constexpr Figure gap_mm{unit::mm, 4};
inline constexpr Figure off_mm{unit::mm, 3};
inline constexpr Figure sag_mm{unit::mm, 2};
inline constexpr Figure slant_deg{unit::deg, 2};
inline constexpr Figure margin{{}, 3};
inline constexpr Figure washer_MPa{unit::MPa, 3};

template <class Parts>
const typename Parts::value_type* partOf(const Parts& parts, int index) {
    for (const auto& part : parts) {
        if (part.index == index) return &part;
    }
    return nullptr;
}

inline auto governedBy() {
    return wordsBy(holding::governsWord,
                   {Governs::gap, Governs::strength, Governs::pressing, Governs::fixedOne, Governs::end});
}

void printedKeys(auto& visit, const PropPlan*) {
    visit("thrust_N", &PropPlan::thrust_N, newtons);
    visit("angle_deg", &PropPlan::slant_rad, slant_deg);
    visit("slips", &PropPlan::slips,
          words<Slips>({{Slips::no, "no"}, {Slips::head, "head"}, {Slips::foot, "foot"}, {Slips::both, "both"}}));
    visit("buckles_at_N", &PropPlan::bucklesAt_N, OrNull{newtons});
    visit("allowable_N", &PropPlan::allowable_N, newtons);
    visit("length_mm", &PropPlan::length_m, mm);
    visit("foot_x_mm", via(&PropPlan::foot, &Xy::x_m), mm);
    visit("foot_y_mm", via(&PropPlan::foot, &Xy::y_m), mm);
    visit("foot_angle_deg", &PropPlan::footSlant_rad, slant_deg);
}

void printedKeys(auto& visit, const ScrewPlan*) {
    visit("withdrawal_N", &ScrewPlan::withdrawalUltimate_N, newtons);
    visit("withdrawal_allowable_N", &ScrewPlan::withdrawalAllowable_N, newtons);
    visit("steel_N", &ScrewPlan::steelUltimate_N, newtons);
    visit("steel_allowable_N", &ScrewPlan::steelAllowable_N, newtons);
    visit("washer_MPa", &ScrewPlan::washerPressure_Pa, washer_MPa);
    visit("washer_may_MPa", ifAny(where(&ScrewPlan::washerKnown), &ScrewPlan::washerMay_Pa), OrNull{washer_MPa});
    visit("clearance_hole_mm", &ScrewPlan::clearanceHole_m, mm);
    visit("pilot_hole_mm", &ScrewPlan::pilotHole_m, mm);
    visit("length_mm", &ScrewPlan::length_m, mm);
}

void printedKeys(auto& visit, const StrapPlan*) {
    visit("total_N", &StrapPlan::total_N, newtons);
    visit("idle_mm", &StrapPlan::idle_m, mm);
    visit("least_tension_N", &StrapPlan::leastTension_N, newtons);
    visit("start_pull_N", &StrapPlan::startPull_N, newtons);
    visit("end_pull_N", &StrapPlan::endPull_N, newtons);
    // Where its ends are made fast is not given, so neither is what they press on the stack.
    visit(
        "ends_press_N", [](const StrapPlan&) { return std::optional<double>(); }, OrNull{newtons});
}

// The most that something bears at any step of the closing, and at which: `get` gives where that is known a pointer.
void mostBorneKeys(auto& visit, const std::string& key, auto get) {
    visit(key + "_N", ifAny(get, &MostBorne::most_N), OrAbsent{newtons});
    visit(key + "_order", ifAny(get, [](const MostBorne& most) { return most.step < 0 ? -1 : most.step + 1; }),
          OrAbsent{OrNull<Whole>{}});
}

// The station of the piece that a place, a step or a result is of.
inline constexpr auto stationAt = [](const auto& item, const Of& of) -> const Station& {
    return of.piece.holding.stations[static_cast<std::size_t>(item.index)];
};

inline const HullPlan* hullAtStep(const ClosingStep& step, const Of& of) {
    const auto& hulls = of.plan.holdingStudy->closingLoads.hulls;
    const auto row = static_cast<std::size_t>(step.order - 1);
    return row < hulls.size() && hulls[row] ? &*hulls[row] : nullptr;
}

// The number of the prop that takes most off the margin; -1: none does.
inline int worstProp(const HullPlan& hull, const Of& of) {
    const StationPlace* worst = partOf(of.plan.holding.stations, hull.worstProp);
    return worst ? worst->number : -1;
}

// What a step of the closing asks, and the most that its station and prop bear at any step.
void printedKeys(auto& visit, const ClosingStep*) {
    constexpr auto known = where([](const ClosingStep& step) { return inBalance(step.outcome); });
    constexpr auto closed = where([](const ClosingStep& step, const Of& of) {
        return inBalance(step.outcome) && holding::closesGap(stationAt(step, of));
    });
    visit("order", &ClosingStep::order, Whole{});
    visit("pull_N", ifAny(known, &ClosingStep::pull_N), OrNull{newtons});
    visit("gap_mm", ifAny(closed, &ClosingStep::gap_m), OrNull{gap_mm});
    visit("stands_off_mm", &ClosingStep::standsOff_m, off_mm);
    visit("tail_off_mm", ifAny(known, &ClosingStep::tailOff_m), OrNull{sag_mm});
    visit("tip_x_mm", ifAny(known, &ClosingStep::tip, &Xy::x_m), OrNull{sag_mm});
    visit("tip_y_mm", ifAny(known, &ClosingStep::tip, &Xy::y_m), OrNull{sag_mm});
    visit("floor_in_the_way", ifAny(known, &ClosingStep::floorInTheWay), OrNull<Truth>{});
    visit("snap_undecided", &ClosingStep::snapUndecided, Truth{});
    mostBorneKeys(visit, "most_pull", [](const ClosingStep& step, const Of& of) {
        const auto& pulls = of.plan.holdingStudy->closingLoads.pulls;
        const auto station = static_cast<std::size_t>(step.index);
        return station < pulls.size() ? &pulls[station] : nullptr;
    });
    constexpr auto prop = [](const ClosingStep& step, const Of& of) {
        return partOf(of.plan.holdingStudy->closingLoads.props, step.index);
    };
    visit("most_thrust_N", ifAny(prop, &PropPlan::thrust_N), OrAbsent{newtons});
    visit.same(hullAtStep, [](auto& hull) {
        hull("total_push_N", &HullPlan::totalPush_N, newtons);
        hull("hull_margin", &HullPlan::margin, OrNull{margin});
        hull("hull_fails_by", &HullPlan::failsBy,
             words<Failure>({{Failure::never, "never"},
                             {Failure::lifts, "lifts"},
                             {Failure::tips, "tips"},
                             {Failure::slides, "slides"}}));
        hull("worst_prop", worstProp, OrNull<Whole>{});
    });
}

// As held with all closed.
void printedKeys(auto& visit, const HeldStation*) {
    constexpr auto known =
        where([](const HeldStation&, const Of& of) { return inBalance(of.plan.holding.held.outcome); });
    constexpr auto closed = where([](const HeldStation& held, const Of& of) {
        return inBalance(of.plan.holding.held.outcome) && holding::closesGap(stationAt(held, of));
    });
    visit("pull_N", ifAny(known, &HeldStation::pull_N), OrNull{newtons});
    visit("most_N", &HeldStation::most_N, newtons);
    visit("gap_mm", ifAny(closed, &HeldStation::gap_m), OrNull{gap_mm});
    visit("state", ifAny(known, &HeldStation::state),
          OrNull{words<HoldState>({{HoldState::slack, "slack"},
                                   {HoldState::closes, "closes"},
                                   {HoldState::full, "full"},
                                   {HoldState::given, "given"}})});
}

// What sets a station's spacing, by the proposal's own words; only known where the plan was worked out at length.
inline const Governs* governs(const StationPlace& place, const Of& of) {
    if (!of.plan.holdingStudy) return nullptr;
    constexpr double same_m = 1e-6;
    for (const Proposed& proposed : of.plan.holdingStudy->proposal.stations) {
        if (std::abs(proposed.station.at_m - place.at_m) < same_m) return &proposed.governedBy;
    }
    return nullptr;
}

// The step at which it is closed.
inline const ClosingStep* closingOf(const StationPlace& place, const Of& of) {
    return of.plan.holdingStudy ? partOf(of.plan.holdingStudy->closing, place.index) : nullptr;
}

void printedKeys(auto& visit, const StationPlace*) {
    constexpr auto part = [](auto parts) {
        return [parts](const StationPlace& place, const Of& of) { return partOf(of.plan.holding.*parts, place.index); };
    };
    visit("number", &StationPlace::number, Whole{});
    visit("kind", via(stationAt, &Station::kind), holdKind);
    visit("at_mm", &StationPlace::at_m, mm);
    visit("along_outside_mm", &StationPlace::alongOutside_m, mm);
    visit("x_mm", via(&StationPlace::onOutside, &Xy::x_m), mm);
    visit("y_mm", via(&StationPlace::onOutside, &Xy::y_m), mm);
    visit.same(
        [](const StationPlace& place, const Of& of) { return partOf(of.plan.holding.held.stations, place.index); });
    visit("governed_by", governs, OrNull{governedBy()});
    visit("closing", closingOf, OrAbsent<Group>{});
    visit("prop", part(&HoldingPlan::props), OrAbsent<Group>{});
    visit("screw", part(&HoldingPlan::screws), OrAbsent<Group>{});
    visit("strap", part(&HoldingPlan::straps), OrAbsent<Group>{});
}

void printedKeys(auto& visit, const Proposed*) {
    constexpr auto closes = where([](const Proposed& proposed) { return holding::closesGap(proposed.station); });
    visit("kind", via(&Proposed::station, &Station::kind), holdKind);
    visit("at_mm", via(&Proposed::station, &Station::at_m), mm);
    visit("most_N", via(&Proposed::station, &Station::most_N), newtons);
    visit("pad_mm", via(&Proposed::station, &Station::pad_m), mm);
    visit("fixed", via(&Proposed::station, &Station::fixed), Truth{});
    visit("pull_N", &Proposed::pull_N, newtons);
    visit("gap_mm", ifAny(closes, &Proposed::gap_m), OrNull{gap_mm});
    visit("governed_by", &Proposed::governedBy, governedBy());
}

void printedKeys(auto& visit, const Proposal*) {
    visit("met", &Proposal::met, Truth{});
    visit("unmet", &Proposal::unmet,
          OrNull{wordsBy(holding::governsWord, {Governs::gap, Governs::strength, Governs::pressing})});
    visit("tools", &Proposal::tools, Whole{});
    visit("pressing_is_wish", &Proposal::pressingIsWish, Truth{});
    visit("within_counts", &Proposal::withinCounts, Truth{});
    visit("without_pressing", &Proposal::withoutPressing, Whole{});
    visit("for_everything", ifAbove0(&Proposal::forEverything), OrNull<Whole>{});
    visit("largest_spacing_mm", &Proposal::largestSpacing_m, mm);
    visit("caul_mm", &Proposal::caul_m, OrNull{mm});
}

void printedKeys(auto& visit, const EndNeed*) {
    visit("over_run_mm", &EndNeed::overRun_m, OrNull{mm});
    visit("clamp_N", &EndNeed::clamp_N, newtons);
    visit("stronger_clamp_N", &EndNeed::strongerClamp_N, OrNull{newtons});
    visit("caul_mm", &EndNeed::caul_m, OrNull{mm});
}

void printedKeys(auto& visit, const OverRun*) {
    visit("start_mm", via(&OverRun::start, &EndNeed::overRun_m), OrNull{mm});
    visit("end_mm", via(&OverRun::end, &EndNeed::overRun_m), OrNull{mm});
    visit("start", &OverRun::start, Group{});
    visit("end", &OverRun::end, Group{});
}

void printedKeys(auto& visit, const Carried*) {
    visit("points", &Carried::points, Whole{});
    visit("weight_N", &Carried::weight_N, newtons);
    visit("sag_mm", &Carried::sag_m, sag_mm);
    visit("strain_pct", &Carried::strain, Figure{unit::pct, 4});
}

// What was proposed is only known where the contact was solved.
void printedKeys(auto& visit, const HoldingStudy*) {
    constexpr auto solved =
        where([](const HoldingStudy&, const Of& of) { return of.plan.holding.held.outcome != Outcome::notPressed; });
    visit("carried", &HoldingStudy::carried, Group{});
    visit("proposed", ifAny(solved, &HoldingStudy::proposal, &Proposal::stations), OrNull<ListOf<Group>>{});
    visit("proposal", ifAny(solved, &HoldingStudy::proposal), OrNull<Group>{});
    visit("over_run_needed", ifAny(solved, &HoldingStudy::overRun), OrNull<Group>{});
}

void printedKeys(auto& visit, const HeldSample*) {
    visit("at_mm", &HeldSample::at_m, mm);
    visit("gap_mm", &HeldSample::gap_m, gap_mm);
    visit("pressure_kPa", &HeldSample::pressure_Pa, Figure{unit::kPa, 2});
    visit("moment_N_m", &HeldSample::moment_N_m, Figure{{"N_m"}, 2});
}

void printedKeys(auto& visit, const PostLoad*) {
    visit("at_mm", &PostLoad::at_m, mm);
    visit("thrust_N", &PostLoad::thrust_N, newtons);
    visit("holds_N", &PostLoad::holds_N, newtons);
    mostBorneKeys(visit, "most_thrust", [](const PostLoad& post, const Of& of) -> const MostBorne* {
        const auto place = static_cast<std::size_t>(post.index);
        if (!of.plan.holdingStudy || place >= of.plan.holdingStudy->closingLoads.posts.size()) return nullptr;
        return &of.plan.holdingStudy->closingLoads.posts[place];
    });
}

void printedKeys(auto& visit, const BlockPush*) {
    visit("x_mm", &BlockPush::x_m, mm);
    visit("push_N", &BlockPush::push_N, newtons);
    visit("lifts", &BlockPush::lifts, Truth{});
}

void printedKeys(auto& visit, const HullPlan*) {
    visit("blocks", &HullPlan::blocks, ListOf<Group>{});
    visit("lifts", &HullPlan::lifts, Truth{});
    visit("tips", &HullPlan::tips, Truth{});
    visit("slides", &HullPlan::slides, Truth{});
    visit("margin", &HullPlan::margin, OrNull{margin});
    visit("most_push_N", &HullPlan::mostPush_N, OrNull{newtons});
    visit("total_push_N", &HullPlan::totalPush_N, newtons);
    visit("worst_prop", worstProp, OrNull<Whole>{});
}

void printedKeys(auto& visit, const HoldingPlan*) {
    constexpr auto held = [](auto... steps) { return via(&HoldingPlan::held, steps...); };
    constexpr auto known = held(where([](const Held& of) { return inBalance(of.outcome); }));
    constexpr auto ifPadsHold = held(where([](const Held& of) { return inBalance(of.ifPadsHold.outcome); }));
    constexpr auto ifPadsSlide = held(where([](const Held& of) { return inBalance(of.ifPadsSlide.outcome); }));
    constexpr auto notPressed = held(where([](const Held& of) { return of.notPressed != NotPressed::none; }));
    visit("outcome", held(&Held::outcome),
          words<Outcome>({{Outcome::settled, "settled"},
                          {Outcome::snaps, "snaps"},
                          {Outcome::notConverged, "not settled"},
                          {Outcome::notPressed, "not pressed"}}));
    visit("not_pressed", ifAny(notPressed, &Held::notPressed),
          OrNull{words<NotPressed>({{NotPressed::breaks, "breaks"},
                                    {NotPressed::noRoom, "no room"},
                                    {NotPressed::crosses, "crosses itself"},
                                    {NotPressed::wanders, "wanders"},
                                    {NotPressed::unsupported, "unsupported"}})});
    visit("stations", &HoldingPlan::stations, ListOf<Group>{});
    visit.same(via(plan, &Plan::holdingStudy));
    visit.inner("largest_gap", [=](auto& gap) {
        gap("at_mm", ifAny(known, &Held::largest, &LargestGap::at_m), OrNull{mm});
        gap("gap_mm", ifAny(known, &Held::largest, &LargestGap::gap_m), OrNull{gap_mm});
        gap("if_pads_hold_mm", ifAny(ifPadsHold, &Held::largestIfPadsHold_m), OrNull{gap_mm});
        gap("if_pads_slide_mm", ifAny(ifPadsSlide, &Held::largestIfPadsSlide_m), OrNull{gap_mm});
    });
    visit.inner("falls_inside", [=](auto& inside) {
        inside("at_mm", ifAny(known, &Held::fallsInside, &LargestGap::at_m), OrNull{mm});
        inside("by_mm", ifAny(known, &Held::fallsInside, &LargestGap::gap_m), OrNull{gap_mm});
    });
    visit("gap_at_start_mm", ifAny(known, &Held::gapAtStart_m), OrNull{gap_mm});
    visit("gap_at_end_mm", ifAny(known, &Held::gapAtEnd_m), OrNull{gap_mm});
    visit("samples", held(&Held::samples), ListOf<Group>{});
    visit("posts", &HoldingPlan::posts, OrAbsent<ListOf<Group>>{});
    visit("hull", &HoldingPlan::hull, OrNull<Group>{});
}

}  // namespace fayline::plan::printing
