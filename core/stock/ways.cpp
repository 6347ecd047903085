#include "core/stock/ways.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace fayline::stock {

namespace {

constexpr int mostJoints = 18;
constexpr int mostPlaces = 400;  // of joints along a strip; where there were more the step is doubled
constexpr int none = 1'000'000;  // more than any number of forced joints

struct LaneShape {
    Um length = 0;
    std::vector<Span> bad;

    auto operator<=>(const LaneShape&) const = default;
};

// The lanes that boards give for one section, wood and pin, each once.
class Lanes {
public:
    Lanes(const Problem& problem, const Wanted& wanted) {
        std::set<LaneShape> shapes;
        const Section& section = problem.sections[wanted.section];
        for (int k = 0; k < static_cast<int>(problem.kinds.size()); ++k) {
            const Kind& kind = problem.kinds[k];
            if (kind.wood != wanted.wood || (wanted.pinned >= 0 && wanted.pinned != k)) continue;
            ofWood_ = true;
            for (Sawing sawing : problem.sawings) {
                const Um wide = acrossOf(section, sawing);
                if (throughOf(section, sawing) > kind.thickness) continue;
                for (Um at : beginnings(kind, 0, wide)) shapes.insert({kind.length, badOf(kind, {at, at + wide})});
            }
        }
        for (const LaneShape& shape : shapes) {
            longest_ = std::max(longest_, shape.length);
            Um free = 0;
            for (const Span& bad : shape.bad) {
                clear_ = std::max(clear_, bad.from - free);
                free = bad.to;
            }
            clear_ = std::max(clear_, shape.length - free);
            if (!shape.bad.empty()) withBad_.push_back(shape);
        }
    }

    bool ofWood() const { return ofWood_; }
    bool any() const { return longest_ > 0; }

    bool give(const Item& item) const {
        if (item.length <= clear_) return true;
        if (item.length > longest_ || item.mayBeBad.empty()) return false;
        return std::any_of(withBad_.begin(), withBad_.end(), [&](const LaneShape& shape) {
            const Starts starts = startsOf(item, shape.length, shape.bad);
            return !starts.plain.empty() || !starts.turned.empty();
        });
    }

private:
    std::vector<LaneShape> withBad_;
    Um longest_ = 0;
    Um clear_ = 0;  // the longest that a whole strip without faults may be
    bool ofWood_ = false;
};

// The ways of one strip on a grid of places for joints.
class WaysOf {
public:
    WaysOf(const Strip& strip, const Wanted& wanted, const Lanes& lanes, const Rules& rules)
        : strip_(strip), wanted_(wanted), lanes_(lanes), leastPart_(toUm(rules.leastPart_m)) {
        for (const Stretch& off : strip.takenOff) takenOff_.push_back({toUm(off.from_m), toUm(off.to_m)});
        if (strip.sacrificial) takenOff_ = {{0, wanted.length}};
        takenOff_ = merged(takenOff_);
        if (strip.tightest) tightest_ = {toUm(strip.tightest->from_m), toUm(strip.tightest->to_m)};
    }

    // The part from the joint before (its centre, 0: the strip's start) to the next (its length: the strip's end).
    Span part(Um from, Um to) const {
        return {from == 0 ? 0 : from - wanted_.scarf / 2,
                to == wanted_.length ? to : to - wanted_.scarf / 2 + wanted_.scarf};
    }

    Item item(Um from, Um to) const {
        const Span span = part(from, to);
        const Span whole{from == 0 ? 0 : span.from + wanted_.scarf,
                         to == wanted_.length ? to : span.to - wanted_.scarf};
        Item item{.section = wanted_.section, .wood = wanted_.wood, .pinned = wanted_.pinned, .length = span.length()};
        for (const Span& off : takenOff_)
            item.mayBeBad.push_back(
                {std::max(off.from, whole.from) - span.from, std::min(off.to, whole.to) - span.from});
        item.mayBeBad = merged(item.mayBeBad);
        return item;
    }

    bool comesWhole() const { return fits(0, wanted_.length); }

