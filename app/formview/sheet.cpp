#include "app/formview/sheet.hpp"

#include <QFontMetricsF>
#include <algorithm>
#include <cmath>
#include <map>

#include "app/look/names.hpp"
#include "core/measure/display.hpp"

namespace fayline::app {

namespace {

// The factors by which misfits may be drawn larger.
constexpr double misfitFactors[] = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000};
constexpr double misfitAims_px = 26;
constexpr double misfitLongest_px = 48;

QPointF outOf(const DrawnPlace& place) {
    return {place.outwards.x_m, -place.outwards.y_m};
}

bool suspected(const Shown& shown, int point) {
    if (!shown.plan) return false;
    const auto& suspects = shown.plan->line.misread.suspects;
    return std::any_of(suspects.begin(), suspects.end(), [point](const auto& each) { return each.point == point; });
}

// Whether the plan's points are those of the piece, one to one.
bool pointsKnown(const Shown& shown) {
    return shown.plan && shown.plan->line.fair.points.size() == shown.piece.line.points.size();
}

double misfitTimes(const Shown& shown, const Transform& transform) {
    double greatest_m = 0;
    for (size_t i = 0; i < shown.plan->line.fair.points.size(); ++i) {
        if (suspected(shown, static_cast<int>(i))) continue;
        greatest_m = std::max(greatest_m, std::abs(shown.plan->line.fair.points[i].misfit_m));
    }
    constexpr double nothing_m = 1e-9;
    if (greatest_m < nothing_m) return 1;
    double times = 1;
    for (const double factor : misfitFactors) {
        if (greatest_m * factor * transform.pixelsPerMetre <= misfitAims_px) times = factor;
    }
    return times;
}

// Strokes at half a right angle, a few pixels apart, on the form's side of the stack.
QPainterPath strokesAlongForm(const Shown& shown, const Drawing& drawing, const Transform& transform,
                              const QSizeF& view) {
    constexpr double apart_px = 7;
    constexpr double long_px = 7;
    QPainterPath strokes;
    const auto& form = shown.piece.form;
    const auto& stack = shown.piece.stack;
    const bool inPlace = form.kind == boat::FormKind::inPlace;
    const double from_m = -form.carriesOnStart_m.value_or(inPlace ? 0 : stack.runsPastStart_m);
    const double to_m = drawing.length_m + form.carriesOnEnd_m.value_or(inPlace ? 0 : stack.runsPastEnd_m);
    const QRectF seen = QRectF(QPointF(0, 0), view).adjusted(-long_px, -long_px, long_px, long_px);
    double left_px = 0;
    for (size_t j = 0; j + 1 < drawing.places.size(); ++j) {
        const DrawnPlace& a = drawing.places[j];
        const DrawnPlace& b = drawing.places[j + 1];
        if (a.at_m < from_m - 1e-9 || b.at_m > to_m + 1e-9) continue;
        const QPointF start = transform.toScreen(a.onForm);
        const QPointF end = transform.toScreen(b.onForm);
        const QLineF stretch(start, end);
        const double length = stretch.length();
        if (length <= 0) continue;
        const QPointF in = -outOf(a);
        const QPointF along = (end - start) / length;
        if (!seen.intersects(QRectF(start, end).normalized().adjusted(-1, -1, 1, 1))) continue;
        for (double at = left_px; at < length; at += apart_px) {
            const QPointF foot = start + along * at;
            strokes.moveTo(foot);
            strokes.lineTo(foot + (in - along) * (long_px / std::sqrt(2.0)));
        }
        left_px = std::fmod(apart_px - std::fmod(length - left_px, apart_px), apart_px);
    }
    return strokes;
}

void addComb(Sheet& sheet, const Drawing& drawing, const Transform& transform) {
    constexpr double longest_px = 72;
    double greatest = 0;
    for (const DrawnPlace& place : drawing.places) greatest = std::max(greatest, std::abs(place.curvature_per_m));
    if (greatest < 1e-6) return;
    bool first = true;
    for (const DrawnPlace& place : drawing.places) {
        if (place.at_m < -1e-9 || place.at_m > drawing.length_m + 1e-9) continue;
        const QPointF foot = transform.toScreen(place.onForm);
        // Round toward the stack stands on the form's side, hollow on the stack's: k > 0 turns left.
        const QPointF left(-std::sin(place.heading_rad), -std::cos(place.heading_rad));
        const QPointF tip = foot + left * (place.curvature_per_m / greatest * longest_px);
        sheet.comb.moveTo(foot);
        sheet.comb.lineTo(tip);
        if (first) {
            sheet.combEdge.moveTo(tip);
        } else {
            sheet.combEdge.lineTo(tip);
        }
        first = false;
    }
}

QLineF across(const DrawnPlace& place, const Transform& transform, double beyond_px) {
    const QPointF out = outOf(place) * beyond_px;
    return {transform.toScreen(place.onForm) - out, transform.toScreen(place.onOutside) + out};
}

}  // namespace

