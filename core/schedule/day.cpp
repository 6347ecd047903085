#include "core/schedule/day.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "core/units/input_error.hpp"

namespace fayline::schedule {

namespace {

constexpr std::array<std::pair<EventKind, std::string_view>, 10> eventWords{{{EventKind::started, "started"},
                                                                             {EventKind::done, "done"},
                                                                             {EventKind::undone, "undone"},
                                                                             {EventKind::batchMixed, "batch_mixed"},
                                                                             {EventKind::paused, "paused"},
                                                                             {EventKind::resumed, "resumed"},
                                                                             {EventKind::airTyped, "air_typed"},
                                                                             {EventKind::brokenOff, "broken_off"},
                                                                             {EventKind::carriedOn, "carried_on"},
                                                                             {EventKind::stopped, "stopped"}}};

constexpr int fewestForPace = 3;        // tasks that must be done before a pace is told
constexpr double leastOfPlanned = 0.1;  // done in less than that of its time, a task had its key with another's
constexpr double noTime_s = 1.5;        // nobody works a task and presses its key within it
constexpr double soon_s = 1;            // tasks that can begin within it of each other are next together

// What the events say, before anything is timed.
struct Said {
    bool started = false;
    bool stopped = false;
    std::vector<Happened> tasks;
    std::vector<Pause> pauses;
    bool paused = false;
    int brokenAfter = 0;
    std::vector<int> doneInOrder;
};

Said saidBy(const std::vector<Event>& events, std::size_t tasks, double at_s) {
    Said said;
    said.tasks.resize(tasks);
    for (const Event& event : events) {
        if (event.at_s > at_s || said.stopped) continue;
        const bool isOfTask = event.task >= 0 && event.task < static_cast<int>(tasks);
        Happened* task = isOfTask ? &said.tasks[event.task] : nullptr;
        switch (event.kind) {
            case EventKind::started:
                said.started = true;
                if (task) task->start_s = event.at_s;
                break;
            case EventKind::done:
            case EventKind::batchMixed:
                if (!task || task->end_s) break;
                task->end_s = event.at_s;
                said.doneInOrder.push_back(event.task);
                break;
            case EventKind::undone:
                if (!task) break;
                task->end_s.reset();
                std::erase(said.doneInOrder, event.task);
                break;
            case EventKind::paused:
                if (said.paused) break;
                said.paused = true;
                said.pauses.push_back({event.at_s, at_s});
                break;
            case EventKind::resumed:
                if (!said.paused) break;
                said.paused = false;
                said.pauses.back().to_s = event.at_s;
                break;
            case EventKind::airTyped:
                break;
            case EventKind::brokenOff:
                said.brokenAfter = event.strip;
                break;
            case EventKind::carriedOn:
                said.brokenAfter = 0;
                break;
            case EventKind::stopped:
                said.stopped = true;
                break;
        }
    }
    return said;
}

bool wetsOrSpreads(const Task& task) {
    return task.work == Work::wetOut || task.work == Work::spread;
}

// Marks the tasks that are left out when the strips beyond `afterStrip` are: theirs, and cups that serve nothing else.
void leaveOut(const Run& run, int afterStrip, std::vector<Happened>& tasks) {
    if (afterStrip <= 0) return;
    for (std::size_t i = 0; i < run.tasks.size(); ++i) {
        const Task& task = run.tasks[i];
        if (wetsOrSpreads(task) && task.strip > afterStrip && !tasks[i].end_s) tasks[i].leftOut = true;
    }
    for (std::size_t i = 0; i < run.tasks.size(); ++i) {
        const Task& mix = run.tasks[i];
        if (mix.work != Work::mix || tasks[i].end_s) continue;
        bool serves = false;
        for (std::size_t k = 0; k < run.tasks.size(); ++k) {
            serves = serves || (k != i && run.tasks[k].cup == mix.cup && !tasks[k].leftOut);
        }
        tasks[i].leftOut = !serves;
    }
}

// The run of one job as the day goes, judged by the lives that all jobs give.
class Timing {
public:
    Timing(const std::vector<JobFrom>& jobs, double at_s) : jobs_(jobs), at_s_(at_s) {}

