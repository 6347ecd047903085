#include "core/holding/propose/propose.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/holding/kinds.hpp"
#include "core/holding/propose/search.hpp"
#include "core/holding/propose/spread.hpp"
#include "core/math/count.hpp"
#include "core/model/hold_traits.hpp"

namespace fayline::holding {

namespace {

constexpr double defaultGrid_m = 0.01;
// What all trials together may cost, in looks at elements (see Effort): the sample pieces take up to 1e6. Ours.
constexpr double mostLooksProposing = 2.5e6;
// Where pads cannot press more than this share of the line (between posts), stations are proposed for gap and strength
// alone.
constexpr double mostUnpressed = 0.25;
// Where all the stations there is room for leave a gap no more than so many times the limit, fewer may still do: one
// station can lift the stack off beside it. Ours.
constexpr double worthTrying = 5;
// Where they leave more than so many times the limit, none are spared. Ours.
constexpr double hopeless = 50;

bool isKept(const model::Station& station) {
    return station.fixed || station.side || station.kind != model::HoldKind::clamp;
}

// What may be used, the best first, and how many there are of each.
struct AtHandTool {
    model::Station like;
    int count = 0;
};

model::Station stationLike(model::HoldKind kind, double most_N, double pad_m) {
    return {.kind = kind, .most_N = most_N, .pad_m = pad_m};
}

// Without tools in the file: as strong and as wide as the strongest clamp that stands there, as many as are needed.
AtHandTool shownByStations(const model::Holding& holding) {
    const model::Station* strongest = nullptr;
    for (const model::Station& station : holding.stations) {
        if (station.kind != model::HoldKind::clamp || station.side) continue;
        if (!strongest || station.most_N > strongest->most_N) strongest = &station;
    }
    const model::Station otherwise;
    const model::Station& like = strongest ? *strongest : otherwise;
    return {stationLike(model::HoldKind::clamp, like.most_N, like.pad_m), std::numeric_limits<int>::max()};
}

std::vector<AtHandTool> toolsOf(const model::Holding& holding) {
    std::vector<AtHandTool> tools;
    for (const model::Tool& tool : holding.tools) {
        if (model::traitsOf(tool.kind).standsAnywhere && tool.count > 0 && tool.most_N > 0) {
            tools.push_back({stationLike(tool.kind, tool.most_N, tool.pad_m), tool.count});
        }
    }
    std::ranges::stable_sort(tools, [](const AtHandTool& a, const AtHandTool& b) {
        if (a.like.kind != b.like.kind) return a.like.kind < b.like.kind;
        return a.like.most_N > b.like.most_N;
    });
    if (!tools.empty()) return tools;
    tools.push_back(shownByStations(holding));
    // A list that names none that could be used does not mean that there are any.
    if (!holding.tools.empty()) tools.front().count = 0;
    for (const model::Tool& tool : holding.tools) {
        if (model::traitsOf(tool.kind).standsAnywhere && tool.count > 0)
            tools.front().like = stationLike(tool.kind, 0, tool.pad_m);
    }
    return tools;
}

constexpr int endless = std::numeric_limits<int>::max();

int countOf(const std::vector<AtHandTool>& tools) {
    int count = 0;
    for (const AtHandTool& tool : tools) count = tool.count > endless - count ? endless : count + tool.count;
    return count;
}

// Those that stay take theirs first, the weakest that are strong enough.
void takeForKept(std::vector<AtHandTool>& tools, const std::vector<model::Station>& kept) {
    for (const model::Station& station : kept) {
        for (auto tool = tools.rbegin(); tool != tools.rend(); ++tool) {
            const bool serves = tool->like.kind == station.kind && tool->count > 0 &&
                                tool->like.most_N >= station.pull_N.value_or(station.most_N);
            if (!serves) continue;
            if (tool->count < endless) --tool->count;
            break;
        }
    }
}

// As many of one tool as there are, with the caul that would let them press everywhere.
struct WithinCount {
    StationSpread spread;
    std::optional<double> caul_m;
};

// One search, all proposed stations of one tool.
struct Attempt {
    Sites sites;
    Fewest fewest;
    bool byStrength = false;  // where the gap cannot be closed, strength lacks
    int withoutPressing = 0;
    std::vector<int> alone;  // for gap and strength alone, if they hold
    Fewest everywhere;       // that press everywhere, where that is a wish; holds: false where none do
    // Where pressing asks for more than there are: for each number of tools, all of them spread.
    std::vector<WithinCount> spreads;
};

struct Asked {
    const StackOnForm& work;
    const Ready& ready;
    const std::vector<model::Station>& kept;
    double grid_m = 0.01;
    const std::atomic<bool>& stop;
};

// Whether pressing everywhere is told and not asked.
bool isWish(const Asked& asked) {
    return asked.work.wanted.contactIsEnough;
}

void spreadWithin(const Asked& asked, Trials& trials, const std::vector<int>& counts, Attempt& made) {
    const model::Piece& piece = asked.work.piece;
    for (const int count : counts) {
        const std::size_t most = static_cast<std::size_t>(count);
        if (made.fewest.chosen.size() <= most || asked.stop) continue;
        const std::optional<StationSpread> spread = spreadOut(made.sites, trials, made.alone, most, asked.stop);
        if (!spread) continue;
        made.spreads.push_back({*spread, {}});
        if (piece.form.kind == model::FormKind::posts) continue;
        made.spreads.back().caul_m = caulFor(made.sites, trials, most, piece.holding.cauls.thickness_m, asked.stop);
    }
}

// With `counts` the numbers of tools to make do with where pressing asks for more.
Attempt attempt(const Asked& asked, const model::Station& like, const std::vector<int>& counts) {
    Attempt made;
    made.sites =
        sitesOf(asked.work, asked.ready.strips, asked.ready.support, asked.kept, like, asked.grid_m, asked.stop);
    Trials trials(asked.ready, asked.work, made.sites);
    if (asked.stop) {
        made.fewest.finished = false;
        return made;
    }
    const double packed = trials.packed().worst;  // infinite where it did not settle, which rules nothing out
    Fewest alone;
    if (std::isfinite(packed) && packed > hopeless) {
        trials.easeWhereNeeded();
        made.byStrength = trials.easedByStrength();
        made.fewest.chosen = allThatFit(made.sites);
        made.fewest.pressed = true;
        made.withoutPressing = static_cast<int>(made.fewest.chosen.size() + made.sites.kept.size());
        return made;
    }
    const bool worth = packed <= worthTrying || !std::isfinite(packed);
    if (worth) alone = fewest(made.sites, trials, false, asked.stop);
    if (!alone.holds && std::isfinite(packed)) {
        trials.easeWhereNeeded();
        made.byStrength = trials.easedByStrength();
        alone = fewest(made.sites, trials, false, asked.stop);
    }
    made.fewest = alone;
    const bool asksPressing =
        std::ranges::any_of(made.sites.free, [](const Site& site) { return std::isfinite(site.pressed.from_m); });
    made.fewest.pressed = !asksPressing || isWish(asked);
    const bool canPress = unpressable_m(made.sites) <= mostUnpressed * made.sites.lineLength_m;
    if (isWish(asked)) {
        if (!asksPressing) made.everywhere = alone;
        if (asksPressing && canPress && alone.holds) made.everywhere = fewest(made.sites, trials, true, asked.stop);
    } else if (asksPressing && canPress) {
        made.fewest = fewest(made.sites, trials, true, asked.stop);
        if (alone.holds) made.alone = alone.chosen;
        if (alone.holds) spreadWithin(asked, trials, counts, made);
    }
    made.withoutPressing = static_cast<int>(alone.chosen.size() + made.sites.kept.size());
    return made;
}

std::vector<model::Station> stationsAt(const Sites& sites, const std::vector<int>& chosen) {
    std::vector<model::Station> stations;
    for (const Site& site : sites.kept) stations.push_back(site.station);
    for (const int place : chosen) stations.push_back(sites.free[place].station);
    return stations;
}

bool holdsDown(const Asked& asked, const Held& held) {
    return held.outcome == Outcome::settled && held.largest.gap_m <= asked.work.piece.holding.gapLimit_m + gapCounts_m;
}

Sites sitesKept(const Asked& asked, const std::vector<model::Station>& stations) {
    return sitesOf(asked.work, asked.ready.strips, {}, stations, model::Station{}, asked.grid_m, asked.stop);
}

// Whether stations meet the gap limit and, where it is asked, pressing as `propose` takes them.
bool meets(const Asked& asked, const std::vector<model::Station>& stations, const Held& held) {
    if (isWish(asked)) return holdsDown(asked, held);
    const Sites sites = sitesKept(asked, stations);
    std::vector<laminate::Run> pressed;
    for (const Site& site : sites.kept) pressed.push_back(site.pressed);
    return holdsDown(asked, held) && pressedFor_m(sites, pressed, Way::onward) >= sites.lineLength_m;
}

// Gives the stations that are not kept the tools there are, the strongest to where the pull is greatest.
std::vector<model::Station> handOut(const std::vector<AtHandTool>& tools, std::vector<model::Station> stations,
                                    std::size_t keptCount, const Held& held) {
    std::vector<const HeldStation*> byPull;
    for (const HeldStation& station : held.stations) {
        if (static_cast<std::size_t>(station.index) >= keptCount) byPull.push_back(&station);
    }
    std::ranges::stable_sort(byPull, [](const HeldStation* a, const HeldStation* b) { return a->pull_N > b->pull_N; });
    std::size_t tool = 0;
    int used = 0;
    for (const HeldStation* station : byPull) {
        while (tool + 1 < tools.size() && used >= tools[tool].count) {
            ++tool;
            used = 0;
        }
        model::Station& given = stations[station->index];
        const double at = given.at_m;
        given = tools[tool].like;
        given.at_m = at;
        ++used;
    }
    return stations;
}

// What sets the spacing of a station to the one before, by which condition would first be broken further off: spacings
// of pads by what they press, gaps by the fourth root (that is how they grow with the spacing).
Governs governs(const Held& held, const Sites& own, std::size_t index, double limit_m, bool pressingAsked) {
    const HeldStation& here = held.stations[index];
    const Site& site = own.kept[index];
    if (isKept(site.station)) return Governs::fixedOne;
    std::size_t before = index;
    while (before > 0 && !closesGap(own.kept[before - 1].station)) --before;
    if (before == 0) return Governs::end;
    --before;
    const double spacing = here.at_m - held.stations[before].at_m;
    const double pressed = (site.pressed.to_m - site.pressed.from_m) / 2 +
                           (own.kept[before].pressed.to_m - own.kept[before].pressed.from_m) / 2;
    const double byPressing = pressingAsked && std::isfinite(pressed) && pressed > 0 ? spacing / pressed : 0;
    double gap = 0;
    for (const HeldSample& sample : held.samples) {
        const bool between = sample.at_m > held.stations[before].at_m && sample.at_m < here.at_m;
        const bool inPiece = sample.at_m >= 0 && sample.at_m <= own.lineLength_m;
        if (between && inPiece) gap = std::max(gap, sample.gap_m);
    }
    const double byGap = std::pow(gap / std::max(limit_m, gapCounts_m), 0.25);
    // Beyond the trim line it is there for the end, unless something brings it nearer.
    if (here.at_m > own.lineLength_m && std::max(byPressing, byGap) < 0.9) return Governs::end;
    if (byPressing >= byGap) return byPressing > 0 ? Governs::pressing : Governs::end;
    const bool full = here.state == HoldState::full || held.stations[before].state == HoldState::full;
    return full ? Governs::strength : Governs::gap;
}

// What is proposed in the end.
struct ProposedStations {
    Attempt made;
    std::vector<model::Station> stations;  // those kept first
    Held held;
    bool withinCounts = true;
    bool pressed = true;
    int forEverything = 0;
    std::optional<double> caul_m;
    double stretch = 1;
};

int together(int a, int b) {
    return b > endless - a ? endless : a + b;
}

// Of what was spread within the counts the one that presses most evenly; nothing if there is none that holds. `enough`:
// how many there are of tools no weaker than those tried.
std::optional<ProposedStations> mostEven(const Asked& asked, const std::vector<AtHandTool>& tools, const Attempt& made,
                                         int enough) {
    std::optional<ProposedStations> best;
    for (const WithinCount& within : made.spreads) {
        ProposedStations choice{
            .stations = stationsAt(made.sites, within.spread.chosen), .pressed = false, .caul_m = within.caul_m};
        choice.held = holdWith(asked.work, choice.stations);
        choice.stretch = within.spread.stretch;
        if (math::countOf(within.spread.chosen) > enough) {
            choice.caul_m.reset();
            choice.stations = handOut(tools, choice.stations, asked.kept.size(), choice.held);
            choice.held = holdWith(asked.work, choice.stations, &choice.held);
            if (!holdsDown(asked, choice.held)) continue;
            choice.stretch = stretchOf(sitesKept(asked, choice.stations), {});
        }
        if (!best || choice.stretch < best->stretch) best = std::move(choice);
    }
    if (best) best->made = made;
    return best;
}

// Between neighbours that close the gap, where some of the line lies between them.
double largestSpacing_m(const std::vector<model::Station>& ordered, double lineLength_m) {
    double largest = 0;
    const model::Station* last = nullptr;
    for (const model::Station& station : ordered) {
        if (!closesGap(station)) continue;
        const bool line = last && station.at_m > 0 && last->at_m < lineLength_m;
        if (line) largest = std::max(largest, station.at_m - last->at_m);
        last = &station;
    }
    return largest;
}

// All of the best tool if there are enough of it. Else the best where the pull is greatest and weaker ones elsewhere;
// where that does not do, as many stations as the weaker tool alone would need; and where pressing asks for more than
// all there are, these spread.
ProposedStations choose(const Asked& asked, const std::vector<AtHandTool>& tools) {
    ProposedStations best;
    std::optional<ProposedStations> even;
    const int all = countOf(tools);
    int enough = 0;
    for (std::size_t i = 0; i < tools.size(); ++i) {
        enough = together(enough, tools[i].count);
        ProposedStations choice;
        choice.made =
            attempt(asked, tools[i].like, enough < all ? std::vector<int>{enough, all} : std::vector<int>{all});
        choice.stations = stationsAt(choice.made.sites, choice.made.fewest.chosen);
        choice.held = holdWith(asked.work, choice.stations);
        choice.pressed = choice.made.fewest.pressed;
        const int asks = math::countOf(choice.made.fewest.chosen);
        choice.withinCounts = asks <= enough;
        if (isWish(asked)) {
            const Fewest& everywhere = choice.made.everywhere;
            if (everywhere.holds && everywhere.pressed)
                choice.forEverything = static_cast<int>(everywhere.chosen.size() + choice.made.sites.kept.size());
        } else if (choice.pressed && holdsDown(asked, choice.held)) {
            choice.forEverything = math::countOf(choice.stations);
        }
        // A weaker tool that cannot press is no answer where the best could, were there more of it.
        const bool asGood = i == 0 || (choice.made.fewest.holds && choice.pressed >= best.pressed);
        if (choice.withinCounts && asGood) return choice;
        const std::vector<model::Station> mixed = handOut(tools, choice.stations, asked.kept.size(), choice.held);
        const Held held = holdWith(asked.work, mixed, &choice.held);
        if (all >= asks && meets(asked, mixed, held)) {
            choice.stations = mixed;
            choice.held = held;
            choice.withinCounts = choice.pressed = true;
            if (!isWish(asked)) choice.forEverything = math::countOf(mixed);
            return choice;
        }
        std::optional<ProposedStations> spread = mostEven(asked, tools, choice.made, enough);
        if (spread && (!even || spread->stretch < even->stretch)) even = std::move(spread);
        if (i == 0) best = std::move(choice);
        if (asked.stop) break;
    }
    if (!even) return best;
    even->forEverything = best.forEverything;
    return *even;
}

void fill(Proposal& proposal, const Asked& asked, const std::vector<model::Station>& stations, const Held& held) {
    std::vector<model::Station> ordered;
    for (const HeldStation& station : held.stations) ordered.push_back(stations[station.index]);
    const Sites own = sitesKept(asked, ordered);
    for (std::size_t i = 0; i < ordered.size(); ++i) {
        const Governs by = governs(held, own, i, asked.work.piece.holding.gapLimit_m, !isWish(asked));
        proposal.stations.push_back(
            {ordered[i], by, held.stations[i].pull_N, held.stations[i].gap_m, held.stations[i].state});
    }
    proposal.largest = held.largest;
    proposal.largestSpacing_m = largestSpacing_m(ordered, asked.work.line.length());
}

}  // namespace

const char* governsWord(Governs governs) {
    switch (governs) {
        case Governs::gap:
            return "gap";
        case Governs::strength:
            return "strength";
        case Governs::pressing:
            return "pressing";
        case Governs::fixedOne:
            return "fixed";
        case Governs::end:
            break;
    }
    return "end";
}

Proposal propose(const StackOnForm& given, const std::atomic<bool>& stop, double grid_m) {
    Effort effort{&stop, mostLooksProposing};
    const StackOnForm work = within(given, effort);
    const model::Holding& holding = work.piece.holding;
    std::vector<model::Station> kept;
    for (const model::Station& station : holding.stations) {
        if (isKept(station)) kept.push_back(station);
    }
    Proposal proposal;
    proposal.pressingIsWish = work.wanted.contactIsEnough;
    for (const model::Tool& tool : holding.tools) {
        if (model::traitsOf(tool.kind).standsAnywhere) proposal.tools += std::max(0, tool.count);
    }
    const Ready ready = makeReady(work);
    const Asked asked{work, ready, kept, std::isfinite(grid_m) && grid_m > 0 ? grid_m : defaultGrid_m, stop};
    std::vector<AtHandTool> tools = toolsOf(holding);
    if (!ready.bears() || !(tools.front().like.most_N > 0)) {
        const Held held = holdWith(work, kept);
        fill(proposal, asked, kept, held);
        proposal.withoutPressing = math::countOf(kept);
        proposal.met = !kept.empty() && meets(asked, kept, held);
        if (proposal.met) proposal.forEverything = math::countOf(kept);
        if (!proposal.met) proposal.unmet = ready.bears() ? Governs::strength : Governs::gap;
        return proposal;
    }

    takeForKept(tools, kept);
    ProposedStations choice = choose(asked, tools);
    if (effort.ended() && !stop) {
        // How the best so far holds is looked at in any case.
        effort.most = effort.spent + mostLooks;
        choice.held = holdWith(work, choice.stations);
    }
    fill(proposal, asked, choice.stations, choice.held);
    const Attempt& made = choice.made;
    proposal.withinCounts = choice.withinCounts;
    proposal.forEverything = choice.forEverything;
    proposal.withoutPressing = made.withoutPressing;
    proposal.searched = made.fewest.searched && effort.spent < mostLooksProposing;
    proposal.finished = made.fewest.finished && !stop;
    const bool held = std::ranges::any_of(choice.stations, pressesOnForm);
    const bool gapMet = held && holdsDown(asked, choice.held);
    proposal.met = gapMet && choice.pressed;
    const bool full = std::ranges::any_of(choice.held.stations,
                                          [](const HeldStation& station) { return station.state == HoldState::full; });
    if (!gapMet) proposal.unmet = made.byStrength || full ? Governs::strength : Governs::gap;
    if (gapMet && !choice.pressed) {
        proposal.unmet = Governs::pressing;
        proposal.caul_m = choice.caul_m;
    }
    return proposal;
}

std::vector<model::Station> stationsOf(const Proposal& proposal) {
    std::vector<model::Station> stations;
    for (const Proposed& proposed : proposal.stations) stations.push_back(proposed.station);
    return stations;
}

}  // namespace fayline::holding
