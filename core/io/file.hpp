// The project file: reading, writing, and the one table of its keys and their defaults.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/boat.hpp"
#include "core/units/input_error.hpp"

namespace fayline::io {

// The boat that the text of a project file describes.
//
// Throws InputError naming the place as a path, what is wrong and what would be accepted: text that is not JSON (with
// line and column), a key given twice in one group, "fayline" missing or newer than this program, a missing name or
// points, a known key of a wrong type or with a value that is impossible by itself or beside its neighbours (two
// widths at one place, a gluing beyond the last strip). Keys that are not known are kept. Older formats are upgraded.
//
// A point may leave out x_mm or y_mm if it has `written`: the length is then read from there, in the file's notation
// of lengths. Where both stand, the number counts and `written` is only shown.
//
// A piece without `id` is given one by its place, p1, p2 ..., the same at each reading. Two with one id are an error.
//
// A piece still being typed in can be saved and opened: fewer than three points, doubled points, a wood or glue that
// nobody knows are found by the plan, not here.
model::Boat readBoat(std::string_view text);

// The text of the project file: two-space indent, a point, strip or station on one line, keys in the order of the
// format, then those that are not known; ends with a newline. A key stands there when it stood in the file read, when
// its value is not the default, or when it says what an item made by the program is about (a station's place).
//   (1) readBoat(writeBoat(b)) == b, to the bit, for every b whose values the file accepts and whose pieces have ids;
//       those that have none are given theirs by their place
//   (2) a length comes back with the figures it had in the file, up to 15 of them
//   (3) writeBoat(readBoat(text)) == text for every text that writeBoat gave
// Throws InputError with the path of a number that is not finite or a text that is not UTF-8.
std::string writeBoat(const model::Boat& boat);

// Reads the file at `path`. Throws InputError with an empty path for a file that cannot be read.
model::Boat loadBoat(const std::filesystem::path& path);

// Writes the file at `path` whole or not at all: written aside in the same folder, flushed to the disk, renamed.
// Permissions of an existing file are kept; a symbolic link is followed, not replaced.
// Throws InputError with an empty path when that fails, and with the path of a value that could not be read again (a
// thickness of -6 mm) or would be read as another than it is (half a second in a time of day); the file that was there
// is then as it was.
void saveBoat(const model::Boat& boat, const std::filesystem::path& path);

// One line of the table of keys, for the user guide and its test.
struct Key {
    std::string path;          // pieces[].stack.strips[].thickness_mm
    std::string defaultValue;  // as JSON; empty: must be given
    std::string accepted;      // "a number above 0", after "give" in an error
};

// Every key of the project file in its order.
std::vector<Key> fileKeys();

}  // namespace fayline::io
