// The fair line through measured offsets.
//
// Of all lines that miss the points by no more than the reading of them explains, the one whose curvature changes
// least: the integral of the squared rate of change of curvature, weighed against the misses. See fair.cpp for the
// method, its source and its measured error.
#pragma once

#include <atomic>
#include <optional>
#include <string>
#include <vector>

#include "core/line/line.hpp"
#include "core/line/read.hpp"
#include "core/math/shared.hpp"

namespace fayline::line {

struct Offset {
    double x_m = 0;
    double y_m = 0;
    bool mustPass = false;
    Read read = Read::both;  // the other coordinate is kept to ten times as closely
};

struct FairInput {
    std::vector<Offset> points;       // in order along the line, 3 or more
    double readTo_m = 0.0015875;      // step to which the points were read
    double fairWithin_m = 0.0015875;  // no point is missed by more; 0 interpolates
    std::optional<double> startHeading_rad;
    std::optional<double> endHeading_rad;
    // The points lie on the outside of something this thick; the line is wanted on its inside, `takeOff_m` away square
    // to the line, to the left if positive, to the right if negative.
    double takeOff_m = 0;
};

struct Foot {
    double at_m = 0;      // place on the line nearest to the point
    double misfit_m = 0;  // point (after take-off) against line, signed, > 0 where the point lies to the left
};

// A line that is this many times as long as the way from point to point is none that goes through them. Ours: a fair
// one is longer by a twentieth, round half a circle with three points by a ninth.
inline constexpr double mostTimesTheWay = 3;

// How uncertain the curvature is at one place of the line.
struct Spread {
    double at_m = 0;
    double sd_per_m = 0;  // one standard deviation
};

struct FairLine {
    Line line;
    math::SharedList<Foot> points;    // as many as given, in their order
    math::SharedList<Spread> spread;  // ascending, from the first end to the last
    bool settled = true;              // false: the fit did not converge; the line is the last one tried
    int rounds = 0;                   // of the fit
    std::string outcome;              // why it stopped, in words
    double rootMeanSquareMiss_m = 0;
    double smoothing_m5 = 0;  // weight of the curvature's rate against the misses, for telling fits apart
};

// The fair line of `input`. The first and last point's feet are its ends.
//
// Throws InputError with paths from `line.`: fewer than 3 points (line.points), the same point given twice
// (line.points[i], the later one), numbers that are not finite, a negative readTo or fairWithin, a heading that points
// more than 120 degrees away from the first or last chord. Conditions that cannot all be met otherwise (points that
// must be passed against each other or against a heading) are an outcome: settled is false and the words say so.
//
// Points moved, turned, mirrored, reversed or scaled give the same line moved, turned, mirrored, reversed or scaled.
// Measured: 12 points take 0.6 ms, 500 points 9 ms, 5000 points 120 ms; of 1000 random lines of 6 to 40 points all
// settle. What may not settle: zigzags, slips of an inch between points an inch apart, decimal points displaced. Then
// the rounds end early, by rules that fit.cpp states, and `outcome` says which.
FairLine fair(const FairInput& input);

// The same, but given up once `stop` is true: then there is no line, no feet, and it has not settled. With 5000 points
// that takes 10 ms.
FairLine fair(const FairInput& input, const std::atomic<bool>& stop);

// Standard deviations within which a normal scatter lies 19 times of 20.
inline constexpr double nineteenOfTwenty = 1.96;

// One standard deviation of the curvature at arc length `at_m` (clipped to the line), 1/m; linear between the places
// where it is known. Source of the model: fair.cpp.
double curvatureSd(const FairLine& line, double at_m);

}  // namespace fayline::line
