// Offsets as text: pasted from spreadsheets and read from files of separated values.
#include "app/panels/offsets_text.hpp"

#include <QDir>
#include <QFile>
#include <QTest>
#include <cmath>

#include "core/units/units.hpp"

using namespace fayline;
using namespace fayline::app;
using units::LengthNotation;

namespace {

constexpr double inch = units::inch_m;

std::vector<model::Point> read(const QString& text, LengthNotation assumed, QString* problems = nullptr) {
    return readOffsetsText(text, assumed, problems);
}

bool near(double a, double b) {
    return std::abs(a - b) < 1e-9;
}

}  // namespace

class OffsetsTextTest : public QObject {
    Q_OBJECT
private slots:
    void TwoColumnsAreXAndY() {
        QString problems;
        const auto points = read("0-3-4\t2-3-4+\n1-0-0\t2-0-0\n", LengthNotation::feetInchesEighths, &problems);
        QCOMPARE(points.size(), 2u);
        QVERIFY(near(points[0].x_m, 3.5 * inch));
        QVERIFY(near(points[0].y_m, (27.5 + 1.0 / 16) * inch));
        QCOMPARE(points[0].written[1], std::string("2-3-4+"));
        QVERIFY(points[0].label.empty());
        QVERIFY(problems.isEmpty());
    }

    void ThreeColumnsAreLabelXAndYUnderAnyHeader() {
        const auto points = read("Mark,Aft,Up\nWL 2,300,52\nWL 4,600,118", LengthNotation::millimetres);
        QCOMPARE(points.size(), 2u);
        QCOMPARE(points[1].label, std::string("WL 4"));
        QVERIFY(near(points[1].x_m, 0.6));
        QVERIFY(near(points[1].y_m, 0.118));
    }

    void ADecimalCommaSurvivesBetweenAnyOtherSeparators() {
        for (const QString separator : {"\t", ";", "   "}) {
            const auto points = read(QStringLiteral("12,5%1-30,25").arg(separator), LengthNotation::millimetres);
            QCOMPARE(points.size(), 1u);
            QVERIFY(near(points[0].x_m, 0.0125));
            QVERIFY(near(points[0].y_m, -0.03025));
        }
    }

    void ADecimalCommaBetweenCommasIsNotGuessedAt() {
        QString problems;
        QVERIFY(read("12,5,30,2", LengthNotation::millimetres, &problems).empty());
        QVERIFY2(problems.startsWith("Line 1:") && problems.contains("header"), qPrintable(problems));
        QCOMPARE(read("\"12,5\",\"30,2\"", LengthNotation::millimetres).size(), 1u);
    }

    void ByteOrderMarkCommentsEmptyLinesAndEveryLineEndingAreUnderstood() {
        const QString text = QString(QChar(0xfeff)) + "# from the loft floor\r\nlabel,x,y\r\n\r\nA,1,2\rB,3,4\n";
        QString problems;
        const auto points = read(text, LengthNotation::millimetres, &problems);
        QCOMPARE(points.size(), 2u);
        QCOMPARE(points[0].label, std::string("A"));
        QCOMPARE(points[1].label, std::string("B"));
        QVERIFY(problems.isEmpty());
    }

    void AnInchMarkIsNoQuoteAndAQuotedOneIsRead() {
        const auto points = read("2'-3 1/2\"\t\"2'-3 1/2\"\"\"", LengthNotation::inches);
        QCOMPARE(points.size(), 1u);
        QVERIFY(near(points[0].x_m, 27.5 * inch));
        QVERIFY(near(points[0].y_m, 27.5 * inch));
    }

    void ASeparatorWithinQuotesStaysInTheLabel() {
        const auto points = read("\"Head, port\",1,2", LengthNotation::millimetres);
        QCOMPARE(points.size(), 1u);
        QCOMPARE(points[0].label, std::string("Head, port"));
    }

    void AHeaderNamesItsColumnsInAnyOrderAndTheirUnit() {
        const auto points = read("y_mm;note;X (in);Label\n698,5;low;27.5;WL 24", LengthNotation::feetInchesEighths);
        QCOMPARE(points.size(), 1u);
        QCOMPARE(points[0].label, std::string("WL 24"));
        QVERIFY(near(points[0].x_m, 27.5 * inch));
        QVERIFY(near(points[0].y_m, 0.6985));
        // What was written must say the same when it is read without the header.
        QVERIFY(near(units::readLength(points[0].written[1], LengthNotation::feetInchesEighths), 0.6985));
    }

    void ABareColumnIsTakenBeforeOneWithAUnit() {
        const auto points = read("label,x_mm,x,y_mm,y\nA,9,1-0-0,9,2-0-0", LengthNotation::feetInchesEighths);
        QCOMPARE(points.size(), 1u);
        QVERIFY(near(points[0].x_m, 12 * inch));
        QVERIFY(near(points[0].y_m, 24 * inch));
    }

