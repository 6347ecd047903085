// Amounts of glue and times of the day in words of the units that a user reads in.
#pragma once

#include <string>

#include "core/units/display.hpp"

namespace fayline::units {

// A mass as a scale in the shed reads it: "170 g", "5.9 oz"; from a kilogram on "1.21 kg", from 32 oz on "2.4 lb".
std::string writeMass(double mass_kg, const Display& display);

// A volume: "152 ml", "5.1 fl oz" (US); from a litre on "1.25 l".
std::string writeVolume(double volume_m3, const Display& display);

// A face: "1.74 m2", "18.7 sq ft" where lengths are read in feet or inches.
std::string writeArea(double area_m2, const Display& display);

// How long something takes, to the minute: "40 s" (under two minutes, to ten seconds), "16 min", "1 h 20 min", "28 h";
// from three days on "7 days". Not finite: "never".
std::string writeDuration(double time_s);

// The time on the wall of `clock_s` after midnight: "08:30"; a later day: "08:30 the next day", "08:30 on day 3".
std::string writeClock(double clock_s);

}  // namespace fayline::units
