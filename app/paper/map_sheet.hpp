// The first sheet of a full-size drawing: a small map of all its sheets and how to join them.
#pragma once

#include "app/paper/drawing.hpp"
#include "app/paper/tiles.hpp"

namespace fayline::app::paper {

// The map numbers the tiles as their sheets are numbered, from 2 on.
Sheet mapSheet(const Drawing& drawing, const Tiling& tiling, const Page& page);

}  // namespace fayline::app::paper
