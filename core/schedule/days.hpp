// Simulated days: how often the last station is on before a face has gone off.
#pragma once

#include <atomic>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/schedule/run.hpp"

namespace fayline::schedule {

struct Days {
    int count = 0;
    double chanceInTime = 0;
    double error = 0;       // one standard error of the chance
    double margin05_s = 0;  // one day in twenty has less
    double margin50_s = 0;
    double margin95_s = 0;
};

// Each task's duration is triangular: least, likeliest, most = 1 - u/2, 1, 1 + u times its own, `uncertain` = u, each
// drawn by itself from a generator of its own seed; the same seed gives the same bits.
std::optional<Days> simulateDays(const Job& job, double uncertain, int count, std::uint64_t seed,
                                 const std::atomic<bool>& stop);

struct Remedy {
    std::string what;  // "one more pair of hands"
    double margin_s = 0;
    double chanceInTime = 0;
    int breakAfterStrip = 0;  // of a planned break, else 0
};

}  // namespace fayline::schedule
