#include "core/laminate/parallels.hpp"

#include <algorithm>
#include <cmath>

#include "core/math/quadrature.hpp"

namespace fayline::laminate {

namespace {

constexpr double panel_m = 0.01;

double share(double at_m, double length_m) {
    return length_m > 0 ? std::clamp(at_m / length_m, 0.0, 1.0) : 0.0;
}

// Length element of the curve over that of the line.
double element(const line::Place& place, double side, const Distance& distance) {
    return std::hypot(stretch(place, side, distance.at(place.at_m)), distance.slopeAt(place.at_m));
}

// Gauss's three points on each of the panels that `from_m`..`to_m` is cut into.
SumPlaces sumPlaces(const line::Line& line, double from_m, double to_m) {
    const int panels = std::max(1, static_cast<int>(std::ceil((to_m - from_m) / panel_m)));
    const double half_m = (to_m - from_m) / panels / 2;
    SumPlaces sum{from_m, to_m, {}, {}};
    for (int i = 0; i < panels; ++i) {
        for (std::size_t point = 0; point < 3; ++point) {
            sum.places.push_back(line.at(from_m + (2 * i + 1 + math::gauss3Off[point]) * half_m));
            sum.weights_m.push_back(math::gauss3Weight[point] * (2 * half_m));
        }
    }
    return sum;
}

double taperedLength(const line::Line& line, double side, const Distance& distance, double from_m, double to_m,
                     SumPlaces* kept) {
    SumPlaces own;
    SumPlaces& sum = kept ? *kept : own;
    if (sum.places.empty() || sum.from_m != from_m || sum.to_m != to_m) sum = sumPlaces(line, from_m, to_m);
    double length = 0;
    for (std::size_t i = 0; i < sum.places.size(); ++i) {
        length += sum.weights_m[i] * element(sum.places[i], side, distance);
    }
    return length;
}

}  // namespace

double Distance::at(double at_m) const {
    return atStart_m + (atEnd_m - atStart_m) * share(at_m, length_m);
}

double Distance::slopeAt(double at_m) const {
    if (length_m <= 0 || at_m < 0 || at_m > length_m) return 0;
    return (atEnd_m - atStart_m) / length_m;
}

Distance between(const Distance& one, const Distance& other) {
    return {(one.atStart_m + other.atStart_m) / 2, (one.atEnd_m + other.atEnd_m) / 2, one.length_m};
}

double stackCurvature(const line::Place& place, double side) {
    return -side * place.curvature_per_m;
}

double stretch(const line::Place& place, double side, double distance_m) {
    return 1 + distance_m * stackCurvature(place, side);
}

double curvatureBeside(const line::Place& place, double side, const Distance& distance) {
    const double k = stackCurvature(place, side);
    const double d = distance.at(place.at_m);
    const double slope = distance.slopeAt(place.at_m);
    const double J = 1 + d * k;
    if (slope == 0) return k / J;
    const double rate = -side * place.curvatureRate_per_m2;
    const double run = std::hypot(J, slope);
    return (J * J * k + slope * (2 * slope * k + d * rate)) / (run * run * run);
}

double lengthBeside(const line::Line& line, double side, const Distance& distance, double from_m, double to_m,
                    SumPlaces* kept) {
    if (to_m < from_m) return -lengthBeside(line, side, distance, to_m, from_m, kept);
    if (distance.level()) return line::parallelLength(line, side * distance.atStart_m, from_m, to_m);

    // Cut at the trim lines, where the taper begins and ends.
    const double begins = std::clamp(0.0, from_m, to_m);
    const double ends = std::clamp(distance.length_m, from_m, to_m);
    double length = 0;
    if (begins > from_m) length += line::parallelLength(line, side * distance.atStart_m, from_m, begins);
    if (ends > begins) length += taperedLength(line, side, distance, begins, ends, kept);
    if (to_m > ends) length += line::parallelLength(line, side * distance.atEnd_m, ends, to_m);
    return length;
}

line::Xy pointBeside(const line::Place& place, double side, double distance_m) {
    const double left = side * distance_m;
    return {place.x_m - left * std::sin(place.heading_rad), place.y_m + left * std::cos(place.heading_rad)};
}

}  // namespace fayline::laminate
