// The stock panel: boards typed and pasted, strips chosen, dragged to another board, broken and cut anew.
#include "app/panels/stock_panel.hpp"

#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

#include "app/panels/boards_model.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/stock_picture.hpp"
#include "app/panels/stock_rows.hpp"
#include "tests/app/run_test.hpp"
#include "tests/app/shown_panel.hpp"
#include "tests/app/shown_piece.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

// Metres and millimetres, so that what is typed is easily read.
Taken taken(std::vector<model::Board> boards) {
    Taken taken;
    taken.shown = shownSample();
    taken.shown.display.lengths = units::LengthNotation::millimetres;
    taken.shown.piece.stock = {};
    taken.shown.piece.stock.boards = std::move(boards);
    taken.atRest = true;
    planAnew(taken.shown);
    return taken;
}

model::Board board(const char* name, double length_m = 2.7, double width_m = 0.15) {
    return {.name = name, .length_m = length_m, .width_m = width_m, .thickness_m = 0.070};
}

const plan::StockStudy& studyOf(const Taken& taken) {
    return *taken.shown.plan->stock;
}

// Board and part of the study where the strip is cut; -1: nowhere.
std::pair<int, int> whereIs(const plan::StockStudy& study, int place) {
    for (int on = 0; on < static_cast<int>(study.boards.size()); ++on) {
        for (int part = 0; part < static_cast<int>(study.boards[on].parts.size()); ++part) {
            const plan::SawnPart& one = study.boards[on].parts[part];
            if (one.place == place && !one.lost) return {on, part};
        }
    }
    return {-1, -1};
}

// Its place in the picture: boards that are cut stand before the others.
int drawn(const plan::StockStudy& study, int on) {
    const bool cut = !study.boards[on].parts.empty();
    int before = 0;
    for (int i = 0; i < static_cast<int>(study.boards.size()); ++i) {
        const bool isCut = !study.boards[i].parts.empty();
        before += (isCut && !cut) || (isCut == cut && i < on);
    }
    return before;
}

}  // namespace

class StockPanelTest : public QObject {
    Q_OBJECT
private slots:
    void initTestCase() { applyGround(Ground::paper); }

    void BadStretchesAreWrittenAsTheyAreRead() {
        const units::Display display;
        const QString written = "700 to 820; 900 to 950 across 0 to 40; 1000 to 1100 across 20 to edge";
        const std::vector<model::BadStretch> bad = readBad(written, display);
        QCOMPARE(bad.size(), std::size_t{3});
        QCOMPARE(bad[0].to_m, 0.82);
        QVERIFY(!bad[0].acrossFrom_m);
        QCOMPARE(*bad[1].acrossTo_m, 0.04);
        QCOMPARE(*bad[2].acrossFrom_m, 0.02);
        QVERIFY(!bad[2].acrossTo_m);
        QCOMPARE(readBad(writeBad(bad, display), display), bad);
        QVERIFY(readBad("", display).empty());
        QVERIFY_THROWS_EXCEPTION(units::InputError, readBad("700", display));
        QVERIFY_THROWS_EXCEPTION(units::InputError, readBad("820 to 700", display));
    }

    void ABoardIsPastedOnEachLineAndALineThatCannotBeReadChangesNothing() {
        StockPanel panel;
        Taken all = taken({});
        followWith(all, &panel);
        open(&panel, widest);
        QString lines;
        for (int i = 1; i <= 12; ++i) lines += QString("Oak %1\t1\t2400\t150\t70\n").arg(i);
        QApplication::clipboard()->setText(lines + "Oak 13\tone\t2400\t150\t70\n");
        panel.findChild<QToolButton*>("pasteBoards")->click();
        QVERIFY(all.names.isEmpty());
        QVERIFY(panel.findChild<QLabel*>("boardsUnread")->text().contains("one"));
        QApplication::clipboard()->setText(lines);
        panel.findChild<QToolButton*>("pasteBoards")->click();
        QCOMPARE(all.names.size(), 1);
        QCOMPARE(all.shown.piece.stock.boards.size(), std::size_t{12});
        QCOMPARE(all.shown.piece.stock.boards[11].name, std::string("Oak 12"));
        QCOMPARE(all.shown.piece.stock.boards[0].length_m, 2.4);
        // They are of the wood that the strips are of.
        QCOMPARE(all.shown.piece.stock.boards[0].species, all.shown.piece.stack.strips[0].species);
    }

