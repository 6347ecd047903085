#include "core/schedule/days.hpp"

#include <algorithm>
#include <cmath>
#include <random>

namespace fayline::schedule {

Triangle triangleOf(double uncertain) {
    return {1 - uncertain / 2, 1, 1 + uncertain};
}

double drawn(const Triangle& triangle, double draw) {
    const double wide = triangle.most - triangle.least;
    if (!(wide > 0)) return triangle.likeliest;
    const double below = (triangle.likeliest - triangle.least) / wide;
    if (draw < below) return triangle.least + std::sqrt(draw * wide * (triangle.likeliest - triangle.least));
    return triangle.most - std::sqrt((1 - draw) * wide * (triangle.most - triangle.likeliest));
}

std::optional<Days> simulateDays(const Job& job, double uncertain, int count, std::uint64_t seed,
                                 const std::atomic<bool>& stop) {
    Run run = runOf(job);
    const Triangle triangle = triangleOf(uncertain);
    std::mt19937_64 generator(seed);
    std::vector<double> factors(run.tasks.size(), 1.0);
    std::vector<double> margins;
    margins.reserve(static_cast<std::size_t>(count));
    int cupsInTime = 0;
    for (int day = 0; day < count; ++day) {
        if (stop) return std::nullopt;
        for (double& factor : factors) factor = drawn(triangle, static_cast<double>(generator() >> 11) * 0x1p-53);
        retime(job, factors, run);
        margins.push_back(run.margin_s());
        if (run.cupMargin_s() >= 0) ++cupsInTime;
    }
    Days days;
    days.count = count;
    if (count == 0) return days;
    std::sort(margins.begin(), margins.end());
    const auto late = std::lower_bound(margins.begin(), margins.end(), 0.0) - margins.begin();
    days.chanceInTime = 1 - static_cast<double>(late) / count;
    days.chanceCups = static_cast<double>(cupsInTime) / count;
    days.error = std::sqrt(days.chanceInTime * (1 - days.chanceInTime) / count);
    const auto at = [&margins](double share) {
        return margins[static_cast<std::size_t>(share * static_cast<double>(margins.size() - 1))];
    };
    days.margin05_s = at(0.05);
    days.margin50_s = at(0.5);
    days.margin95_s = at(0.95);
    return days;
}

}  // namespace fayline::schedule
