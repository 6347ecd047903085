// The user's shed: kept from one piece, used in others and in other boats, its file.
#include <QComboBox>
#include <QDir>
#include <QFile>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QTableView>

#include "app/look/text.hpp"
#include "app/panels/shed_line.hpp"
#include "app/window/panel_stack.hpp"
#include "app/window/shed_dialog.hpp"
#include "app/window/shed_store.hpp"
#include "core/io/shed_file.hpp"
#include "tests/app/own_home.hpp"
#include "tests/app/run_test.hpp"
#include "tests/app/window_bench.hpp"

namespace fayline::app {

namespace {

using model::ShedPart;

model::Shed clampsOnly() {
    model::Shed shed;
    shed.tools = std::vector<model::Tool>{model::Tool{.name = "Bar clamp", .most_N = 3000, .count = 7}};
    return shed;
}

// With a glue and a wood of the user's own.
model::Shed ownThings() {
    model::Shed shed = clampsOnly();
    shed.adhesives = {model::OwnAdhesive{.id = "mine", .name = "Mine"}};
    shed.species = {model::OwnSpecies{.id = "ash_here", .name = "Ash from here"}};
    shed.trials = {model::Trial{.species = "ash_here"}};
    return shed;
}

// A window of its own whose shed lies in its own folder.
struct ShedBench {
    QTemporaryDir folder;
    QString file = folder.filePath("my_shed.fayline-shed");
    std::unique_ptr<MainWindow> window;

    explicit ShedBench(const std::optional<model::Shed>& shed = {}) {
        if (shed) io::saveShed(*shed, pathOf(file));
        open();
    }
    ~ShedBench() { close(); }
    void close() {
        if (window) window->document().undoStack().setClean();
        window.reset();
    }
    void open() {
        close();
        window = std::make_unique<MainWindow>(folder.path(), nullptr, handNeverRests(), file);
        window->resize(1280, 800);
        window->show();
    }
    Document& document() const { return window->document(); }
    const model::Piece& piece() const { return document().boat().pieces[size_t(document().currentPiece())]; }
    model::Shed onDisk() const { return io::readShed(io::loadText(pathOf(file), "a shed file").value()); }
    void click(const char* button) const { window->findChild<QPushButton*>(button)->click(); }
    void change(const std::function<void(model::Piece&)>& how) const {
        model::Piece after = piece();
        how(after);
        document().changePiece(document().currentPiece(), {"Change it", {}, after});
    }
    void addPiece() const {
        window->findChild<QAction*>("addPiece")->trigger();
        window->findChild<QAbstractButton*>("addNew")->click();
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    }
    void openTools() const {
        window->findChild<QAction*>("openPanel3")->trigger();
        auto* head = window->findChild<QToolButton*>("toolsHead");
        if (!window->findChild<QTableView*>("tools")->isVisible()) head->click();
        QVERIFY(test::soon([&] { return window->findChild<QTableView*>("tools")->isVisible(); }));
    }
    QString toolsLine() const {
        auto* label = window->findChild<QLabel*>("shedToolsWords");
        return label->isVisible() ? label->text() : QString();
    }
    // The window shows a change with its plan, or a moment later, and only what is in sight.
    bool says(const char* words) const {
        return test::soon([&] {
            window->findChild<PanelStack*>()->ensureWidgetVisible(window->findChild<ShedLine*>("shedTools"));
            return toolsLine() == words;
        });
    }
    bool seen(const char* button) const { return window->findChild<QPushButton*>(button)->isVisible(); }
};

}  // namespace

class ShedTest : public QObject {
    Q_OBJECT
private slots:
    static void initMain() { useHomeOfItsOwn(); }

    static void newBoatAndNewPieceBeginWithTheShed() {
        model::Shed shed = clampsOnly();
        shed.display = model::UsualUnits{units::inchShop, {}};
        shed.crew.emplace().hands = 4;
        const ShedBench bench(shed);
        QCOMPARE(bench.piece().holding.tools, *shed.tools);
        QCOMPARE(bench.piece().crew.hands, 4);
        QVERIFY(bench.document().boat().display == units::inchShop);
        QVERIFY(!bench.document().hasUnsavedChanges());
        bench.change([](model::Piece& piece) { piece.holding.tools.clear(); });
        bench.addPiece();
        QCOMPARE(bench.document().currentPiece(), 1);
        QCOMPARE(bench.piece().holding.tools, *shed.tools);
        QVERIFY(bench.document().boat().pieces[0].holding.tools.empty());
    }

