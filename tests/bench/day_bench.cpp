// The day of the demo boat's stem: batches and run as they follow the hand, and the simulated days.
#include <benchmark/benchmark.h>

#include <atomic>
#include <stdexcept>

#include "core/io/file.hpp"
#include "core/plan/day/day_plan.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"
#include "core/schedule/days.hpp"

namespace fayline {
namespace {

struct Stem {
    model::Boat boat = io::loadBoat(FAYLINE_SAMPLES "/marram.fayline");
    plan::Shop shop = plan::shopOf(boat);
    const model::Piece& piece = boat.pieces.at(0);
    plan::Plan plan = plan::makePlan(piece, shop);
};

// What follows the hand: amounts, batches, cure and timed run; under 1 ms is asked.
void BatchesAndRun(benchmark::State& state) {
    const Stem stem;
    for (auto _ : state) {
        benchmark::DoNotOptimize(plan::planDay(stem.piece, stem.shop, stem.plan.line.fair.line, stem.plan.stack));
    }
    state.counters["batches"] = static_cast<double>(stem.plan.day.glue.batches.size());
    state.counters["tasks"] = static_cast<double>(stem.plan.day.gluings[0].run.tasks.size());
}
BENCHMARK(BatchesAndRun)->Unit(benchmark::kMillisecond);

// Under 100 ms is asked of 10,000 days.
void TenThousandDays(benchmark::State& state) {
    const Stem stem;
    const std::atomic<bool> stop{false};
    const schedule::Uncertain uncertain =
        plan::uncertainOf(stem.piece.crew, plan::paceOf(stem.piece, stem.shop, stem.plan.day));
    for (auto _ : state) {
        benchmark::DoNotOptimize(
            schedule::simulateDays(stem.plan.day.gluings[0].job, uncertain, plan::daysSimulated, plan::daysSeed, stop));
    }
}
BENCHMARK(TenThousandDays)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace fayline
