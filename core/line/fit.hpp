// The fit behind fair(): a spline of degree 5 whose control points are moved square to it until its curvature changes
// least for what it misses. fair.cpp tells the method; here are its stages.
//
// Everything is measured in chord lengths of the points, the parameter runs 0..1.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/line/banded.hpp"
#include "core/line/line.hpp"
#include "core/line/quintic.hpp"

namespace fayline::line {

struct FitPoint {
    double x = 0;
    double y = 0;
    bool mustPass = false;
};

struct FitInput {
    std::vector<FitPoint> points;
    double targetMiss = 0;   // root mean square of the misses to aim at
    double mostMiss = 0;     // no miss above this; 0 interpolates
    double throughMiss = 0;  // a miss this small counts as none
    double takeOff = 0;
    std::optional<double> startHeading_rad;
    std::optional<double> endHeading_rad;
};

struct FitResult {
    std::vector<double> knots;
    std::vector<double> x;
    std::vector<double> y;           // control points
    std::vector<double> parameters;  // of the points' feet
    std::vector<double> misses;      // > 0: the point lies to the left
    double smoothing = 0;
    int rounds = 0;
    bool settled = false;
    std::string outcome;
};

FitResult fit(const FitInput& input);

}  // namespace fayline::line
