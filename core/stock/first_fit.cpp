#include "core/stock/first_fit.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <optional>

namespace fayline::stock {

namespace {

class Fitting {
public:
    Fitting(const Problem& problem, const FirstFit& given)
        : problem_(problem), given_(given), cutting_(given.begun), mayOpen_(given.mayOpen) {
        cutting_.ways.resize(problem.wanted.size(), -1);
        still_.resize(problem.sections.size());
    }

    Cutting run() {
        for (int strip : order())
            if (!isPlaced(strip)) {
                still_[problem_.wanted[strip].section] += problem_.wanted[strip].length;
                todo_.push_back(strip);
            }
        for (int strip : todo_) {
            still_[problem_.wanted[strip].section] -= problem_.wanted[strip].length;
            place(strip);
        }
        return std::move(cutting_);
    }

private:
    bool isPlaced(int strip) const { return !given_.placed.empty() && given_.placed[strip]; }

    Um longestOf(int strip) const {
        Um longest = 0;
        if (const Way* way = preferredOf(strip)) {
            for (int item : way->items) longest = std::max(longest, problem_.items[item].length);
            return longest;
        }
        return problem_.wanted[strip].length;
    }

    const Way* preferredOf(int strip) const {
        const int way = given_.preferred.empty() ? -1 : given_.preferred[strip];
        return way < 0 ? nullptr : &problem_.wanted[strip].ways[way];
    }

    // The longest first; strips as long as each other in their own order, so that neighbours see each other's joints.
    std::vector<int> order() const {
        std::vector<int> order(problem_.wanted.size());
        std::iota(order.begin(), order.end(), 0);
        std::vector<Um> longest(order.size());
        for (int strip : order) longest[strip] = longestOf(strip);
        std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
            if (given_.sparesLast && problem_.wanted[a].weight != problem_.wanted[b].weight)
                return problem_.wanted[a].weight > problem_.wanted[b].weight;
            return longest[a] > longest[b];
        });
        return order;
    }

    bool keepsItsDistance(int strip, int way) const {
        for (const Neighbours& pair : problem_.neighbours) {
            if (pair.one != strip && pair.other != strip) continue;
            const int other = pair.one == strip ? pair.other : pair.one;
            if (cutting_.ways[other] < 0) continue;
            if (!staggered(problem_.wanted[strip].ways[way], problem_.wanted[other].ways[cutting_.ways[other]],
                           pair.stagger))
                return false;
        }
        return true;
    }

    void place(int strip) {
        const std::vector<Way>& ways = problem_.wanted[strip].ways;
        std::vector<int> tries(ways.size());
        std::iota(tries.begin(), tries.end(), 0);
        std::vector<Um> longest(ways.size());  // parts alike in length find a board soonest
        for (int way : tries)
            for (int item : ways[way].items) longest[way] = std::max(longest[way], problem_.items[item].length);
        std::stable_sort(tries.begin(), tries.end(), [&](int a, int b) {
            return ways[a].forced != ways[b].forced ? ways[a].forced < ways[b].forced : longest[a] < longest[b];
        });
        if (preferredOf(strip)) tries.insert(tries.begin(), given_.preferred[strip]);
        int failed = 0;
        for (int way : tries) {
            if (!keepsItsDistance(strip, way)) continue;
            if (placeAs(ways[way])) {
                cutting_.ways[strip] = way;
                return;
            }
            if (++failed > 40) return;  // a first answer is at once
        }
    }

    bool placeAs(const Way& way) {
        std::vector<int> items = way.items;
        std::stable_sort(items.begin(), items.end(),
                         [&](int a, int b) { return problem_.items[a].length > problem_.items[b].length; });
        if (items.size() == 1) return put(items[0]);
        const Cutting before = cutting_;
        const std::vector<int> couldOpen = mayOpen_;
        for (int item : items)
            if (!put(item)) {
                cutting_ = before;
                mayOpen_ = couldOpen;
                return false;
            }
        return true;
    }

    bool put(int item) {
        for (Sawn& board : cutting_.boards)
            if (intoLane(board, item)) return true;
        for (Sawn& board : cutting_.boards)
            if (intoNewLane(board, item)) return true;
        return intoNewBoard(item);
    }

