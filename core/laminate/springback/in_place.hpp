// What stays in a piece that nothing lets go: glued in place, or kept on its form.
//
// Loose strips bent with the moment M = B_slip k (k > 0: convex toward the stack, stack.hpp's sign) keep that moment
// when the glue has cured. Sawn off at the trim line the section there must come to no moment at all, and gets rid of
// it by moving off what it is glued to, or into it. With v the movement square to the line, away from the form, the
// curvature becomes k - v'' and the moment M - B v'', B of the glued section; the foundation (wood of both sides and
// the glue line) holds back c v per length:
//
//     B v'''' + c v = 0,  v''(0) = M / B,  v'''(0) = 0    with x from the end inwards
//     v = M / (2 B beta^2) e^(-beta x) (cos beta x - sin beta x),  beta = (c / 4 B)^(1/4)
//
// So c v / b, the stress across the grain, is 2 M beta^2 / b at the very end and -e^(-pi/2) = -0.208 of that at
// pi / (2 beta) from it. Over a form that is convex (M > 0) the end wants to straighten, lifts and peels, and the wood
// further in is pressed; in a hollow (M < 0) the end is pressed and the greatest pull is the 0.208 of it further in.
//
// A fastening that pulls with F at `a` from the end takes 2 F beta / b e^(-beta a) cos(beta a) off the peel at the end.
//
// Left out: that k changes along the piece (a moment that falls towards the end by M' per length takes 2 M' beta / b
// off the peel there; all along, M'' / b is carried by the glue); creep and swelling; that a cut edge is sharper than
// a beam can tell.
// Source: Hetenyi's beam on an elastic foundation (functions D). The foundation: E across the grain about E / 12
// (common practice).
#pragma once

#include <vector>

#include "core/laminate/stack.hpp"
#include "core/line/line.hpp"
#include "core/model/boat.hpp"
#include "core/units/source.hpp"
#include "core/wood/species.hpp"

namespace fayline::laminate {

// What decays from the end of a glued piece: beta, 1/m, of a section of `stiffness_N_m2` on a foundation of
// `base_N_m2`. Both above 0.
double decayOf(double base_N_m2, double stiffness_N_m2);

// Stress at the free end of a moment `moment_N_m` left in a section `width_m` wide, Pa; > 0 pulls off.
double endStress(double moment_N_m, double decay_per_m, double width_m);

// Pull of a fastening `from_m` from the end that alone takes the stress of `moment_N_m` > 0 off the end, N. Beyond
// pi / (2 beta) none does: infinity.
double fasteningFor(double moment_N_m, double decay_per_m, double from_m);

struct EndStress {
    bool atStart = true;
    double at_m = 0;               // along the line: the trim line; of a scarf, where all strips are there
    double moment_N_m = 0;         // B_slip k there, of the finished width, signed as k
    double base_N_m2 = 0;          // c: force per length and movement of what it is glued to
    double decay_per_m = 0;        // beta
    double peel_Pa = 0;            // greatest stress that pulls off, 0 or more
    double peelFrom_m = 0;         // where, from the end inwards: 0 over a convex form
    double acrossMean_Pa = 0;      // tension across the grain, of the weaker of strip and what it is glued to
    double acrossStrength_Pa = 0;  // the share of it that may stay in the wood for good
    units::Source acrossSource;
    bool wantsFastening = false;  // peel_Pa is above acrossStrength_Pa
    double fastening_N = 0;       // what a fastening must hold so that the glue has no pull to bear there
    double fasteningFrom_m = 0;   // where it belongs, from the end inwards
    bool scarfed = false;         // no free end here: the joint passes the moment on, no peel
};

struct StressLeft {
    EndStress start;
    EndStress end;
    // Greatest stress that stays in the outermost fibres of any strip that is not planed away: E t k / 2 of what it was
    // bent, as in Strip::strain. 0 where nothing is bent.
    double surfaceStress_Pa = 0;
    double surfaceStressAt_m = 0;
    double surfaceShare = 0;  // of what breaks that strip in the mean
    int surfacePlace = 1;
};

// Share of the mean tension across the grain that may stay in the wood for good: a quarter. Common practice, no source;
// it stands for the 5th percentile at a scatter of 25 %, lasting load and a margin: (1 - 1.645 x 0.25) x 0.6 / 1.3.
inline constexpr double lastingShareAcross = 0.25;

// Tension across the grain of a wood, mean; where its row has none, the lowest that the table has for its kind, whose
// source says so.
units::Cited tensionAcross(const wood::Species& species);

// Of the part that is glued to the form (the stack up to a dry face). Thickness of foundation: half the stack and as
// much of what it is glued to (common practice), which is the wood that `holding.backbone` names, else that of the
// strip on it. `plan` is that of planStack. Throws InputError with the path `holding.backbone.species`.
StressLeft stressLeft(const model::Piece& piece, const line::Line& line, const std::vector<wood::Species>& species,
                      const StackPlan& plan);

}  // namespace fayline::laminate
