// A recorded day beside its plan: figures known beforehand, because the day was made from the plan's own times.
#include "core/plan/day/past_day.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/io/file.hpp"
#include "tests/core/plan/made_pieces.hpp"

namespace fayline::plan {
namespace past_day_test {

constexpr double markedTo_s = 0.31;  // a record has hundredths of a minute

// The tasks of `day`, each `times` as long as planned, that end by `until_s`.
model::Record workedAt(const DayInHand& day, double times, double until_s = 1e9) {
    schedule::Run run = schedule::runOf(day.job);
    schedule::retime(day.job, std::vector<double>(run.tasks.size(), times), {}, run);
    std::vector<schedule::Event> events{{schedule::EventKind::started, 0}};
    for (std::size_t i = 0; i < run.tasks.size(); ++i) {
        if (run.tasks[i].end_s > until_s) continue;
        const bool mixes = run.tasks[i].work == schedule::Work::mix;
        events.push_back({mixes ? schedule::EventKind::batchMixed : schedule::EventKind::done, run.tasks[i].end_s,
                          static_cast<int>(i)});
    }
    std::ranges::stable_sort(events, {}, &schedule::Event::at_s);
    return recordOf(day, events, "2026-05-02T08:30");
}

struct Tiller {
    model::Boat boat = io::loadBoat(FAYLINE_SAMPLES "/marram.fayline");
    Shop shop = shopOf(boat);
    model::Piece piece = *std::ranges::find(boat.pieces, "Tiller", &model::Piece::name);
    Tiller() { piece.crew.rates.soak_s = 0; }  // a wait does not follow the pace

    DayInHand day(bool dryFit = false) const { return dayInHand(piece, shop, 0, dryFit); }
    std::optional<PastDay> past(const model::Record& record) const {
        return pastDay(piece, shop, makePlan(piece, shop).day, record);
    }
};

TEST(PastDay, ADayThatTookAFifthLongerStandsBesideItsPlan) {
    const Tiller tiller;
    const DayInHand day = tiller.day();
    const schedule::Run planned = schedule::runOf(day.job);
    const std::optional<PastDay> past = tiller.past(workedAt(day, 1.2));
    ASSERT_TRUE(past);
    EXPECT_EQ(past->plannedClosed_s, planned.closed_s);
    EXPECT_EQ(past->plannedEnd_s, planned.end_s);
    ASSERT_TRUE(past->closed_s);
    EXPECT_NEAR(*past->closed_s, 1.2 * planned.closed_s, markedTo_s);
    EXPECT_NEAR(past->end_s, 1.2 * planned.end_s, markedTo_s);
    EXPECT_NEAR(past->pace.value_or(0), 1.2, 0.005);
    EXPECT_EQ(past->batches, math::countOf(day.job.cups));
    EXPECT_EQ(past->plannedBatches, past->batches);
    ASSERT_EQ(past->tasks.size(), planned.tasks.size());
    for (std::size_t i = 0; i < planned.tasks.size(); ++i) {
        EXPECT_EQ(past->tasks[i].name, planned.tasks[i].name);
        ASSERT_TRUE(past->tasks[i].start_s && past->tasks[i].took_s) << past->tasks[i].name;
        EXPECT_NEAR(*past->tasks[i].start_s + *past->tasks[i].took_s, 1.2 * planned.tasks[i].end_s, markedTo_s);
    }
    EXPECT_FALSE(past->learned.said.empty());
    EXPECT_NEAR(past->learned.rates.mix_s, 1.2 * tiller.piece.crew.rates.mix_s, 1);
}

TEST(PastDay, WhatWasNotDoneHasNoTimes) {
    const Tiller tiller;
    const DayInHand day = tiller.day();
    const double half_s = schedule::runOf(day.job).closed_s / 2;
    const std::optional<PastDay> past = tiller.past(workedAt(day, 1, half_s));
    ASSERT_TRUE(past);
    EXPECT_FALSE(past->closed_s);
    EXPECT_LE(past->end_s, half_s + markedTo_s);
    EXPECT_FALSE(past->tasks.back().took_s);
    EXPECT_TRUE(past->tasks.front().took_s);
}

TEST(PastDay, ADryFitIsHeldAgainstTheSameWorkWithoutGlue) {
    const Tiller tiller;
    const DayInHand day = tiller.day(true);
    const std::optional<PastDay> past = tiller.past(workedAt(day, 0.5));
    ASSERT_TRUE(past);
    EXPECT_EQ(past->plannedClosed_s, schedule::runOf(day.job).closed_s);
    EXPECT_LT(past->plannedClosed_s, schedule::runOf(tiller.day().job).closed_s);
    EXPECT_EQ(past->plannedBatches, 0);
    EXPECT_NEAR(past->pace.value_or(0), 0.5, 0.02);
}

// The plan it is held against is that of the piece as it was then.
TEST(PastDay, ALaterChangeOfTheStackDoesNotRewriteTheDay) {
    Tiller tiller;
    const model::Record record = workedAt(tiller.day(), 1);
    const std::optional<PastDay> before = tiller.past(record);
    EXPECT_FALSE(hasChangedSince(tiller.piece, record));
    tiller.piece.stack.strips[0].count += 3;
    EXPECT_TRUE(hasChangedSince(tiller.piece, record));
    const std::optional<PastDay> after = tiller.past(record);
    ASSERT_TRUE(before && after);
    EXPECT_EQ(after->plannedClosed_s, before->plannedClosed_s);
    EXPECT_EQ(after->tasks.size(), before->tasks.size());
    EXPECT_EQ(after->closed_s, before->closed_s);
}

TEST(PastDay, ARecordThatTimesNothingSaysNothing) {
    const Tiller tiller;
    model::Record record;
    record.when = "2026-05-02T08:30";
    EXPECT_FALSE(tiller.past(record));
    record.marks.push_back({"plane the keel", 60, {}});
    EXPECT_FALSE(tiller.past(record));
}

}  // namespace past_day_test
}  // namespace fayline::plan
