#include "core/wood/bending.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace fayline::wood {
namespace {

const Species& wood(const char* id) {
    return *findSpecies(builtInSpecies(), id);
}

TEST(GrainFactor, FallsSteadilyAndStaysBeyondTheLastRow) {
    double rupture = 1;
    double modulus = 1;
    for (double slope = 0.001; slope < 0.2; slope += 0.001) {
        ASSERT_LT(grainFactorRupture(slope), rupture);
        ASSERT_LT(grainFactorModulus(slope), modulus);
        rupture = grainFactorRupture(slope);
        modulus = grainFactorModulus(slope);
        ASSERT_LT(rupture, modulus);
    }
    EXPECT_EQ(grainFactorRupture(0), 1);
    EXPECT_EQ(grainFactorRupture(0.5), 0.55);
    EXPECT_EQ(grainFactorModulus(0.5), 0.67);
    // Half way between 1 in 10 and 1 in 5.
    EXPECT_NEAR(grainFactorRupture(0.15), 0.68, 1e-12);
    EXPECT_NEAR(grainFactorModulus(0.15), 0.78, 1e-12);
}

TEST(MoistureFactor, IsOneAtTwelvePercentAndLevelAboveTheIntersection) {
    for (const Species& one : builtInSpecies()) {
        EXPECT_NEAR(moistureFactorRupture(one, 0.12), 1, 1e-12) << one.id;
        EXPECT_NEAR(moistureFactorModulus(one, 0.12), 1, 1e-12) << one.id;
        const double intersection = one.moistureOfIntersection.value;
        EXPECT_EQ(moistureFactorRupture(one, intersection), moistureFactorRupture(one, 0.30)) << one.id;
        EXPECT_EQ(moistureFactorModulus(one, intersection), moistureFactorModulus(one, 0.30)) << one.id;
        double before = 2;
        for (double moisture = 0.04; moisture <= intersection; moisture += 0.01) {
            EXPECT_LT(moistureFactorRupture(one, moisture), before) << one.id;
            before = moistureFactorRupture(one, moisture);
            EXPECT_GT(before, 0) << one.id;
        }
    }
}

TEST(MoistureFactor, AtTheIntersectionTheGreenValueIsReached) {
    const Species& ash = wood("ash_white");
    ASSERT_TRUE(ash.greenMor_Pa);
    EXPECT_NEAR(moistureFactorRupture(ash, 0.24) * ash.mor_Pa.value, ash.greenMor_Pa->value, 1);
}

TEST(Bending, AtTwelvePercentAndStraightGrainIsTheTableRaisedForShear) {
    const Species& oak = wood("oak_white");
    const Bending dry = bending(oak, 0.12, 0, std::nullopt);
    EXPECT_DOUBLE_EQ(dry.rupture_Pa, oak.mor_Pa.value);
    EXPECT_DOUBLE_EQ(dry.modulus_Pa, 1.10 * oak.moe_Pa.value);
    EXPECT_DOUBLE_EQ(dry.breakingStrain, dry.rupture_Pa / dry.modulus_Pa);
    EXPECT_EQ(dry.ruptureSource.text, oak.mor_Pa.source.text);
    EXPECT_EQ(dry.ruptureSource.mark, measure::Mark::transcribed);
    EXPECT_EQ(dry.modulusSource.mark, measure::Mark::transcribed);
}

TEST(Bending, CorrectionsMultiplyAndAreNamedWithTheLeastSureMark) {
    const Species& oak = wood("oak_white");
    const Bending wet = bending(oak, 0.20, 0.10, std::nullopt);
    EXPECT_NEAR(wet.rupture_Pa, oak.mor_Pa.value * 0.75 * 0.81, 1);
    EXPECT_NEAR(wet.modulus_Pa, oak.moe_Pa.value * 1.10 * 0.87 * 0.89, 1);
    EXPECT_EQ(wet.ruptureSource.mark, measure::Mark::fromMemory);
    EXPECT_NE(wet.ruptureSource.text.find("Table 5-14"), std::string::npos);
    EXPECT_NE(wet.ruptureSource.text.find("Table 5-12"), std::string::npos);
    EXPECT_NE(wet.modulusSource.text.find("footnote c"), std::string::npos);

    const Bending ash = bending(wood("ash_white"), 0.08, 0, std::nullopt);
    EXPECT_NE(ash.ruptureSource.text.find("eq. 5-3"), std::string::npos);
    EXPECT_EQ(ash.ruptureSource.text.find("Table 5-12"), std::string::npos);
    EXPECT_NE(ash.modulusSource.text.find("Table 5-14"), std::string::npos);
}

TEST(Bending, MeasuredModulusIsUsedAsItIs) {
    const Bending measured = bending(wood("oak_white"), 0.20, 0.10, 9e9);
    EXPECT_EQ(measured.modulus_Pa, 9e9);
    EXPECT_EQ(measured.breakingStrain, measured.rupture_Pa / 9e9);
    EXPECT_EQ(measured.modulusSource.text, "measured by the user");
}

TEST(ChanceOfBreaking, IsHalfAtTheMeanAndKnownAtTheFifthPercentile) {
    EXPECT_EQ(chanceOfBreaking(0, 0.009), 0);
    EXPECT_EQ(chanceOfBreaking(-0.01, 0.009), 0);
    EXPECT_DOUBLE_EQ(chanceOfBreaking(0.009, 0.009), 0.5);
    // 1 - 1.645 x 0.16 = 0.737 of the mean: one in twenty is weaker (normal distribution).
    EXPECT_NEAR(chanceOfBreaking(0.009 * (1 - 1.6448536 * 0.16), 0.009), 0.05, 1e-8);
    EXPECT_NEAR(chanceOfBreaking(0.09, 0.009), 1, 1e-15);
    EXPECT_LE(chanceOfBreaking(0.09, 0.009), 1);
}

// Drawn apart from the code: strips whose breaking strain is normal are bent and counted. Tolerance: four standard
// errors of a share out of 400 000.
TEST(ChanceOfBreaking, AgreesWithStripsDrawnAtRandom) {
    constexpr int strips = 400000;
    constexpr double mean = 0.0085;
    std::mt19937_64 random(20);
    std::normal_distribution<double> breakingStrain(mean, 0.16 * mean);
    std::vector<double> drawn(strips);
    for (double& strain : drawn) strain = breakingStrain(random);
    for (const double share : {0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.2}) {
        int broken = 0;
        for (const double strain : drawn) broken += strain < share * mean ? 1 : 0;
        const double expected = static_cast<double>(broken) / strips;
        const double error = std::sqrt(std::max(expected, 1e-5) * (1 - expected) / strips);
        EXPECT_NEAR(chanceOfBreaking(share * mean, mean), expected, 4 * error) << share;
    }
}

// P(at most `most` of `count` break) by the logarithms of the binomial terms, another way than the code's.
double atMostBreak(int most, int count, double chance) {
    double sum = 0;
    for (int k = 0; k <= most; ++k) {
        const double logarithm = std::lgamma(count + 1.0) - std::lgamma(k + 1.0) - std::lgamma(count - k + 1.0) +
                                 k * std::log(chance) + (count - k) * std::log1p(-chance);
        sum += std::exp(logarithm);
    }
    return sum;
}

TEST(SparesNeeded, IsTheExactBinomialWhereAllStripsAreAlike) {
    for (const int strips : {1, 2, 8, 20, 60}) {
        for (const double chance : {0.001, 0.01, 0.05, 0.1, 0.2, 0.3, 0.33}) {
            for (const double confidence : {0.5, 0.9, 0.95, 0.99}) {
                const std::vector<double> chances(static_cast<std::size_t>(strips), chance);
                const int spares = sparesNeeded(chances, confidence);
                ASSERT_GE(spares, 0);
                EXPECT_GE(atMostBreak(spares, strips + spares, chance), confidence - 1e-12)
                    << strips << " strips, chance " << chance;
                if (spares == 0) continue;
                EXPECT_LT(atMostBreak(spares - 1, strips + spares - 1, chance), confidence)
                    << strips << " strips, chance " << chance;
            }
        }
    }
}

// Every way of breaking is counted one by one, another way than the code's running sum.
TEST(SparesNeeded, IsExactForStripsOfUnequalChance) {
    const std::vector<double> chances{0.40, 0.02, 0.15, 0.30, 0.08};
    const double mean = 0.19;
    const auto enough = [&](int spares) {
        std::vector<double> all = chances;
        for (int i = 0; i < spares; ++i) all.push_back(mean);
        double sum = 0;
        for (unsigned broken = 0; broken < 1U << all.size(); ++broken) {
            double chance = 1;
            int count = 0;
            for (std::size_t i = 0; i < all.size(); ++i) {
                const bool breaks = (broken >> i & 1U) != 0;
                chance *= breaks ? all[i] : 1 - all[i];
                count += breaks ? 1 : 0;
            }
            if (count <= spares) sum += chance;
        }
        return sum;
    };
    for (const double confidence : {0.3, 0.6, 0.9, 0.95, 0.99, 0.999}) {
        const int spares = sparesNeeded(chances, confidence);
        ASSERT_LE(spares, 12);
        EXPECT_GE(enough(spares), confidence);
        if (spares == 0) continue;
        EXPECT_LT(enough(spares - 1), confidence);
    }
}

TEST(SparesNeeded, AChanceExactlyOnTheConfidenceIsEnough) {
    EXPECT_EQ(sparesNeeded({0.1}, 0.9), 0);
    EXPECT_EQ(sparesNeeded({0.05}, 0.95), 0);
    EXPECT_EQ(sparesNeeded({0.0500001}, 0.95), 1);
}

TEST(SparesNeeded, NoneForStripsThatCannotBreakAndNoNumberWhereAThirdWould) {
    EXPECT_EQ(sparesNeeded({}), 0);
    EXPECT_EQ(sparesNeeded({0, 0, 0}), 0);
    EXPECT_EQ(sparesNeeded({0.34, 0.34}), -1);
    EXPECT_EQ(sparesNeeded({1, 0, 0}), -1);
    EXPECT_EQ(sparesNeeded({1, 0, 0, 0}), 3);
    EXPECT_EQ(sparesNeeded(std::vector<double>(8, 0.5)), -1);
}

}  // namespace
}  // namespace fayline::wood
