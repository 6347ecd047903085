// Simulated days: how often the last station is on before a face has gone off.
#pragma once

#include <atomic>
#include <cstdint>
#include <optional>
#include <vector>

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
};

// The three points of a task's duration over its own: least 1 - u/2, likeliest 1, most 1 + u. Things go wrong further
// than they go well. Common practice, no source.
struct Triangle {
    double least = 1;
    double likeliest = 1;
    double most = 1;
};
Triangle triangleOf(double uncertain);

// A draw from a triangular distribution for an even `draw` of 0..1: its inverse.
double drawn(const Triangle& triangle, double draw);

// `count` days of this run, each task's duration drawn by itself. The same seed gives the same bits on every machine:
// the generator is the standard's mt19937_64 and the draws are made from its bits here. `stop` is looked at between
// days; once it is set nothing is returned. `uncertain` 0..1.
std::optional<Days> simulateDays(const Job& job, double uncertain, int count, std::uint64_t seed,
                                 const std::atomic<bool>& stop);

}  // namespace fayline::schedule
