// What is worst about each piece of the boat, also of those that are not on the table: their plans are made one after
// the other in the background while the hand rests.
#pragma once

#include <QObject>
#include <QString>
#include <QTimer>
#include <optional>
#include <vector>

#include "app/window/planner.hpp"
#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::app {

// Nothing worst: the plan has no finding, or there is none yet.
struct PieceMark {
    std::optional<plan::Severity> worst;
    QString why;  // the first finding's sentence, or why the piece cannot be planned
    bool operator==(const PieceMark&) const = default;
};

PieceMark markOf(const plan::Plan& plan);
PieceMark markOfRefusal(const QString& why);  // a stop

class PieceMarks : public QObject {
    Q_OBJECT
public:
    explicit PieceMarks(QObject* parent = nullptr, int rest_ms = 333);

    // The boat as it stands, at every change of it. Planning begins when none has come for `rest_ms`; the one plan
    // under way then is the most that a new change meets. `current` is left out: others plan that one.
    void follow(const model::Boat& boat, int current);
    bool isWorking() const { return rest_.isActive() || asked_ != 0; }  // the rest before it counts

    // The mark of a piece that was planned elsewhere, as it stood then.
    void know(const model::Piece& piece, const PieceMark& mark);

    // What is known of `piece` as it stands; none: not planned yet.
    PieceMark of(const model::Piece& piece) const;

signals:
    void marksChanged();

private:
    struct Known {
        model::Piece piece;
        PieceMark mark;
    };
    const Known* find(const model::Piece& piece) const;
    void planNext();
    void take(quint64 request, const PieceMark& mark);

    Planner planner_;
    QTimer rest_{this};
    model::Boat boat_;
    int current_ = -1;
    std::vector<Known> known_;  // of pieces of boat_ alone, under its display and woods
    quint64 asked_ = 0;         // the request whose answer is wanted; 0: none
    model::Piece askedPiece_;
};

}  // namespace fayline::app
