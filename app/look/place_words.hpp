// What is wrong with a piece, said as its user sees the piece: "Stem, point WL 24: ..." and not by keys of a file.
#pragma once

#include <QString>

#include "core/model/boat.hpp"
#include "core/units/input_error.hpp"

namespace fayline::app {

// The place that `path` ("stack.strips[0].thickness_mm", of a piece) names: "strips 1 to 7, thickness". Empty for a
// path that names nothing.
QString placeWords(const QString& path, const model::Piece& piece);

// Piece and place, what is wrong there and what would be accepted. Places that the error's own words name by their
// path are named so, too.
QString refusalWords(const units::InputError& error, const model::Piece& piece);

}  // namespace fayline::app
