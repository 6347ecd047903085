// The whole window: typing, dragging, undoing, saving, refusing, and that every view shows the same.
#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAccessible>
#include <QApplication>
#include <QLabel>
#include <QMenu>
#include <QMenuBar>
#include <QPushButton>
#include <QRandomGenerator>
#include <QSettings>
#include <QSignalSpy>
#include <QStatusBar>
#include <QTemporaryDir>
#include <QTest>
#include <algorithm>
#include <cmath>
#include <map>

#include "app/formview/form_view.hpp"
#include "app/panels/along_plot.hpp"
#include "app/panels/findings_list.hpp"
#include "app/panels/line_panel.hpp"
#include "app/panels/piece_table.hpp"
#include "app/panels/question_line.hpp"
#include "app/window/main_window.hpp"
#include "app/window/panel_stack.hpp"
#include "core/io/file.hpp"
#include "core/math/count.hpp"
#include "core/units/units.hpp"
#include "tests/app/own_home.hpp"
#include "tests/app/window_bench.hpp"

using namespace fayline;
using namespace fayline::app;

class WindowTest : public QObject {
    Q_OBJECT

public:
    static void initMain() { useHomeOfItsOwn(); }

private slots:
    void init() { QSettings().clear(); }

    void newWindowShowsAPieceWithItsPlan() {
        Bench bench{QString()};
        QVERIFY(bench.settle());
        QVERIFY(bench.window.shown().plan);
        QVERIFY(!bench.window.isWindowModified());
        QVERIFY(bench.window.windowTitle().contains("Fayline"));
    }

    void openedBoatIsInTheTitleAndInEveryView() {
        Bench bench;
        QVERIFY(bench.window.windowTitle().contains("Marram"));
        QVERIFY(bench.window.windowTitle().contains("marram.fayline"));
        QCOMPARE(bench.find<QAbstractItemView>("piecesList")->model()->rowCount(), 4);
        QCOMPARE(bench.find<QAbstractItemView>("offsets")->model()->rowCount(), 12);
        QVERIFY(!bench.find<QLabel>("findingCount")->text().isEmpty());
        QVERIFY(!bench.find<FormView>()->texts().empty());
        QVERIFY(bench.find<QAbstractButton>("question8"));
    }

    void typedOffsetMovesThePointKeepsWhatWasWrittenAndIsOneStep() {
        Bench bench;
        const model::Boat before = bench.document().boat();
        bench.type(wl12, xColumn, "1-8-3");
        QCOMPARE(bench.document().undoStack().count(), 1);
        const model::Point& point = bench.piece().line.points[wl12];
        QVERIFY(std::abs(point.x_m - (20 + 3.0 / 8) * units::inch_m) < 1e-12);
        QCOMPARE(point.written[0], std::string("1-8-3"));
        QVERIFY(bench.settle());
        QVERIFY(bench.window.isWindowModified());
        QVERIFY(bench.action("undo")->text().contains("WL 12"));
        bench.action("undo")->trigger();
        QVERIFY(bench.document().boat() == before);
        QVERIFY(!bench.window.isWindowModified());
    }

    void draggedPointIsFollowedByThePlanAndIsOneStep() {
        Bench bench;
        const double before = bench.piece().line.points[wl12].x_m;
        const double misfitBefore = bench.window.shown().plan->line.fair.points[wl12].misfit_m;
        bench.dragPoint(wl12, {24, -16});
        QVERIFY(bench.piece().line.points[wl12].x_m != before);
        QCOMPARE(bench.document().undoStack().count(), 1);
        QVERIFY2(bench.document().undoStack().undoText().contains("WL 12"),
                 qPrintable(bench.document().undoStack().undoText()));
        QVERIFY(bench.settle());
        QVERIFY(bench.window.shown().plan->line.fair.points[wl12].misfit_m != misfitBefore);
        bench.dragPoint(wl12, {-10, 0});
        QCOMPARE(bench.document().undoStack().count(), 2);
    }

