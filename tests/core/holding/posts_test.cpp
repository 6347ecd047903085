#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <random>

#include "core/holding/at_hand.hpp"
#include "tests/core/holding/held_by_hand.hpp"

namespace fayline::holding {
namespace posts_test {

using made::Workpiece;

void post(Workpiece& made, double at_m) {
    made.piece.form.posts.push_back(model::Post{.at_m = at_m});
}

Workpiece onPosts(double radius_m, double spacing_m = 0.2) {
    Workpiece made(radius_m);
    made.piece.form.kind = model::FormKind::posts;
    for (int i = 0; i * spacing_m <= made.line.length() + 1e-9; ++i) post(made, i * spacing_m);
    return made;
}

std::vector<PostLoad> loadsOf(const Workpiece& made) {
    return postLoads(made.work(), hold(made.work()));
}

double sumOf(const std::vector<PostLoad>& loads) {
    return std::accumulate(loads.begin(), loads.end(), 0.0,
                           [](double sum, const PostLoad& load) { return sum + load.thrust_N; });
}

// Balance across a straight form (D): what the clamps pull, the posts bear.
TEST(Posts, OnAStraightFormTheyBearWhatTheClampsPull) {
    Workpiece made = onPosts(0);
    for (const double at : {0.2, 0.33, 0.8}) {
        made.clamp(at);
        made.piece.holding.stations.back().pull_N = 1000 * at;
    }
    const std::vector<PostLoad> loads = loadsOf(made);
    ASSERT_EQ(loads.size(), 7u);
    EXPECT_NEAR(sumOf(loads), 1330, 1e-4);
    // And their lever arms: about the start.
    double moment = 0;
    for (const PostLoad& load : loads) moment += load.thrust_N * load.at_m;
    EXPECT_NEAR(moment, 1000 * (0.2 * 0.2 + 0.33 * 0.33 + 0.8 * 0.8), 5);
    EXPECT_NEAR(loads[4].thrust_N, 800, 40);
    EXPECT_EQ(loads[4].holds_N, 3000);
    EXPECT_EQ(loads[4].index, 4);
}

// Balance in the plane (D): every push of a post and every pull goes square to the form at its place, and what is drawn
// on a bend with free ends has no other force on it. Pads that slide: those that hold drag along the strips as well.
TEST(Posts, RoundABendTheirThrustsBalanceThePullsInThePlane) {
    Workpiece made = onPosts(0.9);
    made.piece.holding.pads = model::Pads::slide;
    for (const double at : {0.0, 0.2, 0.4, 0.6, 0.8, 1.0, 1.2}) made.clamp(at, 6000);
    const Held held = hold(made.work());
    const std::vector<PostLoad> loads = postLoads(made.work(), held);
    double across = 0;
    double along = 0;
    double pulls = 0;
    const auto add = [&](double at_m, double force) {
        const double heading = made.line.at(at_m).heading_rad;
        across += force * std::cos(heading);
        along += force * std::sin(heading);
    };
    for (const PostLoad& load : loads) add(load.at_m, load.thrust_N);
    for (const HeldStation& station : held.stations) {
        add(station.at_m, -station.pull_N);
        pulls += station.pull_N;
    }
    EXPECT_GT(pulls, 500);
    EXPECT_NEAR(across, 0, 0.002 * pulls);
    EXPECT_NEAR(along, 0, 0.002 * pulls);
    // From its middle the piece looks alike both ways.
    for (std::size_t i = 0; i < 3; ++i) EXPECT_NEAR(loads[i].thrust_N, loads[6 - i].thrust_N, 1e-5 * pulls) << i;
}

TEST(Posts, OverlappingOnesShareAndOneBesideTheStripsBearsNothing) {
    Workpiece made = onPosts(0, 0.4);
    made.clamp(0.4);
    made.piece.holding.stations.back().pull_N = 900;
    const double alone = loadsOf(made)[1].thrust_N;
    post(made, 0.4);
    post(made, 5.0);
    const std::vector<PostLoad> loads = loadsOf(made);
    EXPECT_NEAR(loads[1].thrust_N, alone / 2, 1e-6 * alone);
    EXPECT_EQ(loads[1].thrust_N, loads[4].thrust_N);
    EXPECT_EQ(loads[5].thrust_N, 0);
    EXPECT_NEAR(sumOf(loads), 900, 1e-4);
}

TEST(Posts, OtherFormsHaveNoneAndWithoutContactNothingIsSaid) {
    Workpiece made = onPosts(0.9);
    made.clamp(0.4);
    EXPECT_TRUE(postLoads(made.work(), Held{}).empty());
    const Held held = hold(made.work());
    made.piece.form.kind = model::FormKind::solid;
    EXPECT_TRUE(postLoads(made.work(), held).empty());
    made.piece.form.kind = model::FormKind::posts;
    made.piece.form.posts.clear();
    EXPECT_TRUE(loadsOf(made).empty());
}

TEST(Posts, OnRandomPiecesEveryThrustIsFiniteAndNoneLessThanNothing) {
    std::mt19937 generator(5);
    const auto between = [&](double low, double high) {
        return low + (high - low) * (static_cast<double>(generator()) / 4294967296.0);
    };
    for (int i = 0; i < 60; ++i) {
        Workpiece made(i % 3 == 0 ? 0 : between(0.7, 3) * (i % 3 == 1 ? 1 : -1));
        made.piece.form.kind = model::FormKind::posts;
        for (int n = 1 + i % 8; n > 0; --n) {
            post(made, between(-0.2, 1.4));
            made.piece.form.posts.back().width_m = between(0.005, 0.2);
        }
        for (int n = i % 6; n > 0; --n) made.clamp(between(-0.1, 1.3), between(10, 5000));
        if (i % 2) made.piece.holding.pads = model::Pads::slide;
        if (i % 4 == 0) made.piece.stack.strips[0].tapersTo_m = 0.004;
        const std::vector<PostLoad> loads = loadsOf(made);
        for (const PostLoad& load : loads) ASSERT_TRUE(std::isfinite(load.thrust_N) && load.thrust_N >= 0) << i;
        const AtHand found = atHand(made.work(), hold(made.work()));
        EXPECT_EQ(found.served.size(), made.piece.holding.stations.size());
    }
}

}  // namespace posts_test
}  // namespace fayline::holding
