#include "core/holding/propose_search.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <set>

#include "core/holding/kinds.hpp"

namespace fayline::holding {

namespace {

constexpr double hair_m = 1e-9;
// What the search for fewer may cost: so many elements solved, as if each trial looked at the whole. That of the sample
// stem may take 150 trials; of a line ten times as long 15. Ours.
constexpr double mostElements = 60000;
// How often a station is taken back where none can follow.
constexpr int mostRetreats = 12;
// Places by which the bounds from either end are widened, since what lies behind is felt a little.
constexpr int margin = 1;
// Stations behind the one looked at that a trial takes in: what lies further off is felt by a few hundredths at most.
constexpr std::size_t stationsBehind = 3;

struct Search {
    const Sites& sites;
    Trials& trials;
    bool withPressing;
    const std::atomic<bool>& stop;
    double usualSpacing_m = 0.2;     // what the last station reached
    std::vector<stack::Run> waived;  // what no place can press
    bool finished = true;

    double at(int place) const { return sites.free[static_cast<std::size_t>(place)].station.at_m; }
    double pad() const { return sites.free.front().station.pad_m; }
};

bool stopped(Search& search) {
    if (search.stop) search.finished = false;
    return search.stop;
}

double pressedFor(const Search& search, const std::vector<int>& chosen, Way way) {
    std::vector<stack::Run> pressed = search.waived;
    for (const Site& site : search.sites.kept) pressed.push_back(site.pressed);
    for (const int place : chosen) pressed.push_back(search.sites.free[static_cast<std::size_t>(place)].pressed);
    return pressedFor_m(search.sites, pressed, way);
}

bool allPressed(const Search& search, const std::vector<int>& chosen) {
    return !search.withPressing || pressedFor(search, chosen, Way::onward) >= search.sites.lineLength_m;
}

// Where the first place from which a pad presses what is not yet pressed lies in the direction of `way`.
double pressesFrom(const Search& search, int place, Way way) {
    const stack::Run& pressed = search.sites.free[static_cast<std::size_t>(place)].pressed;
    return way == Way::onward ? pressed.from_m : search.sites.lineLength_m - pressed.to_m;
}

bool holdsAtAll(const Search& search, const std::vector<int>& chosen) {
    return !chosen.empty() || std::any_of(search.sites.kept.begin(), search.sites.kept.end(),
                                          [](const Site& site) { return pressesOnForm(site.station); });
}

bool meetsAll(Search& search, const std::vector<int>& chosen) {
    return holdsAtAll(search, chosen) && allPressed(search, chosen) && search.trials.whole(chosen).holds;
}

// Places in the order of `way`: 0 is the first.
struct Order {
    int count = 0;
    Way way = Way::onward;
    int place(int i) const { return way == Way::onward ? i : count - 1 - i; }
};

std::vector<int> with(const std::vector<int>& chosen, int place, Way way) {
    std::vector<int> more = chosen;
    more.insert(way == Way::onward ? more.end() : more.begin(), place);
    return more;
}

int furthestChosen(const std::vector<int>& chosen, Way way) {
    return way == Way::onward ? chosen.back() : chosen.front();
}

// The first place in order that stands free of what is chosen.
int firstFree(const Search& search, const Order& order, const std::vector<int>& chosen) {
    if (chosen.empty()) return 0;
    const double last = search.at(furthestChosen(chosen, order.way));
    int i = 0;
    while (i < order.count) {
        const double ahead =
            order.way == Way::onward ? search.at(order.place(i)) - last : last - search.at(order.place(i));
        if (ahead > hair_m && ahead >= search.pad() - hair_m) break;
        ++i;
    }
    return i;
}

// The furthest in order from which a pad still reaches what is pressed; less than `first`: none.
int furthestPressing(const Search& search, const Order& order, const std::vector<int>& chosen, int first) {
    int i = order.count - 1;
    if (!search.withPressing) return i;
    const double pressed = pressedFor(search, chosen, order.way);
    while (i >= first && pressesFrom(search, order.place(i), order.way) > pressed) --i;
    return i;
}

void waive(Search& search, const Order& order, const std::vector<int>& chosen, int first) {
    const double from = pressedFor(search, chosen, order.way) - 2 * hair_m;
    const double to = pressesFrom(search, order.place(first), order.way) + hair_m;
    const double length = search.sites.lineLength_m;
    search.waived.push_back(order.way == Way::onward ? stack::Run{from, to} : stack::Run{length - to, length - from});
}

// How a trial is read: over how many spans back, and up to which share of the limit.
struct Look {
    std::size_t spans = 2;
    std::size_t behind = stationsBehind;
    double most = 1 - lookAhead;
};

// A first station further on than `good` with which the stack before it lies down again, as a free end may in a hollow
// where it does not with a station nearer by; else `good`. Looks at a few places only.
int pastTheGap(Search& search, const Order& order, int good, int last, const Look& look) {
    constexpr int most = 8;
    const int step = std::max(1, (last - good) / most);
    const Way toward = order.way == Way::onward ? Way::back : Way::onward;
    for (int i = last; i > good && !stopped(search); i -= step) {
        const std::vector<int> alone{order.place(i)};
        if (!search.trials.tailMayLie(alone, toward)) continue;
        if (search.trials.soFar(alone, order.way, look.spans, look.behind).worst <= look.most) return i;
    }
    return good;
}

// The furthest place in order, from `first` to `last`, up to which the stack lies down; less than `first` if there is
// none.
int furthestHeld(Search& search, const Order& order, const std::vector<int>& chosen, int first, int last,
                 const Look& look) {
    const double begin = chosen.empty() ? (order.way == Way::onward ? 0 : search.sites.lineLength_m)
                                        : search.at(furthestChosen(chosen, order.way));
    const double sign = order.way == Way::onward ? 1 : -1;
    const auto distance = [&](int i) { return std::max(1e-3, sign * (search.at(order.place(i)) - begin)); };
    const auto nearestTo = [&](double d, int least, int most) {
        int i = least;
        while (i < most && distance(i + 1) <= d + hair_m) ++i;
        return i;
    };
    int good = first - 1;
    int bad = last + 1;
    int probe = distance(last) <= 1.5 * search.usualSpacing_m ? last : nearestTo(search.usualSpacing_m, first, last);
    for (int turn = 0; good + 1 < bad && !stopped(search); ++turn) {
        const Tried tried =
            search.trials.soFar(with(chosen, order.place(probe), order.way), order.way, look.spans, look.behind);
        (tried.worst <= look.most ? good : bad) = probe;
        if (good + 1 >= bad) break;
        // Gaps grow with the fourth power of the spacing, unless they are those of the span before; so it goes on at
        // least half as far again, and once it is between two places every other time to the middle.
        double share = std::pow(std::clamp(tried.worst, 0.06, 1e3), -0.25);
        if (bad > last) share = std::max(share, 1.5);
        const int guess = nearestTo(distance(probe) * share, good + 1, bad - 1);
        const bool bracketed = good >= first && bad <= last;
        probe = bracketed && turn % 2 == 1 ? (good + bad) / 2 : guess;
    }
    if (chosen.empty()) good = std::max(good, pastTheGap(search, order, std::max(good, first - 1), last, look));
    if (good >= first) search.usualSpacing_m = distance(good);
    return good;
}

// The last of `chosen` so many places back, toward where `way` begins; one that cannot go back is left out, and the one
// before it goes back. False: none can.
bool retreat(const Search& search, const Order& order, int places, std::vector<int>& chosen) {
    const bool onward = order.way == Way::onward;
    while (!chosen.empty()) {
        const int i = order.place(furthestChosen(chosen, order.way));
        chosen.erase(onward ? chosen.end() - 1 : chosen.begin());
        const int first = firstFree(search, order, chosen);
        if (i <= first) continue;
        chosen = with(chosen, order.place(std::max(first, i - places)), order.way);
        return true;
    }
    return false;
}

// Whether the rest of the line may do without more stations: not where the tail would stand off far, nor where it is
// many times as long as stations have been apart.
bool mayEnd(const Search& search, const std::vector<int>& chosen, Way way) {
    if (chosen.empty()) return false;
    const double last = search.at(furthestChosen(chosen, way));
    const double tail = way == Way::onward ? search.sites.lineLength_m - last : last;
    return tail <= std::max(4 * search.usualSpacing_m, 1.0) && search.trials.tailMayLie(chosen, way);
}

// From the line's beginning in this direction: each station as far as it may; where none can follow, those before it
// are taken back.
std::vector<int> reachOut(Search& search, Way way) {
    const Order order{static_cast<int>(search.sites.free.size()), way};
    std::vector<int> chosen;
    std::vector<int> furthest;  // the longest way come
    search.usualSpacing_m = 0.2;
    int retreats = mostRetreats;
    while (!stopped(search)) {
        if (mayEnd(search, chosen, way) && meetsAll(search, chosen)) return chosen;
        const int first = firstFree(search, order, chosen);
        int next = first - 1;
        if (first < order.count) {
            int last = furthestPressing(search, order, chosen, first);
            if (last < first) {
                waive(search, order, chosen, first);
                last = first;
            }
            next = furthestHeld(search, order, chosen, first, last, {});
        }
        if (next >= first) {
            chosen = with(chosen, order.place(next), way);
            continue;
        }
        if (furthest.empty() || chosen.size() > furthest.size()) furthest = chosen;
        // Each three times twice as far.
        const int back = 1 << ((mostRetreats - retreats) / 3);
        if (retreats-- > 0 && retreat(search, order, back, chosen)) continue;
        // Not to be held from here on: as close as they go.
        if (retreats <= 0) chosen = furthest;
        const int close = firstFree(search, order, chosen);
        if (close >= order.count) return chosen;
        furthest = chosen = with(chosen, order.place(close), way);
    }
    return chosen;
}

// For each of `count` stations counted from where `way` begins the furthest place that it may have, in order: as in
// reachOut, but with the stack held before the last as well as it can be, and read generously.
std::vector<int> furthestBounds(Search& search, Way way, std::size_t count) {
    const Order order{static_cast<int>(search.sites.free.size()), way};
    std::vector<int> bounds;
    std::vector<int> chosen;
    const std::vector<stack::Run> waived = search.waived;
    search.usualSpacing_m = 0.2;
    while (bounds.size() < count && !stopped(search)) {
        const int first = firstFree(search, order, chosen);
        if (first >= order.count) {
            bounds.push_back(order.count - 1);
            continue;
        }
        if (!chosen.empty()) {
            const double last = search.at(furthestChosen(chosen, way));
            search.waived.push_back(way == Way::onward ? stack::Run{0, last}
                                                       : stack::Run{last, search.sites.lineLength_m});
        }
        const int last = std::max(first, furthestPressing(search, order, chosen, first));
        const int held = furthestHeld(search, order, chosen, first, last, {1, 1, 1 + lookAhead});
        const int furthest = std::min(std::max(held, first) + margin, last);
        bounds.push_back(furthest);
        chosen = with(chosen, order.place(furthest), way);
    }
    search.waived = waived;
    return bounds;
}

// Whether `count` stations do, the i-th of them not before least[i] and not after most[i].
struct Within {
    std::vector<int> least;
    std::vector<int> most;
    std::set<std::array<int, 3>> ruledOut;  // how many, and the last two of them, of those that lead nowhere
    int trials = 0;                         // left
    bool ran = true;                        // out of them: false
};

bool placeWithin(Search& search, Within& within, std::vector<int>& chosen) {
    const std::size_t i = chosen.size();
    if (i == within.least.size()) {
        --within.trials;
        return meetsAll(search, chosen);
    }
    const Order order{static_cast<int>(search.sites.free.size()), Way::onward};
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
std::vector<int> thinnedOut(Search& search) {
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

// What presses everywhere with the fewest pads, no matter the gap: no number that meets both is smaller.
std::vector<int> fewestPressing(Search& search, Way way) {
    const Order order{static_cast<int>(search.sites.free.size()), way};
    std::vector<int> chosen;
    while (!allPressed(search, chosen)) {
        const int first = firstFree(search, order, chosen);
        if (first >= order.count) break;
        int last = furthestPressing(search, order, chosen, first);
        if (last < first) {
            waive(search, order, chosen, first);
            last = first;
        }
        chosen = with(chosen, order.place(last), way);
    }
    return chosen;
}

// Of the fewest that press everywhere, some that hold too; nothing if these do not.
std::vector<int> pressingAndHolding(Search& search) {
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
void take(Search& search, const std::vector<int>& chosen, Fewest& best) {
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
void tryFewer(Search& search, Fewest& best) {
    const int places = static_cast<int>(search.sites.free.size());
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
    Search search{sites, trials, withPressing, stop};
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
    Search search{sites, trials, true, stop};
    const std::vector<int> chosen = fewestPressing(search, Way::onward);
    if (!search.waived.empty() || !allPressed(search, chosen)) return std::nullopt;
    return chosen.size();
}

std::vector<int> atMost(const Sites& sites, Trials& trials, std::size_t count, int& left,
                        const std::atomic<bool>& stop) {
    Search search{sites, trials, true, stop};
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
    within.most.resize(count, static_cast<int>(sites.free.size()) - 1);
    within.trials = left;
    std::vector<int> chosen;
    const bool found = placeWithin(search, within, chosen);
    left = within.trials;
    return found ? chosen : std::vector<int>{};
}

}  // namespace fayline::holding
