// The boat's pieces: which is on the table, and adding, copying, renaming, removing, moving them.
#pragma once

#include <QWidget>

#include "app/window/piece_marks.hpp"
#include "core/model/boat.hpp"

class QAction;
class QListWidget;

namespace fayline::app {

class PiecesList : public QWidget {
    Q_OBJECT
public:
    // The buttons under the list show `actions`, which the window owns and keeps in its menus as well.
    PiecesList(const QList<QAction*>& actions, QWidget* parent = nullptr);

    // `marks` are those of the boat's pieces, in their order.
    void show(const model::Boat& boat, int current, const std::vector<PieceMark>& marks);
    void editName(int index);  // as by a double click

signals:
    void pieceChosen(int index);
    void renameAsked(int index, const QString& name);
    void moveAsked(int from, int to);

private:
    QListWidget* list_;
    std::vector<PieceMark> marks_;  // as they are shown
    bool filling_ = false;
};

}  // namespace fayline::app
