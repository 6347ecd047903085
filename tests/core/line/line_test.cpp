#include "core/line/line.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "core/line/fair.hpp"
#include "core/units/input_error.hpp"
#include "tests/core/line/random_line.hpp"

namespace fayline::line {
namespace line_test {

const std::vector<double> oneInterval{0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1};

// y = x^2 for x = 0..width, exactly: control points of t and t^2 raised to degree 5.
Line parabola(double width_m = 1) {
    std::vector<Xy> controls;
    for (int j = 0; j < 6; ++j) controls.push_back({width_m * j / 5.0, width_m * width_m * j * (j - 1) / 20.0});
    return Line(oneInterval, controls);
}

double parabolaLength(double x) {
    return x * std::sqrt(1 + 4 * x * x) / 2 + std::asinh(2 * x) / 4;
}

Line through(const std::vector<Xy>& points) {
    FairInput input;
    input.fairWithin_m = 0;
    for (const Xy& point : points) input.points.push_back({point.x_m, point.y_m});
    return fair(input).line;
}

Line arc(double radius_m, double turn_rad, int count = 21) {
    std::vector<Xy> points;
    for (int i = 0; i < count; ++i) {
        const double angle = turn_rad * i / (count - 1);
        points.push_back(
            {radius_m * std::sin(std::abs(angle)), std::copysign(radius_m, turn_rad) * (1 - std::cos(angle))});
    }
    return through(points);
}

Line winding(std::uint32_t seed) {
    return through(test::randomLine(seed, 0).exact);
}

TEST(Line, LengthOfAParabolaIsItsClosedForm) {
    for (const double width : {0.01, 0.5, 1.0, 4.0}) {
        EXPECT_NEAR(parabola(width).length() / parabolaLength(width), 1, 1e-10) << width;
    }
}

TEST(Line, PlaceByArcLengthIsExactToABillionthOfTheLength) {
    const Line line = parabola(3);
    for (int i = 0; i <= 300; ++i) {
        const double s = line.length() * i / 300;
        const Place place = line.at(s);
        EXPECT_NEAR(parabolaLength(place.x_m), s, 1e-9 * line.length());
        EXPECT_NEAR(place.y_m, place.x_m * place.x_m, 1e-12);
        EXPECT_NEAR(place.heading_rad, std::atan(2 * place.x_m), 1e-12);
        const double slope2 = 1 + 4 * place.x_m * place.x_m;
        EXPECT_NEAR(place.curvature_per_m, 2 / std::pow(slope2, 1.5), 1e-11);
        EXPECT_NEAR(place.curvatureRate_per_m2, -24 * place.x_m / std::pow(slope2, 3), 1e-9);
    }
}

TEST(Line, HeadingRunsOnPastAFullTurn) {
    std::vector<Xy> points;
    for (int i = 0; i <= 60; ++i) {
        const double angle = 9.0 * i / 60;
        points.push_back({(1 + 0.1 * angle) * std::cos(angle), (1 + 0.1 * angle) * std::sin(angle)});
    }
    const Line line = through(points);
    double before = line.at(0).heading_rad;
    for (const Place& place : sample(line, 0.01)) {
        EXPECT_LT(std::abs(place.heading_rad - before), 0.02);
        before = place.heading_rad;
    }
    // Of r = 1 + 0.1 a the heading is a + atan2(r, 0.1).
    EXPECT_NEAR(before - line.at(0).heading_rad, 9 + std::atan2(1.9, 0.1) - std::atan2(1, 0.1), 2e-3);
}

TEST(Line, RunsOnAsAnArcOfItsEndsCurvature) {
    const Line line = arc(2, 0.8);
    for (const double past : {0.001, 0.3, 1.5}) {
        const double angle = 0.8 + past / 2;
        const Place after = line.at(line.length() + past);
        EXPECT_NEAR(after.x_m, 2 * std::sin(angle), 1e-5);
        EXPECT_NEAR(after.y_m, 2 * (1 - std::cos(angle)), 1e-5);
        EXPECT_NEAR(after.heading_rad, angle, 1e-5);
        EXPECT_EQ(after.curvature_per_m, line.at(line.length()).curvature_per_m);
        EXPECT_EQ(after.curvatureRate_per_m2, 0);
        const Place before = line.at(-past);
        EXPECT_NEAR(before.x_m, -2 * std::sin(past / 2), 1e-5);
        EXPECT_NEAR(before.y_m, 2 * (1 - std::cos(past / 2)), 1e-5);
        EXPECT_NEAR(before.heading_rad, -past / 2, 1e-5);
    }
    const Place end = line.at(line.length());
    const Place past = line.at(line.length() + 1e-9);
    EXPECT_NEAR(end.x_m, past.x_m, 2e-9);
    EXPECT_NEAR(end.y_m, past.y_m, 2e-9);
}

TEST(Line, NearestIsNoFurtherThanAnyPlaceOfAFineSample) {
    std::mt19937 random(7);
    for (std::uint32_t seed = 0; seed < 20; ++seed) {
        const Line line = winding(seed);
        const auto places = sample(line, line.length() / 2000);
        for (int i = 0; i < 20; ++i) {
            const Place& about = places[static_cast<std::size_t>(test::between(random, 0, 2000))];
            const Xy point{about.x_m + test::between(random, -1.5, 1.5), about.y_m + test::between(random, -1.5, 1.5)};
            double least = 1e9;
            for (const Place& p : places) least = std::min(least, std::hypot(p.x_m - point.x_m, p.y_m - point.y_m));
            const Nearest nearest = line.nearest(point.x_m, point.y_m);
            EXPECT_LE(std::abs(nearest.distance_m), least + 1e-12);
            const Place foot = line.at(nearest.at_m);
            EXPECT_NEAR(std::hypot(foot.x_m - point.x_m, foot.y_m - point.y_m), std::abs(nearest.distance_m), 1e-8);
        }
    }
}

TEST(Line, APlaceSquareToTheLeftIsNearestToItsFootAtThatDistance) {
    for (std::uint32_t seed = 0; seed < 20; ++seed) {
        const Line line = winding(seed);
        for (const double distance : {-0.05, 0.0, 0.05}) {
            const double at = line.length() * (0.1 + 0.04 * seed);
            const Place beside = parallel(line.at(at), distance);
            const Nearest nearest = line.nearest(beside.x_m, beside.y_m);
            EXPECT_NEAR(nearest.at_m, at, 1e-6);
            EXPECT_NEAR(nearest.distance_m, distance, 1e-9);
        }
    }
}

TEST(Line, NearestPastAnEndIsTheEnd) {
    const Line line = parabola();
    EXPECT_EQ(line.nearest(-0.5, 0).at_m, 0);
    EXPECT_NEAR(line.nearest(2, 3).at_m, line.length(), 1e-12);
}

TEST(Line, TightestIsWhereCurvatureIsGreatest) {
    for (std::uint32_t seed = 0; seed < 30; ++seed) {
        const Line line = winding(seed);
        Place greatest;
        for (const Place& p : sample(line, 5e-5)) {
            if (std::abs(p.curvature_per_m) > std::abs(greatest.curvature_per_m)) greatest = p;
        }
        const Place tightest = line.tightest();
        EXPECT_GE(std::abs(tightest.curvature_per_m), std::abs(greatest.curvature_per_m) * (1 - 1e-9)) << seed;
        EXPECT_NEAR(tightest.at_m, greatest.at_m, 1e-4) << seed;
    }
}

TEST(Line, LengthToAParameterAgreesWithThePlaceThere) {
    const Line line = parabola(2);
    for (const double t : {0.0, 0.1, 0.5, 0.77, 1.0}) EXPECT_NEAR(line.at(line.lengthTo(t)).x_m, 2 * t, 1e-9);
    EXPECT_EQ(line.lengthTo(-1), 0);
    EXPECT_EQ(line.lengthTo(2), line.length());
}

TEST(Line, SampleHoldsBothEndsOnce) {
    const Line line = parabola();
    for (const double step : {0.1, 0.3, line.length() / 4, 5.0}) {
        const auto places = sample(line, step);
        EXPECT_EQ(places.front().at_m, 0);
        EXPECT_EQ(places.back().at_m, line.length());
        for (std::size_t i = 1; i < places.size(); ++i) {
            EXPECT_GT(places[i].at_m - places[i - 1].at_m, 1e-6);
            EXPECT_LE(places[i].at_m - places[i - 1].at_m, step * (1 + 1e-9));
        }
    }
    EXPECT_THROW(sample(line, 0), units::InputError);
}

TEST(Line, ParallelsOfACircleAreCirclesAboutItsMiddle) {
    const Line line = arc(2, 1.2, 41);  // turns left: its middle lies 2 m to the left
    for (const double distance : {-0.5, 0.3, 1.9}) {
        const Place beside = parallel(line.at(1), distance);
        EXPECT_NEAR(std::hypot(beside.x_m, beside.y_m - 2), 2 - distance, 1e-6);
        EXPECT_NEAR(1 / beside.curvature_per_m, 2 - distance, 1e-5);
        EXPECT_EQ(beside.heading_rad, line.at(1).heading_rad);
        EXPECT_NEAR(parallelLength(line, distance, 0, line.length()), 1.2 * (2 - distance), 1e-6);
        EXPECT_NEAR(parallelLength(line, distance, -0.4, 2.8), 1.6 * (2 - distance), 1e-5);
    }
}

TEST(Line, ParallelsRateOfCurvatureIsByItsOwnLength) {
    const Line line = parabola();
    const double d = 0.2, h = 1e-5;
    const Place before = parallel(line.at(0.6 - h), d), after = parallel(line.at(0.6 + h), d);
    const double own = parallelLength(line, d, 0.6 - h, 0.6 + h);
    EXPECT_NEAR(parallel(line.at(0.6), d).curvatureRate_per_m2, (after.curvature_per_m - before.curvature_per_m) / own,
                1e-6);
}

TEST(Line, NoParallelLiesBeyondTheMiddleOfCurvature) {
    const Line left = arc(0.5, 1), right = arc(0.5, -1);
    EXPECT_EQ(parallel(left.at(0.2), 0.6).curvature_per_m, std::numeric_limits<double>::infinity());
    EXPECT_EQ(parallel(left.at(0.2), 0.6).curvatureRate_per_m2, 0);
    EXPECT_EQ(parallel(right.at(0.2), -0.6).curvature_per_m, -std::numeric_limits<double>::infinity());
    EXPECT_TRUE(std::isfinite(parallel(right.at(0.2), 0.6).curvature_per_m));
}

TEST(Line, CurvatureIsContinuousWherePiecesMeet) {
    for (std::uint32_t seed = 0; seed < 10; ++seed) {
        const Line line = winding(seed);
        const double step = line.length() / 5000;
        for (double s = step; s < line.length() - step; s += step) {
            const Place a = line.at(s), b = line.at(s + 1e-7);
            EXPECT_NEAR(a.curvature_per_m, b.curvature_per_m, 1e-5);
            EXPECT_NEAR(a.curvatureRate_per_m2, b.curvatureRate_per_m2, 1e-3);
        }
    }
}

TEST(Line, KnotsThatMakeNoSplineAreRefused) {
    std::vector<Xy> controls(6);
    EXPECT_THROW(Line(oneInterval, controls), units::InputError);  // no length
    for (int j = 0; j < 6; ++j) controls[j].x_m = j;
    EXPECT_NO_THROW(Line(oneInterval, controls));
    controls.pop_back();
    EXPECT_THROW(Line(oneInterval, controls), units::InputError);
    controls.resize(6);
    std::vector<double> falling = oneInterval;
    falling[3] = 0.5;
    EXPECT_THROW(Line(falling, controls), units::InputError);
}

TEST(Line, ALineOfNothingHasNoLength) {
    const Line line;
    EXPECT_EQ(line.length(), 0);
    EXPECT_EQ(line.at(1).x_m, 0);
    EXPECT_EQ(line.nearest(1, 1).at_m, 0);
    EXPECT_EQ(line.tightest().curvature_per_m, 0);
}

}  // namespace line_test
}  // namespace fayline::line