    void LinesThatCannotBeReadAreToldByNumberAndTheRestIsKept() {
        QString problems;
        const auto points = read("# loft\nWL 1,1-0-0,2-0-0\nWL 2,2-13-4,2-0-0\nWL 3,,2-0-0\nWL 4,1-6-0,2-6-0",
                                 LengthNotation::feetInchesEighths, &problems);
        QCOMPARE(points.size(), 2u);
        QCOMPARE(points[1].label, std::string("WL 4"));
        const QStringList lines = problems.split('\n');
        QCOMPARE(lines.size(), 2);
        QVERIFY2(lines[0].startsWith("Line 3: x \"2-13-4\"") && lines[0].contains("13"), qPrintable(lines[0]));
        QVERIFY2(lines[1].startsWith("Line 4: x is empty"), qPrintable(lines[1]));
    }

    void SingleBlanksWithinALengthMakeNoColumns() {
        QString problems;
        QVERIFY(read("27 1/2", LengthNotation::inches, &problems).empty());
        QVERIFY(!problems.isEmpty());
        const auto points = read("WL 2 0-3-4 2-3-4+", LengthNotation::feetInchesEighths);
        QCOMPARE(points.size(), 1u);
        QCOMPARE(points[0].label, std::string("WL 2"));
        QVERIFY(near(points[0].x_m, 3.5 * inch));
    }

    void NothingAndNonsenseSayWhatIsMissing() {
        for (const QString text : {"", "\n\n# only a remark\n", "hello", "a\tb\tc\nd\te\tf"}) {
            QString problems;
            QVERIFY(read(text, LengthNotation::millimetres, &problems).empty());
            QVERIFY2(!problems.isEmpty(), qPrintable(text));
        }
    }

    void WhatIsCopiedOutIsReadBackAsItWas() {
        std::vector<model::Point> points(3);
        points[0] = {.label = "WL 2", .x_m = 3.5 * inch, .y_m = 27.5 * inch, .written = {"0-3-4", "2' 3 1/2\""}};
        points[1] = {.label = "\"odd\" one", .x_m = -0.5, .y_m = 0};
        points[2] = {.label = "# three", .x_m = 1.25, .y_m = 1e-3};
        for (const LengthNotation notation :
             {LengthNotation::feetInchesEighths, LengthNotation::inches, LengthNotation::millimetres}) {
            units::Display display;
            display.lengths = notation;
            QString problems;
            const auto back = read(writeOffsetsText(points, display), notation, &problems);
            QVERIFY2(problems.isEmpty(), qPrintable(problems));
            QCOMPARE(back.size(), points.size());
            for (std::size_t i = 0; i < points.size(); ++i) {
                QCOMPARE(back[i].label, points[i].label);
                QVERIFY(std::abs(back[i].x_m - points[i].x_m) <= inch / 32 + 1e-9);
                QVERIFY(std::abs(back[i].y_m - points[i].y_m) <= inch / 32 + 1e-9);
            }
        }
    }

    // The demo boat's lines (invented): label, x, y as written on the board, and beside them x_mm and y_mm, so that the
    // two ways of writing check each other. Tolerance: the four decimals of a millimetre in the file.
    void EveryLineOfTheDemoBoatIsReadAsItsMillimetresSay() {
        int files = 0;
        for (const QString& name : QDir(FAYLINE_PUBLISHED).entryList({"marram_*.csv"})) {
            QFile file(QDir(FAYLINE_PUBLISHED).filePath(name));
            QVERIFY(file.open(QIODevice::ReadOnly));
            const QString text = QString::fromUtf8(file.readAll());
            const bool metric = text.contains("\nSta ");
            QString problems;
            const auto points =
                read(text, metric ? LengthNotation::millimetres : LengthNotation::feetInchesEighths, &problems);
            QVERIFY2(problems.isEmpty(), qPrintable(name + ": " + problems));
            QStringList rows = text.split('\n', Qt::SkipEmptyParts);
            rows.removeIf([](const QString& row) { return row.startsWith('#') || row.startsWith("label"); });
            QCOMPARE(points.size(), static_cast<std::size_t>(rows.size()));
            for (std::size_t i = 0; i < points.size(); ++i) {
                const QStringList fields = rows[static_cast<qsizetype>(i)].split(',');
                QCOMPARE(QString::fromStdString(points[i].label), fields[0]);
                QVERIFY(std::abs(points[i].x_m * 1000 - fields[3].toDouble()) < 1e-4);
                QVERIFY(std::abs(points[i].y_m * 1000 - fields[4].toDouble()) < 1e-4);
            }
            ++files;
        }
        QVERIFY(files >= 4);
    }
};

QTEST_APPLESS_MAIN(OffsetsTextTest)
#include "offsets_text_test.moc"
