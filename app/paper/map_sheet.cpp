#include "app/paper/map_sheet.hpp"

#include <algorithm>

#include "app/paper/frame.hpp"
#include "app/paper/join.hpp"
#include "app/paper/marks.hpp"
#include "app/paper/placing.hpp"
#include "app/paper/room.hpp"
#include "core/units/units.hpp"

namespace fayline::app::paper {

namespace {

constexpr double greatestScale = 0.5;
constexpr double leastWordsHeight_mm = 40;

QRectF boundsOf(const Tiling& tiling) {
    QRectF all = tiling.tiles.front().bounds;
    for (const Tile& tile : tiling.tiles) all = all.united(tile.bounds);
    return all;
}

double mapScale(const QRectF& box, const QRectF& all) {
    return std::min({box.width() / all.width(), box.height() / all.height(), greatestScale});
}

// The number within its cell, in the middle if it can, else where it meets no ink.
void numberCell(Sheet& sheet, const Room& room, const QRectF& cell, const QString& number) {
    const double size = std::clamp(0.25 * std::min(cell.width(), cell.height()), 2.0, 5.0);
    Words words{number, {0, 0}, size, Lean::left, true};
    const QRectF box = extent(words);
    const double roomX = std::max(0.0, cell.width() - box.width() - 1.6) / 2;
    const double roomY = std::max(0.0, cell.height() - box.height() - 1.6) / 2;
    for (const double share : {0.0, 0.5, 1.0}) {
        for (const QPointF& way : {QPointF(0, -1), QPointF(0, 1), QPointF(-1, 0), QPointF(1, 0), QPointF(-1, -1),
                                   QPointF(1, 1), QPointF(1, -1), QPointF(-1, 1)}) {
            words.at = cell.center() + share * QPointF(way.x() * roomX, way.y() * roomY) - box.center();
            if (!room.isFree(extent(words))) continue;
            sheet.words.push_back(words);
            return;
        }
    }
    words.at = cell.center() - box.center();
    sheet.words.push_back(words);
}

void drawMap(Sheet& sheet, const QRectF& box, const Drawing& drawing, const Tiling& tiling) {
    const QRectF all = boundsOf(tiling);
    const double scale = mapScale(box, all);
    const QPointF lowerLeft(box.center().x() - all.width() * scale / 2, box.center().y() + all.height() * scale / 2);
    const Placing placing{all, lowerLeft, scale};
    std::vector<QRectF> cells;
    for (const Tile& tile : tiling.tiles) {
        // Without the overlap, so that neighbours share one line.
        const double half = overlap_mm / 2;
        const QRectF cell = tile.bounds.adjusted(half, half, -half, -half);
        cells.push_back(QRectF(placing(cell.bottomLeft()), placing(cell.topRight())).normalized());
        addBox(sheet, cells.back(), 0.15);
    }
    Room room(box);
    for (const Curve& curve : drawing.curves) {
        sheet.strokes.push_back({placing(curve.points), 0.4});
        room.addInk(placing(curve.points));
    }
    for (std::size_t i = 0; i < cells.size(); ++i) numberCell(sheet, room, cells[i], QString::number(i + 2));
}

}  // namespace

Sheet mapSheet(const Drawing& drawing, const Tiling& tiling, const Page& page) {
    const QRectF area = aboveTitle(page);
    Sheet sheet;
    sheet.page = page;
    sheet.name = "map of the sheets";
    sheet.title = titleBelow(page);
    const double side = checkSquareInches_mm;
    const double gap = 3 * gap_mm;
    addCheckSquares(sheet, area.bottomLeft());
    // All above the squares or all beside them is the map's, whichever lets it come out larger.
    const QRectF above(area.left(), area.top(), area.width(), area.height() - side - gap);
    const QRectF beside(area.left() + side + gap, area.top(), area.width() - side - gap, area.height());
    const QRectF all = boundsOf(tiling);
    const bool mapBeside = mapScale(beside, all) > mapScale(above, all) && above.height() > leastWordsHeight_mm;
    const QRectF words = mapBeside
                             ? QRectF(area.left(), area.top(), side, area.height() - side - gap_mm)
                             : QRectF(area.left() + side + gap, area.bottom() - side, area.width() - side - gap, side);
    drawMap(sheet, (mapBeside ? beside : above).adjusted(1, 1, -1, -1), drawing, tiling);

    double y = words.top();
    const auto paragraph = [&](const QString& text, bool bold = false) {
        if (y >= words.bottom()) return;
        y = addParagraph(sheet, {words.left(), y, words.width(), words.bottom() - y}, text, 2.7, bold) + 1.1;
    };
    paragraph("Measure the check squares on every sheet first.", true);
    if (tiling.tiles.size() > 1) {
        paragraph("Lay the sheets over each other as the map shows, cross upon cross and letter upon letter.");
    }
    for (const QString& note : drawing.notes) paragraph(note);
    paragraph("Dotted lines: every " + lengthText(units::fromMillimetres(drawing.grid_mm), drawing.display) +
              " of the boat's own x and y, for checking with a tape across the sheets.");
    paragraph("Marks stand square to the line.");
    paragraph(localRulesCaution());
    return sheet;
}

}  // namespace fayline::app::paper
