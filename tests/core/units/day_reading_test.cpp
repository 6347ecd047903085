#include "core/units/day_reading.hpp"

#include <gtest/gtest.h>

#include "core/units/input_error.hpp"

namespace fayline::units {
namespace day_reading_test {

Display inPounds() {
    return {LengthNotation::inches, TemperatureUnit::fahrenheit, ForceUnit::poundForce, WeightUnit::ounce,
            VolumeUnit::fluidOunce};
}

TEST(DayReading, ATemperatureIsReadInEitherUnitAndABareOneInTheDisplays) {
    EXPECT_DOUBLE_EQ(readTemperature("18", {}), 18);
    EXPECT_DOUBLE_EQ(readTemperature("-3,5 C", {}), -3.5);
    EXPECT_NEAR(readTemperature("64.4 F", {}), 18, 1e-9);
    EXPECT_NEAR(readTemperature("64.4", inPounds()), 18, 1e-9);
    EXPECT_DOUBLE_EQ(readTemperature("18 C", inPounds()), 18);
    EXPECT_THROW(readTemperature("18 K", {}), InputError);
    EXPECT_THROW(readTemperature("warm", inPounds()), InputError);
    EXPECT_EQ(typedTemperature(18, {}), "18 C");
    EXPECT_EQ(typedTemperature(18, inPounds()), "64.4 F");
}

TEST(DayReading, WhatIsTypedIsReadAgain) {
    for (const Display& display : {Display{}, inPounds()}) {
        for (const double value : {0.001, 0.0125, 0.1, 0.25, 1.0}) {
            EXPECT_NEAR(readSmallMass(typedSmallMass(value, display), display), value, 1e-5 * value);
            EXPECT_NEAR(readVolume(typedVolume(1e-3 * value, display), display), 1e-3 * value, 1e-8 * value);
            EXPECT_NEAR(readAreaRate(typedAreaRate(value / 60, display), display), value / 60, 1e-5 * value);
            EXPECT_NEAR(readCoat(typedCoat(value)), value, 1e-5 * value);
        }
        EXPECT_NEAR(readTemperature(typedTemperature(-7.5, display), display), -7.5, 1e-4);
    }
    EXPECT_DOUBLE_EQ(readDuration(typedDuration(90)), 90);
    EXPECT_DOUBLE_EQ(readDuration(typedDuration(5400, 3600), 3600), 5400);
}

TEST(DayReading, ADurationIsInMinutesUnlessItSaysOtherwise) {
    EXPECT_DOUBLE_EQ(readDuration("4"), 240);
    EXPECT_DOUBLE_EQ(readDuration("40 s"), 40);
    EXPECT_DOUBLE_EQ(readDuration("1,5 h"), 5400);
    EXPECT_DOUBLE_EQ(readDuration("2", 3600), 7200);
    EXPECT_THROW(readDuration("soon"), InputError);
}

TEST(DayReading, ATimeOfTheDayIsReadAsClocksShowIt) {
    EXPECT_DOUBLE_EQ(readClock("08:30"), 8.5 * 3600);
    EXPECT_DOUBLE_EQ(readClock(" 8.30 "), 8.5 * 3600);
    EXPECT_DOUBLE_EQ(readClock("8"), 8 * 3600);
    EXPECT_DOUBLE_EQ(readClock("23:59:59"), 86399);
    EXPECT_EQ(typedClock(8.5 * 3600), "08:30");
    EXPECT_EQ(typedClock(86399), "23:59:59");
    for (const char* none : {"", "24:00", "8:60", "8:", ":30", "8:30:00:00", "noon", "-1:00", "008:30"}) {
        EXPECT_THROW(readClock(none), InputError) << none;
    }
}

TEST(DayReading, AFluidOunceIsNoOunce) {
    EXPECT_NEAR(readVolume("1 fl oz", {}), 29.5735e-6, 1e-9);
    EXPECT_NEAR(readSmallMass("1 oz", {}), 0.0283495, 1e-6);
}

}  // namespace day_reading_test
}  // namespace fayline::units
