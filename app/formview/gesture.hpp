// What a hand does between pressing and letting go: an object that can be moved, finished, aborted.
#pragma once

#include <QPointF>
#include <functional>
#include <memory>

#include "app/formview/drawing.hpp"
#include "app/look/change.hpp"
#include "app/look/shown.hpp"

namespace fayline::app {

// What a gesture may bring about.
struct Reach {
    std::function<void(const Change&)> ask;
    std::function<void()> ended;                 // the merged change is complete
    std::function<void(const Transform&)> look;  // from elsewhere or nearer
};

// Begins where the button went down and does nothing until the mouse has left that place by a few pixels.
class Gesture {
public:
    explicit Gesture(const QPointF& begin) : begin_(begin) {}
    virtual ~Gesture() = default;
    Gesture(const Gesture&) = delete;
    Gesture& operator=(const Gesture&) = delete;

    void move(const QPointF& to, Qt::KeyboardModifiers held);
    void finish();
    void abort();  // as if it had not begun
    bool underWay() const { return underWay_; }

protected:
    const QPointF& begin() const { return begin_; }

private:
    virtual void doMove(const QPointF& to, Qt::KeyboardModifiers held) = 0;
    virtual void doFinish() {}
    virtual void doAbort() {}

    QPointF begin_;
    bool underWay_ = false;
};

// `number` keeps the changes of one gesture together and apart from those of another.
std::unique_ptr<Gesture> dragPoint(const QPointF& begin, const Shown& shown, const Transform& transform, int point,
                                   int number, const Reach& reach);
// Along the line, extra length included, as it was when the drag began: by as much as the pointer moves along it where
// the station is.
std::unique_ptr<Gesture> dragStation(const QPointF& begin, const Shown& shown, const Drawing& drawing,
                                     const Transform& transform, int station, int number, const Reach& reach);
// The foot of a prop or jack, from `foot`; with shift level or upright.
std::unique_ptr<Gesture> dragFoot(const QPointF& begin, const Shown& shown, const Transform& transform, int station,
                                  const line::Xy& foot, int number, const Reach& reach);
// A block under the hull, level.
std::unique_ptr<Gesture> dragBlock(const QPointF& begin, const Shown& shown, const Transform& transform, int block,
                                   int number, const Reach& reach);
// A trim line (0 at the start, 1 at the end) along the line as it was when the drag began, and the arcs by which that
// runs on.
std::unique_ptr<Gesture> dragTrim(const QPointF& begin, const Shown& shown, const Drawing& drawing,
                                  const Transform& transform, int trim, int number, const Reach& reach);
std::unique_ptr<Gesture> pan(const QPointF& begin, const Transform& transform, const Reach& reach);

}  // namespace fayline::app
