// The stack pressed against its form by pulls of limited strength: an unstretchable rod in one-sided contact.
//
// s is the place on the form where the middle of the stack lies when it is down, k(s) the curvature there, v(s) the gap
// between stack and form measured square to the form. Exact in the gap, without small slopes:
//
//     E(v) = int B/2 ((k - psi')/J - k0)^2 J ds  +  int c/2 <-v>^2 ds  +  int q v ds  +  sum_i F_i (v_i + v_i' d_i)
//     psi = atan2(v', 1 + k v)     J = sqrt((1 + k v)^2 + v'^2)     d_i = - int_anchor^i (J - 1) ds
//
// The first term bends the rod, whose curvature is (k - psi')/J and by nature k0; the second crushes wood and glue, a
// foundation that only pushes; the third is a load that presses toward the form (a strap); the fourth are the holds.
// v_i and v_i' are means under the pad. A hold closes its gap under the pad with no more than it has, else pulls with
// all it has, and never pulls away from the form (0 <= F_i <= most). Where the pad holds the outer strip, its pull
// works on the slip d_i of the rod as well, counted from the anchor, and the gap it closes is v_i + v_i' d_i; where it
// slides, that part is dropped.
//
// Signs: gap > 0 away from the form; curvature > 0 where the form is convex toward the stack; moments > 0 where they
// bend the rod toward such a form. Where 1 + k v <= 0 there is no square to the form: the state is out of reach.
// Source: large deflection of an unstretchable rod (D); elastic foundation: Hetenyi (from memory, M).
#pragma once

#include <atomic>
#include <limits>
#include <optional>
#include <vector>

#include "core/math/shared.hpp"

namespace fayline::contact {

// Elements with cubic Hermite gaps between ascending nodes, metres.
struct Mesh {
    std::vector<double> nodes_m;
};

// Nodes at both ends and at every mark between them (marks nearer than a twentieth of a step to another are merged),
// and in between evenly, no further apart than `step_m` > 0. from_m < to_m.
Mesh meshBetween(double from_m, double to_m, std::vector<double> marks_m, double step_m);

// Places where a mesh wants its rod described: Gauss's three points of each element, ascending.
std::vector<double> gaussPlaces(const Mesh& mesh);

// The rod and what it lies on, each vector at gaussPlaces(mesh).
struct Rod {
    Mesh mesh;
    std::vector<double> curvature_per_m;       // k of the form
    std::vector<double> curvatureRate_per_m2;  // dk/ds
    std::vector<double> stiffness_N_m2;        // B > 0
    std::vector<double> natural_per_m;         // k0, 0 for strips that are straight by nature
    std::vector<double> foundation_N_m2;       // c, force per length and crush; 0 where nothing supports
    std::vector<double> load_N_m;              // q, > 0 toward the form
};

struct Hold {
    double at_m = 0;   // middle of the pad; a node of the mesh, as are both ends of the pad
    double pad_m = 0;  // 0: a point
    double most_N = 0;
    std::optional<double> pull_N;  // pulls exactly this
};

// What solving may cost and has cost: counted, not timed, so that the same problem always ends alike.
struct Effort {
    const std::atomic<bool>* stop = nullptr;  // once it is set, nothing more is solved
    double most = std::numeric_limits<double>::infinity();
    double spent = 0;  // elements looked at: all of them for each state that is tried, and again for each step
    int steps = 0;     // of Newton's method

    bool stopped() const { return stop && stop->load(std::memory_order_relaxed); }
    bool ended() const { return spent >= most || stopped(); }
};

struct Problem {
    Rod rod;
    std::vector<Hold> holds;   // in any order
    bool padsHold = true;      // the outer strip; else it slides under them
    double anchor_m = 0;       // where the rod is held lengthways; a node
    Effort* effort = nullptr;  // adds up what is spent; where it has ended, the state so far is given as notConverged
};

enum class HoldState { slack, closes, full, given };

struct HoldForce {
    double pull_N = 0;
    double gap_m = 0;   // v_i, mean under the pad
    double slip_m = 0;  // d_i, > 0 away from the start of s
    HoldState state = HoldState::slack;
};

enum class Outcome {
    settled,
    snaps,         // a state of balance, but one that the stack jumps to or from: the energy's second derivatives were
                   // not all positive there, or on the way when the forces were in balance within 3 %
    notConverged,  // no state of balance was found; the last try is given
    notPressed,    // none was looked for: what is asked for cannot be, see NotPressed in held.hpp
};

// Whether there is a state of balance, so that gaps and pulls mean something.
inline bool inBalance(Outcome outcome) {
    return outcome == Outcome::settled || outcome == Outcome::snaps;
}

// The state of balance.
struct Contact {
    Outcome outcome = Outcome::settled;
    math::SharedList<double> nodes_m;
    math::SharedList<double> gap_m;     // v at the nodes
    math::SharedList<double> slope;     // dv/ds there
    math::SharedList<HoldForce> holds;  // in the order given
    int steps = 0;                      // of Newton's method, each one factorisation
    // Greatest force out of balance over the greatest of the problem's own: pulls, the whole load, the stiffest moment
    // B (|k| + |k0|) over a metre. Nodes closer than half the longest element count together, moments over that length.
    double residual = 0;
    // Not settled since nothing holds the rod back: it stood off by half its length, leaned more than 60 degrees or
    // came to where the squares of a hollow form meet. So it is where nothing pulls on a strongly bent form.
    bool springsAway = false;
};

// Solves `problem`, from `start` if given (of another mesh and other holds too: it is carried over by place), else from
// the rod lying all along the form.
//   (1) half the stiffness, foundation and pulls: the same gaps
//   (2) a problem run from its other end: the mirrored answer
//   (3) with all gaps closed, pads that hold and pads that slide agree
// Where nothing pulls at all, the rod is straight: at some place clear of the form or touching it, which is settled; or
// no straight one is within reach, and it springs away.
// Error: elements of 5 mm, see tests/published/contact_test.cpp. Throws InputError with path `holding` for vectors of
// the wrong length, a stiffness that is not above 0, a most_N that is no number or below 0.
Contact solve(const Problem& problem, const Contact* start = nullptr);

// The energy E of a state (`gap_m`, `slope` at the nodes) under the pulls that `pulls_N` gives (in the order of the
// holds), joules: the discrete problem itself, for checks by other means.
double energyOf(const Problem& problem, const std::vector<double>& gap_m, const std::vector<double>& slope,
                const std::vector<double>& pulls_N);

// What the rod does at one place (between the ends of the mesh).
struct AtPlace {
    double gap_m = 0;
    double slope = 0;
    double curvature_per_m = 0;  // of the rod
    double moment_N_m = 0;       // B (curvature - natural)
    double pressure_N_m = 0;     // of the foundation, per length, >= 0
};
AtPlace at(const Problem& problem, const Contact& contact, double s_m);

}  // namespace fayline::contact
