#include "core/holding/propose/trials.hpp"

#include <algorithm>
#include <cmath>

#include "core/contact/gaps.hpp"
#include "core/holding/kinds.hpp"

namespace fayline::holding {

namespace {

// Elements of trials that only look ahead.
constexpr double longStep_m = 2.5 * elementStep_m;

// Beginning from the last state that settled, which the new one replaces if it settles.
Contact solveFrom(Contact& last, const Pressed& pressed) {
    Contact found = solve(pressed.problem, last.nodes_m.empty() ? nullptr : &last);
    if (found.outcome == Outcome::settled) last = found;
    return found;
}

// So many packed stations hold down twice the greatest moment of the stack.
double reachOfPacked(const Problem& problem, const std::vector<Site>& free) {
    double moment = 0;
    for (std::size_t i = 0; i < problem.rod.stiffness_N_m2.size(); ++i) {
        moment = std::max(moment, problem.rod.stiffness_N_m2[i] *
                                      std::abs(problem.rod.curvature_per_m[i] - problem.rod.natural_per_m[i]));
    }
    const model::Station& like = free.front().station;
    const double apart = (free.back().station.at_m - like.at_m) / static_cast<double>(free.size());
    const double pitch = std::max({like.pad_m, apart, 0.01});
    const double lever = like.most_N * pitch;
    const double count = lever > 0 ? std::sqrt(8 * moment / lever) : infinite;
    return std::clamp(std::ceil(count), 3.0, 12.0) * pitch;
}

}  // namespace

Trials::Trials(const Ready& ready, const StackOnForm& work, const Sites& sites)
    : ready_(ready), work_(work), sites_(sites) {
    startTrim_s_m_ = alongMiddle(ready.middle, 0);
    endTrim_s_m_ = alongMiddle(ready.middle, work.line.length());
    const Pressed bare = pressAll(ready, work, {});
    if (!sites.free.empty()) beyond_m_ = reachOfPacked(bare.problem, sites.free);
}

double Trials::limitAt(double s_m) const {
    const double limit = work_.piece.holding.gapLimit_m + gapCounts_m;
    if (easedAt_s_m_.empty()) return limit;
    const auto after = std::upper_bound(easedAt_s_m_.begin(), easedAt_s_m_.end(), s_m);
    if (after == easedAt_s_m_.begin() || after == easedAt_s_m_.end()) return limit;
    const std::size_t i = static_cast<std::size_t>(after - easedAt_s_m_.begin());
    return std::max({limit, eased_m_[i - 1], eased_m_[i]});
}

std::vector<model::Station> Trials::stationsOf(const std::vector<int>& chosen) const {
    std::vector<model::Station> stations;
    for (const Site& site : sites_.kept) stations.push_back(site.station);
    for (const int place : chosen) stations.push_back(sites_.free[place].station);
    return stations;
}

void Trials::packBeyond(double from_m, double to_m, std::vector<model::Station>& stations) const {
    const bool onward = to_m > from_m;
    double last = from_m;
    const auto pack = [&](const Site& site) {
        const double at = site.station.at_m;
        const bool within = onward ? at > from_m && at <= to_m : at < from_m && at >= to_m;
        if (!within || std::abs(at - last) < site.station.pad_m - hair_m) return;
        stations.push_back(site.station);
        last = at;
    };
    if (onward) {
        std::ranges::for_each(sites_.free, pack);
    } else {
        std::for_each(sites_.free.rbegin(), sites_.free.rend(), pack);
    }
}

Tried Trials::judge(const Contact& contact, double from_s_m, double to_s_m) const {
    const double from = std::max(from_s_m, startTrim_s_m_) - hair_m;
    const double to = std::min(to_s_m, endTrim_s_m_) + hair_m;
    if (contact.outcome != Outcome::settled) return {false, infinite, infinite};
    if (to < from) return {true, 0, 0};
    const GapAt greatest = greatestGap(contact, from, to);
    Tried tried;
    tried.largest_m = std::max(0.0, greatest.gap_m);
    tried.worst = tried.largest_m / limitAt(greatest.s_m);
    // Where limits are eased the greatest gap need not be the worst.
    for (std::size_t i = 0; i < contact.nodes_m.size() && !easedAt_s_m_.empty(); ++i) {
        const double s = contact.nodes_m[i];
        const double share = s < from || s > to ? 0 : contact.gap_m[i] / limitAt(s);
        tried.worst = std::max(tried.worst, share);
    }
    tried.holds = tried.worst <= 1;
    return tried;
}

Tried Trials::whole(const std::vector<int>& chosen) {
    const std::vector<model::Station> stations = stationsOf(chosen);
    const double from = alongMiddle(ready_.middle, sites_.strips.from_m);
    const double to = alongMiddle(ready_.middle, sites_.strips.to_m);
    const Contact quick = solveFrom(whole_, press(ready_, work_, stations, from, to, {}, longStep_m));
    const Tried first = judge(quick, startTrim_s_m_, endTrim_s_m_);
    if (first.worst > 1 + lookAhead) return first;
    return judge(solveFrom(whole_, pressAll(ready_, work_, stations)), startTrim_s_m_, endTrim_s_m_);
}

Tried Trials::soFar(const std::vector<int>& chosen, Way way, std::size_t spans, std::size_t behind) {
    const std::size_t count = chosen.size();
    // The k-th of the chosen, counted back from the furthest in this direction.
    const auto at = [&](std::size_t back) {
        const int place = way == Way::onward ? chosen[count - 1 - back] : chosen[back];
        return sites_.free[place].station.at_m;
    };
    const double sign = way == Way::onward ? 1 : -1;
    const double begin = way == Way::onward ? sites_.strips.from_m : sites_.strips.to_m;
    const double end = way == Way::onward ? sites_.strips.to_m : sites_.strips.from_m;
    const auto nearer = [&](double a, double b) { return sign * a < sign * b ? a : b; };
    const auto further = [&](double a, double b) { return sign * a < sign * b ? b : a; };

    const double furthest = at(0);
    const bool cut = count > behind;
    const double last = cut ? at(behind) : begin;
    const double from = cut ? further(begin, last - sign * beyond_m_) : begin;
    const double to = nearer(end, furthest + sign * beyond_m_);
    std::vector<model::Station> stations;
    for (const Site& site : sites_.kept) stations.push_back(site.station);
    for (std::size_t i = 0; i < (cut ? behind + 1 : count); ++i) {
        const int place = way == Way::onward ? chosen[count - 1 - i] : chosen[i];
        stations.push_back(sites_.free[place].station);
    }
    if (cut) packBeyond(last, from, stations);
    packBeyond(furthest, to, stations);

    const double a = alongMiddle(ready_.middle, std::min(from, to));
    const double b = alongMiddle(ready_.middle, std::max(from, to));
    const Contact found = solveFrom(soFar_, press(ready_, work_, stations, a, b, {}, longStep_m));
    const double looksFrom = count > spans ? at(spans) : begin;
    const double s1 = alongMiddle(ready_.middle, looksFrom);
    const double s2 = alongMiddle(ready_.middle, furthest);
    return judge(found, std::min(s1, s2), std::max(s1, s2));
}

bool Trials::tailMayLie(const std::vector<int>& chosen, Way way) const {
    std::vector<double> held;
    for (const Site& site : sites_.kept) {
        if (closesGap(site.station)) held.push_back(site.station.at_m);
    }
    for (const int place : chosen) held.push_back(sites_.free[place].station.at_m);
    if (held.empty()) return true;
    const bool onward = way == Way::onward;
    const double last = onward ? *std::ranges::max_element(held) : *std::ranges::min_element(held);
    const double from = alongMiddle(ready_.middle, last);
    const double trim = onward ? endTrim_s_m_ : startTrim_s_m_;
    const double length = onward ? trim - from : from - trim;
    if (length <= 0) return true;
    constexpr int steps = 20;
    double stands = 0;
    for (int i = 0; i < steps; ++i) {
        const double share = (i + 0.5) / steps;
        const double curvature = middleAt(ready_.middle, from + share * (trim - from)).curvature_per_m;
        stands += (1 - share) * length * curvature * length / steps;
    }
    return stands <= 20 * limitAt(trim) + 0.005;
}

Tried Trials::packed() {
    const Pressed pressed = pressAll(ready_, work_, stationsOf(allThatFit(sites_)));
    packed_ = solve(pressed.problem);
    packedHolds_ = pressed.problem.holds;
    return judge(packed_, startTrim_s_m_, endTrim_s_m_);
}

void Trials::easeWhereNeeded() {
    if (packed_.nodes_m.empty()) packed();
    const double limit = work_.piece.holding.gapLimit_m + gapCounts_m;
    for (std::size_t i = 0; i < packed_.nodes_m.size(); ++i) {
        const double s = packed_.nodes_m[i];
        easedAt_s_m_.push_back(s);
        eased_m_.push_back(std::max(limit, 1.05 * packed_.gap_m[i]));
        if (s < startTrim_s_m_ || s > endTrim_s_m_ || packed_.gap_m[i] <= limit) continue;
        for (std::size_t h = 0; h < packedHolds_.size(); ++h) {
            const bool near = std::abs(packedHolds_[h].at_m - s) <= beyond_m_;
            easedByStrength_ = easedByStrength_ || (near && packed_.holds[h].state == HoldState::full);
        }
    }
}

}  // namespace fayline::holding
