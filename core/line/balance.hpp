// How fairness is weighed against the misses of the points, for small moves of the control points.
#pragma once

#include <array>
#include <atomic>
#include <vector>

#include "core/math/banded_least_squares.hpp"

namespace fayline::line {

// One condition on the moves of six neighbouring control points: `value` less `entry` times the moves is to be small.
struct Condition {
    int first = 0;
    std::array<double, 6> entry{};
    double value = 0;
    double weight = 1;
    bool read = true;  // a point that was read with the scatter of reading; false: it is to be met
};

// What the smoothing is chosen by. Lengths in whatever unit the conditions have.
struct BalanceAims {
    double scatter = 0;   // root mean square of what reading leaves
    double mostMiss = 0;  // no read point may be missed by more; 0: all are to be met within `throughMiss`
    double throughMiss = 0;
    double mostSmoothing_log = 0;
};

// The linear model of one round of the fit: minimise smoothing * |energy rows|^2 + sum of weight * miss^2.
class Balance {
public:
    using Triangle = math::BandedLeastSquares<6, 1>;

    // The rows of curvature's rate, to be filled by the caller; then the conditions.
    Triangle energy;
    std::vector<Condition> conditions;
    void ready();  // after both have been filled

    // The logarithm of the smoothing that the aims ask for, sought from `start` on to `precision`, and no further away
    // than `reach`. Wherever it had come to once `stop` is true.
    double chooseSmoothing(const BalanceAims& aims, double start_log, double reach_log, double precision,
                           const std::atomic<bool>& stop);

    // The best moves for this smoothing.
    const std::vector<double>& movesAt(double smoothing_log);

    // How all moves answer to a pull on six neighbouring ones from `first` on, for the smoothing that movesAt() was
    // last asked for: (A + smoothing P)^-1 times the pull.
    std::vector<double> answerTo(int first, const std::array<double, 6>& entry) const;

    // What the readings do to a sum of moves, given how the moves answer to a pull by that sum.
    struct Moved {
        double variance = 0;  // of the sum, for a scatter of 1
        double again = 0;     // by how much the misses, made fair again, would still change the sum
    };
    Moved movedByReadings(const std::vector<double>& answer) const;

private:
    double missAfter(const Condition& condition) const;
    double greatestMiss(const BalanceAims& aims, double smoothing_log);
    double roughnessPerFreedom(const BalanceAims& aims, double smoothing_log);
    double degreesOfFreedom();
    double energyAfter() const;
    template <class Measure>
    double rootOf(const Measure& measure, double start, double least, double most, double precision,
                  const std::atomic<bool>& stop);

    Triangle both_;
    std::vector<double> moves_;
    std::vector<std::array<double, 6>> inverse_;
    std::vector<int> order_;  // of the conditions by their first control point
    double solvedFor_log_ = 0;
    bool solved_ = false;
};

}  // namespace fayline::line
