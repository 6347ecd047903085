// A day by the clock on the bench: a machine whose clocks the test turns, and the screen with the day of the sample's
// stem.
#pragma once

#include <QTemporaryDir>
#include <QTest>
#include <algorithm>

#include "app/clock/big_text.hpp"
#include "app/clock/clock_screen.hpp"
#include "core/io/file.hpp"
#include "tests/app/patience.hpp"

namespace fayline::app {

// A machine whose clocks the test turns.
struct Machine {
    schedule::Clocks clocks{"first-start", 5000, 1.79e9};
    RunningDay::ReadClocks read() {
        return [this] { return clocks; };
    }
    void goOn(double by_s) {
        clocks.up_s += by_s;
        clocks.wall_s += by_s;
    }
};

// A screen with the day of the sample's stem.
struct Shed {
    QTemporaryDir folder;
    Machine machine;
    model::Boat boat = io::loadBoat(std::string(FAYLINE_SAMPLES "/marram.fayline"));
    ClockScreen screen{folder.path(), machine.read()};

    explicit Shed(QSize size = {1280, 800}, bool dryFit = false) {
        screen.resize(size);
        boat.display = {.lengths = boat.display.lengths};  // what tests say is in grams and degrees Celsius
        screen.prepare(boat, 0, "marram.fayline", dryFit);
        screen.show();
        if (!QTest::qWaitForWindowExposed(&screen, test::patience_ms)) qFatal("the clock is not shown");
    }
    void press(Qt::Key key) { QTest::keyClick(&screen, key); }
    void begin() { press(Qt::Key_Return); }
    const schedule::Now& now() { return screen.runningDay()->now(); }
    QString nameOf(int task) { return QString::fromStdString(now().run.tasks[size_t(task)].name); }
    template <class Widget>
    Widget* find(const char* name) {
        return screen.findChild<Widget*>(name);
    }
    QString words(const char* name) { return find<BigText>(name)->text(); }
    // Everything as planned until nothing is left.
    void workThrough() {
        for (int i = 0; i < 500 && !screen.runningDay()->now().finished; ++i) {
            double ends_s = 1e9;
            bool waits = false;  // what ends next needs nobody, so no key is pressed for it
            for (const int task : now().doing) {
                const schedule::Task& one = now().run.tasks[size_t(task)];
                if (one.end_s >= ends_s) continue;
                ends_s = one.end_s;
                waits = one.hands == 0;
            }
            const double left_s = ends_s - screen.runningDay()->at();
            machine.goOn(std::max(1.0, left_s));
            if (waits && left_s > 0) continue;
            const int count = int(screen.runningDay()->events().size());
            press(Qt::Key_Space);
            if (int(screen.runningDay()->events().size()) == count) press(Qt::Key_B);
        }
    }
};

}  // namespace fayline::app
