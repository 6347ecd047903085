// How far the glue has cured along a temperature that changes: day, night, a heated tent.
#pragma once

#include <vector>

#include "core/boat/boat.hpp"
#include "core/glue/adhesive.hpp"
#include "core/glue/pot_life.hpp"

namespace fayline::glue {

// Air temperature after the last clamp is on: the day's, falling to that over night (from `startsAt_s` of the day), and
// the tent's while it is heated.
double airAt(const boat::Glue& glue, double startsAt_s, double after_s);

// Equivalent time at the data sheet's own temperature after `after_s`, seconds.
double equivalentTime(const Adhesive& adhesive, const Kinetics& kinetics, const boat::Glue& glue, double startsAt_s,
                      double after_s);

// When the equivalent time reaches `needed_s`; infinity where it never does (colder than the hardener bears counts as
// no cure).
double whenCured(const Adhesive& adhesive, const Kinetics& kinetics, const boat::Glue& glue, double startsAt_s,
                 double needed_s);

}  // namespace fayline::glue
