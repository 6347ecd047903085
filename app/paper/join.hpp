// Joins between sheets that overlap: letters for the seams, crosses to lay upon each other.
#pragma once

#include "app/paper/sheet.hpp"

namespace fayline::app::paper {

inline constexpr double overlap_mm = 15;
inline constexpr double crossArm_mm = 4;
inline constexpr int mostSheets = 1000;

// The letter of the seam with this index: A to Z without I and O, then AA, AB, ...
QString seamLetter(int index);

// A cross with a ring about its middle and its name to the right of it.
void addJoinCross(Sheet& sheet, const QPointF& at, const QString& name);

// The box that such a cross fills, its name included.
QRectF joinCrossBox(const QPointF& at);

// Throws InputError when a paper would need more than mostSheets sheets.
void requireFewSheets(double sheets, const QString& paper);

}  // namespace fayline::app::paper
