// What is shown of a boat, without a window: the newest wins, what is old says so, the other pieces' marks never in the
// way of the piece on the table, and what was stopped begins again when asked.
#include "app/window/planning.hpp"

#include <QSignalSpy>
#include <QTest>
#include <QThread>
#include <algorithm>

#include "core/io/file.hpp"
#include "core/math/count.hpp"
#include "tests/app/patience.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

constexpr int day_ms = 24 * 3600 * 1000;
const QString marram = QString(FAYLINE_SAMPLES) + "/marram.fayline";

// Nothing waits for the hand to rest, and nothing grows old or is told by itself.
constexpr PlanningTimes atOnce{.restsAfter_ms = 0, .awaits_ms = 33, .oldAfter_ms = day_ms, .toldAfter_ms = day_ms};

// Studies that find nothing, and take no time.
std::optional<plan::Plan> noStudies(const model::Piece&, const plan::Shop&, const plan::Plan& plan,
                                    const std::atomic<bool>&, const plan::OnPart&) {
    return plan;
}

// Studies that end only when they are given up.
struct Endless {
    std::atomic<int> begun = 0;
    std::atomic<bool> ends = false;
    PlanningMethods methods() {
        PlanningMethods methods;
        methods.deepen = [this](const model::Piece&, const plan::Shop&, const plan::Plan& plan,
                                const std::atomic<bool>& stop, const plan::OnPart&) -> std::optional<plan::Plan> {
            ++begun;
            while (!stop && !ends) QThread::msleep(1);
            return stop ? std::nullopt : std::optional(plan);
        };
        return methods;
    }
};

// Plans that are made while the test lets them.
struct Slow {
    std::atomic<bool> open = false;
    PlanningMethods methods() {
        PlanningMethods methods;
        methods.make = [this](const model::Piece& piece, const plan::Shop& shop, const plan::Plan* before,
                              const std::atomic<bool>& stop) -> std::optional<plan::Plan> {
            while (!stop && !open) QThread::msleep(1);
            return plan::makePlan(piece, shop, before, stop);
        };
        methods.deepen = noStudies;
        return methods;
    }
};

struct Table {
    Document document;
    Table() { document.open(marram); }
    const model::Piece& piece(int index = 0) const { return document.boat().pieces[size_t(index)]; }
    void move(double by_m) {
        model::Piece after = piece();
        after.line.points[2].y_m += by_m;
        document.changePiece(0, {"Move", "drag", after});
    }
    void spoil(int index) {
        model::Piece after = piece(index);
        after.line.points[1] = after.line.points[0];
        model::Boat boat = document.boat();
        boat.pieces[size_t(index)] = after;
        document.changeBoat("Double", {}, boat);
    }
};

PieceMark planned(const model::Boat& boat, int index) {
    return markOf(plan::makePlan(boat.pieces[size_t(index)], plan::shopOf(boat)));
}

PlanningMethods plansAlone() {
    PlanningMethods methods;
    methods.deepen = noStudies;
    return methods;
}

bool isOf(const Shown& shown, const model::Piece& piece) {
    plan::Shop shop;
    shop.display = shown.display;
    shop.species = shown.species;
    shop.adhesives = *shown.adhesives;
    const plan::Plan expected = plan::makePlan(piece, shop);
    return std::ranges::equal(shown.plan->line.fair.points, expected.line.fair.points,
                              [](const line::Foot& a, const line::Foot& b) { return a.misfit_m == b.misfit_m; });
}

}  // namespace

class PlanningTest : public QObject {
    Q_OBJECT

private slots:
    void newestStateWinsAndIsShownWithItsPiece() {
        Table table;
        Planning planning(table.document, atOnce, plansAlone());
        for (int i = 0; i < 50; ++i) {
            table.move(0.0005);
            if (i % 3 == 0) QCoreApplication::processEvents();
        }
        SOON_VERIFY(planning.isAnswered());
        QVERIFY(planning.shown().plan && !planning.shown().outOfDate);
        QVERIFY(planning.shown().piece == table.piece());
        QVERIFY(isOf(planning.shown(), table.piece()));
    }

    void answerOfThePieceBeforeIsNotShown() {
        Table table;
        Slow slow;
        Planning planning(table.document, atOnce, slow.methods());
        table.document.setCurrentPiece(1);
        QVERIFY(!planning.shown().plan);
        bool other = false;
        connect(&planning, &Planning::shownChanged, this, [&] {
            other = other || (planning.shown().plan && planning.shown().plan->piece != table.piece(1).name);
        });
        slow.open = true;
        SOON_VERIFY(planning.shown().plan);
        QVERIFY(!other);
    }

