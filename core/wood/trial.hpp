// Measuring one's own wood: a strip laid flat on two supports with a weight hung or set in the middle.
//
// What is measured is the sag, the way by which the weight alone lowers the middle: read a mark with and without the
// weight. The strip's own weight has then bent it already; that drops out of a small sag (the sags add up) and counts
// in the strain under the weight, and a little in a large sag.
//
// Model. An inextensible elastic strip over two frictionless edges `span` apart, on which it slides as it sags; each
// edge pushes square to the strip. With slope a at the edges, I = integral of sqrt(sin u) for u from 0 to a:
//     g = 2 sqrt(sin a) cos a + I sin a,  d = 2 sqrt(sin a) sin a - I cos a
//     sag / span = d / 2g,  weight span^2 / (modulus x inertia) = 4 cos a g^2,  curvature in the middle x span =
//     2 g sqrt(sin a)
// which is 48 sag / span when small, 2.5 % less at a sag of 1/20 of the span, 10 % at 1/10. Source: the elastica, first
// integral by hand (D). Shear adds 1.2 x 16 (thickness / span)^2 of the sag, E/G = 16 being the ratio with which the
// published tables' 10 % come out (D).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/boat.hpp"
#include "core/wood/species.hpp"

namespace fayline::wood {

// Sag, load and curvature of the strip with that slope at its supports, each without unit as written above.
struct Slung {
    double sag = 0;        // over the span
    double load = 0;       // weight x span^2 / (modulus x inertia)
    double curvature = 0;  // in the middle, x span
};
// `slope_rad` within 0..slipsThroughAt_rad. Error below 1e-9 of each value.
Slung slungAt(double slope_rad);

// The slope, and sag over span, at which the strip lets itself be pushed through between its supports: the greatest
// load is 6.672 (D).
inline constexpr double slipsThroughAt_rad = 0.6685;
inline constexpr double slipsThroughSag = 0.2382;

// What a trial may be: a span of so many thicknesses or more, that shear does not rule; a sag of no more than that
// share of the span. Beyond it friction on the supports, which is not modelled, says more than the wood.
inline constexpr double leastSpanOverThickness = 10;
inline constexpr double mostSagOverSpan = 0.2;

// How finely thickness, width and span are taken to be read (a caliper, a rule), metres, and the coefficient of
// friction that tapping the strip leaves at its supports (one standard deviation). Common practice, no source.
inline constexpr double sectionReadTo_m = 0.0001;
inline constexpr double spanReadTo_m = 0.001;
inline constexpr double frictionLeft = 0.1;

struct TrialResult {
    // For pure bending: shear taken out, the large sag and (to 1 % of what they change) own weight counted. Of a trial
    // that broke it is the secant at breaking, below the elastic modulus.
    double modulus_Pa = 0;
    // One standard deviation, from reading sag (twice, to `read_to_mm`), thickness (it counts three times), width and
    // span, and from friction left at the supports. That strips of one wood differ is not in it, nor is the weight's
    // own error.
    double modulusError_Pa = 0;
    double simpleModulus_Pa = 0;  // W L^3 / (48 I sag), for comparison
    double sagOverSpan = 0;
    double shearShare = 0;  // of the sag
    double largeSagShare =
        0;  // by how much the simple formula, shear taken out, would come out too low: 0.025 is 2.5 %
    double ownWeightSag_m = 0;  // by which the strip hung already; 0 where the wood is not known (no density)
    double strain = 0;          // at the surface in the middle, under weight and own weight; from the sag, elastic
    double stress_Pa = 0;       // modulus x strain
    // Of a trial that broke. Rupture: the bending moment over the section modulus, as the tables have it. Breaking
    // strain: that of an elastic strip with this sag. Wood gives way before it breaks and bends sharper in the middle
    // than that, so the true strain there is more: this one is on the safe side.
    std::optional<double> rupture_Pa;
    std::optional<double> breakingStrain;
};

// What a trial says. `species`: for the density (own weight) and to tell a mistyped weight; a wood that is not among
// them is taken without either.
//
//   (1) twice the width at the same sag: half the modulus; twice the thickness: an eighth, but for shear
// Error: without own weight 1e-6. Own weight spread along the strip is counted as a weight in the middle that sags as
// much; against the strip integrated in small steps (D), at sags up to a tenth of the span, that costs 0.3 % of the
// modulus where own weight is a quarter of the weight, 1.3 % where it is as much.
//
// Throws InputError (`trials[i].sag_mm: ...`, with `path` before the key: "trials[2].") for a sag, weight, span, width,
// thickness or moisture that is none; a span shorter than 10 thicknesses; a sag of more than a fifth of the span; a
// strip that its own weight would push through between the supports; a weight under which this wood would have broken
// (its stress three standard deviations above the mean strength) and yet did not.
TrialResult trialResult(const model::Trial& trial, const std::string& path,
                        const std::vector<Species>& species = builtInSpecies());

// What the trials of one wood say together.
struct WoodMeasured {
    std::string species;
    int trials = 0;  // that say anything
    int broken = 0;  // of these
    // Mean of the trials that did not break. 95 % of such means lie within `modulusError_Pa` of the truth: Student's
    // range of the mean, with the published scatter between strips (22 % of modulus, 16 % of strength, Wood Handbook
    // Table 5-6, M) counted as if it came from scatterCountsAs trials more, and never less than the readings' own
    // error.
    std::optional<double> modulus_Pa;
    double modulusError_Pa = 0;
    std::optional<double> breakingStrain;  // mean of the trials that broke; its error likewise
    double breakingStrainError = 0;
    double moisture = 0;               // mean of the trials
    std::vector<std::string> leftOut;  // trials of this wood that say nothing, each as its error says why
};

// Degrees of freedom that the published scatter counts for beside the trials' own. Our choice: as much as five trials.
inline constexpr int scatterCountsAs = 4;

// Wood by wood in the order in which they first appear. A trial from which nothing follows is left out and said.
std::vector<WoodMeasured> woodsMeasured(const std::vector<model::Trial>& trials,
                                        const std::vector<Species>& species = builtInSpecies());

}  // namespace fayline::wood