    void retime(const Said& said, int brokenAfter, Run& run) const {
        std::vector<Happened> tasks = said.tasks;
        leaveOut(run, brokenAfter, tasks);
        retimeAsHappened(jobs_.back().job, tasks, said.pauses, at_s_, run);
        if (brokenAfter > 0) std::erase_if(run.faces, [&](const FaceTimes& f) { return f.inner >= brokenAfter; });
        std::erase_if(run.faces, [](const FaceTimes& f) { return !std::isfinite(f.wetted_s); });
        for (FaceTimes& face : run.faces) face.openUntil_s = openUntil(face.wetted_s);
        for (std::size_t i = 0; i < run.cups.size(); ++i) run.cups[i].useBy_s = useBy(i, run.cups[i].mixedFrom_s);
        run.worstFace = worstOf(run.faces);
        run.worstCup = worstOf(run.cups);
    }

private:
    double openUntil(double wetted_s) const {
        return whenUsedUp(wetted_s, lives([](const Job& job) { return job.openTime_s; }));
    }
    double useBy(std::size_t cup, double mixed_s) const {
        return whenUsedUp(mixed_s, lives([cup](const Job& job) { return job.cups[cup].useWithin_s; }));
    }
    template <typename Life>
    std::vector<LifeFrom> lives(const Life& life) const {
        std::vector<LifeFrom> found;
        for (const JobFrom& one : jobs_) {
            if (one.from_s <= at_s_ || found.empty()) found.push_back({one.from_s, life(one.job)});
        }
        return found;
    }
    template <typename Times>
    static int worstOf(const std::vector<Times>& all) {
        const auto least =
            std::ranges::min_element(all, [](const Times& a, const Times& b) { return a.margin_s() < b.margin_s(); });
        return least == all.end() ? -1 : static_cast<int>(least - all.begin());
    }

