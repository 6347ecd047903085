#include "core/stock/shapes.hpp"

#include <algorithm>
#include <set>

namespace fayline::stock {

namespace {

constexpr double nothing = 1e-12;  // of worth

// Looks at a walk over ways to fill something; more than this and there are too many.
constexpr int mostVisits = 100'000;
constexpr int mostLayoutVisits = 10'000;

struct Label {
    Um used = 0;
    double worth = 0;
    int item = -1;
    int before = -1;
};

std::vector<int> itemsOf(const std::vector<Label>& labels, int last) {
    std::vector<int> items;
    for (int at = last; at >= 0 && labels[at].item >= 0; at = labels[at].before) items.push_back(labels[at].item);
    return items;
}

// The better of two fronts, each by rising use and rising worth.
std::vector<int> together(const std::vector<Label>& labels, const std::vector<int>& one,
                          const std::vector<int>& other) {
    std::vector<int> front;
    std::size_t i = 0;
    std::size_t j = 0;
    while (i < one.size() || j < other.size()) {
        const bool first = j == other.size() || (i < one.size() && labels[one[i]].used <= labels[other[j]].used);
        const int next = first ? one[i++] : other[j++];
        if (front.empty() || labels[next].worth > labels[front.back()].worth + nothing) front.push_back(next);
    }
    return front;
}

}  // namespace

Shapes::Shapes(const Problem& problem, const std::vector<int>& shorter, const std::vector<int>& atMost)
    : problem_(problem), shorter_(shorter), atMost_(atMost), longer_(problem.items.size()) {
    for (int item = 0; item < static_cast<int>(shorter.size()); ++item)
        if (shorter[item] >= 0) longer_[shorter[item]].push_back(item);
}

std::optional<int> Shapes::find(int kind, int section, Span across) {
    const Kind& board = problem_.kinds[kind];
    Shape shape{section, board.wood, board.pinnedTo ? kind : -1, board.length, badOf(board, across)};
    const auto [known, isNew] = known_.try_emplace(shape, -1);
    if (!isNew) return known->second < 0 ? std::nullopt : std::optional(known->second);
    std::vector<Fit> fits;
    for (int i = 0; i < static_cast<int>(problem_.items.size()); ++i) {
        const Item& item = problem_.items[i];
        if (atMost_[i] <= 0 || item.section != section || !mayComeFrom(item, problem_, kind)) continue;
        Starts starts = startsOf(item, shape.length, shape.bad);
        if (starts.plain.empty() && starts.turned.empty()) continue;
        fits.push_back({i, item.length, atMost_[i], shape.bad.empty() ? Starts{} : std::move(starts)});
    }
    if (fits.empty()) return std::nullopt;
    known->second = count();
    shapes_.push_back(std::move(shape));
    fits_.push_back(std::move(fits));
    return known->second;
}

Pattern Shapes::best(int shape, const std::vector<double>& worth) const {
    return shapes_[shape].bad.empty() ? bestWithoutBad(shape, worth) : bestWithBad(shape, worth);
}

// Not where a shorter one that takes its place is worth as much.
bool Shapes::isOfUse(int item, const std::vector<double>& worth) const {
    return worth[item] > nothing && (shorter_[item] < 0 || worth[item] > worth[shorter_[item]] + nothing);
}

Pattern Shapes::bestWithoutBad(int shape, const std::vector<double>& worth) const {
    const Um room = shapes_[shape].length + problem_.kerf;
    std::vector<const Fit*> order;
    for (const Fit& fit : fits_[shape])
        if (isOfUse(fit.item, worth)) order.push_back(&fit);
    std::sort(order.begin(), order.end(), [&](const Fit* a, const Fit* b) {
        const double first = worth[a->item] * static_cast<double>(b->length + problem_.kerf);
        const double second = worth[b->item] * static_cast<double>(a->length + problem_.kerf);
        return first != second ? first > second : a->item < b->item;
    });
    std::vector<Label> labels{{}};
    std::vector<int> front{0};
    for (const Fit* fit : order) {
        const Um size = fit->length + problem_.kerf;
        for (Um copy = 0; copy < std::min<Um>(fit->atMost, room / size); ++copy) {
            std::vector<int> added;
            for (int at : front) {
                if (labels[at].used + size > room) break;
                if (copy > 0 && labels[at].item != fit->item) continue;  // one more of those with as many already
                labels.push_back({labels[at].used + size, labels[at].worth + worth[fit->item], fit->item, at});
                added.push_back(static_cast<int>(labels.size()) - 1);
            }
            if (added.empty()) break;
            front = together(labels, front, added);
        }
    }
    Pattern pattern{shape, itemsOf(labels, front.back()), labels[front.back()].worth};
    std::sort(pattern.items.begin(), pattern.items.end());
    return pattern;
}

// From each place that is reached on to the next; what is reached sooner and worth more is all that matters.
Pattern Shapes::bestWithBad(int shape, const std::vector<double>& worth) const {
    std::vector<Label> labels{{}};
    std::map<Um, int> reached{{0, 0}};
    double most = -1;
    int best = 0;
    for (auto at = reached.begin(); at != reached.end(); ++at) {
        const Label from = labels[at->second];
        if (from.worth <= most + nothing && at->first > 0) continue;
        most = from.worth;
        best = at->second;
        for (const Fit& fit : fits_[shape]) {
            if (!isOfUse(fit.item, worth)) continue;
            const Start start = firstStart(fit.starts, from.used);
            if (start.at < 0) continue;
            const Label to{start.at + fit.length + problem_.kerf, from.worth + worth[fit.item], fit.item, at->second};
            const auto [there, isNew] = reached.try_emplace(to.used, static_cast<int>(labels.size()));
            if (!isNew && labels[there->second].worth >= to.worth) continue;
            there->second = static_cast<int>(labels.size());
            labels.push_back(to);
        }
    }
    Pattern pattern{shape, itemsOf(labels, best), labels[best].worth};
    std::reverse(pattern.items.begin(), pattern.items.end());
    return pattern;
}

std::optional<std::vector<Pattern>> Shapes::all(int shape, const std::vector<double>& worth, double least,
                                                std::size_t most) const {
    const bool bad = !shapes_[shape].bad.empty();
    const Um room = shapes_[shape].length + problem_.kerf;
    std::vector<Fit> fits = fits_[shape];
    const auto density = [&](const Fit& fit) {
        return worth[fit.item] / static_cast<double>(fit.length + problem_.kerf);
    };
    std::stable_sort(fits.begin(), fits.end(), [&](const Fit& a, const Fit& b) { return density(a) > density(b); });
    std::set<std::vector<int>> found;
    std::vector<int> so;
    std::vector<int> taken(fits.size());
    int visits = 0;
    // `from`: without bad stretches their order is all one, and each is taken in this one only.
    const auto walk = [&](const auto& again, std::size_t from, Um free, double worthSo) -> bool {
        if (++visits > mostVisits || found.size() > most) return false;
        const double left = static_cast<double>(room - free);
        const std::size_t likeliest = bad ? 0 : from;
        const double more = likeliest < fits.size() ? density(fits[likeliest]) * std::max(left, 0.0) : 0;
        if (worthSo + more < least - 1e-9) return true;
        bool full = true;
        for (std::size_t i = 0; i < fits.size(); ++i) {
            if (taken[i] >= fits[i].atMost) continue;
            const Um at = bad ? firstStart(fits[i].starts, free).at : free;
            if (at < 0 || at + fits[i].length + problem_.kerf > room) continue;
            full = false;
            if (i < from && !bad) continue;
            ++taken[i];
            so.push_back(fits[i].item);
            const bool goesOn = again(again, i, at + fits[i].length + problem_.kerf, worthSo + worth[fits[i].item]);
            so.pop_back();
            --taken[i];
            if (!goesOn) return false;
        }
        const bool couldBeLonger = !bad && std::any_of(so.begin(), so.end(), [&](int item) {
            return std::any_of(longer_[item].begin(), longer_[item].end(), [&](int other) {
                return free - problem_.items[item].length + problem_.items[other].length <= room;
            });
        });
        if (full && !couldBeLonger && !so.empty() && worthSo >= least - 1e-9) found.insert(so);
        return true;
    };
    if (!walk(walk, 0, 0, 0.0)) return std::nullopt;
    std::vector<Pattern> patterns;
    std::set<std::vector<int>> seen;
    for (const std::vector<int>& items : found) {
        std::vector<int> sorted = items;
        std::sort(sorted.begin(), sorted.end());
        if (!seen.insert(sorted).second) continue;
        Pattern pattern{shape, items, 0};
        for (int item : items) pattern.worth += worth[item];
        patterns.push_back(std::move(pattern));
    }
    return patterns;
}

std::vector<Um> Shapes::widths(Sawing sawing) const {
    std::set<Um> widths;
    for (const Section& section : problem_.sections) widths.insert(acrossOf(section, sawing));
    return {widths.begin(), widths.end()};
}

std::vector<std::vector<LaneAt>> Shapes::bands(int kind, Sawing sawing, Span across) {
    struct Choice {
        int shape = 0;
        Um deep = 0;
    };
    std::vector<Choice> choices;
    const Um thickness = problem_.kinds[kind].thickness;
    for (int s = 0; s < static_cast<int>(problem_.sections.size()); ++s) {
        const Section& section = problem_.sections[s];
        if (acrossOf(section, sawing) != across.length() || throughOf(section, sawing) > thickness) continue;
        if (const std::optional<int> shape = find(kind, s, across))
            choices.push_back({*shape, throughOf(section, sawing)});
    }
    std::vector<std::vector<LaneAt>> bands;
    std::vector<LaneAt> so;
    const auto walk = [&](const auto& again, std::size_t from, Um free) -> void {
        bool full = true;
        for (std::size_t i = 0; i < choices.size(); ++i) {
            if (free + choices[i].deep > thickness) continue;
            full = false;
            if (i < from) continue;
            so.push_back({choices[i].shape, across, {free, free + choices[i].deep}});
            again(again, i, free + choices[i].deep + problem_.kerf);
            so.pop_back();
        }
        if (full && !so.empty()) bands.push_back(so);
    };
    walk(walk, 0, 0);
    return bands;
}

Layout Shapes::bestLayout(int kind, Sawing sawing, const std::function<double(int)>& worthOf) {
    struct Reached {
        double worth = 0;
        Um before = -1;
        std::vector<LaneAt> band;
    };
    struct Band {
        double worth = 0;
        std::vector<LaneAt> lanes;
    };
    const Kind& board = problem_.kinds[kind];
    const std::vector<Um> wide = widths(sawing);
    std::map<std::pair<Um, std::vector<Span>>, Band> known;
    const auto bandAt = [&](Span across) -> const Band& {
        const auto [band, isNew] = known.try_emplace({across.length(), badOf(board, across)});
        if (!isNew) return band->second;
        for (std::vector<LaneAt>& lanes : bands(kind, sawing, across)) {
            double worth = 0;
            for (const LaneAt& lane : lanes) worth += worthOf(lane.shape);
            if (worth > band->second.worth) band->second = {worth, std::move(lanes)};
        }
        return band->second;
    };
    std::map<Um, Reached> reached{{0, {}}};
    double most = -1;
    Um last = 0;
    for (auto at = reached.begin(); at != reached.end(); ++at) {
        if (at->second.worth <= most + nothing) continue;
        most = at->second.worth;
        last = at->first;
        for (Um width : wide) {
            for (Um from : beginnings(board, at->first, width)) {
                const Band& band = bandAt({from, from + width});
                if (band.worth <= nothing) continue;
                const double worth = at->second.worth + band.worth;
                Reached& there = reached[from + width + problem_.kerf];
                if (worth <= there.worth + nothing) continue;
                there = {worth, at->first, band.lanes};
                for (LaneAt& lane : there.band) lane.across = {from, from + width};
            }
        }
    }
    Layout best{kind, sawing, {}, most};
    for (Um at = last; at > 0; at = reached[at].before)
        best.lanes.insert(best.lanes.begin(), reached[at].band.begin(), reached[at].band.end());
    return best;
}

std::optional<std::vector<Layout>> Shapes::allLayouts(int kind, std::size_t most) {
    const Kind& board = problem_.kinds[kind];
    std::vector<Layout> layouts;
    std::set<std::vector<int>> seen;
    int visits = 0;
    for (Sawing sawing : problem_.sawings) {
        const std::vector<Um> wide = widths(sawing);
        std::vector<LaneAt> so;
        const bool ordered = badOf(board, {0, board.width}).empty();  // their order across is all one
        const auto walk = [&](const auto& again, std::size_t least, Um free) -> bool {
            if (++visits > mostLayoutVisits || layouts.size() > most) return false;
            bool full = true;
            for (std::size_t w = 0; w < wide.size(); ++w) {
                for (Um from : beginnings(board, free, wide[w])) {
                    for (const std::vector<LaneAt>& band : bands(kind, sawing, {from, from + wide[w]})) {
                        full = false;
                        if (ordered && w < least) continue;
                        so.insert(so.end(), band.begin(), band.end());
                        const bool goesOn = again(again, w, from + wide[w] + problem_.kerf);
                        so.resize(so.size() - band.size());
                        if (!goesOn) return false;
                    }
                }
            }
            if (!full || so.empty()) return true;
            std::vector<int> shapes;
            for (const LaneAt& lane : so) shapes.push_back(lane.shape);
            std::sort(shapes.begin(), shapes.end());
            if (seen.insert(shapes).second) layouts.push_back({kind, sawing, so, 0});
            return true;
        };
        if (!walk(walk, 0, 0)) return std::nullopt;
    }
    return layouts;
}

}  // namespace fayline::stock
