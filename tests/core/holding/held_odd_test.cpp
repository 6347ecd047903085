// The stack pressed on its form where something is odd: every answer is a number or says why there is none.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "core/holding/held.hpp"
#include "core/units/input_error.hpp"
#include "tests/core/holding/made_work.hpp"

namespace fayline::holding {
namespace held_odd_test {

using made::clampedStem;
using made::Work;

TEST(Held, NothingThatAStationMayBeBreaksIt) {
    const auto finite = [](const Held& held) {
        double sum = held.largest.gap_m + held.gapAtStart_m + held.gapAtEnd_m + held.greatestPressure_Pa;
        for (const HeldStation& station : held.stations) sum += station.pull_N + station.gap_m + station.most_N;
        for (const HeldSample& sample : held.samples) sum += sample.gap_m + sample.pressure_Pa + sample.moment_N_m;
        return std::isfinite(sum);
    };
    Work work = clampedStem();
    work.piece.holding.stations.push_back(made::clampAt(0.62));  // upon another
    EXPECT_TRUE(finite(hold(work)));
    work.piece.holding.stations.push_back(made::clampAt(0.621, 2500, 0));
    EXPECT_TRUE(finite(hold(work)));

    work = clampedStem();
    work.piece.holding.stations[2].most_N = 0;
    const Held weak = hold(work);
    EXPECT_TRUE(finite(weak));
    EXPECT_EQ(weak.stations[2].pull_N, 0);

    work = clampedStem();
    work.piece.holding.stations.push_back(made::clampAt(2.5));  // off the strips
    const Held off = hold(work);
    EXPECT_TRUE(finite(off));
    EXPECT_EQ(off.stations.back().pull_N, 0);
    EXPECT_NEAR(off.largest.gap_m, hold(clampedStem()).largest.gap_m, 1e-9);

    work = clampedStem();
    work.piece.holding.stations.back().side = true;  // only keeps the pile in line
    EXPECT_EQ(hold(work).stations.back().pull_N, 0);

    work.piece.holding.stations.clear();
    EXPECT_TRUE(finite(hold(work)));
    EXPECT_TRUE(hold(work).stations.empty());
    work.piece.holding.stations = made::clampsAt({0.7});
    EXPECT_TRUE(finite(hold(work)));
}

TEST(Held, SaysWhenTheStackSpringsClearUntilAnEndSlipsOut) {
    const auto held = [](double between_m) {
        return hold(made::workOn([](double) { return -1.0; }, between_m + 0.2, 2,
                                 made::clampsAt({0.1, between_m + 0.1}, 5000)));
    };
    // A bend of a metre's radius, held at both ends only.
    const Held oneRadius = held(1.0);
    EXPECT_EQ(oneRadius.outcome, Outcome::settled);
    EXPECT_GT(oneRadius.largest.gap_m, 0.003);
    EXPECT_EQ(held(2.8).outcome, Outcome::notConverged);
}

TEST(Held, GivesNumbersForWhateverPieceThereIs) {
    std::mt19937 random(3);
    const auto uniform = [&](double from, double to) { return std::uniform_real_distribution<>(from, to)(random); };
    int settled = 0;
    constexpr int trials = 60;
    for (int trial = 0; trial < trials; ++trial) {
        const double bend = uniform(-0.8, 0.8);
        const double wave = uniform(-0.8, 0.8);
        const double often = uniform(1, 5);
        const double length = uniform(0.6, 2.5);
        Work work =
            made::workOn([&](double s) { return bend + wave * std::sin(often * s); }, length, 1 + trial % 9, {});
        model::Piece& piece = work.piece;
        piece.stack.strips[0].thickness_m = uniform(0.003, 0.01);
        if (trial % 3 == 0) piece.stack.strips[0].tapersTo_m = uniform(0.003, 0.01);
        if (trial % 4 == 0) piece.stack.scarfedStart = model::Scarf{.slope = uniform(4, 8)};
        piece.stack.runsPastStart_m = uniform(0, 0.3);
        piece.stack.runsPastEnd_m = uniform(0, 0.3);
        piece.form.kind = static_cast<model::FormKind>(trial % 3);
        const int count = 2 + trial % 7;
        for (int i = 0; i < count; ++i) {
            piece.holding.stations.push_back(
                made::clampAt(length * i / (count - 1), uniform(0, 4000), uniform(0, 0.06)));
            piece.form.posts.push_back({.at_m = piece.holding.stations.back().at_m});
        }
        const Held held = hold(work);
        settled += held.outcome != Outcome::notConverged;
        ASSERT_EQ(held.stations.size(), piece.holding.stations.size());
        for (const HeldStation& station : held.stations) {
            EXPECT_TRUE(std::isfinite(station.pull_N + station.gap_m)) << trial;
            EXPECT_GE(station.pull_N, 0) << trial;
            EXPECT_LE(station.pull_N, station.most_N * (1 + 1e-12)) << trial;
        }
        for (const HeldSample& sample : held.samples) {
            EXPECT_TRUE(std::isfinite(sample.gap_m + sample.pressure_Pa + sample.moment_N_m)) << trial;
        }
    }
    EXPECT_GE(settled, trials * 9 / 10);
}

TEST(Held, SaysWhereThereIsNoContactToSolve) {
    Work work = made::workOn([](double) { return 20.0; }, 0.1, 9, made::clampsAt({0.05}));  // hollow, radius 50 mm
    const Held noRoom = hold(work);
    EXPECT_EQ(noRoom.outcome, Outcome::notPressed);
    EXPECT_EQ(noRoom.notPressed, NotPressed::noRoom);
    EXPECT_TRUE(noRoom.samples.empty());
    ASSERT_EQ(noRoom.stations.size(), 1u);
    EXPECT_EQ(noRoom.stations[0].pull_N, 0);

    work = clampedStem();
    work.piece.form.kind = model::FormKind::posts;  // and no post
    EXPECT_EQ(hold(work).outcome, Outcome::notPressed);
    EXPECT_EQ(hold(work).notPressed, NotPressed::unsupported);
}

TEST(Held, SolvesNoContactOfStripsThatWouldBreakThreeTimesOver) {
    const auto bentTo = [](double radius_m) {
        Effort effort;
        Work work = made::workOn([=](double) { return -1 / radius_m; }, 0.4, 1, made::clampsAt({0.05, 0.2, 0.35}));
        work.piece.stack.strips[0].breaksAt = 0.01;
        StackOnForm on = work;
        on.effort = &effort;
        Held held = hold(on);
        EXPECT_EQ(held.notPressed == NotPressed::none, effort.steps > 0);
        return held;
    };
    // A strip t thick is strained by t / 2R of its own middle: thrice 1 % at 33.3 times half of it.
    const double half_m = model::Strips{}.thickness_m / 2;
    const Held under = bentTo(half_m / 0.0295 - half_m);
    EXPECT_EQ(under.notPressed, NotPressed::none);
    EXPECT_NEAR(under.worstStrain.share, 2.95, 1e-6);
    const Held over = bentTo(half_m / 0.0305 - half_m);
    EXPECT_EQ(over.outcome, Outcome::notPressed);
    EXPECT_EQ(over.notPressed, NotPressed::breaks);
    EXPECT_NEAR(over.worstStrain.share, 3.05, 1e-6);
    EXPECT_TRUE(over.samples.empty());
    EXPECT_EQ(over.stations.size(), 3u);
}

TEST(Held, IsNotSolvedOnceTheEffortHasEnded) {
    const Work work = clampedStem();
    StackOnForm on = work;
    std::atomic<bool> stop{true};
    Effort stopped{&stop};
    on.effort = &stopped;
    EXPECT_EQ(hold(on).outcome, Outcome::notConverged);
    EXPECT_EQ(stopped.steps, 0);
    Effort little{nullptr, 3000};
    on.effort = &little;
    EXPECT_EQ(hold(on).outcome, Outcome::notConverged);
    EXPECT_LE(little.steps, 8);
    Effort enough;
    on.effort = &enough;
    EXPECT_EQ(hold(on).outcome, Outcome::settled);
    EXPECT_EQ(hold(on).steps, hold(work).steps);
    EXPECT_GT(enough.spent, 3000);
}

TEST(Held, RefusesForcesThatAreNone) {
    Work work = clampedStem();
    const auto pathOf = [&] {
        try {
            hold(work);
        } catch (const units::InputError& error) {
            return error.path();
        }
        return std::string("nothing refused");
    };
    work.piece.holding.stations[3].most_N = -1;
    EXPECT_EQ(pathOf(), "holding.stations[3].most_N");
    work = clampedStem();
    work.piece.holding.stations[1].pull_N = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(pathOf(), "holding.stations[1].pull_N");
    work = clampedStem();
    work.piece.holding.stations[1].at_m = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(pathOf(), "holding.stations[1].at_mm");
    work = clampedStem();
    work.piece.holding.stations[1].pad_m = -0.01;
    EXPECT_EQ(pathOf(), "holding.stations[1].pad_mm");
    work = clampedStem();
    work.piece.stack.strips[0].species = "plastic";
    EXPECT_EQ(pathOf(), "stack.strips[0].species");
}

}  // namespace held_odd_test
}  // namespace fayline::holding
