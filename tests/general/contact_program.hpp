// The contact of rod and form written as a nonlinear programme and given to Ipopt, a general-purpose interior-point
// solver: the same elements, Gauss points and pads, another method, to check and to time the project's own solver with.
//
//     minimise  int bending + c/2 w^2 + q v  +  sum_given F_i (v_i + v_i' d_i)  +  sum_others most_i t_i
//     subject to  w + v >= 0,  w >= 0  (the crush of the foundation, at each Gauss point)
//                 t_i >= v_i + v_i' d_i,  t_i >= 0  (the gap that a hold leaves; its price is all that the hold has)
//                 d_i - d_j + int_j^i (J - 1) ds = 0  (slips, chained from the anchor; only where pads hold)
//
// A hold's pull is the multiplier of its constraint.
#pragma once

#include <array>
#include <functional>
#include <vector>

#include "core/contact/contact.hpp"

namespace fayline::general {

// Value, gradient and second derivatives (00, 01, 02, 11, 12, 22) of a function of three arguments.
struct Second {
    double value = 0;
    std::array<double, 3> first{};
    std::array<double, 6> second{};
};

// What bending costs per length, by gap, slope and second derivative of the gap.
struct RodAt {
    double curvature_per_m = 0;
    double curvatureRate_per_m2 = 0;
    double stiffness_N_m2 = 0;
    double natural_per_m = 0;
};
using Bending = std::function<Second(double gap, double slope, double bend, const RodAt& rod)>;

// By automatic differentiation of the formula itself (Eigen's AutoDiffScalar).
Second bendingByAutomaticDifferentiation(double gap, double slope, double bend, const RodAt& rod);

struct Solved {
    bool solved = false;
    std::vector<double> gap_m;  // at the nodes
    std::vector<double> slope;
    std::vector<double> pulls_N;  // in the order of the holds
    int iterations = 0;
};

// From the rod lying all along the form, as the project's own solver begins.
Solved solveWithIpopt(const contact::Problem& problem, const Bending& bending);

}  // namespace fayline::general
