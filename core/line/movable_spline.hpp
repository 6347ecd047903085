// A spline of degree 5 whose control points can be moved square to the line, and along it without changing the line.
//
// Knots are single and carried on beyond the ends (openKnots), so that moving a control point near an end works as it
// does anywhere else; the line is what lies over the parameter 0..1.
#pragma once

#include <array>
#include <vector>

#include "core/line/quintic.hpp"
#include "core/math/vector.hpp"

namespace fayline::line {

using math::Vector;

class MovableSpline {
public:
    // `breaks` ascend from 0 to 1.
    explicit MovableSpline(const std::vector<double>& breaks);

    int controls() const { return static_cast<int>(greville_.size()); }
    const std::vector<double>& knots() const { return knots_; }
    const std::vector<QuinticInterval>& intervals() const { return intervals_; }
    // The basis at Gauss's points, three for each interval: the third derivative is a parabola, the square of which
    // they integrate exactly.
    const std::vector<QuinticValues>& gauss() const { return gauss_; }

    Vector sum(const std::array<double, 6>& basis, int first) const {
        Vector r;
        for (int j = 0; j < 6; ++j) {
            r.x += basis[j] * x[first + j];
            r.y += basis[j] * y[first + j];
        }
        return r;
    }

    // Sets the line's normal beside each control point, along which `move` moves it.
    void face();
    Vector normal(int j) const { return normals_[j]; }

    // Each control point goes `square[j]` to the left along its normal; all go along the line so that the start goes
    // `startAlong` ahead, the end `endAlong`, and those between in proportion.
    void move(const std::vector<double>& square, double share, double startAlong, double endAlong);

    // Makes the parameter arc length: the same line, met anew in as many places as there are control points.
    // `parameters` are carried along.
    void evenOut(std::vector<double>& parameters);

    // The greatest departure of |dr/dt| from its mean, as a share of it.
    double speedVariation() const;

    std::vector<double> x, y;  // control points

private:
    void measureLength();
    double lengthTo(double t) const;

    std::vector<double> knots_;
    std::vector<QuinticInterval> intervals_;
    std::vector<QuinticValues> gauss_;
    std::vector<double> greville_;           // the parameter that belongs to each control point
    std::vector<QuinticValues> atGreville_;  // the basis there
    std::vector<double> sites_;              // as many places within 0..1, one in the reach of each control point
    std::vector<QuinticValues> atSites_;
    std::vector<double> length_;  // to the start of each interval and to the end
    std::vector<Vector> normals_;
};

}  // namespace fayline::line
