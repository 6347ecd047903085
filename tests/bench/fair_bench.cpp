// How long fairing takes, how that grows with the points, and beside it the same kind of smoothing by the GNU
// Scientific Library: splines of degree 5 for x and y by chord length, third differences of their coefficients
// penalised (gsl_bspline, gsl_multifit_linear_Lk), the penalty found where the misses are what rounding leaves. It has
// half as many coefficients as points, since GSL takes no more unknowns than points, and does less: no feet, no
// curvature, no arc length, no conditions. `gsl_over_ours` is its time over ours in the same run.
#include <benchmark/benchmark.h>
#include <gsl/gsl_bspline.h>
#include <gsl/gsl_multifit.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <memory>
#include <vector>

#include "core/line/fair.hpp"
#include "core/line/line.hpp"
#include "tests/core/line/random_line.hpp"

namespace fayline::line {
namespace {

// An S of two bends, heights rounded to sixteenths.
FairInput pointsOf(int count) {
    FairInput input;
    const double step = input.readTo_m;
    for (int i = 0; i < count; ++i) {
        const double s = static_cast<double>(i) / (count - 1);
        const double x = 1.8 * s, y = 0.4 * std::sin(4.2 * s) + 0.3 * s * s;
        input.points.push_back({x, std::round(y / step) * step});
    }
    return input;
}

struct Release {
    void operator()(gsl_matrix* m) const { gsl_matrix_free(m); }
    void operator()(gsl_vector* v) const { gsl_vector_free(v); }
    void operator()(gsl_bspline_workspace* w) const { gsl_bspline_free(w); }
    void operator()(gsl_multifit_linear_workspace* w) const { gsl_multifit_linear_free(w); }
};
using Matrix = std::unique_ptr<gsl_matrix, Release>;
using Vector = std::unique_ptr<gsl_vector, Release>;

// Root mean square of the misses of both coordinates.
double smoothByGsl(const FairInput& input) {
    const std::size_t n = input.points.size();
    std::vector<double> t(n, 0);
    for (std::size_t i = 1; i < n; ++i) {
        t[i] = t[i - 1] +
               std::hypot(input.points[i].x_m - input.points[i - 1].x_m, input.points[i].y_m - input.points[i - 1].y_m);
    }
    for (double& v : t) v /= t[n - 1];
    const std::size_t p = std::max<std::size_t>(8, n / 2);
    const std::unique_ptr<gsl_bspline_workspace, Release> basis(gsl_bspline_alloc(6, p - 4));
    gsl_bspline_knots_uniform(0, 1, basis.get());
    const Matrix design(gsl_matrix_alloc(n, p));
    const Vector row(gsl_vector_alloc(p));
    for (std::size_t i = 0; i < n; ++i) {
        gsl_bspline_eval(std::min(t[i], 1.0), row.get(), basis.get());
        gsl_matrix_set_row(design.get(), i, row.get());
    }
    const Matrix differences(gsl_matrix_alloc(p - 3, p));
    const Vector tau(gsl_vector_alloc(p - 3));
    gsl_multifit_linear_Lk(p, 3, differences.get());
    gsl_multifit_linear_L_decomp(differences.get(), tau.get());
    const std::unique_ptr<gsl_multifit_linear_workspace, Release> work(gsl_multifit_linear_alloc(n, p));
    const Matrix reduced(gsl_matrix_alloc(n - 3, p - 3)), back(gsl_matrix_alloc(n, p));
    const Vector values(gsl_vector_alloc(n)), reducedValues(gsl_vector_alloc(n - 3)), solved(gsl_vector_alloc(p - 3));
    const double target = input.readTo_m / 2 * std::sqrt(static_cast<double>(n) / 12);
    double squares = 0;
    for (const bool first : {true, false}) {
        for (std::size_t i = 0; i < n; ++i) {
            gsl_vector_set(values.get(), i, first ? input.points[i].x_m : input.points[i].y_m);
        }
        gsl_multifit_linear_stdform2(differences.get(), tau.get(), design.get(), values.get(), reduced.get(),
                                     reducedValues.get(), back.get(), work.get());
        if (first) gsl_multifit_linear_svd(reduced.get(), work.get());
        double low = -30, high = 10, missed = 0, size = 0;
        for (int trial = 0; trial < 12; ++trial) {
            const double middle = (low + high) / 2;
            gsl_multifit_linear_solve(std::exp(middle), reduced.get(), reducedValues.get(), solved.get(), &missed,
                                      &size, work.get());
            (missed < target ? low : high) = middle;
        }
        squares += missed * missed;
    }
    return std::sqrt(squares / static_cast<double>(n));
}

void fairing(benchmark::State& state) {
    const FairInput input = pointsOf(static_cast<int>(state.range(0)));
    for (auto _ : state) benchmark::DoNotOptimize(fair(input));
    state.SetComplexityN(state.range(0));
}
BENCHMARK(fairing)
    ->Arg(10)
    ->Arg(12)
    ->Arg(25)
    ->Arg(50)
    ->Arg(100)
    ->Arg(200)
    ->Arg(500)
    ->Arg(1000)
    ->Arg(2000)
    ->Arg(5000)
    ->Unit(benchmark::kMillisecond)
    ->Complexity();

// The two take turns, so that both meet the same machine.
void fairingAgainstGsl(benchmark::State& state) {
    using Clock = std::chrono::steady_clock;
    const FairInput input = pointsOf(static_cast<int>(state.range(0)));
    std::chrono::duration<double> ours{}, gsl{};
    for (auto _ : state) {
        const auto start = Clock::now();
        benchmark::DoNotOptimize(fair(input));
        const auto between = Clock::now();
        benchmark::DoNotOptimize(smoothByGsl(input));
        const auto end = Clock::now();
        ours += between - start;
        gsl += end - between;
    }
    state.counters["ours_ms"] = 1e3 * ours.count() / static_cast<double>(state.iterations());
    state.counters["gsl_ms"] = 1e3 * gsl.count() / static_cast<double>(state.iterations());
    state.counters["gsl_over_ours"] = gsl / ours;
}
BENCHMARK(fairingAgainstGsl)->Arg(12)->Arg(50)->Arg(100)->Arg(200)->Arg(500)->Unit(benchmark::kMillisecond);

void interpolating(benchmark::State& state) {
    FairInput input = pointsOf(static_cast<int>(state.range(0)));
    input.fairWithin_m = 0;
    for (auto _ : state) benchmark::DoNotOptimize(fair(input));
}
BENCHMARK(interpolating)->Arg(12)->Arg(100)->Arg(500)->Unit(benchmark::kMillisecond);

void randomLines(benchmark::State& state) {
    std::uint32_t seed = 0;
    for (auto _ : state) benchmark::DoNotOptimize(fair(test::randomLine(seed++ % 1000).input()));
}
BENCHMARK(randomLines)->Unit(benchmark::kMillisecond);

void placeByArcLength(benchmark::State& state) {
    const Line line = fair(pointsOf(static_cast<int>(state.range(0)))).line;
    double at = 0;
    for (auto _ : state) {
        at = std::fmod(at + 0.7137, line.length());
        benchmark::DoNotOptimize(line.at(at));
    }
}
BENCHMARK(placeByArcLength)->Arg(12)->Arg(500);

void nearestPlace(benchmark::State& state) {
    const Line line = fair(pointsOf(static_cast<int>(state.range(0)))).line;
    double at = 0;
    for (auto _ : state) {
        at = std::fmod(at + 0.7137, 1.8);
        benchmark::DoNotOptimize(line.nearest(at, 0.1));
    }
}
BENCHMARK(nearestPlace)->Arg(12)->Arg(500);

}  // namespace
}  // namespace fayline::line
