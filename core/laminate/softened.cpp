#include "core/laminate/softened.hpp"

#include <cmath>
#include <numbers>

#include "core/wood/air.hpp"
#include "core/wood/bending.hpp"

namespace fayline::laminate {

namespace {

using units::Mark;

constexpr double hotTension = 0.02;
constexpr double slowDiffusion_m2_s = 1e-10;
constexpr double quickDiffusion_m2_s = 4e-10;

// Time until a sheet with both faces open holds the share `left`.
double openTime(double thickness_m, double diffusion_m2_s, double left) {
    constexpr double pi2 = std::numbers::pi * std::numbers::pi;
    return thickness_m * thickness_m / (pi2 * diffusion_m2_s) * std::log(8 / (pi2 * left));
}

}  // namespace

std::optional<units::Cited> hotBreakingStrain(model::Softened how, double grainSlope) {
    if (how == model::Softened::no || how == model::Softened::soaked) return std::nullopt;
    units::Cited limit{
        hotTension * wood::grainFactorRupture(grainSlope),
        {"tension of wood at 100 C and 33 % moisture, woodwork.guide/learning-how-to-bend-wood.html, which "
         "names no source",
         Mark::published}};
    if (grainSlope > 0) {
        limit.source.text += " (P); slope of grain by Wood Handbook Table 5-12 (M)";
        limit.source.mark = Mark::fromMemory;
    }
    return limit;
}

Drying dryingTime(double thickness_m, double air_C, double humidity) {
    Drying drying{
        .airMoisture = wood::equilibriumMoisture(air_C, humidity),
        .source = {"diffusion across the grain of 1 to 4 x 10^-10 m2/s, from memory of books on water in wood; air by "
                   "Wood Handbook eq. 4-5 (P*)",
                   Mark::fromMemory}};
    drying.reaches = drying.airMoisture < glueBelow;
    if (!drying.reaches) return drying;
    const double left = (glueBelow - drying.airMoisture) / (wetThrough - drying.airMoisture);
    drying.shortest_s = openTime(thickness_m, quickDiffusion_m2_s, left);
    drying.longest_s = openTime(2 * thickness_m, slowDiffusion_m2_s, left);
    return drying;
}

}  // namespace fayline::laminate
