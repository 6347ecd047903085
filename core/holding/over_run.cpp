#include "core/holding/over_run.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/contact/gaps.hpp"
#include "core/holding/kinds.hpp"
#include "core/holding/pressed.hpp"

namespace fayline::holding {

namespace {

// What is tried from little to much: the end may lie down with a middling clamp and not with a strong one, which lifts
// the stack between itself and the next station; the first that does is then narrowed down by halving.
constexpr double firstClamp_N = 100;
constexpr double clampGrowth = 1.5;
constexpr double mostClamp_N = 50000;
constexpr double clampShare = 0.01;  // of itself, to which it is told
constexpr double leastStep_N = 1;
constexpr double caulStep_m = 0.0005;
constexpr int caulSteps[] = {0, 2, 4, 8, 12, 16, 24, 32, 48, 64, 96, 120};  // to 60 mm
constexpr double overRunStep_m = 0.005;
constexpr int overRunSteps[] = {0,  4,  8,  12, 16, 20,  24,  28,  32,  36,  40,
                                50, 60, 70, 80, 90, 100, 120, 140, 160, 180, 200};  // to a metre

// What one trial may cost, in looks at each element (see Effort): one that has not settled by then leaves the end up. A
// sound one takes 10 to 40. What all trials of both ends may cost. Ours.
constexpr double mostLooksEachTrial = 150;
constexpr double mostLooksOfAll = 1e6;
// The stack that springs away at so many over-runs in a row does so at longer ones. Ours.
constexpr int mostSpringing = 3;

// One end of a piece, and the answer to begin from.
struct End {
    const StackOnForm& work;
    bool atEnd = true;  // else the start
    const Contact* start = nullptr;
    Effort& effort;
    Contact last = {};  // of the trials, in balance

    bool ended() const { return effort.ended(); }

