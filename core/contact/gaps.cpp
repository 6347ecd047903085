#include "core/contact/gaps.hpp"

#include <algorithm>
#include <cmath>

#include "core/math/hermite.hpp"
#include "core/math/table.hpp"

namespace fayline::contact {

namespace {

// The gap on one element.
struct ElementGap {
    double from_m = 0;
    double length_m = 0;
    math::HermiteCubic cubic;

    GapAt at(double u) const { return {from_m + u * length_m, cubic.at(u), cubic.slope(u)}; }
};

ElementGap elementGap(const Contact& contact, std::size_t i) {
    const double length_m = contact.nodes_m[i + 1] - contact.nodes_m[i];
    return {
        contact.nodes_m[i], length_m,
        math::HermiteCubic(contact.gap_m[i], contact.slope[i], contact.gap_m[i + 1], contact.slope[i + 1], length_m)};
}

}  // namespace

GapAt gapAt(const Contact& contact, double s_m) {
    if (contact.nodes_m.size() < 2) return {s_m, 0, 0};
    const ElementGap element = elementGap(contact, math::intervalOf(contact.nodes_m, s_m));
    return element.at(std::clamp((s_m - element.from_m) / element.length_m, 0.0, 1.0));
}

GapAt greatestGap(const Contact& contact, double from_s_m, double to_s_m) {
    GapAt greatest = gapAt(contact, from_s_m);
    if (contact.nodes_m.size() < 2) return greatest;
    const auto look = [&](const GapAt& found) {
        if (found.gap_m > greatest.gap_m) greatest = found;
    };
    for (std::size_t i = math::intervalOf(contact.nodes_m, from_s_m); i + 1 < contact.nodes_m.size(); ++i) {
        const ElementGap element = elementGap(contact, i);
        if (element.from_m > to_s_m) break;
        const auto lookAt = [&](double u) {
            const double s = element.from_m + u * element.length_m;
            if (u >= 0 && u <= 1 && s >= from_s_m && s <= to_s_m) look(element.at(u));
        };
        lookAt(0);
        // Where the cubic stands level.
        const double c1 = element.cubic.c1, c2 = element.cubic.c2, c3 = element.cubic.c3;
        const double root = c2 * c2 - 3 * c3 * c1;
        if (root >= 0 && c3 != 0) {
            lookAt((-c2 - std::sqrt(root)) / (3 * c3));
            lookAt((-c2 + std::sqrt(root)) / (3 * c3));
        } else if (c3 == 0 && c2 != 0) {
            lookAt(-c1 / (2 * c2));
        }
    }
    look(gapAt(contact, to_s_m));
    return greatest;
}

}  // namespace fayline::contact
