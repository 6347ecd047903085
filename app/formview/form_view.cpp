#include "app/formview/form_view.hpp"

#include <QContextMenuEvent>
#include <QHelpEvent>
#include <QMenu>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QPainter>
#include <QToolTip>
#include <QWheelEvent>
#include <cmath>

#include "app/formview/form_view_state.hpp"
#include "app/look/text_shape.hpp"
#include "app/look/theme.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

namespace {

constexpr double zoomStep = 1.25;  // of a key or a notch of the wheel

}  // namespace

FormView::FormView(QWidget* parent) : QWidget(parent), state_(std::make_unique<State>(this)) {
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setAttribute(Qt::WA_OpaquePaintEvent);
    setAccessibleName(tr("Drawing of the piece"));
    state_->fonts = fontsFrom(tabularFont(font()));
    connect(&state_->waitingTimer, &QTimer::timeout, this, [this] {
        state_->waiting = true;
        state_->stale();
    });
    connect(&state_->nudgeTimer, &QTimer::timeout, this, [this] { state_->endNudge(); });
    state_->say();
}

FormView::~FormView() = default;

void FormView::show(const Shown& shown) {
    const bool otherPiece = !shown.samePieceAs(state_->shown);
    const bool firstPlan = !otherPiece && shown.plan && !state_->shown.plan;
    const bool samePlan = shown.plan && shown.plan == state_->shown.plan;
    const bool sameSide = shown.piece.line.stripsOn == state_->shown.piece.line.stripsOn;
    state_->shown = shown;
    // While the plan is out of date the strips stay on the side that it was made for.
    if (!shown.plan) {
        state_->drawing = {};
    } else if (!samePlan || (!sameSide && !shown.outOfDate)) {
        state_->drawing = drawingOf(*shown.plan, shown.piece.line.stripsOn);
    }

    if (otherPiece) {
        state_->gesture.reset();
        state_->nudging = false;
        state_->nudgeTimer.stop();
        state_->choice.point = state_->choice.station = state_->choice.block = state_->choice.trim = -1;
        state_->choice.foot = false;
        state_->choice.place_m.reset();
        state_->hovered_m.reset();
        state_->follows = true;
    }
    if (state_->choice.point >= math::countOf(shown.piece.line.points)) state_->choice.point = -1;
    if (state_->choice.station >= math::countOf(shown.piece.holding.stations)) state_->choice.station = -1;
    if (state_->choice.station < 0 || !footOf(shown, state_->choice.station)) state_->choice.foot = false;
    if (state_->choice.block >= math::countOf(shown.piece.holding.hull.blocks)) state_->choice.block = -1;
    const bool beingPlanned = shown.pieceIndex >= 0 && (shown.outOfDate || !shown.plan) && shown.reason.isEmpty();
    if (!beingPlanned) {
        state_->waiting = false;
        state_->waitingTimer.stop();
    } else if (!state_->waitingTimer.isActive() && !state_->waiting) {
        state_->waitingTimer.start();
    }

    const bool mayFit = state_->follows && !state_->gesture && !state_->nudging;
    const bool wanted = state_->fitsNext && shown.plan && !samePlan && !shown.outOfDate;
    if (mayFit && (otherPiece || firstPlan || wanted || !state_->keptInView())) {
        state_->fitsNext = false;
        state_->fit();
    } else {
        state_->stale();
    }
    state_->say();
}

void FormView::lightPlace(std::optional<double> at_m) {
    if (state_->lit_m == at_m) return;
    state_->lit_m = at_m;
    update();
}

void FormView::selectPlace(std::optional<double> at_m) {
    if (state_->choice.place_m == at_m) return;
    state_->choice.place_m = at_m;
    update();
}

void FormView::selectStrip(int place) {
    if (state_->choice.strip == place) return;
    state_->choice.strip = place;
    update();
}

void FormView::showMoment(const std::optional<PointedMoment>& moment) {
    if (state_->moment == moment) return;
    state_->moment = moment;
    update();
}

void FormView::selectPoint(int index) {
    if (index < 0 || index >= math::countOf(state_->shown.piece.line.points)) {
        if (state_->choice.point >= 0) state_->chooseNothing();
        return;
    }
    state_->choosePoint(index);
}

void FormView::setBendShown(bool shown) {
    state_->choice.bend = shown;
    state_->stale();
}

