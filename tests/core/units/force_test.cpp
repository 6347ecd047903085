#include "core/units/force.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "core/units/input_error.hpp"
#include "tests/refusal.hpp"

namespace fayline::units {
namespace force_test {

Display pounds() {
    return {.forces = ForceUnit::poundForce, .weights = WeightUnit::ounce};
}

TEST(Force, IsReadInEveryUnitThatHandsKnow) {
    // 1 lbf = 4.4482216152605 N and 1 kgf = 9.80665 N by definition (NIST SP 811, appendix B.8, from memory, M).
    const Display newtons;
    EXPECT_DOUBLE_EQ(readForce("2500", newtons), 2500);
    EXPECT_DOUBLE_EQ(readForce(" 2500 N ", newtons), 2500);
    EXPECT_DOUBLE_EQ(readForce("2,5 kN", newtons), 2500);
    EXPECT_DOUBLE_EQ(readForce("100lbf", newtons), 444.82216152605);
    EXPECT_DOUBLE_EQ(readForce("100 lb", newtons), 444.82216152605);
    EXPECT_DOUBLE_EQ(readForce("10 kgf", newtons), 98.0665);
    EXPECT_DOUBLE_EQ(readForce("100", pounds()), 444.82216152605);
}

TEST(Force, WhatIsNoForceIsRefusedWithWhatWouldBe) {
    for (const char* text : {"", "strong", "12 mm", "nan", "inf", "1e999", "2500 N N", "--3"}) {
        const InputError error = made::refusal([&] { readForce(text, {}); });
        EXPECT_NE(error.wrong().find("is not a force"), std::string::npos);
        EXPECT_NE(error.accepted().find("2500 N"), std::string::npos);
    }
    EXPECT_THROW(readMass("12 N", {}), InputError);
    EXPECT_THROW(readStress("12 N", {}), InputError);
}

// 1 psi = 6894.757 Pa (NIST SP 811, appendix B.8, from memory, M).
TEST(Force, AStressIsReadInMegapascalsOrPsi) {
    EXPECT_DOUBLE_EQ(readStress("9860", {}), 9.86e9);
    EXPECT_DOUBLE_EQ(readStress("9,86 GPa", {}), 9.86e9);
    EXPECT_NEAR(readStress("1430000", pounds()), 1.43e6 * 6894.757, 1e3);
    EXPECT_NEAR(readStress("1430000 psi", {}), 1.43e6 * 6894.757, 1e3);
    EXPECT_EQ(typedStress(9.86e9, {}), "9860 MPa");
}

TEST(Force, WhatIsWrittenIsReadAgainToATwentieth) {
    for (const Display& display : {Display{}, pounds(), metricShop}) {
        for (const double force : {0.0, 12.3, 812.6, 2500.0, 48123.4})
            EXPECT_NEAR(readForce(typedForce(force, display), display), force, 0.0501 * forceUnit_N(display));
        for (const double stress : {0.0, 6.2e6, 9.86e9})
            EXPECT_NEAR(readStress(typedStress(stress, display), display), stress, 5e-6 * stress);
        for (const double mass : {0.0, 0.5, 86.4, 1200.0})
            EXPECT_NEAR(readMass(typedMass(mass, display), display), mass, 0.0501);
    }
    EXPECT_EQ(typedForce(2500, {}), "2500 N");
    EXPECT_EQ(typedForce(2500, pounds()), "562 lbf");
    EXPECT_EQ(typedMass(1200, {}), "1200 kg");
}

TEST(Force, NoFigureIsWrittenForWhatIsNotFinite) {
    const double endless = std::numeric_limits<double>::infinity();
    EXPECT_EQ(typedForce(endless, {}), "\u2013");
    EXPECT_EQ(typedMass(std::nan(""), {}), "\u2013");
    EXPECT_EQ(writePressure(endless, {}), "\u2013");
    EXPECT_EQ(writeAngle(std::nan("")), "\u2013");
}

TEST(Force, PressuresAndAnglesAreWrittenWithTheirUnit) {
    EXPECT_EQ(writePressure(350'000, {}), "350 kPa");
    EXPECT_EQ(writePressure(12'340, {}), "12.3 kPa");
    EXPECT_EQ(writeAngle(0.2), "11.5\u00B0");
}

}  // namespace force_test
}  // namespace fayline::units
