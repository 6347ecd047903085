// What the parts of a piece are called, on screen and in the undo menu.
#pragma once

#include <QString>

#include "core/boat/boat.hpp"

namespace fayline::app {

// "WL 12", or "point 5" if it has no label. `index` may lie outside the points.
QString pointName(const boat::Piece& piece, int index);

QString holdName(boat::HoldKind kind);  // "clamp"

}  // namespace fayline::app
