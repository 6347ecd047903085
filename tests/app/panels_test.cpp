// The side panels: typed into, shown plan after plan, lit, read at their narrowest on both grounds.
#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QHeaderView>
#include <QLabel>
#include <QLayout>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QScrollArea>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <QToolButton>
#include <algorithm>

#include "app/look/theme.hpp"
#include "app/panels/along_plot.hpp"
#include "app/panels/findings_list.hpp"
#include "app/panels/line_panel.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/stations_panel.hpp"
#include "app/panels/strips_panel.hpp"
#include "tests/app/shown_piece.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

constexpr int narrowest = 340;
constexpr int widest = 420;

template <typename P>
void followWith(Taken& taken, P* panel) {
    taken.follow(static_cast<Panel*>(panel), [panel](const Shown& shown) { panel->show(shown); });
}

void open(QWidget* window, int width = narrowest) {
    window->resize(width, 1400);
    window->QWidget::show();
    window->activateWindow();
    QVERIFY(QTest::qWaitForWindowActive(window));
}

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

class PanelsTest : public QObject {
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
        QVERIFY(std::abs(*taken.shown.piece.line.startHeading_rad - measure::fromDegrees(175)) < 1e-12);
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
        QCOMPARE(answer, QString::fromStdString(taken.shown.plan->answers[0].sentence));
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

    void OneClickPutsAMisreadOffsetRight() {
        LinePanel panel;
        Taken taken{shownSample("marram_misread.fayline"), {}};
        followWith(taken, &panel);
        open(&panel);
        auto* button = panel.findChild<QPushButton*>("correct0");
        QVERIFY(button && button->isVisible());
        QTest::mouseClick(button, Qt::LeftButton);
        QCOMPARE(taken.names.size(), 1);
        QVERIFY(taken.names[0].startsWith("Correct "));
        QVERIFY(taken.shown.plan->line.misread.suspects.empty());
        QVERIFY(!button->isVisible());
    }

    void FindingsLeadToTheirPlaceAndOfferTheRepair() {
        FindingsList list;
        Taken taken{shownSample("marram_misread.fayline"), {}};
        taken.follow(&list, [&list](const Shown& shown) { list.show(shown); });
        open(&list);
        QSignalSpy chosen(&list, &FindingsList::findingChosen);
        auto* view = list.findChild<QListView*>("findings");
        const plan::Finding finding = taken.shown.plan->findings[0];
        QTest::mouseClick(view->viewport(), Qt::LeftButton, {},
                          view->visualRect(view->model()->index(0, view->modelColumn())).center());
        QCOMPARE(chosen.count(), 1);
        QCOMPARE(chosen[0].at(0).value<plan::About>(), finding.about);
        QCOMPARE(chosen[0].at(2).toInt(), finding.point);
        QVERIFY(list.findChild<QLabel*>("findingSource")->text().contains(measure::markMeaning(finding.source.mark)));
        auto* repair = list.findChild<QPushButton*>("repair0");
        QVERIFY(repair && repair->isVisible());
        QTest::mouseClick(repair, Qt::LeftButton);
        QVERIFY(taken.shown.plan->line.misread.suspects.empty());
    }

    void AGroupOfStripsHasItsOwnFields() {
        StripsPanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        auto* groups = panel.findChild<NotebookTable*>("groups");
        QVERIFY(groups->model()->rowCount() >= 2);
        groups->setCurrentIndex(groups->model()->index(1, 0));
        auto* tapersTo = panel.findChild<QLineEdit*>("tapersTo");
        tapersTo->setFocus();
        QTest::keyClicks(tapersTo, "3/16 in");
        QTest::keyClick(tapersTo, Qt::Key_Return);
        QVERIFY(!taken.shown.piece.stack.strips[0].tapersTo_m);
        QVERIFY(std::abs(*taken.shown.piece.stack.strips[1].tapersTo_m - 3 * measure::inch_m / 16) < 1e-12);
        groups->setCurrentIndex(groups->model()->index(0, 0));
        QCOMPARE(tapersTo->text(), QString());
        auto* slope = panel.findChild<QLineEdit*>("grainSlope");
        slope->setFocus();
        slope->selectAll();
        QTest::keyClicks(slope, "1 in 20");
        QTest::keyClick(slope, Qt::Key_Return);
        QCOMPARE(taken.shown.piece.stack.grainSlope, 0.05);
    }

