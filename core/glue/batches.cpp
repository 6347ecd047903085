#include "core/glue/batches.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/units/input_error.hpp"

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
void measureOut(Batch& batch, double mixed_kg, const model::Glue& glue, const Adhesive& adhesive) {
    const double first_kg = mixed_kg * adhesive.firstByWeight();
    if (glue.measuredBy == model::MeasuredBy::scale) {
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

// One of `count` equal batches.
Batch oneOf(int count, const BatchNeed& need, const model::Glue& glue, const Adhesive& adhesive,
            const PotLives& lives) {
    Batch batch{.gluing = need.gluing, .use = need.use};
    measureOut(batch, need.needed_kg / count, glue, adhesive);
    batch.area_m2 = need.area_m2 / count;
    batch.takes_s = need.mix_s + batch.area_m2 / need.rate_m2_s;
    const Fill fill = fillOf(glue.vessel, glue.cup_m3, batch.mixed_kg(), adhesive.mixDensity_kg_m3());
    batch.fills = fill.share;
    const PotLifeRange life = lives.at(fill, glue.air_C);
    batch.potLife_s = life.lasts_s;
    batch.fullPeak_C = life.peak_C;
    batch.useWithin_s = shareOfPotLife * batch.potLife_s.from;
    batch.inTime = batch.takes_s <= batch.useWithin_s;
    return batch;
}

// A count beyond which mixing takes longer than using it up: no smaller ones are tried.
bool mostlyMixing(const Batch& batch, const BatchNeed& need) {
    return batch.takes_s <= need.mix_s * 1.2;
}

}  // namespace

std::vector<Batch> batchesFor(const BatchNeed& need, const model::Glue& glue, const Adhesive& adhesive,
                              const PotLives& lives, int firstNumber) {
    if (!(need.needed_kg > 0)) return {};
    const double density = adhesive.mixDensity_kg_m3();
    const bool limited = !lives.fitted().massKnown() && glue.vessel == model::Vessel::cup;
    const double inVessel_kg = fillsAtMost * glue.cup_m3 * density;
    const double most_kg = limited ? std::min(inVessel_kg, mostInCup_kg) : inVessel_kg;
    const double least = need.needed_kg / most_kg;
    if (!(least <= mostBatches)) {
        throw units::InputError("glue.cup_ml",
                                "the glue would fill this vessel more than " + std::to_string(mostBatches) + " times",
                                most_kg < inVessel_kg ? "give a tray, or less glue to spread"
                                                      : "give a larger vessel, or less glue to spread");
    }
    const auto tooMuch = [&](const Batch& batch) {
        return batch.fills > fillsAtMost * (1 + 1e-9) || (limited && batch.mixed_kg() > mostInCup_kg * (1 + 1e-9));
    };
    // Smaller batches last longer and are used up sooner: the first count that fits is the fewest.
    int count = std::max(1, static_cast<int>(std::ceil(least - 1e-9)));
    Batch batch = oneOf(count, need, glue, adhesive, lives);
    while (tooMuch(batch) && count < mostBatches) batch = oneOf(++count, need, glue, adhesive, lives);
    // Where no number is used up in time: the fewest that are before they are likely to go off; where mixing alone
    // takes longer than that, as many as the vessel asks for. Both are said to be late.
    const auto beforeItGoesOff = [](const Batch& one) { return one.takes_s <= one.potLife_s.likely; };
    Batch late = batch;
    int lateCount = count;
    while (!batch.inTime && count < mostBatches && !mostlyMixing(batch, need)) {
        batch = oneOf(++count, need, glue, adhesive, lives);
        if (!beforeItGoesOff(late) && beforeItGoesOff(batch)) {
            late = batch;
            lateCount = count;
        }
    }
    if (!batch.inTime) {
        batch = late;
        count = lateCount;
    }
    if (glue.waste > 0) {
        const double left_kg = batch.mixed_kg() * glue.waste / (1 + glue.waste);
        batch.leftPeak_C = lives.at(fillOf(glue.vessel, glue.cup_m3, left_kg, density), glue.air_C).peak_C;
    }
    std::vector<Batch> batches(static_cast<std::size_t>(count), batch);
    for (std::size_t i = 0; i < batches.size(); ++i) batches[i].number = firstNumber + static_cast<int>(i);
    return batches;
}

std::vector<CupRemedy> cupRemediesFor(const BatchNeed& need, const model::Glue& glue, const Adhesive& adhesive,
                                      const PotLives& lives, const std::vector<Adhesive>& adhesives) {
    std::vector<CupRemedy> tried;
    const auto add = [&tried](CupRemedyKind kind, const Batch& batch, const std::string& name = {}) {
        tried.push_back({kind, name, batch.mixed_kg(), batch.takes_s, batch.potLife_s, batch.inTime});
    };
    Batch smaller;
    for (int count = 1; count <= mostBatches; ++count) {
        smaller = oneOf(count, need, glue, adhesive, lives);
        if (smaller.inTime || mostlyMixing(smaller, need)) break;
    }
    add(CupRemedyKind::smallerCups, smaller);
    if (glue.vessel == model::Vessel::cup) {
        model::Glue poured = glue;
        poured.vessel = model::Vessel::tray;
        add(CupRemedyKind::tray, batchesFor(need, poured, adhesive, lives, 1).front());
    }
    const double now_s =
        lives.at(fillOf(glue.vessel, glue.cup_m3, smaller.mixed_kg(), adhesive.mixDensity_kg_m3()), glue.air_C)
            .lasts_s.likely;
    std::vector<std::pair<double, const Adhesive*>> slower;
    for (const Adhesive& other : adhesives) {
        if (other.kind != adhesive.kind || other.mix != adhesive.mix || other.least_C > glue.air_C) continue;
        if (other.potLives.empty() || other.openTime_s <= adhesive.openTime_s) continue;
        slower.emplace_back(other.openTime_s, &other);
    }
    std::ranges::stable_sort(slower, {}, &std::pair<double, const Adhesive*>::first);
    for (const auto& [openTime_s, other] : slower) {
        const Batch batch = batchesFor(need, glue, *other, fitWithEnds(*other, "adhesives"), 1).front();
        if (!(batch.potLife_s.likely > now_s)) continue;
        add(CupRemedyKind::slowerGlue, batch, other->name);
        if (batch.inTime) break;
    }
    return tried;
}

}  // namespace fayline::glue
