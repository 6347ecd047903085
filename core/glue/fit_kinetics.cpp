#include <gsl/gsl_errno.h>
#include <gsl/gsl_multifit_nlinear.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <new>
#include <optional>

#include "core/glue/pot_life.hpp"
#include "core/units/input_error.hpp"

namespace fayline::glue {

namespace {

constexpr double vesselOverMix = 2;  // the data sheet's cup against its mix
constexpr double temperaturesDiffer_K = 3;
constexpr double massesDiffer = 1.5;
constexpr double leastEnergy_J_mol = 20e3;
constexpr double mostEnergy_J_mol = 150e3;
constexpr double pointsMeetWithin = 2;  // a factor

// What is fitted: always K, then E, then the heat loss.
struct KineticsFit {
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

    // Logarithm of computed over given time; not a number where the equation could not be integrated.
    double misfit(const Kinetics& kinetics, const PotLifePoint& point) const {
        const double density = adhesive->mixDensity_kg_m3();
        const Fill fill = fillOf(model::Vessel::cup, vesselOverMix * point.mass_kg / density, point.mass_kg, density);
        Kinetics ofSheet = kinetics;
        ofSheet.lossFactor *= kinetics.sheetLoss;
        const PotLifeOf life = potLife(ofSheet, fill, point.at_C, point.at_C);
        return life.settled ? std::log(std::min(life.lasts_s, 1e9) / point.lasts_s)
                            : std::numeric_limits<double>::quiet_NaN();
    }
};

int misfits(const gsl_vector* by, void* with, gsl_vector* out) {
    const KineticsFit& fit = *static_cast<const KineticsFit*>(with);
    const Kinetics kinetics = fit.at(by);
    for (std::size_t i = 0; i < fit.adhesive->potLives.size(); ++i) {
        const double misfit = fit.misfit(kinetics, fit.adhesive->potLives[i]);
        if (!std::isfinite(misfit)) return GSL_EBADFUNC;
        gsl_vector_set(out, i, misfit);
    }
    return GSL_SUCCESS;
}

void checkPoints(const Adhesive& adhesive, const std::string& path) {
    if (adhesive.potLives.empty()) {
        throw units::InputError(path + ".pot_life_min", "is missing", "give the pot life of the data sheet");
    }
    for (const PotLifePoint& point : adhesive.potLives) {
        if (!(point.lasts_s > 0) || !(point.mass_kg > 0)) {
            throw units::InputError(path + ".pot_life_min", "a pot life of nothing is none",
                                    "give time and mass of the data sheet, both above 0");
        }
    }
}

double spread(const std::vector<PotLifePoint>& points, double PotLifePoint::*member, bool ratio) {
    const auto [least, most] =
        std::ranges::minmax_element(points, [member](const auto& a, const auto& b) { return a.*member < b.*member; });
    return ratio ? (*most).*member / (*least).*member : (*most).*member - (*least).*member;
}

[[noreturn]] void cannotBeFitted(const std::string& path) {
    throw units::InputError(path + ".pot_life_min", "no cure comes out that lasts so long",
                            "give the pot life of the data sheet, with the temperature and the mass it is for");
}

// Few unknowns, each of them once: Newton's method with secants would do, least squares does as well. Where it ends
// without having settled, the misfit says how far off it is.
Kinetics solve(KineticsFit& fit, const std::string& path) {
    const std::size_t points = fit.adhesive->potLives.size();
    const std::size_t unknowns = fit.unknowns();
    gsl_multifit_nlinear_parameters parameters = gsl_multifit_nlinear_default_parameters();
    parameters.h_df = 1e-4;
    const std::unique_ptr<gsl_multifit_nlinear_workspace, void (*)(gsl_multifit_nlinear_workspace*)> work(
        gsl_multifit_nlinear_alloc(gsl_multifit_nlinear_trust, &parameters, points, unknowns),
        gsl_multifit_nlinear_free);
    const std::unique_ptr<gsl_vector, void (*)(gsl_vector*)> begin(gsl_vector_calloc(unknowns), gsl_vector_free);
    if (!work || !begin) throw std::bad_alloc();
    gsl_multifit_nlinear_fdf problem{};
    problem.f = misfits;
    problem.n = points;
    problem.p = unknowns;
    problem.params = &fit;
    if (gsl_multifit_nlinear_init(begin.get(), &problem, work.get()) != GSL_SUCCESS) cannotBeFitted(path);
    int why = 0;
    const int ended = gsl_multifit_nlinear_driver(40, 1e-7, 1e-9, 1e-9, nullptr, nullptr, &why, work.get());
    if (ended != GSL_SUCCESS && ended != GSL_EMAXITER && ended != GSL_ENOPROG) cannotBeFitted(path);
    return fit.at(gsl_multifit_nlinear_position(work.get()));
}

bool heats(const Adhesive& adhesive) {
    return adhesive.kind == model::AdhesiveKind::epoxy;
}

// One point and one unknown: secants of the logarithm of its time over that of K, which fall with a slope near to -1.
// What does not settle is left to the least squares.
std::optional<Kinetics> solveOne(const KineticsFit& fit) {
    constexpr int most = 20;
    constexpr double settled = 1e-9;
    const PotLifePoint& point = fit.adhesive->potLives.front();
    Kinetics kinetics = fit.start;
    double slope = -1;
    double misfit = fit.misfit(kinetics, point);
    for (int i = 0; i < most && std::isfinite(misfit); ++i) {
        if (std::abs(misfit) < settled) return kinetics;
        const double step = std::clamp(-misfit / slope, -2.0, 2.0);
        kinetics.rate_per_s *= std::exp(step);
        const double after = fit.misfit(kinetics, point);
        slope = std::clamp((after - misfit) / step, -4.0, -0.25);
        misfit = after;
    }
    return std::nullopt;
}

// From `assumed`, of which heat, capacity and the loss of the sheet's cup stay as they are; its K is a first guess, if
// it has one.
Kinetics fitFrom(const Adhesive& adhesive, const Kinetics& assumed, const std::string& path) {
    checkPoints(adhesive, path);
    const PotLifePoint& first = adhesive.potLives.front();
    KineticsFit fit{&adhesive, assumed, false, false};
    fit.start.reference_C = first.at_C;
    if (!(assumed.rate_per_s > 0)) {
        // As if the cup stayed at its temperature.
        fit.start.rate_per_s = 1;
        fit.start.rate_per_s = filmReaches(fit.start, first.at_C, fit.start.gel) / first.lasts_s;
    }
    const std::size_t points = adhesive.potLives.size();
    KineticsFit all = fit;
    all.energy = points > 1 && spread(adhesive.potLives, &PotLifePoint::at_C, false) >= temperaturesDiffer_K;
    all.loss = fit.start.heat_J_kg > 0 && points > (all.energy ? 2u : 1u) &&
               spread(adhesive.potLives, &PotLifePoint::mass_kg, true) >= massesDiffer;
    // Where the points say what cups lose, nothing is assumed of the sheet's own.
    if (all.loss) fit.start.sheetLoss = 1;
    const std::optional<Kinetics> one = points == 1 ? solveOne(fit) : std::nullopt;
    Kinetics kinetics = one ? *one : solve(fit, path);
    if (all.energy || all.loss) {
        // Two points of a mass may be met by a heat loss near to the usual and by one many times that; from what meets
        // them best with the usual one, the nearer is found.
        all.start = kinetics;
        fit = all;
        kinetics = solve(fit, path);
    }
    kinetics.energyFitted = all.energy;
    kinetics.lossFitted = all.loss;
    for (const PotLifePoint& point : adhesive.potLives) {
        const double misfit = fit.misfit(kinetics, point);
        if (!std::isfinite(misfit)) cannotBeFitted(path);
        kinetics.worstMisfit = std::max(kinetics.worstMisfit, std::expm1(std::abs(misfit)));
    }
    return kinetics;
}

}  // namespace

Kinetics fitKinetics(const Adhesive& adhesive, const std::string& path) {
    Kinetics usual;
    if (!heats(adhesive)) usual.heat_J_kg = 0;
    const Kinetics kinetics = fitFrom(adhesive, usual, path);
    const bool likely = kinetics.energy_J_mol >= leastEnergy_J_mol && kinetics.energy_J_mol <= mostEnergy_J_mol;
    if (!likely || kinetics.worstMisfit > pointsMeetWithin - 1) {
        throw units::InputError(path + ".more_pot_lives", "the points contradict each other",
                                "give pot lives that fall as it gets warmer and the mix larger");
    }
    return kinetics;
}

Fitted fitWithEnds(const Adhesive& adhesive, const std::string& path) {
    Fitted fitted{fitKinetics(adhesive, path), {}};
    if (!heats(adhesive)) return fitted;
    Kinetics slow{.heat_J_kg = leastHeat_J_kg, .capacity_J_kgK = mostCapacity_J_kgK, .sheetLoss = leastSheetLoss};
    Kinetics quick;
    quick.sheetLoss = mostSheetLoss;
    if (adhesive.potLives.size() == 1) slow.rate_per_s = quick.rate_per_s = fitted.likely.rate_per_s;
    fitted.ends.push_back(fitFrom(adhesive, slow, path));
    if (!fitted.likely.lossFitted) fitted.ends.push_back(fitFrom(adhesive, quick, path));
    return fitted;
}

}  // namespace fayline::glue
