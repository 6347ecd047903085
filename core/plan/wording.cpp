#include "core/plan/wording.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "core/holding/kinds.hpp"
#include "core/measure/units.hpp"

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
    const bool lowered = end == std::string::npos || std::find(common.begin(), common.end(), first) != common.end();
    if (lowered && !name.empty()) name[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(name[0])));
    return name;
}

// Strips that read alike are said together, wherever in the stack they lie side by side.
struct Alike {
    int count = 0;
    std::string thickness;
    std::string species;
};

std::vector<Alike> alikeStrips(const boat::Stack& stack, const measure::Display& display, bool bySpecies) {
    std::vector<Alike> groups;
    for (const boat::Strips& strips : stack.strips) {
        std::string thickness = measure::writeThickness(strips.thickness_m, display);
        if (strips.tapersTo_m) thickness += " to " + measure::writeThickness(*strips.tapersTo_m, display);
        const bool same = !groups.empty() && groups.back().thickness == thickness &&
                          (!bySpecies || groups.back().species == strips.species);
        if (!same) groups.push_back({0, thickness, strips.species});
        groups.back().count += strips.count;
    }
    return groups;
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

std::string placeText(double at_m, double lineLength_m, const measure::Display& display) {
    if (at_m < 0) return spanText(-at_m, display) + " before the start";
    if (at_m > lineLength_m) return spanText(at_m - lineLength_m, display) + " past the end";
    if (at_m == 0) return "at the start";
    if (at_m == lineLength_m) return "at the end";
    return measure::writeLength(at_m, display) + " from the start";
}

std::string spanText(double length_m, const measure::Display& display) {
    if (display.lengths == measure::LengthNotation::millimetres || std::abs(length_m) >= measure::foot_m) {
        return measure::writeLength(length_m, display);
    }
    // To a sixteenth: closer than that nobody reads such a length.
    return measure::writeThickness(std::round(length_m / measure::sixteenth_m) * measure::sixteenth_m, display);
}

std::string reachText(double length_m, const measure::Display& display) {
    const bool metric = display.lengths == measure::LengthNotation::millimetres;
    const double step_m = metric ? 0.01 : measure::inch_m / 2;
    const double steps = std::floor(length_m / step_m + 1e-6);
    return spanText(steps >= 1 ? steps * step_m : length_m, display);
}

std::string pullText(double pull_N, holding::HoldState state, const measure::Display& display) {
    if (!holding::pullsLightly(state, pull_N)) return measure::writeForce(pull_N, display);
    return "light, under " + measure::writeForce(holding::lightPull_N, display);
}

std::string smallText(double distance_m, const measure::Display& display) {
    const std::string text = measure::writeSmall(std::abs(distance_m), display);
    return text.starts_with('+') ? text.substr(1) : text;
}

std::string stripText(int place, int count) {
    if (count == 1) return "the strip";
    if (place == 1) return "the strip on the form";
    if (place == count) return "the outermost strip";
    return "strip " + std::to_string(place);
}

std::string stripsText(const boat::Stack& stack, const std::vector<wood::Species>& species,
                       const measure::Display& display) {
    std::vector<std::string> parts;
    for (const Alike& alike : alikeStrips(stack, display, true)) {
        const wood::Species* wood = wood::findSpecies(species, alike.species);
        const std::string noun = parts.empty() ? (alike.count == 1 ? " strip of " : " strips of ") : " of ";
        parts.push_back(numberWord(alike.count) + noun + alike.thickness + " " +
                        (wood ? woodName(*wood) : alike.species));
    }
    return listed(parts);
}

std::string stripsFigures(const boat::Stack& stack, const measure::Display& display) {
    std::string text;
    for (const Alike& alike : alikeStrips(stack, display, false)) {
        text += (text.empty() ? "" : " + ") + std::to_string(alike.count) + " x " + alike.thickness;
    }
    return text;
}

std::string pointText(const boat::Point& point, int index) {
    return point.label.empty() ? "point " + std::to_string(index + 1) : point.label;
}

}  // namespace fayline::plan
