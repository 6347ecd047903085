// Fewer stations than press everywhere: spread so that the glue is pressed as evenly as so many can.
#pragma once

#include <atomic>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/holding/propose/trials.hpp"

namespace fayline::holding {

// Each pad pressing `factor` times as far, and that under one long caul `caul_m` thick instead of the one there.
Sites widened(const Sites& sites, double factor, std::optional<double> caul_m = {});

// The least factor by which each pad would have to press further than it does for `chosen`, and the stations kept, to
// press every place; infinity where none up to a thousand does.
double stretchOf(const Sites& sites, const std::vector<int>& chosen);

struct StationSpread {
    std::vector<int> chosen;  // in sites.free, ascending
    double stretch = 1;
};

// At most `count` places that hold, their stretch as small as can be found: the least factor at which interval covering
// makes do with `count`, if that holds; else between it and what `holding`, places known to hold, reach when the widest
// spacings are shared, to a thousandth or as far as some hundred trials go. Nothing if `holding` are more than `count`.
//   (1) on small pieces no choice of as many on the grid that holds has a smaller one (propose_test.cpp)
std::optional<StationSpread> spreadOut(const Sites& sites, Trials& trials, const std::vector<int>& holding,
                                       std::size_t count, const std::atomic<bool>& stop);

// The least thickness of a long caul, in whole millimetres up to 60, under which `count` places press everywhere and
// hold, `now_m` that which they have; nothing if none does.
std::optional<double> caulFor(const Sites& sites, Trials& trials, std::size_t count, double now_m,
                              const std::atomic<bool>& stop);

}  // namespace fayline::holding