    void ANumberOpensWhereItComesFrom() {
        StripsPanel panel;
        const Shown shown = shownSample();
        panel.show(shown);
        open(&panel);
        auto* strips = panel.findChild<NotebookTable*>("strips");
        const QModelIndex cell = strips->model()->index(0, StripsModel::shareColumn);
        QTest::mouseClick(strips->viewport(), Qt::LeftButton, {}, strips->visualRect(cell).center());
        auto* note = panel.findChild<QWidget*>("sourceNote");
        QVERIFY(note && note->isVisible());
        QVERIFY(note->findChild<QLabel*>()->text().contains(
            measure::markMeaning(shown.plan->stack.strips[0].breakingSource.mark)));
        QTest::keyClick(note, Qt::Key_Escape);
        QTRY_VERIFY(!panel.findChild<QWidget*>("sourceNote"));
        auto* about = panel.findChild<QToolButton*>("aboutWood");
        about->click();
        QVERIFY(panel.findChild<QLabel*>("wood")->isVisible());
        QVERIFY(panel.findChild<QLabel*>("wood")->text().contains("Modulus of rupture"));
    }

    void StationsAreSetOutEvenlyAndNonsenseIsSaid() {
        StationsPanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        auto* spacing = panel.findChild<QLineEdit*>("evenSpacing");
        spacing->setFocus();
        spacing->selectAll();
        QTest::keyClicks(spacing, "wide");
        auto* go = panel.findChild<QPushButton*>("setOutEvenly");
        QTest::mouseClick(go, Qt::LeftButton);
        auto* reason = panel.findChild<QLabel*>("evenReason");
        QVERIFY(reason->isVisible());
        QVERIFY(taken.names.isEmpty());
        spacing->selectAll();
        QTest::keyClicks(spacing, "1-0-0");
        QTest::mouseClick(go, Qt::LeftButton);
        QVERIFY(!reason->isVisible());
        QCOMPARE(taken.names.size(), 1);
        const auto& stations = taken.shown.plan->holding.stations;
        QVERIFY(stations.size() >= 2);
        for (std::size_t i = 1; i < stations.size(); ++i)
            QVERIFY(stations[i].at_m - stations[i - 1].at_m <= 12 * measure::inch_m + 1e-9);
        QVERIFY(std::abs(stations.front().at_m) < 1e-9);
        QVERIFY(std::abs(stations.back().at_m - taken.shown.plan->line.fair.line.length()) < measure::sixteenth_m);
    }

    void APlaceLitElsewhereLightsTheNearestRowAndTablesTellWhereTheMouseIs() {
        LinePanel panel;
        const Shown shown = shownSample();
        panel.show(shown);
        open(&panel);
        auto* table = panel.findChild<NotebookTable*>("offsets");
        panel.lightPlace(shown.plan->line.fair.points[7].at_m + 0.001);
        QCOMPARE(table->litRow(), 7);
        panel.lightPlace(std::nullopt);
        QCOMPARE(table->litRow(), -1);
        QSignalSpy hovered(&panel, &Panel::placeHovered);
        QTest::mouseMove(table->viewport(), table->visualRect(table->model()->index(3, 0)).center());
        QTRY_VERIFY(!hovered.isEmpty());
        QCOMPARE(hovered.last().at(0).value<std::optional<double>>(),
                 std::optional<double>(shown.plan->line.fair.points[3].at_m));
    }

    void ThePlotTellsItsPlaceAndIsWalkedByKeys() {
        LinePanel panel;
        const Shown shown = shownSample();
        panel.show(shown);
        open(&panel);
        auto* plot = panel.findChild<AlongPlot*>("plot");
        QSignalSpy selected(&panel, &Panel::placeSelected);
        plot->setFocus();
        QTest::keyClick(plot, Qt::Key_End);
        QCOMPARE(selected.count(), 1);
        QCOMPARE(selected[0].at(0).value<std::optional<double>>(),
                 std::optional<double>(shown.plan->line.samples.back().at_m));
        panel.selectPlace(0.5);
        QTest::keyClick(plot, Qt::Key_Left);
        QVERIFY(*selected[1].at(0).value<std::optional<double>>() < 0.5);
    }

