#include "core/holding/at_hand.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "core/wood/bending.hpp"
#include "tests/core/holding/held_by_hand.hpp"

namespace fayline::holding {
namespace at_hand_test {

using made::heldWith, made::Workpiece;
using model::HoldKind;

model::Tool clampsOf(double most_N, int count) {
    return {.name = "clamp", .most_N = most_N, .count = count};
}

AtHand askWith(const Workpiece& made, const std::vector<double>& pulls_N) {
    return atHand(made.work(), heldWith(made.piece, pulls_N));
}

const Counted& countOf(const AtHand& atHand, HoldKind kind) {
    const auto found = std::ranges::find_if(atHand.counts, [&](const auto& one) { return one.kind == kind; });
    if (found == atHand.counts.end()) throw std::runtime_error("this kind was not counted");
    return *found;
}

TEST(AtHand, WithoutAToolOfItsKindListedNothingIsKnownAndNobodyIsLeftWithout) {
    Workpiece made(0.8);
    made.clamp(0.3);
    made.clamp(0.6);
    AtHand found = askWith(made, {800, 900});
    EXPECT_EQ(found.leftWithout, 0);
    EXPECT_FALSE(countOf(found, HoldKind::clamp).listed);
    EXPECT_EQ(countOf(found, HoldKind::clamp).asked, 2);
    EXPECT_EQ(found.served[0].tool, -1);
    EXPECT_EQ(found.served[0].lacks, Lacks::nothing);
    model::Tool jacks;
    jacks.kind = HoldKind::jack;
    made.piece.holding.tools = {jacks};
    found = askWith(made, {800, 900});
    EXPECT_EQ(found.leftWithout, 0);
    EXPECT_EQ(found.counts.size(), 2u);
    // A kind that is listed with none of it there is known to be short.
    made.piece.holding.tools = {clampsOf(2500, 0)};
    EXPECT_EQ(askWith(made, {800, 900}).leftWithout, 2);
}

TEST(AtHand, MoreThanThereAreLeavesTheWeakestPullsWithout) {
    Workpiece made(0.8);
    for (const double at : {0.1, 0.3, 0.5, 0.7}) made.clamp(at);
    made.piece.holding.tools = {clampsOf(2500, 3)};
    const AtHand found = askWith(made, {800, 500, 900, 2500});
    const Counted& clamps = countOf(found, HoldKind::clamp);
    EXPECT_EQ(clamps.asked, 4);
    EXPECT_EQ(clamps.there, 3);
    EXPECT_EQ(clamps.withoutTool, (std::vector<int>{1}));
    EXPECT_EQ(found.served[1].lacks, Lacks::count);
}

TEST(AtHand, AToolMustBeOfItsKindStrongEnoughAndReach) {
    Workpiece made(0.8);
    made.clamp(0.3);
    model::Tool& tool = made.piece.holding.tools.emplace_back(clampsOf(1000, 5));
    const auto lacks = [&] { return askWith(made, {1200}).served[0].lacks; };
    EXPECT_EQ(lacks(), Lacks::strength);
    tool.most_N = 1200;
    EXPECT_EQ(lacks(), Lacks::nothing);
    // 8 strips of 6 mm under a caul of 12 mm.
    made.piece.holding.cauls.thickness_m = 0.012;
    tool.opening_m = 0.059;
    EXPECT_EQ(lacks(), Lacks::opening);
    tool.opening_m = 0.060;
    EXPECT_EQ(lacks(), Lacks::nothing);
    EXPECT_EQ(askWith(made, {1200}).served[0].opens, true);
    EXPECT_FALSE(askWith(made, {1200}).served[0].throats.has_value());
    // To the middle of 50 mm.
    tool.throat_m = 0.024;
    EXPECT_EQ(lacks(), Lacks::throat);
    tool.throat_m = 0.025;
    EXPECT_EQ(lacks(), Lacks::nothing);
    tool.kind = HoldKind::wedge;
    EXPECT_EQ(askWith(made, {1200}).served[0].tool, -1);
}

TEST(AtHand, ASideClampIsCountedButNeedsNoStrengthAndReachesAcross) {
    Workpiece made(0.8);
    made.clamp(0.3);
    made.clamp(0.6);
    made.piece.holding.stations[1].side = true;
    made.piece.holding.tools = {clampsOf(100, 1), clampsOf(2500, 1)};
    AtHand found = askWith(made, {800, 0});
    EXPECT_EQ(countOf(found, HoldKind::clamp).asked, 2);
    EXPECT_EQ(found.served[0].tool, 1);
    EXPECT_EQ(found.served[1].tool, 0);
    EXPECT_EQ(found.served[1].needed_N, 0);
    EXPECT_NEAR(found.served[1].opening_m, 0.050, 1e-12);
    EXPECT_NEAR(found.served[1].throat_m, 0.024, 1e-12);
    made.piece.holding.tools.pop_back();
    found = askWith(made, {80, 0});
    EXPECT_EQ(countOf(found, HoldKind::clamp).withoutTool, (std::vector<int>{1}));
    EXPECT_EQ(found.strapsWouldServe + found.wedgesWouldServe, 0);
}

TEST(AtHand, APropNeedsItsThrustAlongItselfAndAStrapItsTension) {
    Workpiece made(0.8);
    model::Station prop;
    prop.kind = HoldKind::prop;
    prop.at_m = 0.3;
    prop.most_N = 3000;
    model::Station strap;
    strap.kind = HoldKind::strap;
    strap.at_m = 0.1;
    strap.strap.to_m = 1.0;
    strap.most_N = 1500;
    made.piece.holding.stations = {prop, strap};
    Held held = heldWith(made.piece, {1000, 1400});
    held.stations[0].most_N = 1500;  // it stands at 60 degrees to the stack's normal
    const AtHand found = atHand(made.work(), held);
    EXPECT_NEAR(found.served[0].needed_N, 2000, 1e-9);
    EXPECT_NEAR(found.served[1].needed_N, 1500, 1e-9);
}

// Every way of giving tools to stations, tried one after the other.
int mostServed(const Workpiece& made, const std::vector<double>& pulls_N, std::size_t station, std::vector<int>& used) {
    if (station == pulls_N.size()) return 0;
    int most = mostServed(made, pulls_N, station + 1, used);
    const double depth = 0.048 + made.piece.holding.cauls.thickness_m;
    for (std::size_t tool = 0; tool < used.size(); ++tool) {
        const model::Tool& one = made.piece.holding.tools[tool];
        if (used[tool] == one.count || one.kind != made.piece.holding.stations[station].kind) continue;
        const bool clamp = one.kind == HoldKind::clamp;
        if (one.most_N < pulls_N[station] || (clamp && one.opening_m && *one.opening_m < depth)) continue;
        ++used[tool];
        most = std::max(most, 1 + mostServed(made, pulls_N, station + 1, used));
        --used[tool];
    }
    return most;
}

TEST(AtHand, NoOtherWayOfGivingOutTheToolsServesMore) {
    std::mt19937 generator(3);
    const auto upTo = [&](int most) { return static_cast<int>(generator() % static_cast<unsigned>(most + 1)); };
    int shortOnes = 0;
    for (int run = 0; run < 400; ++run) {
        Workpiece made(0.8);
        std::vector<double> pulls;
        for (int i = 1 + upTo(6); i > 0; --i) {
            made.clamp(0.1 * i);
            made.piece.holding.stations.back().kind = upTo(2) ? HoldKind::clamp : HoldKind::jack;
            pulls.push_back(100.0 * upTo(12));
        }
        for (int i = 1 + upTo(3); i > 0; --i) {
            model::Tool tool = clampsOf(100.0 * (1 + upTo(12)), upTo(2));
            if (upTo(2) == 0) tool.kind = HoldKind::jack;
            if (upTo(3) == 0) tool.opening_m = 0.03 + 0.01 * upTo(4);
            made.piece.holding.tools.push_back(tool);
        }
        std::vector<int> used(made.piece.holding.tools.size(), 0);
        const AtHand found = askWith(made, pulls);
        int served = 0;
        std::vector<int> users(used.size(), 0);
        for (std::size_t i = 0; i < pulls.size(); ++i) {
            const Served& one = found.served[i];
            if (one.tool < 0) continue;
            ++served;
            const model::Tool& tool = made.piece.holding.tools[one.tool];
            EXPECT_GE(tool.most_N, pulls[i]);
            EXPECT_EQ(tool.kind, made.piece.holding.stations[i].kind);
            EXPECT_LE(++users[one.tool], tool.count);
        }
        EXPECT_EQ(served, mostServed(made, pulls, 0, used)) << run;
        shortOnes += found.leftWithout;
        for (const Counted& kind : found.counts) {
            for (const int index : kind.withoutTool) {
                EXPECT_NE(found.served[index].lacks, Lacks::nothing);
            }
        }
    }
    EXPECT_GT(shortOnes, 100);  // else the cases were too easy to say anything
}

TEST(AtHand, SplittingTheGluingHalvesThePullsOfEqualStrips) {
    Workpiece made(0.8);
    made.clamp(0.3);
    made.clamp(0.6);
    made.piece.holding.tools = {clampsOf(1300, 4)};
    AtHand found = askWith(made, {2500, 2400});
    EXPECT_EQ(found.leftWithout, 2);
    EXPECT_EQ(found.splitAfterStrip, 4);
    EXPECT_NEAR(found.splitShare, 0.5, 1e-12);
    EXPECT_EQ(found.splitServes, 2);
    // Of strips of two thicknesses the lots are alike in stiffness, not in number: 1 of 12 mm outweighs 7 of 6 mm.
    made.piece.stack.strips = {model::Strips{.count = 7, .thickness_m = 0.006},
                               model::Strips{.count = 1, .thickness_m = 0.012}};
    found = askWith(made, {2000, 1900});
    EXPECT_EQ(found.splitAfterStrip, 7);
    EXPECT_NEAR(found.splitShare, 8.0 / 15, 1e-12);
}

TEST(AtHand, SplittingDoesNotSpareAStationNorAPullThatIsGivenNorASecondSplit) {
    Workpiece made(0.8);
    for (const double at : {0.3, 0.6, 0.9}) made.clamp(at);
    made.piece.holding.tools = {clampsOf(2500, 2)};
    EXPECT_EQ(askWith(made, {2000, 2000, 2000}).splitAfterStrip, 0);
    made.piece.holding.tools = {clampsOf(1500, 3)};
    EXPECT_EQ(askWith(made, {2000, 2000, 2000}).splitServes, 3);
    for (model::Station& station : made.piece.holding.stations) station.pull_N = 2000;
    EXPECT_EQ(askWith(made, {2000, 2000, 2000}).splitAfterStrip, 0);
    for (model::Station& station : made.piece.holding.stations) station.pull_N.reset();
    made.piece.stack.gluings = {4};
    EXPECT_EQ(askWith(made, {2000, 2000, 2000}).splitAfterStrip, 0);
}

TEST(AtHand, StrapsAreOfUseOnlyWhereTheOutsideIsRound) {
    for (const double radius : {0.8, 0.0, -0.8}) {
        Workpiece made(radius);
        for (const double at : {0.3, 0.5, 0.7}) made.clamp(at);
        made.piece.holding.tools = {clampsOf(2500, 2)};
        const AtHand found = askWith(made, {800, 700, 600});
        EXPECT_EQ(found.strapsWouldServe, radius > 0 ? 1 : 0) << radius;
        EXPECT_EQ(found.wedgesWouldServe, 1);
        // 600 N over 200 mm by a strap round 0.8 m: the last station reaches as far beyond as before it.
        EXPECT_NEAR(found.strapTension_N, radius > 0 ? 600 * 0.8 / 0.2 : 0, 1e-6);
    }
}

TEST(AtHand, AStrapThatHandsCouldNotPullIsNotOffered) {
    Workpiece made(0.8);
    for (const double at : {0.3, 0.5, 0.7}) made.clamp(at);
    made.piece.holding.tools = {clampsOf(2500, 2)};
    EXPECT_EQ(askWith(made, {2000, 1900, 1200}).strapsWouldServe, 1);  // 4.8 kN
    const AtHand found = askWith(made, {2000, 1900, 1300});            // 5.2 kN
    EXPECT_EQ(found.strapsWouldServe, 0);
    EXPECT_EQ(found.strapTension_N, 0);
}

TEST(AtHand, WedgesWantAFormAndNoMorePullThanTheyAreGoodFor) {
    Workpiece made(0.8);
    made.clamp(0.3, 5000);
    made.piece.holding.tools = {clampsOf(100, 2)};
    EXPECT_EQ(askWith(made, {1900}).wedgesWouldServe, 1);
    EXPECT_EQ(askWith(made, {2100}).wedgesWouldServe, 0);
    made.piece.form.kind = model::FormKind::inPlace;
    EXPECT_EQ(askWith(made, {1900}).wedgesWouldServe, 0);
}

TEST(AtHand, TurnsPastSnugAreWhatGivesWayOverThePitch) {
    // A clamp alone gives 1 mm at 2.5 kN: a quarter turn of a 4 mm pitch.
    EXPECT_NEAR(turnsPastSnug(2500, 0.004, 0), 0.25, 1e-12);
    EXPECT_NEAR(turnsPastSnug(2500, 0.002, 4e-7), 1.0, 1e-12);
    EXPECT_EQ(turnsPastSnug(2500, 0, 1e-7), 0);
    // 48 mm of white oak under a pad of 40 mm, 50 mm wide: the load spreads over 88 mm on the mean.
    Workpiece made(0.8);
    made.clamp(0.6);
    const model::Stack& stack = made.piece.stack;
    const double along =
        wood::bending(*wood::findSpecies(made.species, "oak_white"), stack.moisture, stack.grainSlope, {}).modulus_Pa;
    const double crush = 12 * 0.048 / (along * 0.050 * 0.088);
    EXPECT_NEAR(stackCrush_m_per_N(made.work(), 0.6, 0.04), crush, 1e-9 * crush);
    model::Tool& tool = made.piece.holding.tools.emplace_back(clampsOf(2500, 1));
    EXPECT_FALSE(askWith(made, {1000}).served[0].turnsPastSnug.has_value());
    tool.pitch_m = 0.004;
    EXPECT_NEAR(*askWith(made, {1000}).served[0].turnsPastSnug, 1000 * (4e-7 + crush) / 0.004, 1e-9);
}

TEST(AtHand, AThousandStationsAndToolsAreCountedSoonAndFinite) {
    Workpiece made(0.8);
    made.piece.stack.strips[0].count = 40;
    std::vector<double> pulls;
    for (int i = 0; i < 1000; ++i) {
        made.clamp(1.2 * i / 1000);
        pulls.push_back(i * 3.0);
        model::Tool tool = clampsOf(1.0 + i, i % 2);
        tool.pitch_m = 0.004;
        made.piece.holding.tools.push_back(tool);
    }
    made.clamp(1.0);  // of which the contact says nothing
    const AtHand found = askWith(made, pulls);
    EXPECT_EQ(countOf(found, HoldKind::clamp).asked, 1001);
    EXPECT_EQ(countOf(found, HoldKind::clamp).there, 500);
    for (const Served& one : found.served) {
        ASSERT_TRUE(std::isfinite(one.needed_N) && std::isfinite(one.turnsPastSnug.value_or(0)));
    }
    EXPECT_TRUE(std::isfinite(found.strapTension_N));
    EXPECT_EQ(atHand(Workpiece(0.8).work(), Held{}).counts.size(), 0u);
}

}  // namespace at_hand_test
}  // namespace fayline::holding
