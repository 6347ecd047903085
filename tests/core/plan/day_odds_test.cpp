// The odds of being in time, against days drawn by means that share nothing with the project's own.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>

#include "core/export/print.hpp"
#include "core/io/file.hpp"
#include "core/plan/day/day_clock.hpp"
#include "core/plan/day/day_learned.hpp"
#include "core/plan/day/day_plan.hpp"
#include "core/plan/findings/day_words.hpp"
#include "core/units/input_error.hpp"
#include "tests/core/plan/made_pieces.hpp"
#include "tests/recorded_day.hpp"
#include "tests/refusal.hpp"

namespace fayline::plan {
namespace day_odds_test {

const std::atomic<bool> goOn{false};

// A small generator of its own (xorshift 64*, Vigna 2016, M).
class Dice {
public:
    double even() {
        state_ ^= state_ >> 12;
        state_ ^= state_ << 25;
        state_ ^= state_ >> 27;
        return static_cast<double>((state_ * 2685821657736338717u) >> 11) / 9007199254740992.0;
    }
    // By the cosine and logarithm of Box and Muller (1958, M).
    double normal() {
        const double radius = std::sqrt(-2 * std::log(1 - even()));
        return radius * std::cos(2 * std::numbers::pi * even());
    }
    // By throwing points under the triangle's roof.
    double triangular(double least, double likeliest, double most) {
        while (true) {
            const double x = least + (most - least) * even();
            const double roof = x < likeliest ? (x - least) / (likeliest - least) : (most - x) / (most - likeliest);
            if (even() <= roof) return x;
        }
    }

private:
    std::uint64_t state_ = 88172645463325252u;
};

// From the first wetting of the face that is open longest to the end of the last station, when task i takes
// `takes_s[i]` and begins `later_s[i]` after it could. By two pairs of hands nobody is ever waited for but by `after`.
double heldOpen(const GluingDay& day, const std::vector<double>& takes_s, const std::vector<double>& later_s) {
    const auto& tasks = day.run.tasks;
    std::vector<double> ends(tasks.size());
    double wetted = INFINITY;
    double closed = 0;
    for (std::size_t i = 0; i < tasks.size(); ++i) {
        double start = 0;
        for (const int before : tasks[i].after) start = std::max(start, ends[before]);
        start += later_s[i];
        ends[i] = start + takes_s[i];
        const bool wets = tasks[i].work == schedule::Work::wetOut || tasks[i].work == schedule::Work::spread;
        // Of the first strip wetted one side is the face that is wetted first.
        if (wets && tasks[i].strip >= 0) wetted = std::min(wetted, start);
        if (tasks[i].work != schedule::Work::scrape) closed = std::max(closed, ends[i]);
    }
    return closed - wetted;
}

double chanceByDice(const GluingDay& day, const model::Crew& crew, double open_s, int count) {
    const auto& tasks = day.run.tasks;
    std::vector<std::size_t> closing;
    for (std::size_t i = 0; i < tasks.size(); ++i) {
        if (tasks[i].work == schedule::Work::close) closing.push_back(i);
    }
    std::vector<std::size_t> mixing;
    for (std::size_t i = 0; i < tasks.size(); ++i) {
        if (tasks[i].work == schedule::Work::mix) mixing.push_back(i);
    }
    Dice dice;
    int inTime = 0;
    std::vector<double> takes_s(tasks.size());
    for (int n = 0; n < count; ++n) {
        const double pace = std::pow(std::numbers::e, crew.pace * dice.normal());
        const double glue = std::pow(std::numbers::e, crew.glueUncertain * dice.normal());
        for (std::size_t i = 0; i < tasks.size(); ++i) {
            takes_s[i] = tasks[i].takes_s;
            if (tasks[i].hands > 0) {
                takes_s[i] *= pace * dice.triangular(1 - crew.uncertain / 2, 1, 1 + crew.uncertain);
            }
        }
        std::vector<double> later_s(tasks.size(), 0.0);
        const auto mishap = [&](const model::Mishap& one, const std::vector<std::size_t>& before) {
            if (dice.even() >= one.chance) return;
            later_s[before[static_cast<std::size_t>(dice.even() * static_cast<double>(before.size()))]] += one.lasts_s;
        };
        mishap(crew.mishaps.stripBreaks, closing);
        mishap(crew.mishaps.clampSlips, closing);
        mishap(crew.mishaps.cupSpills, mixing);
        if (heldOpen(day, takes_s, later_s) <= open_s * glue) ++inTime;
    }
    return static_cast<double>(inTime) / count;
}

const model::Piece& pieceNamed(const model::Boat& boat, const std::string& name) {
    return *std::ranges::find(boat.pieces, name, &model::Piece::name);
}

// The gluing with the open time that leaves `share` of its run in hand.
schedule::Job withMargin(const GluingDay& day, double share) {
    schedule::Job job = day.job;
    job.openTime_s += share * day.run.closed_s - day.run.margin_s();
    return job;
}

TEST(DayOdds, OfTheTillerAreThoseOfAnIndependentMonteCarlo) {
    const model::Boat boat = io::loadBoat(FAYLINE_SAMPLES "/marram.fayline");
    const model::Piece& tiller = pieceNamed(boat, "Tiller");
    const Plan plan = makePlan(tiller, shopOf(boat));
    const GluingDay& day = plan.day.gluings.front();
    ASSERT_EQ(day.job.hands, 2);
    std::vector<double> planned_s;
    for (const schedule::Task& task : day.run.tasks) planned_s.push_back(task.takes_s);
    const schedule::FaceTimes& worst = day.run.faces[day.run.worstFace];
    ASSERT_NEAR(heldOpen(day, planned_s, std::vector<double>(planned_s.size(), 0.0)), worst.closed_s - worst.wetted_s,
                1e-6);
    constexpr int count = 40'000;
    for (const double share : {0.01, 0.05, 0.09, 0.20}) {
        const schedule::Job job = withMargin(day, share);
        EXPECT_NEAR(schedule::runOf(job).margin_s(), share * day.run.closed_s, 1e-6);
        const auto days =
            schedule::simulateDays(job, uncertainOf(tiller.crew, {1, tiller.crew.pace, 0}), count, 1, goOn);
        ASSERT_TRUE(days);
        const double dice = chanceByDice(day, tiller.crew, job.openTime_s, count);
        // Both are samples; one such comparison in 1,000 lies further off than 3.3 errors of their difference.
        const double error = std::sqrt(2 * dice * (1 - dice) / count);
        EXPECT_NEAR(days->chanceInTime, dice, 3.3 * error) << share;
        std::printf("a margin of %.0f %%: in time on %.4f of the days, by dice %.4f, apart by %.2f errors\n",
                    100 * share, days->chanceInTime, dice, (days->chanceInTime - dice) / error);
    }
}

TEST(DayOdds, NoPieceWithAMarginOfNinePerCentIsInTimeMoreOftenThanSeventyInHundred) {
    const model::Boat boat = io::loadBoat(FAYLINE_SAMPLES "/marram.fayline");
    for (const model::Piece& piece : boat.pieces) {
        for (const int hands : {1, 2, 3}) {
            model::Piece with = piece;
            with.crew.hands = hands;
            const Plan plan = makePlan(with, shopOf(boat));
            for (const GluingDay& day : plan.day.gluings) {
                if (day.run.faces.empty()) continue;
                const auto days =
                    schedule::simulateDays(withMargin(day, 0.09), uncertainOf(with.crew, {1, with.crew.pace, 0}),
                                           daysSimulated, daysSeed, goOn);
                ASSERT_TRUE(days);
                EXPECT_LT(days->chanceInTime, 0.70) << piece.name << " by " << hands;
                EXPECT_GT(days->chanceInTime, 0.40) << piece.name << " by " << hands;
            }
        }
    }
}

TEST(DayOdds, NothingIsSaidToBeCertain) {
    EXPECT_EQ(inHundred(1), "more than 99 in 100");
    EXPECT_EQ(inHundred(0.9901), "more than 99 in 100");
    EXPECT_EQ(inHundred(0.989), "about 99 in 100");
    EXPECT_EQ(inHundred(0.583), "about 58 in 100");
    EXPECT_EQ(inHundred(0.0099), "fewer than 1 in 100");
    EXPECT_EQ(inHundred(0), "fewer than 1 in 100");
    EXPECT_EQ(inHundredBrief(1), "> 99");
    EXPECT_EQ(inHundredBrief(0), "< 1");
    EXPECT_EQ(oddsPct(1), 99.5);
    EXPECT_EQ(oddsPct(0), 0.5);
    model::Boat boat = io::loadBoat(FAYLINE_SAMPLES "/marram.fayline");
    model::Piece piece = pieceNamed(boat, "Tiller");
    piece.crew.pace = piece.crew.glueUncertain = piece.crew.uncertain = 0;
    piece.crew.mishaps.stripBreaks.chance = piece.crew.mishaps.clampSlips.chance = 0;
    piece.crew.mishaps.cupSpills.chance = 0;
    const Shop shop = shopOf(boat);
    Plan plan = makePlan(piece, shop);
    plan.dayStudy = studyDay(piece, shop, plan.line.fair.line, plan.day, goOn);
    ASSERT_TRUE(plan.dayStudy);
    ASSERT_EQ(plan.dayStudy->days.chanceInTime, 1);
    const std::string said = writeTexts(chanceTexts(plan.day, *plan.dayStudy), plan.display);
    EXPECT_EQ(said.find("100 %"), std::string::npos) << said;
    // The margin, then the odds, then what 95 in 100 would need.
    const std::size_t margin = said.find("to spare;");
    const std::size_t odds = said.find("more than 99 in 100");
    const std::size_t needed = said.find("for 95 in 100 it takes");
    ASSERT_NE(margin, std::string::npos) << said;
    EXPECT_LT(margin, odds);
    EXPECT_LT(odds, needed);
    ASSERT_NE(needed, std::string::npos);
}

TEST(DayOdds, TheWaitAfterWettingOutIsInTheRun) {
    const model::Boat boat = io::loadBoat(FAYLINE_SAMPLES "/marram.fayline");
    model::Piece tiller = pieceNamed(boat, "Tiller");
    const double with_s = makePlan(tiller, shopOf(boat)).day.closed_s;
    EXPECT_EQ(tiller.crew.rates.soak_s, 300);
    const Plan plan = makePlan(tiller, shopOf(boat));
    const auto& tasks = plan.day.gluings[0].run.tasks;
    const auto last = std::find_if(tasks.rbegin(), tasks.rend(),
                                   [](const schedule::Task& task) { return task.work == schedule::Work::wetOut; });
    const auto first = std::ranges::find(tasks, schedule::Work::spread, &schedule::Task::work);
    ASSERT_NE(last, tasks.rend());
    ASSERT_NE(first, tasks.end());
    EXPECT_NEAR(first->start_s - last->end_s, 300, 1e-6);
    tiller.crew.rates.soak_s = 0;
    EXPECT_LT(makePlan(tiller, shopOf(boat)).day.closed_s, with_s);
}

// A gluing of `piece` recorded with every task taking `times` as long as planned.
model::Record recorded(const model::Piece& piece, const Shop& shop, double times) {
    return made::recordedDay(dayInHand(piece, shop, 0, false), times, "2026-05-02T08:30");
}

TEST(DayOdds, TheRecordNarrowsThePaceAndMovesItsMiddle) {
    const model::Boat boat = io::loadBoat(FAYLINE_SAMPLES "/marram.fayline");
    const Shop shop = shopOf(boat);
    model::Piece piece = pieceNamed(boat, "Tiller");
    piece.crew.rates.soak_s = 0;  // a wait does not follow the pace
    const auto pace = [&] { return paceOf(piece, shop, makePlan(piece, shop).day); };
    EXPECT_EQ(pace().days, 0);
    EXPECT_EQ(pace().scatter, 0.2);
    EXPECT_EQ(pace().middle, 1);
    for (int n = 0; n < 3; ++n) piece.record.push_back(recorded(piece, shop, 1));
    EXPECT_EQ(pace().days, 3);
    EXPECT_NEAR(pace().scatter, 0.2 * std::sqrt(2.0 / 5), 1e-3);
    EXPECT_NEAR(pace().middle, 1, 1e-3);
    // By hand: two days of the given pace and three of 1.2 times as long.
    for (model::Record& record : piece.record) record = recorded(piece, shop, 1.2);
    const double x = std::log(1.2);
    const double mean = 3 * x / 5;
    EXPECT_NEAR(pace().middle, std::exp(mean), 2e-3);
    EXPECT_NEAR(pace().scatter, std::sqrt((2 * (0.04 + mean * mean) + 3 * (x - mean) * (x - mean)) / 5), 2e-3);
    // Dry fits, and days that took five times as long as planned, teach nothing.
    for (model::Record& record : piece.record) record = recorded(piece, shop, 5);
    EXPECT_EQ(pace().days, 0);
    piece.record = {recorded(piece, shop, 1)};
    piece.record[0].dryFit = true;
    EXPECT_EQ(pace().days, 0);
    piece.record[0].dryFit = false;
    EXPECT_EQ(pace().days, 1);
    // What one mark says of a day is too little.
    piece.record[0].marks.resize(2);
    EXPECT_EQ(pace().days, 0);
}

TEST(DayOdds, ACrewsSharesOutsideNothingToAllAreRefusedWithTheirPlace) {
    const auto pathOf = [](const std::function<void(model::Crew&)>& change) {
        model::Piece piece = made::bend(2, 0.6);
        change(piece.crew);
        return made::refusedAt([&] { makePlan(piece, made::shop()); }, "accepted");
    };
    EXPECT_EQ(pathOf([](model::Crew& crew) { crew.uncertain = 10; }), "crew.uncertain_pct");
    EXPECT_EQ(pathOf([](model::Crew& crew) { crew.uncertain = 1; }), "accepted");
    EXPECT_EQ(pathOf([](model::Crew& crew) { crew.pace = -0.2; }), "crew.pace_pct");
    EXPECT_EQ(pathOf([](model::Crew& crew) { crew.glueUncertain = 1.5; }), "crew.glue_uncertain_pct");
    EXPECT_EQ(pathOf([](model::Crew& crew) { crew.mishaps.cupSpills.chance = 2; }),
              "crew.mishaps.cup_spills.chance_pct");
    EXPECT_EQ(pathOf([](model::Crew& crew) { crew.mishaps.clampSlips.lasts_s = -1; }), "crew.mishaps.clamp_slips.min");
}

}  // namespace day_odds_test
}  // namespace fayline::plan
