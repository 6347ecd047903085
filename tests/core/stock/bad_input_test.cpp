// What cannot be is named, and nothing else is lost.
#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "core/stock/stock.hpp"
#include "core/units/input_error.hpp"
#include "tests/core/stock/checker.hpp"

namespace fayline::stock {
namespace bad_input_test {

const std::atomic<bool> never{false};

Job stem() {
    Job job;
    for (int place = 1; place <= 4; ++place)
        job.strips.push_back(
            {.piece = "stem", .place = place, .species = "oak", .length_m = 2, .width_m = 0.03, .thickness_m = 0.006});
    job.boards.push_back({.name = "A", .species = "oak", .length_m = 2.4, .width_m = 0.15, .thickness_m = 0.032});
    return job;
}

bool has(const CutPlan& plan, TroubleKind kind, int strip, int board) {
    const Trouble wanted{kind, strip, board};
    return std::find(plan.troubles.begin(), plan.troubles.end(), wanted) != plan.troubles.end();
}

CutPlan checked(const Job& job) {
    CutPlan plan = bestCutPlan(job, {}, never);
    for (const std::string& wrong : wrongIn(job, plan)) ADD_FAILURE() << wrong;
    return plan;
}

std::string pathOf(const Job& job) {
    try {
        firstCutPlan(job);
    } catch (const units::InputError& error) {
        EXPECT_FALSE(error.wrong().empty());
        EXPECT_FALSE(error.accepted().empty());
        return error.path();
    }
    return "no error";
}

TEST(BadInput, NothingWantedTakesNoBoard) {
    Job job = stem();
    job.strips.clear();
    const CutPlan plan = checked(job);
    EXPECT_TRUE(plan.proven);
    EXPECT_TRUE(plan.boards.empty());
    EXPECT_EQ(plan.value, 0);
}

TEST(BadInput, NumbersThatAreNoneAreNamedByTheirPlace) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const auto with = [](const auto& change) {
        Job job = stem();
        change(job);
        return pathOf(job);
    };
    EXPECT_EQ(with([](Job&) {}), "no error");
    EXPECT_EQ(with([](Job& job) { job.strips[2].length_m = 0; }), "strips[2].length_mm");
    EXPECT_EQ(with([&](Job& job) { job.strips[0].width_m = nan; }), "strips[0].width_mm");
    EXPECT_EQ(with([](Job& job) { job.strips[3].thickness_m = -1; }), "strips[3].thickness_mm");
    EXPECT_EQ(with([](Job& job) { job.strips[0].takenOff = {{0.2, 0.1}}; }), "strips[0].taken_off[0].to_mm");
    EXPECT_EQ(with([&](Job& job) { job.strips[0].tightest = Stretch{nan, 1}; }), "strips[0].tightest.to_mm");
    EXPECT_EQ(with([&](Job& job) { job.boards[0].length_m = -nan; }), "boards[0].length_mm");
    EXPECT_EQ(with([](Job& job) { job.boards[0].count = -1; }), "boards[0].count");
    EXPECT_EQ(with([](Job& job) { job.boards[0].price = -5; }), "boards[0].price");
    EXPECT_EQ(with([](Job& job) { job.boards[0].bad = {{{1, 0.5}, {}}}; }), "boards[0].bad[0].to_mm");
    EXPECT_EQ(with([](Job& job) { job.boards[0].bad = {{{0, 1}, Stretch{1, 0}}}; }), "boards[0].bad[0].across.to_mm");
    EXPECT_EQ(with([](Job& job) { job.rules.kerf_m = -0.001; }), "rules.kerf_mm");
    EXPECT_EQ(with([](Job& job) { job.rules.scarfStep_m = 0; }), "rules.scarf_step_mm");
    EXPECT_EQ(with([](Job& job) { job.rules.extraScarfs = -1; }), "rules.extra_scarfs");
    EXPECT_EQ(with([](Job& job) { job.rules.pins = {{7, 0, {}}}; }), "rules.pins[0].strip");
    EXPECT_EQ(with([](Job& job) { job.rules.pins = {{0, 1, {}}}; }), "rules.pins[0].board");
    EXPECT_EQ(with([](Job& job) { job.rules.pins = {{0, 0, 1}}; }), "rules.pins[0].copy");
}

TEST(BadInput, NothingAtAllIsAnAnswerToo) {
    const CutPlan none = checked({});
    EXPECT_TRUE(none.cuts.empty());
    EXPECT_TRUE(none.proven);
    Job job = stem();
    job.boards.clear();
    const CutPlan plan = checked(job);
    EXPECT_EQ(plan.missing.size(), 4u);
    EXPECT_TRUE(plan.proven);
    EXPECT_TRUE(has(plan, TroubleKind::noBoards, 0, -1));
    job = stem();
    job.boards[0].count = 0;
    EXPECT_TRUE(has(checked(job), TroubleKind::noBoards, 0, -1));
}

TEST(BadInput, BoardOfTheWrongWood) {
    Job job = stem();
    job.boards[0].species = "ash";
    CutPlan plan = checked(job);
    EXPECT_EQ(plan.missing.size(), 4u);
    EXPECT_TRUE(has(plan, TroubleKind::wrongWood, 0, -1));
    EXPECT_TRUE(has(plan, TroubleKind::boardOtherWood, -1, 0));
    job.boards.push_back(stem().boards[0]);
    plan = checked(job);
    EXPECT_TRUE(plan.missing.empty());
    EXPECT_TRUE(has(plan, TroubleKind::boardOtherWood, -1, 0));
    EXPECT_FALSE(has(plan, TroubleKind::wrongWood, 0, -1));
}

TEST(BadInput, SawCutWiderThanTheBoard) {
    Job job = stem();
    job.rules.kerf_m = 0.2;
    const CutPlan plan = checked(job);  // the first lane needs no cut
    EXPECT_TRUE(has(plan, TroubleKind::kerfTooWide, -1, 0));
    EXPECT_EQ(plan.cuts.size(), 1u);
    EXPECT_EQ(plan.missing.size(), 3u);
}

TEST(BadInput, BoardShorterThanAScarf) {
    Job job = stem();
    job.boards[0].length_m = 0.05;  // a scarf is 72 mm
    job.boards[0].count = 100;
    job.rules.leastPart_m = 0;
    const CutPlan plan = checked(job);
    EXPECT_EQ(plan.missing.size(), 4u);
    EXPECT_TRUE(has(plan, TroubleKind::lanesTooShort, 0, -1));
}

TEST(BadInput, BoardTooThinOrTooNarrow) {
    Job job = stem();
    job.boards[0].thickness_m = 0.005;
    job.boards[0].width_m = 0.02;
    const CutPlan plan = checked(job);
    EXPECT_TRUE(has(plan, TroubleKind::boardsTooSmall, 0, -1));
    EXPECT_TRUE(has(plan, TroubleKind::boardTooSmall, -1, 0));
}

TEST(BadInput, BadStretchesThatOverlapOrCoverAll) {
    Job job = stem();
    job.boards[0].bad = {{{2.1, 2.3}, {}}, {{2.2, 9}, {}}, {{-1, 0}, {}}, {{2.2, 2.25}, Stretch{0, 0.3}}};
    EXPECT_TRUE(checked(job).missing.empty());
    job.boards[0].bad = {{{0, 1.5}, {}}, {{1, 3}, {}}};
    const CutPlan plan = checked(job);
    EXPECT_TRUE(has(plan, TroubleKind::boardAllBad, -1, 0));
    EXPECT_TRUE(has(plan, TroubleKind::lanesTooShort, 0, -1));
    job.boards[0].bad = {{{0, 2.4}, Stretch{0, 0.08}}, {{0, 2.4}, Stretch{0.08, 0.15}}};
    EXPECT_TRUE(has(checked(job), TroubleKind::boardAllBad, -1, 0));
    for (Strip& strip : job.strips) strip.sacrificial = true;
    EXPECT_TRUE(checked(job).missing.empty());
}

TEST(BadInput, StripsThinnerThanThePlanerTakes) {
    Job job = stem();
    job.rules.planerLeast_m = 0.0061;
    const CutPlan plan = checked(job);
    EXPECT_TRUE(plan.missing.empty());
    EXPECT_TRUE(has(plan, TroubleKind::thinnerThanPlaner, 0, -1));
    job.rules.planing_m = 0;
    EXPECT_FALSE(has(checked(job), TroubleKind::thinnerThanPlaner, 0, -1));
}

TEST(BadInput, PinToABoardThatDoesNotGiveTheStrip) {
    Job job = stem();
    job.boards.push_back({.name = "B", .species = "oak", .length_m = 0.2, .width_m = 0.1, .thickness_m = 0.032});
    job.rules.pins = {{1, 1, {}}};
    const CutPlan plan = checked(job);
    EXPECT_EQ(plan.missing, std::vector<int>{1});
    EXPECT_TRUE(has(plan, TroubleKind::pinNotMet, 1, -1));
}

TEST(BadInput, ThousandsOfBoards) {
    Job job = stem();
    job.boards.assign(1000, job.boards[0]);
    for (Board& board : job.boards) board.count = 100'000;
    const CutPlan plan = checked(job);
    EXPECT_EQ(plan.boards.size(), 1u);
    EXPECT_TRUE(plan.proven);
}

}  // namespace bad_input_test
}  // namespace fayline::stock
