#include "core/line/fair.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "core/measure/input_error.hpp"
#include "tests/core/line/random_line.hpp"

namespace fayline::line {
namespace {

TEST(Fair, ThousandRandomLinesSettle) {
    int unsettled = 0;
    for (std::uint32_t seed = 0; seed < 1000; ++seed) {
        const FairLine fairLine = fair(test::randomLine(seed).input());
        if (!fairLine.settled) {
            ++unsettled;
            ADD_FAILURE() << "seed " << seed << ": " << fairLine.outcome;
        }
    }
    EXPECT_EQ(unsettled, 0);
}

}  // namespace
}  // namespace fayline::line
