#include "core/units/figures.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <numeric>

namespace fayline::units {
namespace {

// Longer than any double with a few decimals.
using Text = std::array<char, 400>;

bool allZero(const std::string& text) {
    return text.find_first_of("123456789") == std::string::npos;
}

}  // namespace

std::string fixedFigures(double value, int decimals) {
    if (!std::isfinite(value)) return noFigure;
    double scale = 1;
    for (int i = 0; i < decimals; ++i) scale *= 10;
    const double scaled = value * scale;
    // Beyond 2^53 there are no decimals left to round.
    const double rounded = std::abs(scaled) < 9e15 ? std::round(scaled) / scale : value;
    Text text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), rounded, std::chars_format::fixed, decimals);
    std::string figures(text.data(), end.ptr);
    if (figures.starts_with('-') && allZero(figures)) figures.erase(0, 1);
    return figures;
}

std::string upToDecimals(double value, int decimals) {
    std::string figures = fixedFigures(value, decimals);
    if (figures.find('.') == std::string::npos) return figures;
    figures.erase(figures.find_last_not_of('0') + 1);
    if (figures.ends_with('.')) figures.pop_back();
    return figures;
}

std::string inchFigures(double inches, double within) {
    const double sixtyFourths = std::round(std::abs(inches) * 64);
    if (!(sixtyFourths < 1e15)) return fixedFigures(inches, 3);
    if (std::abs(std::abs(inches) - sixtyFourths / 64) > within) {
        const std::string decimal = fixedFigures(inches, 3);
        return allZero(decimal) ? "0" : decimal;
    }
    const auto count = static_cast<long long>(sixtyFourths);
    const long long whole = count / 64;
    const long long over = count % 64;
    if (count == 0) return "0";
    std::string text = inches < 0 ? "-" : "";
    if (whole > 0 || over == 0) text += std::to_string(whole);
    if (over == 0) return text;
    if (whole > 0) text += " ";
    const long long common = std::gcd(over, 64LL);
    return text + std::to_string(over / common) + "/" + std::to_string(64 / common);
}

}  // namespace fayline::units
