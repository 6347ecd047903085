#include "core/holding/props/closing_loads.hpp"

#include <gtest/gtest.h>

#include "core/math/count.hpp"
#include "tests/core/holding/made_props.hpp"
#include "tests/core/holding/made_work.hpp"

namespace fayline::holding {
namespace closing_loads_test {

const std::atomic<bool> goOn{false};

// A step at which the first so many stations are closed, with these pulls.
ClosingStep stepWith(const std::vector<double>& pulls_N) {
    return {.index = math::countOf(pulls_N) - 1,
            .order = math::countOf(pulls_N),
            .closed = made::PropWork::held(pulls_N).stations};
}

// Two upright props at x = 0.5 and 1.5 under a level stack, on a boat of 1 000 kg (9 806.65 N) whose centre is at x =
// 0.8 between blocks at x = 0 and 2.
made::PropWork twoProps() {
    made::PropWork work(0, 2.0);
    for (const double at_m : {1.5, 0.5}) {
        model::Station prop = made::propAt(at_m);
        prop.strut.footX_m = at_m;
        prop.strut.footY_m = -0.6;
        work.piece.holding.stations.push_back(prop);
    }
    work.piece.holding.hull.weight_kg = 1000;
    work.piece.holding.hull.centreX_m = 0.8;
    work.piece.holding.hull.blocks = {model::Block{.x_m = 0}, model::Block{.x_m = 2}};
    return work;
}

// Source: plane equilibrium (D). At the turn of the prop at 1.5 it pushes 6 000 N alone. About the block at 0 the
// weight turns the boat down with 9 806.65 x 0.8 = 7 845.32 N m, and the prop up with 6 000 x 1.5 = 9 000: it tips, at
// 7 845.32 / 9 000 = 0.871702 of that push. With both closed they push 1 000 and 1 500 N: about the block at 0 they
// turn with 1 000 x 1.5 + 1 500 x 0.5 = 2 250 N m, so it stands up to 7 845.32 / 2 250 = 3.486809 times as much. About
// the block at 2 (weight 1.2 x 9 806.65 = 11 767.98, props 500 + 2 250 = 2 750) it would stand longer, up to 4.279.
TEST(ClosingLoads, ABoatThatStandsInTheEndCanTipAtOneProp) {
    const made::PropWork work = twoProps();
    const ClosingLoads loads = closingLoads(work.onForm(), {stepWith({6000}), stepWith({1000, 1500})});
    ASSERT_EQ(loads.hulls.size(), 2u);
    EXPECT_TRUE(loads.hulls[0]->tips);
    EXPECT_NEAR(loads.hulls[0]->margin, 0.871702, 1e-6);
    EXPECT_FALSE(loads.hulls[1]->tips || loads.hulls[1]->lifts || loads.hulls[1]->slides);
    EXPECT_NEAR(loads.hulls[1]->margin, 3.486809, 1e-6);
    EXPECT_EQ(loads.worstHull, 0);
    EXPECT_EQ(loads.failingHull, 0);
}

TEST(ClosingLoads, EachHasItsOwnGreatestAndTheStepAtWhichItIs) {
    const made::PropWork work = twoProps();
    const ClosingLoads loads = closingLoads(work.onForm(), {stepWith({6000}), stepWith({1000, 1500})});
    EXPECT_EQ(loads.pulls[0].most_N, 6000);
    EXPECT_EQ(loads.pulls[0].step, 0);
    EXPECT_EQ(loads.pulls[1].most_N, 1500);
    EXPECT_EQ(loads.pulls[1].step, 1);
    // Upright props: the thrust is the pull. Along the line the station at 0.5 comes first.
    ASSERT_EQ(loads.props.size(), 2u);
    EXPECT_NEAR(loads.props[0].thrust_N, 1500, 1e-9);
    EXPECT_NEAR(loads.props[1].thrust_N, 6000, 1e-9);
}

TEST(ClosingLoads, AStepThatDidNotSettleTellsNothing) {
    const made::PropWork work = twoProps();
    const ClosingLoads loads = closingLoads(work.onForm(), {ClosingStep{}, ClosingStep{}});
    EXPECT_EQ(loads.pulls[0].step, -1);
    EXPECT_EQ(loads.worstHull, -1);
    EXPECT_FALSE(loads.hulls[0].has_value());
    EXPECT_EQ(loads.props[0].thrust_N, 0);
}

TEST(ClosingLoads, WithoutAWeightThereIsNoBoatToJudge) {
    made::PropWork work = twoProps();
    work.piece.holding.hull.weight_kg = 0;
    const ClosingLoads loads = closingLoads(work.onForm(), {stepWith({6000})});
    EXPECT_FALSE(loads.hulls[0].has_value());
    EXPECT_EQ(loads.worstHull, -1);
}

// The posts of the whole piece against those of the last step, and no step's post bearing more than is told.
TEST(ClosingLoads, AreNoLessThanWithAllStationsClosed) {
    made::Work work =
        made::workOn([](double) { return -0.16; }, 1.91, 5, made::clampsAt({0, 0.32, 0.64, 0.956, 1.275, 1.595, 1.91}));
    work.piece.form.kind = model::FormKind::posts;
    for (const model::Station& station : work.piece.holding.stations) {
        work.piece.form.posts.push_back({.at_m = station.at_m});
    }
    const std::vector<ClosingStep> steps = closeInOrder(work, goOn);
    const ClosingLoads loads = closingLoads(work, steps);
    const Held held = hold(work);
    const std::vector<PostLoad> posts = postLoads(work, held);
    ASSERT_EQ(loads.posts.size(), posts.size());
    bool someMore = false;
    for (std::size_t i = 0; i < posts.size(); ++i) {
        EXPECT_NEAR(steps.back().posts[i].thrust_N, posts[i].thrust_N, 1e-3 * (1 + posts[i].thrust_N)) << i;
        EXPECT_GE(loads.posts[i].most_N, steps.back().posts[i].thrust_N) << i;
        someMore = someMore || loads.posts[i].most_N > 1.5 * posts[i].thrust_N + 10;
    }
    EXPECT_TRUE(someMore);
    for (const HeldStation& station : held.stations) {
        EXPECT_GE(loads.pulls[station.index].most_N, station.pull_N * (1 - 1e-4) - 1e-3);
    }
    // At every step the posts bear what the stations pull: a stack drawn down square to a gentle curve.
    for (const ClosingStep& step : steps) {
        double pulled = 0;
        double borne = 0;
        for (const HeldStation& station : step.closed) pulled += station.pull_N;
        for (const PostLoad& post : step.posts) borne += post.thrust_N;
        EXPECT_NEAR(borne, pulled, 0.02 * pulled + 1) << step.order;
    }
}

}  // namespace closing_loads_test
}  // namespace fayline::holding
