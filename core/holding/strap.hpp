// A strap or band pulled tight round the outside of the stack: where it bears, and how hard.
//
// Pulled with T from one end it presses T k exp(-mu turned) per length, with k the curvature under it and `turned` the
// angle through which it has turned on what it touches, from the end it is pulled at; from both ends the larger of the
// two tensions holds at each place. It bears only where the outside is round: a straight stretch turns it nothing, and
// a hollow is bridged from the round on one side to the round on the other, so that nothing is pressed there and no
// tension is lost. The kinks where a taper begins and ends at the trim lines are left out. Only the push square to the
// form is told; what friction drags along the stack is left out.
//
// Its ends: each is made fast, or drawn, by something off the stack, and pulls on that with the tension it has there
// (startPull_N, endPull_N). Where that something stands is not given, so what the ends press on the stack as they leave
// it, up to the whole tension where they turn square down to the form, is not known and not reckoned. Nor has a strap a
// pad: no gap is told of it. Source: belt friction (Euler, Eytelwein) (D); a taut
// strap lies along the convex hull of what it goes round (D).
#pragma once

#include <vector>

#include "core/holding/held.hpp"

namespace fayline::holding {

// A strap laid round a piece, made once and then asked at any place.
struct Strap {
    double from_m = 0;  // along the line, from <= to; no further than the strips run
    double to_m = 0;
    bool lacksEnd = false;          // no to_mm was given: it goes round nothing
    double pulled_N = 0;            // pull_N, else most_N: tension where it is pulled
    std::vector<double> places_m;   // ascending, at most 5 mm apart or a two-thousandth of its length
    std::vector<double> tension_N;  // at the places
    std::vector<double> turn_rad;   // between each place and the next, toward the form; 0 where it does not bear
};

// `index` is that of `strap` in model::Holding::stations, for error texts only. Throws InputError
// (holding.stations[i].to_mm) for a to_mm that is no number.
// Error: a bridge begins and ends at a place, so the tension is off by up to mu times the turn between two places.
Strap layStrap(const model::Station& strap, int index, const StackOnForm& work);

// Its tension at `at_m` along the line where it bears on a round outside, newtons; 0 where it does not touch, where the
// outside is straight, and beyond its ends. Times the curvature of any parallel: its thrust per length of that
// parallel.
double bearingTension_N(const Strap& strap, double at_m);

// Its thrust toward the form per length of the line at `at_m`, newtons per metre, >= 0. Per length of a parallel at
// distance d divide by 1 + d k.
double strapThrust_N_m(const Strap& strap, const StackOnForm& work, double at_m);

// Curvature of the outside of the stack per length of the line (its turn over length along the line), 1/m; > 0: round;
// 0 where it has no room.
double outsideTurn_per_m(const StackOnForm& work, double at_m);

// An outside that turns less than this per length counts as straight: a strap of 2 kN would press 2 N on a metre. Ours.
inline constexpr double straight_per_m = 1e-3;

struct StrapPlace {
    double at_m = 0;
    double thrust_N_m = 0;  // per length of the line
    double tension_N = 0;
};
struct StrapPlan {
    int index = 0;                   // in model::Holding::stations
    bool lacksEnd = false;           // no to_mm: it goes round nothing
    std::vector<StrapPlace> places;  // every 10 mm from its one end to the other, both included
    double total_N = 0;              // whole thrust on the form, summed as a number along the line
    double turned_rad = 0;           // on what it touches
    double idle_m = 0;               // length along the line on which it does nothing
    double longestIdle_m = 0;        // the longest such stretch, and where it begins
    double longestIdleFrom_m = 0;
    double leastTension_N = 0;
    double startPull_N = 0;  // on what holds its end at the lesser place along the line
    double endPull_N = 0;    // and at the greater
};
StrapPlan strapPlan(const model::Station& strap, int index, const StackOnForm& work);

}  // namespace fayline::holding
