// How the line's tightest radius is told: with the digits that its band allows.
#pragma once

#include "core/plan/plan.hpp"
#include "core/units/display.hpp"

namespace fayline::plan {

// Half the band of the tightest curvature, 19 times of 20, as a share of that curvature.
double tightestOff(const LinePlan& line);

// Above this share the range stands beside the radius and the strain.
inline constexpr double wideBand = 0.1;

// The tightest radius in metres, rounded to a step of the display that is no greater than what is known of it.
double shownRadius(const LinePlan& line, const units::Display& display);

// The same, rounded where it is written.
Arg tightestRadius(const LinePlan& line);

// A length in metres, rounded to the coarsest step of the display that is no greater than `known_m`; as it is where
// none is so small.
double knownLength(double length_m, double known_m, const units::Display& display);

// "0-11-0 to 1-2-0", or "0-11-0 or more" where a straight line is within the band.
Message radiusBand(const LinePlan& line);
// Whether the tightest place lies before the second point or after the last but one: there only one side tells of it.
bool tightestAtEnd(const LinePlan& line);

}  // namespace fayline::plan
