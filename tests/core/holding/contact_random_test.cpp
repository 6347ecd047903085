// A thousand rods that no builder would choose: what is answered is balance, or is said not to be.
#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <limits>

#include "tests/core/holding/balance_check.hpp"
#include "tests/core/holding/random_rods.hpp"

namespace fayline::holding {
namespace {

// The gaps come in double precision: the last digit of the largest one, over an element of half the longest, is this
// force. Where pulls are weak, the rod stiff and gaps as large as a hand it may be more than 1e-8 of the scale.
double lastDigitForce(const Problem& problem, const Contact& contact) {
    double gap = 0;
    for (const double each : contact.gap_m) gap = std::max(gap, std::abs(each));
    double longest = 0;
    for (std::size_t n = 0; n + 1 < contact.nodes_m.size(); ++n)
        longest = std::max(longest, contact.nodes_m[n + 1] - contact.nodes_m[n]);
    double stiffest = 0;
    for (const double each : problem.rod.stiffness_N_m2) stiffest = std::max(stiffest, each);
    return 12 * stiffest / std::pow(longest / 2, 3) * std::numeric_limits<double>::epsilon() * gap;
}

TEST(RandomRods, AThousandSettleInBalanceOrSaySo) {
    constexpr int rods = 1000;
    std::array<int, 3> outcomes{};
    int away = 0;
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
        if (contact.outcome == Outcome::notSettled) {
            EXPECT_TRUE(contact.springsAway);
            away += contact.springsAway;
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
    std::sort(steps.begin(), steps.end());
    std::printf(
        "settled %d, snaps %d, springs away %d; steps least %d, median %d, most %d; worst out of balance %.1e of "
        "the scale (%d above 1e-8, by the gaps' last digit), worst hold %.1e m\n",
        outcomes[0], outcomes[1], away, steps.front(), steps[steps.size() / 2], steps.back(), worst, byLastDigit,
        worstHold);
    EXPECT_GT(outcomes[0], rods * 95 / 100);
    EXPECT_LT(byLastDigit, rods / 50);
}

}  // namespace
}  // namespace fayline::holding
