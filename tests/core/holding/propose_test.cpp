#include "core/holding/propose.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>

#include "core/wood/species.hpp"
#include "tests/core/stack/made_lines.hpp"

namespace fayline::holding {
namespace {

TEST(Propose, KeepsAFixedStationInItsPlaceAndMeetsTheGapLimit) {
    const line::Line line = made::arc(-1.0, 0.8);
    boat::Piece piece;
    piece.glue.pasteYield_Pa = 0;
    boat::Station fixed;
    fixed.at_m = 0.333;
    fixed.fixed = true;
    piece.holding.stations = {fixed};
    const std::atomic<bool> stop{false};
    const StackOnForm work{piece, line, wood::builtInSpecies()};
    const Proposal proposal = propose(work, stop);
    EXPECT_TRUE(proposal.met);
    EXPECT_EQ(std::count_if(proposal.stations.begin(), proposal.stations.end(),
                            [](const Proposed& each) { return each.station.at_m == 0.333; }),
              1);
    EXPECT_LE(holdWith(work, stationsOf(proposal)).largest.gap_m, piece.holding.gapLimit_m + 1e-6);
}

}  // namespace
}  // namespace fayline::holding