    void undoToTheStartAndRedoToTheEndGiveEqualBoats() {
        Bench bench;
        const model::Boat start = bench.document().boat();
        bench.type(wl12, xColumn, "1-8-3");
        bench.dragPoint(wl12, {20, 10});
        bench.dragPoint(3, {0, -12});
        bench.addPiece();
        bench.action("duplicatePiece")->trigger();
        bench.action("pieceUp")->trigger();
        bench.action("unitmillimetres")->trigger();
        bench.action("removePiece")->trigger();
        const model::Boat end = bench.document().boat();
        QVERIFY(bench.document().undoStack().count() >= 7);
        while (bench.action("undo")->isEnabled()) bench.action("undo")->trigger();
        QVERIFY(bench.document().boat() == start);
        QVERIFY(!bench.window.isWindowModified());
        while (bench.action("redo")->isEnabled()) bench.action("redo")->trigger();
        QVERIFY(bench.document().boat() == end);
        QVERIFY(bench.settle());
    }

    void pieceThatCannotBePlannedKeepsItsLastPlanAndSaysWhy() {
        Bench bench;
        const auto good = bench.window.shown().plan;
        model::Piece doubled = bench.piece();
        doubled.line.points[4] = doubled.line.points[3];
        bench.document().changePiece(0, {"Double", {}, doubled});
        SOON_VERIFY(!bench.window.shown().reason.isEmpty());
        QVERIFY(bench.window.shown().outOfDate);
        QVERIFY(bench.window.shown().reasonPath.startsWith("line.points["));
        QCOMPARE(bench.window.shown().plan, good);
        QCOMPARE(bench.window.shown().reason,
                 QString("Stem, point %1: x and y are those of point %2; change one of the two, or remove it")
                     .arg(QString::fromStdString(doubled.line.points[4].label),
                          QString::fromStdString(doubled.line.points[3].label)));
        // Each panel says so; the drawing does by itself.
        auto* reason = bench.find<QWidget>("linePanel")->findChild<QLabel*>("reason");
        QVERIFY(reason && reason->isVisible());
        QVERIFY2(reason->text().contains(bench.window.shown().reason), qPrintable(reason->text()));
        bench.action("undo")->trigger();
        SOON_VERIFY(!bench.window.shown().outOfDate);
        QVERIFY(!reason->isVisible());
    }

    void clickOnAQuestionOpensItsPanel() {
        Bench bench;
        auto* strips = bench.find<QWidget>("stripsPanel");
        QVERIFY(strips);
        bench.find<PanelStack>()->setOpenQuestions({});
        QVERIFY(!strips->isVisible());
        QTest::mouseClick(bench.find<QAbstractButton>("question1"), Qt::LeftButton);
        QVERIFY(strips->isVisible());
        bench.action("onePanel")->setChecked(true);
        QTest::mouseClick(bench.find<QAbstractButton>("question0"), Qt::LeftButton);
        QVERIFY(!strips->isVisible());
        QVERIFY(bench.find<QWidget>("linePanel")->isVisible());
    }

    void placePointedAtInTheDrawingIsThePlaceOfTheDocument() {
        Bench bench;
        auto* view = bench.find<FormView>();
        const line::Place place = bench.window.shown().plan->line.fair.line.at(0.8);
        const QPointF at = view->transform().toScreen({place.x_m, place.y_m});
        QMouseEvent move(QEvent::MouseMove, at, view->mapToGlobal(at), Qt::NoButton, Qt::NoButton, {});
        QCoreApplication::sendEvent(view, &move);
        QVERIFY(bench.document().hoveredPlace());
        QVERIFY(std::abs(*bench.document().hoveredPlace() - 0.8) < 0.02);
        bench.document().setCurrentPiece(1);
        QVERIFY(!bench.document().hoveredPlace());
    }

