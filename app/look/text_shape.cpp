#include "app/look/text_shape.hpp"

#include <QFontMetricsF>
#include <QHash>
#include <cmath>

namespace fayline::app {

namespace {

// Beside all that stands next to figures in our sentences, for fonts that draw some pairs closer together.
bool figuresAlike(const QFont& font) {
    const QFontMetricsF metrics(font);
    const QString beside =
        QStringLiteral(" .,;:-+/()%'\"0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ\u00B0\u00B2");
    const auto wide = [&](QChar figure) {
        QString all(figure);
        for (const QChar other : beside) (all += other) += figure;
        return metrics.horizontalAdvance(all + figure);
    };
    const double zero = wide(u'0');
    for (char16_t figure = u'1'; figure <= u'9'; ++figure)
        if (std::abs(wide(figure) - zero) > 1e-6) return false;
    return true;
}

}  // namespace

QString textShape(const QString& words, const QFont& font) {
    static QHash<QFont, bool> alike;
    auto known = alike.find(font);
    if (known == alike.end()) known = alike.insert(font, figuresAlike(font));
    if (!*known) return words;
    QString shape = words;
    for (QChar& each : shape)
        if (each >= u'1' && each <= u'9') each = u'0';
    return shape;
}

double textWidth(const QString& words, const QFont& font) {
    constexpr qsizetype mostKnown = 2000;  // shapes in one font
    static QHash<QFont, QHash<QString, double>> widths;
    QHash<QString, double>& known = widths[font];
    const QString shape = textShape(words, font);
    if (const auto found = known.constFind(shape); found != known.constEnd()) return *found;
    if (known.size() >= mostKnown) known.clear();
    return *known.insert(shape, QFontMetricsF(font).horizontalAdvance(words));
}

int wholeTextWidth(const QString& words, const QFont& font) {
    return qRound(textWidth(words, font));
}

QString elided(const QString& words, const QFont& font, double width) {
    return textWidth(words, font) <= width ? words : QFontMetricsF(font).elidedText(words, Qt::ElideRight, width);
}

QString wrapped(const QString& words, qsizetype most) {
    QString all;
    qsizetype used = 0;  // of the line
    for (const QString& line : words.split(u'\n')) {
        if (!all.isEmpty()) all += u'\n';
        used = 0;
        for (const QString& word : line.split(u' ')) {
            const bool fits = used == 0 || used + 1 + word.size() <= most;
            if (!fits) all += u'\n';
            if (fits && used > 0) all += u' ';
            used = fits && used > 0 ? used + 1 + word.size() : word.size();
            all += word;
        }
    }
    return all;
}

}  // namespace fayline::app
