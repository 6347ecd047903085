#include "core/stock/yields.hpp"

#include <algorithm>
#include <set>
#include <tuple>

namespace fayline::stock {

namespace {

int lanesOf(const Kind& kind, const Section& section, Sawing sawing, Um kerf) {
    const Um across = (kind.width + kerf) / (acrossOf(section, sawing) + kerf);
    const Um through = (kind.thickness + kerf) / (throughOf(section, sawing) + kerf);
    return static_cast<int>(across * through);
}

bool badAllOver(const Kind& kind) {
    // Lanes between the edges of bad stretches: each is bad from end to end.
    std::set<Um> edges{0, kind.width};
    for (const BadUm& bad : kind.bad) {
        edges.insert(std::clamp<Um>(bad.across.from, 0, kind.width));
        edges.insert(std::clamp<Um>(bad.across.to, 0, kind.width));
    }
    for (auto edge = edges.begin(); std::next(edge) != edges.end(); ++edge)
        if (badOf(kind, {*edge, *std::next(edge)}) != std::vector<Span>{{0, kind.length}}) return false;
    return true;
}

}  // namespace

std::vector<Yield> yieldsOf(const Job& job, const Problem& problem) {
    std::vector<Yield> yields;
    std::set<int> seen;
    for (const Kind& kind : problem.kinds) {
        if (!seen.insert(kind.board).second) continue;
        std::set<int> sections;
        for (int i = 0; i < static_cast<int>(job.strips.size()); ++i) {
            const Wanted& wanted = problem.wanted[i];
            if (wanted.wood != kind.wood || !sections.insert(wanted.section).second) continue;
            const Section& section = problem.sections[wanted.section];
            yields.push_back({kind.board, i, lanesOf(kind, section, Sawing::ripped, problem.kerf),
                              lanesOf(kind, section, Sawing::resawn, problem.kerf)});
        }
    }
    return yields;
}

std::vector<Trouble> boardTroubles(const Job& job, const Problem& problem, const std::vector<Yield>& yields) {
    std::vector<Trouble> troubles;
    for (int i = 0; i < static_cast<int>(job.strips.size()); ++i)
        if (job.rules.planing_m > 0 && toUm(job.strips[i].thickness_m) < toUm(job.rules.planerLeast_m))
            troubles.push_back({TroubleKind::thinnerThanPlaner, i, -1});
    std::set<int> seen;
    for (const Kind& kind : problem.kinds) {
        if (!seen.insert(kind.board).second) continue;
        const bool wanted = std::any_of(problem.wanted.begin(), problem.wanted.end(),
                                        [&](const Wanted& one) { return one.wood == kind.wood; });
        const bool gives = std::any_of(yields.begin(), yields.end(), [&](const Yield& yield) {
            if (yield.board != kind.board) return false;
            return std::any_of(problem.sawings.begin(), problem.sawings.end(), [&](Sawing sawing) {
                return (sawing == Sawing::ripped ? yield.ripped : yield.resawn) > 0;
            });
        });
        if (problem.kerf >= kind.width) troubles.push_back({TroubleKind::kerfTooWide, -1, kind.board});
        if (!wanted) {
            troubles.push_back({TroubleKind::boardOtherWood, -1, kind.board});
        } else if (badAllOver(kind)) {
            troubles.push_back({TroubleKind::boardAllBad, -1, kind.board});
        } else if (!gives && problem.kerf < kind.width) {
            troubles.push_back({TroubleKind::boardTooSmall, -1, kind.board});
        }
    }
    return troubles;
}

}  // namespace fayline::stock
