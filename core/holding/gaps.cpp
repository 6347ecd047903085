#include "core/holding/gaps.hpp"

#include <algorithm>
#include <cmath>

namespace fayline::holding {

namespace {

// v = v0 + a u + c2 u^2 + c3 u^3 on an element of this length, u from 0 to 1.
struct Element {
    double from_m = 0;
    double length_m = 0;
    double v0 = 0;
    double a = 0;
    double c2 = 0;
    double c3 = 0;

    GapAt at(double u) const {
        return {from_m + u * length_m, v0 + u * (a + u * (c2 + u * c3)), (a + u * (2 * c2 + 3 * u * c3)) / length_m};
    }
};

Element elementOf(const Contact& contact, std::size_t i) {
    const double h = contact.nodes_m[i + 1] - contact.nodes_m[i];
    const double a = contact.slope[i] * h;
    const double b = contact.slope[i + 1] * h;
    const double rise = contact.gap_m[i + 1] - contact.gap_m[i];
    return {contact.nodes_m[i], h, contact.gap_m[i], a, 3 * rise - 2 * a - b, a + b - 2 * rise};
}

std::size_t elementAt(const Contact& contact, double s_m) {
    const auto& nodes = contact.nodes_m;
    return static_cast<std::size_t>(std::upper_bound(nodes.begin() + 1, nodes.end() - 1, s_m) - nodes.begin()) - 1;
}

}  // namespace

GapAt gapAt(const Contact& contact, double s_m) {
    if (contact.nodes_m.size() < 2) return {s_m, 0, 0};
    const Element element = elementOf(contact, elementAt(contact, s_m));
    return element.at(std::clamp((s_m - element.from_m) / element.length_m, 0.0, 1.0));
}

GapAt greatestGap(const Contact& contact, double from_s_m, double to_s_m) {
    GapAt greatest = gapAt(contact, from_s_m);
    if (contact.nodes_m.size() < 2) return greatest;
    const auto look = [&](const GapAt& found) {
        if (found.gap_m > greatest.gap_m) greatest = found;
    };
    for (std::size_t i = elementAt(contact, from_s_m); i + 1 < contact.nodes_m.size(); ++i) {
        const Element element = elementOf(contact, i);
        if (element.from_m > to_s_m) break;
        const auto lookAt = [&](double u) {
            const double s = element.from_m + u * element.length_m;
            if (u >= 0 && u <= 1 && s >= from_s_m && s <= to_s_m) look(element.at(u));
        };
        lookAt(0);
        // Where the cubic stands level.
        const double root = element.c2 * element.c2 - 3 * element.c3 * element.a;
        if (root >= 0 && element.c3 != 0) {
            lookAt((-element.c2 - std::sqrt(root)) / (3 * element.c3));
            lookAt((-element.c2 + std::sqrt(root)) / (3 * element.c3));
        } else if (element.c3 == 0 && element.c2 != 0) {
            lookAt(-element.a / (2 * element.c2));
        }
    }
    look(gapAt(contact, to_s_m));
    return greatest;
}

}  // namespace fayline::holding
