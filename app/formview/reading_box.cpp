#include "app/formview/reading_box.hpp"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "app/formview/paint.hpp"

namespace fayline::app {

namespace {

constexpr double margin_px = 3;  // to what stands beside it

struct BoxSearch {
    const QSizeF size;
    const QPointF beside;
    const std::vector<QRectF>& keepOff;
    const Occupied& room;
    const QRectF view;

    QRectF best;
    double bestCost = 1e9;

    // `free`: of all that is drawn, else only of what may not be covered.
    void offer(const QPointF& centre, bool free) {
        QRectF tried(QPointF(0, 0), size);
        tried.moveCenter(centre);
        tried.moveLeft(std::clamp(tried.left(), view.left(), std::max(view.left(), view.right() - size.width())));
        tried.moveTop(std::clamp(tried.top(), view.top(), std::max(view.top(), view.bottom() - size.height())));
        const double cost = QLineF(tried.center(), beside).length();
        if (cost >= bestCost || !view.contains(tried)) return;
        const auto covered = [&](const QRectF& kept) { return tried.intersects(kept); };
        if (std::any_of(keepOff.begin(), keepOff.end(), covered)) return;
        const QRectF aired = tried.adjusted(-margin_px, -margin_px, margin_px, margin_px);
        if ((free ? room.counted(aired) : room.countedBarred(aired)) > 0) return;
        bestCost = cost;
        best = tried;
    }

    // Beside the place first, in eight ways, so that the box goes with the pointer; then anywhere.
    void search(bool free) {
        constexpr double gap_px = 2 * gridStep;
        for (const int dx : {1, -1, 0}) {
            for (const int dy : {-1, 1, 0}) {
                if (dx == 0 && dy == 0) continue;
                offer(beside + QPointF(dx * (gap_px + size.width() / 2), dy * (gap_px + size.height() / 2)), free);
            }
        }
        if (!best.isNull()) return;
        constexpr double step_px = gridStep;
        for (double y = view.top(); y + size.height() <= view.bottom(); y += step_px) {
            for (double x = view.left(); x + size.width() <= view.right(); x += step_px) {
                offer(QPointF(x + size.width() / 2, y + size.height() / 2), free);
            }
        }
    }
};

}  // namespace

ReadingBox placeReading(QStringList lines, const QPointF& beside, const std::vector<QRectF>& keepOff,
                        const Occupied& room, const QSizeF& view, const Fonts& fonts) {
    const QFontMetricsF metrics(fonts.small);
    const QRectF within = QRectF(QPointF(0, 0), view).adjusted(2, 2, -2, -2);
    for (; !lines.isEmpty(); lines.removeLast()) {
        double width = 0;
        for (const QString& line : lines) width = std::max(width, metrics.horizontalAdvance(line));
        const double height = metrics.height() * static_cast<double>(lines.size());
        const QSizeF size(std::ceil(width) + 2 * gridStep, std::ceil(height) + gridStep);
        for (const bool free : {true, false}) {
            BoxSearch search{size, beside, keepOff, room, within, {}, 1e9};
            search.search(free);
            if (!search.best.isNull()) return {lines, search.best};
        }
    }
    return {};
}

void paintReading(QPainter& painter, const ReadingBox& box, const Fonts& fonts, const Theme& theme) {
    if (box.place.isNull()) return;
    const QFontMetricsF metrics(fonts.small);
    painter.setPen(pen(theme.rule, 1));
    painter.setBrush(theme.raised);
    painter.drawRect(box.place.adjusted(0.5, 0.5, -0.5, -0.5));
    painter.setFont(fonts.small);
    painter.setPen(theme.ink);
    double base = box.place.top() + gridStep / 2.0 + metrics.ascent();
    for (const QString& line : box.lines) {
        painter.drawText(QPointF(box.place.left() + gridStep, base), line);
        base += metrics.height();
    }
}

QStringList linesOf(const QString& words, const QSizeF& view) {
    constexpr double narrow_px = 600;
    const qsizetype longest = view.width() < narrow_px ? 30 : 60;
    QStringList lines;
    for (const QString& paragraph : words.split(QLatin1Char('\n'))) {
        QString line;
        for (const QString& word : paragraph.split(QLatin1Char(' '))) {
            if (!line.isEmpty() && line.size() + 1 + word.size() > longest) {
                lines << line;
                line.clear();
            }
            line += (line.isEmpty() ? QString() : QStringLiteral(" ")) + word;
        }
        lines << line;
    }
    return lines;
}

}  // namespace fayline::app
