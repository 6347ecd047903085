// Tables in which one coordinate is the grid: what is proposed, and what the misread finder makes of it.
#include "core/line/grid.hpp"

#include <gtest/gtest.h>

#include <atomic>
#include <cmath>
#include <cstdio>
#include <random>

#include "core/line/misread.hpp"
#include "core/math/count.hpp"
#include "core/units/units.hpp"

namespace fayline::line {
namespace grid_test {

using units::LengthNotation;
constexpr double step_m = units::sixteenth_m;

// A hull's half-breadths at stations a foot apart: x the grid, y read to a sixteenth.
struct Table {
    std::vector<Xy> points;
    std::vector<std::array<std::string, 2>> written;
    std::vector<std::string> labels;
};

Table tableOf(std::mt19937& random, int points) {
    const double beam_m = std::uniform_real_distribution<>(0.8, 2.5)(random);
    const double lean = std::uniform_real_distribution<>(-0.3, 0.3)(random);
    Table table;
    for (int i = 0; i < points; ++i) {
        const double along = 2.0 * i / (points - 1) - 1;
        const double y = beam_m * (1 - along * along) * (1 + lean * along);
        table.points.push_back({0.3048 * i, step_m * std::round(y / step_m)});
        table.written.push_back({units::writeLength(table.points.back().x_m, LengthNotation::feetInchesEighths),
                                 units::writeLength(table.points.back().y_m, LengthNotation::feetInchesEighths)});
        table.labels.push_back("Station " + std::to_string(i));
    }
    return table;
}

FairInput inputOf(const Table& table, Read read) {
    FairInput input;
    for (const Xy& point : table.points) input.points.push_back({point.x_m, point.y_m, false, read});
    input.readTo_m = input.fairWithin_m = step_m;
    return input;
}

TEST(Grid, IsProposedWhereValuesAreEvenOrRound) {
    std::mt19937 random(3);
    const Table table = tableOf(random, 9);
    EXPECT_EQ(gridOf(table.points, step_m), std::vector<Read>(9, Read::y));
    // Stations below, waterlines above, and a point on neither.
    const std::vector<Xy> mixed{
        {1.1445875, 0.1016}, {0.9144, 0.130175}, {0.6096, 0.23495}, {0.51435, 0.3048}, {0.3254375, 0.6096}};
    EXPECT_EQ(gridOf(mixed, step_m), (std::vector<Read>{Read::both, Read::y, Read::y, Read::x, Read::x}));
    EXPECT_EQ(gridOf({{0.011, 0.02}, {0.5, 0.31}, {1.013, 0.47}}, step_m), std::vector<Read>(3, Read::both));
}

TEST(Grid, NoSlipIsBlamedOnAGridValueAndNoFewerAreFound) {
    std::mt19937 random(7);
    int tried = 0;
    std::array<int, 2> found{}, blamed{};
    for (int trial = 0; trial < 60; ++trial) {
        Table table = tableOf(random, 8 + trial % 4);
        const int point = std::uniform_int_distribution<>(1, math::countOf(table.points) - 2)(random);
        table.points[point].y_m += (trial % 2 == 0 ? 1 : -1) * (trial % 3 == 0 ? 0.5 : 1) * units::inch_m;
        table.written[point][1] = units::writeLength(table.points[point].y_m, LengthNotation::feetInchesEighths);
        ++tried;
        for (const bool known : {false, true}) {
            const FairInput input = inputOf(table, known ? Read::y : Read::both);
            const std::atomic<bool> stop = false;
            const Misread misread =
                findMisread(input, fair(input), table.written, table.labels, LengthNotation::feetInchesEighths, stop)
                    .value();
            if (misread.suspects.size() == 1 && misread.suspects[0].point == point) ++found[known];
            for (const Suspect& suspect : misread.suspects) blamed[known] += suspect.axis == 'x' ? 1 : 0;
            for (const RepeatedSlip& slip : misread.repeated) blamed[known] += slip.axis == 'x' ? 1 : 0;
        }
    }
    std::printf("of %d inches and half inches, found without and with the grid known: %d, %d; grid blamed: %d, %d\n",
                tried, found[0], found[1], blamed[0], blamed[1]);
    EXPECT_EQ(blamed[1], 0);
    EXPECT_GE(found[1], found[0]);
}

TEST(Grid, ManyPointsAreSearchedWithBoundedWorkAndAStopEndsIt) {
    Table table;
    for (int i = 0; i < 5000; ++i) {
        const double s = 0.01 * i;
        const double slip = i % 20 == 10 ? 0.0254 : 0;
        table.points.push_back({s, step_m * std::round((0.002 * s * s + slip) / step_m)});
        table.written.push_back({"", ""});
        table.labels.emplace_back();
    }
    const FairInput input = inputOf(table, Read::y);
    const FairLine line = fair(input);
    const std::atomic<bool> stopped = true;
    EXPECT_FALSE(findMisread(input, line, table.written, table.labels, LengthNotation::millimetres, stopped));
    const std::atomic<bool> goOn = false;
    const auto misread = findMisread(input, line, table.written, table.labels, LengthNotation::millimetres, goOn);
    ASSERT_TRUE(misread);
    EXPECT_FALSE(misread->searchedAll);
    constexpr int oneMore = 60;  // begun before the bound was met
    EXPECT_LE(misread->forecasts, 5000 + mostForecasts + oneMore);
    EXPECT_LE(misread->refitted, mostSuspects * mostRefitted);
    EXPECT_EQ(misread->suspects.size(), static_cast<std::size_t>(mostSuspects));
    for (const Suspect& suspect : misread->suspects) EXPECT_EQ(suspect.point % 20, 10);
}

}  // namespace grid_test
}  // namespace fayline::line
