// How long a test waits for what must come. Only a test that fails waits it out, so it is longer than any machine
// takes, however busy.
#pragma once

#include <QTest>

namespace fayline::test {

constexpr int patience_ms = 120000;

// Until `holds` does, asked every few milliseconds between events; false when patience is at its end.
template <class Condition>
[[nodiscard]] bool soon(const Condition& holds) {
    return QTest::qWaitFor([&] { return QTest::currentTestFailed() || static_cast<bool>(holds()); }, patience_ms) &&
           static_cast<bool>(holds());
}

}  // namespace fayline::test

// What must come to be, as Qt Test's own macros ask it, with that patience.
#define SOON_VERIFY(condition) QVERIFY(fayline::test::soon([&] { return (condition); }))
#define SOON_VERIFY2(condition, description) QVERIFY2(fayline::test::soon([&] { return (condition); }), description)
#define SOON_COMPARE(actual, expected)                                     \
    do {                                                                   \
        (void)fayline::test::soon([&] { return (actual) == (expected); }); \
        QCOMPARE(actual, expected);                                        \
    } while (false)
