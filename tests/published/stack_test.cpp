// Stiffness of loose and glued stacks.
#include "core/laminate/stack.hpp"

#include <gtest/gtest.h>

#include "tests/core/laminate/made_lines.hpp"

namespace fayline::laminate {
namespace stack_test {

// Source: slipping pack, worked by hand (D): n = 8, t = 5 mm, b = 60 mm, E = 12 000 MPa: loose n E b t^3 / 12 = 6.0e7,
// glued n^3 E b t^3 / 12 = 3.84e9 N mm^2. Tolerance: rounding.
TEST(PublishedStack, EightStripsLooseAndGlued) {
    model::Stack stack;
    stack.strips = {model::Strips{.count = 8, .thickness_m = 0.005}};
    stack.strips[0].moe_Pa = 12e9;
    stack.widths = {model::Width{0, 0.060}};
    stack.glueLine_m = 0;
    stack.ripAllowance_m = 0;
    const StackPlan plan =
        planStack(stack, model::Describes::innerFace, model::Side::left, made::arc(-1.0, 1.0), wood::builtInSpecies());
    EXPECT_NEAR(plan.stiffnessWet_N_m2 * 1e6, 6.0e7, 1e-3);
    EXPECT_NEAR(plan.stiffnessCured_N_m2 * 1e6, 3.84e9, 1e-1);
}

// Source: equal strips with glue lines of thickness g between: n + n (n^2 - 1)(1 + g/t)^2 times E b t^3 / 12, by the
// parallel-axis theorem (D). n = 8, t = 5, g = 0.2 mm: 8 + 504 x 1.0816 = 553.1264 times 7.5e6 N mm^2.
TEST(PublishedStack, GlueLinesSpreadTheStripsAndStiffenTheStack) {
    model::Stack stack;
    stack.strips = {model::Strips{.count = 8, .thickness_m = 0.005}};
    stack.strips[0].moe_Pa = 12e9;
    stack.widths = {model::Width{0, 0.060}};
    stack.glueLine_m = 0.0002;
    const StackPlan plan =
        planStack(stack, model::Describes::innerFace, model::Side::left, made::arc(-1.0, 1.0), wood::builtInSpecies());
    EXPECT_NEAR(plan.stiffnessCured_N_m2 * 1e6, 553.1264 * 7.5e6, 1.0);
}

}  // namespace stack_test
}  // namespace fayline::laminate
