// Whether a state is one of balance, worked out anew from the energy in contact.hpp: derivatives by automatic
// differentiation, means under pads by quadrature, slips one by one. Shares nothing with the solver but gaussPlaces.
#pragma once

#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <unsupported/Eigen/AutoDiff>
#include <vector>

#include "core/contact/contact.hpp"

namespace fayline::contact {

struct BalanceCheck {
    double outOfBalance_N = 0;  // greatest; a moment as the force that it is over the longest element
    double scale_N = 0;         // greatest of the problem's own forces
    double worstHold_m = 0;  // gap left by a hold that closes, or open by one that is slack, or crushed by a full one
    bool withinStrength = true;
    double energy = 0;
    double worstSlip_m = 0;  // against the slips in the answer
};

inline BalanceCheck checkBalance(const Problem& problem, const Contact& contact) {
    using Four = Eigen::AutoDiffScalar<Eigen::Vector4d>;
    const Rod& rod = problem.rod;
    const auto& nodes = rod.mesh.nodes_m;
    const std::size_t elements = nodes.size() - 1;
    const std::vector<double> places = gaussPlaces(rod.mesh);
    constexpr double weights[] = {5.0 / 18, 8.0 / 18, 5.0 / 18};
    const auto node = [&](double s) {
        std::size_t best = 0;
        for (std::size_t i = 0; i < nodes.size(); ++i)
            if (std::abs(nodes[i] - s) < std::abs(nodes[best] - s)) best = i;
        return best;
    };

    struct At {
        Four v, slope, bend;
    };
    const auto at = [&](std::size_t e, double s) {
        const double h = nodes[e + 1] - nodes[e];
        const double u = (s - nodes[e]) / h;
        const Four v0(contact.gap_m[e], 4, 0), p0(contact.slope[e], 4, 1);
        const Four v1(contact.gap_m[e + 1], 4, 2), p1(contact.slope[e + 1], 4, 3);
        // Cubic by divided differences: rise over the element against the slopes at its ends.
        const Four mean = (v1 - v0) / h;
        const Four second = 3 * mean - 2 * p0 - p1;
        const Four third = p0 + p1 - 2 * mean;
        const double t = u * h;
        return At{.v = v0 + t * (p0 + u * (second + u * third)),
                  .slope = p0 + u * (2 * second + 3 * u * third),
                  .bend = (2 * second + 6 * u * third) / h};
    };
    const auto path = [&](std::size_t place, const At& state) {
        const Four a = 1 + rod.curvature_per_m[place] * state.v;
        return Four(sqrt(a * a + state.slope * state.slope));
    };

    BalanceCheck check;
    Eigen::VectorXd force = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(2 * nodes.size()));
    double load = 0;
    double moment = 0;
    std::vector<double> longer(elements);
    for (std::size_t e = 0; e < elements; ++e) {
        const double h = nodes[e + 1] - nodes[e];
        for (std::size_t i = 0; i < 3; ++i) {
            const std::size_t place = 3 * e + i;
            const At state = at(e, places[place]);
            const double k = rod.curvature_per_m[place];
            const Four a = 1 + k * state.v;
            const Four aRate = rod.curvatureRate_per_m2[place] * state.v + k * state.slope;
            const Four j = path(place, state);
            const Four turned = (a * state.bend - state.slope * aRate) / (j * j);
            const Four excess = (k - turned) / j - rod.natural_per_m[place];
            Four density = rod.stiffness_N_m2[place] / 2 * excess * excess * j + rod.load_N_m[place] * state.v;
            if (state.v.value() < 0) density += rod.foundation_N_m2[place] / 2 * state.v * state.v;
            check.energy += weights[i] * h * density.value();
            force.segment<4>(static_cast<Eigen::Index>(2 * e)) += weights[i] * h * density.derivatives();
            longer[e] += weights[i] * h * (j.value() - 1);
            load += weights[i] * h * std::abs(rod.load_N_m[place]);
            moment = std::max(moment, rod.stiffness_N_m2[place] * (std::abs(k) + std::abs(rod.natural_per_m[place])));
        }
    }
    const std::size_t anchor = node(problem.anchor_m);
    std::vector<double> drag(elements);  // what the pulls' leaning does to each element's path
    for (std::size_t i = 0; i < problem.holds.size(); ++i) {
        const Hold& hold = problem.holds[i];
        const double pull = contact.holds[i].pull_N;
        const std::size_t centre = node(hold.at_m);
        const std::size_t first = node(hold.at_m - hold.pad_m / 2);
        const std::size_t last = node(hold.at_m + hold.pad_m / 2);
        double slip = 0;
        for (std::size_t e = std::min(anchor, centre); e < std::max(anchor, centre); ++e)
            slip += anchor < centre ? -longer[e] : longer[e];
        check.worstSlip_m = std::max(check.worstSlip_m, std::abs(slip - contact.holds[i].slip_m));
        if (!problem.padsHold) slip = 0;
        double gap = 0;
        double slope = 0;
        if (first == last) {
            gap = contact.gap_m[first];
            slope = contact.slope[first];
            force[static_cast<Eigen::Index>(2 * first)] += pull;
            force[static_cast<Eigen::Index>(2 * first + 1)] += pull * slip;
        } else {
            const double pad = nodes[last] - nodes[first];
            for (std::size_t e = first; e < last; ++e)
                for (std::size_t g = 0; g < 3; ++g) {
                    const double part = weights[g] * (nodes[e + 1] - nodes[e]) / pad;
                    const At state = at(e, places[3 * e + g]);
                    gap += part * state.v.value();
                    slope += part * state.slope.value();
                    force.segment<4>(static_cast<Eigen::Index>(2 * e)) +=
                        pull * part * (state.v.derivatives() + slip * state.slope.derivatives());
                }
        }
        if (problem.padsHold)
            for (std::size_t e = std::min(anchor, centre); e < std::max(anchor, centre); ++e)
                drag[e] += pull * slope * (anchor < centre ? -1 : 1);
        const double closing = gap + slope * slip;
        check.energy += pull * closing;
        check.scale_N = std::max(check.scale_N, pull);
        const auto miss = [&](double by) { check.worstHold_m = std::max(check.worstHold_m, by); };
        switch (contact.holds[i].state) {
            case HoldState::given:
                check.withinStrength &= pull == hold.pull_N;
                break;
            case HoldState::closes:
                check.withinStrength &= pull >= 0 && pull <= hold.most_N;
                miss(std::abs(closing));
                break;
            case HoldState::full:
                check.withinStrength &= pull == hold.most_N;
                miss(-closing);
                break;
            case HoldState::slack:
                check.withinStrength &= pull == 0;
                miss(closing);
                break;
        }
    }
    for (std::size_t e = 0; e < elements; ++e)
        for (std::size_t i = 0; i < 3 && drag[e] != 0; ++i) {
            const std::size_t place = 3 * e + i;
            force.segment<4>(static_cast<Eigen::Index>(2 * e)) +=
                drag[e] * weights[i] * (nodes[e + 1] - nodes[e]) * path(place, at(e, places[place])).derivatives();
        }
    // Nodes closer than half the longest element are taken together: between those, the last digit of a gap in double
    // precision (1e-17 m) already is a force of B 1e-17 m / distance^3.
    double longest = 0;
    for (std::size_t e = 0; e < elements; ++e) longest = std::max(longest, nodes[e + 1] - nodes[e]);
    for (std::size_t first = 0, last = 0; first < nodes.size(); first = ++last) {
        while (last + 1 < nodes.size() && nodes[last + 1] - nodes[last] < longest / 2) ++last;
        double sum = 0;
        double turning = 0;
        for (std::size_t n = first; n <= last; ++n) {
            const auto row = static_cast<Eigen::Index>(2 * n);
            sum += force[row];
            turning += force[row + 1] + force[row] * (nodes[n] - (nodes[first] + nodes[last]) / 2);
        }
        check.outOfBalance_N = std::max({check.outOfBalance_N, std::abs(sum), std::abs(turning) / longest});
    }
    const double length = nodes.back() - nodes.front();
    check.scale_N = std::max({check.scale_N, load, moment / std::min(length, 1.0)});
    return check;
}

}  // namespace fayline::contact
