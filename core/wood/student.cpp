#include "core/wood/student.hpp"

#include <cassert>
#include <cmath>
#include <numbers>

namespace fayline::wood {

namespace {

// P(|T| < t).
double within(double t, int degreesOfFreedom) {
    const double angle = std::atan(t / std::sqrt(static_cast<double>(degreesOfFreedom)));
    const double cosine = std::cos(angle);
    const bool odd = degreesOfFreedom % 2 == 1;
    double term = odd ? cosine : 1;
    double sum = 0;
    for (int k = odd ? 1 : 0; k <= degreesOfFreedom - 2; k += 2) {
        sum += term;
        term *= cosine * cosine * (k + 1) / (k + 2);
    }
    if (!odd) return std::sin(angle) * sum;
    return 2 / std::numbers::pi * (angle + std::sin(angle) * sum);
}

}  // namespace

double studentRange95(int degreesOfFreedom) {
    assert(degreesOfFreedom >= 1);
    double low = 0;
    double high = 16;
    while (high - low > 1e-10) {
        const double middle = (low + high) / 2;
        (within(middle, degreesOfFreedom) < 0.95 ? low : high) = middle;
    }
    return (low + high) / 2;
}

}  // namespace fayline::wood
