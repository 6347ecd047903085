// Draws that are the same bits on every machine: the standard's generators are, its distributions and the library's
// logarithm are not.
#pragma once

#include <random>

namespace fayline::math {

// A uniform draw of 0..1 (without 1) from the upper 53 bits.
double uniformDraw(std::mt19937_64& generator);

// Two independent draws of mean 0 and standard deviation 1, by the polar method (Marsaglia and Bray 1964, M): a point
// drawn uniformly in the unit circle, stretched. The logarithm is worked out here, by adding and multiplying alone.
struct TwoNormal {
    double one = 0;
    double other = 0;
};
TwoNormal normalDraws(std::mt19937_64& generator);

// A triangular distribution, and its draw for a uniform one of 0..1: the inverse of the distribution.
struct Triangular {
    double least = 1;
    double likeliest = 1;
    double most = 1;
};
double triangularDraw(const Triangular& triangular, double uniform);

// e^x for |x| up to 700, likewise the same bits everywhere; within 4e-16 of itself for |x| below 10.
double expOf(double x);
// Natural logarithm of a number above 0, likewise; within 4e-16.
double logOf(double x);

}  // namespace fayline::math
