#include "core/math/random.hpp"

#include <cmath>

namespace fayline::math {

namespace {

constexpr double ln2 = 0.693147180559945309417;

}  // namespace

double uniformDraw(std::mt19937_64& generator) {
    return static_cast<double>(generator() >> 11) * 0x1p-53;
}

double expOf(double x) {
    const double halvings = std::floor(x / ln2 + 0.5);
    const double rest = x - halvings * ln2;  // at most ln 2 / 2: 18 terms of the series leave 1e-24
    double sum = 1;
    for (int n = 18; n > 0; --n) sum = 1 + sum * rest / n;
    return std::ldexp(sum, static_cast<int>(halvings));
}

double logOf(double x) {
    int halvings = 0;
    double part = std::frexp(x, &halvings);  // 0.5..1
    if (part < 0.70710678118654752) {
        part *= 2;
        --halvings;
    }
    // ln part = 2 artanh s, |s| below 0.172: 12 terms leave 1e-19.
    const double s = (part - 1) / (part + 1);
    double sum = 0;
    for (int n = 23; n > 0; n -= 2) sum = sum * s * s + 1.0 / n;
    return 2 * s * sum + halvings * ln2;
}

TwoNormal normalDraws(std::mt19937_64& generator) {
    while (true) {
        const double u = 2 * uniformDraw(generator) - 1;
        const double v = 2 * uniformDraw(generator) - 1;
        const double square = u * u + v * v;
        if (square >= 1 || square == 0) continue;
        const double stretch = std::sqrt(-2 * logOf(square) / square);
        return {u * stretch, v * stretch};
    }
}

double triangularDraw(const Triangular& triangular, double uniform) {
    const double wide = triangular.most - triangular.least;
    if (!(wide > 0)) return triangular.likeliest;
    const double below = (triangular.likeliest - triangular.least) / wide;
    if (uniform < below)
        return triangular.least + std::sqrt(uniform * wide * (triangular.likeliest - triangular.least));
    return triangular.most - std::sqrt((1 - uniform) * wide * (triangular.most - triangular.likeliest));
}

}  // namespace fayline::math
