#include "app/panels/along_plot.hpp"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>
#include <utility>

#include "app/look/ribbon.hpp"
#include "app/look/text_shape.hpp"
#include "app/look/theme.hpp"
#include "app/panels/reading.hpp"
#include "core/units/units.hpp"

namespace fayline::app {

double niceStep(double span_m, double parts, const units::Display& display) {
    if (!(span_m > 0) || !std::isfinite(span_m)) return 1;
    std::vector<double> steps;
    if (display.lengths == units::LengthNotation::millimetres) {
        for (double decade = 1e-4; decade < 1e4; decade *= 10)
            for (const double figure : {1.0, 2.0, 5.0}) steps.push_back(decade * figure);
    } else {
        for (const double inches : {0.125, 0.25, 0.5, 1.0, 2.0, 3.0, 6.0}) steps.push_back(inches * units::inch_m);
        for (double decade = 1; decade < 1e4; decade *= 10)
            for (const double figure : {1.0, 2.0, 5.0}) steps.push_back(decade * figure * units::foot_m);
    }
    for (const double step : steps)
        if (span_m / step <= parts) return step;
    return steps.back();
}

std::vector<double> niceRadii(double most_per_m, const units::Display& display) {
    std::vector<double> radii;
    if (!(most_per_m > 0) || !std::isfinite(most_per_m)) return radii;
    const double unit = display.lengths == units::LengthNotation::millimetres ? 1.0 : units::foot_m;
    for (double decade = 1e-3; decade < 1e5; decade *= 10) {
        for (const double figure : {1.0, 1.5, 2.0, 3.0, 5.0}) {
            const double radius = unit * decade * figure;
            if (1 / radius > most_per_m) continue;
            // Room for a line of text between one and the next, and the last one and the straight.
            constexpr double apart = 0.22;
            if (!radii.empty() && 1 / radii.back() - 1 / radius < apart * most_per_m) continue;
            if (1 / radius < apart * most_per_m) return radii;
            radii.push_back(radius);
        }
    }
    return radii;
}

namespace {

// The curve without the points that are not seen: those that lie on the way from one that stays to the next, within a
// twentieth of a pixel of the height that plots have. Drawing takes as long as there are points.
QPolygonF thinned(const QPolygonF& points) {
    constexpr double seen = 1 / 2500.0;  // of the plot's height
    QPolygonF kept;
    double least = -INFINITY;  // slopes from the last one kept that pass by all since
    double most = INFINITY;
    for (int i = 0; i < points.size(); ++i) {
        const QPointF& at = points[i];
        if (!kept.isEmpty() && i > 0) {
            const double slope = (at.y() - kept.last().y()) / (at.x() - kept.last().x());
            if (!(at.x() > kept.last().x()) || slope < least || slope > most) {
                if (kept.last() != points[i - 1]) kept << points[i - 1];
                least = -INFINITY;
                most = INFINITY;
            }
        }
        if (kept.isEmpty()) kept << at;
        const QPointF way = at - kept.last();
        if (way.x() <= 0) {  // straight up, or back
            if (at != kept.last()) kept << at;
            continue;
        }
        least = std::max(least, (way.y() - seen) / way.x());
        most = std::min(most, (way.y() + seen) / way.x());
    }
    if (!points.isEmpty() && kept.last() != points.last()) kept << points.last();
    return kept;
}

}  // namespace

void AlongPlot::setPicture(Picture picture) {
    picture_ = std::move(picture);
    any_ = picture_.to_m > picture_.from_m && picture_.most > picture_.least;
    if (!any_) return setNothing();
    curves_.clear();
    for (const Curve& curve : picture_.curves) curves_.push_back(thinned(asShares(curve.points)));
    layOut();
    update();
}

// The points as shares of the plot's width and height.
QPolygonF AlongPlot::asShares(QPolygonF points) const {
    for (QPointF& point : points) {
        point = {(point.x() - picture_.from_m) / (picture_.to_m - picture_.from_m),
                 (point.y() - picture_.least) / (picture_.most - picture_.least)};
    }
    return points;
}

void AlongPlot::setNothing() {
    any_ = false;
    curves_.clear();
    update();
}

void AlongPlot::setOld(bool old) {
    if (std::exchange(old_, old) != old) update();
}

void AlongPlot::lightPlace(std::optional<double> at_m) {
    if (at_m == lit_m_) return;
    lit_m_ = at_m;
    update();
}

void AlongPlot::selectPlace(std::optional<double> at_m) {
    if (at_m == selected_m_) return;
    selected_m_ = at_m;
    update();
}

void AlongPlot::layOut() {
    const QFont font = smallFigures();
    const QFontMetrics metrics(font);
    int left = wholeTextWidth(picture_.roomFor, font);
    for (const Tick& tick : picture_.ticks) left = std::max(left, wholeTextWidth(tick.text, font));
    const bool named =
        std::any_of(picture_.marks.begin(), picture_.marks.end(), [](const Mark& m) { return !m.text.isEmpty(); });
    const double top = metrics.height() * (named ? 3 : 2) + 4;  // caption, reading, the words at marks
    const double bottom = metrics.height() + 6;
    area_ = QRectF(left + 6, top, std::max(10, width() - left - 6 - gridStep), std::max(10.0, height() - top - bottom));
}

double AlongPlot::x(double at_m) const {
    return area_.left() + (at_m - picture_.from_m) / (picture_.to_m - picture_.from_m) * area_.width();
}

double AlongPlot::y(double value) const {
    return area_.bottom() - (value - picture_.least) / (picture_.most - picture_.least) * area_.height();
}

std::optional<double> AlongPlot::placeAt(const QPointF& pixel) const {
    if (!any_ || pixel.x() < area_.left() - gridStep || pixel.x() > area_.right() + gridStep) return std::nullopt;
    const double share = std::clamp((pixel.x() - area_.left()) / area_.width(), 0.0, 1.0);
    return picture_.from_m + share * (picture_.to_m - picture_.from_m);
}

void AlongPlot::drawScales(QPainter* painter) const {
    const Theme& t = theme();
    const QFontMetrics metrics = painter->fontMetrics();
    for (const Tick& tick : picture_.ticks) {
        const double level = std::round(y(tick.value)) + 0.5;
        painter->setPen(QPen(t.rule, 1));
        painter->drawLine(QPointF(area_.left(), level), QPointF(area_.right(), level));
        painter->setPen(t.faint);
        painter->drawText(QRectF(0, level - metrics.height() / 2.0, area_.left() - 5, metrics.height()),
                          Qt::AlignRight | Qt::AlignVCenter, tick.text);
    }
    drawAlong(painter);
    if (picture_.limit && picture_.limit->value <= picture_.most) {
        const double level = std::round(y(picture_.limit->value)) + 0.5;
        painter->setPen(QPen(t.stop, 1, Qt::DashLine));
        painter->drawLine(QPointF(area_.left(), level), QPointF(area_.right(), level));
        // At the right, or to the left of the marks that would go through the words.
        const double wide = wholeTextWidth(picture_.limit->text, painter->font());
        double right = area_.right();
        for (auto mark = picture_.marks.rbegin(); mark != picture_.marks.rend(); ++mark) {
            const double place = x(mark->at_m);
            if (mark->heavy && place <= right && place >= right - wide) right = place - gridStep / 2.0;
        }
        painter->drawText(QRectF(area_.left(), level - metrics.height() - 1, right - area_.left(), metrics.height()),
                          Qt::AlignRight | Qt::AlignBottom, picture_.limit->text);
    }
}

void AlongPlot::drawAlong(QPainter* painter) const {
    painter->setPen(QPen(theme().faint, 1));
    const double base = std::round(area_.bottom()) + 0.5;
    painter->drawLine(QPointF(area_.left(), base), QPointF(area_.right(), base));
    double free = 0;  // from here on nothing is written yet
    const auto mark = [&](double at, const QString& text) {
        const double place = std::round(x(at)) + 0.5;
        painter->drawLine(QPointF(place, base), QPointF(place, base + 3));
        const double width = wholeTextWidth(text, painter->font());
        if (const std::optional<double> left = leftOf(place, width, free))
            painter->drawText(QRectF(*left, base + 4, width + 1, painter->fontMetrics().height()),
                              Qt::AlignLeft | Qt::AlignTop, text);
    };
    if (!picture_.alongTicks.empty()) {
        for (const Tick& tick : picture_.alongTicks) mark(tick.value, tick.text);
        return;
    }
    const int widest = wholeTextWidth(QStringLiteral("00-00-0"), painter->font());
    const double step = niceStep(picture_.to_m - picture_.from_m,
                                 std::max(2.0, area_.width() / (widest + gridStep * 0.5)), picture_.display);
    for (double at = std::ceil(picture_.from_m / step - 1e-9) * step; at <= picture_.to_m + 1e-9; at += step) {
        mark(at, writeLengthText(std::abs(at) < 1e-9 ? 0 : at, picture_.display));
    }
}

void AlongPlot::drawDots(QPainter* painter) const {
    const Theme& t = theme();
    for (const Dot& dot : picture_.dots) {
        const QPointF at(x(dot.at.x()), y(dot.at.y()));
        if (!area_.adjusted(-1, -1, 1, 1).contains(at)) continue;
        painter->setRenderHint(QPainter::Antialiasing);
        painter->setPen(QPen(t.ink, 1.5));
        painter->setBrush(t.ground);
        painter->drawEllipse(at, 3.5, 3.5);
        painter->setRenderHint(QPainter::Antialiasing, false);
        painter->setPen(t.ink);
        const double width = wholeTextWidth(dot.text, painter->font()) + 1;
        const double left = at.x() + 6 + width < area_.right() ? at.x() + 6 : at.x() - 6 - width;
        const QRectF words(left, at.y() - painter->fontMetrics().height(), width, painter->fontMetrics().height());
        QColor backing = t.ground;  // curves may run there
        backing.setAlphaF(0.8F);
        painter->fillRect(words, backing);
        painter->drawText(words, Qt::AlignLeft | Qt::AlignVCenter, dot.text);
    }
}

void AlongPlot::drawStems(QPainter* painter) const {
    const Theme& t = theme();
    for (const Stem& stem : picture_.stems) {
        if (stem.at_m < picture_.from_m || stem.at_m > picture_.to_m || !std::isfinite(stem.value)) continue;
        const double place = std::round(x(stem.at_m)) + 0.5;

        if (stem.most && std::isfinite(*stem.most)) {
            const double level = std::round(y(std::min(*stem.most, picture_.most))) + 0.5;
            painter->setPen(QPen(t.rule, 1));
            painter->drawLine(QPointF(place, area_.bottom()), QPointF(place, level));
            painter->setPen(QPen(t.faint, 1));
            painter->drawLine(QPointF(place - 4, level), QPointF(place + 4, level));
        }
        const double height = y(std::clamp(stem.value, picture_.least, picture_.most));
        painter->setPen(QPen(t.ink, 3, Qt::SolidLine, Qt::FlatCap));
        painter->drawLine(QPointF(place, area_.bottom()), QPointF(place, height));
    }
}

void AlongPlot::drawPlace(QPainter* painter, double at_m, bool selected) const {
    const Theme& t = theme();
    if (at_m < picture_.from_m - 1e-9 || at_m > picture_.to_m + 1e-9) return;
    const double place = std::round(x(at_m)) + 0.5;
    painter->setPen(QPen(t.accent, selected ? 2 : 1));
    painter->drawLine(QPointF(place, area_.top() - 2), QPointF(place, area_.bottom()));
}

void AlongPlot::drawCurves(QPainter* painter) const {
    const Theme& t = theme();
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setClipRect(area_);
    for (std::size_t i = 0; i < curves_.size(); ++i) {
        if (curves_[i].size() < 2) continue;
        const bool main = picture_.curves[i].main;
        QPolygonF curve = curves_[i];
        for (QPointF& point : curve) {
            point = {area_.left() + point.x() * area_.width(), area_.bottom() - point.y() * area_.height()};
        }
        drawRibbon(*painter, curve, main ? 1.75 : 1, main ? t.ink : t.faint);
    }
    painter->restore();
}

void AlongPlot::paintEvent(QPaintEvent*) {
    const Theme& t = theme();
    QPainter whole(this);
    QPainter* const painter = &whole;
    painter->fillRect(rect(), t.ground);
    if (old_) painter->setOpacity(0.4);
    if (any_) drawCurves(painter);
    painter->setFont(smallFigures());
    const QFontMetrics metrics = painter->fontMetrics();
    painter->setPen(t.faint);
    painter->drawText(QRectF(0, 0, width(), metrics.height()), Qt::AlignLeft | Qt::AlignVCenter, picture_.caption);
    if (any_) {
        drawScales(painter);
        for (const Mark& mark : picture_.marks) {
            if (mark.at_m < picture_.from_m || mark.at_m > picture_.to_m) continue;
            const double place = std::round(x(mark.at_m)) + 0.5;
            painter->setPen(QPen(mark.heavy ? t.ink : t.faint, 1));
            painter->drawLine(QPointF(place, area_.bottom()),
                              QPointF(place, mark.heavy ? area_.top() : area_.bottom() - 6));
            if (mark.text.isEmpty()) continue;
            const double wide = wholeTextWidth(mark.text, painter->font()) + 2;
            painter->drawText(QRectF(place - wide / 2, area_.top() - metrics.height(), wide, metrics.height()),
                              Qt::AlignCenter, mark.text);
        }
        drawStems(painter);
        drawDots(painter);
        if (selected_m_) drawPlace(painter, *selected_m_, true);
        if (lit_m_ && lit_m_ != selected_m_) drawPlace(painter, *lit_m_, false);
        const std::optional<double> read = lit_m_ ? lit_m_ : selected_m_;
        if (read && picture_.reading && *read >= picture_.from_m - 1e-9 && *read <= picture_.to_m + 1e-9) {
            painter->setPen(t.accent);
            painter->drawText(QRectF(0, metrics.height() + 1, width() - 1.0, metrics.height()),
                              Qt::AlignRight | Qt::AlignVCenter, picture_.reading(*read));
        }
    }
    drawFocus(whole);
}

void AlongPlot::mouseMoveEvent(QMouseEvent* event) {
    emit placeHovered(placeAt(event->position()));
    if (event->buttons() & Qt::LeftButton) emit placeSelected(placeAt(event->position()));
}

void AlongPlot::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) emit placeSelected(placeAt(event->position()));
}

void AlongPlot::mouseReleaseEvent(QMouseEvent*) {}

void AlongPlot::leaveEvent(QEvent* event) {
    QWidget::leaveEvent(event);
    emit placeHovered(std::nullopt);
}

void AlongPlot::keyPressEvent(QKeyEvent* event) {
    if (!any_) return QWidget::keyPressEvent(event);
    const double steps = event->modifiers() & Qt::ShiftModifier ? 12 : 120;
    const double span = picture_.to_m - picture_.from_m;
    const double step = picture_.alongTicks.empty() ? niceStep(span, steps, picture_.display) : span / steps;
    const double from = selected_m_.value_or(picture_.from_m);
    std::optional<double> to;
    switch (event->key()) {
        case Qt::Key_Left:
            to = selected_m_ ? from - step : from;
            break;
        case Qt::Key_Right:
            to = selected_m_ ? from + step : from;
            break;
        case Qt::Key_Home:
            to = picture_.from_m;
            break;
        case Qt::Key_End:
            to = picture_.to_m;
            break;
        default:
            return QWidget::keyPressEvent(event);
    }
    emit placeSelected(std::clamp(*to, picture_.from_m, picture_.to_m));
}

}  // namespace fayline::app
