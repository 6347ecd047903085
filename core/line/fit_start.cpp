#include "core/line/fit_start.hpp"

#include <algorithm>

namespace fayline::line {

std::vector<Vector> aimedAt(const FitInput& input) {
    const int count = static_cast<int>(input.points.size());
    std::vector<Vector> points;
    for (const FitPoint& point : input.points) points.push_back({point.x, point.y});
    if (input.takeOff == 0) return points;
    std::vector<Vector> moved = points;
    for (int i = 0; i < count; ++i) {
        const int from = std::clamp(i - 1, 0, count - 3);
        const Vector a = points[from + 1] - points[from];
        const Vector b = points[from + 2] - points[from + 1];
        const double toA = norm(a), toB = norm(b);
        Vector along = (toB / (toA + toB) / toA) * a + (toA / (toA + toB) / toB) * b;
        if (i < from + 1) along = (2 / toA) * a - along;
        if (i > from + 1) along = (2 / toB) * b - along;
        moved[i] = points[i] + input.takeOff * leftOf(unit(along));
    }
    return moved;
}

std::vector<double> chordParameters(const std::vector<Vector>& points) {
    std::vector<double> parameters{0};
    for (std::size_t i = 1; i < points.size(); ++i) {
        parameters.push_back(parameters.back() + norm(points[i] - points[i - 1]));
    }
    const double chord = parameters.back();
    for (double& t : parameters) t /= chord;
    parameters.back() = 1;
    return parameters;
}

std::vector<double> breaksFor(const std::vector<double>& parameters) {
    const int gaps = static_cast<int>(parameters.size()) - 1;
    const int each = gaps <= 6 ? (24 + gaps - 1) / gaps : gaps <= 25 ? 4 : gaps <= 100 ? 2 : 1;
    std::vector<double> breaks{0};
    for (int i = 0; i < gaps; ++i) {
        for (int k = 1; k <= each; ++k) {
            breaks.push_back(parameters[i] + (parameters[i + 1] - parameters[i]) * k / each);
        }
    }
    breaks.back() = 1;
    return breaks;
}

}  // namespace fayline::line
