// What the window does with the user's shed.
#include <QStatusBar>

#include "app/panels/shed_line.hpp"
#include "app/window/main_window.hpp"
#include "app/window/panel_stack.hpp"
#include "app/window/shed_dialog.hpp"

namespace fayline::app {

void MainWindow::connectShed() {
    connect(&shed_, &ShedStore::changed, this, [this] {
        document_.setShed(shed_.shed());
        planning_.show();
    });
    connect(panels_, &PanelStack::keepInShedAsked, this, &MainWindow::keepInShed);
}

void MainWindow::tellOfShed() {
    if (const auto problem = shed_.takeProblem()) tell(problem->what, problem->why);
}

void MainWindow::keepInShed(model::ShedPart part) {
    const int index = document_.currentPiece();
    if (index < 0) return;
    const model::Boat& boat = document_.boat();
    try {
        shed_.change([&](model::Shed& shed) { model::keep(shed, part, boat, boat.pieces[index]); });
        statusBar()->showMessage(tr("Kept in my shed: %1. To undo: Boat, My shed.").arg(shedPartName(part)), 8000);
    } catch (const std::exception& error) {
        tell(tr("My shed was not changed."), QString::fromUtf8(error.what()));
    }
    tellOfShed();
}

void MainWindow::openShed() {
    try {
        shed_.refresh();
    } catch (const std::exception& error) {
        tell(tr("My shed could not be read."), QString::fromUtf8(error.what()));
    }
    tellOfShed();
    ShedDialog(shed_, document_, this).exec();
}

}  // namespace fayline::app
