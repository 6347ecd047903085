// The whole window: typing, dragging, undoing, saving, refusing, and that every view shows the same.
#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAccessible>
#include <QApplication>
#include <QDir>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QMenuBar>
#include <QMessageBox>
#include <QPushButton>
#include <QRandomGenerator>
#include <QSettings>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>
#include <algorithm>
#include <cmath>
#include <map>

#include "app/formview/form_view.hpp"
#include "app/panels/findings_list.hpp"
#include "app/panels/question_line.hpp"
#include "app/window/main_window.hpp"
#include "app/window/panel_stack.hpp"
#include "core/boat/file.hpp"
#include "core/measure/units.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

const QString marram = QString(FAYLINE_SAMPLES) + "/marram.fayline";
constexpr int wl12 = 5;  // in the stem of the sample
constexpr int xColumn = 1;

// A window with its own folder for copies of unsaved work.
struct Bench {
    QTemporaryDir folder;
    MainWindow window{folder.path()};

    explicit Bench(const QString& file = marram) {
        window.resize(1280, 800);
        window.show();
        if (!file.isEmpty()) {
            [[maybe_unused]] const bool opened = window.openFile(file);
            settle();
        }
    }
    ~Bench() { window.document().undoStack().setClean(); }

    Document& document() { return window.document(); }
    const boat::Piece& piece() { return document().boat().pieces[size_t(document().currentPiece())]; }
    template <class Widget>
    Widget* find(const QString& name = {}) {
        return window.findChild<Widget*>(name);
    }
    QAction* action(const QString& name) { return window.findChild<QAction*>(name); }

    // Until the plan of the piece as it stands is shown, or that there is none.
    bool settle() {
        return QTest::qWaitFor(
            [this] {
                const Shown& shown = window.shown();
                return document().currentPiece() < 0 || !shown.reason.isEmpty() ||
                       (shown.plan && shown.piece == piece() && shown.plan->piece == piece().name &&
                        planIsOfThePiece());
            },
            5000);
    }
    bool planIsOfThePiece() {
        const plan::Plan expected = plan::makePlan(piece(), plan::shopOf(document().boat()));
        const auto& feet = window.shown().plan->line.fair.points;
        return std::ranges::equal(feet, expected.line.fair.points, [](const line::Foot& a, const line::Foot& b) {
            return a.at_m == b.at_m && a.misfit_m == b.misfit_m;
        });
    }

    void type(int row, int column, const QString& text) {
        auto* table = window.findChild<QWidget*>("linePanel")->findChild<QAbstractItemView*>("offsets");
        const QModelIndex cell = table->model()->index(row, column);
        table->setCurrentIndex(cell);
        table->edit(cell);
        auto* editor = table->findChild<QLineEdit*>("cellEditor");
        QVERIFY(editor);
        editor->selectAll();
        QTest::keyClicks(editor, text);
        QTest::keyClick(editor, Qt::Key_Return);
    }

    void dragPoint(int index, QPoint by, int steps = 8) {
        auto* view = find<FormView>();
        const boat::Point& point = piece().line.points[size_t(index)];
        const QPoint from = view->transform().toScreen({point.x_m, point.y_m}).toPoint();
        QTest::mousePress(view, Qt::LeftButton, {}, from);
        for (int i = 1; i <= steps; ++i) {
            const QPointF at = QPointF(from) + QPointF(by) * i / steps;
            QMouseEvent move(QEvent::MouseMove, at, view->mapToGlobal(at), Qt::NoButton, Qt::LeftButton, {});
            QCoreApplication::sendEvent(view, &move);
            QCoreApplication::processEvents();
        }
        QTest::mouseRelease(view, Qt::LeftButton, {}, from + by);
    }
};

// Answers the next question that pops up by clicking `button`, and keeps its text.
class Answering {
public:
    explicit Answering(QMessageBox::StandardButton button) {
        timer_.setInterval(10);
        QObject::connect(&timer_, &QTimer::timeout, [this, button] {
            auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
            if (!box) return;
            text = box->text() + "\n" + box->informativeText();
            QAbstractButton* clicked = box->button(button);
            if (!clicked) clicked = box->buttons().constFirst();
            timer_.stop();
            clicked->click();
        });
        timer_.start();
    }
    QString text;

private:
    QTimer timer_;
};

bool write(const QString& path, const QByteArray& text) {
    QFile file(path);
    return file.open(QIODevice::WriteOnly) && file.write(text) == text.size();
}

}  // namespace