    // Lays the grid and works out what can be finished from each place of it.
    void onGrid(Um step) {
        places_ = {0};
        for (Um at = step; at < wanted_.length; at += step)
            if (at >= wanted_.scarf - wanted_.scarf / 2 && at + wanted_.scarf - wanted_.scarf / 2 <= wanted_.length)
                places_.push_back(at);
        const std::size_t n = places_.size();
        ends_.assign(n, false);
        follows_.assign(n, {});
        for (std::size_t i = 0; i < n; ++i) {
            ends_[i] = fits(places_[i], wanted_.length);
            for (std::size_t j = i + 1; j < n; ++j) {
                if (part(places_[i], places_[j]).length() > wanted_.length) break;
                if (fits(places_[i], places_[j])) follows_[i].push_back(static_cast<int>(j));
            }
        }
        rest_.assign(1, std::vector<int>(n, none));
        for (std::size_t i = 0; i < n; ++i)
            if (ends_[i]) rest_[0][i] = 0;
        for (int joints = 1; joints <= mostJoints; ++joints) {
            rest_.emplace_back(n, none);
            for (std::size_t i = 0; i < n; ++i)
                for (int j : follows_[i])
                    rest_[joints][i] = std::min(rest_[joints][i], rest_[joints - 1][j] + force(places_[j]));
        }
    }

    // Least forced joints of a way with so many joints; `none`: there is no way.
    int leastForced(int joints) const { return joints < static_cast<int>(rest_.size()) ? rest_[joints][0] : none; }

    // All ways with so many joints, no more of them forced; stops above `most`.
    std::vector<Way> all(int joints, int mostForced, std::size_t most) const {
        std::vector<std::vector<Um>> found;
        std::vector<Um> so;
        gather(0, joints, mostForced, most, so, found);
        std::vector<Way> ways;
        for (const std::vector<Um>& places : found) {
            Way way{.joints = places};
            for (Um at : places) way.forced += force(at);
            ways.push_back(std::move(way));
        }
        return ways;
    }

private:
    bool fits(Um from, Um to) const {
        const Span span = part(from, to);
        const bool whole = from == 0 && to == wanted_.length;
        const Um ends = (from == 0 ? 0 : wanted_.scarf) + (to == wanted_.length ? 0 : wanted_.scarf);
        if (!whole && (span.length() < leastPart_ || span.length() < ends)) return false;
        return lanes_.give(item(from, to));
    }

    int force(Um at) const {
        const Um from = at - wanted_.scarf / 2;
        if (!strip_.tightest || from >= tightest_.to || from + wanted_.scarf <= tightest_.from) return 0;
        return strip_.outer ? 2 : 1;
    }

    void gather(int from, int joints, int mayForce, std::size_t most, std::vector<Um>& so,
                std::vector<std::vector<Um>>& found) const {
        if (found.size() > most || rest_[joints][from] > mayForce) return;
        if (joints == 0) {
            found.push_back(so);
            return;
        }
        for (int next : follows_[from]) {
            so.push_back(places_[next]);
            gather(next, joints - 1, mayForce - force(places_[next]), most, so, found);
            so.pop_back();
        }
    }

