#include "core/holding/closing.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "core/contact/gaps.hpp"
#include "core/holding/tail.hpp"
#include "core/math/count.hpp"
#include "tests/core/holding/made_work.hpp"

namespace fayline::holding {
namespace closing_test {

using made::Work;

const std::atomic<bool> goOn{false};

// One thin strip on a circle, held by narrow pads 300 mm apart.
constexpr double radius = 1.0;  // of the strip's middle
constexpr double half = 0.0015;
Work thinOnCircle() {
    Work work = made::workOn([](double) { return -1 / (radius - half); }, 1.0 - half, 1, {});
    work.piece.stack.strips[0].thickness_m = 2 * half;
    for (const double turned : {0.0, 0.3, 0.6, 0.9}) {
        work.piece.holding.stations.push_back(made::clampAt(turned * (radius - half), 2500, 0.006));
    }
    return work;
}

void expectHeldInTheEnd(const Work& work) {
    const std::vector<ClosingStep> steps = closeInOrder(work, goOn);
    const Held held = hold(work);
    ASSERT_EQ(steps.size(), held.stations.size());
    for (const ClosingStep& step : steps) EXPECT_EQ(step.outcome, Outcome::settled) << step.order;
    for (const HeldStation& station : held.stations) {
        if (station.index != steps.back().index) continue;
        EXPECT_NEAR(steps.back().pull_N, station.pull_N, 1e-4 * (1 + station.pull_N));
        EXPECT_NEAR(steps.back().gap_m, station.gap_m, 1e-9);
    }
}

TEST(Closing, GoesFromTheStartFromTheEndOrFromTheMiddleOutwards) {
    const std::vector<model::Station> stations = made::clampsAt({1.7, 0.1, 0.9, 0.4, 1.2});
    EXPECT_EQ(closingOrder(stations, model::From::start, 1.8), (std::vector<int>{1, 3, 2, 4, 0}));
    EXPECT_EQ(closingOrder(stations, model::From::end, 1.8), (std::vector<int>{0, 4, 2, 3, 1}));
    // 0.9 first, then the nearer of 0.4 and 1.2, then side by side.
    EXPECT_EQ(closingOrder(stations, model::From::middle, 1.8), (std::vector<int>{2, 4, 3, 0, 1}));
    EXPECT_EQ(closingOrder(made::clampsAt({0.9, 1.0, 1.1, 1.2}), model::From::middle, 1.8),
              (std::vector<int>{0, 1, 2, 3}));
    EXPECT_TRUE(closingOrder({}, model::From::middle, 1.8).empty());
}

// Source: geometry of the tangent (D). From the last held point a thin strip runs on along the tangent: 0.3 rad further
// it stands off R (1 / cos 0.3 - 1) = 46.75 mm. Within 2 %: the strip turns a little in the point that holds it.
TEST(Closing, TheFreeTailStandsOffByTheTangentOfACircle) {
    const std::vector<ClosingStep> steps = closeInOrder(thinOnCircle(), goOn);
    ASSERT_EQ(steps.size(), 4u);
    EXPECT_EQ(steps[0].standsOff_m, 0);
    for (std::size_t i = 1; i < 4; ++i) {
        EXPECT_NEAR(steps[i].standsOff_m, radius * (1 / std::cos(0.3) - 1), 0.02 * 0.04675) << i;
        EXPECT_EQ(steps[i].outcome, Outcome::settled);
    }
}

// Source: the same (D): a tail of length l on the tangent of a circle ends sqrt(R^2 + l^2) - R off it.
TEST(Closing, TheTipLiesWhereTheTangentEnds) {
    const Work work = thinOnCircle();
    const std::vector<ClosingStep> steps = closeInOrder(work, goOn);
    const double end = (work.line.length() + work.piece.stack.runsPastEnd_m) * radius / (radius - half);
    for (std::size_t i = 0; i < 3; ++i) {
        const double turned = 0.3 * static_cast<double>(i);
        const double tail = end - turned;
        const double off = std::sqrt(radius * radius + tail * tail) - radius;
        EXPECT_NEAR(steps[i].tailOff_m, off, 0.02 * off) << i;
        // About the centre (0, -(R - half)): out to the point held, along its tangent, half a strip outwards; the outer
        // corner reaches further by half a strip times what is yet to turn.
        const double ahead = tail + half * (end / radius - turned);
        const double x = (radius + half) * std::sin(turned) + ahead * std::cos(turned);
        const double y = (radius + half) * std::cos(turned) - ahead * std::sin(turned) - (radius - half);
        EXPECT_NEAR(steps[i].tip.x_m, x, 0.002) << i;
        EXPECT_NEAR(steps[i].tip.y_m, y, 0.002) << i;
    }
}

TEST(Closing, EndsAsTheWholePieceIsHeld) {
    expectHeldInTheEnd(made::workOn(made::stemCurvature, 1.8, 9, made::clampsAt({0.04, 0.3, 0.62, 1.0, 1.33, 1.76})));
    Work work =
        made::workOn([](double) { return -0.16; }, 1.91, 5, made::clampsAt({0, 0.32, 0.64, 0.956, 1.275, 1.595, 1.91}));
    work.piece.holding.from = model::From::middle;
    work.piece.form.kind = model::FormKind::posts;
    for (const model::Station& station : work.piece.holding.stations) {
        work.piece.form.posts.push_back({.at_m = station.at_m});
    }
    expectHeldInTheEnd(work);
    work = made::workOn(made::reverseCurvature, 1.1, 5, made::clampsAt({-0.03, 0.2, 0.45, 0.75, 0.9, 1.13}, 900));
    work.piece.holding.pads = model::Pads::slide;
    expectHeldInTheEnd(work);
}

// Every step against the whole of the strips on the form, held by the stations closed so far: what lies beyond the
// station being closed may be left out. Gentle curves, so that the tail's square to the form still meets it.
TEST(Closing, EveryStepIsThatOfTheWholeStripsHeldSoFar) {
    const auto expectSame = [](const Work& work) {
        const std::vector<ClosingStep> steps = closeInOrder(work, goOn);
        std::vector<model::Station> closed;
        for (std::size_t i = 0; i < steps.size(); ++i) {
            const model::Station& next = work.piece.holding.stations[steps[i].index];
            if (i > 0) {
                // A station of no strength asks how far off the stack is there.
                std::vector<model::Station> asked = closed;
                asked.push_back(made::clampAt(next.at_m, 0, 0));
                for (const HeldStation& station : holdWith(work, asked).stations) {
                    if (station.index != math::countOf(closed)) continue;
                    EXPECT_NEAR(steps[i].standsOff_m, station.gap_m, 1e-6 + 1e-4 * station.gap_m) << i;
                }
            }
            closed.push_back(next);
            ASSERT_EQ(steps[i].closed.size(), closed.size());
            EXPECT_EQ(steps[i].closed.back().pull_N, steps[i].pull_N);
            for (const HeldStation& station : holdWith(work, closed).stations) {
                const auto place = static_cast<std::size_t>(station.index);
                EXPECT_NEAR(steps[i].closed[place].pull_N, station.pull_N, 1e-4 * (1 + station.pull_N)) << i;
                EXPECT_EQ(steps[i].closed[place].index, steps[place].index);
            }
        }
    };
    Work work = made::workOn([](double) { return -0.16; }, 1.91, 5, made::clampsAt({0, 0.35, 0.7, 1.1, 1.5, 1.91}));
    for (const model::From from : {model::From::start, model::From::middle, model::From::end}) {
        work.piece.holding.from = from;
        expectSame(work);
    }
    // Round, hollow, round: the tail lies on the far side of the hollow.
    work = made::workOn([](double s) { return -0.25 * std::cos(2 * std::numbers::pi * s / 1.6); }, 1.6, 4,
                        made::clampsAt({0.05, 0.4, 0.8, 1.2, 1.55}));
    expectSame(work);
    work.piece.holding.from = model::From::middle;
    expectSame(work);
}

TEST(Closing, IsTheSameForAPieceWalkedFromItsOtherEnd) {
    const Work work =
        made::workOn(made::reverseCurvature, 1.1, 5, made::clampsAt({-0.03, 0.2, 0.45, 0.75, 0.9, 1.13}, 900));
    const std::vector<ClosingStep> one = closeInOrder(work, goOn);
    const std::vector<ClosingStep> other = closeInOrder(made::fromOtherEnd(work, made::reverseCurvature), goOn);
    ASSERT_EQ(one.size(), other.size());
    for (std::size_t i = 0; i < one.size(); ++i) {
        EXPECT_EQ(one[i].index, other[i].index);
        EXPECT_EQ(one[i].number, 7 - other[i].number);
        EXPECT_NEAR(one[i].pull_N, other[i].pull_N, 1e-4 * (1 + one[i].pull_N));
        EXPECT_NEAR(one[i].standsOff_m, other[i].standsOff_m, 1e-6) << i;
        EXPECT_NEAR(one[i].tailOff_m, other[i].tailOff_m, 1e-6) << i;
    }
}

// Tail, rod and tail are the strips, which do not stretch: the rod's length summed up over points 1 mm apart.
TEST(Closing, TheTailsAreAsLongAsWhatTheRodLeavesOfTheStrips) {
    const Work work = made::workOn([](double) { return -1.0; }, 1.6, 3, made::clampsAt({0.2, 1.2}, 5000));
    const Ready ready = makeReady(work);
    const double from = alongMiddle(ready.middle, 0.1);
    const double to = alongMiddle(ready.middle, 1.3);
    const Pressed pressed = press(ready, work, work.piece.holding.stations, from, to);
    const Contact contact = solve(pressed.problem);
    ASSERT_EQ(contact.outcome, Outcome::settled);
    std::vector<line::Xy> points;
    const int steps = static_cast<int>((to - from) / 0.001);
    for (int i = 0; i <= steps; ++i) {
        const double s = from + (to - from) * i / steps;
        const MiddleFrame frame = middleFrame(ready.middle, work.line, s);
        const double gap = gapAt(contact, s).gap_m;
        points.push_back({frame.point.x_m + gap * frame.away.x_m, frame.point.y_m + gap * frame.away.y_m});
    }
    const auto lengthOf = [](const std::vector<line::Xy>& along) {
        double length = 0;
        for (std::size_t i = 1; i < along.size(); ++i) {
            length += std::hypot(along[i].x_m - along[i - 1].x_m, along[i].y_m - along[i - 1].y_m);
        }
        return length;
    };
    const Tail before = tailOf(ready, work, pressed.problem, contact, false);
    const Tail after = tailOf(ready, work, pressed.problem, contact, true);
    const double strips = alongMiddle(ready.middle, ready.strips.to_m) - alongMiddle(ready.middle, ready.strips.from_m);
    EXPECT_NEAR(lengthOf(before.points) + lengthOf(points) + lengthOf(after.points), strips, 2e-6);
    EXPECT_GT(lengthOf(points) - (to - from), 1e-3);  // it springs clear: the rod is longer than the form under it
    // Each tail goes on from the rod's end.
    EXPECT_NEAR(before.points[0].x_m, points.front().x_m, 1e-9);
    EXPECT_NEAR(after.points[0].y_m, points.back().y_m, 1e-9);
}

TEST(Closing, StripsThatHaveTakenTheWholeCurveLieDownByThemselves) {
    Work work = made::workOn(made::stemCurvature, 1.8, 4, made::clampsAt({0.04, 0.3, 0.62, 1.0, 1.33, 1.76}));
    work.piece.stack.strips[0].bentBefore = model::BentBefore{.how = model::Softened::boiled, .set = 1};
    for (const ClosingStep& step : closeInOrder(work, goOn)) {
        EXPECT_LT(step.standsOff_m, 1e-4);
        EXPECT_LT(step.tailOff_m, 1e-4);
        EXPECT_LT(step.pull_N, 1);
    }
}

TEST(Closing, AStifferStackAsksForMoreAtEveryStation) {
    Work work = made::workOn([](double) { return -0.5; }, 1.5, 4, made::clampsAt({0.0, 0.4, 0.8, 1.2, 1.5}, 20000));
    const std::vector<ClosingStep> four = closeInOrder(work, goOn);
    work.piece.stack.strips[0].count = 8;
    const std::vector<ClosingStep> eight = closeInOrder(work, goOn);
    for (std::size_t i = 1; i < four.size(); ++i) EXPECT_GT(eight[i].pull_N, 1.1 * four[i].pull_N) << i;
}

TEST(Closing, SaysWhenTheTailReachesBelowTheFloor) {
    // The strips lie below a line that dips and then turns up; the tail runs on down its tangent, 0.2 m deep.
    Work work = made::workOn([](double) { return 0.8; }, 1.2, 4, made::clampsAt({0.05, 0.6, 1.15}), -0.2);
    work.piece.line.stripsOn = model::Side::right;
    for (model::Station& station : work.piece.holding.stations) {
        station.kind = model::HoldKind::prop;
        station.strut.footX_m = station.at_m;
        station.strut.footY_m = -0.3;
    }
    for (const ClosingStep& step : closeInOrder(work, goOn)) EXPECT_FALSE(step.floorInTheWay);
    for (model::Station& station : work.piece.holding.stations) station.strut.footY_m = -0.15;
    EXPECT_TRUE(closeInOrder(work, goOn).front().floorInTheWay);
    EXPECT_FALSE(closeInOrder(work, goOn).back().floorInTheWay);
    for (model::Station& station : work.piece.holding.stations) station.strut.to = model::PropTo::overhead;
    EXPECT_FALSE(closeInOrder(work, goOn).front().floorInTheWay);
}

TEST(Closing, StopsBetweenSteps) {
    const std::atomic<bool> stop{true};
    EXPECT_TRUE(closeInOrder(thinOnCircle(), stop).empty());
}

TEST(Closing, GivesNumbersForWhateverStationsThereAre) {
    std::mt19937 random(7);
    const auto uniform = [&](double from, double to) { return std::uniform_real_distribution<>(from, to)(random); };
    for (int trial = 0; trial < 25; ++trial) {
        const double bend = uniform(-1.5, 1.5);
        const double wave = uniform(-1.5, 1.5);
        Work work = made::workOn([&](double s) { return bend + wave * std::sin(4 * s); }, 1.2, 3, {});
        const int count = 1 + trial % 6;
        for (int i = 0; i < count; ++i) {
            model::Station station = made::clampAt(uniform(-0.2, 1.4), uniform(0, 2000), uniform(0, 0.06));
            station.side = i == 2;
            if (i == 3) {
                station.kind = model::HoldKind::strap;
                station.strap.to_m = station.at_m + 0.3;
            }
            work.piece.holding.stations.push_back(station);
        }
        work.piece.holding.from = static_cast<model::From>(trial % 3);
        const std::vector<ClosingStep> steps = closeInOrder(work, goOn);
        EXPECT_EQ(steps.size(), work.piece.holding.stations.size());
        for (const ClosingStep& step : steps) {
            EXPECT_TRUE(std::isfinite(step.pull_N + step.gap_m + step.standsOff_m + step.tailOff_m + step.tip.x_m +
                                      step.tip.y_m))
                << trial << " " << step.order;
            EXPECT_GE(step.standsOff_m, 0);
        }
    }
}

}  // namespace closing_test
}  // namespace fayline::holding
