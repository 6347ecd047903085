#include "core/holding/propose/reach.hpp"

#include <algorithm>
#include <cmath>

#include "core/holding/kinds.hpp"
#include "core/math/count.hpp"

namespace fayline::holding {

namespace {

// How often a station is taken back where none can follow.
constexpr int mostRetreats = 12;
// Places by which the bounds from either end are widened, since what lies behind is felt a little.
constexpr int margin = 1;

double pressedFor(const StationSearch& search, const std::vector<int>& chosen, Way way) {
    std::vector<laminate::Run> pressed = search.waived;
    for (const Site& site : search.sites.kept) pressed.push_back(site.pressed);
    for (const int place : chosen) pressed.push_back(search.sites.free[place].pressed);
    return pressedFor_m(search.sites, pressed, way);
}

// Where the first place from which a pad presses what is not yet pressed lies in the direction of `way`.
double pressesFrom(const StationSearch& search, int place, Way way) {
    const laminate::Run& pressed = search.sites.free[place].pressed;
    return way == Way::onward ? pressed.from_m : search.sites.lineLength_m - pressed.to_m;
}

std::vector<int> with(const std::vector<int>& chosen, int place, Way way) {
    std::vector<int> more = chosen;
    more.insert(way == Way::onward ? more.end() : more.begin(), place);
    return more;
}

int furthestChosen(const std::vector<int>& chosen, Way way) {
    return way == Way::onward ? chosen.back() : chosen.front();
}

void waive(StationSearch& search, const Order& order, const std::vector<int>& chosen, int first) {
    const double from = pressedFor(search, chosen, order.way) - 2 * hair_m;
    const double to = pressesFrom(search, order.place(first), order.way) + hair_m;
    const double length = search.sites.lineLength_m;
    search.waived.push_back(order.way == Way::onward ? laminate::Run{from, to}
                                                     : laminate::Run{length - to, length - from});
}

// How a trial is read: over how many spans back, and up to which share of the limit.
struct Look {
    std::size_t spans = 2;
    std::size_t behind = stationsBehind;
    double most = 1 - lookAhead;
};

// A first station further on than `good` with which the stack before it lies down again, as a free end may in a hollow
// where it does not with a station nearer by; else `good`. Looks at a few places only.
int pastTheGap(StationSearch& search, const Order& order, int good, int last, const Look& look) {
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
int furthestHeld(StationSearch& search, const Order& order, const std::vector<int>& chosen, int first, int last,
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
bool retreat(const StationSearch& search, const Order& order, int places, std::vector<int>& chosen) {
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
bool mayEnd(const StationSearch& search, const std::vector<int>& chosen, Way way) {
    if (chosen.empty()) return false;
    const double last = search.at(furthestChosen(chosen, way));
    const double tail = way == Way::onward ? search.sites.lineLength_m - last : last;
    return tail <= std::max(4 * search.usualSpacing_m, 1.0) && search.trials.tailMayLie(chosen, way);
}

}  // namespace

bool stopped(StationSearch& search) {
    if (search.stop) search.finished = false;
    return search.stop || search.trials.ended();
}

bool allPressed(const StationSearch& search, const std::vector<int>& chosen) {
    return !search.withPressing || pressedFor(search, chosen, Way::onward) >= search.sites.lineLength_m;
}

bool holdsAtAll(const StationSearch& search, const std::vector<int>& chosen) {
    return !chosen.empty() ||
           std::ranges::any_of(search.sites.kept, [](const Site& site) { return pressesOnForm(site.station); });
}

bool meetsAll(StationSearch& search, const std::vector<int>& chosen) {
    return holdsAtAll(search, chosen) && allPressed(search, chosen) && search.trials.whole(chosen).holds;
}

int firstFree(const StationSearch& search, const Order& order, const std::vector<int>& chosen) {
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

int furthestPressing(const StationSearch& search, const Order& order, const std::vector<int>& chosen, int first) {
    int i = order.count - 1;
    if (!search.withPressing) return i;
    const double pressed = pressedFor(search, chosen, order.way);
    while (i >= first && pressesFrom(search, order.place(i), order.way) > pressed) --i;
    return i;
}

std::vector<int> fewestPressing(StationSearch& search, Way way) {
    const Order order{math::countOf(search.sites.free), way};
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

std::vector<int> reachOut(StationSearch& search, Way way) {
    const Order order{math::countOf(search.sites.free), way};
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

std::vector<int> furthestBounds(StationSearch& search, Way way, std::size_t count) {
    const Order order{math::countOf(search.sites.free), way};
    std::vector<int> bounds;
    std::vector<int> chosen;
    const std::vector<laminate::Run> waived = search.waived;
    search.usualSpacing_m = 0.2;
    while (bounds.size() < count && !stopped(search)) {
        const int first = firstFree(search, order, chosen);
        if (first >= order.count) {
            bounds.push_back(order.count - 1);
            continue;
        }
        if (!chosen.empty()) {
            const double last = search.at(furthestChosen(chosen, way));
            search.waived.push_back(way == Way::onward ? laminate::Run{0, last}
                                                       : laminate::Run{last, search.sites.lineLength_m});
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

}  // namespace fayline::holding
