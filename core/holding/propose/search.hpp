// The fewest places that meet the conditions.
#pragma once

#include <atomic>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/holding/propose/trials.hpp"

namespace fayline::holding {

struct Fewest {
    std::vector<int> chosen;  // in sites.free, ascending
    double largest_m = 0;     // the gap then
    bool holds = false;       // the gap is within its limit, eased where it had to be
    bool pressed = true;      // every place is pressed; true if that was not asked
    bool finished = true;     // false: stopped before the end, what was found so far
    bool searched = true;     // false: it went out of trials before one less was ruled out
};

// Finds the fewest places that meet the conditions. A greedy pass from either end sets each station as far on as the
// conditions allow while the rest of the line is held as well as possible. As long as an added station never opens a
// gap, these passes bound the i-th station of every choice from both sides. If the bounds of a number cross, that
// number is impossible; otherwise one station less is tried within its bounds, the furthest places first. The least
// number by interval covering, which presses everywhere, comes first: if it also holds, no choice has fewer. Checks
// `stop` between trials, of which there are some 20 for each station and 40 more for each in the search for fewer.
Fewest fewest(const Sites& sites, Trials& trials, bool withPressing, const std::atomic<bool>& stop);

// How many places press everywhere, as interval covering gives it and no matter the gap, those kept not counted;
// nothing where some of the line cannot be pressed.
std::optional<std::size_t> fewestToPress(const Sites& sites, Trials& trials, const std::atomic<bool>& stop);

// At most `count` places that press everywhere and hold: those of interval covering if they do, else what is found
// between where covering from either end puts them, in so many `left` trials, which are taken off. Empty: none found.
std::vector<int> atMost(const Sites& sites, Trials& trials, std::size_t count, int& left,
                        const std::atomic<bool>& stop);

}  // namespace fayline::holding
