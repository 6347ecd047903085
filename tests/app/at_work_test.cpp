// Work that the user waits for: off the window's thread, told, stopped; papers made that way.
#include "app/window/at_work.hpp"

#include <QApplication>
#include <QDir>
#include <QFile>
#include <QProgressDialog>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>
#include <QThread>
#include <QTimer>
#include <stdexcept>

#include "app/paper/papers.hpp"
#include "core/io/file.hpp"
#include "core/math/count.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

model::Boat onePiece() {
    model::Boat boat = io::loadBoat(std::filesystem::path(FAYLINE_SAMPLES) / "marram.fayline");
    boat.pieces.resize(1);
    return boat;
}

QByteArray contents(const QString& fileName) {
    QFile file(fileName);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

}  // namespace

class AtWorkTest : public QObject {
    Q_OBJECT

private slots:
    // The work waits for something that only the window's thread does: it would wait for ever if that were held up.
    void windowGoesOnWhileItWorks() {
        std::atomic<bool> painted = false;
        QTimer::singleShot(0, this, [&] { painted = true; });
        QThread* worker = nullptr;
        const bool done = runAtWork(nullptr, "Work", [&](const AtWork& at) {
            worker = QThread::currentThread();
            while (!painted && !at.stop) QThread::msleep(1);
        });
        QVERIFY(done);
        QVERIFY(worker != QThread::currentThread());
    }

    // The dialog comes when it takes longer; its button ends the work, which ends by that alone.
    void stopInTheDialogStopsTheWork() {
        int steps = -1;
        QTimer look;
        connect(&look, &QTimer::timeout, this, [&] {
            for (QWidget* widget : QApplication::topLevelWidgets()) {
                auto* dialog = qobject_cast<QProgressDialog*>(widget);
                if (!dialog || !dialog->isVisible() || dialog->maximum() != 9) continue;
                steps = dialog->value();
                dialog->findChild<QPushButton*>()->click();
                look.stop();
            }
        });
        look.start(5);
        const bool done = runAtWork(nullptr, "Work", [&](const AtWork& at) {
            at.onStep(4, 9);
            while (!at.stop) QThread::msleep(1);
        });
        QVERIFY(!done);
        QCOMPARE(steps, 4);
    }

    void whatTheWorkThrowsComesOut() {
        QVERIFY_THROWS_EXCEPTION(std::runtime_error, runAtWork(nullptr, "Work", [](const AtWork&) {
                                     throw std::runtime_error("no paper");
                                 }));
    }

    // Texts are painted on the worker with the same fonts: byte for byte the same files.
    void papersMadeOnTheWorkerAreTheSame() {
        const model::Boat boat = onePiece();
        QTemporaryDir here;
        QTemporaryDir there;
        const QStringList names = writePapers(boat, here.path(), defaultPageLayout());
        QVERIFY(names.size() > 3);
        std::optional<QStringList> made;
        std::vector<int> steps;
        int last = 0;
        QVERIFY(runAtWork(nullptr, "Papers", [&](const AtWork& at) {
            made = writePapers(boat, there.path(), defaultPageLayout(), {at.stop, [&](int done, int of) {
                                                                             steps.push_back(done);
                                                                             last = of;
                                                                         }});
        }));
        QVERIFY(made.has_value());
        QCOMPARE(*made, names);
        for (const QString& name : names) {
            const QByteArray one = contents(here.filePath(name));
            QVERIFY(!one.isEmpty());
            QVERIFY2(one == contents(there.filePath(name)), qPrintable(name));
        }
        QCOMPARE(math::countOf(steps), math::countOf(names));
        QCOMPARE(last, math::countOf(names));
    }

    void stoppedPapersLeaveNothing() {
        QTemporaryDir folder;
        std::atomic<bool> stop = false;
        const auto made = writePapers(onePiece(), folder.filePath("papers"), defaultPageLayout(),
                                      {stop, [&stop](int done, int) { stop = done >= 2; }});
        QVERIFY(!made.has_value());
        QVERIFY(!QDir(folder.filePath("papers")).exists());
    }
};

QTEST_MAIN(AtWorkTest)
#include "at_work_test.moc"
