#include "core/units/units.hpp"

#include <array>
#include <charconv>
#include <cmath>

namespace fayline::units {

double toTwelveFigures(double value) {
    if (value == 0 || !std::isfinite(value)) return value;
    std::array<char, 40> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::scientific, 11);
    double rounded = value;
    std::from_chars(text.data(), end.ptr, rounded);
    return rounded;
}

double fromMillimetres(double mm) {
    return mm / 1000;
}

double toMillimetres(double m) {
    return toTwelveFigures(m * 1000);
}

}  // namespace fayline::units
