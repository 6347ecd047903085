// What one stack costs and risks: every count of a choice.
//
// Strain, chance and spares are those of core/stack for the wanted line; `shareOnForm` raises the share by 1 / (1 -
// rho) where the form allows for springback (within 1 % of the form's own answer, which goes section by section). Glue
// and margin are those of the day's plan. Wood lost: kerf and two planed faces for each strip, what is planed off a
// taper and what the stack is deeper than the piece as it is, over all the wood that is sawn for it; over-run and rip
// allowance are the same for every choice and left out.
//
// The pull that brings an end down goes with the bending stiffness at the last station: with all else alike, twice the
// stiffness takes twice the pull (a property of the contact, exact but for the crush of the wood and the place of the
// stack's middle). So one contact is solved for the stack as it is, its outermost stations as strong as need be, and
// scaled. Where there is none: the tail of a stack on a circle (core/holding, D) of the end's curvature k, drawn down
// until no more than the gap limit g is left under a station at the trim line, pull = B k / sqrt(6 g / k). An end that
// is straight or hollow lies down by itself then.
#pragma once

#include <optional>
#include <vector>

#include "core/boat/boat.hpp"
#include "core/plan/choices_candidates.hpp"
#include "core/plan/plan.hpp"

namespace fayline::plan {

// How hard one end is drawn down: at a place of the line, per bending stiffness there.
struct EndPull {
    double at_m = 0;
    double pull_per_N_m2 = 0;
};

// Both ends.
std::vector<EndPull> endPulls(const boat::Piece& piece, const Shop& shop, const Plan& plan);

// The tail rule above, newtons per stiffness; 0 where the end is straight or hollow.
double tailPull(double curvature_per_m, double gapLimit_m);

// Bending stiffness of the loose strips at a place of the line as far as they still resist, N m^2, as bent.
double stiffnessAt(const boat::Piece& piece, const boat::Stack& stack, const Shop& shop, double lineLength_m,
                   double at_m);

// The counts of one candidate; that it is unbeaten or named is not said here.
Choice countsOf(const Candidate& candidate, const boat::Piece& piece, const Shop& shop, const Plan& plan,
                const std::vector<EndPull>& ends);

}  // namespace fayline::plan
