// What a hand does on the drawing: points and stations dragged, nudged, added, removed; places pointed at.
#include <QMenu>
#include <QtTest>
#include <cmath>

#include "core/math/count.hpp"
#include "core/units/length.hpp"
#include "core/units/units.hpp"
#include "tests/app/formview_samples.hpp"
#include "tests/app/patience.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

// Moves the mouse over a widget without a button held.
void pointAt(QWidget& widget, QPointF at) {
    QMouseEvent move(QEvent::MouseMove, at, widget.mapToGlobal(at), Qt::NoButton, Qt::NoButton, Qt::NoModifier);
    QCoreApplication::sendEvent(&widget, &move);
}

void drag(QWidget& widget, QPoint from, QPoint to, Qt::KeyboardModifiers held = Qt::NoModifier) {
    QTest::mousePress(&widget, Qt::LeftButton, held, from);
    for (const double share : {0.3, 0.7, 1.0}) {
        const QPointF at = QPointF(from) + QPointF(to - from) * share;
        QMouseEvent move(QEvent::MouseMove, at, widget.mapToGlobal(at), Qt::NoButton, Qt::LeftButton, held);
        QCoreApplication::sendEvent(&widget, &move);
    }
}

bool onStep(double value_m, double step_m) {
    return std::abs(value_m / step_m - std::round(value_m / step_m)) < 1e-9;
}

}  // namespace

class FormviewHand : public QObject {
    Q_OBJECT

private slots:
    void ThePointUnderTheMouseIsTakenAtEveryScale() {
        for (const double zoom : {0.5, 1.0, 4.0, 12.0}) {
            Bench bench;
            const int count = math::countOf(bench.shown.piece.line.points);
            for (int i = 0; i < count; ++i) {
                bench.view.fitToWindow();
                // Bring the point to the middle of the view, so that zooming keeps it there.
                const QPoint middle = bench.view.rect().center();
                drag(bench.view, QPoint(2, 300), QPoint(2, 300) + middle - bench.pointAt(i));
                QTest::mouseRelease(&bench.view, Qt::LeftButton, {}, QPoint(2, 300) + middle - bench.pointAt(i));
                bench.view.zoomBy(zoom);
                const QPoint at = bench.pointAt(i);
                QTest::mouseClick(&bench.view, Qt::LeftButton, {}, at + QPoint(zoom < 1 ? 0 : 3, 0));
                QCOMPARE(bench.view.selectedPoint(), i);
            }
            QVERIFY(bench.changes.empty());
        }
    }

    void ADragAsksForMergedChangesWorthExactlyWhatIsWritten() {
        Bench bench;
        const auto before = bench.shown.piece;
        const QPoint from = bench.pointAt(6);
        drag(bench.view, from, from + QPoint(20, -9));
        QVERIFY(bench.changes.size() >= 2);
        QCOMPARE(bench.ended, 0);
        QTest::mouseRelease(&bench.view, Qt::LeftButton, {}, from + QPoint(20, -9));
        QCOMPARE(bench.ended, 1);
        QCOMPARE(bench.changes.back().name, QStringLiteral("Move WL 18"));
        for (const Change& change : bench.changes) {
            QCOMPARE(change.merges, bench.changes.front().merges);
            QVERIFY(!change.merges.isEmpty());
        }
        const auto& moved = bench.shown.piece.line.points[6];
        const auto& was = before.line.points[6];
        const double step_m = before.line.readTo_m;
        const double scale = bench.view.transform().pixelsPerMetre;
        QVERIFY(std::abs(moved.x_m - was.x_m - 20 / scale) <= step_m / 2 + 1e-9);
        QVERIFY(std::abs(moved.y_m - was.y_m - 9 / scale) <= step_m / 2 + 1e-9);
        QVERIFY(onStep(moved.x_m, step_m));
        QVERIFY(onStep(moved.y_m, step_m));
        QCOMPARE(moved.x_m, units::readLength(moved.written[0], bench.boat.display.lengths));
        QCOMPARE(moved.y_m, units::readLength(moved.written[1], bench.boat.display.lengths));
        // Nothing but the point has changed.
        auto rest = bench.shown.piece;
        rest.line.points[6] = was;
        QVERIFY(rest == before);
    }

