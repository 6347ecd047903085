// A piece whose plan says, by hand, how it is held: numbers that no computation has to find first.
#pragma once

#include <limits>
#include <memory>

#include "core/plan/study/holding_study.hpp"
#include "tests/app/shown_piece.hpp"

namespace fayline::app {

inline constexpr double endless = std::numeric_limits<double>::infinity();

inline model::Station stationAt(double at_m, model::HoldKind kind = model::HoldKind::clamp, bool fixed = false) {
    model::Station station;
    station.at_m = at_m;
    station.kind = kind;
    station.fixed = fixed;
    return station;
}

// What is live: station i pulls 100 (i + 1) N and leaves i tenths of a millimetre.
inline void holdByHand(plan::Plan& plan, const model::Piece& piece) {
    plan::HoldingPlan& holding = plan.holding;
    holding.held = {};
    holding.pressing.clear();
    holding.atHand = {};
    int i = 0;
    for (const holding::StationPlace& place : holding.stations) {
        const model::Station& station = piece.holding.stations[static_cast<std::size_t>(place.index)];
        holding.held.stations.push_back({place.index, place.number, place.at_m, 100.0 * (i + 1), station.most_N,
                                         i * 1e-4, holding::HoldState::closes});
        holding.pressing.push_back({});
        ++i;
    }
    const double length_m = plan.line.fair.line.length();
    for (int s = 0; s <= 100; ++s)
        holding.held.samples.push_back({length_m * s / 100, 2e-4 * s / 100, 1e4 * s, 1.0 * s});
}

inline plan::HoldingStudy studyByHand(const model::Piece& piece) {
    plan::HoldingStudy study;
    int order = 0;
    for (const model::Station& station : piece.holding.stations) {
        holding::ClosingStep step;
        step.index = order;
        step.number = order + 1;
        step.order = ++order;
        step.pull_N = 150;
        step.standsOff_m = 0.004;
        step.tailOff_m = 0.25;
        step.floorInTheWay = order == 1;
        study.closing.push_back(step);
        if (station.fixed) study.proposal.stations.push_back({station, holding::Governs::fixedOne, 90, 0});
    }
    study.proposal.stations.push_back({stationAt(0.8), holding::Governs::gap, 240, 3e-4});
    study.proposal.tools = 14;
    study.overRun.start = {0.13, 2500, 4000, 0.02, 0.7e-3};
    study.overRun.end = {std::nullopt, 2500, std::nullopt, std::nullopt, 3e-3};
    study.carried.places_m = {0.4, 1.5};
    study.carried.weight_N = 60;
    study.carried.sag_m = 0.02;
    study.carried.strain = 0.0004;
    return study;
}

inline Shown heldByHand(bool studied = true) {
    Shown shown = shownSample();
    shown.piece.holding.stations[2].fixed = true;
    planAnew(shown);
    auto plan = std::make_shared<plan::Plan>(*shown.plan);
    holdByHand(*plan, shown.piece);
    plan->holdingStudy.reset();
    if (studied) plan->holdingStudy = studyByHand(shown.piece);
    shown.plan = plan;
    return shown;
}

}  // namespace fayline::app
