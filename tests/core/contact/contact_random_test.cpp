// A thousand rods that no builder would choose: what is answered is balance, or is said not to be.
#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <limits>

#include "tests/core/contact/balance_check.hpp"
#include "tests/core/contact/random_rods.hpp"

namespace fayline::contact {
namespace contact_random_test {

// The gaps come in double precision. Half the last digit at either end of an element h long moves its shear force by
// 12 B_v / h^3 of it, B_v = B a^2 / J^5 being the stiffness against v'', and a node has two elements. Where pulls are
// weak, the rod stiff and gaps as wide as a hand that is more than 1e-8 of the scale.
double lastDigitForce(const Problem& problem, const Contact& contact) {
    const auto& nodes = contact.nodes_m;
    double longest = 0;
    for (std::size_t e = 0; e + 1 < nodes.size(); ++e) longest = std::max(longest, nodes[e + 1] - nodes[e]);
    double worst = 0;
    for (std::size_t e = 0; e + 1 < nodes.size(); ++e) {
        const double h = nodes[e + 1] - nodes[e];
        if (h < longest / 2) continue;  // taken together, see BalanceCheck
        const double gap = std::max(std::abs(contact.gap_m[e]), std::abs(contact.gap_m[e + 1]));
        const double a = 1 + problem.rod.curvature_per_m[3 * e + 1] * (contact.gap_m[e] + contact.gap_m[e + 1]) / 2;
        const double path = std::hypot(a, (contact.gap_m[e + 1] - contact.gap_m[e]) / h);
        const double stiffness = problem.rod.stiffness_N_m2[3 * e + 1] * a * a / std::pow(path, 5);
        worst = std::max(worst, 2 * 12 * stiffness / (h * h * h) * std::numeric_limits<double>::epsilon() * gap);
    }
    return worst;
}

TEST(RandomRods, AThousandSettleInBalanceOrSaySo) {
    constexpr int rods = 1000;
    std::array<int, 3> outcomes{};
    int away = 0;
    int stepsAway = 0;
    int byLastDigit = 0;
    double worst = 0;
    double worstHold = 0;
    std::vector<int> steps;
    for (int i = 0; i < rods; ++i) {
        SCOPED_TRACE(i);
        const Problem problem = RandomRods(static_cast<unsigned>(1000 + i)).problem();
        const Contact contact = solve(problem);
        ++outcomes[static_cast<std::size_t>(contact.outcome)];
        for (const double gap : contact.gap_m) ASSERT_TRUE(std::isfinite(gap));
        for (const HoldForce& hold : contact.holds) ASSERT_TRUE(std::isfinite(hold.pull_N + hold.gap_m + hold.slip_m));
        if (contact.outcome == Outcome::notConverged) {
            EXPECT_TRUE(contact.springsAway);
            away += contact.springsAway;
            stepsAway = std::max(stepsAway, contact.steps);
            continue;
        }
        const BalanceCheck check = checkBalance(problem, contact);
        const double off = check.outOfBalance_N / check.scale_N;
        const double digit = lastDigitForce(problem, contact) / check.scale_N;
        EXPECT_LT(off, std::max(1e-8, digit));
        byLastDigit += off >= 1e-8;
        worst = std::max(worst, off);
        EXPECT_LT(check.worstHold_m, 1e-11);
        EXPECT_TRUE(check.withinStrength);
        EXPECT_LT(check.worstSlip_m, 1e-12);
        worstHold = std::max(worstHold, check.worstHold_m);
        steps.push_back(contact.steps);

        std::vector<double> pulls;
        for (const HoldForce& hold : contact.holds) pulls.push_back(hold.pull_N);
        EXPECT_NEAR(energyOf(problem, contact.gap_m, contact.slope, pulls), check.energy,
                    1e-10 * (1 + std::abs(check.energy)));
    }
    std::ranges::sort(steps);
    std::printf(
        "settled %d, snaps %d, springs away %d, in %d steps at most; steps least %d, median %d, most %d; worst out of "
        "balance %.1e of "
        "the scale (%d above 1e-8, by the gaps' last digit), worst hold %.1e m\n",
        outcomes[0], outcomes[1], away, stepsAway, steps.front(), steps[steps.size() / 2], steps.back(), worst,
        byLastDigit, worstHold);
    EXPECT_GT(outcomes[0], rods * 95 / 100);
    EXPECT_LE(stepsAway, 120);
    EXPECT_LT(byLastDigit, rods / 50);
}

}  // namespace contact_random_test
}  // namespace fayline::contact