    void TwoDragsAreTwoChanges() {
        Bench bench;
        for (int i = 0; i < 2; ++i) {
            const QPoint from = bench.pointAt(6);
            drag(bench.view, from, from + QPoint(12, 0));
            QTest::mouseRelease(&bench.view, Qt::LeftButton, {}, from + QPoint(12, 0));
        }
        QCOMPARE(bench.ended, 2);
        QVERIFY(bench.changes.front().merges != bench.changes.back().merges);
    }

    void ShiftKeepsOneCoordinateAsItWasWritten() {
        Bench bench;
        const auto was = bench.shown.piece.line.points[6];
        const QPoint from = bench.pointAt(6);
        drag(bench.view, from, from + QPoint(20, -9), Qt::ShiftModifier);
        const auto& moved = bench.shown.piece.line.points[6];
        QVERIFY(moved.x_m != was.x_m);
        QCOMPARE(moved.y_m, was.y_m);
        QCOMPARE(moved.written[1], was.written[1]);
    }

    void AltLeavesTheReadingStep() {
        Bench bench("minimal");
        bench.shown.piece.line.readTo_m = 0.010;
        bench.view.show(bench.shown);
        const QPoint from = bench.pointAt(1);
        drag(bench.view, from, from + QPoint(13, 0), Qt::AltModifier);
        const double x_m = bench.shown.piece.line.points[1].x_m;
        QVERIFY(!onStep(x_m, 0.010));
        QVERIFY(std::abs(x_m - bench.boat.pieces[0].line.points[1].x_m - 13 / bench.view.transform().pixelsPerMetre) <
                0.0001);
    }

    void EscapePutsThePointBack() {
        Bench bench;
        const auto before = bench.shown.piece;
        const QPoint from = bench.pointAt(6);
        drag(bench.view, from, from + QPoint(30, 10));
        QVERIFY(!(bench.shown.piece == before));
        QTest::keyClick(&bench.view, Qt::Key_Escape);
        QVERIFY(bench.shown.piece == before);
        QCOMPARE(bench.changes.back().merges, bench.changes.front().merges);
        QCOMPARE(bench.ended, 1);
        const size_t asked = bench.changes.size();
        pointAt(bench.view, from + QPoint(60, 20));
        QTest::mouseRelease(&bench.view, Qt::LeftButton, {}, from + QPoint(60, 20));
        QCOMPARE(bench.changes.size(), asked);
    }

    void AClickMovesNothing() {
        Bench bench;
        QTest::mouseClick(&bench.view, Qt::LeftButton, {}, bench.pointAt(4));
        QVERIFY(bench.changes.empty());
        QCOMPARE(bench.ended, 0);
        QCOMPARE(bench.view.selectedPoint(), 4);
    }

    void ArrowsNudgeByTheReadingStepAndMergeUntilTheHandRests() {
        Bench bench;
        const auto was = bench.shown.piece.line.points[3];
        const double step_m = bench.shown.piece.line.readTo_m;
        bench.view.selectPoint(3);
        QTest::keyClick(&bench.view, Qt::Key_Right);
        QTest::keyClick(&bench.view, Qt::Key_Right);
        QTest::keyClick(&bench.view, Qt::Key_Up, Qt::ShiftModifier);
        const auto& moved = bench.shown.piece.line.points[3];
        QVERIFY(std::abs(moved.x_m - was.x_m - 2 * step_m) < 1e-12);
        QVERIFY(std::abs(moved.y_m - was.y_m - 10 * step_m) < 1e-12);
        QCOMPARE(bench.changes.size(), size_t{3});
        QCOMPARE(bench.changes[0].merges, bench.changes[2].merges);
        QCOMPARE(bench.ended, 0);
        SOON_COMPARE(bench.ended, 1);
        QTest::keyClick(&bench.view, Qt::Key_Left);
        QVERIFY(bench.changes[3].merges != bench.changes[2].merges);
    }

