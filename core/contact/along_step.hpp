// How far to go along a step so that the energy is least, foreseen from where the foundation would take hold or let go.
//
// A step of Newton's method thinks that what lies on the foundation stays on it and what is clear stays clear. Along it
// the energy's slope is then slope (1 - part); each place that comes down on the way adds its foundation's stiffness
// from there on, each that lifts takes it off. Where that slope is 0 follows by going through those places in turn.
#pragma once

#include <span>
#include <vector>

#include "core/contact/discrete.hpp"

namespace fayline::contact {

// No more of a step is gone than this.
inline constexpr double mostOfStep = 8;

class AlongStep {
public:
    // The multiple of `step`, above 0 and at most mostOfStep, at which the energy is least on the way from `x`.
    // `slope_J` < 0 is the energy's derivative by that multiple at x. If it is not finite, `step` is not usable and the
    // result is 1.
    double least(const Discrete& discrete, std::span<const double> x, std::span<const double> step,
                 double foundationShare, double slope_J);

private:
    struct Turn {
        double part = 0;
        double stiffness_J = 0;  // what the second derivative gains there
    };
    void findTurns(const Discrete& discrete, std::span<const double> x, std::span<const double> step,
                   double foundationShare);

    std::vector<Turn> turns_;  // ascending
};

}  // namespace fayline::contact
