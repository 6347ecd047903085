// A piece that came off its form a little off, sprung home to the line that it shall have.
//
// To be on the wanted line everywhere, each section wants the moment M = B (difference of curvature), B the glued
// stack's stiffness: what lies along a firm neighbour and is fastened all along gets that. It stays for good, and with
// it the stress E (distance from the neutral axis) (difference of curvature) in the fibres.
//
// A single pull does not bring every section home, only one measure: in the middle, square to the chord with the ends
// held, it brings the rise; at the ends, along the chord, the chord. Pulls by the unit load on the wanted shape:
// difference over the integral of m^2 / B, m the moment of a pull of 1. Small differences; shear and stretch left out
// (a thick short piece gives a little more). Source: beam theory (D).
#pragma once

#include <optional>

#include "core/laminate/springback/form_plan.hpp"
#include "core/laminate/stack.hpp"
#include "core/line/line.hpp"
#include "core/model/boat.hpp"
#include "core/wood/species.hpp"

namespace fayline::laminate {

// Wood bends elastically up to about this share of its strength; of that it bears half for good, as loads that last are
// taken for wood. Common practice, no source.
inline constexpr double elasticShare = 0.6;
inline constexpr double shareForGood = elasticShare / 2;

// Less than this off the wanted line, at every measure, nothing wants springing home.
inline constexpr double leastOff_m = 0.001;

struct SprungHome {
    bool measured = false;  // by the piece's own record; else foretold
    double after_s = 0;     // of the reading
    double factor = 1;      // with which it opened, times the rule
    Opening off;            // the piece as it is, against the wanted line
    double moment_N_m = 0;  // the greatest that any section wants, > 0 closes; finished width
    double momentAt_m = 0;
    double stress_Pa = 0;  // the greatest that stays, in the outer fibres of any strip
    double stressAt_m = 0;
    int stressPlace = 1;
    double breakingShare = 0;  // of what breaks that strip in the mean
    bool bears = true;         // no more than shareForGood
    double middlePull_N = 0;   // square to the chord where the wanted shape stands furthest off it; > 0 closes
    double middleAt_m = 0;
    double endsPull_N = 0;  // along the chord; > 0 together
};

// Of a piece whose last glue-up's last reading gives `after_s` and `factor`, or, where `measured` is none, as foretold
// (what a form that does not allow for springback leaves). None where nothing lets go, or nothing is off by leastOff_m.
// The first part only, where a dry face parts the stack.
//   (1) twice the width: twice the pulls and the moment, the same stress
struct OpenedBy {
    double after_s = 0;
    double factor = 1;
};
std::optional<SprungHome> sprungHome(const model::Piece& piece, const line::Line& line, const StackPlan& stack,
                                     const FormPlan& form, const std::optional<OpenedBy>& measured);

}  // namespace fayline::laminate
