// Friction: the cone within which a bar stands without a stop.
#include <gtest/gtest.h>

#include "core/holding/props/prop.hpp"
#include "tests/core/holding/made_props.hpp"

namespace fayline::holding {
namespace friction_test {

// Source: friction cone, tan(angle) = mu (D), with mu of dry oak along the grain 0.62 (CRC Handbook, P*), planed
// timber across the grain 0.20 and timber on concrete 0.40 (EN 1995-2 Table 6.1, M), safe value 0.1 (D). A prop to the
// floor under a level stack that has a dry caul leans by the same angle at head and foot: from level to level h it
// stands as long as its foot is within mu h of the plumb line, mu the lesser of the two.
TEST(PublishedFriction, APropStandsWithinTheConeAndSlipsBeyondIt) {
    for (const double mu : {0.62, 0.20, 0.40}) {
        for (const double aside : {-1.0, 1.0}) {
            made::PropWork work(0.0);  // heading: level
            work.piece.holding.floor.friction = mu;
            work.piece.holding.stations = {made::propAt(0.5)};
            work.piece.holding.stations[0].strut.stop = model::Stop::head;
            work.piece.holding.stations[0].strut.footY_m = -1.0;
            const double height = 1.0 - made::depth_m;
            work.piece.holding.stations[0].strut.footX_m = 0.5 + aside * 0.999 * mu * height;
            EXPECT_NE(work.plans({1000})[0].slips, Slips::foot) << mu;
            EXPECT_NE(work.plans({1000})[0].slips, Slips::both) << mu;
            work.piece.holding.stations[0].strut.footX_m = 0.5 + aside * 1.001 * mu * height;
            EXPECT_EQ(work.plans({1000})[0].slips, Slips::both) << mu;
        }
    }
}

TEST(PublishedFriction, TheHeadUnderACaulHoldsToATenthAside) {
    made::PropWork work(0.0);
    work.piece.holding.cauls.thickness_m = 0.018;
    work.piece.holding.stations = {made::propAt(0.5)};
    work.piece.holding.stations[0].strut.footY_m = -1.0;
    const double height = 1.0 - made::depth_m - 0.018;
    work.piece.holding.stations[0].strut.footX_m = 0.5 + 0.0999 * height;
    EXPECT_EQ(work.plans({1000})[0].slips, Slips::no);
    work.piece.holding.stations[0].strut.footX_m = 0.5 + 0.1001 * height;
    EXPECT_EQ(work.plans({1000})[0].slips, Slips::head);
}

}  // namespace friction_test
}  // namespace fayline::holding
