// A panel on the screen that is shown what becomes of its own changes.
#pragma once

#include <QTest>

#include "app/panels/panel.hpp"
#include "tests/app/shown_piece.hpp"

namespace fayline::app {

constexpr int narrowest = 340;
constexpr int widest = 420;

template <typename P>
void followWith(Taken& taken, P* panel) {
    taken.follow(static_cast<Panel*>(panel), [panel](const Shown& shown) { panel->show(shown); });
}

inline void open(QWidget* window, int width = narrowest) {
    window->resize(width, 1400);
    window->QWidget::show();
    window->activateWindow();
    QVERIFY(QTest::qWaitForWindowActive(window));
}

}  // namespace fayline::app
