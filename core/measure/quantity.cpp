#include "core/measure/quantity.hpp"

#include <charconv>
#include <cmath>

namespace fayline::measure {

namespace {

std::string lowered(std::string_view text) {
    std::string lower(text);
    for (char& sign : lower)
        if (sign >= 'A' && sign <= 'Z') sign = static_cast<char>(sign - 'A' + 'a');
    return lower;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
    constexpr std::string_view blank = " \t\n\r";
    const std::size_t first = text.find_first_not_of(blank);
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(blank) - first + 1);
}

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

}  // namespace fayline::measure
