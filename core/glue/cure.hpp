// How far the glue has cured along a temperature that changes: day, night, a heated tent.
#pragma once

#include <vector>

#include "core/glue/adhesive.hpp"
#include "core/glue/pot_life.hpp"
#include "core/model/boat.hpp"

namespace fayline::glue {

// Air at the glue so long after the last clamp is on, C. By day (8 to 18 o'clock) that of the day, by night (22 to 6
// o'clock) that over night, evenly between; while the tent is heated that of the tent. A simple course, common
// practice. `closedAt_s`: seconds after midnight at which the last clamp is on.
double airAt(const model::Glue& glue, double closedAt_s, double after_s);

// When it has cured as far as `needed_s` at the data sheet's own temperature would, seconds after closing. In air below
// the glue's least temperature nothing is counted as cure. Infinity: not within three weeks.
double whenCured(const Adhesive& adhesive, const Kinetics& kinetics, const model::Glue& glue, double closedAt_s,
                 double needed_s);

struct CurePlan {
    double closedAt_s = 0;   // seconds after midnight
    double clampsOff_s = 0;  // after closing: the data sheet's handling time
    double work_s = 0;       // it can be planed: twice the handling time (C)
    double full_s = 0;
    // Squeeze-out: soft until the film gels, then like rubber and best scraped until the cure is at three quarters (C).
    double softUntil_s = 0;
    double scrapeUntil_s = 0;
    double leastAir_C = 0;     // of the first day
    std::vector<double> at_s;  // for a plot, every half hour of three days
    std::vector<double> air_C;
    std::vector<double> share;  // of the handling time's cure
};
CurePlan planCure(const Adhesive& adhesive, const Kinetics& kinetics, const model::Glue& glue, double closedAt_s);

}  // namespace fayline::glue
