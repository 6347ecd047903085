#include <algorithm>
#include <cmath>

#include "core/contact/contact.hpp"
#include "core/math/hermite.hpp"

namespace fayline::contact {

namespace {

// Marks inside (from, to) with both ends, ascending; of marks nearer than `least` to another the first stays, and the
// ends always do.
std::vector<double> places(double from_m, double to_m, std::vector<double> marks_m, double least_m) {
    std::ranges::sort(marks_m);
    std::vector<double> kept{from_m};
    for (const double mark : marks_m) {
        if (mark - kept.back() >= least_m && to_m - mark >= least_m) kept.push_back(mark);
    }
    kept.push_back(to_m);
    return kept;
}

}  // namespace

Mesh meshBetween(double from_m, double to_m, std::vector<double> marks_m, double step_m) {
    const std::vector<double> kept = places(from_m, to_m, std::move(marks_m), step_m / 20);
    Mesh mesh;
    for (std::size_t i = 0; i + 1 < kept.size(); ++i) {
        const double length = kept[i + 1] - kept[i];
        const int parts = std::max(1, static_cast<int>(std::ceil(length / step_m - 1e-6)));
        for (int part = 0; part < parts; ++part) mesh.nodes_m.push_back(kept[i] + length * part / parts);
    }
    mesh.nodes_m.push_back(to_m);
    return mesh;
}

std::vector<double> gaussPlaces(const Mesh& mesh) {
    std::vector<double> places_m;
    if (mesh.nodes_m.empty()) return places_m;
    places_m.reserve(3 * (mesh.nodes_m.size() - 1));
    for (std::size_t e = 0; e + 1 < mesh.nodes_m.size(); ++e) {
        const double length = mesh.nodes_m[e + 1] - mesh.nodes_m[e];
        for (const double part : math::gauss3At) places_m.push_back(mesh.nodes_m[e] + length * part);
    }
    return places_m;
}

}  // namespace fayline::contact
