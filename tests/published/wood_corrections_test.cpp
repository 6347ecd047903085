// Corrections of strength for slope of grain and moisture against the published tables and examples.
// Source: Wood Handbook, FPL-GTR-190, Tables 5-12 to 5-14 and eq. 5-3, all from memory (M).
#include <gtest/gtest.h>

#include "core/wood/bending.hpp"

namespace fayline::wood {
namespace wood_corrections_test {

// Wood Handbook Table 5-12 (M): percent of the straight-grained value. Tolerance: rounding of the machine only.
TEST(PublishedGrainSlope, EveryRowOfTheTable) {
    struct Row {
        double oneIn;
        double rupture_pct;
        double modulus_pct;
    };
    for (const Row& row : {Row{25, 96, 97}, Row{20, 93, 96}, Row{15, 89, 94}, Row{10, 81, 89}, Row{5, 55, 67}}) {
        EXPECT_NEAR(grainFactorRupture(1 / row.oneIn) * 100, row.rupture_pct, 1e-9) << row.oneIn;
        EXPECT_NEAR(grainFactorModulus(1 / row.oneIn) * 100, row.modulus_pct, 1e-9) << row.oneIn;
    }
    EXPECT_EQ(grainFactorRupture(0), 1);
    EXPECT_EQ(grainFactorModulus(0), 1);
}

// White ash, 103 MPa at 12 %, 66 MPa green, intersection at 24 %. The handbook's own example to eq. 5-3 gives 119.5 MPa
// at 8 % (M); the further digits and the values at 6 and 16 % are computed apart from this code (D). Tolerance: half of
// the last digit given.
TEST(PublishedMoisture, WhiteAshOfTheHandbooksExample) {
    EXPECT_NEAR(atMoisture(103, 66, 0.24, 0.08), 119.473, 0.0005);
    EXPECT_NEAR(atMoisture(103, 66, 0.24, 0.06), 128.67, 0.005);
    EXPECT_NEAR(atMoisture(103, 66, 0.24, 0.16), 88.80, 0.005);
    EXPECT_NEAR(atMoisture(103, 66, 0.24, 0.12), 103, 1e-9);
    EXPECT_NEAR(atMoisture(103, 66, 0.24, 0.24), 66, 1e-9);
    EXPECT_NEAR(atMoisture(103, 66, 0.24, 0.30), 66, 1e-9);
}

// Wood Handbook Table 5-14 (M), middle trend at about 20 C: bending strength +30 % at 6 % moisture and -25 % at 20 %,
// modulus along the grain +9 % and -13 %.
TEST(PublishedMoisture, MiddleTrendWhereNoGreenValueIsKnown) {
    const Species& oak = *findSpecies(builtInSpecies(), "oak_white");
    ASSERT_FALSE(oak.greenMor_Pa);
    EXPECT_NEAR(moistureFactorRupture(oak, 0.06), 1.30, 1e-12);
    EXPECT_NEAR(moistureFactorRupture(oak, 0.20), 0.75, 1e-12);
    EXPECT_NEAR(moistureFactorModulus(oak, 0.06), 1.09, 1e-12);
    EXPECT_NEAR(moistureFactorModulus(oak, 0.20), 0.87, 1e-12);
}

// Wood Handbook Table 5-6 (M): coefficients of variation 16 % of rupture, 22 % of the modulus. Published correlations
// of the two: 0.8 (JCSS Probabilistic Model Code, P), 0.75 and 0.81 (Hein and Brancheriau 2018, R^2 of 0.57 and 0.65,
// P). What is taken errs toward more strips that break: by at most a quarter in the scatter.
TEST(PublishedScatter, StrengthGoesWithStiffnessNoMoreThanWasMeasured) {
    EXPECT_EQ(ruptureScatter, 0.16);
    EXPECT_EQ(modulusScatter, 0.22);
    for (const double published : {0.8, std::sqrt(0.57), std::sqrt(0.65)}) {
        EXPECT_LE(strengthWithStiffness, published);
        EXPECT_GE(breakingStrainScatter(), breakingStrainScatter(published));
        EXPECT_LT(breakingStrainScatter(), 1.25 * breakingStrainScatter(published));
    }
}

}  // namespace wood_corrections_test
}  // namespace fayline::wood
