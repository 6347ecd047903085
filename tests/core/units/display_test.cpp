#include "core/units/display.hpp"

#include <gtest/gtest.h>

#include <limits>

#include "core/units/units.hpp"

namespace fayline::units {
namespace display_test {

const Display metric{};
const Display trade{.lengths = LengthNotation::feetInchesEighths,
                    .temperatures = TemperatureUnit::fahrenheit,
                    .forces = ForceUnit::poundForce,
                    .weights = WeightUnit::ounce,
                    .volumes = VolumeUnit::fluidOunce};

TEST(Display, LengthsThicknessesAndMisfits) {
    EXPECT_EQ(writeLength(0.6985, metric), "698.5 mm");
    EXPECT_EQ(writeLength(0.6985, trade), "2-3-4");
    EXPECT_EQ(writeThickness(0.00635, metric), "6.35 mm");
    EXPECT_EQ(writeThickness(0.006, metric), "6 mm");
    EXPECT_EQ(writeThickness(0.00635, trade), "1/4 in");
    EXPECT_EQ(writeThickness(0.006, trade), "0.236 in");
    EXPECT_EQ(writeSmall(0.00031, metric), "+0.31 mm");
    EXPECT_EQ(writeSmall(-0.012 * inch_m, trade), "-0.012 in");
    EXPECT_EQ(writeSmall(-0.000001, metric), "0.00 mm");
    EXPECT_EQ(writeSmall(0.000001, trade), "0.000 in");
}

TEST(Display, SharesForcesTemperaturesStresses) {
    EXPECT_EQ(writeShare(0.61), "61 %");
    EXPECT_EQ(writeShare(0.0052), "0.52 %");
    EXPECT_EQ(writeShare(1), "100 %");
    EXPECT_EQ(writeShare(0.615, 3), "61.5 %");
    EXPECT_EQ(writeForce(800, metric), "800 N");
    EXPECT_EQ(writeForce(12345, metric), "12000 N");
    EXPECT_EQ(writeForce(12345, metric, 3), "12300 N");
    EXPECT_EQ(writeForce(poundForce_N * 180, trade), "180 lbf");
    EXPECT_EQ(writeMoment(35.04, metric), "35 N m");
    EXPECT_EQ(writeMoment(poundForce_N * foot_m * 25.8, trade), "25.8 lbf ft");
    EXPECT_EQ(writePressure(310e3, metric), "310 kPa");
    EXPECT_EQ(writePressure(psi_Pa * 45, trade), "45 psi");
    EXPECT_EQ(writeStress(psi_Pa * 15'200, trade), "15200 psi");
    // One kilogram-force is 9.80665 N and one bar 100 kPa by definition.
    EXPECT_EQ(writeForce(1666, metricShop), "170 kgf");
    EXPECT_EQ(writeMoment(9.80665 * 3.57, metricShop), "3.57 kgf m");
    EXPECT_EQ(writePressure(310e3, metricShop), "3.1 bar");
    EXPECT_EQ(writeTemperature(18, metric), "18 \u00B0C");
    EXPECT_EQ(writeTemperature(18, trade), "64 \u00B0F");
    EXPECT_EQ(writeStress(104.8e6, metric), "105 MPa");
    EXPECT_EQ(writeStress(4.8e6, metric), "4.8 MPa");
}

TEST(Display, NumbersHaveNoExponentAndNoTrailingZeros) {
    EXPECT_EQ(writeNumber(0), "0");
    EXPECT_EQ(writeNumber(-0.0), "0");
    EXPECT_EQ(writeNumber(0.000123456), "0.000123");
    EXPECT_EQ(writeNumber(1234567, 3), "1230000");
    EXPECT_EQ(writeNumber(0.5, 3), "0.5");
    EXPECT_EQ(writeNumber(999.6, 3), "1000");
    EXPECT_EQ(writeNumber(-2.345, 2), "-2.3");
    EXPECT_EQ(writeNumber(1e20, 3), "100000000000000000000");
    EXPECT_EQ(writeNumber(std::numeric_limits<double>::infinity()), "\u2013");
    EXPECT_EQ(writeNumber(std::numeric_limits<double>::quiet_NaN()), "\u2013");
}

}  // namespace display_test
}  // namespace fayline::units
