#include "app/clock/gauge.hpp"

#include <QPaintEvent>
#include <QPainter>
#include <algorithm>

#include "app/look/icons.hpp"
#include "app/look/text_shape.hpp"
#include "app/look/theme.hpp"

namespace fayline::app {

namespace {

constexpr int leastGauge_px = 12;

}  // namespace

Gauge::Gauge(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void Gauge::show(const QString& title, const QString& figure, const QString& word,
                 const std::optional<plan::Severity>& shape) {
    const bool onlyFigure = title == title_ && word == word_ && shape == shape_;
    if (onlyFigure && figure == figure_) return;
    title_ = title;
    figure_ = figure;
    word_ = word;
    shape_ = shape;
    setAccessibleName(QStringLiteral("%1: %2, %3").arg(title, figure, word));
    if (onlyFigure) {
        update(places().figure);
    } else {
        update();
    }
}

Gauge::Places Gauge::places() const {
    Places at;
    const int line = std::max(height() * 24 / 100, leastGauge_px + 4);
    at.title = QRect(0, 0, width(), line);
    at.word = QRect(0, height() - line, width(), line);
    const int between = height() - 2 * line;
    const int side = std::min(between * 6 / 10, width() / 5);
    at.shape = QRect(0, line + (between - side) / 2, side, side);
    at.figure = QRect(side + gridStep, line, width() - side - gridStep, between);
    return at;
}

// As high as its place, smaller where the words are too long for it.
QFont Gauge::fontFor(const QRect& place, const QString& text, bool bold) const {
    QFont made = tabularFont(font());
    if (bold) made.setWeight(QFont::DemiBold);
    int px = std::max(leastGauge_px, place.height() * 8 / 10);
    made.setPixelSize(px);
    const double wide = textWidth(textShape(text, made), made);
    if (wide > place.width()) px = std::max(leastGauge_px, int(px * place.width() / wide));
    made.setPixelSize(px);
    return made;
}

bool Gauge::showsAll() const {
    const Places at = places();
    const auto isIn = [&](const QRect& place, const QString& text, bool bold) {
        const QFontMetrics metrics(fontFor(place, text, bold));
        return metrics.horizontalAdvance(text) <= place.width() + 1 && metrics.height() <= place.height() * 3 / 2;
    };
    return isIn(at.title, title_, false) && isIn(at.figure, figure_, true) && isIn(at.word, word_, false);
}

void Gauge::paintEvent(QPaintEvent* event) {
    const Theme& t = theme();
    const Places at = places();
    QPainter painter(this);
    const QColor ink = shape_ ? findingColor(*shape_) : t.faint;
    const auto write = [&](const QRect& place, const QString& text, bool bold, const QColor& colour) {
        if (!event->rect().intersects(place)) return;
        painter.setFont(fontFor(place, text, bold));
        painter.setPen(colour);
        painter.drawText(place, Qt::AlignLeft | Qt::AlignVCenter, text);
    };
    write(at.title, title_, false, t.faint);
    write(at.figure, figure_, true, shape_ == plan::Severity::note || !shape_ ? t.ink : ink);
    write(at.word, word_, false, shape_ == plan::Severity::note || !shape_ ? t.faint : ink);
    if (shape_ && event->rect().intersects(at.shape)) {
        painter.setRenderHint(QPainter::Antialiasing);
        painter.fillPath(findingShape(*shape_, QRectF(at.shape).adjusted(2, 2, -2, -2)), ink);
    }
}

}  // namespace fayline::app

#include "moc_gauge.cpp"