    static void toolsSetOnceAreUsedInASecondPieceAndInAnotherBoat() {
        ShedBench bench;
        bench.openTools();
        QCOMPARE(bench.toolsLine(), QString());
        QVERIFY(bench.seen("shedToolsKeep") && !bench.seen("shedToolsUse"));
        const std::vector<model::Tool> tools{model::Tool{.name = "Cam clamp", .count = 12}};
        bench.addPiece();
        bench.change([&](model::Piece& piece) { piece.holding.tools = tools; });
        bench.click("shedToolsKeep");
        QVERIFY(bench.says("Tools at hand: as in my shed"));
        QVERIFY(!bench.seen("shedToolsKeep") && !bench.seen("shedToolsUse"));
        QCOMPARE(*bench.onDisk().tools, tools);

        bench.document().setCurrentPiece(0);  // which has none
        QVERIFY(bench.says("Tools at hand: differs from my shed"));
        QVERIFY(bench.seen("shedToolsKeep") && bench.seen("shedToolsUse"));
        bench.click("shedToolsUse");
        QCOMPARE(bench.piece().holding.tools, tools);
        QVERIFY(bench.says("Tools at hand: as in my shed"));
        bench.document().undoStack().undo();
        QVERIFY(bench.piece().holding.tools.empty());
        QVERIFY(bench.says("Tools at hand: differs from my shed"));

        bench.open();  // the program begun again, with a new boat
        QCOMPARE(bench.piece().holding.tools, tools);
    }

    static void everyPanelHasItsLine() {
        const ShedBench bench;
        for (const char* name : {"shedTools", "shedGlue", "shedAir", "shedCrew"})
            QVERIFY2(bench.window->findChild<ShedLine*>(name), name);
        bench.change([](model::Piece& piece) {
            piece.glue.waste = 0.4;
            piece.glue.air_C = 27;
            piece.crew.hands = 5;
        });
        for (const char* panel : {"openPanel4", "openPanel5"}) bench.window->findChild<QAction*>(panel)->trigger();
        bench.click("shedGlueKeep");
        bench.click("shedAirKeep");
        bench.click("shedCrewKeep");
        QCOMPARE(bench.onDisk().glue->glue.waste, 0.4);
        QCOMPARE(bench.onDisk().air->glue.air_C, 27.0);
        QCOMPARE(bench.onDisk().crew->hands, 5);
    }

    static void boatTakesAlongAGlueAndAWoodOfTheShedInOneStep() {
        const ShedBench bench(ownThings());
        const auto& glues = *bench.window->shown().adhesives;
        QVERIFY(std::ranges::any_of(glues, [](const glue::Adhesive& one) { return one.own && one.id == "mine"; }));
        QVERIFY(wood::findSpecies(bench.window->shown().species, "ash_here"));
        QVERIFY(bench.document().boat().adhesives.empty());
        const model::Boat before = bench.document().boat();
        bench.change([](model::Piece& piece) {
            piece.glue.adhesive = "mine";
            piece.stack.strips.front().species = "ash_here";
        });
        const model::Boat& boat = bench.document().boat();
        QCOMPARE(boat.adhesives.size(), size_t(1));
        QCOMPARE(boat.species.size(), size_t(1));
        QCOMPARE(boat.trials.size(), size_t(1));
        QVERIFY(std::ranges::count(*bench.window->shown().adhesives, std::string("mine"), &glue::Adhesive::id) == 1);
        bench.document().undoStack().undo();
        QVERIFY(bench.document().boat() == before);
    }

    static void glueOfTheShedIsChosenFromTheList() {
        const ShedBench bench(ownThings());
        bench.window->findChild<QAction*>("openPanel4")->trigger();
        auto* list = bench.window->findChild<QComboBox*>("adhesive");
        const auto row = [&] {
            bench.window->findChild<PanelStack*>()->ensureWidgetVisible(list);
            return list->findText("Mine (your own)");
        };
        QVERIFY(test::soon([&] { return row() >= 0; }));
        list->setCurrentIndex(row());
        emit list->activated(row());
        QCOMPARE(bench.piece().glue.adhesive, std::string("mine"));
        QCOMPARE(bench.document().boat().adhesives, ownThings().adhesives);
        QCOMPARE(bench.document().undoStack().count(), 1);
        // The plan is made with it.
        QVERIFY(test::soon([&] {
            const auto& plan = bench.window->shown().plan;
            return plan && plan->day.glue.adhesive.id == "mine";
        }));
    }

