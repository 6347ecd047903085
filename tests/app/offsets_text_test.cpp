// Offsets out to a spreadsheet and back, and in from files.
#include "app/panels/offsets_text.hpp"

#include <QFile>
#include <QTemporaryDir>
#include <QTest>
#include <cmath>

#include "core/io/offsets_table.hpp"
#include "core/units/units.hpp"

using namespace fayline;
using namespace fayline::app;
using units::LengthNotation;

class OffsetsTextTest : public QObject {
    Q_OBJECT
private slots:
    void WhatIsCopiedOutIsReadBackAsItWas() {
        constexpr double inch = units::inch_m;
        std::vector<model::Point> points(3);
        points[0] = {.label = "WL 2", .x_m = 3.5 * inch, .y_m = 27.5 * inch, .written = {"0-3-4", "2' 3 1/2\""}};
        points[1] = {.label = "\"odd\" one", .x_m = -0.5, .y_m = 0};
        points[2] = {.label = "# three", .x_m = 1.25, .y_m = 1e-3};
        for (const LengthNotation notation :
             {LengthNotation::feetInchesEighths, LengthNotation::inches, LengthNotation::millimetres}) {
            units::Display display;
            display.lengths = notation;
            const io::OffsetsTable table = io::readTable(writeOffsetsText(points, display).toStdString());
            const io::TableUnit unit = io::unitReadings(table, table.uses, notation).front().unit;
            const io::OffsetsRead back = io::readPoints(table, table.uses, unit, notation);
            QVERIFY(back.unread.empty());
            QCOMPARE(back.points.size(), points.size());
            for (std::size_t i = 0; i < points.size(); ++i) {
                QCOMPARE(back.points[i].label, points[i].label);
                QVERIFY(std::abs(back.points[i].x_m - points[i].x_m) <= inch / 32 + 1e-9);
                QVERIFY(std::abs(back.points[i].y_m - points[i].y_m) <= inch / 32 + 1e-9);
            }
        }
    }

    void AFileIsUtf8OrLatin1OrRefusedByItsName() {
        const QTemporaryDir folder;
        const QString path = folder.filePath("odd.csv");
        const auto put = [&path](const QByteArray& bytes) {
            QFile file(path);
            return file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size();
        };
        QVERIFY(put("D 5\xc2\xb0,1,2"));
        QCOMPARE(readOffsetsFile(path), QString("D 5\u00b0,1,2"));
        QVERIFY(put("D 5\xb0,1,2"));
        QCOMPARE(readOffsetsFile(path), QString("D 5\u00b0,1,2"));
        QVERIFY(put(QByteArray(5 << 20, '1')));
        QVERIFY_THROWS_EXCEPTION(units::InputError, readOffsetsFile(path));
        QVERIFY(QFile::remove(path));
        try {
            readOffsetsFile(path);
            QFAIL("a file that is not there was read");
        } catch (const units::InputError& error) {
            QVERIFY(QString(error.what()).contains("odd.csv cannot be read"));
        }
    }
};

QTEST_APPLESS_MAIN(OffsetsTextTest)
#include "offsets_text_test.moc"
