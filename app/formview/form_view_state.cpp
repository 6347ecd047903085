#include "app/formview/form_view_state.hpp"

#include <QAccessible>
#include <QAccessibleEvent>
#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/measure/display.hpp"

namespace fayline::app {

namespace {

QString text(const std::string& words) {
    return QString::fromStdString(words);
}

QString written(const boat::Point& point, int axis, measure::LengthNotation notation) {
    if (!point.written[axis].empty()) return text(point.written[axis]);
    return text(measure::writeLength(axis == 0 ? point.x_m : point.y_m, notation));
}

// The stations' indices in their order along the line.
std::vector<int> alongLine(const std::vector<boat::Station>& stations) {
    std::vector<int> order(stations.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return stations[a].at_m < stations[b].at_m; });
    return order;
}

QStringList readingOf(const DrawnPlace& place, const measure::Display& display) {
    constexpr double straight_per_m = 1e-6;
    QStringList lines;
    lines << QStringLiteral("at ") + text(measure::writeLength(place.at_m, display));
    lines << (std::abs(place.curvature_per_m) < straight_per_m
                  ? QStringLiteral("straight")
                  : QStringLiteral("radius ") +
                        text(measure::writeLength(1 / std::abs(place.curvature_per_m), display)));
    lines << QStringLiteral("strain %1, %2 of breaking")
                 .arg(text(measure::writeShare(place.strain)), text(measure::writeShare(place.share)));
    return lines;
}

}  // namespace

FormView::State::State(FormView* owner) : view(owner) {
    constexpr int overlooked_ms = 400;
    constexpr int rest_ms = 700;
    waitingTimer.setSingleShot(true);
    waitingTimer.setInterval(overlooked_ms);
    nudgeTimer.setSingleShot(true);
    nudgeTimer.setInterval(rest_ms);
}

void FormView::State::stale() {
    sheetStale = true;
    pictureStale = true;
    view->update();
}

const Sheet& FormView::State::freshSheet() {
    if (sheetStale) sheet = sheetOf(shown, drawing, transform, size(), choice, fonts, waiting);
    sheetStale = false;
    return sheet;
}

void FormView::State::fit() {
    const Bounds bounds = boundsOf(shown, drawing);
    if (!bounds.empty) transform = fitted(bounds, roomForDrawing(size(), fonts));
    stale();
}

bool FormView::State::keptInView() const {
    const Bounds bounds = boundsOf(shown, drawing);
    if (bounds.empty) return true;
    const QRectF seen(transform.toScreen({bounds.left_m, bounds.high_m}),
                      transform.toScreen({bounds.right_m, bounds.low_m}));
    return QRectF(QPointF(0, 0), size()).contains(seen);
}

Reach FormView::State::reach() {
    return {[this](const Change& change) { emit view->changeAsked(change); }, [this] { emit view->dragEnded(); },
            [this](const Transform& from) {
                transform = from;
                follows = false;
                stale();
            }};
}

Hit FormView::State::hitAt(const QPointF& pixel) {
    if (shown.pieceIndex < 0) return {};
    return app::hitAt(freshSheet(), drawing, transform, pixel);
}

double FormView::State::placeUnder(const QPointF& pixel) const {
    return nearestPlace(drawing, shown.plan->line.fair.line, transform.toDrawing(pixel));
}

void FormView::State::hover(std::optional<QPointF> pixel) {
    cursor = pixel;
    const std::optional<double> before = hovered_m;
    hovered_m.reset();
    if (pixel && hasPlan()) hovered_m = placeUnder(*pixel);
    if (!(gesture && gesture->underWay())) view->update();  // a drag shows no reading
    if (hovered_m != before) emit view->placeHovered(hovered_m);
}

void FormView::State::choosePoint(int index) {
    if (choice.point == index && choice.station < 0) return;
    endNudge();
    choice.point = index;
    choice.station = -1;
    stale();
    say();
    emit view->pointSelected(index);
}

