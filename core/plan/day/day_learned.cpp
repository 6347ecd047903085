#include "core/plan/day/day_learned.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

#include "core/laminate/springback/learned.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/units/day_text.hpp"
#include "core/units/units.hpp"

namespace fayline::plan {

namespace {

using schedule::Event;
using schedule::EventKind;
using schedule::Taken;
using schedule::Work;
using units::writeDuration;

const std::string beginMark = "begin";
const std::string pauseMark = "pause";
const std::string goOnMark = "go_on";
const std::string endMark = "end";
const std::string breakMark = "stop_after:";
const std::string oldGoOnMark = "go on";
const std::string oldBreakMark = "stop after strip ";

// `words` as schedule::taskWords.
std::string markOf(const Event& event, const std::vector<std::string>& words) {
    const bool isOfTask = event.task >= 0 && event.task < math::countOf(words);
    std::string name = isOfTask ? words[event.task] : "";
    switch (event.kind) {
        case EventKind::started:
            return isOfTask ? beginMark + ":" + name : beginMark;
        case EventKind::done:
        case EventKind::batchMixed:
            return name;
        case EventKind::paused:
            return pauseMark;
        case EventKind::resumed:
            return goOnMark;
        case EventKind::brokenOff:
            return breakMark + std::to_string(event.strip);
        case EventKind::stopped:
            return endMark;
        case EventKind::undone:
        case EventKind::airTyped:
        case EventKind::carriedOn:
            break;
    }
    return "";
}

// The events without those that were taken back and what took them back.
std::vector<Event> standing(const std::vector<Event>& events) {
    std::vector<Event> kept;
    for (const Event& event : events) {
        const auto last = [&](auto takesBack) {
            const auto found = std::find_if(kept.rbegin(), kept.rend(), takesBack);
            if (found != kept.rend()) kept.erase(std::next(found).base());
        };
        if (event.kind == EventKind::undone) {
            last([&](const Event& e) {
                return e.task == event.task && (e.kind == EventKind::done || e.kind == EventKind::batchMixed);
            });
        } else if (event.kind == EventKind::carriedOn) {
            last([](const Event& e) { return e.kind == EventKind::brokenOff; });
        } else {
            kept.push_back(event);
        }
    }
    return kept;
}

std::string doing(const Taken& taken, bool dryFit) {
    if (taken.work == Work::spread && dryFit) return "lay down a strip";
    if (taken.work == Work::close) return "close a " + taken.kind;
    // In the order of Work.
    constexpr std::array words{
        "wipe the strips", "sand the strips",        "mix a batch", "wet out a strip",       "soak", "spread a strip",
        "carry the stack", "lay the fixed end down", "close",       "scrape the squeeze-out"};
    return words[static_cast<std::size_t>(taken.work)];
}

double rounded(double value) {
    if (!(value > 0) || !std::isfinite(value)) return value;
    const double step = std::pow(10, std::floor(std::log10(value)) - 2);
    return units::toTwelveFigures(step * std::round(value / step));
}

// As fine as it was measured: "3 min 40 s".
std::string seconds(double time_s) {
    const int whole = static_cast<int>(std::lround(time_s));
    const std::string rest = std::to_string(whole % 60) + " s";
    return whole < 60 ? rest : std::to_string(whole / 60) + " min " + rest;
}

// Takes what was measured into the rates.
class Learning {
public:
    explicit Learning(const DayInHand& day) : day_(day) { learned_.rates = day.piece.crew.rates; }

    void take(const Taken& taken) {
        if (!(taken.real_s >= leastEach_s * taken.count) || !(taken.planned_s > 0)) return;
        model::Rates& rates = learned_.rates;
        switch (taken.work) {
            case Work::mix:
                each(rates.mix_s, taken);
                break;
            case Work::wetOut:
                perArea(rates.wetOut_m2_s, taken);
                break;
            case Work::spread:
                if (day_.dryFit) {
                    each(rates.stackStrip_s, taken);
                } else {
                    perArea(rates.spread_m2_s, taken);
                }
                break;
            case Work::carry:
                each(rates.carry_s, taken);
                break;
            case Work::close:
                if (double* station_s = timeOf(taken.kind)) each(*station_s, taken);
                break;
            case Work::scrape:
                asFast(rates.scrape_m_s, taken);
                break;
            case Work::wipe:
                asFast(rates.wipe_m2_s, taken);
                break;
            case Work::sand:
                asFast(rates.sand_m2_s, taken);
                break;
            case Work::soak:
            case Work::place:
                break;
        }
    }

    RatesLearned learned() { return std::move(learned_); }

private:
    // Quicker than this nobody is: a key that was pressed twice.
    static constexpr double leastEach_s = 1;
    // A day is quicker or slower than another by a fifth (model::Crew::pace): a twentieth tells nothing of a rate.
    static constexpr double leastChange = 0.05;

    // A whole second is as fine as anyone measures.
    void each(double& time_s, const Taken& taken) {
        const double before_s = time_s;
        const double measured_s = std::max(1.0, std::round(taken.real_s / taken.count));
        if (std::abs(measured_s - before_s) <= leastChange * before_s) return;
        time_s = measured_s;
        learned_.said.push_back(capitalised(doing(taken, day_.dryFit)) + ": " + seconds(time_s) +
                                ", until now planned with " + seconds(before_s) + " (" + std::to_string(taken.count) +
                                " measured).");
    }

    void asFast(double& rate, const Taken& taken) { scale(rate, taken, taken.planned_s / taken.real_s); }

