#include <vector>

#include "core/measure/units.hpp"
#include "core/plan/print_json.hpp"

namespace fayline::plan {

namespace {

using stack::FormPlan;
using stack::Opening;

Json printOpening(const Opening& opening) {
    return {{"chord_mm", mm(opening.chord_m)},
            {"rise_mm", mm(opening.rise_m)},
            {"start_mm", mm(opening.start_m)},
            {"end_mm", mm(opening.end_m)},
            {"chord_before_mm", mm(opening.chordFrom_m)},
            {"chord_after_mm", mm(opening.chordTo_m)},
            {"rise_before_mm", mm(opening.riseFrom_m)},
            {"rise_after_mm", mm(opening.riseTo_m)}};
}

Json printPoint(const line::Place& place) {
    return {{"at_mm", mm(place.at_m)},
            {"x_mm", mm(place.x_m)},
            {"y_mm", mm(place.y_m)},
            {"heading_deg", number(measure::toDegrees(place.heading_rad))},
            {"curvature_per_m", number(place.curvature_per_m, 9)}};
}

Json printPart(const stack::PartForm& part) {
    return {{"first_place", part.firstPlace},
            {"last_place", part.lastPlace},
            {"springback_ratio", number(part.ratioAtTightest, 9)},
            {"least_ratio", number(part.leastRatio, 9)},
            {"most_ratio", number(part.mostRatio, 9)},
            {"most_ratio_at_mm", mm(part.mostRatioAt_m)},
            {"opens", printOpening(part.opens)},
            {"uncorrected", printOpening(part.uncorrected)},
            {"off_wanted", printOpening(part.offWanted)},
            {"planed", part.planed ? printOpening(*part.planed) : Json(nullptr)}};
}

Json printMoisture(const stack::MoistureMove& moisture) {
    if (!moisture.known) return {{"curvature_change_pct", nullptr}, {"unknown", moisture.unknownSpecies}};
    return {{"curvature_change_pct", pct(moisture.change)},
            {"curvature_change_tangential_pct", pct(moisture.changeTangential)},
            {"across_pct", pct(moisture.acrossShrink)},
            {"along_pct", pct(moisture.alongShrink)},
            {"opens", printOpening(moisture.opening)},
            {"source", moisture.source.text},
            {"mark", measure::markText(moisture.source.mark)}};
}

Json printEndStress(const stack::EndStress& end) {
    return {{"at", end.atStart ? "start" : "end"},
            {"at_mm", mm(end.at_m)},
            {"end_moment_N_m", number(end.moment_N_m)},
            {"peel_MPa", number(end.peel_Pa / 1e6)},
            {"peel_from_end_mm", mm(end.peelFrom_m)},
            {"scarfed", end.scarfed},
            {"across_mean_MPa", number(end.acrossMean_Pa / 1e6)},
            {"across_for_good_MPa", number(end.acrossStrength_Pa / 1e6)},
            {"source", end.acrossSource.text},
            {"mark", measure::markText(end.acrossSource.mark)},
            {"wants_fastening", end.wantsFastening},
            {"fastening_N", number(end.fastening_N)},
            {"fastening_from_end_mm", mm(end.fasteningFrom_m)}};
}

// Where most pulls; what stands at both ends below it.
Json printStressLeft(const stack::StressLeft& left) {
    const stack::EndStress& worse = left.end.peel_Pa > left.start.peel_Pa ? left.end : left.start;
    Json printed = printEndStress(worse);
    printed["ends"] = Json::array({printEndStress(left.start), printEndStress(left.end)});
    printed["surface_MPa"] = number(left.surfaceStress_Pa / 1e6);
    printed["surface_at_mm"] = mm(left.surfaceStressAt_m);
    printed["surface_place"] = left.surfacePlace;
    printed["surface_of_breaking_pct"] = number(100 * left.surfaceShare);
    return printed;
}

Json printReading(const stack::SpringbackReading& reading) {
    return {{"piece", reading.piece},
            {"when", reading.when},
            {"after_h", number(reading.after_s / 3600)},
            {"springback_ratio", number(reading.measured, 9)},
            {"springback_ratio_by_rule", number(reading.theory, 9)},
            {"factor", number(reading.factor)},
            {"factor_error", number(reading.error)},
            {"counts", reading.last}};
}

// What the record says; it is not used unless the file's own springback_factor says so.
Json printLearned(const stack::Learned& learned) {
    Json readings = Json::array();
    for (const stack::SpringbackReading& reading : learned.readings) readings.push_back(printReading(reading));
    Json printed{{"pieces", learned.pieces}};
    if (learned.factor) {
        printed["factor"] = number(*learned.factor);
        printed["low"] = number(learned.low);
        printed["high"] = number(learned.high);
    }
    printed["how_far"] = learned.howFar;
    printed["readings"] = readings;
    printed["left_out"] = learned.leftOut;
    return printed;
}

Json printSprungHome(const stack::SprungHome& home) {
    return {{"measured", home.measured},
            {"after_h", number(home.after_s / 3600)},
            {"factor", number(home.factor)},
            {"off_wanted", printOpening(home.off)},
            {"moment_N_m", number(home.moment_N_m)},
            {"moment_at_mm", mm(home.momentAt_m)},
            {"stress_MPa", number(home.stress_Pa / 1e6)},
            {"stress_at_mm", mm(home.stressAt_m)},
            {"stress_place", home.stressPlace},
            {"stress_of_breaking_pct", pct(home.breakingShare)},
            {"bears", home.bears},
            {"middle_pull_N", number(home.middlePull_N)},
            {"middle_at_mm", mm(home.middleAt_m)},
            {"ends_pull_N", number(home.endsPull_N)}};
}

}  // namespace

Json printForm(const Plan& plan) {
    const FormPlan& form = plan.form;
    const stack::PartForm& first = form.parts.front();
    Json printed;
    printed["springback_ratio"] = number(first.ratioAtTightest, 9);
    printed["lets_go"] = form.letsGo;
    printed["corrected"] = form.corrected;
    printed["possible"] = form.possible;
    printed["settled"] = form.settled;
    printed["springback_factor"] = number(form.factor);
    printed["fixed_at_mm"] = mm(form.fixedAt_m);
    printed["tightest_radius_mm"] = radiusMm(form.tightestRadius_m);
    printed["tightest_at_mm"] = mm(form.tightestAt_m);
    Json points = Json::array();
    double before_m = form.line.from_m() - 1;
    for (const stack::FormLine::Node& node : form.line.nodes()) {
        if (node.at_m == before_m) continue;
        before_m = node.at_m;
        points.push_back(printPoint(form.line.faying(node.at_m)));
    }
    printed["points"] = points;
    printed["opens"] = printOpening(first.opens);
    printed["uncorrected"] = printOpening(first.uncorrected);
    Json parts = Json::array();
    for (const stack::PartForm& part : form.parts) parts.push_back(printPart(part));
    printed["parts"] = parts;
    printed["planed"] = first.planed ? printOpening(*first.planed) : Json(nullptr);
    printed["moisture"] = printMoisture(form.moisture);
    Json gluings = Json::array();
    for (const stack::Gluing& gluing : form.gluings) {
        gluings.push_back({{"last_place", gluing.lastPlace}, {"springback_ratio", number(gluing.ratio, 9)}});
    }
    if (!gluings.empty()) printed["gluings"] = gluings;
    printed["scatter"] = {{"low", number(form.scatterLow)},
                          {"high", number(form.scatterHigh)},
                          {"source", form.scatterSource.text},
                          {"mark", measure::markText(form.scatterSource.mark)}};
    if (plan.learned) printed["learned"] = printLearned(*plan.learned);
    if (plan.sprungHome) printed["spring_home"] = printSprungHome(*plan.sprungHome);
    printed["stress_left"] = form.stressLeft ? printStressLeft(*form.stressLeft) : Json(nullptr);
    return printed;
}

}  // namespace fayline::plan
