// Measuring one's own wood: typed in, refused, kept, changed, undone, given to the strips.
#include "app/window/trials_dialog.hpp"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPushButton>
#include <QTableView>
#include <QTest>
#include <QTimer>

#include "core/io/file.hpp"
#include "core/math/count.hpp"
#include "core/plan/study/trials.hpp"
#include "tests/app/own_home.hpp"
#include "tests/app/patience.hpp"
#include "tests/app/window_bench.hpp"

using namespace fayline;
using namespace fayline::app;

// A document with the sample boat, and the dialog on it.
struct Trying {
    Document document;
    std::unique_ptr<TrialsDialog> dialog;

    Trying() {
        document.open(marram);
        document.setCurrentPiece(0);
        dialog = std::make_unique<TrialsDialog>(document);
    }
    template <class Widget>
    Widget* find(const char* name) {
        return dialog->findChild<Widget*>(name);
    }
    void type(const char* field, const QString& words) {
        auto* edit = find<QLineEdit>(field);
        edit->selectAll();
        if (words.isEmpty()) QTest::keyClick(edit, Qt::Key_Delete);
        QTest::keyClicks(edit, words);
    }
    void typeOak() {
        type("trialSpan", "600 mm");
        type("trialWidth", "50 mm");
        type("trialThickness", "6 mm");
        type("trialWeight", "1 kg");
        type("trialSag", "4 mm");
    }
    void click(const char* button) { find<QPushButton>(button)->click(); }
    QString says() { return find<QLabel>("trialSays")->text(); }
    QString wrong() { return find<QLabel>("trialWrong")->text(); }
    const std::vector<model::Trial>& trials() { return document.boat().trials; }
};

class TrialsDialogTest : public QObject {
    Q_OBJECT

public:
    static void initMain() { useHomeOfItsOwn(); }

private slots:
    void saysWhatToGiveUntilAllIsThere();
    void keepsATrialAsOneStep();
    void anUntouchedFigureKeepsItsDigits();
    void badInputIsSaidAndNotKept();
    void changesAndRemovesTheChosenOne();
    void givesModulusAndBreakingStrainToTheStrips();
    void saysTheCaution();
    void everyControlHasANameAndIsReachedByTab();
    void opensFromTheMenu();
    void aTrialThatSaysNothingStaysAndIsMarked();
};

void TrialsDialogTest::saysWhatToGiveUntilAllIsThere() {
    Trying trying;
    QVERIFY(trying.says().contains("Give span"));
    QVERIFY(trying.wrong().isEmpty());
    QVERIFY(!trying.find<QPushButton>("keepTrial")->isEnabled());
    trying.typeOak();
    QVERIFY2(trying.says().contains("A modulus of"), qPrintable(trying.says()));
    QVERIFY(trying.find<QPushButton>("keepTrial")->isEnabled());
    // The wood of the piece's first strips is proposed.
    QCOMPARE(trying.find<QComboBox>("trialWood")->currentData().toString().toStdString(),
             trying.document.boat().pieces[0].stack.strips[0].species);
}

void TrialsDialogTest::keepsATrialAsOneStep() {
    Trying trying;
    const model::Boat before = trying.document.boat();
    trying.typeOak();
    trying.click("keepTrial");
    QCOMPARE(math::countOf(trying.trials()), 1);
    QCOMPARE(trying.trials()[0].sag_m, 0.004);
    QCOMPARE(trying.trials()[0].weight_kg, 1.0);
    QCOMPARE(trying.find<QTableView>("trials")->model()->rowCount(), 1);
    QVERIFY(trying.find<QLabel>("woodsTogether")->text().contains("one trial"));
    // The form is empty again, for the next one.
    QVERIFY(trying.find<QLineEdit>("trialSag")->text().isEmpty());
    // What was kept is what a file gives back.
    QVERIFY(io::readBoat(io::writeBoat(trying.document.boat())).trials == trying.trials());
    trying.document.undoStack().undo();
    QVERIFY(trying.document.boat() == before);
    QCOMPARE(trying.find<QTableView>("trials")->model()->rowCount(), 0);
    trying.document.undoStack().redo();
    QCOMPARE(math::countOf(trying.trials()), 1);
}