    // What is left beside the handling of strips is wetting or spreading.
    void perArea(double& rate, const Taken& taken) {
        // A strip that takes several cups is several tasks and handled once.
        std::set<int> strips;
        for (const schedule::Task& task : schedule::runOf(day_.job).tasks) {
            if (task.work == taken.work && task.strip > 0) strips.insert(task.strip);
        }
        const double handled = std::min<double>(static_cast<double>(strips.size()), taken.count);
        const double handling_s = handled * day_.piece.crew.rates.stackStrip_s;
        const double planned_s = taken.planned_s - handling_s;
        const double real_s = taken.real_s - handling_s;
        // Where the strips were handled quicker than given, both are taken as quicker by as much.
        const bool apart = planned_s > 0 && real_s > 0.2 * planned_s;
        scale(rate, taken, apart ? planned_s / real_s : taken.planned_s / taken.real_s);
    }

    void scale(double& rate, const Taken& taken, double times) {
        const double after = rounded(rate * 60 * times) / 60;
        if (after == rate || std::abs(times - 1) < leastChange) return;
        rate = after;
        learned_.said.push_back(capitalised(doing(taken, day_.dryFit)) + ": " + units::writeNumber(times, 2) +
                                " times as fast as planned (" + writeDuration(taken.real_s) + " for " +
                                writeDuration(taken.planned_s) + ").");
    }

    double* timeOf(const std::string& kind) {
        model::StationTimes& station = learned_.rates.station;
        const std::map<std::string, double*> times{{"clamp", &station.clamp_s},
                                                   {"prop", &station.prop_s},
                                                   {"jack", &station.jack_s},
                                                   {"screw", &station.screw_s}};
        const auto found = times.find(kind);  // straps and wedges are planned as clamps and would mix with them
        return found == times.end() ? nullptr : found->second;
    }

    const DayInHand& day_;
    RatesLearned learned_;
};

}  // namespace

model::Record recordOf(const DayInHand& day, const std::vector<Event>& events, const std::string& when) {
    const std::vector<std::string> words = schedule::taskWords(schedule::runOf(day.job));
    model::Record record;
    record.when = when;
    record.dryFit = day.dryFit;
    record.on = laminate::measuredOn(day.piece);
    if (!day.dryFit) record.air_C = day.piece.glue.air_C;
    for (const Event& event : standing(events)) {
        if (event.kind == EventKind::airTyped) {
            model::AirMark air{.at_s = event.at_s, .air_C = event.air_C};
            record.airs.push_back(air);
            continue;
        }
        model::TimeMark mark;
        mark.task = markOf(event, words);
        mark.at_s = 60 * std::round(event.at_s / 60 * 100) / 100;  // by hand nobody says it finer
        if (!mark.task.empty()) record.marks.push_back(mark);
    }
    if (day.gluings() > 1) {
        record.notes = "Glue-up " + std::to_string(day.gluing + 1) + " of " + std::to_string(day.gluings());
    }
    return record;
}

std::vector<Event> eventsOf(const DayInHand& day, const model::Record& record) {
    const schedule::Run run = schedule::runOf(day.job);
    const std::vector<std::string> words = schedule::taskWords(run);
    std::vector<Event> events;
    for (const model::TimeMark& mark : record.marks) {
        Event event{EventKind::done, mark.at_s};
        // Older records have the tasks by their English names.
        const auto isTask = [&](const std::string& name) {
            for (std::size_t i = 0; i < words.size(); ++i) {
                if (words[i] != name && run.tasks[i].name != name) continue;
                event.task = static_cast<int>(i);
                return true;
            }
            return false;
        };
        if (isTask(mark.task)) {
            if (run.tasks[event.task].work == Work::mix) event.kind = EventKind::batchMixed;
        } else if (mark.task == beginMark ||
                   ((mark.task.starts_with(beginMark + ":") || mark.task.starts_with(beginMark + " ")) &&
                    isTask(mark.task.substr(beginMark.size() + 1)))) {
            event.kind = EventKind::started;
        } else if (mark.task == pauseMark) {
            event.kind = EventKind::paused;
        } else if (mark.task == goOnMark || mark.task == oldGoOnMark) {
            event.kind = EventKind::resumed;
        } else if (mark.task == endMark) {
            event.kind = EventKind::stopped;
        } else if (mark.task.starts_with(breakMark) || mark.task.starts_with(oldBreakMark)) {
            const std::string& before = mark.task.starts_with(breakMark) ? breakMark : oldBreakMark;
            event.kind = EventKind::brokenOff;
            event.strip = std::atoi(mark.task.c_str() + before.size());
        } else {
            continue;
        }
        events.push_back(event);
    }
    for (const model::AirMark& air : record.airs) events.push_back({EventKind::airTyped, air.at_s, -1, 0, air.air_C});
    std::ranges::stable_sort(events, {}, &Event::at_s);
    return events;
}

std::vector<Compared> comparedOf(const DayInHand& day, const schedule::Now& now) {
    std::vector<Compared> rows;
    for (const Taken& taken : schedule::takenOf(day.job, now)) {
        rows.push_back({doing(taken, day.dryFit), taken.count, taken.planned_s, taken.real_s});
    }
    return rows;
}

RatesLearned ratesOf(const DayInHand& day, const schedule::Now& now) {
    Learning learning(day);
    for (const Taken& taken : schedule::takenOf(day.job, now)) learning.take(taken);
    return learning.learned();
}

}  // namespace fayline::plan
