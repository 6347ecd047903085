#include "app/panels/lanes_chart.hpp"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>
#include <cmath>
#include <utility>

#include "app/look/text_shape.hpp"
#include "app/look/theme.hpp"
#include "app/panels/reading.hpp"
#include "core/units/day_text.hpp"

namespace fayline::app {

namespace {

constexpr double tallest = 18;  // of a lane, pixels
constexpr double shortest = 4;
constexpr double mostRoom = 480;  // for all lanes
constexpr double min_s = 60;

QColor toned(const QColor& from, const QColor& to, double share) {
    const auto part = [share](float a, float b) { return static_cast<float>(a + (b - a) * share); };
    return QColor::fromRgbF(part(from.redF(), to.redF()), part(from.greenF(), to.greenF()),
                            part(from.blueF(), to.blueF()));
}

// A step of the clock's scale of which at most `parts` go into the span.
double clockStep(double span_s, double parts) {
    for (const double minutes : {1, 2, 5, 10, 15, 30, 60, 120, 240, 480}) {
        if (span_s / (minutes * min_s) <= parts) return minutes * min_s;
    }
    return 24 * 60 * min_s;
}

}  // namespace

int LanesChart::laneCount() const {
    std::size_t count = 0;
    for (const Group& group : picture_.groups) count += group.lanes.size();
    return static_cast<int>(count);
}

double LanesChart::laneHeight() const {
    return std::clamp(std::floor(mostRoom / std::max(1, laneCount())), shortest, tallest);
}

double LanesChart::headHeight() const {
    return QFontMetrics(smallFigures()).height() + gridStep / 4.0;
}

double LanesChart::groupTop(std::size_t group) const {
    const double before = rowsBefore(group);
    return headHeight() + static_cast<double>(group + 1) * headHeight() + before * laneHeight();
}

int LanesChart::rowsBefore(std::size_t group) const {
    std::size_t rows = 0;
    for (std::size_t i = 0; i < group; ++i) rows += picture_.groups[i].lanes.size();
    return static_cast<int>(rows);
}

QSize LanesChart::sizeHint() const {
    const double heads = static_cast<double>(picture_.groups.size() + 1) * headHeight();
    return {320, static_cast<int>(std::ceil(heads + laneCount() * laneHeight())) + gridStep};
}

QSize LanesChart::minimumSizeHint() const {
    return {200, sizeHint().height()};
}

void LanesChart::setPicture(Picture picture) {
    if (picture == picture_) return;
    const int before = sizeHint().height();
    picture_ = std::move(picture);
    if (sizeHint().height() != before) updateGeometry();
    layOut();
    update();
}

void LanesChart::lightMinute(std::optional<double> at_s) {
    if (at_s == lit_s_) return;
    lit_s_ = at_s;
    update();
}

void LanesChart::layOut() {
    const QFont font = smallFigures();
    double names = 0;
    for (const Group& group : picture_.groups)
        for (const Lane& lane : group.lanes) names = std::max(names, textWidth(lane.name, font));
    layout_.left = std::ceil(names) + gridStep;
    layout_.right = std::max(layout_.left + 10, width() - gridStep * 0.5);
    layout_.lane = laneHeight();
    layout_.top = groupTop(0);
    layout_.to_s = std::max(1.0, picture_.to_s);
}

int LanesChart::taskAt(const QPointF& pixel) const {
    const double at_s = layout_.at_s(pixel.x());
    for (std::size_t g = 0; g < picture_.groups.size(); ++g) {
        const double row = (pixel.y() - groupTop(g)) / layout_.lane;
        if (row < 0 || row >= static_cast<double>(picture_.groups[g].lanes.size())) continue;
        for (const Bar& bar : picture_.groups[g].lanes[static_cast<std::size_t>(row)].bars) {
            if (at_s >= bar.from_s && at_s < bar.to_s) return bar.task;
        }
    }
    return -1;
}

QString LanesChart::clockWords(double clock_s) {
    return text(units::writeClock(std::fmod(clock_s, 24 * 60 * min_s)));
}

void LanesChart::drawClock(QPainter* painter) const {
    const Theme& t = theme();
    const double widest = textWidth(QStringLiteral("00:00"), painter->font()) + 2 * gridStep;
    const double step_s = clockStep(picture_.to_s, std::max(2.0, (layout_.right - layout_.left) / widest));
    const double bottom = height() - gridStep * 0.5;
    double free = 0;
    for (double clock_s = step_s * std::ceil(picture_.start_s / step_s); clock_s <= picture_.start_s + picture_.to_s;
         clock_s += step_s) {
        const double place = std::round(layout_.x(clock_s - picture_.start_s)) + 0.5;
        painter->setPen(QPen(t.rule, 1));
        painter->drawLine(QPointF(place, headHeight()), QPointF(place, bottom));
        const QString text = clockWords(clock_s);
        const double wide = textWidth(text, painter->font()) + 1;
        const std::optional<double> left = leftOf(place, wide, free);
        if (!left) continue;
        painter->setPen(t.faint);
        painter->drawText(QRectF(*left, 0, wide, headHeight()), Qt::AlignLeft | Qt::AlignVCenter, text);
    }
}

void LanesChart::drawBar(QPainter* painter, const Bar& bar, const Lane& lane, double top) const {
    const Theme& t = theme();
    const double left = layout_.x(bar.from_s);
    const QRectF box(left, top + 1, std::max(1.0, layout_.x(bar.to_s) - left - 1), layout_.lane - 2);
    QColor tone = toned(t.ground, t.ink, bar.full ? 0.34 : 0.18);
    if (lane.worst != Worst::no) tone = toned(t.ground, t.accent, bar.full ? 0.55 : 0.4);
    painter->fillRect(box, picture_.faint ? toned(t.ground, tone, 0.5) : tone);
    // The part beyond the limit.
    if (lane.limit_s && bar.to_s > *lane.limit_s) {
        QRectF late = box;
        late.setLeft(std::max(box.left(), layout_.x(*lane.limit_s)));
        painter->fillRect(late, QBrush(t.stop, Qt::BDiagPattern));
    }
    if (layout_.lane < painter->fontMetrics().height() - 2) return;
    const auto fits = [&](const QString& words) {
        return !words.isEmpty() && textWidth(words, painter->font()) + gridStep * 0.5 <= box.width();
    };
    const QString words = fits(bar.text) ? bar.text : fits(bar.brief) ? bar.brief : QString();
    if (words.isEmpty()) return;
    painter->setPen(t.ink);
    painter->drawText(box.adjusted(gridStep * 0.25, -1, 0, 1), Qt::AlignLeft | Qt::AlignVCenter, words);
}

// The line at which the lane's time is up; beyond the chart's right edge its time is written there.
void LanesChart::drawLimit(QPainter* painter, const Lane& lane, double top, bool named) const {
    const Theme& t = theme();
    if (*lane.limit_s <= picture_.to_s) {
        const double place = std::round(layout_.x(*lane.limit_s)) + 0.5;
        painter->setPen(QPen(t.stop, lane.worst == Worst::no ? 1 : 2));
        painter->drawLine(QPointF(place, top), QPointF(place, top + layout_.lane));
        return;
    }
    double ends_s = 0;  // of the last bar: what is written stands clear of it
    for (const Bar& bar : lane.bars) ends_s = std::max(ends_s, bar.to_s);
    const QString words = tr("%1 \u25b8").arg(clockWords(picture_.start_s + *lane.limit_s));
    const double wide = textWidth(words, painter->font()) + 1;
    const double left = layout_.right - wide;
    if (!named || left < layout_.x(ends_s) + gridStep / 2.0) return;
    painter->setPen(lane.worst == Worst::no ? t.faint : t.ink);
    painter->drawText(QRectF(left, top + layout_.lane / 2 - headHeight() / 2, wide, headHeight()),
                      Qt::AlignLeft | Qt::AlignVCenter, words);
}

void LanesChart::drawGroup(QPainter* painter, const Group& group, double top) const {
    const Theme& t = theme();
    painter->setPen(t.faint);
    painter->drawText(QRectF(0, top - headHeight(), width(), headHeight()), Qt::AlignLeft | Qt::AlignVCenter,
                      group.name);
    const bool named = layout_.lane >= painter->fontMetrics().height() - 2;
    for (const Lane& lane : group.lanes) {
        if (named || lane.worst != Worst::no) {
            painter->setPen(lane.worst == Worst::no ? t.ink : lane.worst == Worst::late ? t.stop : t.accent);
            painter->drawText(
                QRectF(0, top + layout_.lane / 2 - headHeight() / 2, layout_.left - gridStep / 2.0, headHeight()),
                Qt::AlignRight | Qt::AlignVCenter, lane.name);
        }
        for (const Bar& bar : lane.bars) drawBar(painter, bar, lane, top);
        if (lane.limit_s) drawLimit(painter, lane, top, named);
        top += layout_.lane;
    }
}

void LanesChart::paintEvent(QPaintEvent*) {
    const Theme& t = theme();
    QPainter painter(this);
    painter.fillRect(rect(), t.ground);
    painter.setFont(smallFigures());
    if (picture_.to_s > 0) {
        drawClock(&painter);
        for (std::size_t g = 0; g < picture_.groups.size(); ++g) drawGroup(&painter, picture_.groups[g], groupTop(g));
        if (lit_s_) {
            const double place = std::round(layout_.x(*lit_s_)) + 0.5;
            painter.setPen(QPen(t.accent, 1));
            painter.drawLine(QPointF(place, headHeight()), QPointF(place, height() - gridStep * 0.5));
        }
    }
    drawFocus(painter);
}

void LanesChart::point(std::optional<double> at_s) {
    if (at_s) at_s = std::clamp(*at_s, 0.0, layout_.to_s);
    emit minutePointed(at_s);
}

void LanesChart::mouseMoveEvent(QMouseEvent* event) {
    if (event->position().x() < layout_.left - gridStep) return point(std::nullopt);
    point(layout_.at_s(event->position().x()));
}

void LanesChart::mousePressEvent(QMouseEvent* event) {
    mouseMoveEvent(event);
}

void LanesChart::leaveEvent(QEvent* event) {
    QWidget::leaveEvent(event);
    point(std::nullopt);
}

void LanesChart::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    point(std::nullopt);
    update();
}

