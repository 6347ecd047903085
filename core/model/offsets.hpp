// Points as a set: how far it is through them, and the other half of what was measured from a centre line.
#pragma once

#include <vector>

#include "core/model/boat.hpp"

namespace fayline::model {

// The length of the straight way from point to point, metres.
double lengthThrough(const std::vector<Point>& points);

enum class Axis { x, y };

// Half-breadths and their mirror image: `across` is the coordinate that is measured from the centre line, which is
// where it is 0. The two halves are joined at the end of the points that lies nearer to that line, in the order of the
// points given; a point on the line stays one. Images have the names of their points with a prime, and their texts with
// the other sign.
//   (1) the result is symmetric; points without any give none
std::vector<Point> withOtherHalf(const std::vector<Point>& points, Axis across);

// Which coordinate is probably measured from the centre line: the one for which the curve meets that line most nearly
// square, as a bent strip does, and at an end that lies on it. Common practice, no source.
Axis likelyHalf(const std::vector<Point>& points);

}  // namespace fayline::model