Fonts fontsFrom(const QFont& base) {
    constexpr double titleSize = 1.4;
    constexpr double smallSize = 0.9;
    Fonts fonts{base, base, base};
    if (base.pointSizeF() > 0) {
        fonts.title.setPointSizeF(base.pointSizeF() * titleSize);
        fonts.small.setPointSizeF(base.pointSizeF() * smallSize);
    } else {
        fonts.title.setPixelSize(static_cast<int>(base.pixelSize() * titleSize));
        fonts.small.setPixelSize(static_cast<int>(base.pixelSize() * smallSize));
    }
    return fonts;
}

QString stationName(const Shown& shown, int index) {
    const QString kind = holdName(shown.piece.holding.stations.at(index).kind);
    if (shown.plan) {
        for (const auto& place : shown.plan->holding.stations) {
            if (place.index == index) return QStringLiteral("%1 %2").arg(kind).arg(place.number);
        }
    }
    return kind;
}

Bounds boundsOf(const Shown& shown, const Drawing& drawing) {
    Bounds bounds = drawing.bounds;
    for (const auto& point : shown.piece.line.points) bounds.include({point.x_m, point.y_m});
    for (const auto& station : shown.piece.holding.stations) {
        if (station.footX_m && station.footY_m) bounds.include({*station.footX_m, *station.footY_m});
    }
    return bounds;
}

void sheet::addStack(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform,
                     const QSizeF& view, const Choice& choice) {
    if (drawing.places.empty()) return;
    if (shown.piece.form.kind == boat::FormKind::posts) {
        for (const auto& post : shown.piece.form.posts) {
            const DrawnPlace place = placeAt(drawing, post.at_m);
            const QPointF top = transform.toScreen(place.onForm);
            const double half = std::max(3.0, post.width_m / 2 * transform.pixelsPerMetre);
            const QPointF out = outOf(place);
            const QPointF along(-out.y() * half, out.x() * half);
            const QPointF down = -out * 18;
            sheet.posts.push_back(QPolygonF({top - along + down, top - along, top + along, top + along + down}));
        }
    } else if (!choice.comb) {  // the comb stands where the strokes would
        sheet.formSide = strokesAlongForm(shown, drawing, transform, view);
    }
    if (choice.comb) addComb(sheet, drawing, transform);
    sheet.trims.push_back(across(placeAt(drawing, 0), transform, 16));
    sheet.trims.push_back(across(placeAt(drawing, drawing.length_m), transform, 16));
    for (const auto& pin : shown.piece.stack.pins) {
        sheet.pins.push_back(across(placeAt(drawing, pin.at_m), transform, 5));
    }

    const line::Place& tightest = shown.plan->line.tightest;
    if (std::abs(tightest.curvature_per_m) > 1e-6) {
        const DrawnPlace place = placeAt(drawing, tightest.at_m);
        const double radius_px = transform.pixelsPerMetre / std::abs(tightest.curvature_per_m);
        const QPointF left(-std::sin(tightest.heading_rad), -std::cos(tightest.heading_rad));
        const QPointF toCentre = tightest.curvature_per_m > 0 ? left : -left;
        // From the face on the hollow side, so that the arrow is not lost in the stack.
        const bool formIsHollowSide = QPointF::dotProduct(toCentre, outOf(place)) < 0;
        const QPointF foot = transform.toScreen(formIsHollowSide ? place.onForm : place.onOutside);
        sheet.radius = QLineF(foot + toCentre * std::min(radius_px, 56.0), foot);
    }
}

void sheet::addPoints(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform,
                      const Choice& choice) {
    const bool known = pointsKnown(shown);
    sheet.misfitTimes = known && choice.misfitMagnified ? ::fayline::app::misfitTimes(shown, transform) : 1;
    for (size_t i = 0; i < shown.piece.line.points.size(); ++i) {
        const auto& point = shown.piece.line.points[i];
        if (!std::isfinite(point.x_m) || !std::isfinite(point.y_m)) continue;
        PointMark mark;
        mark.index = static_cast<int>(i);
        mark.at = transform.toScreen({point.x_m, point.y_m});
        mark.mustPass = point.mustPass;
        mark.suspect = known && suspected(shown, mark.index);
        if (known && !drawing.places.empty()) {
            const line::Foot& foot = shown.plan->line.fair.points[i];
            const DrawnPlace place = placeAt(drawing, foot.at_m);
            mark.at_m = foot.at_m;
            mark.onLine = true;
            const QPointF onLine = transform.toScreen(place.onLine);
            const QPointF left(-std::sin(place.heading_rad), -std::cos(place.heading_rad));
            const double miss_px = std::clamp(foot.misfit_m * sheet.misfitTimes * transform.pixelsPerMetre,
                                              -misfitLongest_px, misfitLongest_px);
            if (std::abs(miss_px) >= 2) mark.misfit = QLineF(onLine, onLine + left * miss_px);
            if (shown.piece.line.takeOff_m != 0) mark.takeOff = QLineF(mark.at, onLine);
        }
        sheet.points.push_back(mark);
    }
}

