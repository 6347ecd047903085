#include "core/holding/propose/search.hpp"

#include <algorithm>
#include <array>
#include <set>

#include "core/holding/propose/reach.hpp"
#include "core/math/count.hpp"

namespace fayline::holding {

namespace {

// What the search for fewer may cost: so many elements solved, as if each trial looked at the whole. That of the sample
// stem may take 150 trials; of a line ten times as long 15. Ours.
constexpr double mostElements = 60000;

// Whether `count` stations do, the i-th of them not before least[i] and not after most[i].
struct Within {
    std::vector<int> least;
    std::vector<int> most;
    std::set<std::array<int, 3>> ruledOut;  // how many, and the last two of them, of those that lead nowhere
    int trials = 0;                         // left
    bool ran = true;                        // out of them: false
};

bool placeWithin(StationSearch& search, Within& within, std::vector<int>& chosen) {
    const std::size_t i = chosen.size();
    if (i == within.least.size()) {
        --within.trials;
        return meetsAll(search, chosen);
    }
    const Order order{math::countOf(search.sites.free), Way::onward};
    const int first = std::max(within.least[i], firstFree(search, order, chosen));
    const int last = std::min(within.most[i], furthestPressing(search, order, chosen, first));
    const int before = chosen.empty() ? -1 : chosen.back();
    for (int place = last; place >= first; --place) {
        if (stopped(search)) return false;
        if (within.trials <= 0) {
            within.ran = false;
            return false;
        }
        if (within.ruledOut.count({static_cast<int>(i), before, place})) continue;
        chosen.push_back(place);
        bool may = true;
        if (chosen.size() < within.least.size()) {
            --within.trials;
            may = search.trials.soFar(chosen, Way::onward, 2, stationsBehind).worst <= 1 + lookAhead;
        }
        if (may && placeWithin(search, within, chosen)) return true;
        chosen.pop_back();
        if (within.ran) within.ruledOut.insert({static_cast<int>(i), before, place});
    }
    return false;
}

// From all that there is room for, those left out that can be, from the start on as many at once as will do; nothing
// if not even all of them do.
std::vector<int> thinnedOut(StationSearch& search) {
    std::vector<int> chosen = allThatFit(search.sites);
    if (!meetsAll(search, chosen)) return {};
    for (std::size_t from = 0; from < chosen.size() && !stopped(search); ++from) {
        const std::size_t behind = chosen.size() - from;
        std::size_t good = 0;
        std::size_t bad = behind + 1;
        std::size_t tries = 1;
        while (good + 1 < bad && !stopped(search)) {
            std::vector<int> fewer = chosen;
            const auto first = fewer.begin() + static_cast<std::ptrdiff_t>(from);
            fewer.erase(first, first + static_cast<std::ptrdiff_t>(tries));
            (meetsAll(search, fewer) ? good : bad) = tries;
            tries = bad > behind ? std::min(2 * good, behind) : (good + bad) / 2;
        }
        const auto first = chosen.begin() + static_cast<std::ptrdiff_t>(from);
        chosen.erase(first, first + static_cast<std::ptrdiff_t>(good));
    }
    return chosen;
}

// Half way between the two, so that no station stands at its limit.
std::vector<int> between(const std::vector<int>& a, const std::vector<int>& b) {
    std::vector<int> middle;
    for (std::size_t i = 0; i < a.size(); ++i) middle.push_back((a[i] + b[i]) / 2);
    return middle;
}

// Of the fewest that press everywhere, some that hold too; nothing if these do not.
std::vector<int> pressingAndHolding(StationSearch& search) {
    const std::vector<int> onward = fewestPressing(search, Way::onward);
    const std::vector<int> back = fewestPressing(search, Way::back);
    if (onward.size() == back.size()) {
        const std::vector<int> middle = between(onward, back);
        if (meetsAll(search, middle)) return middle;
    }
    if (meetsAll(search, onward)) return onward;
    if (meetsAll(search, back)) return back;
    return {};
}

// Of `best` and `chosen` the one that does; of two that do that with fewer stations, or as few and the smaller gap.
void take(StationSearch& search, const std::vector<int>& chosen, Fewest& best) {
    if (!holdsAtAll(search, chosen) || !allPressed(search, chosen)) {
        if (best.chosen.empty()) best.chosen = chosen;
        return;
    }
    const Tried tried = search.trials.whole(chosen);
    const bool better = tried.holds == best.holds
                            ? chosen.size() < best.chosen.size() ||
                                  (chosen.size() == best.chosen.size() && tried.largest_m < best.largest_m)
                            : tried.holds;
    if (!best.chosen.empty() && !better) return;
    best.chosen = chosen;
    best.holds = tried.holds;
    best.largest_m = tried.largest_m;
}

// Fewer than `best`, as long as the bounds from either end leave room.
void tryFewer(StationSearch& search, Fewest& best) {
    const int places = math::countOf(search.sites.free);
    const std::size_t most = best.chosen.size() - 1;
    const double elements = (search.sites.strips.to_m - search.sites.strips.from_m) / elementStep_m;
    int left = static_cast<int>(std::min(40.0 * static_cast<double>(best.chosen.size()), mostElements / elements));
    if (left <= static_cast<int>(most)) {
        best.searched = false;
        return;
    }
    const std::vector<int> onward = furthestBounds(search, Way::onward, most);
    std::vector<int> back = furthestBounds(search, Way::back, 1);
    if (stopped(search) || places - 1 - back.front() > onward.back()) return;
    back = furthestBounds(search, Way::back, most);
    if (stopped(search)) return;
    for (std::size_t count = most; count > 0 && !stopped(search); --count) {
        Within within;
        for (std::size_t i = 0; i < count; ++i) {
            within.least.push_back(places - 1 - back[count - 1 - i]);
            within.most.push_back(onward[i]);
            if (within.least[i] > within.most[i]) return;
        }
        within.trials = left;
        std::vector<int> chosen;
        if (!placeWithin(search, within, chosen)) {
            best.searched = within.ran;
            return;
        }
        left = within.trials;
        best.chosen = chosen;
        best.largest_m = search.trials.whole(chosen).largest_m;
    }
}

}  // namespace

Fewest fewest(const Sites& sites, Trials& trials, bool withPressing, const std::atomic<bool>& stop) {
    StationSearch search{sites, trials, withPressing, stop};
    Fewest best;
    const auto finish = [&]() {
        search.waived.clear();
        best.pressed = allPressed(search, best.chosen);
        best.finished = search.finished;
        return best;
    };
    if (meetsAll(search, {}) || sites.free.empty()) {
        best.holds = holdsAtAll(search, {}) && trials.whole({}).holds;
        return finish();
    }
    if (withPressing) {
        best.chosen = pressingAndHolding(search);
        best.holds = !best.chosen.empty();
        if (best.holds || stopped(search)) return finish();
    }
    search.waived.clear();
    const std::vector<int> onward = reachOut(search, Way::onward);
    const std::vector<int> back = reachOut(search, Way::back);
    take(search, onward, best);
    take(search, back, best);
    if (!best.holds) take(search, thinnedOut(search), best);
    if (best.holds && best.chosen.size() > 1) tryFewer(search, best);
    const bool asFew = onward.size() == best.chosen.size() && back.size() == best.chosen.size();
    if (best.holds && asFew) take(search, between(onward, back), best);
    return finish();
}

std::optional<std::size_t> fewestToPress(const Sites& sites, Trials& trials, const std::atomic<bool>& stop) {
    StationSearch search{sites, trials, true, stop};
    const std::vector<int> chosen = fewestPressing(search, Way::onward);
    if (!search.waived.empty() || !allPressed(search, chosen)) return std::nullopt;
    return chosen.size();
}

std::vector<int> atMost(const Sites& sites, Trials& trials, std::size_t count, int& left,
                        const std::atomic<bool>& stop) {
    StationSearch search{sites, trials, true, stop};
    const std::vector<int> onward = fewestPressing(search, Way::onward);
    const std::vector<int> back = fewestPressing(search, Way::back);
    const bool can = search.waived.empty() && allPressed(search, onward) && allPressed(search, back);
    if (!can || onward.size() > count || back.size() > count) return {};
    const std::vector<int> covering = pressingAndHolding(search);
    if (!covering.empty()) return covering;
    Within within;
    within.least.assign(count - back.size(), 0);
    within.least.insert(within.least.end(), back.begin(), back.end());
    within.most = onward;
    within.most.resize(count, math::countOf(sites.free) - 1);
    within.trials = left;
    std::vector<int> chosen;
    const bool found = placeWithin(search, within, chosen);
    left = within.trials;
    return found ? chosen : std::vector<int>{};
}

}  // namespace fayline::holding
