// What the fit begins from: where the points are aimed at, where along the line they belong, where its knots stand.
#pragma once

#include <vector>

#include "core/line/fit.hpp"
#include "core/math/vector.hpp"

namespace fayline::line {

using math::Vector;

// The points, after take-off square to the parabola through three neighbours.
std::vector<Vector> aimedAt(const FitInput& input);

// By chord length, 0..1.
std::vector<double> chordParameters(const std::vector<Vector>& points);

// Knots at the points, with more between them the fewer the points.
std::vector<double> breaksFor(const std::vector<double>& parameters);

}  // namespace fayline::line
