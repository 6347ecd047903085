#include "core/stock/problem.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "core/stock/ways.hpp"

namespace fayline::stock {

namespace {

int indexIn(std::map<std::string, int>& names, const std::string& name) {
    return names.try_emplace(name, static_cast<int>(names.size())).first->second;
}

Kind kindOf(const Board& board, int index, int wood, const Rules& rules, Aim aim) {
    Kind kind{.board = index,
              .wood = wood,
              .length = toUm(board.length_m),
              .width = toUm(board.width_m),
              .thickness = toUm(board.thickness_m)};
    const Span all{0, kind.width};
    for (const Bad& bad : board.bad) {
        const Span along{std::max<Um>(toUm(bad.along.from_m), 0), std::min(toUm(bad.along.to_m), kind.length)};
        const Span across = bad.across ? Span{toUm(bad.across->from_m), toUm(bad.across->to_m)} : all;
        if (along.length() > 0 && across.length() > 0) kind.bad.push_back({along, across});
    }
    const Um snipe = std::min(toUm(rules.snipe_m), kind.length);
    if (snipe > 0 && rules.planing_m > 0) {
        kind.bad.push_back({{0, snipe}, all});
        kind.bad.push_back({{kind.length - snipe, kind.length}, all});
    }
    kind.cost = aim == Aim::leastPrice ? board.price : board.length_m * board.width_m * board.thickness_m;
    return kind;
}

// By board and copy, which kind a pin to it means.
using PinnedKinds = std::map<std::pair<int, int>, int>;

void addKinds(Problem& problem, const Job& job, const std::vector<int>& woods, PinnedKinds& pinned) {
    const std::size_t mostCopies = 20 * job.strips.size();  // no strip has as many parts
    std::set<std::pair<int, int>> pins;
    for (const Pin& pin : job.rules.pins) pins.insert({pin.board, pin.copy.value_or(-1)});
    for (int i = 0; i < static_cast<int>(job.boards.size()); ++i) {
        Kind rest = kindOf(job.boards[i], i, woods[i], job.rules, problem.aim);
        for (int copy = 0; copy < job.boards[i].count; ++copy) {
            if (!pins.contains({i, copy})) {
                if (rest.copies.size() < mostCopies) rest.copies.push_back(copy);
                continue;
            }
            Kind own = rest;
            own.copies = {copy};
            own.pinnedTo = true;
            pinned[{i, copy}] = static_cast<int>(problem.kinds.size());
            problem.kinds.push_back(own);
        }
        rest.pinnedTo = pins.contains({i, -1});
        if (rest.pinnedTo) pinned[{i, -1}] = static_cast<int>(problem.kinds.size());
        if (!rest.copies.empty() || rest.pinnedTo) problem.kinds.push_back(std::move(rest));
    }
}

void addNeighbours(Problem& problem, const Job& job) {
    std::map<std::pair<std::string, int>, std::vector<int>> lying;
    for (int i = 0; i < static_cast<int>(job.strips.size()); ++i)
        if (!job.strips[i].spare) lying[{job.strips[i].piece, job.strips[i].place}].push_back(i);
    for (const auto& [where, here] : lying) {
        const auto above = lying.find({where.first, where.second + 1});
        if (above == lying.end()) continue;
        for (int one : here)
            for (int other : above->second) {
                const double thick = std::max(job.strips[one].thickness_m, job.strips[other].thickness_m);
                problem.neighbours.push_back({one, other, toUm(job.rules.staggerThicknesses * thick)});
            }
    }
}

std::vector<Span> turnedRound(const std::vector<Span>& spans, Um length) {
    std::vector<Span> round;
    for (auto span = spans.rbegin(); span != spans.rend(); ++span)
        round.push_back({length - span->to, length - span->from});
    return round;
}

std::vector<Span> both(const std::vector<Span>& one, const std::vector<Span>& other) {
    std::vector<Span> common;
    for (const Span& a : one)
        for (const Span& b : other) {
            const Span span{std::max(a.from, b.from), std::min(a.to, b.to)};
            if (span.from <= span.to) common.push_back(span);
        }
    return common;
}

// Places at which something so long may begin though this stretch is bad.
std::vector<Span> startsBeside(const Span& bad, Um length, const std::vector<Span>& mayBeBad, Um last) {
    std::vector<Span> starts;
    const auto add = [&](Um from, Um to) {
        const Span span{std::max<Um>(from, 0), std::min(to, last)};
        if (span.from <= span.to) starts.push_back(span);
    };
    add(0, bad.from - length);
    add(bad.to, last);
    for (const Span& may : mayBeBad)
        add(may.to == length ? 0 : bad.to - may.to, may.from == 0 ? last : bad.from - may.from);
    std::sort(starts.begin(), starts.end());
    std::vector<Span> joined;  // in whole micrometres spans that follow each other are one
    for (const Span& span : starts) {
        if (!joined.empty() && span.from <= joined.back().to + 1)
            joined.back().to = std::max(joined.back().to, span.to);
        else
            joined.push_back(span);
    }
    return joined;
}

std::vector<Span> startsAmong(const std::vector<Span>& bad, Um length, const std::vector<Span>& mayBeBad, Um last) {
    std::vector<Span> starts{{0, last}};
    for (const Span& one : bad) starts = both(starts, startsBeside(one, length, mayBeBad, last));
    return starts;
}

}  // namespace

Um toUm(double metres) {
    return static_cast<Um>(std::llround(metres * 1e6));
}
double toMetres(Um um) {
    return static_cast<double>(um) / 1e6;
}

std::vector<Span> merged(std::vector<Span> spans) {
    std::sort(spans.begin(), spans.end());
    std::vector<Span> joined;
    for (const Span& span : spans) {
        if (span.length() <= 0) continue;
        if (!joined.empty() && span.from <= joined.back().to)
            joined.back().to = std::max(joined.back().to, span.to);
        else
            joined.push_back(span);
    }
    return joined;
}

Um acrossOf(const Section& section, Sawing sawing) {
    return sawing == Sawing::ripped ? section.thick : section.wide;
}
Um throughOf(const Section& section, Sawing sawing) {
    return sawing == Sawing::ripped ? section.wide : section.thick;
}

std::vector<Span> badOf(const Kind& kind, Span across) {
    std::vector<Span> bad;
    for (const BadUm& one : kind.bad)
        if (one.across.from < across.to && one.across.to > across.from) bad.push_back(one.along);
    return merged(std::move(bad));
}

std::vector<Um> beginnings(const Kind& kind, Um free, Um wide) {
    std::vector<Um> places{free};
    for (const BadUm& bad : kind.bad)
        if (bad.across.to > free) places.push_back(bad.across.to);
    std::erase_if(places, [&](Um at) { return at + wide > kind.width; });
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end()), places.end());
    return places;
}

