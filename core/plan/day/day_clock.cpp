#include "core/plan/day/day_clock.hpp"

#include <algorithm>
#include <cmath>
#include <ranges>
#include <set>

#include "core/glue/conditions.hpp"
#include "core/glue/pot_life.hpp"
#include "core/model/hold_traits.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/units/day_text.hpp"
#include "core/units/input_error.hpp"

namespace fayline::plan {

namespace {

using schedule::TaskState;
using schedule::Work;
using units::writeClock;
using units::writeDuration;
using units::writeTemperature;

double leastUse(const schedule::Job& job) {
    double least_s = INFINITY;
    for (const schedule::CupJob& cup : job.cups) least_s = std::min(least_s, cup.useWithin_s);
    return least_s;
}

// How many cups the plan would take in that air; 0 where none can be made.
std::size_t cupsPlanned(const DayInHand& day, double air_C) {
    model::Piece piece = day.piece;
    piece.glue.air_C = air_C;
    try {
        const DayPlan other = planDay(piece, day.shop, day.plan.line.fair.line, day.plan.stack, &day.plan.day.glue);
        return other.gluings.at(static_cast<std::size_t>(day.gluing)).job.cups.size();
    } catch (const units::InputError&) {
        return 0;
    }
}

bool hasStruts(const DayInHand& day) {
    return std::ranges::any_of(day.piece.holding.stations,
                               [](const model::Station& s) { return model::is<model::Strut>(s.kind); });
}

// The strips of a gluing: "strips 5 to 8".
std::string stripsOf(const schedule::Job& job) {
    int first = 0;
    int last = 0;
    for (const schedule::StripJob& strip : job.strips) {
        if (strip.strip == 0) continue;
        if (first == 0) first = strip.strip;
        last = strip.strip;
    }
    if (first == last) return "strip " + std::to_string(first);
    return "strips " + std::to_string(first) + " to " + std::to_string(last);
}

}  // namespace

DayInHand dayInHand(const model::Piece& piece, const Shop& shop, int gluing, bool dryFit) {
    DayInHand day{piece, shop, makePlan(piece, shop), gluing, dryFit, {}};
    if (gluing < 0 || gluing >= day.gluings()) {
        throw units::InputError("stack.gluings", "there is no glue-up " + std::to_string(gluing + 1),
                                "choose one of " + std::to_string(day.gluings()));
    }
    const schedule::Job& job = day.plan.day.gluings[gluing].job;
    day.job = dryFit ? dryFitOf(job) : job;
    return day;
}

schedule::Job dryFitOf(const schedule::Job& job) {
    schedule::Job dry = job;
    dry.cups.clear();
    dry.faces.clear();
    dry.endGrain_m2 = dry.soak_s = dry.scrape_s = dry.wipe_s = dry.sand_s = 0;
    for (schedule::StripJob& strip : dry.strips) strip.wet_m2 = strip.spread_m2 = 0;
    std::erase_if(dry.strips, [](const schedule::StripJob& strip) { return strip.strip == 0; });
    return dry;
}

schedule::Job jobInAir(const DayInHand& day, double air_C) {
    schedule::Job job = day.job;
    if (day.dryFit) return job;
    const glue::GluePlan& glue = day.plan.day.glue;
    const model::Rates& rates = day.piece.crew.rates;
    const double slowdown = glue::slowdownAt(air_C);
    job.openTime_s = glue::openTime(glue.adhesive, glue.kinetics, air_C);
    job.wetOut_m2_s = rates.wetOut_m2_s * slowdown;
    job.spread_m2_s = rates.spread_m2_s * slowdown;
    for (schedule::CupJob& cup : job.cups) {
        const auto batch = std::ranges::find(glue.batches, cup.number, &glue::Batch::number);
        if (batch == glue.batches.end()) continue;
        cup.useWithin_s = glue::usedWithin(glue, day.piece.glue, batch->mixed_kg(), air_C);
    }
    return job;
}

std::vector<schedule::JobFrom> jobsOf(const DayInHand& day, const std::vector<schedule::Event>& events) {
    std::vector<schedule::JobFrom> jobs{{0, day.job}};
    for (const schedule::Event& event : events) {
        if (event.kind == schedule::EventKind::airTyped) jobs.push_back({event.at_s, jobInAir(day, event.air_C)});
    }
    return jobs;
}

std::string airSaid(const DayInHand& day, double air_C) {
    if (day.dryFit) return "";
    const glue::GluePlan& glue = day.plan.day.glue;
    const auto temperature = [&](double value_C) { return writeTemperature(value_C, day.shop.display); };
    const schedule::Job job = jobInAir(day, air_C);
    std::string said = "At " + temperature(air_C) + " the glue stays open for " + writeDuration(job.openTime_s) +
                       " (planned " + writeDuration(day.job.openTime_s) + ")";
    if (!job.cups.empty()) {
        said += ". Use each batch within " + writeDuration(leastUse(job)) + " (planned " +
                writeDuration(leastUse(day.job)) + ")";
    }
    said += ".";
    const std::size_t cups = cupsPlanned(day, air_C);
    if (cups > job.cups.size()) {
        said += " This air needs " + numberWord(static_cast<int>(cups)) + " batches instead of " +
                numberWord(math::countOf(job.cups)) + ": mix smaller ones from now on.";
    }
    if (air_C < glue.adhesive.least_C) {
        said += " This is colder than the glue allows (" + temperature(glue.adhesive.least_C) +
                "): it does not cure as it should. Warm the shed or wait.";
    }
    const double dew_C = glue::dewPoint(air_C, std::max(day.piece.glue.humidity, 0.01));
    if (air_C < dew_C + glue::aboveDewPoint_K) {
        said += " Wood and glue are within 3 K of the dew point (" + temperature(dew_C) + "): damp settles on them.";
    }
    return said;
}

std::vector<std::string> cautionsFor(const DayInHand& day, const schedule::Now& now) {
    std::set<Work> works;
    for (const std::vector<int>* tasks : {&now.doing, &now.next}) {
        for (const int task : *tasks) works.insert(now.run.tasks[task].work);
    }
    std::vector<std::string> cautions;
    const auto at = [&works](std::initializer_list<Work> wanted) {
        return std::ranges::any_of(wanted, [&works](Work work) { return works.contains(work); });
    };
    if (at({Work::carry, Work::place, Work::close})) {
        cautions.emplace_back(
            "The bent stack stores energy and whips when a clamp slips: rope it, stand clear of its ends.");
        if (hasStruts(day)) {
            cautions.emplace_back(
                "Props and jacks: no hand or head in line with one, never above its marked load, and the boat blocked "
                "before anyone is under it.");
        }
    }
    if (!day.dryFit) {
        if (at({Work::mix})) {
            cautions.emplace_back(
                "Gloves and fresh air: resin and hardener sensitise skin and lungs. A full pot heats itself and can "
                "smoke; carry a hot one outdoors.");
        }
        if (at({Work::wetOut, Work::spread, Work::scrape, Work::soak})) {
            cautions.emplace_back(
                "Gloves on; never clean skin with solvent. Rags go into a closed metal bin with water.");
        }
        if (at({Work::sand, Work::wipe})) {
            cautions.emplace_back(
                "Mask for dust, above all of glue that is not fully cured; solvents burn, no flame near.");
        }
    }
    cautions.emplace_back("Local rules and licensed practice come first.");
    return cautions;
}

std::vector<std::string> beforeSaid(const DayInHand& day) {
    const schedule::Run run = schedule::runOf(day.job);
    std::vector<std::string> said;
    const int hands = day.job.hands;
    const std::string crew = numberWord(hands) + (hands == 1 ? " pair of hands" : " pairs of hands");
    if (day.dryFit) {
        said.push_back("A dry fit without glue, " + crew + ": " + stripsOf(day.job) + ", " +
                       std::to_string(day.job.stations.size()) + " stations. Planned: " + writeDuration(run.closed_s) +
                       " until the last one is on. It measures how fast you are.");
    } else {
        const glue::GluePlan& glue = day.plan.day.glue;
        said.push_back(
            capitalised(crew) + ", " + stripsOf(day.job) + ", " + std::to_string(day.job.cups.size()) +
            (day.job.cups.size() == 1 ? " batch" : " batches") + " of " + glue.adhesive.name + ", " +
            std::to_string(day.job.stations.size()) + " stations, air " +
            writeTemperature(day.piece.glue.air_C, day.shop.display) + ". Planned: " + writeDuration(run.closed_s) +
            " until the last station is on" +
            (run.worstFace < 0 ? "." : ", " + writeDuration(run.margin_s()) + " to spare at the worst joint."));
    }
    if (day.gluings() > 1) {
        std::string text = "Glue-up " + std::to_string(day.gluing + 1) + " of " + std::to_string(day.gluings()) + ": ";
        if (day.gluing + 1 < day.gluings()) {
            text += "a planned break comes after " + stripsOf(day.job) +
                    ". Let this cure, then wash and sand it before you go on.";
        } else {
            text += "the last. Wash and sand the cured strip first.";
        }
        said.push_back(text);
    }
    return said;
}

std::vector<std::string> afterSaid(const DayInHand& day, const schedule::Now& now, double startAt_s) {
    std::vector<std::string> said;
    bool closed = true;
    for (std::size_t i = 0; i < now.run.tasks.size(); ++i) {
        const TaskState state = now.states[i];
        const bool ended = state == TaskState::done || state == TaskState::leftOut;
        closed = closed && (ended || now.run.tasks[i].work == Work::scrape);
    }
    if (day.dryFit) {
        said.push_back(closed ? "The dry fit took " + writeDuration(now.run.closed_s) + "."
                              : "You ended the dry fit before the last station was on.");
        return said;
    }
    if (!closed) {
        said.push_back(
            "You ended the day before the last station was on. Spread glue cures all the same: scrape it off while it "
            "is soft.");
        return said;
    }
    const double closedAt_s = startAt_s + now.run.closed_s;
    std::string text = "The last station was on at " + writeClock(closedAt_s);
    if (now.run.worstFace >= 0) {
        const double margin_s = now.run.margin_s();
        text += margin_s >= 0 ? ", " + writeDuration(margin_s) + " to spare at the worst joint"
                              : ", " + writeDuration(-margin_s) + " too late for the worst joint";
    }
    said.push_back(text + ".");
    const glue::GluePlan& glue = day.plan.day.glue;
    const glue::CurePlan cure = glue::planCure(glue.adhesive, glue.kinetics, day.piece.glue, closedAt_s);
    const auto clock = [&](double after_s) { return writeClock(closedAt_s + after_s); };
    if (std::isfinite(cure.softUntil_s) && std::isfinite(cure.scrapeUntil_s)) {
        said.push_back("Squeeze-out is soft until " + clock(cure.softUntil_s) + " and scrapes well until " +
                       clock(cure.scrapeUntil_s) + ".");
    }
    if (std::isfinite(cure.clampsOff_s)) {
        text = "At tonight's temperatures clamps may come off at " + clock(cure.clampsOff_s);
        if (std::isfinite(cure.work_s)) text += ", it can be planed at " + clock(cure.work_s);
        text += std::isfinite(cure.full_s) ? ", and it has its full strength at " + clock(cure.full_s)
                                           : ", and its full strength takes more than three weeks in such air";
        said.push_back(text + ". Loosen them bit by bit: it springs open.");
    } else {
        said.push_back("At tonight's temperatures it does not cure within three weeks: warm it.");
    }
    if (now.brokenAfter > 0) {
        said.push_back("The strips after strip " + std::to_string(now.brokenAfter) +
                       " are a glue-up of their own. Let this cure, then wash and sand it.");
    } else if (day.gluing + 1 < day.gluings()) {
        said.push_back("Glue-up " + std::to_string(day.gluing + 2) +
                       " comes when this has cured. Wash and sand it first.");
    }
    return said;
}

}  // namespace fayline::plan
