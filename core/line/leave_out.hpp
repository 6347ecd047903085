// How well each point of a row agrees with its neighbours when it is left out.
//
// Model: the curvature wanders along the line (the rate of its change is white noise), as the fair line's own penalty
// has it, and every coordinate was rounded to `readTo`. How much it wanders is taken from the neighbours themselves, by
// their likelihood, so a point is judged against the scatter of the rest. Linear: x and y each against chord length,
// in a window of neighbours.
// Source: Gaussian-process form of the smoothing spline (Wahba, Spline Models for Observational Data, 1990, from
// memory, M).
#pragma once

#include <array>
#include <vector>

#include "core/line/line.hpp"
#include "core/line/read.hpp"

namespace fayline::line {

struct LeftOut {
    double away_m = 0;     // point against what its neighbours foretell, square to the line, > 0 to the left
    double scatter_m = 0;  // standard deviation of that if the point was read as well as the others
    Xy foretold;           // where the neighbours expect the line beside the point
    Xy direction;          // unit vector along the line there
    double times() const { return scatter_m > 0 ? away_m / scatter_m : 0; }
    // The same distance for the point if it were at (x, y).
    double awayIfAt(double x_m, double y_m) const {
        return direction.x_m * (y_m - foretold.y_m) - direction.y_m * (x_m - foretold.x_m);
    }
};

// Covariance at parameters s and t, from 0 on, of a curve whose third derivative is white noise of strength 1.
double processNoiseCovariance(double s, double t);

// For each of `points` what the others say of it. Points whose `leftOut` is true are not asked, but are judged.
// `readTo_m` > 0 is the step of reading; `reads`, if not empty, tells for each point which coordinate was read: the
// other is taken for exact, so less scatter is left square to the line. Needs 5 points that are asked, beside the one
// judged; else away 0.
std::vector<LeftOut> leaveEachOut(const std::vector<Xy>& points, const std::vector<bool>& leftOut, double readTo_m,
                                  const std::vector<Read>& reads = {});

// The same for one point.
LeftOut leaveOneOut(const std::vector<Xy>& points, const std::vector<bool>& leftOut, int point, double readTo_m,
                    const std::vector<Read>& reads = {});

// The first and last of the points whose judgement can change when `point` is left out.
std::array<int, 2> reachOf(const std::vector<bool>& leftOut, int point);

}  // namespace fayline::line
