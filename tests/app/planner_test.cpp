// The planner: never an older result after a newer one, never a stuck window, every failure told in words.
#include "app/window/planner.hpp"

#include <QDeadlineTimer>
#include <QRandomGenerator>
#include <QSignalSpy>
#include <QTest>
#include <QThread>
#include <algorithm>
#include <atomic>
#include <map>
#include <optional>
#include <stdexcept>

#include "core/model/new_piece.hpp"
#include "core/plan/shop.hpp"
#include "tests/app/patience.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

plan::Shop shop() {
    return plan::shopOf(model::Boat{});
}

model::Piece arc(double rise_m) {
    model::Piece piece = model::newPiece("Beam");
    piece.line.points.clear();
    for (int i = 0; i <= 10; ++i) {
        const double x = 0.2 * i;
        model::Point point;
        point.label = std::to_string(i);
        point.x_m = x;
        point.y_m = rise_m * (1 - (x - 1) * (x - 1));
        piece.line.points.push_back(point);
    }
    return piece;
}

// Plans as the core makes them, and studies as `deepen` does.
template <class Deepen>
PlanningMethods deepening(Deepen deepen) {
    PlanningMethods methods;
    methods.deepen = std::move(deepen);
    return methods;
}

// The first study begun ends only when it is stopped; the others at once. `begun` counts them.
PlanningMethods endlessAtFirst(std::atomic<int>& begun) {
    return deepening([&begun](const model::Piece&, const plan::Shop&, const plan::Plan& plan,
                              const std::atomic<bool>& stop, const plan::OnPart&) -> std::optional<plan::Plan> {
        if (++begun > 1) return plan;
        while (!stop) QThread::msleep(1);
        return std::nullopt;
    });
}

}  // namespace

class PlannerTest : public QObject {
    Q_OBJECT

private slots:
    void requestGetsItsPlan() {
        Planner planner;
        QSignalSpy planned(&planner, &Planner::planned);
        const quint64 request = planner.ask(arc(0.1), shop());
        QVERIFY(planned.wait(test::patience_ms));
        QCOMPARE(planned[0][0].toULongLong(), request);
        const auto plan = planned[0][1].value<std::shared_ptr<const plan::Plan>>();
        QVERIFY(plan);
        QCOMPARE(plan->piece, std::string("Beam"));
    }

    void pieceThatCannotBePlannedIsRefusedWithItsPlace() {
        Planner planner;
        QSignalSpy refused(&planner, &Planner::refused);
        model::Piece piece = arc(0.1);
        piece.line.points[3] = piece.line.points[2];
        planner.ask(piece, shop());
        QVERIFY(refused.wait(test::patience_ms));
        QVERIFY2(refused[0][1].toString().startsWith("line.points["), qPrintable(refused[0][1].toString()));
        QVERIFY(!refused[0][2].toString().isEmpty());
    }

    void goodPlanFollowsARefusal() {
        Planner planner;
        QSignalSpy planned(&planner, &Planner::planned);
        model::Piece piece = arc(0.1);
        piece.line.points.resize(2);
        planner.ask(piece, shop());
        const quint64 last = planner.ask(arc(0.1), shop());
        SOON_VERIFY(!planned.isEmpty());
        QCOMPARE(planned.last()[0].toULongLong(), last);
    }

    // Rapid edits, now and then a pause or a broken piece. Every answer must be newer than the one before it, belong to
    // the piece of its number, and the last request must be answered.
    void noOldResultAfterANewerOne() {
        Planner planner;
        std::map<quint64, double> riseOf;
        std::vector<quint64> answers;
        connect(&planner, &Planner::planned, this, [&](quint64 request, std::shared_ptr<const plan::Plan> plan) {
            answers.push_back(request);
            const double top = plan->line.fair.line.at(plan->line.fair.line.length() / 2).y_m;
            QVERIFY2(std::abs(top - riseOf.at(request)) < 0.002,
                     qPrintable(QString("request %1: %2 for %3").arg(request).arg(top).arg(riseOf.at(request))));
        });
        connect(&planner, &Planner::refused, this, [&](quint64 request) {
            answers.push_back(request);
            QCOMPARE(riseOf.at(request), -1.0);
        });
        QRandomGenerator dice(11);
        quint64 last = 0;
        for (int i = 0; i < 200; ++i) {
            const bool broken = dice.bounded(10) == 0;
            const double rise = 0.05 + 0.001 * i;
            model::Piece piece = arc(rise);
            if (broken) piece.line.points.resize(2);
            const quint64 request = planner.ask(piece, shop());
            QVERIFY(request > last);
            last = request;
            riseOf[request] = broken ? -1.0 : rise;
            if (dice.bounded(4) == 0) QTest::qWait(dice.bounded(8));
        }
        SOON_VERIFY(!answers.empty() && answers.back() == last);
        SOON_VERIFY(!planner.isWorking());
        QVERIFY(std::ranges::is_sorted(answers));
        QVERIFY(std::ranges::adjacent_find(answers) == answers.end());
        qInfo("%zu answers to 200 requests", answers.size());
    }

