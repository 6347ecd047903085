#include "app/panels/plot.hpp"

#include <QEvent>
#include <QPainter>
#include <algorithm>

#include "app/look/theme.hpp"

namespace fayline::app {

Plot::Plot(QWidget* parent) : QWidget(parent) {
    setAttribute(Qt::WA_OpaquePaintEvent);
    setMouseTracking(true);
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void Plot::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) {
        layOut();
        updateGeometry();
    }
    update();
}

QFont Plot::smallFigures() {
    return tabularFont(textFont(TextSize::small));
}

void Plot::drawFocus(QPainter& painter) const {
    if (!hasFocus()) return;
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(theme().accent, 1));
    painter.drawRect(QRectF(0.5, 0.5, width() - 1.0, height() - 1.0));
}

std::optional<double> Plot::leftOf(double place, double wide, double& free) const {
    const double left = std::clamp(place - wide / 2, 0.0, std::max(0.0, width() - wide));
    if (left < free) return std::nullopt;
    free = left + wide + gridStep / 2.0;
    return left;
}

}  // namespace fayline::app