    void EveryControlHasANameAndTheTabKeyGoesDownThePanel() {
        for (const NamedPanel& named : makePanels(nullptr)) {
            Panel* panel = named.panel;
            panel->show(shownSample());
            QScrollArea area;  // owns the panel
            area.setWidgetResizable(true);
            area.setWidget(panel);
            open(&area);
            int level = -1;
            const QWidget* at = panel;
            for (int i = 0; i < 200; ++i) {
                at = at->nextInFocusChain();
                if (!panel->isAncestorOf(at)) break;
                if (!at->isVisible() || !(at->focusPolicy() & Qt::TabFocus) || at->focusProxy()) continue;
                QVERIFY2(!at->accessibleName().isEmpty(), qPrintable(at->objectName() + at->metaObject()->className()));
                QVERIFY2(!at->objectName().isEmpty(), at->metaObject()->className());
                const int here = at->mapTo(panel, QPoint(0, at->height())).y();
                QVERIFY2(here >= level - 4, qPrintable(at->objectName()));
                level = here;
            }
            QVERIFY(level > 0);
        }
    }

    void NothingIsCutOffAtTheWidthsThatPanelsHave_data() {
        QTest::addColumn<QString>("file");
        QTest::addColumn<int>("piece");
        QTest::addColumn<int>("lengths");
        for (const char* file : {"marram.fayline", "marram_misread.fayline", "minimal.fayline"}) {
            const boat::Boat boat = boat::loadBoat(std::string(FAYLINE_SAMPLES "/") + file);
            for (int piece = 0; piece < static_cast<int>(boat.pieces.size()); ++piece)
                for (int lengths = 0; lengths < 3; ++lengths)
                    QTest::addRow("%s, piece %d, notation %d", file, piece, lengths)
                        << QString(file) << piece << lengths;
        }
    }
    void NothingIsCutOffAtTheWidthsThatPanelsHave() {
        QFETCH(QString, file);
        QFETCH(int, piece);
        QFETCH(int, lengths);
        Shown shown = shownSample(qPrintable(file), piece);
        shown.display.lengths = static_cast<measure::LengthNotation>(lengths);
        planAnew(shown);
        for (const int width : {narrowest, widest}) {
            for (const NamedPanel& named : makePanels(nullptr)) {
                const std::unique_ptr<Panel> panel(named.panel);
                panel->show(shown);
                panel->resize(width, panel->layout()->totalHeightForWidth(width));
                panel->QWidget::show();
                QTest::qWait(1);
                QVERIFY2(panel->minimumSizeHint().width() <= width, qPrintable(named.title));
                for (const QLabel* label : panel->findChildren<QLabel*>()) {
                    if (!label->isVisible() || label->text().isEmpty()) continue;
                    const int needed =
                        label->wordWrap() ? label->heightForWidth(label->width()) : label->sizeHint().height();
                    QVERIFY2(label->height() >= needed, qPrintable(label->text()));
                }
                for (const NotebookTable* table : panel->findChildren<NotebookTable*>()) checkTable(table);
            }
        }
    }

private:
    // Headers and cells, as wide as they are drawn with the paddings of the table.
    static void checkTable(const NotebookTable* table) {
        const QAbstractItemModel* model = table->model();
        const QHeaderView* header = table->horizontalHeader();
        QVERIFY2(header->length() <= table->viewport()->width(), qPrintable(table->objectName()));
        const QFontMetrics small(tabularFont(textFont(TextSize::small)));
        const QFontMetrics figures(tabularFont(table->font()));
        for (int column = 0; column < model->columnCount(); ++column) {
            if (table->isColumnHidden(column)) continue;
            const int room = table->columnWidth(column) - gridStep;
            const QString name = model->headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
            QVERIFY2(small.horizontalAdvance(name) <= room, qPrintable(table->objectName() + ": " + name));
            for (int row = 0; row < model->rowCount(); ++row) {
                const QModelIndex cell = model->index(row, column);
                QVERIFY2(small.horizontalAdvance(cell.data(underRole).toString()) <= room,
                         qPrintable(table->objectName() + ": " + cell.data(underRole).toString()));
                // Names may be set smaller; figures may not.
                const QFontMetrics& font = column == 0 ? small : figures;
                QVERIFY2(font.horizontalAdvance(cell.data().toString()) <= room,
                         qPrintable(table->objectName() + ": " + cell.data().toString()));
            }
        }
    }
};

QTEST_MAIN(PanelsTest)
#include "panels_test.moc"
