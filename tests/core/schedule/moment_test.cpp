#include "core/schedule/moment.hpp"

#include <gtest/gtest.h>

namespace fayline::schedule {
namespace moment_test {

Task task(Work work, double start_s, double end_s, int strip = -1, int station = 0, int cup = 0) {
    return {.work = work, .strip = strip, .station = station, .cup = cup, .start_s = start_s, .end_s = end_s};
}

// Two strips by one pair of hands, every time by hand: cup 1 mixed 0 to 60, strip 1 wetted to 120 and 2 to 180, cup 2
// to 240, 2 spread to 300 and 1 to 360, laid down to 400, stations 3 to 460 and 1 to 520. The film goes off after 450.
Run twoStrips() {
    Run run{
        .tasks = {task(Work::mix, 0, 60, -1, 0, 1), task(Work::wetOut, 60, 120, 1, 0, 1),
                  task(Work::wetOut, 120, 180, 2, 0, 1), task(Work::mix, 180, 240, -1, 0, 2),
                  task(Work::spread, 240, 300, 2, 0, 2), task(Work::spread, 300, 360, 1, 0, 2),
                  task(Work::place, 360, 400), task(Work::close, 400, 460, -1, 3), task(Work::close, 460, 520, -1, 1)},
        .faces = {{1, 60, 520, 60 + 450}},
        .cups = {{1, 0, 180, 900}, {2, 180, 360, 900}},
        .worstFace = 0};
    run.closed_s = run.end_s = 520;
    return run;
}

using Ints = std::vector<int>;

TEST(Moment, NothingStandsAtTheStart) {
    const Moment moment = momentOf(twoStrips(), 0);
    EXPECT_EQ(moment.doing, Ints{0});
    EXPECT_TRUE(moment.wetted.empty() && moment.spread.empty() && moment.closed.empty() && moment.cups.empty());
    EXPECT_EQ(moment.faces, std::vector<FaceState>{FaceState::dry});
    EXPECT_EQ(mostPressing(twoStrips(), moment), -1);
}

TEST(Moment, WhatEndsAtTheMomentIsDone) {
    const Moment moment = momentOf(twoStrips(), 120);
    EXPECT_EQ(moment.doing, Ints{2});
    EXPECT_EQ(moment.wetted, Ints{1});
    EXPECT_EQ(moment.cups, Ints{1});
    EXPECT_EQ(moment.faces, std::vector<FaceState>{FaceState::open});
    EXPECT_EQ(mostPressing(twoStrips(), moment), 0);
}

TEST(Moment, StationsAreOnInTheOrderOfClosing) {
    const schedule::Run run = twoStrips();
    EXPECT_EQ(momentOf(run, 470).closed, Ints{3});
    EXPECT_TRUE(momentOf(run, 470).inPlace);
    EXPECT_EQ(momentOf(run, 520).closed, (Ints{3, 1}));
    EXPECT_EQ(momentOf(run, 300).spread, Ints{2});
    EXPECT_EQ(momentOf(run, 360).spread, (Ints{1, 2}));
}

TEST(Moment, AFaceThatIsClosedTooLateGoesOffBeforeAndStaysSo) {
    schedule::Run run = twoStrips();
    EXPECT_EQ(momentOf(run, 509).faces[0], FaceState::open);
    EXPECT_EQ(momentOf(run, 511).faces[0], FaceState::goneOff);
    EXPECT_EQ(momentOf(run, 600).faces[0], FaceState::goneOff);
    run.faces[0].openUntil_s = 600;
    EXPECT_EQ(momentOf(run, 511).faces[0], FaceState::open);
    EXPECT_EQ(momentOf(run, 601).faces[0], FaceState::closed);
}

TEST(Moment, AStripThatTwoCupsGoOnIsWetOnlyWithTheSecond) {
    schedule::Run run = twoStrips();
    run.tasks[2].strip = 1;
    EXPECT_TRUE(momentOf(run, 150).wetted.empty());
    EXPECT_EQ(momentOf(run, 180).wetted, Ints{1});
}

}  // namespace moment_test
}  // namespace fayline::schedule
