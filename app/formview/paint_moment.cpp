// A minute of the glue-up over the drawing.
#include <algorithm>

#include "app/formview/paint.hpp"
#include "app/formview/reading_box.hpp"

namespace fayline::app {

namespace {

bool among(const std::vector<int>& some, int one) {
    return std::find(some.begin(), some.end(), one) != some.end();
}

QColor with(QColor colour, float alpha) {
    colour.setAlphaF(alpha);
    return colour;
}

void paintStrips(QPainter& painter, const PointedMoment& pointed, const Drawing& drawing, const Transform& transform,
                 const Theme& theme) {
    const QTransform pixels = transform.matrix();
    const int first = pointed.strips.empty() ? 0 : pointed.strips.front();
    painter.setPen(Qt::NoPen);
    for (std::size_t i = 1; i < drawing.faces.size(); ++i) {
        const int strip = static_cast<int>(i);
        if (strip < first) continue;  // glued and cured before
        const bool spread = among(pointed.moment.spread, strip);
        const bool wetted = among(pointed.moment.wetted, strip);
        painter.setBrush(spread   ? with(theme.accent, 0.6F)
                         : wetted ? with(theme.accent, 0.3F)
                                  : with(theme.ground, 0.7F));
        QPolygonF figure = pixels.map(drawing.faces[i - 1]);
        const QPolygonF outer = pixels.map(drawing.faces[i]);
        for (auto corner = outer.rbegin(); corner != outer.rend(); ++corner) figure << *corner;
        painter.drawPolygon(figure, Qt::WindingFill);
    }
}

void paintStations(QPainter& painter, const PointedMoment& pointed, const Sheet& sheet, const Theme& theme) {
    for (const StationMark& mark : sheet.stations) {
        const bool on = among(pointed.moment.closed, mark.number);
        if (on) {
            painter.setPen(QPen(theme.accent, 1.5));
            painter.setBrush(with(theme.accent, 0.5F));
            painter.drawPath(mark.shape.body);
            painter.drawEllipse(mark.frame.base, 3.5, 3.5);
            continue;
        }
        painter.setBrush(with(theme.ground, 0.7F));
        painter.setPen(QPen(with(theme.ground, 0.7F), 3));
        painter.drawPath(mark.shape.body);
        painter.drawPath(mark.shape.solid);
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(mark.shape.strokes);
    }
}

}  // namespace

void paintMoment(QPainter& painter, const PointedMoment& pointed, const Sheet& sheet, const Drawing& drawing,
                 const Transform& transform, const Theme& theme) {
    paintStrips(painter, pointed, drawing, transform, theme);
    paintStations(painter, pointed, sheet, theme);
}

QStringList momentLines(const PointedMoment& pointed, const QSizeF& view) {
    QString words = pointed.words;
    return linesOf(words.replace(QStringLiteral(". "), QStringLiteral(".\n")), view);
}

}  // namespace fayline::app
