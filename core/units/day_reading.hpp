// What a gluing day is told by, as it is typed: temperatures, small masses, volumes, durations, times, rates. Each
// typed function writes the value so that its reader gives it back. All readers throw InputError with an empty path; a
// decimal comma is read like a point.
#pragma once

#include <string>
#include <string_view>

#include "core/units/display.hpp"

namespace fayline::units {

// "18", "18 C", "64 F": degrees Celsius. A bare number is in the display's unit.
double readTemperature(std::string_view text, const Display& display);
std::string typedTemperature(double air_C, const Display& display);

// A mass in the cup: "100", "100 g", "3.5 oz", "0.2 kg": kilograms. A bare number is in the display's small unit.
double readSmallMass(std::string_view text, const Display& display);
std::string typedSmallMass(double mass_kg, const Display& display);

// "500", "500 ml", "0.5 l", "17 fl oz" (US): cubic metres. A bare number is in the display's unit.
double readVolume(std::string_view text, const Display& display);
std::string typedVolume(double volume_m3, const Display& display);

// "4", "4 min", "40 s", "1.5 h", "2 days": seconds. A bare number is in `bare_s` seconds (60: minutes).
double readDuration(std::string_view text, double bare_s = 60);
std::string typedDuration(double time_s, double unit_s = 60);  // unit_s: 1, 60, 3600

// A time of the day, "08:30" or "8.30" or "8": seconds after midnight.
double readClock(std::string_view text);
std::string typedClock(double clock_s);  // "08:30", with seconds where there are any: "08:30:15"

// A rate of area, "0.12", "0.12 m2/min", "1.3 sq ft/min": square metres a second. A bare number is in m2/min, in sq
// ft/min where lengths are read in feet or inches.
double readAreaRate(std::string_view text, const Display& display);
std::string typedAreaRate(double rate_m2_s, const Display& display);

// Glue on a face, "250", "250 g/m2", "0.8 oz/sq ft": kilograms a square metre. A bare number is in g/m2.
double readCoat(std::string_view text);
std::string typedCoat(double coat_kg_m2);

}  // namespace fayline::units
