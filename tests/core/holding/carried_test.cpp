#include <gtest/gtest.h>

#include <cmath>

#include "core/holding/closing.hpp"
#include "tests/core/holding/made_work.hpp"

namespace fayline::holding {
namespace carried_test {

using made::Work;

constexpr double modulus_Pa = 11e9;
constexpr double thickness_m = 0.006;
constexpr double width_m = 0.05;
constexpr int count = 4;
constexpr double length_m = 2.4;

// Four even strips of white oak on a straight line, 2.4 m long as bent.
Work evenStrips() {
    Work work = made::workOn([](double) { return 0.0; }, 2.0, count, {});
    work.piece.stack.strips[0].thickness_m = thickness_m;
    work.piece.stack.strips[0].moe_Pa = modulus_Pa;
    work.piece.stack.widths = {{.at_m = 0, .width_m = width_m}};
    work.piece.stack.ripAllowance_m = 0;
    work.piece.stack.glueLine_m = 0.00015;
    work.piece.stack.runsPastStart_m = 0.25;
    work.piece.stack.runsPastEnd_m = 0.15;
    return work;
}

double stiffness() {
    return count * modulus_Pa * width_m * std::pow(thickness_m, 3) / 12;
}

// Source: Wood Handbook eq. 4-12 (P*): 1120 kg/m3 times the specific gravity at 12 %.
double weight_N_m() {
    const wood::Species* oak = wood::findSpecies(wood::builtInSpecies(), "oak_white");
    return 9.80665 * 1120 * oak->sg.value * count * width_m * thickness_m;
}

TEST(Carried, WeighsWhatTheWoodWeighs) {
    EXPECT_NEAR(carriedAt(evenStrips(), 2).weight_N, weight_N_m() * length_m, 1e-9);
    EXPECT_NEAR(carriedAt(evenStrips(), 2).length_m, length_m, 1e-9);
}

// Source: beam theory (D): carried at its two ends an even beam sags 5 w L^4 / (384 B); its moment is w L^2 / 8.
TEST(Carried, AtItsTwoEndsAnEvenBeamSagsFiveOverThreeHundredAndEightyFour) {
    const Carried carried = carriedOn(evenStrips(), {0, length_m});
    const double sag = 5 * weight_N_m() * std::pow(length_m, 4) / 384 / stiffness();
    EXPECT_NEAR(carried.sag_m, sag, 1e-6 * sag);
    EXPECT_NEAR(carried.sagAt_m, length_m / 2, 0.006);
    const double strain = weight_N_m() * length_m * length_m / 8 / stiffness() * thickness_m / 2;
    EXPECT_NEAR(carried.strain, strain, 1e-4 * strain);  // told at places 10 mm apart
}

// Source: beam theory (D): with an overhang of 1/sqrt(6) of the spacing b the moment over every point is w b^2 / 12, as
// in a beam built in at both ends: it stands level there, sags w b^4 / (384 B) between and w b^4 / (288 B) at the ends.
TEST(Carried, EvenlySpreadPointsStandLevel) {
    for (const int points : {2, 3, 5}) {
        const Carried carried = carriedAt(evenStrips(), points);
        const double spacing = length_m / (points - 1 + 2 / std::sqrt(6.0));
        const double load = weight_N_m() * std::pow(spacing, 4) / stiffness();
        EXPECT_EQ(carried.points, points);
        ASSERT_EQ(carried.places_m.size(), static_cast<std::size_t>(points));
        EXPECT_NEAR(carried.places_m[0], spacing / std::sqrt(6.0), 1e-9);
        EXPECT_NEAR(carried.sag_m, load / 288, 1e-6 * load);
        const double strain = weight_N_m() * spacing * spacing / 12 / stiffness() * thickness_m / 2;
        EXPECT_NEAR(carried.strain, strain, 1e-4 * strain);
    }
}

// Source: beam theory (D): balanced on its middle each half is a beam built in there, w (L/2)^4 / (8 B).
TEST(Carried, BalancedOnOnePointBothEndsHang) {
    const Carried carried = carriedAt(evenStrips(), 1);
    const double sag = weight_N_m() * std::pow(length_m / 2, 4) / 8 / stiffness();
    EXPECT_NEAR(carried.sag_m, sag, 1e-6 * sag);
    EXPECT_NEAR(carriedAt(evenStrips(), 0).sag_m, sag, 1e-6 * sag);
}

// Source: the best known places for two points (D): overhangs of 0.2232 L give the least sag an even beam can have.
TEST(Carried, NoOtherPlacesForTwoPointsAreMuchBetter) {
    const Work work = evenStrips();
    const double best = carriedOn(work, {0.2232 * length_m, (1 - 0.2232) * length_m}).sag_m;
    EXPECT_LE(best, carriedAt(work, 2).sag_m);
    EXPECT_LT(carriedAt(work, 2).sag_m, 1.4 * best);
}

TEST(Carried, MoreHandsLessSag) {
    const Work work = made::workOn(made::stemCurvature, 1.8, 9, {});
    double last = 1;
    for (const int points : {1, 2, 3, 4, 6}) {
        const Carried carried = carriedAt(work, points);
        EXPECT_LT(carried.sag_m, last) << points;
        EXPECT_GT(carried.sag_m, 0);
        last = carried.sag_m;
    }
}

TEST(Carried, AScarfedStackWeighsLessAndIsAsLong) {
    Work work = evenStrips();
    const Carried whole = carriedAt(work, 2);
    work.piece.stack.scarfedEnd = model::Scarf{.slope = 12};
    const Carried scarfed = carriedAt(work, 2);
    // Strips 2 to 4 end 12 times 6.15, 12.3 and 18.45 mm short.
    const double less = weight_N_m() / count * 12 * (0.00615 + 0.0123 + 0.01845);
    EXPECT_NEAR(whole.weight_N - scarfed.weight_N, less, 1e-9);
    EXPECT_NEAR(scarfed.length_m, whole.length_m, 1e-12);
}

}  // namespace carried_test
}  // namespace fayline::holding
