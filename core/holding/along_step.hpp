// How far to go along a step so that the energy is least, foreseen from where the bed would take hold or let go.
//
// A step of Newton's method thinks that what lies on the bed stays on it and what is clear stays clear. Along it the
// energy's slope is then slope (1 - part); each place that comes down on the way adds its bed's stiffness from there
// on, each that lifts takes it off. Where that slope is 0 follows by going through those places in turn.
#pragma once

#include <span>
#include <vector>

#include "core/holding/discrete.hpp"

namespace fayline::holding {

// No more of a step is gone than this.
inline constexpr double mostOfStep = 8;

class AlongStep {
public:
    // The part of `step` from `x`, above 0 to mostOfStep; `slope_J` < 0 is that of the energy at x, by the part; of one
    // that is no finite number (a step that is none) the whole.
    double least(const Discrete& discrete, std::span<const double> x, std::span<const double> step, double bedShare,
                 double slope_J);

private:
    struct Turn {
        double part = 0;
        double stiffness_J = 0;  // what the second derivative gains there
    };
    void findTurns(const Discrete& discrete, std::span<const double> x, std::span<const double> step, double bedShare);

    std::vector<Turn> turns_;  // ascending
};

}  // namespace fayline::holding
