// Days left behind: those whose log is damaged are told and keep what can be read; none is begun without its lock.
#include <QApplication>
#include <QDir>
#include <QFile>
#include <QMessageBox>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>

#include "app/clock/running_day.hpp"
#include "app/window/main_window.hpp"
#include "core/io/file.hpp"
#include "core/units/input_error.hpp"
#include "tests/app/day_bench.hpp"
#include "tests/app/own_home.hpp"
#include "tests/app/window_bench.hpp"

using namespace fayline;
using namespace fayline::app;

class LeftDaysTest : public QObject {
    Q_OBJECT

public:
    static void initMain() { useHomeOfItsOwn(); }

private slots:
    void init() { QSettings().clear(); }

    // One wrong bit in the plan that the log opens with is put right; a first line that is lost is told, and what was
    // said that day is shown.
    void damagedFirstLineOfALogIsToldAndWhatCanBeReadIsSaved() {
        QTemporaryDir folder;
        Machine machine;
        {
            const auto day =
                RunningDay::begin(folder.path(), io::loadBoat(std::string(FAYLINE_SAMPLES "/marram.fayline")), 0, {}, 0,
                                  false, machine.read());
            machine.goOn(120);
            QVERIFY(day->done());
        }
        const QString path = RunningDay::leftBehind(folder.path()).at(0).path;
        QFile file(path);
        QVERIFY(file.open(QIODevice::ReadOnly));
        const QByteArray whole = file.readAll();
        file.close();
        const auto rewrite = [&](const QByteArray& text) {
            return file.open(QIODevice::WriteOnly) && file.write(text) == text.size() && (file.close(), true);
        };
        QByteArray oneBit = whole;
        oneBit[200] = char(oneBit[200] ^ 0x10);
        QVERIFY(rewrite(oneBit));
        std::vector<LeftDay> left = RunningDay::leftBehind(folder.path());
        QCOMPARE(left.size(), size_t(1));
        QCOMPARE(left[0].lost, QString());
        QCOMPARE(left[0].piece, QString("Stem"));
        {
            const auto again = RunningDay::goOn(left[0], machine.read());
            QVERIFY(again->toldOfTime().contains("wrong bit"));
        }
        QByteArray lost = whole;
        lost.replace(100, 50, QByteArray(50, '#'));
        QVERIFY(rewrite(lost));
        left = RunningDay::leftBehind(folder.path());
        QCOMPARE(left.size(), size_t(1));
        QVERIFY(left[0].lost.contains("damaged"));
        QVERIFY2(left[0].entries.contains("2 min"), qPrintable(left[0].entries));
        QVERIFY_EXCEPTION_THROWN(RunningDay::goOn(left[0], machine.read()), units::InputError);
        Bench bench;
        const QString days = bench.folder.path() + "/days";
        QVERIFY(QDir().mkpath(days) && QFile::copy(path, days + "/lost.day"));
        QString said;
        QTimer::singleShot(0, [&] {
            auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
            if (!box) return;
            said = box->objectName() + box->detailedText();
            box->reject();
        });
        bench.window.offerLeftDay();
        QVERIFY2(said.startsWith("lostDay") && said.contains("2 min"), qPrintable(said));
        QVERIFY(QFile::exists(days + "/lost.day"));
    }

    // So deep that the log's own name still fits into a path and that of its lock does not.
    void dayIsNotBegunWhereNoLockCanBeKept() {
        QTemporaryDir folder;
        QString deep = folder.path();
        while (deep.size() + 201 <= 4052 - 2) deep += "/" + QString(200, 'd');
        deep += "/" + QString(int(4052 - deep.size() - 1), 'e');
        QVERIFY(QDir().mkpath(deep));
        Machine machine;
        QVERIFY_EXCEPTION_THROWN(RunningDay::begin(deep, io::loadBoat(std::string(FAYLINE_SAMPLES "/marram.fayline")),
                                                   0, {}, 0, false, machine.read()),
                                 units::InputError);
        QVERIFY(QDir(deep).entryList({"*.day"}, QDir::Files).isEmpty());
    }
};

QTEST_MAIN(LeftDaysTest)
#include "left_days_test.moc"
