#include "app/window/planner.hpp"

#include <QMutex>
#include <QMutexLocker>
#include <QThreadPool>
#include <optional>

#include "core/measure/input_error.hpp"

namespace fayline::app {

namespace {

struct Request {
    quint64 number = 0;
    boat::Piece piece;
    plan::Shop shop;
};

// Either a plan or why there is none.
struct Outcome {
    quint64 number = 0;
    std::shared_ptr<const plan::Plan> plan;
    QString path;
    QString why;
};

Outcome answer(const Request& request) {
    Outcome outcome{request.number, nullptr, {}, {}};
    try {
        outcome.plan = std::make_shared<const plan::Plan>(plan::makePlan(request.piece, request.shop));
    } catch (const measure::InputError& error) {
        outcome.path = QString::fromStdString(error.path());
        outcome.why = QString::fromStdString(error.wrong() + "; " + error.accepted());
    } catch (const std::exception& error) {
        // A defect of the program; the window lives on and shows what is known of it.
        outcome.why = Planner::tr("no plan could be made: %1").arg(QString::fromUtf8(error.what()));
    }
    return outcome;
}

}  // namespace

struct Planner::Work {
    QMutex mutex;  // guards the three members below
    std::optional<Request> waiting;
    bool running = false;
    quint64 asked = 0;

    quint64 sent = 0;  // touched by the window's thread alone
    QThreadPool pool;  // last, so that it is waited for first
};

Planner::Planner(QObject* parent) : QObject(parent), work_(std::make_unique<Work>()) {
    work_->pool.setMaxThreadCount(1);
}

Planner::~Planner() {
    {
        const QMutexLocker locked(&work_->mutex);
        work_->waiting.reset();
    }
    work_->pool.waitForDone();
}

quint64 Planner::ask(const boat::Piece& piece, const plan::Shop& shop) {
    const QMutexLocker locked(&work_->mutex);
    const quint64 number = ++work_->asked;
    work_->waiting = Request{number, piece, shop};  // the one that waited is dropped
    if (work_->running) return number;
    work_->running = true;
    work_->pool.start([this] {
        while (true) {
            Request request;
            {
                const QMutexLocker taking(&work_->mutex);
                if (!work_->waiting) {
                    work_->running = false;
                    return;
                }
                request = std::move(*work_->waiting);
                work_->waiting.reset();
            }
            // Delivered in the window's thread; dropped by Qt if the planner is gone by then.
            QMetaObject::invokeMethod(
                this,
                [this, outcome = answer(request)] {
                    if (outcome.number <= work_->sent) return;
                    work_->sent = outcome.number;
                    if (outcome.plan) {
                        emit planned(outcome.number, outcome.plan);
                    } else {
                        emit refused(outcome.number, outcome.path, outcome.why);
                    }
                },
                Qt::QueuedConnection);
        }
    });
    return number;
}

bool Planner::isWorking() const {
    const QMutexLocker locked(&work_->mutex);
    return work_->running;
}

}  // namespace fayline::app

#include "moc_planner.cpp"
