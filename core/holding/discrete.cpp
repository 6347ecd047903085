#include "core/holding/discrete.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/measure/input_error.hpp"

namespace fayline::holding {

namespace {

[[noreturn]] void refuse(const std::string& wrong, const std::string& accepted) {
    throw measure::InputError("holding", wrong, accepted);
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
    requireLength(rod.bed_N_m2, places, "the bed");
    requireLength(rod.load_N_m, places, "the load");
    for (const double stiffness : rod.stiffness_N_m2)
        if (!(stiffness > 0)) refuse("a stiffness that is not above 0", "give numbers above 0");
    for (const double bed : rod.bed_N_m2)
        if (bed < 0) refuse("a bed below 0", "give numbers of 0 or more");
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
    std::sort(discrete.chain.begin(), discrete.chain.end());
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
    Pad pad;
    pad.centre = nearestNode(nodes, hold.at_m);
    pad.first = nearestNode(nodes, hold.at_m - hold.pad_m / 2);
    pad.last = nearestNode(nodes, hold.at_m + hold.pad_m / 2);
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

Discrete discreteOf(const Problem& problem) {
    require(problem);
    const Rod& rod = problem.rod;
    Discrete discrete;
    discrete.nodes_m = rod.mesh.nodes_m;
    discrete.length_m.resize(discrete.nodes_m.size() - 1);
    for (std::size_t e = 0; e < discrete.length_m.size(); ++e)
        discrete.length_m[e] = discrete.nodes_m[e + 1] - discrete.nodes_m[e];
    discrete.places.resize(rod.bed_N_m2.size());
    for (std::size_t i = 0; i < discrete.places.size(); ++i)
        discrete.places[i] = {
            {rod.curvature_per_m[i], rod.curvatureRate_per_m2[i], rod.stiffness_N_m2[i], rod.natural_per_m[i]},
            rod.bed_N_m2[i],
            rod.load_N_m[i]};
    discrete.holds = problem.holds;
    for (const Hold& hold : problem.holds) discrete.pads.push_back(padOn(rod.mesh, hold));
    discrete.longest_m = *std::max_element(discrete.length_m.begin(), discrete.length_m.end());
    discrete.reach_m = discrete.nodes_m.back() - discrete.nodes_m.front();
    discrete.padsHold = problem.pads == boat::Pads::hold;
    layChain(problem, discrete);
    return discrete;
}

void slipOf(const Discrete& discrete, std::span<const double> x, std::vector<double>& slip_m) {
    const auto& chain = discrete.chain;
    slip_m.assign(chain.size(), 0);
    const auto longer = [&](std::size_t span) {
        double sum = 0;
        for (std::size_t e = chain[span]; e < chain[span + 1]; ++e) {
            const Ends ends = endsOf(discrete, x, e);
            double part = 0;
            for (std::size_t i = 0; i < 3; ++i)
                part += gaussWeight[i] *
                        stretchValue(discrete.places[3 * e + i].rod, gapOf(gaussShape[i], ends, discrete.length_m[e]));
            sum += part * discrete.length_m[e];
        }
        return sum;
    };
    for (std::size_t j = discrete.anchor; j + 1 < chain.size(); ++j) slip_m[j + 1] = slip_m[j] - longer(j);
    for (std::size_t j = discrete.anchor; j-- > 0;) slip_m[j] = slip_m[j + 1] + longer(j);
}

namespace {

void meansOf(const Discrete& discrete, std::span<const double> x, Balance& balance) {
    for (std::size_t i = 0; i < discrete.pads.size(); ++i) {
        const Pad& pad = discrete.pads[i];
        double gap = 0;
        double slope = 0;
        for (std::size_t n = 0; n < pad.gapByGap.size(); ++n) {
            const double* const node = x.data() + 2 * (pad.first + n);
            gap += pad.gapByGap[n] * node[0] + pad.gapBySlope[n] * node[1];
            slope += pad.slopeByGap[n] * node[0] + pad.slopeBySlope[n] * node[1];
        }
        balance.meanGap_m[i] = gap;
        balance.meanSlope[i] = slope;
    }
}

// The pulls by the closing gaps, with their part of the energy.
void pullsOf(const Discrete& discrete, const Expected& expected, Balance& balance) {
    for (std::size_t i = 0; i < discrete.holds.size(); ++i) {
        const double slip = discrete.padsHold ? balance.slip_m[discrete.chainOfHold[i]] : 0;
        const double g = balance.meanGap_m[i] + balance.meanSlope[i] * slip;
        balance.closing_m[i] = g;
        const Hold& hold = discrete.holds[i];
        balance.between[i] = 0;
        if (hold.pull_N) {
            balance.pull_N[i] = *hold.pull_N;
            balance.energy += *hold.pull_N * g;
            continue;
        }
        const double wanted = expected.pull_N[i] + expected.firmness_N_m * g;
        const double pull = std::clamp(wanted, 0.0, hold.most_N);
        const double off = pull - expected.pull_N[i];
        balance.between[i] = wanted > 0 && wanted < hold.most_N;
        balance.pull_N[i] = pull;
        balance.energy += pull * g - off * off / (2 * expected.firmness_N_m);
    }
}

void spanForcesOf(const Discrete& discrete, Balance& balance) {
    auto& force = balance.spanForce_N;
    const std::size_t spans = discrete.chain.size() - 1;
    force.assign(spans, 0);
    if (!discrete.padsHold) return;
    // A pull on a rod that leans against the form's square drags it along; towards the anchor the drags add up.
    for (std::size_t i = 0; i < discrete.holds.size(); ++i) {
        const std::size_t place = discrete.chainOfHold[i];
        const double pull = balance.pull_N[i] * balance.meanSlope[i];
        if (place > discrete.anchor) force[place - 1] -= pull;
        if (place < discrete.anchor) force[place] += pull;
    }
    for (std::size_t j = spans; j-- > discrete.anchor;)
        if (j + 1 < spans) force[j] += force[j + 1];
    for (std::size_t j = 1; j < discrete.anchor; ++j) force[j] += force[j - 1];
}

// Adds bending, bed, load and slip; false: out of reach.
bool addElements(const Discrete& discrete, std::span<const double> x, double bedShare, Balance& balance) {
    std::size_t span = 0;
    const auto& chain = discrete.chain;
    for (std::size_t e = 0; e < discrete.length_m.size(); ++e) {
        double along = 0;
        if (discrete.padsHold) {
            while (span + 1 < chain.size() && e >= chain[span + 1]) ++span;
            if (span + 1 < chain.size() && e >= chain[span]) along = balance.spanForce_N[span];
        }
        const double h = discrete.length_m[e];
        const Ends ends = endsOf(discrete, x, e);
        std::array<double, 4> force{};
        for (std::size_t i = 0; i < 3; ++i) {
            const ElementPlace& place = discrete.places[3 * e + i];
            const Shape& shape = gaussShape[i];
            const Gap gap = gapOf(shape, ends, h);
            if (!(squareLeft(place.rod, gap) > 0) || !(std::abs(gap.gap) <= discrete.reach_m)) return false;
            Turning turning;
            turningFirst(place.rod, gap, turning);
            const double weight = gaussWeight[i] * h;
            auto first = bendingFirst(place.rod, turning);
            double energy = bendingValue(place.rod, turning) + place.load_N_m * gap.gap;
            first[0] += place.load_N_m + along * turning.pathFirst[0];
            first[1] += along * turning.pathFirst[1];
            if (gap.gap < 0) {
                const double bed = bedShare * place.bed_N_m2;
                energy += bed / 2 * gap.gap * gap.gap;
                first[0] += bed * gap.gap;
            }
            balance.energy += weight * energy;
            const double byGap = weight * first[0];
            const double bySlope = weight / h * first[1];
            const double byBend = weight / (h * h) * first[2];
            for (std::size_t n = 0; n < 4; ++n)
                force[n] += byGap * shape.gap[n] + bySlope * shape.slope[n] + byBend * shape.bend[n];
        }
        double* const own = balance.force.data() + 2 * e;
        own[0] += force[0];
        own[1] += force[1] * h;
        own[2] += force[2];
        own[3] += force[3] * h;
    }
    return true;
}

void addPulls(const Discrete& discrete, Balance& balance) {
    for (std::size_t i = 0; i < discrete.pads.size(); ++i) {
        const Pad& pad = discrete.pads[i];
        const double pull = balance.pull_N[i];
        const double slip = discrete.padsHold ? balance.slip_m[discrete.chainOfHold[i]] : 0;
        for (std::size_t n = 0; n < pad.gapByGap.size(); ++n) {
            double* const node = balance.force.data() + 2 * (pad.first + n);
            node[0] += pull * (pad.gapByGap[n] + slip * pad.slopeByGap[n]);
            node[1] += pull * (pad.gapBySlope[n] + slip * pad.slopeBySlope[n]);
        }
    }
}

}  // namespace

void balanceOf(const Discrete& discrete, std::span<const double> x, const Expected& expected, Balance& balance) {
    const std::size_t holds = discrete.holds.size();
    balance.withinReach = false;
    balance.energy = 0;
    balance.force.assign(x.size(), 0);
    balance.meanGap_m.resize(holds);
    balance.meanSlope.resize(holds);
    balance.closing_m.resize(holds);
    balance.pull_N.resize(holds);
    balance.between.resize(holds);
    meansOf(discrete, x, balance);
    if (discrete.padsHold) slipOf(discrete, x, balance.slip_m);
    pullsOf(discrete, expected, balance);
    spanForcesOf(discrete, balance);
    if (!addElements(discrete, x, expected.bedShare, balance)) return;
    addPulls(discrete, balance);
    balance.withinReach = std::isfinite(balance.energy);
}

}  // namespace fayline::holding
