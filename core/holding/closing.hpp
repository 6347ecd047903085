// Closing in order: station by station from the end, the middle or the start where the stack is held first.
#pragma once

#include <atomic>
#include <vector>

#include "core/holding/at_hand.hpp"
#include "core/holding/held.hpp"

namespace fayline::holding {

struct ClosingStep {
    int index = 0;      // in model::Holding::stations
    int number = 1;     // of the station along the line
    int order = 1;      // 1: closed first
    double pull_N = 0;  // needed there, with all before it closed
    double gap_m = 0;   // left under its pad
    // Gap at the station before it is closed, square to the form; where the free tail does not come by there, the way
    // to the tail's nearest point. 0 at the first station: the stack is laid down there by hand.
    double standsOff_m = 0;
    // The free tail once it is closed, on the side the closing goes: beyond the last contact it lies along the tangent
    // (strips that were bent before: along the curve they have taken).
    double tailOff_m = 0;        // of the tip from the form (carried on as an arc), square to it
    line::Xy tip;                // of the outermost strip that reaches there, its outer corner
    bool floorInTheWay = false;  // the tip lies below the floor (the lowest foot of a prop; without one: never)
    // notConverged: nothing but standsOff is told (that from the last step that did). snaps: as of the contact, or the
    // stack jumps under a pull that is given as it grows.
    Outcome outcome = Outcome::settled;
    // The pull is given, and whether the stack jumps as it grows was not found out within the tries there are.
    bool snapUndecided = false;
    // What bears at this moment, with this station closed and those after it still open; empty where it did not settle.
    std::vector<HeldStation> closed;  // every station closed so far, in the order of closing
    std::vector<PostLoad> posts;      // of a posted form, in the order of model::Form::posts
};

// The order in which `from` closes the stations: indices into `stations`, ascending or descending along the line, or
// from the one nearest the middle outwards, the nearer side first.
std::vector<int> closingOrder(const std::vector<model::Station>& stations, model::From from, double lineLength_m);

// Every step. Strips beyond the station being closed are free of force, so each step's rod ends a little past its pad;
// where the free tail would run into the form (a hollow) the rod goes on to there. Each step begins from the state of
// the one before, so the state found is the one reached by closing in this order. The last step's rod is all the
// strips: where nothing snaps its pulls are those of hold().
//   (1) on a circle the tip is off by the way along the tangent: sqrt(R^2 + tail^2) - R
// A strap is drawn, a side clamp set in its turn; the latter pulls nothing on the form.
// `stop` is looked at within every step of the solver; the steps made so far are then returned. Empty where there is no
// contact to solve. What all of it may cost is bounded by counted work: steps beyond that are notConverged.
std::vector<ClosingStep> closeInOrder(const StackOnForm& work, const std::atomic<bool>& stop);

// How the loose stack sags under its own weight, carried straight and flat-wise (it sags across the thin of its
// strips), and the strain this adds.
//
// A beam of the wet stiffness and the wood's weight along it, both as they change along the strips; small slopes
// (beam theory, D). Weight: 1120 kg/m3 times the specific gravity (Wood Handbook eq. 4-12, P*; that of imported woods
// stands on green volume, which makes them a little light). Glue is left out.
struct Carried {
    int points = 2;
    std::vector<double> places_m;  // of the points, along the strips from their start
    double length_m = 0;           // of the strips, along the middle
    double weight_N = 0;
    double sag_m = 0;    // greatest below the points, between them or at the ends
    double sagAt_m = 0;  // along the strips from their start
    double strain = 0;   // greatest that it adds to a strip
};

// Carried at `points` (1 or more; fewer count as 1) evenly spread, with an overhang of 1/sqrt(6) of the spacing at each
// end: an even beam then stands level over every point and sags least but for a few parts in a hundred (D).
Carried carriedAt(const StackOnForm& work, int points);

// Carried at these places, metres along the strips from their start, ascending, one or more. One place only: balanced
// on it, level there.
Carried carriedOn(const StackOnForm& work, const std::vector<double>& places_m);

}  // namespace fayline::holding
