#include "core/plan/print_json.hpp"

namespace fayline::plan {

namespace {

Json printStrips(const boat::Strips& strips) {
    Json printed{{"count", strips.count},
                 {"thickness_mm", mm(strips.thickness_m)},
                 {"species", strips.species},
                 {"sacrificial", strips.sacrificial}};
    if (strips.tapersTo_m) printed["tapers_to_mm"] = mm(*strips.tapersTo_m);
    return printed;
}

Json printChoice(const Choice& choice) {
    Json strips = Json::array();
    for (const boat::Strips& one : choice.strips) strips.push_back(printStrips(one));
    Json printed{{"thickness_mm", mm(choice.thickness_m)},
                 {"count", choice.count},
                 {"strips", strips},
                 {"mixed", choice.mixed},
                 {"as_it_is", choice.asItIs},
                 {"depth_mm", mm(choice.depth_m)},
                 {"strain_pct", pct(choice.strain)},
                 {"strain_share_pct", pct(choice.strainShare)},
                 {"strain_share_on_form_pct", pct(choice.shareOnForm)},
                 {"spares", choice.spares < 0 ? Json(nullptr) : Json(choice.spares)},
                 {"springback_ratio", number(choice.springbackRatio)},
                 {"end_pull_N", number(choice.endPull_N, 3)},
                 {"glue_g", number(1000 * choice.glue_kg, 3)},
                 {"glue_lines", choice.glueLines},
                 {"margin_min", choice.margin_s ? number(*choice.margin_s / 60, 3) : Json(nullptr)},
                 {"wood_lost_pct", pct(choice.woodLost)},
                 {"possible", choice.possible},
                 {"why_not", choice.whyNot.empty() ? Json(nullptr) : Json(choice.whyNot)},
                 {"unbeaten", choice.unbeaten},
                 {"named", choice.named.empty() ? Json(nullptr) : Json(choice.named)}};
    printChance(printed, "chance_of_breaking", choice.chanceOfBreaking);
    return printed;
}

}  // namespace

Json printChoices(const Choices& choices) {
    Json all = Json::array();
    for (const Choice& choice : choices.all) all.push_back(printChoice(choice));
    return all;
}

}  // namespace fayline::plan
