// The shapes beside the pieces' names: of every piece, of its newest state.
#include "app/window/piece_marks.hpp"

#include <QListWidget>
#include <QSettings>
#include <QTest>

#include "core/io/file.hpp"
#include "tests/app/own_home.hpp"
#include "tests/app/window_bench.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

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
    void markIsTheWorstThoughAMisreadOffsetIsNamedFirst() {
        const model::Boat boat = io::loadBoat(FAYLINE_SAMPLES "/marram_misread.fayline");
        const plan::Shop shop = plan::shopOf(boat);
        const std::atomic<bool> goOn{false};
        const plan::Plan live = plan::makePlan(boat.pieces[0], shop);
        const PieceMark mark = markOf(*plan::deepen(boat.pieces[0], shop, live, goOn));
        QCOMPARE(*mark.worst, plan::Severity::stop);
        QVERIFY2(mark.why.startsWith("WL 24"), qPrintable(mark.why));
    }

    void marksOfOtherStatesWoodsAndUnitsAreForgotten() {
        model::Boat boat = io::loadBoat(marram.toStdString());
        PieceMarks marks;
        marks.follow(boat);
        QVERIFY(!marks.of(boat.pieces[2]));
        const PieceMark mark = planned(boat, 2);
        marks.know(boat.pieces[2], mark);
        std::swap(boat.pieces[2], boat.pieces[3]);
        marks.follow(boat);
        QVERIFY(marks.of(boat.pieces[3]) && *marks.of(boat.pieces[3]) == mark);
        const model::Piece before = boat.pieces[3];
        boat.pieces[3] = doubled(before);
        marks.follow(boat);
        QVERIFY(!marks.of(boat.pieces[3]) && !marks.of(before));
        marks.know(boat.pieces[3], markOfRefusal("doubled"));
        boat.display.lengths = units::LengthNotation::millimetres;
        marks.follow(boat);
        QVERIFY(!marks.of(boat.pieces[3]));
    }

    void shapesStandBesideTheNamesInTheWindow() {
        QSettings().clear();
        Bench bench(marram, {{.restsAfter_ms = 0}});
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
