#include "core/plan/holding_scene.hpp"

#include <algorithm>
#include <array>
#include <cctype>

#include "core/boat/hold_traits.hpp"

namespace fayline::plan {

namespace {

int numberOf(const Plan& plan, int index) {
    for (const holding::StationPlace& place : plan.holding.stations) {
        if (place.index == index) return place.number;
    }
    return index + 1;
}

}  // namespace

std::string lowered(std::string text) {
    if (!text.empty()) text[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(text[0])));
    return text;
}

std::string kindName(boat::HoldKind kind) {
    return capitalised(std::string(boat::holdWord(kind)));
}

std::string kindsText(const std::vector<boat::Station>& stations) {
    std::vector<std::string> parts;
    for (const boat::HoldTraits& traits : boat::holdTraits) {
        const auto count = std::ranges::count(stations, traits.kind, &boat::Station::kind);
        if (count == 0) continue;
        parts.push_back(numberWord(static_cast<int>(count)) + " " + std::string(traits.word) + (count == 1 ? "" : "s"));
    }
    return listed(parts);
}

int toolsAmong(const std::vector<boat::Station>& stations) {
    return static_cast<int>(std::count_if(stations.begin(), stations.end(), [](const boat::Station& station) {
        return boat::traitsOf(station.kind).standsAnywhere;
    }));
}

std::string HoldingScene::name(int index) const {
    return kindName(station(index).kind) + " " + std::to_string(numberOf(plan, index));
}

std::array<std::string, 2> HoldingScene::forces(double force_N, double limit_N) const {
    constexpr int mostFigures = 5;
    std::array<std::string, 2> texts;
    for (int figures = 2; figures <= mostFigures; ++figures) {
        texts = {measure::writeForce(force_N, shop.display, figures),
                 measure::writeForce(limit_N, shop.display, figures)};
        if (texts[0] != texts[1]) break;
    }
    return texts;
}

std::string HoldingScene::names(const std::vector<int>& indices) const {
    if (indices.size() == 1) return name(indices.front());
    bool alike = true;
    for (const int index : indices) alike = alike && station(index).kind == station(indices.front()).kind;
    std::vector<std::string> parts;
    for (const int index : indices) {
        const std::string kind(boat::holdWord(station(index).kind));
        parts.push_back((alike ? "" : kind + " ") + std::to_string(numberOf(plan, index)));
    }
    if (!alike) return capitalised(listed(parts));
    return kindName(station(indices.front()).kind) + "s " + listed(parts);
}

std::string LoadCase::subject(const HoldingScene& scene, int station, const std::string& thePartOf) const {
    const std::string name = thePartOf.empty() ? scene.name(station) : thePartOf + lowered(scene.name(station));
    const std::string who = name + ", " + scene.place(scene.at_m(station)) + ", ";
    if (!turnOf) return who;
    return (*turnOf == station ? "At its turn " : "At the turn of " + lowered(scene.name(*turnOf)) + " ") +
           lowered(who);
}

Finding aboutHolding(Severity severity, Code code, const std::string& unit, const measure::Source& source) {
    Finding finding;
    finding.severity = severity;
    finding.code = code;
    finding.unit = unit;
    finding.source = source;
    return finding;
}

measure::Source contactSource() {
    return {
        "unstretchable rod in one-sided contact with the form (derived); the wood across the grain as a twelfth of "
        "that along it (common practice)",
        measure::Mark::derived};
}

}  // namespace fayline::plan
