// What a day leaves behind: its record in the boat file, what was planned next to what was, and the crew's rates.
#pragma once

#include <string>
#include <vector>

#include "core/plan/day/day_clock.hpp"

namespace fayline::plan {

// The record of a day, from its events. `when` as in the file, 2026-05-02T08:30. What was taken back is left out.
// Marks are the tasks done by their words (schedule::taskWords), which no language changes, at the minute they were
// done; "begin:" before a word where that is known; "begin", "pause", "go_on", "stop_after:3", "end" of the whole.
model::Record recordOf(const DayInHand& day, const std::vector<schedule::Event>& events, const std::string& when);

// The events that a record stands for. Marks that name no task of this day are passed over; older records, with
// English names of tasks, "go on" and "stop after strip 3", are read.
//   (1) stateAt of recordOf's events is that of the events themselves, but for what was taken back, within a second
std::vector<schedule::Event> eventsOf(const DayInHand& day, const model::Record& record);

// One line of what was learned: planned and real minutes of one kind of work.
struct Compared {
    std::string what;  // "close a clamp"
    int count = 0;
    double planned_s = 0;  // of all together
    double real_s = 0;
};
std::vector<Compared> comparedOf(const DayInHand& day, const schedule::Now& now);

// The crew's rates as the tasks done measured them; those that were not measured stay. Wetting and spreading are told
// for 20 C, as rates are, with the time to handle a strip as it is given. Each is rounded to three figures.
struct RatesLearned {
    model::Rates rates;
    std::vector<std::string> said;  // what changes, a full sentence each; empty: nothing was measured
};
RatesLearned ratesOf(const DayInHand& day, const schedule::Now& now);

}  // namespace fayline::plan
