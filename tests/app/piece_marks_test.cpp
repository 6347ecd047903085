// The shapes beside the pieces' names: of every piece, in time, of the newest state, never in the way of the current.
#include "app/window/piece_marks.hpp"

#include <QListWidget>
#include <QSettings>
#include <QSignalSpy>
#include <QTest>
#include <QThread>

#include "core/boat/file.hpp"
#include "tests/app/own_home.hpp"
#include "tests/app/window_bench.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

PieceMark planned(const boat::Boat& boat, int index) {
    return markOf(plan::makePlan(boat.pieces[size_t(index)], plan::shopOf(boat)));
}

boat::Piece doubled(boat::Piece piece) {
    piece.line.points[1] = piece.line.points[0];
    return piece;
}

}  // namespace

class PieceMarksTest : public QObject {
    Q_OBJECT

public:
    static void initMain() { useHomeOfItsOwn(); }

private slots:
    void everyPieceButTheCurrentGetsTheMarkOfItsPlan() {
        const boat::Boat boat = boat::loadBoat(marram.toStdString());
        PieceMarks marks;
        QSignalSpy changed(&marks, &PieceMarks::marksChanged);
        marks.follow(boat, 0);
        const int others = int(boat.pieces.size()) - 1;
        QTRY_COMPARE(changed.count(), others);
        int withFinding = 0;
        for (int i = 1; i <= others; ++i) {
            QVERIFY(marks.of(boat.pieces[size_t(i)]) == planned(boat, i));
            withFinding += marks.of(boat.pieces[size_t(i)]).worst.has_value();
        }
        QVERIFY(withFinding > 0);
        QVERIFY(!marks.of(boat.pieces[0]).worst);
        QTest::qWait(500);
        QCOMPARE(changed.count(), others);  // and is then left alone
    }

    void pieceThatCannotBePlannedIsAStopWithItsReason() {
        boat::Boat boat = boat::loadBoat(marram.toStdString());
        boat.pieces[2] = doubled(boat.pieces[2]);
        PieceMarks marks;
        marks.follow(boat, 0);
        QTRY_VERIFY(marks.of(boat.pieces[2]).worst);
        QCOMPARE(*marks.of(boat.pieces[2]).worst, plan::Severity::stop);
        QVERIFY2(marks.of(boat.pieces[2]).why.startsWith("This piece cannot be planned: "),
                 qPrintable(marks.of(boat.pieces[2]).why));
        // Those after it are planned all the same.
        QTRY_VERIFY(marks.of(boat.pieces[3]) == planned(boat, 3));
    }

    void nothingIsPlannedWhileChangesKeepComing() {
        boat::Boat boat = boat::loadBoat(marram.toStdString());
        PieceMarks marks;
        QSignalSpy changed(&marks, &PieceMarks::marksChanged);
        for (int i = 0; i < 60; ++i) {
            boat.pieces[0].line.points[2].x_m += 1e-4;
            marks.follow(boat, 0);
            // Right after a change the rest has only begun, however long the machine slept before it.
            QCoreApplication::processEvents();
            QThread::msleep(10);
        }
        QCOMPARE(changed.count(), 0);
        QTRY_COMPARE(changed.count(), int(boat.pieces.size()) - 1);
    }

    void onlyWhatHasChangedIsPlannedAgain() {
        boat::Boat boat = boat::loadBoat(marram.toStdString());
        PieceMarks marks;
        QSignalSpy changed(&marks, &PieceMarks::marksChanged);
        marks.follow(boat, 0);
        QTRY_COMPARE(changed.count(), int(boat.pieces.size()) - 1);
        changed.clear();
        const PieceMark before = marks.of(boat.pieces[3]);
        std::swap(boat.pieces[2], boat.pieces[3]);
        boat.pieces[1] = doubled(boat.pieces[1]);
        marks.follow(boat, 0);
        QVERIFY(marks.of(boat.pieces[2]) == before);
        QTRY_VERIFY(marks.of(boat.pieces[1]).worst);
        QCOMPARE(changed.count(), 1);
        // Other units: the sentences change.
        boat.display.lengths = measure::LengthNotation::millimetres;
        marks.follow(boat, 0);
        QVERIFY(!marks.of(boat.pieces[1]).worst);
        QTRY_VERIFY(marks.of(boat.pieces[2]) == planned(boat, 2));
    }

    void shapesStandBesideTheNamesInTheWindow() {
        QSettings().clear();
        Bench bench;
        auto* list = bench.find<QListWidget>("piecesList");
        const boat::Boat& boat = bench.document().boat();
        const auto shows = [&](int index, const PieceMark& mark) {
            const QListWidgetItem* item = list->item(index);
            return !item->icon().isNull() && item->toolTip() == mark.why &&
                   item->data(Qt::AccessibleTextRole).toString().contains("Worst finding") == mark.worst.has_value();
        };
        for (int i = 0; i < list->count(); ++i)
            QTRY_VERIFY2(shows(i, planned(boat, i)), qPrintable(list->item(i)->text()));
        // Spoilt, then left: the stop stays beside the name of the piece that is no longer on the table.
        bench.document().changePiece(0, {"Double", {}, doubled(bench.piece())});
        QTRY_VERIFY(list->item(0)->toolTip().startsWith("This piece cannot be planned: "));
        bench.document().setCurrentPiece(1);
        QVERIFY(list->item(0)->toolTip().startsWith("This piece cannot be planned: "));
        QTest::qWait(500);
        QVERIFY(list->item(0)->toolTip().startsWith("This piece cannot be planned: "));
        QVERIFY(shows(1, planned(boat, 1)));
        bench.action("undo")->trigger();
        QTRY_VERIFY(shows(0, planned(boat, 0)));
        QVERIFY(shows(1, planned(boat, 1)));
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, PieceMarksTest>(argc, argv);
}
#include "piece_marks_test.moc"
