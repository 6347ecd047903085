#include "core/holding/at_hand.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "core/holding/kinds.hpp"
#include "core/holding/loose_stack.hpp"
#include "core/holding/pressed.hpp"
#include "core/laminate/layers.hpp"
#include "core/math/count.hpp"
#include "core/model/hold_traits.hpp"

namespace fayline::holding {

namespace {

using model::HoldKind;

constexpr double rounding = 1 + 1e-9;

// Whether `tool` pulls as much as `need` asks; opens as far, has as deep a throat, as far as the file says. Only clamps
// are said to open and to have a throat.
bool isStrong(const model::Tool& tool, const Served& need) {
    return tool.most_N * rounding >= need.needed_N;
}
bool opensEnough(const model::Tool& tool, const Served& need) {
    return !model::traitsOf(tool.kind).hasJaws || !tool.opening_m || *tool.opening_m * rounding >= need.opening_m;
}
bool reaches(const model::Tool& tool, const Served& need) {
    return !model::traitsOf(tool.kind).hasJaws || !tool.throat_m || *tool.throat_m * rounding >= need.throat_m;
}

// The tool of holding.tools for each of `needs` (in the order of holding.stations), -1 where none is left: as many
// stations as possible have one, those that need most before others, none of them a stronger one than it has to where a
// weaker is free. A thousand stations and tools of one kind take some ten milliseconds. Station after station, moving
// those served already to other tools where that makes room (augmenting paths). A tool that a search in vain has looked
// at is never looked at again, so that many stations without hope cost little.
class Assignment {
public:
    Assignment(const model::Holding& holding, const std::vector<Served>& needs)
        : holding_(holding),
          needs_(needs),
          toolOf_(needs.size(), -1),
          users_(holding.tools.size()),
          seen_(holding.tools.size(), false),
          hopeless_(holding.tools.size(), false),
          weakestFirst_(holding.tools.size()) {
        std::iota(weakestFirst_.begin(), weakestFirst_.end(), 0);
        std::ranges::stable_sort(weakestFirst_, [&](int a, int b) { return tool(a).most_N < tool(b).most_N; });
        std::vector<int> order(needs.size());
        std::iota(order.begin(), order.end(), 0);
        std::ranges::stable_sort(order, [&](int a, int b) { return need(a).needed_N > need(b).needed_N; });
        for (const int station : order) {
            seen_ = hopeless_;
            if (!serve(station)) hopeless_ = seen_;
        }
    }

    const std::vector<int>& toolOf() const { return toolOf_; }

private:
    const model::Tool& tool(int index) const { return holding_.tools[index]; }
    const Served& need(int index) const { return needs_[index]; }

    bool suits(int toolIndex, int station) const {
        const model::Tool& one = tool(toolIndex);
        return one.kind == holding_.stations[station].kind && isStrong(one, need(station)) &&
               opensEnough(one, need(station)) && reaches(one, need(station));
    }

    bool serve(int station) {
        for (const int index : weakestFirst_) {
            const auto i = static_cast<std::size_t>(index);
            if (seen_[i] || !suits(index, station)) continue;
            if (math::countOf(users_[i]) < tool(index).count) {
                users_[i].push_back(station);
                toolOf_[station] = index;
                return true;
            }
        }
        for (const int index : weakestFirst_) {
            const auto i = static_cast<std::size_t>(index);
            if (seen_[i] || !suits(index, station)) continue;
            seen_[i] = true;
            for (int& user : users_[i]) {
                if (!serve(user)) continue;
                user = station;
                toolOf_[station] = index;
                return true;
            }
        }
        return false;
    }

