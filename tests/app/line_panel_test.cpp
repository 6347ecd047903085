// The line panel: offsets typed, pasted, opened and put right, fields that keep what cannot be read.
#include "app/panels/line_panel.hpp"

#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>
#include <QToolButton>
#include <algorithm>

#include "app/look/theme.hpp"
#include "app/panels/along_plot.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/offsets_dialog.hpp"
#include "tests/app/shown_panel.hpp"
#include "tests/app/shown_piece.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

QLineEdit* beginTyping(NotebookTable* table, int row, int column) {
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);  // an editor that was closed before
    const QModelIndex cell = table->model()->index(row, column);
    table->setCurrentIndex(cell);
    table->edit(cell);
    auto* editor = table->findChild<QLineEdit*>("cellEditor");
    if (editor) editor->selectAll();
    return editor;
}

}  // namespace

class LinePanelTest : public QObject {
    Q_OBJECT
private slots:
    void initTestCase() { applyGround(Ground::paper); }

    void AnOffsetIsTypedAndEnterGoesToTheNextRow() {
        LinePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        auto* table = panel.findChild<NotebookTable*>("offsets");
        QLineEdit* editor = beginTyping(table, 5, OffsetsModel::xColumn);
        QVERIFY(editor);
        QTest::keyClicks(editor, "1-8-3");
        QTest::keyClick(editor, Qt::Key_Return);
        QCOMPARE(taken.names, QStringList{QStringLiteral("Set WL 12 x to 1-8-3")});
        QCOMPARE(table->currentIndex(), table->model()->index(6, OffsetsModel::xColumn));
    }

    void APlanThatComesWhileTypingLeavesTheEditorAsItIs() {
        LinePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        auto* table = panel.findChild<NotebookTable*>("offsets");
        QLineEdit* editor = beginTyping(table, 5, OffsetsModel::xColumn);
        QTest::keyClicks(editor, "1-8");
        for (int i = 0; i < 3; ++i) {
            taken.shown.piece.line.points[7].x_m += 0.001;
            planAnew(taken.shown);
            panel.show(taken.shown);
            QTest::qWait(1);
        }
        // Even one that brings another point further down.
        taken.shown.piece.line.points.insert(taken.shown.piece.line.points.begin() + 9,
                                             {.label = "new", .x_m = 0.215, .y_m = 0.84});
        planAnew(taken.shown);
        panel.show(taken.shown);
        QCOMPARE(table->findChild<QLineEdit*>("cellEditor"), editor);
        QCOMPARE(editor->text(), QStringLiteral("1-8"));
        QVERIFY(editor->hasFocus());
        QTest::keyClicks(editor, "-3");
        QTest::keyClick(editor, Qt::Key_Return);
        QCOMPARE(taken.names, QStringList{QStringLiteral("Set WL 12 x to 1-8-3")});
    }

    void NonsenseStaysInItsEditorWithTheReasonInWords() {
        LinePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        unfold(panel);
        auto* table = panel.findChild<NotebookTable*>("offsets");
        auto* unread = panel.findChild<QLabel*>("offsetsUnread");
        QLineEdit* editor = beginTyping(table, 5, OffsetsModel::yColumn);
        QTest::keyClicks(editor, "2-13-4");
        QTest::keyClick(editor, Qt::Key_Return);
        QCOMPARE(table->findChild<QLineEdit*>("cellEditor"), editor);
        QCOMPARE(editor->text(), QStringLiteral("2-13-4"));
        QVERIFY(unread->isVisible());
        QVERIFY2(unread->text().startsWith("WL 12, y: ") && unread->text().contains("13"), qPrintable(unread->text()));
        QVERIFY(taken.names.isEmpty());
        // Left by the mouse, the text waits in its cell.
        panel.findChild<QLineEdit*>("readTo")->setFocus();
        QCOMPARE(table->model()->index(5, OffsetsModel::yColumn).data().toString(), QStringLiteral("2-13-4"));
        editor = beginTyping(table, 5, OffsetsModel::yColumn);
        QCOMPARE(editor->text(), QStringLiteral("2-13-4"));
        QTest::keyClick(editor, Qt::Key_Escape);
        QVERIFY(!unread->isVisible());
        QVERIFY(taken.names.isEmpty());
    }

