// The contact problem on its elements: pads as means of nodes, the slip as a chain from the anchor, and for one state
// energy, forces out of balance and what each hold does.
//
// Unknowns are gap and slope of all nodes, in turn: x = v0, v0', v1, v1', ... . A hold that may close pulls with
// F = clamp(expected + firmness g, 0, most), g = v_i + v_i' d_i (pads that slide: v_i): an augmented Lagrangian, whose
// energy is smooth once and whose answer is exact when F equals what was expected.
#pragma once

#include <span>
#include <vector>

#include "core/holding/bending.hpp"
#include "core/holding/contact.hpp"

namespace fayline::holding {

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

struct ElementPlace {
    RodPlace rod;
    double bed_N_m2 = 0;
    double load_N_m = 0;
};

struct Discrete {
    std::vector<double> nodes_m;
    std::vector<double> length_m;      // of the elements
    std::vector<ElementPlace> places;  // three of each element
    std::vector<Hold> holds;
    std::vector<Pad> pads;
    double longest_m = 0;  // element
    double reach_m = 0;    // no gap is larger: the rod's length
    bool padsHold = false;
    // Nodes at which the slip is counted, ascending, and which of them is the anchor. Span j lies between j and j + 1.
    std::vector<std::size_t> chain;
    std::size_t anchor = 0;
    std::vector<std::size_t> chainOfHold;
};

// Throws InputError, see contact.hpp.
Discrete discreteOf(const Problem& problem);

// What is expected of the holds, and how firmly they are kept to it.
struct Expected {
    std::vector<double> pull_N;
    double firmness_N_m = 0;
    double bedShare = 1;  // of the bed's stiffness; less on the way to the answer
};

// One state's balance. Vectors are kept from call to call.
struct Balance {
    bool withinReach = true;    // else nothing below is meant
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

void balanceOf(const Discrete& discrete, std::span<const double> x, const Expected& expected, Balance& balance);

// Length by which the rod's path is longer than the form's in each span, and from it the slip of the chain.
void slipOf(const Discrete& discrete, std::span<const double> x, std::vector<double>& slip_m);

inline Ends endsOf(const Discrete& discrete, std::span<const double> x, std::size_t element) {
    const double length = discrete.length_m[element];
    const double* const own = x.data() + 2 * element;
    return {own[0], own[1] * length, own[2], own[3] * length};
}

}  // namespace fayline::holding
