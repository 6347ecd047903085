// The record panel: days planned beside real, remarks, what a day taught, and how far the piece sprang back.
#include "app/panels/record_panel.hpp"

#include <QAbstractButton>
#include <QLabel>
#include <QSignalSpy>
#include <QTest>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "app/look/theme.hpp"
#include "app/panels/remarks_edit.hpp"
#include "app/window/panel_stack.hpp"
#include "core/laminate/springback/learned.hpp"
#include "core/units/day_text.hpp"
#include "tests/app/own_home.hpp"
#include "tests/app/shown_panel.hpp"
#include "tests/app/shown_piece.hpp"
#include "tests/app/window_bench.hpp"
#include "tests/recorded_day.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

// A day of the piece that is shown, all done, each task `times` as long as planned.
model::Record dayOf(const Shown& shown, bool dryFit, double times, const char* when) {
    return made::recordedDay(plan::dayInHand(shown.piece, app::shopOf(shown), 0, dryFit), times, when);
}

// A dry fit and a glue-up that took half as long again.
Shown recordedSample() {
    Shown shown = shownSample();
    shown.piece.record = {dayOf(shown, true, 1, "2026-05-01T09:15"), dayOf(shown, false, 1.5, "2026-05-02T08:30")};
    planAnew(shown);
    return shown;
}

struct Followed {
    RecordPanel panel;
    Taken taken;

    explicit Followed(const Shown& shown, bool atRest = false) : taken{shown, {}, atRest} {
        followWith(taken, &panel);
        open(&panel);
        unfold(panel);
    }
    template <class Widget>
    Widget* find(const char* name) {
        return panel.findChild<Widget*>(name);
    }
    QString cell(const char* table, int row, int column, int role = Qt::DisplayRole) {
        return find<NotebookTable>(table)->model()->index(row, column).data(role).toString();
    }
    void choose(int row) {
        auto* days = find<NotebookTable>("days");
        days->setCurrentIndex(days->model()->index(row, 0));
    }
};

QString lasting(double time_s) {
    return QString::fromStdString(units::writeDuration(time_s));
}

}  // namespace

class RecordPanelTest : public QObject {
    Q_OBJECT

public:
    static void initMain() { useHomeOfItsOwn(); }

private slots:
    void initTestCase() { applyGround(Ground::paper); }

    void DaysStandPlannedBesideReal() {
        Followed followed(recordedSample());
        const schedule::Run glued = schedule::runOf(
            plan::dayInHand(followed.taken.shown.piece, app::shopOf(followed.taken.shown), 0, false).job);
        QCOMPARE(followed.find<NotebookTable>("days")->model()->rowCount(), 2);
        QCOMPARE(followed.cell("days", 0, 0), QString("2026-05-01"));
        QCOMPARE(followed.cell("days", 0, 0, underRole), QString("dry fit"));
        QCOMPARE(followed.cell("days", 1, 0, underRole), QString("glue-up"));
        QCOMPARE(followed.cell("days", 1, 1, underRole), lasting(glued.closed_s));
        const double real_s = followed.find<NotebookTable>("days")->model()->index(1, 1).data(sortRole).toDouble();
        QVERIFY2(std::abs(real_s - 1.5 * glued.closed_s) < 0.31, qPrintable(QString::number(real_s)));
        QCOMPARE(followed.cell("days", 1, 4), QString("1.50"));
        QCOMPARE(followed.cell("days", 1, 3), followed.cell("days", 1, 3, underRole));  // batches
        QCOMPARE(followed.cell("days", 1, 3).toInt(), int(followed.taken.shown.plan->day.gluings[0].job.cups.size()));
    }

