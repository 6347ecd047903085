// What holds the piece, as hands move it: feet of props, blocks, trim lines.
#include <QtTest>

#include "tests/app/formview_held.hpp"
#include "tests/app/patience.hpp"

using namespace fayline;
using namespace fayline::app;
using namespace fayline::app::held;

class FormviewHoldingHand : public QObject {
    Q_OBJECT

private slots:
    void AFootIsDraggedInOneStep() {
        Propped bench;
        const auto before = bench.shown.piece;
        const QPoint from = bench.at(*before.holding.stations[bench.prop].strut.footX_m, -0.5);
        bench.drag(from, from + QPoint(-40, 10));
        bench.release(from + QPoint(-40, 10));
        QVERIFY2(bench.oneStep(QStringLiteral("Move foot of prop 3")),
                 qPrintable(bench.changes.empty() ? QString("nothing") : bench.changes.back().name));
        const auto& moved = bench.shown.piece.holding.stations[bench.prop];
        const double scale = bench.view.transform().pixelsPerMetre;
        QVERIFY(std::abs(*moved.strut.footX_m - *before.holding.stations[bench.prop].strut.footX_m + 40 / scale) <
                0.001);
        QVERIFY(std::abs(*moved.strut.footY_m + 0.5 + 10 / scale) < 0.001);
        auto rest = bench.shown.piece;
        rest.holding.stations[bench.prop] = before.holding.stations[bench.prop];
        QVERIFY(rest == before);
    }

    void EscapePutsFootBlockAndTrimLineBack() {
        const auto begin = [](Propped& bench, int what) {
            if (what == 0) return bench.at(*bench.shown.piece.holding.stations[bench.prop].strut.footX_m, -0.5);
            if (what == 1) return bench.at(0.7, -0.3) + QPoint(0, 8);
            return bench.gripOf(1);
        };
        for (const int what : {0, 1, 2}) {
            Propped bench;
            const auto before = bench.shown.piece;
            const QPoint from = begin(bench, what);
            bench.drag(from, from + QPoint(14, 25));
            QVERIFY2(!(bench.shown.piece == before), qPrintable(QString::number(what)));
            QTest::keyClick(&bench.view, Qt::Key_Escape);
            QVERIFY(bench.shown.piece == before);
            QCOMPARE(bench.ended, 1);
            for (const Change& change : bench.changes) QCOMPARE(change.merges, bench.changes.front().merges);
        }
    }

    void ABlockIsDraggedLevel() {
        Propped bench;
        const auto before = bench.shown.piece;
        const QPoint from = bench.at(0.7, -0.3) + QPoint(0, 8);
        bench.drag(from, from + QPoint(30, 20));
        bench.release(from + QPoint(30, 20));
        QVERIFY(bench.oneStep(QStringLiteral("Move block 2")));
        const double scale = bench.view.transform().pixelsPerMetre;
        QVERIFY(std::abs(bench.shown.piece.holding.hull.blocks[1].x_m - 0.7 - 30 / scale) < 0.001);
        QCOMPARE(bench.shown.piece.holding.hull.blocks[1].y_m, -0.3);
    }

    void TheTrimLineAtTheEndSlidesOnTheLineAndTheStripsEndWhereTheyDid() {
        Propped bench;
        const auto before = bench.shown.piece;
        const line::Line was = bench.shown.plan->line.fair.line;
        const line::Xy stripsEnd = bench.placeOf(was.length() + before.stack.runsPastEnd_m);
        const QPoint from = bench.gripOf(1);
        const QPointF way = bench.view.transform().toScreen(bench.placeOf(was.length() - 0.06)) -
                            bench.view.transform().toScreen(bench.placeOf(was.length()));
        bench.drag(from, from + way.toPoint());
        bench.release(from + way.toPoint());
        QVERIFY(bench.oneStep(QStringLiteral("Move trim line at the end")));
        const auto& after = bench.shown.piece;
        const double length_m = bench.shown.plan->line.fair.line.length();
        QVERIFY2(std::abs(was.length() - length_m - 0.06) < 0.008,
                 qPrintable(QString::number(was.length() - length_m)));
        QVERIFY(std::abs(after.stack.runsPastEnd_m - before.stack.runsPastEnd_m - (was.length() - length_m)) < 0.002);
        const auto& point = after.line.points.back();
        QVERIFY(std::abs(was.nearest(point.x_m, point.y_m).distance_m) < after.line.readTo_m);
        QVERIFY(apart(stripsEnd, bench.placeOf(length_m + after.stack.runsPastEnd_m)) < 0.005);
        QVERIFY(after.holding.stations == before.holding.stations);
        QVERIFY(after.line.points.front() == before.line.points.front());
        QCOMPARE(after.stack.runsPastStart_m, before.stack.runsPastStart_m);
    }