    void NWalksThePointsThenTheStationsAndTabLeavesTheDrawing() {
        Bench bench;
        QWidget window;
        QPushButton after(&window);
        bench.view.setParent(&window);
        QWidget::setTabOrder(&bench.view, &after);
        window.show();
        QVERIFY(QTest::qWaitForWindowExposed(&window, fayline::test::patience_ms));
        bench.view.setFocus();
        SOON_VERIFY(bench.view.hasFocus());
        const int points = math::countOf(bench.shown.piece.line.points);
        const int stations = math::countOf(bench.shown.piece.holding.stations);
        for (int i = 0; i < points; ++i) {
            QTest::keyClick(&bench.view, Qt::Key_N);
            QCOMPARE(bench.view.selectedPoint(), i);
        }
        double last_m = -1e9;
        for (int i = 0; i < stations; ++i) {
            QTest::keyClick(&bench.view, Qt::Key_N);
            QVERIFY(bench.view.selectedStation() >= 0);
            const double at_m = bench.shown.piece.holding.stations[bench.view.selectedStation()].at_m;
            QVERIFY(at_m >= last_m);
            last_m = at_m;
        }
        for (int last = 0; last < 3; ++last) {  // the two trim lines, then nothing
            QTest::keyClick(&bench.view, Qt::Key_N);
            QCOMPARE(bench.view.selectedPoint(), -1);
            QCOMPARE(bench.view.selectedStation(), -1);
            QCOMPARE(bench.view.accessibleDescription().contains("Selected"), last < 2);
        }
        QTest::keyClick(&bench.view, Qt::Key_N);
        QTest::keyClick(&bench.view, Qt::Key_N);
        QTest::keyClick(&bench.view, Qt::Key_P);
        QCOMPARE(bench.view.selectedPoint(), 0);
        QVERIFY(bench.view.accessibleDescription().contains(QStringLiteral("N and P choose")));
        QTest::keyClick(&bench.view, Qt::Key_Tab);
        QVERIFY(after.hasFocus());
        QCOMPARE(bench.view.selectedPoint(), 0);
        bench.view.setParent(nullptr);
    }

    void AStationIsDraggedAlongTheLineToAWholeSixteenth() {
        Bench bench;
        const auto before = bench.shown.piece;
        const int index = bench.shown.plan->holding.stations.at(3).index;
        const auto place = bench.shown.plan->holding.stations.at(3);
        const QPointF foot = bench.view.transform().toScreen(place.onOutside);
        const line::Place target = bench.shown.plan->line.fair.line.at(place.at_m + 0.1);
        const line::Place here = bench.shown.plan->line.fair.line.at(place.at_m);
        const QPointF way = bench.view.transform().toScreen({target.x_m, target.y_m}) -
                            bench.view.transform().toScreen({here.x_m, here.y_m});
        // Grasped by its handle, away from the stack.
        const QPointF line = bench.view.transform().toScreen(place.onLine);
        const QPointF out = (foot - line) / QLineF(foot, line).length();
        const QPoint from = (foot + out * 20).toPoint();
        drag(bench.view, from, from + way.toPoint());
        QTest::mouseRelease(&bench.view, Qt::LeftButton, {}, from + way.toPoint());
        QVERIFY(!bench.changes.empty());
        QCOMPARE(bench.changes.back().name, QStringLiteral("Move clamp 4"));
        QCOMPARE(bench.ended, 1);
        const double moved_m = bench.shown.piece.holding.stations[index].at_m;
        QVERIFY(onStep(moved_m, units::sixteenth_m));
        // Along a bend the handle sweeps a longer way than the line: a third of the way is allowed for that.
        QVERIFY2(std::abs(moved_m - place.at_m - 0.1) < 0.035, qPrintable(QString::number(moved_m - place.at_m)));
        auto rest = bench.shown.piece;
        rest.holding.stations[index].at_m = before.holding.stations[index].at_m;
        QVERIFY(rest == before);
    }

