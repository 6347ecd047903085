// The day as it goes: what has happened so far, what to do now, what is next, and what remains planned anew.
//
// Events only; the state follows from them, so that a log of events is all that must survive. Times are seconds since
// the day's own start by a clock that never jumps; wall time is shown from where it stood at the start.
#pragma once

#include <string>
#include <vector>

#include "core/schedule/run.hpp"

namespace fayline::schedule {

enum class EventKind { started, done, undone, batchMixed, paused, resumed, airTyped, stopped };

struct Event {
    EventKind kind = EventKind::done;
    double at_s = 0;   // since the start
    int task = -1;     // index into the planned run's tasks; -1: none
    double air_C = 0;  // of airTyped
};

struct Now {
    bool started = false;
    bool paused = false;
    bool finished = false;
    std::vector<int> doing;  // tasks
    std::vector<int> next;
    std::optional<int> cup;  // batch in hand
    double cupLeft_s = 0;    // < 0: too late
    int worstFace = -1;
    double faceLeft_s = 0;  // until it goes off
    double margin_s = 0;    // as things stand, of what remains
    Run run;                // what happened and what remains, from the start
    std::vector<std::string> warnings;
};

// What stands at `at_s`. `job` as it is planned with the air typed last: see replan in plan.
Now stateAt(const Job& job, const Run& planned, const std::vector<Event>& events, double at_s);

}  // namespace fayline::schedule
