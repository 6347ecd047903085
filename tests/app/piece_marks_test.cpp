// The shapes beside the pieces' names: of every piece, in time, of the newest state, never in the way of the current.
#include "app/window/piece_marks.hpp"

#include <QListWidget>
#include <QSettings>
#include <QSignalSpy>
#include <QTest>
#include <QTimer>

#include "core/io/file.hpp"
#include "tests/app/own_home.hpp"
#include "tests/app/window_bench.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

constexpr int hour_ms = 3600 * 1000;

PieceMark planned(const model::Boat& boat, int index) {
    return markOf(plan::makePlan(boat.pieces[size_t(index)], plan::shopOf(boat)));
}

model::Piece doubled(model::Piece piece) {
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
        const model::Boat boat = io::loadBoat(marram.toStdString());
        PieceMarks marks(nullptr, 0);
        QSignalSpy changed(&marks, &PieceMarks::marksChanged);
        marks.follow(boat, 0);
        const int others = int(boat.pieces.size()) - 1;
        SOON_COMPARE(changed.count(), others);
        int withFinding = 0;
        for (int i = 1; i <= others; ++i) {
            QVERIFY(marks.of(boat.pieces[size_t(i)]) == planned(boat, i));
            withFinding += marks.of(boat.pieces[size_t(i)]).worst.has_value();
        }
        QVERIFY(withFinding > 0);
        QVERIFY(!marks.of(boat.pieces[0]).worst);
        QVERIFY(!marks.isWorking());  // and is then left alone
    }

    void markIsTheWorstThoughAMisreadOffsetIsNamedFirst() {
        const model::Boat boat = io::loadBoat(FAYLINE_SAMPLES "/marram_misread.fayline");
        const plan::Shop shop = plan::shopOf(boat);
        const std::atomic<bool> goOn{false};
        const plan::Plan live = plan::makePlan(boat.pieces[0], shop);
        const PieceMark mark = markOf(*plan::deepen(boat.pieces[0], shop, live, goOn));
        QCOMPARE(*mark.worst, plan::Severity::stop);
        QVERIFY2(mark.why.startsWith("WL 24"), qPrintable(mark.why));
    }

    void pieceThatCannotBePlannedIsAStopWithItsReason() {
        model::Boat boat = io::loadBoat(marram.toStdString());
        boat.pieces[2] = doubled(boat.pieces[2]);
        PieceMarks marks(nullptr, 0);
        marks.follow(boat, 0);
        SOON_VERIFY(marks.of(boat.pieces[2]).worst);
        QCOMPARE(*marks.of(boat.pieces[2]).worst, plan::Severity::stop);
        QVERIFY2(marks.of(boat.pieces[2]).why.startsWith("This piece cannot be planned. Fix first: "),
                 qPrintable(marks.of(boat.pieces[2]).why));
        // Those after it are planned all the same.
        const PieceMark last = planned(boat, 3);
        SOON_VERIFY(marks.of(boat.pieces[3]) == last);
    }

    void nothingIsPlannedWhileChangesKeepComing() {
        model::Boat boat = io::loadBoat(marram.toStdString());
        PieceMarks marks(nullptr, hour_ms);
        QSignalSpy changed(&marks, &PieceMarks::marksChanged);
        marks.follow(boat, 0);
        auto* rest = marks.findChild<QTimer*>();
        QVERIFY(rest && rest->isSingleShot() && rest->isActive());
        // Each change lets it begin anew: some time of it goes, and is there again.
        SOON_VERIFY(rest->remainingTime() < hour_ms - 50);
        const int left_ms = rest->remainingTime();
        SOON_VERIFY((marks.follow(boat, 0), rest->remainingTime() > left_ms));
        QCOMPARE(changed.count(), 0);
        QVERIFY(marks.isWorking());
        rest->setInterval(0);  // the hour is over
        SOON_COMPARE(changed.count(), int(boat.pieces.size()) - 1);
    }

    void onlyWhatHasChangedIsPlannedAgain() {
        model::Boat boat = io::loadBoat(marram.toStdString());
        PieceMarks marks(nullptr, 0);
        QSignalSpy changed(&marks, &PieceMarks::marksChanged);
        marks.follow(boat, 0);
        SOON_COMPARE(changed.count(), int(boat.pieces.size()) - 1);
        changed.clear();
        const PieceMark before = marks.of(boat.pieces[3]);
        std::swap(boat.pieces[2], boat.pieces[3]);
        boat.pieces[1] = doubled(boat.pieces[1]);
        marks.follow(boat, 0);
        QVERIFY(marks.of(boat.pieces[2]) == before);
        SOON_VERIFY(marks.of(boat.pieces[1]).worst);
        QCOMPARE(changed.count(), 1);
        // Other units: the sentences change.
        boat.display.lengths = units::LengthNotation::millimetres;
        marks.follow(boat, 0);
        QVERIFY(!marks.of(boat.pieces[1]).worst);
        const PieceMark inMillimetres = planned(boat, 2);
        SOON_VERIFY(marks.of(boat.pieces[2]) == inMillimetres);
    }

    void shapesStandBesideTheNamesInTheWindow() {
        QSettings().clear();
        Bench bench(marram, {0, 0});
        auto* list = bench.find<QListWidget>("piecesList");
        const model::Boat& boat = bench.document().boat();
        const auto shows = [&](int index, const PieceMark& mark) {
            const QListWidgetItem* item = list->item(index);
            return !item->icon().isNull() && item->toolTip() == mark.why &&
                   item->data(Qt::AccessibleTextRole).toString().contains("Worst finding") == mark.worst.has_value();
        };
        std::vector<PieceMark> marks;
        for (int i = 0; i < list->count(); ++i) marks.push_back(planned(boat, i));
        for (int i = 0; i < list->count(); ++i)
            SOON_VERIFY2(shows(i, marks[size_t(i)]), qPrintable(list->item(i)->text()));
        // Spoilt, then left: the stop stays beside the name of the piece that is no longer on the table.
        bench.document().changePiece(0, {"Double", {}, doubled(bench.piece())});
        SOON_VERIFY(list->item(0)->toolTip().startsWith("This piece cannot be planned. Fix first: "));
        bench.document().setCurrentPiece(1);
        QVERIFY(list->item(0)->toolTip().startsWith("This piece cannot be planned. Fix first: "));
        SOON_VERIFY(shows(1, marks[1]));
        QVERIFY(list->item(0)->toolTip().startsWith("This piece cannot be planned. Fix first: "));
        bench.action("undo")->trigger();
        SOON_VERIFY(shows(0, marks[0]));
        SOON_VERIFY(shows(1, marks[1]));
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, PieceMarksTest>(argc, argv);
}
#include "piece_marks_test.moc"
