// The side panels: typed into, shown plan after plan, lit, read at their narrowest on both grounds.
#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QCompleter>
#include <QHeaderView>
#include <QLabel>
#include <QLayout>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <QToolButton>
#include <algorithm>

#include "app/look/theme.hpp"
#include "app/panels/along_plot.hpp"
#include "app/panels/finding_line.hpp"
#include "app/panels/findings_list.hpp"
#include "app/panels/holding_panel.hpp"
#include "app/panels/line_panel.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/searched_choice.hpp"
#include "app/panels/strips_panel.hpp"
#include "core/math/count.hpp"
#include "tests/app/patience.hpp"
#include "tests/app/shown_panel.hpp"
#include "tests/app/shown_piece.hpp"

using namespace fayline;
using namespace fayline::app;

class PanelsTest : public QObject {
    Q_OBJECT
private slots:
    void initTestCase() { applyGround(Ground::paper); }

    void FindingsLeadToTheirPlaceAndOfferTheRepair() {
        FindingsList list;
        Taken taken{shownSample("marram_misread.fayline"), {}, true};
        taken.follow(&list, [&list](const Shown& shown) { list.show(shown); });
        open(&list);
        QSignalSpy chosen(&list, &FindingsList::findingChosen);
        auto* line = list.findChild<FindingLine*>("finding0");
        const plan::Finding finding = taken.shown.plan->findings[0];
        QCOMPARE(finding.code, plan::Code::offsetMisread);
        QTest::mouseClick(line, Qt::LeftButton, {}, QPoint(40, 8));
        QCOMPARE(chosen.count(), 1);
        QCOMPARE(chosen[0].at(0).value<plan::About>(), plan::aboutOf(finding.code));
        QCOMPARE(chosen[0].at(2).toInt(), finding.point);
        auto* detail = line->findChild<QLabel*>("detail");
        QVERIFY(!detail->isVisible());
        QTest::mouseClick(line->findChild<QToolButton*>("open"), Qt::LeftButton);
        QVERIFY(detail->isVisible());
        QVERIFY(detail->text().contains(units::markMeaning(finding.source.mark)));
        auto* repair = line->findChild<QPushButton*>("cure");
        QVERIFY(repair && repair->isVisible());
        QTest::mouseClick(repair, Qt::LeftButton);
        QVERIFY(taken.shown.plan->line.misreadSought);
        QVERIFY(taken.shown.plan->line.misread.suspects.empty());
    }

    // A cause stands for all that follows from it; notes are folded, facts are not in the list at all.
    void FindingsAreCausesWithTheWorstFirst() {
        FindingsList list;
        Shown shown = shownSample("marram_misread.fayline");
        deepenShown(shown);
        open(&list);
        list.show(shown);
        const plan::Verdict verdict = plan::verdictOf(*shown.plan);
        const auto visible = [&list] {
            const auto all = list.findChildren<FindingLine*>();
            return std::ranges::count_if(all,
                                         [](const FindingLine* line) { return line->isVisibleTo(line->window()); });
        };
        QCOMPARE(visible(), verdict.stops() + verdict.cautions());
        QVERIFY(verdict.notes() > 0);
        QTest::mouseClick(list.findChild<QToolButton*>("findingNotes"), Qt::LeftButton);
        QCOMPARE(visible(), verdict.stops() + verdict.cautions() + verdict.notes());
        const auto follows =
            std::ranges::count_if(shown.plan->findings, [](const plan::Finding& f) { return f.root == 0; });
        QVERIFY(follows > 3);
        auto* first = list.findChild<FindingLine*>("finding0");
        QTest::keyClick(first, Qt::Key_Space);
        QVERIFY(first->findChild<QLabel*>("detail")->text().count(QStringLiteral("\n- ")) == follows);
        // While it is planned anew all keeps its place and is grey; what cannot be planned has no cure.
        auto* cure = first->findChild<QPushButton*>("cure");
        shown.outOfDate = true;
        list.show(shown);
        QVERIFY(!first->isEnabled() && cure->isVisible());
        QSignalSpy asked(&list, &FindingsList::changeAsked);
        QTest::mouseClick(cure, Qt::LeftButton);
        QCOMPARE(asked.count(), 0);
        shown.reason = QStringLiteral("no plan can be made of it");
        list.show(shown);
        QVERIFY(!first->isEnabled() && !cure->isVisible());
        list.show(Shown{});
        QCOMPARE(visible(), 0);
    }

