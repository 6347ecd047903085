// Strain and bending limits of strips against published rows and worked examples.
#include <gtest/gtest.h>

#include <array>
#include <utility>

#include "core/laminate/limits.hpp"
#include "core/laminate/stack.hpp"
#include "tests/core/laminate/made_lines.hpp"

namespace fayline::laminate {
namespace strain_test {

// Source: worked by hand (D): E = 12 000 MPa, t = 6 mm, R = 1000 mm at the strip's own middle: strain 0.0030, and with
// that modulus a stress of 36 MPa. Tolerance: rounding and the made line.
TEST(PublishedStrain, SixMillimetresOnAMetreIsThreePerMille) {
    model::Stack stack;
    stack.strips = {model::Strips{.count = 1, .thickness_m = 0.006}};
    stack.strips[0].moe_Pa = 12e9;
    const StackPlan plan =
        planStack(stack, model::Describes::middle, model::Side::left, made::arc(-1.0, 1.0), wood::builtInSpecies());
    EXPECT_NEAR(plan.strips[0].strain, 0.0030, 1e-10);
    EXPECT_NEAR(plan.strips[0].strain * plan.strips[0].modulus_Pa, 36e6, 1);
}

// Source: layer i of a stack on a form of radius R has its own centre-line radius R + (i - 1/2) t + (i - 1) g and the
// strain t over twice that (D). R = 600, t = 5, g = 0.2 mm: worked to six figures for layers 1, 4 and 8.
TEST(PublishedStrain, EachLayerIsStrainedByItsOwnCentreLine) {
    model::Stack stack;
    stack.strips = {model::Strips{.count = 8, .thickness_m = 0.005}};
    stack.glueLine_m = 0.0002;
    const StackPlan plan =
        planStack(stack, model::Describes::innerFace, model::Side::right, made::arc(0.6, 1.0), wood::builtInSpecies());
    EXPECT_NEAR(plan.strips[0].leastRadius_m, 0.6025, 1e-8);
    EXPECT_NEAR(plan.strips[0].strain, 0.00414938, 5e-9);
    EXPECT_NEAR(plan.strips[3].leastRadius_m, 0.6181, 1e-8);
    EXPECT_NEAR(plan.strips[3].strain, 0.00404465, 5e-9);
    EXPECT_NEAR(plan.strips[7].leastRadius_m, 0.6389, 1e-8);
    EXPECT_NEAR(plan.strips[7].strain, 0.00391298, 5e-9);
}

// Source: the NDS formula (P*), its rows recomputed (D) to four decimals.
TEST(PublishedStrain, CurvatureFactorRows) {
    const std::array<std::pair<double, double>, 7> rows{
        {{100, 0.8000}, {125, 0.8720}, {150, 0.9111}, {200, 0.9500}, {250, 0.9680}, {300, 0.9778}, {400, 0.9875}}};
    for (const auto& [ratio, factor] : rows) EXPECT_NEAR(curvatureFactor(ratio), factor, 5e-5) << ratio;
}

// Source: a public calculator page's list for R = 90 (P), printed to three decimals; its page cuts rather than rounds
// in none of the rows. Tolerance: half of the last printed digit.
TEST(PublishedStrain, CurvatureFactorOfACalculatorPage) {
    const std::array<std::pair<double, double>, 6> rows{
        {{0.5, 0.938}, {0.7, 0.879}, {0.9, 0.800}, {1.0, 0.753}, {1.2, 0.644}, {1.4, 0.516}}};
    for (const auto& [t, factor] : rows) EXPECT_NEAR(curvatureFactor(90 / t), factor, 5e-4) << t;
}

// Source: EN 14080:2013, formula from memory (M); rows for a radius of 5000 mm worked from it (D), printed to 0.1 mm.
TEST(PublishedStrain, ThickestLaminationOnFiveMetres) {
    const std::array<std::pair<double, double>, 5> rows{{{24, 26.0}, {28, 27.0}, {30, 27.5}, {36, 29.0}, {40, 30.0}}};
    for (const auto& [strength_MPa, thickest_mm] : rows) {
        EXPECT_NEAR(1000 * thickestLamination(5.0, strength_MPa * 1e6), thickest_mm, 1e-9) << strength_MPa;
    }
}

// Source: least ratios of the NDS (M): 100 for hardwood and southern pine, 125 for other softwood.
TEST(PublishedStrain, LeastRatiosOfGluedTimber) {
    wood::Species oak;
    oak.hardwood = true;
    wood::Species cedar;
    cedar.hardwood = false;
    wood::Species longleaf = cedar;
    longleaf.southernPine = true;
    EXPECT_EQ(leastRatio(oak), 100);
    EXPECT_EQ(leastRatio(longleaf), 100);
    EXPECT_EQ(leastRatio(cedar), 125);
}

}  // namespace strain_test
}  // namespace fayline::laminate