    const std::vector<JobFrom>& jobs_;
    double at_s_;
};

void takeStates(const Said& said, Now& now) {
    const Run& run = now.run;
    std::vector<Happened> tasks = said.tasks;
    leaveOut(run, said.brokenAfter, tasks);
    double nextFrom_s = INFINITY;
    now.finished = true;
    for (std::size_t i = 0; i < run.tasks.size(); ++i) {
        const Task& task = run.tasks[i];
        TaskState state = TaskState::waiting;
        if (tasks[i].leftOut) {
            state = TaskState::leftOut;
        } else if (tasks[i].end_s || (task.hands == 0 && task.end_s <= now.at_s)) {
            state = TaskState::done;
        } else if (std::ranges::all_of(task.after,
                                       [&](int before) {
                                           const TaskState one = now.states[before];
                                           return one == TaskState::done || one == TaskState::leftOut;
                                       }) &&
                   task.start_s <= now.at_s) {
            state = TaskState::doing;
        }
        now.states.push_back(state);
        const int index = static_cast<int>(i);
        if (state == TaskState::doing) now.doing.push_back(index);
        if (state == TaskState::waiting) nextFrom_s = std::min(nextFrom_s, task.start_s);
        now.finished = now.finished && (state == TaskState::done || state == TaskState::leftOut);
        const bool open = state == TaskState::doing || state == TaskState::waiting;
        if (open && task.work == Work::mix && !now.mixing) now.mixing = index;
    }
    for (std::size_t i = 0; i < run.tasks.size(); ++i) {
        if (now.states[i] == TaskState::waiting && run.tasks[i].start_s <= nextFrom_s + soon_s) {
            now.next.push_back(static_cast<int>(i));
        }
    }
    now.ofHands.assign(static_cast<std::size_t>(run.hands), -1);
    for (const int doing : now.doing) {
        for (const int lane : run.tasks[doing].lanes) {
            now.ofHands[lane] = doing;
        }
    }
    if (!said.doneInOrder.empty()) now.toUndo = said.doneInOrder.back();
}

bool isOpen(TaskState state) {
    return state == TaskState::doing || state == TaskState::waiting;
}

void takeCupsAndFaces(Now& now) {
    const Run& run = now.run;
    for (const CupTimes& cup : run.cups) {
        CupNow one{cup.number, cup.mixedFrom_s, cup.useBy_s, cup.useBy_s - now.at_s, cup.useBy_s - cup.mixedFrom_s,
                   false};
        bool begun = false;
        bool wanted = false;
        for (std::size_t i = 0; i < run.tasks.size(); ++i) {
            if (run.tasks[i].cup != cup.number) continue;
            if (run.tasks[i].work == Work::mix) {
                one.mixed = now.states[i] == TaskState::done;
                begun = one.mixed || now.states[i] == TaskState::doing;
            } else {
                wanted = wanted || isOpen(now.states[i]);
            }
        }
        if (begun && wanted) now.cups.push_back(one);
    }
    std::ranges::sort(now.cups, {}, &CupNow::left_s);

    bool closed = true;
    for (std::size_t i = 0; i < run.tasks.size(); ++i) {
        if (run.tasks[i].work != Work::scrape && isOpen(now.states[i])) closed = false;
    }
    if (closed) return;
    for (const FaceTimes& face : run.faces) {
        bool wet = false;
        for (std::size_t i = 0; i < run.tasks.size(); ++i) {
            const Task& task = run.tasks[i];
            const bool begun = now.states[i] == TaskState::doing || now.states[i] == TaskState::done;
            wet = wet || (begun && wetsOrSpreads(task) && (task.strip == face.inner || task.strip == face.inner + 1));
        }
        if (!wet) continue;
        now.faces.push_back(
            {face.inner, face.openUntil_s, face.openUntil_s - now.at_s, face.openUntil_s - face.wetted_s});
    }
    std::ranges::sort(now.faces, {}, &FaceNow::left_s);
}

void takePace(const std::vector<JobFrom>& jobs, const Said& said, const Timing& timing, Now& now) {
    double planned_s = 0;
    double real_s = 0;
    int count = 0;
    for (std::size_t i = 0; i < now.run.tasks.size(); ++i) {
        const Task& task = now.run.tasks[i];
        if (now.states[i] != TaskState::done || task.hands == 0 || !(task.takes_s > 0)) continue;
        planned_s += task.takes_s;
        real_s += workedFor(task.start_s, task.end_s, now.pauses);
        ++count;
    }
    now.marginAtPace_s = now.margin_s;
    if (count < fewestForPace) return;
    now.pace = real_s / planned_s;
    Run atPace = runOf(jobs.back().job);
    for (Task& task : atPace.tasks) {
        if (task.hands > 0) task.takes_s *= now.pace;
    }
    timing.retime(said, said.brokenAfter, atPace);
    now.marginAtPace_s = atPace.margin_s();
}

// The latest strip after which to stop wetting so that all is closed in time. None once something was spread: the pile
// is then being turned back, and every strip is wanted.
std::optional<BreakOff> breakOffFor(const std::vector<JobFrom>& jobs, const Said& said, const Timing& timing,
                                    const Now& now) {
    int touched = 1;
    int last = 0;
    for (std::size_t i = 0; i < now.run.tasks.size(); ++i) {
        const Task& task = now.run.tasks[i];
        if (!wetsOrSpreads(task)) continue;
        const bool begun = now.states[i] == TaskState::done || now.states[i] == TaskState::doing;
        if (begun && task.work == Work::spread) return std::nullopt;
        if (begun) touched = std::max(touched, task.strip);
        if (now.states[i] != TaskState::leftOut) last = std::max(last, task.strip);
    }
    for (int after = last - 1; after >= std::max(touched, 2); --after) {
        Run run = runOf(jobs.back().job);
        timing.retime(said, after, run);
        if (!run.faces.empty() && run.margin_s() >= 0) return BreakOff{after, run.margin_s()};
    }
    return std::nullopt;
}

// Of which tasks the keys tell how long they took. Two keys pressed one right after the other tell when both tasks were
// done, not how their time is shared: neither counts.
std::vector<bool> timesKnown(const Run& plan, const Now& now) {
    const std::size_t count = std::min(plan.tasks.size(), now.states.size());
    std::vector<bool> known(plan.tasks.size(), false);
    for (std::size_t i = 0; i < count; ++i) known[i] = now.states[i] == TaskState::done && now.run.tasks[i].hands > 0;
    std::vector<bool> counts = known;
    for (std::size_t i = 0; i < count; ++i) {
        const Task& task = now.run.tasks[i];
        const double worked_s = workedFor(task.start_s, task.end_s, now.pauses);
        if (!known[i] || worked_s >= leastOfPlanned * plan.tasks[i].takes_s) continue;
        if (worked_s < noTime_s) counts[i] = false;
        for (std::size_t j = 0; j < count; ++j) {
            const double end_s = now.run.tasks[j].end_s;
            if (j != i && known[j] && end_s >= task.start_s && end_s <= task.end_s) counts[i] = counts[j] = false;
        }
    }
    return counts;
}

}  // namespace

std::string_view eventWord(EventKind kind) {
    for (const auto& [one, word] : eventWords) {
        if (one == kind) return word;
    }
    return "done";
}

std::optional<EventKind> eventOfWord(std::string_view word) {
    for (const auto& [kind, one] : eventWords) {
        if (one == word) return kind;
    }
    return std::nullopt;
}

double whenUsedUp(double from_s, const std::vector<LifeFrom>& lives) {
    double used = 0;
    double at_s = from_s;
    for (std::size_t i = 0; i < lives.size(); ++i) {
        const bool last = i + 1 == lives.size();
        const double until_s = last ? INFINITY : lives[i + 1].from_s;
        if (until_s <= at_s) continue;
        const double ends_s = at_s + (1 - used) * lives[i].lasts_s;
        if (ends_s <= until_s) return ends_s;
        used += (until_s - at_s) / lives[i].lasts_s;
        at_s = until_s;
    }
    return at_s;
}

Now stateAt(const std::vector<JobFrom>& jobs, const std::vector<Event>& events, double at_s) {
    if (jobs.empty()) throw units::InputError("", "there is no job to do", "give the job of the day's start");
    const Run atStart = runOf(jobs.front().job);
    Now now{.at_s = at_s, .run = runOf(jobs.back().job)};
    if (now.run.tasks.size() != atStart.tasks.size() || jobs.back().job.cups.size() != jobs.front().job.cups.size()) {
        throw units::InputError("air_C", "at this air the day would have other tasks",
                                "plan the same batches and strips for it");
    }
    const Said said = saidBy(events, now.run.tasks.size(), at_s);
    now.started = said.started;
    now.stopped = said.stopped;
    now.paused = said.paused;
    now.pauses = said.pauses;
    now.brokenAfter = said.brokenAfter;
    if (!said.started) {
        now.at_s = at_s = 0;
        now.states.assign(now.run.tasks.size(), TaskState::waiting);
        now.ofHands.assign(static_cast<std::size_t>(now.run.hands), -1);
        if (!now.run.tasks.empty()) now.next.push_back(0);
        now.margin_s = now.marginAtPace_s = now.run.margin_s();
        return now;
    }
    const Timing timing(jobs, at_s);
    timing.retime(said, said.brokenAfter, now.run);
    takeStates(said, now);
    takeCupsAndFaces(now);
    now.margin_s = now.run.margin_s();
    now.behind_s = now.run.end_s - atStart.end_s;
    takePace(jobs, said, timing, now);
    if (now.margin_s < 0 && !now.faces.empty()) now.breakOff = breakOffFor(jobs, said, timing, now);
    if (!now.stopped) now.warnings = warningsOf(now);
    return now;
}

std::vector<Taken> takenOf(const Job& planned, const Now& now) {
    const Run plan = runOf(planned);
    const std::vector<bool> known = timesKnown(plan, now);
    std::vector<Taken> all;
    for (std::size_t i = 0; i < plan.tasks.size() && i < now.states.size(); ++i) {
        const Task& task = now.run.tasks[i];
        if (!known[i]) continue;
        std::string kind;
        for (const StationJob& station : planned.stations) {
            if (task.station > 0 && station.number == task.station) kind = station.kind;
        }
        auto found = std::ranges::find_if(all, [&](const Taken& t) { return t.work == task.work && t.kind == kind; });
        if (found == all.end()) found = all.insert(all.end(), Taken{task.work, kind, 0, 0, 0});
        ++found->count;
        found->planned_s += plan.tasks[i].takes_s;
        found->real_s += workedFor(task.start_s, task.end_s, now.pauses);
    }
    return all;
}

}  // namespace fayline::schedule
