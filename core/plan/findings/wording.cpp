#include "core/plan/findings/wording.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "core/holding/kinds.hpp"
#include "core/units/units.hpp"

namespace fayline::plan {

namespace {

std::string trimmed(std::string text) {
    while (!text.empty() && text.back() == ' ') text.pop_back();
    while (!text.empty() && text.front() == ' ') text.erase(text.begin());
    return text;
}

// A wood's name inside a sentence: common words lose their capital, names of people and places keep it.
std::string inSentence(std::string name) {
    static const std::array<std::string, 16> common{"Black",    "Coast",   "Dark",  "Eastern",  "Live",     "Longleaf",
                                                    "Northern", "Red",     "Rock",  "Shagbark", "Southern", "Sugar",
                                                    "True",     "Western", "White", "Yellow"};
    const std::size_t end = name.find_first_of(" -");
    const std::string first = name.substr(0, end);
    const bool lowered = end == std::string::npos || std::ranges::find(common, first) != common.end();
    if (lowered && !name.empty()) name[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(name[0])));
    return name;
}

bool readAlike(double thickness_m, double other_m) {
    constexpr double seen_m = 5e-6;
    return std::abs(thickness_m - other_m) < seen_m;
}

// Strips that read alike are said together, wherever in the stack they lie side by side.
std::vector<model::Strips> alikeStrips(const model::Stack& stack, bool bySpecies) {
    std::vector<model::Strips> groups;
    for (const model::Strips& strips : stack.strips) {
        const bool same = !groups.empty() && readAlike(groups.back().thickness_m, strips.thickness_m) &&
                          readAlike(groups.back().tapersTo_m.value_or(0), strips.tapersTo_m.value_or(0)) &&
                          (!bySpecies || groups.back().species == strips.species);
        if (same) {
            groups.back().count += strips.count;
        } else {
            groups.push_back(strips);
        }
    }
    return groups;
}

constexpr Phrase taper{FAYLINE_TEXT("plan", "%1 to %2")};
constexpr Phrase stripsOf{FAYLINE_TEXT_N("plan", "%1 strip of %2 %3"), FAYLINE_TEXT_N("plan", "%1 strips of %2 %3")};
constexpr Phrase moreStripsOf{FAYLINE_TEXT("plan", "%1 of %2 %3")};
constexpr Phrase theStrip{FAYLINE_TEXT("plan", "the strip")};
constexpr Phrase stripOnForm{FAYLINE_TEXT("plan", "the strip on the form")};
constexpr Phrase outermostStrip{FAYLINE_TEXT("plan", "the outermost strip")};
constexpr Phrase stripAtPlace{FAYLINE_TEXT("plan", "strip %1")};
constexpr Phrase pointAt{FAYLINE_TEXT("plan", "point %1")};

Message thicknessOf(const model::Strips& strips) {
    if (!strips.tapersTo_m) return {Phrase{"%1"}, {put::thickness(strips.thickness_m)}};
    return {taper, {put::thickness(strips.thickness_m), put::thickness(*strips.tapersTo_m)}};
}

}  // namespace

std::string numberWord(int number) {
    static const std::array<const char*, 13> words{"no",    "one",   "two",  "three", "four",   "five",  "six",
                                                   "seven", "eight", "nine", "ten",   "eleven", "twelve"};
    if (number < 0 || number > 12) return std::to_string(number);
    return words[number];
}

std::string capitalised(std::string text) {
    if (!text.empty()) text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
    return text;
}

std::string listed(const std::vector<std::string>& parts) {
    std::string text;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (i > 0) text += i + 1 == parts.size() ? " and " : ", ";
        text += parts[i];
    }
    return text;
}

std::string woodName(const wood::Species& species) {
    if (species.own) return species.name;
    const std::string name = trimmed(species.name.substr(0, species.name.find('(')));
    const std::size_t comma = name.find(',');
    if (comma == std::string::npos) return inSentence(name);
    return inSentence(trimmed(name.substr(comma + 1))) + " " + inSentence(name.substr(0, comma));
}

std::string woodName(const std::vector<wood::Species>& species, const std::string& id) {
    const wood::Species* wood = wood::findSpecies(species, id);
    return wood ? woodName(*wood) : id;
}

std::string placeText(double at_m, double lineLength_m, const units::Display& display) {
    if (at_m < 0) return spanText(-at_m, display) + " before the start";
    if (at_m > lineLength_m) return spanText(at_m - lineLength_m, display) + " past the end";
    if (at_m == 0) return "at the start";
    if (at_m == lineLength_m) return "at the end";
    return units::writeLength(at_m, display) + " from the start";
}

std::string spanText(double length_m, const units::Display& display) {
    if (display.lengths == units::LengthNotation::millimetres || std::abs(length_m) >= units::foot_m) {
        return units::writeLength(length_m, display);
    }
    // To a sixteenth: closer than that nobody reads such a length.
    return units::writeThickness(std::round(length_m / units::sixteenth_m) * units::sixteenth_m, display);
}

std::string reachText(double length_m, const units::Display& display) {
    const bool metric = display.lengths == units::LengthNotation::millimetres;
    const double step_m = metric ? 0.01 : units::inch_m / 2;
    const double steps = std::floor(length_m / step_m + 1e-6);
    return spanText(steps >= 1 ? steps * step_m : length_m, display);
}

std::string atLeastText(double size_m, const units::Display& display) {
    const bool metric = display.lengths == units::LengthNotation::millimetres;
    const double step_m = metric ? units::fromMillimetres(1) : units::sixteenth_m;
    return units::writeThickness(std::ceil(size_m / step_m - 1e-6) * step_m, display);
}

std::string pullText(double pull_N, holding::HoldState state, const units::Display& display) {
    if (!holding::pullsLightly(state, pull_N)) return units::writeForce(pull_N, display);
    return "light, under " + units::writeForce(holding::lightPull_N, display);
}

std::string smallText(double distance_m, const units::Display& display) {
    const std::string text = units::writeSmall(std::abs(distance_m), display);
    return text.starts_with('+') ? text.substr(1) : text;
}

Message stripName(int place, int count) {
    if (count == 1) return theStrip;
    if (place == 1) return stripOnForm;
    if (place == count) return outermostStrip;
    return {stripAtPlace, {put::count(place)}};
}

Message stripsName(const model::Stack& stack, const std::vector<wood::Species>& species) {
    std::vector<Message> parts;
    for (const model::Strips& alike : alikeStrips(stack, true)) {
        parts.emplace_back(
            parts.empty() ? stripsOf : moreStripsOf,
            std::vector<Arg>{put::countWord(alike.count), thicknessOf(alike), woodName(species, alike.species)},
            alike.count);
    }
    return {Phrase{"%1"}, {put::list(std::move(parts))}};
}

std::string stripsText(const model::Stack& stack, const std::vector<wood::Species>& species,
                       const units::Display& display) {
    return writeWithin(stripsName(stack, species), display);
}

std::string stripsFigures(const model::Stack& stack, const units::Display& display) {
    std::string text;
    for (const model::Strips& alike : alikeStrips(stack, false)) {
        text += (text.empty() ? "" : " + ") + std::to_string(alike.count) + " x " +
                writeWithin(thicknessOf(alike), display);
    }
    return text;
}

Message pointName(const model::Point& point, int index) {
    if (point.label.empty()) return {pointAt, {put::count(index + 1)}};
    return point.label;
}

std::string pointText(const model::Point& point, int index) {
    return writeWithin(pointName(point, index), {});
}

}  // namespace fayline::plan