    void TheTrimLineAtTheStartLeavesEverythingAtItsPlaceOnTheWood() {
        for (const double by_m : {0.04, -0.03}) {
            Bench bench;
            auto& piece = bench.shown.piece;
            piece.form.carriesOnStart_m = 0.08;
            piece.holding.stations[1].kind = model::HoldKind::strap;
            piece.holding.stations[1].strap.to_m = 0.5;
            bench.shown.plan = std::make_shared<plan::Plan>(plan::makePlan(piece, plan::shopOf(bench.boat)));
            const auto before = bench.shown;
            const Change change = edits::moveTrim(before, edits::TrimLine::start, by_m, QStringLiteral("m"));
            const auto after = plan::makePlan(change.after, plan::shopOf(bench.boat));
            const line::Line& was = before.plan->line.fair.line;
            const line::Line& now = after.line.fair.line;
            const auto same = [&](double was_m, double now_m) {
                const line::Place a = was.at(was_m);
                const line::Place b = now.at(now_m);
                return std::hypot(a.x_m - b.x_m, a.y_m - b.y_m) < 0.004;
            };
            for (size_t i = 0; i < piece.holding.stations.size(); ++i) {
                QVERIFY(same(before.piece.holding.stations[i].at_m, change.after.holding.stations[i].at_m));
            }
            QVERIFY(same(*before.piece.holding.stations[1].strap.to_m, *change.after.holding.stations[1].strap.to_m));
            QVERIFY(same(before.piece.stack.pins[0].at_m, change.after.stack.pins[0].at_m));
            QVERIFY(same(before.piece.stack.widths[1].at_m, change.after.stack.widths[1].at_m));
            QVERIFY(same(-before.piece.stack.runsPastStart_m, -change.after.stack.runsPastStart_m));
            QVERIFY(same(-*before.piece.form.carriesOnStart_m, -*change.after.form.carriesOnStart_m));
            QVERIFY(
                same(was.length() + before.piece.stack.runsPastEnd_m, now.length() + change.after.stack.runsPastEnd_m));
        }
    }

    void ATrimLineStaysClearOfTheNeighbouringPoint() {
        Bench bench;
        const auto& feet = bench.shown.plan->line.fair.points;
        const Change end = edits::moveTrim(bench.shown, edits::TrimLine::end, 0, {});
        const auto& last = end.after.line.points.back();
        const line::Line& line = bench.shown.plan->line.fair.line;
        QVERIFY(line.nearest(last.x_m, last.y_m).at_m > feet[feet.size() - 2].at_m + 0.005);
        const Change start = edits::moveTrim(bench.shown, edits::TrimLine::start, line.length(), {});
        const auto& first = start.after.line.points.front();
        QVERIFY(line.nearest(first.x_m, first.y_m).at_m < feet[1].at_m - 0.005);
        // As far out as it is pulled, a plan can be made of it, and the strips still reach it.
        for (const auto which : {edits::TrimLine::start, edits::TrimLine::end}) {
            const Change far = edits::moveTrim(bench.shown, which, which == edits::TrimLine::start ? -50 : 50, {});
            QVERIFY(far.after.stack.runsPastStart_m >= 0 && far.after.stack.runsPastEnd_m >= 0);
            (void)plan::makePlan(far.after, plan::shopOf(bench.boat));
        }
        // Where it stands, nothing changes.
        QVERIFY(edits::moveTrim(bench.shown, edits::TrimLine::end, line.length(), {}).after == bench.shown.piece);
    }

    void KeysWalkToFeetBlocksAndTrimLinesAndNudgeThem() {
        Propped bench;
        QWidget window;
        bench.view.setParent(&window);
        window.show();
        QVERIFY(QTest::qWaitForWindowExposed(&window, fayline::test::patience_ms));
        bench.view.setFocus();
        SOON_VERIFY(bench.view.hasFocus());
        QString said;
        QObject::connect(&bench.view, &FormView::selectionSaid, &bench, [&](const QString& words) { said = words; });
        std::set<QString> nudged;
        for (int i = 0; i < 60; ++i) {
            QTest::keyClick(&bench.view, Qt::Key_N);
            if (said.isEmpty()) break;
            const bool ours = said.startsWith(QStringLiteral("foot of")) || said.startsWith(QStringLiteral("block")) ||
                              said.startsWith(QStringLiteral("trim line"));
            if (!ours) continue;
            const auto before = bench.shown.piece;
            bench.changes.clear();
            QTest::keyClick(&bench.view, Qt::Key_Right);
            QTest::keyClick(&bench.view, Qt::Key_Right);
            QCOMPARE(bench.changes.size(), size_t{2});
            QCOMPARE(bench.changes[0].merges, bench.changes[1].merges);
            QVERIFY(!(bench.shown.piece == before));
            QVERIFY(bench.view.accessibleDescription().contains(QStringLiteral("Selected: ")));
            nudged.insert(bench.changes[1].name);
        }
        for (const char* name : {"Move foot of prop 3", "Move foot of prop 4", "Move block 1", "Move block 3",
                                 "Move trim line at the start", "Move trim line at the end"}) {
            QVERIFY2(nudged.contains(QString(name)), name);
        }
        bench.view.setParent(nullptr);
    }

    void TwoNudgesOfATrimLineAddUpThoughNoPlanCameBetween() {
        Bench bench;
        const Shown before = bench.shown;
        const double length_m = before.plan->line.fair.line.length();
        const double step_m = edits::stationStep(before.display.lengths);
        QVERIFY(length_m > 0);
        FormView view;
        view.resize(900, 600);
        view.show(before);
        Shown now = before;
        QObject::connect(&view, &FormView::changeAsked, &bench, [&](const Change& change) {
            now.piece = change.after;
            now.outOfDate = true;
            view.show(now);
        });
        QTest::mouseClick(&view, Qt::LeftButton, {}, [&] {
            const Drawing drawing = drawingOf(*before.plan, before.piece.line.stripsOn);
            return sheetOf(before, drawing, view.transform(), view.size(), ViewChoice{},
                           fontsFrom(tabularFont(view.font())), false)
                .grips[1]
                .toPoint();
        }());
        for (int i = 0; i < 4; ++i) QTest::keyClick(&view, Qt::Key_Left);
        QVERIFY(std::abs(now.piece.stack.runsPastEnd_m - before.piece.stack.runsPastEnd_m - 4 * step_m) < 1e-9);
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, FormviewHoldingHand>(argc, argv);
}
#include "formview_holding_hand_test.moc"
