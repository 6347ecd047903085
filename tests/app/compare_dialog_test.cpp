// Two states of a piece side by side, in the dialog.
#include "app/window/compare_dialog.hpp"

#include <QAbstractItemDelegate>
#include <QComboBox>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QTest>

#include "app/panels/finding_line.hpp"
#include "core/io/file.hpp"
#include "tests/app/own_home.hpp"
#include "tests/app/patience.hpp"
#include "tests/app/window_bench.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

constexpr int secondIs = 4;

// A document with the sample boat, and the dialog on it; nothing is planned beforehand.
struct Comparing {
    Document document;
    std::unique_ptr<CompareDialog> dialog;

    explicit Comparing(const QString& file = marram) { document.open(file); }
    void open(const Shown& shown = {}) {
        dialog = std::make_unique<CompareDialog>(document, shown);
        dialog->show();
    }
    QComboBox* box(const char* name) { return dialog->findChild<QComboBox*>(name); }
    QTableWidget* table() { return dialog->findChild<QTableWidget*>("compared"); }
    // Until both sides are planned whole.
    bool settle() {
        return test::soon(
            [&] { return table()->isVisible() && !again()->isVisible() && box("compareFirst")->isEnabled(); });
    }
    QPushButton* again() { return dialog->findChild<QPushButton*>("compareAgain"); }
    QString judged(plan::Question question) {
        return table()->item(int(question), secondIs)->data(Qt::AccessibleTextRole).toString();
    }
    int findings(const char* part) {
        return int(dialog->findChild<QWidget*>(part)->findChildren<FindingLine*>().size());
    }
    void change(const QString& name, const std::function<void(model::Piece&)>& make) {
        model::Piece after = document.boat().pieces[0];
        make(after);
        document.changePiece(0, {name, {}, after});
        document.endStep();
    }
};

QSize sizeHintOf(const QTableWidget* table, int row, int column) {
    QStyleOptionViewItem option;
    option.initFrom(table);
    option.font = table->font();
    option.decorationSize = table->iconSize();
    return table->itemDelegate()->sizeHint(option, table->model()->index(row, column));
}

}  // namespace

class CompareDialogTest : public QObject {
    Q_OBJECT

public:
    static void initMain() { useHomeOfItsOwn(); }

private slots:
    void initTestCase() { applyGround(Ground::paper); }

    void BeforeTheLastChangeStandsBesideNow() {
        Comparing of;
        of.change("Halve the strips", [](model::Piece& piece) {
            piece.stack.strips[0].thickness_m /= 2;
            piece.stack.strips[0].count *= 2;
        });
        const model::Boat before = of.document.boat();
        const int steps = of.document.undoStack().count();
        of.open();
        QVERIFY(of.settle());
        QVERIFY(of.box("compareFirst")->currentText().contains("before: Halve the strips"));
        QVERIFY(of.box("compareSecond")->currentText().contains("as it is"));
        QCOMPARE(of.table()->rowCount(), 9);
        QCOMPARE(of.judged(plan::Question::strips), QString("better"));
        QCOMPARE(of.judged(plan::Question::time), QString("worse"));
        QCOMPARE(of.judged(plan::Question::line), QString("alike"));
        for (int row = 0; row < 9; ++row) QVERIFY(!of.table()->item(row, secondIs)->icon().isNull());
        QVERIFY(of.document.boat() == before);
        QCOMPARE(of.document.undoStack().count(), steps);
    }

    void AMisreadOffsetPutRightIsAmongTheFindingsThatWent() {
        Comparing of(QString(FAYLINE_SAMPLES) + "/marram_misread.fayline");
        const model::Piece right = io::loadBoat(marram.toStdString()).pieces[0];
        of.change("Correct WL 24", [&](model::Piece& piece) { piece.line.points = right.line.points; });
        of.open();
        QVERIFY(of.settle());
        QCOMPARE(of.judged(plan::Question::line), QString("better"));
        bool told = false;
        for (const FindingLine* line : of.dialog->findChild<QWidget*>("findingsGone")->findChildren<FindingLine*>())
            told |= line->accessibleName().contains("WL 24");
        QVERIFY(told);
        // The other way round it has come.
        of.box("compareFirst")->setCurrentIndex(0);
        of.box("compareSecond")->setCurrentIndex(1);
        QVERIFY(of.settle());
        QCOMPARE(of.judged(plan::Question::line), QString("worse"));
        QVERIFY(of.findings("findingsNew") > 0);
    }

