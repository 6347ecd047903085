// Stations put one after the other from either end of the line, each as far on as it may go.
#pragma once

#include <atomic>
#include <cstddef>
#include <vector>

#include "core/holding/propose/trials.hpp"

namespace fayline::holding {

// Stations behind the one looked at that a trial takes in: what lies further off is felt by a few hundredths at most.
inline constexpr std::size_t stationsBehind = 3;

// What is looked for, and what has been come by on the way.
struct StationSearch {
    const Sites& sites;
    Trials& trials;
    bool withPressing;
    const std::atomic<bool>& stop;
    double usualSpacing_m = 0.2;        // what the last station reached
    std::vector<laminate::Run> waived;  // what no place can press
    bool finished = true;

    double at(int place) const { return sites.free[place].station.at_m; }
    double pad() const { return sites.free.front().station.pad_m; }
};

// Whether it is to stop; notes that it did not finish.
bool stopped(StationSearch& search);

// Of places chosen, ascending, and those kept: whether all of the line is pressed (true where that is not asked),
// whether anything presses on the form, and whether all conditions are met.
bool allPressed(const StationSearch& search, const std::vector<int>& chosen);
bool holdsAtAll(const StationSearch& search, const std::vector<int>& chosen);
bool meetsAll(StationSearch& search, const std::vector<int>& chosen);

// Places in the order of `way`: 0 is the first.
struct Order {
    int count = 0;
    Way way = Way::onward;
    int place(int i) const { return way == Way::onward ? i : count - 1 - i; }
};

// The first place in order that stands free of what is chosen.
int firstFree(const StationSearch& search, const Order& order, const std::vector<int>& chosen);
// The furthest in order from which a pad still reaches what is pressed; less than `first`: none.
int furthestPressing(const StationSearch& search, const Order& order, const std::vector<int>& chosen, int first);

// What presses everywhere with the fewest pads, no matter the gap: no number that meets both is smaller.
std::vector<int> fewestPressing(StationSearch& search, Way way);

// From the line's beginning in this direction: each station as far as it may; where none can follow, those before it
// are taken back.
std::vector<int> reachOut(StationSearch& search, Way way);

// The furthest place, in order, that each of `count` stations may have, counted from where `way` begins. Computed as in
// reachOut, but the line before the last station need not be pressed, and a few places are added: upper bounds.
std::vector<int> furthestBounds(StationSearch& search, Way way, std::size_t count);

}  // namespace fayline::holding