void sheet::addStations(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform) {
    if (drawing.places.empty()) return;
    std::map<int, int> numbers;
    for (const auto& place : shown.plan->holding.stations) numbers[place.index] = place.number;

    const auto& stations = shown.piece.holding.stations;
    for (size_t i = 0; i < stations.size(); ++i) {
        const auto& station = stations[i];
        const DrawnPlace place = placeAt(drawing, station.at_m);
        StationMark mark;
        mark.index = static_cast<int>(i);
        mark.number = numbers.contains(mark.index) ? numbers[mark.index] : 0;
        mark.kind = station.kind;
        mark.at_m = station.at_m;
        mark.frame.base = transform.toScreen(place.onOutside);
        mark.frame.outwards = outOf(place);
        mark.frame.along = QPointF(-mark.frame.outwards.y(), mark.frame.outwards.x());
        mark.frame.pad = station.pad_m * transform.pixelsPerMetre;
        mark.frame.depth = QLineF(transform.toScreen(place.onForm), mark.frame.base).length();
        if (station.footX_m && station.footY_m) {
            mark.frame.foot = transform.toScreen({*station.footX_m, *station.footY_m});
        }
        if (station.kind == boat::HoldKind::strap && station.to_m) {
            const double from_m = std::min(station.at_m, *station.to_m);
            const double to_m = std::max(station.at_m, *station.to_m);
            QPolygonF band;
            for (const DrawnPlace& each : drawing.places) {
                if (each.at_m < from_m || each.at_m > to_m) continue;
                band << transform.toScreen(each.onOutside) + outOf(each) * 3;
            }
            mark.strap.addPolygon(band);
        }
        sheet.stations.push_back(mark);
    }
    // Where stations stand close, all are drawn smaller.
    double least_px = 1000;
    for (size_t i = 0; i < sheet.stations.size(); ++i) {
        for (size_t j = 0; j < i; ++j) {
            least_px = std::min(least_px, QLineF(sheet.stations[i].frame.base, sheet.stations[j].frame.base).length());
        }
    }
    const double size = std::clamp(least_px / 18, 0.55, 1.0);
    for (StationMark& mark : sheet.stations) {
        mark.frame.size = size;
        mark.shape = stationShape(mark.kind, mark.frame);
    }
}

void sheet::addFindings(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform) {
    if (drawing.places.empty()) return;
    constexpr double away_px = 24;
    for (const plan::Finding& finding : shown.plan->findings) {
        if (!finding.at_m || finding.point >= 0) continue;  // a point has its mark itself
        const DrawnPlace place = placeAt(drawing, *finding.at_m);
        const QPointF foot = transform.toScreen(place.onForm);
        QPointF at = foot - outOf(place) * away_px;
        if (!sheet.radius.isNull() && QLineF(at, sheet.radius.center()).length() < 24) {
            at += QPointF(outOf(place).y(), -outOf(place).x()) * 20;  // beside the arrow
        }
        const auto near = std::find_if(sheet.findings.begin(), sheet.findings.end(),
                                       [&](const FindingMark& mark) { return QLineF(mark.at, at).length() < 16; });
        const QString words = QString::fromStdString(finding.text);
        if (near != sheet.findings.end()) {  // the worst come first, so the mark stays
            near->words += QStringLiteral("\n") + words;
            continue;
        }
        sheet.findings.push_back({finding.severity, at, QLineF(foot, at), *finding.at_m, words});
    }
}

Sheet sheetOf(const Shown& shown, const Drawing& drawing, const Transform& transform, const QSizeF& view,
              const Choice& choice, const Fonts& fonts, bool waiting) {
    Sheet sheet;
    if (shown.pieceIndex >= 0) sheet::addPoints(sheet, shown, drawing, transform, choice);
    sheet::addFurniture(sheet, shown, drawing, transform, view, fonts, waiting);
    if (shown.pieceIndex < 0) return sheet;
    if (shown.plan) {
        sheet::addStack(sheet, shown, drawing, transform, view, choice);
        sheet::addStations(sheet, shown, drawing, transform);
        sheet::addFindings(sheet, shown, drawing, transform);
    }
    sheet::addWords(sheet, shown, drawing, transform, view, choice, fonts);
    return sheet;
}

}  // namespace fayline::app
