// What presses the glue out: the mean pressure at which a paste stops flowing between two faces, and how far a pad's
// pull spreads through wood and caul.
//
// Every function answers with finite numbers or infinity for any finite input; what cannot be (a film without
// thickness under a paste that yields) is infinite, a length or pressure below 0 counts as 0.
#pragma once

#include "core/boat/boat.hpp"
#include "core/line/line.hpp"
#include "core/measure/source.hpp"

namespace fayline::holding {

struct StackOnForm;  // held.hpp

// Mean pressure at which a paste of this yield stress stops flowing out between faces of `width_m` at a film of
// `film_m`, Pa: yield width / (2 film). It is highest midway, twice the mean, and falls evenly to nothing at the edges.
// 0 for a liquid without yield; infinity for a paste at no film. Source: paste between plates (D).
double pressureForFilm(double yield_Pa, double width_m, double film_m);

// The film at which it stops under this pressure, metres; 0 for a liquid without yield, infinity under no pressure.
double filmUnderPressure(double yield_Pa, double width_m, double pressure_Pa);

// Mean pressure that thins a viscous film of `viscosity_Pa_s` at `thinning_m_s`, Pa: mu b^2 / h^3 (-dh/dt).
// Source: long plates pressed together, film much thinner than they are wide (Reynolds, from memory M; D).
double pressureToThin(double viscosity_Pa_s, double width_m, double film_m, double thinning_m_s);

// Time to thin it from one film to another under a steady pressure, seconds: mu b^2 / 2p (1/to^2 - 1/from^2). 0 where
// it is no thicker than that already; infinity to no film at all or without pressure.
double timeToThin(double viscosity_Pa_s, double width_m, double from_m, double to_m, double pressure_Pa);

// Length of glue line that a pad presses: 45 degrees through the wood and caul above it (C), metres.
double spreadLength(double pad_m, double above_m);

// Pressure that a kind of glue wants by itself, however thin it is spread: from `least_Pa` to `most_Pa`.
struct WantedPressure {
    double least_Pa = 0;
    double most_Pa = 0;
    bool contactIsEnough = false;  // of epoxy: it fills gaps; the pressures given only say what is usual
    measure::Source source;

    double asked_Pa() const { return contactIsEnough ? 0 : least_Pa; }
};
// Resorcinol 125..150 psi for softwood, 150..200 for hardwood; urea the same; polyurethane 100..200; epoxy 5..25.
WantedPressure wantedPressure(boat::AdhesiveKind kind, bool hardwood);

// What the wanted glue line (stack.glue_line_mm) asks of the stations at one place.
struct PressingNeed {
    double pressure_Pa = 0;  // mean, over the width as bent
    double pull_N_m = 0;     // per length of line
    double above_m = 0;      // wood and caul above the outermost glue line of the finished piece
    double spread_m = 0;     // pressed by one pad
    double spacing_m = 0;    // largest between pads so that every place is pressed: the lesser of the spread and of
                             // most_N / pull_N_m; infinity where nothing asks for pressure
    bool bySpread = true;    // the spread governs, else the strength
    bool byGlue = false;     // the glue's own least pressure governs, else the paste's yield
    measure::Source source;
};

// At `at_m`, under pads `pad_m` long that pull at most `most_N`. The outermost glue line lies under the outermost strip
// that is there and not planed away; of a single strip it is that to the boat.
//
// `least_Pa` is a pressure that the glue wants in any case (wantedPressure); 0: none. A glue line of 0 says that none
// is wanted, so that only least_Pa counts.
PressingNeed pressingNeed(const boat::Piece& piece, const line::Line& line, double at_m, double pad_m, double most_N,
                          double least_Pa = 0);

// The same with the pressure that the work's glue wants, and its source where that governs.
PressingNeed pressingNeed(const StackOnForm& work, double at_m, double pad_m, double most_N);

}  // namespace fayline::holding
