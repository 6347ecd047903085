#include "core/holding/closing.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/contact/gaps.hpp"
#include "core/holding/kinds.hpp"
#include "core/holding/pressed.hpp"
#include "core/holding/tail.hpp"
#include "core/model/hold_traits.hpp"

namespace fayline::holding {

namespace {

constexpr double pastPad_m =
    0.1;  // the rod goes this far past the pad, where the crush of the foundation has died away
constexpr double pastTouch_m = 0.15;  // and this far past a place where its tail would run into the form
constexpr int mostLengthenings = 8;   // of one step's rod
constexpr double deepest_m = 0.03;    // a first touch is found less deep than this; deeper: another limb of the form
constexpr double touches_m = 1e-7;    // the tail runs into the form where it would lie this far inside
constexpr double look_m = 0.01;
// What all steps may cost: elements looked at, see Effort. Sound pieces of the sample boats take a hundredth of it.
// Ours.
constexpr double mostElementsLooked = 2.5e6;
constexpr double carriedOn_m = 0.3;  // the form is carried on this far past the strips to measure a tip from

struct FormLook {
    double s_m = 0;
    MiddleFrame frame;
    bool supported = false;
};

// What stays the same for all steps.
struct Closing {
    const StackOnForm& work;
    Ready ready;
    double first_s_m = 0;  // the strips
    double last_s_m = 0;
    std::vector<FormLook> looks;  // along the form and a little beyond
    std::optional<double> floor_m;
};

struct State {
    Pressed pressed;
    Contact contact;
    Tail before;  // at the rod's start
    Tail after;   // at its end
};

std::optional<double> lowestFoot(const std::vector<model::Station>& stations) {
    std::optional<double> lowest;
    for (const model::Station& station : stations) {
        const auto* strut = model::as<model::Strut>(station);
        if (!strut || strut->to != model::PropTo::floor || !strut->footY_m) continue;
        lowest = std::min(lowest.value_or(*strut->footY_m), *strut->footY_m);
    }
    return lowest;
}

Closing closingOf(const StackOnForm& work) {
    Closing closing{work, makeReady(work), 0, 0, {}, lowestFoot(work.piece.holding.stations)};
    if (!closing.ready.bears()) return closing;
    const Middle& middle = closing.ready.middle;
    closing.first_s_m = alongMiddle(middle, closing.ready.strips.from_m);
    closing.last_s_m = alongMiddle(middle, closing.ready.strips.to_m);
    const double from = closing.first_s_m - carriedOn_m;
    const double to = closing.last_s_m + carriedOn_m;
    const int steps = static_cast<int>(std::ceil((to - from) / look_m));
    for (int i = 0; i <= steps; ++i) {
        const double s = from + (to - from) * i / steps;
        const double at_m = alongLine(middle, s);
        const bool supported =
            std::ranges::any_of(closing.ready.support, [&](const laminate::Run& run) { return run.holds(at_m); });
        closing.looks.push_back({s, middleFrame(middle, work.line, s), supported});
    }
    return closing;
}

// Where the tail runs into the form for the first time, along s; nothing: it clears it.
std::optional<double> touchOf(const Closing& closing, const Tail& tail, double rodEnd_s_m, bool atEnd) {
    std::optional<double> touch;
    for (const FormLook& look : closing.looks) {
        const bool beyond = atEnd ? look.s_m > rodEnd_s_m + look_m / 2 : look.s_m < rodEnd_s_m - look_m / 2;
        if (!beyond || !look.supported) continue;
        const StandOff off = standOff(tail, look.frame);
        if (!off.comesBy || off.off_m > -touches_m || off.off_m < -deepest_m) continue;
        if (!touch || !atEnd) touch = look.s_m;
        if (atEnd) return touch;
    }
    return touch;
}

State solved(const Closing& closing, const std::vector<model::Station>& closed, double from_s_m, double to_s_m,
             const Contact* start) {
    State state;
    state.pressed = press(closing.ready, closing.work, closed, from_s_m, to_s_m);
    state.contact = solveWithin(closing.ready, state.pressed.problem, start);
    state.before = tailOf(closing.ready, closing.work, state.pressed.problem, state.contact, false);
    state.after = tailOf(closing.ready, closing.work, state.pressed.problem, state.contact, true);
    return state;
}

// The rod of the stations closed so far, and longer where its tail would run into the form.
State stateOf(const Closing& closing, const std::vector<model::Station>& closed, laminate::Run rod,
              const Contact* start) {
    State state = solved(closing, closed, rod.from_m, rod.to_m, start);
    for (int i = 0; i < mostLengthenings && inBalance(state.contact.outcome); ++i) {
        const auto before = touchOf(closing, state.before, rod.from_m, false);
        const auto after = touchOf(closing, state.after, rod.to_m, true);
        const laminate::Run longer{before ? std::max(closing.first_s_m, *before - pastTouch_m) : rod.from_m,
                                   after ? std::min(closing.last_s_m, *after + pastTouch_m) : rod.to_m};
        if (longer.from_m == rod.from_m && longer.to_m == rod.to_m) break;
        rod = longer;
        state = solved(closing, closed, rod.from_m, rod.to_m, &state.contact);
    }
    return state;
}

// From where to where a station bears, along s.
laminate::Run bearingOf(const Closing& closing, const model::Station& station) {
    const double at = alongMiddle(closing.ready.middle, station.at_m);
    if (closesGap(station)) {
        const double half = halfPad_m(station, closing.work.piece.holding.cauls);
        return {at - half, at + half};
    }
    const auto* strap = model::as<model::Strap>(station);
    const double to = strap && strap->to_m ? alongMiddle(closing.ready.middle, *strap->to_m) : at;
    return {std::min(at, to), std::max(at, to)};
}

laminate::Run rodOf(const Closing& closing, const std::vector<model::Station>& closed, bool all) {
    const model::From from = closing.work.piece.holding.from;
    laminate::Run rod{closing.first_s_m, closing.last_s_m};
    if (all) return rod;
    double first = closing.last_s_m;
    double last = closing.first_s_m;
    for (const model::Station& station : closed) {
        if (!pressesOnForm(station)) continue;
        const laminate::Run bears = bearingOf(closing, station);
        first = std::min(first, bears.from_m);
        last = std::max(last, bears.to_m);
    }
    if (from != model::From::start) rod.from_m = std::clamp(first - pastPad_m, rod.from_m, rod.to_m);
    if (from != model::From::end) rod.to_m = std::clamp(last + pastPad_m, rod.from_m, rod.to_m);
    return rod;
}

// Where the stack lies off the form at a station, before it is closed.
double standsOff(const Closing& closing, const State& state, double s_m) {
    const Contact& contact = state.contact;
    if (s_m >= contact.nodes_m.front() && s_m <= contact.nodes_m.back()) {
        return std::max(0.0, gapAt(contact, s_m).gap_m);
    }
    const Tail& tail = s_m > contact.nodes_m.back() ? state.after : state.before;
    return std::max(0.0, standOff(tail, middleFrame(closing.ready.middle, closing.work.line, s_m)).off_m);
}

// Way from the tip to the form's curve, square to it.
double tipOff(const Closing& closing, const Tail& tail) {
    const line::Xy tip = tail.points.back();
    const auto distance = [&](const MiddleFrame& frame) {
        return std::hypot(tip.x_m - frame.point.x_m, tip.y_m - frame.point.y_m);
    };
    const auto nearest = std::ranges::min_element(
        closing.looks, [&](const FormLook& a, const FormLook& b) { return distance(a.frame) < distance(b.frame); });
    double s = nearest->s_m;
    for (int i = 0; i < 6; ++i) {
        const MiddleFrame frame = middleFrame(closing.ready.middle, closing.work.line, s);
        const double along =
            (tip.x_m - frame.point.x_m) * frame.ahead.x_m + (tip.y_m - frame.point.y_m) * frame.ahead.y_m;
        const double off = (tip.x_m - frame.point.x_m) * frame.away.x_m + (tip.y_m - frame.point.y_m) * frame.away.y_m;
        // The square turns with the form: moving along by ds brings the foot nearer by (1 + k off) ds.
        const double nearing = 1 + middleAt(closing.ready.middle, s).curvature_per_m * off;
        if (!(nearing > 0.1)) break;
        s = std::clamp(s + along / nearing, nearest->s_m - look_m, nearest->s_m + look_m);
    }
    return distance(middleFrame(closing.ready.middle, closing.work.line, s));
}

HeldStation heldIn(const State& state, std::size_t place) {
    HeldStation held;
    held.most_N = state.pressed.most_N[place];
    const int hold = state.pressed.holds[place];
    if (hold >= 0) {
        const HoldForce& force = state.contact.holds[hold];
        held.pull_N = force.pull_N;
        held.gap_m = std::max(0.0, force.gap_m);
        held.state = force.state;
    } else {
        held.pull_N = state.pressed.strapThrust_N[place];
        if (held.pull_N > 0) held.state = HoldState::given;
    }
    return held;
}

// `order`: of all stations; the first `count` are closed.
void describe(ClosingStep& step, const Closing& closing, const State& state, const std::vector<int>& order,
              const std::vector<int>& numbers, std::size_t count, bool towardEnd) {
    for (std::size_t i = 0; i < count; ++i) {
        const auto index = static_cast<std::size_t>(order[i]);
        HeldStation held = heldIn(state, i);
        held.index = order[i];
        held.number = numbers[index];
        held.at_m = closing.work.piece.holding.stations[index].at_m;
        step.closed.push_back(held);
    }
    step.pull_N = step.closed.back().pull_N;
    step.gap_m = step.closed.back().gap_m;
    step.posts = postLoads(closing.work, closing.ready, state.contact);
    const Tail& tail = towardEnd ? state.after : state.before;
    step.tailOff_m = tipOff(closing, tail);
    step.tip = outerTip(tail, closing.ready, towardEnd);
    step.floorInTheWay = closing.floor_m && step.tip.y_m < *closing.floor_m;
}

double furthestApart(const Contact& one, const Contact& other) {
    double apart = 0;
    for (std::size_t i = 0; i < one.gap_m.size(); ++i) apart = std::max(apart, std::abs(one.gap_m[i] - other.gap_m[i]));
    return apart;
}

// A pull and the state that it has grown to.
struct Grown {
    double pull_N = 0;
    Contact contact;
};

enum class Jumps { no, yes, undecided };

// Whether the stack jumps while a pull that is given grows to what it is. A screw is turned on gap by gap and feels the
// pull fall; a weight, a lever or a hydraulic jack pulls on, and where the stack gives way it runs to another shape.
// The growth is halved wherever much moves: what moves much however little the pull grows, jumps.
Jumps jumps(const Closing& closing, std::vector<model::Station> closed, const Contact* before, const State& after,
            const std::atomic<bool>& stop) {
    constexpr int mostHalvings = 16;  // then the square root of what is left of the growth is a 256th
    constexpr int mostTries = 150;
    constexpr double much = 0.03;  // of all that moves
    model::Station& last = closed.back();
    if (!closesGap(last) || !last.pull_N) return Jumps::no;
    const auto at = [&](double pull_N, const Contact* start) {
        last.pull_N = pull_N;
        const laminate::Run rod{after.contact.nodes_m.front(), after.contact.nodes_m.back()};
        const Pressed pressed = press(closing.ready, closing.work, closed, rod.from_m, rod.to_m);
        return Grown{pull_N, solveWithin(closing.ready, pressed.problem, start)};
    };
    const double whole_N = *last.pull_N;
    Grown low = at(0, before);
    // Without a part of the pull it may rest nowhere at all.
    for (double part = 1.0 / 16; !inBalance(low.contact.outcome) && part < 1; part *= 2) {
        low = at(part * whole_N, before);
    }
    if (!inBalance(low.contact.outcome) || low.contact.gap_m.size() != after.contact.gap_m.size())
        return Jumps::undecided;
    const double reported_m =
        std::max(much * furthestApart(low.contact, after.contact), closing.work.piece.holding.gapLimit_m);
    // What is yet to be gone through, the next last; how often each has been halved.
    std::vector<std::pair<Grown, int>> ahead{{{whole_N, after.contact}, 0}};
    for (int tries = 0; !ahead.empty(); ++tries) {
        if (furthestApart(low.contact, ahead.back().first.contact) <= reported_m) {
            low = std::move(ahead.back().first);
            ahead.pop_back();
            continue;
        }
        const int halvings = ahead.back().second;
        if (halvings >= mostHalvings) return Jumps::yes;
        if (tries >= mostTries || stop) return Jumps::undecided;
        Grown between = at((low.pull_N + ahead.back().first.pull_N) / 2, &low.contact);
        if (!inBalance(between.contact.outcome)) return Jumps::undecided;
        // Both halves have been halved once more.
        ahead.back().second = halvings + 1;
        ahead.emplace_back(std::move(between), halvings + 1);
    }
    return Jumps::no;
}

std::vector<int> numbersAlong(const std::vector<model::Station>& stations, double length_m) {
    std::vector<int> numbers(stations.size());
    int number = 0;
    for (const int index : closingOrder(stations, model::From::start, length_m)) {
        numbers[index] = ++number;
    }
    return numbers;
}

}  // namespace

std::vector<ClosingStep> closeInOrder(const StackOnForm& work, const std::atomic<bool>& stop) {
    const std::vector<model::Station>& stations = work.piece.holding.stations;
    std::vector<ClosingStep> steps;
    Effort effort{&stop, mostElementsLooked};
    const StackOnForm bounded = within(work, effort);
    const Closing closing = closingOf(bounded);
    if (!closing.ready.bears() || stations.empty()) return steps;
    pressAll(closing.ready, work, stations);  // refuses what is wrong under its own number

    const std::vector<int> order = closingOrder(stations, work.piece.holding.from, work.line.length());
    const std::vector<int> numbers = numbersAlong(stations, work.line.length());
    const double begins_m = stations[order.front()].at_m;
    std::vector<model::Station> closed;
    std::optional<State> state;
    for (std::size_t i = 0; i < order.size() && !stop; ++i) {
        const auto index = static_cast<std::size_t>(order[i]);
        ClosingStep step{.index = order[i], .number = numbers[index], .order = static_cast<int>(i) + 1};
        if (state)
            step.standsOff_m = standsOff(closing, *state, alongMiddle(closing.ready.middle, stations[index].at_m));
        closed.push_back(stations[index]);
        const laminate::Run rod = rodOf(closing, closed, i + 1 == order.size());
        if (rod.to_m > rod.from_m) {
            State reached = stateOf(closing, closed, rod, state ? &state->contact : nullptr);
            step.outcome = reached.contact.outcome;
            // A try that found no balance tells nothing, of this station or of the next.
            if (inBalance(step.outcome)) {
                const Jumps found = jumps(closing, closed, state ? &state->contact : nullptr, reached, stop);
                if (found == Jumps::yes) step.outcome = Outcome::snaps;
                step.snapUndecided = found == Jumps::undecided;
                const bool outwards = stations[index].at_m >= begins_m;
                const model::From from = work.piece.holding.from;
                const bool towardEnd = from == model::From::start || (from == model::From::middle && outwards);
                describe(step, closing, reached, order, numbers, closed.size(), towardEnd);
                state = std::move(reached);
            }
        }
        steps.push_back(step);
    }
    return steps;
}

}  // namespace fayline::holding
