#include "app/formview/paint.hpp"

#include <QFontMetricsF>
#include <algorithm>
#include <cmath>

#include "app/look/ribbon.hpp"

namespace fayline::app {

namespace {

QColor roleColour(TextRole role, const Theme& theme) {
    switch (role) {
        case TextRole::ink:
            return theme.ink;
        case TextRole::faint:
            return theme.faint;
        case TextRole::accent:
            return theme.accent;
        case TextRole::caution:
            return theme.caution;
        case TextRole::stop:
            return theme.stop;
    }
    return theme.ink;
}

using paint::mix;

constexpr double seen_px = 0.04;  // corners nearer than this to the line without them are not

// Draws the bands, each in the colour that `colour` gives its class. Neighbours are drawn with the same corners of the
// face between them, so that no ground shows through.
template <class Colour>
void paintBands(QPainter& painter, const Lines& faces, const std::vector<Band>& bands, const Colour& colour) {
    std::vector<std::vector<bool>> ends(faces.size());
    for (size_t i = 0; i < faces.size(); ++i) ends[i].resize(static_cast<size_t>(faces[i].size()));
    for (const Band& band : bands) {
        for (const size_t face : {band.strip, band.strip + 1}) ends[face][band.from] = ends[face][band.to] = true;
    }
    std::vector<std::vector<qsizetype>> corners;
    for (size_t i = 0; i < faces.size(); ++i) corners.push_back(cornersSeen(faces[i], seen_px, ends[i]));

    painter.setPen(Qt::NoPen);
    QPolygonF figure;
    int strainClass = -1;
    for (const Band& band : bands) {
        if (band.strainClass != strainClass) painter.setBrush(colour(shareOfClass(strainClass = band.strainClass)));
        const auto side = [&](size_t face) {
            const auto& seen = corners[face];
            const auto first = std::lower_bound(seen.begin(), seen.end(), static_cast<qsizetype>(band.from));
            return std::pair(first, std::upper_bound(first, seen.end(), static_cast<qsizetype>(band.to)));
        };
        figure.clear();
        const auto [in, inEnd] = side(band.strip);
        const auto [out, outEnd] = side(band.strip + 1);
        for (auto at = in; at != inEnd; ++at) figure << faces[band.strip][*at];
        for (auto at = outEnd; at != out;) figure << faces[band.strip + 1][*--at];
        painter.drawPolygon(figure, Qt::WindingFill);
    }
}

// How strongly lines between strips are drawn: they would hide strips that are thin on the screen.
double faceStrength(double strip_px) {
    return std::clamp((strip_px - 1.2) / 5, 0.0, 0.85);
}

}  // namespace

QColor paint::mix(const QColor& from, const QColor& to, double share) {
    const auto part = [share](double a, double b) { return a + (b - a) * share; };
    return QColor::fromRgbF(static_cast<float>(part(from.redF(), to.redF())),
                            static_cast<float>(part(from.greenF(), to.greenF())),
                            static_cast<float>(part(from.blueF(), to.blueF())));
}

void paint::smooth(QPainter& painter, const Lines& lines, const QTransform& pixels, const QPen& pen) {
    // What a pen of one pixel or with dashes draws, a painter draws as fast.
    const bool plain = pen.style() == Qt::SolidLine && pen.widthF() > 1;
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    for (const QPolygonF& line : lines) {
        const QPolygonF seen = decimated(pixels.map(line), seen_px);
        if (plain) {
            drawRibbon(painter, seen, pen.widthF(), pen.color());
        } else if (pen.style() == Qt::SolidLine) {
            painter.drawPolyline(seen);
        } else {
            QPainterPath path;  // dashes run round corners
            path.addPolygon(seen);
            painter.drawPath(path);
        }
    }
}

void paint::ground(QPainter& painter, const Sheet& sheet, const QSizeF& view, const Theme& theme) {
    painter.fillRect(QRectF(QPointF(0, 0), view), theme.ground);
    painter.setRenderHint(QPainter::Antialiasing, false);
    for (const GridLine& line : sheet.grid) {
        painter.setPen(pen(mix(theme.ground, theme.rule, line.axis ? 1.0 : 0.55), 1));
        painter.drawLine(line.line.toLine());
    }
    painter.setRenderHint(QPainter::Antialiasing, true);
}

void paint::stack(QPainter& painter, const Sheet& sheet, const Drawing& drawing, const Transform& transform,
                  const Theme& theme) {
    paint::formEdge(painter, sheet, theme);
    painter.setPen(pen(theme.faint, 1.2));
    for (const QPolygonF& post : sheet.posts) painter.drawPolyline(post);
    if (!sheet.bend.band.isEmpty()) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(mix(theme.ground, theme.note, theme.dark ? 0.35 : 0.28));
        painter.drawPolygon(sheet.bend.band, Qt::WindingFill);
        paint::smooth(painter, {sheet.bend.edge}, QTransform(), pen(theme.note, 1.2));
    }
    if (!sheet.bend.key.isNull()) {
        const QLineF& key = sheet.bend.key;
        painter.fillRect(QRectF(key.x1(), key.y1() - 4, key.length(), 8),
                         mix(theme.ground, theme.note, theme.dark ? 0.35 : 0.28));
        painter.setPen(pen(theme.note, 1.2));
        for (const double x : {key.x1(), key.x2()})
            painter.drawLine(QPointF(x, key.y1() - 5), QPointF(x, key.y1() + 5));
    }

