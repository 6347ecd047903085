#include "core/plan/findings/holding_scene.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "core/model/hold_traits.hpp"
#include "core/plan/findings/holding_texts.hpp"
#include "core/units/length.hpp"

namespace fayline::plan {

namespace {

// How holds of one kind are named.
struct KindPhrases {
    Phrase one;      // "clamp 4"
    Phrase several;  // "clamps 4 and 5"
    Phrase counted;  // "eight clamps"
};

// In the order of HoldKind.
constexpr auto kindPhrases = std::to_array<KindPhrases>({
    {{FAYLINE_TEXT("plan", "clamp %1")},
     {FAYLINE_TEXT("plan", "clamps %1")},
     {FAYLINE_TEXT("plan", "%1 clamp"), FAYLINE_TEXT_N("plan", "%1 clamps")}},
    {{FAYLINE_TEXT("plan", "prop %1")},
     {FAYLINE_TEXT("plan", "props %1")},
     {FAYLINE_TEXT("plan", "%1 prop"), FAYLINE_TEXT_N("plan", "%1 props")}},
    {{FAYLINE_TEXT("plan", "jack %1")},
     {FAYLINE_TEXT("plan", "jacks %1")},
     {FAYLINE_TEXT("plan", "%1 jack"), FAYLINE_TEXT_N("plan", "%1 jacks")}},
    {{FAYLINE_TEXT("plan", "screw %1")},
     {FAYLINE_TEXT("plan", "screws %1")},
     {FAYLINE_TEXT("plan", "%1 screw"), FAYLINE_TEXT_N("plan", "%1 screws")}},
    {{FAYLINE_TEXT("plan", "strap %1")},
     {FAYLINE_TEXT("plan", "straps %1")},
     {FAYLINE_TEXT("plan", "%1 strap"), FAYLINE_TEXT_N("plan", "%1 straps")}},
    {{FAYLINE_TEXT("plan", "wedge %1")},
     {FAYLINE_TEXT("plan", "wedges %1")},
     {FAYLINE_TEXT("plan", "%1 wedge"), FAYLINE_TEXT_N("plan", "%1 wedges")}},
});
static_assert(kindPhrases.size() == model::holdTraits.size());

const KindPhrases& phrasesOf(model::HoldKind kind) {
    return kindPhrases.at(static_cast<std::size_t>(kind));
}

constexpr Phrase numberAlone{FAYLINE_TEXT("plan", "%1")};
constexpr Phrase numbersTo{FAYLINE_TEXT("plan", "%1 to %2")};

int numberOf(const Plan& plan, int index) {
    for (const holding::StationPlace& place : plan.holding.stations) {
        if (place.index == index) return place.number;
    }
    return index + 1;
}

// "2, 3 and 5", "2 to 5": three or more in a row are said by the first and the last.
std::vector<Message> runsOf(std::vector<int> numbers) {
    std::ranges::sort(numbers);
    std::vector<Message> runs;
    for (std::size_t first = 0; first < numbers.size();) {
        std::size_t last = first;
        while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
        if (last < first + 2) last = first;
        runs.push_back(last == first ? Message(numberAlone, {put::count(numbers[first])})
                                     : Message(numbersTo, {put::count(numbers[first]), put::count(numbers[last])}));
        first = last + 1;
    }
    return runs;
}

}  // namespace

Message holdsOf(model::HoldKind kind, int count) {
    return {phrasesOf(kind).counted, {put::countWord(count)}, count};
}

Message kindsOf(const std::vector<model::Station>& stations) {
    std::vector<Message> kinds;
    for (const model::HoldTraits& traits : model::holdTraits) {
        const auto count = std::ranges::count(stations, traits.kind, &model::Station::kind);
        if (count > 0) kinds.push_back(holdsOf(traits.kind, static_cast<int>(count)));
    }
    return {numberAlone, {put::list(std::move(kinds))}};
}

int toolsAmong(const std::vector<model::Station>& stations) {
    return static_cast<int>(std::ranges::count_if(
        stations, [](const model::Station& station) { return model::traitsOf(station.kind).standsAnywhere; }));
}

Message HoldingScene::name(int index) const {
    return {phrasesOf(station(index).kind).one, {put::count(numberOf(plan, index))}};
}

Message HoldingScene::names(const std::vector<int>& indices) const {
    if (indices.size() == 1) return name(indices.front());
    const model::HoldKind kind = station(indices.front()).kind;
    const bool alike = std::ranges::all_of(indices, [&](int index) { return station(index).kind == kind; });
    if (!alike) {
        std::vector<Message> each;
        for (const int index : indices) each.push_back(name(index));
        return {numberAlone, {put::list(std::move(each))}};
    }
    std::vector<int> numbers;
    for (const int index : indices) numbers.push_back(numberOf(plan, index));
    return {phrasesOf(kind).several, {put::list(runsOf(std::move(numbers)))}};
}

Message HoldingScene::nameAt(int index) const {
    return {texts::holdAt, {name(index), place(at_m(index))}};
}

Message LoadCase::subject(const HoldingScene& scene, int station) const {
    if (!turnOf) return scene.nameAt(station);
    if (*turnOf == station) return {texts::holdAsItGoesOn, {scene.name(station)}};
    return {texts::holdWhenOtherGoesOn, {scene.name(station), scene.name(*turnOf)}};
}

void LoadCase::tellInstead(Finding& finding) const {
    finding.details.insert(finding.details.end(), instead.begin(), instead.end());
}

Arg gapArg(double gap_m) {
    return gap_m < units::inch_m / 4 ? put::small(gap_m) : put::tape(gap_m);
}

Message withForces(const Phrase& phrase, Arg who, double force_N, double limit_N) {
    return {phrase, {std::move(who), put::forceBeside(force_N, limit_N), put::forceBeside(limit_N, force_N)}};
}

units::Source contactSource() {
    return {
        "unstretchable rod in one-sided contact with the form (derived); the wood across the grain as a twelfth of "
        "that along it (common practice)",
        units::Mark::derived};
}

}  // namespace fayline::plan
