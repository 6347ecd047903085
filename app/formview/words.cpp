// The words beside points, stations, trim lines and the tightest place.
#include <QFontMetricsF>
#include <QObject>
#include <algorithm>
#include <cmath>

#include "app/formview/sheet.hpp"
#include "app/look/text.hpp"
#include "app/look/text_shape.hpp"
#include "core/math/count.hpp"
#include "core/model/hold_traits.hpp"
#include "core/plan/findings/line_wording.hpp"
#include "core/units/display.hpp"

namespace fayline::app {

namespace {

constexpr double longestCaption_px = 220;

enum Importance {
    ordinary,
    inner = 10,
    ends = 20,
    trim = 30,
    figures = 35,
    tightest = 50,
    suspects = 60,
    chosen = 70,
    stations = 80,  // a number is never left out: it takes its place first
};

QSizeF sizeOf(const QFont& font, const QString& words) {
    const QFontMetricsF metrics(font);
    return {std::ceil(textWidth(words, font)) + 2, std::ceil(metrics.height())};
}

// "try 2-4-4+", both coordinates where both would change; empty where no slip fits.
QString repairOf(const line::Suspect& suspect, const model::Point& point) {
    if (suspect.slip.empty()) return {};
    QStringList changed;
    for (int axis = 0; axis < 2; ++axis) {
        if (suspect.tryWritten[axis].empty() || suspect.tryWritten[axis] == point.written[axis]) continue;
        changed << text(suspect.tryWritten[axis]);
    }
    return changed.isEmpty() ? QString() : QObject::tr("try %1").arg(changed.join(QStringLiteral(", ")));
}

QString captionOf(const Shown& shown, const PointMark& mark) {
    const QString label = text(shown.piece.line.points[mark.index].label);
    if (!mark.suspect) return label;
    for (const auto& suspect : shown.plan->line.misread.suspects) {
        if (suspect.point != mark.index) continue;
        const QString repair = repairOf(suspect, shown.piece.line.points[mark.index]);
        const QString name = pointName(shown.piece, mark.index);
        return repair.isEmpty() ? name + QObject::tr(": read again") : name + QStringLiteral(": ") + repair;
    }
    return label;
}

// Where the number of a station stands best: beyond its arrow.
QPointF numberFoot(const Sheet& sheet, const StationMark& mark) {
    if (!mark.frame.foot) {
        for (const ForceArrow& arrow : sheet.forces) {
            if (arrow.station == mark.index && model::traitsOf(mark.kind).closesGap) return arrow.shaft.p1();
        }
    }
    return mark.frame.base + mark.frame.outwards * mark.shape.reach;
}

}  // namespace

void sheet::addWords(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform,
                     const QSizeF& view, const ViewChoice& choice, const Fonts& fonts, const Occupied& occupied) {
    const double top = sheet.band.isNull() ? 2 : sheet.band.bottom() + 2;
    const QRectF seen(2, top, view.width() - 4, view.height() - top - 2);
    std::vector<Wish> wishes;
    const auto wish = [&](const QString& words, const QPointF& anchor, const QPointF& towards,
                          int importance) -> Wish& {
        Wish made;
        made.words = words;
        made.size = sizeOf(fonts.small, words);
        made.anchor = anchor;
        made.towards = towards;
        made.importance = importance;
        wishes.push_back(made);
        return wishes.back();
    };

    for (const PointMark& mark : sheet.points) {
        const QString caption = elided(captionOf(shown, mark), fonts.small, longestCaption_px);
        if (caption.isEmpty()) continue;
        QPointF away(-1, 0.2);
        if (!drawing.places.empty()) {
            const double at_m = mark.onLine
                                    ? mark.at_m
                                    : nearestPlace(drawing, shown.plan->line.fair.line, transform.toDrawing(mark.at));
            const DrawnPlace place = placeAt(drawing, at_m);
            away = QPointF(-place.outwards.x_m, place.outwards.y_m);
        }
        const bool end = mark.index == 0 || mark.index + 1 == math::countOf(sheet.points);
        const bool chosenOne = mark.index == choice.point;
        Wish& made = wish(caption, mark.at, away,
                          chosenOne        ? chosen
                          : mark.suspect   ? suspects
                          : end            ? ends
                          : mark.index % 2 ? ordinary
                                           : inner);
        made.away = mark.suspect ? 14 : 11;
        made.role = chosenOne ? TextRole::accent : mark.suspect ? TextRole::caution : TextRole::ink;
        made.tag = mark.index;
    }
    double ring = 0;  // as wide as the widest number asks
    for (const StationMark& mark : sheet.stations) {
        const QSizeF size = sizeOf(fonts.small, QString::number(mark.number));
        ring = std::max({ring, size.width() + 3, size.height() + 1});
    }
    for (const StationMark& mark : sheet.stations) {
        if (mark.number <= 0) continue;
        QPointF foot = numberFoot(sheet, mark);
        if (!seen.contains(foot)) foot = mark.frame.base;  // its arrow may reach out of the view
        Wish& made = wish(QString::number(mark.number), foot, mark.frame.outwards, stations);
        made.size = QSizeF(ring, ring);
        made.ringed = true;
        made.station = mark.index;
        made.away = 2;
        made.farthest = 34;
        made.role = mark.index == choice.station ? TextRole::accent : TextRole::ink;
    }
    const auto wishFigure = [&](const ForceArrow& arrow) {
        const bool chosenOne = arrow.station >= 0 && arrow.station == choice.station;
        Wish& made = wish(arrow.figure, arrow.shaft.center(), arrow.towards, chosenOne ? chosen - 1 : figures);
        made.away = 6;
        made.farthest = 36;
        made.worked = true;
        made.role = chosenOne                                                            ? TextRole::accent
                    : arrow.state == ForceState::full || arrow.state == ForceState::over ? TextRole::caution
                    : arrow.state == ForceState::slack                                   ? TextRole::faint
                                                                                         : TextRole::ink;
    };
    for (const ForceArrow& arrow : sheet.forces) wishFigure(arrow);
    for (const PropTrouble& trouble : sheet.troubles) {
        Wish& made = wish(trouble.words, trouble.at, QPointF(1, 0), suspects - 1);
        made.away = 11;
        made.worked = true;
        made.role = trouble.stop ? TextRole::stop : TextRole::caution;
    }
    for (const BlockMark& block : sheet.hull.blocks) {
        if (block.push) wishFigure(*block.push);
        if (!block.lifts) continue;
        Wish& made = wish(QObject::tr("hull lifts off"), block.body.center(), QPointF(1, 0.3), suspects - 1);
        made.away = 14;
        made.worked = true;
        made.role = TextRole::stop;
    }
    if (sheet.hull.centre) wish(sheet.hull.weight, *sheet.hull.centre, QPointF(1, -0.3), trim).away = 11;
    if (!sheet.radius.isNull()) {
        const double radius_m = plan::shownRadius(shown.plan->line, shown.display);
        const QString words = QObject::tr("R %1").arg(text(units::writeLength(radius_m, shown.display)));
        Wish& made = wish(words, sheet.radius.p1(), sheet.radius.p1() - sheet.radius.p2(), tightest);
        made.away = 3;
        made.worked = true;
    }
    for (size_t i = 0; i < sheet.trims.size(); ++i) {
        const double at_m = i == 0 ? 0 : drawing.length_m;
        const QString words = i == 0 ? QObject::tr("trim line")
                                     : QObject::tr("trim line %1").arg(text(units::writeLength(at_m, shown.display)));
        Wish& made = wish(words, sheet.trims[i].p2(), sheet.trims[i].p2() - sheet.trims[i].p1(), trim);
        made.away = 3;
        made.role = TextRole::faint;
    }
    placeTexts(sheet.texts, wishes, seen, occupied);
}

}  // namespace fayline::app