void LanesChart::keyPressEvent(QKeyEvent* event) {
    const double step_s = event->modifiers() & Qt::ShiftModifier ? 10 * min_s : min_s;
    switch (event->key()) {
        case Qt::Key_Left:
            return point(lit_s_ ? *lit_s_ - step_s : 0);
        case Qt::Key_Right:
            return point(lit_s_ ? *lit_s_ + step_s : 0);
        case Qt::Key_Home:
            return point(0);
        case Qt::Key_End:
            return point(layout_.to_s);
        case Qt::Key_Escape:
            if (!lit_s_) break;
            return point(std::nullopt);
        default:
            break;
    }
    QWidget::keyPressEvent(event);
}

bool LanesChart::event(QEvent* event) {
    if (event->type() != QEvent::ToolTip) return QWidget::event(event);
    const auto* help = static_cast<QHelpEvent*>(event);
    QString words;
    const int task = taskAt(help->pos());
    for (const Group& group : picture_.groups)
        for (const Lane& lane : group.lanes)
            for (const Bar& bar : lane.bars)
                if (task >= 0 && bar.task == task) words = bar.text;
    if (words.isEmpty()) {
        QToolTip::hideText();
    } else {
        QToolTip::showText(help->globalPos(), words, this);
    }
    return true;
}

}  // namespace fayline::app