    void AFieldKeepsAnUnreadableTextWithItsReasonUntilEscape() {
        LinePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        auto* field = panel.findChild<QLineEdit*>("fairWithin");
        auto* reason = panel.findChild<QLabel*>("fairWithinReason");
        const QString before = field->text();
        for (const char* wrong : {"a hair", "-1 mm"}) {
            field->setFocus();
            field->selectAll();
            QTest::keyClicks(field, wrong);
            QTest::keyClick(field, Qt::Key_Return);
            QVERIFY2(reason->isVisible() && !reason->text().isEmpty(), wrong);
            panel.show(taken.shown);
            QCOMPARE(field->text(), QLatin1String(wrong));
            QVERIFY(taken.names.isEmpty());
            QTest::keyClick(field, Qt::Key_Escape);
            QCOMPARE(field->text(), before);
            QVERIFY(!reason->isVisible());
        }
        field->selectAll();
        QTest::keyClicks(field, "2,5 mm");
        QTest::keyClick(field, Qt::Key_Return);
        QCOMPARE(taken.shown.piece.line.fairWithin_m, 0.0025);
        QCOMPARE(taken.names.size(), 1);
    }

    void AnEmptyHeadingIsFreeAndANumberIsDegrees() {
        LinePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        unfold(panel);
        auto* field = panel.findChild<QLineEdit*>("startHeading");
        field->setFocus();
        QTest::keyClicks(field, "175");
        QTest::keyClick(field, Qt::Key_Return);
        QVERIFY(std::abs(*taken.shown.piece.line.startHeading_rad - units::fromDegrees(175)) < 1e-12);
        field->selectAll();
        QTest::keyClick(field, Qt::Key_Delete);
        QTest::keyClick(field, Qt::Key_Return);
        QVERIFY(!taken.shown.piece.line.startHeading_rad);
    }

    void WhatCannotBePlannedIsSaidBesideItsFieldAndTheLastAnswerStays() {
        LinePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        unfold(panel);
        const QString answer = panel.findChild<QLabel*>("answer")->text();
        QCOMPARE(answer, QString::fromStdString(plan::answerText(taken.shown.plan->answers[0], taken.shown.display)));
        taken.shown.piece.line.points[3] = taken.shown.piece.line.points[2];
        planAnew(taken.shown);
        QVERIFY(taken.shown.outOfDate);
        panel.show(taken.shown);
        QCOMPARE(panel.findChild<QLabel*>("answer")->text(), answer);
        auto* reason = panel.findChild<QLabel*>("reason");
        QVERIFY(reason->isVisible() && reason->text().contains(taken.shown.reason));
        Shown atField = taken.shown;
        atField.reasonPath = "line.read_to_mm";
        panel.show(atField);
        QCOMPARE(panel.findChild<QLabel*>("readToReason")->text(), atField.reason);
    }

    void RowsAreInsertedRemovedAndMovedByKeys() {
        LinePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        auto* table = panel.findChild<NotebookTable*>("offsets");
        table->setFocus();
        table->setCurrentIndex(table->model()->index(4, OffsetsModel::xColumn));
        QTest::keyClick(table, Qt::Key_Insert);
        QCOMPARE(taken.shown.piece.line.points.size(), 13u);
        QCOMPARE(table->currentIndex().row(), 4);
        QTest::keyClick(table, Qt::Key_Delete);
        QCOMPARE(taken.shown.piece.line.points.size(), 12u);
        const std::string label = taken.shown.piece.line.points[4].label;
        table->setCurrentIndex(table->model()->index(4, OffsetsModel::xColumn));
        QTest::keyClick(table, Qt::Key_Down, Qt::AltModifier);
        QCOMPARE(taken.shown.piece.line.points[5].label, label);
        QCOMPARE(table->currentIndex().row(), 5);
        table->setCurrentIndex(table->model()->index(5, OffsetsModel::mustPassColumn));
        QTest::keyClick(table, Qt::Key_Space);
        QVERIFY(taken.shown.piece.line.points[5].mustPass);
    }

    void OneValueIsPastedIntoItsCellUnasked() {
        LinePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        auto* table = panel.findChild<NotebookTable*>("offsets");
        QApplication::clipboard()->setText("1-8-3\n");
        table->setFocus();
        table->setCurrentIndex(table->model()->index(5, OffsetsModel::xColumn));
        QTest::keyClick(table, Qt::Key_V, Qt::ControlModifier);
        QVERIFY(!panel.findChild<OffsetsDialog*>());
        QCOMPARE(taken.names, QStringList{QStringLiteral("Set WL 12 x to 1-8-3")});
    }

