// The changes of a piece that the drawing can ask for, as plain functions from piece to piece.
#pragma once

#include <QString>
#include <string>

#include "app/look/change.hpp"
#include "app/look/shown.hpp"
#include "core/line/line.hpp"

namespace fayline::app::edits {

// A length as a hand would have typed it: rounded to `step_m` (0: not rounded), written in the notation, and worth
// exactly what is written.
struct Typed {
    std::string written;
    double value_m = 0;
};
Typed typed(double length_m, double step_m, measure::LengthNotation notation);

// The step by which a station moves: a millimetre, or a sixteenth of an inch.
double stationStep(measure::LengthNotation notation);
// The step to which the piece's points were read; where that is 0, the step of a station.
double pointStep(const boat::Piece& piece, measure::LengthNotation notation);

// Point `index` at `to`, each coordinate rounded to the reading step unless `free`. A coordinate that has not left
// its step stays as it was written.
Change movePoint(const Shown& shown, const boat::Piece& before, int index, const line::Xy& to, bool free,
                 const QString& merges);
Change moveStation(const Shown& shown, const boat::Piece& before, int index, double at_m, const QString& merges);

// A measured point on the line at `at_m`, where a tape would find it (outside what is to be taken off), named "Pt n"
// and put between its neighbours. Needs a plan.
Change addPoint(const Shown& shown, double at_m);
Change removePoint(const Shown& shown, int index);
bool canRemovePoint(const boat::Piece& piece);  // a line needs three
Change setMustPass(const Shown& shown, int index, bool mustPass);

// A station at `at_m` like the nearest one there is.
Change addStation(const Shown& shown, double at_m);
Change removeStation(const Shown& shown, int index);

}  // namespace fayline::app::edits
