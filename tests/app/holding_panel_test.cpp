// The holding panel on the screen: typed into, folded, shown plan after plan with and without what takes longer.
#include "app/panels/holding_panel.hpp"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QSignalSpy>
#include <QTest>
#include <QToolButton>

#include "app/look/theme.hpp"
#include "app/panels/along_plot.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/tools_model.hpp"
#include "tests/app/held_piece.hpp"
#include "tests/app/shown_panel.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

void type(QLineEdit* edit, const char* text) {
    QVERIFY(edit);
    edit->setFocus();
    edit->selectAll();
    QTest::keyClicks(edit, text);
    QTest::keyClick(edit, Qt::Key_Return);
}

void unfold(const QWidget& panel, const char* head) {
    auto* button = panel.findChild<QToolButton*>(head);
    QVERIFY(button);
    if (button->accessibleName().contains("folded")) button->click();
}

NotebookTable* tableOf(const QWidget& panel, const char* name) {
    return panel.findChild<NotebookTable*>(name);
}

}  // namespace

class HoldingPanelTest : public QObject {
    Q_OBJECT
private slots:
    void initTestCase() { applyGround(Ground::paper); }

    void WhatIsAskedMostStandsOpenAndTheRestIsFolded() {
        HoldingPanel panel;
        panel.show(heldByHand());
        open(&panel);
        for (const char* table : {"tools", "stations"}) QVERIFY2(tableOf(panel, table)->isVisible(), table);
        for (const char* table : {"proposed", "closing", "blocks", "props", "served"})
            QVERIFY2(!tableOf(panel, table)->isVisible(), table);
        QVERIFY(!panel.findChild<QToolButton*>("propsHead")->isVisible());
        QVERIFY(panel.findChild<QToolButton*>("toolsHead")->accessibleName().contains("folded"));
        QTest::keyClick(panel.findChild<QToolButton*>("toolsHead"), Qt::Key_Space);
        QVERIFY(tableOf(panel, "served")->isVisible());
        QVERIFY(panel.findChild<QToolButton*>("toolsHead")->accessibleName().contains("open"));
    }

    void WhatIsFoldedIsBroughtUpToDateWhenItOpens() {
        HoldingPanel panel;
        Shown shown = heldByHand();
        panel.show(shown);
        open(&panel);
        QCOMPARE(tableOf(panel, "closing")->model()->rowCount(), 0);
        unfold(panel, "closingHead");
        QVERIFY(tableOf(panel, "closing")->model()->rowCount() > 0);
    }

    void TheProposalIsAdoptedAsOneChange() {
        HoldingPanel panel;
        const Shown shown = heldByHand();
        QStringList names;
        model::Piece after;
        connect(&panel, &Panel::changeAsked, &panel, [&](const Change& change) {
            names << change.name;
            after = change.after;
        });
        panel.show(shown);
        open(&panel);
        unfold(panel, "proposalHead");
        auto* adopt = panel.findChild<QPushButton*>("adopt");
        QVERIFY(adopt->isEnabled());
        adopt->click();
        QCOMPARE(names.size(), 1);
        QCOMPARE(after.holding.stations.size(), 2u);
        QCOMPARE(after.holding.stations[0], shown.piece.holding.stations[2]);
    }

    void WhileItIsWorkedOutTheLastStudyStaysFainterAndNothingJumps() {
        HoldingPanel panel;
        Shown shown = heldByHand();
        panel.show(shown);
        open(&panel);
        unfold(panel, "proposalHead");
        unfold(panel, "closingHead");
        auto* closing = tableOf(panel, "closing");
        const int rows = closing->model()->rowCount();
        QVERIFY(rows > 0);
        const int height = panel.layout()->totalHeightForWidth(narrowest);
        auto moved = std::make_shared<plan::Plan>(*shown.plan);
        moved->holdingStudy.reset();
        shown.plan = moved;
        panel.show(shown);
        QCOMPARE(closing->model()->rowCount(), rows);
        QVERIFY(closing->model()->index(0, 0).data(faintRole).toBool());
        QVERIFY(!panel.findChild<QPushButton*>("adopt")->isEnabled());
        QVERIFY(panel.findChild<QToolButton*>("closingHead")->accessibleDescription().contains("calculating"));
        QCOMPARE(panel.layout()->totalHeightForWidth(narrowest), height);
        // Of another piece nothing is kept.
        shown.pieceIndex = 1;
        shown.piece.id = "another";
        panel.show(shown);
        QCOMPARE(closing->model()->rowCount(), 0);
        QVERIFY(panel.findChild<QLabel*>("proposalWords")->text().contains("Calculating"));
    }

