#include "core/stock/cutting.hpp"

#include <algorithm>
#include <map>
#include <numeric>
#include <tuple>

#include "core/stock/measure.hpp"

namespace fayline::stock {

namespace {

constexpr int mostExchanges = 40'000;  // tries to bring strips of one piece together

const Way& wayOf(const Problem& problem, const Cutting& cutting, int strip) {
    return problem.wanted[strip].ways[cutting.ways[strip]];
}

template <class Count>
int summed(const Problem& problem, const Cutting& cutting, const Count& count) {
    int sum = 0;
    for (int i = 0; i < static_cast<int>(cutting.ways.size()); ++i)
        if (cutting.ways[i] >= 0) sum += count(wayOf(problem, cutting, i));
    return sum;
}

// A place on a lane and which part of which strip it holds.
struct Slot {
    int board = 0;
    int lane = 0;
    int index = 0;  // among the lane's
    int strip = 0;
    int part = 0;
};

// Gives strips to slots and exchanges them.
class Giving {
public:
    Giving(const Job& job, const Problem& problem, const Cutting& cutting)
        : job_(job), problem_(problem), cutting_(cutting) {
        for (int i = 0; i < static_cast<int>(job.strips.size()); ++i) order_.push_back(i);
        std::stable_sort(order_.begin(), order_.end(), [&](int a, int b) { return keyOf(a) < keyOf(b); });
        rank_.resize(order_.size());
        for (int i = 0; i < static_cast<int>(order_.size()); ++i) rank_[order_[i]] = i;
        give();
        gather();
    }

    const Cutting& cutting() const { return cutting_; }
    const std::vector<Slot>& slots() const { return slots_; }

private:
    std::tuple<bool, const std::string&, int> keyOf(int strip) const {
        return {job_.strips[strip].spare, job_.strips[strip].piece, job_.strips[strip].place};
    }

    // Items that are alike go to strips in the order of pieces and places.
    void give() {
        std::map<int, std::vector<std::pair<int, int>>> asked;  // by item, last first
        for (auto strip = order_.rbegin(); strip != order_.rend(); ++strip) {
            if (cutting_.ways[*strip] < 0) continue;
            const Way& way = wayOf(problem_, cutting_, *strip);
            for (int part = static_cast<int>(way.items.size()) - 1; part >= 0; --part)
                asked[way.items[part]].emplace_back(*strip, part);
        }
        for (int b = 0; b < static_cast<int>(cutting_.boards.size()); ++b) {
            for (int l = 0; l < static_cast<int>(cutting_.boards[b].lanes.size()); ++l) {
                std::vector<Placed>& placed = cutting_.boards[b].lanes[l].placed;
                std::vector<Placed> kept;  // what no strip asks for any more is not cut
                for (const Placed& one : placed) {
                    std::vector<std::pair<int, int>>& takers = asked[one.item];
                    if (takers.empty()) continue;
                    slots_.push_back({b, l, static_cast<int>(kept.size()), takers.back().first, takers.back().second});
                    takers.pop_back();
                    kept.push_back(one);
                }
                placed = std::move(kept);
            }
        }
    }

    // Sorts strips into the order of slots where the lanes let them.
    void gather() {
        int tries = 0;
        for (std::size_t i = 0; i < slots_.size(); ++i) {
            for (std::size_t j = i + 1; j < slots_.size(); ++j) {
                if (rank_[slots_[j].strip] >= rank_[slots_[i].strip] || !alike(slots_[i], slots_[j])) continue;
                if (++tries > mostExchanges) return;
                exchange(slots_[i], slots_[j]);
            }
        }
    }

    bool alike(const Slot& one, const Slot& other) const {
        const Item& a = itemOf(one);
        const Item& b = itemOf(other);
        return a.section == b.section && a.wood == b.wood && a.pinned == b.pinned && one.part == other.part;
    }

    const Item& itemOf(const Slot& slot) const { return problem_.items[laneOf(slot).placed[slot.index].item]; }
    const Lane& laneOf(const Slot& slot) const { return cutting_.boards[slot.board].lanes[slot.lane]; }

    void exchange(Slot& one, Slot& other) {
        Lane first = laneOf(one);
        const int item = first.placed[one.index].item;
        const int taken = laneOf(other).placed[other.index].item;
        if (item != taken) {
            first.placed[one.index].item = taken;
            const bool sameLane = one.board == other.board && one.lane == other.lane;
            if (sameLane) first.placed[other.index].item = item;
            if (!relay(one.board, first)) return;
            if (!sameLane) {
                Lane second = laneOf(other);
                second.placed[other.index].item = item;
                if (!relay(other.board, second)) return;
                cutting_.boards[other.board].lanes[other.lane] = std::move(second);
            }
            cutting_.boards[one.board].lanes[one.lane] = std::move(first);
        }
        std::swap(one.strip, other.strip);
    }

