#include "app/panels/offsets_text.hpp"

#include <QFile>
#include <QObject>
#include <QRegularExpression>
#include <QStringDecoder>
#include <QStringList>

#include "app/panels/reading.hpp"

namespace fayline::app {

namespace {

struct Row {
    int number = 0;  // of its line, from 1
    QString line;
};

enum class Separator { tab, semicolon, comma, blanks };

// Lines that hold something.
std::vector<Row> rowsOf(QString text) {
    if (text.startsWith(QChar(0xfeff))) text.remove(0, 1);
    static const QRegularExpression ending(QStringLiteral("\r\n|\r|\n"));
    std::vector<Row> rows;
    int number = 0;
    for (const QString& line : text.split(ending)) {
        ++number;
        const QString trimmed = line.trimmed();
        if (!trimmed.isEmpty() && !trimmed.startsWith(QLatin1Char('#'))) rows.push_back({number, line});
    }
    return rows;
}

QStringList splitAt(const QString& line, QChar separator) {
    QStringList fields;
    QString field;
    bool quoted = false;
    bool wasQuoted = false;
    for (qsizetype i = 0; i < line.size(); ++i) {
        const QChar c = line[i];
        // An inch mark stands after a figure, so only a quote that opens a field quotes it.
        if (c == QLatin1Char('"') && !quoted && !wasQuoted && field.trimmed().isEmpty()) {
            quoted = true;
            field.clear();
        } else if (c == QLatin1Char('"') && quoted) {
            if (i + 1 < line.size() && line[i + 1] == QLatin1Char('"')) {
                field += c;
                ++i;
            } else {
                quoted = false;
                wasQuoted = true;
            }
        } else if (c == separator && !quoted) {
            fields << field.trimmed();
            field.clear();
            wasQuoted = false;
        } else {
            field += c;
        }
    }
    return fields << field.trimmed();
}

QStringList fieldsOf(const QString& line, Separator separator) {
    switch (separator) {
        case Separator::tab:
            return splitAt(line, QLatin1Char('\t'));
        case Separator::semicolon:
            return splitAt(line, QLatin1Char(';'));
        case Separator::comma:
            return splitAt(line, QLatin1Char(','));
        case Separator::blanks:
            break;
    }
    static const QRegularExpression runs(QStringLiteral("\\s{2,}|\\t"));
    const QStringList wide = line.trimmed().split(runs);
    if (wide.size() > 1) return wide;
    // Single blanks also stand within a length (27 1/2, 2' 3") and within a label; the last two words are x and y.
    static const QRegularExpression fraction(QStringLiteral("[/'\"]"));
    QStringList words = line.simplified().split(QLatin1Char(' '));
    if (words.size() < 2 || line.contains(fraction)) return {line.trimmed()};
    const QString y = words.takeLast();
    const QString x = words.takeLast();
    if (words.isEmpty()) return {x, y};
    return {words.join(QLatin1Char(' ')), x, y};
}

// Which column holds what, -1: none; and the unit its header gives.
struct Columns {
    int label = -1;
    int x = -1;
    int y = -1;
    QString unitX;
    QString unitY;
    bool header = false;
};

std::optional<double> lengthOf(const QString& field, units::LengthNotation assumed) {
    try {
        return units::readLength(text(field), assumed);
    } catch (const units::InputError&) {
        return std::nullopt;
    }
}

bool hasFigure(const QString& field) {
    static const QRegularExpression figure(QStringLiteral("\\d"));
    return field.contains(figure);
}

// The column named `name`, bare before one with a unit.
int columnNamed(const QStringList& header, const QString& name, QString* unit) {
    const QRegularExpression form(
        QStringLiteral("^%1(?:[ _]*[\\(\\[]?\\s*(mm|cm|m|in|inch|inches)\\s*[\\)\\]]?)?$").arg(name));
    int withUnit = -1;
    for (int i = 0; i < header.size(); ++i) {
        const QRegularExpressionMatch match = form.match(header[i].toLower());
        if (!match.hasMatch()) continue;
        if (match.captured(1).isEmpty()) {
            unit->clear();
            return i;
        }
        if (withUnit >= 0) continue;
        withUnit = i;
        *unit = match.captured(1).startsWith(QStringLiteral("in")) ? QStringLiteral("in") : match.captured(1);
    }
    return withUnit;
}

Columns byPosition(qsizetype count) {
    if (count == 2) return {-1, 0, 1, {}, {}, false};
    return {0, 1, 2, {}, {}, false};
}

Columns columnsOf(const QStringList& first, units::LengthNotation assumed) {
    Columns named;
    named.x = columnNamed(first, QStringLiteral("x"), &named.unitX);
    named.y = columnNamed(first, QStringLiteral("y"), &named.unitY);
    if (named.x >= 0 && named.y >= 0) {
        QString none;
        for (const char* name : {"label", "name", "point", "mark", "station"})
            if (named.label < 0) named.label = columnNamed(first, QLatin1String(name), &none);
        named.header = true;
        return named;
    }
    Columns placed = byPosition(first.size());
    if (first.size() >= 2) {
        const auto isWord = [&](int column) { return !lengthOf(first[column], assumed) && !hasFigure(first[column]); };
        placed.header = isWord(placed.x) && isWord(placed.y);
    }
    return placed;
}

// The text of one coordinate with the header's unit where it is bare, and its length.
std::pair<std::string, double> coordinate(const QString& field, const QString& unit, units::LengthNotation assumed) {
    if (!unit.isEmpty()) {
        const QString whole = field + QLatin1Char(' ') + unit;
        if (const std::optional<double> length = lengthOf(whole, assumed)) return {text(whole), *length};
    }
    return {text(field), units::readLength(text(field), assumed)};
}

model::Point pointOf(const QStringList& fields, const Columns& columns, units::LengthNotation assumed) {
    if (fields.size() < 2) throw units::InputError("", "there is one column only", "give x and y, or a label, x and y");
    Columns here = columns;
    if (!columns.header) {
        here = byPosition(fields.size());
        if (fields.size() > 3 && lengthOf(fields[0], assumed))
            throw units::InputError("", "there are " + std::to_string(fields.size()) + " columns and no header",
                                    "name the columns label, x and y in a first line");
    }
    if (here.x >= fields.size() || here.y >= fields.size())
        throw units::InputError("", "a column is missing", "give as many columns as the header has");
    model::Point point;
    if (here.label >= 0 && here.label < fields.size()) point.label = text(fields[here.label]);
    const auto read = [&](int column, const QString& unit, const char* axis) {
        if (fields[column].isEmpty())
            throw units::InputError("", std::string(axis) + " is empty", "give a length such as 2-3-4+ or 698.5 mm");
        try {
            return coordinate(fields[column], unit, assumed);
        } catch (const units::InputError& error) {
            throw units::InputError("", std::string(axis) + " \"" + text(fields[column]) + "\": " + error.wrong(),
                                    error.accepted());
        }
    };
    std::tie(point.written[0], point.x_m) = read(here.x, here.unitX, "x");
    std::tie(point.written[1], point.y_m) = read(here.y, here.unitY, "y");
    return point;
}

struct Reading {
    std::vector<model::Point> points;
    QStringList problems;
};

Reading readWith(const std::vector<Row>& rows, Separator separator, units::LengthNotation assumed) {
    Reading reading;
    const Columns columns = columnsOf(fieldsOf(rows.front().line, separator), assumed);
    for (std::size_t i = columns.header ? 1 : 0; i < rows.size(); ++i) {
        QStringList fields = fieldsOf(rows[i].line, separator);
        // Spreadsheets fill short rows up.
        while (!columns.header && fields.size() > 2 && fields.last().isEmpty()) fields.removeLast();
        try {
            reading.points.push_back(pointOf(fields, columns, assumed));
        } catch (const units::InputError& error) {
            reading.problems << QStringLiteral("Line %1: %2").arg(rows[i].number).arg(why(error));
        }
    }
    return reading;
}

}  // namespace

std::vector<model::Point> readOffsetsText(const QString& whole, units::LengthNotation assumed, QString* problems) {
    if (problems) problems->clear();
    const std::vector<Row> rows = rowsOf(whole);
    if (rows.empty()) {
        if (problems) *problems = QStringLiteral("There is nothing to read.");
        return {};
    }
    // The one that reads most; of equals the one that a spreadsheet would sooner have written.
    std::optional<Reading> best;
    for (const Separator separator : {Separator::tab, Separator::semicolon, Separator::comma, Separator::blanks}) {
        Reading reading = readWith(rows, separator, assumed);
        if (!best || reading.points.size() > best->points.size()) best = std::move(reading);
    }
    if (best->points.empty()) {
        // Nothing was read: say it of the separator that is there.
        for (const auto& [sign, separator] : {std::pair{'\t', Separator::tab}, std::pair{';', Separator::semicolon},
                                              std::pair{',', Separator::comma}}) {
            if (!rows.back().line.contains(QLatin1Char(sign))) continue;
            best = readWith(rows, separator, assumed);
            break;
        }
    }
    if (problems) *problems = best->problems.join(QLatin1Char('\n'));
    return best->points;
}

std::vector<model::Point> readOffsetsFile(const QString& fileName, units::LengthNotation assumed, QString* problems) {
    const auto refuse = [problems](const QString& why) {
        if (problems) *problems = why;
        return std::vector<model::Point>{};
    };
    QFile file(fileName);
    if (!file.open(QIODevice::ReadOnly))
        return refuse(QObject::tr("%1 cannot be read: %2").arg(fileName, file.errorString()));
    constexpr qint64 most = 4 << 20;  // bytes; offsets are a few thousand
    const QByteArray bytes = file.read(most + 1);
    if (bytes.size() > most) return refuse(QObject::tr("%1 is too large to be a table of offsets.").arg(fileName));
    QStringDecoder decode(QStringDecoder::Utf8);
    QString text = decode(bytes);
    if (decode.hasError()) text = QString::fromLatin1(bytes);
    return readOffsetsText(text, assumed, problems);
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