    void AStationIsDraggedByItsNumberAlongTheLine() {
        for (const std::string sample : {"marram", "marram_in_place"}) {
            Bench bench(sample);
            const QList<Text> numbers = [&] {
                QList<Text> all;
                for (const Text& text : bench.view.texts()) {
                    if (text.ringed) all << text;
                }
                return all;
            }();
            QCOMPARE(numbers.size(), bench.shown.piece.holding.stations.size());
            for (const Text& number : numbers) {
                Bench fresh(sample);
                const double was_m = fresh.shown.piece.holding.stations[number.station].at_m;
                const QPoint from = number.place.center().toPoint();
                pointAt(fresh.view, from);
                QCOMPARE(fresh.view.cursor().shape(), Qt::OpenHandCursor);
                // As far along the line where the station is as 0.02 m are, and as far again square to it.
                const line::Line line = fresh.shown.plan->line.fair.line;
                const double heading = line.at(was_m).heading_rad;
                const double by_px = 0.02 * fresh.view.transform().pixelsPerMetre;
                const QPointF along(std::cos(heading) * by_px, -std::sin(heading) * by_px);
                const double way = was_m + 0.02 < line.length() ? 1 : -1;
                const QPointF to = QPointF(from) + along * way + QPointF(-along.y(), along.x());
                drag(fresh.view, from, to.toPoint());
                QTest::mouseRelease(&fresh.view, Qt::LeftButton, {}, to.toPoint());
                QCOMPARE(fresh.ended, 1);
                const double moved_m = fresh.shown.piece.holding.stations[number.station].at_m - was_m;
                const double pixel_m = 1 / fresh.view.transform().pixelsPerMetre;
                QVERIFY2(std::abs(moved_m - 0.02 * way) < 0.005 + 2 * pixel_m, qPrintable(number.words));
            }
        }
    }

    void EscapePutsAStationBack() {
        Bench bench;
        const auto before = bench.shown.piece;
        const auto place = bench.shown.plan->holding.stations.at(3);
        const QPoint from = bench.view.transform().toScreen(place.onOutside).toPoint();
        bench.view.fitToWindow();
        drag(bench.view, from, from + QPoint(-30, -30));
        if (bench.view.selectedStation() < 0) QFAIL("the station was not taken");
        QVERIFY(!(bench.shown.piece == before));
        QTest::keyClick(&bench.view, Qt::Key_Escape);
        QVERIFY(bench.shown.piece == before);
    }

    void HoveringNamesThePlaceWithinAPixel() {
        Bench bench;
        const double length_m = bench.shown.plan->line.fair.line.length();
        for (const double share : {0.02, 0.3, 0.55, 0.98}) {
            bench.hovered.clear();
            pointAt(bench.view, bench.onLine(share * length_m));
            QVERIFY(!bench.hovered.empty() && bench.hovered.back());
            const double away_px =
                std::abs(*bench.hovered.back() - share * length_m) * bench.view.transform().pixelsPerMetre;
            QVERIFY2(away_px <= 1, qPrintable(QString::number(away_px)));
        }
        QEvent leave(QEvent::Leave);
        QCoreApplication::sendEvent(&bench.view, &leave);
        QVERIFY(!bench.hovered.back());
    }

    void HoveringReachesWhereTheStripsRunPast() {
        Bench bench;
        const double past_m = bench.shown.plan->line.fair.line.length() + 0.08;
        pointAt(bench.view, bench.onLine(past_m));
        QVERIFY(!bench.hovered.empty() && bench.hovered.back());
        QVERIFY(std::abs(*bench.hovered.back() - past_m) * bench.view.transform().pixelsPerMetre <= 1.5);
    }

