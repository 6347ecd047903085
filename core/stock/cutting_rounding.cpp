// From numbers of columns to boards, lanes and strips.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/stock/cutting_program.hpp"
#include "core/stock/first_fit.hpp"

namespace fayline::stock {

Shape CuttingProgram::shapeOf(const Sawn& board, const Lane& lane) const {
    const Kind& kind = problem_.kinds[board.kind];
    return {lane.section, kind.wood, kind.pinnedTo ? board.kind : -1, kind.length, badOf(kind, lane.across)};
}

Sawn CuttingProgram::sawnAs(const Layout& layout) const {
    Sawn board{layout.kind, layout.sawing, {}};
    for (const LaneAt& lane : layout.lanes)
        board.lanes.push_back({shapes_[lane.shape].section, lane.across, lane.through, {}});
    return board;
}

// Boards and lanes of whole numbers of columns.
Cutting CuttingProgram::cuttingOf(const std::vector<double>& values) const {
    Cutting cutting;
    cutting.ways.assign(problem_.wanted.size(), -1);
    for (const YColumn& y : ys_)
        if (values[y.column] > 0.5 && cutting.ways[y.strip] < 0) cutting.ways[y.strip] = y.way;
    std::map<Shape, std::vector<const Pattern*>> patterns;
    for (const XColumn& x : xs_)
        for (int i = 0; i < static_cast<int>(std::floor(values[x.column] + 1e-6)); ++i)
            patterns[shapes_[x.pattern.shape]].push_back(&x.pattern);
    layBands(cutting, values);
    for (const UColumn& u : us_)
        for (int i = 0; i < static_cast<int>(std::floor(values[u.column] + 1e-6)); ++i)
            cutting.boards.push_back(sawnAs(u.layout));
    for (Sawn& board : cutting.boards) {
        for (Lane& lane : board.lanes) {
            std::vector<const Pattern*>& left = patterns[shapeOf(board, lane)];
            if (left.empty()) continue;
            const Shape& shape = shapes_[left.back()->shape];
            layAlong(problem_, lane, left.back()->items, shape.length, shape.bad);
            left.pop_back();
        }
    }
    cutDown(cutting, values);
    return cutting;
}

void CuttingProgram::cutDown(Cutting& cutting, const std::vector<double>& values) const {
    std::vector<std::vector<Placed*>> there(problem_.items.size());
    for (Sawn& board : cutting.boards)
        for (Lane& lane : board.lanes)
            for (Placed& placed : lane.placed) there[placed.item].push_back(&placed);
    for (const auto& [item, column] : ts_) {
        for (int i = static_cast<int>(std::floor(values[column] + 1e-6)); i > 0 && !there[item].empty(); --i) {
            Placed* placed = there[item].back();
            there[item].pop_back();
            if (placed->turned) placed->at += problem_.items[item].length - problem_.items[shorter_[item]].length;
            placed->item = shorter_[item];
            there[placed->item].push_back(placed);
        }
    }
}

// Of each kind as many boards as may be, each sawn as the relaxed answer does most.
std::vector<Sawn> CuttingProgram::sawnUp(const std::vector<int>& boards) const {
    std::vector<std::pair<double, const UColumn*>> order;
    for (const UColumn& u : us_) order.emplace_back(last_[u.column], &u);
    std::stable_sort(order.begin(), order.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<int> left = boards;
    std::vector<Sawn> sawn;
    for (const bool whole : {true, false}) {
        for (const auto& [value, u] : order) {
            const int count = whole ? static_cast<int>(std::floor(value + 1e-6)) : value > 1e-6 ? 1 : 0;
            for (int i = 0; i < count && left[u->layout.kind] > 0; ++i) {
                --left[u->layout.kind];
                sawn.push_back(sawnAs(u->layout));
            }
        }
    }
    return sawn;
}

// Patterns on lanes that are empty, those first that the relaxed answer has most of, of each what is still wanted.
void CuttingProgram::fillLanes(Cutting& cutting, const std::vector<int>& preferred) const {
    std::vector<int> wanted(problem_.items.size());
    for (std::size_t j = 0; j < preferred.size(); ++j)
        if (preferred[j] >= 0)
            for (int item : problem_.wanted[j].ways[preferred[j]].items) ++wanted[item];
    std::map<Shape, std::vector<Lane*>> empty;
    for (Sawn& board : cutting.boards)
        for (Lane& lane : board.lanes) empty[shapeOf(board, lane)].push_back(&lane);
    std::vector<std::pair<double, const Pattern*>> order;
    for (const XColumn& x : xs_)
        if (last_[x.column] > 1e-6) order.emplace_back(last_[x.column], &x.pattern);
    std::stable_sort(order.begin(), order.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    for (const auto& [value, pattern] : order) {
        const Shape& shape = shapes_[pattern->shape];
        std::vector<Lane*>& lanes = empty[shape];
        for (int i = static_cast<int>(std::ceil(value - 1e-6)); i > 0 && !lanes.empty(); --i) {
            std::vector<int> items;
            for (int item : pattern->items) {
                while (item >= 0 && wanted[item] <= 0) item = shorter_[item];
                if (item < 0) continue;
                --wanted[item];
                items.push_back(item);
            }
            if (items.empty()) break;
            layAlong(problem_, *lanes.back(), items, shape.length, shape.bad);
            lanes.pop_back();
        }
    }
}

// Strips whose parts are all there and whose neighbours let them be are done; of others nothing is kept.
void CuttingProgram::keepWhole(Cutting& cutting, const std::vector<int>& preferred) const {
    std::map<int, int> there;
    for (const Sawn& board : cutting.boards)
        for (const Lane& lane : board.lanes)
            for (const Placed& placed : lane.placed) ++there[placed.item];
    cutting.ways.assign(problem_.wanted.size(), -1);
    for (int j = 0; j < static_cast<int>(problem_.wanted.size()); ++j) {
        if (preferred[j] < 0) continue;
        const Way& way = problem_.wanted[j].ways[preferred[j]];
        std::map<int, int> parts;
        for (int item : way.items) ++parts[item];
        const bool whole =
            std::all_of(parts.begin(), parts.end(), [&](const auto& one) { return there[one.first] >= one.second; });
        const bool apart =
            std::all_of(problem_.neighbours.begin(), problem_.neighbours.end(), [&](const Neighbours& pair) {
                if (pair.one != j && pair.other != j) return true;
                const int other = pair.one == j ? pair.other : pair.one;
                return cutting.ways[other] < 0 ||
                       staggered(way, problem_.wanted[other].ways[cutting.ways[other]], pair.stagger);
            });
        if (!whole || !apart) continue;
        for (const auto& [item, count] : parts) there[item] -= count;
        cutting.ways[j] = preferred[j];
    }
}

Cutting CuttingProgram::rounded(const std::vector<int>& boards, bool up) const {
    FirstFit given;
    given.preferred.assign(problem_.wanted.size(), -1);
    std::vector<double> most(problem_.wanted.size());
    for (const YColumn& y : ys_) {
        if (last_[y.column] <= most[y.strip] + 1e-9) continue;
        most[y.strip] = last_[y.column];
        given.preferred[y.strip] = y.way;
    }
    if (up) {
        given.begun.boards = sawnUp(boards);
        fillLanes(given.begun, given.preferred);
    } else {
        given.begun = cuttingOf(last_);
    }
    keepWhole(given.begun, given.preferred);
    dropUnasked(problem_, given.begun);
    if (!up) tidy(problem_, given.begun);
    given.mayOpen = boards;
    for (const Sawn& board : given.begun.boards) --given.mayOpen[board.kind];
    for (int way : given.begun.ways) given.placed.push_back(way >= 0);
    Cutting cutting = firstFit(problem_, given);
    tidy(problem_, cutting);
    return cutting;
}

// Bands across one zone, `room` wide with the saw cut after the last, if the board is sawn so (column `chosen`).
void CuttingProgram::addZone(int sawn, int zone, Span across, Um room, int chosen) {
    const Sawn& board = sawn_[sawn];
    const int row = program_.addRow(0, unbounded, {{chosen, static_cast<double>(room)}});
    for (Um width : shapes_.widths(board.sawing)) {
        const Um takes = width + problem_.kerf;
        if (takes > room) continue;
        for (std::vector<LaneAt>& lanes : shapes_.bands(board.kind, board.sawing, {across.from, across.from + width})) {
            std::map<int, double> counts;
            for (const LaneAt& lane : lanes) counts[shapeRow(lane.shape)] += 1;
            Entries entries(counts.begin(), counts.end());
            entries.emplace_back(row, -static_cast<double>(takes));
            const double most = static_cast<double>(room / takes);
            bands_.push_back({sawn, zone, std::move(lanes), program_.addColumn(0, 0, most, true, entries)});
        }
    }
}

bool CuttingProgram::useBands(const std::vector<int>& boards) {
    bool all = true;
    for (int k = 0; k < static_cast<int>(boards.size()); ++k) {
        const Kind& kind = problem_.kinds[k];
        std::set<Um> edges;  // where faults begin or end across
        for (const BadUm& bad : kind.bad)
            for (Um edge : {bad.across.from, bad.across.to})
                if (edge > 0 && edge < kind.width) edges.insert(edge);
        for (int copy = 0; copy < boards[k]; ++copy) {
            all &= edges.empty();
            const int once = program_.addRow(-unbounded, 1);
            for (Sawing sawing : problem_.sawings) {
                const int chosen = program_.addColumn(0, 0, 1, true, Entries{{once, 1.0}});
                const int sawn = static_cast<int>(sawn_.size());
                sawn_.push_back({k, sawing, {}});
                Um from = 0;
                int zone = 0;
                for (Um edge : edges) {
                    addZone(sawn, zone++, {from, edge}, edge - from, chosen);
                    from = edge;
                }
                addZone(sawn, zone, {from, kind.width}, kind.width - from + problem_.kerf, chosen);
            }
        }
    }
    return all;
}

void CuttingProgram::layBands(Cutting& cutting, const std::vector<double>& values) const {
    std::vector<Sawn> sawn = sawn_;
    std::map<std::pair<int, int>, Um> moved;  // by board and zone: what is taken already
    for (const Band& band : bands_) {
        Um& taken = moved[{band.board, band.zone}];
        for (int i = 0; i < static_cast<int>(std::floor(values[band.column] + 1e-6)); ++i) {
            for (const LaneAt& lane : band.lanes)
                sawn[band.board].lanes.push_back({shapes_[lane.shape].section,
                                                  {lane.across.from + taken, lane.across.to + taken},
                                                  lane.through,
                                                  {}});
            taken += band.lanes.front().across.length() + problem_.kerf;
        }
    }
    for (Sawn& board : sawn)
        if (!board.lanes.empty()) cutting.boards.push_back(std::move(board));
}

void dropUnasked(const Problem& problem, Cutting& cutting) {
    std::vector<int> asked(problem.items.size());
    for (std::size_t j = 0; j < cutting.ways.size(); ++j)
        if (cutting.ways[j] >= 0)
            for (int item : problem.wanted[j].ways[cutting.ways[j]].items) ++asked[item];
    for (Sawn& board : cutting.boards)
        for (Lane& lane : board.lanes) {
            std::vector<Placed> kept;
            for (const Placed& placed : lane.placed)
                if (asked[placed.item]-- > 0) kept.push_back(placed);
            lane.placed = std::move(kept);
        }
}

void tidy(const Problem& problem, Cutting& cutting) {
    dropUnasked(problem, cutting);
    for (Sawn& board : cutting.boards) std::erase_if(board.lanes, [](const Lane& lane) { return lane.placed.empty(); });
    std::erase_if(cutting.boards, [](const Sawn& board) { return board.lanes.empty(); });
}

}  // namespace fayline::stock
