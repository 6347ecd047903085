// The day of a piece as the clock needs it: other air, record and back, rates of a dry fit, what comes after.
#include "core/plan/day/day_clock.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/plan/day/day_learned.hpp"
#include "core/units/input_error.hpp"
#include "tests/core/plan/made_pieces.hpp"

namespace fayline::plan {
namespace day_clock_test {

using schedule::Event;
using schedule::EventKind;
using schedule::Work;

model::Piece clamped() {
    model::Piece piece = made::stem();
    for (const double at_m : {0.1, 0.6, 1.1, 1.7}) {
        piece.holding.stations.push_back({.at_m = at_m});
    }
    piece.holding.stations.back().kind = model::HoldKind::prop;
    return piece;
}

// Every task is done after `times` as long as planned.
std::vector<Event> wholeDay(const DayInHand& day, double times) {
    schedule::Run run = schedule::runOf(day.job);
    schedule::retime(day.job, std::vector<double>(run.tasks.size(), times), {}, run);
    std::vector<Event> events{{EventKind::started, 0}};
    for (std::size_t i = 0; i < run.tasks.size(); ++i) {
        const bool mixes = run.tasks[i].work == Work::mix;
        events.push_back({mixes ? EventKind::batchMixed : EventKind::done, run.tasks[i].end_s, static_cast<int>(i)});
    }
    std::ranges::stable_sort(events, {}, &Event::at_s);
    return events;
}

schedule::Now endOf(const DayInHand& day, const std::vector<Event>& events) {
    return schedule::stateAt(jobsOf(day, events), events, events.back().at_s);
}

TEST(DayClock, InTheAirThatWasPlannedForTheJobIsTheSame) {
    const DayInHand day = dayInHand(clamped(), made::shop(), 0, false);
    const schedule::Job same = jobInAir(day, day.piece.glue.air_C);
    EXPECT_DOUBLE_EQ(same.openTime_s, day.job.openTime_s);
    EXPECT_DOUBLE_EQ(same.wetOut_m2_s, day.job.wetOut_m2_s);
    EXPECT_DOUBLE_EQ(same.spread_m2_s, day.job.spread_m2_s);
    ASSERT_EQ(same.cups.size(), day.job.cups.size());
    ASSERT_FALSE(same.cups.empty());
    for (std::size_t i = 0; i < same.cups.size(); ++i) {
        EXPECT_DOUBLE_EQ(same.cups[i].useWithin_s, day.job.cups[i].useWithin_s);
    }
}

TEST(DayClock, WarmerAirShortensEveryTimeAsAPlanForThatAirDoes) {
    const DayInHand day = dayInHand(clamped(), made::shop(), 0, false);
    model::Piece warm = clamped();
    warm.glue.air_C = day.piece.glue.air_C + 4;
    const DayInHand planned = dayInHand(warm, made::shop(), 0, false);
    const schedule::Job job = jobInAir(day, warm.glue.air_C);
    EXPECT_DOUBLE_EQ(job.openTime_s, planned.job.openTime_s);
    EXPECT_LT(job.openTime_s, day.job.openTime_s);
    EXPECT_DOUBLE_EQ(job.spread_m2_s, planned.job.spread_m2_s);
    for (std::size_t i = 0; i < job.cups.size(); ++i) {
        EXPECT_LT(job.cups[i].useWithin_s, day.job.cups[i].useWithin_s);
    }
    EXPECT_NE(airSaid(day, warm.glue.air_C).find("22 °C"), std::string::npos) << airSaid(day, warm.glue.air_C);
}

TEST(DayClock, AirColderThanTheGlueAllowsIsSaid) {
    const DayInHand day = dayInHand(clamped(), made::shop(), 0, false);
    EXPECT_NE(airSaid(day, 8).find("colder than the glue allows (15 °C)"), std::string::npos) << airSaid(day, 8);
    EXPECT_EQ(airSaid(day, 18).find("colder"), std::string::npos);
}

TEST(DayClock, DryFitHasNoGlueAndLaysEveryStrip) {
    const DayInHand day = dayInHand(clamped(), made::shop(), 0, true);
    const schedule::Run run = schedule::runOf(day.job);
    EXPECT_EQ(run.tasks.size(), 9u + 1 + 1 + 4);
    EXPECT_TRUE(run.faces.empty());
    EXPECT_TRUE(run.cups.empty());
    EXPECT_EQ(run.tasks[0].name, "lay down strip 9");
    EXPECT_DOUBLE_EQ(run.end_s, 9 * 30 + 180 + 60 + 3 * 60 + 120);
}

TEST(DayClock, AGluingThatThereIsNotIsRefused) {
    EXPECT_THROW(dayInHand(clamped(), made::shop(), 1, false), units::InputError);
    model::Piece piece = clamped();
    piece.stack.gluings = {5};
    const DayInHand second = dayInHand(piece, made::shop(), 1, false);
    EXPECT_NE(beforeSaid(second).at(1).find("Glue-up 2 of 2"), std::string::npos);
    EXPECT_NE(beforeSaid(dayInHand(piece, made::shop(), 0, false)).at(1).find("break comes after strips 1 to 5"),
              std::string::npos);
}

TEST(DayClock, RecordSaysWhatHappenedAndComesBackAsEvents) {
    const DayInHand day = dayInHand(clamped(), made::shop(), 0, false);
    std::vector<Event> events = wholeDay(day, 1.25);
    events.insert(events.begin() + 2, {EventKind::airTyped, events[1].at_s + 1, -1, 0, 20.5});
    events.push_back({EventKind::stopped, events.back().at_s + 60});
    const model::Record record = recordOf(day, events, "2026-05-02T08:30");
    EXPECT_EQ(record.when, "2026-05-02T08:30");
    EXPECT_FALSE(record.dryFit);
    EXPECT_EQ(record.air_C, std::optional<double>(18));
    ASSERT_EQ(record.airs.size(), 1u);
    EXPECT_EQ(record.airs[0].air_C, 20.5);
    EXPECT_EQ(record.marks.front().task, "begin");
    EXPECT_EQ(record.marks.back().task, "end");

    const std::vector<Event> back = eventsOf(day, record);
    ASSERT_EQ(back.size(), events.size());
    const schedule::Now real = endOf(day, events);
    const schedule::Now again = endOf(day, back);
    EXPECT_EQ(real.states, again.states);
    EXPECT_TRUE(again.stopped);
    for (std::size_t i = 0; i < real.run.tasks.size(); ++i) {
        EXPECT_NEAR(real.run.tasks[i].end_s, again.run.tasks[i].end_s, 0.31);
    }
    EXPECT_NEAR(real.margin_s, again.margin_s, 2);
}

// Records of before had the tasks by their English names.
TEST(DayClock, ARecordWithTasksByTheirNamesIsStillRead) {
    const DayInHand day = dayInHand(clamped(), made::shop(), 0, false);
    const schedule::Run run = schedule::runOf(day.job);
    const std::vector<std::string> words = schedule::taskWords(run);
    const auto indexOf = [&](const std::string& word) {
        return static_cast<int>(std::ranges::find(words, word) - words.begin());
    };
    const auto mark = [](const std::string& task, double at_s) { return model::TimeMark{.task = task, .at_s = at_s}; };
    const std::size_t strip = static_cast<std::size_t>(indexOf("wet_out:9"));
    ASSERT_LT(strip, words.size());
    model::Record old;
    old.marks = {mark("begin", 0),  mark("begin " + run.tasks[strip].name, 60), mark("pause", 70),
                 mark("go on", 80), mark(run.tasks[strip].name, 100),           mark("stop after strip 3", 200),
                 mark("end", 300)};
    model::Record newer = old;
    newer.marks[1].task = "begin:wet_out:9";
    newer.marks[3].task = "go_on";
    newer.marks[4].task = "wet_out:9";
    newer.marks[5].task = "stop_after:3";
    const std::vector<Event> events = eventsOf(day, old);
    ASSERT_EQ(events.size(), 7u);
    EXPECT_EQ(events, eventsOf(day, newer));
    EXPECT_EQ(events[1].task, static_cast<int>(strip));
    EXPECT_EQ(events[5].strip, 3);
}

TEST(DayClock, WhatWasTakenBackIsNotInTheRecord) {
    const DayInHand day = dayInHand(clamped(), made::shop(), 0, true);
    const std::vector<Event> events{{EventKind::started, 0},
                                    {EventKind::done, 20, 0},
                                    {EventKind::done, 25, 1},
                                    {EventKind::undone, 27, 1},
                                    {EventKind::done, 66, 1}};
    const model::Record record = recordOf(day, events, "2026-05-02T08:30");
    ASSERT_EQ(record.marks.size(), 3u);
    EXPECT_EQ(record.marks[2].task, "spread:8");
    EXPECT_DOUBLE_EQ(record.marks[2].at_s, 66);
    EXPECT_TRUE(record.dryFit);
    EXPECT_FALSE(record.air_C);
}

TEST(DayClock, DryFitGivesTheRatesItMeasuredAndLeavesTheOthers) {
    const DayInHand day = dayInHand(clamped(), made::shop(), 0, true);
    // Nine strips at 40 s, carrying 300 s, laying down 90 s, clamps 50, 70 and 90 s, the prop 200 s.
    std::vector<Event> events{{EventKind::started, 0}};
    double at_s = 0;
    const std::vector<double> lasts{40, 40, 40, 40, 40, 40, 40, 40, 40, 300, 90, 50, 70, 90, 200};
    for (std::size_t i = 0; i < lasts.size(); ++i) {
        at_s += lasts[i];
        events.push_back({EventKind::done, at_s, static_cast<int>(i)});
    }
    const RatesLearned learned = ratesOf(day, endOf(day, events));
    model::Rates expected = day.piece.crew.rates;
    expected.stackStrip_s = 40;
    expected.carry_s = 300;
    expected.station.clamp_s = 70;
    expected.station.prop_s = 200;
    EXPECT_EQ(learned.rates, expected);
    EXPECT_EQ(learned.said.size(), 4u);

    const std::vector<Compared> rows = comparedOf(day, endOf(day, events));
    ASSERT_EQ(rows.size(), 5u);
    EXPECT_EQ(rows[0].what, "lay down a strip");
    EXPECT_EQ(rows[0].count, 9);
    EXPECT_DOUBLE_EQ(rows[0].planned_s, 270);
    EXPECT_DOUBLE_EQ(rows[0].real_s, 360);
    EXPECT_EQ(rows[3].what, "close a clamp");
}

TEST(DayClock, RatesAdoptedFromADayPlanThatVeryDay) {
    model::Piece piece = clamped();
    piece.glue.adhesive = "epoxy_2_1_slow";  // with as many cups for whoever is slower
    const DayInHand day = dayInHand(piece, made::shop(), 0, false);
    const schedule::Now real = endOf(day, wholeDay(day, 1.5));
    model::Piece adopted = piece;
    adopted.crew.rates = ratesOf(day, real).rates;
    const DayInHand after = dayInHand(adopted, made::shop(), 0, false);
    // Laying the fixed end down has no rate, and handling a strip keeps its time: the rest is as it was measured.
    const schedule::Run run = schedule::runOf(after.job);
    if (run.tasks.size() == real.run.tasks.size()) {
        EXPECT_NEAR(run.closed_s, real.run.closed_s, 0.03 * real.run.closed_s);
    } else {
        ADD_FAILURE() << "other cups: choose a piece with fewer";
    }
}

TEST(DayClock, ADayThatWentAsPlannedTeachesNothing) {
    const DayInHand day = dayInHand(clamped(), made::shop(), 0, false);
    const RatesLearned learned = ratesOf(day, endOf(day, wholeDay(day, 1)));
    EXPECT_EQ(learned.rates, day.piece.crew.rates);
    EXPECT_TRUE(learned.said.empty());
}

TEST(DayClock, CautionsGoWithTheWork) {
    const DayInHand day = dayInHand(clamped(), made::shop(), 0, false);
    const auto says = [&](const std::vector<Event>& events, const char* word) {
        return std::ranges::any_of(cautionsFor(day, endOf(day, events)),
                                   [&](const std::string& text) { return text.find(word) != std::string::npos; });
    };
    const std::vector<Event> start{{EventKind::started, 0}};
    EXPECT_TRUE(says(start, "Gloves and fresh air"));
    EXPECT_FALSE(says(start, "whips"));
    std::vector<Event> closing = wholeDay(day, 1);
    closing.resize(closing.size() - 3);
    EXPECT_TRUE(says(closing, "whips"));
    EXPECT_TRUE(says(closing, "Props and jacks"));
    EXPECT_TRUE(says(closing, "Local rules"));
}

TEST(DayClock, AfterwardsItSaysWhenClampsComeOff) {
    const DayInHand day = dayInHand(clamped(), made::shop(), 0, false);
    const std::vector<Event> events = wholeDay(day, 1);
    const std::vector<std::string> said = afterSaid(day, endOf(day, events), 8.5 * 3600);
    ASSERT_EQ(said.size(), 3u);
    EXPECT_NE(said[0].find("The last station was on at "), std::string::npos);
    EXPECT_NE(said[1].find("Squeeze-out is soft until"), std::string::npos);
    EXPECT_NE(said[2].find("clamps may come off at"), std::string::npos) << said[2];
    const std::vector<std::string> early = afterSaid(day, endOf(day, {events.begin(), events.begin() + 4}), 0);
    EXPECT_NE(early.at(0).find("ended the day before the last station"), std::string::npos);
}

}  // namespace day_clock_test
}  // namespace fayline::plan
