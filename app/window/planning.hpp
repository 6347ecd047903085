// What is shown of the boat, and how it comes about: follows the document, asks the planner for the piece on the table
// and then, while nobody waits, for the marks of the others. One Shown at a time holds for all views.
#pragma once

#include <QDeadlineTimer>
#include <QTimer>
#include <map>
#include <vector>

#include "app/look/shown.hpp"
#include "app/window/document.hpp"
#include "app/window/piece_marks.hpp"
#include "app/window/planner.hpp"
#include "core/plan/shop.hpp"

namespace fayline::app {

struct PlanningTimes {
    int restsAfter_ms = 200;  // without a change the hand rests: studies begin, then the marks of the other pieces
    int awaits_ms = 33;       // two frames: a plan that comes by then is shown together with its piece
    int oldAfter_ms = 100;    // a plan of an earlier state is shown as out of date
    int toldAfter_ms = 500;   // what is under way for longer is told
};

class Planning : public QObject {
    Q_OBJECT
public:
    // Follows `document`, which outlives it.
    explicit Planning(const Document& document, const PlanningTimes& times = {}, PlanningMethods methods = {});

    const Shown& shown() const { return shown_; }
    const plan::Shop& shop() const { return shop_; }    // of the boat as it was last planned
    bool isAnswered() const { return asked_.empty(); }  // the plan, or why there is none, is of the piece as it stands
    bool isAwaited() const { return awaited_.isActive(); }  // the piece is about to be shown together with its plan
    std::vector<PieceMark> marks() const;                   // of the boat's pieces, in their order

    void show();       // to all views, with the document's shed as it is now
    void stop();       // gives up the studies and marks under way; the views say so
    void calculate();  // begins them again; so does any change

signals:
    void shownChanged();
    void marksChanged();
    void underWayChanged(const QString& what);  // empty: nothing that takes long
    void failed(const QString& why);            // a study; the plan stays, with the studies that came

private:
    void leavePiece();
    void replan();
    void answered(quint64 request);
    void growOld();
    void takePlan(quint64 request, const std::shared_ptr<const plan::Plan>& plan);
    void takeRefusal(quint64 request, const QString& path, const QString& why);
    void takeStudied(quint64 request, const std::shared_ptr<const plan::Plan>& plan);
    void takeFailure(quint64 request, const QString& why);
    void askNextMark();
    void takeMark(quint64 request, const PieceMark& mark);
    std::optional<PieceMark> markOfShown() const;  // none: not answered yet, or not wholly
    QString underWay() const;
    void tellUnderWay();

    const Document& document_;
    Planner planner_;
    plan::Shop shop_;
    Shown shown_;
    quint64 firstOfPiece_ = 0;                 // the first request for this piece; older answers are of another
    quint64 last_ = 0;                         // the newest request for it
    std::map<quint64, QDeadlineTimer> asked_;  // those without an answer, and when what is older than they is old
    bool finished_ = true;                     // nothing more comes of the newest
    PieceMarks marks_;
    std::optional<std::pair<quint64, model::Piece>> askedMark_;  // the request under way
    QString told_;                                               // of what is under way
    int oldAfter_ms_;
    QTimer awaited_;
    QTimer old_;
    QTimer tells_;
};

}  // namespace fayline::app
