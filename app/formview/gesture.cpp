#include "app/formview/gesture.hpp"

#include <QLineF>
#include <cmath>
#include <utility>

#include "app/formview/edits.hpp"

namespace fayline::app {

namespace {

constexpr double still_px = 4;

class DragPoint : public Gesture {
public:
    DragPoint(const QPointF& begin, const Shown& shown, const Transform& transform, int point, int number, Reach reach)
        : Gesture(begin),
          shown_(shown),
          transform_(transform),
          point_(point),
          merges_(QStringLiteral("move point %1 %2").arg(point).arg(number)),
          reach_(std::move(reach)) {}

private:
    void doMove(const QPointF& to, Qt::KeyboardModifiers held) override {
        const boat::Point& was = shown_.piece.line.points[point_];
        const QPointF moved = to - begin();
        line::Xy place{was.x_m + moved.x() / transform_.pixelsPerMetre,
                       was.y_m - moved.y() / transform_.pixelsPerMetre};
        if (held & Qt::ShiftModifier) {
            if (std::abs(moved.x()) >= std::abs(moved.y())) {
                place.y_m = was.y_m;
            } else {
                place.x_m = was.x_m;
            }
        }
        const bool free = held & Qt::AltModifier;
        reach_.ask(edits::movePoint(shown_, shown_.piece, point_, place, free, merges_));
    }
    void doFinish() override { reach_.ended(); }
    void doAbort() override {
        const boat::Point& was = shown_.piece.line.points[point_];
        reach_.ask(edits::movePoint(shown_, shown_.piece, point_, {was.x_m, was.y_m}, true, merges_));
        reach_.ended();
    }

    const Shown shown_;  // as it was when the drag began: every move starts from there
    const Transform transform_;
    const int point_;
    const QString merges_;
    const Reach reach_;
};

class DragStation : public Gesture {
public:
    DragStation(const QPointF& begin, const Shown& shown, const Drawing& drawing, const Transform& transform,
                int station, int number, Reach reach)
        : Gesture(begin),
          shown_(shown),
          drawing_(drawing),
          transform_(transform),
          station_(station),
          grasped_m_(placeUnder(begin)),
          merges_(QStringLiteral("move station %1 %2").arg(station).arg(number)),
          reach_(std::move(reach)) {}

private:
    double placeUnder(const QPointF& pixel) const {
        return nearestPlace(drawing_, shown_.plan->line.fair.line, transform_.toDrawing(pixel));
    }
    void doMove(const QPointF& to, Qt::KeyboardModifiers) override {
        const double at_m = shown_.piece.holding.stations[station_].at_m + placeUnder(to) - grasped_m_;
        reach_.ask(edits::moveStation(shown_, shown_.piece, station_, at_m, merges_));
    }
    void doFinish() override { reach_.ended(); }
    void doAbort() override {
        Change back = edits::moveStation(shown_, shown_.piece, station_, 0, merges_);
        back.after = shown_.piece;
        reach_.ask(back);
        reach_.ended();
    }

    const Shown shown_;
    const Drawing drawing_;
    const Transform transform_;
    const int station_;
    const double grasped_m_;
    const QString merges_;
    const Reach reach_;
};

class Pan : public Gesture {
public:
    Pan(const QPointF& begin, const Transform& transform, Reach reach)
        : Gesture(begin), transform_(transform), reach_(std::move(reach)) {}

private:
    void doMove(const QPointF& to, Qt::KeyboardModifiers) override { reach_.look(transform_.movedBy(to - begin())); }
    void doAbort() override { reach_.look(transform_); }

    const Transform transform_;
    const Reach reach_;
};

}  // namespace

void Gesture::move(const QPointF& to, Qt::KeyboardModifiers held) {
    if (!underWay_ && QLineF(begin_, to).length() < still_px) return;
    underWay_ = true;
    doMove(to, held);
}

void Gesture::finish() {
    if (underWay_) doFinish();
}

void Gesture::abort() {
    if (underWay_) doAbort();
}

std::unique_ptr<Gesture> dragPoint(const QPointF& begin, const Shown& shown, const Transform& transform, int point,
                                   int number, const Reach& reach) {
    return std::make_unique<DragPoint>(begin, shown, transform, point, number, reach);
}

std::unique_ptr<Gesture> dragStation(const QPointF& begin, const Shown& shown, const Drawing& drawing,
                                     const Transform& transform, int station, int number, const Reach& reach) {
    return std::make_unique<DragStation>(begin, shown, drawing, transform, station, number, reach);
}

std::unique_ptr<Gesture> pan(const QPointF& begin, const Transform& transform, const Reach& reach) {
    return std::make_unique<Pan>(begin, transform, reach);
}

}  // namespace fayline::app