class WindowTest : public QObject {
    Q_OBJECT

public:
    static void initMain() {
        // Settings of a home of its own, never the user's.
        static const QTemporaryDir home;
        qputenv("XDG_CONFIG_HOME", home.path().toUtf8());
        qputenv("XDG_DATA_HOME", home.path().toUtf8());
        QCoreApplication::setOrganizationName("fayline");
        QCoreApplication::setApplicationName("fayline");
    }

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
        QVERIFY(bench.find<QAbstractItemView>("findings")->model()->rowCount() > 0);
        QVERIFY(!bench.find<FormView>()->texts().empty());
        QVERIFY(bench.find<QAbstractButton>("question8"));
    }

    void typedOffsetMovesThePointKeepsWhatWasWrittenAndIsOneStep() {
        Bench bench;
        const boat::Boat before = bench.document().boat();
        bench.type(wl12, xColumn, "1-8-3");
        QCOMPARE(bench.document().undoStack().count(), 1);
        const boat::Point& point = bench.piece().line.points[wl12];
        QVERIFY(std::abs(point.x_m - (20 + 3.0 / 8) * measure::inch_m) < 1e-12);
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
        const boat::Boat start = bench.document().boat();
        bench.type(wl12, xColumn, "1-8-3");
        bench.dragPoint(wl12, {20, 10});
        bench.dragPoint(3, {0, -12});
        bench.action("addPiece")->trigger();
        bench.action("duplicatePiece")->trigger();
        bench.action("pieceUp")->trigger();
        bench.action("unitmillimetres")->trigger();
        bench.action("removePiece")->trigger();
        const boat::Boat end = bench.document().boat();
        QVERIFY(bench.document().undoStack().count() >= 7);
        while (bench.action("undo")->isEnabled()) bench.action("undo")->trigger();
        QVERIFY(bench.document().boat() == start);
        QVERIFY(!bench.window.isWindowModified());
        while (bench.action("redo")->isEnabled()) bench.action("redo")->trigger();
        QVERIFY(bench.document().boat() == end);
        QVERIFY(bench.settle());
    }

    void savedAndReopenedIsEqual() {
        Bench bench;
        const QString path = bench.folder.filePath("again.fayline");
        bench.type(wl12, xColumn, "1-8-3");
        bench.document().save(path);
        QVERIFY(!bench.window.isWindowModified());
        bench.dragPoint(wl12, {20, 10});
        bench.action("save")->trigger();
        QVERIFY(!bench.window.isWindowModified());
        Bench other(path);
        QVERIFY(other.document().boat() == bench.document().boat());
        QVERIFY(QSettings().value("recent").toStringList().contains(path));
    }

    void brokenFileLeavesTheBoatAndSaysWhereAndWhy() {
        Bench bench;
        bench.type(wl12, xColumn, "1-8-3");
        const boat::Boat before = bench.document().boat();
        const QString title = bench.window.windowTitle();
        const QString path = bench.folder.filePath("broken.fayline");
        QVERIFY(write(path, R"({"fayline": 1, "pieces": [{"name": "Stem", "line": {"points": 4}}]})"));
        Answering answer(QMessageBox::Ok);
        QVERIFY(!bench.window.openFile(path));
        QVERIFY2(answer.text.contains(path) && answer.text.contains("pieces[0].line.points"), qPrintable(answer.text));
        QVERIFY(bench.document().boat() == before);
        QCOMPARE(bench.window.windowTitle(), title);
        QVERIFY(bench.action("undo")->isEnabled());
    }

    void fileThatIsGoneLeavesTheListOfRecentFiles() {
        Bench bench;
        const QString gone = bench.folder.filePath("gone.fayline");
        QSettings().setValue("recent", QStringList{gone, marram});
        Answering answer(QMessageBox::Ok);
        QVERIFY(!bench.window.openFile(gone));
        QVERIFY(!answer.text.isEmpty());
        QCOMPARE(QSettings().value("recent").toStringList(), QStringList{marram});
    }

    void pieceThatCannotBePlannedKeepsItsLastPlanAndSaysWhy() {
        Bench bench;
        const auto good = bench.window.shown().plan;
        boat::Piece doubled = bench.piece();
        doubled.line.points[4] = doubled.line.points[3];
        bench.document().changePiece(0, {"Double", {}, doubled});
        QTRY_VERIFY(!bench.window.shown().reason.isEmpty());
        QVERIFY(bench.window.shown().outOfDate);
        QVERIFY(bench.window.shown().reasonPath.startsWith("line.points["));
        QCOMPARE(bench.window.shown().plan, good);
        // Each panel says so; the drawing does by itself.
        auto* reason = bench.find<QWidget>("linePanel")->findChild<QLabel*>("reason");
        QVERIFY(reason && reason->isVisible());
        QVERIFY2(reason->text().contains(bench.window.shown().reason), qPrintable(reason->text()));
        bench.action("undo")->trigger();
        QTRY_VERIFY(!bench.window.shown().outOfDate);
        QVERIFY(!reason->isVisible());
    }

    void closingWithUnsavedChangesAsks() {
        Bench bench;
        const QString path = bench.folder.filePath("mine.fayline");
        bench.document().save(path);
        bench.type(wl12, xColumn, "1-8-3");
        {
            Answering cancel(QMessageBox::Cancel);
            QVERIFY(!bench.window.close());
            QVERIFY(cancel.text.contains("Marram"));
        }
        QVERIFY(bench.window.isVisible());
        {
            Answering cancel(QMessageBox::Cancel);
            bench.action("new")->trigger();
            QVERIFY(!cancel.text.isEmpty());
            QCOMPARE(bench.document().fileName(), path);
        }
        {
            Answering save(QMessageBox::Save);
            QVERIFY(bench.window.close());
        }
        QVERIFY(boat::loadBoat(path.toStdString()).pieces == bench.document().boat().pieces);
    }

    void closingWithDiscardLeavesTheFileAndNoCopy() {
        Bench bench;
        const QTemporaryDir home;
        const QString path = home.filePath("mine.fayline");
        bench.document().save(path);
        const auto saved = boat::loadBoat(path.toStdString());
        bench.type(wl12, xColumn, "1-8-3");
        Answering discard(QMessageBox::Discard);
        QVERIFY(bench.window.close());
        QVERIFY(boat::loadBoat(path.toStdString()) == saved);
        QVERIFY(Recovery(bench.folder.path()).leftBehind().empty());
        QVERIFY(QDir(bench.folder.path()).entryList({"*.fayline"}).isEmpty());
    }

    void closingWithoutChangesDoesNotAsk() {
        Bench bench;
        QVERIFY(bench.window.close());
    }

    void unsavedWorkIsCopiedWithinSecondsAndOfferedNextTime() {
        Bench bench;
        bench.type(wl12, xColumn, "1-8-3");
        QTRY_VERIFY_WITH_TIMEOUT(!QDir(bench.folder.path()).entryList({"*.fayline"}).isEmpty(), 5000);
        // The program ends here without a word: what it wrote stays, its lock is nobody's any more.
        const QTemporaryDir after;
        for (const QString& name : QDir(bench.folder.path()).entryList(QDir::Files)) {
            if (!name.endsWith(".lock")) QVERIFY(QFile::copy(bench.folder.filePath(name), after.filePath(name)));
        }
        MainWindow next(after.path());
        Answering open(QMessageBox::NoButton);  // the first button opens the copy
        next.offerLeftBehind();
        QVERIFY2(open.text.contains("Marram"), qPrintable(open.text));
        QVERIFY(next.document().boat().pieces == bench.document().boat().pieces);
        QVERIFY(next.isWindowModified());
        QVERIFY(next.windowTitle().contains("marram.fayline"));
        next.document().undoStack().setClean();
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

    void unitsAreAStepOfTheBoatAndEveryViewFollows() {
        Bench bench;
        const auto* table = bench.find<QAbstractItemView>("offsets");
        const double pixels = bench.find<FormView>()->transform().pixelsPerMetre;
        bench.action("unitmillimetres")->trigger();
        QCOMPARE(bench.document().boat().display.lengths, measure::LengthNotation::millimetres);
        QCOMPARE(bench.document().undoStack().undoText(), QString("Change units"));
        QVERIFY(bench.settle());
        QTRY_COMPARE(bench.window.shown().plan->display.lengths, measure::LengthNotation::millimetres);
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
        Bench one;
        Bench two;
        QRandomGenerator dice(3);
        for (Bench* bench : {&one, &two}) {
            auto* view = bench->find<FormView>();
            QVERIFY(view);
        }
        for (int i = 0; i < 200; ++i) {
            Bench& bench = dice.bounded(2) ? one : two;
            if (dice.bounded(12) == 0) {
                bench.document().setCurrentPiece(dice.bounded(int(bench.document().boat().pieces.size())));
            } else {
                boat::Piece after = bench.piece();
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
        QApplication::setActiveWindow(&bench.window);
        QVERIFY(QTest::qWaitForWindowActive(&bench.window));
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

    void emptyBoatIsShownWithoutAPiece() {
        Bench bench;
        while (!bench.document().boat().pieces.empty()) bench.action("removePiece")->trigger();
        QCOMPARE(bench.window.shown().pieceIndex, -1);
        QVERIFY(!bench.window.shown().plan);
        QVERIFY(!bench.action("removePiece")->isEnabled());
        bench.action("addPiece")->trigger();
        QVERIFY(bench.settle());
        QVERIFY(bench.window.shown().plan);
    }
};

QTEST_MAIN(WindowTest)
#include "window_test.moc"
