// Offsets as text: what is pasted from a spreadsheet or stands in a file of separated values, and the way out again.
#pragma once

#include <QString>
#include <vector>

#include "core/model/boat.hpp"
#include "core/units/display.hpp"

namespace fayline::app {

// The points in `text`, one a line, in order.
//
// Columns are separated by tabs, semicolons, commas or runs of blanks, whichever lets most lines be read, so that a
// decimal comma survives between semicolons, tabs or blanks. Two columns are x and y, three are label, x and y, more
// need a header that names x and y (and label), unless the first is no length. A header may give a unit: `x_mm`,
// `y (in)`. Empty lines, lines that begin with #, a byte order mark, quoted fields, any line ending are understood.
//
// A bare number means what `assumed` says. `written` of each point is the text as it stood there.
// A line that cannot be read gives no point and one line in `problems` (if given): its number and what is wrong.
std::vector<model::Point> readOffsetsText(const QString& text, units::LengthNotation assumed, QString* problems);

// The points in the file, which is UTF-8 or else Latin-1, as above. A file that cannot be read or is too large to be a
// table of offsets gives none and says so in `problems`.
std::vector<model::Point> readOffsetsFile(const QString& fileName, units::LengthNotation assumed, QString* problems);

// The points as label, x, y with tabs between them under a header, as readOffsetsText takes them back.
QString writeOffsetsText(const std::vector<model::Point>& points, const units::Display& display);

}  // namespace fayline::app
