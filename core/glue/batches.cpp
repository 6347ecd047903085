#include "core/glue/batches.hpp"

#include <algorithm>
#include <cmath>

#include "core/measure/input_error.hpp"

namespace fayline::glue {

namespace {

double rounded(double value, double step) {
    return step * std::round(value / step);
}

double roundedUp(double value, double step) {
    // What is a whole number of steps but for the last bits stays one.
    return step * std::ceil(value / step - 1e-9);
}

// Both parts as the scale or the cup's marks read them: at least `needed`, and of the few readings above it the one
// nearest to the ratio.
std::array<double, 2> readable(double first, double ratio, double step, double& error) {
    std::array<double, 2> best{roundedUp(first, step), 0};
    if (ratio == 0) {
        error = 0;
        return best;
    }
    error = INFINITY;
    const double from = roundedUp(first, step);
    for (int more = 0; more < 8; ++more) {
        const double one = from + more * step;
        const double other = std::max(step, rounded(one * ratio, step));
        const double off = std::abs(other / one / ratio - 1);
        if (one * (1 + ratio) > 1.1 * first * (1 + ratio) + 2 * step) break;
        if (one + other < first * (1 + ratio) * (1 - 1e-9)) continue;
        if (off < error - 0.002) {
            error = off;
            best = {one, other};
        }
    }
    if (!std::isfinite(error)) {
        best = {from, std::max(step, roundedUp(first * ratio, step))};
        error = std::abs(best[1] / best[0] / ratio - 1);
    }
    return best;
}

// The parts of one batch of at least `mixed_kg`.
void measureOut(Batch& batch, double mixed_kg, const boat::Glue& glue, const Adhesive& adhesive) {
    const double first_kg = mixed_kg * adhesive.firstByWeight();
    if (glue.measuredBy == boat::MeasuredBy::scale) {
        batch.parts_kg = readable(first_kg, adhesive.partsByWeight[1] / adhesive.partsByWeight[0], glue.scaleReads_kg,
                                  batch.ratioError);
        for (int i = 0; i < 2; ++i) batch.parts_m3[i] = batch.parts_kg[i] / adhesive.density_kg_m3[i];
    } else {
        batch.parts_m3 =
            readable(first_kg / adhesive.density_kg_m3[0], adhesive.partsByVolume[1] / adhesive.partsByVolume[0],
                     glue.cupReads_m3, batch.ratioError);
        for (int i = 0; i < 2; ++i) batch.parts_kg[i] = batch.parts_m3[i] * adhesive.density_kg_m3[i];
    }
    const bool thickened = batch.use == BatchFor::spread;
    batch.filler_kg = thickened ? glue.filler * batch.mixed_kg() : 0;
    batch.thinner_kg = thickened ? 0 : glue.thinner * batch.mixed_kg();
}

}  // namespace

std::vector<Batch> batchesFor(const BatchNeed& need, const boat::Glue& glue, const Adhesive& adhesive,
                              const Kinetics& kinetics, int firstNumber) {
    if (!(need.needed_kg > 0)) return {};
    const double density = adhesive.mixDensity_kg_m3();
    const auto oneOf = [&](int count) {
        Batch batch;
        batch.use = need.use;
        batch.gluing = need.gluing;
        measureOut(batch, need.needed_kg / count, glue, adhesive);
        batch.area_m2 = need.area_m2 / count;
        batch.takes_s = need.mix_s + batch.area_m2 / need.rate_m2_s;
        const Fill fill = fillOf(glue.vessel, glue.cup_m3, batch.mixed_kg(), density);
        batch.fills = fill.share;
        batch.potLife_s = potLife(kinetics, fill, glue.air_C, glue.air_C).lasts_s;
        batch.useWithin_s = shareOfPotLife * batch.potLife_s;
        batch.inTime = batch.takes_s <= batch.useWithin_s;
        return batch;
    };
    // Smaller batches last longer and are used up sooner: the first count that fits is the fewest.
    const double least = need.needed_kg / density / (fillsAtMost * glue.cup_m3);
    if (!(least <= mostBatches)) {
        throw measure::InputError("glue.cup_ml",
                                  "the glue would fill this vessel more than " + std::to_string(mostBatches) + " times",
                                  "give a larger vessel, or less glue to spread");
    }
    int count = std::max(1, static_cast<int>(std::ceil(least - 1e-9)));
    Batch batch = oneOf(count);
    while (batch.fills > fillsAtMost * (1 + 1e-9) && count < mostBatches) batch = oneOf(++count);
    const int bySize = count;
    while (!batch.inTime && count < mostBatches && batch.takes_s > need.mix_s * 1.2) batch = oneOf(++count);
    // Where mixing alone takes too long no number helps: as many as the vessel asks for, and said to be late.
    if (!batch.inTime) batch = oneOf(count = bySize);

    batch.leftPeak_C = batch.fullPeak_C = glue.air_C;
    const auto peakOf = [&](double mass_kg) {
        return potLife(kinetics, fillOf(glue.vessel, glue.cup_m3, mass_kg, density), glue.air_C, glue.air_C).peak_C;
    };
    if (glue.waste > 0) batch.leftPeak_C = peakOf(batch.mixed_kg() * glue.waste / (1 + glue.waste));
    batch.fullPeak_C = peakOf(batch.mixed_kg());
    std::vector<Batch> batches(static_cast<std::size_t>(count), batch);
    for (std::size_t i = 0; i < batches.size(); ++i) batches[i].number = firstNumber + static_cast<int>(i);
    return batches;
}

}  // namespace fayline::glue
