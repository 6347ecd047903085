#include "core/measure/force.hpp"

#include <charconv>
#include <cmath>
#include <optional>
#include <span>

#include "core/measure/figures.hpp"
#include "core/measure/input_error.hpp"
#include "core/measure/scale.hpp"
#include "core/measure/units.hpp"

namespace fayline::measure {

namespace {

struct NamedUnit {
    std::string_view name;  // in lower case
    double si;
};

std::string_view trimmed(std::string_view text) {
    constexpr std::string_view blank = " \t\n\r";
    const std::size_t first = text.find_first_not_of(blank);
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(blank) - first + 1);
}

std::string lowered(std::string_view text) {
    std::string lower(text);
    for (char& sign : lower)
        if (sign >= 'A' && sign <= 'Z') sign = static_cast<char>(sign - 'A' + 'a');
    return lower;
}

// A number, then a unit of `units` or nothing: then `bare` holds. Nothing where the text is no such thing.
std::optional<double> readQuantity(std::string_view text, std::span<const NamedUnit> units, double bare) {
    std::string plain(trimmed(text));
    if (plain.size() > 64) return std::nullopt;
    for (char& sign : plain)
        if (sign == ',') sign = '.';
    double number = 0;
    const char* const end = plain.data() + plain.size();
    const auto read = std::from_chars(plain.data(), end, number);
    if (read.ec != std::errc() || !std::isfinite(number)) return std::nullopt;
    const std::string unit = lowered(trimmed({read.ptr, static_cast<std::size_t>(end - read.ptr)}));
    if (unit.empty()) return number * bare;
    for (const NamedUnit& known : units)
        if (unit == known.name) return number * known.si;
    return std::nullopt;
}

std::string quoted(std::string_view text) {
    return "\"" + std::string(trimmed(text)) + "\"";
}

}  // namespace

double readForce(std::string_view text, const Display& display) {
    static constexpr NamedUnit units[] = {{"n", 1},
                                          {"kn", 1000},
                                          {"lbf", poundForce_N},
                                          {"lb", poundForce_N},
                                          {"lbs", poundForce_N},
                                          {"kgf", standardGravity_m_s2}};
    const bool pounds = display.forces == ForceUnit::poundForce;
    const std::optional<double> force = readQuantity(text, units, pounds ? poundForce_N : 1);
    if (force) return *force;
    throw InputError("", quoted(text) + " is not a force", "give it as 2500 N, 2.5 kN or 560 lbf");
}

std::string typedForce(double force_N, const Display& display) {
    if (!std::isfinite(force_N)) return noFigure;
    if (display.forces == ForceUnit::newton) return upToDecimals(force_N, 1) + " N";
    return upToDecimals(force_N / poundForce_N, 1) + " lbf";
}

double readMass(std::string_view text, const Display& display) {
    static constexpr NamedUnit units[] = {{"kg", 1}, {"t", 1000}, {"g", 0.001}, {"lb", pound_kg}, {"lbs", pound_kg}};
    const bool pounds = display.weights == WeightUnit::ounce;
    const std::optional<double> mass = readQuantity(text, units, pounds ? pound_kg : 1);
    if (mass) return *mass;
    throw InputError("", quoted(text) + " is not a weight", "give it as 1200 kg, 1.2 t or 2600 lb");
}

std::string typedMass(double mass_kg, const Display& display) {
    if (!std::isfinite(mass_kg)) return noFigure;
    if (display.weights == WeightUnit::gram) return upToDecimals(mass_kg, 1) + " kg";
    return upToDecimals(mass_kg / pound_kg, 1) + " lb";
}

std::string writeAngle(double angle_rad) {
    if (!std::isfinite(angle_rad)) return noFigure;
    return upToDecimals(toDegrees(angle_rad), 1) + "\u00B0";
}

}  // namespace fayline::measure