    void whatTakesLongerComesOnceTheHandRests() {
        // What was begun for an earlier one ends only when it is stopped, so that it never comes out first.
        const model::Piece newest = arc(0.2);
        Planner planner(nullptr, 20,
                        deepening([&newest](const model::Piece& piece, const plan::Shop& shop, const plan::Plan& plan,
                                            const std::atomic<bool>& stop,
                                            const plan::OnPart& onPart) -> std::optional<plan::Plan> {
                            while (piece != newest && !stop) QThread::msleep(1);
                            return plan::deepenStepwise(piece, shop, plan, stop, onPart);
                        }));
        QSignalSpy planned(&planner, &Planner::planned);
        QSignalSpy studied(&planner, &Planner::studied);
        QSignalSpy finished(&planner, &Planner::finished);
        for (int i = 0; i < 5; ++i) planner.ask(arc(0.1 + 0.01 * i), shop());
        const quint64 last = planner.ask(newest, shop());
        SOON_VERIFY(!finished.isEmpty());
        QCOMPARE(planned.last()[0].toULongLong(), last);
        const auto plan = studied.last()[1].value<std::shared_ptr<const plan::Plan>>();
        QVERIFY(plan && plan::isStudied(*plan));
        for (const auto& told : studied) QCOMPARE(told[0].toULongLong(), last);
        SOON_VERIFY(!planner.isWorking());
        QCOMPARE(finished.count(), 1);
    }

    // Each is of the newest request and has more than the one before; the whole comes last.
    void studiesComeAsTheyAreThere() {
        Planner planner(nullptr, 0);
        int before = 0;
        bool whole = false;
        const auto count = [](const plan::Plan& plan) {
            return std::ranges::count_if(plan::allStudies, [&](plan::Study study) { return plan::has(plan, study); });
        };
        connect(&planner, &Planner::studied, this, [&](quint64, std::shared_ptr<const plan::Plan> plan) {
            QVERIFY(!whole);
            QVERIFY(count(*plan) > before);
            before = static_cast<int>(count(*plan));
            whole = plan::isStudied(*plan);
        });
        planner.ask(arc(0.1), shop());
        SOON_VERIFY(whole);
    }

    // A window that is busy meanwhile is told the newest once, not each.
    void partsThatWaitForTheWindowComeTogether() {
        std::atomic<int> sent = 0;
        Planner planner(
            nullptr, 0,
            deepening([&](const model::Piece&, const plan::Shop&, const plan::Plan& plan, const std::atomic<bool>&,
                          const plan::OnPart& onPart) -> std::optional<plan::Plan> {
                for (int i = 0; i < 50; ++i) {
                    onPart(plan);
                    ++sent;
                }
                return plan;
            }));
        QSignalSpy studied(&planner, &Planner::studied);
        planner.ask(arc(0.1), shop());
        while (planner.isWorking()) QThread::msleep(1);  // no event is taken
        QCOMPARE(sent.load(), 50);
        SOON_COMPARE(studied.count(), 1);
    }

