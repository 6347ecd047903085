// What the clock of the day needs of a piece: the job of one gluing, the same for another air, cautions for what is
// done now, and what comes after.
#pragma once

#include <string>
#include <vector>

#include "core/math/count.hpp"
#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"
#include "core/schedule/day.hpp"

namespace fayline::plan {

// One gluing of a piece, or a dry fit of it, ready to be begun.
struct DayInHand {
    model::Piece piece;
    Shop shop;
    Plan plan;
    int gluing = 0;
    bool dryFit = false;
    schedule::Job job;

    int gluings() const { return math::countOf(plan.day.gluings); }
};

// Throws InputError as makePlan does, and (`stack.gluings`) for a gluing that there is not.
DayInHand dayInHand(const model::Piece& piece, const Shop& shop, int gluing, bool dryFit);

// What is left of a job without glue: strips laid on the pile, carried, laid down, closed.
schedule::Job dryFitOf(const schedule::Job& job);

// The job in other air: the same strips, cups and stations; open time, the cups' times, and the rates of wetting and
// spreading follow the air, by the models of core/glue.
//   (1) in the air that the piece was planned for it is the job itself
schedule::Job jobInAir(const DayInHand& day, double air_C);

// The job of the start and of each air typed since, for schedule::stateAt.
std::vector<schedule::JobFrom> jobsOf(const DayInHand& day, const std::vector<schedule::Event>& events);

// What another air changes, in sentences: open time, the shortest-lived cup, more cups where the plan would take more,
// and when the air is colder than the glue allows or too near its dew point.
std::string airSaid(const DayInHand& day, double air_C);

// What to beware of in the work that is under way or comes next. The first are the most pressing.
// Source: HSE RR079, EU-OSHA, resin makers' guidance (P); stored energy, props: engineering judgement (C).
std::vector<std::string> cautionsFor(const DayInHand& day, const schedule::Now& now);

// What the screen says before the day is begun: crew, air, strips, cups, planned length and margin; that it is one
// gluing of several, after which strip it stops and what the rest then needs.
std::vector<std::string> beforeSaid(const DayInHand& day);

// What comes after, when the last station was on at `closed_s` of a day that began `startAt_s` after midnight:
// scraping, clamps off, planing, full strength by the temperatures of the coming night, and the next gluing.
std::vector<std::string> afterSaid(const DayInHand& day, const schedule::Now& now, double startAt_s);

}  // namespace fayline::plan