    static void boatOpensAlikeWhereThereIsNoShed() {
        const ShedBench bench(ownThings());
        bench.change([](model::Piece& piece) {
            piece.glue.adhesive = "mine";
            piece.stack.strips.front().species = "ash_here";
        });
        const QString file = bench.folder.filePath("boat.fayline");
        bench.document().save(file);
        Document elsewhere;
        elsewhere.open(file);
        const model::Boat& boat = elsewhere.boat();
        const plan::Plan plan = plan::makePlan(boat.pieces[0], plan::shopOf(boat));
        QCOMPARE(plan.day.glue.adhesive.id, std::string("mine"));
        QCOMPARE(plan.stack.strips.front().species, std::string("ash_here"));
        QVERIFY(boat == bench.document().boat());
    }

    static void newPieceBringsTheUsualGlueOfTheShed() {
        model::Shed shed = ownThings();
        shed.glue.emplace().glue.adhesive = "mine";
        const ShedBench bench(shed);
        QCOMPARE(bench.piece().glue.adhesive, std::string("mine"));
        QCOMPARE(bench.document().boat().adhesives, shed.adhesives);
    }

    static void openedBoatStaysAsItIs() {
        ShedBench bench(ownThings());
        QVERIFY(bench.window->openFile(marram));
        const model::Boat boat = io::loadBoat(pathOf(marram));
        QVERIFY(bench.document().boat() == boat);
        QVERIFY(!bench.document().hasUnsavedChanges());
    }

    static void damagedShedIsSetAsideAndNamed() {
        const ShedBench bench;
        QVERIFY(write(bench.file, "{\"fayline_shed\": 1, \"tools\": [{\"most_N\": -4}]}"));
        ShedStore store(bench.file);
        QVERIFY(!store.shed());
        const auto problem = store.takeProblem();
        QVERIFY(problem);
        const QStringList aside = QDir(bench.folder.path()).entryList({"*.damaged-*"}, QDir::Files);
        QCOMPARE(aside.size(), 1);
        QVERIFY2(problem->what.contains(aside.first()), qPrintable(problem->what));
        QVERIFY2(problem->why.contains("tools[0].most_N: -4"), qPrintable(problem->why));
        QVERIFY(!QFile::exists(bench.file));
        QVERIFY(!store.takeProblem());  // told once
        store.change([](model::Shed& shed) { shed = clampsOnly(); });
        QCOMPARE(bench.onDisk(), clampsOnly());
        // A second one on the same day does not cover the first.
        QVERIFY(write(bench.file, "nonsense"));
        const ShedStore again(bench.file);
        QCOMPARE(QDir(bench.folder.path()).entryList({"*.damaged-*"}, QDir::Files).size(), 2);
    }

    static void windowTellsOfADamagedShedAndGoesOn() {
        ShedBench bench;
        bench.close();
        QVERIFY(write(bench.file, "nonsense"));
        bench.open();
        Answering answer(QMessageBox::Ok);
        bench.window->tellOfShed();
        QVERIFY2(answer.text.contains(".damaged-"), qPrintable(answer.text));
        QVERIFY(bench.window->openFile(marram));
    }

    static void newerShedIsLeftAlone() {
        const ShedBench bench;
        const QByteArray newer = "{\"fayline_shed\": 9, \"more\": true}";
        QVERIFY(write(bench.file, newer));
        ShedStore store(bench.file);
        QVERIFY(!store.shed());
        const auto problem = store.takeProblem();
        QVERIFY(problem && problem->why.contains("newer Fayline"));
        QVERIFY_EXCEPTION_THROWN(store.change([](model::Shed& shed) { shed = clampsOnly(); }), units::InputError);
        QFile file(bench.file);
        QVERIFY(file.open(QIODevice::ReadOnly));
        QCOMPARE(file.readAll(), newer);
    }