    // Paths are brought to pixels rather than the painter to metres, so that lines have their width on any screen.
    const QTransform pixels = transform.matrix();
    // Without antialiasing neighbours meet without a seam; the lines upon them smooth what is seen of their edges.
    painter.setRenderHint(QPainter::Antialiasing, false);
    Lines faces;
    for (const QPolygonF& face : drawing.faces) faces.push_back(pixels.map(face));
    paintBands(painter, faces, drawing.overRun,
               [&](double share) { return mix(theme.ground, theme.strain(share), 0.4); });
    paintBands(painter, faces, drawing.strips, [&](double share) { return theme.strain(share); });
    painter.setRenderHint(QPainter::Antialiasing, true);

    const double strength = faceStrength(drawing.thinnestStrip_m * transform.pixelsPerMetre);
    if (strength > 0) {
        QColor face = theme.dark ? theme.ground : theme.ink;
        face.setAlphaF(static_cast<float>(strength));
        paint::smooth(painter, drawing.between, pixels, pen(face, 0.8));
        face.setAlphaF(static_cast<float>(strength / 3));
        paint::smooth(painter, drawing.overRunBetween, pixels, pen(face, 0.8));
    }
    paint::smooth(painter, drawing.sawnOff, pixels, pen(theme.ink, 1.2, Qt::DashLine));
    paint::smooth(painter, drawing.overRunOutline, pixels, pen(theme.faint, 1, Qt::DashLine));
    paint::smooth(painter, drawing.outline, pixels, pen(theme.ink, 1));
    paint::smooth(painter, drawing.line, pixels, pen(theme.ink, 2));
    const QPen formPen = pen(theme.faint, 1.2, Qt::DashDotLine);
    paint::smooth(painter, {sheet.form.line}, QTransform(), formPen);
    if (!sheet.formKey.isNull()) {
        painter.setPen(formPen);
        painter.drawLine(sheet.formKey);
    }

    for (const QLineF& line : sheet.pins) {
        painter.setPen(pen(theme.ground, 4));
        painter.drawLine(line);
        painter.setPen(pen(theme.ink, 1.6));
        painter.drawLine(line);
        painter.setBrush(theme.ink);
        for (const QPointF& end : {line.p1(), line.p2()}) painter.drawEllipse(end, 1.8, 1.8);
    }
}

