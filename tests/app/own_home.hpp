// A home for settings and data that belongs to the test program alone, never the user's.
#pragma once

#include <QCoreApplication>
#include <QTemporaryDir>

namespace fayline::app {

// To be called before the application is made, from a test's initMain.
inline void useHomeOfItsOwn() {
    static const QTemporaryDir home;
    qputenv("XDG_CONFIG_HOME", home.path().toUtf8());
    qputenv("XDG_DATA_HOME", home.path().toUtf8());
    QCoreApplication::setOrganizationName("fayline");
    QCoreApplication::setApplicationName("fayline");
}

}  // namespace fayline::app
