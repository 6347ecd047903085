// Puts the drawing down with a painter: screen, picture or paper. Knows neither widget nor mouse.
#pragma once

#include <QPainter>

#include "app/formview/sheet.hpp"
#include "app/look/theme.hpp"

namespace fayline::app {

// All of it: grid, strips, marks, words. `sheet` and `drawing` belong together.
void paintForm(QPainter& painter, const Sheet& sheet, const Drawing& drawing, const Transform& transform,
               const QSizeF& view, const ViewChoice& choice, const Fonts& fonts, const Theme& theme);

// What the mouse points at: a mark across the stack.
void paintPlace(QPainter& painter, const DrawnPlace& place, const Transform& transform, const QColor& colour);

// A minute of the glue-up over the drawing: strips wetted and spread by then, stations that are on. What is not there
// yet is veiled.
void paintMoment(QPainter& painter, const PointedMoment& pointed, const Sheet& sheet, const Drawing& drawing,
                 const Transform& transform, const Theme& theme);
// ... and in words what goes on, a line for each sentence.
QStringList momentLines(const PointedMoment& pointed, const QSizeF& view);

// With flat ends and round corners.
inline QPen pen(const QColor& colour, double width, Qt::PenStyle style = Qt::SolidLine) {
    return QPen(colour, width, style, Qt::FlatCap, Qt::RoundJoin);
}

namespace paint {  // the stages of paintForm

void ground(QPainter& painter, const Sheet& sheet, const QSizeF& view, const Theme& theme);
void formEdge(QPainter& painter, const Sheet& sheet, const Theme& theme);  // with gaps and pressure
void stack(QPainter& painter, const Sheet& sheet, const Drawing& drawing, const Transform& transform,
           const Theme& theme);
double opacityOf(const Sheet& sheet);  // of what the plan has worked out
void marks(QPainter& painter, const Sheet& sheet, const ViewChoice& choice, const Theme& theme);
void trims(QPainter& painter, const Sheet& sheet, const ViewChoice& choice, const Theme& theme);
void standing(QPainter& painter, const Sheet& sheet, const ViewChoice& choice, const Theme& theme);  // floor and hull
void forces(QPainter& painter, const Sheet& sheet, const ViewChoice& choice, const Theme& theme);
void troubles(QPainter& painter, const Sheet& sheet, const ViewChoice& choice, const Theme& theme);  // of props
void forceScale(QPainter& painter, const QLineF& bar, const Theme& theme);
void furniture(QPainter& painter, const Sheet& sheet, const QSizeF& view, const Fonts& fonts, const Theme& theme);
// `worked` is how much is seen of words that the plan has worked out, 1 all.
void texts(QPainter& painter, const std::vector<Text>& texts, const Fonts& fonts, const Theme& theme,
           double worked = 1);

QColor mix(const QColor& from, const QColor& to, double share);

// Draws smooth lines in pixels, without the corners that no eye can tell from the piece that passes them by: to stroke
// each of them is most of the work of a picture.
void smooth(QPainter& painter, const Lines& lines, const QTransform& pixels, const QPen& pen);

}  // namespace paint

// The shape that goes with a severity, about `centre`: octagon, triangle, circle.
QPainterPath severityShape(plan::Severity severity, const QPointF& centre, double half);
QColor severityColour(plan::Severity severity, const Theme& theme);

}  // namespace fayline::app
