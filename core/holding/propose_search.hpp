// The fewest places that meet the conditions.
#pragma once

#include <atomic>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/holding/propose_trials.hpp"

namespace fayline::holding {

struct Fewest {
    std::vector<int> chosen;  // in sites.free, ascending
    double largest_m = 0;     // the gap then
    bool holds = false;       // the gap is within its limit, eased where it had to be
    bool pressed = true;      // every place is pressed; true if that was not asked
    bool finished = true;     // false: stopped before the end, what was found so far
    bool searched = true;     // false: it went out of trials before one less was ruled out
};

// How the fewest are found: from either end each station goes as far as the conditions let it, the rest of the line
// held as well as it can be. No choice has its i-th station further on than the i-th from the start, none has its j-th
// from the end nearer to the start than the j-th from the end, as long as another station never opens a gap. A number
// for which these bounds cross is ruled out; one less is tried within them, the furthest first, until they do.
// A number that presses everywhere as interval covering gives it is the least of all if it also holds; it is tried
// first.
// `stop` is looked at between trials. There are some 20 for each station and 40 more for each in the search for fewer.
Fewest fewest(const Sites& sites, Trials& trials, bool withPressing, const std::atomic<bool>& stop);

// How many places press everywhere, as interval covering gives it and no matter the gap, those kept not counted;
// nothing where some of the line cannot be pressed.
std::optional<std::size_t> fewestToPress(const Sites& sites, Trials& trials, const std::atomic<bool>& stop);

// At most `count` places that press everywhere and hold: those of interval covering if they do, else what is found
// between where covering from either end puts them, in so many `left` trials, which are taken off. Empty: none found.
std::vector<int> atMost(const Sites& sites, Trials& trials, std::size_t count, int& left,
                        const std::atomic<bool>& stop);

}  // namespace fayline::holding
