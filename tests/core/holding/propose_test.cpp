#include "core/holding/propose/propose.hpp"

#include <gtest/gtest.h>
#include <sys/resource.h>

#include <iostream>

#include "core/holding/pressing.hpp"
#include "core/io/file.hpp"
#include "core/laminate/layers.hpp"
#include "core/line/fair.hpp"
#include "core/math/count.hpp"
#include "tests/core/holding/small_pieces.hpp"

namespace fayline::holding {
namespace propose_test {

struct Made {
    model::Piece piece;
    line::Line line = made::arc(-1.0, 0.8);
};

Made roundPiece() {
    Made made;
    made.piece.glue.pasteYield_Pa = 0;
    made.piece.holding.tools = {clamps(2500, 0.04)};
    return made;
}

Proposal proposalOf(const Made& made, double grid_m = 0.02) {
    return propose({made.piece, made.line, wood::builtInSpecies()}, goOn, grid_m);
}

void expectFinite(const Proposal& proposal) {
    EXPECT_TRUE(std::isfinite(proposal.largest.gap_m) && std::isfinite(proposal.largest.at_m));
    EXPECT_EQ(proposal.met, !proposal.unmet.has_value());
    for (const Proposed& each : proposal.stations) {
        EXPECT_TRUE(std::isfinite(each.station.at_m) && std::isfinite(each.pull_N) && std::isfinite(each.gap_m));
        EXPECT_GE(each.pull_N, 0);
    }
}

double userSeconds() {
    rusage used{};
    getrusage(RUSAGE_SELF, &used);
    return static_cast<double>(used.ru_utime.tv_sec) + 1e-6 * static_cast<double>(used.ru_utime.tv_usec);
}

// Of stacks that change along the line: each pad by the need at its own place.
bool pressedEverywhereBySections(const StackOnForm& work, const std::vector<model::Station>& stations) {
    constexpr int steps = 2000;
    for (int i = 0; i <= steps; ++i) {
        const double at = work.line.length() * i / steps;
        if (std::ranges::none_of(stations, [&](const model::Station& station) {
                const PressingNeed need = pressingNeed(work, station.at_m, station.pad_m, station.most_N);
                return std::abs(station.at_m - at) <= need.spacing_m / 2 + 1e-9;
            }))
            return false;
    }
    return true;
}

// Four pieces as people make them: what is proposed is held and pressed as it says, on the grid of 10 mm.
TEST(Propose, SamplePiecesAreHeldByWhatIsProposed) {
    const model::Boat boat = io::loadBoat(std::string(FAYLINE_SAMPLES) + "/marram.fayline");
    for (const model::Piece& piece : boat.pieces) {
        SCOPED_TRACE(piece.name);
        line::FairInput input;
        for (const model::Point& point : piece.line.points) input.points.push_back({point.x_m, point.y_m});
        input.readTo_m = piece.line.readTo_m;
        input.fairWithin_m = piece.line.fairWithin_m;
        const line::FairLine fair = line::fair(input);
        StackOnForm work{piece, fair.line, wood::builtInSpecies()};
        work.wanted = wantedPressure(model::AdhesiveKind::epoxy, true);  // as all of them are glued
        const double begun = userSeconds();
        const Proposal proposal = propose(work, goOn);
        const double took = userSeconds() - begun;
        const int count = math::countOf(proposal.stations);
        expectFinite(proposal);
        EXPECT_TRUE(proposal.finished);
        const Held held = holdWith(work, stationsOf(proposal));
        EXPECT_EQ(held.outcome, Outcome::settled);
        EXPECT_LE(held.largest.gap_m, piece.holding.gapLimit_m + gapCounts_m);
        EXPECT_NEAR(held.largest.gap_m, proposal.largest.gap_m, 1e-7);
        // Pressing everywhere is a wish; between posts no pad presses.
        const bool posts = piece.form.kind == model::FormKind::posts;
        EXPECT_TRUE(proposal.met);
        EXPECT_TRUE(proposal.pressingIsWish);
        EXPECT_EQ(proposal.unmet, std::nullopt);
        EXPECT_EQ(posts, proposal.forEverything == 0);
        EXPECT_TRUE(proposal.withinCounts);
        EXPECT_LE(count, proposal.tools > 0 ? proposal.tools : count);
        EXPECT_EQ(proposal.withoutPressing, count);
        EXPECT_FALSE(proposal.caul_m);
        // Pressed everywhere by a glue that must be.
        if (!posts) {
            work.wanted = {};
            const Proposal pressed = propose(work, goOn);
            EXPECT_EQ(pressed.forEverything, proposal.forEverything);
            EXPECT_EQ(pressed.withoutPressing, count);
            EXPECT_EQ(pressedEverywhereBySections(work, stationsOf(pressed)), pressed.met);
        }
        std::cout << piece.name << ": " << count << " stations of " << proposal.tools << " tools, "
                  << proposal.withoutPressing << " for gap and strength alone, " << proposal.forEverything
                  << " for everything, " << 1000 * proposal.largestSpacing_m << " mm apart at most, cauls of "
                  << 1000 * proposal.caul_m.value_or(0) << " mm; gap " << 1000 * proposal.largest.gap_m << " mm; "
                  << 1000 * took << " ms of user CPU\n";
    }
}

TEST(Propose, KeepsFixedStationsAndOtherKindsInTheirPlaces) {
    Made made = roundPiece();
    model::Station fixed = stationAt(0.333, made.piece.holding.tools.front());
    fixed.fixed = true;
    model::Station screw = stationAt(0.0, made.piece.holding.tools.front());
    screw.kind = model::HoldKind::screw;
    model::Station side = stationAt(0.6, made.piece.holding.tools.front());
    side.side = true;
    model::Station loose = stationAt(0.47, made.piece.holding.tools.front());
    made.piece.holding.stations = {fixed, loose, screw, side};
    const Proposal proposal = proposalOf(made);
    EXPECT_TRUE(proposal.met);
    const std::vector<model::Station> stations = stationsOf(proposal);
    for (const model::Station& kept : {fixed, screw, side}) {
        EXPECT_EQ(std::ranges::count(stations, kept), 1);
    }
    EXPECT_EQ(std::ranges::count(stations, loose), 0);
    EXPECT_TRUE(std::ranges::is_sorted(stations, [](const auto& a, const auto& b) { return a.at_m < b.at_m; }));
    for (const Proposed& each : proposal.stations) {
        const bool kept = each.station == fixed || each.station == screw || each.station == side;
        EXPECT_EQ(each.governedBy == Governs::fixedOne, kept);
    }
}

TEST(Propose, AskedForPressingItSaysThatPressingGovernsAndHowFewWouldDoWithout) {
    Made made = roundPiece();
    const Proposal without = proposalOf(made);
    made.piece.glue.pasteYield_Pa = 1500;
    const Proposal with = proposalOf(made);
    EXPECT_TRUE(with.met);
    EXPECT_EQ(with.withoutPressing, math::countOf(without.stations));
    EXPECT_GT(with.stations.size(), without.stations.size());
    EXPECT_EQ(with.stations.front().governedBy, Governs::end);
    // The two at either end hold it down there, with all they have.
    for (std::size_t i = 2; i + 2 < with.stations.size(); ++i) {
        EXPECT_EQ(with.stations[i].governedBy, Governs::pressing) << i;
    }
}

// A glue that wants 100 kPa without a paste asks for what a paste of that pressure asks: the same stations. The width
// as bent is 51 + 2 x 3 mm, so a paste of 100 kPa x 2 x 0.15 mm / 57 mm = 526.3 Pa (paste between plates, D).
TEST(Propose, AGlueThatWantsPressureAsksForTheStationsOfAPasteThatNeedsAsMuch) {
    Made made = roundPiece();
    made.piece.stack.glueLine_m = 0.00015;
    made.piece.holding.cauls.thickness_m = 0.02;
    StackOnForm work{made.piece, made.line, wood::builtInSpecies()};
    work.wanted = {100e3, 200e3, false, {}};
    const Proposal wanted = propose(work, goOn, 0.02);
    work.wanted.contactIsEnough = true;
    const Proposal contact = propose(work, goOn, 0.02);
    work.wanted = {};
    made.piece.glue.pasteYield_Pa = 100e3 * 2 * 0.00015 / laminate::ripWidthAt(made.piece.stack, 0.4);
    const Proposal paste = propose(work, goOn, 0.02);
    ASSERT_EQ(wanted.stations.size(), paste.stations.size());
    for (std::size_t i = 0; i < wanted.stations.size(); ++i) {
        EXPECT_NEAR(wanted.stations[i].station.at_m, paste.stations[i].station.at_m, 1e-9);
    }
    EXPECT_LT(contact.stations.size(), wanted.stations.size());
}

TEST(Propose, AGlueThatFillsGapsIsToldWhatPressingWouldTakeAndNotAskedForIt) {
    Made made = roundPiece();
    made.piece.glue.pasteYield_Pa = 1500;
    StackOnForm work{made.piece, made.line, wood::builtInSpecies()};
    const Proposal condition = propose(work, goOn, 0.02);
    work.wanted.contactIsEnough = true;
    const Proposal wish = propose(work, goOn, 0.02);
    EXPECT_TRUE(condition.met && wish.met);
    EXPECT_FALSE(condition.pressingIsWish);
    EXPECT_TRUE(wish.pressingIsWish);
    EXPECT_EQ(math::countOf(wish.stations), condition.withoutPressing);
    EXPECT_EQ(wish.forEverything, math::countOf(condition.stations));
    for (const Proposed& each : wish.stations) EXPECT_NE(each.governedBy, Governs::pressing);
    // Few tools do for the one and not for the other.
    made.piece.holding.tools[0].count = condition.withoutPressing;
    EXPECT_TRUE(propose(work, goOn, 0.02).met);
    EXPECT_TRUE(propose(work, goOn, 0.02).withinCounts);
    work.wanted = {};
    EXPECT_EQ(propose(work, goOn, 0.02).unmet, Governs::pressing);
}

TEST(Propose, TakesTheStrongToolsFirstAndSaysWhenThereAreTooFew) {
    Made made = roundPiece();
    made.piece.holding.tools = {clamps(1800, 0.04), clamps(2500, 0.04)};
    made.piece.holding.tools[0].count = 40;
    made.piece.holding.tools[1].count = 2;
    const Proposal mixed = proposalOf(made);
    EXPECT_TRUE(mixed.met);
    EXPECT_TRUE(mixed.withinCounts);
    EXPECT_EQ(mixed.tools, 42);
    const auto strong =
        std::ranges::count_if(mixed.stations, [](const Proposed& each) { return each.station.most_N == 2500; });
    EXPECT_LE(strong, 2);

    made.piece.holding.tools = {clamps(2500, 0.04)};
    made.piece.holding.tools[0].count = 1;
    const Proposal few = proposalOf(made);
    EXPECT_FALSE(few.withinCounts);
    EXPECT_GT(few.stations.size(), 1u);
    EXPECT_TRUE(few.met);  // with more of them than there are
}

TEST(Propose, TooFewMixedToolsToPressAreAllSpreadAndTheStrongOnesNotTwice) {
    Made made = roundPiece();
    made.piece.glue.pasteYield_Pa = 4000;
    made.piece.holding.tools = {clamps(1200, 0.04), clamps(2500, 0.04)};
    made.piece.holding.tools[0].count = 5;
    made.piece.holding.tools[1].count = 3;
    const Proposal mixed = proposalOf(made);
    expectFinite(mixed);
    EXPECT_FALSE(mixed.met);
    EXPECT_EQ(mixed.unmet, Governs::pressing);
    EXPECT_TRUE(mixed.withinCounts);
    EXPECT_EQ(mixed.tools, 8);
    EXPECT_GT(mixed.forEverything, 8);
    EXPECT_LE(mixed.stations.size(), 8u);
    const auto strong =
        std::ranges::count_if(mixed.stations, [](const Proposed& each) { return each.station.most_N == 2500; });
    EXPECT_LE(strong, 3);
    const Held held = holdWith({made.piece, made.line, wood::builtInSpecies()}, stationsOf(mixed));
    EXPECT_LE(held.largest.gap_m, made.piece.holding.gapLimit_m + gapCounts_m);
    double spacing = 0;
    for (std::size_t i = 1; i < mixed.stations.size(); ++i) {
        spacing = std::max(spacing, mixed.stations[i].station.at_m - mixed.stations[i - 1].station.at_m);
    }
    EXPECT_LE(mixed.largestSpacing_m, spacing + 1e-12);
    EXPECT_GT(mixed.largestSpacing_m, 0.8 / 8);
    std::cout << mixed.stations.size() << " of which strong " << strong << ", " << 1000 * mixed.largestSpacing_m
              << " mm apart at most\n";
}

TEST(Propose, WhatCannotBeMetIsSaidAndComesAsNearAsItCan) {
    // A gap limit of nothing counts as a micrometre.
    Made nothing = roundPiece();
    nothing.piece.holding.gapLimit_m = 0;
    expectFinite(proposalOf(nothing));

    Made manyWeak = roundPiece();
    manyWeak.line = made::arc(-1.0, 1.5);
    manyWeak.piece.holding.tools = {clamps(400, 0.04)};
    EXPECT_TRUE(proposalOf(manyWeak).met);  // with some more at the ends

    Made weak = roundPiece();
    weak.piece.holding.tools = {clamps(60, 0.04)};
    const Proposal tooWeak = proposalOf(weak);
    expectFinite(tooWeak);
    EXPECT_FALSE(tooWeak.met);
    EXPECT_EQ(tooWeak.unmet, Governs::strength);
    EXPECT_FALSE(tooWeak.stations.empty());

    Made none = roundPiece();
    none.piece.holding.tools = {clamps(0, 0.04)};
    const Proposal strengthless = proposalOf(none);
    expectFinite(strengthless);
    EXPECT_FALSE(strengthless.met);
    EXPECT_EQ(strengthless.unmet, Governs::strength);

    // Strips that end at the trim lines: no clamp can hold their ends down.
    Made flush = roundPiece();
    flush.piece.stack.runsPastStart_m = 0;
    flush.piece.stack.runsPastEnd_m = 0;
    const Proposal atEnds = proposalOf(flush);
    expectFinite(atEnds);
    EXPECT_FALSE(atEnds.met);
    EXPECT_FALSE(atEnds.stations.empty());
}

TEST(Propose, OddInputGivesFiniteAnswers) {
    Made noTools = roundPiece();
    noTools.piece.holding.tools.clear();
    EXPECT_TRUE(proposalOf(noTools).met);
    EXPECT_EQ(proposalOf(noTools).tools, 0);
    EXPECT_TRUE(proposalOf(noTools).withinCounts);

    Made onlyProps = roundPiece();
    onlyProps.piece.holding.tools[0].kind = model::HoldKind::prop;
    EXPECT_FALSE(proposalOf(onlyProps).withinCounts);
    expectFinite(proposalOf(onlyProps));

    Made offTheForm = roundPiece();
    offTheForm.piece.holding.stations = {stationAt(-3, clamps(2500)), stationAt(9, clamps(2500))};
    for (model::Station& station : offTheForm.piece.holding.stations) station.fixed = true;
    expectFinite(proposalOf(offTheForm));
    EXPECT_TRUE(proposalOf(offTheForm).met);

    Made onTopOfEachOther = roundPiece();
    onTopOfEachOther.piece.holding.stations.assign(3, stationAt(0.4, clamps(2500)));
    for (model::Station& station : onTopOfEachOther.piece.holding.stations) station.fixed = true;
    expectFinite(proposalOf(onTopOfEachOther));

    Made shorter = roundPiece();
    shorter.line = made::arc(-1.0, 0.02);
    expectFinite(proposalOf(shorter));
    shorter.piece.stack.runsPastStart_m = 0;
    shorter.piece.stack.runsPastEnd_m = 0;
    expectFinite(proposalOf(shorter));
    EXPECT_FALSE(proposalOf(shorter).met);

    Made noPosts = roundPiece();
    noPosts.piece.form.kind = model::FormKind::posts;
    expectFinite(proposalOf(noPosts));
    EXPECT_FALSE(proposalOf(noPosts).met);

    Made straight = roundPiece();
    straight.line = made::straight(1.0);
    expectFinite(proposalOf(straight));
    EXPECT_TRUE(proposalOf(straight).met);

    for (const double grid : {0.0, -1.0, std::numeric_limits<double>::quiet_NaN(), 50.0}) {
        expectFinite(proposalOf(roundPiece(), grid));
    }
}

TEST(Propose, StopsWhenAsked) {
    const Made made = roundPiece();
    const std::atomic<bool> stop{true};
    const Proposal proposal = propose({made.piece, made.line, wood::builtInSpecies()}, stop);
    EXPECT_FALSE(proposal.finished);
}

TEST(Propose, IsPureAndTheSameFromTheOtherEnd) {
    const Made made = roundPiece();
    const Proposal once = proposalOf(made);
    const Proposal twice = proposalOf(made);
    ASSERT_EQ(once.stations.size(), twice.stations.size());
    for (std::size_t i = 0; i < once.stations.size(); ++i) {
        EXPECT_EQ(once.stations[i].station, twice.stations[i].station);
        EXPECT_EQ(once.stations[i].pull_N, twice.stations[i].pull_N);
    }
    Made turned = made;
    turned.line = made::arc(1.0, 0.8);
    turned.piece.line.stripsOn = model::Side::right;
    std::swap(turned.piece.stack.runsPastStart_m, turned.piece.stack.runsPastEnd_m);
    EXPECT_EQ(proposalOf(turned).stations.size(), once.stations.size());
}

}  // namespace propose_test
}  // namespace fayline::holding
