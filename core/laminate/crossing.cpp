#include "core/laminate/crossing.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <tuple>

#include "core/math/count.hpp"

namespace fayline::laminate {

namespace {

constexpr double mostPiecesOfCap = 10000;

struct Segment {
    line::Xy a;
    line::Xy b;
    int index = 0;
};

bool boxesMeet(const Segment& p, const Segment& q) {
    return std::max(p.a.x_m, p.b.x_m) >= std::min(q.a.x_m, q.b.x_m) &&
           std::max(q.a.x_m, q.b.x_m) >= std::min(p.a.x_m, p.b.x_m) &&
           std::max(p.a.y_m, p.b.y_m) >= std::min(q.a.y_m, q.b.y_m) &&
           std::max(q.a.y_m, q.b.y_m) >= std::min(p.a.y_m, p.b.y_m);
}

bool sidesDiffer(double one, double other) {
    return (one <= 0 && other >= 0) || (one >= 0 && other <= 0);
}

bool segmentsMeet(const Segment& p, const Segment& q) {
    return boxesMeet(p, q) && sidesDiffer(cross(p.b - p.a, q.a - p.a), cross(p.b - p.a, q.b - p.a)) &&
           sidesDiffer(cross(q.b - q.a, p.a - q.a), cross(q.b - q.a, p.b - q.a));
}

std::vector<Segment> segmentsOf(const std::vector<std::vector<line::Xy>>& curves) {
    std::vector<Segment> segments;
    for (const auto& curve : curves) {
        for (std::size_t j = 1; j < curve.size(); ++j) {
            segments.push_back({curve[j - 1], curve[j], static_cast<int>(j) - 1});
        }
    }
    return segments;
}

// A cap, in pieces no longer than a cell: however deep the stack is, they lie in few cells.
void addCap(std::vector<Segment>& segments, const line::Xy& from, const line::Xy& to, int index, double cell) {
    const double length = math::hypot(to - from);
    const int pieces = std::max(1, static_cast<int>(std::ceil(length / cell)));
    const auto at = [&](int piece) {
        const double share = static_cast<double>(piece) / pieces;
        return from + share * (to - from);
    };
    for (int piece = 0; piece < pieces; ++piece) segments.push_back({at(piece), at(piece + 1), index});
}

// Side of the cells that segments are sorted into: the longest segment, so that each lies in a few cells, and no less
// than lets a cap lie in mostPiecesOfCap of them.
double cellOf(const std::vector<Segment>& segments, const std::vector<std::vector<line::Xy>>& curves) {
    double longest = 0;
    for (std::size_t i = 1; i < curves.size(); ++i) {
        const auto cap = [&](const line::Xy& a, const line::Xy& b) {
            longest = std::max(longest, math::hypot(b - a) / mostPiecesOfCap);
        };
        cap(curves[i - 1].front(), curves[i].front());
        cap(curves[i - 1].back(), curves[i].back());
    }
    for (const Segment& s : segments) longest = std::max(longest, math::hypot(s.b - s.a));
    return longest > 0 ? longest : 1;
}

}  // namespace

std::optional<Crossing> firstCrossing(const std::vector<std::vector<line::Xy>>& curves) {
    std::vector<Segment> segments = segmentsOf(curves);
    if (segments.empty()) return std::nullopt;
    const double cell = cellOf(segments, curves);
    for (std::size_t i = 1; i < curves.size(); ++i) {
        addCap(segments, curves[i - 1].front(), curves[i].front(), 0, cell);
        addCap(segments, curves[i - 1].back(), curves[i].back(), math::countOf(curves[i]) - 2, cell);
    }

    std::vector<std::tuple<std::int64_t, std::int64_t, int>> cells;
    for (std::size_t i = 0; i < segments.size(); ++i) {
        const Segment& s = segments[i];
        const auto number = [cell](double x) { return static_cast<std::int64_t>(std::floor(x / cell)); };
        for (auto x = number(std::min(s.a.x_m, s.b.x_m)); x <= number(std::max(s.a.x_m, s.b.x_m)); ++x) {
            for (auto y = number(std::min(s.a.y_m, s.b.y_m)); y <= number(std::max(s.a.y_m, s.b.y_m)); ++y) {
                cells.emplace_back(x, y, static_cast<int>(i));
            }
        }
    }
    std::ranges::sort(cells);

    std::optional<Crossing> first;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const auto& [x, y, one] = cells[i];
        for (std::size_t j = i + 1; j < cells.size(); ++j) {
            const auto& [otherX, otherY, other] = cells[j];
            if (otherX != x || otherY != y) break;
            const Segment& p = segments[one];
            const Segment& q = segments[other];
            if (std::abs(p.index - q.index) < 2 || !segmentsMeet(p, q)) continue;
            const Crossing found{std::min(p.index, q.index), std::max(p.index, q.index)};
            if (!first || std::pair(found.index, found.other) < std::pair(first->index, first->other)) first = found;
        }
    }
    return first;
}

}  // namespace fayline::laminate