    void NothingIsLaidOutAnewWhileFindingsStayTheSame() {
        FindingsList list;
        Shown shown = shownSample("marram_misread.fayline");
        deepenShown(shown);
        open(&list);
        list.resize(660, 200);
        list.show(shown);
        QTest::keyClick(list.findChild<FindingLine*>("finding0"), Qt::Key_Space);
        struct Watch : QObject {
            int asked = 0;
            bool eventFilter(QObject* object, QEvent* event) override {
                asked += event->type() == QEvent::LayoutRequest;
                return QObject::eventFilter(object, event);
            }
        } watch;
        list.installEventFilter(&watch);
        for (QWidget* inside : list.findChildren<QWidget*>()) inside->installEventFilter(&watch);
        // Until all has found its place: three turns in a row of which none asks.
        for (int still = 0; still < 3; still = watch.asked == 0 ? still + 1 : 0) {
            watch.asked = 0;
            QTest::qWait(1);
        }
        for (int step = 1; step <= 5; ++step) {
            shown.outOfDate = true;
            list.show(shown);
            QCoreApplication::processEvents();
            // A plan whose figures differ, and the places with them.
            auto plan = std::make_shared<plan::Plan>(*shown.plan);
            for (plan::Finding& finding : plan->findings) {
                if (finding.at_m) *finding.at_m += 0.001;
            }
            shown.plan = plan;
            shown.outOfDate = false;
            list.show(shown);
            QCoreApplication::processEvents();
        }
        QCOMPARE(watch.asked, 0);
        auto* first = list.findChild<FindingLine*>("finding0");
        QVERIFY(first->findChild<QLabel*>("detail")->isVisible());
        // The count shows that it would be seen.
        first->findChild<QPushButton*>("cure")->hide();
        QCoreApplication::processEvents();
        QVERIFY(watch.asked > 0);
    }

    // From a line to what puts it right, to what opens it, to the next line; the notes after their button.
    void TheTabKeyGoesThroughTheListAsItStands() {
        FindingsList list;
        Shown shown = shownSample("marram_misread.fayline");
        deepenShown(shown);
        open(&list);
        list.resize(660, 300);
        list.show(shown);
        auto* first = list.findChild<FindingLine*>("finding0");
        auto* notes = list.findChild<QToolButton*>("findingNotes");
        QTest::mouseClick(notes, Qt::LeftButton);
        auto* second = list.findChild<FindingLine*>("finding1");
        QVERIFY(second && second->isVisible());
        const std::vector<QWidget*> expected{first, first->findChild<QPushButton*>("cure"),
                                             first->findChild<QToolButton*>("open"), notes, second};
        first->setFocus();
        for (std::size_t i = 0; i < expected.size(); ++i) {
            QVERIFY2(list.focusWidget() == expected[i], qPrintable(QString::number(i)));
            QTest::keyClick(expected[i], Qt::Key_Tab);
        }
    }

    void WhatALineOpensToComesIntoSight() {
        FindingsList list;
        Shown shown = shownSample("marram_in_place.fayline");
        deepenShown(shown);
        open(&list);
        list.resize(660, 150);
        list.show(shown);
        auto* third = list.findChild<FindingLine*>("finding2");
        auto* detail = third->findChild<QLabel*>("detail");
        QTest::keyClick(third, Qt::Key_Space);
        QTRY_VERIFY(list.findChild<QScrollArea*>()->verticalScrollBar()->value() > 0);
        QTRY_VERIFY(!detail->visibleRegion().isEmpty());
        QVERIFY(!third->findChild<QLabel*>("line")->visibleRegion().isEmpty());
    }

    void ALongTaleOfSafetyLeavesRoomForFindings() {
        FindingsList list;
        Shown shown = shownSample("marram_in_place.fayline");
        deepenShown(shown);
        open(&list);
        list.resize(500, 150);
        list.show(shown);
        auto* safety = list.findChild<QLabel*>("findingSafety");
        QVERIFY(safety->heightForWidth(500) > 3 * list.fontMetrics().height());
        QCoreApplication::processEvents();
        QVERIFY(list.findChild<QScrollArea*>()->height() >= 3 * (list.fontMetrics().height() + 16));
        QVERIFY(safety->height() >= safety->heightForWidth(safety->width()));
    }

