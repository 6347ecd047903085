// The contact of rod and form: from rest, from the last answer, by size, and beside a general-purpose solver on the
// very same problem in the same run.
#include <benchmark/benchmark.h>

#include <cmath>

#include "core/contact/bending.hpp"
#include "core/contact/contact.hpp"
#include "tests/general/contact_problems.hpp"
#include "tests/general/contact_program.hpp"

namespace fayline {
namespace {

using general::problemOn;

// A stem of 2.07 m, twenty clamps, about 400 elements.
contact::Problem stem(bool padsHold, double shift_m = 0, double most_N = 2500) {
    std::vector<double> places;
    for (int i = 0; i < 20; ++i) places.push_back(-0.08 + 1.98 * i / 19 + (i == 10 ? shift_m : 0));
    return problemOn(general::swelling(0.10, 1.513, 0.62, 0.34),
                     {.from_m = -0.12, .to_m = 1.95, .step_m = 0.0058, .stiffness_N_m2 = 90, .narrows = 0.2},
                     general::clampsAt(places, most_N), padsHold, -0.08);
}

bool padsHoldIn(const benchmark::State& state) {
    return state.range(0) ? false : true;
}

void tell(benchmark::State& state, const contact::Problem& problem, const contact::Contact& contact) {
    state.counters["elements"] = static_cast<double>(problem.rod.mesh.nodes_m.size() - 1);
    state.counters["steps"] = contact.steps;
    if (contact.outcome != contact::Outcome::settled) state.SkipWithError("did not settle");
}

void contactFromRest(benchmark::State& state) {
    const contact::Problem problem = stem(padsHoldIn(state));
    contact::Contact contact;
    for (auto _ : state) benchmark::DoNotOptimize(contact = contact::solve(problem));
    tell(state, problem, contact);
}
BENCHMARK(contactFromRest)->ArgName("slide")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

void contactOfWeakClampsFromRest(benchmark::State& state) {
    const contact::Problem problem = stem(padsHoldIn(state), 0, 60);
    contact::Contact contact;
    for (auto _ : state) benchmark::DoNotOptimize(contact = contact::solve(problem));
    tell(state, problem, contact);
}
BENCHMARK(contactOfWeakClampsFromRest)->ArgName("slide")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

// A clamp moved by 2 mm to and fro, each time from the answer before.
void contactFromTheLastAnswer(benchmark::State& state) {
    const contact::Problem one = stem(padsHoldIn(state));
    const contact::Problem other = stem(padsHoldIn(state), 0.002);
    contact::Contact contact = contact::solve(one);
    bool moved = false;
    for (auto _ : state) {
        moved = !moved;
        contact = contact::solve(moved ? other : one, &contact);
    }
    tell(state, one, contact);
}
BENCHMARK(contactFromTheLastAnswer)->ArgName("slide")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

// Ipopt with the project's own derivatives of the bending energy, so that it is not held back by automatic ones.
void contactByIpopt(benchmark::State& state) {
    const contact::Problem problem = stem(padsHoldIn(state));
    const general::Bending bending = [](double gap, double slope, double bend, const general::RodAt& rod) {
        const contact::RodPlace place{rod.curvature_per_m, rod.curvatureRate_per_m2, rod.stiffness_N_m2,
                                      rod.natural_per_m};
        const contact::Turning turning = contact::turningOf(place, {gap, slope, bend});
        return general::Second{
            contact::bendingValue(place, turning), contact::bendingFirst(place, turning),
            contact::bendingSecond(place, turning, contact::turningSecond(place, {gap, slope, bend}, turning))};
    };
    general::Solved solved;
    for (auto _ : state) benchmark::DoNotOptimize(solved = general::solveWithIpopt(problem, bending));
    state.counters["elements"] = static_cast<double>(problem.rod.mesh.nodes_m.size() - 1);
    state.counters["steps"] = solved.iterations;
    if (!solved.solved) state.SkipWithError("did not settle");
}
BENCHMARK(contactByIpopt)->ArgName("slide")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

// The same kind of rod made longer, a clamp for each 20 elements.
void contactByElements(benchmark::State& state) {
    const double length = 0.005 * static_cast<double>(state.range(1));
    std::vector<double> places;
    for (double at = 0.05; at < length; at += 0.1) places.push_back(at);
    const contact::Problem problem =
        problemOn(general::waving(0.8, 5), {.from_m = 0, .to_m = length, .step_m = 0.005, .stiffness_N_m2 = 90},
                  general::clampsAt(places, 2500, 0.02), padsHoldIn(state), 0.05);
    contact::Contact contact;
    for (auto _ : state) benchmark::DoNotOptimize(contact = contact::solve(problem));
    tell(state, problem, contact);
    state.SetComplexityN(state.range(1));
}
BENCHMARK(contactByElements)
    ->ArgNames({"slide", "elements"})
    ->ArgsProduct({{0, 1}, {100, 1000, 10000, 100000}})
    ->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace fayline
