#include "core/holding/propose/spread.hpp"

#include <algorithm>
#include <cmath>

#include "core/holding/propose/search.hpp"

namespace fayline::holding {

namespace {

constexpr double mostStretch = 1000;
// Factors no further apart are one: a tenth of a millimetre on a spacing of a hundred.
constexpr double sameStretch = 1.001;
constexpr int trialsToSpread = 120;
constexpr int trialsToCaul = 60;
constexpr int thickestCaul_mm = 60;

Site widenedSite(const Site& site, double factor, std::optional<double> caul_m) {
    Site wide = site;
    if (!std::isfinite(site.pressed.from_m) || site.pressed.to_m <= site.pressed.from_m) return wide;
    if (caul_m) wide.pad.caul_m = *caul_m;
    wide.pressed = pressedBy(wide, factor);
    return wide;
}

std::vector<laminate::Run> allPressedBy(const Sites& sites, const std::vector<int>& chosen) {
    std::vector<laminate::Run> pressed;
    for (const Site& site : sites.kept) pressed.push_back(site.pressed);
    for (const int place : chosen) pressed.push_back(sites.free[place].pressed);
    return pressed;
}

bool allPressed(const Sites& sites, const std::vector<int>& chosen) {
    return pressedFor_m(sites, allPressedBy(sites, chosen), Way::onward) >= sites.lineLength_m;
}

// The least factor from 1 on for which `does`, which stays true once it is; infinity if it is not at the most.
template <typename Does>
double leastFactor(double most, const Does& does) {
    if (does(1.0)) return 1;
    if (!does(most)) return infinite;
    double fails = 1;
    double holds = most;
    while (holds > fails * (1 + 1e-6)) {
        const double middle = std::sqrt(fails * holds);
        (does(middle) ? holds : fails) = middle;
    }
    return holds;
}

// The place nearest the middle of the widest spacing, as pads press, that stands free; -1: there is none.
int sharesTheWidest(const Sites& sites, const std::vector<int>& chosen) {
    const double stretch = stretchOf(sites, chosen);
    const Sites wide = widened(sites, std::isfinite(stretch) ? stretch * (1 - 1e-5) : mostStretch);
    const double broken = pressedFor_m(wide, allPressedBy(wide, chosen), Way::onward);
    double before = 0;
    double after = sites.lineLength_m;
    std::vector<double> taken;
    for (const Site& site : sites.kept) taken.push_back(site.station.at_m);
    for (const int place : chosen) taken.push_back(sites.free[place].station.at_m);
    for (const double at : taken) {
        if (at <= broken) before = std::max(before, at);
        if (at > broken) after = std::min(after, at);
    }
    int best = -1;
    double least = infinite;
    for (std::size_t i = 0; i < sites.free.size(); ++i) {
        const model::Station& station = sites.free[i].station;
        const bool free = std::ranges::none_of(chosen, [&](int place) {
            return std::abs(sites.free[place].station.at_m - station.at_m) < station.pad_m - hair_m;
        });
        const double off = std::abs(station.at_m - (before + after) / 2);
        if (!free || off >= least) continue;
        least = off;
        best = static_cast<int>(i);
    }
    return best;
}

// `holding` with the widest spacings shared until there are `count`, as long as they hold.
std::vector<int> filledUp(const Sites& sites, Trials& trials, const std::vector<int>& holding, std::size_t count) {
    std::vector<int> more = holding;
    while (more.size() < count) {
        const int place = sharesTheWidest(sites, more);
        if (place < 0) break;
        more.insert(std::upper_bound(more.begin(), more.end(), place), place);
    }
    return trials.whole(more).holds ? more : holding;
}

}  // namespace

Sites widened(const Sites& sites, double factor, std::optional<double> caul_m) {
    Sites wide = sites;
    for (Site& site : wide.free) site = widenedSite(site, factor, caul_m);
    for (Site& site : wide.kept) site = widenedSite(site, factor, caul_m);
    return wide;
}

double stretchOf(const Sites& sites, const std::vector<int>& chosen) {
    Sites own = sites;
    for (const int place : chosen) own.kept.push_back(sites.free[place]);
    own.free.clear();
    return leastFactor(mostStretch, [&](double factor) { return allPressed(widened(own, factor), {}); });
}

std::optional<StationSpread> spreadOut(const Sites& sites, Trials& trials, const std::vector<int>& holding,
                                       std::size_t count, const std::atomic<bool>& stop) {
    if (holding.size() > count) return std::nullopt;
    const double least = leastFactor(mostStretch, [&](double factor) {
        const auto needed = fewestToPress(widened(sites, factor), trials, stop);
        return needed && *needed <= count;
    });
    StationSpread best;
    int left = trialsToSpread;
    const auto tryAt = [&](double factor) {
        const std::vector<int> chosen = atMost(widened(sites, factor), trials, count, left, stop);
        if (!chosen.empty()) best = {chosen, stretchOf(sites, chosen)};
        return !chosen.empty();
    };
    if (std::isfinite(least) && tryAt(least)) return best;
    best.chosen = filledUp(sites, trials, holding, count);
    best.stretch = stretchOf(sites, best.chosen);
    double fails = least;
    while (best.stretch > fails * sameStretch && left > 0 && !stop) {
        const double reached = best.stretch;
        const double middle = std::isfinite(reached) ? std::sqrt(fails * reached) : std::min(2 * fails, mostStretch);
        if (!tryAt(middle)) fails = middle;
        if (!std::isfinite(reached) && fails >= mostStretch) break;
    }
    return best;
}

std::optional<double> caulFor(const Sites& sites, Trials& trials, std::size_t count, double now_m,
                              const std::atomic<bool>& stop) {
    const int now_mm = static_cast<int>(std::floor(std::clamp(now_m * 1000, 0.0, 60.0) + 1e-6));
    const auto under = [&](int thickness_mm) { return widened(sites, 1, std::max(now_m, thickness_mm * 1e-3)); };
    const auto leastFrom = [&](int fails, const auto& does) {
        int holds = thickestCaul_mm;
        if (fails >= holds || !does(holds)) return thickestCaul_mm + 1;
        while (holds > fails + 1) {
            const int middle = (fails + holds) / 2;
            (does(middle) ? holds : fails) = middle;
        }
        return holds;
    };
    const int pressing = leastFrom(now_mm, [&](int thickness_mm) {
        const auto needed = fewestToPress(under(thickness_mm), trials, stop);
        return needed && *needed <= count;
    });
    if (pressing > thickestCaul_mm) return std::nullopt;
    int left = trialsToCaul;
    const auto does = [&](int thickness_mm) { return !atMost(under(thickness_mm), trials, count, left, stop).empty(); };
    const int holds = does(pressing) ? pressing : leastFrom(pressing, does);
    if (holds > thickestCaul_mm || stop) return std::nullopt;
    return holds * 1e-3;
}

}  // namespace fayline::holding
