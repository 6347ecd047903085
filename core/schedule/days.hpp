// Simulated days: how often the last station is on before a face has gone off.
//
// Days differ as a whole before their tasks differ one by one. Each day draws
//   one pace, by which all that hands do takes longer or shorter: log-normal,
//   one factor on open time and on the time cups are good for (temperature, product, mixing): log-normal,
//   for each task a factor of its own: triangular,
//   and rare mishaps, each at most once: some minutes before a task of its kind can begin.
// A wait that needs nobody goes by the clock: neither pace nor scatter changes it. Scatter of single tasks alone would
// average out over thirty of them and make a small margin look certain.
// Source of the shares: common practice, no source.
#pragma once

#include <atomic>
#include <cstdint>
#include <optional>

#include "core/schedule/run.hpp"

namespace fayline::schedule {

struct Days {
    int count = 0;
    double chanceInTime = 0;  // every face closed in time
    double error = 0;         // one standard error of the chance
    double chanceCups = 0;    // every cup used up by its time
    double margin05_s = 0;    // one day in twenty has less
    double margin50_s = 0;
    double margin95_s = 0;
    double marginFor95_s = 0;  // the margin as planned with which 95 in 100 of these days would be in time
};

struct Chance {
    double chance = 0;  // 0..1, in one gluing
    double costs_s = 0;
};

struct Uncertain {
    double tasks = 0;       // of each task by itself, 0..1: see days.cpp
    double pace = 0;        // standard deviation of the pace's logarithm
    double middlePace = 1;  // of the middle day: 1.1 takes a tenth longer than planned
    double glue = 0;        // standard deviation of the logarithm of the factor on open time and cups
    Chance stripBreaks{};   // before a station is closed, or the fixed end laid down
    Chance clampSlips{};    // before a station is closed
    Chance cupSpills{};     // before a cup is mixed: the one before it was knocked over
};

// Throws InputError (`crew.uncertain_pct`, `crew.mishaps.cup_spills.min`, ...) for shares of tasks and chances outside
// 0..1, scatter and times that are negative or endless, and a middle pace of 0 or less.
void checkUncertain(const Uncertain& uncertain);

// `count` days of this run. The same seed gives the same bits on every machine: see core/math/random.hpp. What a
// day draws as a whole comes from a generator of its own,
// so that the same days are met by other jobs, such as that of a remedy. `stop` is looked at between days; once it is
// set nothing is returned.
// Throws InputError as runOf and checkUncertain do.
std::optional<Days> simulateDays(const Job& job, const Uncertain& uncertain, int count, std::uint64_t seed,
                                 const std::atomic<bool>& stop);

}  // namespace fayline::schedule