    void pointChosenInTheDrawingIsTheRowOfTheTableAndTheOtherWayRound() {
        Bench bench;
        auto* view = bench.find<FormView>();
        auto* table = bench.find<QAbstractItemView>("offsets");
        const model::Point& point = bench.piece().line.points[wl12];
        QTest::mouseClick(view, Qt::LeftButton, {}, view->transform().toScreen({point.x_m, point.y_m}).toPoint());
        QCOMPARE(view->selectedPoint(), wl12);
        QCOMPARE(table->currentIndex().row(), wl12);
        QVERIFY(table->selectionModel()->isSelected(table->model()->index(wl12, xColumn)));

        table->setFocus();
        SOON_VERIFY(table->hasFocus());
        QTest::keyClick(table, Qt::Key_Down);
        QCOMPARE(table->currentIndex().row(), wl12 + 1);
        QCOMPARE(view->selectedPoint(), wl12 + 1);
        // Several rows stay several.
        QTest::keyClick(table, Qt::Key_Down, Qt::ShiftModifier);
        QCOMPARE(view->selectedPoint(), wl12 + 2);
        QVERIFY(table->selectionModel()->isSelected(table->model()->index(wl12 + 1, xColumn)));

        view->selectPoint(-1);
        QVERIFY(!table->selectionModel()->hasSelection());
    }

    void unitsAreAStepOfTheBoatAndEveryViewFollows() {
        Bench bench;
        const auto* table = bench.find<QAbstractItemView>("offsets");
        const double pixels = bench.find<FormView>()->transform().pixelsPerMetre;
        bench.action("unitmillimetres")->trigger();
        QCOMPARE(bench.document().boat().display.lengths, units::LengthNotation::millimetres);
        QCOMPARE(bench.document().undoStack().undoText(), QString("Change units"));
        QVERIFY(bench.settle());
        SOON_COMPARE(bench.window.shown().plan->display.lengths, units::LengthNotation::millimetres);
        QVERIFY(!table->model()->index(wl12, 3).data().toString().contains("in"));
        QCOMPARE(bench.find<FormView>()->transform().pixelsPerMetre, pixels);
        QVERIFY(bench.action("unitmillimetres")->isChecked());
        bench.action("undo")->trigger();
        QVERIFY(bench.action("unitfeet-inches-eighths")->isChecked());
    }

    void groundIsChangedAndRemembered() {
        Bench bench;
        applyGround(Ground::paper);
        bench.action("groundSlate")->trigger();
        QVERIFY(theme().dark);
        QCOMPARE(QSettings().value("ground").toString(), QString("slate"));
        bench.action("otherGround")->trigger();
        QVERIFY(!theme().dark);
        QVERIFY(bench.action("groundPaper")->isChecked());
    }

    // Edits and changes of piece in two windows while both planners are at work: what is shown is always of the piece
    // that is shown, never an older state after a newer one, and in the end the newest.
    void twoWindowsOfRapidEditsNeverShowAnOldPlan() {
        Bench one(marram, {});
        Bench two(marram, {});
        QRandomGenerator dice(3);
        for (Bench* bench : {&one, &two}) {
            auto* view = bench->find<FormView>();
            QVERIFY(view);
        }
        for (int i = 0; i < 200; ++i) {
            Bench& bench = dice.bounded(2) ? one : two;
            if (dice.bounded(12) == 0) {
                bench.document().setCurrentPiece(dice.bounded(math::countOf(bench.document().boat().pieces)));
            } else {
                model::Piece after = bench.piece();
                after.line.points[2].y_m += 0.0005 * (dice.bounded(3) - 1);
                bench.document().changePiece(bench.document().currentPiece(), {"Move", "drag", after});
            }
            if (dice.bounded(3) == 0) QCoreApplication::processEvents();
            for (Bench* each : {&one, &two}) {
                const Shown& shown = each->window.shown();
                if (shown.plan) {
                    QCOMPARE(shown.plan->piece, each->document().boat().pieces[size_t(shown.pieceIndex)].name);
                    QCOMPARE(shown.plan->line.fair.points.size(), shown.piece.line.points.size());
                }
            }
        }
        QVERIFY(one.settle());
        QVERIFY(two.settle());
    }

