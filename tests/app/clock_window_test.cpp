// The day's clock and the window: what happened lands in the boat it belongs to.
#include <QApplication>
#include <QDir>
#include <QSettings>
#include <QTest>

#include "app/clock/clock_screen.hpp"
#include "app/window/main_window.hpp"
#include "tests/app/day_bench.hpp"
#include "tests/app/own_home.hpp"
#include "tests/app/window_bench.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

ClockScreen* clockOf(Bench&) {
    for (QWidget* window : QApplication::topLevelWidgets()) {
        if (auto* screen = qobject_cast<ClockScreen*>(window)) return screen;
    }
    return nullptr;
}

}  // namespace

class ClockWindowTest : public QObject {
    Q_OBJECT

public:
    static void initMain() { useHomeOfItsOwn(); }

private slots:
    void init() { QSettings().clear(); }

    void recordLandsInTheBoatAsOneStepAndItsLogGoes() {
        Bench bench;
        bench.action("clock")->trigger();
        auto* screen = clockOf(bench);
        QVERIFY(screen && screen->isVisible());
        const model::Piece before = bench.piece();
        QTest::keyClick(screen, Qt::Key_Return);
        QVERIFY(screen->isRunning());
        QVERIFY(!QDir(bench.folder.path() + "/days").entryList({"*.day"}).isEmpty());
        QTest::keyClick(screen, Qt::Key_Space);
        QTest::keyClick(screen, Qt::Key_S);
        QTest::keyClick(screen, Qt::Key_E);
        QCOMPARE(bench.piece().record.size(), before.record.size() + 1);
        const model::Record& record = bench.piece().record.back();
        QVERIFY(!record.dryFit);
        QCOMPARE(record.marks.size(), size_t(3));
        QCOMPARE(record.marks[0].task, std::string("begin"));
        QCOMPARE(record.marks[2].task, std::string("end"));
        QCOMPARE(record.when.size(), size_t(16));
        QCOMPARE(bench.document().undoStack().count(), 1);
        QVERIFY(QDir(bench.folder.path() + "/days").entryList({"*.day"}).isEmpty());
        QCOMPARE(QDir(bench.folder.path()).entryList({"*.fayline"}).size(), 1);  // in the copy of unsaved work
        QTest::keyClick(screen, Qt::Key_Escape);
        QVERIFY(!screen->isVisible());
        bench.action("undo")->trigger();
        QVERIFY(bench.piece() == before);
    }

    void recordNeverLandsInAnotherBoatThatHasAPieceOfThatName() {
        Bench bench;
        bench.action("clock")->trigger();
        auto* screen = clockOf(bench);
        QTest::keyClick(screen, Qt::Key_Return);
        QVERIFY(screen->isRunning());
        const QString misread = QString(FAYLINE_SAMPLES) + "/marram_misread.fayline";  // its piece is a stem as well
        QVERIFY(bench.window.openFile(misread));
        QVERIFY(bench.settle());
        const model::Boat other = bench.document().boat();
        {
            Answering later("&Keep for later");
            QTest::keyClick(screen, Qt::Key_S);
            QTest::keyClick(screen, Qt::Key_E);
            QVERIFY2(later.text.contains("not of your open boat"), qPrintable(later.text));
        }
        QVERIFY(bench.document().boat() == other);
        QCOMPARE(QDir(bench.folder.path() + "/days").entryList({"*.day"}).size(), 1);
        QTest::keyClick(screen, Qt::Key_Escape);
    }

    void recordGoesIntoItsOwnBoatOpenedAgainAndItsPieceRenamed() {
        Bench bench;
        bench.action("clock")->trigger();
        auto* screen = clockOf(bench);
        QTest::keyClick(screen, Qt::Key_Return);
        QVERIFY(bench.window.openFile(QString(FAYLINE_SAMPLES) + "/marram_misread.fayline"));
        QVERIFY(bench.settle());
        {
            Answering open("&Open that boat");
            QTest::keyClick(screen, Qt::Key_S);
            QTest::keyClick(screen, Qt::Key_E);
        }
        QCOMPARE(bench.document().fileName(), marram);
        QCOMPARE(bench.document().boat().pieces[0].record.size(), size_t(1));
        QVERIFY(QDir(bench.folder.path() + "/days").entryList({"*.day"}).isEmpty());
        QTest::keyClick(screen, Qt::Key_Escape);
    }