void paint::furniture(QPainter& painter, const Sheet& sheet, const QSizeF& view, const Fonts& fonts,
                      const Theme& theme) {
    if (!sheet.scaleBar.place.isNull()) {
        const QRectF bar = sheet.scaleBar.place;
        const double part = bar.width() / sheet.scaleBar.parts;
        painter.setPen(Qt::NoPen);
        painter.setBrush(theme.ground);
        painter.drawRect(bar);
        painter.setBrush(theme.ink);
        for (int i = 0; i < sheet.scaleBar.parts; i += 2) {
            painter.drawRect(QRectF(bar.left() + i * part, bar.top(), part, bar.height()));
        }
        painter.setPen(pen(theme.ink, 1));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(bar);
    }
    if (!sheet.forceBar.isNull()) paint::forceScale(painter, sheet.forceBar, theme);
    if (!sheet.ramp.isNull()) {
        const QRectF ramp = sheet.ramp;
        painter.setPen(Qt::NoPen);
        const double step = ramp.width() / strainClasses;
        painter.setRenderHint(QPainter::Antialiasing, false);
        for (int i = 0; i < strainClasses; ++i) {
            painter.fillRect(
                QRectF(ramp.left() + i * step, ramp.top(), std::ceil(step) + 1, ramp.height()).intersected(ramp),
                theme.strain((i + 0.5) / strainClasses));
        }
        painter.setRenderHint(QPainter::Antialiasing, true);
        painter.setPen(pen(theme.ink, 1));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(ramp);
        // The greatest strain of this piece, as a pointer through the ramp.
        const double x = ramp.left() + std::min(sheet.rampShare, 1.0) * ramp.width();
        painter.setPen(pen(theme.ground, 4));
        painter.drawLine(QPointF(x, ramp.top() - 3), QPointF(x, ramp.bottom() + 2));
        painter.setPen(pen(theme.ink, 2));
        painter.drawLine(QPointF(x, ramp.top() - 3), QPointF(x, ramp.bottom() + 2));
    }
    if (!sheet.band.isNull()) {
        painter.fillRect(sheet.band, theme.raised);
        painter.save();
        painter.setClipRect(sheet.band);
        QColor stripe = theme.caution;
        stripe.setAlphaF(0.28F);
        painter.setPen(pen(stripe, 5));
        const double height = sheet.band.height();
        for (double x = -height; x < sheet.band.width(); x += 16) {
            painter.drawLine(QPointF(x, height), QPointF(x + height, 0));
        }
        painter.restore();
        for (const Text& text : sheet.texts) {  // the words stand on a plain ground
            if (text.font != TextFont::body || !sheet.band.contains(text.place)) continue;
            painter.fillRect(text.place.adjusted(-gridStep, -1, gridStep, 1), theme.raised);
        }
        painter.setPen(pen(theme.caution, 1.5));
        painter.drawLine(sheet.band.bottomLeft(), sheet.band.bottomRight());
    }
    if (!sheet.emptyTitle.isEmpty()) {
        // Kept clear of whatever points there are: in the upper third.
        const QRectF area(view.width() * 0.1, view.height() * 0.3, view.width() * 0.8, view.height() * 0.5);
        painter.setFont(fonts.body);
        const QFontMetricsF metrics(fonts.body);
        const QRectF title(area.left(), area.top(), area.width(), metrics.height());
        painter.setPen(theme.ink);
        painter.drawText(title, Qt::AlignHCenter | Qt::AlignVCenter, sheet.emptyTitle);
        painter.setPen(theme.faint);
        painter.drawText(area.adjusted(0, metrics.height() + gridStep, 0, 0),
                         static_cast<int>(Qt::AlignHCenter | Qt::AlignTop) | Qt::TextWordWrap, sheet.emptyWords);
    }
}

// Of all that the plan has worked out: fainter where that is of an older state.
double paint::opacityOf(const Sheet& sheet) {
    return sheet.band.isEmpty() ? 1 : 0.5;
}

void paint::texts(QPainter& painter, const std::vector<Text>& texts, const Fonts& fonts, const Theme& theme,
                  double worked) {
    QColor backing = theme.ground;
    backing.setAlphaF(0.8F);
    for (const Text& text : texts) {
        if (text.fixed) painter.fillRect(text.place.adjusted(-2, 0, 2, 0), backing);
    }
    for (const Text& text : texts) {
        if (text.leader.isNull()) continue;
        painter.setOpacity(text.worked ? worked : 1);
        painter.setPen(pen(mix(theme.ground, roleColour(text.role, theme), 0.6), 0.8));
        painter.drawLine(text.leader);
    }
    for (const Text& text : texts) {
        const QColor colour = roleColour(text.role, theme);
        painter.setOpacity(text.worked ? worked : 1);
        painter.setFont(text.font == TextFont::small   ? fonts.small
                        : text.font == TextFont::title ? fonts.title
                                                       : fonts.body);
        if (text.ringed) {
            painter.setPen(pen(colour, 1));
            painter.setBrush(theme.ground);
            painter.drawEllipse(text.place.adjusted(0.5, 0.5, -0.5, -0.5));
        }
        painter.setPen(colour);
        painter.drawText(text.place, Qt::AlignCenter, text.words);
    }
    painter.setOpacity(1);
}

void paintForm(QPainter& painter, const Sheet& sheet, const Drawing& drawing, const Transform& transform,
               const QSizeF& view, const ViewChoice& choice, const Fonts& fonts, const Theme& theme) {
    paint::ground(painter, sheet, view, theme);
    painter.setOpacity(paint::opacityOf(sheet));
    if (!drawing.line.empty()) paint::stack(painter, sheet, drawing, transform, theme);
    painter.setOpacity(1);
    paint::marks(painter, sheet, choice, theme);
    paint::furniture(painter, sheet, view, fonts, theme);
    paint::texts(painter, sheet.texts, fonts, theme, paint::opacityOf(sheet));
}

void paintPlace(QPainter& painter, const DrawnPlace& place, const Transform& transform, const QColor& colour) {
    constexpr double beyond_px = 9;
    const QPointF out = QPointF(place.outwards.x_m, -place.outwards.y_m) * beyond_px;
    const QPointF form = transform.toScreen(place.onForm);
    const QPointF outside = transform.toScreen(place.onOutside);
    painter.setPen(pen(colour, 2));
    painter.drawLine(form - out, outside + out);
    painter.setBrush(colour);
    painter.setPen(Qt::NoPen);
    painter.drawEllipse(transform.toScreen(place.onLine), 3.5, 3.5);
}

}  // namespace fayline::app