    void ADragStepWithAllOpenLaysNothingOutAnew() {
        HoldingPanel panel;
        Shown shown = heldByHand();
        for (const auto* head : {"pullsHead", "evenHead", "proposalHead", "closingHead", "overRunHead", "toolsHead",
                                 "settingsHead", "hullHead"})
            unfold(panel, head);
        panel.show(shown);
        open(&panel);
        panel.resize(narrowest, panel.layout()->totalHeightForWidth(narrowest));
        panel.show(shown);
        struct Watch : QObject {
            int asked = 0;
            bool eventFilter(QObject* object, QEvent* event) override {
                asked += event->type() == QEvent::LayoutRequest;
                return QObject::eventFilter(object, event);
            }
        } watch;
        panel.installEventFilter(&watch);
        // Until all has found its place: three turns in a row of which none asks.
        for (int still = 0; still < 3; still = watch.asked == 0 ? still + 1 : 0) {
            watch.asked = 0;
            QTest::qWait(1);
        }
        for (int step = 1; step <= 5; ++step) {
            auto plan = std::make_shared<plan::Plan>(*shown.plan);
            for (holding::HeldStation& station : plan->holding.held.stations) station.pull_N += 10;
            for (holding::HeldSample& sample : plan->holding.held.samples) sample.gap_m *= 1.01;
            shown.plan = plan;
            panel.show(shown);
            QCoreApplication::processEvents();
        }
        QCOMPARE(watch.asked, 0);
    }

    void FieldsOfTheChosenStationsAreThoseOfTheirKind() {
        HoldingPanel panel;
        Taken taken{heldByHand(), {}};
        followWith(taken, &panel);
        open(&panel);
        auto* table = tableOf(panel, "stations");
        QVERIFY(panel.findChild<QLineEdit*>("stationMost")->isVisible());
        QVERIFY(!panel.findChild<QLineEdit*>("footX")->isVisible());
        table->setCurrentIndex(table->model()->index(3, 0));
        table->model()->setData(table->model()->index(3, StationsModel::kindColumn), "prop", Qt::EditRole);
        QVERIFY(panel.findChild<QLineEdit*>("footX")->isVisible());
        type(panel.findChild<QLineEdit*>("section"), "89 mm x 38 mm");
        type(panel.findChild<QLineEdit*>("footY"), "-600 mm");
        const model::Station& prop = taken.shown.piece.holding.stations[3];
        QCOMPARE((*prop.strut.section_m)[1], 0.038);
        QVERIFY(std::abs(*prop.strut.footY_m + 0.6) < 1e-9);
        table->model()->setData(table->model()->index(3, StationsModel::kindColumn), "screw", Qt::EditRole);
        QVERIFY(!panel.findChild<QLineEdit*>("footX")->isVisible());
        type(panel.findChild<QLineEdit*>("screwDiameter"), "5 mm");
        QCOMPARE(*taken.shown.piece.holding.stations[3].screw.diameter_m, 0.005);
        table->model()->setData(table->model()->index(3, StationsModel::kindColumn), "strap", Qt::EditRole);
        type(panel.findChild<QLineEdit*>("strapTo"), "900 mm");
        QVERIFY(std::abs(*taken.shown.piece.holding.stations[3].strap.to_m - 0.9) < 1e-9);
        table->setCurrentIndex(table->model()->index(0, 0));
        QVERIFY(!panel.findChild<QLineEdit*>("strapTo")->isVisible());
    }

