// How a full-size drawing is cut into overlapping tiles.
#pragma once

#include <QRectF>
#include <array>
#include <vector>

#include "app/paper/drawing.hpp"

namespace fayline::app::paper {

// One tile of the drawing, in the drawing's millimetres (y upwards; `bounds.top()` is its least y).
struct Tile {
    int row = 0;     // from the top
    int column = 0;  // from the left
    QRectF bounds;   // overlap included
};

// Two tiles beside or above each other, by their places in Tiling::tiles, and the places of the two crosses.
struct Seam {
    int first = 0;
    int second = 0;
    std::array<QPointF, 2> crosses;
};

struct Tiling {
    std::vector<Tile> tiles;  // row by row
    std::vector<Seam> seams;
    int rows = 0;
    int columns = 0;
};

// Tiles of `tile` millimetres that overlap by overlap_mm, shifted so that few are needed, without those that no curve
// enters; any two that follow each other along a curve share a side. Throws InputError when there would be more than
// mostSheets.
Tiling tilesOf(const Drawing& drawing, const QSizeF& tile);

}  // namespace fayline::app::paper
