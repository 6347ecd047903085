#include "core/holding/propose.hpp"

#include <gtest/gtest.h>
#include <sys/resource.h>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <functional>
#include <iostream>
#include <limits>
#include <numbers>

#include "core/boat/file.hpp"
#include "core/holding/kinds.hpp"
#include "core/holding/pressing.hpp"
#include "core/line/fair.hpp"
#include "core/wood/species.hpp"
#include "tests/core/stack/made_lines.hpp"

namespace fayline::holding {
namespace {

const std::atomic<bool> goOn{false};
constexpr double gapCounts_m = 1e-6;  // as the header has it

// A small piece with a coarse grid, so that all choices can be tried.
struct Small {
    std::string name;
    std::function<double(double)> curvature;  // of the line, along it; the strips lie on its left
    double length_m = 0.6;
    double grid_m = 0.075;
    boat::Piece piece;
};

boat::Tool clamps(double most_N, double pad_m = 0.03) {
    boat::Tool tool;
    tool.most_N = most_N;
    tool.pad_m = pad_m;
    tool.count = 100;
    return tool;
}

Small smallPiece(const std::string& name, std::function<double(double)> curvature, double most_N) {
    Small small{name, std::move(curvature)};
    small.piece.stack.strips = {boat::Strips{.count = 6, .thickness_m = 0.006}};
    small.piece.stack.runsPastStart_m = 0.15;
    small.piece.stack.runsPastEnd_m = 0.15;
    small.piece.glue.pasteYield_Pa = 0;
    small.piece.holding.tools = {clamps(most_N)};
    return small;
}

boat::Station stationAt(double at_m, const boat::Tool& tool) {
    boat::Station station;
    station.at_m = at_m;
    station.most_N = tool.most_N;
    station.pad_m = tool.pad_m;
    return station;
}

std::function<double(double)> even(double curvature_per_m) {
    return [=](double) { return curvature_per_m; };
}
std::function<double(double)> wave(double greatest_per_m, double waves, double length_m) {
    return [=](double s) { return greatest_per_m * std::sin(2 * std::numbers::pi * waves * s / length_m); };
}
std::function<double(double)> bump(double greatest_per_m, double at_m, double wide_m) {
    return [=](double s) { return greatest_per_m * (0.2 + 0.8 * std::exp(-std::pow((s - at_m) / wide_m, 2))); };
}

// On the left of a line that turns right the strips lie round the outside.
std::vector<Small> smallPieces() {
    std::vector<Small> all;
    all.push_back(smallPiece("arc", even(-1.2), 2500));
    all.push_back(smallPiece("flat arc", even(-0.4), 1500));
    all.push_back(smallPiece("hollow", even(1.0), 2000));
    all.push_back(smallPiece("S", wave(1.5, 1, 0.6), 2500));
    all.push_back(smallPiece("S, pads that slide", wave(1.5, 1, 0.6), 2500));
    all.back().piece.holding.pads = boat::Pads::slide;
    all.push_back(smallPiece("bend in the middle", bump(-2.5, 0.3, 0.1), 2500));
    all.push_back(smallPiece("bend near the end", bump(-2.5, 0.48, 0.1), 2500));
    all.push_back(smallPiece("three half waves", wave(1.2, 1.5, 0.6), 2500));
    all.push_back(smallPiece("weak clamps", even(-0.8), 500));
    all.push_back(smallPiece("weak clamps in a wave", wave(1.0, 1, 0.6), 600));
    all.push_back(smallPiece("loose limit", bump(-2.0, 0.3, 0.15), 1500));
    all.back().piece.holding.gapLimit_m = 0.0015;
    all.push_back(smallPiece("tight limit", wave(-1.2, 1, 0.6), 3000));
    all.back().piece.holding.gapLimit_m = 0.0002;

    all.push_back(smallPiece("arc, pressed", even(-1.2), 2500));
    all.back().piece.glue.pasteYield_Pa = 60;
    all.back().piece.holding.cauls.thickness_m = 0.06;
    all.push_back(smallPiece("S, pressed", wave(1.5, 1, 0.6), 2500));
    all.back().piece.glue.pasteYield_Pa = 40;
    all.back().piece.holding.cauls.thickness_m = 0.08;
    all.push_back(smallPiece("weak clamps, pressed", even(-0.6), 900));
    all.back().piece.glue.pasteYield_Pa = 60;
    all.back().piece.holding.cauls.thickness_m = 0.08;

    all.push_back(smallPiece("arc with a fixed station", even(-1.2), 2500));
    all.push_back(smallPiece("S with a fixed station", wave(1.5, 1, 0.6), 2500));
    all.push_back(smallPiece("pressed with a fixed station", bump(-2.0, 0.3, 0.15), 2500));
    all.back().piece.glue.pasteYield_Pa = 60;
    all.back().piece.holding.cauls.thickness_m = 0.06;
    const double places[] = {0.29, 0.41, 0.17};
    for (std::size_t i = 0; i < 3; ++i) {
        boat::Piece& piece = all[all.size() - 3 + i].piece;
        piece.holding.stations = {stationAt(places[i], piece.holding.tools.front())};
        piece.holding.stations.front().fixed = true;
    }

    const std::vector<std::function<double(double)>> onPosts{even(-1.0), wave(1.2, 1, 0.6), even(0.8)};
    for (const auto& curvature : onPosts) {
        all.push_back(smallPiece("posts " + std::to_string(all.size()), curvature, 2500));
        all.back().piece.form.kind = boat::FormKind::posts;
        for (int i = 0; i < 10; ++i) all.back().piece.form.posts.push_back({-0.12 + 0.093 * i, 0.03, 3000});
    }
    return all;
}

// The places that the header promises, found apart from the code.
std::vector<double> placesOf(const Small& small, double length_m) {
    const boat::Piece& piece = small.piece;
    const double from = -piece.stack.runsPastStart_m;
    const double to = length_m + piece.stack.runsPastEnd_m;
    const double half = piece.holding.tools.front().pad_m / 2;
    std::vector<double> grid;
    for (int i = 0; from + i * small.grid_m < to - 1e-9; ++i) grid.push_back(from + i * small.grid_m);
    grid.push_back(to);
    if (piece.form.kind == boat::FormKind::posts) {
        std::vector<double> on;
        for (const boat::Post& post : piece.form.posts) on.push_back(post.at_m);
        for (const double at : grid) {
            for (const boat::Post& post : piece.form.posts) {
                if (at != post.at_m && std::abs(at - post.at_m) + half <= post.width_m / 2 + 1e-9) on.push_back(at);
            }
        }
        std::sort(on.begin(), on.end());
        grid = on;
    }
    std::vector<double> places;
    for (const double at : grid) {
        const bool clear = std::all_of(piece.holding.stations.begin(), piece.holding.stations.end(),
                                       [&](const auto& kept) { return std::abs(kept.at_m - at) >= 2 * half - 1e-9; });
        if (clear && at - half >= from - 1e-9 && at + half <= to + 1e-9) places.push_back(at);
    }
    return places;
}

bool pressedEverywhere(const StackOnForm& work, const std::vector<boat::Station>& stations) {
    const int steps = 2000;
    for (int i = 0; i <= steps; ++i) {
        const double at = work.line.length() * i / steps;
        const bool pressed = std::any_of(stations.begin(), stations.end(), [&](const boat::Station& station) {
            const double spacing =
                pressingNeed(work.piece, work.line, station.at_m, station.pad_m, station.most_N).spacing_m;
            return std::abs(station.at_m - at) <= spacing / 2 + 1e-9;
        });
        if (!pressed) return false;
    }
    return true;
}

bool meets(const StackOnForm& work, const std::vector<boat::Station>& stations) {
    if (stations.empty() || !pressedEverywhere(work, stations)) return false;
    const Held held = holdWith(work, stations);
    return held.outcome == Outcome::settled && held.largest.gap_m <= work.piece.holding.gapLimit_m + gapCounts_m;
}

// Every choice of `count` of the places, pads not upon each other: whether one meets all. `tried` counts them.
bool someMeets(const StackOnForm& work, const std::vector<double>& places, int count, int& tried) {
    const boat::Tool& tool = work.piece.holding.tools.front();
    std::vector<char> chosen(places.size(), 0);
    if (count > static_cast<int>(places.size())) return false;
    std::fill(chosen.begin(), chosen.begin() + count, 1);
    do {
        std::vector<boat::Station> stations = work.piece.holding.stations;
        double last = -std::numeric_limits<double>::infinity();
        bool apart = true;
        for (std::size_t i = 0; i < places.size(); ++i) {
            if (!chosen[i]) continue;
            apart = apart && places[i] - last >= tool.pad_m - 1e-9;
            last = places[i];
            stations.push_back(stationAt(places[i], tool));
        }
        if (!apart) continue;
        ++tried;
        if (meets(work, stations)) return true;
    } while (std::prev_permutation(chosen.begin(), chosen.end()));
    return false;
}

int countFree(const Proposal& proposal) {
    return static_cast<int>(std::count_if(proposal.stations.begin(), proposal.stations.end(),
                                          [](const Proposed& each) { return !each.station.fixed; }));
}

// By trying every choice with fewer stations on the same grid.
TEST(Propose, NoSmallerNumberOnTheGridMeetsTheConditions) {
    int met = 0;
    for (const Small& small : smallPieces()) {
        SCOPED_TRACE(small.name);
        const line::Line line = made::lineOf(small.curvature, small.length_m);
        const StackOnForm work{small.piece, line, wood::builtInSpecies()};
        const Proposal proposal = propose(work, goOn, small.grid_m);
        const std::vector<double> places = placesOf(small, line.length());
        const int count = countFree(proposal);
        EXPECT_EQ(meets(work, stationsOf(proposal)), proposal.met);
        int tried = 0;
        const int upTo = proposal.met ? count - 1 : static_cast<int>(places.size());
        for (int fewer = 0; fewer <= upTo; ++fewer) {
            EXPECT_FALSE(someMeets(work, places, fewer, tried)) << fewer << " would do, proposed are " << count;
        }
        std::cout << small.name << ": " << places.size() << " places, " << count << " proposed, "
                  << (proposal.met ? "met" : "not met (" + proposal.unmet + ")") << ", without pressing "
                  << proposal.withoutPressing << ", " << tried << " choices tried\n";
        met += proposal.met;
    }
    EXPECT_GE(met, 15);
}

// How far the place furthest from any pad lies from it: half the largest spacing, or from a trim line to the first pad.
double furthestFromPads_m(const std::vector<boat::Station>& stations, double length_m) {
    std::vector<double> candidates{0, length_m};
    for (const boat::Station& a : stations) {
        for (const boat::Station& b : stations) candidates.push_back((a.at_m + b.at_m) / 2);
    }
    double furthest = 0;
    for (const double at : candidates) {
        if (at < 0 || at > length_m) continue;
        double nearest = std::numeric_limits<double>::infinity();
        for (const boat::Station& station : stations) nearest = std::min(nearest, std::abs(station.at_m - at));
        furthest = std::max(furthest, nearest);
    }
    return furthest;
}

// Of all choices of `count` places whether one that holds leaves no place as far from a pad as `furthest_m`.
bool someSpreadsBetter(const StackOnForm& work, const std::vector<double>& places, int count, double furthest_m,
                       int& held) {
    const boat::Tool& tool = work.piece.holding.tools.front();
    if (count > static_cast<int>(places.size())) return false;
    std::vector<char> chosen(places.size(), 0);
    std::fill(chosen.begin(), chosen.begin() + count, 1);
    do {
        std::vector<boat::Station> stations = work.piece.holding.stations;
        for (std::size_t i = 0; i < places.size(); ++i) {
            if (chosen[i]) stations.push_back(stationAt(places[i], tool));
        }
        if (furthestFromPads_m(stations, work.line.length()) > furthest_m) continue;
        ++held;
        const Held now = holdWith(work, stations);
        if (now.outcome == Outcome::settled && now.largest.gap_m <= work.piece.holding.gapLimit_m + gapCounts_m) {
            return true;
        }
    } while (std::prev_permutation(chosen.begin(), chosen.end()));
    return false;
}

// With every number of tools from what holds it down to one less than would press everywhere: by trying every choice of
// as many on the same grid (no two places of which lie nearer than a pad is long).
TEST(Propose, TooFewToolsToPressAreSpreadAsEvenlyAsTheyCanBeAndStillHold) {
    int asked = 0;
    int held = 0;
    std::vector<Small> pieces = smallPieces();
    const std::vector<Small> coarse = pieces;
    for (Small& small : pieces) small.grid_m = 0.05;
    pieces.insert(pieces.end(), coarse.begin(), coarse.end());
    for (Small& small : pieces) {
        if (!(small.piece.glue.pasteYield_Pa > 0) || small.piece.form.kind == boat::FormKind::posts) continue;
        SCOPED_TRACE(small.name);
        small.piece.holding.cauls.thickness_m -= 0.03;  // so that more are asked for
        const line::Line line = made::lineOf(small.curvature, small.length_m);
        const Proposal full = propose({small.piece, line, wood::builtInSpecies()}, goOn, small.grid_m);
        const int kept = static_cast<int>(full.stations.size()) - countFree(full);
        std::cout << small.name << ": " << full.stations.size() << " for everything, " << full.withoutPressing
                  << " to hold\n";
        if (!full.met) continue;
        const double finer_m = 1e-3;
        for (int count = full.withoutPressing - kept; count < countFree(full); ++count) {
            SCOPED_TRACE(count);
            small.piece.holding.tools.front().count = count + kept;
            const StackOnForm work{small.piece, line, wood::builtInSpecies()};
            const Proposal proposal = propose(work, goOn, small.grid_m);
            EXPECT_FALSE(proposal.met);
            EXPECT_EQ(proposal.unmet, "pressing");
            EXPECT_TRUE(proposal.withinCounts);
            EXPECT_LE(countFree(proposal), count);
            EXPECT_EQ(proposal.forEverything, static_cast<int>(full.stations.size()));
            const std::vector<boat::Station> stations = stationsOf(proposal);
            const Held now = holdWith(work, stations);
            EXPECT_EQ(now.outcome, Outcome::settled);
            EXPECT_LE(now.largest.gap_m, small.piece.holding.gapLimit_m + gapCounts_m);
            const double furthest = furthestFromPads_m(stations, line.length());
            EXPECT_FALSE(someSpreadsBetter(work, placesOf(small, line.length()), count, furthest - finer_m / 2, held));
            ++asked;
        }
    }
    std::cout << asked << " numbers of tools, " << held << " better spread choices do not hold\n";
    EXPECT_GE(asked, 40);
    EXPECT_GE(held, 100);  // the interval covering alone would not have done
}

struct Made {
    boat::Piece piece;
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
    EXPECT_EQ(proposal.met, proposal.unmet.empty());
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

// Four pieces as people make them: what is proposed is held and pressed as it says, on the grid of 10 mm.
TEST(Propose, SamplePiecesAreHeldByWhatIsProposed) {
    const boat::Boat boat = boat::loadBoat(std::string(FAYLINE_SAMPLES) + "/marram.fayline");
    for (const boat::Piece& piece : boat.pieces) {
        SCOPED_TRACE(piece.name);
        line::FairInput input;
        for (const boat::Point& point : piece.line.points) input.points.push_back({point.x_m, point.y_m});
        input.readTo_m = piece.line.readTo_m;
        input.fairWithin_m = piece.line.fairWithin_m;
        const line::FairLine fair = line::fair(input);
        const StackOnForm work{piece, fair.line, wood::builtInSpecies()};
        const double begun = userSeconds();
        const Proposal proposal = propose(work, goOn);
        const double took = userSeconds() - begun;
        const int count = static_cast<int>(proposal.stations.size());
        expectFinite(proposal);
        EXPECT_TRUE(proposal.finished);
        const Held held = holdWith(work, stationsOf(proposal));
        EXPECT_EQ(held.outcome, Outcome::settled);
        EXPECT_LE(held.largest.gap_m, piece.holding.gapLimit_m + gapCounts_m);
        EXPECT_NEAR(held.largest.gap_m, proposal.largest.gap_m, 1e-7);
        // Between posts no pad presses; elsewhere there may be fewer tools than that would want.
        const bool posts = piece.form.kind == boat::FormKind::posts;
        const bool fewer = proposal.tools > 0 && proposal.forEverything > proposal.tools;
        EXPECT_EQ(proposal.met, !posts && !fewer);
        EXPECT_EQ(pressedEverywhere(work, stationsOf(proposal)), proposal.met);
        EXPECT_EQ(proposal.unmet, proposal.met ? "" : "pressing");
        EXPECT_EQ(posts, proposal.forEverything == 0);
        EXPECT_TRUE(proposal.withinCounts);
        EXPECT_LE(count, proposal.tools > 0 ? proposal.tools : count);
        EXPECT_LE(proposal.withoutPressing, count);
        if (proposal.caul_m) {
            // Under cauls as thick as that the tools there are meet everything, under a millimetre less they do not.
            boat::Piece cauled = piece;
            cauled.holding.cauls.thickness_m = *proposal.caul_m;
            EXPECT_TRUE(propose({cauled, fair.line, wood::builtInSpecies()}, goOn).met);
            cauled.holding.cauls.thickness_m -= 0.001;
            EXPECT_FALSE(propose({cauled, fair.line, wood::builtInSpecies()}, goOn).met);
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
    boat::Station fixed = stationAt(0.333, made.piece.holding.tools.front());
    fixed.fixed = true;
    boat::Station screw = stationAt(0.0, made.piece.holding.tools.front());
    screw.kind = boat::HoldKind::screw;
    boat::Station side = stationAt(0.6, made.piece.holding.tools.front());
    side.side = true;
    boat::Station loose = stationAt(0.47, made.piece.holding.tools.front());
    made.piece.holding.stations = {fixed, loose, screw, side};
    const Proposal proposal = proposalOf(made);
    EXPECT_TRUE(proposal.met);
    const std::vector<boat::Station> stations = stationsOf(proposal);
    for (const boat::Station& kept : {fixed, screw, side}) {
        EXPECT_EQ(std::count(stations.begin(), stations.end(), kept), 1);
    }
    EXPECT_EQ(std::count(stations.begin(), stations.end(), loose), 0);
    EXPECT_TRUE(
        std::is_sorted(stations.begin(), stations.end(), [](const auto& a, const auto& b) { return a.at_m < b.at_m; }));
    for (const Proposed& each : proposal.stations) {
        const bool kept = each.station == fixed || each.station == screw || each.station == side;
        EXPECT_EQ(each.governedBy == Governs::fixedOne, kept);
    }
}

TEST(Propose, AskedForPressingItSaysThatPressingGovernsAndHowFewWouldDoWithout) {
    Made made = roundPiece();
    const Proposal without = proposalOf(made);
    made.piece.glue.pasteYield_Pa = 60;
    const Proposal with = proposalOf(made);
    EXPECT_TRUE(with.met);
    EXPECT_EQ(with.withoutPressing, static_cast<int>(without.stations.size()));
    EXPECT_GT(with.stations.size(), without.stations.size());
    EXPECT_EQ(with.stations.front().governedBy, Governs::end);
    // The two at either end hold it down there, with all they have.
    for (std::size_t i = 2; i + 2 < with.stations.size(); ++i) {
        EXPECT_EQ(with.stations[i].governedBy, Governs::pressing) << i;
    }
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
    const auto strong = std::count_if(mixed.stations.begin(), mixed.stations.end(),
                                      [](const Proposed& each) { return each.station.most_N == 2500; });
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
    made.piece.glue.pasteYield_Pa = 60;
    made.piece.holding.tools = {clamps(1200, 0.04), clamps(2500, 0.04)};
    made.piece.holding.tools[0].count = 5;
    made.piece.holding.tools[1].count = 3;
    const Proposal mixed = proposalOf(made);
    expectFinite(mixed);
    EXPECT_FALSE(mixed.met);
    EXPECT_EQ(mixed.unmet, "pressing");
    EXPECT_TRUE(mixed.withinCounts);
    EXPECT_EQ(mixed.tools, 8);
    EXPECT_GT(mixed.forEverything, 8);
    EXPECT_LE(mixed.stations.size(), 8u);
    const auto strong = std::count_if(mixed.stations.begin(), mixed.stations.end(),
                                      [](const Proposed& each) { return each.station.most_N == 2500; });
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
    EXPECT_EQ(tooWeak.unmet, "strength");
    EXPECT_FALSE(tooWeak.stations.empty());

    Made none = roundPiece();
    none.piece.holding.tools = {clamps(0, 0.04)};
    const Proposal strengthless = proposalOf(none);
    expectFinite(strengthless);
    EXPECT_FALSE(strengthless.met);
    EXPECT_EQ(strengthless.unmet, "strength");

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
    onlyProps.piece.holding.tools[0].kind = boat::HoldKind::prop;
    EXPECT_FALSE(proposalOf(onlyProps).withinCounts);
    expectFinite(proposalOf(onlyProps));

    Made offTheForm = roundPiece();
    offTheForm.piece.holding.stations = {stationAt(-3, clamps(2500)), stationAt(9, clamps(2500))};
    for (boat::Station& station : offTheForm.piece.holding.stations) station.fixed = true;
    expectFinite(proposalOf(offTheForm));
    EXPECT_TRUE(proposalOf(offTheForm).met);

    Made onTopOfEachOther = roundPiece();
    onTopOfEachOther.piece.holding.stations.assign(3, stationAt(0.4, clamps(2500)));
    for (boat::Station& station : onTopOfEachOther.piece.holding.stations) station.fixed = true;
    expectFinite(proposalOf(onTopOfEachOther));

    Made shorter = roundPiece();
    shorter.line = made::arc(-1.0, 0.02);
    expectFinite(proposalOf(shorter));
    shorter.piece.stack.runsPastStart_m = 0;
    shorter.piece.stack.runsPastEnd_m = 0;
    expectFinite(proposalOf(shorter));
    EXPECT_FALSE(proposalOf(shorter).met);

    Made noPosts = roundPiece();
    noPosts.piece.form.kind = boat::FormKind::posts;
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
    turned.piece.line.stripsOn = boat::Side::right;
    std::swap(turned.piece.stack.runsPastStart_m, turned.piece.stack.runsPastEnd_m);
    EXPECT_EQ(proposalOf(turned).stations.size(), once.stations.size());
}

}  // namespace
}  // namespace fayline::holding
