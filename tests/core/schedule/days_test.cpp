#include "core/schedule/days.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <vector>

#include "core/units/input_error.hpp"
#include "tests/core/schedule/made_job.hpp"

namespace fayline::schedule {
namespace days_test {

const std::atomic<bool> goOn{false};

// Tasks scatter by themselves alone: what the exact chances below are of.
Uncertain tasksOnly(double uncertain) {
    Uncertain of;
    of.tasks = uncertain;
    return of;
}

// A task's duration: triangular between `least` and `most`, likeliest at `likeliest`, seconds.
struct Duration {
    double least = 0;
    double likeliest = 0;
    double most = 0;

    static Duration of(double planned_s, double uncertain) {
        return {planned_s * (1 - uncertain / 2), planned_s, planned_s * (1 + uncertain)};
    }
    double density(double at) const {
        if (at <= least || at >= most) return 0;
        if (at < likeliest) return 2 * (at - least) / ((most - least) * (likeliest - least));
        return 2 * (most - at) / ((most - least) * (most - likeliest));
    }
    // Chance of at most `at`.
    double chance(double at) const {
        if (at <= least) return 0;
        if (at >= most) return 1;
        if (at < likeliest) return (at - least) * (at - least) / ((most - least) * (likeliest - least));
        return 1 - (most - at) * (most - at) / ((most - least) * (most - likeliest));
    }
};

// Chance that both together take at most `limit`: the integral of a density, linear by stretches, times a chance,
// quadratic by stretches. Between the corners of both it is a cubic, which Simpson's rule integrates exactly.
double chanceOfSum(const Duration& one, const Duration& other, double limit) {
    std::vector<double> corners{one.least, one.likeliest, one.most};
    for (const double corner : {other.least, other.likeliest, other.most}) corners.push_back(limit - corner);
    std::ranges::sort(corners);
    double sum = 0;
    const auto value = [&](double at) { return one.density(at) * other.chance(limit - at); };
    for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
        const double from = std::max(corners[i], one.least);
        const double to = std::min(corners[i + 1], one.most);
        if (!(to > from)) continue;
        // The density jumps nowhere, so its ends may be taken as they are.
        sum += (to - from) / 6 * (value(from) + 4 * value((from + to) / 2) + value(to));
    }
    return sum;
}

// Chance that all together take at most `limit`, by folding the densities one after the other on a grid of `step`
// seconds (Simpson's weights would gain nothing at the corners): an error with the square of the step.
double chanceOfSum(const std::vector<Duration>& all, double limit, double step) {
    std::vector<double> density{1 / step};
    double from = 0;
    for (const Duration& one : all) {
        const auto points = static_cast<std::size_t>(std::ceil((one.most - one.least) / step)) + 1;
        std::vector<double> folded(density.size() + points - 1, 0.0);
        for (std::size_t k = 0; k < points; ++k) {
            // The share of the durations nearest to this point of the grid.
            const double at = one.least + static_cast<double>(k) * step;
            const double share = one.chance(at + step / 2) - one.chance(at - step / 2);
            for (std::size_t i = 0; i < density.size(); ++i) folded[i + k] += share * density[i];
        }
        density = std::move(folded);
        from += one.least;
    }
    double sum = 0;
    for (std::size_t i = 0; i < density.size(); ++i) {
        const double at = from + static_cast<double>(i) * step;
        sum += step * density[i] * std::clamp((limit - at) / step + 0.5, 0.0, 1.0);
    }
    return sum;
}

// One pair of hands, one strip to wet out in `wet_s`, then to be carried and closed: all in series, nothing else.
Job inSeries(double wet_s, double carry_s, const std::vector<double>& stations_s, double openTime_s) {
    Job job{.hands = 1,
            .strips = {{1, wet_s * 0.002, 0}},
            .faces = {1},
            .wetOut_m2_s = 0.002,
            .spread_m2_s = 0.001,
            .carry_s = carry_s};
    int number = 0;
    for (const double takes_s : stations_s) job.stations.push_back({++number, "clamp", takes_s});
    job.openTime_s = openTime_s;
    return job;
}

void expectChance(const Job& job, const Uncertain& uncertain, double exact) {
    const auto days = simulateDays(job, uncertain, 40'000, 3, goOn);
    ASSERT_TRUE(days);
    const double error = std::sqrt(exact * (1 - exact) / 40'000);
    // Of 1,000 such comparisons one would lie further off than 3.3 errors.
    EXPECT_NEAR(days->chanceInTime, exact, 3.3 * error);
    EXPECT_NEAR(days->error, error, 0.1 * error);
    std::printf("in time on %.4f of the days, exactly %.4f, apart by %.2f standard errors\n", days->chanceInTime, exact,
                (days->chanceInTime - exact) / error);
}

TEST(Days, OneTasksChanceIsThatOfTheTriangle) {
    for (const double open_s : {560.0, 620.0, 680.0}) {
        expectChance(inSeries(600, 0, {}, open_s), tasksOnly(0.2), Duration::of(600, 0.2).chance(open_s));
    }
}

TEST(Days, TwoTasksInSeriesHaveTheChanceOfTheSumOfTwoTriangles) {
    const Duration wetting = Duration::of(600, 0.3);
    const Duration carrying = Duration::of(200, 0.3);
    for (const double open_s : {750.0, 800.0, 840.0, 900.0}) {
        expectChance(inSeries(600, 200, {}, open_s), tasksOnly(0.3), chanceOfSum(wetting, carrying, open_s));
    }
}

TEST(Days, SevenTasksInSeriesHaveTheChanceOfTheirFoldedTriangles) {
    const std::vector<double> stations_s{60, 90, 60, 120, 75};
    std::vector<Duration> all{Duration::of(300, 0.4), Duration::of(180, 0.4)};
    for (const double takes_s : stations_s) all.push_back(Duration::of(takes_s, 0.4));
    for (const double open_s : {860.0, 920.0, 960.0, 1000.0}) {
        const double exact = chanceOfSum(all, open_s, 0.5);
        // What it says changes by less than the last figure that matters when the grid is twice as fine.
        EXPECT_NEAR(exact, chanceOfSum(all, open_s, 0.25), 1e-5);
        expectChance(inSeries(300, 180, stations_s, open_s), tasksOnly(0.4), exact);
    }
}

// The folding itself against the exact sum of two.
TEST(Days, TheGridMeetsTheExactSumOfTwo) {
    const Duration one = Duration::of(600, 0.3);
    const Duration other = Duration::of(200, 0.3);
    for (const double limit : {700.0, 780.0, 820.0, 900.0}) {
        EXPECT_NEAR(chanceOfSum({one, other}, limit, 0.25), chanceOfSum(one, other, limit), 1e-5);
    }
}

// Side by side the later of two counts: of spreading strip 3 and mixing cup 3 the product of the chances.
TEST(Days, OfTwoTasksSideBySideTheLaterCounts) {
    Job job = made::threeStrips(2);
    job.strips = {{1, 0.5, 0}, {2, 0, 0.5}};
    job.cups = {{1, CupFor::wetOut, 1200, 0.5}, {2, CupFor::spread, 1200, 0.5}};
    job.wipe_s = job.scrape_s = job.carry_s = job.place_s = job.stackStrip_s = 0;
    job.stations.clear();
    job.spread_m2_s = 1e9;        // in no time
    job.wetOut_m2_s = 0.5 / 240;  // by the one whom the mixing leaves: four minutes, as long as the mixing takes
    const Duration each = Duration::of(240, 0.2);
    for (const double open_s : {230.0, 250.0, 275.0}) {
        job.openTime_s = open_s;
        const double chance = each.chance(open_s);
        expectChance(job, tasksOnly(0.2), chance * chance);
    }
}

TEST(Days, MarginsOfTheDaysAreTheQuantilesOfTheTriangle) {
    const double open_s = 700;
    const auto days = simulateDays(inSeries(600, 0, {}, open_s), tasksOnly(0.2), 40'000, 8, goOn);
    ASSERT_TRUE(days);
    const Duration wetting = Duration::of(600, 0.2);
    EXPECT_NEAR(1 - wetting.chance(open_s - days->margin05_s), 0.05, 0.005);
    EXPECT_NEAR(1 - wetting.chance(open_s - days->margin50_s), 0.50, 0.01);
    EXPECT_NEAR(1 - wetting.chance(open_s - days->margin95_s), 0.95, 0.005);
}

TEST(Days, TheSameSeedGivesTheSameBitsAndAnotherSeedOthers) {
    Job job = made::threeStrips(2);
    job.openTime_s = 1350;
    const auto once = simulateDays(job, tasksOnly(0.25), 5000, 42, goOn);
    const auto again = simulateDays(job, tasksOnly(0.25), 5000, 42, goOn);
    const auto other = simulateDays(job, tasksOnly(0.25), 5000, 43, goOn);
    ASSERT_TRUE(once && again && other);
    EXPECT_GT(once->chanceInTime, 0);
    EXPECT_LT(once->chanceInTime, 1);
    const auto bits = [](const Days& days) {
        std::vector<double> all{days.chanceInTime, days.error,      days.chanceCups,
                                days.margin05_s,   days.margin50_s, days.margin95_s};
        std::vector<std::uint64_t> words(all.size());
        std::memcpy(words.data(), all.data(), all.size() * sizeof(double));
        return words;
    };
    EXPECT_EQ(bits(*once), bits(*again));
    EXPECT_NE(bits(*once), bits(*other));
}

TEST(Days, WithoutUncertaintyEveryDayIsThePlannedOne) {
    const Job job = made::threeStrips(2);
    const auto days = simulateDays(job, tasksOnly(0), 100, 1, goOn);
    ASSERT_TRUE(days);
    EXPECT_EQ(days->chanceInTime, 1);
    EXPECT_EQ(days->error, 0);
    EXPECT_DOUBLE_EQ(days->margin05_s, runOf(job).margin_s());
    EXPECT_DOUBLE_EQ(days->margin95_s, runOf(job).margin_s());
}

TEST(Days, StoppedItGivesNothingAndOfNoDaysNothingIsSaid) {
    const std::atomic<bool> stop{true};
    EXPECT_FALSE(simulateDays(made::threeStrips(2), tasksOnly(0.2), 100, 1, stop));
    const auto none = simulateDays(made::threeStrips(2), tasksOnly(0.2), 0, 1, goOn);
    ASSERT_TRUE(none);
    EXPECT_EQ(none->count, 0);
}

// Chance that a draw of the standard normal distribution is at most z.
double normalChance(double z) {
    return 0.5 * std::erfc(-z / std::sqrt(2));
}

TEST(Days, ThePaceOfADayIsLogNormalAndSharedByAllItsTasks) {
    Uncertain uncertain;
    uncertain.pace = 0.2;
    for (const double share : {0.9, 1.0, 1.09, 1.3}) {
        // Seven tasks scatter just as one does: nothing averages out.
        expectChance(inSeries(600, 0, {}, 600 * share), uncertain, normalChance(std::log(share) / 0.2));
        expectChance(inSeries(300, 180, {60, 90, 60, 120, 75}, 885 * share), uncertain,
                     normalChance(std::log(share) / 0.2));
    }
    uncertain.middlePace = 1.1;
    expectChance(inSeries(600, 0, {}, 700), uncertain, normalChance(std::log(700 / 660.0) / 0.2));
}

TEST(Days, OpenTimeAndPaceScatterTogetherAsTheSumOfTheirLogarithms) {
    Uncertain uncertain{.pace = 0.2, .glue = 0.15};
    for (const double share : {0.95, 1.09, 1.2, 1.5}) {
        expectChance(inSeries(600, 0, {}, 600 * share), uncertain, normalChance(std::log(share) / 0.25));
    }
}

TEST(Days, ACupLastsByTheSameFactorAsTheFilm) {
    Job job = made::threeStrips(1);
    job.cups = {{1, CupFor::wetOut, 0, 0.48}, {2, CupFor::spread, 1e9, 0.48}};
    const schedule::Run run = runOf(job);
    job.cups[0].useWithin_s = 1.1 * (run.cups[0].emptied_s - run.cups[0].mixedFrom_s);
    Uncertain uncertain;
    uncertain.glue = 0.15;
    const auto days = simulateDays(job, uncertain, 40'000, 3, goOn);
    ASSERT_TRUE(days);
    const double exact = normalChance(std::log(1.1) / 0.15);
    EXPECT_NEAR(days->chanceCups, exact, 3.3 * std::sqrt(exact * (1 - exact) / 40'000));
}

TEST(Days, MishapsComeAsOftenAsTheyAreSaidToAndCostTheirMinutes) {
    // In time without any, late with each of them: the chance that none happens.
    Uncertain uncertain{.stripBreaks = {0.1, 120}, .clampSlips = {0.3, 120}};
    const Job job = inSeries(300, 60, {60, 60}, 500);
    expectChance(job, uncertain, 0.9 * 0.7);
    // One alone is borne, both together are not.
    expectChance(inSeries(300, 60, {60, 60}, 600.5), uncertain, 1 - 0.1 * 0.3);
    // Where no station is closed no clamp slips; with a chance of nothing nothing happens.
    uncertain.stripBreaks = {};
    const auto none = simulateDays(inSeries(300, 60, {}, 400), uncertain, 1000, 3, goOn);
    ASSERT_TRUE(none);
    EXPECT_EQ(none->chanceInTime, 1);
    // A cup that is knocked over is mixed anew: the fresh one's time begins with it.
    Job cups = made::threeStrips(1);
    uncertain = {};
    uncertain.cupSpills = {1, 360};
    const schedule::Run run = runOf(cups);
    for (std::size_t i = 0; i < cups.cups.size(); ++i) {
        cups.cups[i].useWithin_s = run.cups[i].emptied_s - run.cups[i].mixedFrom_s + 1;
    }
    const auto spilled = simulateDays(cups, uncertain, 1000, 3, goOn);
    ASSERT_TRUE(spilled);
    EXPECT_EQ(spilled->chanceCups, 1);
}

TEST(Days, AWaitThatNeedsNobodyGoesByTheClock) {
    Job job = made::threeStrips(1);
    job.cups = {{1, CupFor::wetOut, 1e9, 0.48}};
    job.soak_s = 1e6;  // beside it the rest is nothing
    const double held_s = runOf(job).faces[0].closed_s - runOf(job).faces[0].wetted_s;
    job.openTime_s = held_s + 0.01e6;
    Uncertain uncertain{.tasks = 0.9, .pace = 0.5};
    const auto days = simulateDays(job, uncertain, 1000, 3, goOn);
    ASSERT_TRUE(days);
    EXPECT_GT(days->chanceInTime, 0.99);
}

TEST(Days, WithTheMarginThat95InHundredTakeSoManyAreInTime) {
    Uncertain uncertain{.tasks = 0.3, .pace = 0.2, .glue = 0.15, .clampSlips = {0.1, 180}};
    Job job = made::threeStrips(2);
    job.openTime_s = 1500;
    const auto before = simulateDays(job, uncertain, 40'000, 5, goOn);
    ASSERT_TRUE(before);
    job.openTime_s += before->marginFor95_s - runOf(job).margin_s();
    EXPECT_NEAR(runOf(job).margin_s(), before->marginFor95_s, 1e-6);
    const auto after = simulateDays(job, uncertain, 40'000, 5, goOn);
    ASSERT_TRUE(after);
    EXPECT_NEAR(after->chanceInTime, 0.95, 1e-3);
    // By the normal distribution alone: one task, pace and glue.
    Uncertain plain{.pace = 0.2, .glue = 0.15};
    const auto one = simulateDays(inSeries(600, 0, {}, 600), plain, 40'000, 5, goOn);
    ASSERT_TRUE(one);
    const double exact = 600 * (std::exp(1.6448536 * 0.25) - 1);  // z of 95 in 100, from memory of its table
    EXPECT_NEAR(one->marginFor95_s, exact, 0.03 * exact);
}

TEST(Days, WhatIsNoShareIsRefusedWithItsPlace) {
    const auto pathOf = [](const Uncertain& uncertain) {
        try {
            simulateDays(made::threeStrips(2), uncertain, 1, 1, goOn);
        } catch (const units::InputError& error) {
            return error.path();
        }
        return std::string();
    };
    EXPECT_EQ(pathOf({}), "");
    EXPECT_EQ(pathOf({.tasks = 1.001}), "crew.uncertain_pct");
    EXPECT_EQ(pathOf({.tasks = -0.1}), "crew.uncertain_pct");
    EXPECT_EQ(pathOf({.pace = -0.1}), "crew.pace_pct");
    EXPECT_EQ(pathOf({.glue = NAN}), "crew.glue_uncertain_pct");
    EXPECT_EQ(pathOf({.clampSlips = {1.5, 60}}), "crew.mishaps.clamp_slips.chance_pct");
    EXPECT_EQ(pathOf({.cupSpills = {0.5, -60}}), "crew.mishaps.cup_spills.min");
    // At the bound no task takes less than half of its time.
    const auto days = simulateDays(inSeries(600, 0, {}, 700), tasksOnly(1), 1000, 1, goOn);
    ASSERT_TRUE(days);
    EXPECT_LE(days->margin95_s, 400);
}

TEST(Days, NobodyThereIsRefused) {
    EXPECT_THROW(simulateDays(made::threeStrips(0), tasksOnly(0.2), 10, 1, goOn), units::InputError);
}

}  // namespace days_test
}  // namespace fayline::schedule
