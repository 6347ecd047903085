#include "app/panels/reading.hpp"

#include <QLocale>
#include <QRegularExpression>
#include <QStringList>
#include <cmath>

#include "core/io/file.hpp"
#include "core/units/quantity.hpp"

namespace fayline::app {

QString why(const units::InputError& error) {
    return text(error.wrong()) + QStringLiteral("; ") + text(error.accepted());
}

double readLengthText(const QString& written, const units::Display& display) {
    return units::readLength(text(written.trimmed()), display.lengths);
}

QString writeLengthText(double length_m, const units::Display& display) {
    return text(units::writeLength(length_m, display.lengths));
}

double readNumber(const QString& written) {
    QString plain = written.trimmed();
    plain = text(units::withoutCommas(text(plain.replace(QChar(0x2212), QLatin1Char('-')))));
    bool good = false;
    const double number = QLocale::c().toDouble(plain, &good);
    if (!good || !std::isfinite(number))
        throw units::InputError("", "\"" + text(written.trimmed()) + "\" is not a number",
                                "give a number such as 12 or 0.5");
    return number;
}

int readWhole(const QString& written) {
    bool good = false;
    const int number = written.trimmed().toInt(&good);
    if (!good)
        throw units::InputError("", "\"" + text(written.trimmed()) + "\" is not a whole number",
                                "give a whole number such as 8");
    return number;
}

double readShare(const QString& written) {
    QString plain = written.trimmed();
    if (plain.endsWith(QLatin1Char('%'))) plain.chop(1);
    return readNumber(plain) / 100;
}

double readShareWithin1(const QString& written) {
    const double share = readShare(written);
    if (share >= 0 && share <= 1) return share;
    throw units::InputError("", written.trimmed().toStdString() + " is not a share", "give 0 to 100 %");
}

QString writeShareText(double share) {
    return text(units::writeNumber(share * 100, 4)) + QStringLiteral(" %");
}

namespace {

// The number after "1 in" or "1:"; nothing where the text has no such beginning.
std::optional<double> afterOneIn(const QString& written) {
    static const QRegularExpression oneIn(QStringLiteral("^\\s*1\\s*(?:in|:|/)\\s*(.+)$"),
                                          QRegularExpression::CaseInsensitiveOption);
    const QRegularExpressionMatch match = oneIn.match(written);
    if (!match.hasMatch()) return std::nullopt;
    return readNumber(match.captured(1));
}

units::InputError notASlope(const QString& written, const char* accepted) {
    return {"", "\"" + text(written.trimmed()) + "\" is not a slope", accepted};
}

}  // namespace

double readGrainSlope(const QString& written) {
    const QString plain = written.trimmed();
    if (plain.compare(QStringLiteral("straight"), Qt::CaseInsensitive) == 0) return 0;
    if (plain.endsWith(QLatin1Char('%'))) return readShare(plain);
    const std::optional<double> oneIn = afterOneIn(plain);
    const double number = oneIn ? *oneIn : readNumber(plain);
    if (!oneIn && number == 0) return 0;
    if (number < 0 || (oneIn && number == 0)) throw notASlope(written, "give it as 1 in 33, as 3 %, or straight");
    return !oneIn && number < 1 ? number : 1 / number;
}

QString writeGrainSlope(double slope) {
    if (slope <= 0) return QStringLiteral("straight");
    return QStringLiteral("1 in ") + text(units::writeNumber(1 / slope, 3));
}

std::optional<double> readScarf(const QString& written) {
    if (written.trimmed().isEmpty()) return std::nullopt;
    const std::optional<double> oneIn = afterOneIn(written);
    const double number = oneIn ? *oneIn : readNumber(written);
    if (number <= 0) throw notASlope(written, "give it as 1 in 10, or nothing for no scarf");
    return number;
}

QString writeScarf(const std::optional<model::Scarf>& scarf) {
    if (!scarf) return {};
    return QStringLiteral("1 in ") + text(units::writeNumber(scarf->slope, 4));
}

std::optional<double> readHeading(const QString& written) {
    QString plain = written.trimmed();
    if (plain.endsWith(QChar(0x00b0))) plain.chop(1);
    if (plain.isEmpty()) return std::nullopt;
    return units::fromDegrees(readNumber(plain));
}

QString writeHeading(const std::optional<double>& heading_rad) {
    if (!heading_rad) return {};
    return text(units::writeNumber(units::toDegrees(*heading_rad), 6)) + QChar(0x00b0);
}

std::optional<double> readOptionalLength(const QString& written, const units::Display& display) {
    if (written.trimmed().isEmpty()) return std::nullopt;
    return readLengthText(written, display);
}

namespace {

QStringList parts(const QString& written) {
    QStringList found = written.split(QLatin1Char(';'), Qt::SkipEmptyParts);
    found.removeIf([](const QString& part) { return part.trimmed().isEmpty(); });
    return found;
}

}  // namespace

std::vector<double> readLengths(const QString& written, const units::Display& display) {
    std::vector<double> lengths;
    for (const QString& part : parts(written)) lengths.push_back(readLengthText(part, display));
    return lengths;
}

std::vector<int> readWholes(const QString& written) {
    std::vector<int> numbers;
    for (const QString& part : parts(written)) numbers.push_back(readWhole(part));
    return numbers;
}

QString coordinateText(const model::Point& point, int axis, const units::Display& display) {
    const double coordinate_m = axis == 0 ? point.x_m : point.y_m;
    const std::string& written = point.written[axis];
    if (written.empty()) return writeLengthText(coordinate_m, display);
    // A bare number means something else once the display's notation has changed; and a point that was dragged no
    // longer lies where it was written.
    constexpr double same_m = 1e-6;
    try {
        if (std::abs(units::readLength(written, display.lengths) - coordinate_m) < same_m) return text(written);
    } catch (const units::InputError&) {
    }
    return writeLengthText(coordinate_m, display);
}

std::optional<std::array<double, 2>> readSection(const QString& written, const units::Display& display) {
    if (written.trimmed().isEmpty()) return std::nullopt;
    QString plain = written;
    const QStringList sides = plain.replace(QChar(0x00d7), QLatin1Char('x')).split(QLatin1Char('x'));
    if (sides.size() != 2)
        throw units::InputError("", "\"" + text(written.trimmed()) + "\" is not a section",
                                "give its two sides, such as " + text(writeSection({{0.089, 0.038}}, display)));
    return std::array<double, 2>{readLengthText(sides[0], display), readLengthText(sides[1], display)};
}

QString writeSection(const std::optional<std::array<double, 2>>& section_m, const units::Display& display) {
    if (!section_m) return {};
    return QStringLiteral("%1 x %2").arg(text(units::writeThickness((*section_m)[0], display)),
                                         text(units::writeThickness((*section_m)[1], display)));
}

QString smallFigure(double distance_m, const units::Display& display) {
    QString figure = text(units::writeSmall(distance_m, display));
    if (figure.startsWith(QLatin1Char('+')) || figure.startsWith(QLatin1Char('-'))) figure.remove(0, 1);
    return figure.section(QLatin1Char(' '), 0, 0);
}

QString smallUnit(const units::Display& display) {
    return text(units::writeSmall(0, display)).section(QLatin1Char(' '), 1);
}

namespace {

std::optional<units::InputError> impossible(const model::Piece& piece) {
    model::Boat alone;
    alone.pieces.push_back(piece);
    try {
        io::readBoat(io::writeBoat(alone));
    } catch (const units::InputError& error) {
        return error;
    }
    return std::nullopt;
}

}  // namespace

void refuseImpossible(const model::Piece& before, const model::Piece& after) {
    const std::optional<units::InputError> error = impossible(after);
    if (!error) return;
    const std::optional<units::InputError> already = impossible(before);
    if (already && already->path() == error->path()) return;
    throw *error;
}

QString sourceText(const units::Source& source) {
    return QStringLiteral("%1. %2: %3.")
        .arg(text(source.text), QLatin1String(units::markText(source.mark)),
             QLatin1String(units::markMeaning(source.mark)));
}

}  // namespace fayline::app
