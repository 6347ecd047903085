#include "core/units/day_text.hpp"

#include <array>
#include <cmath>
#include <cstdio>

#include "core/units/figures.hpp"
#include "core/units/units.hpp"

namespace fayline::units {

namespace {

std::string wholes(double value, const char* one, const char* more) {
    const auto count = static_cast<long long>(std::llround(value));
    return std::to_string(count) + " " + (count == 1 ? one : more);
}

}  // namespace

std::string writeMass(double mass_kg, const Display& display) {
    if (display.weights == WeightUnit::ounce) {
        const double ounces = mass_kg / ounce_kg;
        return ounces < 32 ? fixedFigures(ounces, 1) + " oz" : fixedFigures(mass_kg / pound_kg, 1) + " lb";
    }
    const double grams = 1000 * mass_kg;
    if (grams >= 1000) return fixedFigures(mass_kg, 2) + " kg";
    return fixedFigures(grams, grams < 10 ? 1 : 0) + " g";
}

std::string writeVolume(double volume_m3, const Display& display) {
    if (display.volumes == VolumeUnit::fluidOunce) return fixedFigures(volume_m3 / fluidOunceUs_m3, 1) + " fl oz";
    const double millilitres = 1e6 * volume_m3;
    if (millilitres >= 1000) return fixedFigures(millilitres / 1000, 2) + " l";
    return fixedFigures(millilitres, millilitres < 10 ? 1 : 0) + " ml";
}

std::string writeArea(double area_m2, const Display& display) {
    if (display.lengths == LengthNotation::millimetres) return writeNumber(area_m2) + " m2";
    return writeNumber(area_m2 / (foot_m * foot_m)) + " sq ft";
}

std::string writeDuration(double time_s) {
    if (!std::isfinite(time_s)) return "never";
    const double size_s = std::abs(time_s);
    const std::string sign = time_s < 0 ? "-" : "";
    if (size_s < 115) return sign + fixedFigures(10 * std::round(size_s / 10), 0) + " s";
    const double minutes = std::round(size_s / 60);
    if (minutes < 60) return sign + fixedFigures(minutes, 0) + " min";
    if (minutes < 10 * 60) {
        const double hours = std::floor(minutes / 60);
        const double rest = minutes - 60 * hours;
        return sign + fixedFigures(hours, 0) + " h" + (rest > 0 ? " " + fixedFigures(rest, 0) + " min" : "");
    }
    const double hours = std::round(size_s / 3600);
    if (hours < 72) return sign + fixedFigures(hours, 0) + " h";
    return sign + wholes(hours / 24, "day", "days");
}

std::string writeClock(double clock_s) {
    if (!std::isfinite(clock_s)) return "never";
    const auto minutes = static_cast<long long>(std::floor(clock_s / 60 + 0.5));
    const long long day = minutes >= 0 ? minutes / 1440 : -((1439 - minutes) / 1440);
    const long long ofDay = minutes - 1440 * day;
    std::array<char, 32> text{};
    std::snprintf(text.data(), text.size(), "%02lld:%02lld", ofDay / 60, ofDay % 60);
    const std::string clock = text.data();
    if (day == 0) return clock;
    if (day == 1) return clock + " the next day";
    if (day == -1) return clock + " the day before";
    return clock + " on day " + std::to_string(day + 1);
}

}  // namespace fayline::units