    void OneTypedValueIsForAllChosenStationsAndOneStep() {
        HoldingPanel panel;
        Taken taken{heldByHand(), {}};
        followWith(taken, &panel);
        open(&panel);
        tableOf(panel, "stations")->selectAll();
        type(panel.findChild<QLineEdit*>("stationMost"), "1800");
        QCOMPARE(taken.names.size(), 1);
        for (const model::Station& station : taken.shown.piece.holding.stations) QCOMPARE(station.most_N, 1800.0);
        auto* pull = panel.findChild<QLineEdit*>("stationPull");
        type(pull, "hard");
        QVERIFY(panel.findChild<QLabel*>("stationPullReason")->isVisible());
        QCOMPARE(pull->text(), QStringLiteral("hard"));
        QCOMPARE(taken.names.size(), 1);
        type(pull, "400");
        QVERIFY(!panel.findChild<QLabel*>("stationPullReason")->isVisible());
        QCOMPARE(*taken.shown.piece.holding.stations[5].pull_N, 400.0);
    }

    void APlaceChosenElsewhereChoosesTheStationThere() {
        HoldingPanel panel;
        const Shown shown = heldByHand();
        panel.show(shown);
        open(&panel);
        panel.selectPlace(shown.piece.holding.stations[4].at_m);
        QCOMPARE(tableOf(panel, "stations")->currentIndex().row(), 4);
        panel.selectPlace(shown.piece.holding.stations[4].at_m + 0.01);
        QCOMPARE(tableOf(panel, "stations")->currentIndex().row(), 4);
        panel.lightPlace(shown.piece.holding.stations[2].at_m);
        QCOMPARE(tableOf(panel, "stations")->litRow(), 2);
    }

    // What is pointed at is lit without the colour of a choice; and a choice made elsewhere ends the one that was.
    void TwoRowsNeverLookChosenAtOnce() {
        HoldingPanel panel;
        const Shown shown = heldByHand();
        panel.show(shown);
        open(&panel);
        NotebookTable* table = tableOf(panel, "stations");
        const auto groundOf = [&](int row) {
            const QRect cell = table->visualRect(table->model()->index(row, 0));
            return table->viewport()->grab().toImage().pixelColor(cell.right() - 2, cell.top() + 2);
        };
        const QColor plain = groundOf(1);
        table->selectRow(1);
        const QColor chosen = groundOf(1);
        QVERIFY(chosen != plain);
        panel.lightPlace(shown.piece.holding.stations[3].at_m);
        const int lit = table->litRow();
        QVERIFY(lit >= 0 && lit != 1);
        QCOMPARE(groundOf(lit), theme().raised);
        QCOMPARE(groundOf(1), chosen);
        table->setFocus();
        table->selectRow(1);
        tableOf(panel, "closing")->setFocus();
        QVERIFY(!table->selectionModel()->hasSelection());
        panel.selectPlace(shown.piece.holding.stations[1].at_m);
        QVERIFY(table->selectionModel()->hasSelection());
        panel.selectPlace(std::nullopt);
        QVERIFY(!table->selectionModel()->hasSelection());
    }

    // Enter there ends the typing: a count is often changed alone.
    void TabInTheLastCellOfTheToolsMakesTheNextRow() {
        HoldingPanel panel;
        Taken taken{heldByHand(), {}};
        followWith(taken, &panel);
        open(&panel);
        auto* table = tableOf(panel, "tools");
        const auto type = [&](const char* typed, Qt::Key ends) {
            auto* editor = table->findChild<QLineEdit*>("cellEditor");
            QVERIFY(editor);
            editor->selectAll();
            QTest::keyClicks(editor, typed);
            QTest::keyClick(editor, ends);
            QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        };
        const auto tools = [&]() -> const std::vector<model::Tool>& { return taken.shown.piece.holding.tools; };
        const std::size_t before = tools().size();
        const QModelIndex last = table->model()->index(table->model()->rowCount() - 1, ToolsModel::countColumn);
        for (const Qt::Key ends : {Qt::Key_Return, Qt::Key_Tab}) {
            table->setFocus();
            table->setCurrentIndex(last);
            table->edit(last);
            type(ends == Qt::Key_Tab ? "7" : "6", ends);
            if (ends == Qt::Key_Return) QCOMPARE(tools().size(), before);
        }
        QCOMPARE(tools()[before - 1].count, 7);
        QCOMPARE(tools().size(), before + 1);
        SOON_VERIFY(table->findChild<QLineEdit*>("cellEditor"));
        QCOMPARE(table->currentIndex(), table->model()->index(int(before), ToolsModel::nameColumn));
        type("Cam clamp", Qt::Key_Tab);
        QCOMPARE(tools().back().name, std::string("Cam clamp"));
    }