    bool relay(int board, Lane& lane) const {
        std::vector<int> items;
        for (const Placed& one : lane.placed) items.push_back(one.item);
        const Kind& kind = problem_.kinds[cutting_.boards[board].kind];
        return layAlong(problem_, lane, items, kind.length, badOf(kind, lane.across));
    }

    const Job& job_;
    const Problem& problem_;
    Cutting cutting_;
    std::vector<int> order_;
    std::vector<int> rank_;
    std::vector<Slot> slots_;
};

Stretch inMetres(const Span& span) {
    return {toMetres(span.from), toMetres(span.to)};
}

// What the part is of its strip, scarf ends included.
Span ofStrip(const Wanted& wanted, const Way& way, int part) {
    const Um from = part == 0 ? 0 : way.joints[part - 1] - wanted.scarf / 2;
    return {from, part == static_cast<int>(way.joints.size()) ? wanted.length
                                                              : way.joints[part] - wanted.scarf / 2 + wanted.scarf};
}

void addScarfs(CutPlan& plan, const Job& job, const Problem& problem, const Cutting& cutting) {
    for (int i = 0; i < static_cast<int>(cutting.ways.size()); ++i) {
        if (cutting.ways[i] < 0) continue;
        const Wanted& wanted = problem.wanted[i];
        for (Um at : wayOf(problem, cutting, i).joints) {
            const std::optional<Stretch>& tightest = job.strips[i].tightest;
            const Um from = at - wanted.scarf / 2;
            const bool forced = tightest && from < toUm(tightest->to_m) && from + wanted.scarf > toUm(tightest->from_m);
            const Forced why = wanted.mustForce ? Forced::lanesTooShort : Forced::boardsRunOut;
            plan.scarfs.push_back({i, toMetres(at), toMetres(wanted.scarf), forced ? why : Forced::no});
        }
    }
}

void addSums(CutPlan& plan, const Job& job) {
    bool weighed = true;
    double kg = 0;
    for (const BoardUse& use : plan.boards) {
        const Board& board = job.boards[use.board];
        const double m3 = board.length_m * board.width_m * board.thickness_m;
        plan.boards_m3 += m3;
        plan.price += board.price;
        kg += m3 * board.density_kg_m3;
        weighed &= board.density_kg_m3 > 0;
    }
    plan.weight_kg = weighed ? kg : 0;
    for (std::size_t i = 0; i < job.strips.size(); ++i)
        if (!std::count(plan.missing.begin(), plan.missing.end(), static_cast<int>(i)))
            plan.strips_m3 += job.strips[i].length_m * job.strips[i].width_m * job.strips[i].thickness_m;
    plan.boardFeet = plan.boards_m3 / boardFoot_m3;
    if (plan.boards_m3 > 0) plan.waste = 1 - plan.strips_m3 / plan.boards_m3;
}

void addBoards(CutPlan& plan, const Job& job, const Problem& problem, const Giving& given,
               const std::vector<int>& copies) {
    const std::vector<Sawn>& boards = given.cutting().boards;
    std::vector<double> used(boards.size());
    std::vector<std::vector<int>> lanes(boards.size());
    std::vector<Um> sawnTo(boards.size());
    for (const Slot& slot : given.slots()) {
        const Wanted& wanted = problem.wanted[slot.strip];
        const Span of = ofStrip(wanted, wanted.ways[given.cutting().ways[slot.strip]], slot.part);
        // A scarf's wedges are half wood that counts: its middle is where one part ends and the next begins.
        const Um half = wanted.scarf / 2;
        const Um counted = of.length() - (of.from > 0 ? half : 0) - (of.to < wanted.length ? wanted.scarf - half : 0);
        used[slot.board] += toMetres(counted) * job.strips[slot.strip].width_m * job.strips[slot.strip].thickness_m;
        lanes[slot.board].push_back(slot.lane);
    }
    for (std::size_t b = 0; b < boards.size(); ++b) {
        if (lanes[b].empty()) continue;
        const Kind& kind = problem.kinds[boards[b].kind];
        std::sort(lanes[b].begin(), lanes[b].end());
        lanes[b].erase(std::unique(lanes[b].begin(), lanes[b].end()), lanes[b].end());
        for (int lane : lanes[b]) sawnTo[b] = std::max(sawnTo[b], boards[b].lanes[lane].across.to);
        const Board& board = job.boards[kind.board];
        const Um left = std::min(sawnTo[b] + problem.kerf, kind.width);
        plan.boards.push_back({kind.board, copies[b], boards[b].sawing, static_cast<int>(lanes[b].size()),
                               1 - used[b] / (board.length_m * board.width_m * board.thickness_m),
                               inMetres({left, kind.width})});
    }
}

}  // namespace

double costOf(const Problem& problem, const Cutting& cutting) {
    double cost = 0;
    for (const Sawn& board : cutting.boards) cost += problem.kinds[board.kind].cost;
    return cost;
}

int leftOutOf(const Problem& problem, const Cutting& cutting) {
    int out = 0;
    for (std::size_t i = 0; i < cutting.ways.size(); ++i)
        if (cutting.ways[i] < 0) out += problem.wanted[i].weight;
    return out;
}

int forcedOf(const Problem& problem, const Cutting& cutting) {
    return summed(problem, cutting, [](const Way& way) { return way.forced; });
}

int jointsOf(const Problem& problem, const Cutting& cutting) {
    return summed(problem, cutting, [](const Way& way) { return static_cast<int>(way.joints.size()); });
}

bool betterThan(const Problem& problem, const Cutting& one, const Cutting& other) {
    const int out = leftOutOf(problem, one) - leftOutOf(problem, other);
    if (out != 0) return out < 0;
    const int forced = forcedOf(problem, one) - forcedOf(problem, other);
    if (forced != 0) return forced < 0;
    const double cost = costOf(problem, one) - costOf(problem, other);
    const double same = 1e-9 * (1 + costOf(problem, other));
    if (cost < -same || cost > same) return cost < 0;
    return jointsOf(problem, one) < jointsOf(problem, other);
}

bool layAlong(const Problem& problem, Lane& lane, const std::vector<int>& items, Um laneLength,
              const std::vector<Span>& bad) {
    std::vector<Placed> placed;
    Um free = 0;
    for (int item : items) {
        const Start start = firstStart(startsOf(problem.items[item], laneLength, bad), free);
        if (start.at < 0) return false;
        placed.push_back({item, start.at, start.turned});
        free = start.at + problem.items[item].length + problem.kerf;
    }
    lane.placed = std::move(placed);
    return true;
}

CutPlan planOf(const Job& job, const Problem& problem, const Cutting& cutting) {
    CutPlan plan;
    plan.aim = problem.aim;
    plan.troubles = problem.troubles;
    for (int i = 0; i < static_cast<int>(cutting.ways.size()); ++i)
        if (cutting.ways[i] < 0) plan.missing.push_back(i);

    Cutting sorted = cutting;  // boards in the order of the job, so that strips of a piece lie in boards that follow
    std::stable_sort(sorted.boards.begin(), sorted.boards.end(), [&](const Sawn& a, const Sawn& b) {
        return std::tuple(problem.kinds[a.kind].board, a.kind) < std::tuple(problem.kinds[b.kind].board, b.kind);
    });
    for (Sawn& board : sorted.boards)
        std::sort(board.lanes.begin(), board.lanes.end(), [](const Lane& a, const Lane& b) {
            return std::tuple(a.across, a.through) < std::tuple(b.across, b.through);
        });
    std::vector<int> copies;
    std::map<int, int> taken;  // by kind
    for (const Sawn& board : sorted.boards) copies.push_back(problem.kinds[board.kind].copies[taken[board.kind]++]);

    const Giving given(job, problem, sorted);
    for (const Slot& slot : given.slots()) {
        const Sawn& board = given.cutting().boards[slot.board];
        const Kind& kind = problem.kinds[board.kind];
        const Lane& lane = board.lanes[slot.lane];
        const Placed& placed = lane.placed[slot.index];
        const Wanted& wanted = problem.wanted[slot.strip];
        const Way& way = wanted.ways[cutting.ways[slot.strip]];
        const Span along{placed.at, placed.at + problem.items[placed.item].length};
        const std::vector<Span> bad = badOf(kind, lane.across);
        const bool faulty = std::any_of(bad.begin(), bad.end(),
                                        [&](const Span& one) { return one.from < along.to && one.to > along.from; });
        plan.cuts.push_back({kind.board, copies[slot.board], board.sawing, inMetres(lane.across),
                             inMetres(lane.through), inMetres(along), slot.strip, slot.part,
                             static_cast<int>(way.items.size()), inMetres(ofStrip(wanted, way, slot.part)),
                             placed.turned, faulty});
    }
    std::sort(plan.cuts.begin(), plan.cuts.end(), [](const Cut& a, const Cut& b) {
        return std::tuple(a.board, a.copy, a.across.from_m, a.through.from_m, a.along.from_m) <
               std::tuple(b.board, b.copy, b.across.from_m, b.through.from_m, b.along.from_m);
    });
    addScarfs(plan, job, problem, cutting);
    addBoards(plan, job, problem, given, copies);
    addSums(plan, job);
    for (const BoardUse& use : plan.boards) {
        const Board& board = job.boards[use.board];
        plan.value += plan.aim == Aim::leastPrice ? board.price : board.length_m * board.width_m * board.thickness_m;
    }
    return plan;
}

}  // namespace fayline::stock
