// Smooth lines, drawn fast: without the corners that no eye can tell, and as one filled figure each. A stroker for any
// path joins every corner with an arc and flattens that again, which is most of the work of a picture that follows the
// hand.
#pragma once

#include <QColor>
#include <QPainter>
#include <QPolygonF>
#include <vector>

namespace fayline::app {

// The corners of `line` that are seen, by their index, ascending: without those that lie within `tolerance` of the
// straight piece that passes them by. The first and the last stay, those that are no numbers, and those that `wanted`
// says true for (empty: none).
std::vector<qsizetype> cornersSeen(const QPolygonF& line, double tolerance, const std::vector<bool>& wanted = {});

// The same line with these corners alone.
QPolygonF decimated(const QPolygonF& line, double tolerance);

// The figure that a pen of `width` covers along `line`: flat at its ends, round at sharp corners. To be filled by
// winding.
QPolygonF ribbon(const QPolygonF& line, double width);

// Draws `line`, whose corners are all wanted, `width` wide.
void drawRibbon(QPainter& painter, const QPolygonF& line, double width, const QColor& colour);

}  // namespace fayline::app
