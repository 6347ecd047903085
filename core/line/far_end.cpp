#include "core/line/far_end.hpp"

#include <algorithm>
#include <cmath>

namespace fayline::line {

namespace {

constexpr double tooWide = 3;   // times the widest of the other gaps
constexpr double asOthers = 2;  // and so wide at most once it is put right
constexpr double agreeing = 3;  // standard deviations within which points are taken to agree

double gapBetween(const Xy& a, const Xy& b) {
    return std::hypot(b.x_m - a.x_m, b.y_m - a.y_m);
}

}  // namespace

std::optional<FarEnd> farEnd(const std::vector<Xy>& points, const std::vector<bool>& leftOut, int end, double readTo_m,
                             const std::vector<Read>& reads, const std::vector<Slip>& slips) {
    const int last = static_cast<int>(points.size()) - 1;
    const int beside = end == 0 ? 1 : last - 1;
    double widest = 0;
    for (int i = 1; i <= last; ++i) {
        if (i != end && i - 1 != end) widest = std::max(widest, gapBetween(points[i - 1], points[i]));
    }
    if (gapBetween(points[end], points[beside]) <= tooWide * widest) return std::nullopt;
    std::optional<FarEnd> found;
    double least = agreeing;
    for (const Slip& slip : slips) {
        if (!slip.decimalPoint) continue;
        std::vector<Xy> righted = points;
        righted[end] = {slip.value_m[0], slip.value_m[1]};
        if (gapBetween(righted[end], righted[beside]) > asOthers * widest) continue;
        const LeftOut after = leaveOneOut(righted, leftOut, end, readTo_m, reads);
        if (after.scatter_m <= 0 || std::abs(after.times()) > least) continue;
        least = std::abs(after.times());
        found = FarEnd{slip, after};
    }
    return found;
}

}  // namespace fayline::line
