#include "app/formview/form_view_state.hpp"

#include <QAccessible>
#include <QAccessibleEvent>
#include <QObject>
#include <algorithm>
#include <cmath>
#include <numeric>

#include "app/look/text.hpp"
#include "core/holding/props/hull.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/units/display.hpp"

namespace fayline::app {

namespace {

QString written(const model::Point& point, int axis, units::LengthNotation notation) {
    if (!point.written[axis].empty()) return text(point.written[axis]);
    return text(units::writeLength(axis == 0 ? point.x_m : point.y_m, notation));
}

// The stations' indices in their order along the line.
std::vector<int> alongLine(const std::vector<model::Station>& stations) {
    std::vector<int> order(stations.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return stations[a].at_m < stations[b].at_m; });
    return order;
}

// One sentence on how the piece lies; empty before that is known.
QString holdingSentence(const Shown& shown) {
    const auto& held = shown.plan->holding.held;
    if (held.samples.empty() || !std::isfinite(held.largest.gap_m)) return {};
    return QObject::tr(" Largest gap %1 at %2.")
        .arg(gapText(held.largest.gap_m, shown.display), text(units::writeLength(held.largest.at_m, shown.display)));
}

QString blockWords(const Shown& shown, int index) {
    QString words = QObject::tr("block %1\nat x %2")
                        .arg(QString::number(index + 1),
                             text(units::writeLength(shown.piece.holding.hull.blocks[index].x_m, shown.display)));
    if (!shown.plan || !shown.plan->holding.hull) return words;
    for (const holding::BlockPush& block : shown.plan->holding.hull->blocks) {
        if (block.index != index || !std::isfinite(block.push_N)) continue;
        words += block.lifts
                     ? QObject::tr("\nthe hull lifts off it")
                     : QObject::tr("\npushes up with %1").arg(text(units::writeForce(block.push_N, shown.display)));
    }
    return words;
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
    if (sheetStale) {
        sheet = sheetOf(shown, drawing, transform, size(), choice, fonts, waiting);
        room.reset();
    }
    sheetStale = false;
    return sheet;
}

void FormView::State::fit() {
    const Bounds bounds = boundsOf(shown, drawing);
    if (!bounds.empty) transform = fitted(bounds, roomWithMarks(shown, drawing, size(), fonts, choice));
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

std::unique_ptr<Gesture> FormView::State::dragOf(const Hit& hit, const QPointF& at) {
    const int number = ++gestureNumber;
    switch (hit.kind) {
        case Hit::Kind::point:
            return dragPoint(at, shown, transform, hit.index, number, reach());
        case Hit::Kind::station:
            return dragStation(at, shown, drawing, transform, hit.index, number, reach());
        case Hit::Kind::foot:
            if (const auto foot = footOf(shown, hit.index)) {
                return dragFoot(at, shown, transform, hit.index, *foot, number, reach());
            }
            break;
        case Hit::Kind::block:
            return dragBlock(at, shown, transform, hit.index, number, reach());
        case Hit::Kind::trim:  // slides along a line that is of the piece as it stands
            if (shown.reason.isEmpty()) return dragTrim(at, shown, drawing, transform, hit.index, number, reach());
            break;
        case Hit::Kind::nothing:
        case Hit::Kind::finding:
        case Hit::Kind::stack:
            break;
    }
    return pan(at, transform, reach());
}

void FormView::State::hover(std::optional<QPointF> pixel) {
    cursor = pixel;
    const std::optional<double> before = hovered_m;
    hovered_m.reset();
    if (pixel && hasPlan()) hovered_m = placeUnder(*pixel);
    if (!(gesture && gesture->underWay())) view->update();  // a drag shows no reading
    if (hovered_m != before) emit view->placeHovered(hovered_m);
}

Hit FormView::State::chosen() const {
    if (choice.point >= 0) return {Hit::Kind::point, choice.point};
    if (choice.station >= 0) return {choice.foot ? Hit::Kind::foot : Hit::Kind::station, choice.station};
    if (choice.block >= 0) return {Hit::Kind::block, choice.block};
    if (choice.trim >= 0) return {Hit::Kind::trim, choice.trim};
    return {};
}

void FormView::State::choose(const Hit& hit) {
    if (chosen() == hit) return;
    endNudge();
    const int hadPoint = choice.point;
    choice.point = hit.kind == Hit::Kind::point ? hit.index : -1;
    choice.foot = hit.kind == Hit::Kind::foot;
    choice.station = choice.foot || hit.kind == Hit::Kind::station ? hit.index : -1;
    choice.block = hit.kind == Hit::Kind::block ? hit.index : -1;
    choice.trim = hit.kind == Hit::Kind::trim ? hit.index : -1;
    stale();
    say();
    if (choice.point != hadPoint) emit view->pointSelected(choice.point);
}

void FormView::State::choosePoint(int index) {
    choose({Hit::Kind::point, index});
}

void FormView::State::chooseNothing() {
    choose({});
}

QString FormView::State::chosenWords() const {
    const auto written = [this](double length_m) { return text(units::writeLength(length_m, shown.display)); };
    const model::Holding& holding = shown.piece.holding;
    const Hit hit = chosen();
    switch (hit.kind) {
        case Hit::Kind::point: {
            const model::Point& point = shown.piece.line.points[hit.index];
            const auto notation = shown.display.lengths;
            return QStringLiteral("%1: x %2, y %3")
                .arg(pointName(shown.piece, hit.index), app::written(point, 0, notation),
                     app::written(point, 1, notation));
        }
        case Hit::Kind::station: {
            const QString does = holdingWords(shown, hit.index);
            const QString name =
                QObject::tr("%1 at %2").arg(stationName(shown, hit.index), written(holding.stations[hit.index].at_m));
            return does.isEmpty() ? name : name + QStringLiteral(", ") + does;
        }
        case Hit::Kind::foot: {
            const auto foot = footOf(shown, hit.index).value_or(line::Xy{});
            return QObject::tr("foot of %1: x %2, y %3")
                .arg(stationName(shown, hit.index), written(foot.x_m), written(foot.y_m));
        }
        case Hit::Kind::block:
            return QObject::tr("block %1: x %2")
                .arg(QString::number(hit.index + 1), written(holding.hull.blocks[hit.index].x_m));
        case Hit::Kind::trim: {
            const bool start = hit.index == 0;
            return start ? QObject::tr("trim line at the start, extra length %1")
                               .arg(written(shown.piece.stack.runsPastStart_m))
                         : QObject::tr("trim line at the end, extra length %1")
                               .arg(written(shown.piece.stack.runsPastEnd_m));
        }
        case Hit::Kind::nothing:
        case Hit::Kind::finding:
        case Hit::Kind::stack:
            break;
    }
    return {};
}

void FormView::State::say() {
    const QString words = chosenWords();
    emit view->selectionSaid(words);
    QString whole = shown.pieceIndex < 0 ? QObject::tr("No piece yet.") : text(shown.piece.name) + QStringLiteral(".");
    if (hasPlan()) {
        whole += QObject::tr(" Line %1 long, %2 points, %3 strips, %4 stations.")
                     .arg(text(units::writeLength(drawing.length_m, shown.display)))
                     .arg(shown.piece.line.points.size())
                     .arg(shown.plan->stack.strips.size())
                     .arg(shown.piece.holding.stations.size());
        whole += holdingSentence(shown);
    }
    if (!words.isEmpty()) whole += QObject::tr(" Selected: %1").arg(words) + QStringLiteral(".");
    whole += QObject::tr(" N and P choose the next and the last thing, arrow keys nudge it, F shows the whole piece.");
    if (whole == view->accessibleDescription()) return;
    view->setAccessibleDescription(whole);
    QAccessibleEvent said(view, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&said);
}

// All that can be chosen, in the order in which keys walk through it: points, stations along the line, each with its
// foot, blocks, trim lines.
std::vector<Hit> FormView::State::choosable() const {
    std::vector<Hit> all;
    for (size_t i = 0; i < shown.piece.line.points.size(); ++i) all.push_back({Hit::Kind::point, static_cast<int>(i)});
    if (!hasPlan()) return all;  // the rest is drawn only with a plan
    for (const int index : alongLine(shown.piece.holding.stations)) {
        all.push_back({Hit::Kind::station, index});
        if (footOf(shown, index)) all.push_back({Hit::Kind::foot, index});
    }
    for (size_t i = 0; i < shown.piece.holding.hull.blocks.size(); ++i) {
        all.push_back({Hit::Kind::block, static_cast<int>(i)});
    }
    for (const int trim : {0, 1}) all.push_back({Hit::Kind::trim, trim});
    return all;
}

void FormView::State::chooseNext(bool next) {
    if (shown.pieceIndex < 0) return;
    const std::vector<Hit> all = choosable();
    const auto found = std::find(all.begin(), all.end(), chosen());
    const auto count = static_cast<std::ptrdiff_t>(all.size());
    std::ptrdiff_t at = found - all.begin();
    if (found == all.end() && next) at = -1;
    at += next ? 1 : -1;
    if (at < 0 || at >= count) return chooseNothing();
    choose(all[at]);
}

void FormView::State::nudge(int right, int up, bool far) {
    const Hit hit = chosen();
    if (hit.kind == Hit::Kind::nothing) {
        chooseNext(true);
        return;
    }
    if (!nudging) {
        ++gestureNumber;
        nudgedFrom = shown;
        trimNudges = 0;
    }
    const auto notation = shown.display.lengths;
    const int times = far ? 10 : 1;
    const double step_m = edits::stationStep(notation) * times;
    const QString merges = QStringLiteral("nudge %1 %2 %3").arg(static_cast<int>(hit.kind)).arg(hit.index);
    const QString key = merges.arg(gestureNumber);
    const model::Holding& holding = shown.piece.holding;
    std::optional<Change> change;
    switch (hit.kind) {
        case Hit::Kind::point: {
            const model::Point& point = shown.piece.line.points[hit.index];
            const double read_m = edits::pointStep(shown.piece, notation) * times;
            change = edits::movePoint(shown, shown.piece, hit.index,
                                      {point.x_m + right * read_m, point.y_m + up * read_m}, false, key);
            break;
        }
        case Hit::Kind::station: {
            const double at_m = holding.stations[hit.index].at_m + step_m * (right + up);
            change = edits::moveStation(shown, shown.piece, hit.index, at_m, key);
            break;
        }
        case Hit::Kind::foot: {
            const auto foot = footOf(shown, hit.index);
            if (!foot) return;
            change = edits::moveFoot(shown, shown.piece, hit.index,
                                     {foot->x_m + right * step_m, foot->y_m + up * step_m}, key);
            break;
        }
        case Hit::Kind::block:
            if (right == 0) return;
            change = edits::moveBlock(shown, shown.piece, hit.index,
                                      holding.hull.blocks[hit.index].x_m + right * step_m, key);
            break;
        case Hit::Kind::trim: {
            if (nudgedFrom.outOfDate || !nudgedFrom.plan) return;
            trimNudges += (right + up) * times;
            const auto which = hit.index == 0 ? edits::TrimLine::start : edits::TrimLine::end;
            const double was_m = hit.index == 0 ? 0 : nudgedFrom.plan->line.fair.line.length();
            change = edits::moveTrim(nudgedFrom, which, was_m + trimNudges * edits::stationStep(notation), key);
            break;
        }
        case Hit::Kind::nothing:
        case Hit::Kind::finding:
        case Hit::Kind::stack:
            return;
    }
    nudging = true;
    nudgeTimer.start();
    emit view->changeAsked(*change);
}

void FormView::State::endNudge() {
    nudgeTimer.stop();
    if (!nudging) return;
    nudging = false;
    emit view->dragEnded();
}

void FormView::State::removeChosen() {
    endNudge();
    const Hit hit = chosen();
    std::optional<Change> change;
    QString refused;
    if (hit.kind == Hit::Kind::point) {
        if (edits::canRemovePoint(shown.piece)) {
            change = edits::removePoint(shown, hit.index);
        } else {
            refused = QObject::tr("A line needs three points: nothing removed.");
        }
    } else if (hit.kind == Hit::Kind::station) {
        change = edits::removeStation(shown, hit.index);
    } else if (hit.kind == Hit::Kind::block) {
        if (edits::canRemoveBlock(shown.piece)) {
            change = edits::removeBlock(shown, hit.index);
        } else {
            refused = QObject::tr("A hull with weight needs a block: nothing removed.");
        }
    }
    if (!refused.isEmpty()) emit view->selectionSaid(refused);
    if (!change) return;
    chooseNothing();
    emit view->changeAsked(*change);
}

void FormView::State::abortGesture() {
    if (!gesture) return;
    const auto aborted = std::move(gesture);
    aborted->abort();
    view->unsetCursor();
}

QString FormView::State::wordsAt(const QPointF& pixel) {
    const Sheet& present = freshSheet();
    const Hit hit = hitAt(pixel);
    const auto notation = shown.display.lengths;
    if (hit.kind == Hit::Kind::point) {
        const model::Point& point = shown.piece.line.points[hit.index];
        QString words =
            QStringLiteral("%1\nx %2   y %3")
                .arg(pointName(shown.piece, hit.index), written(point, 0, notation), written(point, 1, notation));
        if (shown.plan && shown.plan->line.fair.points.size() == shown.piece.line.points.size()) {
            const double miss_m = shown.plan->line.fair.points[hit.index].misfit_m;
            words += QObject::tr("\nmisfit %1").arg(text(units::writeSmall(miss_m, shown.display)));
            for (const plan::Finding& finding : shown.plan->findings) {
                if (finding.point == hit.index)
                    words += QStringLiteral("\n") + text(plan::textOf(finding, shown.display));
            }
        }
        return point.mustPass ? words + QObject::tr("\nthe line is fixed here") : words;
    }
    if (hit.kind == Hit::Kind::station) {
        const auto& station = shown.piece.holding.stations[hit.index];
        QString words = QObject::tr("%1\nat %2 along the line")
                            .arg(stationName(shown, hit.index), text(units::writeLength(station.at_m, shown.display)));
        const QString does = holdingWords(shown, hit.index);
        return does.isEmpty() ? words : words + QStringLiteral("\n") + does;
    }
    if (hit.kind == Hit::Kind::foot) {
        const QString does = holdingWords(shown, hit.index);
        const QString words = QObject::tr("foot of %1").arg(stationName(shown, hit.index));
        return does.isEmpty() ? words : words + QStringLiteral("\n") + does;
    }
    if (hit.kind == Hit::Kind::block) return blockWords(shown, hit.index);
    if (hit.kind == Hit::Kind::trim) return QObject::tr("trim line\ndrag it along the wood");
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
    if (hasPlan()) paintPointedAt(painter);
    if (view->hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(ground.accent, 1));
        painter.drawRect(QRectF(QPointF(0.5, 0.5), size() - QSizeF(1, 1)));
    }
}

}  // namespace fayline::app
