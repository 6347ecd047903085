#include "core/wood/bending.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <numbers>
#include <numeric>

#include "core/math/count.hpp"
#include "core/math/table.hpp"

namespace fayline::wood {
namespace {

using units::Mark;
using units::Source;

constexpr double tabulatedMoisture = 0.12;

struct GrainRow {
    double slope;
    double rupture;
    double modulus;
};

// Wood Handbook Table 5-12 (M): share of the straight-grained value at 1 in 25, 20, 15, 10, 5.
constexpr std::array<GrainRow, 6> grainRows{{{0, 1, 1},
                                             {1.0 / 25, 0.96, 0.97},
                                             {1.0 / 20, 0.93, 0.96},
                                             {1.0 / 15, 0.89, 0.94},
                                             {1.0 / 10, 0.81, 0.89},
                                             {1.0 / 5, 0.55, 0.67}}};

double grainFactor(double slope, double GrainRow::*column) {
    assert(slope >= 0);
    return math::lookUp(grainRows, slope, &GrainRow::slope, column);
}

// Change from the value at 12 %, at 6 and at 20 % moisture. Wood Handbook Table 5-14, middle trend (M).
struct MoistureTrend {
    double at6;
    double at20;
};
constexpr MoistureTrend ruptureTrend{0.30, -0.25};
constexpr MoistureTrend modulusTrend{0.09, -0.13};

double trendFactor(const MoistureTrend& trend, double moisture) {
    const double perMoisture =
        moisture < tabulatedMoisture ? trend.at6 / (0.06 - tabulatedMoisture) : trend.at20 / (0.20 - tabulatedMoisture);
    return 1 + perMoisture * (moisture - tabulatedMoisture);
}

// `source` with one more thing that changed its value; the doubt of the least sure stays.
void correctBy(Source& source, const Source& correction) {
    source.text += "; " + correction.text + " (" + units::markText(correction.mark) + ")";
    if (doubtOf(correction.mark) > doubtOf(source.mark)) source.mark = correction.mark;
}

Source sourceWith(const Source& table, const std::vector<Source>& corrections) {
    if (corrections.empty()) return table;
    Source source{table.text + " (" + units::markText(table.mark) + ")", table.mark};
    for (const Source& correction : corrections) correctBy(source, correction);
    return source;
}

std::vector<Source> moistureAndGrain(double moisture, bool greenKnown, double grainSlope) {
    std::vector<Source> corrections;
    if (moisture != tabulatedMoisture) {
        const char* model = greenKnown ? "moisture by Wood Handbook eq. 5-3"
                                       : "moisture by the middle trend of Wood Handbook Table 5-14";
        corrections.push_back({model, Mark::fromMemory});
    }
    if (grainSlope > 0) corrections.push_back({"slope of grain by Wood Handbook Table 5-12", Mark::fromMemory});
    return corrections;
}

// chances[k]: that k strips break; afterwards of one strip more.
void addStrip(std::vector<double>& chances, double chanceOfOne) {
    chances.push_back(0);
    for (std::size_t k = chances.size() - 1; k > 0; --k) {
        chances[k] = chances[k] * (1 - chanceOfOne) + chances[k - 1] * chanceOfOne;
    }
    chances[0] *= 1 - chanceOfOne;
}

}  // namespace

int doubtOf(Mark mark) {
    constexpr std::array fromSurest{Mark::published, Mark::transcribed, Mark::derived, Mark::fromMemory,
                                    Mark::commonPractice};
    return static_cast<int>(std::ranges::find(fromSurest, mark) - fromSurest.begin());
}

double grainFactorRupture(double slope) {
    return grainFactor(slope, &GrainRow::rupture);
}
double grainFactorModulus(double slope) {
    return grainFactor(slope, &GrainRow::modulus);
}

double atMoisture(double at12, double green, double moistureOfIntersection, double moisture) {
    assert(at12 > 0 && green > 0 && moistureOfIntersection > tabulatedMoisture);
    const double below = std::min(moisture, moistureOfIntersection);
    return at12 * std::pow(at12 / green, (tabulatedMoisture - below) / (moistureOfIntersection - tabulatedMoisture));
}

double moistureFactorRupture(const Species& species, double moisture) {
    const double intersection = species.moistureOfIntersection.value;
    if (!species.greenMor_Pa) return trendFactor(ruptureTrend, std::min(moisture, intersection));
    const double at12 = species.mor_Pa.value;
    return atMoisture(at12, species.greenMor_Pa->value, intersection, moisture) / at12;
}

double moistureFactorModulus(const Species& species, double moisture) {
    return trendFactor(modulusTrend, std::min(moisture, species.moistureOfIntersection.value));
}

Bending bending(const Species& species, double moisture, double grainSlope, std::optional<double> measuredMoe_Pa,
                std::optional<double> measuredBreakingStrain) {
    Bending result;
    result.rupture_Pa =
        species.mor_Pa.value * moistureFactorRupture(species, moisture) * grainFactorRupture(grainSlope);
    result.ruptureSource =
        sourceWith(species.mor_Pa.source, moistureAndGrain(moisture, species.greenMor_Pa.has_value(), grainSlope));
    if (measuredMoe_Pa) {
        result.modulus_Pa = *measuredMoe_Pa;
        result.modulusSource = {"measured by the user", Mark::commonPractice};
    } else {
        result.modulus_Pa = shearFreeModulus * species.moe_Pa.value * moistureFactorModulus(species, moisture) *
                            grainFactorModulus(grainSlope);
        std::vector<Source> corrections = moistureAndGrain(moisture, false, grainSlope);
        corrections.insert(corrections.begin(),
                           {"times 1.10 for shear by Wood Handbook Table 5-3 footnote c", Mark::transcribed});
        result.modulusSource = sourceWith(species.moe_Pa.source, corrections);
    }
    result.breakingStrain = measuredBreakingStrain.value_or(result.rupture_Pa / result.modulus_Pa);
    result.breakingSource =
        measuredBreakingStrain ? Source{"measured by the user", Mark::commonPractice} : result.ruptureSource;
    return result;
}

double breakingStrainScatter(double together) {
    const double square = std::log1p(ruptureScatter * ruptureScatter) + std::log1p(modulusScatter * modulusScatter) -
                          2 * std::log1p(together * ruptureScatter * modulusScatter);
    return std::sqrt(square);
}

double sizeFactor(double thickness_m, double evenLength_m) {
    assert(thickness_m > 0 && evenLength_m > 0);
    constexpr double inch_m = 0.0254;
    constexpr double specimen_m2 = 2 * inch_m * 28 * inch_m / (sizeExponent + 1);
    return std::pow(specimen_m2 / (thickness_m * evenLength_m), 1.0 / sizeExponent);
}

double chanceOfBreaking(double strain, double breakingStrain) {
    assert(breakingStrain > 0);
    if (strain <= 0) return 0;
    const double deviations = std::log(strain / breakingStrain) / breakingStrainScatter();
    return std::erfc(-deviations / std::numbers::sqrt2) / 2;
}

int sparesNeeded(const std::vector<double>& chances, double confidence) {
    assert(confidence > 0 && confidence < 1);
    if (chances.empty()) return 0;
    const double mean = std::accumulate(chances.begin(), chances.end(), 0.0) / static_cast<double>(chances.size());
    if (!(mean < 1.0 / 3)) return -1;

    std::vector<double> breaks{1.0};
    for (const double chance : chances) addStrip(breaks, chance);
    // A chance that is exactly on the confidence (one strip of 0.1 at 0.9) must not be lost to rounding.
    constexpr double settled = 1e-12;
    // Spares outnumber the breaks among them and the strips long before this many, for any confidence a double holds.
    const int most = 100 + 20 * math::countOf(chances);
    for (int spares = 0; spares <= most; ++spares) {
        const double moreBreak = std::accumulate(breaks.begin() + spares + 1, breaks.end(), 0.0);
        if (moreBreak <= 1 - confidence + settled) return spares;
        addStrip(breaks, mean);
    }
    return -1;
}

}  // namespace fayline::wood
