// The contact solver against a general-purpose one on the same elements.
//
// Source: Ipopt, an interior-point method, with derivatives of the bending energy by automatic differentiation: nothing
// of the project's own solver or its formulas takes part (D). Wanted: gaps within a micrometre, pulls within 0.1 %.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "core/math/count.hpp"
#include "tests/general/contact_problems.hpp"
#include "tests/general/contact_program.hpp"

namespace fayline::general {
namespace contact_test {

class AgainstIpopt : public testing::TestWithParam<int> {};

TEST_P(AgainstIpopt, GapsAgreeWithinAMicrometreAndPullsWithinAThousandth) {
    const Named named = contactProblems()[size_t(GetParam())];
    SCOPED_TRACE(named.name);
    const contact::Contact ours = contact::solve(named.problem);
    ASSERT_EQ(ours.outcome, contact::Outcome::settled);
    const Solved theirs = solveWithIpopt(named.problem, bendingByAutomaticDifferentiation);
    ASSERT_TRUE(theirs.solved);
    ASSERT_EQ(ours.gap_m.size(), theirs.gap_m.size());
    double worstGap = 0;
    for (size_t i = 0; i < ours.gap_m.size(); ++i) {
        worstGap = std::max(worstGap, std::abs(ours.gap_m[i] - theirs.gap_m[i]));
    }
    EXPECT_LT(worstGap, 1e-6);
    double greatest = 0;
    for (const double pull : theirs.pulls_N) greatest = std::max(greatest, pull);
    double worstPull = 0;
    for (size_t i = 0; i < theirs.pulls_N.size(); ++i) {
        const double apart = std::abs(ours.holds[i].pull_N - theirs.pulls_N[i]);
        worstPull = std::max(worstPull, apart / greatest);
        // A pull near nothing is held to a thousandth of the greatest.
        EXPECT_LT(apart, 1e-3 * std::max(theirs.pulls_N[i], 0.01 * greatest)) << "hold " << i;
    }
    std::printf("%-45s gaps within %.2g um, pulls within %.2g %% of the greatest; %d steps, Ipopt %d\n",
                named.name.c_str(), worstGap * 1e6, worstPull * 100, ours.steps, theirs.iterations);
}

INSTANTIATE_TEST_SUITE_P(Contact, AgainstIpopt, testing::Range(0, math::countOf(contactProblems())));

}  // namespace contact_test
}  // namespace fayline::general
