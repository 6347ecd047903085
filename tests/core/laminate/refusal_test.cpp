// What cannot be a stack is refused, by its path and with what would be accepted.
#include "tests/refusal.hpp"

#include <gtest/gtest.h>

#include <limits>

#include "core/units/input_error.hpp"
#include "tests/core/laminate/made_lines.hpp"
#include "tests/core/laminate/made_stacks.hpp"

namespace fayline::laminate {
namespace refusal_test {

using made::planOn;
using made::stackOf;
using units::InputError;

std::string pathOf(const model::Stack& stack) {
    return made::refusedAt([&] { planOn(made::arc(-1.0, 1.0), stack); });
}

TEST(Stack, WhatCannotBeAStackIsRefusedByItsPath) {
    const model::Stack good = stackOf(3, 0.006);
    EXPECT_EQ(pathOf(good), "taken");
    const auto refused = [&](auto&& spoil) {
        model::Stack stack = good;
        spoil(stack);
        return pathOf(stack);
    };
    constexpr double none = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(refused([](auto& s) { s.strips.clear(); }), "stack.strips");
    EXPECT_EQ(refused([](auto& s) { s.strips[0].count = 0; }), "stack.strips[0].count");
    EXPECT_EQ(refused([](auto& s) { s.strips[0].count = 2000000000; }), "stack.strips[0].count");
    EXPECT_EQ(refused([](auto& s) { s.strips[0].thickness_m = -0.006; }), "stack.strips[0].thickness_mm");
    EXPECT_EQ(refused([](auto& s) { s.strips[0].thickness_m = none; }), "stack.strips[0].thickness_mm");
    EXPECT_EQ(refused([](auto& s) { s.strips[0].tapersTo_m = 0.0; }), "stack.strips[0].tapers_to_mm");
    EXPECT_EQ(refused([](auto& s) { s.strips[0].moe_Pa = 0.0; }), "stack.strips[0].moe_MPa");
    EXPECT_EQ(refused([](auto& s) {
                  s.strips[0].bentBefore = model::BentBefore{model::Softened::soaked, 1.2};
              }),
              "stack.strips[0].bent_before.set_pct");
    EXPECT_EQ(refused([](auto& s) { s.widths.clear(); }), "stack.widths");
    EXPECT_EQ(refused([](auto& s) { s.widths[0].width_m = 0; }), "stack.widths[0].width_mm");
    EXPECT_EQ(refused([](auto& s) { s.pins = {model::Pin{none}}; }), "stack.pins[0].at_mm");
    EXPECT_EQ(refused([](auto& s) { s.glueLine_m = -1e-4; }), "stack.glue_line_mm");
    EXPECT_EQ(refused([](auto& s) { s.moisture = none; }), "stack.moisture_pct");
    EXPECT_EQ(refused([](auto& s) { s.grainSlope = -0.1; }), "stack.grain_slope");
    EXPECT_EQ(refused([](auto& s) { s.runsPastStart_m = -0.1; }), "stack.runs_past_start_mm");
    EXPECT_EQ(refused([](auto& s) { s.runsPastEnd_m = 1e9; }), "stack.runs_past_end_mm");
    EXPECT_EQ(refused([](auto& s) { s.scarfedEnd = model::Scarf{0}; }), "stack.scarfed_end.slope");
    EXPECT_EQ(refused([](auto& s) { s.strips[0].species = "oka_white"; }), "stack.strips[0].species");
}

TEST(Stack, AThicknessInTheWrongUnitIsRefusedWithWhatIsAccepted) {
    const auto errorOf = [](auto&& spoil) -> std::string {
        model::Stack stack = stackOf(9, 0.006);
        spoil(stack);
        return made::refusalText([&] { planOn(made::arc(-1.0, 1.0), stack); }, "taken");
    };
    EXPECT_EQ(
        errorOf([](auto& s) { s.strips[0].thickness_m = 6.35; }),
        "stack.strips[0].thickness_mm: 6350 is not the thickness of a strip; give a number above 0, 1000 at most");
    EXPECT_EQ(
        errorOf([](auto& s) { s.strips[0].tapersTo_m = 6.35; }),
        "stack.strips[0].tapers_to_mm: 6350 is not the thickness of a strip; give a number above 0, 1000 at most");
    EXPECT_EQ(
        errorOf([](auto& s) { s.strips[0].thickness_m = 0.9; }),
        "stack.strips[0].thickness_mm: 900 makes the stack deeper than 5000; give strips that are 5000 deep in all "
        "at most");
    EXPECT_EQ(errorOf([](auto& s) { s.glueLine_m = 0.3; }),
              "stack.glue_line_mm: 300 is not a thickness of glue; give 0 to 50");
}

TEST(Stack, AScarfLongerThanThePieceIsRefused) {
    model::Stack stack = stackOf(8, 0.006);
    stack.scarfedStart = model::Scarf{40};
    EXPECT_EQ(pathOf(stack), "stack.scarfed_start.slope");
}

TEST(Stack, AWoodThatIsNotKnownIsAnsweredWithTheNearest) {
    model::Stack stack = stackOf(3, 0.006);
    stack.strips[0].species = "oka_white";
    const InputError error = made::refusal([&] { planOn(made::arc(-1.0, 1.0), stack); });
    EXPECT_EQ(error.wrong(), "there is no wood called 'oka_white'");
    EXPECT_NE(error.accepted().find("oak_white"), std::string::npos) << error.accepted();
    EXPECT_NE(error.accepted().find("the boat file's own species"), std::string::npos) << error.accepted();
}

}  // namespace refusal_test
}  // namespace fayline::laminate