    void figuresOfAnEarlierStateAreDimmedAndTheHeadlineSaysSo() {
        Bench bench;
        auto* strips = bench.find<QWidget>("stripsPanel");
        auto* answer = strips->findChild<QLabel*>("answer");
        auto* reason = strips->findChild<QLabel*>("reason");
        auto* plot = strips->findChild<AlongPlot*>("plot");
        auto* model = strips->findChild<QAbstractItemView*>("strips")->model();
        auto* panels = bench.find<PanelStack>();
        bench.window.resize(1280, 1600);
        panels->setOpenQuestions({1});  // all of it in sight
        SOON_COMPARE(plot->height(), plot->sizeHint().height());
        const Shown now = bench.window.shown();
        const QImage asNow = plot->grab().toImage();
        QVERIFY(answer->isEnabled() && !reason->isVisible() && !model->index(0, 1).data(faintRole).toBool());
        Shown old = now;
        old.outOfDate = true;
        panels->show(old);
        QVERIFY(!answer->isEnabled() && reason->isVisible() && model->index(0, 1).data(faintRole).toBool());
        QCOMPARE(reason->text(), QString("Old result. Calculating the new one."));
        QVERIFY(plot->grab().toImage() != asNow);
        panels->show(now);
        QVERIFY(answer->isEnabled() && !reason->isVisible() && !model->index(0, 1).data(faintRole).toBool());
        SOON_COMPARE(plot->height(), plot->sizeHint().height());
        QCOMPARE(plot->grab().toImage(), asNow);
    }

    // A plan that was made for other units is told in those that are shown.
    void headlinesAreInTheUnitsThatAreShown() {
        Bench bench;
        Shown shown = bench.window.shown();
        shown.display = units::metricShop;
        QVERIFY(shown.plan->display != shown.display);
        for (const auto& [panel, question] : {std::pair("linePanel", plan::Question::line),
                                              {"stripsPanel", plan::Question::strips},
                                              {"formPanel", plan::Question::form},
                                              {"holdingPanel", plan::Question::holding}}) {
            bench.find<PanelStack>()->setOpenQuestions({int(question)});
            QCoreApplication::processEvents();
            bench.find<PanelStack>()->show(shown);
            const auto& answers = shown.plan->answers;
            const auto told = std::ranges::find(answers, question, &plan::Answer::question);
            QVERIFY(told != answers.end());
            QCOMPARE(bench.find<QWidget>(panel)->findChild<QLabel*>("answer")->text(),
                     QString::fromStdString(plan::answerText(*told, shown.display)));
        }
    }

    // The hand never rests here, so that what is told to be under way stays so.
    void whatIsUnderWayIsToldAndCanBeStoppedAndBegunAgain() {
        WindowTimes times = handNeverRests();
        times.planning.toldAfter_ms = 0;
        Bench bench(marram, times);
        auto* told = bench.find<QLabel>("underWay");
        auto* stop = bench.find<QAbstractButton>("stopCalculating");
        SOON_VERIFY(told->isVisible() && stop->isVisible());
        QVERIFY2(told->text().startsWith("Calculating: "), qPrintable(told->text()));
        const int height = bench.window.statusBar()->height();
        auto* strips = bench.find<QWidget>("stripsPanel");
        bench.find<PanelStack>()->setOpenQuestions({1});
        strips->findChild<QToolButton*>("choicesHead")->click();
        QCoreApplication::processEvents();
        auto* calculate = strips->findChild<QAbstractButton*>("calculate");
        QVERIFY(!calculate->isVisible());
        stop->click();
        QVERIFY(!told->isVisible() && !stop->isVisible());
        QCoreApplication::processEvents();
        QCOMPARE(bench.window.statusBar()->height(), height);
        QVERIFY(calculate->isVisible());
        QCOMPARE(strips->findChild<QLabel*>("choiceNamed")->text(), QString("Not calculated"));
        calculate->click();
        QVERIFY(!calculate->isVisible());
        SOON_VERIFY(told->isVisible() && stop->isVisible());
    }