    void recordFollowsAPieceThatWasRenamedAndMoved() {
        Bench bench;
        bench.action("clock")->trigger();
        auto* screen = clockOf(bench);
        QTest::keyClick(screen, Qt::Key_Return);
        model::Piece renamed = bench.piece();
        renamed.name = "Inner stem";
        bench.document().changePiece(0, {"Rename", {}, renamed});
        bench.document().movePiece(0, 2);
        QTest::keyClick(screen, Qt::Key_S);
        QTest::keyClick(screen, Qt::Key_E);
        QCOMPARE(bench.document().boat().pieces.size(), size_t(4));
        QCOMPARE(bench.document().boat().pieces[2].record.size(), size_t(1));
        QTest::keyClick(screen, Qt::Key_Escape);
    }

    void newOpenAndClosingAskWhileADayRuns() {
        Bench bench;
        bench.action("clock")->trigger();
        auto* screen = clockOf(bench);
        QTest::keyClick(screen, Qt::Key_Return);
        const model::Boat before = bench.document().boat();
        {
            Answering stay("&Stay");
            bench.action("newBoat")->trigger();
            QVERIFY2(stay.text.contains("The clock of Stem is running"), qPrintable(stay.text));
        }
        QVERIFY(bench.document().boat() == before);
        {
            Answering stay("&Stay");
            QVERIFY(!bench.window.close());
        }
        QVERIFY(bench.window.isVisible());
        {
            Answering leave("&Leave it running");
            QVERIFY(bench.window.close());
        }
        QVERIFY(!screen->isVisible());
        QCOMPARE(QDir(bench.folder.path() + "/days").entryList({"*.day"}).size(), 1);
    }

    void dryFitMeasuresRatesThatCanBeTakenOverAndUndone() {
        Machine machine;
        WindowTimes times = handNeverRests();
        times.clocks = machine.read();
        Bench bench(marram, times);
        bench.action("dryFit")->trigger();
        auto* screen = clockOf(bench);
        QTest::keyClick(screen, Qt::Key_Return);
        machine.goOn(2);
        QTest::keyClick(screen, Qt::Key_Space);
        QTest::keyClick(screen, Qt::Key_S);
        QTest::keyClick(screen, Qt::Key_E);
        QVERIFY(bench.piece().record.back().dryFit);
        const model::Rates planned = bench.piece().crew.rates;
        QTest::keyClick(screen, Qt::Key_R);
        QCOMPARE(bench.piece().crew.rates.stackStrip_s, 2.0);
        QCOMPARE(bench.document().undoStack().count(), 2);
        bench.action("undo")->trigger();
        QVERIFY(bench.piece().crew.rates == planned);
        QTest::keyClick(screen, Qt::Key_Escape);
    }

    void dayLeftBehindIsOfferedAndGoneOnWith() {
        Bench bench;
        const QString days = bench.folder.path() + "/days";
        {
            const auto day = RunningDay::begin(days, bench.document().boat(), 0, marram, 0, false);
            QVERIFY(day->done());
        }
        Answering later("Ask &again next time");
        bench.window.offerLeftDay();
        QVERIFY2(later.text.contains("The glue-up of Stem was running"), qPrintable(later.text));
        Answering on("&Go on with the day");
        bench.window.offerLeftDay();
        auto* screen = clockOf(bench);
        QVERIFY(screen && screen->isVisible() && screen->isRunning());
        QCOMPARE(int(screen->runningDay()->events().size()), 2);
        QTest::keyClick(screen, Qt::Key_S);
        QTest::keyClick(screen, Qt::Key_E);
        QCOMPARE(bench.piece().record.size(), size_t(1));
        QTest::keyClick(screen, Qt::Key_Escape);
    }

    void keyOnTheQuestionOfTimeOpensIt() {
        Bench bench;
        auto* time = bench.find<QAbstractButton>("question5");
        time->setFocus();
        QTest::keyClick(time, Qt::Key_C);
        QVERIFY(clockOf(bench) && clockOf(bench)->isVisible());
        QTest::keyClick(clockOf(bench), Qt::Key_Escape);
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, ClockWindowTest>(argc, argv);
}
#include "clock_window_test.moc"
