// Pieces made at random, sensible and absurd: each has a plan of finite numbers, or is refused with a path.
#include <gtest/gtest.h>

#include <cmath>

#include "core/measure/input_error.hpp"
#include "core/plan/print.hpp"
#include "core/stack/layers.hpp"
#include "tests/core/plan/random_pieces.hpp"

namespace fayline::plan {
namespace {

void expectFinite(const boat::Piece& piece, const Plan& plan) {
    for (const stack::Strip& strip : plan.stack.strips) {
        EXPECT_GT(strip.leastRadius_m, 0);
        EXPECT_TRUE(strip.strain >= 0 && strip.strain <= 1) << strip.strain;
        EXPECT_TRUE(strip.chanceOfBreaking >= 0 && strip.chanceOfBreaking <= 1);
        EXPECT_TRUE(std::isfinite(strip.finishedLength_m) && std::isfinite(strip.cutLength_m));
        EXPECT_TRUE(strip.breakingStrain > 0 && strip.modulus_Pa > 0);
    }
    for (const auto& face : plan.stack.faces) {
        for (const line::Xy& point : face) ASSERT_TRUE(std::isfinite(point.x_m) && std::isfinite(point.y_m));
    }
    for (const auto& strains : plan.stack.strains) {
        for (const double strain : strains) ASSERT_TRUE(strain >= 0 && strain <= 1) << strain;
    }
    EXPECT_TRUE(std::isfinite(plan.stack.stiffnessCured_N_m2) && std::isfinite(plan.stack.storedEnergy_J));
    // Width for width: wet strips are wider by the rip allowance, which a single strip shows.
    const double at = plan.stack.tightestAt_m;
    const double narrower = stack::widthAt(piece.stack, at) / stack::ripWidthAt(piece.stack, at);
    EXPECT_GE(plan.stack.stiffnessCured_N_m2, narrower * plan.stack.stiffnessWet_N_m2 * (1 - 1e-9));
    for (const Finding& finding : plan.findings) {
        EXPECT_TRUE(std::isfinite(finding.value) && std::isfinite(finding.limit)) << finding.text;
        EXPECT_EQ(finding.text.find("nan"), std::string::npos) << finding.text;
    }
}

TEST(RandomPieces, HaveAPlanOfFiniteNumbersOrAreRefusedByAPath) {
    made::Dice dice(20260502);
    const Shop shop = made::shop();
    int planned = 0;
    for (int i = 0; i < 300; ++i) {
        const boat::Piece piece = made::randomPiece(dice);
        SCOPED_TRACE(i);
        try {
            expectFinite(piece, makePlan(piece, shop));
            ++planned;
        } catch (const measure::InputError& error) {
            EXPECT_FALSE(error.path().empty()) << error.what();
        }
        if (HasFatalFailure()) return;
    }
    EXPECT_GT(planned, 200);
}

}  // namespace
}  // namespace fayline::plan
