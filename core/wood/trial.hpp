// Measuring one's own wood: a strip on two supports with a weight in the middle.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/boat/boat.hpp"
#include "core/wood/species.hpp"

namespace fayline::wood {

struct TrialResult {
    double modulus_Pa = 0;       // for pure bending (shear taken out), the strip's own weight and the large sag counted
    double modulusError_Pa = 0;  // from reading sag, thickness and width (one standard deviation)
    double simpleModulus_Pa = 0;       // W L^3 / (48 I sag), for comparison
    double strain = 0;                 // at the surface under the weight
    std::optional<double> rupture_Pa;  // of a trial that broke
    std::optional<double> breakingStrain;
};

// Throws InputError (`trials[i].sag_mm: ...`, path from `path`) for a sag of zero, a span shorter than 10 thicknesses,
// a sag beyond what the theory reaches, and the like.
TrialResult trialResult(const boat::Trial& trial, const std::string& path);

// The mean of the trials of one wood, with the error of the mean; nothing without a trial.
struct WoodMeasured {
    std::string species;
    int trials = 0;
    int broken = 0;
    std::optional<double> modulus_Pa;
    double modulusError_Pa = 0;
    std::optional<double> breakingStrain;
    double breakingStrainError = 0;
};
std::vector<WoodMeasured> woodsMeasured(const std::vector<boat::Trial>& trials);

}  // namespace fayline::wood