void FormView::State::chooseStation(int index) {
    if (choice.station == index && choice.point < 0) return;
    endNudge();
    const bool hadPoint = choice.point >= 0;
    choice.point = -1;
    choice.station = index;
    stale();
    say();
    if (hadPoint) emit view->pointSelected(-1);
}

void FormView::State::chooseNothing() {
    if (choice.point < 0 && choice.station < 0) return;
    chooseStation(-1);
}

void FormView::State::say() {
    QString words;
    const auto notation = shown.display.lengths;
    if (choice.point >= 0) {
        const boat::Point& point = shown.piece.line.points[choice.point];
        words =
            QStringLiteral("%1: x %2, y %3")
                .arg(pointName(shown.piece, choice.point), written(point, 0, notation), written(point, 1, notation));
    } else if (choice.station >= 0) {
        const double at_m = shown.piece.holding.stations[choice.station].at_m;
        words = QStringLiteral("%1 at %2")
                    .arg(stationName(shown, choice.station), text(measure::writeLength(at_m, shown.display)));
    }
    emit view->selectionSaid(words);
    QString whole =
        shown.pieceIndex < 0 ? QStringLiteral("No piece yet.") : text(shown.piece.name) + QStringLiteral(".");
    if (hasPlan()) {
        whole += QStringLiteral(" Line %1 long, %2 points, %3 strips, %4 stations.")
                     .arg(text(measure::writeLength(drawing.length_m, shown.display)))
                     .arg(shown.piece.line.points.size())
                     .arg(shown.plan->stack.strips.size())
                     .arg(shown.piece.holding.stations.size());
    }
    if (!words.isEmpty()) whole += QStringLiteral(" Selected: ") + words + QStringLiteral(".");
    if (whole == view->accessibleDescription()) return;
    view->setAccessibleDescription(whole);
    QAccessibleEvent said(view, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&said);
}

bool FormView::State::chooseNext(bool next) {
    if (shown.pieceIndex < 0) return false;
    const int points = static_cast<int>(shown.piece.line.points.size());
    const std::vector<int> stations =
        hasPlan() ? alongLine(shown.piece.holding.stations) : std::vector<int>();  // drawn only with a plan
    const int all = points + static_cast<int>(stations.size());
    int at = next ? -1 : all;
    if (choice.point >= 0) at = choice.point;
    for (size_t i = 0; i < stations.size() && choice.station >= 0; ++i) {
        if (stations[i] == choice.station) at = points + static_cast<int>(i);
    }
    at += next ? 1 : -1;
    if (at < 0 || at >= all) {
        chooseNothing();
        return false;
    }
    if (at < points) {
        choosePoint(at);
    } else {
        chooseStation(stations[at - points]);
    }
    return true;
}

void FormView::State::nudge(int right, int up, bool far) {
    if (choice.point < 0 && choice.station < 0) {
        chooseNext(true);
        return;
    }
    if (!nudging) ++gestureNumber;
    nudging = true;
    nudgeTimer.start();
    const int times = far ? 10 : 1;
    const auto notation = shown.display.lengths;
    if (choice.point >= 0) {
        const boat::Point& point = shown.piece.line.points[choice.point];
        const double step_m = edits::pointStep(shown.piece, notation) * times;
        const QString merges = QStringLiteral("nudge point %1 %2").arg(choice.point).arg(gestureNumber);
        const line::Xy to{point.x_m + right * step_m, point.y_m + up * step_m};
        emit view->changeAsked(edits::movePoint(shown, shown.piece, choice.point, to, false, merges));
        return;
    }
    const double step_m = edits::stationStep(notation) * times * (right + up);
    const double at_m = shown.piece.holding.stations[choice.station].at_m + step_m;
    const QString merges = QStringLiteral("nudge station %1 %2").arg(choice.station).arg(gestureNumber);
    emit view->changeAsked(edits::moveStation(shown, shown.piece, choice.station, at_m, merges));
}

void FormView::State::endNudge() {
    nudgeTimer.stop();
    if (!nudging) return;
    nudging = false;
    emit view->dragEnded();
}

