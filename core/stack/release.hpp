// How much of its curve a glued stack gives back when the form lets it go, section by section along the line.
//
// Bent loose, the strips carry the moment M = sum of E I (k - what they have taken before), each strip at its own
// curvature. Once glued the section is one: solid stiffness about the transformed neutral axis, glue lines as gaps
// without stiffness of their own. Let go, the curvature falls by M / solid. The ratio rho = that fall over the
// curvature on the form; n equal strips: 1 / n^2, with glue lines g: 1 / (1 + (n^2 - 1)(1 + g/t)^2). Strips that cure
// in an earlier gluing are bent back onto the same form as one thick strip with a curve of its own, so the moments add
// up gluing by gluing. A dry face parts the stack: each part lets go by itself. Signs as in stack.hpp. Source: beam
// theory (D); the workshop rule y = x / n^2 for equal strips, read in a builders' discussion of deck beams (P).
#pragma once

#include <vector>

#include "core/boat/boat.hpp"
#include "core/line/line.hpp"
#include "core/stack/layers.hpp"
#include "core/wood/species.hpp"

namespace fayline::stack {

// One section of one part of the stack.
struct Release {
    double at_m = 0;           // along the wanted line
    double wet_N_m2 = 0;       // sum of E I of the strips that are there, each times the share it has not taken before
    double solid_N_m2 = 0;     // glued, about the neutral axis
    double neutralAxis_m = 0;  // from the form's face outwards
    double ratio = 0;          // rho, the piece's record not yet counted; >= 1: no form bends it to this line
};

// Strips that stay together: the whole stack, or what lies on one side of a dry face.
struct Part {
    int firstPlace = 1;
    int lastPlace = 1;
    std::vector<Release> along;  // every 10 mm from where its strips begin to where they end, trim lines included
};

// The parts of the stack from the form outwards; without a dry face one. Throws InputError as planStack does.
std::vector<Part> partsOf(const boat::Stack& stack, boat::Describes describes, boat::Side side, const line::Line& line,
                          const std::vector<wood::Species>& species);

// rho between the sections of a part; level beyond them. `factor`: what the record says, times the theory.
double ratioAt(const Part& part, double at_m, double factor);

}  // namespace fayline::stack
