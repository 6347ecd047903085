// All choices of thickness for the stem of the sample boat, on one thread: 250 ms at most is asked of them.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <set>
#include <stdexcept>

#include "core/io/file.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/choices.hpp"

namespace fayline {
namespace {

void choicesOfTheStem(benchmark::State& state) {
    const model::Boat marram = io::loadBoat(FAYLINE_SAMPLES "/marram.fayline");
    const plan::Shop shop = plan::shopOf(marram);
    const auto stem = std::find_if(marram.pieces.begin(), marram.pieces.end(),
                                   [](const model::Piece& piece) { return piece.name == "Stem"; });
    if (stem == marram.pieces.end()) throw std::runtime_error("the sample boat has no piece called Stem");
    const plan::Plan plan = plan::makePlan(*stem, shop);
    const std::atomic<bool> stop = false;
    plan::Choices choices;
    for (auto _ : state) choices = *plan::choicesFor(*stem, shop, plan, stop);

    std::set<double> thicknesses;
    int mixed = 0;
    for (const plan::Choice& choice : choices.all) {
        if (choice.mixed) {
            ++mixed;
        } else {
            thicknesses.insert(choice.thickness_m);
        }
    }
    state.counters["thicknesses"] = static_cast<double>(thicknesses.size());
    state.counters["mixed"] = mixed;
    if (thicknesses.size() < 12 || mixed < 20) throw std::runtime_error("too few choices to be measured by");
}
BENCHMARK(choicesOfTheStem)->Unit(benchmark::kMillisecond);

// What a drag has to wait for before a plan is asked for.
void shopOfABoatWithTrials(benchmark::State& state) {
    model::Boat marram = io::loadBoat(FAYLINE_SAMPLES "/marram.fayline");
    marram.trials.assign(static_cast<std::size_t>(state.range(0)), model::Trial{.species = "oak_white"});
    for (auto _ : state) benchmark::DoNotOptimize(plan::shopOf(marram));
}
BENCHMARK(shopOfABoatWithTrials)->ArgName("trials")->Arg(0)->Arg(10)->Arg(100)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace fayline
