// What presses the glue out: the mean pressure at which a paste stops flowing between two faces, and how far a pad's
// pull spreads through wood and caul.
#pragma once

#include "core/boat/boat.hpp"
#include "core/line/line.hpp"
#include "core/measure/source.hpp"

namespace fayline::holding {

// Mean pressure at which a paste of this yield stress stops flowing out between faces of `width_m` at a film of
// `film_m`, Pa: yield width / (2 film). Source: paste between plates (D). film_m > 0.
double pressureForFilm(double yield_Pa, double width_m, double film_m);

// The film at which it stops under this pressure, metres; 0 for a liquid without yield.
double filmUnderPressure(double yield_Pa, double width_m, double pressure_Pa);

// Mean pressure that thins a viscous film of `viscosity_Pa_s` at `thinning_m_s`, Pa: mu b^2 / h^3 (-dh/dt) (D).
double pressureToThin(double viscosity_Pa_s, double width_m, double film_m, double thinning_m_s);

// Time to thin it from one film to another under a steady pressure, seconds.
double timeToThin(double viscosity_Pa_s, double width_m, double from_m, double to_m, double pressure_Pa);

// Length of glue line that a pad presses: 45 degrees through the wood and caul above it (C), metres.
double spreadLength(double pad_m, double above_m);

// What the wanted glue line (stack.glue_line_mm) asks of the stations at one place.
struct PressingNeed {
    double pressure_Pa = 0;  // mean, over the width as bent
    double pull_N_m = 0;     // per length of line
    double above_m = 0;      // wood and caul above the outermost glue line of the finished piece
    double spread_m = 0;     // pressed by one pad
    double spacing_m = 0;    // largest between pads so that every place is pressed: the lesser of the spread and of
                             // most_N / pull_N_m; infinity where the glue has no yield
    bool bySpread = true;    // the spread governs, else the strength
    measure::Source source;
};
PressingNeed pressingNeed(const boat::Piece& piece, const line::Line& line, double at_m, double pad_m, double most_N);

}  // namespace fayline::holding