void FormView::setMisfitMagnified(bool magnified) {
    state_->choice.misfitMagnified = magnified;
    state_->stale();
}

void FormView::setForcesShown(bool shown) {
    state_->choice.forces = shown;
    state_->stale();
}

void FormView::setGapsMagnified(bool magnified) {
    state_->choice.gapsMagnified = magnified;
    state_->stale();
}

void FormView::setPressureShown(bool shown) {
    state_->choice.pressure = shown;
    state_->stale();
}

void FormView::fitToNextPlan() {
    state_->follows = state_->fitsNext = true;
}

void FormView::fitToWindow() {
    state_->follows = true;
    state_->fit();
    if (state_->cursor) state_->hover(state_->cursor);
}

void FormView::zoomBy(double factor) {
    state_->follows = false;
    state_->transform = state_->transform.zoomedAbout(QRectF(rect()).center(), factor);
    state_->stale();
    if (state_->cursor) state_->hover(state_->cursor);  // another place lies under it now
}

const Transform& FormView::transform() const {
    return state_->transform;
}
const std::vector<Text>& FormView::texts() const {
    return state_->freshSheet().texts;
}
QRectF FormView::reading() const {
    return state_->reading;
}
std::vector<Placed> FormView::placed() const {
    std::vector<Placed> all = placedOf(state_->freshSheet(), state_->drawing, state_->transform);
    if (!state_->reading.isNull()) {
        all.push_back({Placed::Kind::reading, {}, QPolygonF(state_->reading).sliced(0, 4)});
    }
    return all;
}
int FormView::selectedPoint() const {
    return state_->choice.point;
}
int FormView::selectedStation() const {
    return state_->choice.station;
}
QSize FormView::sizeHint() const {
    return {720, 480};
}
QSize FormView::minimumSizeHint() const {
    return {240, 160};
}

