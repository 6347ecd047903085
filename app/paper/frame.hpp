// What every sheet carries: what it belongs to, its number, and the figure for checking the printer's scale.
#pragma once

#include "app/paper/sheet.hpp"

namespace fayline::app::paper {

struct Heading {
    QString boat;
    QString piece;
    QString paper;
};

inline constexpr double gap_mm = 2;
inline constexpr double titleHeight_mm = 14;
inline constexpr double checkSquare_mm = 100;
inline constexpr double checkSquareInches_mm = 101.6;  // 4 in

// Throws InputError when `page` leaves too little room to draw on; says how much is needed.
void requireRoom(const Page& page);

// Two squares with one lower left corner, 100 mm and 4 in, for measuring what the printer made of them.
void addCheckSquares(Sheet& sheet, const QPointF& lowerLeft);

// Where the words within the check squares stand when the squares' lower left corner is at `lowerLeft`.
QRectF checkWordsBox(const QPointF& lowerLeft);

// Where nothing on a sheet is at full size: a line with ticks at 100 mm and at 4 in, its words beside it, along the
// upper edge of `box` (which is checkRuleHeight_mm high).
inline constexpr double checkRuleHeight_mm = 8;
void addCheckRule(Sheet& sheet, const QRectF& box);

// On a sheet whose title runs along its lower border: the title's box, and what is left above it to draw on.
QRectF titleBelow(const Page& page);
QRectF aboveTitle(const Page& page);

// Writes boat, piece, paper, name of the sheet and its number of how many into each sheet's title.
void nameSheets(std::vector<Sheet>& sheets, const Heading& heading);

// The cautions that belong on every paper which is worked from.
QString bentStackCaution();
QString localRulesCaution();

}  // namespace fayline::app::paper