    void everyActionHasWordsAndNoKeyIsTakenTwice() {
        Bench bench;
        std::map<QString, QString> taken;
        for (const QAction* action : bench.window.findChildren<QAction*>(Qt::FindDirectChildrenOnly)) {
            QVERIFY2(!action->text().isEmpty() || action->menu(), qPrintable(action->objectName()));
            for (const QKeySequence& key : action->shortcuts()) {
                const QString keys = key.toString();
                QVERIFY2(!taken.contains(keys), qPrintable(keys + ": " + taken[keys] + " and " + action->text()));
                taken[keys] = action->text();
            }
        }
        for (const char* keys : {"Ctrl+N", "Ctrl+O", "Ctrl+S", "Ctrl+Z", "Ctrl+P", "Ctrl+1", "F6", "F1"}) {
            QVERIFY2(taken.contains(keys), keys);
        }
    }

    void everyControlThatTakesTheKeyboardHasAName() {
        Bench bench;
        bench.find<PanelStack>()->setOpenQuestions({0, 1, 2, 3, 4, 5, 6, 7, 8});
        int looked = 0;
        for (QWidget* widget : bench.window.findChildren<QWidget*>()) {
            if (!(widget->focusPolicy() & Qt::TabFocus) || widget->focusProxy() || !widget->isVisible()) continue;
            QAccessibleInterface* told = QAccessible::queryAccessibleInterface(widget);
            QVERIFY(told);
            const bool namedByNothing = told->text(QAccessible::Name).isEmpty();
            QVERIFY2(!namedByNothing, qPrintable(QString("%1 '%2' in '%3'")
                                                     .arg(widget->metaObject()->className(), widget->objectName(),
                                                          widget->parentWidget()->objectName())));
            ++looked;
        }
        QVERIFY(looked > 20);
    }

    void everyPartOfTheWindowIsReachedByKey() {
        Bench bench;
        bench.window.activateWindow();
        QVERIFY(QTest::qWaitForWindowActive(&bench.window, fayline::test::patience_ms));
        std::vector<QWidget*> areas{bench.find<QWidget>("pieces"), bench.find<FormView>(), bench.find<QuestionLine>(),
                                    bench.find<FindingsList>(), bench.find<PanelStack>()};
        for (size_t i = 0; i < 5; ++i) {
            bench.action("nextArea")->trigger();
            QWidget* focused = QApplication::focusWidget();
            QVERIFY(focused);
            std::erase_if(areas, [&](QWidget* area) { return area == focused || area->isAncestorOf(focused); });
        }
        QVERIFY2(areas.empty(), areas.empty() ? "" : qPrintable(areas[0]->objectName()));
    }

    void windowFitsASmallScreen() {
        Bench bench;
        bench.find<PanelStack>()->setOpenQuestions({0, 1, 2, 3, 4, 5, 6, 7, 8});
        QCoreApplication::processEvents();
        QVERIFY2(bench.window.minimumSizeHint().width() <= 1280 && bench.window.minimumSizeHint().height() <= 768,
                 qPrintable(QString("%1 x %2")
                                .arg(bench.window.minimumSizeHint().width())
                                .arg(bench.window.minimumSizeHint().height())));
    }