void FormView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    state_->paint(painter);
    if (!hasFocus()) return;
    painter.setPen(QPen(theme().accent, 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
}

void FormView::resizeEvent(QResizeEvent*) {
    if (state_->follows) {
        state_->fit();
    } else {
        state_->stale();
    }
}

void FormView::changeEvent(QEvent* event) {
    if (event->type() == QEvent::FontChange || event->type() == QEvent::ApplicationFontChange) {
        state_->fonts = fontsFrom(tabularFont(font()));
    }
    state_->stale();
    QWidget::changeEvent(event);
}

bool FormView::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip) {
        // What a mark has to say stands in the reading beside the pointer: here only what the band cuts short is
        // told, and a point before there is a plan.
        const auto* help = static_cast<QHelpEvent*>(event);
        const bool onBand = state_->freshSheet().band.contains(help->pos());
        const QString words = onBand              ? state_->shown.reason
                              : state_->hasPlan() ? QString()
                                                  : state_->wordsAt(help->pos());
        if (words.isEmpty()) {
            QToolTip::hideText();
            event->ignore();
        } else {
            QToolTip::showText(help->globalPos(), wrapped(words), this);
        }
        return true;
    }
    if (event->type() == QEvent::NativeGesture) {
        const auto* pinch = static_cast<QNativeGestureEvent*>(event);
        if (pinch->gestureType() == Qt::ZoomNativeGesture) {
            state_->follows = false;
            state_->transform = state_->transform.zoomedAbout(pinch->position(), 1 + pinch->value());
            state_->stale();
            return true;
        }
    }
    // The pointer may be gone without leaving: another window or page came.
    if (event->type() == QEvent::Hide || event->type() == QEvent::WindowDeactivate) state_->hover(std::nullopt);
    // Escape gives up a drag before anything else in the window takes the key.
    if (event->type() == QEvent::ShortcutOverride && state_->gesture &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

void FormView::mousePressEvent(QMouseEvent* event) {
    if (state_->gesture || state_->shown.pieceIndex < 0) return;
    state_->endNudge();
    const QPointF at = event->position();
    if (event->button() == Qt::MiddleButton) {
        state_->gesture = pan(at, state_->transform, state_->reach());
        return;
    }
    if (event->button() != Qt::LeftButton) return;
    const Hit hit = state_->hitAt(at);
    if (hit.draggable()) state_->choose(hit);
    state_->gesture = state_->dragOf(hit, at);
}

void FormView::mouseMoveEvent(QMouseEvent* event) {
    const QPointF at = event->position();
    if (state_->gesture && event->buttons() == Qt::NoButton) {  // let go where no one told us
        const auto done = std::move(state_->gesture);
        done->finish();
        unsetCursor();
    }
    if (state_->gesture) {
        state_->gesture->move(at, event->modifiers());
        if (state_->gesture && state_->gesture->underWay()) setCursor(Qt::ClosedHandCursor);
    } else {
        const Hit hit = state_->hitAt(at);
        setCursor(hit.draggable() ? Qt::OpenHandCursor : Qt::ArrowCursor);
    }
    state_->hover(at);
}

void FormView::mouseReleaseEvent(QMouseEvent* event) {
    if (event->buttons() & (Qt::LeftButton | Qt::MiddleButton)) return;  // another button of two
    if (!state_->gesture) return;
    const auto done = std::move(state_->gesture);
    const bool moved = done->underWay();
    done->finish();
    unsetCursor();
    update();
    if (moved || event->button() != Qt::LeftButton) return;

    const QPointF at = event->position();
    const Hit hit = state_->hitAt(at);
    if (hit.kind == Hit::Kind::nothing) {
        state_->chooseNothing();
        if (state_->choice.strip) {
            selectStrip(0);
            emit stripSelected(0);
        }
        if (state_->choice.place_m) {
            selectPlace(std::nullopt);
            emit placeSelected(std::nullopt);
        }
        return;
    }
    if (!state_->hasPlan()) return;
    if (hit.kind == Hit::Kind::stack || hit.kind == Hit::Kind::finding) state_->chooseNothing();
    if (hit.kind == Hit::Kind::stack) {
        const int strip = stripAt(state_->drawing, state_->transform, at);
        selectStrip(strip);
        emit stripSelected(strip);
    }
    double place_m = state_->placeUnder(at);
    if (hit.kind == Hit::Kind::finding) place_m = state_->freshSheet().findings[hit.index].at_m;
    if (hit.kind == Hit::Kind::station) place_m = state_->shown.piece.holding.stations[hit.index].at_m;
    if (hit.kind == Hit::Kind::trim) place_m = hit.index == 0 ? 0 : state_->drawing.length_m;
    if (hit.kind == Hit::Kind::foot || hit.kind == Hit::Kind::block) return;  // not on the line
    selectPlace(place_m);
    emit placeSelected(place_m);
}

void FormView::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton || !state_->hasPlan() || state_->shown.outOfDate) return;
    const QPointF at = event->position();
    if (state_->hitAt(at).kind != Hit::Kind::stack) return;
    state_->gesture.reset();
    const double place_m = state_->placeUnder(at);
    if (place_m <= 0 || place_m >= state_->drawing.length_m) return;
    emit changeAsked(edits::addPoint(state_->shown, place_m));
}

void FormView::wheelEvent(QWheelEvent* event) {
    if (state_->gesture || state_->shown.pieceIndex < 0) return;
    constexpr double notch = 120;
    const QPoint turned = event->angleDelta();
    state_->follows = false;
    if (event->modifiers() & Qt::ShiftModifier || turned.y() == 0) {  // along instead of nearer
        const double along = turned.y() == 0 ? turned.x() : turned.y();
        state_->transform = state_->transform.movedBy(QPointF(along / 2.0, 0));
    } else {
        state_->transform = state_->transform.zoomedAbout(event->position(), std::pow(zoomStep, turned.y() / notch));
    }
    state_->stale();
    state_->hover(event->position());
    event->accept();
}

void FormView::leaveEvent(QEvent*) {
    state_->hover(std::nullopt);
}

void FormView::focusOutEvent(QFocusEvent* event) {
    state_->endNudge();
    QWidget::focusOutEvent(event);
    update();
}

