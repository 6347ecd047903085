#include <algorithm>

#include "core/contact/contact.hpp"
#include "core/contact/discrete.hpp"
#include "core/math/table.hpp"

namespace fayline::contact {

namespace {

// Between Gauss's three points of an element by straight lines; beyond the outer two the nearest value.
double betweenPlaces(const std::vector<double>& values, std::size_t element, double part) {
    const double* const three = values.data() + 3 * element;
    if (part <= math::gauss3At[0]) return three[0];
    if (part >= math::gauss3At[2]) return three[2];
    const std::size_t left = part < math::gauss3At[1] ? 0 : 1;
    const double share = (part - math::gauss3At[left]) / (math::gauss3At[left + 1] - math::gauss3At[left]);
    return math::between(three[left], three[left + 1], share);
}

}  // namespace

AtPlace at(const Problem& problem, const Contact& contact, double s_m) {
    const auto& nodes = contact.nodes_m;
    const std::size_t element = math::intervalOf(nodes, s_m);
    const double h = nodes[element + 1] - nodes[element];
    const double part = std::clamp((s_m - nodes[element]) / h, 0.0, 1.0);
    const math::HermiteEnds<double> ends{contact.gap_m[element], contact.slope[element] * h, contact.gap_m[element + 1],
                                         contact.slope[element + 1] * h};
    const Gap gap = math::hermiteValues(math::hermiteBasisAt(part), ends, 1 / h);
    const Rod& rod = problem.rod;
    // The form's curvature by its rate from the middle of the element.
    const std::size_t middle = 3 * element + 1;
    const double curvature = rod.curvature_per_m[middle] + rod.curvatureRate_per_m2[middle] * (part - 0.5) * h;
    const RodPlace place{curvature, betweenPlaces(rod.curvatureRate_per_m2, element, part),
                         betweenPlaces(rod.stiffness_N_m2, element, part),
                         betweenPlaces(rod.natural_per_m, element, part)};
    const Turning turning = turningOf(place, gap);
    AtPlace found{.gap_m = gap.value, .slope = gap.slope, .curvature_per_m = turning.turn / turning.path};
    found.moment_N_m = place.stiffness_N_m2 * (found.curvature_per_m - place.natural_per_m);
    found.pressure_N_m = betweenPlaces(rod.foundation_N_m2, element, part) * std::max(0.0, -gap.value);
    return found;
}

double energyOf(const Problem& problem, const std::vector<double>& gap_m, const std::vector<double>& slope,
                const std::vector<double>& pulls_N) {
    Problem given = problem;
    for (std::size_t i = 0; i < given.holds.size(); ++i) given.holds[i].pull_N = pulls_N[i];
    const Discrete discrete = discreteOf(given);
    std::vector<double> x(2 * gap_m.size());
    for (std::size_t i = 0; i < gap_m.size(); ++i) {
        x[2 * i] = gap_m[i];
        x[2 * i + 1] = slope[i];
    }
    Equilibrium balance;
    balanceOf(discrete, x, {}, balance);
    return balance.energy;
}

}  // namespace fayline::contact
