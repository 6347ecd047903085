// Stiffness and breaking of a dry strip in bending: what the tables say, corrected for shear, grain slope and moisture.
#pragma once

#include <optional>
#include <vector>

#include "core/units/source.hpp"
#include "core/wood/species.hpp"

namespace fayline::wood {

// The tabulated modulus holds deflection by shear as well; for pure bending it is raised by this factor.
// Source: Wood Handbook Table 5-3 footnote c (P*).
inline constexpr double shearFreeModulus = 1.10;

// Coefficient of variation of modulus of rupture and of elasticity within a species.
// Source: Wood Handbook Table 5-6 (M).
inline constexpr double ruptureScatter = 0.16;
inline constexpr double modulusScatter = 0.22;

// Share of the straight-grained value left at a slope of grain of `slope` (0.05 is 1 in 20), linear in the slope
// between the rows of Wood Handbook Table 5-12 (M), at the last row beyond 1 in 5. slope >= 0.
double grainFactorRupture(double slope);
double grainFactorModulus(double slope);

// Value at moisture `moisture` (fraction of dry mass, 0.04..0.30) over the value at 12 %.
// By P12 (P12/Pg)^((12-M)/(Mp-12)) where the green value is known, Wood Handbook eq. 5-3 (M); else by the middle trend
// of Table 5-14 (M): bending strength +30 % at 6 % and -25 % at 20 %, modulus +9 % and -13 %, linear between 6, 12 and
// 20 % and on along the same lines outside. Above M_p moisture no longer matters: the value at M_p stays.
double moistureFactorRupture(const Species& species, double moisture);
double moistureFactorModulus(const Species& species, double moisture);

// P at `moisture` by Wood Handbook eq. 5-3 (M) from the values at 12 % and green, all in one unit.
double atMoisture(double at12, double green, double moistureOfIntersection, double moisture);

// How doubtful a mark is: 0 of what was read in print, 4 of common practice.
int doubtOf(units::Mark mark);

// What a strip of this wood does in pure bending at this moisture and slope of grain.
//
// The sources name the table and every correction that changed its value; the mark is that of the least sure among
// them (P, P*, D, M, C from surest to least). A measured modulus (Pa) is used as it is; nothing
// published stands behind it, so it is marked C. So it is with a measured breaking strain, which then has nothing to do
// with rupture and modulus.
//   (1) at 12 % and straight grain rupture is the table's and modulus 1.1 x the table's
struct Bending {
    double modulus_Pa = 0;      // 1.1 x tabulated, corrected; or the user's own, as it is
    double rupture_Pa = 0;      // corrected
    double breakingStrain = 0;  // mean surface strain at breaking, rupture / modulus; or the user's own, as it is
    units::Source modulusSource;
    units::Source ruptureSource;
    units::Source breakingSource;  // of the breaking strain: that of rupture, or the user
};
Bending bending(const Species& species, double moisture, double grainSlope, std::optional<double> measuredMoe_Pa,
                std::optional<double> measuredBreakingStrain = std::nullopt);

// How strength and stiffness go together within a species: their coefficient of correlation. Published: 0.8, with both
// log-normal (JCSS Probabilistic Model Code, part 3, timber, P: set by judgement for softwood); of 190 and 138 clear
// strips of eucalyptus 0.75 and 0.81 between strength and the stiffness found by vibration (Hein and Brancheriau 2018,
// P). Taken lower than each, since the less they go together the more strips break early: the chance told errs upward.
inline constexpr double strengthWithStiffness = 0.7;

// Standard deviation of the logarithm of the breaking strain, rupture over modulus, both log-normal:
// ln(1 + r^2) + ln(1 + m^2) - 2 ln(1 + c r m) is its square, with r and m the scatters and c how they go together (D).
// With those above 0.154; with c = 0.8 0.130, with 0.6 0.176.
double breakingStrainScatter(double together = strengthWithStiffness);

// Breaking strain of a strip over that of the specimen by which the tables were made, 2 in deep and loaded in the
// middle of 28 in: long strips are weaker, thin ones stronger. `evenLength_m` is the length that would be as likely to
// break were it strained all along as hard as the strip's worst place: the integral of (strain / greatest strain)^18.
// (h0 L0 / (h L))^(1/18), with L0 = 28 in / 19 by the same integral (D). thickness_m, evenLength_m > 0.
// Source: Wood Handbook, chapter on glued timber, size effect of clear straight-grained beams, m = 18 (M).
//   (1) 2 in thick and evenly strained over 28/19 in: 1;  (2) twice the length: 0.962 times as much
double sizeFactor(double thickness_m, double evenLength_m);
inline constexpr int sizeExponent = 18;

// Chance that a strip strained to `strain` at its surface breaks, when breaking strain is log-normal with the median
// `breakingStrain` (> 0) and scatters by breakingStrainScatter(). 0..1. A negative or zero strain: 0 chance.
//
// That the ratio of two means stands for the median makes strips 1.1 % weaker than the model would have them (D).
double chanceOfBreaking(double strain, double breakingStrain);

// The fewest spare strips so that with `confidence` (above 0, below 1) enough stay whole.
//
// Model: strips break independently, strip i of n with chances[i] (0..1); m spares are cut beside them, each breaks
// with the mean of those chances, and any whole strip can take the place of a broken one. m is the smallest with
// P(at most m of the n + m break) >= confidence; the number of breaks is summed exactly (Poisson-binomial, which is
// binomial where all are alike). No strips: 0. -1 when a third or more of the strips would break on the mean: no number
// of spares is sensible.
int sparesNeeded(const std::vector<double>& chances, double confidence = 0.95);

}  // namespace fayline::wood
