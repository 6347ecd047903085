// Springback against what is printed and derived elsewhere.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <tuple>
#include <vector>

#include "core/laminate/springback/form_plan.hpp"
#include "core/laminate/springback/release.hpp"
#include "core/units/units.hpp"
#include "tests/core/laminate/made_lines.hpp"
#include "tests/core/laminate/made_stacks.hpp"

namespace fayline::laminate {
namespace springback_test {

using made::formOn;
using made::stackOf;
using model::Describes;
using model::Side;

double ratioOf(const model::Stack& stack) {
    return ratioAtPlace(stack, Describes::innerFace, Side::left, made::straight(1.0), wood::builtInSpecies(), 0.5);
}

// Beam theory (D), worked out apart from this program: n equal strips; rho without glue lines, curvature and radius
// left, rho with glue lines of 1/20 and 1/10 of a strip. Printed to six figures.
struct Row {
    int strips;
    double rho;
    double curvature;
    double radius;
    double rhoAt005;
    double rhoAt010;
};
constexpr std::array<Row, 10> rows{{{2, 0.25, 0.75, 1.333333, 0.232153, 0.215983},
                                    {3, 0.111111, 0.888889, 1.125, 0.101833, 0.093633},
                                    {4, 0.0625, 0.9375, 1.066667, 0.057021, 0.052219},
                                    {5, 0.04, 0.96, 1.041667, 0.036417, 0.033289},
                                    {6, 0.027778, 0.972222, 1.028571, 0.025261, 0.023068},
                                    {8, 0.015625, 0.984375, 1.015873, 0.014193, 0.012948},
                                    {10, 0.01, 0.99, 1.010101, 0.009079, 0.008279},
                                    {12, 0.006944, 0.993056, 1.006993, 0.006303, 0.005746},
                                    {16, 0.003906, 0.996094, 1.003922, 0.003544, 0.003231},
                                    {20, 0.0025, 0.9975, 1.002506, 0.002268, 0.002067}}};
constexpr double printed = 6e-7;

TEST(Springback, OfEqualStripsIsAsTabled) {
    for (const Row& row : rows) {
        const double rho = ratioOf(stackOf(row.strips, 0.006));
        EXPECT_NEAR(rho, row.rho, printed) << row.strips;
        EXPECT_NEAR(1 - rho, row.curvature, printed) << row.strips;
        EXPECT_NEAR(1 / (1 - rho), row.radius, printed) << row.strips;
        EXPECT_NEAR(ratioOf(stackOf(row.strips, 0.006, 0.05 * 0.006)), row.rhoAt005, printed) << row.strips;
        EXPECT_NEAR(ratioOf(stackOf(row.strips, 0.006, 0.10 * 0.006)), row.rhoAt010, printed) << row.strips;
    }
}

// The rule as read in a wooden-boat forum's thread "Laminating deck beams: Spring back" (P): y = x / n^2, x the camber
// on the form. Worked there: a 2 in beam of four 1/2 in layers with 3 in of camber loses 3/16 in, of eight layers 3/64.
TEST(Springback, TheWorkshopsExampleComesOut) {
    EXPECT_NEAR(3 * ratioOf(stackOf(4, 0.5 * units::inch_m)), 3.0 / 16, 1e-12);
    EXPECT_NEAR(3 * ratioOf(stackOf(8, 0.25 * units::inch_m)), 3.0 / 64, 1e-12);
    // On a beam of 6 ft chord, the piece let go from a form with 3 in of camber. The rule takes the curve for shallow:
    // camber falls in proportion to curvature within 8 (camber / chord)^2 / 3 of itself, 0.5 %; strips' radii add less.
    const double rise = 3 * units::inch_m;
    const double chord = 6 * units::foot_m;
    const double radius = rise / 2 + chord * chord / (8 * rise);
    for (const auto& [strips, thickness_in, lost_in] : {std::tuple(4, 0.5, 3.0 / 16), std::tuple(8, 0.25, 3.0 / 64)}) {
        model::Piece piece;
        piece.stack = stackOf(strips, thickness_in * units::inch_m);
        piece.form.allowsForSpringback = false;
        const FormPlan plan = formOn(made::arc(-radius, 2 * std::asin(chord / 2 / radius)), piece);
        EXPECT_NEAR(plan.parts[0].uncorrected.riseFrom_m, rise, 1e-7);
        EXPECT_NEAR(plan.parts[0].uncorrected.rise_m, lost_in * units::inch_m, 0.01 * lost_in * units::inch_m);
    }
}

// Sanne, Ahn-Ercan & Pfriem, Forests 11(7):725, 2020, abstract (P): within the range tested the radius of the die has
// negligible effect on the springback. Beech strips of 1, 2 and 4 mm, stacks of 2 to 16.
TEST(Springback, DoesNotDependOnTheRadius) {
    for (const int strips : {2, 4, 8, 16}) {
        for (const double thickness : {0.001, 0.002, 0.004}) {
            model::Stack stack = stackOf(strips, thickness);
            stack.strips[0].species = "beech_am";
            std::vector<double> ratios;
            for (const double radius : {0.5, 1.0, 2.0}) {
                ratios.push_back(ratioAtPlace(stack, Describes::innerFace, Side::left, made::arc(-radius, 0.5),
                                              wood::builtInSpecies(), 0.1));
            }
            // The strips' own radii: (depth / radius)^2 / 12, at most 0.14 % of it.
            for (const double ratio : ratios) EXPECT_NEAR(ratio, 1.0 / (strips * strips), 0.002 * ratio);
        }
    }
}

// Unequal strips: an ice-boat plank of ash 5/16, pine 1/2, ash 5/16 in with moduli of 1.74 and 1.24 million psi loses
// 0.10816 (D); a sheet made by a member of the forum where it was read (iceboating.net/node/2236, P) says about 11 %.
TEST(Springback, OfAPlankOfTwoWoodsIsWhatASheetMadeElsewhereSays) {
    const auto ply = [](double thickness_in, double modulus_Mpsi) {
        model::Strips strips{.count = 1, .thickness_m = thickness_in * units::inch_m};
        strips.moe_Pa = modulus_Mpsi * 6.894757e9;
        return strips;
    };
    model::Stack stack = stackOf(1, 0.006);
    stack.strips = {ply(0.3125, 1.74), ply(0.5, 1.24), ply(0.3125, 1.74)};
    EXPECT_NEAR(ratioOf(stack), 0.10816, 5e-6);
    EXPECT_NEAR(ratioOf(stack), 0.11, 0.005);
    stack.strips[1].moe_Pa = 1.19 * 6.894757e9;
    EXPECT_NEAR(ratioOf(stack), 0.10585, 5e-6);
}

// The angle of a curved part whose thickness and length swell by e_R and e_L becomes (1 + e_L) / (1 + e_R) of itself
// (D; the spring-in of curved composite parts, Radford & Rennick, Nelson & Cairns, M). e_R = +1.0 %, e_L = +0.03 %:
// it falls by 0.9604 %.
TEST(Springback, MoistureMovesTheCurveAsWorkedOut) {
    model::OwnSpecies own{
        .id = "made", .mor_Pa = 100e6, .moe_Pa = 12e9, .shrinkRadial = 0.05, .shrinkTangential = 0.05};
    model::Stack stack = stackOf(8, 0.006);
    stack.strips[0].species = "made";
    // 6 % up: a fifth of 5 % and of 0.15 %.
    stack.moisture = 0.08;
    stack.serviceMoisture = 0.14;
    const MoistureMove move = moistureMove(stack, {wood::ownSpecies(own)});
    EXPECT_NEAR(move.acrossShrink, 0.01, 1e-12);
    EXPECT_NEAR(move.alongShrink, 0.0003, 1e-12);
    EXPECT_NEAR(move.change, -0.009604, 5e-7);
}

// White oak, radial shrinkage 5.6 % (Wood Handbook Table 4-3, P), dried by 6 %: e_R = -1.12 %, the curve tightens by
// about 1.1 % (D), here 1.1023 % with 0.03 % of shrinkage along the grain.
TEST(Springback, DryingWhiteOakTightensTheCurve) {
    model::Stack stack = stackOf(10, 0.006);
    stack.moisture = 0.12;
    stack.serviceMoisture = 0.06;
    const MoistureMove move = moistureMove(stack, wood::builtInSpecies());
    EXPECT_NEAR(move.acrossShrink, -0.0112, 1e-12);
    EXPECT_NEAR(move.change, 0.011, 0.0002);
    EXPECT_NEAR(move.change, 0.9997 / 0.9888 - 1, 1e-12);
    // It exceeds the elastic springback of ten strips.
    EXPECT_GT(move.change, ratioOf(stackOf(10, 0.006)));
}

}  // namespace springback_test
}  // namespace fayline::laminate