    void aNewBoatIsAskedForItsNames() {
        Bench bench;
        const model::Boat before = bench.document().boat();
        bench.action("newBoat")->trigger();
        QTest::keyClick(bench.find<QDialog>("newPieceDialog"), Qt::Key_Escape);
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        QVERIFY(bench.document().boat() == before);
        bench.action("newBoat")->trigger();
        auto* dialog = bench.find<QDialog>("newPieceDialog");
        QTest::keyClicks(dialog->findChild<QLineEdit*>("boatName"), "Whin");
        dialog->findChild<QLineEdit*>("pieceName")->selectAll();
        QTest::keyClicks(dialog->findChild<QLineEdit*>("pieceName"), "Knee");
        QTest::keyClick(dialog, Qt::Key_Return);
        QCOMPARE(bench.document().boat().name, std::string("Whin"));
        QCOMPARE(bench.piece().name, std::string("Knee"));
        QVERIFY(!bench.piece().id.empty());
        QVERIFY(!bench.window.isWindowModified());
        QVERIFY(bench.settle());
        // The keyboard is where its offsets are typed, and where they are pasted.
        auto* table = bench.find<QAbstractItemView>("offsets");
        QVERIFY(test::soon([&] { return table->currentIndex() == table->model()->index(0, 0); }));
        QCOMPARE(bench.window.focusWidget(), table);
        QTest::keyClick(table, Qt::Key_A);
        QVERIFY(table->findChild<QLineEdit*>("cellEditor"));
    }

    void enterInTheLastCellMakesTheNextRow() {
        Bench bench;
        const model::Boat before = bench.document().boat();
        auto* table = bench.find<QAbstractItemView>("offsets");
        const auto typedInNewRow = [&] {
            QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
            return table->model()->rowCount() == 13 && table->currentIndex().row() == 12 &&
                   table->findChild<QLineEdit*>("cellEditor");
        };
        bench.type(11, xColumn + 1, "4-3-7");
        QVERIFY(test::soon(typedInNewRow));
        QTest::keyClicks(table->findChild<QLineEdit*>("cellEditor"), "Top");
        QTest::keyClick(table->findChild<QLineEdit*>("cellEditor"), Qt::Key_Return);
        QCOMPARE(bench.piece().line.points.back().label, std::string("Top"));
        QCOMPARE(bench.piece().line.points[11].written[1], std::string("4-3-7"));
        QCOMPARE(bench.document().undoStack().count(), 3);
        for (int i = 0; i < 3; ++i) bench.action("undo")->trigger();
        QVERIFY(bench.document().boat() == before);
        QVERIFY(bench.settle());
        // A row that is taken back by Esc was none.
        bench.type(11, xColumn + 1, "4-3-7");
        QVERIFY(test::soon(typedInNewRow));
        QTest::keyClick(table->findChild<QLineEdit*>("cellEditor"), Qt::Key_Escape);
        QCOMPARE(bench.piece().line.points.size(), size_t(12));
        QCOMPARE(bench.document().undoStack().count(), 1);
    }

    void aPasteIsOneStepAndSeenWhole() {
        Bench bench;
        const model::Boat before = bench.document().boat();
        auto* panel = bench.find<LinePanel>();
        panel->pasteOffsets("A\t0\t0\nB\t20000\t3000\nC\t40000\t0\n");
        auto* dialog = panel->findChild<QDialog*>("offsetsDialog");
        dialog->findChild<QAbstractButton*>("replacePoints")->click();
        dialog->findChild<QAbstractButton*>("take")->click();
        QCOMPARE(bench.document().undoStack().count(), 1);
        QVERIFY(bench.settle());
        const auto* view = bench.find<FormView>();
        for (const model::Point& point : bench.piece().line.points)
            QVERIFY(view->rect().contains(view->transform().toScreen({point.x_m, point.y_m}).toPoint()));
        bench.action("undo")->trigger();
        QVERIFY(bench.document().boat() == before);
    }

    void emptyBoatIsShownWithoutAPiece() {
        Bench bench;
        while (!bench.document().boat().pieces.empty()) bench.action("removePiece")->trigger();
        QCOMPARE(bench.window.shown().pieceIndex, -1);
        QVERIFY(!bench.window.shown().plan);
        QVERIFY(!bench.action("removePiece")->isEnabled());
        bench.addPiece();
        QVERIFY(bench.settle());
        QVERIFY(bench.window.shown().plan);
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, WindowTest>(argc, argv);
}
#include "window_test.moc"
