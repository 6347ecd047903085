// Pressure on glue lines.
#include "core/holding/pressing.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "core/holding/held.hpp"
#include "core/units/units.hpp"
#include "tests/core/laminate/made_lines.hpp"

namespace fayline::holding {
namespace pressing_test {

using model::AdhesiveKind;
using units::inch_m, units::poundForce_N, units::psi_Pa;

// Source: a woodworking magazine's page on clamping panels, 2021 (P): a joint of 1 in by 25 in at 150 psi wants
// 3,750 lbf in all. Its clamps pull 420 or 470 lbf (printed as psi; the sums only work as pounds), which makes 9 or 8.
TEST(PublishedPressing, APanelJointWantsAsManyClampsAsItsSourceCounts) {
    model::Piece piece;
    piece.stack.widths = {model::Width{0, inch_m}};
    piece.stack.ripAllowance_m = 0;
    piece.glue.pasteYield_Pa = 0;
    const line::Line line = made::straight(25 * inch_m);
    StackOnForm work{piece, line, wood::builtInSpecies()};
    work.wanted.least_Pa = 150 * psi_Pa;
    const auto clamps = [&](double most_lbf) {
        const PressingNeed need = pressingNeed(work, 0.3, 1.0, most_lbf * poundForce_N);
        EXPECT_NEAR(need.pad.push_N_m * line.length() / poundForce_N, 3750, 1e-6);
        EXPECT_NEAR(need.pad.push_N_m * line.length() / 1000, 16.7, 0.05);
        EXPECT_EQ(need.by, SpacedBy::strength);
        EXPECT_TRUE(need.byGlue);
        return std::ceil(line.length() / need.spacing_m);
    };
    EXPECT_EQ(clamps(420), 9);
    EXPECT_EQ(clamps(470), 8);
}

// Sources: FAA AC 43.13-1B chapter 1 for resorcinol, USDA TB 1512 for urea, data sheets for the others (all M).
TEST(PublishedPressing, EachGlueWantsWhatItsSourceSays) {
    struct Row {
        AdhesiveKind kind;
        bool hardwood;
        double least_MPa;
        double most_MPa;
    };
    const Row rows[] = {{AdhesiveKind::resorcinol, false, 0.86, 1.03}, {AdhesiveKind::resorcinol, true, 1.03, 1.38},
                        {AdhesiveKind::urea, false, 0.86, 1.03},       {AdhesiveKind::urea, true, 1.03, 1.38},
                        {AdhesiveKind::polyurethane, true, 0.7, 1.4},  {AdhesiveKind::polyurethane, false, 0.7, 1.4},
                        {AdhesiveKind::epoxy, true, 0.03, 0.17},       {AdhesiveKind::epoxy, false, 0.03, 0.17}};
    for (const Row& row : rows) {
        const WantedPressure wanted = wantedPressure(row.kind, row.hardwood);
        const double rounding = row.least_MPa > 0.8 ? 0.005 : row.least_MPa > 0.1 ? 0.05 : 0.005;
        EXPECT_NEAR(wanted.least_Pa / 1e6, row.least_MPa, rounding);
        EXPECT_NEAR(wanted.most_Pa / 1e6, row.most_MPa, rounding);
        EXPECT_EQ(wanted.contactIsEnough, row.kind == AdhesiveKind::epoxy);
        EXPECT_EQ(wanted.source.mark, units::Mark::fromMemory);
    }
}

// Source: balance of a slice of paste that yields along both plates, dp/dx = 2 tau / h from the edge inwards (D),
// summed numerically from both edges to the middle.
TEST(PublishedPressing, PasteBetweenPlatesStopsWhereItsYieldBearsThePressure) {
    const double yield = 100;
    const double width = 0.057;
    const double film = 0.00015;
    constexpr int slices = 20000;
    double pressure = 0;
    double sum = 0;
    for (int i = 0; i < slices / 2; ++i) {
        const double step = 2 * yield / film * width / slices;
        sum += 2 * (pressure + step / 2) / slices;
        pressure += step;
    }
    EXPECT_NEAR(pressureForFilm(yield, width, film) / sum, 1, 1e-9);
    EXPECT_NEAR(pressureForFilm(yield, width, film), 19000, 1e-6);
}

}  // namespace pressing_test
}  // namespace fayline::holding
