// The keys of the printed plan about glue and the day.
#pragma once

#include <array>
#include <vector>

#include "core/export/print_rules.hpp"
#include "core/plan/findings/day_words.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"

namespace fayline::plan::printing {

using glue::Amounts, glue::Batch, glue::BatchFor, glue::Between, glue::CurePlan, glue::GluePlan, schedule::Days,
    schedule::FaceTimes, schedule::Run, schedule::Task;

inline constexpr Figure m2{{"m2"}};
inline constexpr Figure hours{unit::h, 3};
inline constexpr Figure odds_pct{{"pct", oddsPct}, 1};
inline constexpr Figure peak_C{{"C"}, -1};  // of a cup that heats itself: the model knows it no better

void printedKeys(auto& visit, const Batch*) {
    visit("number", &Batch::number, Whole{});
    visit("for", &Batch::use,
          words<BatchFor>(
              {{BatchFor::endGrain, "end grain"}, {BatchFor::wetOut, "wet out"}, {BatchFor::spread, "spread"}}));
    visit(
        "gluing", [](const Batch& batch) { return batch.gluing + 1; }, Whole{});
    visit("parts_g", &Batch::parts_kg, Pair<Figure>{grams});
    visit("parts_ml", &Batch::parts_m3, Pair<Figure>{millilitres});
    visit("filler_g", &Batch::filler_kg, grams);
    visit("thinner_g", &Batch::thinner_kg, grams);
    visit("pot_life_min", via(&Batch::potLife_s, &Between::likely), OrNull{minutes});
    visit("pot_life_from_min", via(&Batch::potLife_s, &Between::from), OrNull{minutes});
    visit("pot_life_to_min", via(&Batch::potLife_s, &Between::to), OrNull{minutes});
    visit("use_within_min", &Batch::useWithin_s, OrNull{minutes});
    visit("takes_min", &Batch::takes_s, minutes);
    visit("peak_C", ifAny(&Batch::leftPeak_C, &Between::likely), OrNull{peak_C});
    visit("peak_from_C", ifAny(&Batch::leftPeak_C, &Between::from), OrNull{peak_C});
    visit("peak_to_C", ifAny(&Batch::leftPeak_C, &Between::to), OrNull{peak_C});
    visit("peak_if_left_standing_C", via(&Batch::fullPeak_C, &Between::likely), peak_C);
    visit("peak_if_left_standing_from_C", via(&Batch::fullPeak_C, &Between::from), peak_C);
    visit("peak_if_left_standing_to_C", via(&Batch::fullPeak_C, &Between::to), peak_C);
}

void printedKeys(auto& visit, const GluePlan*) {
    visit("adhesive", via(&GluePlan::adhesive, &glue::Adhesive::id), Text{});
    visit("area_m2", &GluePlan::area_m2, m2);
    visit("needed_g", &GluePlan::needed_kg, grams);
    visit("mixed_g", &GluePlan::mixed_kg, grams);
    visit("parts_g", &GluePlan::parts_kg, Pair<Figure>{grams});
    visit("parts_ml", &GluePlan::parts_m3, Pair<Figure>{millilitres});
    visit("joint_m2", via(&GluePlan::amounts, &Amounts::joint_m2), m2);
    visit("per_joint_g_m2", via(&GluePlan::amounts, &Amounts::perJoint_kg_m2), Figure{unit::g_m2, 1});
    visit("line_g", via(&GluePlan::amounts, &Amounts::line_kg), grams);
    visit("soak_in_g", via(&GluePlan::amounts, &Amounts::soaksIn_kg), grams);
    visit("squeeze_out_g", via(&GluePlan::amounts, &Amounts::squeezedOut_kg), grams);
    visit("waste_g", via(&GluePlan::amounts, &Amounts::waste_kg), grams);
    visit("filler_g", &GluePlan::filler_kg, grams);
    visit("thinner_g", &GluePlan::thinner_kg, grams);
    visit("batches", &GluePlan::batches, ListOf<Group>{});
    visit("open_time_min", &GluePlan::openTime_s, minutes);
    visit("wood_moisture_pct", &GluePlan::airMoisture, pct);
    visit("dew_point_C", &GluePlan::dewPoint_C, Figure{{"C"}, 2});
    visit("clamps_off_h", via(&GluePlan::cure, &CurePlan::clampsOff_s), OrNull{hours});
    visit("work_h", via(&GluePlan::cure, &CurePlan::work_s), OrNull{hours});
    visit("full_h", via(&GluePlan::cure, &CurePlan::full_s), OrNull{hours});
}

// One of a gluing's tasks or glue lines.
template <class Item>
struct OfGluing {
    const Item* item;
    int gluing;  // 1 the first
};

template <class Item, std::vector<Item> Run::*items>
std::vector<OfGluing<Item>> ofAllGluings(const DayPlan& day) {
    std::vector<OfGluing<Item>> all;
    for (const GluingDay& gluing : day.gluings) {
        for (const Item& item : gluing.run.*items) all.push_back({&item, gluing.job.gluing + 1});
    }
    return all;
}

// What a task is about, as the run sheet names it; -1: nothing that has a number.
inline int placeOf(const OfGluing<Task>& of) {
    const Task& task = *of.item;
    if (task.station > 0) return task.station;
    if (task.work == schedule::Work::mix) return task.cup;
    return task.strip;
}

void printedKeys(auto& visit, const OfGluing<Task>*) {
    using This = OfGluing<Task>;
    visit("name", via(&This::item, &Task::name), Text{});
    visit("gluing", &This::gluing, Whole{});
    visit("start_min", via(&This::item, &Task::start_s), minutes);
    visit("end_min", via(&This::item, &Task::end_s), minutes);
    visit("hands", via(&This::item, &Task::hands), Whole{});
    visit("at", placeOf, OrNull<Whole>{});
}

// The strips on both sides of a glue line.
inline std::array<int, 2> between(const OfGluing<FaceTimes>& of) {
    return {of.item->inner, of.item->inner + 1};
}

void printedKeys(auto& visit, const OfGluing<FaceTimes>*) {
    using This = OfGluing<FaceTimes>;
    visit("between", between, Pair<Whole>{});
    visit("gluing", &This::gluing, Whole{});
    visit("wetted_min", via(&This::item, &FaceTimes::wetted_s), minutes);
    visit("closed_min", via(&This::item, &FaceTimes::closed_s), minutes);
    visit("open_until_min", via(&This::item, &FaceTimes::openUntil_s), minutes);
    visit("margin_min", via(&This::item, &FaceTimes::margin_s), minutes);
}

void printedKeys(auto& visit, const Remedy*) {
    visit(
        "what", [](const Remedy& remedy, const Of& of) { return writeWithin(remedy.what, of.shop.display); }, Text{});
    visit("margin_min", &Remedy::margin_s, minutes);
    visit("cup_margin_min", &Remedy::cupMargin_s, OrNull{minutes});
    visit("chance_in_time_pct", &Remedy::chanceInTime, odds_pct);
    visit("break_after_strip", ifAbove0(&Remedy::breakAfterStrip), OrAbsent<Whole>{});
}

void printedKeys(auto& visit, const DayPlan*) {
    constexpr auto study = [](auto... steps) { return ifAny(via(plan, &Plan::dayStudy), steps...); };
    visit("tasks", ofAllGluings<Task, &Run::tasks>, ListOf<Group>{});
    visit("faces", ofAllGluings<FaceTimes, &Run::faces>, ListOf<Group>{});
    visit("margin_min", &DayPlan::margin_s, minutes);
    visit("cup_margin_min", &DayPlan::cupMargin_s, OrNull{minutes});
    visit("chance_in_time_pct", study(&DayStudy::days, &Days::chanceInTime), OrAbsent{odds_pct});
    visit("margin_for_95_in_100_min", study(&DayStudy::days, &Days::marginFor95_s), OrAbsent{minutes});
    visit("chance_cups_in_time_pct", study(&DayStudy::days, &Days::chanceCups), OrAbsent{odds_pct});
    visit("remedies", study(&DayStudy::remedies), OrAbsent<ListOf<Group>>{});
}

}  // namespace fayline::plan::printing
