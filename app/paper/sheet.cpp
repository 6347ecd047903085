#include "app/paper/sheet.hpp"

#include <QFont>
#include <QFontMetricsF>
#include <QPainter>
#include <QPen>

namespace fayline::app::paper {

namespace {

// Letters are measured and drawn at this size and scaled to the sheet, so that lines break alike on every device.
constexpr int bodyPixels = 200;

QFont fontOf(bool bold) {
    QFont font;
    font.setFamilies({"DejaVu Sans", "Noto Sans", "Liberation Sans", "sans-serif"});
    font.setStyleHint(QFont::SansSerif);
    font.setPixelSize(bodyPixels);
    font.setBold(bold);
    font.setHintingPreference(QFont::PreferNoHinting);
    return font;
}

QPen penOf(const Stroke& stroke) {
    QPen pen(Qt::black, stroke.width_mm, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
    const double unit = stroke.width_mm;
    switch (stroke.dash) {
        case Dash::solid:
            break;
        case Dash::dotted:
            pen.setDashPattern({0.25 / unit, 1.25 / unit});
            break;
        case Dash::dashed:
            pen.setDashPattern({3 / unit, 1.5 / unit});
            break;
        case Dash::chain:
            pen.setDashPattern({5 / unit, 1.2 / unit, 0.6 / unit, 1.2 / unit});
            break;
    }
    return pen;
}

}  // namespace

Page pageOf(const QPageLayout& layout) {
    const QRectF full = layout.fullRect(QPageLayout::Millimeter);
    const QMarginsF margins = layout.margins(QPageLayout::Millimeter);
    return {full.width(), full.height(), QRectF(QPointF(0, 0), full.size()).marginsRemoved(margins)};
}

Page turned(const Page& page) {
    // A place (x, y) of the paper is (y, width - x) of the turned one.
    const QRectF& area = page.area;
    return {page.height_mm, page.width_mm,
            QRectF(area.top(), page.width_mm - area.right(), area.height(), area.width())};
}

double widthOf(const QString& text, double size_mm, bool bold) {
    static const QFontMetricsF plainMetrics(fontOf(false));
    static const QFontMetricsF boldMetrics(fontOf(true));
    return (bold ? boldMetrics : plainMetrics).horizontalAdvance(text) * size_mm / bodyPixels;
}

QRectF extent(const Words& words) {
    const double width = widthOf(words.text, words.size_mm, words.bold);
    double left = words.at.x();
    if (words.lean == Lean::centre) left -= width / 2;
    if (words.lean == Lean::right) left -= width;
    return {left, words.at.y() - capitals * words.size_mm, width, (capitals + descent) * words.size_mm};
}

QString fitted(const QString& text, double size_mm, double width_mm, bool bold) {
    if (widthOf(text, size_mm, bold) <= width_mm) return text;
    const QFontMetricsF metrics(fontOf(bold));
    return metrics.elidedText(text, Qt::ElideMiddle, width_mm * bodyPixels / size_mm);
}

void addLine(Sheet& sheet, const QPointF& from, const QPointF& to, double width_mm, Dash dash) {
    sheet.strokes.push_back({QPolygonF({from, to}), width_mm, dash});
}

void addBox(Sheet& sheet, const QRectF& box, double width_mm) {
    sheet.strokes.push_back({QPolygonF(box), width_mm});
}

void addWords(Sheet& sheet, const QString& text, const QPointF& at, double size_mm, Lean lean, bool bold) {
    sheet.words.push_back({text, at, size_mm, lean, bold});
}

double addParagraph(Sheet& sheet, const QRectF& box, const QString& text, double size_mm, bool bold) {
    const QStringList parts = text.split(' ', Qt::SkipEmptyParts);
    double top = box.top();
    int next = 0;
    while (next < parts.size() && top + size_mm <= box.bottom()) {
        QString line = parts[next++];
        while (next < parts.size() && widthOf(line + ' ' + parts[next], size_mm, bold) <= box.width()) {
            line += ' ' + parts[next++];
        }
        const bool last = top + (lineSpacing + 1) * size_mm > box.bottom();
        if (last && next < parts.size()) {
            line = fitted(line, size_mm, box.width() - widthOf("…", size_mm, bold), bold) + "…";
        }
        addWords(sheet, fitted(line, size_mm, box.width(), bold), {box.left(), top + capitals * size_mm}, size_mm,
                 Lean::left, bold);
        top += lineSpacing * size_mm;
    }
    return top;
}

QStringList wrapped(const QString& text, double width_mm, double size_mm, bool bold) {
    QStringList lines;
    QString line;
    const auto fits = [&](const QString& words) { return widthOf(words, size_mm, bold) <= width_mm; };
    for (QString word : text.split(' ', Qt::SkipEmptyParts)) {
        if (!line.isEmpty() && fits(line + ' ' + word)) {
            line += ' ' + word;
            continue;
        }
        if (!line.isEmpty()) lines << line;
        while (!fits(word) && word.size() > 1) {
            qsizetype length = word.size() - 1;
            while (length > 1 && !fits(word.left(length))) --length;
            if (length > 1 && word[length - 1].isHighSurrogate()) --length;
            lines << word.left(length);
            word.remove(0, length);
        }
        line = word;
    }
    if (!line.isEmpty()) lines << line;
    return lines.replaceInStrings(QChar(QChar::Nbsp), QString(" "));
}

void paint(const Sheet& sheet, QPainter& painter) {
    for (const Stroke& stroke : sheet.strokes) {
        if (stroke.filled) {
            painter.setPen(Qt::NoPen);
            painter.setBrush(Qt::black);
            painter.drawPolygon(stroke.points);
            continue;
        }
        painter.setPen(penOf(stroke));
        painter.setBrush(Qt::NoBrush);
        if (stroke.points.isClosed() && stroke.points.size() > 2) {
            painter.drawPolygon(stroke.points);
        } else {
            painter.drawPolyline(stroke.points);
        }
    }
    painter.setPen(Qt::black);
    for (const Words& words : sheet.words) {
        painter.save();
        painter.setFont(fontOf(words.bold));
        painter.translate(extent(words).left(), words.at.y());
        painter.scale(words.size_mm / bodyPixels, words.size_mm / bodyPixels);
        painter.drawText(QPointF(0, 0), words.text);
        painter.restore();
    }
}

}  // namespace fayline::app::paper
