// How long a mix lasts: in its cup, which heats itself, and as a film, which does not.
//
//     d alpha/dt = K exp(-E/R (1/T - 1/T0)) (c0 + alpha) (1 - alpha)^2        m cp dT/dt = m H d alpha/dt - U A (T -
//     T_air)
//
// with K such that the data sheet's own point comes out, E 52 kJ/mol unless the data give it, H 486 J/g (P, abstract),
// cp 2.1 J/(g K) (P), the mix used up at gel, alpha = 0.577 (M), or where it has warmed to the limit of the data
// sheet's definition. An estimate: a film follows Arrhenius alone.
#pragma once

#include <vector>

#include "core/boat/boat.hpp"
#include "core/glue/adhesive.hpp"

namespace fayline::glue {

struct Kinetics {
    double rate_per_s = 0;       // K at T0
    double reference_C = 25;     // T0
    double energy_J_mol = 52e3;  // E
    double start = 0.0;          // c0
    double heat_J_kg = 486e3;    // H
    double capacity_J_kgK = 2.1e3;
    double gel = 0.577;
    double worstMisfit = 0;     // of the points fitted, share of their time
    bool energyFitted = false;  // two or more points at different temperatures
    measure::Source source;
};

// The kinetics that the points give: one: K; two: K and E (or the heat loss, where only the mass differs); three or
// more: least squares of the logarithms. Throws InputError with `path`.
Kinetics fitKinetics(const Adhesive& adhesive, const std::string& path);

// How a vessel sheds heat: surface of a fill of this mass, and U.
struct Fill {
    double mass_kg = 0;
    double area_m2 = 0;  // free surface and wetted walls
    double depth_m = 0;
    double loss_W_m2K = 0;  // U
};
Fill fillOf(boat::Vessel vessel, double cup_m3, double mass_kg, double density_kg_m3);

struct PotLifeOf {
    double lasts_s = 0;  // until it is used up
    double peak_C = 0;   // of what stays in the cup
    double peakAt_s = 0;
    bool smokes = false;       // passes 100 C
    std::vector<double> at_s;  // for a plot
    std::vector<double> mix_C;
    std::vector<double> cured;  // alpha
};
PotLifeOf potLife(const Kinetics& kinetics, const Fill& fill, double air_C, double mix_C);

// Open time of a spread film at this temperature, seconds; cure proceeds so much faster than at the data sheet's own.
double openTime(const Adhesive& adhesive, const Kinetics& kinetics, double air_C);
double speedAgainst(const Kinetics& kinetics, double air_C, double reference_C);

}  // namespace fayline::glue
