#include <Eigen/Core>
#include <unsupported/Eigen/AutoDiff>

#include "tests/general/contact_program.hpp"

namespace fayline::general {

Second bendingByAutomaticDifferentiation(double gap, double slope, double bend, const RodAt& rod) {
    using Inner = Eigen::AutoDiffScalar<Eigen::Vector3d>;
    using Outer = Eigen::AutoDiffScalar<Eigen::Matrix<Inner, 3, 1>>;
    std::array<Outer, 3> u;
    const std::array<double, 3> values{gap, slope, bend};
    for (int i = 0; i < 3; ++i) {
        u[size_t(i)].value() = Inner(values[size_t(i)], 3, i);
        u[size_t(i)].derivatives() = Eigen::Matrix<Inner, 3, 1>::Unit(i);
        for (int j = 0; j < 3; ++j) u[size_t(i)].derivatives()(j).derivatives().setZero();
    }
    const double k = rod.curvature_per_m;
    const Outer one = Outer(1 + k * u[0]);
    const Outer square = Outer(one * one + u[1] * u[1]);
    // psi' of psi = atan2(v', 1 + k v)
    const Outer turn = Outer((one * u[2] - u[1] * (k * u[1] + rod.curvatureRate_per_m2 * u[0])) / square);
    const Outer stretch = Outer(sqrt(square));
    const Outer curvature = Outer((k - turn) / stretch - rod.natural_per_m);
    const Outer cost = Outer(rod.stiffness_N_m2 / 2 * curvature * curvature * stretch);
    Second second;
    second.value = cost.value().value();
    std::size_t next = 0;
    for (int i = 0; i < 3; ++i) {
        second.first[size_t(i)] = cost.value().derivatives()(i);
        for (int j = i; j < 3; ++j) second.second[next++] = cost.derivatives()(i).derivatives()(j);
    }
    return second;
}

}  // namespace fayline::general
