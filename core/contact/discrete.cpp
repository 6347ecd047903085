#include "core/contact/discrete.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/units/input_error.hpp"

namespace fayline::contact {

namespace {

[[noreturn]] void refuse(const std::string& wrong, const std::string& accepted) {
    throw units::InputError("holding", wrong, accepted);
}

void requireLength(const std::vector<double>& values, std::size_t places, const char* name) {
    if (values.size() != places)
        refuse(std::to_string(values.size()) + " values of " + name + " for " + std::to_string(places) + " places",
               "give one for each of Gauss's places");
    for (const double value : values)
        if (!std::isfinite(value)) refuse(std::string("a value of ") + name + " is no number", "give numbers");
}

void require(const Problem& problem) {
    const Rod& rod = problem.rod;
    const auto& nodes = rod.mesh.nodes_m;
    if (nodes.size() < 2) refuse("a rod without length", "give at least two nodes");
    for (std::size_t i = 0; i < nodes.size(); ++i)
        if (!std::isfinite(nodes[i]) || (i > 0 && !(nodes[i] > nodes[i - 1])))
            refuse("nodes that do not ascend", "give ascending places");
    const std::size_t places = 3 * (nodes.size() - 1);
    requireLength(rod.curvature_per_m, places, "curvature");
    requireLength(rod.curvatureRate_per_m2, places, "the rate of curvature");
    requireLength(rod.stiffness_N_m2, places, "stiffness");
    requireLength(rod.natural_per_m, places, "natural curvature");
    requireLength(rod.foundation_N_m2, places, "the bed");
    requireLength(rod.load_N_m, places, "the load");
    for (const double stiffness : rod.stiffness_N_m2)
        if (!(stiffness > 0)) refuse("a stiffness that is not above 0", "give numbers above 0");
    for (const double foundation : rod.foundation_N_m2)
        if (foundation < 0) refuse("a bed below 0", "give numbers of 0 or more");
    for (const Hold& hold : problem.holds) {
        if (!std::isfinite(hold.at_m) || hold.at_m < nodes.front() - 1e-9 || hold.at_m > nodes.back() + 1e-9)
            refuse("a hold off the rod", "give a place between its ends");
        if (!std::isfinite(hold.pad_m) || hold.pad_m < 0) refuse("a pad below 0", "give a length of 0 or more");
        const double most = hold.pull_N.value_or(hold.most_N);
        if (!std::isfinite(most) || most < 0) refuse("a pull that is no number or below 0", "give 0 or more");
    }
    if (!std::isfinite(problem.anchor_m)) refuse("an anchor that is no number", "give a place");
}

std::size_t nearestNode(const std::vector<double>& nodes_m, double at_m) {
    const auto above = std::lower_bound(nodes_m.begin(), nodes_m.end(), at_m);
    if (above == nodes_m.begin()) return 0;
    if (above == nodes_m.end()) return nodes_m.size() - 1;
    const auto index = static_cast<std::size_t>(above - nodes_m.begin());
    return *above - at_m < at_m - nodes_m[index - 1] ? index : index - 1;
}

void layChain(const Problem& problem, Discrete& discrete) {
    const std::size_t anchor = nearestNode(discrete.nodes_m, problem.anchor_m);
    discrete.chain.push_back(anchor);
    for (const Pad& pad : discrete.pads) discrete.chain.push_back(pad.centre);
    std::ranges::sort(discrete.chain);
    discrete.chain.erase(std::unique(discrete.chain.begin(), discrete.chain.end()), discrete.chain.end());
    const auto place = [&](std::size_t node) {
        return static_cast<std::size_t>(std::lower_bound(discrete.chain.begin(), discrete.chain.end(), node) -
                                        discrete.chain.begin());
    };
    discrete.anchor = place(anchor);
    for (const Pad& pad : discrete.pads) discrete.chainOfHold.push_back(place(pad.centre));
}

}  // namespace

Pad padOn(const Mesh& mesh, const Hold& hold) {
    const auto& nodes = mesh.nodes_m;
    Pad pad{.first = nearestNode(nodes, hold.at_m - hold.pad_m / 2),
            .last = nearestNode(nodes, hold.at_m + hold.pad_m / 2),
            .centre = nearestNode(nodes, hold.at_m)};
    const std::size_t count = pad.last - pad.first + 1;
    pad.gapByGap.assign(count, 0);
    pad.gapBySlope.assign(count, 0);
    pad.slopeByGap.assign(count, 0);
    pad.slopeBySlope.assign(count, 0);
    if (count == 1) {
        pad.gapByGap[0] = 1;
        pad.slopeBySlope[0] = 1;
        return pad;
    }
    const double length = nodes[pad.last] - nodes[pad.first];
    for (std::size_t i = 0; i + 1 < count; ++i) {
        const double h = nodes[pad.first + i + 1] - nodes[pad.first + i];
        pad.gapByGap[i] += h / 2 / length;
        pad.gapByGap[i + 1] += h / 2 / length;
        pad.gapBySlope[i] += h * h / 12 / length;
        pad.gapBySlope[i + 1] -= h * h / 12 / length;
    }
    pad.slopeByGap.front() = -1 / length;
    pad.slopeByGap.back() = 1 / length;
    return pad;
}

namespace {

// Sums and greatest values over all places.
void sumUp(const Problem& problem, Discrete& discrete) {
    const Rod& rod = problem.rod;
    for (std::size_t i = 0; i < rod.stiffness_N_m2.size(); ++i) {
        const double stiffness = rod.stiffness_N_m2[i];
        discrete.stiffest_N_m2 = std::max(discrete.stiffest_N_m2, stiffness);
        discrete.stiffestFoundation_N_m2 = std::max(discrete.stiffestFoundation_N_m2, rod.foundation_N_m2[i]);
        const double load = rod.load_N_m[i] * math::gauss3Weight[i % 3] * discrete.length_m[i / 3];
        discrete.load_N += std::abs(load);
        discrete.pressing_N += std::max(0.0, load);
        discrete.moment_N_m = std::max(discrete.moment_N_m,
                                       stiffness * (std::abs(rod.curvature_per_m[i]) + std::abs(rod.natural_per_m[i])));
    }
    for (std::size_t e = 0; e < discrete.length_m.size(); ++e)
        discrete.stiffness_N_m2.push_back(rod.stiffness_N_m2[3 * e + 1]);
}

void pairUp(const Rod& rod, Discrete& discrete) {
    const std::size_t elements = discrete.length_m.size();
    discrete.pairs.resize((elements + 1) / 2);
    for (std::size_t pair = 0; pair < discrete.pairs.size(); ++pair) {
        const std::size_t one = 2 * pair;
        const std::size_t other = std::min(one + 1, elements - 1);
        ElementPair& both = discrete.pairs[pair];
        both.length_m = Pair{discrete.length_m[one], discrete.length_m[other]};
        both.lengths_per_m = 1.0 / both.length_m;
        for (std::size_t i = 0; i < 3; ++i) {
            const auto of = [&](const std::vector<double>& values) {
                return Pair{values[3 * one + i], values[3 * other + i]};
            };
            both.places[i] = {
                {of(rod.curvature_per_m), of(rod.curvatureRate_per_m2), of(rod.stiffness_N_m2), of(rod.natural_per_m)},
                of(rod.foundation_N_m2),
                of(rod.load_N_m)};
        }
    }
}

}  // namespace

Discrete discreteOf(const Problem& problem) {
    require(problem);
    const Rod& rod = problem.rod;
    Discrete discrete;
    discrete.nodes_m = rod.mesh.nodes_m;
    discrete.length_m.resize(discrete.nodes_m.size() - 1);
    for (std::size_t e = 0; e < discrete.length_m.size(); ++e)
        discrete.length_m[e] = discrete.nodes_m[e + 1] - discrete.nodes_m[e];
    discrete.stiffness_N_m2.reserve(discrete.length_m.size());
    sumUp(problem, discrete);
    pairUp(rod, discrete);
    discrete.holds = problem.holds;
    for (const Hold& hold : problem.holds) discrete.pads.push_back(padOn(rod.mesh, hold));
    discrete.longest_m = *std::ranges::max_element(discrete.length_m);
    discrete.reach_m = discrete.nodes_m.back() - discrete.nodes_m.front();
    discrete.padsHold = problem.padsHold;
    layChain(problem, discrete);
    return discrete;
}

}  // namespace fayline::contact
