#include "core/plan/print_json.hpp"

namespace fayline::plan {

namespace {

Json printRemedy(const BreakingRemedy& remedy) {
    Json printed{{"kind", breakingKindText(remedy.kind)},
                 {"what", remedy.what},
                 {"spares", remedy.spares < 0 ? Json(nullptr) : Json(remedy.spares)},
                 {"enough", remedy.enough},
                 {"pull_ratio", number(remedy.pullRatio)}};
    printChance(printed, "chance_of_breaking", remedy.chance);
    if (!remedy.species.empty()) printed["species"] = remedy.species;
    if (remedy.set > 0) printed["set_pct"] = pct(remedy.set);
    if (remedy.grainSlope > 0) printed["grain_slope"] = number(remedy.grainSlope);
    return printed;
}

Json printLostStrip(const LostStrip& lost, const Plan& plan) {
    Json printed{{"place", lost.fewer.place}};
    printChance(printed, "chance_of_breaking", lost.chance);
    if (lost.fewer.cannot.empty()) {
        printed["count"] = plan.stack.strips.size() - 1;
        printed["depth_mm"] = mm(plan.stack.depth_m - lost.fewer.lost_m);
        printed["stiffness_ratio"] = number(lost.fewer.stiffShare);
    }
    if (plan.form.letsGo && lost.fewer.cannot.empty()) {
        printed["springback_ratio"] = number(lost.fewer.ratio, 9);
        printed["off_wanted_start_mm"] = mm(lost.fewer.off.start_m);
        printed["off_wanted_end_mm"] = mm(lost.fewer.off.end_m);
    }
    if (lost.settled) {
        printed["hardest_pull_N"] = number(lost.hardestPull_N);
        printed["largest_gap_mm"] = mm(lost.largestGap_m);
    }
    printed["text"] = lost.sentence;
    printed["what_to_do"] = lost.whatToDo;
    return printed;
}

}  // namespace

void printChance(Json& printed, const std::string& key, double chance) {
    const bool told = chance >= leastChanceTold;
    printed[key + "_pct"] = told ? number(100 * chance, 1) : Json(nullptr);
    if (!told) printed[key + "_below_pct"] = number(100 * leastChanceTold, 1);
}

Json printBreaking(const Plan& plan) {
    Json remedies = Json::array();
    for (const BreakingRemedy& remedy : plan.breaking->remedies) remedies.push_back(printRemedy(remedy));
    Json printed{{"remedies", remedies}};
    if (plan.breaking->lostStrip) printed["one_fewer"] = printLostStrip(*plan.breaking->lostStrip, plan);
    return printed;
}

Json printWoodsMeasured(const boat::Piece& piece, const std::vector<wood::WoodMeasured>& measured) {
    Json printed = Json::array();
    for (const wood::WoodMeasured& wood : measured) {
        bool used = false;
        for (const boat::Strips& strips : piece.stack.strips) used = used || strips.species == wood.species;
        if (!used) continue;
        Json one{{"species", wood.species},
                 {"trials", wood.trials},
                 {"broke", wood.broken},
                 {"moisture_pct", pct(wood.moisture)},
                 {"left_out", wood.leftOut}};
        if (wood.modulus_Pa) {
            one["modulus_MPa"] = number(*wood.modulus_Pa / 1e6);
            one["modulus_within_MPa"] = number(wood.modulusError_Pa / 1e6);
        }
        if (wood.breakingStrain) {
            one["breaks_at_pct"] = pct(*wood.breakingStrain);
            one["breaks_within_pct"] = pct(wood.breakingStrainError);
        }
        printed.push_back(one);
    }
    return printed;
}

}  // namespace fayline::plan