    static void twoProgramsDoNotLoseEachOthersParts() {
        const QTemporaryDir folder;
        const QString file = folder.filePath("deeper/my_shed.fayline-shed");
        ShedStore one(file);
        ShedStore other(file);
        one.change([](model::Shed& shed) { shed = clampsOnly(); });
        other.change([](model::Shed& shed) { shed.crew.emplace().hands = 3; });
        QVERIFY(other.shed()->tools == clampsOnly().tools);
        QVERIFY(!one.shed()->crew);
        one.refresh();
        QVERIFY(*one.shed() == *other.shed());
        const ShedStore third(file);
        QVERIFY(*third.shed() == *other.shed());
        QCOMPARE(third.shed()->crew->hands, 3);
        one.undo();
        QVERIFY(!one.shed()->tools);
        QCOMPARE(one.shed()->crew->hands, 3);
    }

    static void changeIsUndone() {
        const QTemporaryDir folder;
        ShedStore store(folder.filePath("my_shed.fayline-shed"));
        QVERIFY(!store.canUndo());
        store.change([](model::Shed& shed) { shed = clampsOnly(); });
        store.change([](model::Shed& shed) { model::drop(shed, ShedPart::tools); });
        store.undo();
        QVERIFY(*store.shed() == clampsOnly());
        store.undo();
        QVERIFY(*store.shed() == model::Shed());
        QVERIFY(!store.canUndo());
    }

    static void exportedAndImportedElsewhere() {
        const QTemporaryDir folder;
        ShedStore store(folder.filePath("a.fayline-shed"));
        store.change([](model::Shed& shed) { shed = ownThings(); });
        store.exportTo(folder.filePath("out.fayline-shed"));
        ShedStore other(folder.filePath("b.fayline-shed"));
        other.change([](model::Shed& shed) { shed.crew.emplace().hands = 3; });
        other.importFrom(folder.filePath("out.fayline-shed"));
        model::Shed both = ownThings();
        both.crew.emplace().hands = 3;
        QVERIFY(*other.shed() == both);
        QVERIFY(write(folder.filePath("bad.fayline-shed"), "nonsense"));
        QVERIFY_EXCEPTION_THROWN(other.importFrom(folder.filePath("bad.fayline-shed")), units::InputError);
        QVERIFY(QFile::exists(folder.filePath("bad.fayline-shed")));  // another's file is not renamed
        QVERIFY(*other.shed() == both);
    }

    static void dialogTakesUsesAndRemovesParts() {
        const QTemporaryDir folder;
        ShedStore store(folder.filePath("my_shed.fayline-shed"));
        Document document;
        model::Piece piece = document.boat().pieces[0];
        piece.holding.tools = *clampsOnly().tools;
        document.changePiece(0, {"Change it", {}, piece});
        ShedDialog dialog(store, document);
        const auto button = [&](const char* name) { return dialog.findChild<QPushButton*>(name); };
        auto* words = dialog.findChild<QLabel*>("shedWords");
        QVERIFY(dialog.findChild<QLabel*>("shedFile")->text().contains("my_shed.fayline-shed"));
        QVERIFY(!button("useFromShed")->isEnabled() && !button("removeFromShed")->isEnabled());
        button("takeIntoShed")->click();
        QVERIFY(store.shed()->tools == clampsOnly().tools);
        QVERIFY2(words->text().startsWith("7 x Bar clamp: clamp, 3000 N"), qPrintable(words->text()));
        QVERIFY(!button("takeIntoShed")->isEnabled() && !button("useFromShed")->isEnabled());
        document.undoStack().undo();
        auto* list = dialog.findChild<QListWidget*>("shedParts");
        list->setCurrentRow(1);
        list->setCurrentRow(0);
        button("useFromShed")->click();
        QVERIFY(document.boat().pieces[0].holding.tools == *clampsOnly().tools);
        button("removeFromShed")->click();
        QVERIFY(!store.shed()->tools);
        button("undoShed")->click();
        QVERIFY(store.shed()->tools.has_value());
        // Each part has words once it is there.
        for (int row = 0; row < list->count(); ++row) {
            list->setCurrentRow(row);
            if (button("takeIntoShed")->isEnabled()) button("takeIntoShed")->click();
            if (row < 6) QVERIFY2(!list->item(row)->text().contains("none"), qPrintable(list->item(row)->text()));
            QVERIFY(!words->text().isEmpty());
        }
    }
};

}  // namespace fayline::app

int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, fayline::app::ShedTest>(argc, argv);
}
#include "shed_test.moc"
