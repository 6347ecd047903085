// What the parts of a piece are called, on screen and in the undo menu.
#pragma once

#include <QString>

#include "core/model/boat.hpp"

namespace fayline::app {

// "WL 12", or "point 5" if it has no label. `index` may lie outside the points.
QString pointName(const model::Piece& piece, int index);

QString holdName(model::HoldKind kind);  // "clamp"

}  // namespace fayline::app
