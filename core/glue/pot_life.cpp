#include "core/glue/pot_life.hpp"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <new>
#include <numbers>

#include "core/math/hermite.hpp"
#include "core/math/root.hpp"
#include "core/units/input_error.hpp"

namespace fayline::glue {

namespace {

constexpr double airLoss_W_m2K = 10;
constexpr double conductivity_W_mK = 0.2;
constexpr double trayDepth_m = 0.020;
constexpr double week_s = 7 * 24 * 3600.0;

struct Cup {
    const Kinetics& kinetics;
    double air_K;
    double cooling_per_s;  // U A / (m cp)
    double heating_K;      // H / cp
};

double rate(const Kinetics& kinetics, double cured, double mix_K) {
    const double reference_K = kinetics.reference_C + zero_K;
    const double left = std::max(0.0, 1 - cured);
    return kinetics.rate_per_s * std::exp(-kinetics.energy_J_mol / gasConstant_J_molK * (1 / mix_K - 1 / reference_K)) *
           (kinetics.start + cured) * left * left;
}

int slopes(double, const double state[], double slope[], void* with) {
    const Cup& cup = *static_cast<const Cup*>(with);
    slope[0] = rate(cup.kinetics, state[0], state[1]);
    slope[1] = cup.heating_K * slope[0] - cup.cooling_per_s * (state[1] - cup.air_K);
    return GSL_SUCCESS;
}

struct Point {
    double at_s = 0;
    double value = 0;
    double slope = 0;
};

// When the curve between two points, which rises, reaches `value`.
double whenReached(const Point& from, const Point& to, double value) {
    const double step_s = to.at_s - from.at_s;
    const math::HermiteCubic curve(from.value, from.slope, to.value, to.slope, step_s);
    return from.at_s + step_s * math::bisection([&](double share) { return curve.at(share) < value; }, 0, 1, 0x1p-50);
}

// The highest point of the curve between two points, which rises at the first and falls at the second.
Point crestBetween(const Point& from, const Point& to) {
    const double step_s = to.at_s - from.at_s;
    const math::HermiteCubic curve(from.value, from.slope, to.value, to.slope, step_s);
    const double share = math::bisection([&](double u) { return curve.slope(u) > 0; }, 0, 1, 0x1p-30);
    return {from.at_s + step_s * share, curve.at(share), 0};
}

struct FreeStep {
    void operator()(gsl_odeiv2_step* step) const { gsl_odeiv2_step_free(step); }
    void operator()(gsl_odeiv2_control* control) const { gsl_odeiv2_control_free(control); }
    void operator()(gsl_odeiv2_evolve* evolve) const { gsl_odeiv2_evolve_free(evolve); }
};

}  // namespace

Fill fillOf(model::Vessel vessel, double vessel_m3, double mass_kg, double density_kg_m3) {
    constexpr double pi = std::numbers::pi;
    const double volume_m3 = mass_kg / density_kg_m3;
    const double across_m =
        vessel == model::Vessel::cup ? std::cbrt(4 * vessel_m3 / pi) : std::sqrt(4 * vessel_m3 / (pi * trayDepth_m));
    const double bottom_m2 = pi * across_m * across_m / 4;
    Fill fill{.mass_kg = mass_kg, .depth_m = volume_m3 / bottom_m2, .share = volume_m3 / vessel_m3};
    fill.area_m2 = 2 * bottom_m2 + pi * across_m * fill.depth_m;
    const double resistance = 1 / airLoss_W_m2K + volume_m3 / fill.area_m2 / (3 * conductivity_W_mK);
    fill.loss_W_m2K = 1 / resistance;
    return fill;
}

double speedAgainst(const Kinetics& kinetics, double air_C, double reference_C) {
    return std::exp(-kinetics.energy_J_mol / gasConstant_J_molK * (1 / (air_C + zero_K) - 1 / (reference_C + zero_K)));
}

PotLifeOf potLife(const Kinetics& kinetics, const Fill& fill, double air_C, double mix_C, bool withCurve) {
    const Cup cup{kinetics, air_C + zero_K,
                  kinetics.lossFactor * fill.loss_W_m2K * fill.area_m2 / (fill.mass_kg * kinetics.capacity_J_kgK),
                  kinetics.heat_J_kg / kinetics.capacity_J_kgK};
    gsl_odeiv2_system system{slopes, nullptr, 2, const_cast<Cup*>(&cup)};
    const std::unique_ptr<gsl_odeiv2_step, FreeStep> step(gsl_odeiv2_step_alloc(gsl_odeiv2_step_rk8pd, 2));
    const std::unique_ptr<gsl_odeiv2_control, FreeStep> control(gsl_odeiv2_control_y_new(1e-9, 1e-7));
    const std::unique_ptr<gsl_odeiv2_evolve, FreeStep> evolve(gsl_odeiv2_evolve_alloc(2));
    if (!step || !control || !evolve) throw std::bad_alloc();

    double at_s = 0;
    // No step is longer than what the curve between two steps bears, nor than what an explicit step stays stable at
    // where little glue lies spread out and comes to the temperature of the air within seconds.
    const double longest_s = 0.02 / rate(kinetics, 0.3, std::max(air_C, mix_C) + zero_K);
    const double stable_s = 3 / cup.cooling_per_s;
    double next_s = longest_s;
    double state[2] = {0, mix_C + zero_K};
    double slope[2];
    slopes(0, state, slope, const_cast<Cup*>(&cup));
    PotLifeOf result{.lasts_s = std::numeric_limits<double>::infinity(), .peak_C = mix_C};
    const auto unsettled = [&result] {
        result.settled = false;
        result.lasts_s = result.peak_C = result.peakAt_s = std::numeric_limits<double>::quiet_NaN();
        return result;
    };
    const auto keep = [&] {
        if (!withCurve) return;
        result.at_s.push_back(at_s);
        result.mix_C.push_back(state[1] - zero_K);
        result.cured.push_back(state[0]);
    };
    keep();
    while (at_s < week_s) {
        const Point before{at_s, state[0], slope[0]};
        const Point warmth{at_s, state[1], slope[1]};
        const double longer = before.value < kinetics.gel ? 8 : 20;  // shorter where the gel is read off the curve
        next_s = std::min({next_s, longest_s * (1 + longer * before.value * before.value), stable_s});
        if (gsl_odeiv2_evolve_apply(evolve.get(), control.get(), step.get(), &system, &at_s, week_s, &next_s, state) !=
            GSL_SUCCESS) {
            return unsettled();
        }
        slopes(at_s, state, slope, const_cast<Cup*>(&cup));
        if (!std::isfinite(state[0]) || !std::isfinite(state[1])) return unsettled();
        if (before.value < kinetics.gel && state[0] >= kinetics.gel) {
            result.lasts_s = whenReached(before, {at_s, state[0], slope[0]}, kinetics.gel);
        }
        const Point now{at_s, state[1], slope[1]};
        const Point warmest = warmth.slope > 0 && now.slope <= 0 ? crestBetween(warmth, now) : now;
        if (warmest.value - zero_K > result.peak_C) {
            result.peak_C = warmest.value - zero_K;
            result.peakAt_s = warmest.at_s;
        }
        keep();
        const bool cools = slope[1] <= 0 && at_s > 0;
        if (state[0] >= kinetics.gel && (cools || kinetics.heat_J_kg == 0)) break;
    }
    return result;
}

PotLifeRange potLifeRange(const Fitted& fitted, const Fill& fill, double air_C) {
    const auto of = [&](const Kinetics& kinetics) {
        PotLifeOf life = potLife(kinetics, fill, air_C, air_C);
        if (!life.settled) {
            throw units::InputError("glue.adhesive", "how long this mix lasts in its vessel cannot be worked out",
                                    "give the pot life of its data sheet, with temperature and mass");
        }
        return life;
    };
    const PotLifeOf likely = of(fitted.likely);
    PotLifeRange range{{likely.lasts_s, likely.lasts_s, likely.lasts_s}, {likely.peak_C, likely.peak_C, likely.peak_C}};
    const auto widen = [](Between& between, double value) {
        between.from = std::min(between.from, value);
        between.to = std::max(between.to, value);
    };
    for (const Kinetics& end : fitted.ends) {
        const PotLifeOf life = of(end);
        if (!fitted.massKnown()) widen(range.lasts_s, life.lasts_s);
        widen(range.peak_C, life.peak_C);
    }
    return range;
}

PotLives::PotLives(Fitted fitted, std::shared_ptr<const KnownLives> before)
    : fitted_(std::move(fitted)), before_(std::move(before)) {}

PotLifeRange PotLives::at(const Fill& fill, double air_C) const {
    const std::array<double, 4> asked{fill.mass_kg, fill.area_m2, fill.loss_W_m2K, air_C};
    const auto known = known_->find(asked);
    if (known != known_->end()) return known->second;
    const auto earlier = before_ ? before_->find(asked) : KnownLives::const_iterator{};
    const bool isKnown = before_ && earlier != before_->end();
    return known_->emplace(asked, isKnown ? earlier->second : potLifeRange(fitted_, fill, air_C)).first->second;
}

PotLifeByMass potLifeByMass(const Fitted& fitted, const Adhesive& adhesive, model::Vessel vessel, double vessel_m3,
                            double air_C) {
    constexpr int masses = 24;
    const double density = adhesive.mixDensity_kg_m3();
    PotLifeByMass lives{vessel, {}, {}, {}, {}};
    for (int i = 1; i <= masses; ++i) {
        const double mass_kg = vessel_m3 * density * i / masses;
        const Between lasts_s = potLifeRange(fitted, fillOf(vessel, vessel_m3, mass_kg, density), air_C).lasts_s;
        lives.mass_kg.push_back(mass_kg);
        lives.lasts_s.push_back(lasts_s.likely);
        lives.from_s.push_back(lasts_s.from);
        lives.to_s.push_back(lasts_s.to);
    }
    return lives;
}

double filmReaches(const Kinetics& kinetics, double air_C, double cured) {
    // The integral of d alpha / ((c0 + alpha) (1 - alpha)^2), by partial fractions.
    const auto integral = [c = kinetics.start](double alpha) {
        return (std::log((c + alpha) / (1 - alpha)) / (1 + c) + 1 / (1 - alpha)) / (1 + c);
    };
    return (integral(cured) - integral(0)) /
           (kinetics.rate_per_s * speedAgainst(kinetics, air_C, kinetics.reference_C));
}

double openTime(const Adhesive& adhesive, const Kinetics& kinetics, double air_C) {
    return adhesive.openTime_s / speedAgainst(kinetics, air_C, adhesive.openTimeAt_C);
}

}  // namespace fayline::glue
