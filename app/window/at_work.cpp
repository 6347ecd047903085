#include "app/window/at_work.hpp"

#include <QEventLoop>
#include <QProgressDialog>
#include <QThread>
#include <QTimer>
#include <exception>
#include <limits>
#include <memory>

namespace fayline::app {

namespace {

constexpr int patience_ms = 300;  // what is done by then needs no dialog

}  // namespace

bool runAtWork(QWidget* parent, const QString& what, const std::function<void(const AtWork&)>& work) {
    QProgressDialog dialog(what, QProgressDialog::tr("Stop"), 0, 0, parent);
    dialog.setObjectName(QStringLiteral("atWork"));
    dialog.setWindowModality(Qt::WindowModal);
    dialog.setMinimumDuration(std::numeric_limits<int>::max());  // shown by our own timer, which does not guess
    dialog.setAutoClose(false);
    dialog.setAutoReset(false);

    std::atomic<bool> stop = false;
    std::exception_ptr failure;
    const auto onStep = [&dialog](int done, int of) {
        QMetaObject::invokeMethod(
            &dialog,
            [&dialog, done, of] {
                dialog.setMaximum(of);
                dialog.setValue(done);
            },
            Qt::QueuedConnection);
    };
    const std::unique_ptr<QThread> thread(QThread::create([&] {
        try {
            work({stop, onStep});
        } catch (...) {
            failure = std::current_exception();
        }
    }));
    QEventLoop loop;
    bool ended = false;
    QObject::connect(thread.get(), &QThread::finished, &loop, [&] {
        ended = true;
        loop.quit();
    });
    QObject::connect(&dialog, &QProgressDialog::canceled, &loop, [&] { stop = true; });
    QTimer::singleShot(patience_ms, &dialog, [&dialog] { dialog.show(); });
    thread->start();
    loop.exec();
    // The loop ends with the program as well: then nobody waits for the work any more.
    if (!ended) stop = true;
    thread->wait();
    if (failure) std::rethrow_exception(failure);
    return !stop;
}

}  // namespace fayline::app
