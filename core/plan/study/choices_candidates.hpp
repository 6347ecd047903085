// The stacks that could be glued instead of the piece's own, before anything is counted.
//
// The stack is seen as bands: strips next to each other of one wood, alike in what was measured of it and in softening,
// with no dry face and no end of a gluing between them. Sacrificial strips, and a single strip beside a thicker band
// (a facing), are kept as given; every other band is filled anew with strips of its wood to its own depth, glue lines
// counted, or a little over, which is planed off. Mixed woods are not invented.
#pragma once

#include <functional>
#include <vector>

#include "core/model/boat.hpp"
#include "core/units/length.hpp"

namespace fayline::plan {

// Short of the wanted depth by so much a stack still counts as deep enough. Common practice, no source.
inline constexpr double depthSlack_m = 0.00025;
// Deeper than this share of what is wanted it is not "a little over". Common practice, no source.
inline constexpr double mostOverDepth = 0.1;
// As many strips as anybody handles in one stack. Common practice, no source.
inline constexpr int mostStripsHandled = 60;
inline constexpr int mostThicknesses = 60;
inline constexpr int mostMixed = 48;
// The thinnest strip that is made: 1/16 in or 1.5 mm.
double thinnest_m(units::LengthNotation notation);

// Strips in the order of the stack, filled with others or kept.
struct Band {
    model::Strips like;               // its first strips
    std::vector<model::Strips> kept;  // as they are
    int count = 0;
    double depth_m = 0;  // at the line's start, glue lines within it counted
    double taper = 1;    // wood at the line's end over that at its start
    bool tapers = false;
    bool dryFace = false;  // outside it
    bool endsGluing = false;
    bool filled = false;  // false: stays as it is
};
std::vector<Band> bandsOf(const model::Stack& stack);

// Strips and gluings of one candidate.
struct Candidate {
    std::vector<model::Strips> strips;
    std::vector<int> gluings;
    double thickness_m = 0;  // of the thickest chosen
    bool mixed = false;
    bool asItIs = false;
};

struct CandidatesWanted {
    const model::Stack& stack;
    units::LengthNotation notation;
    bool thinOnForm = true;  // where thin strips of a mixed stack lie: where the bend is tightest
    // Whether the stock gives a strip of this wood and thickness.
    std::function<bool(const model::Strips& like, double thickness_m)> sawn;
    // Thicker strips than this break for sure: no mixed stacks with them.
    double breaksAt_m = 0;
};

// Thicknesses: in steps of 1/32 in from 1/16 in where lengths are read in inches, else of 0.5 mm from 1.5 mm, up to
// half the deepest band; steps double until there are no more than mostThicknesses. Beside them the thickness that
// divides that band evenly, for two to twelve strips, raised to the next 1/64 in or 0.1 mm. Mixed: thin strips for a
// third, half and two thirds of that band, thick ones for the rest, the thin the next on the grid at or below 0.85, 0.7
// and half the thick; should there be more than mostMixed, every so manieth is left out. In order: alike ones by
// thickness, then the mixed ones by their thick strips. The stack as it is stands among them once, whatever it is.
std::vector<Candidate> candidatesFor(const CandidatesWanted& wanted);

}  // namespace fayline::plan
