#include "core/line/fair.hpp"

#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <cmath>
#include <functional>

#include "core/units/input_error.hpp"
#include "tests/core/line/random_line.hpp"
#include "tests/refusal.hpp"

namespace fayline::line {
namespace fair_test {

const double pi = std::acos(-1.0);

FairInput onArc(double radius_m, double turn_rad, int count) {
    FairInput input;
    for (int i = 0; i < count; ++i) {
        const double angle = turn_rad * i / (count - 1);
        input.points.push_back({radius_m * std::sin(angle), radius_m * (1 - std::cos(angle))});
    }
    return input;
}

void expectRefused(const FairInput& input, const std::string& path) {
    EXPECT_EQ(made::refusal([&] { fair(input); }).path(), path);
}

// The same place on both lines, `other` being moved by `move`, at shares of their lengths. `turned` is 1, or -1 where
// left becomes right.
void expectSame(const FairLine& one, const FairLine& other, const std::function<Xy(Xy)>& move, double scale,
                double turned, bool reversed) {
    ASSERT_TRUE(one.settled && other.settled);
    EXPECT_NEAR(other.line.length() / one.line.length(), scale, 1e-8);
    const double tightest = std::max(1.0, std::abs(one.line.tightest().curvature_per_m));
    for (int i = 0; i <= 50; ++i) {
        const double share = i / 50.0;
        const Place a = one.line.at(share * one.line.length());
        const Place b = other.line.at((reversed ? 1 - share : share) * other.line.length());
        const Xy moved = move({a.x_m, a.y_m});
        EXPECT_NEAR(b.x_m, moved.x_m, 1e-7 * scale);
        EXPECT_NEAR(b.y_m, moved.y_m, 1e-7 * scale);
        EXPECT_NEAR(b.curvature_per_m * scale, turned * a.curvature_per_m, 1e-6 * tightest);
    }
}

TEST(Fair, PointsOfACircleGiveItsRadius) {
    for (const int count : {3, 4, 5, 12, 40, 200}) {
        for (const double turn : {0.2, 1.0, 3.0, 5.0}) {
            if (turn > (count - 1) * 2.0) continue;
            for (const double within : {0.0, 0.0015875}) {
                FairInput input = onArc(1.5, turn, count);
                input.fairWithin_m = within;
                const FairLine found = fair(input);
                EXPECT_TRUE(found.settled) << found.outcome;
                for (const Place& place : sample(found.line, 0.02)) {
                    EXPECT_NEAR(1.5 * place.curvature_per_m, 1, 0.002) << count << " points over " << turn;
                }
            }
        }
    }
}

TEST(Fair, ARoundedCircleStaysNearlyACircle) {
    std::mt19937 random(3);
    for (int i = 0; i < 50; ++i) {
        FairInput input = onArc(2, 1.2, 12);
        const double step = input.readTo_m, grid = test::between(random, 0, step);
        for (Offset& p : input.points) {
            p.x_m = std::round((p.x_m - grid) / step) * step + grid;
            p.y_m = std::round((p.y_m - grid) / step) * step + grid;
        }
        const Line line = fair(input).line;
        EXPECT_NEAR(2 * line.at(line.length() / 2).curvature_per_m, 1, 0.06);
    }
}

TEST(Fair, PointsOfAStraightLineGiveNoCurvature) {
    FairInput input;
    for (int i = 0; i < 8; ++i) input.points.push_back({0.3 * i, 0.1 * i});
    for (const double within : {0.0, 0.0015875}) {
        input.fairWithin_m = within;
        const FairLine found = fair(input);
        EXPECT_TRUE(found.settled);
        EXPECT_LT(std::abs(found.line.tightest().curvature_per_m), 1e-8);
        EXPECT_NEAR(found.line.length(), 7 * std::hypot(0.3, 0.1), 1e-12);
    }
}

// Source: for a nearly flat line curvature is y'' and arc length x, so the fit is the smoothing spline of the third
// derivative. Its other form (D): a parabola plus the covariance of noise summed three times, in a dense system.
TEST(Fair, ANearlyFlatLineIsTheSmoothingSplineOfTheThirdDerivative) {
    const int count = 15;
    const double flat = 1e-5;
    FairInput input;
    std::mt19937 random(11);
    for (int i = 0; i < count; ++i) {
        const double x = 0.2 * i + test::between(random, -0.05, 0.05);
        input.points.push_back({x, flat * (std::sin(2.1 * x) + test::between(random, -0.2, 0.2))});
    }
    input.readTo_m = 0.4 * flat;
    input.fairWithin_m = 1;
    const FairLine found = fair(input);
    ASSERT_TRUE(found.settled);
    Eigen::MatrixXd system = Eigen::MatrixXd::Zero(count + 3, count + 3);
    Eigen::VectorXd right = Eigen::VectorXd::Zero(count + 3);
    for (int i = 0; i < count; ++i) {
        const double xi = input.points[i].x_m - input.points[0].x_m;
        for (int j = 0; j < count; ++j) {
            const double xj = input.points[j].x_m - input.points[0].x_m;
            const double m = std::min(xi, xj), d = std::abs(xi - xj);
            system(i, j) = (std::pow(m, 5) / 5 + d * std::pow(m, 4) / 2 + d * d * std::pow(m, 3) / 3) / 4;
        }
        system(i, i) += found.smoothing_m5;
        for (int k = 0; k < 3; ++k) system(i, count + k) = system(count + k, i) = std::pow(xi, k);
        right(i) = input.points[i].y_m;
    }
    const Eigen::VectorXd solved = system.fullPivLu().solve(right);
    double greatest = 0;
    for (int i = 0; i < count; ++i) {
        const double miss = found.smoothing_m5 * solved(i);
        EXPECT_NEAR(found.points[i].misfit_m, miss, 1e-6 * flat);
        greatest = std::max(greatest, std::abs(miss));
    }
    EXPECT_GT(greatest, 0.05 * flat);  // there was something to compare
}

// The choice of smoothing: where smoothing * energy / (2 scatter)^2 is the freedom of the fit less 3. Energy by summing
// along the line, freedom from the dense system of the flat line above (D).
TEST(Fair, SmoothingBalancesUnevennessAgainstFreedom) {
    const int count = 15;
    const double flat = 1e-5;
    FairInput input;
    std::mt19937 random(12);
    for (int i = 0; i < count; ++i) {
        input.points.push_back({0.2 * i, flat * (std::sin(0.42 * i) + test::between(random, -0.2, 0.2))});
    }
    input.readTo_m = 0.4 * flat;
    input.fairWithin_m = 1;
    const FairLine found = fair(input);
    ASSERT_TRUE(found.settled);
    double energy = 0;
    const int parts = 20000;
    for (int i = 0; i < parts; ++i) {
        const double rate = found.line.at(found.line.length() * (i + 0.5) / parts).curvatureRate_per_m2;
        energy += rate * rate * found.line.length() / parts;
    }
    Eigen::MatrixXd covariance(count, count), parabolas(count, 3);
    for (int i = 0; i < count; ++i) {
        for (int j = 0; j < count; ++j) {
            const double m = 0.2 * std::min(i, j), d = 0.2 * std::abs(i - j);
            covariance(i, j) = (std::pow(m, 5) / 5 + d * std::pow(m, 4) / 2 + d * d * std::pow(m, 3) / 3) / 4;
        }
        covariance(i, i) += found.smoothing_m5;
        for (int k = 0; k < 3; ++k) parabolas(i, k) = std::pow(0.2 * i, k);
    }
    const Eigen::MatrixXd inverse = covariance.inverse();
    const Eigen::MatrixXd inner = parabolas.transpose() * inverse * parabolas;
    const Eigen::MatrixXd rest = inverse - inverse * parabolas * inner.inverse() * parabolas.transpose() *
                                               inverse;  // smoothing * rest y = misses
    const double freedom = count - found.smoothing_m5 * rest.trace();
    const double scatter = 2 * input.readTo_m / std::sqrt(12.0);
    EXPECT_NEAR(found.smoothing_m5 * energy / (scatter * scatter), freedom - 3, 1e-6);
}

TEST(Fair, MovedTurnedMirroredReversedAndScaledPointsGiveTheSameLine) {
    for (std::uint32_t seed = 0; seed < 40; ++seed) {
        FairInput input = test::randomLine(seed).input();
        if (seed % 3 == 0) input.fairWithin_m = 0;
        const FairLine found = fair(input);
        const auto changed = [&](const std::function<Xy(Xy)>& move, double scale, bool reversed) {
            FairInput other = input;
            other.readTo_m *= scale;
            other.fairWithin_m *= scale;
            for (Offset& p : other.points) {
                const Xy moved = move({p.x_m, p.y_m});
                p = {moved.x_m, moved.y_m, p.mustPass};
            }
            if (reversed) std::ranges::reverse(other.points);
            return fair(other);
        };
        const auto same = [](Xy p) { return p; };
        const auto turned = [](Xy p) {
            return Xy{3 + std::cos(2.0) * p.x_m - std::sin(2.0) * p.y_m,
                      -7 + std::sin(2.0) * p.x_m + std::cos(2.0) * p.y_m};
        };
        const auto mirrored = [](Xy p) { return Xy{-p.x_m, p.y_m}; };
        const auto larger = [](Xy p) { return Xy{2.5 * p.x_m, 2.5 * p.y_m}; };
        SCOPED_TRACE(seed);
        expectSame(found, changed(turned, 1, false), turned, 1, 1, false);
        expectSame(found, changed(mirrored, 1, false), mirrored, 1, -1, false);
        expectSame(found, changed(same, 1, true), same, 1, -1, true);
        if (seed % 3 != 0) expectSame(found, changed(larger, 2.5, false), larger, 2.5, 1, false);
    }
}

TEST(Fair, ToleranceZeroPassesThroughAllPoints) {
    for (std::uint32_t seed = 0; seed < 100; ++seed) {
        FairInput input = test::randomLine(seed).input();
        input.fairWithin_m = 0;
        const FairLine found = fair(input);
        EXPECT_TRUE(found.settled) << seed << ": " << found.outcome;
        for (const Offset& p : input.points) EXPECT_LT(std::abs(found.line.nearest(p.x_m, p.y_m).distance_m), 1e-7);
    }
}

TEST(Fair, NoPointIsMissedByMoreThanIsAllowed) {
    for (std::uint32_t seed = 0; seed < 100; ++seed) {
        FairInput input = test::randomLine(seed).input();
        input.fairWithin_m = 0.0003;
        const FairLine found = fair(input);
        EXPECT_TRUE(found.settled) << seed << ": " << found.outcome;
        for (const Foot& foot : found.points) EXPECT_LE(std::abs(foot.misfit_m), 0.0003 * (1 + 1e-6));
    }
}

TEST(Fair, FeetAreTheNearestPlacesAndTheEndsAreTheFirstAndLast) {
    for (std::uint32_t seed = 0; seed < 50; ++seed) {
        const FairInput input = test::randomLine(seed).input();
        const FairLine found = fair(input);
        ASSERT_EQ(found.points.size(), input.points.size());
        EXPECT_EQ(found.points.front().at_m, 0);
        EXPECT_EQ(found.points.back().at_m, found.line.length());
        double squares = 0;
        for (std::size_t i = 0; i < input.points.size(); ++i) {
            const Nearest nearest = found.line.nearest(input.points[i].x_m, input.points[i].y_m);
            EXPECT_NEAR(nearest.at_m, found.points[i].at_m, 1e-7);
            EXPECT_NEAR(nearest.distance_m, found.points[i].misfit_m, 1e-9);
            squares += nearest.distance_m * nearest.distance_m;
        }
        EXPECT_NEAR(found.rootMeanSquareMiss_m, std::sqrt(squares / static_cast<double>(input.points.size())), 1e-9);
    }
}

TEST(Fair, APointThatMustBePassedIsPassed) {
    for (std::uint32_t seed = 0; seed < 100; ++seed) {
        FairInput input = test::randomLine(seed).input();
        for (std::size_t i = seed % 3; i < input.points.size(); i += 3) input.points[i].mustPass = true;
        const FairLine found = fair(input);
        EXPECT_TRUE(found.settled) << seed << ": " << found.outcome;
        for (std::size_t i = seed % 3; i < input.points.size(); i += 3) {
            EXPECT_LT(std::abs(found.points[i].misfit_m), 1e-6) << seed;
        }
    }
}

TEST(Fair, EndsKeepTheHeadingsGiven) {
    for (std::uint32_t seed = 0; seed < 100; ++seed) {
        const test::RandomLine line = test::randomLine(seed);
        FairInput input = line.input();
        input.startHeading_rad = line.heading(0) + 0.05;
        input.endHeading_rad = line.heading(line.length_m) + 2 * pi;  // whole turns are one heading
        const FairLine found = fair(input);
        EXPECT_TRUE(found.settled) << seed << ": " << found.outcome;
        const double start = found.line.at(0).heading_rad - *input.startHeading_rad;
        const double end = found.line.at(found.line.length()).heading_rad - *input.endHeading_rad;
        EXPECT_LT(std::abs(std::remainder(start, 2 * pi)), 1e-6);
        EXPECT_LT(std::abs(std::remainder(end, 2 * pi)), 1e-6);
    }
}

TEST(Fair, WhatIsTakenOffACircleLeavesASmallerOne) {
    for (const double takeOff : {0.03, -0.03}) {
        FairInput input = onArc(1.5, 1.4, 15);  // its middle lies to the left
        input.takeOff_m = takeOff;
        const FairLine found = fair(input);
        EXPECT_TRUE(found.settled) << found.outcome;
        EXPECT_NEAR(found.line.length(), 1.4 * (1.5 - takeOff), 1e-5);
        for (const Place& place : sample(found.line, 0.05)) {
            EXPECT_NEAR(std::hypot(place.x_m, place.y_m - 1.5), 1.5 - takeOff, 1e-5);
            EXPECT_NEAR(1 / place.curvature_per_m, 1.5 - takeOff, 1e-3);
        }
        for (const Foot& foot : found.points) EXPECT_LT(std::abs(foot.misfit_m), 1e-5);
    }
}

TEST(Fair, SettlesFromThreePointsToFiveThousand) {
    for (const int count : {3, 4, 5, 6, 7, 8, 10, 15, 20, 26, 27, 50, 101, 102, 200, 500, 1500, 5000}) {
        FairInput input;
        for (int i = 0; i < count; ++i) {
            const double s = static_cast<double>(i) / (count - 1);
            const double x = 2 * s, y = 0.3 * std::sin(4 * s) + 0.1 * s;
            input.points.push_back({std::round(x / 0.0001) * 0.0001, std::round(y / 0.001) * 0.001});
        }
        input.readTo_m = 0.001;
        const FairLine found = fair(input);
        EXPECT_TRUE(found.settled) << count << ": " << found.outcome;
        for (const Foot& foot : found.points) EXPECT_LT(std::abs(foot.misfit_m), 0.0015875);
    }
}

TEST(Fair, SettlesOnSCurvesLoopsUprightEndsAndCrowdedPoints) {
    const auto settles = [](const char* what, const std::vector<Xy>& points) {
        for (const double within : {0.0, 0.0015875}) {
            FairInput input;
            input.fairWithin_m = within;
            for (const Xy& p : points) input.points.push_back({p.x_m, p.y_m});
            const FairLine found = fair(input);
            EXPECT_TRUE(found.settled) << what << ": " << found.outcome;
        }
    };
    settles("three over a semicircle", {{0, 0}, {1, 1}, {2, 0}});
    settles("an S of five", {{0, 0}, {0.5, 0.2}, {1, 0}, {1.5, -0.2}, {2, 0}});
    settles("an S of four", {{0, 0}, {1, 0.4}, {2, 0}, {3, 0.4}});
    settles("upright at both ends", {{0, 0}, {0.02, 0.5}, {0.4, 1}, {0.98, 1.1}, {1.36, 0.6}, {1.38, 0.1}});
    std::vector<Xy> loop, crowded;
    for (int i = 0; i < 12; ++i) loop.push_back({std::cos(0.52 * i), 0.7 * std::sin(0.52 * i)});
    settles("nearly a turn", loop);
    double x = 0;
    for (int i = 0; i < 30; ++i) {
        crowded.push_back({x, 0.2 * std::sin(1.5 * x)});
        x += i % 3 == 0 ? 0.4 : 0.004;
    }
    settles("crowded and coarse", crowded);
}

TEST(Fair, AThousandRandomLinesSettle) {
    for (std::uint32_t seed = 0; seed < 1000; ++seed) {
        const test::RandomLine line = test::randomLine(seed);
        const FairLine found = fair(line.input());
        EXPECT_TRUE(found.settled) << "seed " << seed << ": " << found.outcome;
        EXPECT_NEAR(found.line.length(), line.length_m, 0.02 * line.length_m);
    }
}

TEST(Fair, TwiceTheSameInputGivesTheSameBits) {
    const FairInput input = test::randomLine(5).input();
    const FairLine one = fair(input), other = fair(input);
    EXPECT_EQ(one.line.length(), other.line.length());
    EXPECT_EQ(one.smoothing_m5, other.smoothing_m5);
}

TEST(Fair, ImpossiblePointsAreRefusedAtTheirPlace) {
    FairInput input = onArc(1, 1, 5);
    input.points.resize(2);
    expectRefused(input, "line.points");
    input = onArc(1, 1, 5);
    input.points[3].x_m = std::nan("");
    expectRefused(input, "line.points[3]");
    input = onArc(1, 1, 5);
    input.points[2] = input.points[1];
    expectRefused(input, "line.points[2]");
    input = onArc(1, 1, 5);
    input.points[4] = input.points[0];
    input.points[4].y_m += 5e-10;
    expectRefused(input, "line.points[4]");
    try {
        fair(input);
    } catch (const units::InputError& error) {
        EXPECT_NE(error.wrong().find("line.points[0]"), std::string::npos) << "the other one is named too";
    }
}

TEST(Fair, ImpossibleConditionsAreRefusedAtTheirPlace) {
    FairInput input = onArc(1, 1, 5);
    input.readTo_m = -0.001;
    expectRefused(input, "line.read_to_mm");
    input = onArc(1, 1, 5);
    input.fairWithin_m = -0.001;
    expectRefused(input, "line.fair_within_mm");
    input = onArc(1, 1, 5);
    input.takeOff_m = std::numeric_limits<double>::infinity();
    expectRefused(input, "line.take_off_mm");
    input = onArc(1, 1, 5);
    input.startHeading_rad = pi;
    expectRefused(input, "line.start_heading_deg");
    input = onArc(1, 1, 5);
    input.endHeading_rad = 1 + pi;
    expectRefused(input, "line.end_heading_deg");
    input = onArc(1, 1, 5);
    input.startHeading_rad = 2 * pi;
    EXPECT_NO_THROW(fair(input));
}

}  // namespace fair_test
}  // namespace fayline::line
