// The record of a day by the clock that went as planned, but for its pace.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "core/plan/day/day_clock.hpp"

namespace fayline::made {

// All of `day` done, each task `times` as long as planned, begun `when`.
inline model::Record recordedDay(const plan::DayInHand& day, double times, const std::string& when) {
    schedule::Run run = schedule::runOf(day.job);
    schedule::retime(day.job, std::vector<double>(run.tasks.size(), times), {}, run);
    std::vector<schedule::Event> events{{schedule::EventKind::started, 0}};
    for (std::size_t i = 0; i < run.tasks.size(); ++i) {
        const bool mixes = run.tasks[i].work == schedule::Work::mix;
        events.push_back({mixes ? schedule::EventKind::batchMixed : schedule::EventKind::done, run.tasks[i].end_s,
                          static_cast<int>(i)});
    }
    std::ranges::stable_sort(events, {}, &schedule::Event::at_s);
    return plan::recordOf(day, events, when);
}

}  // namespace fayline::made