void FormView::State::removeChosen() {
    endNudge();
    if (choice.point >= 0) {
        if (!edits::canRemovePoint(shown.piece)) {
            emit view->selectionSaid(QStringLiteral("A line needs three points; none is removed."));
            return;
        }
        const Change change = edits::removePoint(shown, choice.point);
        chooseNothing();
        emit view->changeAsked(change);
    } else if (choice.station >= 0) {
        const Change change = edits::removeStation(shown, choice.station);
        chooseNothing();
        emit view->changeAsked(change);
    }
}

void FormView::State::abortGesture() {
    if (!gesture) return;
    const auto aborted = std::move(gesture);
    aborted->abort();
    view->unsetCursor();
}

QString FormView::State::wordsAt(const QPointF& pixel) {
    const Sheet& present = freshSheet();
    if (present.band.contains(pixel)) return shown.reason;
    const Hit hit = hitAt(pixel);
    const auto notation = shown.display.lengths;
    if (hit.kind == Hit::Kind::point) {
        const boat::Point& point = shown.piece.line.points[hit.index];
        QString words =
            QStringLiteral("%1\nx %2   y %3")
                .arg(pointName(shown.piece, hit.index), written(point, 0, notation), written(point, 1, notation));
        if (shown.plan && shown.plan->line.fair.points.size() == shown.piece.line.points.size()) {
            const double miss_m = shown.plan->line.fair.points[hit.index].misfit_m;
            words += QStringLiteral("\nmisfit ") + text(measure::writeSmall(miss_m, shown.display));
            for (const plan::Finding& finding : shown.plan->findings) {
                if (finding.point == hit.index) words += QStringLiteral("\n") + text(finding.text);
            }
        }
        return point.mustPass ? words + QStringLiteral("\nthe line must pass here") : words;
    }
    if (hit.kind == Hit::Kind::station) {
        const auto& station = shown.piece.holding.stations[hit.index];
        return QStringLiteral("%1\nat %2 along the line")
            .arg(stationName(shown, hit.index), text(measure::writeLength(station.at_m, shown.display)));
    }
    if (hit.kind == Hit::Kind::finding) return present.findings[hit.index].words;
    return {};
}

void FormView::State::paint(QPainter& painter) {
    const Theme& ground = theme();
    const double ratio = view->devicePixelRatioF();
    const QSize pixels = (QSizeF(size()) * ratio).toSize();
    if (pictureStale || picture.size() != pixels) {
        if (picture.size() != pixels) picture = QPixmap(pixels);
        picture.setDevicePixelRatio(ratio);
        QPainter onPicture(&picture);
        onPicture.setRenderHint(QPainter::Antialiasing);
        paintForm(onPicture, freshSheet(), drawing, transform, size(), choice, fonts, ground);
        pictureStale = false;
    }
    painter.drawPixmap(QPointF(0, 0), picture);
    painter.setRenderHint(QPainter::Antialiasing);
    reading = {};
    if (hasPlan()) {
        if (choice.place_m) paintPlace(painter, placeAt(drawing, *choice.place_m), transform, ground.accent);
        const std::optional<double> at_m = hovered_m ? hovered_m : lit_m;
        const bool dragging = gesture && gesture->underWay();
        if (at_m && !dragging) {
            const DrawnPlace place = placeAt(drawing, *at_m);
            paintPlace(painter, place, transform, ground.ink);
            const QRectF keepOff = cursor && hovered_m ? QRectF(cursor->x() - 12, cursor->y() - 12, 36, 40) : QRectF();
            QPolygonF stack;
            for (size_t j = 0; j < drawing.places.size(); j += 3) {
                stack << transform.toScreen(drawing.places[j].onForm)
                      << transform.toScreen(drawing.places[j].onOutside);
            }
            reading = paintReading(painter, readingOf(place, shown.display), transform.toScreen(place.onLine), keepOff,
                                   stack, size(), fonts, ground);
        }
    }
    if (view->hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(ground.accent, 1));
        painter.drawRect(QRectF(QPointF(0.5, 0.5), size() - QSizeF(1, 1)));
    }
}

}  // namespace fayline::app
