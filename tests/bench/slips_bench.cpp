// What a plan takes when one offset was copied wrongly: each of the 332 plain slips in the sample boat's tables.
//
// Counted: median and worst of the processor times of makePlan, and of the whole plan, in milliseconds.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <ctime>

#include "core/plan/study/deepen.hpp"
#include "core/units/input_error.hpp"
#include "tests/core/plan/made_pieces.hpp"
#include "tests/core/plan/slips.hpp"

namespace fayline {
namespace {

const std::atomic<bool> goOn{false};

double milliseconds(std::clock_t from) {
    return 1e3 * static_cast<double>(std::clock() - from) / CLOCKS_PER_SEC;
}

void slips(benchmark::State& state) {
    const bool whole = state.range(0) != 0;
    const std::vector<made::Slipped> slips = made::slipsOfSample("marram.fayline");
    const plan::Shop shop = made::shop();
    std::vector<double> times;
    for (auto _ : state) {
        times.clear();
        for (const made::Slipped& slip : slips) {
            const std::clock_t begun = std::clock();
            try {
                const plan::Plan plan = plan::makePlan(slip.piece, shop);
                if (whole) benchmark::DoNotOptimize(plan::deepen(slip.piece, shop, plan, goOn));
            } catch (const units::InputError&) {
            }
            times.push_back(milliseconds(begun));
        }
        std::sort(times.begin(), times.end());
    }
    state.counters["median_ms"] = times[times.size() / 2];
    state.counters["worst_ms"] = times.back();
}
BENCHMARK(slips)->ArgName("whole")->Arg(0)->Arg(1)->Iterations(1)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace fayline
