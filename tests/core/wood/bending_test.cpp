#include "core/wood/bending.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

namespace fayline::wood {
namespace bending_test {

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
    EXPECT_EQ(dry.ruptureSource.mark, units::Mark::transcribed);
    EXPECT_EQ(dry.modulusSource.mark, units::Mark::transcribed);
}

TEST(Bending, CorrectionsMultiplyAndAreNamedWithTheLeastSureMark) {
    const Species& oak = wood("oak_white");
    const Bending wet = bending(oak, 0.20, 0.10, std::nullopt);
    EXPECT_NEAR(wet.rupture_Pa, oak.mor_Pa.value * 0.75 * 0.81, 1);
    EXPECT_NEAR(wet.modulus_Pa, oak.moe_Pa.value * 1.10 * 0.87 * 0.89, 1);
    EXPECT_EQ(wet.ruptureSource.mark, units::Mark::fromMemory);
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

TEST(Bending, MeasuredBreakingStrainIsUsedAsItIs) {
    const Bending measured = bending(wood("oak_white"), 0.20, 0.10, 9e9, 0.011);
    EXPECT_EQ(measured.modulus_Pa, 9e9);
    EXPECT_EQ(measured.breakingStrain, 0.011);
    EXPECT_EQ(measured.breakingSource.text, "measured by the user");
    EXPECT_EQ(measured.breakingSource.mark, units::Mark::commonPractice);
    const Bending table = bending(wood("oak_white"), 0.20, 0.10, std::nullopt);
    EXPECT_EQ(table.breakingSource.text, table.ruptureSource.text);
}

TEST(ChanceOfBreaking, IsHalfAtTheMedianAndKnownAtTheFifthPercentile) {
    EXPECT_EQ(chanceOfBreaking(0, 0.009), 0);
    EXPECT_EQ(chanceOfBreaking(-0.01, 0.009), 0);
    EXPECT_DOUBLE_EQ(chanceOfBreaking(0.009, 0.009), 0.5);
    // ln(1.0256) + ln(1.0484) - 2 ln(1.02464) = 0.023861, worked by hand: 0.15447. One in twenty lies below
    // exp(-1.6448536 x 0.15447) = 0.77563 of the median.
    EXPECT_NEAR(breakingStrainScatter(), 0.15447, 1e-5);
    EXPECT_NEAR(chanceOfBreaking(0.009 * 0.775630, 0.009), 0.05, 1e-5);
    EXPECT_NEAR(chanceOfBreaking(0.09, 0.009), 1, 1e-15);
    EXPECT_LE(chanceOfBreaking(0.09, 0.009), 1);
}

TEST(ChanceOfBreaking, ScattersTheLessTheMoreStrengthGoesWithStiffness) {
    EXPECT_NEAR(breakingStrainScatter(0.8), 0.130, 0.001);
    EXPECT_NEAR(breakingStrainScatter(0.6), 0.176, 0.001);
}

constexpr int million = 1000000;

// A million strips whose strength and stiffness are drawn one by one, log-normal with means 1, scatters of 16 and 22 %
// and a correlation of 0.7 between the two themselves; nothing of the formula for their ratio takes part. Tolerance:
// three standard errors of the share that breaks, and the 1.1 % of strain by which the header says strips are taken
// weaker than they are.
TEST(ChanceOfBreaking, AgreesWithAMillionStripsDrawnAtRandom) {
    const double strength = std::sqrt(std::log(1 + 0.16 * 0.16));
    const double stiffness = std::sqrt(std::log(1 + 0.22 * 0.22));
    const double together = std::log(1 + 0.7 * 0.16 * 0.22) / strength / stiffness;
    std::mt19937_64 random(20);
    std::normal_distribution<double> normal;
    std::vector<double> ratios;
    double product = 0;
    for (int i = 0; i < million; ++i) {
        const double a = normal(random);
        const double b = together * a + std::sqrt(1 - together * together) * normal(random);
        const double mor = std::exp(strength * a - strength * strength / 2);
        const double moe = std::exp(stiffness * b - stiffness * stiffness / 2);
        product += (mor - 1) * (moe - 1) / million;
        ratios.push_back(mor / moe);
    }
    EXPECT_NEAR(product / 0.16 / 0.22, 0.7, 0.01);
    std::ranges::sort(ratios);
    const auto broken = [&](double strain) {
        return static_cast<double>(std::lower_bound(ratios.begin(), ratios.end(), strain) - ratios.begin()) / million;
    };
    constexpr double weaker = 1.0110;
    for (const double share : {0.6, 0.7, 0.8, 0.9, 1.0, 1.2}) {
        const double chance = chanceOfBreaking(share, 1);
        const double error = std::sqrt(chance * (1 - chance) / million);
        EXPECT_NEAR(chance, broken(share * weaker), 3 * error + 0.002 * chance) << share;
        EXPECT_GT(chance, broken(share)) << share;
    }
}

// Wood Handbook (M): 18th root. By hand: 2^(-1/18) = 0.96222.
TEST(SizeFactor, LongStripsAreWeakerAndThinOnesStronger) {
    const double even_m = 28 * 0.0254 / 19;
    EXPECT_NEAR(sizeFactor(0.0508, even_m), 1, 1e-12);
    EXPECT_NEAR(sizeFactor(0.0508, 2 * even_m), 0.96222, 1e-5);
    EXPECT_NEAR(sizeFactor(0.0254, even_m), 1 / 0.96222, 2e-5);
    EXPECT_DOUBLE_EQ(sizeFactor(0.00635, 1.0), sizeFactor(0.0127, 0.5));
}

// ---- Whole numbers of any length, for chances that are fractions: nothing is rounded.

using Whole = std::vector<unsigned>;  // base 10^6, least first
constexpr unsigned base = 1000000;

Whole times(const Whole& a, const Whole& b) {
    std::vector<unsigned long long> sum(a.size() + b.size(), 0);
    for (std::size_t i = 0; i < a.size(); ++i) {
        for (std::size_t j = 0; j < b.size(); ++j) sum[i + j] += 1ULL * a[i] * b[j];
    }
    Whole product(sum.size(), 0);
    unsigned long long carry = 0;
    for (std::size_t i = 0; i < sum.size(); ++i) {
        carry += sum[i];
        product[i] = static_cast<unsigned>(carry % base);
        carry /= base;
    }
    while (!product.empty() && product.back() == 0) product.pop_back();
    return product;
}

Whole plus(const Whole& a, const Whole& b) {
    Whole sum;
    unsigned carry = 0;
    for (std::size_t i = 0; i < std::max(a.size(), b.size()) || carry > 0; ++i) {
        carry += (i < a.size() ? a[i] : 0) + (i < b.size() ? b[i] : 0);
        sum.push_back(carry % base);
        carry /= base;
    }
    return sum;
}

bool atLeast(const Whole& a, const Whole& b) {
    if (a.size() != b.size()) return a.size() > b.size();
    return !std::lexicographical_compare(a.rbegin(), a.rend(), b.rbegin(), b.rend());
}

Whole power(unsigned number, int exponent) {
    Whole result{1};
    for (int i = 0; i < exponent; ++i) result = times(result, {number});
    return result;
}

// Whether at most `most` of `count` strips break with a chance of `percent`/100 each, in `confidence`/100 of the cases
// or more: sum of C(count, k) percent^k (100 - percent)^(count - k) times 100 >= confidence x 100^count, in whole
// numbers.
bool enoughStay(int most, int count, unsigned percent, unsigned confidence) {
    std::vector<Whole> choose{{1}};  // Pascal's triangle, row by row
    for (int row = 1; row <= count; ++row) {
        choose.push_back({1});
        for (std::size_t k = static_cast<std::size_t>(row) - 1; k > 0; --k) choose[k] = plus(choose[k], choose[k - 1]);
    }
    Whole sum;
    for (int k = 0; k <= most; ++k) {
        sum = plus(sum, times(choose[k], times(power(percent, k), power(100 - percent, count - k))));
    }
    return atLeast(times(sum, {100}), times({confidence}, power(100, count)));
}

TEST(SparesNeeded, IsTheExactBinomialWhereAllStripsAreAlike) {
    for (const int strips : {1, 2, 8, 20, 40}) {
        for (const unsigned percent : {1U, 5U, 10U, 20U, 30U, 33U}) {
            for (const unsigned confidence : {50U, 90U, 95U, 99U}) {
                const std::vector<double> chances(static_cast<std::size_t>(strips), percent / 100.0);
                const int spares = sparesNeeded(chances, confidence / 100.0);
                ASSERT_GE(spares, 0);
                EXPECT_TRUE(enoughStay(spares, strips + spares, percent, confidence)) << strips << " " << percent;
                if (spares == 0) continue;
                EXPECT_FALSE(enoughStay(spares - 1, strips + spares - 1, percent, confidence))
                    << strips << " " << percent;
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

}  // namespace bending_test
}  // namespace fayline::wood