Starts startsOf(const Item& item, Um laneLength, const std::vector<Span>& bad) {
    Starts starts;
    const Um last = laneLength - item.length;
    if (last < 0) return starts;
    starts.plain = startsAmong(bad, item.length, item.mayBeBad, last);
    const std::vector<Span> round = turnedRound(item.mayBeBad, item.length);
    if (!bad.empty() && round != item.mayBeBad) starts.turned = startsAmong(bad, item.length, round, last);
    return starts;
}

Start firstStart(const Starts& starts, Um free) {
    const auto first = [&](const std::vector<Span>& spans) -> Um {
        for (const Span& span : spans)
            if (span.to >= free) return std::max(span.from, free);
        return -1;
    };
    const Um plain = first(starts.plain);
    const Um turned = first(starts.turned);
    const bool turn = turned >= 0 && (plain < 0 || turned < plain);
    return {turn ? turned : plain, turn};
}

bool mayComeFrom(const Item& item, const Problem& problem, int kind) {
    return item.wood == problem.kinds[kind].wood && (item.pinned < 0 || item.pinned == kind);
}

bool staggered(const Way& one, const Way& other, Um stagger) {
    for (Um a : one.joints)
        for (Um b : other.joints)
            if (std::abs(a - b) < stagger) return false;
    return true;
}

Problem problemOf(const Job& job, bool mayForce) {
    Problem problem;
    problem.kerf = toUm(job.rules.kerf_m);
    problem.sawings = job.rules.sawing ? std::vector{*job.rules.sawing} : std::vector{Sawing::ripped, Sawing::resawn};
    const bool priced = std::any_of(job.boards.begin(), job.boards.end(), [](const Board& b) { return b.price > 0; });
    problem.aim = priced ? job.rules.aim : Aim::leastWood;

    std::map<std::string, int> names;
    std::vector<int> woods;
    for (const Board& board : job.boards) woods.push_back(indexIn(names, board.species));
    PinnedKinds pinned;
    addKinds(problem, job, woods, pinned);

    std::map<Section, int> sections;
    const int spares = static_cast<int>(
        std::count_if(job.strips.begin(), job.strips.end(), [](const Strip& strip) { return strip.spare; }));
    for (const Strip& strip : job.strips) {
        const Section section{toUm(strip.thickness_m + 2 * job.rules.planing_m),
                              toUm(strip.width_m + 2 * job.rules.widthAllowance_m)};
        const auto [known, isNew] = sections.try_emplace(section, static_cast<int>(sections.size()));
        if (isNew) problem.sections.push_back(section);
        problem.wanted.push_back({.section = known->second,
                                  .wood = indexIn(names, strip.species),
                                  .length = toUm(strip.length_m),
                                  .scarf = toUm(job.rules.scarfSlope * strip.thickness_m),
                                  .weight = strip.spare ? 1 : spares + 1});
    }
    for (const Pin& pin : job.rules.pins)
        problem.wanted[pin.strip].pinned = pinned.at({pin.board, pin.copy.value_or(-1)});
    addNeighbours(problem, job);
    addWays(problem, job, mayForce);
    return problem;
}

}  // namespace fayline::stock
