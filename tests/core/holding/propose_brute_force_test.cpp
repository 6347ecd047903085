// The number of proposed stations and their spread against every choice there is.
#include <gtest/gtest.h>

#include <iostream>

#include "core/math/count.hpp"
#include "tests/core/holding/small_pieces.hpp"

namespace fayline::holding {
namespace propose_brute_force_test {

// By trying every choice with fewer stations on the same grid.
TEST(Propose, NoSmallerNumberOnTheGridMeetsTheConditions) {
    int met = 0;
    int more = 0;  // wishes that ask for more than gap and strength
    for (const Small& small : smallPieces()) {
        SCOPED_TRACE(small.name);
        const line::Line line = made::lineOf(small.curvature, small.length_m);
        const StackOnForm work = small.work(line);
        const Proposal proposal = propose(work, goOn, small.grid_m);
        const std::vector<double> places = placesOf(small, line.length());
        const int count = countFree(proposal);
        EXPECT_EQ(meets(work, stationsOf(proposal)), proposal.met);
        int tried = 0;
        const int upTo = proposal.met ? count - 1 : math::countOf(places);
        for (int fewer = 0; fewer <= upTo; ++fewer) {
            EXPECT_FALSE(someMeets(work, places, fewer, tried)) << fewer << " would do, proposed are " << count;
        }
        std::cout << small.name << ": " << places.size() << " places, " << count << " proposed, "
                  << (proposal.met ? "met" : std::string("not met (") + governsWord(*proposal.unmet) + ")")
                  << ", without pressing " << proposal.withoutPressing << ", " << tried << " choices tried\n";
        met += proposal.met;
        if (!small.fillsGaps) continue;
        // What is told of pressing everywhere: that many on the grid do, and no smaller number.
        const int kept = math::countOf(proposal.stations) - count;
        ASSERT_GT(proposal.forEverything, 0);
        EXPECT_TRUE(someMeets(work, places, proposal.forEverything - kept, tried, true));
        for (int fewer = 0; fewer < proposal.forEverything - kept; ++fewer) {
            EXPECT_FALSE(someMeets(work, places, fewer, tried, true)) << fewer << " would press everywhere";
        }
        more += proposal.forEverything > math::countOf(proposal.stations);
    }
    EXPECT_GE(met, 15);
    EXPECT_GE(more, 1);
}

// How far the place furthest from any pad lies from it: half the largest spacing, or from a trim line to the first pad.
double furthestFromPads_m(const std::vector<model::Station>& stations, double length_m) {
    std::vector<double> candidates{0, length_m};
    for (const model::Station& a : stations) {
        for (const model::Station& b : stations) candidates.push_back((a.at_m + b.at_m) / 2);
    }
    double furthest = 0;
    for (const double at : candidates) {
        if (at < 0 || at > length_m) continue;
        double nearest = std::numeric_limits<double>::infinity();
        for (const model::Station& station : stations) nearest = std::min(nearest, std::abs(station.at_m - at));
        furthest = std::max(furthest, nearest);
    }
    return furthest;
}

// Of all choices of `count` places whether one that holds leaves no place as far from a pad as `furthest_m`.
bool someSpreadsBetter(const StackOnForm& work, const std::vector<double>& places, int count, double furthest_m,
                       int& held) {
    const model::Tool& tool = work.piece.holding.tools.front();
    if (count > math::countOf(places)) return false;
    std::vector<char> chosen(places.size(), 0);
    std::fill(chosen.begin(), chosen.begin() + count, 1);
    do {
        std::vector<model::Station> stations = work.piece.holding.stations;
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
        if (!(small.piece.glue.pasteYield_Pa > 0) || small.fillsGaps || small.piece.form.kind == model::FormKind::posts)
            continue;
        SCOPED_TRACE(small.name);
        small.piece.glue.pasteYield_Pa *= 16;  // so that more are asked for
        const line::Line line = made::lineOf(small.curvature, small.length_m);
        const Proposal full = propose({small.piece, line, wood::builtInSpecies()}, goOn, small.grid_m);
        const int kept = math::countOf(full.stations) - countFree(full);
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
            EXPECT_EQ(proposal.unmet, Governs::pressing);
            EXPECT_TRUE(proposal.withinCounts);
            EXPECT_LE(countFree(proposal), count);
            EXPECT_EQ(proposal.forEverything, math::countOf(full.stations));
            const std::vector<model::Station> stations = stationsOf(proposal);
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

}  // namespace propose_brute_force_test
}  // namespace fayline::holding