    const model::Holding& holding_;
    const std::vector<Served>& needs_;
    std::vector<int> toolOf_;
    std::vector<std::vector<int>> users_;
    std::vector<bool> seen_;
    std::vector<bool> hopeless_;
    std::vector<int> weakestFirst_;
};

double depthAt(const LooseStack& loose, double at_m) {
    return loose.strips.back().layer.outer.at(at_m) - loose.strips.front().layer.inner.at(at_m);
}

double crushOf(const LooseStack& loose, double at_m, double pad_m) {
    double depth = 0;
    for (const LooseStrip* strip : stripsThere(loose, at_m)) depth += strip->layer.thicknessAt(at_m);
    const double give = sectionAt(loose, at_m).foundation_N_m2 * (std::max(0.0, pad_m) + depth);
    return give > 0 ? 1 / give : 0;
}

double neededBy(const model::Station& station, const HeldStation* held) {
    if (station.side) return station.pull_N.value_or(0);
    if (!model::traitsOf(station.kind).closesGap) return station.pull_N.value_or(station.most_N);
    if (!held) return station.pull_N.value_or(station.most_N);
    const bool pushes = model::is<model::Strut>(station.kind);
    // What it can do square to the form is its strength times the cosine of its slant.
    return pushes && held->most_N > 0 ? held->pull_N * station.most_N / held->most_N : held->pull_N;
}

Served whatIsNeeded(const StackOnForm& work, const LooseStack& loose, int index, const HeldStation* held) {
    const model::Station& station = work.piece.holding.stations[index];
    const double width = laminate::ripWidthAt(work.piece.stack, station.at_m);
    const double depth = depthAt(loose, station.at_m);
    return Served{.station = index,
                  .needed_N = neededBy(station, held),
                  .opening_m = station.side ? width : depth + work.piece.holding.cauls.thickness_m,
                  .throat_m = (station.side ? depth : width) / 2};
}

// Why none of `tools` of this kind serves the station.
Lacks whatLacks(const std::vector<model::Tool>& tools, HoldKind kind, const Served& need) {
    Lacks lacks = Lacks::strength;
    for (const model::Tool& tool : tools) {
        if (tool.kind != kind || !isStrong(tool, need)) continue;
        lacks = std::max(lacks, !opensEnough(tool, need) ? Lacks::opening
                                : !reaches(tool, need)   ? Lacks::throat
                                                         : Lacks::count);
    }
    return lacks;
}

bool isListed(const model::Holding& holding, HoldKind kind) {
    return std::ranges::any_of(holding.tools, [&](const auto& tool) { return tool.kind == kind; });
}

const HeldStation* heldOf(const Held& held, int index) {
    const auto found = std::ranges::find(held.stations, index, &HeldStation::index);
    return found == held.stations.end() ? nullptr : &*found;
}

void tellTool(Served& served, const StackOnForm& work, const LooseStack& loose) {
    const model::Station& station = work.piece.holding.stations[static_cast<std::size_t>(served.station)];
    const model::Tool& tool = work.piece.holding.tools[static_cast<std::size_t>(served.tool)];
    if (!model::traitsOf(tool.kind).hasJaws) return;
    if (tool.opening_m) served.opens = opensEnough(tool, served);
    if (tool.throat_m) served.throats = reaches(tool, served);
    if (!tool.pitch_m || station.side) return;
    served.turnsPastSnug = turnsPastSnug(
        served.needed_N, *tool.pitch_m, crushOf(loose, station.at_m, 2 * halfPad_m(station, work.piece.holding.cauls)));
}

std::vector<Counted> countKinds(const model::Holding& holding, const std::vector<Served>& served) {
    std::vector<Counted> counts;
    for (const model::HoldTraits& traits : model::holdTraits) {
        const HoldKind kind = traits.kind;
        Counted counted{.kind = kind, .listed = isListed(holding, kind)};
        for (const model::Tool& tool : holding.tools) counted.there += tool.kind == kind ? tool.count : 0;
        for (const Served& one : served) {
            if (holding.stations[one.station].kind != kind) continue;
            ++counted.asked;
            if (one.lacks != Lacks::nothing) counted.withoutTool.push_back(one.station);
        }
        if (counted.asked > 0 || counted.listed) counts.push_back(counted);
    }
    return counts;
}

// What the loose strips that are there resist bending with, the curve they have taken before set aside and over what
// they have in common: of the first i strips at sums[i].
std::vector<double> stiffnessSums(const LooseStack& loose, double at_m) {
    std::vector<double> sums{0};
    for (const LooseStrip& strip : loose.strips) {
        const bool there = strip.run.holds(at_m);
        const double resistance = strip.modulus_Pa * (1 - strip.set) * std::pow(strip.layer.thicknessAt(at_m), 3);
        sums.push_back(sums.back() + (there ? resistance : 0));
    }
    return sums;
}

// Share of the pull that is left when the strips are bent on in two lots, the first up to strip `after`: the stiffer's.
double shareLeft(const std::vector<double>& sums, std::size_t after) {
    const double all = sums.back();
    return all > 0 ? std::max(sums[after], all - sums[after]) / all : 1;
}

int countServed(const model::Holding& holding, const std::vector<Served>& needs) {
    const std::vector<int> toolOf = Assignment(holding, needs).toolOf();
    return static_cast<int>(std::ranges::count_if(toolOf, [](int tool) { return tool >= 0; }));
}

void trySplit(AtHand& atHand, const StackOnForm& work, const LooseStack& loose) {
    const model::Holding& holding = work.piece.holding;
    if (!work.piece.stack.gluings.empty()) return;
    std::vector<std::vector<double>> sums;
    for (const model::Station& station : holding.stations) sums.push_back(stiffnessSums(loose, station.at_m));
    std::size_t best = 0;
    double bestShare = 1;
    for (std::size_t after = 1; after < loose.strips.size(); ++after) {
        double share = 0;
        for (const Served& one : atHand.served) {
            if (one.lacks == Lacks::nothing) continue;
            share = std::max(share, shareLeft(sums[one.station], after));
        }
        if (share < bestShare - 1e-9) {
            best = after;
            bestShare = share;
        }
    }
    if (best == 0) return;

    std::vector<Served> needs = atHand.served;
    for (Served& need : needs) {
        const auto i = static_cast<std::size_t>(need.station);
        const model::Station& station = holding.stations[i];
        if (closesGap(station) && !station.pull_N) need.needed_N *= shareLeft(sums[i], best);
    }
    const int before = countServed(holding, atHand.served);
    const int serves = countServed(holding, needs) - before;
    if (serves <= 0) return;
    atHand.splitAfterStrip = static_cast<int>(best);
    atHand.splitShare = bestShare;
    atHand.splitServes = serves;
}

// Length of line nearer to this station than to its neighbours that press on the form.
double reachOf(const model::Holding& holding, const model::Station& station) {
    double before = std::numeric_limits<double>::infinity();
    double after = before;
    for (const model::Station& other : holding.stations) {
        if (!closesGap(other)) continue;
        if (other.at_m < station.at_m) before = std::min(before, station.at_m - other.at_m);
        if (other.at_m > station.at_m) after = std::min(after, other.at_m - station.at_m);
    }
    if (!std::isfinite(before)) before = after;
    if (!std::isfinite(after)) after = before;
    return std::isfinite(before) ? (before + after) / 2 : station.pad_m;
}

void tryOtherTools(AtHand& atHand, const StackOnForm& work) {
    const model::Holding& holding = work.piece.holding;
    for (const Served& one : atHand.served) {
        const model::Station& station = holding.stations[one.station];
        if (one.lacks == Lacks::nothing || station.side) continue;
        if (!model::traitsOf(station.kind).strapWouldDo) continue;
        const double turn = outsideTurn_per_m(work, station.at_m);
        const double reach = reachOf(holding, station);
        const double tension = one.needed_N / (std::max(turn, straight_per_m) * reach);
        if (turn > straight_per_m && tension <= strapsPull_N) {
            ++atHand.strapsWouldServe;
            atHand.strapTension_N = std::max(atHand.strapTension_N, tension);
        }
        const bool hasForm = work.piece.form.kind != model::FormKind::inPlace;
        if (station.kind == HoldKind::clamp && hasForm && one.needed_N <= wedgesPress_N) ++atHand.wedgesWouldServe;
    }
}

}  // namespace

AtHand atHand(const StackOnForm& work, const Held& held) {
    const model::Holding& holding = work.piece.holding;
    const LooseStack loose = looseStack(work.piece.stack, work.piece.line.describes, work.line.length(), work.species);
    AtHand atHand;
    for (int i = 0; i < math::countOf(holding.stations); ++i) {
        atHand.served.push_back(whatIsNeeded(work, loose, i, heldOf(held, i)));
    }
    const std::vector<int> toolOf = Assignment(holding, atHand.served).toolOf();
    for (Served& served : atHand.served) {
        const HoldKind kind = holding.stations[served.station].kind;
        served.tool = toolOf[served.station];
        if (served.tool >= 0) {
            tellTool(served, work, loose);
        } else if (isListed(holding, kind)) {
            served.lacks = whatLacks(holding.tools, kind, served);
            ++atHand.leftWithout;
        }
    }
    atHand.counts = countKinds(holding, atHand.served);
    if (atHand.leftWithout == 0) return atHand;
    trySplit(atHand, work, loose);
    tryOtherTools(atHand, work);
    return atHand;
}

double stackCrush_m_per_N(const StackOnForm& work, double at_m, double pad_m) {
    return crushOf(looseStack(work.piece.stack, work.piece.line.describes, work.line.length(), work.species), at_m,
                   pad_m);
}

double turnsPastSnug(double pull_N, double pitch_m, double stackCrush_m_per_N) {
    if (!(pitch_m > 0)) return 0;
    return pull_N * (stackCrush_m_per_N + clampGives_m_per_N) / pitch_m;
}

}  // namespace fayline::holding
