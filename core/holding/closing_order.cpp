#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/holding/closing.hpp"

namespace fayline::holding {

namespace {

// From the one nearest the middle outwards, side by side in turn while both have any left.
std::vector<int> fromMiddle(const std::vector<int>& ascending, const std::vector<model::Station>& stations,
                            double middle_m) {
    const auto off = [&](std::size_t i) { return std::abs(stations[ascending[i]].at_m - middle_m); };
    std::size_t nearest = 0;
    for (std::size_t i = 1; i < ascending.size(); ++i) {
        if (off(i) < off(nearest)) nearest = i;
    }
    std::vector<int> order{ascending[nearest]};
    std::size_t left = nearest;  // how many are left before it
    std::size_t right = nearest + 1;
    bool goLeft = left > 0 && (right >= ascending.size() || off(left - 1) < off(right));
    while (left > 0 || right < ascending.size()) {
        const bool takeLeft = left > 0 && (goLeft || right >= ascending.size());
        order.push_back(takeLeft ? ascending[--left] : ascending[right++]);
        goLeft = !takeLeft;
    }
    return order;
}

}  // namespace

std::vector<int> closingOrder(const std::vector<model::Station>& stations, model::From from, double lineLength_m) {
    std::vector<int> order(stations.size());
    std::iota(order.begin(), order.end(), 0);
    std::ranges::stable_sort(order, [&](int a, int b) { return stations[a].at_m < stations[b].at_m; });
    if (from == model::From::end) std::ranges::reverse(order);
    if (from != model::From::middle || order.empty()) return order;
    return fromMiddle(order, stations, lineLength_m / 2);
}

}  // namespace fayline::holding
