// A few pieces made at random, sensible and absurd: each has a plan of finite numbers, or is refused with a path. Many
// more are made by tests/fuzz.
#include "tests/core/plan/random_pieces.hpp"

#include <gtest/gtest.h>

#include "core/units/input_error.hpp"

namespace fayline::plan {
namespace random_pieces_test {

TEST(RandomPieces, HaveAPlanOfFiniteNumbersOrAreRefusedByAPath) {
    made::Dice dice(20260502);
    const Shop shop = made::shop();
    int planned = 0;
    for (int i = 0; i < 12; ++i) {
        const model::Piece piece = made::randomPiece(dice);
        SCOPED_TRACE(i);
        try {
            EXPECT_EQ(made::defectOf(piece, makePlan(piece, shop)), "");
            ++planned;
        } catch (const units::InputError& error) {
            EXPECT_FALSE(error.path().empty()) << error.what();
        }
    }
    EXPECT_GE(planned, 8);  // two thirds
}

}  // namespace random_pieces_test
}  // namespace fayline::plan
