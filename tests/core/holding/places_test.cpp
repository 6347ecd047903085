#include "core/holding/places.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "core/units/input_error.hpp"
#include "tests/core/laminate/made_lines.hpp"
#include "tests/refusal.hpp"

namespace fayline::holding {
namespace places_test {

using model::Describes;
using model::Side;
using units::InputError;

model::Stack stackOf(int count, double thickness_m) {
    model::Stack stack;
    stack.strips = {model::Strips{.count = count, .thickness_m = thickness_m}};
    stack.glueLine_m = 0.0002;
    return stack;
}

model::Holding stationsAt(const std::vector<double>& places) {
    model::Holding holding;
    for (const double at : places) {
        holding.stations.push_back({.at_m = at});
    }
    return holding;
}

// Source: arcs of one centre (D): the outside of the stack is (R + depth) / R times as long as the line. From heading
// +x the line turns right about (0, -R).
TEST(Places, TheTapeOnTheOutsideReadsLongerByTheDepthOverTheRadius) {
    const double radius = 0.8;
    const double depth = 8 * 0.006 + 7 * 0.0002;
    const auto places = stationPlaces(stationsAt({0.6, -0.05, 0.3}), stackOf(8, 0.006), Describes::innerFace,
                                      Side::left, made::arc(-radius, 1.0));
    ASSERT_EQ(places.size(), 3u);
    const double at[] = {-0.05, 0.3, 0.6};
    const int index[] = {1, 2, 0};
    for (std::size_t i = 0; i < 3; ++i) {
        EXPECT_EQ(places[i].number, static_cast<int>(i) + 1);
        EXPECT_EQ(places[i].index, index[i]);
        EXPECT_EQ(places[i].at_m, at[i]);
        EXPECT_NEAR(places[i].alongOutside_m, at[i] * (radius + depth) / radius, 1e-9);
        EXPECT_NEAR(places[i].heading_rad, -at[i] / radius, 1e-9);
        EXPECT_NEAR(places[i].onLine.x_m, radius * std::sin(at[i] / radius), 1e-9);
        EXPECT_NEAR(places[i].onOutside.x_m, (radius + depth) * std::sin(at[i] / radius), 1e-9);
        EXPECT_NEAR(places[i].onOutside.y_m, (radius + depth) * std::cos(at[i] / radius) - radius, 1e-9);
    }
}

TEST(Places, InAHollowTheTapeReadsShorter) {
    const double depth = 8 * 0.006 + 7 * 0.0002;
    const auto places =
        stationPlaces(stationsAt({0.5}), stackOf(8, 0.006), Describes::innerFace, Side::left, made::arc(0.8, 1.0));
    EXPECT_NEAR(places[0].alongOutside_m, 0.5 * (0.8 - depth) / 0.8, 1e-9);
}

TEST(Places, ALineOnTheOuterFaceIsItsOwnTape) {
    const auto places = stationPlaces(stationsAt({0.1, 0.7}), stackOf(5, 0.005), Describes::outerFace, Side::right,
                                      made::arc(0.8, 1.0));
    for (const StationPlace& place : places) {
        EXPECT_NEAR(place.alongOutside_m, place.at_m, 1e-9);
        EXPECT_NEAR(place.onOutside.x_m, place.onLine.x_m, 1e-12);
    }
}

TEST(Places, TheOutsideOfATaperIsMeasuredAlongItself) {
    model::Stack stack = stackOf(5, 0.008);
    stack.strips[0].tapersTo_m = 0.004;
    const line::Line line = made::arc(-0.8, 1.0);
    const auto places = stationPlaces(stationsAt({0.2, 0.5}), stack, Describes::innerFace, Side::left, line);
    for (const StationPlace& place : places) {
        EXPECT_NEAR(place.alongOutside_m, alongOutside(stack, Describes::innerFace, Side::left, line, place.at_m),
                    1e-9);
    }
    // Between the lengths of the two level depths.
    EXPECT_LT(places[1].alongOutside_m, 0.5 * (0.8 + 0.0408) / 0.8);
    EXPECT_GT(places[1].alongOutside_m, 0.5 * (0.8 + 0.0208) / 0.8);
}

TEST(Places, TwoAtOnePlaceKeepTheirOrder) {
    const auto places = stationPlaces(stationsAt({0.4, 0.2, 0.2}), stackOf(2, 0.005), Describes::innerFace, Side::left,
                                      made::straight(1.0));
    EXPECT_EQ(places[0].index, 1);
    EXPECT_EQ(places[1].index, 2);
    EXPECT_EQ(places[2].index, 0);
}

TEST(Places, APlaceThatIsNoneIsRefusedByItsPath) {
    for (const double at : {std::numeric_limits<double>::quiet_NaN(), 1e6, -1e6}) {
        EXPECT_EQ(made::refusal([&] {
                      stationPlaces(stationsAt({0.1, at}), stackOf(2, 0.005), Describes::innerFace, Side::left,
                                    made::straight(1.0));
                  }).path(),
                  "holding.stations[1].at_mm");
    }
}

TEST(EvenStations, AreNoFurtherApartThanAskedAndReachBothEnds) {
    model::Station like{.kind = model::HoldKind::screw, .most_N = 1234};
    for (const double spacing : {0.15, 0.2, 0.31, 5.0}) {
        const auto stations = evenStations(-0.05, 1.75, spacing, like);
        ASSERT_GE(stations.size(), 2u);
        EXPECT_EQ(stations.front().at_m, -0.05);
        EXPECT_EQ(stations.back().at_m, 1.75);
        const double apart = stations[1].at_m - stations[0].at_m;
        EXPECT_LE(apart, spacing * (1 + 1e-9));
        EXPECT_GT(apart, 1.8 / (std::ceil(1.8 / spacing - 1e-9) + 1));  // one fewer would be too few
        for (std::size_t i = 1; i < stations.size(); ++i) {
            EXPECT_NEAR(stations[i].at_m - stations[i - 1].at_m, apart, 1e-12);
            EXPECT_EQ(stations[i].kind, model::HoldKind::screw);
            EXPECT_EQ(stations[i].most_N, 1234);
        }
    }
}

TEST(EvenStations, ASpacingThatDividesTheLengthNeedsNoneMore) {
    EXPECT_EQ(evenStations(0, 1.8, 0.3, {}).size(), 7u);
    EXPECT_EQ(evenStations(0, 1.8, 0.1, {}).size(), 19u);
}

TEST(EvenStations, OneAtAPlaceWhereFromIsTo) {
    EXPECT_EQ(evenStations(0.4, 0.4, 0.1, {}).size(), 1u);
}

TEST(EvenStations, SpacingsThatMakeNoneOrTooManyAreRefused) {
    for (const double spacing : {0.0, -0.1, 1e-6, std::numeric_limits<double>::quiet_NaN()}) {
        EXPECT_THROW(evenStations(0, 1.8, spacing, {}), InputError) << spacing;
    }
    EXPECT_EQ(evenStations(0, 0.999, 0.001, {}).size(), 1000u);
}

}  // namespace places_test
}  // namespace fayline::holding
