// The line panel: offsets typed, pasted, opened and put right, fields that keep what cannot be read.
#include "app/panels/line_panel.hpp"

#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>
#include <QToolButton>
#include <algorithm>

#include "app/look/theme.hpp"
#include "app/panels/along_plot.hpp"
#include "app/panels/notebook_table.hpp"
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

    void OffsetsArePastedCopiedAndOpenedFromAFile() {
        LinePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        auto* table = panel.findChild<NotebookTable*>("offsets");
        const auto before = taken.shown.piece.line.points;
        QApplication::clipboard()->setText("WL 15\t1-5-3\t1-3-0\n");
        table->setFocus();
        table->setCurrentIndex(table->model()->index(6, 0));
        QTest::keyClick(table, Qt::Key_V, Qt::ControlModifier);
        QCOMPARE(taken.shown.piece.line.points.size(), before.size() + 1);
        QCOMPARE(taken.shown.piece.line.points[6].label, std::string("WL 15"));
        panel.findChild<QToolButton*>("copyOffsets")->click();
        QVERIFY(QApplication::clipboard()->text().contains("WL 15\t1-5-3\t1-3-0"));
        table->selectAll();
        QTest::keyClick(table, Qt::Key_V, Qt::ControlModifier);
        QCOMPARE(taken.shown.piece.line.points.size(), before.size() + 1);
        panel.openOffsets(QStringLiteral(FAYLINE_PUBLISHED "/marram_stem.csv"));
        QCOMPARE(taken.shown.piece.line.points.size(), 12u);
        QCOMPARE(taken.names.last(), QStringLiteral("Open offsets from marram_stem.csv"));
        const QStringList names = taken.names;
        auto* problems = panel.findChild<QLabel*>("offsetsProblems");
        panel.openOffsets(QStringLiteral(FAYLINE_PUBLISHED "/no such file.csv"));
        QVERIFY(problems->isVisible());
        QCOMPARE(taken.names, names);
        panel.pasteOffsets("WL 9\t2-13-0\t1-0-0");
        QVERIFY(problems->text().startsWith("Line 1:"));
        QCOMPARE(taken.names, names);
    }

    void WhatWasReadIsSetForTheWholeTableAndByPoint() {
        LinePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
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

    void ATextWithProblemsLosesNothing() {
        LinePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        auto* problems = panel.findChild<QLabel*>("offsetsProblems");
        const auto before = taken.shown.piece.line.points;
        // Nothing of it can be read: the present points stay.
        const QTemporaryDir folder;
        const QString path = folder.filePath("odd.csv");
        const auto openText = [&](const QByteArray& text) {
            QFile file(path);
            QVERIFY(file.open(QIODevice::WriteOnly) && file.write(text) == text.size());
            file.close();
            panel.openOffsets(path);
        };
        for (const char* text : {"", "A,2-13-0,x\nB,nothing,0\n", "# only a remark\n"}) {
            openText(text);
            QVERIFY2(problems->isVisible() && !problems->text().isEmpty(), text);
            QVERIFY(taken.shown.piece.line.points == before);
            QVERIFY(taken.names.isEmpty());
        }
        // Some of it can: those come in as one step, the others are named by their lines.
        openText("A,0-0-0,0-0-0\nB,2-13-0,0-1-0\nC,1-0-0,0-2-0\nD,2-0-0,x\nE,3-0-0,0-0-0\n");
        QCOMPARE(taken.names.size(), 1);
        QCOMPARE(taken.shown.piece.line.points.size(), 3u);
        QVERIFY2(problems->text().contains("Line 2:") && problems->text().contains("Line 4:"),
                 qPrintable(problems->text()));
        // Pasted over chosen rows: rows that were not chosen stay, and nothing goes where nothing comes.
        taken.shown.piece.line.points = before;
        planAnew(taken.shown);
        panel.show(taken.shown);
        auto* table = panel.findChild<NotebookTable*>("offsets");
        table->selectAll();
        panel.pasteOffsets("no\noffsets\n");
        QVERIFY(taken.shown.piece.line.points == before);
        QVERIFY(problems->isVisible());
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, LinePanelTest>(argc, argv);
}
#include "line_panel_test.moc"