    double trim_m() const { return atEnd ? work.line.length() : 0; }
    // How far beyond the trim line a place lies, metres; < 0 within.
    double beyond(double at_m) const { return atEnd ? at_m - trim_m() : trim_m() - at_m; }
    double placeBeyond(double beyond_m) const { return atEnd ? trim_m() + beyond_m : trim_m() - beyond_m; }
};

enum class Lies { down, up, springsAway };

// Whether the end lies down: from the trim line to the next station within it no gap is larger than the limit.
Lies liesDown(End& end, const Ready& ready, const StackOnForm& work, const std::vector<model::Station>& stations,
              const std::optional<Caul>& caul) {
    Pressed pressed = pressAll(ready, work, stations, caul);
    const auto elements = static_cast<double>(pressed.problem.rod.mesh.nodes_m.size() - 1);
    Effort trial{end.effort.stop, std::min(mostLooksEachTrial * elements, end.effort.most - end.effort.spent)};
    pressed.problem.effort = &trial;
    // From the trial before, which differs by little, if it had as many holds.
    const bool alike = inBalance(end.last.outcome) && end.last.holds.size() == pressed.problem.holds.size() &&
                       end.last.nodes_m.size() >= 2;
    Contact contact = solveWithin(ready, pressed.problem, alike ? &end.last : end.start);
    end.effort.spent += trial.spent;
    end.effort.steps += trial.steps;
    if (!inBalance(contact.outcome)) return contact.springsAway ? Lies::springsAway : Lies::up;
    double next_m = end.atEnd ? 0 : work.line.length();
    for (std::size_t i = 0; i < stations.size(); ++i) {
        const double at = stations[i].at_m;
        if (pressed.holds[i] < 0 || end.beyond(at) > 0) continue;
        if (end.beyond(at) > end.beyond(next_m)) next_m = at;
    }
    const double from = alongMiddle(ready.middle, std::min(next_m, end.trim_m()));
    const double to = alongMiddle(ready.middle, std::max(next_m, end.trim_m()));
    const bool down = greatestGap(contact, from, to).gap_m <= work.piece.holding.gapLimit_m;
    end.last = std::move(contact);
    return down ? Lies::down : Lies::up;
}

// The clamp that would be set at the end: the strongest there is to hand; without a list of tools one like the
// strongest that is set.
model::Station strongestClamp(const model::Holding& holding) {
    model::Station clamp;
    const model::Tool* best = nullptr;
    for (const model::Tool& tool : holding.tools) {
        if (tool.kind == model::HoldKind::clamp && (!best || tool.most_N > best->most_N)) best = &tool;
    }
    if (best) {
        clamp.most_N = best->most_N;
        clamp.pad_m = best->pad_m;
        return clamp;
    }
    const model::Station* strongest = nullptr;
    for (const model::Station& station : holding.stations) {
        if (closesGap(station) && (!strongest || station.most_N > strongest->most_N)) strongest = &station;
    }
    if (!strongest) return clamp;
    clamp.most_N = strongest->most_N;
    clamp.pad_m = strongest->pad_m;
    return clamp;
}

// The piece with this over-run, the form carried on as far, and the clamp at its far end in place of what stood there.
model::Piece lengthened(const End& end, double overRun_m, model::Station clamp) {
    model::Piece piece = end.work.piece;
    (end.atEnd ? piece.stack.runsPastEnd_m : piece.stack.runsPastStart_m) = overRun_m;
    (end.atEnd ? piece.form.carriesOnEnd_m : piece.form.carriesOnStart_m) = overRun_m;
    const double half = halfPad_m(clamp, piece.holding.cauls);
    clamp.at_m = end.placeBeyond(overRun_m - half);
    std::erase_if(piece.holding.stations, [&](const model::Station& station) {
        return closesGap(station) &&
               std::abs(station.at_m - clamp.at_m) < half + halfPad_m(station, piece.holding.cauls) - 1e-9;
    });
    piece.holding.stations.push_back(clamp);
    if (piece.form.kind == model::FormKind::posts && !piece.form.posts.empty()) {
        model::Post post = piece.form.posts.back();
        post.at_m = clamp.at_m;
        piece.form.posts.push_back(post);
    }
    return piece;
}

Lies liesDownWith(End& end, double overRun_m, const model::Station& clamp) {
    const model::Piece piece = lengthened(end, overRun_m, clamp);
    const StackOnForm work{piece, end.work.line, end.work.species, end.work.form, end.work.wanted};
    const Ready ready = makeReady(work);
    return ready.bears() ? liesDown(end, ready, work, piece.holding.stations, {}) : Lies::up;
}

// The least number of steps with which `does` holds: the first of `tried` (ascending) narrowed down by halving.
template <typename Tried, typename Does>
std::optional<int> leastSteps(const Tried& tried, const End& end, const Does& does) {
    int fails = -1;
    int springing = 0;
    for (const int steps : tried) {
        if (end.ended()) return {};
        const Lies lies = does(steps);
        if (lies != Lies::down) {
            springing = lies == Lies::springsAway ? springing + 1 : 0;
            if (springing >= mostSpringing) return {};
            fails = steps;
            continue;
        }
        int enough = steps;
        while (enough - fails > 1 && fails >= 0 && !end.ended()) {
            const int middle = (enough + fails) / 2;
            (does(middle) == Lies::down ? enough : fails) = middle;
        }
        return enough;
    }
    return {};
}

std::optional<double> leastOverRun(End& end, const model::Station& clamp) {
    const auto steps =
        leastSteps(overRunSteps, end, [&](int count) { return liesDownWith(end, count * overRunStep_m, clamp); });
    if (!steps) return {};
    return *steps * overRunStep_m;
}

// Indices of the stations that hold, from the end inwards.
std::vector<std::size_t> fromTheEnd(const End& end, const std::vector<model::Station>& stations) {
    const double longest = end.atEnd ? end.work.piece.stack.runsPastEnd_m : end.work.piece.stack.runsPastStart_m;
    std::vector<std::size_t> holding;
    for (std::size_t i = 0; i < stations.size(); ++i) {
        if (closesGap(stations[i]) && end.beyond(stations[i].at_m) <= longest + 1e-9) holding.push_back(i);
    }
    std::ranges::stable_sort(holding, [&](std::size_t a, std::size_t b) {
        return end.beyond(stations[a].at_m) > end.beyond(stations[b].at_m);
    });
    return holding;
}

std::optional<double> leastClamp(End& end, const Ready& ready) {
    std::vector<model::Station> stations = end.work.piece.holding.stations;
    const std::vector<std::size_t> holding = fromTheEnd(end, stations);
    if (holding.empty()) return {};
    model::Station& last = stations[holding.front()];
    last.pull_N.reset();
    const auto does = [&](double most_N) {
        last.most_N = most_N;
        return liesDown(end, ready, end.work, stations, {}) == Lies::down;
    };
    double tooLittle = 0;
    for (double tried = firstClamp_N; !end.ended(); tried = std::min(mostClamp_N, tried * clampGrowth)) {
        if (does(tried)) {
            double enough = tried;
            while (enough - tooLittle > std::max(leastStep_N, clampShare * enough) && !end.ended()) {
                const double middle = (enough + tooLittle) / 2;
                (does(middle) ? enough : tooLittle) = middle;
            }
            return enough;
        }
        if (tried >= mostClamp_N) break;
        tooLittle = tried;
    }
    return {};
}

std::optional<double> leastCaul(End& end, const Ready& ready) {
    const std::vector<model::Station>& stations = end.work.piece.holding.stations;
    const std::vector<std::size_t> holding = fromTheEnd(end, stations);
    if (holding.size() < 2) return {};
    const double inner = alongMiddle(ready.middle, stations[holding[1]].at_m);
    const double outer = alongMiddle(ready.middle, end.atEnd ? ready.strips.to_m : ready.strips.from_m);
    const double modulus = ready.loose.strips.back().modulus_Pa;
    const auto does = [&](int steps) {
        const Caul caul{std::min(inner, outer), std::max(inner, outer), modulus, steps * caulStep_m};
        return liesDown(end, ready, end.work, stations, caul);
    };
    const auto steps = leastSteps(caulSteps, end, does);
    if (!steps) return {};
    return *steps * caulStep_m;
}

EndNeed needAt(End end, const Ready& ready, double gap_m) {
    EndNeed need;
    const model::Station clamp = strongestClamp(end.work.piece.holding);
    need.gap_m = gap_m;
    need.clamp_N = clamp.most_N;
    need.overRun_m = leastOverRun(end, clamp);
    need.strongerClamp_N = leastClamp(end, ready);
    need.caul_m = leastCaul(end, ready);
    need.searched = !end.ended();
    return need;
}

}  // namespace

OverRun overRunNeeded(const StackOnForm& work, const Held& held, const std::atomic<bool>& stop) {
    const Ready ready = makeReady(work);
    OverRun needed;
    if (!ready.bears()) return needed;
    const Contact& contact = work.piece.holding.pads == model::Pads::hold ? held.ifPadsHold : held.ifPadsSlide;
    const bool usable = contact.nodes_m.size() >= 2 && inBalance(contact.outcome);
    const Contact* start = usable ? &contact : nullptr;
    // Neither end takes the other's share.
    Effort ofStart{&stop, mostLooksOfAll / 2};
    needed.start = needAt({work, false, start, ofStart}, ready, held.gapAtStart_m);
    Effort ofEnd{&stop, mostLooksOfAll / 2};
    needed.end = needAt({work, true, start, ofEnd}, ready, held.gapAtEnd_m);
    needed.steps = ofStart.steps + ofEnd.steps;
    return needed;
}

}  // namespace fayline::holding
