#include "app/formview/sheet.hpp"

#include <QFontMetricsF>
#include <algorithm>
#include <cmath>
#include <map>

#include "app/look/names.hpp"
#include "app/look/theme.hpp"
#include "core/model/hold_traits.hpp"
#include "core/units/display.hpp"

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
QPainterPath strokesAlongForm(const FormEdge& edge, const QSizeF& view) {
    constexpr double apart_px = 7;
    constexpr double long_px = 7;
    QPainterPath strokes;
    const QRectF seen = QRectF(QPointF(0, 0), view).adjusted(-long_px, -long_px, long_px, long_px);
    double left_px = 0;
    for (size_t j = 0; j + 1 < edge.places.size(); ++j) {
        const EdgePlace& a = edge.places[j];
        const EdgePlace& b = edge.places[j + 1];
        if (!a.borne || !b.borne || a.cut || b.cut) continue;
        const QPointF start = a.onEdge();
        const QPointF end = b.onEdge();
        const QLineF stretch(start, end);
        const double length = stretch.length();
        if (length <= 0) continue;
        const QPointF in = a.in;
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

// A piece glued in place lies on the boat: a second line beside the edge, as of a plank or a backbone seen in section.
QPolygonF lineAlongBoat(const FormEdge& edge) {
    constexpr double beside_px = 6;
    QPolygonF line;
    for (const EdgePlace& place : edge.places) {
        if (place.borne && !place.cut) line << place.onEdge() + place.in * beside_px;
    }
    return line;
}

// Round toward the stack lies on the form's side, hollow on the stack's.
BendMark bendOf(const Drawing& drawing, const Transform& transform) {
    constexpr double widest_px = 72;
    constexpr double straight_per_m = 1e-6;
    BendMark mark;
    double greatest = 0;
    for (const DrawnPlace& place : drawing.places) greatest = std::max(greatest, std::abs(place.curvature_per_m));
    if (greatest < straight_per_m) return mark;
    mark.perCurvature_px = widest_px / greatest;
    for (const DrawnPlace& place : drawing.places) {
        if (place.at_m < -1e-9 || place.at_m > drawing.length_m + 1e-9) continue;
        const QPointF foot = transform.toScreen(place.onForm);
        const QPointF left(-std::sin(place.heading_rad), -std::cos(place.heading_rad));  // k > 0 turns left
        mark.across.emplace_back(foot, foot + left * (place.curvature_per_m * mark.perCurvature_px));
    }
    for (const QLineF& across : mark.across) {
        mark.band << across.p1();
        mark.edge << across.p2();
    }
    for (auto across = mark.across.rbegin(); across != mark.across.rend(); ++across) mark.band << across->p2();
    return mark;
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
    if (bounds.empty) return bounds;
    // As shares of the piece's size beyond it.
    constexpr double nearFoot = 0.6;
    constexpr double nearBlock = 0.25;
    const double size_m = std::max(bounds.width_m(), bounds.height_m());
    Bounds whole = bounds;
    const auto includeNear = [&](const line::Xy& place, double share, const Bounds& about) {
        const double off_m = std::max(
            {about.left_m - place.x_m, place.x_m - about.right_m, about.low_m - place.y_m, place.y_m - about.high_m});
        if (off_m <= share * size_m) whole.include(place);
    };
    for (size_t i = 0; i < shown.piece.holding.stations.size(); ++i) {
        if (const auto foot = footOf(shown, static_cast<int>(i))) includeNear(*foot, nearFoot, bounds);
    }
    const Bounds withFeet = whole;
    const model::Hull& hull = shown.piece.holding.hull;
    for (const auto& block : hull.blocks) includeNear({block.x_m, block.y_m}, nearBlock, withFeet);
    if (hull.weight_kg > 0) includeNear({hull.centreX_m, hull.centreY_m}, nearBlock, withFeet);
    return whole;
}

namespace {

// How far what stands out by pixels reaches beyond the view's free part, to each side.
struct Reaching {
    double left = 0, right = 0, above = 0, below = 0;

    void include(const QRectF& area, const QRectF& free) {
        left = std::max(left, free.left() - area.left());
        right = std::max(right, area.right() - free.right());
        above = std::max(above, free.top() - area.top());
        below = std::max(below, area.bottom() - free.bottom());
    }
};

}  // namespace

QRectF roomWithMarks(const Shown& shown, const Drawing& drawing, const QSizeF& view, const Fonts& fonts,
                     const ViewChoice& choice) {
    QRectF room = roomForDrawing(view, fonts);
    if (!shown.plan || drawing.places.empty()) return room;
    constexpr double least = 0.6;  // of the room is kept, or a small view would show no piece
    const double mostHigh = room.height() * (1 - least) / 2;
    const double mostWide = room.width() * (1 - least) / 2;
    const double lowest = room.bottom() + std::clamp(view.height() * 0.06, 8.0, 40.0);
    const Bounds bounds = boundsOf(shown, drawing);
    Sheet sheet = sheetOf(shown, drawing, fitted(bounds, room), view, choice, fonts, false);

    constexpr double edge_px = 8;  // kept free beside words
    const QRectF free(QPointF(edge_px, 2.0 * gridStep), QPointF(view.width() - edge_px, lowest));
    const QFontMetricsF figures(fonts.small);
    const double ring_px = figures.height() + 6;
    Reaching reaching;
    for (const StationMark& mark : sheet.stations) {
        const QPointF number = mark.frame.base + mark.frame.outwards * (mark.shape.reach + ring_px / 2 + 2);
        reaching.include(QRectF(number.x() - ring_px / 2, number.y() - ring_px / 2, ring_px, ring_px), free);
    }
    for (const ForceArrow& arrow : sheet.forces) {
        const QPointF far = arrow.shaft.p1() - arrow.way * ring_px;
        // Its figure stands beside the shaft or beyond its tail.
        const double width_px = figures.horizontalAdvance(arrow.figure) + ring_px;
        const double words = arrow.shaft.center().x() + arrow.towards.x() * width_px;
        const double beyond = arrow.shaft.p1().x() - arrow.way.x() * width_px;
        reaching.include(QRectF(QPointF(std::min(words, beyond), far.y()), QPointF(std::max(words, beyond), far.y())),
                         free);
    }
    room.adjust(std::min(reaching.left, mostWide), std::min(reaching.above, mostHigh),
                -std::min(reaching.right, mostWide), -std::min(reaching.below, mostHigh));
    // Where the title and the keys find no corner that is free of the stack, the piece stands below them.
    sheet = sheetOf(shown, drawing, fitted(bounds, room), view, choice, fonts, false);
    if (sheet.titleCovers) {
        room.setTop(std::clamp(sheet.title.bottom() + gridStep, room.top(), room.bottom() - 0.4 * view.height()));
    }
    return room;
}

void sheet::addStack(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform,
                     const QSizeF& view, const ViewChoice& choice) {
    if (drawing.places.empty()) return;
    if (shown.piece.form.kind == model::FormKind::posts) {
        for (const auto& post : shown.piece.form.posts) {
            const DrawnPlace place = placeAt(drawing, post.at_m);
            const QPointF top = edgeAt(sheet.edge, post.at_m).onEdge();
            const double half = std::max(3.0, post.width_m / 2 * transform.pixelsPerMetre);
            const QPointF out = outOf(place);
            const QPointF along(-out.y() * half, out.x() * half);
            const QPointF down = -out * 18;
            sheet.posts.push_back(QPolygonF({top - along + down, top - along, top + along, top + along + down}));
        }
    } else if (!choice.bend) {  // the band lies where the strokes would
        if (shown.piece.form.kind == model::FormKind::inPlace) {
            sheet.boatSide = lineAlongBoat(sheet.edge);
        } else {
            sheet.formSide = strokesAlongForm(sheet.edge, view);
        }
    }
    if (choice.bend) sheet.bend = bendOf(drawing, transform);
    for (const double at_m : {0.0, drawing.length_m}) {
        QLineF trim = across(placeAt(drawing, at_m), transform, 16);
        const EdgePlace place = edgeAt(sheet.edge, at_m);
        trim.setP1(trim.p1() + place.in * (place.depth_px() + 4));
        sheet.trims.push_back(trim);
        sheet.grips.push_back(trim.p1());
    }
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
        const EdgePlace edge = edgeAt(sheet.edge, tightest.at_m);
        const QPointF foot =
            formIsHollowSide ? edge.face + edge.in * edge.depth_px() : transform.toScreen(place.onOutside);
        sheet.radius = QLineF(foot + toCentre * std::min(radius_px, 56.0), foot);
    }
}

void sheet::addPoints(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform,
                      const ViewChoice& choice) {
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
        if (const auto foot = footOf(shown, mark.index)) mark.frame.foot = transform.toScreen(*foot);
        if (const auto* strap = model::as<model::Strap>(station); strap && strap->to_m) {
            mark.strap = strapMark(station, strapPlan(*shown.plan, mark.index), drawing, transform);
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

void sheet::addHolding(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform,
                       const ViewChoice& choice) {
    if (drawing.places.empty()) return;
    sheet.ground = groundOf(shown, transform);
    sheet.troubles = propTroubles(shown, transform);
    sheet.hull = hullOf(shown, transform, sheet.forceScale, choice.forces);
    if (!choice.forces) return;
    for (const StationMark& mark : sheet.stations) {
        const model::Station& station = shown.piece.holding.stations[mark.index];
        if (const auto* strap = strapPlan(*shown.plan, mark.index)) {
            for (const ForceArrow& arrow :
                 strapArrows(station, *strap, drawing, transform, sheet.forceScale, shown.display)) {
                sheet.forces.push_back(arrow);
            }
            continue;
        }
        const auto* held = heldStation(*shown.plan, mark.index);
        if (!held || station.side) continue;
        sheet.forces.push_back(stationArrow(*held, mark.frame, mark.shape.reach, sheet.forceScale, shown.display));
    }
    for (const ForceArrow& arrow : overloadedPosts(*shown.plan, sheet.edge, sheet.forceScale, shown.display)) {
        sheet.forces.push_back(arrow);
    }
}

void sheet::addFindings(Sheet& sheet, const Shown& shown, const Drawing& drawing) {
    if (drawing.places.empty()) return;
    constexpr double away_px = 24;
    for (const plan::Finding& finding : shown.plan->findings) {
        if (!finding.at_m || finding.point >= 0) continue;  // a point has its mark itself
        if (!plan::isCause(finding)) continue;
        const DrawnPlace place = placeAt(drawing, *finding.at_m);
        const EdgePlace edge = edgeAt(sheet.edge, *finding.at_m);
        const QPointF foot = edge.face + edge.in * edge.depth_px();
        QPointF at = foot + edge.in * away_px;
        if (!sheet.radius.isNull() && QLineF(at, sheet.radius.center()).length() < 24) {
            at += QPointF(outOf(place).y(), -outOf(place).x()) * 20;  // beside the arrow
        }
        const auto near = std::find_if(sheet.findings.begin(), sheet.findings.end(),
                                       [&](const FindingMark& mark) { return QLineF(mark.at, at).length() < 16; });
        const QString words = QString::fromStdString(plan::textOf(finding, shown.display));
        if (near != sheet.findings.end()) {  // the worst come first, so the mark stays
            near->words += QStringLiteral("\n") + words;
            continue;
        }
        sheet.findings.push_back({finding.severity, at, QLineF(foot, at), *finding.at_m, words});
    }
}

Sheet sheetOf(const Shown& shown, const Drawing& drawing, const Transform& transform, const QSizeF& view,
              const ViewChoice& choice, const Fonts& fonts, bool waiting) {
    Sheet sheet;
    if (shown.pieceIndex >= 0 && shown.plan) {
        sheet.edge = formEdgeOf(shown, drawing, transform, choice.gapsMagnified, choice.pressure && !choice.bend);
        sheet.form = formLineMark(drawing, transform, choice.gapsMagnified);
        if (choice.forces) sheet.forceScale = forceScaleOf(*shown.plan, shown.display);
    }
    if (shown.pieceIndex >= 0) sheet::addPoints(sheet, shown, drawing, transform, choice);
    if (shown.pieceIndex >= 0 && shown.plan) {
        sheet::addStack(sheet, shown, drawing, transform, view, choice);
        sheet::addStations(sheet, shown, drawing, transform);
        sheet::addHolding(sheet, shown, drawing, transform, choice);
        sheet::addFindings(sheet, shown, drawing);
    }
    Occupied occupied = sheet::occupiedBy(sheet, drawing, transform, view);
    sheet::addFurniture(sheet, shown, drawing, transform, view, fonts, waiting, occupied);
    if (shown.pieceIndex < 0) return sheet;
    sheet::addWords(sheet, shown, drawing, transform, view, choice, fonts, occupied);
    return sheet;
}

}  // namespace fayline::app
