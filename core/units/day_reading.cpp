#include "core/units/day_reading.hpp"

#include <array>
#include <cmath>
#include <cstdio>

#include "core/units/input_error.hpp"
#include "core/units/quantity.hpp"
#include "core/units/units.hpp"

namespace fayline::units {

namespace {

constexpr double squareFoot_m2 = foot_m * foot_m;

// The quantity in `text`, or the error that says what would be accepted.
double read(std::string_view text, std::span<const NamedUnit> units, double bare, const char* what,
            const char* accepted) {
    if (const std::optional<double> value = readQuantity(text, units, bare)) return toTwelveFigures(*value);
    throw InputError("", quoted(text) + " is not " + what, accepted);
}

std::string typed(double value, const char* unit) {
    if (!std::isfinite(value)) return "-";
    return writeNumber(toTwelveFigures(value), 6) + unit;
}

bool inFeet(const Display& display) {
    return display.lengths != LengthNotation::millimetres;
}

}  // namespace

double readTemperature(std::string_view text, const Display& display) {
    static constexpr NamedUnit celsius[] = {{"c", 1}, {"\u00b0c", 1}};
    static constexpr NamedUnit fahrenheit[] = {{"f", 1}, {"\u00b0f", 1}};
    const bool bareIsFahrenheit = display.temperatures == TemperatureUnit::fahrenheit;
    const std::optional<double> inC = readQuantity(text, celsius, bareIsFahrenheit ? NAN : 1);
    if (inC && std::isfinite(*inC)) return *inC;
    if (const std::optional<double> inF = readQuantity(text, fahrenheit, 1)) {
        return toTwelveFigures(fromFahrenheit(*inF));
    }
    throw InputError("", quoted(text) + " is not a temperature", "give it as 18 C or 64 F");
}

std::string typedTemperature(double air_C, const Display& display) {
    if (display.temperatures == TemperatureUnit::fahrenheit) return typed(toFahrenheit(air_C), " F");
    return typed(air_C, " C");
}

double readSmallMass(std::string_view text, const Display& display) {
    static constexpr NamedUnit units[] = {{"g", 1e-3}, {"kg", 1}, {"oz", ounce_kg}, {"lb", pound_kg}};
    return read(text, units, display.weights == WeightUnit::ounce ? ounce_kg : 1e-3, "a mass",
                "give it as 100 g or 3.5 oz");
}

std::string typedSmallMass(double mass_kg, const Display& display) {
    return display.weights == WeightUnit::ounce ? typed(mass_kg / ounce_kg, " oz") : typed(1000 * mass_kg, " g");
}

double readVolume(std::string_view text, const Display& display) {
    static constexpr NamedUnit units[] = {
        {"ml", 1e-6}, {"l", 1e-3}, {"fl oz", fluidOunceUs_m3}, {"oz", fluidOunceUs_m3}};
    return read(text, units, display.volumes == VolumeUnit::fluidOunce ? fluidOunceUs_m3 : 1e-6, "a volume",
                "give it as 500 ml or 17 fl oz");
}

std::string typedVolume(double volume_m3, const Display& display) {
    if (display.volumes == VolumeUnit::fluidOunce) return typed(volume_m3 / fluidOunceUs_m3, " fl oz");
    return typed(1e6 * volume_m3, " ml");
}

double readDuration(std::string_view text, double bare_s) {
    static constexpr NamedUnit units[] = {{"s", 1},       {"min", 60},     {"h", 3600},   {"hours", 3600},
                                          {"hour", 3600}, {"days", 86400}, {"day", 86400}};
    return read(text, units, bare_s, "a length of time", "give it as 4 min, 40 s or 1.5 h");
}

std::string typedDuration(double time_s, double unit_s) {
    return typed(time_s / unit_s, unit_s == 1 ? " s" : unit_s == 3600 ? " h" : " min");
}

double readClock(std::string_view text) {
    constexpr std::array<int, 3> most{23, 59, 59};
    constexpr std::array<double, 3> each_s{3600, 60, 1};
    const std::string_view plain = trimmed(text);
    double clock_s = 0;
    std::size_t part = 0;
    std::size_t at = 0;
    const auto refuse = [&] { return InputError("", quoted(text) + " is not a time of the day", "give it as 08:30"); };
    do {
        int number = 0;
        std::size_t figures = 0;
        while (at < plain.size() && plain[at] >= '0' && plain[at] <= '9' && figures < 2) {
            number = 10 * number + (plain[at++] - '0');
            ++figures;
        }
        if (figures == 0 || part >= most.size() || number > most[part]) throw refuse();
        clock_s += number * each_s[part++];
        if (at < plain.size() && plain[at] != ':' && plain[at] != '.') throw refuse();
    } while (at++ < plain.size());
    return clock_s;
}

std::string typedClock(double clock_s) {
    if (!std::isfinite(clock_s)) return "-";
    const auto seconds = static_cast<long long>(std::llround(clock_s));
    std::array<char, 64> text{};
    std::snprintf(text.data(), text.size(), "%02lld:%02lld", seconds / 3600, seconds / 60 % 60);
    std::string clock = text.data();
    if (seconds % 60 == 0) return clock;
    std::snprintf(text.data(), text.size(), ":%02lld", seconds % 60);
    return clock + text.data();
}

double readAreaRate(std::string_view text, const Display& display) {
    static constexpr NamedUnit units[] = {
        {"m2/min", 1.0 / 60}, {"sq ft/min", squareFoot_m2 / 60}, {"ft2/min", squareFoot_m2 / 60}};
    return read(text, units, inFeet(display) ? squareFoot_m2 / 60 : 1.0 / 60, "a rate of area",
                "give it as 0.12 m2/min or 1.3 sq ft/min");
}

std::string typedAreaRate(double rate_m2_s, const Display& display) {
    if (inFeet(display)) return typed(60 * rate_m2_s / squareFoot_m2, " sq ft/min");
    return typed(60 * rate_m2_s, " m2/min");
}

double readCoat(std::string_view text) {
    static constexpr NamedUnit units[] = {
        {"g/m2", 1e-3}, {"oz/sq ft", ounce_kg / squareFoot_m2}, {"oz/ft2", ounce_kg / squareFoot_m2}};
    return read(text, units, 1e-3, "a coat of glue", "give it as 250 g/m2 or 0.8 oz/sq ft");
}

std::string typedCoat(double coat_kg_m2) {
    return typed(1000 * coat_kg_m2, " g/m2");
}

}  // namespace fayline::units
