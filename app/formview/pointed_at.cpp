// What the pointer is on, here or in a panel: a mark across the stack and its reading.
#include <QObject>
#include <cmath>

#include "app/formview/form_view_state.hpp"
#include "app/look/text.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/units/display.hpp"

namespace fayline::app {

namespace {

// Gap, pressure and moment at a place, and what holds there.
void addHoldingTo(QStringList& lines, const Shown& shown, double at_m) {
    const auto& held = shown.plan->holding.held;
    if (const auto sample = sampleAt(held, at_m)) {
        if (std::isfinite(sample->gap_m)) lines << QObject::tr("gap %1").arg(gapText(sample->gap_m, shown.display));
        if (std::isfinite(sample->pressure_Pa)) {
            lines << QObject::tr("pressure %1")
                         .arg(text(units::writePressure(std::max(sample->pressure_Pa, 0.0), shown.display)));
        }
        if (std::isfinite(sample->moment_N_m)) {
            lines << QObject::tr("moment %1").arg(text(units::writeMoment(sample->moment_N_m, shown.display)));
        }
    }
    for (const holding::HeldStation& station : held.stations) {
        if (station.index < 0 || station.index >= math::countOf(shown.piece.holding.stations)) continue;
        const double half_m = shown.piece.holding.stations[station.index].pad_m / 2;
        if (std::abs(station.at_m - at_m) > half_m || !std::isfinite(station.pull_N)) continue;
        lines << QStringLiteral("%1: %2").arg(stationName(shown, station.index),
                                              text(plan::pullText(station.pull_N, station.state, shown.display)));
        break;
    }
}

QStringList readingOf(const DrawnPlace& place, const units::Display& display) {
    constexpr double straight_per_m = 1e-6;
    QStringList lines;
    lines << QObject::tr("at %1").arg(text(units::writeLength(place.at_m, display)));
    lines
        << (std::abs(place.curvature_per_m) < straight_per_m
                ? QObject::tr("straight")
                : QObject::tr("radius %1").arg(text(units::writeLength(1 / std::abs(place.curvature_per_m), display))));
    lines << QObject::tr("strain %1, %2 of breaking")
                 .arg(text(units::writeShare(place.strain)), text(units::writeShare(place.share)));
    return lines;
}

}  // namespace

// What the pointer is on: a mark's own words, else what the plan says of the place.
QStringList FormView::State::readingLines(double at_m) {
    const QString words = cursor && hovered_m ? wordsAt(*cursor) : QString();
    if (!words.isEmpty()) return linesOf(words, size());
    QStringList lines = readingOf(placeAt(drawing, at_m), shown.display);
    addHoldingTo(lines, shown, at_m);
    return lines;
}

void FormView::State::paintPointedAt(QPainter& painter) {
    const Theme& ground = theme();
    const std::optional<double> at_m = hovered_m ? hovered_m : lit_m;
    const bool dragging = gesture && gesture->underWay();
    const bool reads = at_m && !dragging;
    if ((moment || reads) && !room) room = sheet::roomForReading(freshSheet(), drawing, transform, size());
    std::vector<QRectF> keepOff;
    if (moment) {
        paintMoment(painter, *moment, sheet, drawing, transform, ground);
        const ReadingBox box =
            placeReading(momentLines(*moment, size()), {view->width() / 2.0, 0}, {}, *room, size(), fonts);
        paintReading(painter, box, fonts, ground);
        keepOff.push_back(box.place);
    }
    if (const QPolygonF outline = stripOutline(drawing, choice.strip); !outline.isEmpty()) {
        QColor filled = ground.accent;
        filled.setAlphaF(0.45f);
        painter.setPen(pen(ground.accent, 2));
        painter.setBrush(filled);
        painter.drawPolygon(transform.matrix().map(outline));
    }
    if (choice.place_m) paintPlace(painter, placeAt(drawing, *choice.place_m), transform, ground.accent);
    if (!reads) return;
    const DrawnPlace place = placeAt(drawing, *at_m);
    paintPlace(painter, place, transform, ground.ink);
    if (cursor && hovered_m) keepOff.emplace_back(cursor->x() - 12, cursor->y() - 12, 36, 40);
    const ReadingBox box =
        placeReading(readingLines(*at_m), transform.toScreen(place.onLine), keepOff, *room, size(), fonts);
    paintReading(painter, box, fonts, ground);
    reading = box.place;
}

}  // namespace fayline::app
