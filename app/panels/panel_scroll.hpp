// Scrolls what is higher than its room: the wheel always scrolls it, whatever lies under the pointer.
//
// A box of choices, a number or a table inside never sees the wheel, so nothing is changed in passing and no bar within
// moves. A list that has dropped down is a window of its own and scrolls itself.
#pragma once

#include <QScrollArea>

namespace fayline::app {

class PanelScroll : public QScrollArea {
    Q_OBJECT
public:
    explicit PanelScroll(QWidget* parent = nullptr);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
};

// Scrolls the area around `part` as far as it takes to see `place` in it; without such an area nothing.
void bringIntoSight(const QWidget* part, const QRect& place);

}  // namespace fayline::app
