// Figures as they are read at the bench: in the boat's display units, lengths beside them in millimetres.
#pragma once

#include "app/paper/listing.hpp"
#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"
#include "core/units/display.hpp"
#include "core/units/source.hpp"

namespace fayline::app::paper {

// The same with hard spaces, so that it is never parted at the end of a line.
QString inOnePiece(const QString& text);

QString forceText(double force_N, const units::Display& display);  // "850 N"
// "1700 N" over `below`; of a light pull "light" over "under 200 N".
Cell pullCell(double pull_N, holding::HoldState state, const units::Display& display, const QString& below);
QString thicknessText(double length_m, const units::Display& display);    // "5/32 in"
QString smallText(double length_m, const units::Display& display);        // "0.31 mm", without sign
QString onScaleText(double force_N, const units::Display& display);       // "86.5 kg"
QString degreesText(double angle_rad);                                    // "12.5°"
QString pressureText(double pressure_Pa, const units::Display& display);  // "320 kPa"

// "ft-in-eighths", "in" or "mm".
QString lengthUnit(const units::Display& display);
// What stands under the head of a column of lengths: "in, below: mm".
QString lengthHead(const units::Display& display);

// A length by the tape: display units, millimetres below them where those are not millimetres already.
Cell lengthCell(double length_m, const units::Display& display, bool bold = false);
Cell textCell(const QString& text, bool bold = false, const QString& below = {});

// What serves a station: "Bar clamp", "NONE AT HAND: all in use"; empty where the file names no tools of its kind. Very
// long names are shortened.
QString toolText(const model::Piece& piece, const plan::Plan& plan, int station);

// Distinct sources with their marks, and what the marks mean, as one paragraph; empty for none.
QString sourcesText(const std::vector<units::Source>& sources);

}  // namespace fayline::app::paper