void TrialsDialogTest::anUntouchedFigureKeepsItsDigits() {
    Trying trying;
    model::Boat boat = trying.document.boat();
    model::Trial trial;
    trial.species = "oak_white";
    trial.sag_m = 0.0051234;
    boat.trials.push_back(trial);
    trying.document.changeBoat("Put", {}, boat);
    trying.find<QTableView>("trials")->setCurrentIndex(trying.find<QTableView>("trials")->model()->index(0, 0));
    trying.type("trialWeight", "1.2 kg");
    trying.click("keepTrial");
    QCOMPARE(trying.trials()[0].sag_m, 0.0051234);
    QCOMPARE(trying.trials()[0].weight_kg, 1.2);
}

void TrialsDialogTest::badInputIsSaidAndNotKept() {
    Trying trying;
    trying.typeOak();
    const auto refused = [&](const char* field, const QString& words, const QString& said) {
        trying.type(field, words);
        const bool good = !trying.find<QPushButton>("keepTrial")->isEnabled() && trying.wrong().contains(said);
        if (!good) qWarning() << field << words << trying.wrong() << trying.says();
        trying.typeOak();
        trying.type("trialMoisture", "12 %");
        trying.type("trialWhen", "");
        return good && trying.find<QPushButton>("keepTrial")->isEnabled();
    };
    QVERIFY(refused("trialSag", "0", "is not a sag; give a number above 0"));
    QVERIFY(refused("trialSag", "much", "much"));
    QVERIFY(refused("trialSag", "200 mm", "more than a fifth of the span"));
    QVERIFY(refused("trialSpan", "50 mm", "shorter than ten thicknesses"));
    QVERIFY(refused("trialWeight", "-1 kg", "give"));
    QVERIFY(refused("trialWeight", "100 kg", "breaks at"));
    QVERIFY(refused("trialMoisture", "300 %", "give 0 to 200"));
    QVERIFY(refused("trialWhen", "yesterday", "give"));
    QVERIFY(trying.trials().empty());
    QVERIFY(!trying.document.hasUnsavedChanges());
}

void TrialsDialogTest::changesAndRemovesTheChosenOne() {
    Trying trying;
    for (int i = 0; i < 2; ++i) {
        trying.typeOak();
        trying.click("keepTrial");
    }
    auto* table = trying.find<QTableView>("trials");
    table->setCurrentIndex(table->model()->index(1, 0));
    QCOMPARE(trying.find<QPushButton>("keepTrial")->text(), QString("Change this trial"));
    trying.type("trialSag", "5 mm");
    trying.click("keepTrial");
    QCOMPARE(trying.trials()[1].sag_m, 0.005);
    QCOMPARE(trying.trials()[0].sag_m, 0.004);
    trying.document.undoStack().undo();
    QCOMPARE(trying.trials()[1].sag_m, 0.004);
    // The form shows the trial as it stands again.
    QVERIFY(trying.find<QLineEdit>("trialSag")->text() != "5 mm");
    trying.click("removeTrial");
    QCOMPARE(math::countOf(trying.trials()), 1);
    trying.document.undoStack().undo();
    QCOMPARE(math::countOf(trying.trials()), 2);
}

