#include "core/holding/props/screw.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/holding/places.hpp"
#include "core/laminate/checks.hpp"
#include "core/laminate/layers.hpp"
#include "core/model/hold_traits.hpp"
#include "core/units/display.hpp"
#include "core/units/input_error.hpp"
#include "core/units/units.hpp"

namespace fayline::holding {

namespace {

using units::InputError;
using units::Mark;

constexpr double washerThickness_m = 0.002;  // common practice
constexpr double leastWasher_m = 0.025;
constexpr double rootOfShank = 2.0 / 3;
constexpr double usualSizes_m[] = {0.003, 0.004, 0.005, 0.006, 0.008, 0.010, 0.012, 0.016, 0.020, 0.024};

double lag_N_m(double perInch_lbf, double gravity, double diameter_m) {
    const double perInch = perInch_lbf * std::pow(gravity, 1.5) * std::pow(diameter_m / units::inch_m, 0.75);
    return perInch * units::poundForce_N / units::inch_m;
}

double circle(double diameter_m) {
    return std::numbers::pi / 4 * diameter_m * diameter_m;
}

double clearanceOf(double diameter_m) {
    return diameter_m + (diameter_m < 0.006 ? 0.0005 : 0.001);
}

double laterSize(double hole_m) {
    constexpr double rounding_m = 1e-9;
    for (const double size : usualSizes_m) {
        if (size >= hole_m - rounding_m) return size;
    }
    return hole_m;
}

// Everything about the stack that the screws of a piece share.
struct Ground {
    const StackOnForm& work;
    std::vector<laminate::Layer> layers;
    laminate::Run strips;  // from the first strip's start to the last end of all
    const wood::Species& outer;
    const wood::Species& backbone;
};

Ground groundOf(const StackOnForm& work) {
    const model::Stack& pile = work.piece.stack;
    const std::vector<const wood::Species*> woods = laminate::woodsOf(pile, work.species);
    const std::string& named = work.piece.holding.backbone.species;
    const wood::Species& backbone =
        named.empty() ? *woods.front() : laminate::woodNamed(named, "holding.backbone.species", work.species);
    std::vector<laminate::Layer> layers = laminate::layers(pile, work.piece.line.describes, work.line.length());
    laminate::Run run{0, work.line.length()};
    for (const laminate::Layer& layer : layers) {
        const laminate::Run bent = laminate::runsOf(pile, layers, layer.place, work.line.length()).bent;
        run = {std::min(run.from_m, bent.from_m), std::max(run.to_m, bent.to_m)};
    }
    return {work, std::move(layers), run, *woods.back(), backbone};
}

// From the form to the outside of the strips that are there.
double depthAt(const Ground& ground, double at_m) {
    const model::Stack& pile = ground.work.piece.stack;
    const int there = laminate::stripsAt(pile, ground.layers, ground.work.line.length(), at_m);
    if (there == 0) return 0;
    return ground.layers[there - 1].outer.at(at_m) - ground.layers.front().inner.at(at_m);
}

void setSizes(ScrewPlan& plan, const model::Station& station) {
    const model::Screw& screw = *model::as<model::Screw>(station);
    plan.diameter_m = screw.diameter_m.value_or(screwDiameter_m);
    plan.intoBackbone_m = screw.intoBackbone_m.value_or(screwIntoBackbone_m);
    plan.washer_m = screw.washer_m.value_or(std::max(leastWasher_m, 3 * plan.diameter_m));
    plan.sizesAssumed = !screw.diameter_m || !screw.intoBackbone_m || !screw.washer_m;
    plan.clearanceHole_m = clearanceOf(plan.diameter_m);
    if (plan.washer_m > plan.clearanceHole_m) return;
    const auto mm = [](double m) { return units::writeNumber(units::toMillimetres(m), 2); };
    throw InputError("holding.stations[" + std::to_string(plan.index) + "].washer_mm",
                     "a washer of " + mm(plan.washer_m) + " falls into its hole of " + mm(plan.clearanceHole_m),
                     "give one wider than the hole, or a thinner screw");
}

void setWithdrawal(ScrewPlan& plan, const wood::Species& wood) {
    const double gravity = wood.sg.value;
    plan.backbone = wood.name;
    plan.lag = plan.diameter_m >= leastLag_m;
    const double ultimate =
        plan.lag ? lagUltimate_N_m(gravity, plan.diameter_m) : screwUltimate_N_m(gravity, plan.diameter_m);
    const double allowable =
        plan.lag ? lagAllowable_N_m(gravity, plan.diameter_m) : screwAllowable_N_m(gravity, plan.diameter_m);
    plan.withdrawalUltimate_N = ultimate * plan.intoBackbone_m;
    plan.withdrawalAllowable_N = allowable * plan.intoBackbone_m;
    // The allowable value governs; that of wood screws was read, that of lag screws was not.
    plan.withdrawalSource =
        plan.lag ? units::Source{"NDS, lag screw out of side grain; ultimate by Wood Handbook ch. 8", Mark::fromMemory}
                 : units::Source{
                       "NDS, wood screw out of side grain; ultimate by Wood Handbook ch. 8 "
                       "(from memory)",
                       Mark::published};
    plan.root_m = rootOfShank * plan.diameter_m;
    plan.steelUltimate_N = coreBreaks_N(plan.root_m);
    plan.steelAllowable_N = steelAllowed * plan.steelUltimate_N;
    plan.steelSource = {
        "core of the thread, two thirds of the shank, of steel of property class 4.6 (ISO 898-1); "
        "allowable half of it (AISC 360 J3.6, from memory)",
        Mark::transcribed};
    plan.pilotHole_m = (wood.hardwood ? 0.9 : 0.7) * plan.root_m;
    plan.holeSource = {
        "Wood Handbook: 70 % of the root in softwood, 90 % in hardwood; root two thirds of the shank by "
        "common practice",
        Mark::fromMemory};
}

void setWasher(ScrewPlan& plan, const Ground& ground, double at_m) {
    const double bearing_m = plan.washer_m + 2 * ground.work.piece.holding.cauls.thickness_m;
    plan.washerPressure_Pa = plan.pull_N / (circle(bearing_m) - circle(plan.clearanceHole_m));
    plan.washerKnown = ground.outer.compressionAcross_Pa.has_value();
    const double fromStripEnd_m = std::min(at_m - ground.strips.from_m, ground.strips.to_m - at_m);
    const bool clearOfEnd = fromStripEnd_m - bearing_m / 2 >= 3 * units::inch_m;
    if (clearOfEnd && bearing_m < 6 * units::inch_m)
        plan.bearingFactor = (bearing_m + 0.375 * units::inch_m) / bearing_m;
    if (plan.washerKnown) plan.washerMay_Pa = plan.bearingFactor * ground.outer.compressionAcross_Pa->value / 2;
    plan.washerSource = {
        "half of compression across the grain, common practice, no source; factor for small bearings "
        "NDS 3.10.4 (from memory)",
        Mark::commonPractice};
}

void setSpacing(ScrewPlan& plan, const Ground& ground, double at_m) {
    const model::Stack& pile = ground.work.piece.stack;
    const double length = ground.work.line.length();
    plan.fromEdge_m = laminate::ripWidthAt(pile, at_m) / 2;
    plan.fromEdgeNeeded_m = 5 * plan.diameter_m;
    const bool finished = at_m >= 0 && at_m <= length;
    plan.fromEnd_m =
        finished ? std::min(at_m, length - at_m) : std::min(at_m - ground.strips.from_m, ground.strips.to_m - at_m);
    plan.fromEndNeeded_m = 10 * plan.diameter_m;
    plan.spacingSource = {"spacing in the manner of Eurocode 5 and the Wood Handbook", Mark::fromMemory};
}

double pullOfScrew(const std::vector<HeldStation>& held, int index) {
    for (const HeldStation& station : held) {
        if (station.index == index) return station.pull_N;
    }
    return 0;
}

bool isScrew(const model::Station& station) {
    return model::is<model::Screw>(station.kind) && !station.side;
}

}  // namespace

double screwUltimate_N_m(double gravity, double diameter_m) {
    return 15700 * units::psi_Pa * gravity * gravity * diameter_m;
}

double screwAllowable_N_m(double gravity, double diameter_m) {
    return 2850 * units::psi_Pa * gravity * gravity * diameter_m;
}

double lagUltimate_N_m(double gravity, double diameter_m) {
    return lag_N_m(8100, gravity, diameter_m);
}

double lagAllowable_N_m(double gravity, double diameter_m) {
    return lag_N_m(1800, gravity, diameter_m);
}

double coreBreaks_N(double root_m) {
    return circle(root_m) * screwSteel_Pa;
}

std::vector<ScrewPlan> screwPlans(const StackOnForm& work, const Held& held) {
    return screwPlans(work, held.stations);
}

std::vector<ScrewPlan> screwPlans(const StackOnForm& work, const std::vector<HeldStation>& held) {
    const std::vector<model::Station>& stations = work.piece.holding.stations;
    if (std::ranges::none_of(stations, isScrew)) return {};
    const Ground ground = groundOf(work);
    std::vector<ScrewPlan> plans;
    for (const StationPlace& place : stationPlaces(work.piece.holding, work.piece.stack, work.piece.line.describes,
                                                   work.piece.line.stripsOn, work.line)) {
        const model::Station& station = stations[place.index];
        if (!isScrew(station)) continue;
        ScrewPlan plan{.index = place.index,
                       .number = place.number,
                       .pull_N = pullOfScrew(held, place.index),
                       .backboneAssumed = work.piece.holding.backbone.species.empty()};
        setSizes(plan, station);
        setWithdrawal(plan, ground.backbone);
        setWasher(plan, ground, place.at_m);
        setSpacing(plan, ground, place.at_m);
        plan.depth_m = depthAt(ground, place.at_m);
        plan.length_m = washerThickness_m + work.piece.holding.cauls.thickness_m + plan.depth_m + plan.intoBackbone_m;
        plan.laterDiameter_m = laterSize(plan.clearanceHole_m);
        plans.push_back(plan);
    }
    return plans;
}

}  // namespace fayline::holding
