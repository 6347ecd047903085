// What planing a glued piece does to its shape: the bending locked up in the wood that is taken off goes with it, and
// the rest bends until it is in balance again.
//
// Let go, each strip keeps the stress E_i (k_i e - D y): its own bending on the form k_i about its own middle (e from
// there), less the release D = rho k about the neutral axis (y from there). The whole is in balance. Taking wood off
// leaves the moment M of what remains about its own neutral axis; its curvature changes by -M / B, B the remaining
// stiffness (removal of layers, as residual stresses are measured by it; D). Elastic. What it does to the length is
// left out.
//   (1) planed down to any one strip, that strip is straight again
//   (2) with whole strips off, it has the shape that the strips left would have let go to alone
#pragma once

#include <vector>

#include "core/laminate/springback/release.hpp"
#include "core/model/boat.hpp"

namespace fayline::laminate {

// Between which distances from the line wood is left.
struct Left {
    double from_m = 0;
    double to_m = 0;
};

struct Planing {
    double change_per_m = 0;           // of curvature, stack's sign
    double neutralAxisFromLine_m = 0;  // of what is left
    double left_m = 0;                 // depth of wood; 0: nothing, and nothing is said
};

// One section of a part. Arguments as releaseAt.
Planing planedAt(const std::vector<BentStrip>& strips, const Places& part, const line::Place& place, double side,
                 double presentAt_m, double share, const Left& left);

// Whether anything is taken off after the glue has cured: given depths, or strips that are sacrificial.
bool takesOff(const model::Stack& stack);

// What is left at `at_m`: sacrificial strips that lie on a face come off, and from the faces then left the given
// depths.
Left leftAt(const model::Stack& stack, const std::vector<BentStrip>& strips, double at_m);

// Throws InputError (stack.planed_after[i], stack.strips) where nothing would be left.
void checkPlaned(const model::Stack& stack, const std::vector<BentStrip>& strips, double lineLength_m);

}  // namespace fayline::laminate
