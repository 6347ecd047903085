// Closing in order: station by station from the end, the middle or the start where the stack is held first.
#pragma once

#include <atomic>
#include <vector>

#include "core/holding/held.hpp"

namespace fayline::holding {

struct ClosingStep {
    int index = 0;           // in boat::Holding::stations
    int number = 1;          // of the station along the line
    int order = 1;           // 1: closed first
    double pull_N = 0;       // needed there, with all before it closed
    double gap_m = 0;        // left under its pad
    double standsOff_m = 0;  // gap at the station before it is closed, square to the form
    // The free tail once it is closed, on the side the closing goes: beyond the last contact it lies along the tangent.
    double tailOff_m = 0;        // of the tip from the form (carried on as an arc), square to it
    line::Xy tip;                // of the outermost strip's end
    bool floorInTheWay = false;  // the tip lies below the floor (the lowest foot of a prop; without one: never)
    Outcome outcome = Outcome::settled;
};

// The order in which `from` closes the stations: indices into `stations`, ascending or descending along the line, or
// from the one nearest the middle outwards, the nearer side first.
std::vector<int> closingOrder(const std::vector<boat::Station>& stations, boat::From from, double lineLength_m);

// Every step. Strips beyond the station being closed are free of force and lie straight, so each step's rod ends there.
// `stop` is looked at between steps; the steps made so far are then returned.
std::vector<ClosingStep> closeInOrder(const StackOnForm& work, const std::atomic<bool>& stop);

// How the loose stack sags under its own weight, carried at `hands` points evenly spread, and the strain this adds.
struct Carried {
    int points = 2;
    double weight_N = 0;
    double sag_m = 0;   // greatest, between the points or at the ends
    double strain = 0;  // greatest that it adds to a strip
};
Carried carriedAt(const StackOnForm& work, int points);

}  // namespace fayline::holding