    void OffsetsArePastedCopiedAndOpenedFromAFile() {
        LinePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        int fits = 0;
        connect(&panel, &Panel::wholePieceWanted, this, [&fits] { ++fits; });
        auto* table = panel.findChild<NotebookTable*>("offsets");
        const auto before = taken.shown.piece.line.points;
        QApplication::clipboard()->setText("WL 50\t1-5-3\t4-3-0\nWL 51\t1-5-3\t4-4-0\n");
        table->setFocus();
        table->setCurrentIndex(table->model()->index(6, 0));
        // Nothing changes before it is taken, nor where it is not.
        for (const char* button : {"", "take"}) {
            QTest::keyClick(table, Qt::Key_V, Qt::ControlModifier);
            auto* dialog = panel.findChild<OffsetsDialog*>();
            QVERIFY(dialog && dialog->isVisible());
            QVERIFY(taken.names.isEmpty());
            if (*button) {
                dialog->findChild<QPushButton*>(button)->click();
            } else {
                QTest::keyClick(dialog, Qt::Key_Escape);
            }
            QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        }
        QCOMPARE(taken.names, QStringList{QStringLiteral("Paste 2 points")});
        QCOMPARE(fits, 1);
        QCOMPARE(taken.shown.piece.line.points.size(), before.size() + 2);
        QCOMPARE(taken.shown.piece.line.points.back().label, std::string("WL 51"));
        panel.findChild<QToolButton*>("copyOffsets")->click();
        QVERIFY(QApplication::clipboard()->text().contains("WL 50\t1-5-3\t4-3-0"));
        // From a file, in place of what was there.
        panel.openOffsets(QStringLiteral(FAYLINE_PUBLISHED "/marram_stem.csv"));
        panel.findChild<OffsetsDialog*>()->findChild<QPushButton*>("take")->click();
        QCOMPARE(taken.shown.piece.line.points.size(), 12u);
        QCOMPARE(taken.names.last(), QStringLiteral("Open offsets from marram_stem.csv"));
    }

    void WhatHoldsNothingIsSaidInThePanel() {
        LinePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        auto* problems = panel.findChild<QLabel*>("offsetsProblems");
        panel.openOffsets(QStringLiteral(FAYLINE_PUBLISHED "/no such file.csv"));
        QVERIFY2(problems->isVisible() && problems->text().contains("no such file.csv"), qPrintable(problems->text()));
        for (const char* text : {"", "# only a remark\n"}) {
            panel.pasteOffsets(text);
            QVERIFY2(problems->isVisible() && problems->text().contains("nothing"), text);
        }
        QVERIFY(!panel.findChild<OffsetsDialog*>());
        QVERIFY(taken.names.isEmpty());
    }

    void EnterOrTabInTheLastCellMakesTheNextRow() {
        LinePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        auto* table = panel.findChild<NotebookTable*>("offsets");
        for (const Qt::Key key : {Qt::Key_Return, Qt::Key_Tab}) {
            const std::vector<model::Point> before = taken.shown.piece.line.points;
            const int last = int(before.size()) - 1;
            QLineEdit* editor = beginTyping(table, last, OffsetsModel::yColumn);
            QTest::keyClicks(editor, "3-9-0");
            QTest::keyClick(editor, key);
            QCOMPARE(taken.shown.piece.line.points.size(), before.size() + 1);
            QCOMPARE(taken.shown.piece.line.points[std::size_t(last)].written[1], std::string("3-9-0"));
            QCOMPARE(table->currentIndex(), table->model()->index(last + 1, OffsetsModel::labelColumn));
            QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
            auto* next = table->findChild<QLineEdit*>("cellEditor");
            QVERIFY(next && next->hasFocus());
            QTest::keyClicks(next, "WL 50");
            QTest::keyClick(next, Qt::Key_Tab);
            QCOMPARE(taken.shown.piece.line.points.back().label, std::string("WL 50"));
            QCOMPARE(table->currentIndex().column(), int(OffsetsModel::xColumn));
            table->setCurrentIndex(table->model()->index(0, OffsetsModel::labelColumn));  // closes the editor
            taken.shown.piece.line.points.back().y_m = 1.2;
            planAnew(taken.shown);
            panel.show(taken.shown);
        }
        // In a cell that is not the last they go on as ever; Esc in a new row takes it back.
        const std::vector<model::Point> before = taken.shown.piece.line.points;
        QLineEdit* editor = beginTyping(table, int(before.size()) - 1, OffsetsModel::xColumn);
        QTest::keyClick(editor, Qt::Key_Tab);
        QCOMPARE(table->currentIndex().column(), int(OffsetsModel::yColumn));
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        QTest::keyClick(table->findChild<QLineEdit*>("cellEditor"), Qt::Key_Return);
        QCOMPARE(taken.shown.piece.line.points.size(), before.size() + 1);
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        QTest::keyClick(table->findChild<QLineEdit*>("cellEditor"), Qt::Key_Escape);
        QCOMPARE(taken.shown.piece.line.points.size(), before.size());
    }

