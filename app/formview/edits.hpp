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
Typed typed(double length_m, double step_m, units::LengthNotation notation);

// The step by which a station moves: a millimetre, or a sixteenth of an inch.
double stationStep(units::LengthNotation notation);
// The step to which the piece's points were read; where that is 0, the step of a station.
double rounded(double length_m, double step_m);  // to whole steps; step 0: as it is
double pointStep(const model::Piece& piece, units::LengthNotation notation);

// Point `index` at `to`, each coordinate rounded to the reading step unless `free`. A coordinate that has not left
// its step stays as it was written.
Change movePoint(const Shown& shown, const model::Piece& before, int index, const line::Xy& to, bool free,
                 const QString& merges);
Change moveStation(const Shown& shown, const model::Piece& before, int index, double at_m, const QString& merges);

// Foot of station `index`, a prop or jack, at `to`; block `index` under the hull at `x_m`. To the step of a station.
Change moveFoot(const Shown& shown, const model::Piece& before, int index, const line::Xy& to, const QString& merges);
Change moveBlock(const Shown& shown, const model::Piece& before, int index, double x_m, const QString& merges);

// The trim line at the start or the end of `shown` (which has a plan of the piece as it stands) at `at_m` of that
// plan's line, to the step of a station: the end point slides along the line or along the arc by which it runs on, and
// all else keeps its place on the wood: strips and form end where they did (over-run never falls below nothing),
// stations, widths, pins and posts are measured from where the start is now, a heading that is given turns with the
// line. No further in than the neighbouring point, no further out than half the line's length or a quarter turn.
enum class TrimLine { start, end };
Change moveTrim(const Shown& shown, TrimLine which, double at_m, const QString& merges);

// A measured point on the line at `at_m`, where a tape would find it (outside what is to be taken off), named "Pt n"
// and put between its neighbours. Needs a plan.
Change addPoint(const Shown& shown, double at_m);
Change removePoint(const Shown& shown, int index);
bool canRemovePoint(const model::Piece& piece);  // a line needs three
Change setMustPass(const Shown& shown, int index, bool mustPass);

// A station at `at_m` like the nearest one there is.
Change addStation(const Shown& shown, double at_m);
Change removeStation(const Shown& shown, int index);
Change removeBlock(const Shown& shown, int index);
bool canRemoveBlock(const model::Piece& piece);  // a hull with weight needs one

}  // namespace fayline::app::edits
