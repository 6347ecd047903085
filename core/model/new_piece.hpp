#pragma once

#include <string>

#include "core/model/boat.hpp"

namespace fayline::model {

// A new boat's text ready to be edited is a boat without pieces; `newPiece` is a piece with three points of a gentle
// arc in it, so that there is something to see and to drag.
Piece newPiece(const std::string& name);

}  // namespace fayline::model