    const Strip& strip_;
    const Wanted& wanted_;
    const Lanes& lanes_;
    Um leastPart_ = 0;
    std::vector<Span> takenOff_;
    Span tightest_;
    std::vector<Um> places_;  // 0, the strip's start, and the grid
    std::vector<bool> ends_;  // whether the strip's last part may begin there
    std::vector<std::vector<int>> follows_;
    std::vector<std::vector<int>> rest_;  // by joints still to come and place: least forced among them
};

// Which numbers of joints are used, and how many of them may be forced.
struct Asked {
    int fewest = -1;  // -1: there is no way
    int most = 0;
    int forced = 0;
    bool mustForce = false;
};

Asked askedOf(const WaysOf& ways, bool mayForce, int extra) {
    Asked asked;
    int least = none;
    for (int joints = 0; joints <= mostJoints; ++joints) {
        if (ways.leastForced(joints) >= least) continue;
        least = ways.leastForced(joints);
        asked.fewest = joints;
        if (least == 0) break;
    }
    if (asked.fewest < 0) return asked;
    asked.forced = least;
    asked.mustForce = least > 0;
    asked.most = std::min(asked.fewest + extra, mostJoints);
    if (!mayForce) return asked;
    for (int joints = asked.fewest; joints >= 0; --joints)
        if (ways.leastForced(joints) < none) asked.fewest = joints;
    asked.forced = none - 1;
    return asked;
}

// The ways on the finest grid on which they are not too many.
std::vector<Way> waysOn(WaysOf& ways, Um step, bool mayForce, int extra, bool& mustForce) {
    if (ways.comesWhole() && extra == 0) return {Way{}};
    ways.onGrid(step);
    const Asked asked = askedOf(ways, mayForce, extra);
    mustForce = asked.mustForce;
    std::vector<Way> chosen;
    if (asked.fewest < 0) return chosen;
    for (int joints = asked.fewest; joints <= asked.most; ++joints) {
        if (ways.leastForced(joints) > asked.forced) continue;
        std::vector<Way> these;
        for (Um coarse = step;; coarse *= 2) {
            if (coarse > step) ways.onGrid(coarse);
            if (ways.leastForced(joints) > asked.forced) break;
            these = ways.all(joints, asked.forced, mostWays);
            if (these.size() <= mostWays) break;
        }
        ways.onGrid(step);
        chosen.insert(chosen.end(), these.begin(), these.end());
    }
    return chosen;
}

TroubleKind whyNone(const Problem& problem, const Lanes& lanes, const Wanted& wanted) {
    if (problem.kinds.empty()) return TroubleKind::noBoards;
    if (wanted.pinned >= 0) return TroubleKind::pinNotMet;
    if (!lanes.ofWood()) return TroubleKind::wrongWood;
    return lanes.any() ? TroubleKind::lanesTooShort : TroubleKind::boardsTooSmall;
}

}  // namespace

void addWays(Problem& problem, const Job& job, bool mayForce) {
    using Alike = std::tuple<int, int, int, Um, bool, std::vector<Span>, Span, bool>;
    std::map<std::tuple<int, int, int>, Lanes> lanes;
    std::map<Alike, int> known;  // a strip alike
    std::map<Item, int> items;
    for (int i = 0; i < static_cast<int>(job.strips.size()); ++i) {
        const Strip& strip = job.strips[i];
        Wanted& wanted = problem.wanted[i];
        const Lanes& given =
            lanes.try_emplace({wanted.section, wanted.wood, wanted.pinned}, problem, wanted).first->second;
        std::vector<Span> off;
        for (const Stretch& one : strip.takenOff) off.push_back({toUm(one.from_m), toUm(one.to_m)});
        const Span tight =
            strip.tightest ? Span{toUm(strip.tightest->from_m), toUm(strip.tightest->to_m)} : Span{0, -1};
        const auto [alike, isNew] = known.try_emplace(
            {wanted.section, wanted.wood, wanted.pinned, wanted.length, strip.sacrificial, off, tight, strip.outer}, i);
        if (isNew) {
            WaysOf ways(strip, wanted, given, job.rules);
            Um step = toUm(job.rules.scarfStep_m);
            while (wanted.length / step > mostPlaces) step *= 2;
            wanted.ways = waysOn(ways, step, mayForce, job.rules.extraScarfs, wanted.mustForce);
            for (Way& way : wanted.ways) {
                Um from = 0;
                for (std::size_t part = 0; part <= way.joints.size(); ++part) {
                    const Um to = part < way.joints.size() ? way.joints[part] : wanted.length;
                    const auto [item, unseen] = items.try_emplace(ways.item(from, to), static_cast<int>(items.size()));
                    if (unseen) problem.items.push_back(item->first);
                    way.items.push_back(item->second);
                    from = to;
                }
            }
        } else {
            wanted.ways = problem.wanted[alike->second].ways;
            wanted.mustForce = problem.wanted[alike->second].mustForce;
        }
        if (wanted.ways.empty()) problem.troubles.push_back({whyNone(problem, given, wanted), i, -1});
    }
}

}  // namespace fayline::stock
