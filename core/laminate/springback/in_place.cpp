#include "core/laminate/springback/in_place.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/laminate/checks.hpp"
#include "core/laminate/layers.hpp"
#include "core/laminate/springback/release.hpp"
#include "core/units/units.hpp"
#include "core/wood/bending.hpp"

namespace fayline::laminate {

namespace {

using units::Cited;
using units::Mark;

// Modulus along the grain over that across it: common practice, no source.
constexpr double alongOverAcross = 12;
// Modulus of a cured glue line, from memory of data sheets of epoxy (M). It hardly counts: a film of 0.15 mm is as soft
// as 0.05 mm of wood.
constexpr double glueModulus_Pa = 3e9;

// The lowest mean tension across the grain at 12 % in Wood Handbook Table 5-3b: yellow-poplar among the hardwoods,
// Atlantic white cedar and western redcedar among the softwoods (M).
constexpr double leastHardwoodAcross_Pa = 540 * units::psi_Pa;
constexpr double leastSoftwoodAcross_Pa = 220 * units::psi_Pa;

// To the inside of where a strip ends.
constexpr double besideEnd_m = 1e-9;

std::vector<double> moduliByGroup(const model::Stack& stack, const StackPlan& plan) {
    std::vector<double> moduli(stack.strips.size());
    for (const Strip& strip : plan.strips) moduli[strip.group] = strip.modulus_Pa;
    return moduli;
}

const wood::Species& backboneOf(const model::Piece& piece, const std::vector<wood::Species>& species) {
    const std::string& named = piece.holding.backbone.species;
    if (!named.empty()) return woodNamed(named, "holding.backbone.species", species);
    return woodNamed(piece.stack.strips.front().species, "stack.strips[0].species", species);
}

struct Glued {
    std::vector<BentStrip> strips;
    Places places;
    double side = 1;
    double backbone_Pa = 0;  // modulus along its grain
    Cited across;            // tension across the grain, of the weaker
};

// Softness of the foundation per area, m/Pa: half the depth of the stack, as much of what it is glued to, and the glue
// line.
double softness(const Glued& glued, const Release& section, double at_m, double presentAt_m, double glueLine_m) {
    double depth = 0;
    double soft = 0;
    for (int place = glued.places.first; place <= glued.places.last; ++place) {
        const BentStrip& strip = glued.strips[place - 1];
        if (!strip.runs.bent.holds(presentAt_m)) continue;
        const double t = strip.layer.thicknessAt(at_m);
        depth += t;
        soft += t / (strip.modulus_Pa / alongOverAcross);
    }
    depth += std::max(0, section.strips - 1) * glueLine_m;
    const double across = glued.backbone_Pa / alongOverAcross;
    return soft / 2 + depth / 2 / across + glueLine_m / glueModulus_Pa;
}

// Pull of a fastening over the place of greatest pull in a hollow. On a half-infinite beam a force F at pi / (2 beta)
// from the end moves its own place by F beta / (2 c) (1 + e^(-pi)).
double fasteningInHollow(double moment_N_m, double decay_per_m) {
    const double pull = 2 * std::abs(moment_N_m) * decay_per_m * decay_per_m * std::exp(-std::numbers::pi / 2);
    return pull * 2 / decay_per_m / (1 + std::exp(-std::numbers::pi));
}

void pull(EndStress& end, double width_m) {
    const double atEnd = endStress(end.moment_N_m, end.decay_per_m, width_m);
    const bool hollow = atEnd < 0;
    end.peelFrom_m = hollow ? std::numbers::pi / 2 / end.decay_per_m : 0;
    end.peel_Pa = hollow ? -atEnd * std::exp(-std::numbers::pi / 2) : atEnd;
    end.wantsFastening = end.peel_Pa > end.acrossStrength_Pa;
    end.fasteningFrom_m = hollow ? end.peelFrom_m : 0.5 / end.decay_per_m;
    end.fastening_N = hollow ? fasteningInHollow(end.moment_N_m, end.decay_per_m)
                             : fasteningFor(end.moment_N_m, end.decay_per_m, end.fasteningFrom_m);
}

EndStress endOf(const Glued& glued, const model::Stack& stack, const line::Line& line, bool atStart) {
    EndStress end{.atStart = atStart,
                  .scarfed = atStart ? stack.scarfedStart.has_value() : stack.scarfedEnd.has_value()};
    const Run& last = glued.strips[glued.places.last - 1].runs.finished;
    end.at_m = atStart ? last.from_m : last.to_m;
    const double presentAt_m = end.at_m + (atStart ? besideEnd_m : -besideEnd_m);
    const line::Place place = line.at(end.at_m);
    const double width = widthAt(stack, end.at_m);
    const Release section = releaseAt(glued.strips, glued.places, place, glued.side, width, presentAt_m);
    const double k = stackCurvature(place, glued.side);
    const double room = stretch(place, glued.side, section.neutralAxisFromLine_m);
    end.moment_N_m = room > 0 ? section.wet_N_m2 * k / room : 0;
    end.base_N_m2 = width / softness(glued, section, end.at_m, presentAt_m, stack.glueLine_m);
    end.decay_per_m = decayOf(end.base_N_m2, section.solid_N_m2);
    end.acrossMean_Pa = glued.across.value;
    end.acrossStrength_Pa = lastingShareAcross * glued.across.value;
    end.acrossSource = glued.across.source;
    end.acrossSource.text += "; a quarter of it for good: common practice, no source";
    end.acrossSource.mark = Mark::commonPractice;
    if (!end.scarfed) pull(end, width);
    return end;
}

void tellSurface(StressLeft& left, const StackPlan& plan, const model::Stack& stack, double length_m) {
    const std::vector<Layer> all = layers(stack, model::Describes::innerFace, length_m);
    const auto look = [&](const Strip& strip, double strain, double at_m) {
        if (strip.sacrificial || strain * strip.modulus_Pa <= left.surfaceStress_Pa) return;
        left.surfaceStress_Pa = strain * strip.modulus_Pa;
        left.surfaceStressAt_m = at_m;
        left.surfaceShare = strain / strip.breakingStrain;
        left.surfacePlace = strip.place;
    };
    for (std::size_t i = 0; i < plan.strips.size(); ++i) {
        const Run finished = runsOf(stack, all, plan.strips[i].place, length_m).finished;
        if (finished.holds(plan.strips[i].strainAt_m))
            look(plan.strips[i], plan.strips[i].strain, plan.strips[i].strainAt_m);
        for (std::size_t j = 0; j < plan.at_m.size(); ++j) {
            if (finished.holds(plan.at_m[j])) look(plan.strips[i], plan.strains[i][j], plan.at_m[j]);
        }
    }
}

}  // namespace

double decayOf(double base_N_m2, double stiffness_N_m2) {
    assert(base_N_m2 > 0 && stiffness_N_m2 > 0);
    return std::pow(base_N_m2 / (4 * stiffness_N_m2), 0.25);
}

double endStress(double moment_N_m, double decay_per_m, double width_m) {
    return 2 * moment_N_m * decay_per_m * decay_per_m / width_m;
}

double fasteningFor(double moment_N_m, double decay_per_m, double from_m) {
    const double z = decay_per_m * from_m;
    if (z >= std::numbers::pi / 2) return std::numeric_limits<double>::infinity();
    return moment_N_m * decay_per_m * std::exp(z) / std::cos(z);
}

Cited tensionAcross(const wood::Species& species) {
    if (species.tensionAcross_Pa) return *species.tensionAcross_Pa;
    return {species.hardwood ? leastHardwoodAcross_Pa : leastSoftwoodAcross_Pa,
            {std::string("no value of this wood: the lowest that Wood Handbook Table 5-3b has for ") +
                 (species.hardwood ? "hardwoods" : "softwoods"),
             Mark::fromMemory}};
}

StressLeft stressLeft(const model::Piece& piece, const line::Line& line, const std::vector<wood::Species>& species,
                      const StackPlan& plan) {
    const model::Stack& stack = piece.stack;
    const wood::Species& backbone = backboneOf(piece, species);
    Glued glued;
    glued.strips = looseStrips(stack, piece.line.describes, line.length(), moduliByGroup(stack, plan));
    glued.places = partPlaces(glued.strips).front();
    glued.side = sideSign(piece.line.stripsOn);
    glued.backbone_Pa = wood::bending(backbone, stack.serviceMoisture, 0, std::nullopt).modulus_Pa;
    const Cited ofStrip = tensionAcross(woodNamed(stack.strips.front().species, "stack.strips[0].species", species));
    const Cited ofBackbone = tensionAcross(backbone);
    glued.across = ofStrip.value <= ofBackbone.value ? ofStrip : ofBackbone;

    StressLeft left{.start = endOf(glued, stack, line, true), .end = endOf(glued, stack, line, false)};
    tellSurface(left, plan, stack, line.length());
    return left;
}

}  // namespace fayline::laminate
