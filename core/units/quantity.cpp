#include "core/units/quantity.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "core/units/input_error.hpp"

namespace fayline::units {

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

std::string withoutCommas(std::string_view text) {
    std::string plain(text);
    const auto isDigit = [](char sign) { return sign >= '0' && sign <= '9'; };
    const auto first = std::ranges::find_if(plain, isDigit);
    const auto end = std::find_if(first, plain.end(), [&](char s) { return !isDigit(s) && s != ',' && s != '.'; });
    const std::string number(first, end);
    const auto commas = std::ranges::count(number, ',');
    if (commas == 0) {
        std::ranges::replace(plain, ',', '.');
        return plain;
    }
    const std::string whole = number.substr(0, number.find('.'));
    bool groups = whole[0] != '0' && whole.find(',') >= 1 && whole.find(',') <= 3;
    for (std::size_t at = whole.find(','); at != std::string::npos && groups; at = whole.find(',', at + 1)) {
        const std::size_t next = std::min(whole.find(',', at + 1), whole.size());
        groups = next - at == 4;
    }
    std::string joined = number;
    std::erase(joined, ',');
    const bool isGrouped = groups && (commas > 1 || whole.size() < number.size());
    if (groups && !isGrouped) {
        std::string pointed = number;
        pointed[pointed.find(',')] = '.';
        throw InputError("", number + " may mean " + joined + " or " + pointed, "write " + joined + " or " + pointed);
    }
    std::string read = isGrouped ? joined : number;
    if (!isGrouped) std::ranges::replace(read, ',', '.');
    return plain.replace(first, end, read);
}

std::optional<double> readQuantity(std::string_view text, std::span<const NamedUnit> units, double bare) {
    if (trimmed(text).size() > 64) return std::nullopt;
    const std::string plain = withoutCommas(trimmed(text));
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

}  // namespace fayline::units
