// How far strip ends step, and lengths of parallels, round an arc.
#include <gtest/gtest.h>

#include <numbers>

#include "core/laminate/stack.hpp"
#include "core/line/line.hpp"
#include "tests/core/laminate/made_lines.hpp"

namespace fayline::laminate {
namespace stagger_test {

// Source: slipping pack (D): strips of thickness t with glue lines g round a turn theta step by theta (t + g) each,
// (n - 1)(t + g) theta in all. Quarter circle, n = 10, t = 5, g = 0.2 mm: printed 73.5 mm (73.5133).
TEST(PublishedStagger, TenStripsRoundAQuarterCircle) {
    model::Stack stack;
    stack.strips = {model::Strips{.count = 10, .thickness_m = 0.005}};
    stack.glueLine_m = 0.0002;
    stack.runsPastStart_m = 0;
    stack.runsPastEnd_m = 0;
    const StackPlan plan = planStack(stack, model::Describes::innerFace, model::Side::left,
                                     made::arc(-0.5, std::numbers::pi / 2), wood::builtInSpecies());
    EXPECT_NEAR(1000 * plan.stagger.end_m, 73.5, 0.05);
    EXPECT_NEAR(1000 * plan.stagger.end_m, 9 * 5.2 * std::numbers::pi / 2, 1e-6);
    EXPECT_NEAR(plan.stagger.start_m, 0, 1e-12);
}

// Source: the parallel of a circle is a circle (D). Asked for: 1e-6 of the length.
TEST(PublishedStagger, ParallelsOfACircleHaveRadiusTimesTurn) {
    const line::Line line = made::arc(0.75, 1.3);
    for (const double d : {-0.3, -0.05, 0.0, 0.02, 0.3}) {
        const double exact = (0.75 - d) * 1.3;  // left of a left turn lies inside
        EXPECT_NEAR(line::parallelLength(line, d, 0, line.length()), exact, 1e-6 * exact) << d;
    }
}

}  // namespace stagger_test
}  // namespace fayline::laminate
