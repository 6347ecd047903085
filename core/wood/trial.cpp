#include "core/wood/trial.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/math/count.hpp"
#include "core/math/quadrature.hpp"
#include "core/math/root.hpp"
#include "core/units/display.hpp"
#include "core/units/input_error.hpp"
#include "core/units/scale.hpp"
#include "core/units/units.hpp"
#include "core/wood/bending.hpp"
#include "core/wood/student.hpp"

namespace fayline::wood {

namespace {

using units::InputError;

constexpr double modulusOverShear = 16;
constexpr double waterDensity_kg_m3 = 1000;
constexpr double tabulatedAt = 0.12;

// Own weight as a weight in the middle that sags as much (5/384 against 1/48), and that strains as much (1/8 against
// 1/4).
constexpr double ownWeightSags = 0.625;
constexpr double ownWeightStrains = 0.5;

std::string shown(double value) {
    return std::isfinite(value) ? units::writeNumber(value, 4) : std::string("that which is no number");
}

std::string shownMm(double length_m) {
    return shown(units::toMillimetres(length_m));
}

// Integral of sqrt(sin u) for u from 0 to `slope`: with u = v^2 the integrand is smooth.
double rootSineTo(double slope_rad) {
    return math::gauss8([](double v) { return 2 * v * std::sqrt(std::sin(v * v)); }, 0, std::sqrt(slope_rad));
}

// The slope at which `value` (rising with the slope) is `wanted`; none: the strip would slip through before. Some eight
// steps where bisection takes fifty.
std::optional<double> slopeWhere(double Slung::*value, double wanted) {
    constexpr double flat_rad = 1e-18;  // nothing is wanted: as good as none, and still a shape
    if (!(wanted > 0)) return flat_rad;
    const auto off = [&](double slope_rad) { return slungAt(slope_rad).*value - wanted; };
    const double above = off(slipsThroughAt_rad);
    if (above < 0) return std::nullopt;
    return math::illinois(off, {0, -wanted, slipsThroughAt_rad, above}, 200,
                          [&](double, double left, double) { return std::abs(left) <= 1e-15 * wanted; });
}

void needAbove0(double value, double shownValue, const std::string& path, const std::string& what) {
    if (std::isfinite(value) && value > 0) return;
    throw InputError(path, shown(shownValue) + " is not a " + what, "give a number above 0");
}

void checkFigures(const model::Trial& trial, const std::string& path) {
    const auto mm = [](double m) { return units::toMillimetres(m); };
    needAbove0(trial.span_m, mm(trial.span_m), path + "span_mm", "span");
    needAbove0(trial.width_m, mm(trial.width_m), path + "width_mm", "width");
    needAbove0(trial.thickness_m, mm(trial.thickness_m), path + "thickness_mm", "thickness");
    needAbove0(trial.weight_kg, trial.weight_kg, path + "weight_kg", "weight");
    needAbove0(trial.sag_m, mm(trial.sag_m), path + "sag_mm", "sag");
    if (!(std::isfinite(trial.readTo_m) && trial.readTo_m >= 0)) {
        throw InputError(path + "read_to_mm", shownMm(trial.readTo_m) + " is not a step of reading", "give 0 or more");
    }
    if (!(trial.moisture >= 0 && trial.moisture <= 2)) {
        throw InputError(path + "moisture_pct", shown(100 * trial.moisture) + " is not a moisture", "give 0 to 200");
    }
    if (trial.span_m < leastSpanOverThickness * trial.thickness_m) {
        throw InputError(path + "span_mm",
                         "a span of " + shownMm(trial.span_m) + " is shorter than ten thicknesses, where shear and " +
                             "the marks of the supports are most of the sag",
                         "give " + shownMm(leastSpanOverThickness * trial.thickness_m) + " or more, better " +
                             shownMm(30 * trial.thickness_m));
    }
    if (trial.sag_m > mostSagOverSpan * trial.span_m) {
        throw InputError(path + "sag_mm",
                         "a sag of " + shownMm(trial.sag_m) + " is more than a fifth of the span; there the strip " +
                             "slides on its supports, and at " + shownMm(slipsThroughSag * trial.span_m) +
                             " it slips through between them",
                         "give a sag of up to " + shownMm(mostSagOverSpan * trial.span_m) +
                             ", with a smaller weight, best a twentieth of the span");
    }
}

// Of the strip between its supports, newtons; 0 where nothing is known of the wood. Dry mass by specific gravity on the
// volume at 12 %, and the water.
double ownWeightOf(const model::Trial& trial, const Species* wood) {
    if (!wood) return 0;
    const double density = waterDensity_kg_m3 * wood->sg.value * (1 + trial.moisture);
    return units::standardGravity_m_s2 * density * trial.width_m * trial.thickness_m * trial.span_m;
}

// Stiffness (modulus x inertia) of a strip that sags by `sag_m` more under `weight_N` than under `own_N` alone, both in
// the middle. Own weight changes the answer only through the large sag, so the steps settle at once.
std::optional<double> stiffnessFrom(double sag_m, double weight_N, double own_N, double span_m) {
    double hung_m = own_N / weight_N * sag_m;
    std::optional<double> stiffness;
    for (int step = 0; step < 60; ++step) {
        const auto slope = slopeWhere(&Slung::sag, (sag_m + hung_m) / span_m);
        if (!slope) return std::nullopt;
        stiffness = (weight_N + own_N) * span_m * span_m / slungAt(*slope).load;
        const auto ownSlope = slopeWhere(&Slung::load, own_N * span_m * span_m / *stiffness);
        if (!ownSlope) return std::nullopt;
        const double before = hung_m;
        hung_m = slungAt(*ownSlope).sag * span_m;
        if (std::abs(hung_m - before) < 1e-12 * span_m) return stiffness;
    }
    return std::nullopt;
}

double variance(double readTo_m, double of_m) {
    return readTo_m * readTo_m / 12 / (of_m * of_m);
}

// Share of the modulus by which it may be off, one standard deviation.
double readingError(const model::Trial& trial, double sagOverSpan) {
    const double sag = 2 * variance(trial.readTo_m, trial.sag_m);
    const double thickness = 9 * variance(sectionReadTo_m, trial.thickness_m);
    const double width = variance(sectionReadTo_m, trial.width_m);
    const double span = 9 * variance(spanReadTo_m, trial.span_m);
    // Friction along the strip pulls it straight with mu W / 2: like a tie, sag falls by the share of that in the load
    // under which the strip would buckle, 48 mu / (2 pi^2) of sag / span.
    const double friction = 24 / (std::numbers::pi * std::numbers::pi) * frictionLeft * sagOverSpan;
    return std::sqrt(sag + thickness + width + span + friction * friction);
}

void refuseUnbroken(const model::Trial& trial, double stress_Pa, const Species& wood, const std::string& path) {
    if (trial.broke) return;
    const double mean_Pa = wood.mor_Pa.value * moistureFactorRupture(wood, trial.moisture);
    const double most_Pa = mean_Pa * (1 + 3 * ruptureScatter);
    if (stress_Pa <= most_Pa) return;
    const double most_kg = trial.weight_kg * most_Pa / stress_Pa;
    throw InputError(path + "weight_kg",
                     "under " + shown(trial.weight_kg) + " kg this strip would bear " +
                         units::writeStress(stress_Pa, {}) + ", and " + wood.name + " breaks at " +
                         units::writeStress(mean_Pa, {}) + " in the mean",
                     "give a weight below " + units::writeNumber(most_kg, 2) + " kg, or say that it broke");
}

struct MeanRange {
    double mean = 0;
    double within = 0;
};

// Mean and the 95 % range of it; `scatter` between strips of one wood, a share; `reading` the mean share of one
// reading.
MeanRange meanOf(const std::vector<double>& values, double scatter, double reading) {
    const auto count = static_cast<double>(values.size());
    MeanRange spread;
    for (const double value : values) spread.mean += value / count;
    double squares = scatterCountsAs * std::pow(scatter * spread.mean, 2);
    for (const double value : values) squares += (value - spread.mean) * (value - spread.mean);
    const int degreesOfFreedom = scatterCountsAs + math::countOf(values) - 1;
    const double variance = std::max(squares / degreesOfFreedom, std::pow(reading * spread.mean, 2));
    spread.within = studentRange95(degreesOfFreedom) * std::sqrt(variance / count);
    return spread;
}

struct Gathered {
    WoodMeasured wood;
    std::vector<double> moduli;
    std::vector<double> errors;  // shares
    std::vector<double> strains;
    double moistures = 0;
};

Gathered& gatheredOf(std::vector<Gathered>& woods, const std::string& species) {
    const auto found = std::ranges::find_if(woods, [&](const Gathered& g) { return g.wood.species == species; });
    if (found != woods.end()) return *found;
    woods.push_back({});
    woods.back().wood.species = species;
    return woods.back();
}

void add(Gathered& gathered, const model::Trial& trial, const TrialResult& result) {
    ++gathered.wood.trials;
    gathered.moistures += trial.moisture;
    if (!trial.broke) {
        gathered.moduli.push_back(result.modulus_Pa);
        gathered.errors.push_back(result.modulusError_Pa / result.modulus_Pa);
        return;
    }
    ++gathered.wood.broken;
    gathered.strains.push_back(*result.breakingStrain);
}

WoodMeasured summed(const Gathered& gathered) {
    WoodMeasured wood = gathered.wood;
    if (wood.trials > 0) wood.moisture = gathered.moistures / wood.trials;
    if (!gathered.moduli.empty()) {
        double reading = 0;
        for (const double error : gathered.errors) reading += error / static_cast<double>(gathered.errors.size());
        const MeanRange spread = meanOf(gathered.moduli, modulusScatter, reading);
        wood.modulus_Pa = spread.mean;
        wood.modulusError_Pa = spread.within;
    }
    if (!gathered.strains.empty()) {
        const MeanRange spread = meanOf(gathered.strains, ruptureScatter, 0);
        wood.breakingStrain = spread.mean;
        wood.breakingStrainError = spread.within;
    }
    return wood;
}

}  // namespace

Slung slungAt(double slope_rad) {
    if (slope_rad <= 0) return {};
    const double sine = std::sin(slope_rad);
    const double cosine = std::cos(slope_rad);
    const double root = std::sqrt(sine);
    const double integral = rootSineTo(slope_rad);
    const double along = 2 * root * cosine + integral * sine;
    const double down = 2 * root * sine - integral * cosine;
    return {down / (2 * along), 4 * cosine * along * along, 2 * along * root};
}

TrialResult trialResult(const model::Trial& trial, const std::string& path, const std::vector<Species>& species) {
    checkFigures(trial, path);
    const Species* wood = findSpecies(species, trial.species);
    const double t = trial.thickness_m;
    const double span = trial.span_m;
    const double inertia = trial.width_m * t * t * t / 12;
    const double weight = units::standardGravity_m_s2 * trial.weight_kg;
    const double own = ownWeightOf(trial, wood);
    const double shear = 1.2 * modulusOverShear * (t / span) * (t / span);

    TrialResult result{.simpleModulus_Pa = weight * span * span * span / (48 * inertia * trial.sag_m),
                       .sagOverSpan = trial.sag_m / span,
                       .shearShare = shear / (1 + shear)};
    const double bent_m = trial.sag_m / (1 + shear);
    const auto stiffness = stiffnessFrom(bent_m, weight, ownWeightSags * own, span);
    if (!stiffness) {
        throw InputError(path + "sag_mm",
                         "with its own weight of " + shown(own / units::standardGravity_m_s2) +
                             " kg this strip would slip through between its supports",
                         "give a smaller sag from a greater weight, or a shorter span");
    }
    result.modulus_Pa = *stiffness / inertia;
    result.modulusError_Pa = result.modulus_Pa * readingError(trial, result.sagOverSpan);
    result.largeSagShare = result.modulus_Pa / (result.simpleModulus_Pa * (1 + shear)) - 1;

    const auto slopeUnder = [&](double load_N) {
        return slopeWhere(&Slung::load, load_N * span * span / *stiffness).value_or(slipsThroughAt_rad);
    };
    result.ownWeightSag_m = slungAt(slopeUnder(ownWeightSags * own)).sag * span;
    result.strain = slungAt(slopeUnder(weight + ownWeightStrains * own)).curvature / span * t / 2;
    result.stress_Pa = result.modulus_Pa * result.strain;
    if (wood) refuseUnbroken(trial, result.stress_Pa, *wood, path);
    if (trial.broke) {
        result.rupture_Pa = result.stress_Pa;
        result.breakingStrain = result.strain;
    }
    return result;
}

std::vector<WoodMeasured> woodsMeasured(const std::vector<model::Trial>& trials, const std::vector<Species>& species) {
    std::vector<Gathered> woods;
    for (std::size_t i = 0; i < trials.size(); ++i) {
        Gathered& gathered = gatheredOf(woods, trials[i].species);
        try {
            add(gathered, trials[i], trialResult(trials[i], "trials[" + std::to_string(i) + "].", species));
        } catch (const InputError& error) {
            gathered.wood.leftOut.push_back(error.what());
        }
    }
    std::vector<WoodMeasured> measured;
    for (const Gathered& gathered : woods) measured.push_back(summed(gathered));
    return measured;
}

}  // namespace fayline::wood
