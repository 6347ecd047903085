#include "core/stock/cutting_program.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <tuple>

namespace fayline::stock {

namespace {

constexpr double better = 1e-7;     // a column is added where it gains more
constexpr double jointCost = 1e-6;  // so that of two answers of one cost that with fewer scarfs is taken

// Whether the one takes the other's place wherever that lies: what is bad there lies in what may be bad.
bool replaces(const Item& one, const Item& other) {
    if (one.section != other.section || one.wood != other.wood || one.pinned != other.pinned) return false;
    return std::all_of(other.mayBeBad.begin(), other.mayBeBad.end(), [&](const Span& may) {
        return may.from >= one.length || std::any_of(one.mayBeBad.begin(), one.mayBeBad.end(), [&](const Span& own) {
                   return own.from <= may.from && own.to >= std::min(may.to, one.length);
               });
    });
}

std::vector<int> byLength(const Problem& problem) {
    std::vector<int> order(problem.items.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(),
                     [&](int a, int b) { return problem.items[a].length > problem.items[b].length; });
    return order;
}

// By item: the longest of those that are shorter, or later where as long, and may take its place; -1: none.
std::vector<int> shorterOf(const Problem& problem) {
    const std::vector<int> order = byLength(problem);
    std::vector<int> shorter(order.size(), -1);
    for (std::size_t i = 0; i < order.size(); ++i)
        for (std::size_t k = i + 1; k < order.size() && shorter[order[i]] < 0; ++k)
            if (replaces(problem.items[order[k]], problem.items[order[i]])) shorter[order[i]] = order[k];
    return shorter;
}

std::vector<int> usefulOf(const Problem& problem, const std::vector<int>& shorter) {
    std::vector<int> useful(problem.items.size());
    for (const Wanted& wanted : problem.wanted) {
        std::map<int, int> most;
        for (const Way& way : wanted.ways) {
            std::map<int, int> here;
            for (int item : way.items) most[item] = std::max(most[item], ++here[item]);
        }
        for (const auto& [item, count] : most) useful[item] += count;
    }
    const std::vector<int> order = byLength(problem);
    for (auto item = order.rbegin(); item != order.rend(); ++item)
        if (shorter[*item] >= 0) useful[*item] += useful[shorter[*item]];
    return useful;
}

}  // namespace

CuttingProgram::CuttingProgram(const Problem& problem)
    : problem_(problem), shorter_(shorterOf(problem)), shapes_(problem, shorter_, usefulOf(problem, shorter_)) {
    for (const Kind& kind : problem.kinds) costScale_ = std::max(kind.cost, costScale_ == 1 ? 0 : costScale_);
    if (!(costScale_ > 0)) costScale_ = 1;
    // More than any cost, any forced scarf: all strips scarfed often, each part from a board of its own.
    forcedCost_ = 2.0 * static_cast<double>(std::min<std::size_t>(problem.wanted.size() * 4, 100) + 1);
    leftOutCost_ = 4 * forcedCost_;
    for (std::size_t k = 0; k < problem.kinds.size(); ++k) kindRows_.push_back(program_.addRow(-unbounded, 0));
    for (std::size_t i = 0; i < problem.items.size(); ++i) itemRows_.push_back(program_.addRow(0, unbounded));
    for (int item : byLength(problem))
        if (shorter_[item] >= 0)
            ts_.emplace_back(item, program_.addColumn(0, 0, unbounded, true,
                                                      {{itemRows_[item], -1.0}, {itemRows_[shorter_[item]], 1.0}}));
    for (std::size_t j = 0; j < problem.wanted.size(); ++j) {
        const int row = program_.addRow(1, unbounded);
        stripRows_.push_back(row);
        ms_.push_back(program_.addColumn(0, 0, 1, true, Entries{{row, 1.0}}));
        firstY_.push_back(static_cast<int>(ys_.size()));
        const std::vector<Way>& ways = problem.wanted[j].ways;
        for (int w = 0; w < static_cast<int>(ways.size()); ++w) {
            std::map<int, double> parts;
            for (int item : ways[w].items) parts[itemRows_[item]] -= 1;
            Entries entries(parts.begin(), parts.end());
            entries.emplace_back(row, 1.0);
            ys_.push_back({static_cast<int>(j), w, program_.addColumn(0, 0, 1, true, entries)});
        }
    }
    firstY_.push_back(static_cast<int>(ys_.size()));
}

void CuttingProgram::aimAt(Least least, const std::vector<int>& boards) {
    least_ = least;
    boards_ = boards;
    const bool cost = least == Least::cost;
    for (std::size_t k = 0; k < kindRows_.size(); ++k) program_.setRow(kindRows_[k], -unbounded, boards[k]);
    for (const UColumn& u : us_) program_.setCost(u.column, cost ? problem_.kinds[u.layout.kind].cost / costScale_ : 0);
    for (const YColumn& y : ys_) {
        const Way& way = problem_.wanted[y.strip].ways[y.way];
        program_.setCost(y.column,
                         cost ? way.forced * forcedCost_ + static_cast<double>(way.joints.size()) * jointCost : 0);
    }
    for (std::size_t j = 0; j < ms_.size(); ++j)
        program_.setCost(ms_[j], problem_.wanted[j].weight * (cost ? leftOutCost_ : 1.0));
}

int CuttingProgram::shapeRow(int shape) {
    while (static_cast<int>(shapeRows_.size()) <= shape) shapeRows_.push_back(-1);
    if (shapeRows_[shape] < 0) shapeRows_[shape] = program_.addRow(0, unbounded);
    return shapeRows_[shape];
}

bool CuttingProgram::addPattern(const Pattern& pattern) {
    std::vector<int> sorted = pattern.items;
    std::sort(sorted.begin(), sorted.end());
    if (!seenPatterns_.insert({pattern.shape, sorted}).second) return false;
    std::map<int, double> counts;
    for (int item : pattern.items) counts[itemRows_[item]] += 1;
    Entries entries(counts.begin(), counts.end());
    entries.emplace_back(shapeRow(pattern.shape), -1.0);
    xs_.push_back({pattern, program_.addColumn(0, 0, unbounded, true, entries)});
    return true;
}

bool CuttingProgram::addLayout(const Layout& layout) {
    std::vector<int> shapes;
    for (const LaneAt& lane : layout.lanes) shapes.push_back(lane.shape);
    std::sort(shapes.begin(), shapes.end());
    if (!seenLayouts_.insert({{layout.kind, static_cast<int>(layout.sawing)}, shapes}).second) return false;
    std::map<int, double> counts;
    for (int shape : shapes) counts[shapeRow(shape)] += 1;
    Entries entries(counts.begin(), counts.end());
    entries.emplace_back(kindRows_[layout.kind], 1.0);
    const double cost = least_ == Least::cost ? problem_.kinds[layout.kind].cost / costScale_ : 0;
    us_.push_back({layout, program_.addColumn(cost, 0, unbounded, true, entries)});
    return true;
}

// Columns that gain; false: there are none, and `relaxed` has its prices.
bool CuttingProgram::addFrom(const IntegerProgram::Relaxed& answer, Relaxed& relaxed) {
    relaxed.worth.assign(problem_.items.size(), 0);
    for (std::size_t i = 0; i < itemRows_.size(); ++i) relaxed.worth[i] = std::max(answer.duals[itemRows_[i]], 0.0);
    std::vector<std::optional<Pattern>> best;
    const auto bestOf = [&](int shape) -> const Pattern& {
        if (static_cast<int>(best.size()) <= shape) best.resize(shape + 1);
        if (!best[shape]) best[shape] = shapes_.best(shape, relaxed.worth);
        return *best[shape];
    };
    bool added = false;
    for (int shape = 0; shape < static_cast<int>(shapeRows_.size()); ++shape) {
        if (shapeRows_[shape] < 0) continue;
        const Pattern pattern = bestOf(shape);
        if (pattern.worth > std::max(answer.duals[shapeRows_[shape]], 0.0) + better) added |= addPattern(pattern);
    }
    relaxed.prices.assign(problem_.kinds.size(), 0);
    if (!bands_.empty()) return added;
    for (int k = 0; k < static_cast<int>(problem_.kinds.size()); ++k) {
        const double cost = least_ == Least::cost ? problem_.kinds[k].cost / costScale_ : 0;
        for (Sawing sawing : problem_.sawings) {
            const Layout layout = shapes_.bestLayout(k, sawing, [&](int shape) { return bestOf(shape).worth; });
            relaxed.prices[k] = std::max(relaxed.prices[k], layout.worth);
            if (layout.lanes.empty() || layout.worth <= cost - answer.duals[kindRows_[k]] + better) continue;
            added |= addLayout(layout);
            std::set<int> shapes;
            for (const LaneAt& lane : layout.lanes)
                if (shapes.insert(lane.shape).second) added |= addPattern(Pattern(bestOf(lane.shape)));
        }
    }
    return added;
}

// Adds a row for each window along neighbours in which `values` have more than one scarf; gives their number.
int CuttingProgram::keepApart(const std::vector<double>& values) {
    int added = 0;
    for (int n = 0; n < static_cast<int>(problem_.neighbours.size()); ++n) {
        const Neighbours& pair = problem_.neighbours[n];
        std::map<Um, double> used[2];
        std::set<Um> places;
        for (int side = 0; side < 2; ++side) {
            const int strip = side == 0 ? pair.one : pair.other;
            for (int y = firstY_[strip]; y < firstY_[strip + 1]; ++y) {
                if (values[ys_[y].column] < 1e-6) continue;
                for (Um at : problem_.wanted[strip].ways[ys_[y].way].joints) {
                    used[side][at] += values[ys_[y].column];
                    places.insert(at);
                }
            }
        }
        for (Um from : places) {
            double sum[2] = {0, 0};
            for (int side = 0; side < 2; ++side)
                for (auto at = used[side].lower_bound(from); at != used[side].end() && at->first < from + pair.stagger;
                     ++at)
                    sum[side] += at->second;
            if (std::min(sum[0], sum[1]) < 1e-6 || sum[0] + sum[1] <= 1 + 1e-6) continue;
            if (!seenApart_.insert({n, 0, from}).second) continue;
            Entries entries;
            for (int strip : {pair.one, pair.other})
                for (int y = firstY_[strip]; y < firstY_[strip + 1]; ++y) {
                    const std::vector<Um>& joints = problem_.wanted[strip].ways[ys_[y].way].joints;
                    if (std::any_of(joints.begin(), joints.end(),
                                    [&](Um at) { return at >= from && at < from + pair.stagger; }))
                        entries.emplace_back(ys_[y].column, 1.0);
                }
            apart_.push_back({program_.addRow(-unbounded, 1, entries), entries});
            ++added;
        }
    }
    return added;
}

// What all strips cost together at these prices, each in its cheapest way.
double CuttingProgram::askedAt(const std::vector<double>& duals, const std::vector<double>& worth) const {
    std::vector<double> more(program_.columns());
    double asked = 0;
    for (const Apart& row : apart_) {
        const double price = std::min(duals[row.row], 0.0);
        asked += price;
        for (const auto& [column, one] : row.entries) more[column] -= price;
    }
    for (std::size_t j = 0; j < problem_.wanted.size(); ++j) {
        double least = unbounded;
        for (int y = firstY_[j]; y < firstY_[j + 1]; ++y) {
            double cost = more[ys_[y].column];
            for (int item : problem_.wanted[j].ways[ys_[y].way].items) cost += worth[item];
            least = std::min(least, cost);
        }
        if (least < unbounded) asked += least;
    }
    return asked;
}

CuttingProgram::Relaxed CuttingProgram::relaxed(long& rows, const std::atomic<bool>& stop) {
    Relaxed relaxed;
    while (rows > 0) {
        rows -= program_.rows();
        const IntegerProgram::Relaxed answer = program_.relaxed(stop);
        if (!answer.solved || stop.load(std::memory_order_relaxed)) return relaxed;
        last_ = answer.columns;
        relaxed.value = answer.value;
        const bool gains = addFrom(answer, relaxed);
        relaxed.asked = askedAt(answer.duals, relaxed.worth);
        if (gains || keepApart(answer.columns) > 0) continue;
        relaxed.solved = true;
        return relaxed;
    }
    return relaxed;
}

CuttingProgram::Integral CuttingProgram::integral(int& nodes, double enough, const std::atomic<bool>& stop) {
    Integral integral;
    while (nodes > 0) {
        const IntegerProgram::Integral answer = program_.integral(nodes, enough, stop);
        nodes -= std::max(answer.nodes, 1);
        integral.bound = answer.bound;
        integral.finished = answer.finished;
        if (answer.columns.empty()) return integral;
        if (keepApart(answer.columns) > 0) continue;
        integral.value = answer.value;
        integral.cutting = cuttingOf(answer.columns);
        tidy(problem_, *integral.cutting);
        return integral;
    }
    integral.finished = false;
    return integral;
}

int CuttingProgram::mostInPart() const {
    int chosen = -1;
    double most = 1e-6;
    for (int i = 0; i < static_cast<int>(us_.size()); ++i) {
        const double part = last_[us_[i].column] - us_[i].settled;
        if (part <= most + 1e-9) continue;
        most = part;
        chosen = i;
    }
    return chosen;
}

void CuttingProgram::settle(int layout, bool oneMore) {
    UColumn& u = us_[layout];
    u.settled += oneMore ? 1 : -1;
    program_.setColumn(u.column, u.settled, unbounded);
}

bool CuttingProgram::addAllPatterns(std::size_t most) {
    const std::vector<double> worth(problem_.items.size(), 1);
    std::vector<Pattern> patterns;
    for (int shape = 0; shape < static_cast<int>(shapeRows_.size()); ++shape) {
        if (shapeRows_[shape] < 0) continue;
        std::optional<std::vector<Pattern>> all = shapes_.all(shape, worth, 0, most);
        if (!all || patterns.size() + all->size() > most) return false;
        patterns.insert(patterns.end(), all->begin(), all->end());
    }
    for (const Pattern& pattern : patterns) addPattern(pattern);
    return true;
}

bool CuttingProgram::addAll(const std::vector<int>& kinds, const std::vector<double>& worth, double below,
                            std::size_t most) {
    std::vector<Layout> layouts;
    std::set<int> shapes;
    for (int kind : kinds) {
        std::optional<std::vector<Layout>> all = shapes_.allLayouts(kind, most);
        if (!all || layouts.size() + all->size() > most) return false;
        for (Layout& layout : *all) {
            for (const LaneAt& lane : layout.lanes) shapes.insert(lane.shape);
            layouts.push_back(std::move(layout));
        }
    }
    std::vector<Pattern> patterns;
    for (int shape : shapes) {
        const double least = below == unbounded ? 0 : shapes_.best(shape, worth).worth - below;
        std::optional<std::vector<Pattern>> all = shapes_.all(shape, worth, least, most);
        if (!all || layouts.size() + patterns.size() + all->size() > most) return false;
        patterns.insert(patterns.end(), all->begin(), all->end());
    }
    for (const Layout& layout : layouts) addLayout(layout);
    for (const Pattern& pattern : patterns) addPattern(pattern);
    return true;
}

}  // namespace fayline::stock