    void planOfAnEarlierStateIsOutOfDateUntilTheNewestIsThere() {
        Table table;
        Slow slow;
        PlanningTimes times = atOnce;
        times.oldAfter_ms = 0;
        Planning planning(table.document, times, slow.methods());
        slow.open = true;
        SOON_VERIFY(planning.shown().plan && planning.isAnswered());
        slow.open = false;
        const auto before = planning.shown().plan;
        table.move(0.001);
        SOON_VERIFY(planning.shown().outOfDate);
        QVERIFY(planning.shown().reason.isEmpty());
        QCOMPARE(planning.shown().plan, before);
        QVERIFY(planning.shown().piece == table.piece());
        table.move(0.001);
        slow.open = true;
        SOON_VERIFY(planning.isAnswered());
        QVERIFY(!planning.shown().outOfDate);
        QVERIFY(isOf(planning.shown(), table.piece()));
    }

    void planIsNotOutOfDateBeforeItsTime() {
        Table table;
        Slow slow;
        Planning planning(table.document, atOnce, slow.methods());  // a plan is old after a day
        slow.open = true;
        SOON_VERIFY(planning.shown().plan && planning.isAnswered());
        slow.open = false;
        table.move(0.001);
        SOON_VERIFY(planning.shown().piece == table.piece());  // shown without its plan, after two frames
        QVERIFY(!planning.isAnswered());
        QVERIFY(!planning.shown().outOfDate);
        slow.open = true;
    }

    void pieceThatCannotBePlannedKeepsItsLastPlanAndSaysWhy() {
        Table table;
        Planning planning(table.document, atOnce, plansAlone());
        SOON_VERIFY(planning.isAnswered());
        const auto good = planning.shown().plan;
        table.spoil(0);
        SOON_VERIFY(!planning.shown().reason.isEmpty());
        QVERIFY(planning.shown().outOfDate);
        QVERIFY(planning.shown().reasonPath.startsWith("line.points["));
        QCOMPARE(planning.marks()[0].worst, std::optional(plan::Severity::stop));
        table.document.undoStack().undo();
        SOON_VERIFY(planning.isAnswered());
        QVERIFY(!planning.shown().outOfDate && planning.shown().reason.isEmpty());
    }

    // Whatever is told of a plan is told in one set of units.
    void changedUnitsComeWithOneAndTheSameShown() {
        Table table;
        Planning planning(table.document, atOnce, plansAlone());
        SOON_VERIFY(planning.isAnswered());
        model::Boat boat = table.document.boat();
        boat.display = units::metricShop;
        QVERIFY(table.document.boat().display != boat.display);
        table.document.changeBoat("Change units", {}, boat);
        SOON_VERIFY(planning.isAnswered() && planning.shown().plan->display == boat.display);
        QVERIFY(planning.shown().display == boat.display);
    }

    void everyPieceGetsTheMarkOfItsPlanWithItsStudies() {
        Table table;
        std::atomic<int> studied = 0;
        PlanningMethods methods;
        methods.deepen = [&](const model::Piece& piece, const plan::Shop& shop, const plan::Plan& plan,
                             const std::atomic<bool>& stop, const plan::OnPart& onPart) {
            ++studied;
            return noStudies(piece, shop, plan, stop, onPart);
        };
        table.spoil(2);
        Planning planning(table.document, atOnce, methods);
        QSignalSpy changed(&planning, &Planning::marksChanged);
        const model::Boat& boat = table.document.boat();
        SOON_COMPARE(changed.count(), int(boat.pieces.size()) - 1);
        QCOMPARE(studied.load(), int(boat.pieces.size()) - 1);  // all but the one that cannot be planned
        const std::vector<PieceMark> marks = planning.marks();
        QVERIFY(marks[0] == planned(boat, 0));
        QVERIFY(marks[1] == planned(boat, 1));
        QCOMPARE(marks[2].worst, std::optional(plan::Severity::stop));
        QVERIFY2(marks[2].why.startsWith("This piece cannot be planned. Fix first: "), qPrintable(marks[2].why));
        QVERIFY(marks[3] == planned(boat, 3));
    }

