// One step of Newton's method on the contact problem: the sparse system along the rod and its factors.
//
// Beside gap and slope of each node the rows hold the pull of each hold that closes, the slip at each place of the
// chain and the force along the rod in each span; each stands where its last neighbour does, so that the profile stays
// narrow and the work linear in elements and holds. Eliminating them leaves the second derivatives of the augmented
// energy by x alone.
#pragma once

#include <array>

#include "core/contact/discrete.hpp"
#include "core/math/skyline_ldlt.hpp"

namespace fayline::contact {

enum class Curving {
    exact,
    positive,  // without the terms that may be negative
};

class NewtonSystem {
public:
    explicit NewtonSystem(const Discrete& discrete);

    // Puts up and factorises the system at `x` with its `balance`. `hold_N_m2` > 0 keeps each metre of rod where it is
    // with this force per length and gap; a closing hold gives way by `yield_m_N`. False: a pivot of nothing.
    bool factorise(const Discrete& discrete, std::span<const double> x, const Equilibrium& balance,
                   double foundationShare, Curving curving, double hold_N_m2, double yield_m_N);
    // The augmented energy curves upward in every direction there (after a factorise() that succeeded).
    bool curvesUp() const { return matrix_.negativePivots() == negatives_; }
    // The step from x: where the forces of `balance` would vanish and each hold between its limits close by
    // `closing_m`; and what those would then pull (the others' pulls stay).
    void step(const Equilibrium& balance, const std::vector<double>& closing_m, std::vector<double>& step,
              std::vector<double>& pull_N);

private:
    static constexpr std::size_t none = static_cast<std::size_t>(-1);

    void order(const Discrete& discrete);
    void shape(const Discrete& discrete);
    void addElements(const Discrete& discrete, std::span<const double> x, const Equilibrium& balance,
                     double foundationShare, Curving curving, double hold_N_m2);
    void addHolds(const Discrete& discrete, const Equilibrium& balance, Curving curving, double yield_m_N);
    void addChain(const Discrete& discrete, const Equilibrium& balance);
    void addBlock(const std::array<Pair, 10>& block, std::size_t element, std::size_t lane);

    std::vector<std::size_t> rowOfNode_;  // its gap; the slope follows
    std::vector<std::size_t> rowOfPull_;
    std::vector<std::size_t> rowOfSlip_;
    std::vector<std::size_t> rowOfSpan_;
    std::size_t negatives_ = 0;
    math::SkylineLdlt matrix_;
    std::vector<double> right_;
};

}  // namespace fayline::contact
