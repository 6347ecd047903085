// What the live drawing keeps while it stands there: all of it can be thrown away. See form_view.hpp.
#pragma once

#include <QPixmap>
#include <QTimer>
#include <memory>
#include <optional>

#include "app/formview/edits.hpp"
#include "app/formview/form_view.hpp"
#include "app/formview/gesture.hpp"
#include "app/formview/hits.hpp"
#include "app/formview/paint.hpp"
#include "app/formview/reading_box.hpp"

namespace fayline::app {

struct FormView::State {
    explicit State(FormView* owner);

    FormView* view;
    Shown shown;
    Drawing drawing;
    Transform transform;
    Sheet sheet;
    ViewChoice choice;
    Fonts fonts;
    bool sheetStale = true;
    bool pictureStale = true;
    QPixmap picture;        // everything but what is pointed at
    bool follows = true;    // the drawing is kept fitted until a hand zooms or pans
    bool fitsNext = false;  // to the plan that comes next
    bool waiting = false;   // out of date for longer than an eye overlooks
    QTimer waitingTimer;
    std::optional<double> hovered_m;  // by the mouse here
    std::optional<double> lit_m;      // from outside
    std::optional<PointedMoment> moment;
    std::optional<QPointF> cursor;
    QRectF reading;
    std::optional<Occupied> room;  // where a reading may stand on the present sheet; made when one is wanted
    std::unique_ptr<Gesture> gesture;
    int gestureNumber = 0;
    QTimer nudgeTimer;  // a row of nudges is one change until the hand rests
    bool nudging = false;
    Shown nudgedFrom;  // a trim line's nudges all start from here, since a plan of the last one may not be there yet
    int trimNudges = 0;

    QSizeF size() const { return view->size(); }
    bool hasPlan() const { return shown.pieceIndex >= 0 && shown.plan && !drawing.places.empty(); }
    void stale();  // something but what is pointed at has changed
    const Sheet& freshSheet();
    void fit();
    bool keptInView() const;
    Reach reach();

    Hit hitAt(const QPointF& pixel);
    double placeUnder(const QPointF& pixel) const;
    void hover(std::optional<QPointF> pixel);

    Hit chosen() const;           // as what it would be hit
    void choose(const Hit& hit);  // a point, station, foot, block or trim line; any other: nothing
    void choosePoint(int index);
    void chooseNothing();
    void say();  // what is chosen, to the status line and to a screen reader
    QString chosenWords() const;
    std::vector<Hit> choosable() const;
    void chooseNext(bool next);  // or the last; behind the end of the row nothing
    void nudge(int right, int up, bool far);
    std::unique_ptr<Gesture> dragOf(const Hit& hit, const QPointF& at);
    void endNudge();
    void removeChosen();
    void abortGesture();
    QString wordsAt(const QPointF& pixel);  // of the mark there; empty: none
    QStringList readingLines(double at_m);
    void paintPointedAt(QPainter& painter);

    void paint(QPainter& painter);
};

}  // namespace fayline::app