    void onlyWhatHasChangedIsMarkedAgain() {
        Table table;
        Planning planning(table.document, atOnce, plansAlone());
        QSignalSpy changed(&planning, &Planning::marksChanged);
        const int others = math::countOf(table.document.boat().pieces) - 1;
        SOON_COMPARE(changed.count(), others);
        table.spoil(1);
        SOON_VERIFY(planning.marks()[1].worst);
        QCOMPARE(planning.marks()[1].worst, std::optional(plan::Severity::stop));
        QCOMPARE(changed.count(), others + 1);
    }

    void nothingOfOtherPiecesIsBegunWhileTheHandMoves() {
        Table table;
        PlanningTimes times = atOnce;
        times.restsAfter_ms = day_ms;
        const std::string name = table.piece().name;
        std::atomic<int> others = 0;
        PlanningMethods methods = plansAlone();
        methods.make = [&](const model::Piece& piece, const plan::Shop& shop, const plan::Plan* before,
                           const std::atomic<bool>& stop) {
            others += piece.name != name;
            return plan::makePlan(piece, shop, before, stop);
        };
        Planning planning(table.document, times, methods);
        for (int i = 0; i < 5; ++i) {
            table.move(0.001);
            SOON_VERIFY(planning.isAnswered());
        }
        QCOMPARE(others.load(), 0);
    }

    // The mark under way would never end; the table's request is answered all the same, and the mark begun again.
    void markIsGivenUpForTheTable() {
        Table table;
        std::atomic<int> begun = 0;
        std::atomic<bool> ends = false;
        const std::string name = table.piece().name;
        PlanningMethods methods = plansAlone();
        methods.make = [&](const model::Piece& piece, const plan::Shop& shop, const plan::Plan* before,
                           const std::atomic<bool>& stop) -> std::optional<plan::Plan> {
            if (piece.name != name) {
                ++begun;
                while (!stop && !ends) QThread::msleep(1);
            }
            return plan::makePlan(piece, shop, before, stop);
        };
        Planning planning(table.document, atOnce, methods);
        QSignalSpy changed(&planning, &Planning::marksChanged);
        SOON_COMPARE(begun.load(), 1);
        const auto before = planning.shown().plan;
        table.move(0.001);
        SOON_VERIFY(planning.isAnswered() && planning.shown().plan != before);
        SOON_COMPARE(begun.load(), 2);
        QCOMPARE(changed.count(), 0);
        ends = true;
        SOON_COMPARE(changed.count(), math::countOf(table.document.boat().pieces) - 1);
    }

    void whatIsUnderWayIsToldAndStoppedAndBegunAgain() {
        Table table;
        Endless endless;
        PlanningTimes times = atOnce;
        times.toldAfter_ms = 0;
        Planning planning(table.document, times, endless.methods());
        QSignalSpy told(&planning, &Planning::underWayChanged);
        SOON_COMPARE(endless.begun.load(), 1);
        SOON_VERIFY(planning.isAnswered() && !told.isEmpty() &&
                    told.last()[0].toString() == "Calculating: suggested stations");
        planning.stop();
        QVERIFY(planning.shown().stopped);
        QVERIFY(told.last()[0].toString().isEmpty());
        QCOMPARE(endless.begun.load(), 1);  // nor are the marks begun
        endless.ends = true;
        planning.calculate();
        QVERIFY(!planning.shown().stopped);
        SOON_COMPARE(endless.begun.load(), 1 + math::countOf(table.document.boat().pieces));
        SOON_VERIFY(planning.marks()[3] == planned(table.document.boat(), 3));
    }

    void changeBeginsWhatWasStopped() {
        Table table;
        Endless endless;
        Planning planning(table.document, atOnce, endless.methods());
        SOON_COMPARE(endless.begun.load(), 1);
        planning.stop();
        table.move(0.001);
        SOON_COMPARE(endless.begun.load(), 2);
        SOON_VERIFY(!planning.shown().stopped);
    }

    void boatWithoutAPieceIsShownEmpty() {
        Table table;
        Planning planning(table.document, atOnce, plansAlone());
        while (!table.document.boat().pieces.empty()) table.document.removePiece(0);
        QCOMPARE(planning.shown().pieceIndex, -1);
        QVERIFY(!planning.shown().plan && planning.isAnswered() && planning.marks().empty());
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, PlanningTest>(argc, argv);
}
#include "planning_test.moc"
