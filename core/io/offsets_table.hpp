// Offsets as they come in text: pasted from a spreadsheet, or from a file of separated values.
//
// First the text is taken apart into columns and a use is proposed for each; then, with the uses and the unit that the
// user sees and may change, the points are read. Nothing is guessed at that is not shown before.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/boat.hpp"
#include "core/units/length.hpp"

namespace fayline::io {

// What a column holds: the point's name, x (along), y (up or out).
enum class ColumnUse { leftOut, name, along, up };

// What a number means that has no unit, neither its own nor one that its column's header gives. `asWritten`: what the
// boat's notation takes it for. `feetInchesEighths`: as `inches`, and three whole numbers with blanks, points or colons
// between them are feet, inches and eighths ("2 3 4").
enum class TableUnit { asWritten, feetInchesEighths, millimetres, centimetres, metres, inches, feet };

struct OffsetsRow {
    int line = 0;  // in the text, from 1
    std::vector<std::string> cells;
};

struct OffsetsTable {
    std::vector<OffsetsRow> rows;          // each with as many cells as `header`; none that is all empty
    std::vector<std::string> header;       // names of the columns; empty texts where the text names none
    std::vector<std::string> headerUnits;  // "mm", "in" ... that the names give; empty texts where they give none
    std::vector<ColumnUse> uses;           // proposed; all left out where the text does not say which column is which
};

inline constexpr std::size_t longestTable = 1 << 20;  // bytes of text; offsets are a few thousand

// The table in `text` (UTF-8). Columns are separated by tabs, semicolons, commas or runs of blanks, whichever lets most
// rows be read as points, so that a decimal comma survives between semicolons, tabs or blanks. Empty lines, lines that
// begin with #, a byte order mark, quoted fields and any line ending are understood; lines before the first with a
// length in it are headings, and the last of them names the columns: `x_mm`, `y (in)`, `Height`.
// Proposed: the columns named so; else two are along and up, three are name, along and up, and of more the two that
// hold lengths, if there are just two. No rows where the text holds none. Throws InputError with an empty path for a
// text longer than `longestTable`.
OffsetsTable readTable(std::string_view text);

struct UnreadCell {
    int row = 0;  // index into OffsetsTable::rows
    int column = 0;
    std::string wrong;  // what is wrong and what would be accepted
};

struct OffsetsRead {
    std::vector<model::Point> points;  // of the rows that are understood, in order
    std::vector<UnreadCell> unread;
};

// The points of the table's rows. `written` of each point is its text, with the unit where that is not what `notation`
// takes a bare number for. Nothing where no column is `along` or none is `up`. `uses` has a member for each column.
OffsetsRead readPoints(const OffsetsTable& table, const std::vector<ColumnUse>& uses, TableUnit unit,
                       units::LengthNotation notation);

// A unit that the numbers may be in, and the length of the way through all points (metres) if they are.
struct UnitReading {
    TableUnit unit = TableUnit::asWritten;
    double length_m = 0;
};

// The lengths of pieces that are built: beyond them another unit is likelier. Common practice, no source.
inline constexpr double shortestPiece_m = 0.1;
inline constexpr double longestPiece_m = 20;

// The units that the numbers of the columns in use may be in, the likeliest first: `asWritten` alone where every number
// has a unit; none in which a number is beyond any length that another takes. Those that give a length between
// shortestPiece_m and longestPiece_m come before the others, and of equals the unit of `notation` comes first, then the
// others of its system.
std::vector<UnitReading> unitReadings(const OffsetsTable& table, const std::vector<ColumnUse>& uses,
                                      units::LengthNotation notation);

}  // namespace fayline::io
