// The basis of splines of degree 5, as polynomials on each interval between knots.
#pragma once

#include <array>
#include <vector>

namespace fayline::line {

// One interval of the parameter with the six basis functions that live on it.
struct QuinticInterval {
    double start = 0;
    double width = 0;
    int first = 0;  // index of the first of the six
    // polynomial[j][k] is the coefficient of u^k, u = (t - start) / width in 0..1, of basis function first + j.
    std::array<std::array<double, 6>, 6> polynomial{};
};

// Values of the six basis functions of an interval at one parameter and their derivatives by t.
struct QuinticValues {
    std::array<double, 6> value;
    std::array<double, 6> first;
    std::array<double, 6> second;
    std::array<double, 6> third;
};

// The intervals of `knots` (ascending, knots.size() - 6 basis functions) that are not empty, from the sixth knot to the
// sixth from the end, in order.
// Cox - de Boor recursion, carried out on polynomials.
std::vector<QuinticInterval> quinticIntervals(const std::vector<double>& knots);

// Knots of degree 5 through ascending `breaks` (2 or more), all single, the first and last width carried on beyond the
// ends: there the basis looks as it does within.
std::vector<double> openKnots(const std::vector<double>& breaks);

// A spline on `openKnots` given with ends that are six-fold knots: the same line from the first break to the last.
// `x` holds one coordinate of the control points.
std::vector<double> closedKnots(const std::vector<double>& open);
std::vector<double> closedControls(const std::vector<double>& open, const std::vector<double>& x);

QuinticValues valuesAt(const QuinticInterval& interval, double t);

// Index of the interval that holds t; the first or last for a t outside.
int intervalAt(const std::vector<QuinticInterval>& intervals, double t);

}  // namespace fayline::line
