// Values between the rows of a table.
#pragma once

#include <algorithm>
#include <cstddef>
#include <functional>
#include <iterator>
#include <ranges>

namespace fayline::math {

// Number of the interval between ascending `places` (two or more) that holds `at`: i where it lies from places[i] up to
// places[i + 1]. The first or the last interval for a place beyond.
template <typename Places, typename Key = std::identity>
std::size_t intervalOf(const Places& places, double at, Key key = {}) {
    const auto first = std::begin(places);
    const auto after = std::ranges::upper_bound(first + 1, std::end(places) - 1, at, {}, key);
    return static_cast<std::size_t>(after - first) - 1;
}

// Between two values by a straight line; the first and the last themselves at shares of 0 and 1 within rounding.
constexpr double between(double from, double to, double share) {
    return from + share * (to - from);
}

// `value` of the rows where `key` is `at`: linear from row to row, level beyond the first and the last. `rows` ascend
// by `key` and are not empty; of two with one key the later holds there and beyond.
template <typename Rows, typename Key, typename Value>
double lookUp(const Rows& rows, double at, Key key, Value value) {
    const auto first = std::begin(rows);
    const auto last = std::end(rows);
    const auto after = std::ranges::upper_bound(first, last, at, {}, key);
    if (after == first) return std::invoke(value, *first);
    const auto before = after - 1;
    if (after == last) return std::invoke(value, *before);
    const double from = std::invoke(key, *before);
    const double share = (at - from) / (std::invoke(key, *after) - from);
    return between(std::invoke(value, *before), std::invoke(value, *after), share);
}

}  // namespace fayline::math
