#include "app/formview/gesture.hpp"

#include <QLineF>
#include <algorithm>
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
        const model::Point& was = shown_.piece.line.points[point_];
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
        const model::Point& was = shown_.piece.line.points[point_];
        reach_.ask(edits::movePoint(shown_, shown_.piece, point_, {was.x_m, was.y_m}, true, merges_));
        reach_.ended();
    }

    const Shown shown_;  // as it was when the drag began: every move starts from there
    const Transform transform_;
    const int point_;
    const QString merges_;
    const Reach reach_;
};

// Grasped anywhere, at its balloon as well, far from the line: what counts is how far the pointer goes along the line
// where the station then is, not which place on the line is nearest to the pointer.
class DragStation : public Gesture {
public:
    DragStation(const QPointF& begin, const Shown& shown, const Drawing& drawing, const Transform& transform,
                int station, int number, Reach reach)
        : Gesture(begin),
          shown_(shown),
          drawing_(drawing),
          transform_(transform),
          station_(station),
          at_m_(shown.piece.holding.stations.at(station).at_m),
          pointer_(begin),
          merges_(QStringLiteral("move station %1 %2").arg(station).arg(number)),
          reach_(std::move(reach)) {}

private:
    void doMove(const QPointF& to, Qt::KeyboardModifiers) override {
        // In steps so short that the line is straight over each: the way back then leads to where it came from.
        constexpr double step_px = 1;
        const QPointF moved = to - pointer_;
        const int steps = std::max(1, static_cast<int>(std::ceil(QLineF(pointer_, to).length() / step_px)));
        for (int i = 0; i < steps; ++i) {
            const double heading_rad = placeAt(drawing_, at_m_).heading_rad;
            const QPointF along(std::cos(heading_rad), -std::sin(heading_rad));
            at_m_ += QPointF::dotProduct(moved, along) / steps / transform_.pixelsPerMetre;
        }
        pointer_ = to;
        double at_m = at_m_;
        if (!drawing_.places.empty()) {
            at_m = std::clamp(at_m, drawing_.places.front().at_m, drawing_.places.back().at_m);
        }
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
    double at_m_;  // may lie beyond the strips, while the pointer does
    QPointF pointer_;
    const QString merges_;
    const Reach reach_;
};

// Something that is moved by a change which follows from where the mouse is.
class DragByChange : public Gesture {
public:
    using ChangeAt = std::function<Change(const QPointF& to, Qt::KeyboardModifiers held)>;

    DragByChange(const QPointF& begin, const model::Piece& before, ChangeAt changeAt, Reach reach)
        : Gesture(begin), before_(before), changeAt_(std::move(changeAt)), reach_(std::move(reach)) {}

private:
    void doMove(const QPointF& to, Qt::KeyboardModifiers held) override { reach_.ask(changeAt_(to, held)); }
    void doFinish() override { reach_.ended(); }
    void doAbort() override {
        Change back = changeAt_(begin(), {});
        back.after = before_;
        reach_.ask(back);
        reach_.ended();
    }

    const model::Piece before_;
    const ChangeAt changeAt_;
    const Reach reach_;
};

// Along the line, beyond what is drawn by the tangent there.
double alongUnder(const Drawing& drawing, const line::Line& line, const line::Xy& place) {
    const double at_m = nearestPlace(drawing, line, place);
    if (drawing.places.empty()) return at_m;
    const bool before = at_m <= drawing.places.front().at_m + 1e-6;
    const bool beyond = at_m >= drawing.places.back().at_m - 1e-6;
    if (!before && !beyond) return at_m;
    const line::Place end = line.at(at_m);
    const double on_m =
        (place.x_m - end.x_m) * std::cos(end.heading_rad) + (place.y_m - end.y_m) * std::sin(end.heading_rad);
    return at_m + (before ? std::min(on_m, 0.0) : std::max(on_m, 0.0));
}

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

std::unique_ptr<Gesture> dragFoot(const QPointF& begin, const Shown& shown, const Transform& transform, int station,
                                  const line::Xy& foot, int number, const Reach& reach) {
    const QString merges = QStringLiteral("move foot %1 %2").arg(station).arg(number);
    const auto changeAt = [=](const QPointF& to, Qt::KeyboardModifiers held) {
        QPointF moved = to - begin;
        if (held & Qt::ShiftModifier) (std::abs(moved.x()) >= std::abs(moved.y()) ? moved.ry() : moved.rx()) = 0;
        const line::Xy place{foot.x_m + moved.x() / transform.pixelsPerMetre,
                             foot.y_m - moved.y() / transform.pixelsPerMetre};
        return edits::moveFoot(shown, shown.piece, station, place, merges);
    };
    return std::make_unique<DragByChange>(begin, shown.piece, changeAt, reach);
}

std::unique_ptr<Gesture> dragBlock(const QPointF& begin, const Shown& shown, const Transform& transform, int block,
                                   int number, const Reach& reach) {
    const QString merges = QStringLiteral("move block %1 %2").arg(block).arg(number);
    const double was_m = shown.piece.holding.hull.blocks.at(block).x_m;
    const auto changeAt = [=](const QPointF& to, Qt::KeyboardModifiers) {
        const double x_m = was_m + (to.x() - begin.x()) / transform.pixelsPerMetre;
        return edits::moveBlock(shown, shown.piece, block, x_m, merges);
    };
    return std::make_unique<DragByChange>(begin, shown.piece, changeAt, reach);
}

std::unique_ptr<Gesture> dragTrim(const QPointF& begin, const Shown& shown, const Drawing& drawing,
                                  const Transform& transform, int trim, int number, const Reach& reach) {
    const QString merges = QStringLiteral("move trim line %1 %2").arg(trim).arg(number);
    const auto which = trim == 0 ? edits::TrimLine::start : edits::TrimLine::end;
    const double was_m = trim == 0 ? 0 : shown.plan->line.fair.line.length();
    const auto under = [=](const QPointF& pixel) {
        return alongUnder(drawing, shown.plan->line.fair.line, transform.toDrawing(pixel));
    };
    const double grasped_m = under(begin);
    const auto changeAt = [=](const QPointF& to, Qt::KeyboardModifiers) {
        return edits::moveTrim(shown, which, was_m + under(to) - grasped_m, merges);
    };
    return std::make_unique<DragByChange>(begin, shown.piece, changeAt, reach);
}

std::unique_ptr<Gesture> pan(const QPointF& begin, const Transform& transform, const Reach& reach) {
    return std::make_unique<Pan>(begin, transform, reach);
}

}  // namespace fayline::app
