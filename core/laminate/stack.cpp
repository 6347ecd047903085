#include "core/laminate/stack.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/laminate/checks.hpp"
#include "core/laminate/course.hpp"
#include "core/laminate/crossing.hpp"
#include "core/laminate/layers.hpp"
#include "core/laminate/limits.hpp"
#include "core/laminate/parallels.hpp"
#include "core/laminate/softened.hpp"
#include "core/units/display.hpp"
#include "core/units/input_error.hpp"
#include "core/wood/bending.hpp"

namespace fayline::laminate {

namespace {

constexpr double endless = std::numeric_limits<double>::infinity();

// Share of the curve that still strains a strip.
double stillToBend(const model::Strips& strips) {
    return strips.bentBefore ? 1 - strips.bentBefore->set : 1.0;
}

// |curvature| of a strip's own middle, 1/m; where no strip can lie, that of a strip doubled up on itself (2/t).
double bendOf(const Course& course, const Layer& layer, const line::Place& place) {
    const double doubledUp = 2 / layer.thicknessAt(place.at_m);
    if (stretch(place, course.side, layer.middle.at(place.at_m)) <= 0) return doubledUp;
    return std::min(std::abs(curvatureBeside(place, course.side, layer.middle)), doubledUp);
}

void bend(Strip& strip, const Course& course, const line::Line& line, const Layer& layer, const Runs& runs,
          const model::Strips& strips) {
    const bool tapers = !layer.middle.level() || !layer.inner.level();
    const Peak tightest = greatest(
        course, line, runs.finished, [&](const line::Place& p) { return bendOf(course, layer, p); }, tapers);
    strip.leastRadius_m = tightest.value > 0 ? 1 / tightest.value : endless;
    strip.leastRadiusAt_m = tightest.place.at_m;

    const double share = stillToBend(strips);
    const Peak strained = greatest(
        course, line, runs.bent,
        [&](const line::Place& p) { return layer.thicknessAt(p.at_m) * share * bendOf(course, layer, p) / 2; }, tapers);
    strip.strain = strained.value;
    strip.strainAt_m = strained.place.at_m;
    strip.radiusOverThickness = strained.value > 0 ? 1 / (2 * strained.value) : endless;
    if (strip.firstBreakingStrain > 0) {
        const Peak hot = greatest(
            course, line, runs.bent,
            [&](const line::Place& p) { return layer.thicknessAt(p.at_m) * bendOf(course, layer, p) / 2; }, tapers);
        strip.firstStrain = hot.value;
        if (share == 0) strip.strainAt_m = hot.place.at_m;
    }
    strip.strainRadius_m = strip.radiusOverThickness * layer.thicknessAt(strip.strainAt_m);
}

// Strained evenly, as hard as the worst place, over how long it would break as often (wood::sizeFactor), metres; 0
// where it is straight. The bend's shape is the same in the first bend and the second.
double evenLength(const Course& course, const Layer& layer, const Run& bent) {
    const auto strain = [&](const line::Place& place) {
        return layer.thicknessAt(place.at_m) * bendOf(course, layer, place);
    };
    double greatest = 0;
    for (const line::Place& place : course.places) {
        if (bent.holds(place.at_m)) greatest = std::max(greatest, strain(place));
    }
    if (!(greatest > 0)) return 0;
    static_assert(wood::sizeExponent == 18);
    double length = 0;
    double before = 0;
    const line::Place* last = nullptr;
    for (const line::Place& place : course.places) {
        if (!bent.holds(place.at_m)) continue;
        const double share = strain(place) / greatest;
        const double square = share * share;
        const double eighth = square * square * square * square;
        const double here = eighth * eighth * square;
        if (last) length += (before + here) / 2 * (place.at_m - last->at_m);
        before = here;
        last = &place;
    }
    return length;
}

void needLength(const model::Stack& stack, const Runs& runs) {
    if (runs.finished.to_m > runs.finished.from_m) return;
    throw units::InputError(
        stack.scarfedStart ? "stack.scarfed_start.slope" : "stack.scarfed_end.slope",
        "a scarf of 1 in " + units::writeNumber((stack.scarfedStart ? stack.scarfedStart : stack.scarfedEnd)->slope) +
            " through this stack is longer than the piece",
        "give a smaller number");
}

std::vector<Strip> stripsOf(const model::Stack& stack, const std::vector<const wood::Species*>& woods,
                            const Course& course, const line::Line& line, const std::vector<Layer>& layers) {
    std::vector<wood::Bending> bendings;
    for (std::size_t i = 0; i < woods.size(); ++i) {
        bendings.push_back(wood::bending(*woods[i], stack.moisture, stack.grainSlope, stack.strips[i].moe_Pa,
                                         stack.strips[i].breaksAt));
    }
    SumPlaces kept;
    SumPlaces keptBent;
    std::vector<Strip> all;
    for (const Layer& layer : layers) {
        const auto group = static_cast<std::size_t>(layer.group);
        const model::Strips& strips = stack.strips[group];
        const Runs runs = runsOf(stack, layers, layer.place, course.length_m);
        needLength(stack, runs);
        Strip strip{.place = layer.place,
                    .group = layer.group,
                    .thickness_m = strips.thickness_m,
                    .thicknessAtEnd_m = strips.tapersTo_m.value_or(strips.thickness_m),
                    .species = strips.species,
                    .sacrificial = strips.sacrificial,
                    .breakingStrain = bendings[group].breakingStrain,
                    .breakingSource = bendings[group].breakingSource,
                    .modulus_Pa = bendings[group].modulus_Pa,
                    .modulusSource = bendings[group].modulusSource};
        if (strips.bentBefore) {
            const auto hot = hotBreakingStrain(strips.bentBefore->how, stack.grainSlope);
            strip.firstBreakingStrain = hot ? hot->value : strip.breakingStrain;
        }
        bend(strip, course, line, layer, runs, strips);
        const double even = evenLength(course, layer, runs.bent);
        if (even > 0) strip.sizeFactor = wood::sizeFactor(layer.thicknessAt(strip.strainAt_m), even);
        const double breaking = sizedBreakingStrain(strip, strips);
        strip.chanceOfBreaking = wood::chanceOfBreaking(strip.strain, breaking);
        if (strip.firstBreakingStrain > 0) {
            const bool cold = strips.bentBefore->how == model::Softened::soaked;
            const double first = wood::chanceOfBreaking(strip.firstStrain, cold ? breaking : strip.firstBreakingStrain);
            strip.chanceOfBreaking = std::max(strip.chanceOfBreaking, first);
        }
        strip.finishedLength_m =
            lengthBeside(line, course.side, layer.middle, runs.finished.from_m, runs.finished.to_m, &kept);
        strip.cutLength_m = lengthBeside(line, course.side, layer.middle, runs.bent.from_m, runs.bent.to_m, &keptBent);
        strip.startsAt_m = runs.bent.from_m;
        strip.endsAt_m = runs.bent.to_m;
        all.push_back(strip);
    }
    return all;
}

// Stiffness of strips glued into one, about the neutral axis of the wood, N m^2.
double gluedStiffness(const std::vector<Layer>& layers, const std::vector<Strip>& strips, std::size_t first,
                      std::size_t last, double width_m, double at_m) {
    double area = 0;
    double moment = 0;
    for (std::size_t i = first; i < last; ++i) {
        const double weight = strips[i].modulus_Pa * layers[i].thicknessAt(at_m);
        area += weight;
        moment += weight * layers[i].middle.at(at_m);
    }
    double stiffness = 0;
    for (std::size_t i = first; i < last; ++i) {
        const double t = layers[i].thicknessAt(at_m);
        const double away = layers[i].middle.at(at_m) - moment / area;
        stiffness += strips[i].modulus_Pa * width_m * t * (t * t / 12 + away * away);
    }
    return stiffness;
}

void stiffen(StackPlan& plan, const model::Stack& stack, const std::vector<Layer>& layers, double at_m) {
    std::vector<Layer> present;
    std::vector<Strip> strips;
    for (std::size_t i = 0; i < layers.size(); ++i) {
        if (at_m < plan.strips[i].startsAt_m || at_m > plan.strips[i].endsAt_m) continue;
        present.push_back(layers[i]);
        strips.push_back(plan.strips[i]);
    }
    if (present.empty()) return;
    plan.depth_m = present.back().outer.at(at_m) - present.front().inner.at(at_m);
    const double width = widthAt(stack, at_m);
    const double ripped = ripWidthAt(stack, at_m);
    std::size_t first = 0;
    for (std::size_t i = 0; i < present.size(); ++i) {
        const double t = present[i].thicknessAt(at_m);
        plan.stiffnessWet_N_m2 += strips[i].modulus_Pa * ripped * t * t * t / 12;
        const bool parts = stack.strips[present[i].group].dryFace &&
                           (i + 1 == present.size() || present[i + 1].group != present[i].group);
        if (!parts && i + 1 < present.size()) continue;
        plan.stiffnessCured_N_m2 += gluedStiffness(present, strips, first, i + 1, width, at_m);
        first = i + 1;
    }
}

// Energy of one strip per length of line at `place`, J/m.
double energyDensity(const Course& course, const Layer& layer, const Strip& strip, const model::Strips& strips,
                     double width_m, const line::Place& place) {
    const double t = layer.thicknessAt(place.at_m);
    const double bent = stillToBend(strips) * bendOf(course, layer, place);
    const double along = std::max(0.0, stretch(place, course.side, layer.middle.at(place.at_m)));
    return strip.modulus_Pa * width_m * t * t * t / 12 * bent * bent / 2 * along;
}

double storedEnergy(const StackPlan& plan, const model::Stack& stack, const Course& course,
                    const std::vector<Layer>& layers) {
    double energy = 0;
    std::vector<double> before(layers.size(), 0);
    for (std::size_t j = 0; j < course.places.size(); ++j) {
        const line::Place& place = course.places[j];
        const double width = ripWidthAt(stack, place.at_m);
        const double step = j == 0 ? 0 : place.at_m - course.places[j - 1].at_m;
        for (std::size_t i = 0; i < layers.size(); ++i) {
            const Strip& strip = plan.strips[i];
            const bool here = place.at_m >= strip.startsAt_m && place.at_m <= strip.endsAt_m;
            const model::Strips& strips = stack.strips[strip.group];
            const double density = here ? energyDensity(course, layers[i], strip, strips, width, place) : 0;
            energy += (before[i] + density) / 2 * step;
            before[i] = density;
        }
    }
    return energy;
}

Stagger staggerOf(const model::Stack& stack, const Course& course, const line::Line& line,
                  const std::vector<Layer>& layers, double heldAt_m) {
    SumPlaces kept;
    const auto slide = [&](double from_m, double to_m) {
        return lengthBeside(line, course.side, layers.back().middle, from_m, to_m, &kept) -
               lengthBeside(line, course.side, layers.front().middle, from_m, to_m, &kept);
    };
    Stagger stagger;
    stagger.pinnedAt_m = stack.pins.empty() ? heldAt_m : stack.pins.front().at_m;
    stagger.start_m = slide(course.run.from_m, stagger.pinnedAt_m);
    stagger.end_m = slide(stagger.pinnedAt_m, course.run.to_m);
    std::vector<double> pins;
    for (const model::Pin& pin : stack.pins) pins.push_back(pin.at_m);
    std::ranges::sort(pins);
    for (std::size_t i = 1; i < pins.size(); ++i) {
        const double between = slide(pins[i - 1], pins[i]);
        if (std::abs(between) > std::abs(stagger.pinsSlide_m)) stagger.pinsSlide_m = between;
    }
    stagger.pinsForbidSliding = std::abs(stagger.pinsSlide_m) > pinsLetPass_m;
    return stagger;
}

void drawFaces(StackPlan& plan, const model::Stack& stack, const Course& course, const std::vector<Layer>& layers) {
    std::vector<std::vector<line::Xy>> faces(layers.size() + 1);
    std::vector<std::vector<double>> strains(layers.size());
    for (const line::Place& place : course.places) {
        plan.at_m.push_back(place.at_m);
        plan.width_m.push_back(widthAt(stack, place.at_m));
        faces[0].push_back(pointBeside(place, course.side, layers.front().inner.at(place.at_m)));
        for (std::size_t i = 0; i < layers.size(); ++i) {
            const double share = stillToBend(stack.strips[layers[i].group]);
            faces[i + 1].push_back(pointBeside(place, course.side, layers[i].outer.at(place.at_m)));
            strains[i].push_back(layers[i].thicknessAt(place.at_m) * share * bendOf(course, layers[i], place) / 2);
        }
    }
    plan.faces = std::move(faces);
    plan.strains = std::move(strains);
}

RoomFound fitOf(const StackPlan& plan, const Course& course, const std::vector<Layer>& layers) {
    RoomFound fit;
    const auto look = [&](const line::Place& place) {
        const double least = std::min(stretch(place, course.side, layers.front().inner.at(place.at_m)),
                                      stretch(place, course.side, layers.back().outer.at(place.at_m)));
        if (least >= fit.leastStretch) return;
        fit.leastStretch = least;
        if (least <= 0) fit.noRoomAt_m = place.at_m;
    };
    for (const line::Place& place : course.places) look(place);
    for (const line::Place& place : course.peaks) look(place);

    // Faces without room fold over themselves; then only the line itself is asked.
    std::vector<line::Xy> given;
    for (const line::Place& place : course.places) given.push_back({place.x_m, place.y_m});
    std::vector<std::vector<line::Xy>> curves{given};
    if (!fit.noRoomAt_m) {
        const std::size_t middle = layers.size() / 2;
        curves = {plan.faces.front(), plan.faces.back()};
        // The middle of the stack catches a cap that lies within it.
        std::vector<line::Xy> within;
        for (const line::Place& place : course.places) {
            within.push_back(pointBeside(place, course.side, layers[middle].middle.at(place.at_m)));
        }
        curves.insert(curves.begin() + 1, within);
    }
    if (const auto crossing = firstCrossing(curves)) {
        fit.crossesAt_m = course.places[crossing->index].at_m;
        fit.crossesAgainAt_m = course.places[crossing->other].at_m;
    }
    return fit;
}

}  // namespace

StackPlan planStack(const model::Stack& stack, model::Describes describes, model::Side side, const line::Line& line,
                    const std::vector<wood::Species>& species, double heldAt_m) {
    checkStack(stack);
    const std::vector<const wood::Species*> woods = woodsOf(stack, species);
    const std::vector<Layer> strips = layers(stack, describes, line.length());
    const Course course = courseOf(stack, side, line);

    StackPlan plan{.strips = stripsOf(stack, woods, course, line, strips), .tightestAt_m = line.tightest().at_m};
    stiffen(plan, stack, strips, plan.tightestAt_m);
    plan.storedEnergy_J = storedEnergy(plan, stack, course, strips);
    plan.stagger = staggerOf(stack, course, line, strips, heldAt_m);
    drawFaces(plan, stack, course, strips);

    std::vector<double> chances;
    double whole = 1;
    for (const Strip& strip : plan.strips) {
        chances.push_back(strip.chanceOfBreaking);
        whole *= 1 - strip.chanceOfBreaking;
    }
    plan.chanceAnyBreaks = 1 - whole;
    plan.spares = wood::sparesNeeded(chances);
    plan.limits = limitsOf(stack, woods, plan, fitOf(plan, course, strips));
    return plan;
}

}  // namespace fayline::laminate
