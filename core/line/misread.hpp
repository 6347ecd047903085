// Offsets that were probably misread or miswritten, with the slip of writing that would explain each.
#pragma once

#include <array>
#include <atomic>
#include <optional>
#include <string>
#include <vector>

#include "core/line/fair.hpp"
#include "core/units/length.hpp"

namespace fayline::line {

struct Suspect {
    int point = 0;            // index among the points
    double away_m = 0;        // how far it lies from the line that is fair without it, signed like a misfit
    double scatter_m = 0;     // expected scatter of that distance if it had been read rightly
    double fairnessGain = 0;  // how many times fairer the rest becomes without it
    char axis = 'x';          // of the likeliest slip
    double expected_m = 0;    // value of that coordinate on the line that is fair without the point
    std::string slip;         // "1 inch high", "two digits swapped", "x and y exchanged"; empty: none fits
    std::array<std::string, 2> tryWritten;  // x and y as they would be written rightly; empty: none fits
    std::array<double, 2> try_m{};          // the same in metres; meaningful only if `slip` is not empty
};

// The same slip on a whole row of points (all heights, all points of one kind of label).
struct RepeatedSlip {
    std::vector<int> points;
    char axis = 'x';
    double by_m = 0;  // add this to put it right
    std::string slip;
};

inline constexpr int fewestForMisread = 7;
inline constexpr int mostForecasts = 6000;
inline constexpr int mostSuspects = 24;
inline constexpr int mostRefitted = 81;

struct Misread {
    std::vector<Suspect> suspects;  // the worst first
    std::vector<RepeatedSlip> repeated;
    bool searchedAll = true;  // false: there were too many that stand out to look at them all
    int forecasts = 0;        // what the search took: of one point by its neighbours
    int refitted = 0;         // points in the lines that were made fair anew
};

// The suspects among the points of `input`, of which `fairLine` is the fair line. `written` holds x and y of each point
// as they were written (may be empty strings) and `notation` is how lengths are written; `labels` the labels of the
// points. Fewer than `fewestForMisread` points: nothing can be said, so none.
//
// Model: leave a point out and see how much fairer the rest becomes, beside how far the point then is from the line,
// both against the scatter of the rest; misread.cpp says what was measured.
//
// The work is bounded: one forecast for each point, at most `mostForecasts` more, and at most `mostSuspects` lines of
// up to `mostRefitted` points made fair anew; so 5000 points take 0.1 to 0.4 s. The worst are looked at first; where
// others that stand out are left, `searchedAll` is false. Nothing once `stop` is true, which is looked at in every
// forecast and in the fit.
std::optional<Misread> findMisread(const FairInput& input, const FairLine& fairLine,
                                   const std::vector<std::array<std::string, 2>>& written,
                                   const std::vector<std::string>& labels, units::LengthNotation notation,
                                   const std::atomic<bool>& stop);

}  // namespace fayline::line
