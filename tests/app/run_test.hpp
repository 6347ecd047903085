// How a test with Qt runs: as by Qt's own main, once it has been said what the numerical library does about an error.
#pragma once

#include <QApplication>
#include <QTest>

#include "core/glue/library_errors.hpp"

namespace fayline::app {

// For the main of a test program. Application: QApplication, or QCoreApplication for tests without a window. What the
// test needs before it is made, a static initMain of the test does.
template <class Application, class Test>
int runTest(int argc, char** argv) {
    glue::letLibraryReturnErrors();
    if constexpr (requires { Test::initMain(); }) Test::initMain();
    const Application application(argc, argv);
    Test test;
    return QTest::qExec(&test, argc, argv);
}

}  // namespace fayline::app
