#include "core/line/slips.hpp"

#include <cctype>
#include <cmath>
#include <cstdlib>
#include <optional>

#include "core/units/units.hpp"

namespace fayline::line {

namespace {

using units::LengthNotation;

// Minus the logarithm of how often each kind is met, an inch or an exchange being the most frequent.
// Common practice, no source: only their order is used, to choose between slips that fit equally well.
constexpr double unlikelyStep = 0;
constexpr double unlikelyFoot = 0.5;
constexpr double unlikelyEighth = 1;
constexpr double unlikelySign = 1.5;
constexpr double unlikelySwap = 1;
constexpr double unlikelyLookAlike = 2.5;
constexpr double unlikelyThickness = 1;
constexpr double unlikelyDecimal = 1.5;
constexpr double unlikelyDecimalOfFeet = 3;  // they are written without one, but tables are copied from metric ones
// The coordinate that gives the station or the waterline is a round one and was chosen, not measured.
constexpr double unlikelyRound = 2;

std::optional<double> tryToRead(const std::string& text, LengthNotation notation) {
    try {
        return units::readLength(text, notation);
    } catch (const units::InputError&) {
        return std::nullopt;
    }
}

// The notation that a text is written in, which may be another than that of the display.
LengthNotation notationOf(const std::string& text, LengthNotation display) {
    int dashes = 0;
    for (std::size_t i = 1; i + 1 < text.size(); ++i)
        if (text[i] == '-' && std::isdigit(static_cast<unsigned char>(text[i + 1]))) ++dashes;
    if (dashes == 2) return LengthNotation::feetInchesEighths;
    if (text.find("mm") != std::string::npos) return LengthNotation::millimetres;
    if (text.find("in") != std::string::npos || text.find('"') != std::string::npos) return LengthNotation::inches;
    return display == LengthNotation::feetInchesEighths ? LengthNotation::inches : display;
}

// One coordinate as it is being looked at.
struct Written {
    char axis;
    std::string text;
    double value_m;
    LengthNotation notation;
    bool round;  // a whole number of half feet or of 50 mm: likely a station, not a measurement
};

Written lookAt(char axis, const std::string& written, double value_m, LengthNotation display) {
    Written seen{axis, written, value_m, display, false};
    if (seen.text.empty())
        seen.text = units::writeLength(value_m, display);
    else
        seen.notation = notationOf(written, display);
    const double step = seen.notation == LengthNotation::millimetres ? 0.050 : units::foot_m / 2;
    seen.round = std::abs(std::remainder(value_m, step)) < 1e-6;
    return seen;
}

class Collector {
public:
    Collector(const std::array<std::string, 2>& written, const std::array<double, 2>& value_m)
        : written_(written), value_m_(value_m) {}

    void add(const Written& seen, const std::string& text, const std::string& says, double unlikely) {
        const std::optional<double> value = tryToRead(text, seen.notation);
        if (!value || std::abs(*value - seen.value_m) < 1e-6) return;
        Slip slip{seen.axis, says, written_, value_m_, false, unlikely + (seen.round ? unlikelyRound : 0)};
        const int at = seen.axis == 'x' ? 0 : 1;
        slip.written[at] = text;
        slip.value_m[at] = *value;
        slips_.push_back(slip);
    }

    // A value that was `by_m` too great as written.
    void addShift(const Written& seen, double by_m, const std::string& amount, double unlikely) {
        addValue(seen, seen.value_m - by_m, amount + (by_m > 0 ? " high" : " low"), unlikely);
    }

    // A value that should have been so many times as great.
    void addTimes(const Written& seen, double times, const std::string& says, double unlikely) {
        const std::size_t before = slips_.size();
        addValue(seen, times * seen.value_m, says, unlikely);
        if (slips_.size() > before) slips_.back().decimalPoint = true;
    }

    void addExchange(const Written& x, const Written& y) {
        if (std::abs(x.value_m - y.value_m) < 1e-6) return;
        slips_.push_back({'b', "x and y exchanged", {y.text, x.text}, {y.value_m, x.value_m}, false, unlikelyStep});
    }

    std::vector<Slip> take() { return std::move(slips_); }

private:
    // Inches written to three decimals would not come back; the value rules and is written as well as it can be.
    void addValue(const Written& seen, double value_m, const std::string& says, double unlikely) {
        const std::string right = units::writeLength(value_m, seen.notation);
        const bool bare = seen.text.find_first_of("mi\"") == std::string::npos;
        const bool metric = seen.notation == LengthNotation::millimetres;
        add(seen, right + (bare ? "" : metric ? " mm" : " in"), says, unlikely);
    }

