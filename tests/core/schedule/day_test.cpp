// The day as it goes, against days worked by hand.
#include "core/schedule/day.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/math/count.hpp"
#include "core/units/input_error.hpp"
#include "tests/core/schedule/made_job.hpp"

namespace fayline::schedule {
namespace day_test {

// One pair of hands, two strips, one face. Planned, in seconds:
//   0 mix batch 1 0..240         4 spread strip 2 780..870     8 close clamp 2 1260..1320
//   1 wet out strip 1 240..390   5 spread strip 1 870..960     9 scrape 1320..1420
//   2 wet out strip 2 390..540   (6 carry 960..1140, then)
//   3 mix batch 2 540..780       7 place 1140..1200, close clamp 1 1200..1260
// The face is wetted at 240, closed at 1320, open until 2040: 720 in hand.
Job twoStrips() {
    return {.hands = 1,
            .strips = {{1, 0.6, 0.6}, {2, 0.6, 0.6}},
            .faces = {1},
            .cups = {{1, CupFor::wetOut, 900, 1.2}, {2, CupFor::spread, 600, 1.2}},
            .stations = {{1, "clamp", 60}, {2, "clamp", 60}},
            .openTime_s = 1800,
            .mix_s = 240,
            .wetOut_m2_s = 0.005,
            .spread_m2_s = 0.01,
            .stackStrip_s = 30,
            .carry_s = 180,
            .place_s = 60,
            .scrape_s = 100};
}
enum Tasks { mix1, wet1, wet2, mix2, spread2, spread1, carry, place, clamp1, clamp2, scrape };

Event started(double at_s) {
    return {EventKind::started, at_s};
}
Event done(double at_s, int task) {
    return {EventKind::done, at_s, task};
}
Event said(EventKind kind, double at_s, int task = -1) {
    return {kind, at_s, task};
}

Now at(double at_s, const std::vector<Event>& events, const Job& job = twoStrips()) {
    return stateAt({{0, job}}, events, at_s);
}

std::vector<Event> doneUpTo(int last, const Run& run) {
    std::vector<Event> events{started(0)};
    for (int i = 0; i <= last; ++i) events.push_back(done(run.tasks[i].end_s, i));
    return events;
}

bool warned(const Now& now, WarningKind kind) {
    return std::ranges::any_of(now.warnings, [&](const Warning& w) { return w.kind == kind; });
}

TEST(Day, BeforeItIsStartedNothingRuns) {
    const Now now = at(500, {});
    EXPECT_FALSE(now.started);
    EXPECT_EQ(now.at_s, 0);
    EXPECT_TRUE(now.doing.empty());
    EXPECT_EQ(now.next, std::vector<int>{mix1});
    EXPECT_DOUBLE_EQ(now.margin_s, 720);
    EXPECT_TRUE(now.warnings.empty());
}

TEST(Day, AsPlannedEveryTaskBeginsAndEndsAsWorkedByHand) {
    const schedule::Run run = runOf(twoStrips());
    const std::vector<double> ends{240, 390, 540, 780, 870, 960, 1140, 1200, 1260, 1320, 1420};
    ASSERT_EQ(run.tasks.size(), ends.size());
    for (int i = 0; i < math::countOf(ends); ++i) {
        ASSERT_NEAR(run.tasks[i].end_s, ends[i], 1e-9);
        const Now now = at(ends[i] - 1, doneUpTo(i - 1, run));
        EXPECT_EQ(now.doing, std::vector<int>{i});
        EXPECT_EQ(now.ofHands, std::vector<int>{i});
        EXPECT_EQ(now.next, i == scrape ? std::vector<int>{} : std::vector<int>{i + 1});
        EXPECT_NEAR(now.margin_s, 720, 1e-9);
        EXPECT_NEAR(now.behind_s, 0, 1e-9);
    }
    EXPECT_TRUE(at(1420, doneUpTo(scrape, run)).finished);
}

TEST(Day, CupAndFaceCountFromTheirRealStart) {
    const std::vector<Event> events{started(0), said(EventKind::batchMixed, 300, mix1)};
    const Now now = at(400, events);
    EXPECT_EQ(now.doing, std::vector<int>{wet1});
    ASSERT_EQ(now.cups.size(), 1u);
    EXPECT_TRUE(now.cups[0].mixed);
    EXPECT_DOUBLE_EQ(now.cups[0].left_s, 900 - 400);  // mixing began at 0
    ASSERT_EQ(now.faces.size(), 1u);
    EXPECT_DOUBLE_EQ(now.faces[0].left_s, 1800 - 100);  // wetted from 300 on
    EXPECT_DOUBLE_EQ(now.run.closed_s, 1380);
    EXPECT_DOUBLE_EQ(now.margin_s, 300 + 1800 - 1380);
    EXPECT_DOUBLE_EQ(now.behind_s, 60);
}

TEST(Day, MixingBegunLaterIsCountedFromThenWhereItIsSaid) {
    const Now now = at(400, {started(0), {EventKind::started, 100, mix1}, said(EventKind::batchMixed, 300, mix1)});
    EXPECT_DOUBLE_EQ(now.cups.at(0).mixedFrom_s, 100);
    EXPECT_DOUBLE_EQ(now.cups.at(0).left_s, 600);
}

TEST(Day, TaskDoneLateTakesItsTrueTimeAndTheRestIsPlannedAnew) {
    const Now now = at(700, {started(0), done(300, mix1), done(700, wet1)});
    EXPECT_EQ(now.doing, std::vector<int>{wet2});
    EXPECT_DOUBLE_EQ(now.run.tasks[wet1].start_s, 300);
    EXPECT_DOUBLE_EQ(now.run.tasks[wet2].start_s, 700);
    EXPECT_DOUBLE_EQ(now.run.closed_s, 1630);  // 1320 and 310 late
    EXPECT_DOUBLE_EQ(now.margin_s, 300 + 1800 - 1630);
}

TEST(Day, TaskThatTakesLongerThanPlannedPushesWhatFollows) {
    const std::vector<Event> events{started(0), done(300, mix1), done(700, wet1)};
    EXPECT_DOUBLE_EQ(at(849, events).margin_s, 470);  // until 850 as planned
    EXPECT_DOUBLE_EQ(at(1000, events).margin_s, 320);
    EXPECT_EQ(at(1000, events).doing, std::vector<int>{wet2});
}

TEST(Day, CupPastItsTimeIsAStop) {
    const std::vector<Event> events{started(0), done(300, mix1), done(700, wet1)};
    EXPECT_FALSE(warned(at(700, events), WarningKind::cupShort));
    EXPECT_TRUE(warned(at(740, events), WarningKind::cupShort));  // less than a fifth of 900 left
    const Now over = at(1020, events);
    EXPECT_DOUBLE_EQ(over.cups.at(0).left_s, -120);
    ASSERT_TRUE(warned(over, WarningKind::cupOver));
    EXPECT_TRUE(over.warnings[0].stop);
    EXPECT_EQ(over.warnings[0].cup, 1);
    EXPECT_DOUBLE_EQ(over.warnings[0].by_s, 120);
    // Used up at last: it is no cup in hand any more.
    std::vector<Event> used = events;
    used.push_back(done(1030, wet2));
    const Now after = at(1040, used);
    ASSERT_EQ(after.cups.size(), 1u);
    EXPECT_EQ(after.cups[0].number, 2);
    EXPECT_FALSE(after.cups[0].mixed);
}

TEST(Day, PauseStopsTheWorkButNotTheGlue) {
    const std::vector<Event> paused{started(0), done(300, mix1), said(EventKind::paused, 400)};
    const Now during = at(450, paused);
    EXPECT_TRUE(during.paused);
    EXPECT_DOUBLE_EQ(during.run.tasks[wet1].end_s, 500);
    std::vector<Event> resumed = paused;
    resumed.push_back(said(EventKind::resumed, 520));
    const Now after = at(520, resumed);
    EXPECT_FALSE(after.paused);
    EXPECT_DOUBLE_EQ(after.run.tasks[wet1].end_s, 570);  // 100 worked, 120 rested, 50 to go
    EXPECT_DOUBLE_EQ(after.faces.at(0).left_s, 1800 - 220);
    EXPECT_DOUBLE_EQ(after.margin_s, 720 - 120);
}

TEST(Day, UndoneTaskIsUnderWayAgainSinceItBegan) {
    std::vector<Event> events{started(0), done(300, mix1), done(450, wet1)};
    const Now before = at(460, events);
    EXPECT_EQ(before.doing, std::vector<int>{wet2});
    ASSERT_EQ(before.toUndo, std::optional<int>(wet1));
    events.push_back(said(EventKind::undone, 460, wet1));
    const Now after = at(460, events);
    EXPECT_EQ(after.doing, std::vector<int>{wet1});
    EXPECT_DOUBLE_EQ(after.run.tasks[wet1].start_s, 300);
    EXPECT_EQ(after.toUndo, std::optional<int>(mix1));
    events.push_back(done(500, wet1));
    EXPECT_DOUBLE_EQ(at(500, events).run.tasks[wet1].end_s, 500);
}

TEST(Day, AirTypedAnewUsesUpWhatIsLeftAtItsOwnRate) {
    Job warmer = twoStrips();
    warmer.openTime_s = 900;
    warmer.cups[0].useWithin_s = 450;
    const std::vector<Event> events{started(0), done(300, mix1), {EventKind::airTyped, 400, -1, 0, 26}};
    const Now now = stateAt({{0, twoStrips()}, {400, warmer}}, events, 450);
    // Of the face 100 of 1800 are used, 17/18 of 900 = 850 remain from 400 on; of the cup 400 of 900, 5/9 of 450 = 250.
    EXPECT_NEAR(now.faces.at(0).openUntil_s, 400 + 850, 1e-9);
    EXPECT_NEAR(now.cups.at(0).useBy_s, 400 + 250, 1e-9);
    EXPECT_NEAR(now.margin_s, 1250 - 1380, 1e-9);
    EXPECT_TRUE(warned(now, WarningKind::faceLate));
    // What is mixed from then on knows the new air only.
    EXPECT_NEAR(now.run.cups[1].useBy_s - now.run.cups[1].mixedFrom_s, 600, 1e-9);
}

TEST(Day, LivesInSeveralAirsAddUpToOne) {
    const std::vector<LifeFrom> lives{{0, 100}, {50, 200}, {150, 50}};
    // From 0: 50/100, 100/200, so all is used at 150. From 100: 50/200, then three quarters of 50.
    EXPECT_DOUBLE_EQ(whenUsedUp(0, lives), 150);
    EXPECT_DOUBLE_EQ(whenUsedUp(100, lives), 150 + 37.5);
    EXPECT_DOUBLE_EQ(whenUsedUp(10, lives), 150 + 0.1 * 50);
    EXPECT_DOUBLE_EQ(whenUsedUp(300, lives), 350);
}

TEST(Day, OtherTasksForAnotherAirAreRefused) {
    Job other = twoStrips();
    other.stations.pop_back();
    EXPECT_THROW(stateAt({{0, twoStrips()}, {10, other}}, {started(0)}, 20), units::InputError);
}

TEST(Day, PaceOfWhatWasDoneIsToldBesideThePlan) {
    // Mixing 480 for 240, wetting 300 for 150 each: half as fast. Left at 1080 as planned: 780.
    const Now now = at(1080, {started(0), done(480, mix1), done(780, wet1), done(1080, wet2)});
    EXPECT_DOUBLE_EQ(now.pace, 2);
    EXPECT_DOUBLE_EQ(now.margin_s, 480 + 1800 - (1080 + 780));
    EXPECT_DOUBLE_EQ(now.marginAtPace_s, 480 + 1800 - (1080 + 2 * 780));
    EXPECT_TRUE(warned(now, WarningKind::pace));
}

TEST(Day, TooLateItSaysAfterWhichStripToStop) {
    // Four strips, three faces: each strip after the second costs 150 to wet and 90 to spread.
    Job job = twoStrips();
    job.strips = {{1, 0.6, 0.6}, {2, 0.6, 0.6}, {3, 0.6, 0.6}, {4, 0.6, 0.6}};
    job.faces = {1, 2, 3};
    job.openTime_s = 1350;
    // Wetted at 240. All four: closed at 1800, open until 1590. Three: 1560, 30 in hand.
    const Now now = at(300, {started(0), done(240, 0)}, job);
    EXPECT_DOUBLE_EQ(now.margin_s, -210);
    ASSERT_TRUE(now.breakOff);
    EXPECT_EQ(now.breakOff->afterStrip, 3);
    EXPECT_DOUBLE_EQ(now.breakOff->margin_s, 30);
    ASSERT_TRUE(warned(now, WarningKind::faceLate));
    ASSERT_TRUE(now.warnings[0].breakOff);
    EXPECT_EQ(now.warnings[0].breakOff->afterStrip, 3);
    EXPECT_DOUBLE_EQ(now.warnings[0].by_s, 210);

    const std::vector<Event> broken{started(0), done(240, 0), {EventKind::brokenOff, 310, -1, 3}};
    const Now after = at(310, broken, job);
    EXPECT_DOUBLE_EQ(after.margin_s, 30);
    EXPECT_EQ(after.brokenAfter, 3);
    EXPECT_EQ(std::ranges::count(after.states, TaskState::leftOut), 2);
    EXPECT_EQ(after.run.faces.size(), 2u);
    std::vector<Event> back = broken;
    back.push_back(said(EventKind::carriedOn, 320));
    EXPECT_DOUBLE_EQ(at(320, back, job).margin_s, -210);
}

TEST(Day, OnceAStripIsSpreadNothingIsLeftOut) {
    Job job = twoStrips();
    job.openTime_s = 700;
    const Now now = at(800, doneUpTo(mix2, runOf(job)), job);
    EXPECT_LT(now.margin_s, 0);
    EXPECT_FALSE(now.breakOff);
}

TEST(Day, ClosedFacesAndEmptyCupsNoLongerCount) {
    const Now now = at(1330, doneUpTo(clamp2, runOf(twoStrips())));
    EXPECT_EQ(now.doing, std::vector<int>{scrape});
    EXPECT_TRUE(now.faces.empty());
    EXPECT_TRUE(now.cups.empty());
    EXPECT_TRUE(now.warnings.empty());
    EXPECT_DOUBLE_EQ(now.margin_s, 720);
}

TEST(Day, SoakingEndsByItself) {
    Job job = twoStrips();
    job.soak_s = 400;
    const schedule::Run run = runOf(job);
    int soak = 0;
    while (run.tasks[soak].work != Work::soak) ++soak;
    const std::vector<Event> events = doneUpTo(soak - 1, run);
    const double ends_s = run.tasks[soak].end_s;
    EXPECT_EQ(at(ends_s - 1, events, job).doing, std::vector<int>{soak});
    EXPECT_EQ(at(ends_s - 1, events, job).ofHands, std::vector<int>{-1});
    EXPECT_EQ(at(ends_s + 1, events, job).doing, std::vector<int>{soak + 1});
}

TEST(Day, WhatIsSaidAfterTheStopOrOfNoTaskChangesNothing) {
    std::vector<Event> events{started(0), done(300, mix1)};
    const Now before = at(350, events);
    events.push_back(done(340, 99));
    events.push_back(said(EventKind::undone, 341, wet2));
    events.push_back(said(EventKind::resumed, 342));
    EXPECT_EQ(at(350, events).states, before.states);
    events.push_back(said(EventKind::stopped, 345));
    events.push_back(done(346, wet1));
    const Now stopped = at(350, events);
    EXPECT_TRUE(stopped.stopped);
    EXPECT_EQ(stopped.states, before.states);
}

// The day of run_test.cpp, hand by hand: strip 3 is wetted by one pair from 445 to 545 while the other mixes cup 2 from
// 445 to 685; then strip 3 is spread from it, and cup 3 is mixed beside that.
TEST(Day, TwoPairsOfHandsDoDifferentThings) {
    const Job job = made::threeStrips(2);
    enum { wipe, mixOne, wetOne, wetTwo, wetThree, mixTwo, spreadThree, mixThree, spreadTwo };
    std::vector<Event> events = doneUpTo(wetTwo, runOf(job));
    const Now both = at(500, events, job);
    EXPECT_EQ(both.ofHands, (std::vector<int>{wetThree, mixTwo}));
    EXPECT_EQ(both.next, (std::vector<int>{spreadThree, mixThree}));  // both from 685 on
    ASSERT_EQ(both.cups.size(), 2u);
    EXPECT_EQ(both.cups[0].number, 1);
    EXPECT_DOUBLE_EQ(both.cups[0].left_s, 1260 - 500);  // mixed from 60, good for 1200
    EXPECT_DOUBLE_EQ(both.cups[1].left_s, 1645 - 500);
    EXPECT_FALSE(both.cups[1].mixed);
    EXPECT_EQ(both.mixing, std::optional<int>(mixTwo));

    events.push_back(done(545, wetThree));
    const Now one = at(560, events, job);
    EXPECT_EQ(one.ofHands, (std::vector<int>{-1, mixTwo}));
    ASSERT_EQ(one.cups.size(), 1u);

    // Mixed 85 s sooner than planned: all that follows comes sooner by as much.
    events.push_back(said(EventKind::batchMixed, 600, mixTwo));
    const Now sooner = at(610, events, job);
    EXPECT_EQ(sooner.doing, (std::vector<int>{spreadThree, mixThree}));
    EXPECT_DOUBLE_EQ(sooner.run.closed_s, 1635 - 85);
    EXPECT_DOUBLE_EQ(sooner.behind_s, -85);
    EXPECT_DOUBLE_EQ(sooner.margin_s, 37 * 60 + 45 + 85);
    EXPECT_EQ(sooner.faces.at(0).inner, 1);
    EXPECT_DOUBLE_EQ(sooner.faces.at(0).left_s, 3900 - 610);
    EXPECT_DOUBLE_EQ(sooner.faces.at(1).left_s, 3955 - 610);
}

TEST(Day, BatchMixedAheadCountsFromItsPlannedTimeBefore) {
    const Job job = made::threeStrips(2);
    std::vector<Event> events = doneUpTo(2, runOf(job));  // strip 1 is wetted at 355
    events.push_back(said(EventKind::batchMixed, 400, 5));
    const Now now = at(410, events, job);
    const auto ahead = std::ranges::find(now.cups, 2, &CupNow::number);
    ASSERT_NE(ahead, now.cups.end());
    EXPECT_DOUBLE_EQ(ahead->mixedFrom_s, 400 - 240);
    EXPECT_TRUE(ahead->mixed);
}

TEST(Day, TimePlannedAndTakenIsAddedUpByKindOfWork) {
    const Now now = at(1000, {started(0), done(300, mix1), said(EventKind::paused, 310), said(EventKind::resumed, 410),
                              done(600, wet1), done(900, wet2)});
    const std::vector<Taken> taken = takenOf(twoStrips(), now);
    ASSERT_EQ(taken.size(), 2u);
    EXPECT_EQ(taken[0].work, Work::mix);
    EXPECT_DOUBLE_EQ(taken[0].planned_s, 240);
    EXPECT_DOUBLE_EQ(taken[0].real_s, 300);
    EXPECT_EQ(taken[1].work, Work::wetOut);
    EXPECT_EQ(taken[1].count, 2);
    EXPECT_DOUBLE_EQ(taken[1].planned_s, 300);
    EXPECT_DOUBLE_EQ(taken[1].real_s, 200 + 300);
}

TEST(Day, TwoKeysPressedTogetherTellNothingOfEitherTask) {
    const Now now = at(1000, {started(0), done(300, mix1), done(598, wet1), done(599, wet2)});
    const std::vector<Taken> taken = takenOf(twoStrips(), now);
    ASSERT_EQ(taken.size(), 1u);
    EXPECT_EQ(taken[0].work, Work::mix);
    EXPECT_DOUBLE_EQ(taken[0].real_s, 300);
}

TEST(Day, EveryEventHasAWordAndComesBackFromIt) {
    for (int i = 0; i <= static_cast<int>(EventKind::stopped); ++i) {
        const auto kind = static_cast<EventKind>(i);
        EXPECT_EQ(eventOfWord(eventWord(kind)), std::optional<EventKind>(kind));
    }
    EXPECT_FALSE(eventOfWord("nonsense"));
}

}  // namespace day_test
}  // namespace fayline::schedule
