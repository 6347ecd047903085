#include <algorithm>
#include <cmath>

#include "core/contact/discrete.hpp"

namespace fayline::contact {

namespace {

void meansOf(const Discrete& discrete, std::span<const double> x, Equilibrium& balance) {
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
void pullsOf(const Discrete& discrete, const Multipliers& multipliers, Equilibrium& balance) {
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
        const double wanted = multipliers.pull_N[i] + multipliers.penalty_N_m * g;
        const double pull = std::clamp(wanted, 0.0, hold.most_N);
        const double off = pull - multipliers.pull_N[i];
        balance.between[i] = wanted > 0 && wanted < hold.most_N;
        balance.pull_N[i] = pull;
        balance.energy += pull * g - off * off / (2 * multipliers.penalty_N_m);
    }
}

void spanForcesOf(const Discrete& discrete, Equilibrium& balance) {
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

// Adds what each element does: bending, foundation and load, and what the pulls do along the rod.
void addElements(const Discrete& discrete, Equilibrium& balance) {
    SpanOfElement spanOf(discrete);
    for (std::size_t e = 0; e < discrete.length_m.size(); ++e) {
        const PairBalance& pair = balance.pairs[e / 2];
        double* const own = balance.force.data() + 2 * e;
        for (std::size_t n = 0; n < 4; ++n) own[n] += pair.force[n][e % 2];
        const std::size_t span = discrete.padsHold ? spanOf(e) : SpanOfElement::none;
        if (span == SpanOfElement::none) continue;
        const double along = balance.spanForce_N[span];
        for (std::size_t n = 0; n < 4; ++n) own[n] += along * pair.longerByEnds[n][e % 2];
    }
}

void addPulls(const Discrete& discrete, Equilibrium& balance) {
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

void add(const math::HermiteBasis& shape, Pair byGap, Pair bySlope, Pair byBend, std::array<Pair, 4>& ends) {
    for (std::size_t n = 0; n < 4; ++n)
        ends[n] += byGap * shape.value[n] + bySlope * shape.slope[n] + byBend * shape.bend[n];
}
void add(const math::HermiteBasis& shape, Pair byGap, Pair bySlope, std::array<Pair, 4>& ends) {
    for (std::size_t n = 0; n < 4; ++n) ends[n] += byGap * shape.value[n] + bySlope * shape.slope[n];
}

// Bending, foundation and load of all elements; false: out of reach.
bool balanceElements(const Discrete& discrete, std::span<const double> x, double foundationShare,
                     Equilibrium& balance) {
    balance.pairs.resize(discrete.pairs.size());
    balance.ownEnergy = 0;
    const bool odd = discrete.length_m.size() % 2 == 1;
    for (std::size_t p = 0; p < discrete.pairs.size(); ++p) {
        const ElementPair& pair = discrete.pairs[p];
        const math::HermiteEnds<Pair> ends = endsOf(discrete, x, p);
        PairBalance& own = balance.pairs[p];
        own = {};
        Pair energy{};
        Pair least = Pair{} + 1.0;  // of what is left to where squares meet
        Pair widest{};
        for (std::size_t i = 0; i < 3; ++i) {
            const PairPlace& place = pair.places[i];
            const math::HermiteBasis& shape = math::hermiteBasisAtGauss[i];
            const BasicGap<Pair> gap = math::hermiteValues(shape, ends, pair.lengths_per_m);
            const Pair left = squareLeft(place.rod, gap);
            least = left > least ? least : left;
            const Pair off = gap.value < 0.0 ? -gap.value : gap.value;
            widest = off < widest ? widest : off;
            const BasicTurning<Pair> turning = turningOf(place.rod, gap);
            const Pair crush = gap.value < 0.0 ? gap.value : Pair{};
            const Pair foundation = foundationShare * place.foundation_N_m2 * crush;
            const auto first = bendingFirst(place.rod, turning);
            energy += math::gauss3Weight[i] *
                      (bendingValue(place.rod, turning) + place.load_N_m * gap.value + 0.5 * foundation * crush);
            const Pair byGap = math::gauss3Weight[i] * (first[0] + place.load_N_m + foundation);
            const Pair bySlope = math::gauss3Weight[i] * first[1];
            const Pair byBend = math::gauss3Weight[i] * first[2];
            add(shape, byGap * pair.length_m, bySlope, byBend * pair.lengths_per_m, own.force);
            own.longer_m += math::gauss3Weight[i] * stretchValue(place.rod, gap, turning.path);
            if (!discrete.padsHold) continue;
            add(shape, math::gauss3Weight[i] * turning.pathFirst[0] * pair.length_m,
                math::gauss3Weight[i] * turning.pathFirst[1], own.longerByEnds);
        }
        for (std::size_t lane = 0; lane < 2; ++lane)
            if (!(least[lane] > 0) || !(widest[lane] <= discrete.reach_m)) return false;
        for (const std::size_t slope : {1, 3}) {
            own.force[slope] *= pair.length_m;
            own.longerByEnds[slope] *= pair.length_m;
        }
        own.longer_m *= pair.length_m;
        energy *= pair.length_m;
        balance.ownEnergy += odd && p + 1 == discrete.pairs.size() ? energy[0] : energy[0] + energy[1];
    }
    return true;
}

}  // namespace

void slipOf(const Discrete& discrete, Equilibrium& balance) {
    const auto& chain = discrete.chain;
    auto& slip_m = balance.slip_m;
    slip_m.assign(chain.size(), 0);
    const auto longer = [&](std::size_t span) {
        double sum = 0;
        for (std::size_t e = chain[span]; e < chain[span + 1]; ++e) sum += balance.pairs[e / 2].longer_m[e % 2];
        return sum;
    };
    for (std::size_t j = discrete.anchor; j + 1 < chain.size(); ++j) slip_m[j + 1] = slip_m[j] - longer(j);
    for (std::size_t j = discrete.anchor; j-- > 0;) slip_m[j] = slip_m[j + 1] + longer(j);
}

void balanceAgain(const Discrete& discrete, std::span<const double> x, const Multipliers& multipliers,
                  Equilibrium& balance) {
    balance.energy = balance.ownEnergy;
    balance.force.assign(x.size(), 0);
    pullsOf(discrete, multipliers, balance);
    spanForcesOf(discrete, balance);
    addElements(discrete, balance);
    addPulls(discrete, balance);
    balance.withinReach = std::isfinite(balance.energy);
}

void balanceOf(const Discrete& discrete, std::span<const double> x, const Multipliers& multipliers,
               Equilibrium& balance) {
    balance.withinReach = balanceElements(discrete, x, multipliers.foundationShare, balance);
    if (!balance.withinReach) return;
    const std::size_t holds = discrete.holds.size();
    balance.meanGap_m.resize(holds);
    balance.meanSlope.resize(holds);
    balance.closing_m.resize(holds);
    balance.pull_N.resize(holds);
    balance.between.resize(holds);
    meansOf(discrete, x, balance);
    slipOf(discrete, balance);
    balanceAgain(discrete, x, multipliers, balance);
}

}  // namespace fayline::contact