    void AGroupOfStripsHasItsOwnFields() {
        StripsPanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        unfold(panel);
        auto* groups = panel.findChild<NotebookTable*>("groups");
        QVERIFY(groups->model()->rowCount() >= 2);
        groups->setCurrentIndex(groups->model()->index(1, 0));
        auto* tapersTo = panel.findChild<QLineEdit*>("tapersTo");
        tapersTo->setFocus();
        QTest::keyClicks(tapersTo, "3/16 in");
        QTest::keyClick(tapersTo, Qt::Key_Return);
        QVERIFY(!taken.shown.piece.stack.strips[0].tapersTo_m);
        QVERIFY(std::abs(*taken.shown.piece.stack.strips[1].tapersTo_m - 3 * units::inch_m / 16) < 1e-12);
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
            units::markMeaning(shown.plan->stack.strips[0].breakingSource.mark)));
        QTest::keyClick(note, Qt::Key_Escape);
        SOON_VERIFY(!panel.findChild<QWidget*>("sourceNote"));
        auto* about = panel.findChild<QToolButton*>("woodHead");
        about->click();
        QVERIFY(panel.findChild<QLabel*>("wood")->isVisible());
        QVERIFY(panel.findChild<QLabel*>("wood")->text().contains("Modulus of rupture"));
    }

    void AWoodIsFoundByAnyPartOfItsName() {
        StripsPanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        auto* groups = panel.findChild<NotebookTable*>("groups");
        const auto species = [&] { return taken.shown.piece.stack.strips[0].species; };
        const auto edit = [&](const char* typed) {
            QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);  // an editor that was closed before
            groups->setFocus();
            groups->setCurrentIndex(groups->model()->index(0, GroupsModel::woodColumn));
            groups->edit(groups->currentIndex());
            auto* editor = groups->findChild<SearchedChoice*>("cellEditor");
            if (!editor) qFatal("the wood is not edited in a list that is searched");
            editor->setFocus();
            QTest::keyClicks(editor, typed);
            return editor;
        };
        // In groups by their names, each sorted.
        SearchedChoice* editor = edit("");
        QStringList names[2];
        for (int i = 0, group = -1; i < editor->count(); ++i) {
            const bool head = !(editor->model()->index(i, 0).flags() & Qt::ItemIsEnabled);
            if (head) ++group;
            QCOMPARE(head, editor->itemText(i) == "Hardwoods" || editor->itemText(i) == "Softwoods");
            if (!head) names[group] << editor->itemText(i);
        }
        QVERIFY(names[0].contains("White oak") && names[1].contains("Western larch"));
        for (QStringList& group : names) QVERIFY(std::ranges::is_sorted(group));
        QCOMPARE(names[0].size() + names[1].size(), math::countOf(taken.shown.species));
        QTest::keyClick(editor, Qt::Key_Escape);
        // Typed in part: the one that has it, however it is written.
        editor = edit("EUROPEAN LA");
        QCOMPARE(editor->completer()->completionCount(), 1);
        QTest::keyClick(editor, Qt::Key_Return);
        SOON_COMPARE(species(), std::string("larch_eu"));
        // What several have, or none, is refused in words and changes nothing.
        for (const char* unclear : {"oak", "driftwood"}) {
            QTest::keyClick(edit(unclear), Qt::Key_Return);
            SOON_VERIFY(panel.findChild<QLabel*>("groupsUnread")->text().contains("not a wood"));
            QCOMPARE(species(), std::string("larch_eu"));
        }
    }

    void StationsAreSetOutEvenlyAndNonsenseIsSaid() {
        HoldingPanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        panel.findChild<QToolButton*>("evenHead")->click();
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
            QVERIFY(stations[i].at_m - stations[i - 1].at_m <= 12 * units::inch_m + 1e-9);
        QVERIFY(std::abs(stations.front().at_m) < 1e-9);
        QVERIFY(std::abs(stations.back().at_m - taken.shown.plan->line.fair.line.length()) < units::sixteenth_m);
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
        SOON_VERIFY(!hovered.isEmpty());
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
            const model::Boat boat = io::loadBoat(std::string(FAYLINE_SAMPLES "/") + file);
            for (int piece = 0; piece < math::countOf(boat.pieces); ++piece)
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
        shown.display.lengths = static_cast<units::LengthNotation>(lengths);
        planAnew(shown);
        for (const int width : {narrowest, widest}) {
            for (const NamedPanel& named : makePanels(nullptr)) {
                const std::unique_ptr<Panel> panel(named.panel);
                panel->show(shown);
                checkFits(panel.get(), width);
            }
        }
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, PanelsTest>(argc, argv);
}
#include "panels_test.moc"
