// The best cut plan against every way there is.
#include <gtest/gtest.h>

#include <random>

#include "core/math/random.hpp"
#include "core/stock/stock.hpp"
#include "tests/core/stock/checker.hpp"
#include "tests/core/stock/every_way.hpp"

namespace fayline::stock {
namespace best_cut_plan_test {

constexpr double unit_m = 0.005;

class Draw {
public:
    explicit Draw(unsigned seed) : generator_(seed) {}
    int from(int least, int most) {
        return least + static_cast<int>(math::uniformDraw(generator_) * (most - least + 1));
    }
    bool once(int in) { return from(1, in) == 1; }
    double length(int least, int most) { return from(least, most) * unit_m; }

private:
    std::mt19937_64 generator_;
};

// Two to four strips of one or two sections, one to three boards with bad stretches; every second one wants scarfs.
Job small(unsigned seed) {
    Draw draw(seed);
    Job job;
    const bool scarfed = seed % 2 == 1;
    const bool exact = seed % 4 == 0;  // strips and saw cuts fill boards to the last
    job.rules.kerf_m = draw.from(0, 1) * unit_m;
    job.rules.planing_m = draw.once(3) ? unit_m : 0;
    job.rules.snipe_m = draw.once(3) ? 2 * unit_m : 0;
    job.rules.scarfSlope = draw.from(2, 4) * 2;
    job.rules.scarfStep_m = 0.1;
    job.rules.leastPart_m = 0.15;
    job.rules.staggerThicknesses = draw.from(0, 2) * 12;
    if (draw.once(3)) job.rules.sawing = draw.once(2) ? Sawing::ripped : Sawing::resawn;
    const int strips = draw.from(2, scarfed ? 3 : 4);
    const int sections = draw.from(1, 2);
    for (int i = 0; i < strips; ++i) {
        Strip strip{.piece = "stem", .place = i + 1, .species = draw.once(12) ? "ash" : "oak"};
        strip.length_m = scarfed ? draw.length(120, 160) : draw.length(40, 100);
        if (exact && !scarfed) strip.length_m = draw.from(2, 4) * 20 * unit_m - job.rules.kerf_m;
        const int section = draw.from(1, sections);
        strip.thickness_m = section * unit_m;
        strip.width_m = 4 * unit_m;
        strip.spare = draw.once(6);
        strip.sacrificial = draw.once(8);
        if (draw.once(2)) strip.takenOff.push_back({0, draw.length(2, 12)});
        if (draw.once(3)) strip.takenOff.push_back({strip.length_m - draw.length(2, 12), strip.length_m});
        if (draw.once(3)) {
            const double from = draw.length(20, 60);
            strip.tightest = Stretch{from, from + draw.length(10, 50)};
        }
        strip.outer = i + 1 == strips;
        job.strips.push_back(strip);
    }
    const int boards = draw.from(1, 3);
    for (int i = 0; i < boards; ++i) {
        Board board{.name = "B", .species = draw.once(10) ? "ash" : "oak"};
        board.length_m = exact ? draw.from(4, 7) * 20 * unit_m - job.rules.kerf_m : draw.length(90, 150);
        board.width_m = draw.length(4, 9);
        board.thickness_m = draw.length(3, 6);
        board.count = draw.from(1, 2);
        for (int bad = draw.from(0, 2); bad > 0; --bad) {
            const double from = draw.length(0, 120);
            Bad one{{from, from + draw.length(1, 15)}, {}};
            if (draw.once(2)) {
                const double at = draw.length(0, 5);
                one.across = Stretch{at, at + draw.length(1, 3)};
            }
            board.bad.push_back(one);
        }
        job.boards.push_back(board);
    }
    return job;
}

int leftOutBy(const Job& job, const CutPlan& plan) {
    int spares = 0;
    for (const Strip& strip : job.strips) spares += strip.spare ? 1 : 0;
    int leftOut = 0;
    for (int strip : plan.missing) leftOut += job.strips[strip].spare ? 1 : spares + 1;
    return leftOut;
}

int forcedBy(const Job& job, const CutPlan& plan) {
    int forced = 0;
    for (const ScarfCut& scarf : plan.scarfs)
        if (scarf.forced != Forced::no) forced += job.strips[scarf.strip].outer ? 2 : 1;
    return forced;
}

TEST(BestCutPlan, IsTheBestOfEveryWay) {
    const std::atomic<bool> stop{false};
    int scarfed = 0;
    int forced = 0;
    int short_ = 0;
    int proven = 0;
    int faulty = 0;
    for (unsigned seed = 0; seed < 500; ++seed) {
        SCOPED_TRACE(seed);
        const Job job = small(seed);
        const CutPlan plan = bestCutPlan(job, {}, stop, [&](const CutPlan& better) {
            for (const std::string& wrong : wrongIn(job, better)) ADD_FAILURE() << "on the way: " << wrong;
        });
        for (const std::string& wrong : wrongIn(job, plan)) ADD_FAILURE() << wrong;
        const BestOfAll best = bestOfAll(job, unit_m);
        EXPECT_EQ(leftOutBy(job, plan), best.leftOut);
        EXPECT_EQ(forcedBy(job, plan), best.forced);
        if (best.leftOut == 0) {
            EXPECT_NEAR(plan.value, best.cost, 1e-9);
            EXPECT_LE(plan.bound, best.cost + 1e-9);
        }
        scarfed += plan.scarfs.empty() ? 0 : 1;
        forced += forcedBy(job, plan) > 0 ? 1 : 0;
        short_ += plan.missing.empty() ? 0 : 1;
        proven += plan.proven ? 1 : 0;
        for (const Cut& cut : plan.cuts) faulty += cut.faulty ? 1 : 0;
    }
    RecordProperty("proven", proven);
    // That these cases are what they are meant to be.
    EXPECT_GT(scarfed, 100);
    EXPECT_GT(forced, 10);
    EXPECT_GT(short_, 50);
    EXPECT_GT(faulty, 50);
    EXPECT_GT(proven, 450);
}

}  // namespace best_cut_plan_test
}  // namespace fayline::stock
