// The line at the foot of a section that says whether the piece has what the user's shed has, with buttons to use the
// shed's or to keep the piece's there.
#pragma once

#include <QWidget>

#include "app/look/change.hpp"
#include "app/look/shown.hpp"
#include "core/model/shed.hpp"

class QLabel;
class QPushButton;

namespace fayline::app {

QString shedPartName(model::ShedPart part);  // "Tools at hand"
QString shedPartWord(model::ShedPart part);  // as objects are named for it: "Tools"

// Hidden while there is no piece.
class ShedLine : public QWidget {
    Q_OBJECT
public:
    ShedLine(model::ShedPart part, QWidget* parent);
    void show(const std::shared_ptr<const Shown>& shown);

signals:
    void changeAsked(const Change& change);
    void keepAsked(model::ShedPart part);

private:
    model::ShedPart part_;
    QLabel* words_;
    QPushButton* use_;
    QPushButton* keep_;
    std::shared_ptr<const Shown> shown_;
};

}  // namespace fayline::app