    void LimitsAndTheBoatAreTyped() {
        HoldingPanel panel;
        Taken taken{heldByHand(), {}};
        followWith(taken, &panel);
        open(&panel);
        unfold(panel, "settingsHead");
        unfold(panel, "hullHead");
        type(panel.findChild<QLineEdit*>("gapLimit"), "0.3 mm");
        QCOMPARE(taken.shown.piece.holding.gapLimit_m, 0.0003);
        type(panel.findChild<QLineEdit*>("caul"), "20 mm");
        QCOMPARE(taken.shown.piece.holding.cauls.thickness_m, 0.02);
        type(panel.findChild<QLineEdit*>("backbone"), "driftwood");
        QVERIFY(panel.findChild<QLabel*>("backboneReason")->isVisible());
        type(panel.findChild<QLineEdit*>("backbone"), "ash_white");
        QCOMPARE(taken.shown.piece.holding.backbone.species, std::string("ash_white"));
        panel.findChild<QToolButton*>("addBlock")->click();
        type(panel.findChild<QLineEdit*>("hullWeight"), "1.2 t");
        QCOMPARE(taken.shown.piece.holding.hull.weight_kg, 1200.0);
    }

    void WhatItIsClampedToIsSaidAndChangedInForm() {
        HoldingPanel panel;
        Shown shown = heldByHand();
        shown.piece.form.kind = model::FormKind::posts;
        std::vector<plan::Question> asked;
        connect(&panel, &Panel::panelAsked, &panel, [&](plan::Question question) { asked.push_back(question); });
        panel.show(shown);
        open(&panel);
        QCOMPARE(panel.findChild<QLabel*>("toFormWords")->text(), QString("Clamped to: posts"));
        panel.findChild<QPushButton*>("toForm")->click();
        QCOMPARE(asked, std::vector{plan::Question::form});
    }

    void PropsShowOnlyWhereThereAreAny() {
        HoldingPanel panel;
        Shown shown = heldByHand();
        panel.show(shown);
        open(&panel);
        auto* head = panel.findChild<QToolButton*>("propsHead");
        QVERIFY(!head->isVisible());
        auto plan = std::make_shared<plan::Plan>(*shown.plan);
        plan->holding.props.push_back({});
        shown.plan = plan;
        panel.show(shown);
        QVERIFY(head->isVisible());
        head->click();
        QCOMPARE(tableOf(panel, "props")->model()->rowCount(), 1);
    }

    void WithAllOpenNothingIsCutOffAndEveryControlHasAName() {
        for (const Ground ground : {Ground::paper, Ground::slate}) {
            applyGround(ground);
            for (int lengths = 0; lengths < 3; ++lengths) {
                for (const int width : {narrowest, widest}) {
                    HoldingPanel panel;
                    Shown shown = heldByHand();
                    shown.display.lengths = static_cast<units::LengthNotation>(lengths);
                    auto plan = std::make_shared<plan::Plan>(*shown.plan);
                    plan->holding.props.push_back({});
                    plan->holding.screws.push_back({});
                    plan->holding.straps.push_back({});
                    shown.plan = plan;
                    unfold(panel);
                    panel.show(shown);
                    checkFits(&panel, width);
                    for (const QWidget* part : panel.findChildren<QWidget*>()) {
                        if (!part->isVisible() || !(part->focusPolicy() & Qt::TabFocus) || part->focusProxy()) continue;
                        QVERIFY2(!part->accessibleName().isEmpty(), qPrintable(part->objectName()));
                    }
                }
            }
        }
        applyGround(Ground::paper);
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, HoldingPanelTest>(argc, argv);
}
#include "holding_panel_test.moc"