    void TheReadingNeverCoversTheCursorNorLeavesTheView() {
        Bench bench;
        for (int x = 4; x < 900; x += 64) {
            for (int y = 4; y < 600; y += 64) {
                pointAt(bench.view, QPoint(x, y));
                bench.view.grab();
                QVERIFY(!bench.view.reading().isNull());
                QVERIFY(!bench.view.reading().contains(QPointF(x, y)));
                QVERIFY(QRectF(bench.view.rect()).contains(bench.view.reading()));
            }
        }
    }

    void TheReadingGoesWithThePointerAndNoToolTipDoublesIt() {
        Bench bench;
        const QPoint at = bench.pointAt(4);
        pointAt(bench.view, at);
        bench.view.grab();
        QVERIFY(!bench.view.reading().isNull());
        QHelpEvent help(QEvent::ToolTip, at, bench.view.mapToGlobal(at));
        QCoreApplication::sendEvent(&bench.view, &help);
        QVERIFY(!help.isAccepted());
        for (const QEvent::Type gone : {QEvent::Leave, QEvent::WindowDeactivate, QEvent::Hide}) {
            pointAt(bench.view, at);
            bench.view.grab();
            QVERIFY(!bench.view.reading().isNull());
            QEvent event(gone);
            QCoreApplication::sendEvent(&bench.view, &event);
            bench.view.grab();
            QVERIFY(bench.view.reading().isNull());
            QVERIFY(!bench.hovered.back());
        }
    }

    void APlaceLitFromOutsideIsDrawnAndNotSentBack() {
        Bench bench;
        const QImage before = bench.view.grab().toImage();
        bench.view.lightPlace(0.5);
        QVERIFY(bench.view.grab().toImage() != before);
        QVERIFY(bench.hovered.empty());
        bench.view.lightPlace(std::nullopt);
        QVERIFY(bench.view.grab().toImage() == before);
    }

    void AClickOnTheStackSelectsThePlace() {
        Bench bench;
        const double at_m =
            0.5 * (bench.shown.plan->line.fair.points[8].at_m + bench.shown.plan->line.fair.points[9].at_m);
        QTest::mouseClick(&bench.view, Qt::LeftButton, {}, bench.onLine(at_m));
        QVERIFY(!bench.selected.empty() && bench.selected.back());
        QVERIFY(std::abs(*bench.selected.back() - at_m) * bench.view.transform().pixelsPerMetre <= 1);
    }

    void AClickOnAStripTellsWhichAndMarksIt() {
        Bench bench;
        QSignalSpy chosen(&bench.view, &FormView::stripSelected);
        bench.view.zoomBy(6);
        const plan::Plan& plan = *bench.shown.plan;
        // In the middle of a strip, at the place that lies in the middle of the view.
        const std::size_t strip = 3;
        const auto& inside = plan.stack.faces[strip - 1];
        const auto& outside = plan.stack.faces[strip];
        int clicked = 0;
        for (std::size_t i = 0; i < inside.size() && clicked == 0; ++i) {
            const line::Xy middle{(inside[i].x_m + outside[i].x_m) / 2, (inside[i].y_m + outside[i].y_m) / 2};
            const QPoint at = bench.view.transform().toScreen(middle).toPoint();
            if (!bench.view.rect().adjusted(60, 60, -60, -60).contains(at)) continue;
            chosen.clear();
            QTest::mouseClick(&bench.view, Qt::LeftButton, {}, at);
            if (!chosen.isEmpty()) clicked = chosen.back()[0].toInt();  // else a mark lies there
        }
        QCOMPARE(clicked, int(strip));
        const QImage marked = bench.view.grab().toImage();
        bench.view.selectStrip(0);
        QVERIFY(bench.view.grab().toImage() != marked);
        bench.view.selectStrip(clicked);
        QVERIFY(bench.view.grab().toImage() == marked);
    }

