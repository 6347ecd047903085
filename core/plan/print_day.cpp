#include <cmath>

#include "core/plan/day_words.hpp"
#include "core/plan/print_json.hpp"

namespace fayline::plan {

namespace {

Json grams(double mass_kg) {
    return number(1000 * mass_kg, 3);
}

Json millilitres(double volume_m3) {
    return number(1e6 * volume_m3, 3);
}

Json minutes(double time_s) {
    return number(time_s / 60, 3);
}

Json hours(double time_s) {
    return number(time_s / 3600, 3);
}

template <class Each>
Json pairOf(const std::array<double, 2>& parts, const Each& each) {
    return Json::array({each(parts[0]), each(parts[1])});
}

const char* useText(glue::BatchFor use) {
    switch (use) {
        case glue::BatchFor::endGrain:
            return "end grain";
        case glue::BatchFor::wetOut:
            return "wet out";
        case glue::BatchFor::spread:
            return "spread";
    }
    return "spread";
}

// Of a cup that heats itself, to ten degrees: the model knows it no better.
Json peak(double peak_C) {
    return number(10 * std::round(peak_C / 10), 0);
}

Json printBatch(const glue::Batch& batch) {
    const std::optional<glue::Between>& left = batch.leftPeak_C;
    const auto ofLeft = [&left](double glue::Between::*member) { return left ? peak((*left).*member) : Json(nullptr); };
    return {{"number", batch.number},
            {"for", useText(batch.use)},
            {"gluing", batch.gluing + 1},
            {"parts_g", pairOf(batch.parts_kg, grams)},
            {"parts_ml", pairOf(batch.parts_m3, millilitres)},
            {"filler_g", grams(batch.filler_kg)},
            {"thinner_g", grams(batch.thinner_kg)},
            {"pot_life_min", minutes(batch.potLife_s.likely)},
            {"pot_life_from_min", minutes(batch.potLife_s.from)},
            {"pot_life_to_min", minutes(batch.potLife_s.to)},
            {"use_within_min", minutes(batch.useWithin_s)},
            {"takes_min", minutes(batch.takes_s)},
            {"peak_C", ofLeft(&glue::Between::likely)},
            {"peak_from_C", ofLeft(&glue::Between::from)},
            {"peak_to_C", ofLeft(&glue::Between::to)},
            {"peak_if_left_standing_C", peak(batch.fullPeak_C.likely)},
            {"peak_if_left_standing_from_C", peak(batch.fullPeak_C.from)},
            {"peak_if_left_standing_to_C", peak(batch.fullPeak_C.to)}};
}

// What a task is about, as the run sheet names it.
Json placeOf(const schedule::Task& task) {
    if (task.station > 0) return task.station;
    if (task.work == schedule::Work::mix) return task.cup;
    if (task.strip >= 0) return task.strip;
    return nullptr;
}

Json printTask(const schedule::Task& task, int gluing) {
    return {{"name", task.name},
            {"gluing", gluing + 1},
            {"start_min", minutes(task.start_s)},
            {"end_min", minutes(task.end_s)},
            {"hands", task.hands},
            {"at", placeOf(task)}};
}

Json printFace(const schedule::FaceTimes& face, int gluing) {
    return {{"between", Json::array({face.inner, face.inner + 1})},
            {"gluing", gluing + 1},
            {"wetted_min", minutes(face.wetted_s)},
            {"closed_min", minutes(face.closed_s)},
            {"open_until_min", minutes(face.openUntil_s)},
            {"margin_min", minutes(face.margin_s())}};
}

}  // namespace

Json printGlue(const Plan& plan) {
    const glue::GluePlan& glue = plan.day.glue;
    Json printed;
    printed["adhesive"] = glue.adhesive.id;
    printed["area_m2"] = number(glue.area_m2);
    printed["needed_g"] = grams(glue.needed_kg);
    printed["mixed_g"] = grams(glue.mixed_kg);
    printed["parts_g"] = pairOf(glue.parts_kg, grams);
    printed["parts_ml"] = pairOf(glue.parts_m3, millilitres);
    printed["joint_m2"] = number(glue.amounts.joint_m2);
    printed["per_joint_g_m2"] = number(1000 * glue.amounts.perJoint_kg_m2(), 1);
    printed["line_g"] = grams(glue.amounts.line_kg);
    printed["soak_in_g"] = grams(glue.amounts.soaksIn_kg);
    printed["squeeze_out_g"] = grams(glue.amounts.squeezedOut_kg);
    printed["waste_g"] = grams(glue.amounts.waste_kg);
    printed["filler_g"] = grams(glue.filler_kg);
    printed["thinner_g"] = grams(glue.thinner_kg);
    Json batches = Json::array();
    for (const glue::Batch& batch : glue.batches) batches.push_back(printBatch(batch));
    printed["batches"] = batches;
    printed["open_time_min"] = minutes(glue.openTime_s);
    printed["wood_moisture_pct"] = pct(glue.airMoisture);
    printed["dew_point_C"] = number(glue.dewPoint_C, 2);
    printed["clamps_off_h"] = hours(glue.cure.clampsOff_s);
    printed["work_h"] = hours(glue.cure.work_s);
    printed["full_h"] = hours(glue.cure.full_s);
    return printed;
}

Json printSchedule(const Plan& plan) {
    Json printed;
    Json tasks = Json::array();
    Json faces = Json::array();
    for (const GluingDay& day : plan.day.gluings) {
        for (const schedule::Task& task : day.run.tasks) tasks.push_back(printTask(task, day.job.gluing));
        for (const schedule::FaceTimes& face : day.run.faces) faces.push_back(printFace(face, day.job.gluing));
    }
    printed["tasks"] = tasks;
    printed["faces"] = faces;
    printed["margin_min"] = minutes(plan.day.margin_s);
    printed["cup_margin_min"] = minutes(plan.day.cupMargin_s);
    if (plan.dayStudy) {
        const DayStudy& study = *plan.dayStudy;
        printed["chance_in_time_pct"] = number(oddsPct(study.days.chanceInTime), 1);
        printed["margin_for_95_in_100_min"] = minutes(study.days.marginFor95_s);
        printed["chance_cups_in_time_pct"] = number(oddsPct(study.days.chanceCups), 1);
        Json remedies = Json::array();
        for (const Remedy& remedy : study.remedies) {
            Json one{{"what", remedy.what},
                     {"margin_min", minutes(remedy.margin_s)},
                     {"cup_margin_min", minutes(remedy.cupMargin_s)},
                     {"chance_in_time_pct", number(oddsPct(remedy.chanceInTime), 1)}};
            if (remedy.breakAfterStrip > 0) one["break_after_strip"] = remedy.breakAfterStrip;
            remedies.push_back(one);
        }
        printed["remedies"] = remedies;
    }
    return printed;
}

}  // namespace fayline::plan
