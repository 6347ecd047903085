// How much of its curve a glued stack gives back when the form lets it go, section by section along the line.
//
// Bent loose, each strip takes its own curvature k_i = k / (1 + d_i k) about its own middle, less the share of it that
// it had taken before; together they carry the moment M = sum of E_i I_i (1 - set_i) k_i. Once glued the section is
// one: solid stiffness B about the transformed neutral axis, glue lines as gaps without stiffness of their own. Let go,
// the curvature falls by M / B: rho is that fall over the curvature at the neutral axis on the form. n equal strips: 1
// / n^2 (at small d k), with glue lines g: 1 / (1 + (n^2 - 1)(1 + g/t)^2). Width cancels.
//
// Several gluings on one form change nothing: what has cured and been let go has the curve k (1 - M1 / B1); to bend it
// back onto the form takes B1 times the difference, which is M1 again, the moment that its strips had. The moments add
// up to the same M, over the same B at the end. Assumed: elastic, the same form each time.
//
// A dry face parts the stack: each part lets go by itself.
//
// Left out: the section's own height against its radius, (h k)^2 / 15 of the stiffness (h k = 0.1: 0.07 %); rho is
// taken at the wanted line's curvature, the form's is rho k more: that moves rho by less than rho d k of itself, where
// d is how far the strips' stiffness lies off the neutral axis (none in a stack alike on both sides). Shear between the
// strips while the glue is wet, creep and the glue's own shrinkage are not modelled; so measured pieces scatter.
//
// Signs as in stack.hpp. Source: beam theory (D); the workshop rule y = x / n^2 for equal strips, read in a builders'
// discussion of deck beams (P).
#pragma once

#include <vector>

#include "core/laminate/layers.hpp"
#include "core/line/line.hpp"
#include "core/model/boat.hpp"
#include "core/wood/species.hpp"

namespace fayline::laminate {

// One section of one part of the stack.
struct Release {
    double at_m = 0;           // along the wanted line
    double wet_N_m2 = 0;       // M / k: moment of the loose strips per curvature at the neutral axis, finished width
    double solid_N_m2 = 0;     // glued, about the neutral axis
    double neutralAxis_m = 0;  // from the form's face of the part's first strip there is, outwards
    double neutralAxisFromLine_m = 0;  // from the wanted line, outwards
    int strips = 0;                    // that are there while it is bent; 1: rho is 1 less what it had taken before
    double ratio = 0;                  // rho, the piece's record not yet counted; >= 1: no form bends it to this line
};

// Strips that stay together: the whole stack, or what lies on one side of a dry face.
struct Part {
    int firstPlace = 1;
    int lastPlace = 1;
    // Every 10 mm from where its strips begin to where they end, trim lines and peaks of curvature included. Where a
    // strip ends (at a scarf) there are two sections at one place, before and after the jump.
    std::vector<Release> along;
};

// A strip as its bending counts: where it lies and runs, its stiffness, the share of the curve that still bends it.
struct BentStrip {
    Layer layer;
    Runs runs;
    double modulus_Pa = 0;
    double stillToBend = 1;
    bool partsOutside = false;  // a dry face lies outside it
    bool sacrificial = false;
};

// The strips from the form outwards; `moduli_Pa` one for each group of model::Stack::strips.
std::vector<BentStrip> looseStrips(const model::Stack& stack, model::Describes describes, double lineLength_m,
                                   const std::vector<double>& moduli_Pa);

// First and last place of each part, from the form outwards.
struct Places {
    int first = 1;
    int last = 1;
};
std::vector<Places> partPlaces(const std::vector<BentStrip>& strips);

// One section: of the strips `part` that run at `presentAt_m` (the place itself, or a hair to either side of where a
// strip ends), turned by `share` of the wanted line's turn. No strip there: all 0. Allocates nothing.
Release releaseAt(const std::vector<BentStrip>& strips, const Places& part, const line::Place& place, double side,
                  double width_m, double presentAt_m, double share = 1);

// Curvature of the strip's own middle over that of the axis `axisFromLine_m` away from the line, where both can lie,
// the section turning by `share` of what it does on the wanted line.
double ownCurvatureShare(const line::Place& place, double side, const Layer& layer, double axisFromLine_m,
                         double share);

// rho of the whole stack (of its first part, where a dry face parts it) at one place of the line: for weighing stacks
// against each other. Throws InputError as planStack does.
double ratioAtPlace(const model::Stack& stack, model::Describes describes, model::Side side, const line::Line& line,
                    const std::vector<wood::Species>& species, double at_m);

// The parts of the stack from the form outwards; without a dry face one. Throws InputError as planStack does.
std::vector<Part> partsOf(const model::Stack& stack, model::Describes describes, model::Side side,
                          const line::Line& line, const std::vector<wood::Species>& species);

// rho between the sections of a part; level beyond them; at a jump the section after it. `factor`: what the record
// says, times the theory. A part without sections: 0.
double ratioAt(const Part& part, double at_m, double factor);

}  // namespace fayline::laminate