    void ADoubleClickOnTheLineAddsAPointThere() {
        Bench bench;
        const auto before = bench.shown.piece.line.points;
        const double at_m =
            0.5 * (bench.shown.plan->line.fair.points[8].at_m + bench.shown.plan->line.fair.points[9].at_m);
        QTest::mouseDClick(&bench.view, Qt::LeftButton, {}, bench.onLine(at_m));
        const auto& points = bench.shown.piece.line.points;
        QCOMPARE(points.size(), before.size() + 1);
        QCOMPARE(points[9].label, std::string("Pt ") + std::to_string(points.size()));
        QCOMPARE(points[9].x_m, units::readLength(points[9].written[0], bench.boat.display.lengths));
        const double misfit_m = bench.shown.plan->line.fair.points[9].misfit_m;
        QVERIFY(std::abs(misfit_m) < bench.shown.piece.line.readTo_m);
        QCOMPARE(bench.changes.back().name, QStringLiteral("Add Pt ") + QString::number(points.size()));
    }

    void DeleteRemovesWhatIsChosenButLeavesThreePoints() {
        Bench bench;
        const size_t count = bench.shown.piece.line.points.size();
        bench.view.selectPoint(3);
        QTest::keyClick(&bench.view, Qt::Key_Delete);
        QCOMPARE(bench.shown.piece.line.points.size(), count - 1);
        QCOMPARE(bench.view.selectedPoint(), -1);

        Bench few("minimal");
        few.shown.piece.line.points.resize(3);
        few.view.show(few.shown);
        few.view.selectPoint(1);
        QTest::keyClick(&few.view, Qt::Key_Delete);
        QVERIFY(few.changes.empty());
    }

    void TheMenuAddsAStationWhereItWasOpened() {
        Bench bench;
        const double at_m = bench.shown.plan->line.fair.line.length() * 0.5;
        const QPoint at = bench.onLine(at_m) + QPoint(40, -40);
        pointAt(bench.view, at);
        QVERIFY(!bench.hovered.empty() && bench.hovered.back());
        const double hovered_m = *bench.hovered.back();
        QContextMenuEvent open(QContextMenuEvent::Mouse, at, bench.view.mapToGlobal(at));
        QCoreApplication::sendEvent(&bench.view, &open);
        auto* menu = bench.view.findChild<QMenu*>();
        QVERIFY(menu);
        const size_t count = bench.shown.piece.holding.stations.size();
        for (QAction* action : menu->actions()) {
            if (action->text() == QStringLiteral("Add a station here")) action->trigger();
        }
        menu->close();
        QCOMPARE(bench.shown.piece.holding.stations.size(), count + 1);
        QVERIFY(std::abs(bench.shown.piece.holding.stations.back().at_m - hovered_m) <= units::sixteenth_m / 2 + 1e-9);
    }

    void TheWheelZoomsAboutTheCursor() {
        Bench bench;
        const QPointF at(400, 250);
        const line::Xy under = bench.view.transform().toDrawing(at);
        const double before = bench.view.transform().pixelsPerMetre;
        QWheelEvent turn(at, bench.view.mapToGlobal(at), {}, QPoint(0, 240), Qt::NoButton, Qt::NoModifier,
                         Qt::NoScrollPhase, false);
        QCoreApplication::sendEvent(&bench.view, &turn);
        QVERIFY(bench.view.transform().pixelsPerMetre > before * 1.3);
        QVERIFY(QLineF(bench.view.transform().toScreen(under), at).length() < 1e-6);
        QTest::keyClick(&bench.view, Qt::Key_F);
        QVERIFY(std::abs(bench.view.transform().pixelsPerMetre - before) < 1e-9 * before);
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, FormviewHand>(argc, argv);
}
#include "formview_hand_test.moc"
