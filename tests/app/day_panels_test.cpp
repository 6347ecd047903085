// The panels of glue and schedule: what they say of a plan, a minute pointed at, remedies adopted, own glues.
#include <QComboBox>
#include <QDialogButtonBox>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QRegularExpression>
#include <QSignalSpy>
#include <QTest>
#include <QToolButton>
#include <algorithm>
#include <cmath>

#include "app/formview/form_view.hpp"
#include "app/panels/along_plot.hpp"
#include "app/panels/glue_panel.hpp"
#include "app/panels/glue_rows.hpp"
#include "app/panels/lanes_chart.hpp"
#include "app/panels/schedule_panel.hpp"
#include "app/panels/schedule_rows.hpp"
#include "app/window/document.hpp"
#include "app/window/glues_dialog.hpp"
#include "core/math/count.hpp"
#include "core/model/new_piece.hpp"
#include "core/units/day_text.hpp"
#include "tests/app/patience.hpp"
#include "tests/app/shown_panel.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

// A day that is far too long, with remedies.
Shown lateSample() {
    Shown shown = shownSample();
    shown.piece.glue.air_C = 30;
    shown.piece.crew.hands = 1;
    planAnew(shown);
    deepenShown(shown);
    return shown;
}

void type(QWidget* panel, const char* object, const QString& text) {
    auto* edit = panel->findChild<QLineEdit*>(object);
    QVERIFY2(edit, object);
    edit->setFocus();
    edit->selectAll();
    QTest::keyClicks(edit, text);
    QTest::keyClick(edit, Qt::Key_Return);
}

}  // namespace

class DayPanelsTest : public QObject {
    Q_OBJECT
private slots:
    void initTestCase() { applyGround(Ground::paper); }

    void AmountsStandAsTheUserMeasures() {
        Shown shown = shownSample();
        const double resin_kg = shown.plan->day.glue.parts_kg[0];
        QCOMPARE(amountRows(shown)[0].cells[1].text, QString::fromStdString(units::writeMass(resin_kg, shown.display)));
        shown.piece.glue.measuredBy = model::MeasuredBy::cup;
        planAnew(shown);
        const double resin_m3 = shown.plan->day.glue.parts_m3[0];
        QCOMPARE(amountRows(shown)[0].cells[1].text,
                 QString::fromStdString(units::writeVolume(resin_m3, shown.display)));
        QCOMPARE(amountColumns(model::MeasuredBy::cup)[1].name, amountColumns(model::MeasuredBy::scale)[2].name);
        QCOMPARE(batchRows(shown).size(), shown.plan->day.glue.batches.size());
        QCOMPARE(goingOffRows(shown).size(), shown.plan->day.glue.batches.size());
    }

    void WhereTheGlueGoesIsToldApart() {
        const Shown shown = shownSample();
        const glue::Amounts& amounts = shown.plan->day.glue.amounts;
        const auto rowOf = [rows = amountRows(shown)](const char* name) {
            const auto row = std::ranges::find_if(rows, [name](const auto& one) { return one.cells[0].text == name; });
            return row == rows.end() ? QString("missing") : row->cells[1].text;
        };
        const auto mass = [&](double mass_kg) {
            return QString::fromStdString(units::writeMass(mass_kg, shown.display));
        };
        QCOMPARE(rowOf("in the joints"), mass(amounts.line_kg));
        QCOMPARE(rowOf("on the wood"), mass(amounts.soaksIn_kg));
        QCOMPARE(rowOf("squeezed out"), mass(amounts.squeezedOut_kg));
        QCOMPARE(rowOf("left in pots, on tools"), mass(amounts.waste_kg));
        QCOMPARE(rowOf("Spread on each joint"), QString("410 g/m2"));
    }

