#include <gsl/gsl_errno.h>
#include <gsl/gsl_multifit_nlinear.h>

#include <algorithm>
#include <cmath>
#include <memory>

#include "core/glue/pot_life.hpp"
#include "core/measure/input_error.hpp"

namespace fayline::glue {

namespace {

constexpr double vesselOverMix = 2;  // the data sheet's cup against its mix
constexpr double temperaturesDiffer_K = 3;
constexpr double massesDiffer = 1.5;
constexpr double leastEnergy_J_mol = 20e3;
constexpr double mostEnergy_J_mol = 150e3;
constexpr double pointsMeetWithin = 2;  // a factor

// What is fitted: always K, then E, then the heat loss.
struct Fit {
    const Adhesive* adhesive = nullptr;
    Kinetics start;
    bool energy = false;
    bool loss = false;

    std::size_t unknowns() const { return 1 + (energy ? 1u : 0u) + (loss ? 1u : 0u); }

    Kinetics at(const gsl_vector* by) const {
        Kinetics kinetics = start;
        std::size_t i = 0;
        kinetics.rate_per_s *= std::exp(std::clamp(gsl_vector_get(by, i++), -20.0, 20.0));
        if (energy) {
            kinetics.energy_J_mol = std::clamp(start.energy_J_mol * std::exp(gsl_vector_get(by, i++)),
                                               leastEnergy_J_mol / 4, 4 * mostEnergy_J_mol);
        }
        if (loss) kinetics.lossFactor *= std::exp(std::clamp(gsl_vector_get(by, i++), -6.0, 6.0));
        return kinetics;
    }

    // Logarithm of computed over given time.
    double misfit(const Kinetics& kinetics, const PotLifePoint& point) const {
        const double density = adhesive->mixDensity_kg_m3();
        const Fill fill = fillOf(boat::Vessel::cup, vesselOverMix * point.mass_kg / density, point.mass_kg, density);
        const double lasts_s = potLife(kinetics, fill, point.at_C, point.at_C).lasts_s;
        return std::log(std::min(lasts_s, 1e9) / point.lasts_s);
    }
};

int misfits(const gsl_vector* by, void* with, gsl_vector* out) {
    const Fit& fit = *static_cast<const Fit*>(with);
    const Kinetics kinetics = fit.at(by);
    for (std::size_t i = 0; i < fit.adhesive->potLives.size(); ++i) {
        gsl_vector_set(out, i, fit.misfit(kinetics, fit.adhesive->potLives[i]));
    }
    return GSL_SUCCESS;
}

void checkPoints(const Adhesive& adhesive, const std::string& path) {
    if (adhesive.potLives.empty()) {
        throw measure::InputError(path + ".pot_life_min", "is missing", "give the pot life of the data sheet");
    }
    for (const PotLifePoint& point : adhesive.potLives) {
        if (!(point.lasts_s > 0) || !(point.mass_kg > 0)) {
            throw measure::InputError(path + ".pot_life_min", "a pot life of nothing is none",
                                      "give time and mass of the data sheet, both above 0");
        }
    }
}

double spread(const std::vector<PotLifePoint>& points, double PotLifePoint::*member, bool ratio) {
    const auto [least, most] = std::minmax_element(
        points.begin(), points.end(), [member](const auto& a, const auto& b) { return a.*member < b.*member; });
    return ratio ? (*most).*member / (*least).*member : (*most).*member - (*least).*member;
}

// Few unknowns, each of them once: Newton's method with secants would do, least squares does as well.
Kinetics solve(Fit& fit) {
    const std::size_t points = fit.adhesive->potLives.size();
    const std::size_t unknowns = fit.unknowns();
    gsl_multifit_nlinear_parameters parameters = gsl_multifit_nlinear_default_parameters();
    parameters.h_df = 1e-4;
    const std::unique_ptr<gsl_multifit_nlinear_workspace, void (*)(gsl_multifit_nlinear_workspace*)> work(
        gsl_multifit_nlinear_alloc(gsl_multifit_nlinear_trust, &parameters, points, unknowns),
        gsl_multifit_nlinear_free);
    const std::unique_ptr<gsl_vector, void (*)(gsl_vector*)> begin(gsl_vector_calloc(unknowns), gsl_vector_free);
    gsl_multifit_nlinear_fdf problem{};
    problem.f = misfits;
    problem.n = points;
    problem.p = unknowns;
    problem.params = &fit;
    gsl_multifit_nlinear_init(begin.get(), &problem, work.get());
    int why = 0;
    gsl_multifit_nlinear_driver(40, 1e-7, 1e-9, 1e-9, nullptr, nullptr, &why, work.get());
    return fit.at(gsl_multifit_nlinear_position(work.get()));
}

}  // namespace

Kinetics fitKinetics(const Adhesive& adhesive, const std::string& path) {
    checkPoints(adhesive, path);
    // The library's default is to abort the program; what it cannot do shows in the misfit.
    gsl_error_handler_t* const handler = gsl_set_error_handler_off();
    const PotLifePoint& first = adhesive.potLives.front();
    Fit fit{&adhesive, {}, false, false};
    fit.start.reference_C = first.at_C;
    if (adhesive.kind != boat::AdhesiveKind::epoxy) fit.start.heat_J_kg = 0;
    // As if the cup stayed at its temperature.
    fit.start.rate_per_s = 1;
    fit.start.rate_per_s = filmReaches(fit.start, first.at_C, fit.start.gel) / first.lasts_s;
    const std::size_t points = adhesive.potLives.size();
    Fit all = fit;
    all.energy = points > 1 && spread(adhesive.potLives, &PotLifePoint::at_C, false) >= temperaturesDiffer_K;
    all.loss = fit.start.heat_J_kg > 0 && points > (all.energy ? 2u : 1u) &&
               spread(adhesive.potLives, &PotLifePoint::mass_kg, true) >= massesDiffer;
    Kinetics kinetics = solve(fit);
    if (all.energy || all.loss) {
        // Two points of a mass may be met by a heat loss near to the usual and by one many times that; from what meets
        // them best with the usual one, the nearer is found.
        all.start = kinetics;
        fit = all;
        kinetics = solve(fit);
    }
    kinetics.energyFitted = all.energy;
    kinetics.lossFitted = all.loss;
    for (const PotLifePoint& point : adhesive.potLives) {
        kinetics.worstMisfit = std::max(kinetics.worstMisfit, std::expm1(std::abs(fit.misfit(kinetics, point))));
    }
    gsl_set_error_handler(handler);
    const bool likely = kinetics.energy_J_mol >= leastEnergy_J_mol && kinetics.energy_J_mol <= mostEnergy_J_mol;
    if (!likely || kinetics.worstMisfit > pointsMeetWithin - 1) {
        throw measure::InputError(path + ".more_pot_lives", "the points contradict each other",
                                  "give pot lives that fall as it gets warmer and the mix larger");
    }
    return kinetics;
}

}  // namespace fayline::glue
