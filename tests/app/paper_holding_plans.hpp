// Plans whose holding is filled in by hand with invented figures, each different from every other, so that a paper can
// be searched for them whatever the computation says.
#pragma once

#include <cmath>

#include "core/plan/plan.hpp"
#include "core/plan/study/holding_study.hpp"
#include "tests/app/paper_boats.hpp"

namespace fayline::test {

// The stem on blocks, with two clamps, a strap, a prop, a jack, a prop off the roof and two screws.
inline model::Piece proppedStem() {
    model::Piece piece = stem();
    piece.form.kind = model::FormKind::inPlace;
    piece.holding.tools = {{.name = "Heavy bar clamp from the big shed", .count = 2, .pitch_m = 0.004}};
    piece.holding.stations.clear();
    const auto add = [&](model::HoldKind kind, double at_m) -> model::Station& {
        model::Station station;
        station.kind = kind;
        station.at_m = at_m;
        piece.holding.stations.push_back(station);
        return piece.holding.stations.back();
    };
    const auto stand = [](model::Station& station, double x_m, double y_m) {
        station.strut.footX_m = x_m;
        station.strut.footY_m = y_m;
        station.strut.section_m = {0.089, 0.089};
    };
    add(model::HoldKind::clamp, 0.02);
    stand(add(model::HoldKind::prop, 0.3), 0.5, -0.8);
    model::Station& jack = add(model::HoldKind::jack, 0.7);
    stand(jack, 0.2, -0.8);
    jack.strut.stop = model::Stop::both;
    model::Station& screw = add(model::HoldKind::screw, 1.0);
    screw.screw.diameter_m = 0.006;
    screw.screw.washer_m = 0.03;
    add(model::HoldKind::screw, 1.2).screw.diameter_m = 0.005;
    model::Station& overhead = add(model::HoldKind::prop, 1.5);
    stand(overhead, -0.2, 2.9);
    overhead.strut.to = model::PropTo::overhead;
    add(model::HoldKind::strap, 1.6).strap.to_m = 1.7;
    add(model::HoldKind::clamp, 1.78);
    piece.holding.hull.weight_kg = 843;
    piece.holding.hull.centreX_m = -2.4;
    piece.holding.hull.centreY_m = 0.9;
    model::Block block;
    for (const double x_m : {-0.6, -1.9, -4.1}) {
        block.x_m = x_m;
        block.y_m = -0.25;
        piece.holding.hull.blocks.push_back(block);
    }
    return piece;
}

inline holding::PropPlan invented(const model::Station& station, int index, const holding::StationPlace& place) {
    holding::PropPlan prop;
    prop.index = index;
    prop.head = place.onOutside;
    prop.foot = {*station.strut.footX_m, *station.strut.footY_m};
    prop.length_m = std::hypot(prop.head.x_m - prop.foot.x_m, prop.head.y_m - prop.foot.y_m);
    prop.thrust_N = 1234 + 100 * index;
    prop.slant_rad = 0.1 + 0.03 * index;
    prop.footSlant_rad = 0.2 + 0.03 * index;
    prop.slips = index % 2 == 1 ? holding::Slips::both : holding::Slips::no;
    if (index % 2 == 1) prop.footThatHolds = line::Xy{0.4321 + 0.01 * index, -0.8};
    prop.allowable_N = 21350 + 10 * index;
    prop.bucklesAt_N = 68805 + 10 * index;
    prop.most_N = 3456 + index;
    prop.number = place.number;
    prop.footFriction = 0.31;
    prop.stopsHold = index % 2 == 0 || station.strut.stop == model::Stop::both;
    prop.section_m = {0.089, 0.089};
    prop.sectionAssumed = index % 2 == 1;
    prop.slenderness = prop.length_m / 0.089;
    prop.columnSource = {"NDS 3.7", units::Mark::fromMemory};
    prop.frictionSource = {"Wood Handbook ch. 4", units::Mark::fromMemory};
    return prop;
}

inline holding::ScrewPlan inventedScrew(const model::Station& station, int index) {
    holding::ScrewPlan screw;
    screw.index = index;
    screw.diameter_m = station.screw.diameter_m.value_or(0.005);
    screw.intoBackbone_m = 0.041;
    screw.washer_m = station.screw.washer_m.value_or(0.025);
    screw.sizesAssumed = !station.screw.washer_m.has_value();
    screw.backbone = "Douglas-fir, coast";
    screw.backboneAssumed = true;
    screw.washerKnown = true;
    screw.holeSource = {"Wood Handbook, lead holes", units::Mark::fromMemory};
    screw.pull_N = 512 + 13 * index;
    screw.withdrawalUltimate_N = 3011 + index;
    screw.withdrawalAllowable_N = 546 + index;
    screw.steelUltimate_N = 4200 + index;
    screw.steelAllowable_N = 2100 + index;
    screw.washerPressure_Pa = 1.23e6 + 1e4 * index;
    screw.washerMay_Pa = 3.71e6;
    screw.clearanceHole_m = 0.0065;
    screw.pilotHole_m = 0.0037;
    screw.length_m = 0.0985;
    screw.fromEdge_m = 0.0255;
    screw.fromEdgeNeeded_m = 0.03;
    screw.fromEnd_m = 0.412;
    screw.fromEndNeeded_m = 0.06;
    screw.laterDiameter_m = 0.0064;
    screw.withdrawalSource = {"NDS 12.2, reference page", units::Mark::published};
    screw.washerSource = {"common practice, no source", units::Mark::commonPractice};
    screw.spacingSource = {"Eurocode 5 style spacing", units::Mark::fromMemory};
    return screw;
}

inline plan::HoldingStudy inventedStudy(const plan::Plan& plan) {
    plan::HoldingStudy study;
    int order = 0;
    for (const holding::StationPlace& place : plan.holding.stations) {
        holding::ClosingStep step;
        step.index = place.index;
        step.number = place.number;
        step.order = ++order;
        step.pull_N = 300 + 100 * order;
        step.gap_m = order == 4 ? 0.00271 : 0.0001;
        step.standsOff_m = 0.0712 + 0.001 * order;
        step.tailOff_m = 0.91371 / order;
        step.tip = {1.2345 - 0.01 * order, 0.321 + 0.01 * order};
        step.floorInTheWay = order == 2;
        step.outcome = order == 3 ? holding::Outcome::snaps : holding::Outcome::settled;
        study.closing.push_back(step);
    }
    study.overRun.start.overRun_m = 0.0873;
    study.carried.points = 3;
    study.carried.places_m = {0.281, 1.113, 1.847};
    study.carried.weight_N = 142;
    study.carried.sag_m = 0.0461;
    study.carried.strain = 0.00123;
    return study;
}

// A plan of `piece` with every part of its holding filled in.
inline plan::Plan inventedPlan(const model::Piece& piece, const plan::Shop& shop, bool studied = true) {
    plan::Plan plan = plan::makePlan(piece, shop);
    plan::HoldingPlan& holding = plan.holding;
    holding.held = {};
    holding.props.clear();
    holding.screws.clear();
    holding.straps.clear();
    holding.atHand = {};
    for (const holding::StationPlace& place : holding.stations) {
        const auto& station = piece.holding.stations[static_cast<std::size_t>(place.index)];
        holding::HeldStation held;
        held.index = place.index;
        held.number = place.number;
        held.at_m = place.at_m;
        held.pull_N = 1000 + 100 * place.number;
        held.most_N = 9000 - 100 * place.number;
        held.gap_m = 0.00011 * place.number;
        held.state = place.number % 2 == 0 ? holding::HoldState::full : holding::HoldState::closes;
        holding.held.stations.push_back(held);
        if (station.strut.footX_m) holding.props.push_back(invented(station, place.index, place));
        if (station.kind == model::HoldKind::screw) holding.screws.push_back(inventedScrew(station, place.index));
        if (station.kind == model::HoldKind::strap) {
            holding::StrapPlan strap;
            strap.index = place.index;
            strap.total_N = 987;
            strap.idle_m = 0.0432;
            strap.leastTension_N = 1768;
            strap.startPull_N = 2111;
            strap.endPull_N = 2345;
            holding.straps.push_back(strap);
        }
        if (station.kind == model::HoldKind::clamp && !piece.holding.tools.empty()) {
            holding::Served served;
            served.station = place.index;
            served.tool = place.number == 1 ? -1 : 0;
            if (served.tool < 0) served.lacks = holding::Lacks::opening;
            served.turnsPastSnug = 0.7 + 0.1 * place.number;
            holding.atHand.served.push_back(served);
        }
    }
    holding.held.largest = {0.777, 0.00091};
    holding.held.gapAtStart_m = 0.00023;
    holding.held.gapAtEnd_m = 0.00047;
    holding.hull.reset();
    if (piece.holding.hull.weight_kg > 0) {
        holding::HullPlan hull;
        int number = 0;
        for (const model::Block& block : piece.holding.hull.blocks) {
            holding::BlockPush push;
            push.index = number;
            push.x_m = block.x_m;
            push.y_m = block.y_m;
            push.push_N = number == 0 ? 0 : 2711 + 100 * number;
            push.atRest_N = 3711 + 100 * number;
            push.lifts = number == 0;
            hull.blocks.push_back(push);
            ++number;
        }
        hull.tips = true;
        hull.freesBlock = true;
        hull.failsBy = holding::HullPlan::Failure::tips;
        hull.level_N = 654;
        hull.frictionMay_N = 2468;
        hull.margin = 1.37;
        hull.mostPush_N = 4321;
        hull.worstProp = holding.props.empty() ? -1 : holding.props.front().index;
        hull.marginWithoutWorst = 2.21;
        hull.totalPush_N = 5432;
        hull.source = {"plane equilibrium of a rigid hull", units::Mark::derived};
        holding.hull = hull;
    }
    plan.holdingStudy.reset();
    if (studied) plan.holdingStudy = inventedStudy(plan);
    return plan;
}

}  // namespace fayline::test
