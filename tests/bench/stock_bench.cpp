// Cutting strips from boards: a shed of boards with knots, pieces of a boat with their own sections and lengths.
#include <benchmark/benchmark.h>

#include <random>
#include <string>
#include <thread>

#include "core/math/random.hpp"
#include "core/stock/stock.hpp"

namespace fayline::stock {
namespace {

// Eight strips a piece, each a little longer than the one inside it; every other piece longer than most boards.
Job shed(int strips, int boards, int sections) {
    std::mt19937_64 generator(20);
    const auto from = [&](double least, double most, double step) {
        return least + step * std::floor(math::uniformDraw(generator) * ((most - least) / step + 1));
    };
    Job job;
    for (int i = 0; i < strips; ++i) {
        const int piece = i / 8;
        const int place = i % 8 + 1;
        Strip strip{.piece = "piece " + std::to_string(piece), .place = place, .species = "oak"};
        strip.length_m = 1.9 + 0.45 * (piece % 7) + 0.011 * place;
        const int section = piece % sections;
        strip.thickness_m = section % 2 == 0 ? 0.006 : 0.008;
        strip.width_m = 0.03 + 0.006 * (section % 3);
        strip.takenOff = {{0, 0.1}, {strip.length_m - 0.15, strip.length_m}};
        strip.tightest = Stretch{0.3 * strip.length_m, 0.3 * strip.length_m + 0.5};
        strip.outer = place == 8;
        strip.spare = place == 8 && piece % 3 == 2;
        job.strips.push_back(strip);
    }
    for (int i = 0; i < boards; ++i) {
        Board board{.name = std::to_string(i + 1), .species = "oak"};
        board.length_m = from(2.4, 4.2, 0.1);
        board.width_m = from(0.12, 0.24, 0.005);
        board.thickness_m = i % 3 == 0 ? 0.052 : 0.04;
        board.price = 1800 * board.length_m * board.width_m * board.thickness_m;
        for (int bad = i % 3; bad > 0; --bad) {
            const double at = from(0, board.length_m, 0.01);
            board.bad.push_back({{at, at + 0.08}, {}});
            if (bad == 2) board.bad.back().across = Stretch{0, from(0.02, 0.1, 0.01)};
        }
        job.boards.push_back(board);
    }
    return job;
}

// Under 100 ms is asked of 40 strips from 30 boards.
void FirstAnswer(benchmark::State& state) {
    const Job job =
        shed(static_cast<int>(state.range(0)), static_cast<int>(state.range(1)), static_cast<int>(state.range(2)));
    CutPlan plan;
    for (auto _ : state) plan = firstCutPlan(job);
    state.counters["boards"] = static_cast<double>(plan.boards.size());
    state.counters["missing"] = static_cast<double>(plan.missing.size());
    state.counters["waste_pct"] = 100 * plan.waste;
}
BENCHMARK(FirstAnswer)->Args({40, 30, 1})->Args({40, 30, 5})->Args({400, 200, 5})->Unit(benchmark::kMillisecond);

// Proven within 1 % of the best under 2 s is asked of 40 strips from 30 boards.
void Best(benchmark::State& state) {
    const Job job =
        shed(static_cast<int>(state.range(0)), static_cast<int>(state.range(1)), static_cast<int>(state.range(2)));
    const std::atomic<bool> stop{false};
    CutPlan plan;
    for (auto _ : state) plan = bestCutPlan(job, {}, stop);
    state.counters["boards"] = static_cast<double>(plan.boards.size());
    state.counters["missing"] = static_cast<double>(plan.missing.size());
    state.counters["scarfs"] = static_cast<double>(plan.scarfs.size());
    state.counters["gap_pct"] = 100 * plan.gap;
    state.counters["waste_pct"] = 100 * plan.waste;
}
BENCHMARK(Best)
    ->Args({8, 12, 1})
    ->Args({40, 30, 1})
    ->Args({40, 30, 2})
    ->Args({40, 30, 5})
    ->Args({100, 60, 1})
    ->Args({200, 100, 1})
    ->Args({400, 200, 1})
    ->Args({400, 200, 5})
    ->Iterations(1)
    ->Unit(benchmark::kMillisecond);

// From the stop to the answer, in the midst of the work.
void Stopping(benchmark::State& state) {
    const Job job = shed(40, 30, 5);
    for (auto _ : state) {
        std::atomic<bool> stop{false};
        std::chrono::steady_clock::time_point asked;
        std::thread asks([&] {
            std::this_thread::sleep_for(std::chrono::milliseconds(200));
            asked = std::chrono::steady_clock::now();
            stop = true;
        });
        benchmark::DoNotOptimize(bestCutPlan(job, {}, stop));
        const auto answered = std::chrono::steady_clock::now();
        asks.join();
        state.SetIterationTime(std::max(std::chrono::duration<double>(answered - asked).count(), 0.0));
    }
}
BENCHMARK(Stopping)->UseManualTime()->Iterations(5)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace fayline::stock

BENCHMARK_MAIN();
