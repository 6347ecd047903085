#include "core/units/file_unit.hpp"

#include <algorithm>
#include <charconv>
#include <limits>

namespace fayline::units {

namespace {

// Figures and the power of ten of the first of them: 698.5 is {"6985", 2}.
struct Figures {
    bool negative = false;
    std::string digits;  // no zeros at either end; empty for 0
    int power = 0;
};

int readExponent(std::string_view text) {
    if (!text.empty() && text.front() == '+') text.remove_prefix(1);
    int exponent = 0;
    const auto result = std::from_chars(text.data(), text.data() + text.size(), exponent);
    constexpr int endless = 100'000;
    if (result.ec == std::errc::result_out_of_range) return text.front() == '-' ? -endless : endless;
    return std::clamp(exponent, -endless, endless);
}

Figures figuresOf(std::string_view text) {
    Figures figures;
    if (!text.empty() && text.front() == '-') {
        figures.negative = true;
        text.remove_prefix(1);
    }
    const auto e = text.find_first_of("eE");
    const int exponent = e == std::string_view::npos ? 0 : readExponent(text.substr(e + 1));
    int whole = 0;  // figures before the point
    bool point = false;
    for (const char c : text.substr(0, e)) {
        if (c == '.') {
            point = true;
            continue;
        }
        figures.digits += c;
        if (!point) ++whole;
    }
    const auto first = figures.digits.find_first_not_of('0');
    if (first == std::string::npos) return {};
    figures.power = whole - 1 - int(first) + exponent;
    figures.digits = figures.digits.substr(first, figures.digits.find_last_not_of('0') + 1 - first);
    return figures;
}

std::string scientific(const Figures& figures) {
    if (figures.digits.empty()) return "0";
    std::string text = figures.negative ? "-" : "";
    text += figures.digits.front();
    if (figures.digits.size() > 1) text += "." + figures.digits.substr(1);
    return text + "e" + std::to_string(figures.power);
}

// As a person writes it; an exponent only beyond 10^15 or below 10^-7.
std::string plain(const Figures& figures) {
    if (figures.digits.empty()) return "0";
    if (figures.power >= 15 || figures.power < -7) return scientific(figures);
    const std::string& digits = figures.digits;
    std::string text = figures.negative ? "-" : "";
    if (figures.power < 0) return text + "0." + std::string(-figures.power - 1, '0') + digits;
    const std::size_t whole = figures.power + 1;
    if (digits.size() <= whole) return text + digits + std::string(whole - digits.size(), '0');
    return text + digits.substr(0, whole) + "." + digits.substr(whole);
}

template <class Float>
Float parse(std::string_view text, bool small, bool negative) {
    Float value = 0;
    const auto result = std::from_chars(text.data(), text.data() + text.size(), value);
    if (result.ec != std::errc::result_out_of_range) return value;
    if (small) return 0;
    return negative ? -std::numeric_limits<Float>::infinity() : std::numeric_limits<Float>::infinity();
}

}  // namespace

double readInUnit(std::string_view figures, FileUnit unit) {
    Figures shifted = figuresOf(figures);
    shifted.power += unit.tens;
    const std::string text = scientific(shifted);
    const bool small = shifted.power < 0;
    if (unit.times == 1) return parse<double>(text, small, shifted.negative);
    return double(parse<long double>(text, small, shifted.negative) * unit.times);
}

std::string writeInUnit(double si, FileUnit unit) {
    char buffer[64];
    if (unit.times == 1) {
        const auto end = std::to_chars(buffer, buffer + sizeof buffer, si).ptr;
        Figures figures = figuresOf({buffer, std::size_t(end - buffer)});
        figures.power -= unit.tens;
        return plain(figures);
    }
    // A long double has bits to spare, so that some number of figures always hits `si` again.
    const long double inFile = si / unit.times;
    std::string text;
    for (int figures = 1; figures <= std::numeric_limits<long double>::max_digits10; ++figures) {
        const auto end =
            std::to_chars(buffer, buffer + sizeof buffer, inFile, std::chars_format::scientific, figures - 1).ptr;
        text = plain(figuresOf({buffer, std::size_t(end - buffer)}));
        if (readInUnit(text, unit) == si) break;
    }
    return text;
}

}  // namespace fayline::units
