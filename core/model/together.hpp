// What a boat read from a file must be as a whole, beyond what each key by itself must be.
#pragma once

#include "core/model/boat.hpp"
#include "core/model/shed.hpp"

namespace fayline::model {

// Fills coordinates that stand in the file only as they were written (`written` without x_mm or y_mm), in the file's
// notation of lengths. Throws InputError with its path: a point without a coordinate or with one that cannot be read,
// two widths or planed depths at the same place, gluings that do not rise or lie beyond the last strip, a bad stretch
// that ends before it begins, an adhesive that has no parts.
//
// Gives ids to the pieces that have none; two pieces with one id are an error that names both places.
void completeAndCheck(Boat& boat);

// Gives each piece without an id one from its place: p1, p2 ..., passing over those that are taken.
void giveMissingIds(Boat& boat);

// Throws InputError, its path begun with `path`, for what the values of a piece must be beside each other: widths,
// planed depths, gluings and bad stretches as above.
void checkTogether(const Piece& piece, const std::string& path);

// The same for a shed: bad stretches, adhesives, and two of its glues or woods with one id.
void checkTogether(const Shed& shed);

// The coordinate, 0 for x and 1 for y, as `written` says it in the notation; nullopt if it cannot be read.
std::optional<double> coordinateAsWritten(const Point& point, int axis, units::LengthNotation notation);

}  // namespace fayline::model
