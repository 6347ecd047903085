// What stays in a piece that nothing lets go: glued in place, or kept on its form.
//
// The moment with which the loose strips were bent stays in the glued section; at a free end it must come to nothing
// within a short length, and peels the stack off what it is glued to. Peel of a stack on an elastic base (a beam on
// Hetenyi's bed, D): sigma = 2 M beta^2 / b, beta = (c / 4 B)^(1/4), c = stiffness of the base per length.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/boat/boat.hpp"
#include "core/line/line.hpp"
#include "core/measure/source.hpp"
#include "core/wood/species.hpp"

namespace fayline::stack {

struct EndStress {
    bool atStart = true;
    double moment_N_m = 0;         // B_slip k at the trim line, of the finished width
    double base_N_m2 = 0;          // c: force per length and movement of what it is glued to
    double decay_per_m = 0;        // beta
    double peel_Pa = 0;            // > 0 pulls off
    double acrossStrength_Pa = 0;  // tension across the grain, design value after its own factor
    measure::Source acrossSource;
    bool wantsFastening = false;
    double fastening_N = 0;  // what a fastening at the end must hold, and where from the end it belongs
    double fasteningFrom_m = 0;
    bool scarfed = false;  // a scarfed end has no free end here: the joint carries the moment
};

struct StressLeft {
    EndStress start;
    EndStress end;
    double surfaceStress_Pa = 0;  // greatest stress left in the outermost fibres of any strip
    double surfaceStressAt_m = 0;
};

// Throws InputError with paths from `stack.`.
StressLeft stressLeft(const boat::Piece& piece, const line::Line& line, const std::vector<wood::Species>& species);

}  // namespace fayline::stack
