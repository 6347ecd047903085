// How far along a step the foundation lets the energy fall, against the energy itself.
#include "core/contact/along_step.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <numeric>

namespace fayline::contact {
namespace along_step_test {

// A straight rod of 1 m on a straight foundation, so that the energy is of the second degree between one place and the
// next that comes down or lifts.
Discrete straight(int elements) {
    Problem problem;
    problem.rod.mesh = meshBetween(0, 1, {}, 1.0 / elements);
    const std::size_t places = gaussPlaces(problem.rod.mesh).size();
    problem.rod.curvature_per_m.assign(places, 0);
    problem.rod.curvatureRate_per_m2.assign(places, 0);
    problem.rod.stiffness_N_m2.assign(places, 100);
    problem.rod.natural_per_m.assign(places, 0);
    problem.rod.foundation_N_m2.assign(places, 8e8);
    problem.rod.load_N_m.assign(places, 1e4);
    return discreteOf(problem);
}

double slopeAt(const Discrete& discrete, const std::vector<double>& x, const std::vector<double>& step, double part) {
    std::vector<double> there(x.size());
    for (std::size_t i = 0; i < x.size(); ++i) there[i] = x[i] + part * step[i];
    Equilibrium balance;
    balanceOf(discrete, there, {}, balance);
    return std::inner_product(step.begin(), step.end(), balance.force.begin(), 0.0);
}

// A rod that leans: its left end down by 5 um, its right end up by `up_m`.
std::vector<double> leaning(const Discrete& discrete, double up_m) {
    std::vector<double> x;
    for (const double node : discrete.nodes_m) x.insert(x.end(), {-5e-6 + (up_m + 5e-6) * node, up_m + 5e-6});
    return x;
}

// Odd and even numbers of elements. Tolerance: the slopes of so small a lean drop terms of the fourth degree.
TEST(AlongStep, TheEnergyIsLeastWhereItSays) {
    for (const int elements : {1, 2, 7, 40}) {
        const Discrete discrete = straight(elements);
        const std::vector<double> x = leaning(discrete, 2e-5);
        // Level downward, as long as the foundation that lies now alone would let it be.
        std::vector<double> step(x.size(), 0);
        for (std::size_t i = 0; i < step.size(); i += 2) step[i] = -1e-5;
        const double slope = slopeAt(discrete, x, step, 0);
        const double stiffness = (slopeAt(discrete, x, step, 1e-6) - slope) / 1e-6;
        for (double& each : step) each *= -slope / stiffness;
        const double whole = slopeAt(discrete, x, step, 0);
        const double part = AlongStep().least(discrete, x, step, 1, whole);
        ASSERT_LT(whole, 0) << elements;
        EXPECT_GT(part, 0) << elements;
        EXPECT_LE(part, 1) << elements;
        EXPECT_NEAR(slopeAt(discrete, x, step, part) / whole, 0, 1e-6) << elements;
    }
}

TEST(AlongStep, WhereNothingTurnsTheWholeStepIsGone) {
    const Discrete discrete = straight(7);
    std::vector<double> x(2 * discrete.nodes_m.size(), 0);
    std::vector<double> step(x.size(), 0);
    for (std::size_t i = 0; i < x.size(); i += 2) x[i] = 1e-3, step[i] = 1e-5;
    EXPECT_DOUBLE_EQ(AlongStep().least(discrete, x, step, 1, -3.0), 1);
}

TEST(AlongStep, AStepThatIsNoNumberIsLeftToBeTried) {
    const Discrete discrete = straight(7);
    const std::vector<double> x = leaning(discrete, 2e-5);
    const std::vector<double> step(x.size(), -std::numeric_limits<double>::infinity());
    EXPECT_EQ(AlongStep().least(discrete, x, step, 1, -std::numeric_limits<double>::infinity()), 1);
}

TEST(AlongStep, ARodThatLiftsOffForGoodGoesAsFarAsItMay) {
    const Discrete discrete = straight(7);
    std::vector<double> x(2 * discrete.nodes_m.size(), 0);
    std::vector<double> step(x.size(), 0);
    for (std::size_t i = 0; i < x.size(); i += 2) x[i] = -1e-6, step[i] = 2e-6;
    // All of the stiffness is the foundation's, which lets go half way: the energy goes on falling.
    const double foundation = 8e8 * 2e-6 * 2e-6;
    EXPECT_EQ(AlongStep().least(discrete, x, step, 1, -foundation), mostOfStep);
}

}  // namespace along_step_test
}  // namespace fayline::contact