    void PeaksAreRangesToTenDegrees() {
        const Shown shown = shownSample();
        for (const FigureRow& row : goingOffRows(shown)) {
            static const QRegularExpression tens(QStringLiteral("^(about )?\\d*0(\u2013\\d*0)? \u00b0C$"));
            QVERIFY2(tens.match(row.cells[3].text).hasMatch(), qPrintable(row.cells[3].text));
            QVERIFY2(tens.match(row.cells[3].under).hasMatch(), qPrintable(row.cells[3].under));
        }
    }

    void ACupSaysTheWallTimeByWhichItMustBeUsed() {
        const Shown shown = shownSample();
        const schedule::CupTimes& cup = shown.plan->day.gluings.front().run.cups.front();
        QCOMPARE(goingOffRows(shown).front().cells[2].text,
                 QString::fromStdString(units::writeClock(shown.piece.crew.startAt_s + cup.useBy_s)));
    }

    void TheCautionStandsWithTheNumbersAndThePotLifeIsDrawn() {
        GluePanel panel;
        Shown shown = shownSample();
        deepenShown(shown);
        panel.show(shown);
        open(&panel);
        QVERIFY(panel.findChild<QLabel*>("glueCaution")->text().contains("local rules"));
        const std::optional<AlongPlot::Picture> picture =
            potLifePicture(*shown.plan, shown.piece.glue, shown.plan->dayStudy->potLives, shown.display);
        QVERIFY(picture);
        QCOMPARE(picture->dots.size(), shown.plan->day.glue.adhesive.potLives.size());
        // The likeliest, and the least and the most beside it.
        QCOMPARE(picture->curves.size(), std::size_t(3));
        QCOMPARE(std::ranges::count_if(picture->curves, [](const auto& curve) { return curve.main; }), 1);
        QVERIFY(picture->alongTicks.size() >= 3);
    }

    void WhatIsTypedChangesThePieceInTheUnitsOfTheBoat() {
        GluePanel panel;
        Taken taken{shownSample(), {}};
        taken.shown.display.temperatures = units::TemperatureUnit::fahrenheit;
        followWith(taken, &panel);
        open(&panel);
        unfold(panel);
        type(&panel, "air", "68");
        QVERIFY(std::abs(taken.shown.piece.glue.air_C - 20) < 1e-9);
        type(&panel, "humidity", "55 %");
        QVERIFY(std::abs(taken.shown.piece.glue.humidity - 0.55) < 1e-12);
        type(&panel, "tentHours", "8");
        QCOMPARE(taken.shown.piece.glue.tent.lasts_s, 8 * 3600.0);
        const int names = taken.names.size();
        type(&panel, "cupHolds", "nothing");
        QCOMPARE(taken.names.size(), names);
        QVERIFY(panel.findChild<QLabel*>("cupHoldsReason")->isVisible());
        const auto choose = [&](const char* name, int index) {
            auto* field = panel.findChild<QComboBox*>(name);
            field->setCurrentIndex(index);
            emit field->activated(index);
            return field;
        };
        // Mix and pot life are chosen each for itself; a family that has but one of each leaves nothing to choose.
        QCOMPARE(choose("mixingRatio", 4)->currentText(), QString("5:1"));
        QCOMPARE(choose("potLife", 2)->currentText(), QString("about 50 min"));
        QCOMPARE(taken.shown.piece.glue.adhesive, std::string("epoxy_5_1_slow"));
        QCOMPARE(choose("adhesive", 1)->count(), 4);
        QCOMPARE(taken.shown.piece.glue.adhesive, std::string("resorcinol"));
        panel.show(taken.shown);
        QVERIFY(!panel.findChild<QComboBox*>("potLife")->isEnabled());
    }

