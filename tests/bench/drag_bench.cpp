// What the window's thread spends on following a hand: the whole window on the sample boat, one point of the stem
// dragged a step, from the move of the mouse until the new plan stands painted in every view.
//
// Time is the processor's, so that others at work on the machine do not count. A hand waits for the window's thread
// (p50_ms, p99_ms) and, until piece and plan stand painted together, for the plan that is made beside it in a thread of
// its own (plan50_ms, plan99_ms); both in turn are both50_ms and both99_ms. By the clock on the wall, for machines with
// nothing else to do, it is wall50_ms and wall99_ms. A frame at 60 a second is 16.7 ms.
// `panels` 0: all folded; 1: all open, the line's in sight; 2: all open, the holding's in sight. `holding` 0 is the
// same without the arrows, gaps and pressures on the drawing, for what these cost in one run. The counters are of all
// the steps of a run: p50_ms is the middle, p99_ms what one step in a hundred is over. For a steady p99 let it run
// longer: drag_bench --benchmark_min_time=5
#include <benchmark/benchmark.h>

#include <QApplication>
#include <QMouseEvent>
#include <QSettings>
#include <QTemporaryDir>
#include <algorithm>
#include <cmath>
#include <ctime>
#include <vector>

#include "app/formview/form_view.hpp"
#include "app/look/theme.hpp"
#include "app/window/main_window.hpp"
#include "app/window/panel_stack.hpp"
#include "core/glue/library_errors.hpp"

namespace fayline::app {
namespace {

struct Spent {
    double window_s = 0;  // of the window's thread
    double both_s = 0;    // of the whole process: the planner's thread is the only other one at work
    double wall_s = 0;
};

double clock_s(clockid_t clock) {
    timespec time{};
    clock_gettime(clock, &time);
    return double(time.tv_sec) + double(time.tv_nsec) * 1e-9;
}

Spent spentSoFar() {
    return {clock_s(CLOCK_THREAD_CPUTIME_ID), clock_s(CLOCK_PROCESS_CPUTIME_ID), clock_s(CLOCK_MONOTONIC)};
}

// Until the plan of the boat as it stands is shown, and painted. Asleep while there is nothing to do.
void follow(const MainWindow& window, const std::shared_ptr<const plan::Plan>& before) {
    while (window.shown().plan == before || !window.shown().plan) {
        QCoreApplication::processEvents(QEventLoop::AllEvents | QEventLoop::WaitForMoreEvents);
    }
    QCoreApplication::processEvents();
}

void moveTo(FormView& view, const QPointF& at) {
    QMouseEvent move(QEvent::MouseMove, at, view.mapToGlobal(at), Qt::NoButton, Qt::LeftButton, {});
    QCoreApplication::sendEvent(&view, &move);
}

double share_ms(std::vector<double> times, double of) {
    const auto place = times.begin() + static_cast<std::ptrdiff_t>(of * static_cast<double>(times.size() - 1));
    std::nth_element(times.begin(), place, times.end());
    return 1e3 * *place;
}

void dragStep(benchmark::State& state) {
    const QTemporaryDir folder;
    MainWindow window(folder.path());
    window.resize(1280, 800);
    window.show();
    if (!window.openFile(QStringLiteral(FAYLINE_SAMPLES "/marram.fayline"))) {
        state.SkipWithError("the sample boat does not open");
        return;
    }
    const std::vector<int> all{0, 1, 2, 3, 4, 5, 6, 7, 8};
    auto& panels = *window.findChild<PanelStack*>();
    panels.setOpenQuestions(state.range(0) ? all : std::vector<int>());
    auto& view = *window.findChild<FormView*>();
    view.setForcesShown(state.range(1));
    view.setGapsMagnified(state.range(1));
    view.setPressureShown(state.range(1));
    follow(window, {});
    if (state.range(0) == 2) panels.openPanel(plan::Question::holding);
    QCoreApplication::processEvents();

    constexpr std::size_t dragged = 5;
    const auto& points = window.document().boat().pieces[0].line.points;
    const QPointF from = view.transform().toScreen({points[dragged].x_m, points[dragged].y_m}).toPoint();
    QMouseEvent press(QEvent::MouseButtonPress, from, view.mapToGlobal(from), Qt::LeftButton, Qt::LeftButton, {});
    QCoreApplication::sendEvent(&view, &press);
    moveTo(view, from + QPointF(10, 0));  // the drag is under way
    QCoreApplication::processEvents();

    std::vector<double> window_s;
    std::vector<double> plan_s;
    std::vector<double> both_s;
    std::vector<double> wall_s;
    int step = 0;
    for (auto _ : state) {
        // Round a ring, so that each step lies some pixels, and some steps of the rule, from the one before.
        const double angle = 0.4 * ++step;
        const auto before = window.shown().plan;
        const Spent began = spentSoFar();
        moveTo(view, from + QPointF(12 * std::cos(angle), 12 * std::sin(angle)));
        follow(window, before);
        const Spent ended = spentSoFar();
        window_s.push_back(ended.window_s - began.window_s);
        both_s.push_back(ended.both_s - began.both_s);
        plan_s.push_back(both_s.back() - window_s.back());
        wall_s.push_back(ended.wall_s - began.wall_s);
        state.SetIterationTime(window_s.back());
    }
    state.counters["p50_ms"] = share_ms(window_s, 0.50);
    state.counters["p99_ms"] = share_ms(window_s, 0.99);
    state.counters["plan50_ms"] = share_ms(plan_s, 0.50);
    state.counters["plan99_ms"] = share_ms(plan_s, 0.99);
    state.counters["both50_ms"] = share_ms(both_s, 0.50);
    state.counters["both99_ms"] = share_ms(both_s, 0.99);
    state.counters["wall50_ms"] = share_ms(wall_s, 0.50);
    state.counters["wall99_ms"] = share_ms(wall_s, 0.99);

    const QPointF last = from + QPointF(12, 0);
    QMouseEvent release(QEvent::MouseButtonRelease, last, view.mapToGlobal(last), Qt::LeftButton, Qt::NoButton, {});
    QCoreApplication::sendEvent(&view, &release);
    window.document().undoStack().setClean();
}
BENCHMARK(dragStep)
    ->ArgNames({"panels", "holding"})
    ->ArgsProduct({{0, 1, 2}, {0, 1}})
    ->UseManualTime()
    ->MinTime(3)
    ->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace fayline::app

int main(int argc, char** argv) {
    fayline::glue::letLibraryReturnErrors();
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    const QTemporaryDir settings;  // the user's own are neither read nor written
    QSettings::setDefaultFormat(QSettings::IniFormat);
    QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, settings.path());
    fayline::app::applyGround(fayline::app::Ground::paper);
    benchmark::Initialize(&argc, argv);
    if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 1;
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
