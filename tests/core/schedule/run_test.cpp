#include "core/schedule/run.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <random>
#include <set>
#include <string>
#include <vector>

#include "core/units/input_error.hpp"
#include "tests/core/schedule/made_job.hpp"

namespace fayline::schedule {
namespace run_test {

struct Row {
    std::string name;
    double start_s = 0;
    double end_s = 0;
    std::vector<int> lanes;
};

// The tasks by their beginning, of equals the shorter first.
std::vector<const Task*> inOrder(const Run& run) {
    std::vector<const Task*> tasks;
    for (const Task& task : run.tasks) tasks.push_back(&task);
    std::ranges::stable_sort(tasks, [](const Task* a, const Task* b) {
        return a->start_s != b->start_s ? a->start_s < b->start_s : a->end_s < b->end_s;
    });
    return tasks;
}

void expectRows(const Run& run, const std::vector<Row>& rows) {
    const std::vector<const Task*> tasks = inOrder(run);
    ASSERT_EQ(tasks.size(), rows.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
        EXPECT_EQ(tasks[i]->name, rows[i].name);
        EXPECT_NEAR(tasks[i]->start_s, rows[i].start_s, 1e-9) << rows[i].name;
        EXPECT_NEAR(tasks[i]->end_s, rows[i].end_s, 1e-9) << rows[i].name;
        EXPECT_EQ(tasks[i]->lanes, rows[i].lanes) << rows[i].name;
    }
}

// Worked on paper from the rules in the header (D), two pairs of hands a and b:
//
//   time           what                    why so long
//   0:00 - 1:00    ab  wipe                2 min between two
//   1:00 - 5:00    a   mix batch 1         4 min; there is nothing yet to do beside it
//   5:00 - 5:55    ab  wet out strip 1     0.10 m2 at 0.24 m2/min: 25 s, turned over 30 s
//   5:55 - 7:25    ab  wet out strip 2     0.24 m2: 60 s + 30 s
//   7:25 - 9:05    a   wet out strip 3     the cup's last: alone, 0.14 m2 at 0.12 m2/min: 70 s + 30 s
//   7:25 - 11:25   b   mix batch 2         from when that begins
//   11:25 - 14:15  a   spread strip 3      cup 2's last: alone, 0.14 m2 at 0.06 m2/min: 140 s + 30 s
//   11:25 - 15:25  b   mix batch 3         from when that begins
//   15:25 - 17:55  ab  spread strip 2      0.24 m2 at 0.12 m2/min: 120 s + 30 s
//   17:55 - 19:15  ab  spread strip 1      0.10 m2: 50 s + 30 s
//   19:15 - 22:15  ab  carry
//   22:15 - 23:15  ab  fixed end
//   23:15 - 24:15, 25:15, 27:15   ab  clamps 4 and 5, prop 6
//   27:15 - 32:15  ab  scrape              10 min between two
//
// Cup 2 is for strip 3 (the middle of its area lies at 0.07 of 0.48 m2, in the first half), cup 3 for strips 2 (0.26)
// and 1 (0.43). Faces: that between 1 and 2 is wet from 5:00 and open until 65:00, that between 2 and 3 (strip 2 is
// wetted first) from 5:55 until 65:55; both are closed at 27:15. In hand: 37:45 and 38:40. Cups: 1 from 1:00, good
// until 21:00, empty at 9:05, 11:55 in hand; 2 from 7:25 until 27:25, empty at 14:15, 13:10; 3 from 11:25 until 31:25,
// empty at 19:15, 12:10.
TEST(Run, TwoPairsOfHandsAndThreeStripsAsWorkedOnPaper) {
    const schedule::Run run = runOf(made::threeStrips(2));
    const std::vector<int> a{0};
    const std::vector<int> b{1};
    const std::vector<int> ab{0, 1};
    expectRows(run, {{"wipe the strips", 0, 60, ab},
                     {"mix batch 1, thin", 60, 300, a},
                     {"wet out strip 1, turn it over", 300, 355, ab},
                     {"wet out strip 2, turn it over", 355, 445, ab},
                     {"wet out strip 3, turn it over", 445, 545, a},
                     {"mix batch 2, thickened", 445, 685, b},
                     {"spread strip 3", 685, 855, a},
                     {"mix batch 3, thickened", 685, 925, b},
                     {"spread strip 2", 925, 1075, ab},
                     {"spread strip 1", 1075, 1155, ab},
                     {"carry the stack to its place", 1155, 1335, ab},
                     {"lay the fixed end down", 1335, 1395, ab},
                     {"close clamp 4", 1395, 1455, ab},
                     {"close clamp 5", 1455, 1515, ab},
                     {"close prop 6", 1515, 1635, ab},
                     {"scrape the squeeze-out", 1635, 1935, ab}});
    EXPECT_DOUBLE_EQ(run.closed_s, 1635);
    EXPECT_DOUBLE_EQ(run.end_s, 1935);
    ASSERT_EQ(run.faces.size(), 2u);
    EXPECT_DOUBLE_EQ(run.faces[0].wetted_s, 300);
    EXPECT_DOUBLE_EQ(run.faces[0].openUntil_s, 3900);
    EXPECT_DOUBLE_EQ(run.faces[0].margin_s(), 37 * 60 + 45);
    EXPECT_DOUBLE_EQ(run.faces[1].wetted_s, 355);
    EXPECT_DOUBLE_EQ(run.faces[1].margin_s(), 38 * 60 + 40);
    EXPECT_EQ(run.worstFace, 0);
    ASSERT_EQ(run.cups.size(), 3u);
    const double mixedFrom_s[] = {60, 445, 685};
    const double emptied_s[] = {545, 855, 1155};
    const double margin_s[] = {11 * 60 + 55, 13 * 60 + 10, 12 * 60 + 10};
    for (std::size_t i = 0; i < 3; ++i) {
        EXPECT_DOUBLE_EQ(run.cups[i].mixedFrom_s, mixedFrom_s[i]);
        EXPECT_DOUBLE_EQ(run.cups[i].emptied_s, emptied_s[i]);
        EXPECT_DOUBLE_EQ(run.cups[i].margin_s(), margin_s[i]);
    }
    EXPECT_EQ(run.worstCup, 0);
}

// Alone, with ten minutes for the wet-out to soak in: all comes one after the other, twice as long where two had shared
// it. The soak runs from 11:30 to 21:30, its last four minutes are the mixing of cup 2.
TEST(Run, OnePairOfHandsMixesInTheLastMinutesOfTheSoak) {
    Job job = made::threeStrips(1);
    job.soak_s = 600;
    const schedule::Run run = runOf(job);
    const std::vector<int> a{0};
    expectRows(run, {{"wipe the strips", 0, 120, a},
                     {"mix batch 1, thin", 120, 360, a},
                     {"wet out strip 1, turn it over", 360, 440, a},
                     {"wet out strip 2, turn it over", 440, 590, a},
                     {"wet out strip 3, turn it over", 590, 690, a},
                     {"let the wet-out soak in, on into the mixing", 690, 1050, {}},
                     {"mix batch 2, thickened", 1050, 1290, a},
                     {"spread strip 3", 1290, 1460, a},
                     {"mix batch 3, thickened", 1460, 1700, a},
                     {"spread strip 2", 1700, 1970, a},
                     {"spread strip 1", 1970, 2100, a},
                     {"carry the stack to its place", 2100, 2280, a},
                     {"lay the fixed end down", 2280, 2340, a},
                     {"close clamp 4", 2340, 2400, a},
                     {"close clamp 5", 2400, 2460, a},
                     {"close prop 6", 2460, 2580, a},
                     {"scrape the squeeze-out", 2580, 3180, a}});
}

// A third pair does not mix a cup before the last strip of the one before it is begun, and no more than two stand at a
// strip or a station.
TEST(Run, AThirdPairOfHandsSpeedsOnlyWhatThreeCanDo) {
    const schedule::Run run = runOf(made::threeStrips(3));
    const std::vector<int> ab{0, 1};
    const std::vector<int> c{2};
    const std::vector<int> abc{0, 1, 2};
    expectRows(run, {{"wipe the strips", 0, 40, abc},
                     {"mix batch 1, thin", 40, 280, {0}},
                     {"wet out strip 1, turn it over", 280, 335, ab},
                     {"wet out strip 2, turn it over", 335, 425, ab},
                     {"wet out strip 3, turn it over", 425, 490, ab},
                     {"mix batch 2, thickened", 425, 665, c},
                     {"spread strip 3", 665, 765, ab},
                     {"mix batch 3, thickened", 665, 905, c},
                     {"spread strip 2", 905, 1055, ab},
                     {"spread strip 1", 1055, 1135, ab},
                     {"carry the stack to its place", 1135, 1315, abc},
                     {"lay the fixed end down", 1315, 1375, ab},
                     {"close clamp 4", 1375, 1435, ab},
                     {"close clamp 5", 1435, 1495, ab},
                     {"close prop 6", 1495, 1615, ab},
                     {"scrape the squeeze-out", 1615, 1815, abc}});
}

// Wetted one after the other and turned over, the pile lies in reverse; spread from its top the order is restored. The
// face on the boat is wetted last.
TEST(Run, ThePileIsReversedAndRestoredAndTheBoatsFaceComesLast) {
    Job job = made::threeStrips(2);
    job.strips.insert(job.strips.begin(), {0, 0.08, 0.08});
    job.faces = {0, 1, 2};
    const schedule::Run run = runOf(job);
    std::vector<int> wetted;
    std::vector<int> spread;
    for (const Task& task : run.tasks) {
        if (task.work == Work::wetOut) wetted.push_back(task.strip);
        if (task.work == Work::spread) spread.push_back(task.strip);
    }
    EXPECT_EQ(wetted, (std::vector<int>{1, 2, 3, 0}));
    EXPECT_EQ(spread, (std::vector<int>{3, 2, 1, 0}));
}

// So does the face of what has cured on the form; nobody turns that over, and it has no place in the pile.
TEST(Run, TheFaceOfAnEarlierGluingIsWettedAndSpreadWhereItIs) {
    Job job = made::threeStrips(2);
    job.strips[0] = {1, 0.10, 0.10, true};
    const schedule::Run run = runOf(job);
    const auto timeOf = [&run](const std::string& name) {
        for (const Task& task : run.tasks) {
            if (task.name == name) return task.takes_s;
        }
        return -1.0;
    };
    // By one, the other mixes: 0.10 m2 at 0.12 m2/min; by both 0.10 m2 at 0.12 m2/min. No 30 s for turning or laying.
    EXPECT_NEAR(timeOf("wet out the cured side of strip 1"), 50, 1e-9);
    EXPECT_NEAR(timeOf("spread the cured side of strip 1"), 50, 1e-9);
    std::vector<int> wetted;
    for (const Task& task : run.tasks) {
        if (task.work == Work::wetOut) wetted.push_back(task.strip);
    }
    EXPECT_EQ(wetted, (std::vector<int>{2, 3, 1}));
}

TEST(Run, EveryCupIsMixedOnceAndUsedEvenIfSeveralGoOnOneStrip) {
    for (int hands = 1; hands <= 3; ++hands) {
        for (int wet = 1; wet <= 9; ++wet) {
            for (int paste = 1; paste <= 9; ++paste) {
                Job job = made::threeStrips(hands);
                job.cups.clear();
                for (int i = 0; i < wet + paste; ++i) {
                    job.cups.push_back({i + 1, i < wet ? CupFor::wetOut : CupFor::spread, 900, 0});
                }
                const schedule::Run run = runOf(job);
                double wetted_m2 = 0;
                for (const CupJob& cup : job.cups) {
                    const auto is = [&cup](Work work) {
                        return [work, &cup](const Task& t) { return t.cup == cup.number && t.work == work; };
                    };
                    EXPECT_EQ(std::ranges::count_if(run.tasks, is(Work::mix)), 1);
                    const Work use = cup.use == CupFor::spread ? Work::spread : Work::wetOut;
                    const auto mix = std::ranges::find_if(run.tasks, is(Work::mix));
                    const auto first = std::ranges::find_if(run.tasks, is(use));
                    ASSERT_NE(first, run.tasks.end()) << "cup " << cup.number << " of " << wet << " and " << paste;
                    EXPECT_GE(first->start_s, mix->end_s);
                }
                // Cut into parts it is still the whole work.
                for (const Task& task : run.tasks) {
                    if (task.work != Work::wetOut) continue;
                    const bool turned = task.name.find("part") == std::string::npos ||
                                        task.name.back() == task.name[task.name.find(" of ") - 1];
                    wetted_m2 += (task.takes_s - (turned ? 30 : 0)) * job.wetOut_m2_s * task.hands;
                }
                EXPECT_NEAR(wetted_m2, 0.48, 1e-12);
            }
        }
    }
}

// On random jobs: nobody does two things at once, nothing begins before what it waits for, and no gap is left in which
// a task could have begun earlier.
TEST(Run, NobodyDoesTwoThingsAtOnceAndNothingWaitsForNothing) {
    std::mt19937 generator(5);
    const auto upTo = [&](int most) { return std::uniform_int_distribution<int>(0, most)(generator); };
    for (int i = 0; i < 300; ++i) {
        Job job = made::threeStrips(1 + upTo(4));
        job.soak_s = upTo(2) == 0 ? 60 * upTo(12) : 0;
        job.sand_s = 60 * upTo(5);
        job.endGrain_m2 = 0.01 * upTo(3);
        job.cups.clear();
        int number = 0;
        for (const CupFor use : {CupFor::endGrain, CupFor::wetOut, CupFor::spread}) {
            for (int k = upTo(3); k > 0; --k) job.cups.push_back({++number, use, 900, 0});
        }
        const schedule::Run run = runOf(job);
        for (const Task& task : run.tasks) {
            EXPECT_EQ(task.lanes.size(), static_cast<std::size_t>(task.hands));
            double ready_s = 0;
            for (const int before : task.after) {
                ready_s = std::max(ready_s, run.tasks[before].end_s);
            }
            EXPECT_GE(task.start_s, ready_s);
            bool someoneJustCame = task.start_s == ready_s;
            for (const Task& other : run.tasks) {
                if (&other == &task) continue;
                const bool shares = std::ranges::any_of(task.lanes, [&other](int lane) {
                    return std::ranges::find(other.lanes, lane) != other.lanes.end();
                });
                if (!shares) continue;
                EXPECT_TRUE(other.end_s <= task.start_s || task.end_s <= other.start_s) << task.name << other.name;
                someoneJustCame = someoneJustCame || other.end_s == task.start_s;
            }
            EXPECT_TRUE(someoneJustCame) << task.name;
        }
    }
}

TEST(Run, ATaskThatTakesLongerMovesWhatWaitsForIt) {
    const Job job = made::threeStrips(2);
    schedule::Run run = runOf(job);
    std::vector<double> factors(run.tasks.size(), 1.0);
    const auto cup3 =
        std::ranges::find_if(run.tasks, [](const Task& task) { return task.work == Work::mix && task.cup == 3; });
    ASSERT_NE(cup3, run.tasks.end());
    factors[cup3 - run.tasks.begin()] = 1.5;  // two minutes more
    retime(job, factors, {}, run);
    EXPECT_DOUBLE_EQ(run.closed_s, 1635 + 120);
    EXPECT_DOUBLE_EQ(run.margin_s(), 37 * 60 + 45 - 120);
    // Two minutes more for strip 3 beside it are lost in the waiting for the cup, which is 70 s.
    std::ranges::fill(factors, 1.0);
    const auto strip3 =
        std::ranges::find_if(run.tasks, [](const Task& task) { return task.work == Work::spread && task.strip == 3; });
    factors[strip3 - run.tasks.begin()] = (170 + 120) / 170.0;
    retime(job, factors, {}, run);
    EXPECT_NEAR(run.closed_s, 1635 + 120 - 70, 1e-9);
}

TEST(Run, ADelayMovesTheBeginningOfATaskAndNotItsLength) {
    const Job job = made::threeStrips(2);
    schedule::Run run = runOf(job);
    const schedule::Run planned = run;
    std::vector<double> delays_s(run.tasks.size(), 0.0);
    const auto cup3 =
        std::ranges::find_if(run.tasks, [](const Task& task) { return task.work == Work::mix && task.cup == 3; });
    const auto at = static_cast<std::size_t>(cup3 - run.tasks.begin());
    delays_s[at] = 120;
    retime(job, {}, delays_s, run);
    EXPECT_DOUBLE_EQ(run.tasks[at].start_s, planned.tasks[at].start_s + 120);
    EXPECT_DOUBLE_EQ(run.tasks[at].end_s, planned.tasks[at].end_s + 120);
    EXPECT_DOUBLE_EQ(run.closed_s, planned.closed_s + 120);
    EXPECT_DOUBLE_EQ(run.cups[2].mixedFrom_s, planned.cups[2].mixedFrom_s + 120);
}

// What many hands share is done by as many as it is divided by.
TEST(Run, TwoHundredPairsOfHandsAreTwoHundredThroughout) {
    Job job = made::threeStrips(200);
    job.sand_s = 6000;
    const schedule::Run run = runOf(job);
    ASSERT_EQ(run.tasks[0].work, Work::sand);
    EXPECT_DOUBLE_EQ(run.tasks[0].takes_s, 30);
    EXPECT_EQ(run.tasks[0].hands, 200);
    EXPECT_EQ(run.tasks[0].lanes.size(), 200u);
}

TEST(Run, EveryTaskHasAWordOfItsOwnThatNoLanguageChanges) {
    Job job = made::threeStrips(2);
    job.soak_s = 600;
    job.sand_s = 60;
    job.endGrain_m2 = 0.01;
    // Two cups on one strip, so that it is spread in parts.
    job.cups.push_back({4, CupFor::spread, 1200, 0.24});
    job.cups.push_back({5, CupFor::spread, 1200, 0.24});
    const schedule::Run run = runOf(job);
    const std::vector<std::string> words = taskWords(run);
    ASSERT_EQ(words.size(), run.tasks.size());
    EXPECT_EQ(std::set<std::string>(words.begin(), words.end()).size(), words.size());
    bool anyPart = false;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const Task& task = run.tasks[i];
        if (task.work == Work::mix) {
            EXPECT_EQ(words[i], "mix:" + std::to_string(task.cup));
        }
        if (task.work == Work::close) {
            EXPECT_EQ(words[i], "close:" + std::to_string(task.station));
        }
        if (task.work == Work::carry) {
            EXPECT_EQ(words[i], "carry");
        }
        if (task.work == Work::wetOut && task.strip < 0) {
            EXPECT_EQ(words[i], "wet_out:end_grain");
        }
        if (task.work == Work::spread && task.strip == 3 && !anyPart) {
            EXPECT_EQ(words[i], "spread:3");
        }
        anyPart = anyPart || words[i] == "spread:3:2" || words[i] == "spread:2:2";
    }
    EXPECT_TRUE(anyPart);
}

TEST(Run, WhatCannotBeDoneIsToldWithItsPlace) {
    const auto pathOf = [](const std::function<void(Job&)>& change) {
        Job job = made::threeStrips(2);
        change(job);
        try {
            runOf(job);
        } catch (const units::InputError& error) {
            EXPECT_FALSE(std::string(error.what()).empty());
            return error.path();
        }
        return std::string("accepted");
    };
    EXPECT_EQ(pathOf([](Job& job) { job.hands = 0; }), "crew.hands");
    EXPECT_EQ(pathOf([](Job& job) { job.hands = -3; }), "crew.hands");
    EXPECT_EQ(pathOf([](Job& job) { job.wetOut_m2_s = 0; }), "crew.rates.wet_out_m2_min");
    EXPECT_EQ(pathOf([](Job& job) { job.spread_m2_s = 0; }), "crew.rates.spread_m2_min");
    EXPECT_EQ(pathOf([](Job& job) { job.spread_m2_s = std::nan(""); }), "crew.rates.spread_m2_min");
    EXPECT_EQ(pathOf([](Job& job) { job.strips.clear(); }), "accepted");
}

}  // namespace run_test
}  // namespace fayline::schedule
