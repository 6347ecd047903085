#include "app/panels/offsets_text.hpp"

#include <QDir>
#include <QFile>
#include <QStringDecoder>
#include <QStringList>

#include "app/panels/reading.hpp"
#include "core/io/offsets_table.hpp"
#include "core/units/input_error.hpp"

namespace fayline::app {

QString offsetsFilter() {
    return tr("Offsets in columns (*.csv *.tsv *.txt);;All files (*)");
}

QString readOffsetsFile(const QString& fileName) {
    const std::string name = text(QDir::toNativeSeparators(fileName));
    QFile file(fileName);
    if (!file.open(QIODevice::ReadOnly))
        throw units::InputError("", name + " cannot be read: " + text(file.errorString()), "choose another file");
    const QByteArray bytes = file.read(io::longestTable + 1);
    if (bytes.size() > qint64(io::longestTable))
        throw units::InputError("", name + " is too large to be a table of offsets", "choose a file below 1 MB");
    QStringDecoder decode(QStringDecoder::Utf8);
    const QString read = decode(bytes);
    return decode.hasError() ? QString::fromLatin1(bytes) : read;
}

QString writeOffsetsText(const std::vector<model::Point>& points, const units::Display& display) {
    QString out = QStringLiteral("label\tx\ty\n");
    for (const model::Point& point : points) {
        QString label = text(point.label);
        label.replace(QLatin1Char('\t'), QLatin1Char(' '));
        const bool quote = label.startsWith(QLatin1Char('"')) || label.startsWith(QLatin1Char('#'));
        if (quote)
            label = QLatin1Char('"') + label.replace(QStringLiteral("\""), QStringLiteral("\"\"")) + QLatin1Char('"');
        out += label + QLatin1Char('\t') + coordinateText(point, 0, display) + QLatin1Char('\t') +
               coordinateText(point, 1, display) + QLatin1Char('\n');
    }
    return out;
}

}  // namespace fayline::app
