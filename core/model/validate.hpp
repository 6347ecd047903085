// The ranges of the project file's keys (keys.hpp) held against a piece in memory.
#pragma once

#include "core/model/boat.hpp"

namespace fayline::model {

// Throws InputError for the first value that a project file would refuse, with the path from the piece on
// ("stack.strips[0].thickness_mm"), and with the words that reading the file would give: numbers out of their range or
// not finite, lists too short or too long, and what must fit together (checkTogether). Texts are left to who saves: a
// name with a byte that is not UTF-8 shall not cost its plan.
//
// Cheap enough for every step of a drag: numbers within their range are compared, not written as text.
void validate(const Piece& piece);

}  // namespace fayline::model
