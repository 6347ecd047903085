#include "core/schedule/days.hpp"

#include <algorithm>
#include <cmath>

#include "core/math/random.hpp"
#include "core/units/input_error.hpp"

namespace fayline::schedule {

namespace {

// The seed of what a day draws as a whole, apart from that of its tasks.
constexpr std::uint64_t wholeDay = 0x9E3779B97F4A7C15u;

}  // namespace

void checkUncertain(const Uncertain& uncertain) {
    using units::InputError;
    const auto share = [](double value, const char* path) {
        if (!(value >= 0 && value <= 1)) throw InputError(path, "this is not a share", "give a number from 0 to 100");
    };
    const auto scatter = [](double value, const char* path) {
        if (!(value >= 0 && std::isfinite(value)))
            throw InputError(path, "this is not a scatter", "give a number of 0 or more");
    };
    const auto mishap = [&share](const Chance& one, const std::string& path) {
        share(one.chance, (path + ".chance_pct").c_str());
        if (!(one.costs_s >= 0 && std::isfinite(one.costs_s))) {
            throw InputError(path + ".min", "this is not a time", "give a number of 0 or more");
        }
    };
    share(uncertain.tasks, "crew.uncertain_pct");
    scatter(uncertain.pace, "crew.pace_pct");
    scatter(uncertain.glue, "crew.glue_uncertain_pct");
    if (!(uncertain.middlePace > 0 && std::isfinite(uncertain.middlePace))) {
        throw InputError("crew.pace_pct", "the middle pace is not above 0", "give a number above 0");
    }
    mishap(uncertain.stripBreaks, "crew.mishaps.strip_breaks");
    mishap(uncertain.clampSlips, "crew.mishaps.clamp_slips");
    mishap(uncertain.cupSpills, "crew.mishaps.cup_spills");
}

namespace {

std::vector<std::size_t> tasksOf(const Run& run, Work work) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < run.tasks.size(); ++i) {
        if (run.tasks[i].work == work) found.push_back(i);
    }
    return found;
}

// A mishap and the tasks one of which it can come before.
struct CanHappen {
    Chance chance;
    std::vector<std::size_t> before;
};

std::vector<CanHappen> mishapsOf(const Uncertain& uncertain, const Run& run) {
    const std::vector<std::size_t> closing = tasksOf(run, Work::close);
    return {{uncertain.stripBreaks, closing.empty() ? tasksOf(run, Work::place) : closing},
            {uncertain.clampSlips, closing},
            {uncertain.cupSpills, tasksOf(run, Work::mix)}};
}

// Of a task's duration over its own. Things go wrong further than they go well. Common practice, no source.
math::Triangular durationOf(double uncertain) {
    return {1 - uncertain / 2, 1, 1 + uncertain};
}

// The longest that any face is open.
double longestOpen(const Run& run) {
    double open_s = 0;
    for (const FaceTimes& face : run.faces) open_s = std::max(open_s, face.closed_s - face.wetted_s);
    return open_s;
}

bool cupsInTime(const Job& job, const Run& run, double glue) {
    for (std::size_t i = 0; i < run.cups.size(); ++i) {
        if (run.cups[i].emptied_s - run.cups[i].mixedFrom_s > job.cups[i].useWithin_s * glue) return false;
    }
    return true;
}

}  // namespace

std::optional<Days> simulateDays(const Job& job, const Uncertain& uncertain, int count, std::uint64_t seed,
                                 const std::atomic<bool>& stop) {
    checkUncertain(uncertain);
    Run run = runOf(job);
    const double planned_s = longestOpen(run);
    const math::Triangular duration = durationOf(uncertain.tasks);
    const std::vector<CanHappen> mishaps = mishapsOf(uncertain, run);
    std::mt19937_64 ofTasks(seed);
    std::mt19937_64 ofDays(seed ^ wholeDay);
    std::vector<double> factors(run.tasks.size(), 1.0);
    std::vector<double> delays_s(run.tasks.size(), 0.0);
    std::vector<double> margins;
    std::vector<double> needs;  // the open time with which the day would just be in time, were the glue as planned
    margins.reserve(static_cast<std::size_t>(count));
    needs.reserve(static_cast<std::size_t>(count));
    int cups = 0;
    for (int day = 0; day < count; ++day) {
        if (stop) return std::nullopt;
        const math::TwoNormal normal = math::normalDraws(ofDays);
        const double pace = uncertain.middlePace * math::expOf(uncertain.pace * normal.one);
        const double glue = math::expOf(uncertain.glue * normal.other);
        for (std::size_t i = 0; i < factors.size(); ++i) {
            const double own = math::triangularDraw(duration, math::uniformDraw(ofTasks));
            factors[i] = run.tasks[i].hands > 0 ? pace * own : 1;
        }
        std::ranges::fill(delays_s, 0.0);
        for (const CanHappen& mishap : mishaps) {
            const bool happens = math::uniformDraw(ofDays) < mishap.chance.chance;
            const double where = math::uniformDraw(ofDays);
            if (!happens || mishap.before.empty()) continue;
            const auto at = static_cast<std::size_t>(where * static_cast<double>(mishap.before.size()));
            delays_s[mishap.before[at]] += mishap.chance.costs_s;
        }
        retime(job, factors, delays_s, run);
        const double open_s = longestOpen(run);
        margins.push_back(run.faces.empty() ? 0 : job.openTime_s * glue - open_s);
        needs.push_back(open_s / glue);
        if (cupsInTime(job, run, glue)) ++cups;
    }
    Days days;
    days.count = count;
    if (count == 0) return days;
    std::ranges::sort(margins);
    std::ranges::sort(needs);
    const auto late = std::lower_bound(margins.begin(), margins.end(), 0.0) - margins.begin();
    days.chanceInTime = 1 - static_cast<double>(late) / count;
    days.chanceCups = static_cast<double>(cups) / count;
    days.error = std::sqrt(days.chanceInTime * (1 - days.chanceInTime) / count);
    const auto at = [](const std::vector<double>& sorted, double share) {
        return sorted[static_cast<std::size_t>(share * static_cast<double>(sorted.size() - 1))];
    };
    days.margin05_s = at(margins, 0.05);
    days.margin50_s = at(margins, 0.5);
    days.margin95_s = at(margins, 0.95);
    days.marginFor95_s = at(needs, 0.95) - planned_s;
    return days;
}

}  // namespace fayline::schedule