    void defectInAStudyIsToldAndThePlanStays() {
        Planner planner(nullptr, 0,
                        deepening([](const model::Piece&, const plan::Shop&, const plan::Plan&,
                                     const std::atomic<bool>&, const plan::OnPart&) -> std::optional<plan::Plan> {
                            throw std::runtime_error("a sum without terms");
                        }));
        QSignalSpy planned(&planner, &Planner::planned);
        QSignalSpy studied(&planner, &Planner::studied);
        QSignalSpy refused(&planner, &Planner::refused);
        QSignalSpy failed(&planner, &Planner::failed);
        const quint64 request = planner.ask(arc(0.1), shop());
        SOON_COMPARE(failed.count(), 1);
        QCOMPARE(failed[0][0].toULongLong(), request);
        QVERIFY(failed[0][1].toString().contains("a sum without terms"));
        QCOMPARE(planned.count(), 1);
        QCOMPARE(studied.count(), 0);
        QCOMPARE(refused.count(), 0);
        planner.ask(arc(0.2), shop());  // it lives on
        SOON_COMPARE(planned.count(), 2);
    }

    // A study that ends only when it is stopped: the planner's end and a newer request both stop it.
    void endAndNewerRequestStopTheStudies() {
        std::atomic<int> begun = 0;
        std::atomic<int> stopped = 0;
        {
            Planner planner(
                nullptr, 0,
                deepening([&](const model::Piece&, const plan::Shop&, const plan::Plan&, const std::atomic<bool>& stop,
                              const plan::OnPart&) -> std::optional<plan::Plan> {
                    ++begun;
                    while (!stop) QThread::msleep(1);
                    ++stopped;
                    return std::nullopt;
                }));
            planner.ask(arc(0.1), shop());
            SOON_COMPARE(begun.load(), 1);
            planner.ask(arc(0.2), shop());
            SOON_COMPARE(begun.load(), 2);
            QCOMPARE(stopped.load(), 1);
        }
        QCOMPARE(stopped.load(), 2);
    }

    // The plan of what was stopped is made all the same, its studies are not; the next request has its own.
    void stoppedRequestHasItsPlanAlone() {
        std::atomic<int> begun = 0;
        Planner planner(nullptr, 0, endlessAtFirst(begun));
        QSignalSpy planned(&planner, &Planner::planned);
        QSignalSpy studied(&planner, &Planner::studied);
        QSignalSpy finished(&planner, &Planner::finished);
        planner.ask(arc(0.1), shop());
        SOON_COMPARE(begun.load(), 1);
        planner.stop();  // while it studies
        SOON_COMPARE(finished.count(), 1);
        const quint64 second = planner.ask(arc(0.2), shop());
        planner.stop();  // before anything is done
        SOON_COMPARE(finished.count(), 2);
        QCOMPARE(finished[1][0].toULongLong(), second);
        QCOMPARE(planned.count(), 2);
        QCOMPARE(studied.count(), 0);
        QCOMPARE(begun.load(), 1);
        planner.ask(arc(0.3), shop());
        SOON_COMPARE(studied.count(), 1);
    }

    void markIsGivenUpForARequestOfTheTable() {
        std::atomic<int> begun = 0;
        Planner planner(nullptr, 0, endlessAtFirst(begun));
        QSignalSpy studied(&planner, &Planner::studied);
        QSignalSpy marked(&planner, &Planner::marked);
        planner.ask(arc(0.1), shop(), Planner::For::mark);
        SOON_COMPARE(begun.load(), 1);
        planner.ask(arc(0.2), shop());
        SOON_COMPARE(studied.count(), 1);
        QCOMPARE(marked.count(), 0);
        const quint64 again = planner.ask(arc(0.1), shop(), Planner::For::mark);
        SOON_COMPARE(marked.count(), 1);
        QCOMPARE(marked[0][0].toULongLong(), again);
    }

    void plansArriveWhileEditsKeepComing() {
        Planner planner;
        QSignalSpy planned(&planner, &Planner::planned);
        // A request always waits, as in a drag that does not end: plans must come all the same. How soon is measured in
        // the benchmarks.
        const QDeadlineTimer end(test::patience_ms);
        for (int i = 0; planned.count() <= 10 && !end.hasExpired(); ++i) {
            planner.ask(arc(0.1 + 0.000001 * i), shop());
            QTest::qWait(1);
        }
        QVERIFY2(planned.count() > 10, qPrintable(QString::number(planned.count())));
    }

    void plannerCanGoWhileItWorks() {
        for (int i = 0; i < 30; ++i) {
            Planner planner;
            planner.ask(arc(0.1), shop());
            planner.ask(arc(0.2), shop());
        }
        QCoreApplication::processEvents();
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QCoreApplication, PlannerTest>(argc, argv);
}
#include "planner_test.moc"
