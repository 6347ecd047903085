#include "core/holding/held.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/holding/pressed.hpp"
#include "core/holding/prop_place.hpp"
#include "core/math/count.hpp"

namespace fayline::holding {

namespace {

constexpr double sampleStep_m = 0.01;

// From `from` to `to` every 10 mm on the line's own grid, with both ends and both trim lines.
std::vector<double> samplePlaces(double from_m, double to_m, double length_m) {
    std::vector<double> places{from_m, to_m, 0, length_m};
    const double least_m = 1e-6;  // nearer than this to another is the same place
    for (double i = std::ceil(from_m / sampleStep_m); i * sampleStep_m < to_m; ++i) places.push_back(i * sampleStep_m);
    std::ranges::sort(places);
    std::vector<double> apart;
    for (const double at : places) {
        if (apart.empty() || at - apart.back() > least_m) apart.push_back(at);
    }
    return apart;
}

// A gap as a feeler would find it: wood that is crushed leaves none.
double open(double gap_m) {
    return std::max(0.0, gap_m);
}

// The indices of the stations along the line; of two at one place the first given comes first.
std::vector<int> alongLineOrder(const std::vector<model::Station>& stations) {
    std::vector<int> order(stations.size());
    std::iota(order.begin(), order.end(), 0);
    std::ranges::stable_sort(order, [&](int a, int b) { return stations[a].at_m < stations[b].at_m; });
    return order;
}

HeldStation stationOf(const Ready& ready, const model::Station& station, const Pressed& pressed, const Contact& contact,
                      int index) {
    const auto i = static_cast<std::size_t>(index);
    HeldStation held{.index = index, .at_m = station.at_m, .most_N = pressed.most_N[i]};
    if (pressed.holds[i] >= 0) {
        const HoldForce& force = contact.holds[pressed.holds[i]];
        held.pull_N = force.pull_N;
        held.gap_m = open(force.gap_m);
        held.state = force.state;
        return held;
    }
    const double s = alongMiddle(ready.middle, station.at_m);
    if (s >= contact.nodes_m.front() && s <= contact.nodes_m.back()) held.gap_m = open(gapAt(contact, s).gap_m);
    held.pull_N = pressed.strapThrust_N[i];
    if (held.pull_N > 0) held.state = HoldState::given;
    return held;
}

void addStations(Held& held, const Ready& ready, const std::vector<model::Station>& stations, const Pressed& pressed,
                 const Contact& contact) {
    for (const int index : alongLineOrder(stations)) {
        held.stations.push_back(stationOf(ready, stations[index], pressed, contact, index));
        held.stations.back().number = math::countOf(held.stations);
    }
}

void addSamples(Held& held, const Ready& ready, const StackOnForm& work, const Problem& problem,
                const Contact& contact) {
    const double first = contact.nodes_m.front();
    const double last = contact.nodes_m.back();
    for (const double at_m : samplePlaces(ready.strips.from_m, ready.strips.to_m, work.line.length())) {
        const AtPlace place = at(problem, contact, std::clamp(alongMiddle(ready.middle, at_m), first, last));
        const double width = sectionAt(ready.loose, at_m).width_m;
        held.samples.push_back({at_m, open(place.gap_m), place.pressure_N_m / width, place.moment_N_m});
    }
}

void addGreatestPressure(Held& held, const Ready& ready, const Problem& problem, const Contact& contact) {
    const std::vector<double> places = gaussPlaces(problem.rod.mesh);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const double crush = -gapAt(contact, places[i]).gap_m;
        if (!(crush > 0 && problem.rod.foundation_N_m2[i] > 0)) continue;
        const double at_m = alongLine(ready.middle, places[i]);
        const double pressure = problem.rod.foundation_N_m2[i] * crush / sectionAt(ready.loose, at_m).width_m;
        if (pressure <= held.greatestPressure_Pa) continue;
        held.greatestPressure_Pa = pressure;
        held.greatestPressureAt_m = at_m;
    }
}

void addFallsInside(Held& held, const Ready& ready, const StackOnForm& work, const Problem& problem,
                    const Contact& contact) {
    const std::vector<double> places = gaussPlaces(problem.rod.mesh);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const double inside = -gapAt(contact, places[i]).gap_m;
        if (problem.rod.foundation_N_m2[i] > 0 || inside <= held.fallsInside.gap_m) continue;
        const double at_m = alongLine(ready.middle, places[i]);
        if (at_m >= 0 && at_m <= work.line.length()) held.fallsInside = {at_m, inside};
    }
}

GapAt greatestBetweenTrimLines(const Ready& ready, const StackOnForm& work, const Contact& contact) {
    return greatestGap(contact, 0, alongMiddle(ready.middle, work.line.length()));
}

// Everything but the two contacts, from the one that the piece's pads make count.
void fill(Held& held, const Ready& ready, const StackOnForm& work, const std::vector<model::Station>& stations,
          const Pressed& pressed, const Contact& contact) {
    held.outcome = contact.outcome;
    addStations(held, ready, stations, pressed, contact);
    addSamples(held, ready, work, pressed.problem, contact);
    addGreatestPressure(held, ready, pressed.problem, contact);
    addFallsInside(held, ready, work, pressed.problem, contact);
    const GapAt greatest = greatestBetweenTrimLines(ready, work, contact);
    held.largest = {alongLine(ready.middle, greatest.s_m), open(greatest.gap_m)};
    held.gapAtStart_m = open(gapAt(contact, 0).gap_m);
    held.gapAtEnd_m = open(gapAt(contact, alongMiddle(ready.middle, work.line.length())).gap_m);
}

