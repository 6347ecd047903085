#include "app/paper/tiles.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "app/paper/join.hpp"
#include "app/paper/room.hpp"
#include "core/math/count.hpp"

namespace fayline::app::paper {

namespace {

constexpr double marginAround_mm = 12;  // kept free for names around the drawing
constexpr int shiftsTried = 7;          // each way

using GridCell = std::pair<int, int>;  // row from the top, column

// A grid of cells without their overlap; the tile of a cell reaches half the overlap further on each side.
struct Grid {
    double left = 0;
    double top = 0;  // greatest y
    double width = 0;
    double height = 0;

    GridCell cellOf(const QPointF& place) const {
        return {static_cast<int>(std::floor((top - place.y()) / height)),
                static_cast<int>(std::floor((place.x() - left) / width))};
    }
    QRectF boundsOf(const GridCell& cell) const {
        const double half = overlap_mm / 2;
        return {left + cell.second * width - half, top - (cell.first + 1) * height - half, width + 2 * half,
                height + 2 * half};
    }
};

// The cells along a curve. Where it leaves a cell through a corner, a neighbour is added so that sheets can be joined.
std::set<GridCell> cellsOf(const Drawing& drawing, const Grid& grid) {
    std::set<GridCell> cells;
    for (const Curve& curve : drawing.curves) {
        GridCell before = grid.cellOf(curve.points.front());
        for (const QPointF& point : curve.points) {
            const GridCell cell = grid.cellOf(point);
            const bool corner = cell.first != before.first && cell.second != before.second;
            if (corner && !cells.contains({before.first, cell.second})) cells.insert({cell.first, before.second});
            cells.insert(cell);
            before = cell;
        }
    }
    return cells;
}

QRectF boundsOf(const Drawing& drawing) {
    QRectF bounds = drawing.curves.front().points.boundingRect();
    for (const Curve& curve : drawing.curves) bounds = bounds.united(curve.points.boundingRect());
    return bounds.adjusted(-marginAround_mm, -marginAround_mm, marginAround_mm, marginAround_mm);
}

// Two places along the middle of the overlap, away from the ink if possible.
std::array<QPointF, 2> crossPlaces(const Drawing& drawing, const QRectF& shared, bool upright) {
    const auto placeNear = [&](double share) {
        const double length = upright ? shared.height() : shared.width();
        QPointF best;
        double bestClear = -1;
        for (const double offset : {0.0, 0.03, -0.03, 0.06, -0.06, 0.09, -0.09, 0.12, -0.12}) {
            const double along = (share + offset) * length;
            const QPointF place = upright ? QPointF(shared.center().x(), shared.top() + along)
                                          : QPointF(shared.left() + along, shared.center().y());
            const QRectF box = joinCrossBox(place).adjusted(-4, -1, 1, 1);
            double clear = 12;
            const auto look = [&](const QPolygonF& line) {
                if (!clipped(line, box).empty()) clear = 0;
            };
            for (const Curve& curve : drawing.curves) look(curve.points);
            for (const CrossMark& mark : drawing.marks) look(QPolygonF({mark.from, mark.to}));
            for (const Spot& spot : drawing.spots) clear = std::min(clear, QLineF(spot.at, place).length());
            if (clear > bestClear) {
                best = place;
                bestClear = clear;
            }
        }
        return best;
    };
    return {placeNear(0.2), placeNear(0.8)};
}

}  // namespace

Tiling tilesOf(const Drawing& drawing, const QSizeF& tile) {
    const QRectF bounds = boundsOf(drawing);
    Grid grid{0, 0, tile.width() - overlap_mm, tile.height() - overlap_mm};
    const double columns = std::max(1.0, std::ceil((bounds.width() - overlap_mm) / grid.width));
    const double rows = std::max(1.0, std::ceil((bounds.height() - overlap_mm) / grid.height));
    // A curve of this length enters at most so many cells.
    requireFewSheets(std::max(columns, rows), drawing.name);
    const double slackX = columns * grid.width + overlap_mm - bounds.width();
    const double slackY = rows * grid.height + overlap_mm - bounds.height();

    std::set<GridCell> fewest;
    Grid chosen = grid;
    for (int i = 0; i < shiftsTried; ++i) {
        for (int j = 0; j < shiftsTried; ++j) {
            // The middle first: shares 1/2, then towards the ends.
            const auto share = [](int k) {
                return 0.5 + (k % 2 == 0 ? 1 : -1) * ((k + 1) / 2) * 0.5 / (shiftsTried / 2);
            };
            grid.left = bounds.left() - share(i) * slackX + overlap_mm / 2;
            grid.top = bounds.bottom() + share(j) * slackY - overlap_mm / 2;
            std::set<GridCell> cells = cellsOf(drawing, grid);
            if (!fewest.empty() && cells.size() >= fewest.size()) continue;
            fewest = std::move(cells);
            chosen = grid;
        }
    }
    requireFewSheets(static_cast<double>(fewest.size()), drawing.name);

    Tiling tiling;
    std::vector<GridCell> order(fewest.begin(), fewest.end());
    int firstRow = order.front().first;
    int firstColumn = order.front().second;
    for (const GridCell& cell : order) firstColumn = std::min(firstColumn, cell.second);
    for (const GridCell& cell : order) {
        tiling.tiles.push_back({cell.first - firstRow, cell.second - firstColumn, chosen.boundsOf(cell)});
        tiling.rows = std::max(tiling.rows, cell.first - firstRow + 1);
        tiling.columns = std::max(tiling.columns, cell.second - firstColumn + 1);
    }
    const auto indexOf = [&](const GridCell& cell) {
        const auto found = std::lower_bound(order.begin(), order.end(), cell);
        return found != order.end() && *found == cell ? static_cast<int>(found - order.begin()) : -1;
    };
    for (int i = 0; i < math::countOf(order); ++i) {
        const GridCell cell = order[i];
        for (const bool upright : {true, false}) {
            const int other =
                indexOf(upright ? GridCell{cell.first, cell.second + 1} : GridCell{cell.first + 1, cell.second});
            if (other < 0) continue;
            const QRectF shared = tiling.tiles[i].bounds.intersected(tiling.tiles[other].bounds);
            tiling.seams.push_back({i, other, crossPlaces(drawing, shared, upright)});
        }
    }
    return tiling;
}

}  // namespace fayline::app::paper
