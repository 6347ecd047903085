// What the rod in contact must do whatever the numbers: symmetries, agreement, starts, refusals, odd cases.
#include "core/contact/contact.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/units/input_error.hpp"
#include "tests/core/contact/balance_check.hpp"
#include "tests/core/contact/random_rods.hpp"
#include "tests/refusal.hpp"

namespace fayline::contact {
namespace contact_test {

Problem roundForm(double curvature_per_m, double length_m, const std::vector<Hold>& holds, double step_m = 0.005) {
    Problem problem;
    std::vector<double> marks;
    for (const Hold& hold : holds)
        for (const double end : {-0.5, 0.0, 0.5}) marks.push_back(hold.at_m + end * hold.pad_m);
    problem.rod.mesh = meshBetween(0, length_m, marks, step_m);
    const std::size_t places = gaussPlaces(problem.rod.mesh).size();
    problem.rod.curvature_per_m.assign(places, curvature_per_m);
    problem.rod.curvatureRate_per_m2.assign(places, 0);
    problem.rod.stiffness_N_m2.assign(places, 100);
    problem.rod.natural_per_m.assign(places, 0);
    problem.rod.foundation_N_m2.assign(places, 1e9);
    problem.rod.load_N_m.assign(places, 0);
    problem.holds = holds;
    problem.anchor_m = holds.empty() ? 0 : holds[holds.size() / 2].at_m;
    return problem;
}

double largestDifference(const std::vector<double>& a, const std::vector<double>& b) {
    double worst = 0;
    for (std::size_t i = 0; i < a.size(); ++i) worst = std::max(worst, std::abs(a[i] - b[i]));
    return worst;
}

double largest(const std::vector<double>& a) {
    double most = 0;
    for (const double each : a) most = std::max(most, std::abs(each));
    return most;
}

TEST(Mesh, HasItsEndsAndMarksAndNoElementLongerThanTheStep) {
    const Mesh mesh = meshBetween(-0.1, 1, {0.3331, 0.33311, 0.5, 2, -3, 0.99999}, 0.005);
    EXPECT_EQ(mesh.nodes_m.front(), -0.1);
    EXPECT_EQ(mesh.nodes_m.back(), 1);
    for (const double mark : {0.3331, 0.5})
        EXPECT_TRUE(std::ranges::find(mesh.nodes_m, mark) != mesh.nodes_m.end()) << mark;
    for (std::size_t i = 0; i + 1 < mesh.nodes_m.size(); ++i) {
        EXPECT_LE(mesh.nodes_m[i + 1] - mesh.nodes_m[i], 0.005 + 1e-9);
        EXPECT_GE(mesh.nodes_m[i + 1] - mesh.nodes_m[i], 0.005 / 20);
    }
    EXPECT_EQ(gaussPlaces(mesh).size(), 3 * (mesh.nodes_m.size() - 1));
}

// Snapping rods may go either way; of the others both answers are balance within the same limits.
TEST(Contact, HalfTheStiffnessBedPullsAndLoadGiveTheSameGaps) {
    int compared = 0;
    for (unsigned seed = 1; seed <= 60; ++seed) {
        SCOPED_TRACE(seed);
        const Problem problem = RandomRods(seed).problem();
        Problem half = problem;
        for (double& each : half.rod.stiffness_N_m2) each /= 2;
        for (double& each : half.rod.foundation_N_m2) each /= 2;
        for (double& each : half.rod.load_N_m) each /= 2;
        for (Hold& hold : half.holds) {
            hold.most_N /= 2;
            if (hold.pull_N) *hold.pull_N /= 2;
        }
        const Contact whole = solve(problem);
        const Contact halved = solve(half);
        if (whole.outcome != Outcome::settled || halved.outcome != Outcome::settled) continue;
        EXPECT_LT(largestDifference(whole.gap_m, halved.gap_m), 1e-7 + 1e-5 * largest(whole.gap_m));
        ++compared;
    }
    EXPECT_GT(compared, 50);
}

TEST(Contact, RunFromItsOtherEndTheAnswerIsMirrored) {
    int compared = 0;
    for (unsigned seed = 101; seed <= 160; ++seed) {
        SCOPED_TRACE(seed);
        const Problem problem = RandomRods(seed).problem();
        Problem other = problem;
        auto& nodes = other.rod.mesh.nodes_m;
        for (double& node : nodes) node = -node;
        std::ranges::reverse(nodes);
        for (auto* values : {&other.rod.curvature_per_m, &other.rod.curvatureRate_per_m2, &other.rod.stiffness_N_m2,
                             &other.rod.natural_per_m, &other.rod.foundation_N_m2, &other.rod.load_N_m})
            std::ranges::reverse(*values);
        for (double& rate : other.rod.curvatureRate_per_m2) rate = -rate;
        for (Hold& hold : other.holds) hold.at_m = -hold.at_m;
        other.anchor_m = -other.anchor_m;
        const Contact there = solve(problem);
        Contact back = solve(other);
        if (there.outcome != Outcome::settled || back.outcome != Outcome::settled) continue;
        std::ranges::reverse(back.gap_m);
        EXPECT_LT(largestDifference(there.gap_m, back.gap_m), 1e-7 + 1e-5 * largest(there.gap_m));
        for (std::size_t i = 0; i < there.holds.size(); ++i)
            EXPECT_NEAR(there.holds[i].slip_m, -back.holds[i].slip_m, 1e-7 + 1e-5 * std::abs(there.holds[i].slip_m));
        ++compared;
    }
    EXPECT_GT(compared, 50);
}

TEST(Contact, WhereAllGapsCloseBothKindsOfPadsAgree) {
    std::vector<Hold> holds;
    for (int i = 0; i <= 12; ++i) holds.push_back({0.04 + i * 0.11, 0.03, 20000, {}});
    Problem problem = roundForm(1.0, 1.4, holds);
    const Contact hold = solve(problem);
    problem.padsHold = false;
    const Contact slide = solve(problem);
    ASSERT_EQ(hold.outcome, Outcome::settled);
    ASSERT_EQ(slide.outcome, Outcome::settled);
    for (const HoldForce& each : slide.holds) EXPECT_NE(each.state, HoldState::full);
    // What is left between the pads is hundredths of a millimetre; they differ by thousandths of that.
    EXPECT_LT(largestDifference(hold.gap_m, slide.gap_m), 0.005 * largest(slide.gap_m));
}

TEST(Contact, FromAnotherAnswerTheSameStateIsFoundInFewerSteps) {
    int fromRest = 0;
    int fromAnswer = 0;
    for (unsigned seed = 201; seed <= 240; ++seed) {
        SCOPED_TRACE(seed);
        const Problem problem = RandomRods(seed).problem();
        Problem moved = problem;
        for (double& each : moved.rod.curvature_per_m) each *= 1.002;
        for (double& each : moved.rod.curvatureRate_per_m2) each *= 1.002;
        const Contact before = solve(problem);
        const Contact rest = solve(moved);
        const Contact started = solve(moved, &before);
        if (before.outcome != Outcome::settled || rest.outcome != Outcome::settled) continue;
        ASSERT_EQ(started.outcome, Outcome::settled);
        EXPECT_LT(largestDifference(rest.gap_m, started.gap_m), 1e-7 + 1e-5 * largest(rest.gap_m));
        fromRest += rest.steps;
        fromAnswer += started.steps;
    }
    EXPECT_LT(fromAnswer * 2, fromRest);
    std::printf("steps from rest %d, from the answer before %d\n", fromRest, fromAnswer);
}

TEST(Contact, AnAnswerOfAnotherMeshAndOtherHoldsWillDoToStartFrom) {
    const Problem coarse =
        roundForm(0.8, 1.6, {{0.1, 0.03, 800, {}}, {0.8, 0.03, 800, {}}, {1.5, 0.03, 800, {}}}, 0.01);
    const Problem fine =
        roundForm(0.8, 1.7, {{0.1, 0.03, 800, {}}, {0.5, 0.03, 500, {}}, {0.8, 0.03, 800, {}}, {1.6, 0.03, 800, {}}});
    const Contact before = solve(coarse);
    const Contact started = solve(fine, &before);
    const Contact rest = solve(fine);
    EXPECT_EQ(started.outcome, Outcome::settled);
    EXPECT_LT(largestDifference(started.gap_m, rest.gap_m), 1e-9);
}

TEST(Contact, AHoldClosesWithNoMoreThanItHas) {
    const Contact strong =
        solve(roundForm(0.8, 1.6, {{0.05, 0.03, 5000, {}}, {0.8, 0.03, 5000, {}}, {1.55, 0.03, 5000, {}}}));
    EXPECT_EQ(strong.holds[0].state, HoldState::closes);
    // Where the pads hold, the gap that closes is the one at the place to which the pull has slipped.
    EXPECT_LT(std::abs(strong.holds[0].gap_m), 1e-5);
    EXPECT_LT(strong.holds[0].pull_N, 5000);
    const Contact weak =
        solve(roundForm(0.8, 1.6, {{0.05, 0.03, 300, {}}, {0.8, 0.03, 300, {}}, {1.55, 0.03, 300, {}}}));
    EXPECT_EQ(weak.holds[0].state, HoldState::full);
    EXPECT_EQ(weak.holds[0].pull_N, 300);
    EXPECT_GT(weak.holds[0].gap_m, 0.001);
}

TEST(Contact, PadsMayReachOverTheEndsAndOverEachOther) {
    const Problem problem = roundForm(0.8, 1.2,
                                      {{0.0, 0.08, 900, {}},
                                       {0.6, 0.05, 500, {}},
                                       {0.61, 0.05, 500, {}},
                                       {0.61, 0.05, 500, {}},
                                       {1.2, 0.08, 900, {}}});
    const Contact contact = solve(problem);
    EXPECT_EQ(contact.outcome, Outcome::settled);
    const BalanceCheck check = checkBalance(problem, contact);
    EXPECT_LT(check.outOfBalance_N, 1e-8 * check.scale_N);
}

// Nothing pulls: any straight line clear of the form is balance, or none is within reach. Neither hangs. Tolerance: a
// straight line is not quite a cubic in the gap; that bends by 1e-4 of the moment that the form asks for.
TEST(Contact, WithNothingPullingTheRodIsStraightOrSpringsAway) {
    for (const double curvature : {-0.8, -0.1, 0.0, 0.1, 0.8, 2.0}) {
        SCOPED_TRACE(curvature);
        for (const bool weak : {false, true}) {
            const Problem problem =
                roundForm(curvature, 1.5, weak ? std::vector<Hold>{{0.7, 0.03, 0, {}}} : std::vector<Hold>{});
            const Contact contact = solve(problem);
            for (const double gap : contact.gap_m) ASSERT_TRUE(std::isfinite(gap));
            if (contact.outcome == Outcome::notConverged) {
                EXPECT_TRUE(contact.springsAway);
                continue;
            }
            for (double s = 0.1; s < 1.45; s += 0.1)
                EXPECT_NEAR(at(problem, contact, s).moment_N_m, 0, 1e-6 + 1e-2 * std::abs(curvature));
        }
    }
}

TEST(Contact, ARodThatGrewToTheFormLiesOnItWithoutAPull) {
    Problem problem = roundForm(0.8, 1.5, {{0.1, 0.03, 500, {}}, {1.4, 0.03, 500, {}}});
    problem.rod.natural_per_m = problem.rod.curvature_per_m;
    const Contact contact = solve(problem);
    EXPECT_EQ(contact.outcome, Outcome::settled);
    EXPECT_LT(largest(contact.gap_m), 1e-9);
    for (const HoldForce& hold : contact.holds) EXPECT_LT(hold.pull_N, 1e-6);
}

TEST(Contact, AStrapsLoadPressesWhereTheFormIsRound) {
    Problem problem = roundForm(0.5, 1.5, {{0.1, 0.03, 500, {}}, {1.4, 0.03, 500, {}}});
    const Contact without = solve(problem);
    problem.rod.load_N_m.assign(problem.rod.load_N_m.size(), 200);
    const Contact with = solve(problem);
    EXPECT_EQ(with.outcome, Outcome::settled);
    EXPECT_LT(at(problem, with, 0.75).gap_m, at(problem, without, 0.75).gap_m);
    EXPECT_GT(at(problem, with, 0.75).pressure_N_m, 150);
}

TEST(Contact, TheEnergyIsLeastAtTheStateFound) {
    const Problem problem = RandomRods(31).problem();
    const Contact contact = solve(problem);
    ASSERT_EQ(contact.outcome, Outcome::settled);
    std::vector<double> pulls;
    for (const HoldForce& hold : contact.holds) pulls.push_back(hold.pull_N);
    const double least = energyOf(problem, contact.gap_m, contact.slope, pulls);
    RandomRods random(5);
    for (int tries = 0; tries < 20; ++tries) {
        // A smooth bump somewhere; holds that close are at their gap, where a change does no work to first order.
        const double middle = random.between(0, contact.nodes_m.back());
        const double height = random.between(-1e-6, 1e-6);
        std::vector<double> gap = contact.gap_m;
        std::vector<double> slope = contact.slope;
        for (std::size_t n = 0; n < gap.size(); ++n) {
            const double z = (contact.nodes_m[n] - middle) / 0.05;
            gap[n] += height * std::exp(-z * z);
            slope[n] += height * std::exp(-z * z) * -2 * z / 0.05;
        }
        EXPECT_GT(energyOf(problem, gap, slope, pulls), least);
    }
}

TEST(Contact, TwiceTheSameProblemGivesTheSameBits) {
    const Problem problem = RandomRods(77).problem();
    const Contact first = solve(problem);
    const Contact second = solve(problem);
    EXPECT_EQ(first.gap_m, second.gap_m);
    EXPECT_EQ(first.slope, second.slope);
}

void expectRefused(const Problem& problem) {
    const units::InputError error = made::refusal([&] { solve(problem); });
    EXPECT_EQ(error.path(), "holding");
    EXPECT_FALSE(error.accepted().empty());
}

TEST(Contact, ImpossibleProblemsAreRefused) {
    constexpr double notANumber = std::numeric_limits<double>::quiet_NaN();
    const Problem good = roundForm(0.5, 1, {{0.1, 0.03, 500, {}}, {0.9, 0.03, 500, {}}}, 0.02);
    std::vector<Problem> bad(10, good);
    bad[0].rod.curvature_per_m.pop_back();
    bad[1].rod.stiffness_N_m2[3] = 0;
    bad[2].rod.foundation_N_m2[3] = -1;
    bad[3].holds[0].most_N = -1;
    bad[4].holds[0].most_N = notANumber;
    bad[5].holds[0].at_m = 1.5;
    bad[6].holds[0].pull_N = -3;
    bad[7].rod.load_N_m[0] = notANumber;
    bad[8].rod.mesh.nodes_m[2] = bad[8].rod.mesh.nodes_m[1];
    bad[9].holds[1].pad_m = -0.1;
    for (std::size_t i = 0; i < bad.size(); ++i) {
        SCOPED_TRACE(i);
        expectRefused(bad[i]);
    }
}

}  // namespace contact_test
}  // namespace fayline::contact
