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
// What no sheet says: how much heat its own cup lost while its pot life was measured. The likeliest is that of a cup in
// still air. It may have been less (a foam cup) or a good deal more (a tin in a bath that is kept at its temperature):
// then the resin is quicker than the sheet lets believe, and the cup on the bench goes off sooner, a larger one much
// sooner. So every pot life and every peak is told with what comes out at both ends of that assumption, unless pot
// lives of two masses say what the cups lose. No table of pot life against mass is published (looked for).
//
// An estimate, and to be told as one: data sheets mean different things by pot life.
#pragma once

#include <array>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "core/glue/adhesive.hpp"
#include "core/model/boat.hpp"
#include "core/units/source.hpp"

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
    double sheetLoss = 1;       // on that of the data sheet's own cup besides: assumed
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
Fill fillOf(model::Vessel vessel, double vessel_m3, double mass_kg, double density_kg_m3);

// The heat that the data sheet's cup lost, over that of a cup in still air: 0.6 with walls and bottom of 3 mm of foam
// (0.035 W/(m K)), 6 with walls and bottom in a bath of water (300 W/(m2 K)). Of 100 g in a cup twice as large 0.68
// and 5.5 come out (D); the materials' values are common practice, no source.
inline constexpr double leastSheetLoss = 0.6;
inline constexpr double mostSheetLoss = 6;
// The least heat and the most heat capacity of such mixes: 400 to 500 J/g and 1.8 to 2.2 J/(g K) (M). They bound the
// peak from below; from above the values of the model itself do.
inline constexpr double leastHeat_J_kg = 400e3;
inline constexpr double mostCapacity_J_kgK = 2.2e3;

// How fast the cure goes at `air_C` against `reference_C`: Arrhenius.
double speedAgainst(const Kinetics& kinetics, double air_C, double reference_C);

// What the glue's points give.
struct Fitted {
    Kinetics likely;
    // At both ends of what is assumed: the slow and mild one, the quick and hot one. Empty for a glue that does not
    // heat itself. Where the points say what cups lose, both meet them and differ in their heat alone.
    std::vector<Kinetics> ends;

    bool massKnown() const { return ends.empty() || likely.lossFitted; }
};

// The likeliest kinetics that the glue's points give. One point: K. Points at temperatures that differ by 3 K or more
// give E as well, masses that differ by half or more the heat loss, as far as there are as many points as unknowns; all
// points meet at least squares of the logarithms of their times.
// Throws InputError with `path` (of the glue) for points that no energy between 20 and 150 kJ/mol meets within a factor
// of two.
Kinetics fitKinetics(const Adhesive& adhesive, const std::string& path);

// The same with both ends of what is assumed. Throws as fitKinetics does.
Fitted fitWithEnds(const Adhesive& adhesive, const std::string& path);

struct PotLifeOf {
    double lasts_s = 0;  // from mixing until it is used up; infinity: not within a week
    double peak_C = 0;   // if it is left in the vessel
    double peakAt_s = 0;
    bool settled = true;  // false: the equation could not be integrated, and the times are not a number
    // For a plot, if asked for.
    std::vector<double> at_s;
    std::vector<double> mix_C;
    std::vector<double> cured;
};

// What becomes of a fill mixed at `mix_C` in air of `air_C`. Against a stiff solver the time is within 1e-4 of itself,
// the peak, taken at the steps, within 1 K.
PotLifeOf potLife(const Kinetics& kinetics, const Fill& fill, double air_C, double mix_C, bool withCurve = false);

// The likeliest and the ends between which it may lie.
struct Between {
    double likely = 0;
    double from = 0;
    double to = 0;
};

struct PotLifeRange {
    Between lasts_s;  // infinity: not within a week. One value where the points say what cups lose.
    Between peak_C;
};

// What becomes of a fill mixed at the temperature of the air. Throws InputError from `glue.adhesive` where the equation
// cannot be integrated.
PotLifeRange potLifeRange(const Fitted& fitted, const Fill& fill, double air_C);

// What was worked out, by mass, area and loss of the fill and the air.
using KnownLives = std::map<std::array<double, 4>, PotLifeRange>;

// potLifeRange of one glue, each fill worked out once: batches are measured in whole steps of scale or cup, so the same
// masses come again with every step of a dragged point. Copies share what they know; not for several threads at once.
class PotLives {
public:
    // `before`: what was worked out earlier for the very same glue, or null.
    PotLives(Fitted fitted, std::shared_ptr<const KnownLives> before = nullptr);

    const Fitted& fitted() const { return fitted_; }
    // Throws as potLifeRange does.
    PotLifeRange at(const Fill& fill, double air_C) const;
    // All that was asked for here.
    std::shared_ptr<const KnownLives> known() const { return known_; }

private:
    Fitted fitted_;
    std::shared_ptr<const KnownLives> before_;
    std::shared_ptr<KnownLives> known_ = std::make_shared<KnownLives>();
};

// How long a mix lasts by how much of it there is in its vessel, in air of `air_C` and mixed at that.
struct PotLifeByMass {
    model::Vessel vessel = model::Vessel::cup;
    std::vector<double> mass_kg;  // ascending, up to a full vessel
    std::vector<double> lasts_s;  // the likeliest
    std::vector<double> from_s;
    std::vector<double> to_s;
};
PotLifeByMass potLifeByMass(const Fitted& fitted, const Adhesive& adhesive, model::Vessel vessel, double vessel_m3,
                            double air_C);

// Time until a film that stays at `air_C` is cured to `cured` (0..1, not 1), seconds.
double filmReaches(const Kinetics& kinetics, double air_C, double cured);

// Open time of a spread film in this air, seconds: that of the data sheet, by Arrhenius.
double openTime(const Adhesive& adhesive, const Kinetics& kinetics, double air_C);

}  // namespace fayline::glue
