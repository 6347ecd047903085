#include "app/paper/full_size.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "app/paper/frame.hpp"
#include "app/paper/join.hpp"
#include "app/paper/map_sheet.hpp"
#include "app/paper/marks.hpp"
#include "app/paper/placing.hpp"
#include "app/paper/room.hpp"
#include "app/paper/tiles.hpp"
#include "core/math/count.hpp"
#include "core/units/units.hpp"

namespace fayline::app::paper {

namespace {

constexpr double gridCross_mm = 2;  // half of the small crosses where grid lines meet

QPolygonF ring(const QPointF& at, double radius) {
    QPolygonF points;
    for (int i = 0; i <= 36; ++i) {
        const double angle = i * std::numbers::pi / 18;
        points << at + radius * QPointF(std::cos(angle), std::sin(angle));
    }
    return points;
}

QString sheetName(const Tile& tile, const Tiling& tiling) {
    return QString("row %1 of %2, column %3 of %4")
        .arg(tile.row + 1)
        .arg(tiling.rows)
        .arg(tile.column + 1)
        .arg(tiling.columns);
}

// The lines of the boat's own coordinates on one sheet.
struct SheetGrid {
    std::vector<QLineF> lines;
    std::vector<QPointF> meetings;  // of two lines
};

// Lays the grid out and writes its coordinates near the lower and the left border.
SheetGrid layGrid(Sheet& sheet, Room& room, const Drawing& drawing, const Placing& placing) {
    const QRectF& bounds = placing.from;
    const double step = drawing.grid_mm;
    std::vector<double> xs;
    std::vector<double> ys;
    for (double i = std::ceil(bounds.left() / step); i * step <= bounds.right(); ++i) xs.push_back(i * step);
    for (double j = std::ceil(bounds.top() / step); j * step <= bounds.bottom(); ++j) ys.push_back(j * step);

    SheetGrid grid;
    for (const double x : xs)
        grid.lines.emplace_back(placing(QPointF(x, bounds.top())), placing(QPointF(x, bounds.bottom())));
    for (const double y : ys)
        grid.lines.emplace_back(placing(QPointF(bounds.left(), y)), placing(QPointF(bounds.right(), y)));
    for (const QLineF& line : grid.lines) room.addFaintInk(line);
    for (const double x : xs) {
        for (const double y : ys) {
            const QPointF at = placing(QPointF(x, y));
            grid.meetings.push_back(at);
            room.addInk(QPolygonF({at - QPointF(gridCross_mm, 0), at + QPointF(gridCross_mm, 0)}));
            room.addInk(QPolygonF({at - QPointF(0, gridCross_mm), at + QPointF(0, gridCross_mm)}));
        }
    }
    // Beside its line, from the border inwards until there is room.
    const auto name = [&](const QString& axis, double value_mm, const QPointF& from, const QPointF& inwards) {
        const QString text = axis + " " + lengthText(units::fromMillimetres(value_mm), drawing.display);
        for (double reach = 0; reach < 100; reach += 4) {
            const Words label{text, from + reach * inwards, 2.3};
            if (!room.isFree(extent(label), false)) continue;
            sheet.words.push_back(label);
            room.addBox(extent(label));
            return;
        }
    };
    for (const double x : xs) name("x", x, placing(QPointF(x, bounds.top())) + QPointF(1, -1.6), {0, -1});
    for (const double y : ys) name("y", y, placing(QPointF(bounds.left(), y)) + QPointF(1.2, -1.4), {1, 0});
    return grid;
}

// Draws the grid around the words that stand on the sheet by now.
void drawGrid(Sheet& sheet, const Room& room, const SheetGrid& grid) {
    for (const QLineF& line : grid.lines) {
        for (const QLineF& part : room.outsideBoxes(line)) addLine(sheet, part.p1(), part.p2(), 0.12, Dash::dotted);
    }
    const QRectF& within = room.within();
    for (const QPointF& at : grid.meetings) {
        const double left = std::max(at.x() - gridCross_mm, within.left());
        const double right = std::min(at.x() + gridCross_mm, within.right());
        const double top = std::max(at.y() - gridCross_mm, within.top());
        const double bottom = std::min(at.y() + gridCross_mm, within.bottom());
        if (room.meetsBox(QRectF(QPointF(left, top), QPointF(right, bottom)))) continue;
        addLine(sheet, {left, at.y()}, {right, at.y()}, 0.15);
        addLine(sheet, {at.x(), top}, {at.x(), bottom}, 0.15);
    }
}

// The check squares where they lie clear of the drawing, or cover as little of it as can be.
void placeCheckSquares(Sheet& sheet, Room& room, const QRectF& area) {
    QPointF best;
    double bestInk = -1;
    const double side = checkSquareInches_mm;
    const double inset = 1.5;
    const auto sidesMeetBox = [&](const QRectF& square) {
        const double wide = 6;
        return room.meetsBox(QRectF(square.topLeft(), QSizeF(square.width(), wide))) ||
               room.meetsBox(QRectF(square.topLeft(), QSizeF(wide, square.height()))) ||
               room.meetsBox(QRectF(square.bottomLeft() - QPointF(0, wide), QSizeF(square.width(), wide))) ||
               room.meetsBox(QRectF(square.topRight() - QPointF(wide, 0), QSizeF(wide, square.height())));
    };
    const int across = std::max(1, static_cast<int>((area.width() - side - 2 * inset) / 4));
    const int down = std::max(1, static_cast<int>((area.height() - side - 2 * inset) / 4));
    for (int j = 0; j <= down; ++j) {
        for (int i = 0; i <= across; ++i) {
            const QPointF corner(area.left() + inset + (area.width() - side - 2 * inset) * i / across,
                                 area.bottom() - inset - (area.height() - side - 2 * inset) * j / down);
            const QRectF words = checkWordsBox(corner);
            if (room.meetsBox(words)) continue;
            const QRectF square = QRectF(corner - QPointF(0, side), QSizeF(side, side)).adjusted(-3, -3, 3, 3);
            // Ink through the words hides what they say: anything rather than that.
            const double ink = room.inkWithin(square) + 1000 * room.inkWithin(words) + (sidesMeetBox(square) ? 60 : 0);
            if (bestInk >= 0 && ink >= bestInk) continue;
            best = corner;
            bestInk = ink;
        }
    }
    addCheckSquares(sheet, best);
    room.addBox(checkWordsBox(best));
    room.addInk(QPolygonF(QRectF(best - QPointF(0, checkSquare_mm), QSizeF(checkSquare_mm, checkSquare_mm))));
    room.addInk(QPolygonF(QRectF(best - QPointF(0, side), QSizeF(side, side))));
}

Sheet tileSheet(const Drawing& drawing, const Tiling& tiling, int index, const Page& page) {
    const Tile& tile = tiling.tiles[index];
    const QRectF area = aboveTitle(page);
    Sheet sheet;
    sheet.page = page;
    sheet.name = sheetName(tile, tiling);
    sheet.title = titleBelow(page);
    addBox(sheet, area, 0.1);
    const Placing placing{tile.bounds, area.bottomLeft()};
    Room room(area);

    const auto ink = [&](const QPolygonF& line, double width, Dash dash = Dash::solid) {
        for (const QPolygonF& part : clipped(placing(line), area)) {
            sheet.strokes.push_back({part, width, dash});
            room.addInk(part);
        }
    };
    for (const Curve& curve : drawing.curves) ink(curve.points, curve.width_mm);
    for (const CrossMark& mark : drawing.marks) ink(QPolygonF({mark.from, mark.to}), mark.width_mm);
    for (const Spot& spot : drawing.spots) {
        if (area.contains(placing(spot.at))) ink(ring(spot.at, 1.3), 0.15);
    }
    for (std::size_t i = 0; i < tiling.seams.size(); ++i) {
        const Seam& seam = tiling.seams[i];
        if (seam.first != index && seam.second != index) continue;
        for (std::size_t k = 0; k < 2; ++k) {
            const QPointF at = placing(seam.crosses[k]);
            addJoinCross(sheet, at, seamLetter(static_cast<int>(i)) + QString::number(k + 1));
            room.addBox(joinCrossBox(at));
        }
    }
    placeCheckSquares(sheet, room, area);
    const SheetGrid grid = layGrid(sheet, room, drawing, placing);

    const auto name = [&](const QString& text, const QPointF& anchor, const QPointF& way, bool bold) {
        if (placeLabel(sheet, room, {text, anchor, placing.direction(way), bold ? 3.2 : 2.7, bold})) return;
        sheet.remark = "some marks stand too close to be named";
    };
    for (const CrossMark& mark : drawing.marks) {
        // Named where its place is on the sheet, though its far end may lie off it.
        const auto seen = clipped(QLineF(placing(mark.on), placing(mark.to)), area);
        if (mark.name.isEmpty() || !area.contains(placing(mark.on)) || !seen) continue;
        name(mark.name, seen->p2(), mark.to - mark.from, mark.bold);
    }
    for (const Spot& spot : drawing.spots) {
        if (area.contains(placing(spot.at))) name(spot.name, placing(spot.at), spot.away, false);
    }
    drawGrid(sheet, room, grid);
    return sheet;
}

}  // namespace

std::vector<Sheet> fullSize(const Drawing& drawing, const Page& page) {
    requireRoom(page);
    const Page other = turned(page);
    Tiling tiling = tilesOf(drawing, aboveTitle(page).size());
    Tiling otherTiling = tilesOf(drawing, aboveTitle(other).size());
    const bool turn = otherTiling.tiles.size() < tiling.tiles.size();
    const Page& chosen = turn ? other : page;
    if (turn) tiling = std::move(otherTiling);

    std::vector<Sheet> sheets{mapSheet(drawing, tiling, chosen)};
    for (int i = 0; i < math::countOf(tiling.tiles); ++i) {
        sheets.push_back(tileSheet(drawing, tiling, i, chosen));
    }
    return sheets;
}

}  // namespace fayline::app::paper