    std::array<std::string, 2> written_;
    std::array<double, 2> value_m_;
    std::vector<Slip> slips_;
};

void addSteps(Collector& slips, const Written& seen) {
    for (const double sign : {1.0, -1.0}) {
        if (seen.notation == LengthNotation::millimetres) {
            slips.addShift(seen, sign * 0.010, "10 mm", unlikelyStep);
            slips.addShift(seen, sign * 0.100, "100 mm", unlikelyFoot);
            slips.addShift(seen, sign * 0.005, "5 mm", unlikelyEighth);
            continue;
        }
        slips.addShift(seen, sign * units::inch_m, "1 inch", unlikelyStep);
        slips.addShift(seen, sign * units::foot_m, "1 foot", unlikelyFoot);
        slips.addShift(seen, sign * units::inch_m / 8, "1 eighth", unlikelyEighth);
        slips.addShift(seen, sign * units::inch_m / 4, "2 eighths", unlikelyEighth + 1);
        slips.addShift(seen, sign * units::inch_m / 2, "half an inch", unlikelyEighth);
    }
}

// A trailing + or - in feet-inches-eighths that was dropped, added or turned round.
void addSigns(Collector& slips, const Written& seen) {
    if (seen.notation != LengthNotation::feetInchesEighths) return;
    const char last = seen.text.back();
    const bool marked = last == '+' || last == '-';
    const std::string bare = marked ? seen.text.substr(0, seen.text.size() - 1) : seen.text;
    for (const char mark : {'+', '-', ' '}) {
        if (mark == last || (mark == ' ' && !marked)) continue;
        const std::string says = !marked       ? std::string("a ") + mark + " dropped"
                                 : mark == ' ' ? std::string("a ") + last + " too many"
                                               : "+ and - turned round";
        slips.add(seen, mark == ' ' ? bare : bare + mark, says, unlikelySign);
    }
}

void addDecimalPoints(Collector& slips, const Written& seen) {
    const bool feet = seen.notation == LengthNotation::feetInchesEighths;
    const double unlikely = feet ? unlikelyDecimalOfFeet : unlikelyDecimal;
    slips.addTimes(seen, 0.1, "ten times what was meant", unlikely);
    slips.addTimes(seen, 10, "a tenth of what was meant", unlikely);
}

// Two fields (inches and eighths) or two figures next to each other swapped.
void addSwaps(Collector& slips, const Written& seen) {
    const std::string& text = seen.text;
    std::vector<std::size_t> starts;  // of runs of figures
    std::vector<std::size_t> ends;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool figure = std::isdigit(static_cast<unsigned char>(text[i])) != 0;
        const bool before = i > 0 && std::isdigit(static_cast<unsigned char>(text[i - 1])) != 0;
        if (figure && !before) starts.push_back(i);
        if (figure && (i + 1 == text.size() || !std::isdigit(static_cast<unsigned char>(text[i + 1]))))
            ends.push_back(i + 1);
        if (figure && before && text[i] != text[i - 1]) {
            std::string swapped = text;
            std::swap(swapped[i], swapped[i - 1]);
            slips.add(seen, swapped, "two figures swapped", unlikelySwap);
        }
    }
    if (seen.notation != LengthNotation::feetInchesEighths) return;
    for (std::size_t k = 0; k + 1 < starts.size(); ++k) {
        const std::string first = text.substr(starts[k], ends[k] - starts[k]);
        const std::string between = text.substr(ends[k], starts[k + 1] - ends[k]);
        const std::string second = text.substr(starts[k + 1], ends[k + 1] - starts[k + 1]);
        const std::string which = k + 2 == starts.size() ? "inches and eighths swapped" : "feet and inches swapped";
        slips.add(seen, text.substr(0, starts[k]) + second + between + first + text.substr(ends[k + 1]), which,
                  unlikelySwap);
    }
}

std::string article(char figure) {
    return (figure == '8' ? "an " : "a ") + std::string(1, figure);
}

// One figure taken for another that looks alike when written in a hurry.
void addLookAlikes(Collector& slips, const Written& seen) {
    constexpr std::array<std::array<char, 2>, 3> pairs{{{'1', '7'}, {'3', '8'}, {'6', '0'}}};
    for (std::size_t i = 0; i < seen.text.size(); ++i) {
        for (const auto& pair : pairs) {
            for (int side = 0; side < 2; ++side) {
                if (seen.text[i] != pair[side]) continue;
                std::string other = seen.text;
                other[i] = pair[1 - side];
                slips.add(seen, other, article(pair[1 - side]) + " taken for " + article(pair[side]),
                          unlikelyLookAlike);
            }
        }
    }
}

}  // namespace

std::vector<Slip> possibleSlips(const std::array<std::string, 2>& written, const std::array<double, 2>& value_m,
                                double takeOff_m, LengthNotation notation, Read read) {
    const Written x = lookAt('x', written[0], value_m[0], notation);
    const Written y = lookAt('y', written[1], value_m[1], notation);
    Collector slips({x.text, y.text}, value_m);
    if (read == Read::both) slips.addExchange(x, y);
    for (Written seen : {x, y}) {
        if (read == (seen.axis == 'x' ? Read::y : Read::x)) continue;
        if (read != Read::both) seen.round = false;  // it is known to have been read
        addSteps(slips, seen);
        addSigns(slips, seen);
        addDecimalPoints(slips, seen);
        addSwaps(slips, seen);
        addLookAlikes(slips, seen);
        if (takeOff_m == 0) continue;
        slips.addShift(seen, std::abs(takeOff_m), "one thickness", unlikelyThickness);
        slips.addShift(seen, -std::abs(takeOff_m), "one thickness", unlikelyThickness);
    }
    return slips.take();
}

}  // namespace fayline::line
