// The fit behind fair(): a spline whose control points go square to it until its curvature changes least for what it
// misses. fair.cpp tells the method; here are its rounds.
//
// Everything is measured in chord lengths of the points, the parameter runs 0..1.
#pragma once

#include <atomic>
#include <optional>
#include <vector>

#include "core/line/fair.hpp"
#include "core/line/read.hpp"

namespace fayline::line {

struct FitPoint {
    double x = 0;
    double y = 0;
    bool mustPass = false;
    Read read = Read::both;
};

struct FitInput {
    std::vector<FitPoint> points;
    double scatter = 0;      // root mean square of what reading a point leaves
    double mostMiss = 0;     // no miss above this; 0 interpolates
    double throughMiss = 0;  // a miss this small counts as none
    double takeOff = 0;      // to the left of the points
    std::optional<double> startHeading_rad;
    std::optional<double> endHeading_rad;
};

// Why the rounds ended.
enum class FitEnd { settled, strays, restless, tooMany, undetermined, stopped };

struct FitResult {
    std::vector<double> knots;  // of degree 5, ends six-fold
    std::vector<double> x;
    std::vector<double> y;           // control points
    std::vector<double> parameters;  // of the points' feet
    std::vector<double> misses;      // > 0: the point lies to the left
    double smoothing = 0;
    double headingMiss_rad = 0;  // the greater of the ends'
    // One standard deviation of the curvature, at ascending parameters from 0 to 1.
    std::vector<double> spreadAt;
    std::vector<double> curvatureSpread;
    int rounds = 0;
    FitEnd end = FitEnd::tooMany;
};

// The last line tried is returned whatever the end. Looks at `stop` before each solution of the linear model, which
// takes 3 ms with 5000 points.
FitResult fit(const FitInput& input, const std::atomic<bool>& stop);

}  // namespace fayline::line
