#include "core/plan/study/choices_candidates.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "core/units/units.hpp"

namespace fayline::plan {
namespace choices_candidates_test {

model::Strips strips(int count, double thickness_m) {
    model::Strips one;
    one.count = count;
    one.thickness_m = thickness_m;
    return one;
}

// Seven strips of 1/4 in and two sacrificial ones, as the stem of the invented boat has.
model::Stack stemStack() {
    model::Stack stack;
    stack.strips = {strips(7, 0.00635), strips(2, 0.00635)};
    stack.strips[1].sacrificial = true;
    return stack;
}

constexpr auto inches = units::LengthNotation::feetInchesEighths;
constexpr auto millimetres = units::LengthNotation::millimetres;

std::vector<Candidate> candidates(const model::Stack& stack, units::LengthNotation notation, bool thinOnForm = true,
                                  double most_m = 1) {
    return candidatesFor(
        {stack, notation, thinOnForm, [most_m](const model::Strips&, double t) { return t <= most_m; }, 0});
}

int countOf(const Candidate& candidate) {
    int count = 0;
    for (const model::Strips& one : candidate.strips) count += one.count;
    return count;
}

double depthOf(const Candidate& candidate, double glueLine_m) {
    double depth_m = (countOf(candidate) - 1) * glueLine_m;
    for (const model::Strips& one : candidate.strips) depth_m += one.count * one.thickness_m;
    return depth_m;
}

TEST(Candidates, OfTheStemHaveTwelveThicknessesAndTwentyMixedStacks) {
    std::set<long> thicknesses;
    int mixed = 0;
    for (const Candidate& one : candidates(stemStack(), inches)) {
        if (!one.mixed) thicknesses.insert(std::lround(one.thickness_m * 1e6));
        mixed += one.mixed ? 1 : 0;
    }
    EXPECT_GE(thicknesses.size(), 12u);
    EXPECT_GE(mixed, 20);
    EXPECT_LE(mixed, mostMixed);
}

TEST(Candidates, AreAsDeepAsThePieceOrALittleOver) {
    const model::Stack stack = stemStack();
    const double glue = stack.glueLine_m;
    const double wanted_m = 7 * 0.00635 + 6 * glue;
    const double kept_m = 2 * 0.00635 + 2 * glue;
    for (const auto notation : {inches, millimetres}) {
        for (const Candidate& one : candidates(stack, notation)) {
            const double depth_m = depthOf(one, glue) - kept_m;
            EXPECT_GE(depth_m, wanted_m - depthSlack_m) << one.thickness_m;
            EXPECT_LE(depth_m, wanted_m * (1 + mostOverDepth)) << one.thickness_m;
            EXPECT_LE(countOf(one), mostStripsHandled);
        }
    }
}

// Fewer strips of the same would not reach the depth.
TEST(Candidates, AlikeOnesAreTheFewestThatReachTheDepth) {
    const model::Stack stack = stemStack();
    const double wanted_m = 7 * 0.00635 + 6 * stack.glueLine_m;
    for (const Candidate& one : candidates(stack, millimetres)) {
        if (one.mixed || one.asItIs) continue;
        const int fewer = one.strips[0].count - 1;
        EXPECT_LT(fewer * one.thickness_m + (fewer - 1) * stack.glueLine_m, wanted_m - depthSlack_m);
    }
}

// The count is a number of strips long before it would no longer be a whole number of the machine's.
TEST(Candidates, OfAHugeStackAreNone) {
    model::Stack stack = stemStack();
    stack.strips = {strips(2, 1e9)};
    EXPECT_EQ(candidates(stack, inches).size(), 1u);  // as it is
    EXPECT_EQ(candidates(stack, millimetres).size(), 1u);
}

TEST(Candidates, OneDividesTheDepthEvenly) {
    const model::Stack stack = stemStack();
    const double wanted_m = 7 * 0.00635 + 6 * stack.glueLine_m;
    for (int n = 2; n <= 12; ++n) {
        bool found = false;
        for (const Candidate& one : candidates(stack, millimetres)) {
            if (one.mixed || one.strips[0].count != n) continue;
            const double over_m = n * one.thickness_m + (n - 1) * stack.glueLine_m - wanted_m;
            found = found || over_m <= n * 0.0001 + 1e-9;
        }
        EXPECT_TRUE(found) << n;
    }
}

TEST(Candidates, AreCutInThirtySecondsOrHalfMillimetres) {
    const auto holds = [](const std::vector<Candidate>& all, double thickness_m) {
        return std::ranges::any_of(all, [thickness_m](const Candidate& one) {
            return !one.mixed && std::abs(one.thickness_m - thickness_m) < 1e-9;
        });
    };
    const std::vector<Candidate> imperial = candidates(stemStack(), inches);
    for (const int of32 : {2, 3, 4, 5, 6, 7, 8}) EXPECT_TRUE(holds(imperial, of32 * units::inch_m / 32)) << of32;
    const std::vector<Candidate> metric = candidates(stemStack(), millimetres);
    for (const double mm : {1.5, 2.0, 2.5, 3.0, 3.5, 4.0}) EXPECT_TRUE(holds(metric, mm / 1000)) << mm;
}

TEST(Candidates, KeepSacrificialStripsWoodAndMeasuredValues) {
    model::Stack stack = stemStack();
    stack.strips[0].moe_Pa = 11e9;
    stack.strips[0].species = "ash_white";
    for (const Candidate& one : candidates(stack, inches)) {
        EXPECT_EQ(one.strips.back(), stack.strips[1]);
        for (std::size_t i = 0; i + 1 < one.strips.size(); ++i) {
            EXPECT_EQ(one.strips[i].species, "ash_white");
            EXPECT_EQ(one.strips[i].moe_Pa, stack.strips[0].moe_Pa);
            EXPECT_FALSE(one.strips[i].sacrificial);
        }
    }
}

TEST(Candidates, PutThinStripsWhereTheBendIsTightest) {
    for (const bool onForm : {true, false}) {
        int mixed = 0;
        for (const Candidate& one : candidates(stemStack(), inches, onForm)) {
            if (!one.mixed) continue;
            ++mixed;
            EXPECT_EQ(one.strips[0].thickness_m < one.strips[1].thickness_m, onForm);
        }
        EXPECT_GT(mixed, 0);
    }
}

TEST(Candidates, OfSeveralWoodsKeepEachWoodItsDepth) {
    model::Stack stack;
    stack.strips = {strips(4, 0.006), strips(4, 0.006)};
    stack.strips[1].species = "ash_white";
    for (const Candidate& one : candidates(stack, millimetres)) {
        double oak_m = 0;
        double ash_m = 0;
        bool ashBegun = false;
        for (const model::Strips& s : one.strips) {
            (s.species == "ash_white" ? ash_m : oak_m) += s.count * s.thickness_m;
            ashBegun = ashBegun || s.species == "ash_white";
            EXPECT_EQ(ashBegun, s.species == "ash_white");
        }
        EXPECT_NEAR(oak_m, 0.024, 0.006);
        EXPECT_NEAR(ash_m, 0.024, 0.006);
    }
}

TEST(Candidates, KeepASingleFacing) {
    model::Stack stack;
    stack.strips = {strips(6, 0.006), strips(1, 0.004)};
    stack.strips[1].species = "ash_white";
    for (const Candidate& one : candidates(stack, millimetres)) EXPECT_EQ(one.strips.back(), stack.strips[1]);
}

// Four of eight strips of 6 mm cure first: the first gluing is 24 mm and three glue lines deep, whatever the strips.
TEST(Candidates, EndGluingsAtTheSameDepth) {
    model::Stack stack;
    stack.strips = {strips(8, 0.006)};
    stack.gluings = {4};
    int seen = 0;
    for (const Candidate& one : candidates(stack, millimetres)) {
        ASSERT_EQ(one.gluings.size(), 1u);
        double depth_m = -stack.glueLine_m;
        int place = 0;
        for (const model::Strips& s : one.strips) {
            for (int i = 0; i < s.count && place < one.gluings[0]; ++i, ++place) {
                depth_m += s.thickness_m + stack.glueLine_m;
            }
        }
        EXPECT_NEAR(depth_m, 4 * 0.006 + 3 * stack.glueLine_m, 0.0049) << one.thickness_m;
        ++seen;
    }
    EXPECT_GT(seen, 5);
}

TEST(Candidates, KeepADryFaceBetweenTheSameHalves) {
    model::Stack stack;
    stack.strips = {strips(4, 0.006), strips(4, 0.006)};
    stack.strips[0].dryFace = true;
    for (const Candidate& one : candidates(stack, millimetres)) {
        double inner_m = 0;
        int dry = 0;
        for (const model::Strips& s : one.strips) {
            if (dry == 0) inner_m += s.count * s.thickness_m;
            dry += s.dryFace ? 1 : 0;
        }
        EXPECT_EQ(dry, 1);
        EXPECT_NEAR(inner_m, 0.024, 0.006);
    }
}

// Strips of 6.2 mm that taper to 4.2 mm: others taper as much, so the far end is as deep or a little over.
TEST(Candidates, TaperAsTheStackDoes) {
    model::Stack stack;
    stack.strips = {strips(6, 0.0062)};
    stack.strips[0].tapersTo_m = 0.0042;
    for (const Candidate& one : candidates(stack, millimetres)) {
        double end_m = 0;
        for (const model::Strips& s : one.strips) {
            ASSERT_TRUE(s.tapersTo_m);
            EXPECT_NEAR(*s.tapersTo_m / s.thickness_m, 4.2 / 6.2, 0.0001 / s.thickness_m);
            end_m += s.count * *s.tapersTo_m;
        }
        EXPECT_GT(end_m + (countOf(one) - 6) * stack.glueLine_m, 6 * 0.0042 - depthSlack_m);
    }
}

TEST(Candidates, AreNoneThatTheStockDoesNotGive) {
    for (const Candidate& one : candidates(stemStack(), inches, true, 0.005)) {
        if (one.asItIs) continue;
        EXPECT_LE(one.thickness_m, 0.005);
    }
}

TEST(Candidates, HoldTheStackAsItIsOnce) {
    model::Stack odd = stemStack();
    odd.strips.insert(odd.strips.begin(), strips(1, 0.0043));
    for (const model::Stack& stack : {stemStack(), odd}) {
        int asItIs = 0;
        for (const Candidate& one : candidates(stack, inches)) {
            if (!one.asItIs) continue;
            ++asItIs;
            EXPECT_EQ(one.strips, stack.strips);
            EXPECT_EQ(one.mixed, stack.strips.size() == 3);
        }
        EXPECT_EQ(asItIs, 1);
    }
}

TEST(Candidates, OfASingleThinStripAreThatStripAlone) {
    model::Stack stack;
    stack.strips = {strips(1, 0.002)};
    const std::vector<Candidate> all = candidates(stack, millimetres);
    ASSERT_EQ(all.size(), 1u);
    EXPECT_TRUE(all[0].asItIs);
}

TEST(Candidates, OfAVeryDeepStackStayFewEnough) {
    model::Stack stack;
    stack.strips = {strips(50, 0.03)};
    EXPECT_LE(candidates(stack, millimetres).size(), std::size_t(mostThicknesses + 11 + mostMixed + 1));
}

}  // namespace choices_candidates_test
}  // namespace fayline::plan
