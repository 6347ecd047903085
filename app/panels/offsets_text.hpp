// Offsets as text: the file that they are opened from, and the way out to a spreadsheet. core/io/offsets_table reads.
#pragma once

#include <QString>
#include <vector>

#include "core/model/boat.hpp"
#include "core/units/display.hpp"

namespace fayline::app {

// What files of offsets end in, for the dialog that asks for one.
QString offsetsFilter();

// The text of the file, which is UTF-8 or else Latin-1. Throws InputError, saying the file's name, for one that cannot
// be read or is too large to be a table of offsets.
QString readOffsetsFile(const QString& fileName);

// The points as label, x, y with tabs between them under a header, as io::readTable takes them back.
QString writeOffsetsText(const std::vector<model::Point>& points, const units::Display& display);

}  // namespace fayline::app