    void EnterInTheLastCellBeginsANewBoard() {
        StockPanel panel;
        Taken all = taken({board("A")});
        followWith(all, &panel);
        open(&panel, widest);
        auto* table = panel.findChild<NotebookTable*>("boards");
        const QModelIndex last = table->model()->index(0, BoardsModel::thicknessColumn);
        table->setCurrentIndex(last);
        table->edit(last);
        auto* editor = table->findChild<QLineEdit*>("cellEditor");
        QVERIFY(editor);
        editor->setText("65");
        QTest::keyClick(editor, Qt::Key_Return);
        QTRY_COMPARE_WITH_TIMEOUT(table->model()->rowCount(), 2, test::patience_ms);
        QCOMPARE(all.shown.piece.stock.boards[0].thickness_m, 0.065);
        QCOMPARE(all.shown.piece.stock.boards[1].name, std::string("B"));
        QTRY_VERIFY_WITH_TIMEOUT(table->currentIndex().row() == 1, test::patience_ms);
    }

    void AStripThatIsClickedIsToldAndOneChosenElsewhereIsMarked() {
        StockPanel panel;
        Taken all = taken({board("A"), board("B")});
        followWith(all, &panel);
        open(&panel, widest);
        auto* picture = panel.findChild<StockPicture*>("stockPicture");
        QSignalSpy chosen(&panel, &Panel::stripSelected);
        const auto [on, part] = whereIs(studyOf(all), 3);
        QVERIFY(on >= 0);
        QTest::mouseClick(picture, Qt::LeftButton, {},
                          picture->partPlace(drawn(studyOf(all), on), part).center().toPoint());
        QCOMPARE(chosen.size(), 1);
        QCOMPARE(chosen[0][0].toInt(), 3);
        QVERIFY(panel.findChild<QLabel*>("stripWords")->isVisible());
        panel.selectStrip(5);
        QCOMPARE(picture->chosen(), 5);
        picture->setFocus();
        QTest::keyClick(picture, Qt::Key_Down);
        QVERIFY(picture->chosen() != 5);
    }

    void AStripDraggedToAnotherBoardIsCutFromThereInOneStep() {
        StockPanel panel;
        Taken all = taken({board("A"), board("B")});
        followWith(all, &panel);
        open(&panel, widest);
        auto* picture = panel.findChild<StockPicture*>("stockPicture");
        const auto [on, part] = whereIs(studyOf(all), 2);
        QVERIFY(on >= 0);
        const int other = 1 - on;
        const std::string wanted = studyOf(all).boards[other].name;
        const QPoint from = picture->partPlace(drawn(studyOf(all), on), part).center().toPoint();
        const QPoint to = picture->boardPlace(drawn(studyOf(all), other)).center().toPoint();
        QTest::mousePress(picture, Qt::LeftButton, {}, from);
        QTest::mouseMove(picture, (from + to) / 2);
        QTest::mouseMove(picture, to);
        QTest::mouseRelease(picture, Qt::LeftButton, {}, to);
        QCOMPARE(all.names.size(), 1);
        QCOMPARE(all.shown.piece.stock.pins.size(), std::size_t{1});
        QCOMPARE(all.shown.piece.stock.pins[0].board, wanted);
        QCOMPARE(studyOf(all).boards[whereIs(studyOf(all), 2).first].name, wanted);
        QVERIFY(studyOf(all).missing.empty());
        // The same by the keyboard, back to the best board.
        auto* box = panel.findChild<QComboBox*>("stripBoard");
        box->setCurrentIndex(0);
        emit box->activated(0);
        QVERIFY(all.shown.piece.stock.pins.empty());
    }