    // As in the window, where what was typed is shown a moment later.
    void TheNextRowWaitsForWhatWasTyped() {
        LinePanel panel;
        Shown shown = shownSample();
        std::vector<Change> asked;
        connect(&panel, &Panel::changeAsked, this, [&](const Change& change) { asked.push_back(change); });
        panel.show(shown);
        open(&panel);
        auto* table = panel.findChild<NotebookTable*>("offsets");
        QLineEdit* editor = beginTyping(table, 11, OffsetsModel::yColumn);
        QTest::keyClicks(editor, "3-9-0");
        QTest::keyClick(editor, Qt::Key_Return);
        QCOMPARE(asked.size(), 1u);
        for (std::size_t step = 0; step < 2; ++step) {
            shown.piece = asked[step].after;
            panel.show(shown);
        }
        QCOMPARE(asked.size(), 2u);
        QCOMPARE(shown.piece.line.points.size(), 13u);
        QCOMPARE(shown.piece.line.points[11].written[1], std::string("3-9-0"));
        QCOMPARE(table->currentIndex(), table->model()->index(12, OffsetsModel::labelColumn));
        QCOMPARE(asked[1].merges.isEmpty(), false);
    }

    void WhatWasReadIsSetForTheWholeTableAndByPoint() {
        LinePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        unfold(panel);
        auto* table = panel.findChild<NotebookTable*>("offsets");
        auto* whole = panel.findChild<QComboBox*>("read");
        const auto columnShown = [&] { return !table->isColumnHidden(OffsetsModel::readColumn); };
        const auto count = [&](model::Read read) {
            return std::ranges::count(taken.shown.piece.line.points, read, &model::Point::read);
        };
        QVERIFY(whole && whole->currentIndex() == 0);
        QVERIFY(!columnShown());
        // The whole table: x was read.
        whole->setFocus();
        QTest::keyClick(whole, Qt::Key_Down);
        QCOMPARE(taken.names.last(), QStringLiteral("Take x as read, y as the grid"));
        QCOMPARE(count(model::Read::x), 12);
        QVERIFY(columnShown());
        const QModelIndex cell = table->model()->index(3, OffsetsModel::readColumn);
        QCOMPARE(cell.data().toString(), QStringLiteral("x"));
        // One point says otherwise.
        table->setCurrentIndex(cell);
        table->edit(cell);
        auto* choice = table->viewport()->findChild<QComboBox*>();
        QVERIFY(choice);
        QTest::keyClick(choice, Qt::Key_Down);
        QCOMPARE(taken.shown.piece.line.points[3].read, model::Read::y);
        QCOMPARE(taken.names.last(), QStringLiteral("Take y of 2-6-0 aft as read"));
        QCOMPARE(count(model::Read::x), 11);
        QCOMPARE(whole->currentIndex(), 3);
        QVERIFY(columnShown());
        // All back: the column's room is the names' again.
        whole->setFocus();
        QTest::keyClick(whole, Qt::Key_Home);
        QCOMPARE(taken.names.last(), QStringLiteral("Take both values as read"));
        QCOMPARE(count(model::Read::both), 12);
        QVERIFY(!columnShown());
    }

    void TheBandOfTheCurvatureIsDrawn() {
        LinePanel panel;
        Shown shown = shownSample();
        open(&panel, widest);
        const auto drawn = [&](double share) {
            plan::Plan plan = *shown.plan;
            for (double& sd : plan.line.curvatureSd_per_m) sd *= share;
            shown.plan = std::make_shared<const plan::Plan>(std::move(plan));
            panel.show(shown);
            return panel.findChild<AlongPlot*>("plot")->grab().toImage();
        };
        const QImage known = drawn(1), wider = drawn(2), none = drawn(0);
        // Two curves beside the line, from one end to the other: in nearly every column of pixels something else.
        const auto columnsUnlike = [](const QImage& a, const QImage& b) {
            int unlike = 0;
            for (int x = 0; x < a.width(); ++x) {
                bool same = true;
                for (int y = 0; y < a.height() && same; ++y) same = a.pixel(x, y) == b.pixel(x, y);
                unlike += same ? 0 : 1;
            }
            return unlike;
        };
        QVERIFY2(columnsUnlike(known, none) > known.width() / 2,
                 qPrintable(QString::number(columnsUnlike(known, none))));
        QVERIFY(columnsUnlike(known, wider) > known.width() / 2);
    }

    void OneClickPutsAMisreadOffsetRight() {
        LinePanel panel;
        Taken taken{shownSample("marram_misread.fayline"), {}, true};
        followWith(taken, &panel);
        open(&panel);
        auto* button = panel.findChild<QPushButton*>("correct0");
        QVERIFY(button && button->isVisible());
        QTest::mouseClick(button, Qt::LeftButton);
        QCOMPARE(taken.names.size(), 1);
        QVERIFY(taken.names[0].startsWith("Correct "));
        QVERIFY(taken.shown.plan->line.misreadSought);
        QVERIFY(taken.shown.plan->line.misread.suspects.empty());
        QVERIFY(!button->isVisible());
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, LinePanelTest>(argc, argv);
}
#include "line_panel_test.moc"
