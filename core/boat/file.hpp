// The project file: reading, writing, and the one table of its keys and their defaults.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "core/boat/boat.hpp"
#include "core/measure/input_error.hpp"

namespace fayline::boat {

// The boat that the text of a project file describes.
//
// Throws InputError naming the place as a path, what is wrong and what would be accepted: text that is not JSON (with
// line and column), "fayline" missing or newer than this program, a missing name or points, a known key of a wrong
// type or with an impossible value. Keys that are not known are kept. Older formats are upgraded.
Boat readBoat(std::string_view text);

// The text of the project file: two-space indent, keys in the order of the format, then those that are not known;
// ends with a newline. A key stands there when it stood in the file read, or when its value is not the default.
//   (1) readBoat(writeBoat(b)) == b, for every b that readBoat can give
//   (2) a length of up to 12 figures in millimetres comes back to the digit
std::string writeBoat(const Boat& boat);

// A new boat's text ready to be edited is a boat without pieces; `newPiece` is a piece with three points of a gentle
// arc in it, so that there is something to see and to drag.
Piece newPiece(const std::string& name);

// Reads the file at `path`. Throws InputError with an empty path for a file that cannot be read.
Boat loadBoat(const std::filesystem::path& path);

// Writes the file at `path` whole or not at all: written aside in the same folder, flushed to the disk, renamed.
// Permissions of an existing file are kept; a symbolic link is followed, not replaced.
// Throws InputError with an empty path when that fails; the file that was there is then as it was.
void saveBoat(const Boat& boat, const std::filesystem::path& path);

// One line of the table of keys, for the user guide and its test.
struct Key {
    std::string path;          // pieces[].stack.strips[].thickness_mm
    std::string defaultValue;  // as JSON; empty: must be given
    std::string accepted;      // "a number above 0"
};

// Every key of the project file in its order.
std::vector<Key> fileKeys();

}  // namespace fayline::boat