    // Twelve boards, all strips cut, one breaks at the bench: another comes from what is left.
    void AStripThatBrokeIsCutAnewFromWhatIsLeft() {
        StockPanel panel;
        std::vector<model::Board> boards;
        for (int i = 1; i <= 12; ++i) boards.push_back(board(qPrintable(QString("Oak %1").arg(i)), 2.4, 0.045));
        Taken all = taken(boards);
        all.shown.piece.stock.spares = 1;
        planAnew(all.shown);
        followWith(all, &panel);
        open(&panel, widest);
        unfold(panel);
        QVERIFY(studyOf(all).missing.empty());
        const int needed = studyOf(all).stripsNeeded;
        auto* allCut = panel.findChild<QPushButton*>("allCut");
        allCut->setFocus();
        allCut->click();
        QCOMPARE(studyOf(all).alreadyCut, needed);
        QVERIFY(!allCut->isEnabled());
        QVERIFY(panel.findChild<StockPicture*>("stockPicture")->hasFocus());  // not somewhere out of sight

        panel.selectStrip(4);
        panel.findChild<QPushButton*>("stripLost")->click();
        QCOMPARE(studyOf(all).alreadyCut, needed - 1);
        QVERIFY(studyOf(all).missing.empty());
        QVERIFY(whereIs(studyOf(all), 4).first >= 0);
        // All others stay where they were cut.
        for (const model::StripCut& cut : all.shown.piece.stock.cut) {
            if (cut.lost) continue;
            const auto [on, part] = whereIs(studyOf(all), cut.place);
            QCOMPARE(studyOf(all).boards[on].name, cut.board);
            QCOMPARE(studyOf(all).boards[on].parts[part].from_m, cut.from_m);
        }
        // Or the spare goes in its place, and a spare is to be cut.
        QVERIFY(panel.findChild<QPushButton*>("useSpare")->isVisible());
        panel.findChild<QPushButton*>("useSpare")->click();
        QVERIFY(studyOf(all).boards[whereIs(studyOf(all), 4).first].parts[whereIs(studyOf(all), 4).second].cut);
        QVERIFY(
            !studyOf(all).boards[whereIs(studyOf(all), needed).first].parts[whereIs(studyOf(all), needed).second].cut);
        // And back: as if it had never been cut.
        panel.findChild<QPushButton*>("stripUncut")->click();
        QVERIFY(
            std::ranges::none_of(all.shown.piece.stock.cut, [](const model::StripCut& cut) { return cut.place == 4; }));
    }

    void TheBoatsBoardsAreChangedAsTheBoatsAndSharedInOneStep() {
        StockPanel panel;
        Taken all = taken({board("A")});
        panel.show(all.shown);
        open(&panel, widest);
        unfold(panel);
        QSignalSpy changes(&panel, &Panel::changeAsked);
        panel.findChild<QPushButton*>("shareBoards")->click();
        QCOMPARE(changes.size(), 1);
        const auto shared = changes[0][0].value<Change>();
        QVERIFY(shared.after.stock.boards.empty());
        QCOMPARE(shared.boatBoards->size(), std::size_t{1});

        all.shown.piece = shared.after;
        all.shown.boatBoards = *shared.boatBoards;
        panel.show(all.shown);
        auto* table = panel.findChild<NotebookTable*>("boards");
        QCOMPARE(table->model()->rowCount(), 1);
        QVERIFY(table->model()->setData(table->model()->index(0, BoardsModel::lengthColumn), "3000", Qt::EditRole));
        QCOMPARE(changes.size(), 2);
        const auto longer = changes[1][0].value<Change>();
        QVERIFY(longer.after.stock.boards.empty());
        QCOMPARE(longer.boatBoards->at(0).length_m, 3.0);
    }

    void WhereStripsAreShortWhatHelpsIsTriedByOneClick() {
        StockPanel panel;
        Taken all = taken({board("A", 2.7, 0.045)});
        followWith(all, &panel);
        open(&panel, widest);
        QVERIFY(!studyOf(all).missing.empty());
        QVERIFY(panel.findChild<QLabel*>("answer")->text().contains("short"));
        QVERIFY(!studyOf(all).cures.empty());
        auto* take = panel.findChild<QPushButton*>("takeStockCure");
        QVERIFY(take->isVisible());
        take->click();
        QCOMPARE(all.names.size(), 1);
    }

    void NothingIsCutOffHoweverWide() {
        for (const int width : {narrowest, widest}) {
            StockPanel panel;
            Taken all = taken({board("A"), board("B", 2.4, 0.12)});
            all.shown.display.lengths = units::LengthNotation::feetInchesEighths;
            planAnew(all.shown);
            followWith(all, &panel);
            unfold(panel);
            panel.selectStrip(1);
            checkFits(&panel, width);
        }
    }
};

int main(int argc, char** argv) {
    return runTest<QApplication, StockPanelTest>(argc, argv);
}

#include "stock_panel_test.moc"
