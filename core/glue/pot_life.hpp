// How long a mix lasts: in its cup, which heats itself, and as a film, which does not.
//
//     d alpha/dt = K exp(-E/R (1/T - 1/T0)) (c0 + alpha) (1 - alpha)^2
//     m cp dT/dt = m H d alpha/dt - U A (T - T_air)
//
// alpha is the degree of cure, T in kelvin. Epoxy with an amine: E 52 kJ/mol, c0 1/15 (an engineering choice within
// published ranges, C: E 44 to 57, orders m + n = 2.5 to 3, Barral et al., J. Appl. Polym. Sci. 56 (1995), P,
// abstract), H 486 J/g (P, abstract), cp 2.1 J/(g K) (data sheet of a liquid resin, P). The mix is used up at gel,
// alpha = 0.577 (Flory and Stockmayer, 1/sqrt(3), M). K is such that the data sheet's own pot life comes out in a cup
// twice as large as the mix. Other glues do not heat themselves: H = 0. A film follows Arrhenius alone.
//
// An estimate, and to be told as one: a cup's real loss of heat is not known, and data sheets mean different things by
// pot life.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "core/boat/boat.hpp"
#include "core/glue/adhesive.hpp"
#include "core/measure/source.hpp"

namespace fayline::glue {

inline constexpr double gasConstant_J_molK = 8.314462618;
inline constexpr double zero_K = 273.15;
inline constexpr double smokes_C = 100;  // a mix that passes it smokes and may boil

struct Kinetics {
    double rate_per_s = 0;       // K at T0
    double reference_C = 25;     // T0
    double energy_J_mol = 52e3;  // E
    double start = 1.0 / 15;     // c0
    double heat_J_kg = 486e3;    // H
    double capacity_J_kgK = 2.1e3;
    double gel = 0.577;
    double lossFactor = 1;      // on the heat loss of every vessel, where points of different mass say so
    double worstMisfit = 0;     // of the points fitted, share of their time
    bool energyFitted = false;  // two or more points at different temperatures
    bool lossFitted = false;
};

// A mix in its vessel: what it holds and how it sheds heat.
struct Fill {
    double mass_kg = 0;
    double depth_m = 0;
    double area_m2 = 0;  // free surface, bottom and wetted walls
    double loss_W_m2K = 0;
    double share = 0;  // of the vessel's volume; above 1 it runs over
};

// A cup is as high as wide; a tray as large holds the same 20 mm deep. Heat leaves by 10 W/(m2 K) from all sides (free
// convection and radiation, C) after the mix's own resistance of depth over three times 0.2 W/(m K) (M, D).
Fill fillOf(boat::Vessel vessel, double vessel_m3, double mass_kg, double density_kg_m3);

// How fast the cure goes at `air_C` against `reference_C`: Arrhenius.
double speedAgainst(const Kinetics& kinetics, double air_C, double reference_C);

// The kinetics that the glue's points give. One point: K. Points at temperatures that differ by 3 K or more give E as
// well, masses that differ by half or more the heat loss, as far as there are as many points as unknowns; all points
// meet at least squares of the logarithms of their times.
// Throws InputError with `path` (of the glue) for points that no energy between 20 and 150 kJ/mol meets within a factor
// of two.
Kinetics fitKinetics(const Adhesive& adhesive, const std::string& path);

struct PotLifeOf {
    double lasts_s = 0;  // from mixing until it is used up; infinity: not within a week
    double peak_C = 0;   // if it is left in the vessel
    double peakAt_s = 0;
    // For a plot, if asked for.
    std::vector<double> at_s;
    std::vector<double> mix_C;
    std::vector<double> cured;
};

// What becomes of a fill mixed at `mix_C` in air of `air_C`. Against a stiff solver the time is within 1e-4 of itself, the
// peak, taken at the steps, within 1 K.
PotLifeOf potLife(const Kinetics& kinetics, const Fill& fill, double air_C, double mix_C, bool withCurve = false);

// How long a mix lasts by how much of it there is in its vessel, in air of `air_C` and mixed at that.
struct PotLifeByMass {
    boat::Vessel vessel = boat::Vessel::cup;
    std::vector<double> mass_kg;  // ascending, up to a full vessel
    std::vector<double> lasts_s;
};
PotLifeByMass potLifeByMass(const Kinetics& kinetics, const Adhesive& adhesive, boat::Vessel vessel, double vessel_m3,
                            double air_C);

// Time until a film that stays at `air_C` is cured to `cured` (0..1, not 1), seconds.
double filmReaches(const Kinetics& kinetics, double air_C, double cured);

// Open time of a spread film in this air, seconds: that of the data sheet, by Arrhenius.
double openTime(const Adhesive& adhesive, const Kinetics& kinetics, double air_C);

}  // namespace fayline::glue
