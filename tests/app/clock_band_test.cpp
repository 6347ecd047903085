// The band over the drawing while a day runs: in sight whatever lies on the table, and never over the drawing.
#include "app/window/clock_band.hpp"

#include <QAbstractButton>
#include <QApplication>
#include <QLabel>
#include <QSettings>
#include <QTest>

#include "app/clock/clock_screen.hpp"
#include "app/formview/form_view.hpp"
#include "app/look/icons.hpp"
#include "tests/app/day_bench.hpp"
#include "tests/app/own_home.hpp"
#include "tests/app/window_bench.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

// A window whose days run by the machine's clocks.
struct DayBench {
    Machine machine;
    Bench bench;

    DayBench() : bench(marram, byClocksOf(machine)) {}
    static WindowTimes byClocksOf(Machine& machine) {
        WindowTimes times = handNeverRests();
        times.clocks = machine.read();
        return times;
    }
    ClockScreen* clock() {
        for (QWidget* window : QApplication::topLevelWidgets()) {
            if (auto* screen = qobject_cast<ClockScreen*>(window)) return screen;
        }
        return nullptr;
    }
    ClockBand* band() { return bench.find<ClockBand>(); }
    QString words() { return band()->findChild<QLabel*>("clockBandWords")->text(); }
    void begin(const char* action) {
        bench.action(action)->trigger();
        QTest::keyClick(clock(), Qt::Key_Return);
    }
    // The window comes to the front, and the clock runs on.
    void leave() {
        QTest::keyClick(clock(), Qt::Key_Escape);
        QTest::keyClick(clock(), Qt::Key_L);
    }
    void end() {
        if (!clock()->isVisible()) bench.action("clock")->trigger();
        QTest::keyClick(clock(), Qt::Key_S);
        QTest::keyClick(clock(), Qt::Key_E);
        QTest::keyClick(clock(), Qt::Key_Escape);
    }
};

}  // namespace

class ClockBandTest : public QObject {
    Q_OBJECT

public:
    static void initMain() { useHomeOfItsOwn(); }

private slots:
    void init() { QSettings().clear(); }

    void thereIsNoneWithoutADayAndWhileTheClockIsInFront() {
        DayBench day;
        QVERIFY(!day.band()->isVisible());
        day.begin("clock");
        QVERIFY(QTest::qWaitForWindowActive(day.clock(), test::patience_ms));
        day.band()->tick();
        QVERIFY(!day.band()->isVisible());
        day.leave();
        QVERIFY(day.band()->isVisible());
        QCOMPARE(day.words(), QString("Glue-up of Stem, 0:00"));
        day.end();
        QVERIFY(!day.band()->isVisible());
    }

    void itShowsWhenTheClockStaysOpenBehindTheWindow() {
        DayBench day;
        day.begin("dryFit");
        QVERIFY(QTest::qWaitForWindowActive(day.clock(), test::patience_ms));
        day.bench.window.activateWindow();
        SOON_VERIFY(day.band()->isVisible());
        day.band()->findChild<QAbstractButton*>("backToClock")->click();
        QVERIFY(QTest::qWaitForWindowActive(day.clock(), test::patience_ms));
        SOON_VERIFY(!day.band()->isVisible());
        day.end();
    }

    void itTicksByItselfAndGoesWithTheDay() {
        DayBench day;
        day.begin("dryFit");
        day.leave();
        day.machine.goOn(57);
        SOON_COMPARE(day.words(), QString("Dry fit of Stem, 0:57"));
        day.machine.goOn(3600);
        SOON_VERIFY(day.words().startsWith("Dry fit of Stem, 60:57"));
        day.end();
        QVERIFY(!day.band()->isVisible());
        QVERIFY(!day.bench.piece().record.empty());
    }

    void itStaysWithAnotherPieceAndAnotherBoatOnTheTable() {
        DayBench day;
        day.begin("dryFit");
        day.leave();
        day.bench.action("nextPiece")->trigger();
        day.band()->tick();
        QVERIFY(day.band()->isVisible() && day.words().startsWith("Dry fit of Stem"));
        QVERIFY(day.bench.window.openFile(QString(FAYLINE_SAMPLES) + "/marram_misread.fayline"));
        QVERIFY(day.bench.settle());
        day.band()->tick();
        QVERIFY(day.band()->isVisible() && day.words().startsWith("Dry fit of Stem"));
        auto* back = day.band()->findChild<QAbstractButton*>("backToClock");
        back->setFocus();
        QTest::keyClick(back, Qt::Key_Return);
        QVERIFY(day.clock()->isVisible());
        QCOMPARE(QString::fromStdString(day.clock()->piece().name), QString("Stem"));
    }

    // What the clock calls late is said in its colour, with what is late.
    void whatIsLateIsInTheWarningColour() {
        DayBench day;
        day.begin("clock");
        day.leave();
        auto* words = day.band()->findChild<QLabel*>("clockBandWords");
        QVERIFY(!day.band()->worst());
        QCOMPARE(words->palette().color(QPalette::WindowText), theme().ink);
        QTest::keyClick(day.clock(), Qt::Key_Space);  // a batch is mixed
        day.machine.goOn(6 * 3600);
        day.band()->tick();
        const auto& warnings = day.clock()->runningDay()->now().warnings;
        QVERIFY(std::ranges::any_of(warnings, &schedule::Warning::stop));
        QCOMPARE(day.band()->worst(), std::optional(plan::Severity::stop));
        QCOMPARE(words->palette().color(QPalette::WindowText), findingColor(plan::Severity::stop));
        QVERIFY2(words->text().size() > QString("Glue-up of Stem, 360:00. ").size(), qPrintable(words->text()));
        day.end();
    }

    void itLiesAboveTheDrawingAndCutsNothingOff_data() {
        QTest::addColumn<QSize>("size");
        QTest::addRow("small") << QSize(1024, 700);
        QTest::addRow("usual") << QSize(1280, 800);
    }
    void itLiesAboveTheDrawingAndCutsNothingOff() {
        QFETCH(QSize, size);
        DayBench day;
        day.bench.window.resize(size);
        day.begin("clock");
        day.leave();
        QTest::keyClick(day.clock(), Qt::Key_Space);
        day.machine.goOn(6 * 3600);
        day.band()->tick();
        QCoreApplication::processEvents();
        const auto placed = [&](QWidget* one) { return QRect(one->mapTo(&day.bench.window, QPoint()), one->size()); };
        const QRect band = placed(day.band());
        const QRect drawing = placed(day.bench.find<FormView>());
        QVERIFY(band.bottom() < drawing.top());
        QCOMPARE(band.left(), drawing.left());
        QCOMPARE(band.width(), drawing.width());
        auto* words = day.band()->findChild<QLabel*>("clockBandWords");
        SOON_VERIFY(words->height() >= words->heightForWidth(words->width()));
        QCOMPARE(day.bench.window.size(), size);
        day.end();
    }

    void itIsAnAreaOfTheWindowForTheKeyboard() {
        DayBench day;
        day.begin("dryFit");
        day.leave();
        day.bench.window.activateWindow();
        QVERIFY(QTest::qWaitForWindowActive(&day.bench.window, test::patience_ms));
        auto* back = day.band()->findChild<QAbstractButton*>("backToClock");
        for (int i = 0; i < 6 && !back->hasFocus(); ++i) day.bench.action("nextArea")->trigger();
        QVERIFY(back->hasFocus());
        day.end();
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, ClockBandTest>(argc, argv);
}
#include "clock_band_test.moc"
