// How long a plan takes, and how that grows with points and strips.
#include <benchmark/benchmark.h>

#include "core/laminate/stack.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/study/deepen.hpp"
#include "tests/core/plan/made_pieces.hpp"

namespace fayline {
namespace {

void planOfTheStem(benchmark::State& state) {
    model::Piece piece = made::stem();
    for (int i = 0; i < 8; ++i) piece.holding.stations.push_back(model::Station{.at_m = 0.05 + 0.24 * i});
    const plan::Shop shop = made::shop();
    for (auto _ : state) benchmark::DoNotOptimize(plan::makePlan(piece, shop));
}
BENCHMARK(planOfTheStem)->Unit(benchmark::kMillisecond);

// A plan as it goes from hand to hand, without its studies and with them.
void planCopied(benchmark::State& state) {
    model::Piece piece = made::stem();
    for (int i = 0; i < 8; ++i) piece.holding.stations.push_back(model::Station{.at_m = 0.05 + 0.24 * i});
    const plan::Shop shop = made::shop();
    const std::atomic<bool> goOn{false};
    plan::Plan plan = plan::makePlan(piece, shop);
    if (state.range(0)) plan = plan::deepen(piece, shop, plan, goOn).value();
    for (auto _ : state) {
        plan::Plan copied = plan;
        benchmark::DoNotOptimize(copied);
    }
}
BENCHMARK(planCopied)->ArgName("studied")->Arg(0)->Arg(1)->Unit(benchmark::kMicrosecond);

void planByPoints(benchmark::State& state) {
    const model::Piece piece = made::stem(static_cast<int>(state.range(0)));
    const plan::Shop shop = made::shop();
    for (auto _ : state) benchmark::DoNotOptimize(plan::makePlan(piece, shop));
    state.SetComplexityN(state.range(0));
}
BENCHMARK(planByPoints)->Arg(12)->Arg(25)->Arg(50)->Arg(100)->Arg(200)->Unit(benchmark::kMillisecond)->Complexity();

// Strips alone, each of a group of its own: the most there is to say about them.
void planByStrips(benchmark::State& state) {
    model::Piece piece = made::stem();
    piece.stack.strips.assign(static_cast<std::size_t>(state.range(0)),
                              model::Strips{.count = 1, .thickness_m = 0.001});
    const plan::Shop shop = made::shop();
    for (auto _ : state) benchmark::DoNotOptimize(plan::makePlan(piece, shop));
    state.SetComplexityN(state.range(0));
}
BENCHMARK(planByStrips)
    ->Arg(5)
    ->Arg(10)
    ->Arg(20)
    ->Arg(40)
    ->Arg(80)
    ->Arg(160)
    ->Unit(benchmark::kMillisecond)
    ->Complexity();

void stackAlone(benchmark::State& state) {
    model::Piece piece = made::stem();
    if (state.range(0)) piece.stack.strips[0].tapersTo_m = 0.004;
    const plan::Shop shop = made::shop();
    const line::Line line = plan::makePlan(piece, shop).line.fair.line;
    for (auto _ : state) {
        benchmark::DoNotOptimize(
            laminate::planStack(piece.stack, piece.line.describes, piece.line.stripsOn, line, shop.species));
    }
}
BENCHMARK(stackAlone)->ArgName("tapers")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace fayline
