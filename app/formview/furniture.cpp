// Grid, scale bar, ramp of strain, title, and what is said when there is nothing to draw.
#include <QFontMetricsF>
#include <QObject>
#include <algorithm>
#include <cmath>

#include "app/formview/sheet.hpp"
#include "app/look/text.hpp"
#include "app/look/text_shape.hpp"
#include "app/look/theme.hpp"
#include "core/units/display.hpp"
#include "core/units/units.hpp"

namespace fayline::app {

namespace {

constexpr double margin_px = gridStep;

QSizeF sizeOfMark(const QFont& font, const QString& words) {
    const QFontMetricsF metrics(font);
    return {std::ceil(textWidth(words, font)) + 2, std::ceil(metrics.height())};
}

// The steps a grid may have: those of a rule in the notation.
std::vector<double> steps(units::LengthNotation notation) {
    std::vector<double> steps;
    if (notation == units::LengthNotation::millimetres) {
        for (double decade = 0.001; decade < 200; decade *= 10) {
            for (const double each : {1.0, 2.0, 5.0}) steps.push_back(decade * each);
        }
        return steps;
    }
    for (const double inches :
         {0.0625, 0.125, 0.25, 0.5, 1.0, 2.0, 3.0, 6.0, 12.0, 24.0, 60.0, 120.0, 240.0, 600.0, 1200.0, 2400.0}) {
        steps.push_back(inches * units::inch_m);
    }
    return steps;
}

double stepOfAtLeast(units::LengthNotation notation, double least_m) {
    const auto all = steps(notation);
    const auto found = std::lower_bound(all.begin(), all.end(), least_m);
    return found == all.end() ? all.back() : *found;
}

// Whether a legend may stand there: in the view, on nothing drawn that may not be covered and on no words.
bool freeFor(const Sheet& sheet, const QRectF& place, const QRectF& area, const Occupied& occupied) {
    const auto touches = [&](const Text& other) { return other.place.intersects(place); };
    return area.contains(place) && !occupied.barred(place) &&
           std::none_of(sheet.texts.begin(), sheet.texts.end(), touches);
}

struct Rows {  // heights of what stands at the bottom of the view
    double figures_px;
    double furniture_px;
};

Rows rowsOf(const Fonts& fonts) {
    const double line = std::ceil(QFontMetricsF(fonts.small).height());
    return {line + 4, 2 * line + 3 * margin_px};
}

void addGrid(Sheet& sheet, const Shown& shown, const Transform& transform, const QSizeF& view, const Fonts& fonts,
             const Occupied& occupied) {
    constexpr double least_px = 88;
    const auto notation = shown.display.lengths;
    const double step_m = stepOfAtLeast(notation, least_px / transform.pixelsPerMetre);
    const line::Xy lowLeft = transform.toDrawing({0, view.height()});
    const line::Xy highRight = transform.toDrawing({view.width(), 0});
    const QRectF area(QPointF(2, 2), QSizeF(view.width() - 4, view.height() - 4));
    const double top = sheet.band.isNull() ? 0 : sheet.band.bottom();

    for (double i = std::ceil(lowLeft.x_m / step_m); i * step_m <= highRight.x_m; ++i) {
        const double x = transform.toScreen({i * step_m, 0}).x();
        sheet.grid.push_back({QLineF(x, top, x, view.height()), i == 0});
        const QString figure = text(units::writeLength(i * step_m, notation));
        const QSizeF size = sizeOfMark(fonts.small, figure);
        Text words{figure, QRectF(QPointF(x + 3, view.height() - size.height() - 2), size), TextRole::faint};
        if (!occupied.barred(words.place)) addText(sheet.texts, words, area);
    }
    for (double i = std::ceil(lowLeft.y_m / step_m); i * step_m <= highRight.y_m; ++i) {
        const double y = transform.toScreen({0, i * step_m}).y();
        if (y < top) continue;
        sheet.grid.push_back({QLineF(0, y, view.width(), y), i == 0});
        const QString figure = text(units::writeLength(i * step_m, notation));
        const QSizeF size = sizeOfMark(fonts.small, figure);
        Text words{figure, QRectF(QPointF(4, y - size.height() - 1), size), TextRole::faint};
        if (words.place.bottom() >= view.height() - rowsOf(fonts).figures_px || occupied.barred(words.place)) continue;
        addText(sheet.texts, words, area);
    }
}

void addScaleBar(Sheet& sheet, const Shown& shown, const Transform& transform, const QSizeF& view, const Fonts& fonts,
                 const Occupied& occupied) {
    constexpr double most_px = 200;
    const auto notation = shown.display.lengths;
    const auto all = steps(notation);
    auto found = std::upper_bound(all.begin(), all.end(), most_px / transform.pixelsPerMetre);
    if (found == all.begin()) return;
    const double length_m = *--found;
    const double length_px = length_m * transform.pixelsPerMetre;
    const bool byTens = notation == units::LengthNotation::millimetres;
    const double left = 7 * margin_px;
    const QSizeF lineSize = sizeOfMark(fonts.small, QStringLiteral("0"));
    const double bottom = view.height() - rowsOf(fonts).figures_px - margin_px;
    const double y = bottom - 6 - 2 - lineSize.height();
    const QRectF area(QPointF(0, 0), view);
    const QString far = text(units::writeLengthWithUnit(length_m, notation));
    const QSizeF size = sizeOfMark(fonts.small, far);
    const QRectF whole(QPointF(left - 2, y), QPointF(left + length_px + size.width() / 2, bottom));
    if (!freeFor(sheet, whole, area, occupied)) return;
    sheet.scaleBar = {QRectF(left, bottom - 6, length_px, 6), byTens ? 5 : 6};
    addText(sheet.texts, {QStringLiteral("0"), QRectF(QPointF(left - 1, y), lineSize), TextRole::ink}, area);
    addText(sheet.texts, {far, QRectF(QPointF(left + length_px - size.width() / 2, y), size), TextRole::ink}, area);
}

// What an arrow of the unit's length stands for, beside the scale of lengths.
void addForceScale(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform,
                   const QSizeF& view, const Fonts& fonts, const Occupied& occupied) {
    if (sheet.forceScale.unit_N <= 0 || drawing.places.empty()) return;
    QString words = sheet.forceScale.words;
    const double times = hullOf(shown, transform, sheet.forceScale, true).times;
    if (times > 1) {
        words +=
            QObject::tr(" (blocks %1)").arg(text(units::writeForce(sheet.forceScale.unit_N * times, shown.display)));
    }
    const QSizeF size = sizeOfMark(fonts.small, words);
    const double left = sheet.scaleBar.place.isNull() ? 7 * margin_px : sheet.scaleBar.place.right() + 7 * margin_px;
    const double width = std::max(size.width(), ForceScale::unit_px);
    if (left + width > view.width() - 2 * margin_px) return;
    const double bottom = view.height() - rowsOf(fonts).figures_px - margin_px;
    const QRectF whole(QPointF(left - 2, bottom - 8 - size.height()), QPointF(left + width, bottom + 2));
    if (!freeFor(sheet, whole, QRectF(QPointF(0, 0), view), occupied)) return;
    const Text figure{words, QRectF(QPointF(left - 1, bottom - 6 - 2 - size.height()), size), TextRole::ink};
    if (!addText(sheet.texts, figure, QRectF(QPointF(0, 0), view))) return;
    sheet.forceBar = QLineF(left, bottom - 3, left + ForceScale::unit_px, bottom - 3);
}

void addRamp(Sheet& sheet, const Drawing& drawing, const QSizeF& view, const Fonts& fonts, const Occupied& occupied) {
    if (drawing.strips.empty()) return;
    constexpr double length_px = 20 * gridStep;
    const QString title = QObject::tr("Bend, % of breaking the strip");
    const QSizeF titleSize = sizeOfMark(fonts.small, title);
    const double width = std::max(length_px, titleSize.width());
    const double left = view.width() - width - 3 * margin_px;
    double taken = sheet.scaleBar.place.right();
    for (const Text& other : sheet.texts) {
        if (!sheet.forceBar.isNull() && other.words.startsWith(sheet.forceScale.words)) {
            taken = std::max(sheet.forceBar.x2(), other.place.right()) - 2 * margin_px;
        }
    }
    if (left < taken + 6 * margin_px) return;  // no room beside the scale bars
    const double bottom = view.height() - rowsOf(fonts).figures_px - margin_px;
    const double line = titleSize.height();
    const double y = bottom - line;
    const QRectF area(QPointF(0, 0), view);
    const QRectF ramp(left, y - 2 - margin_px, width, margin_px);
    if (!freeFor(sheet, ramp.adjusted(-2, -4 - line, 2 * margin_px, 2 + line), area, occupied)) return;
    sheet.ramp = ramp;
    sheet.rampShare = drawing.greatestShare;

    const auto addFigure = [&](const QString& figure, double share, TextRole role) {
        const QSizeF size = sizeOfMark(fonts.small, figure);
        const double x = sheet.ramp.left() + std::min(share, 1.0) * sheet.ramp.width() - size.width() / 2;
        const QRectF place(QPointF(std::clamp(x, 0.0, view.width() - size.width() - 4), y), size);
        const auto touches = [&](const Text& other) { return other.place.intersects(place.adjusted(-4, 0, 4, 0)); };
        if (std::any_of(sheet.texts.begin(), sheet.texts.end(), touches)) return;
        addText(sheet.texts, {figure, place, role}, area);
    };
    addText(sheet.texts, {title, QRectF(QPointF(left, sheet.ramp.top() - 3 - line), titleSize), TextRole::faint}, area);
    addFigure(text(units::writeShare(drawing.greatestShare)), drawing.greatestShare, TextRole::ink);
    for (const double share : {0.0, 1.0, 0.5}) addFigure(text(units::writeShare(share)), share, TextRole::faint);
}

// A line of the title, with a sample before its words where it has one.
struct TitleLine {
    QString words;
    TextRole role = TextRole::faint;
    TextFont font = TextFont::small;
    double sample_px = 0;
    QLineF* sample = nullptr;
};

// A round radius at which the band of the bend is a width that an eye can compare.
double keyRadius(const Sheet& sheet, units::LengthNotation notation) {
    constexpr double wanted_px = 28;
    return stepOfAtLeast(notation, sheet.bend.perCurvature_px / wanted_px);
}

std::vector<TitleLine> titleLines(Sheet& sheet, const Shown& shown, const QSizeF& view, const Fonts& fonts) {
    std::vector<TitleLine> lines;
    const QString name =
        elided(QString::fromStdString(shown.piece.name), fonts.title, std::max(40.0, view.width() - 12 * margin_px));
    if (!name.isEmpty()) lines.push_back({name, TextRole::ink, TextFont::title});
    if (sheet.misfitTimes > 1)
        lines.push_back({QObject::tr("Misfits drawn %1 times their size").arg(sheet.misfitTimes)});
    if (sheet.edge.gaps && sheet.edge.gapTimes > 1) {
        lines.push_back({QObject::tr("Gaps drawn %1 times their size").arg(sheet.edge.gapTimes)});
    }
    if (sheet.edge.greatestPressure_Pa > 0) {
        const QString pressure = text(units::writePressure(sheet.edge.greatestPressure_Pa, shown.display));
        lines.push_back({shown.piece.form.kind == model::FormKind::inPlace
                             ? QObject::tr("Pressure on the boat up to %1").arg(pressure)
                             : QObject::tr("Pressure on the form up to %1").arg(pressure)});
    }
    if (sheet.form.any()) {
        lines.push_back({formLineKey(sheet.form), TextRole::faint, TextFont::small, 4 * margin_px, &sheet.formKey});
    }
    constexpr double widest_px = 72;  // beyond the steps of a rule the line is nearly straight
    const double radius_m = keyRadius(sheet, shown.display.lengths);
    if (sheet.bend.perCurvature_px > 0 && sheet.bend.perCurvature_px / radius_m <= widest_px) {
        const QString radius = text(units::writeLengthWithUnit(radius_m, shown.display.lengths));
        lines.push_back({QObject::tr("Bend: a band this wide is a radius of %1").arg(radius), TextRole::faint,
                         TextFont::small, sheet.bend.perCurvature_px / radius_m, &sheet.bend.key});
    }
    return lines;
}

// Name and keys, in the first corner where they cover neither stack nor marks.
void addTitle(Sheet& sheet, const Shown& shown, const QSizeF& view, const Fonts& fonts, const Occupied& occupied) {
    const std::vector<TitleLine> lines = titleLines(sheet, shown, view, fonts);
    if (lines.empty()) return;
    const auto indentOf = [](const TitleLine& line) { return line.sample ? line.sample_px + margin_px : 0.0; };
    const auto sizeOfLine = [&](const TitleLine& line) {
        return sizeOfMark(line.font == TextFont::title ? fonts.title : fonts.small, line.words);
    };
    QSizeF size(0, 0);
    for (const TitleLine& line : lines) {
        const QSizeF own = sizeOfLine(line);
        size = {std::max(size.width(), indentOf(line) + own.width()), size.height() + own.height()};
    }
    const double top = (sheet.band.isNull() ? 0 : sheet.band.bottom()) + margin_px;
    const double bottom = view.height() - rowsOf(fonts).figures_px - rowsOf(fonts).furniture_px - size.height();
    const double left = 2 * margin_px;
    const double right = view.width() - size.width() - 2 * margin_px;
    sheet.title = QRectF(QPointF(left, top), size);
    sheet.titleCovers = true;
    for (const QPointF& corner :
         {QPointF(left, top), QPointF(right, top), QPointF(left + 4 * margin_px, bottom), QPointF(right, bottom)}) {
        const QRectF tried(corner, size);
        if (corner.x() < left || corner.y() < top || occupied.barred(tried)) continue;
        sheet.title = tried;
        sheet.titleCovers = false;
        break;
    }
    const QRectF area(QPointF(0, 0), view);
    QPointF at = sheet.title.topLeft();
    for (const TitleLine& line : lines) {
        const QSizeF own = sizeOfLine(line);
        const QRectF place(at + QPointF(indentOf(line), 0), own);
        const bool covers = occupied.barred(QRectF(at, place.bottomRight()));  // where no corner is free
        if (!covers && addText(sheet.texts, {line.words, place, line.role, line.font}, area) && line.sample) {
            const double level = std::round(place.center().y()) + 0.5;
            *line.sample = QLineF(at.x(), level, at.x() + line.sample_px, level);
        }
        at.ry() += own.height();
    }
}

// Where the words beside an arrow stand: further in.
QRectF besideArrow(const FarMark& mark, const QSizeF& words, const QRectF& inside) {
    constexpr double gap_px = 2;
    const QRectF arrow = mark.place();
    QRectF place(QPointF(0, 0), words);
    place.moveCenter(arrow.center());
    if (mark.at.x() >= inside.right() - 1) {
        place.moveRight(arrow.left() - gap_px);
    } else if (mark.at.x() <= inside.left() + 1) {
        place.moveLeft(arrow.right() + gap_px);
    } else if (mark.at.y() < inside.center().y()) {
        place.moveTop(arrow.bottom() + gap_px);
    } else {
        place.moveBottom(arrow.top() - gap_px);
    }
    return place;
}

// Arrows towards what lies outside of the view, each moved along the edge to where it and its words cover nothing;
// without words where these find no room.
void addFar(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform, const QSizeF& view,
            const Fonts& fonts, Occupied& occupied) {
    constexpr double in_px = FarMark::half_px + 3;
    constexpr double step_px = 12;
    constexpr int steps = 24;
    const Rows rows = rowsOf(fonts);
    const double top = sheet.band.isNull() ? 0 : sheet.band.bottom();
    const QRectF area(QPointF(0, 0), view);
    const QRectF inside(QPointF(in_px, top + in_px),
                        QPointF(view.width() - in_px, view.height() - rows.figures_px - rows.furniture_px));
    for (FarMark& mark : farMarks(shown, drawing, transform, area, inside)) {
        const QPointF wanted = mark.at;
        const QSizeF size = sizeOfMark(fonts.small, mark.words);
        const bool upright = wanted.x() <= inside.left() + 1 || wanted.x() >= inside.right() - 1;
        const QPointF along = upright ? QPointF(0, step_px) : QPointF(step_px, 0);
        const auto put = [&](bool withWords) {
            for (int i = 0; i <= 2 * steps; ++i) {
                mark.at = wanted + along * (i % 2 ? (i + 1) / 2 : -i / 2);
                const QRectF words = besideArrow(mark, size, inside);
                if (!inside.adjusted(-1, -1, 1, 1).contains(mark.at) || !freeFor(sheet, mark.place(), area, occupied)) {
                    continue;
                }
                if (withWords && (!freeFor(sheet, words, area, occupied) || occupied.crossings(words) > 0)) continue;
                occupied.bar(mark.place());
                sheet.far.push_back(mark);
                if (withWords) addText(sheet.texts, {mark.words, words, TextRole::ink}, area);
                return true;
            }
            return false;
        };
        if (!put(true)) put(false);
    }
}

// What is wrong with the drawing as a whole; empty: nothing.
QString bandWords(const Shown& shown, bool waiting) {
    if (shown.plan) {
        if (!shown.outOfDate) return {};
        if (!shown.reason.isEmpty()) {
            return QObject::tr("Old result. Fix first: %1").arg(shown.reason);
        }
        return QObject::tr("Old result. Calculating the new one.");
    }
    if (!shown.reason.isEmpty()) {
        const bool line = shown.reasonPath.isEmpty() || shown.reasonPath.startsWith("line");
        return (line ? QObject::tr("No line through these points yet. Fix first: ")
                     : QObject::tr("The piece cannot be planned yet. Fix first: ")) +
               shown.reason;
    }
    if (shown.piece.line.points.size() < 3) {
        return QObject::tr("No line yet: type three or more offsets in the table, or paste two columns.");
    }
    return waiting ? QObject::tr("Fairing the line") : QString();
}

// The piece has been moved out of the view: how to get it back.
void addOutOfSight(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform,
                   const QSizeF& view, const Fonts& fonts) {
    const Bounds bounds = boundsOf(shown, drawing);
    if (bounds.empty) return;
    const QRectF seen(QPointF(0, 0), view);
    const auto inSight = [&](const line::Xy& place) { return seen.contains(transform.toScreen(place)); };
    for (const auto& point : shown.piece.line.points) {
        if (inSight({point.x_m, point.y_m})) return;
    }
    for (size_t j = 0; j < drawing.places.size(); ++j) {
        const DrawnPlace& place = drawing.places[j];
        if (inSight(place.onForm) || inSight(place.onOutside)) return;
        if (j == 0) continue;
        const DrawnPlace& before = drawing.places[j - 1];  // a stretch may cross the view between two places
        QRectF stretch(transform.toScreen(before.onForm), transform.toScreen(place.onOutside));
        QRectF other(transform.toScreen(before.onOutside), transform.toScreen(place.onForm));
        if (stretch.normalized().united(other.normalized()).intersects(seen)) return;
    }
    const QString words = QObject::tr("The piece lies outside the view. F fits it to the window.");
    const QSizeF size = sizeOfMark(fonts.body, words);
    addText(sheet.texts,
            {words, QRectF(QPointF((view.width() - size.width()) / 2, (view.height() - size.height()) / 2), size),
             TextRole::ink, TextFont::body},
            seen);
}

void addBand(Sheet& sheet, const Shown& shown, const QSizeF& view, const Fonts& fonts, bool waiting) {
    const QString words = bandWords(shown, waiting);
    if (words.isEmpty()) return;
    const QFontMetricsF metrics(fonts.body);
    const double room = view.width() - 6 * margin_px;
    // As many lines as it takes, up to three; the rest is cut short and stands whole in the tooltip.
    QStringList lines{QString()};
    for (const QString& word : words.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
        const QString longer = lines.last().isEmpty() ? word : lines.last() + QLatin1Char(' ') + word;
        if (metrics.horizontalAdvance(longer) <= room || lines.last().isEmpty()) {
            lines.last() = longer;
        } else {
            lines << word;
        }
    }
    if (lines.size() > 3) {
        lines = lines.mid(0, 3);
        lines.last() += QStringLiteral(" …");
    }
    const double line = std::ceil(metrics.height());
    sheet.band = QRectF(0, 0, view.width(), line * static_cast<double>(lines.size()) + 2 * margin_px);
    for (int i = 0; i < lines.size(); ++i) {
        const QString shortened = metrics.elidedText(lines[i], Qt::ElideRight, room);
        const QSizeF size = sizeOfMark(fonts.body, shortened);
        sheet.texts.push_back({shortened, QRectF(QPointF(3 * margin_px, margin_px + i * line), size),
                               shown.reason.isEmpty() ? TextRole::faint : TextRole::ink, TextFont::body});
    }
}

bool addEmpty(Sheet& sheet, const Shown& shown) {
    if (shown.pieceIndex < 0) {
        sheet.emptyTitle = QObject::tr("No piece yet");
        sheet.emptyWords = QObject::tr(
            "Add a piece: a stem, a frame, a beam. Or open a boat that has one.\nThe drawing shows its line, strips "
            "and stations to scale.");
        return true;
    }
    if (shown.plan) return false;
    if (!shown.piece.line.points.empty()) return false;  // those are drawn, and the band says what is missing
    sheet.emptyTitle = QObject::tr("No line yet");
    sheet.emptyWords = QObject::tr("Type three or more offsets in the table of the line, or paste two columns.");
    return true;
}

}  // namespace

QRectF roomForDrawing(const QSizeF& view, const Fonts& fonts) {
    const Rows rows = rowsOf(fonts);
    const double side = std::clamp(view.width() * 0.1, 24.0, 96.0);
    const double top = std::clamp(view.height() * 0.1, 40.0, 64.0);
    const double bottom = rows.figures_px + rows.furniture_px + std::clamp(view.height() * 0.06, 8.0, 40.0);
    return QRectF(side, top, std::max(32.0, view.width() - 2 * side), std::max(32.0, view.height() - top - bottom));
}

void sheet::addFurniture(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform,
                         const QSizeF& view, const Fonts& fonts, bool waiting, Occupied& occupied) {
    if (addEmpty(sheet, shown)) return;
    addBand(sheet, shown, view, fonts, waiting);
    addTitle(sheet, shown, view, fonts, occupied);
    addScaleBar(sheet, shown, transform, view, fonts, occupied);
    if (shown.plan) addForceScale(sheet, shown, drawing, transform, view, fonts, occupied);
    addRamp(sheet, drawing, view, fonts, occupied);
    for (const QRectF& legend : legendsOf(sheet)) occupied.addLegend(legend);
    addOutOfSight(sheet, shown, drawing, transform, view, fonts);
    if (shown.plan) addFar(sheet, shown, drawing, transform, view, fonts, occupied);
    addGrid(sheet, shown, transform, view, fonts, occupied);
}

}  // namespace fayline::app