    void TheNewestIsChosenAndAnotherRowOpensItsDetail() {
        Followed followed(recordedSample());
        auto* words = followed.find<QLabel>("dayWords");
        QVERIFY2(words->text().startsWith("Glue-up on 2026-05-02 at 08:30, air "), qPrintable(words->text()));
        QVERIFY(followed.cell("dayTasks", 0, 0).contains("mix") || followed.cell("dayTasks", 0, 0).contains("Mix"));
        QVERIFY(followed.find<QAbstractButton>("useDayRates")->isVisible());
        followed.choose(0);
        QVERIFY2(words->text().startsWith("Dry fit on 2026-05-01 at 09:15."), qPrintable(words->text()));
        QVERIFY(!followed.find<QAbstractButton>("useDayRates")->isVisible());  // it went as planned
        for (int row = 0; row < followed.find<NotebookTable>("dayTasks")->model()->rowCount(); ++row)
            QCOMPARE(followed.cell("dayTasks", row, 2), followed.cell("dayTasks", row, 2, underRole));
        // One more day is chosen as it comes.
        Shown more = followed.taken.shown;
        more.piece.record.push_back(dayOf(more, true, 2, "2026-05-09T10:00"));
        planAnew(more);
        followed.panel.show(more);
        QVERIFY2(words->text().startsWith("Dry fit on 2026-05-09"), qPrintable(words->text()));
    }

    void MeasuredTimesAreTakenIntoTheCrew() {
        Followed followed(recordedSample(), true);
        const double before_s = followed.taken.shown.piece.crew.rates.mix_s;
        followed.find<QAbstractButton>("useDayRates")->click();
        QCOMPARE(followed.taken.names, QStringList{"Use the measured times"});
        QVERIFY(std::abs(followed.taken.shown.piece.crew.rates.mix_s - 1.5 * before_s) < 1);
        QCOMPARE(followed.cell("days", 1, 4), QString("1.00"));  // by the rates of now it went as planned
    }

    // One that was ended before anything was done.
    void ADayOnWhichNothingWasMeasuredTeachesNothing() {
        Shown shown = shownSample();
        model::Record record;
        record.when = "2026-05-02T08:30";
        record.marks = {{"begin", 0, {}}, {"end", 5, {}}};
        shown.piece.record = {record};
        planAnew(shown);
        Followed followed(shown);
        QCOMPARE(followed.find<QLabel>("dayLearned")->text(), QString("Nothing was measured."));
        QVERIFY(!followed.find<NotebookTable>("dayCompared")->isVisible());
        QVERIFY(!followed.find<QAbstractButton>("useDayRates")->isVisible());
        QCOMPARE(followed.cell("days", 0, 4), QString(QChar(0x2013)));
    }

    void RemarksAreTypedIntoTheChosenDay() {
        Followed followed(recordedSample());
        followed.choose(0);
        auto* remarks = followed.find<RemarksEdit>("remarks");
        remarks->setFocus();
        QTest::keyClicks(remarks, "clamp 4 slips");
        QTest::keyClick(remarks, Qt::Key_Return);
        QTest::keyClicks(remarks, "rope it");
        QCOMPARE(followed.taken.shown.piece.record[0].notes, std::string("clamp 4 slips\nrope it"));
        QVERIFY(followed.taken.shown.piece.record[1].notes.empty());
        QCOMPARE(remarks->textCursor().position(), int(remarks->toPlainText().size()));
        QCOMPARE(remarks->verticalScrollBarPolicy(), Qt::ScrollBarAlwaysOff);
        const int two = remarks->height();
        for (int line = 0; line < 3; ++line) QTest::keyClick(remarks, Qt::Key_Return);
        QVERIFY(remarks->height() > two);
        followed.choose(1);
        QCOMPARE(remarks->toPlainText(), QString());
        followed.choose(0);
        QVERIFY(remarks->toPlainText().startsWith("clamp 4 slips"));
        // What was undone is what then stands there.
        Shown undone = followed.taken.shown;
        undone.piece.record[0].notes = "as before";
        followed.panel.show(undone);
        QCOMPARE(remarks->toPlainText(), QString("as before"));
    }

