// The contact problem on its elements: pads as means of nodes, the slip as a chain from the anchor, and for one state
// energy, forces out of balance and what each hold does.
//
// Unknowns are gap and slope of all nodes, in turn: x = v0, v0', v1, v1', ... . A hold that may close pulls with
// F = clamp(multiplier + penalty g, 0, most), g = v_i + v_i' d_i (pads that slide: v_i): an augmented Lagrangian, whose
// energy is smooth once and whose answer is exact when F equals the multiplier.
#pragma once

#include <span>
#include <vector>

#include "core/contact/bending.hpp"
#include "core/contact/contact.hpp"

namespace fayline::contact {

// Mean gap and mean slope under a pad, as sums over its nodes.
struct Pad {
    std::size_t first = 0;  // node
    std::size_t last = 0;
    std::size_t centre = 0;
    std::vector<double> gapByGap;  // of the nodes first..last: what each adds to the mean gap
    std::vector<double> gapBySlope;
    std::vector<double> slopeByGap;  // and to the mean slope
    std::vector<double> slopeBySlope;
};

// The exact means of the Hermite gap from a pad's end to its other; a point: gap and slope there. Pads that reach
// beyond the rod are taken as far as the rod goes.
Pad padOn(const Mesh& mesh, const Hold& hold);

// One of Gauss's places, of a pair of elements.
struct PairPlace {
    BasicRodPlace<Pair> rod;
    Pair foundation_N_m2{};
    Pair load_N_m{};
};

// Two neighbouring elements; of an odd number the last stands there twice, and what its second half comes to is not
// used.
struct ElementPair {
    Pair length_m{};
    Pair lengths_per_m{};
    std::array<PairPlace, 3> places;
};

struct Discrete {
    std::vector<double> nodes_m;
    std::vector<double> length_m;        // of the elements
    std::vector<double> stiffness_N_m2;  // of the rod in their middles
    std::vector<ElementPair> pairs;
    std::vector<Hold> holds;
    std::vector<Pad> pads;
    double longest_m = 0;  // element
    double reach_m = 0;    // no gap is larger: the rod's length
    double stiffest_N_m2 = 0;
    double stiffestFoundation_N_m2 = 0;
    double load_N = 0;      // in all, of either sign
    double pressing_N = 0;  // toward the form
    double moment_N_m = 0;  // the greatest that bends the rod to the form
    bool padsHold = false;
    // Nodes at which the slip is counted, ascending, and which of them is the anchor. Span j lies between j and j + 1.
    std::vector<std::size_t> chain;
    std::size_t anchor = 0;
    std::vector<std::size_t> chainOfHold;
};

// In which span of the chain elements lie that are asked for in ascending order; `none` beyond the chain's ends.
class SpanOfElement {
public:
    static constexpr std::size_t none = static_cast<std::size_t>(-1);

    explicit SpanOfElement(const Discrete& discrete) : chain_(discrete.chain) {}
    std::size_t operator()(std::size_t element) {
        while (span_ + 1 < chain_.size() && element >= chain_[span_ + 1]) ++span_;
        return span_ + 1 < chain_.size() && element >= chain_[span_] ? span_ : none;
    }

private:
    const std::vector<std::size_t>& chain_;
    std::size_t span_ = 0;
};

// Throws InputError, see contact.hpp.
Discrete discreteOf(const Problem& problem);

// Of the augmented Lagrangian: the multiplier of each hold, its pull as far as known, and the penalty parameter.
struct Multipliers {
    std::vector<double> pull_N;
    double penalty_N_m = 0;
    double foundationShare = 1;  // of the foundation's stiffness; less on the way to the answer
};

// What a pair of elements does in one state, whatever is pulled.
struct PairBalance {
    std::array<Pair, 4> force{};         // of bending, foundation and load, on gap and slope of both ends
    std::array<Pair, 4> longerByEnds{};  // first derivative of:
    Pair longer_m{};                     // how much longer the rod's path is than the form
};

// One state's balance. Vectors are kept from call to call.
struct Equilibrium {
    bool withinReach = true;  // else nothing below is meant
    std::vector<PairBalance> pairs;
    double ownEnergy = 0;       // of bending, foundation and load, J
    double energy = 0;          // with the holds' part of the augmented Lagrangian, J
    std::vector<double> force;  // its first derivative by x: N, N m
    std::vector<double> meanGap_m;
    std::vector<double> meanSlope;
    std::vector<double> closing_m;    // g
    std::vector<double> pull_N;       // F
    std::vector<char> between;        // F between its limits: the hold closes
    std::vector<double> slip_m;       // of the chain
    std::vector<double> spanForce_N;  // what the pulls do along the rod, of each span
};

void balanceOf(const Discrete& discrete, std::span<const double> x, const Multipliers& multipliers,
               Equilibrium& balance);

// The same state within reach, where only the multipliers are others.
void balanceAgain(const Discrete& discrete, std::span<const double> x, const Multipliers& multipliers,
                  Equilibrium& balance);

// By how much the rod's path is longer than the form's in each element makes the slip of the chain.
void slipOf(const Discrete& discrete, Equilibrium& balance);

// The ends of a pair of elements.
inline math::HermiteEnds<Pair> endsOf(const Discrete& discrete, std::span<const double> x, std::size_t pair) {
    const double* const own = x.data() + 4 * pair;
    const double* const next = 4 * pair + 4 < x.size() ? own + 2 : own;
    const Pair length = discrete.pairs[pair].length_m;
    return {Pair{own[0], next[0]}, Pair{own[1], next[1]} * length, Pair{own[2], next[2]},
            Pair{own[3], next[3]} * length};
}

}  // namespace fayline::contact