    void AnyOtherPieceAndTheSavedStateCanBeChosen() {
        QTemporaryDir folder;
        const QString file = folder.filePath("boat.fayline");
        QVERIFY(QFile::copy(marram, file));
        Comparing of(file);
        const int pieces = int(of.document.boat().pieces.size());
        of.change("One", [](model::Piece& piece) { piece.stack.strips[0].count += 1; });
        of.change("Two", [](model::Piece& piece) { piece.stack.strips[0].count += 1; });
        of.open();
        QVERIFY(of.settle());
        auto* first = of.box("compareFirst");
        QCOMPARE(first->count(), pieces + 2);
        QVERIFY(first->itemText(1).contains("before: Two"));
        QVERIFY(first->itemText(2).contains("as last saved"));
        for (int i = 0; i < first->count(); ++i) {
            first->setCurrentIndex(i);
            QVERIFY(of.settle());
            QCOMPARE(of.judged(plan::Question::strips) == "alike" && of.judged(plan::Question::glue) == "alike",
                     i == 0);
        }
    }

    void APieceThatCannotBePlannedIsNamed() {
        Comparing of;
        of.change("Spoil", [](model::Piece& piece) { piece.stack.strips[0].species = "no such wood"; });
        of.open();
        SOON_VERIFY(of.dialog->findChild<QLabel*>("compareNote")->text().contains("cannot be planned"));
        QVERIFY(!of.table()->isVisible());
        QVERIFY(!of.again()->isVisible());
        of.box("compareSecond")->setCurrentIndex(2);  // another piece can
        QVERIFY(of.settle());
    }

    void OnePieceThatWasNeverChangedIsAlikeToItself() {
        Comparing of;
        while (of.document.boat().pieces.size() > 1) of.document.removePiece(1);
        of.document.undoStack().clear();
        of.open();
        QVERIFY(of.settle());
        for (int row = 0; row < 9; ++row) QCOMPARE(of.judged(plan::Question(row)), QString("alike"));
        QVERIFY(of.dialog->findChild<QLabel*>("compareNote")->text().contains("something to compare"));
        QCOMPARE(of.findings("findingsGone"), 0);
    }

    void NothingInTheTableIsCutOff() {
        for (const bool metric : {false, true}) {
            Comparing of;
            model::Boat boat = of.document.boat();
            boat.display = metric ? units::metricShop : units::inchShop;
            of.document.changeBoat("Units", {}, boat);
            of.open();
            of.box("compareFirst")->setCurrentIndex(1);
            QVERIFY(of.settle());
            QTableWidget* table = of.table();
            QVERIFY(table->horizontalHeader()->length() <= table->viewport()->width());
            for (int row = 0; row < table->rowCount(); ++row)
                for (int column = 0; column < table->columnCount(); ++column) {
                    const QSize wanted = sizeHintOf(table, row, column);
                    QVERIFY2(wanted.width() <= table->columnWidth(column) && wanted.height() <= table->rowHeight(row),
                             qPrintable(table->item(row, column)->text()));
                }
        }
    }

    void TheMenuOpensIt() {
        Bench bench;
        bool opened = false;
        QTimer timer;
        timer.setInterval(10);
        connect(&timer, &QTimer::timeout, [&] {
            auto* dialog = qobject_cast<CompareDialog*>(QApplication::activeModalWidget());
            if (!dialog) return;
            timer.stop();
            opened = true;
            dialog->reject();
        });
        timer.start();
        bench.action("compare")->trigger();
        QVERIFY(opened);
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, CompareDialogTest>(argc, argv);
}
#include "compare_dialog_test.moc"