void FormView::keyPressEvent(QKeyEvent* event) {
    const bool far = event->modifiers() & Qt::ShiftModifier;
    if (state_->gesture) {
        if (event->key() == Qt::Key_Escape) state_->abortGesture();
        return;  // one thing at a time
    }
    if (state_->shown.pieceIndex < 0) return QWidget::keyPressEvent(event);
    switch (event->key()) {
        case Qt::Key_Left:
            return state_->nudge(-1, 0, far);
        case Qt::Key_Right:
            return state_->nudge(1, 0, far);
        case Qt::Key_Up:
            return state_->nudge(0, 1, far);
        case Qt::Key_Down:
            return state_->nudge(0, -1, far);
        case Qt::Key_Delete:
        case Qt::Key_Backspace:
            return state_->removeChosen();
        case Qt::Key_N:
        case Qt::Key_P:
            state_->chooseNext(event->key() == Qt::Key_N);
            return;
        case Qt::Key_F:
            return fitToWindow();
        case Qt::Key_Plus:
        case Qt::Key_Equal:
            return zoomBy(zoomStep);
        case Qt::Key_Minus:
            return zoomBy(1 / zoomStep);
        case Qt::Key_Escape:
            if (state_->choice.nothing()) break;
            return state_->chooseNothing();
        default:
            break;
    }
    QWidget::keyPressEvent(event);
}

void FormView::contextMenuEvent(QContextMenuEvent* event) {
    if (state_->gesture || state_->shown.pieceIndex < 0) return;
    state_->endNudge();
    QPointF at = event->pos();
    if (event->reason() == QContextMenuEvent::Keyboard) {  // at what is chosen
        for (const PointMark& mark : state_->freshSheet().points) {
            if (mark.index == state_->choice.point) at = mark.at;
        }
        for (const StationMark& mark : state_->freshSheet().stations) {
            if (mark.index == state_->choice.station) at = mark.frame.base + mark.frame.outwards * mark.shape.reach;
        }
        for (const BlockMark& mark : state_->freshSheet().hull.blocks) {
            if (mark.index == state_->choice.block) at = mark.body.center();
        }
    }
    const Hit hit = state_->hitAt(at);
    auto* menu = new QMenu(this);
    menu->setAttribute(Qt::WA_DeleteOnClose);
    const auto offer = [&](const QString& words, bool possible, const std::function<Change()>& change) {
        QString shown = words;  // an ampersand in a label is no underline
        QAction* action = menu->addAction(shown.replace(QLatin1Char('&'), QStringLiteral("&&")));
        action->setEnabled(possible);
        connect(action, &QAction::triggered, this, [this, change] { emit changeAsked(change()); });
        return action;
    };
    if (hit.kind == Hit::Kind::point) {
        state_->choosePoint(hit.index);
        const Shown shown = state_->shown;
        const QString name = pointName(shown.piece, hit.index);
        const bool enough = edits::canRemovePoint(shown.piece);
        const bool mustPass = shown.piece.line.points[hit.index].mustPass;
        QAction* pass = offer(tr("Fix the line at %1").arg(name), true,
                              [shown, hit, mustPass] { return edits::setMustPass(shown, hit.index, !mustPass); });
        pass->setCheckable(true);
        pass->setChecked(mustPass);
        offer(enough ? tr("Remove %1").arg(name) : tr("Remove %1 (a line needs three)").arg(name), enough,
              [shown, hit] { return edits::removePoint(shown, hit.index); });
    } else if (hit.kind == Hit::Kind::block) {
        state_->choose(hit);
        const Shown shown = state_->shown;
        const bool may = edits::canRemoveBlock(shown.piece);
        const QString name = tr("Remove block %1").arg(hit.index + 1);
        offer(may ? name : name + tr(" (a hull with weight needs one)"), may,
              [shown, hit] { return edits::removeBlock(shown, hit.index); });
    } else if (hit.kind == Hit::Kind::station || hit.kind == Hit::Kind::foot) {
        state_->choose(hit);
        const Shown shown = state_->shown;
        offer(tr("Remove %1").arg(stationName(shown, hit.index)), true,
              [shown, hit] { return edits::removeStation(shown, hit.index); });
    }
    if (state_->hasPlan()) {
        if (!menu->isEmpty()) menu->addSeparator();
        const Shown shown = state_->shown;
        const double place_m = state_->placeUnder(at);
        const bool onLine = place_m > 0 && place_m < state_->drawing.length_m && !shown.outOfDate;
        offer(tr("Add a point here"), onLine, [shown, place_m] { return edits::addPoint(shown, place_m); });
        offer(tr("Add a station here"), true, [shown, place_m] { return edits::addStation(shown, place_m); });
    }
    menu->addSeparator();
    connect(menu->addAction(tr("Fit to the window")), &QAction::triggered, this, [this] { fitToWindow(); });
    menu->popup(mapToGlobal(at.toPoint()));
}

}  // namespace fayline::app
