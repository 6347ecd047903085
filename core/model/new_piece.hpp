#pragma once

#include <string>

#include "core/model/boat.hpp"
#include "core/units/display.hpp"

namespace fayline::model {

// A new boat's text ready to be edited is a boat without pieces; `newPiece` is a piece with three points of a gentle
// arc in it, so that there is something to see and to drag.
// What is assumed of it is round in the lengths of the display: 4 in, 6 in and 1/4 in, or 100, 150 and 6 mm.
Piece newPiece(const std::string& name, const units::Display& display = units::metricShop);

}  // namespace fayline::model
