// Roots of a function of one number between two places where its signs differ.
#pragma once

#include <cmath>

namespace fayline::math {

// Two places and what the function is there.
struct Bracket {
    double a = 0;
    double atA = 0;
    double b = 0;
    double atB = 0;
    bool bCameLast = false;  // b was found from a by a step: the next on its side makes a weigh half
};

// The regula falsi in its Illinois variant: an end that stays twice running weighs half, so that both ends close in
// (Dowell & Jarratt, BIT 11, 1971, from memory). `done(at, value, width)` is asked of each newest place, b first; after
// `mostSteps`, or where rounding leaves no place between, the newest stands.
template <typename Function, typename Done>
double illinois(const Function& function, Bracket bracket, int mostSteps, const Done& done) {
    auto& [a, atA, b, atB, bCameLast] = bracket;
    for (int step = 0; step < mostSteps && !done(b, atB, std::abs(b - a)); ++step) {
        const double c = b - atB * (b - a) / (atB - atA);
        if (!((c > a && c < b) || (c > b && c < a))) break;
        const double atC = function(c);
        if ((atC > 0) != (atB > 0)) {
            a = b;
            atA = atB;
        } else if (bCameLast) {
            atA /= 2;
        }
        b = c;
        atB = atC;
        bCameLast = true;
    }
    return b;
}

// Where `below`, true at `low` and false at `high`, changes: halves the stretch until it is no longer than `width`.
template <typename Below>
double bisection(const Below& below, double low, double high, double width) {
    while (high - low > width) {
        const double middle = (low + high) / 2;
        (below(middle) ? low : high) = middle;
    }
    return (low + high) / 2;
}

}  // namespace fayline::math
