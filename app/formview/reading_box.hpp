// A few lines beside what the pointer is on, on a ground of their own, where they cover neither stack nor words.
#pragma once

#include <QStringList>

#include "app/formview/labels.hpp"
#include "app/formview/sheet.hpp"
#include "app/look/theme.hpp"

namespace fayline::app {

struct ReadingBox {
    QStringList lines;
    QRectF place;  // null: there was no room for a single line
};

// Where `lines` stand: near `beside`, off `keepOff`, on nothing that may not be written on and, where there is a
// choice, on nothing at all. Where there is no room for all, the last are left out. `room` is counted.
ReadingBox placeReading(QStringList lines, const QPointF& beside, const std::vector<QRectF>& keepOff,
                        const Occupied& room, const QSizeF& view, const Fonts& fonts);

void paintReading(QPainter& painter, const ReadingBox& box, const Fonts& fonts, const Theme& theme);

// The lines of `words`, those that are longer than the view has room for beside a piece broken between words.
QStringList linesOf(const QString& words, const QSizeF& view);

}  // namespace fayline::app