    // In the window Ctrl+Z in the middle of the words takes back what was typed in one go, as one step.
    void RemarksAreOneStepOfTheWindow() {
        Bench bench;
        bench.find<PanelStack>()->setOpenQuestions({int(plan::Question::record)});
        model::Piece piece = bench.piece();
        piece.record = {dayOf(bench.window.shown(), true, 1, "2026-05-01T09:15")};
        bench.document().changePiece(0, {"Record the dry fit", {}, piece});
        QVERIFY(bench.settle());
        bench.window.activateWindow();
        QVERIFY(QTest::qWaitForWindowActive(&bench.window, test::patience_ms));
        auto* remarks = bench.find<RemarksEdit>("remarks");
        SOON_VERIFY(remarks->isVisible());
        remarks->setFocus();
        const int steps = bench.document().undoStack().count();
        for (const char letter : {'r', 'o', 'p', 'e'}) {
            QTest::keyClick(remarks, letter);
            QVERIFY(bench.settle());
        }
        QCOMPARE(bench.piece().record[0].notes, std::string("rope"));
        QCOMPARE(bench.document().undoStack().count(), steps + 1);
        QTest::keyClick(remarks, Qt::Key_Z, Qt::ControlModifier);
        QVERIFY(bench.piece().record[0].notes.empty());
        SOON_COMPARE(remarks->toPlainText(), QString());
        QTest::keyClick(remarks, Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
        QCOMPARE(bench.piece().record[0].notes, std::string("rope"));
        SOON_COMPARE(remarks->toPlainText(), QString("rope"));
    }

    void ADayIsTakenOut() {
        Followed followed(recordedSample());
        followed.choose(0);
        auto* days = followed.find<NotebookTable>("days");
        days->setFocus();
        QTest::keyClick(days, Qt::Key_Delete);
        QCOMPARE(followed.taken.names, QStringList{"Remove a dry fit"});
        QCOMPARE(followed.taken.shown.piece.record.size(), std::size_t(1));
        QCOMPARE(followed.cell("days", 0, 0, underRole), QString("glue-up"));
    }

    void ReadingsGoToTheGlueUpAndNeverToADryFit() {
        Shown shown = recordedSample();
        shown.piece.record.push_back(dayOf(shown, true, 1, "2026-05-03T08:30"));
        planAnew(shown);
        Followed followed(shown);  // the dry fit is chosen
        followed.find<QAbstractButton>("addReading")->click();
        QCOMPARE(followed.taken.shown.piece.record[1].letGo.size(), std::size_t(1));
        QCOMPARE(followed.taken.shown.piece.record[2].letGo.size(), std::size_t(0));
        QCOMPARE(followed.find<NotebookTable>("readings")->model()->rowCount(), 1);
        QCOMPARE(followed.taken.names, QStringList{"Add a reading"});
        // Without any the reading begins a record, and that one keeps the piece as it is.
        Followed none(shownSample());
        none.find<QAbstractButton>("addReading")->click();
        QCOMPARE(none.taken.shown.piece.record.size(), std::size_t(1));
        QVERIFY(none.taken.shown.piece.record[0].on == laminate::measuredOn(none.taken.shown.piece));
    }

    void ClockAndDryFitAreAskedFor() {
        Followed followed(shownSample());
        QSignalSpy asked(&followed.panel, &Panel::actionAsked);
        followed.find<QAbstractButton>("openClock")->click();
        followed.find<QAbstractButton>("openDryFit")->click();
        QCOMPARE(asked.count(), 2);
        QCOMPARE(asked[0][0].toString(), QString("clock"));
        QCOMPARE(asked[1][0].toString(), QString("dryFit"));
        QVERIFY(!followed.find<NotebookTable>("days")->isVisible());
        QVERIFY(!followed.find<RemarksEdit>("remarks")->isVisible());
    }

    void NothingIsCutOffWithEverythingOpen_data() {
        QTest::addColumn<int>("lengths");
        for (int lengths = 0; lengths < 3; ++lengths) QTest::addRow("notation %d", lengths) << lengths;
    }
    void NothingIsCutOffWithEverythingOpen() {
        QFETCH(int, lengths);
        Shown shown = recordedSample();
        shown.display.lengths = static_cast<units::LengthNotation>(lengths);
        shown.piece.record[1].letGo = {{0, 3.912, 3.914, 0.4125, {}}, {240 * 3600.0, 3.912, 3.916, 0.41, {}}};
        shown.piece.record[1].notes =
            "The third clamp slipped on the wet strip; wedge it next time, and have the rope "
            "ready before anyone lifts.";
        planAnew(shown);
        deepenShown(shown);
        for (const int width : {narrowest, widest}) {
            RecordPanel panel;
            panel.show(shown);
            unfold(panel);
            checkFits(&panel, width);
        }
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, RecordPanelTest>(argc, argv);
}
#include "record_panel_test.moc"
