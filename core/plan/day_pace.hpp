// How fast this crew is on the days of this piece, and how far that scatters: as given, narrowed by the record.
#pragma once

#include "core/model/boat.hpp"
#include "core/plan/day_plan.hpp"

namespace fayline::plan {

struct Pace {
    double middle = 1;   // of the middle day, over what the rates say: 1.1 takes a tenth longer
    double scatter = 0;  // standard deviation of the logarithm
    int days = 0;        // recorded gluings that took part
};

// The pace given in `crew` counts as two days seen before, each at the planned pace and scattered as given; each
// recorded gluing adds the logarithm x of its real working minutes over the planned ones, by the present rates in that
// day's air. Middle and scatter are mean and standard deviation of all of these together:
//   m = sum x / (2 + n),   s^2 = (2 (given^2 + m^2) + sum (x - m)^2) / (2 + n)
// So three gluings that went just as planned narrow 20 % to 13 %, and gluings that differ widely widen it. A record
// counts that covers half of the planned work or more and took between a quarter and four times of it: what lies
// outside was not the work as planned. Dry fits do not count. That the given pace is worth two days is common practice,
// no source.
Pace paceOf(const model::Piece& piece, const Shop& shop, const DayPlan& day);

// All that a day can differ in, for schedule::simulateDays.
schedule::Uncertain uncertainOf(const model::Crew& crew, const Pace& pace);

// Throws InputError (`crew.pace_pct`, ...) for shares of the crew outside 0..1 and mishaps of negative time: the bounds
// of the project file, for values that came by another way.
void checkCrew(const model::Crew& crew);

}  // namespace fayline::plan