// Where there is no contact to solve: the stations are named, nothing is said about them.
Held unsolved(const StackOnForm& work, const std::vector<model::Station>& stations, const Ready& ready) {
    Held held;
    held.outcome = held.ifPadsHold.outcome = held.ifPadsSlide.outcome = Outcome::notPressed;
    held.notPressed = ready.notPressed;
    held.worstStrain = ready.worstStrain;
    const std::vector<double> shares = sharesSquare(work.piece, work.line, stations);
    for (const int index : alongLineOrder(stations)) {
        const model::Station& station = stations[index];
        held.stations.push_back({.index = index,
                                 .number = math::countOf(held.stations) + 1,
                                 .at_m = station.at_m,
                                 .most_N = station.most_N * shares[index]});
    }
    return held;
}

Effort effortFor(const StackOnForm& work, const Pressed& pressed) {
    const auto elements = static_cast<double>(pressed.problem.rod.mesh.nodes_m.size() - 1);
    Effort effort{nullptr, std::max(mostLooks, mostLooksEach * elements)};
    if (!work.effort) return effort;
    effort.stop = work.effort->stop;
    effort.most = std::min(effort.most, work.effort->most - work.effort->spent);
    return effort;
}

void addTo(const StackOnForm& work, const Effort& effort) {
    if (!work.effort) return;
    work.effort->spent += effort.spent;
    work.effort->steps += effort.steps;
}

// A try that found no balance is nothing to begin from.
const Contact* startFrom(const Contact* contact) {
    const bool usable = contact && contact->nodes_m.size() >= 2 && inBalance(contact->outcome);
    return usable ? contact : nullptr;
}

}  // namespace

Held hold(const StackOnForm& work, const Held* before) {
    const std::vector<model::Station>& stations = work.piece.holding.stations;
    const Ready ready = makeReady(work);
    if (!ready.bears()) return unsolved(work, stations, ready);
    Pressed pressed = pressAll(ready, work, stations);
    Effort effort = effortFor(work, pressed);
    pressed.problem.effort = &effort;

    Held held;
    held.worstStrain = ready.worstStrain;
    pressed.problem.padsHold = true;
    // Neither answer takes the other's share.
    const double most = effort.most;
    effort.most = most / 2;
    held.ifPadsHold = solveWithin(ready, pressed.problem, startFrom(before ? &before->ifPadsHold : nullptr));
    effort.most = most;
    pressed.problem.padsHold = false;
    // The two differ by little, mostly less than a piece does from itself before.
    const Contact* slideFrom = startFrom(before ? &before->ifPadsSlide : nullptr);
    if (!held.ifPadsHold.springsAway && (!slideFrom || held.ifPadsHold.outcome == Outcome::settled))
        slideFrom = &held.ifPadsHold;
    held.ifPadsSlide = solveWithin(ready, pressed.problem, slideFrom);
    held.steps = held.ifPadsHold.steps + held.ifPadsSlide.steps;
    if (!inBalance(held.ifPadsHold.outcome) && inBalance(held.ifPadsSlide.outcome)) {
        // Pads that slide may show the way.
        pressed.problem.padsHold = true;
        held.ifPadsHold = solveWithin(ready, pressed.problem, &held.ifPadsSlide);
        held.steps += held.ifPadsHold.steps;
    }
    pressed.problem.padsHold = work.piece.holding.pads == model::Pads::hold;
    fill(held, ready, work, stations, pressed,
         work.piece.holding.pads == model::Pads::hold ? held.ifPadsHold : held.ifPadsSlide);
    held.largestIfPadsHold_m = open(greatestBetweenTrimLines(ready, work, held.ifPadsHold).gap_m);
    held.largestIfPadsSlide_m = open(greatestBetweenTrimLines(ready, work, held.ifPadsSlide).gap_m);
    addTo(work, effort);
    return held;
}

Held holdWith(const StackOnForm& work, const std::vector<model::Station>& stations, const Held* before) {
    const Ready ready = makeReady(work);
    if (!ready.bears()) return unsolved(work, stations, ready);
    Pressed pressed = pressAll(ready, work, stations);
    Effort effort = effortFor(work, pressed);
    pressed.problem.effort = &effort;

    Held held;
    held.worstStrain = ready.worstStrain;
    const bool padsHold = work.piece.holding.pads == model::Pads::hold;
    Contact& contact = padsHold ? held.ifPadsHold : held.ifPadsSlide;
    contact = solveWithin(ready, pressed.problem,
                          startFrom(before ? &(padsHold ? before->ifPadsHold : before->ifPadsSlide) : nullptr));
    fill(held, ready, work, stations, pressed, contact);
    (padsHold ? held.largestIfPadsHold_m : held.largestIfPadsSlide_m) = held.largest.gap_m;
    held.steps = contact.steps;
    addTo(work, effort);
    return held;
}

}  // namespace fayline::holding