void TrialsDialogTest::givesModulusAndBreakingStrainToTheStrips() {
    Trying trying;
    QVERIFY(!trying.find<QPushButton>("giveModulus")->isEnabled());
    trying.typeOak();
    trying.click("keepTrial");
    QVERIFY(trying.find<QPushButton>("giveModulus")->isEnabled());
    QVERIFY(!trying.find<QPushButton>("giveBreaking")->isEnabled());
    trying.click("giveModulus");
    const model::Piece& piece = trying.document.boat().pieces[0];
    const plan::Shop shop = plan::shopOf(trying.document.boat());
    const auto expected = plan::measuredAt(piece.stack.moisture, shop.measured.at(0), shop.species).modulus_Pa;
    QVERIFY(piece.stack.strips[0].moe_Pa.has_value());
    QCOMPARE(*piece.stack.strips[0].moe_Pa, *expected);

    trying.typeOak();
    trying.type("trialWeight", "9 kg");
    trying.type("trialSag", "40 mm");
    trying.find<QCheckBox>("trialBroke")->click();
    QVERIFY2(trying.says().contains("It broke at a strain of"), qPrintable(trying.says() + trying.wrong()));
    trying.click("keepTrial");
    trying.click("giveBreaking");
    QVERIFY(trying.document.boat().pieces[0].stack.strips[0].breaksAt.has_value());
    trying.document.undoStack().undo();
    QVERIFY(!trying.document.boat().pieces[0].stack.strips[0].breaksAt.has_value());
    QVERIFY(trying.document.boat().pieces[0].stack.strips[0].moe_Pa.has_value());
}

void TrialsDialogTest::saysTheCaution() {
    Trying trying;
    const QString caution = trying.find<QLabel>("trialCaution")->text();
    for (const char* part : {"eyes", "gloves", "hands"}) QVERIFY(caution.contains(part));
}

void TrialsDialogTest::everyControlHasANameAndIsReachedByTab() {
    Trying trying;
    trying.typeOak();
    trying.click("keepTrial");
    trying.typeOak();
    trying.dialog->show();
    QVERIFY(QTest::qWaitForWindowExposed(trying.dialog.get(), fayline::test::patience_ms));
    std::vector<QWidget*> wanted;
    for (auto* each : trying.dialog->findChildren<QLineEdit*>())
        if (!qobject_cast<QComboBox*>(each->parentWidget())) wanted.push_back(each);
    for (auto* each : trying.dialog->findChildren<QPushButton*>()) wanted.push_back(each);
    wanted.push_back(trying.find<QComboBox>("trialWood"));
    wanted.push_back(trying.find<QTableView>("trials"));
    trying.find<QLineEdit>("trialSpan")->setFocus();
    std::vector<QWidget*> reached;
    for (int i = 0; i < 60; ++i) {
        QTest::keyClick(trying.dialog->focusWidget(), Qt::Key_Tab);
        reached.push_back(trying.dialog->focusWidget());
    }
    for (QWidget* each : wanted) {
        QVERIFY2(!each->accessibleName().isEmpty() || each->parent()->inherits("QDialogButtonBox"),
                 qPrintable(each->objectName()));
        if (!each->isEnabled() || !each->isVisible()) continue;
        QVERIFY2(std::ranges::find(reached, each) != reached.end(), qPrintable(each->objectName()));
    }
}

void TrialsDialogTest::opensFromTheMenu() {
    Bench bench;
    QString opened;
    QTimer look;
    QObject::connect(&look, &QTimer::timeout, &bench.window, [&opened] {
        QWidget* modal = QApplication::activeModalWidget();
        if (!modal) return;
        opened = modal->objectName();
        modal->close();
    });
    look.start(10);
    bench.action("trials")->trigger();
    QCOMPARE(opened, QString("trialsDialog"));
}

void TrialsDialogTest::aTrialThatSaysNothingStaysAndIsMarked() {
    Trying trying;
    model::Boat boat = trying.document.boat();
    model::Trial trial;
    trial.species = "oak_white";
    trial.span_m = 0.02;
    boat.trials.push_back(trial);
    trying.document.changeBoat("Put", {}, boat);
    auto* table = trying.find<QTableView>("trials");
    QCOMPARE(table->model()->index(0, 8).data().toString(), QString("says nothing"));
    table->setCurrentIndex(table->model()->index(0, 0));
    QVERIFY(trying.wrong().contains("shorter than ten thicknesses"));
}

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, TrialsDialogTest>(argc, argv);
}
#include "trials_dialog_test.moc"