    bool intoLane(Sawn& board, int item) const {
        const Item& it = problem_.items[item];
        if (!mayComeFrom(it, problem_, board.kind)) return false;
        const Kind& kind = problem_.kinds[board.kind];
        for (Lane& lane : board.lanes) {
            if (lane.section != it.section) continue;
            Um free = 0;
            if (!lane.placed.empty()) {
                const Placed& last = lane.placed.back();
                free = last.at + problem_.items[last.item].length + problem_.kerf;
            }
            if (free + it.length > kind.length) continue;
            const Start start = firstStart(startsOf(it, kind.length, badOf(kind, lane.across)), free);
            if (start.at < 0) continue;
            lane.placed.push_back({item, start.at, start.turned});
            return true;
        }
        return false;
    }

    // A lane beside another through the board, or past all that is sawn.
    std::optional<Lane> newLane(const Sawn& board, int item) const {
        const Item& it = problem_.items[item];
        const Kind& kind = problem_.kinds[board.kind];
        const Section& section = problem_.sections[it.section];
        const Um wide = acrossOf(section, board.sawing);
        const Um deep = throughOf(section, board.sawing);
        if (deep > kind.thickness) return std::nullopt;
        const auto tryAt = [&](Span across, Um from) -> std::optional<Lane> {
            if (from + deep > kind.thickness) return std::nullopt;
            const Start start = firstStart(startsOf(it, kind.length, badOf(kind, across)), 0);
            if (start.at < 0) return std::nullopt;
            return Lane{it.section, across, {from, from + deep}, {{item, start.at, start.turned}}};
        };
        Um free = 0;
        for (const Lane& lane : board.lanes) free = std::max(free, lane.across.to + problem_.kerf);
        for (const Lane& lane : board.lanes) {
            if (lane.across.length() != wide) continue;
            Um from = 0;
            for (const Lane& other : board.lanes)
                if (other.across == lane.across) from = std::max(from, other.through.to + problem_.kerf);
            if (std::optional<Lane> found = tryAt(lane.across, from)) return found;
        }
        for (Um at : beginnings(kind, free, wide))
            if (std::optional<Lane> found = tryAt({at, at + wide}, 0)) return found;
        return std::nullopt;
    }

    bool intoNewLane(Sawn& board, int item) const {
        if (!mayComeFrom(problem_.items[item], problem_, board.kind)) return false;
        std::optional<Lane> lane = newLane(board, item);
        if (!lane) return false;
        board.lanes.push_back(std::move(*lane));
        return true;
    }

    // The board that costs least for what it gives of the strips of this section that are still to come.
    bool intoNewBoard(int item) {
        const Item& it = problem_.items[item];
        const Section& section = problem_.sections[it.section];
        std::optional<Sawn> best;
        double bestScore = std::numeric_limits<double>::infinity();
        for (int k = 0; k < static_cast<int>(problem_.kinds.size()); ++k) {
            const Kind& kind = problem_.kinds[k];
            if (mayOpen_[k] <= 0 || it.length > kind.length || !mayComeFrom(it, problem_, k)) continue;
            for (Sawing sawing : problem_.sawings) {
                const double across =
                    static_cast<double>((kind.width + problem_.kerf) / (acrossOf(section, sawing) + problem_.kerf));
                const double through = static_cast<double>((kind.thickness + problem_.kerf) /
                                                           (throughOf(section, sawing) + problem_.kerf));
                const double gives = across * through * static_cast<double>(kind.length / it.length * it.length);
                const double asked = static_cast<double>(still_[it.section] + it.length);
                if (gives <= 0) continue;
                const double score = kind.cost / std::min(gives, asked);
                if (score >= bestScore) continue;
                Sawn board{k, sawing, {}};
                if (!intoNewLane(board, item)) continue;
                best = std::move(board);
                bestScore = score;
            }
        }
        if (!best) return false;
        --mayOpen_[best->kind];
        cutting_.boards.push_back(std::move(*best));
        return true;
    }

    const Problem& problem_;
    const FirstFit& given_;
    Cutting cutting_;
    std::vector<int> mayOpen_;
    std::vector<int> todo_;
    std::vector<Um> still_;  // by section: length of strips to come
};

}  // namespace

Cutting firstFit(const Problem& problem, const FirstFit& given) {
    return Fitting(problem, given).run();
}

Cutting firstCutting(const Problem& problem) {
    FirstFit given;
    for (const Kind& kind : problem.kinds) given.mayOpen.push_back(static_cast<int>(kind.copies.size()));
    Cutting cutting = firstFit(problem, given);
    if (leftOutOf(problem, cutting) == 0) return cutting;
    given.sparesLast = true;
    Cutting other = firstFit(problem, given);
    return betterThan(problem, other, cutting) ? other : cutting;
}

}  // namespace fayline::stock
