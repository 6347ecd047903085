#include "core/glue/glue.hpp"

#include <algorithm>

#include "core/glue/batches.hpp"
#include "core/glue/conditions.hpp"
#include "core/glue/ratio.hpp"
#include "core/math/count.hpp"
#include "core/units/input_error.hpp"
#include "core/wood/air.hpp"

namespace fayline::glue {

namespace {

struct Needs {
    double faces_m2 = 0;   // wetted out
    double spread_m2 = 0;  // spread, each coat counted
    double endGrain_m2 = 0;
};

Needs needsOf(const std::vector<GlueLine>& lines, int gluing, bool bothFaces) {
    Needs needs;
    for (const GlueLine& line : lines) {
        if (line.gluing != gluing) continue;
        needs.faces_m2 += 2 * line.area_m2;
        needs.spread_m2 += (bothFaces ? 2 : 1) * line.area_m2;
        if (line.scarf) needs.endGrain_m2 += 2 * line.area_m2;
    }
    return needs;
}

void addUp(GluePlan& plan) {
    for (const Batch& batch : plan.batches) {
        for (int i = 0; i < 2; ++i) {
            plan.parts_kg[i] += batch.parts_kg[i];
            plan.parts_m3[i] += batch.parts_m3[i];
        }
        plan.filler_kg += batch.filler_kg;
        plan.thinner_kg += batch.thinner_kg;
    }
    plan.mixed_kg = plan.parts_kg[0] + plan.parts_kg[1];
}

Amounts amountsOf(const GluePlan& plan, const model::Glue& glue) {
    Amounts amounts;
    const double density = plan.adhesive.mixDensity_kg_m3();
    for (const GlueLine& line : plan.lines) {
        amounts.joint_m2 += line.area_m2;
        amounts.wanted_kg += line.area_m2 * line.thickness_m * density;
        // What end grain drinks beyond other faces goes into it for good.
        amounts.soaksIn_kg +=
            2 * line.area_m2 * glue.wetOut_kg_m2 * (soaksIn(glue.faces) + (line.scarf ? endGrainDrinks : 0));
    }
    amounts.applied_kg = plan.needed_kg / (1 + glue.waste);
    const double left_kg = amounts.applied_kg - amounts.soaksIn_kg;
    amounts.line_kg = std::min(amounts.wanted_kg, left_kg);
    amounts.squeezedOut_kg = left_kg - amounts.line_kg;
    amounts.waste_kg = plan.mixed_kg - amounts.applied_kg;
    return amounts;
}

std::vector<VesselTried> vesselsFor(const GluePlan& plan, const model::Glue& glue, const PotLives& lives) {
    double largest_kg = 0;
    for (const Batch& batch : plan.batches) largest_kg = std::max(largest_kg, batch.mixed_kg());
    std::vector<VesselTried> tried;
    if (largest_kg == 0) return tried;
    for (const double share : {1.0, 0.5}) {
        for (const model::Vessel vessel : {model::Vessel::cup, model::Vessel::tray}) {
            const double mixed_kg = share * largest_kg;
            const Fill fill = fillOf(vessel, glue.cup_m3, mixed_kg, plan.adhesive.mixDensity_kg_m3());
            const PotLifeRange life = lives.at(fill, glue.air_C);
            tried.push_back({vessel, mixed_kg, life.lasts_s, life.peak_C});
        }
    }
    return tried;
}

}  // namespace

double soaksIn(model::Faces faces) {
    switch (faces) {
        case model::Faces::planed:
            return 1.0 / 3;
        case model::Faces::sanded:
            return 1.0 / 2;
        case model::Faces::sawn:
            return 2.0 / 3;
    }
    return 1.0 / 3;
}

double usedWithin(const GluePlan& plan, const model::Glue& glue, double mixed_kg, double air_C) {
    const Fill fill = fillOf(glue.vessel, glue.cup_m3, mixed_kg, plan.adhesive.mixDensity_kg_m3());
    return shareOfPotLife * potLifeRange(plan.fitted, fill, air_C).lasts_s.from;
}

double slowdownAt(double air_C) {
    constexpr double reference_C = 20;
    constexpr double twiceAsThick_K = 5;
    return std::exp2((air_C - reference_C) / twiceAsThick_K / 3);
}

const Adhesive& adhesiveNamed(const std::string& id, const std::string& path, const std::vector<Adhesive>& adhesives) {
    if (const Adhesive* found = findAdhesive(adhesives, id)) return *found;
    std::string ids;
    for (const Adhesive& one : adhesives) ids += (ids.empty() ? "" : ", ") + one.id;
    throw units::InputError(path, "\"" + id + "\" is not a known glue", "give one of " + ids);
}

GluePlan planGlue(const model::Glue& glue, const model::Crew& crew, const std::vector<Adhesive>& adhesives,
                  const std::vector<GlueLine>& lines, double closedAt_s, const GluePlan* before) {
    if (crew.hands < 1) {
        throw units::InputError("crew.hands", "nobody is there to spread the glue", "give a whole number above 0");
    }
    GluePlan plan;
    plan.adhesive = adhesiveNamed(glue.adhesive, "glue.adhesive", adhesives);
    checkRatios(plan.adhesive, "glue.adhesive");
    const bool sameGlue = before && before->adhesive == plan.adhesive;
    const PotLives lives(sameGlue ? before->fitted : fitWithEnds(plan.adhesive, "glue.adhesive"),
                         sameGlue ? before->lives : nullptr);
    plan.fitted = lives.fitted();
    plan.kinetics = plan.fitted.likely;
    plan.lines = lines;
    plan.openTime_s = openTime(plan.adhesive, plan.kinetics, glue.air_C);
    plan.slowdown = slowdownAt(glue.air_C);
    try {
        plan.airMoisture = wood::equilibriumMoisture(glue.air_C, glue.humidity);
    } catch (const units::InputError& error) {
        throw error.within("glue.");
    }
    plan.dewPoint_C = dewPoint(glue.air_C, std::max(glue.humidity, 0.01));

    int gluings = 0;
    for (const GlueLine& line : lines) gluings = std::max(gluings, line.gluing + 1);
    const double hands = crew.hands;
    for (int gluing = 0; gluing < gluings; ++gluing) {
        const Needs needs = needsOf(lines, gluing, glue.bothFaces);
        const double waste = 1 + glue.waste;
        const double wet_m2_s = hands * crew.rates.wetOut_m2_s * plan.slowdown;
        const double spread_m2_s = hands * crew.rates.spread_m2_s * plan.slowdown;
        const std::array<BatchNeed, 3> uses{
            BatchNeed{BatchFor::endGrain, gluing, waste * endGrainDrinks * needs.endGrain_m2 * glue.wetOut_kg_m2,
                      needs.endGrain_m2, wet_m2_s, crew.rates.mix_s},
            BatchNeed{BatchFor::wetOut, gluing, waste * needs.faces_m2 * glue.wetOut_kg_m2, needs.faces_m2, wet_m2_s,
                      crew.rates.mix_s},
            BatchNeed{BatchFor::spread, gluing, waste * needs.spread_m2 * glue.spread_kg_m2, needs.spread_m2,
                      spread_m2_s, crew.rates.mix_s}};
        plan.area_m2 += needs.faces_m2;
        for (const BatchNeed& use : uses) {
            plan.needed_kg += use.needed_kg;
            const std::vector<Batch> batches =
                batchesFor(use, glue, plan.adhesive, lives, math::countOf(plan.batches) + 1);
            if (plan.cupRemedies.empty() && !batches.empty() && !batches.front().inTime) {
                plan.cupRemedies = cupRemediesFor(use, glue, plan.adhesive, lives, adhesives);
            }
            plan.batches.insert(plan.batches.end(), batches.begin(), batches.end());
        }
    }
    addUp(plan);
    plan.amounts = amountsOf(plan, glue);
    plan.vessels = vesselsFor(plan, glue, lives);
    plan.lives = lives.known();
    plan.cure = planCure(plan.adhesive, plan.kinetics, glue, closedAt_s);
    return plan;
}

}  // namespace fayline::glue