    void TheCrewIsTypedAndAnImpossibleOneRefused() {
        GluePanel glue;
        SchedulePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &glue);
        followWith(taken, &panel);
        open(&glue);
        type(&glue, "hands", "3");
        QCOMPARE(taken.shown.piece.crew.hands, 3);
        type(&glue, "hands", "0");
        QCOMPARE(taken.shown.piece.crew.hands, 3);
        QVERIFY(glue.findChild<QLabel*>("handsReason")->isVisible());
        panel.show(taken.shown);
        open(&panel);
        QCOMPARE(panel.findChild<QLabel*>("toGlueWords")->text(), QString("Pairs of hands: 3"));
        type(&panel, "startAt", "6:15");
        QCOMPARE(taken.shown.piece.crew.startAt_s, 6.25 * 3600);
        panel.findChild<QToolButton*>("ratesHead")->click();
        type(&panel, "mixTakes", "5 min");
        QCOMPARE(taken.shown.piece.crew.rates.mix_s, 300.0);
    }

    // The bounds of the project file hold for what is typed.
    void HowFarDaysDifferIsTypedWithinItsBounds() {
        SchedulePanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        panel.findChild<QToolButton*>("uncertainHead")->click();
        const model::Crew& crew = taken.shown.piece.crew;
        type(&panel, "pace", "25");
        QCOMPARE(crew.pace, 0.25);
        type(&panel, "glueUncertain", "0 %");
        QCOMPARE(crew.glueUncertain, 0.0);
        type(&panel, "stripBreaksChance", "5");
        QCOMPARE(crew.mishaps.stripBreaks.chance, 0.05);
        type(&panel, "clampSlipsCosts", "4 min");
        QCOMPARE(crew.mishaps.clampSlips.lasts_s, 240.0);
        type(&panel, "cupSpillsChance", "0");
        QCOMPARE(crew.mishaps.cupSpills.chance, 0.0);
        for (const char* field : {"uncertain", "pace", "glueUncertain", "stripBreaksChance"}) {
            const model::Crew before = crew;
            for (const char* wrong : {"1000 %", "-5", "100.1"}) {
                type(&panel, field, wrong);
                QVERIFY2(crew == before, field);
                QVERIFY(panel.findChild<QLabel*>(QString(field) + "Reason")->isVisible());
            }
        }
        type(&panel, "uncertain", "100 %");
        QCOMPARE(crew.uncertain, 1.0);
    }

    void TheChartFindsTheTaskUnderAPixel() {
        LanesChart chart;
        const Shown shown = shownSample();
        const plan::GluingDay& day = shown.plan->day.gluings.front();
        chart.setPicture(lanesPicture(shown, day));
        chart.resize(400, chart.sizeHint().height());
        chart.QWidget::show();
        const LanesLayout& layout = chart.lanesLayout();
        int found = 0;
        for (std::size_t i = 0; i < day.run.tasks.size(); ++i) {
            const schedule::Task& task = day.run.tasks[i];
            const double middle_s = (task.start_s + task.end_s) / 2;
            QVERIFY(std::abs(layout.at_s(layout.x(middle_s)) - middle_s) < 1e-6);
            for (const int hand : task.lanes) {
                QCOMPARE(chart.taskAt({layout.x(middle_s), layout.y(hand) + layout.lane / 2}), int(i));
                ++found;
            }
        }
        QVERIFY(found >= math::countOf(day.run.tasks));
        QCOMPARE(chart.taskAt({layout.x(1), 1}), -1);  // on the clock
    }

    void AMinuteIsWalkedByKeysAndToldToTheDrawing() {
        SchedulePanel panel;
        const Shown shown = shownSample();
        panel.show(shown);
        open(&panel);
        auto* chart = panel.findChild<LanesChart*>("lanes");
        QSignalSpy pointed(&panel, &Panel::momentPointed);
        chart->setFocus();
        QTest::keyClick(chart, Qt::Key_End);
        QCOMPARE(pointed.count(), 1);
        const auto last = pointed.last().at(0).value<std::optional<PointedMoment>>();
        QVERIFY(last.has_value());
        const plan::GluingDay& day = shown.plan->day.gluings.front();
        QCOMPARE(last->moment.closed.size(), day.job.stations.size());
        QTest::keyClick(chart, Qt::Key_Home);
        QTest::keyClick(chart, Qt::Key_Right);
        QCOMPARE(chart->litMinute(), std::optional<double>(60));
        QVERIFY(panel.findChild<QLabel*>("momentWords")->text().contains("mix batch 1"));
        QTest::keyClick(chart, Qt::Key_Escape);
        QVERIFY(!pointed.last().at(0).value<std::optional<PointedMoment>>().has_value());
        const auto count = pointed.count();
        panel.show(shown);  // nothing is pointed at: nothing is told
        QCOMPARE(pointed.count(), count);
    }

    void TheDrawingShowsWhatIsWetAndHeldByThenAndForgetsIt() {
        const Shown shown = shownSample();
        FormView view;
        view.resize(640, 480);
        view.show(shown);
        view.QWidget::show();
        const QImage before = view.grab().toImage();
        const plan::GluingDay& day = shown.plan->day.gluings.front();
        view.showMoment(pointedMoment(shown, day, 0.3 * day.run.end_s));
        const QImage early = view.grab().toImage();
        view.showMoment(pointedMoment(shown, day, day.run.end_s));
        const QImage late = view.grab().toImage();
        QVERIFY(early != before);
        QVERIFY(late != early);
        view.showMoment(std::nullopt);
        QCOMPARE(view.grab().toImage(), before);
    }

    void ARemedyIsAdoptedAndUndone() {
        const Shown shown = lateSample();
        QVERIFY(!shown.plan->dayStudy->remedies.empty());
        SchedulePanel panel;
        panel.show(shown);
        open(&panel);
        Document document;
        document.addPiece(shown.piece);
        const int index = document.currentPiece();
        connect(&panel, &Panel::changeAsked, &document,
                [&](const Change& change) { document.changePiece(index, change); });
        auto* table = panel.findChild<NotebookTable*>("remedies");
        auto* adopt = panel.findChild<QPushButton*>("adoptRemedy");
        QVERIFY(!adopt->isEnabled());
        QCOMPARE(table->model()->rowCount(), math::countOf(shown.plan->dayStudy->remedies));
        const auto& remedies = shown.plan->dayStudy->remedies;
        for (int row = 0; row < math::countOf(remedies); ++row) {
            table->setCurrentIndex(table->model()->index(row, 0));
            QVERIFY(adopt->isEnabled());
            QTest::mouseClick(adopt, Qt::LeftButton);
            QVERIFY(document.boat().pieces[std::size_t(index)] != shown.piece);
            Shown after = shown;
            after.piece = document.boat().pieces[std::size_t(index)];
            planAnew(after);
            QVERIFY(std::abs(after.plan->day.margin_s - remedies[std::size_t(row)].margin_s) < 1e-6);
            document.undoStack().undo();
            QVERIFY(document.boat().pieces[std::size_t(index)] == shown.piece);
        }
    }

    void SeveralGluingsAreChosenFrom() {
        Shown shown = shownSample();
        shown.piece.stack.gluings = {4};
        planAnew(shown);
        SchedulePanel panel;
        panel.show(shown);
        open(&panel);
        unfold(panel);
        auto* gluings = panel.findChild<QComboBox*>("gluing");
        QVERIFY(gluings->isVisible());
        QCOMPARE(gluings->count(), 2);
        auto* faces = panel.findChild<NotebookTable*>("faceTimes");
        QStringList first;
        for (int of = 0; of < 2; ++of) {
            gluings->setCurrentIndex(of);
            emit gluings->activated(of);
            QCOMPARE(faces->model()->rowCount(), math::countOf(shown.plan->day.gluings[std::size_t(of)].run.faces));
        }
    }

    void NothingIsCutOffWithStudiesAndInAllUnits_data() {
        QTest::addColumn<bool>("late");
        QTest::addColumn<bool>("pounds");
        QTest::addColumn<bool>("byCup");
        for (int i = 0; i < 8; ++i) QTest::addRow("case %d", i) << bool(i & 1) << bool(i & 2) << bool(i & 4);
    }
    void NothingIsCutOffWithStudiesAndInAllUnits() {
        QFETCH(bool, late);
        QFETCH(bool, pounds);
        QFETCH(bool, byCup);
        Shown shown = late ? lateSample() : shownSample();
        if (pounds)
            shown.display = {units::LengthNotation::feetInchesEighths, units::TemperatureUnit::fahrenheit,
                             units::ForceUnit::poundForce, units::WeightUnit::ounce, units::VolumeUnit::fluidOunce};
        if (byCup) shown.piece.glue.measuredBy = model::MeasuredBy::cup;
        if (byCup) shown.piece.glue.thinner = 0.05;
        planAnew(shown);
        deepenShown(shown);
        for (const int width : {narrowest, widest}) {
            for (const NamedPanel& named : makePanels(nullptr)) {
                const std::unique_ptr<Panel> panel(named.panel);
                if (named.question != plan::Question::glue && named.question != plan::Question::time) continue;
                panel->show(shown);
                unfold(*panel);
                checkFits(panel.get(), width);
            }
        }
    }

    void AnOwnGlueIsFittedAsItIsTypedAndNonsenseKeepsTheDialogOpen() {
        model::Boat boat;
        GluesDialog dialog(boat);
        dialog.show();
        QVERIFY(QTest::qWaitForWindowExposed(&dialog, fayline::test::patience_ms));
        QTest::mouseClick(dialog.findChild<QPushButton*>("addGlue"), Qt::LeftButton);
        auto* words = dialog.findChild<QLabel*>("gluesWords");
        QVERIFY(words->text().contains("one pot life"));
        const auto put = [&](const char* object, const QString& text) {
            auto* edit = dialog.findChild<QLineEdit*>(object);
            edit->setFocus();
            edit->selectAll();
            QTest::keyClicks(edit, text);
        };
        put("glueName", "Barn epoxy");
        put("potLife1", "40 min, 20 C, 100 g");
        put("potLife2", "20 min, 30 C, 100 g");
        QVERIFY(words->text().contains("2 pot lives"));
        QVERIFY(words->text().contains("How warmth hastens it is fitted"));
        auto* ok = dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok);
        QVERIFY(ok->isEnabled());
        put("partsByWeight", "100");
        QVERIFY(!ok->isEnabled());
        QVERIFY(dialog.findChild<QLabel*>("partsByWeightReason")->isVisible());
        put("partsByWeight", "100 : 43");
        QVERIFY(ok->isEnabled());
        QCOMPARE(dialog.glues().size(), std::size_t(1));
        const model::OwnAdhesive& own = dialog.glues().front();
        QCOMPARE(QString::fromStdString(own.name), QString("Barn epoxy"));
        QCOMPARE(own.potLife_s, 2400.0);
        QCOMPARE(own.morePotLives.size(), std::size_t(1));
        boat.adhesives = dialog.glues();
        QVERIFY(io::readBoat(io::writeBoat(boat)) == boat);
        put("potLife2", " ");
        QVERIFY(dialog.glues().front().morePotLives.empty());
    }

    void AGlueInUseIsNotRemoved() {
        model::Boat boat;
        model::OwnAdhesive own;
        own.id = own.name = "mine";
        boat.adhesives = {own};
        boat.pieces = {model::newPiece("Rib")};
        boat.pieces.front().glue.adhesive = "mine";
        GluesDialog dialog(boat);
        QTest::mouseClick(dialog.findChild<QPushButton*>("removeGlue"), Qt::LeftButton);
        QCOMPARE(dialog.glues().size(), std::size_t(1));
        QVERIFY(dialog.findChild<QLabel*>("gluesWords")->text().contains("Rib"));
        boat.pieces.front().glue.adhesive = "epoxy_2_1_medium";
        GluesDialog other(boat);
        QTest::mouseClick(other.findChild<QPushButton*>("removeGlue"), Qt::LeftButton);
        QVERIFY(other.glues().empty());
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, DayPanelsTest>(argc, argv);
}
#include "day_panels_test.moc"
