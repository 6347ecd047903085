// Where a number comes from, opened beside it and closed by Escape or a click elsewhere.
#pragma once

#include <QPoint>
#include <QString>

class QWidget;

namespace fayline::app {

void openSourceNote(QWidget* beside, const QPoint& globalPlace, const QString& text);

}  // namespace fayline::app
