// The day as it goes: what has happened so far, what to do now, what is next, and what remains planned anew.
//
// Events only; the state follows from them, so that a log of events is all that must survive. Times are seconds since
// the day's own start by a clock that never jumps; wall time is shown from where it stood at the start.
//
// A task begins when what it waits for is done and its hands are free, unless an event says when; so "done" alone keeps
// the day going. A cup's time counts from the start of mixing, a face's from the first wetting of either side. Where
// the air was typed anew, each stretch of time uses up its share: an hour of a film that stays open two hours at that
// air is one half. For a film that follows from Arrhenius (D); for a cup, which heats itself, it is an approximation
// (C).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/schedule/run.hpp"

namespace fayline::schedule {

enum class EventKind {
    started,     // the day (no task), or a task, where that is known
    done,        // a task
    undone,      // what was said of a task is taken back: it is not done
    batchMixed,  // a task of mixing is done
    paused,
    resumed,
    airTyped,   // the air temperature read anew
    brokenOff,  // strips beyond `strip` are left for a gluing of their own
    carriedOn,  // taken back: they are glued with the rest after all
    stopped     // the day is over
};

// "done", as logs and records have it.
std::string_view eventWord(EventKind kind);
std::optional<EventKind> eventOfWord(std::string_view word);

struct Event {
    EventKind kind = EventKind::done;
    double at_s = 0;   // since the start
    int task = -1;     // index into the run's tasks; -1: none
    int strip = 0;     // of brokenOff
    double air_C = 0;  // of airTyped

    bool operator==(const Event&) const = default;
};

// The job as it is planned for the air typed at `from_s`: the same tasks, cups and faces, other times.
struct JobFrom {
    double from_s = 0;
    Job job;
};

enum class TaskState { waiting, doing, done, leftOut };

struct CupNow {
    int number = 1;
    double mixedFrom_s = 0;
    double useBy_s = 0;
    double left_s = 0;   // < 0: too late
    double whole_s = 0;  // from mixing until then
    bool mixed = false;  // false: being mixed
};

struct FaceNow {
    int inner = 0;  // as in FaceTimes
    double openUntil_s = 0;
    double left_s = 0;
    double whole_s = 0;  // from wetting until then
};

// How much of a life is left: enough, little, or none. By littleLeft.
enum class Urgency { ample, little, over };
Urgency urgencyOf(double left_s, double whole_s);

// To stop wetting after a strip and close what is wetted; what is left is a gluing of its own.
struct BreakOff {
    int afterStrip = 0;
    double margin_s = 0;
};

enum class WarningKind { cupOver, cupShort, cupForeseen, faceOff, faceLate, pace, faceShort };

// Said aloud while it lasts (plan::warningTexts has the words). It is the same warning while kind and cup stay and the
// minutes run on.
struct Warning {
    WarningKind kind = WarningKind::pace;
    bool stop = false;                 // else a caution
    int cup = 0;                       // its number; 0: it is about none
    int inner = 0;                     // strip inside the face that it is about; 0: the face on the boat
    double by_s = 0;                   // past its time, left of it, too late or in hand: above 0
    double marginAsPlanned_s = 0;      // of `pace`: at the planned pace
    std::optional<BreakOff> breakOff;  // of `faceLate`

    bool sameAs(const Warning& other) const { return kind == other.kind && cup == other.cup; }
};

// Of the time that a cup or face has, so little that it is warned of. Common practice, no source.
inline constexpr double littleLeft = 0.2;

struct Now {
    double at_s = 0;
    bool started = false;
    bool paused = false;
    bool finished = false;  // nothing is left to do
    bool stopped = false;
    std::vector<TaskState> states;  // of each task
    std::vector<int> ofHands;       // the task of each pair of hands; -1: free
    std::vector<int> doing;
    std::vector<int> next;       // what can begin first once that is done
    std::optional<int> mixing;   // the task of mixing that is under way, else the next one
    std::optional<int> toUndo;   // what was done last
    std::vector<CupNow> cups;    // mixed and not used up, the one with least time first
    std::vector<FaceNow> faces;  // wetted and not closed, likewise
    int brokenAfter = 0;         // strips beyond it are left out; 0: none
    double margin_s = 0;         // least of any face, what remains as planned for the air typed last; 0 without faces
    double marginAtPace_s = 0;   // at the pace so far
    double pace = 1;             // time taken over time planned, of what was done
    double behind_s = 0;         // the end of the work as it looks now after its end as planned at the start
    std::optional<BreakOff> breakOff;  // where the margin is below 0: the latest break that closes in time
    std::vector<Pause> pauses;
    Run run;  // what happened and what remains, from the start
    std::vector<Warning> warnings;
};

// What stands at `at_s`, given the events up to then. `jobs`: one for the start and one for each air typed since, in
// order. Events of tasks that there are not, and such as take back what was never said, change nothing.
// Throws InputError as runOf does, and (`air_C`) when the jobs have not the same tasks.
Now stateAt(const std::vector<JobFrom>& jobs, const std::vector<Event>& events, double at_s);

// When a life that begins at `from_s` is used up, where `lives` says how long it lasts from which time on.
struct LifeFrom {
    double from_s = 0;
    double lasts_s = 0;
};
double whenUsedUp(double from_s, const std::vector<LifeFrom>& lives);

// What the cups and faces of `now` ask for, worded.
std::vector<Warning> warningsOf(const Now& now);

// Time planned and taken, of the tasks of one kind that were done.
struct Taken {
    Work work = Work::mix;
    std::string kind;  // of stations: "clamp"
    int count = 0;
    double planned_s = 0;
    double real_s = 0;  // without pauses
};
// In the order of the run. Tasks that need nobody are not counted, nor two whose keys came together: how their time is
// shared between them is not known.
std::vector<Taken> takenOf(const Job& planned, const Now& now);

}  // namespace fayline::schedule
