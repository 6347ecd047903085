#include "app/panels/panel_scroll.hpp"

#include <QCoreApplication>
#include <QWheelEvent>

namespace fayline::app {

PanelScroll::PanelScroll(QWidget* parent) : QScrollArea(parent) {
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    // Parts come and go, editors of cells among them; the wheel is taken before any of them has it.
    QCoreApplication::instance()->installEventFilter(this);
}

bool PanelScroll::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::Wheel && watched->isWidgetType() && widget() && watched != widget() &&
        widget()->isAncestorOf(static_cast<QWidget*>(watched))) {
        wheelEvent(static_cast<QWheelEvent*>(event));
        event->accept();  // nobody around has it a second time
        return true;
    }
    return QScrollArea::eventFilter(watched, event);
}

void bringIntoSight(const QWidget* part, const QRect& place) {
    for (QWidget* around = part->parentWidget(); around; around = around->parentWidget()) {
        auto* area = qobject_cast<QScrollArea*>(around);
        if (!area || !area->widget()) continue;
        const QPoint middle = part->mapTo(area->widget(), place.center());
        return area->ensureVisible(middle.x(), middle.y(), 0, place.height() / 2 + 1);
    }
}

}  // namespace fayline::app
