#include "app/window/planner.hpp"

#include <QMutex>
#include <QMutexLocker>
#include <QThreadPool>
#include <QWaitCondition>
#include <atomic>
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

Outcome answer(const Request& request, const plan::Plan* before) {
    Outcome outcome{request.number, nullptr, {}, {}};
    try {
        outcome.plan = std::make_shared<const plan::Plan>(plan::makePlan(request.piece, request.shop, before));
    } catch (const measure::InputError& error) {
        outcome.path = QString::fromStdString(error.path());
        outcome.why = QString::fromStdString(error.wrong() + "; " + error.accepted());
    } catch (const std::exception& error) {
        // A defect of the program; the window lives on and shows what is known of it.
        outcome.why = Planner::tr("no plan could be made: %1").arg(QString::fromUtf8(error.what()));
    }
    return outcome;
}

// The plan with what takes longer; null when stopped. Made anew from nothing but the piece, so that what stands in the
// end does not depend on how the hand came there.
std::shared_ptr<const plan::Plan> deeper(const Request& request, const std::atomic<bool>& stop) {
    plan::Plan plan;
    try {
        plan = plan::makePlan(request.piece, request.shop);
        std::optional<plan::Plan> deep = plan::deepen(request.piece, request.shop, plan, stop);
        return deep ? std::make_shared<const plan::Plan>(std::move(*deep)) : nullptr;
    } catch (const std::exception&) {
        // The plan that follows the hand has already said what is wrong; it stays without the longer part.
        return std::make_shared<const plan::Plan>(std::move(plan));
    }
}

}  // namespace

struct Planner::Work {
    explicit Work(int rest) : rest_ms(rest) {}

    const int rest_ms;
    QMutex mutex;  // guards the four members below
    QWaitCondition asked;
    std::optional<Request> waiting;
    bool running = false;
    bool leaving = false;
    quint64 last = 0;

    std::atomic<bool> stop = false;  // the longer work is no longer wanted

    std::shared_ptr<const plan::Plan> before;  // touched by the worker alone

    quint64 sent = 0;  // touched by the window's thread alone
    QThreadPool pool;  // last, so that it is waited for first

    // The next request, waiting up to `patience_ms` for it; none came: nothing.
    std::optional<Request> take(int patience_ms) {
        const QMutexLocker locked(&mutex);
        if (!waiting && !leaving && patience_ms > 0) asked.wait(&mutex, static_cast<unsigned long>(patience_ms));
        if (leaving) return std::nullopt;
        std::optional<Request> request = std::move(waiting);
        waiting.reset();
        stop = false;
        return request;
    }

    // True when there is nothing left to do; the worker then ends.
    bool rest() {
        const QMutexLocker locked(&mutex);
        if (waiting && !leaving) return false;
        running = false;
        return true;
    }
};

Planner::Planner(QObject* parent, int rest_ms) : QObject(parent), work_(std::make_unique<Work>(rest_ms)) {
    work_->pool.setMaxThreadCount(1);
}

Planner::~Planner() {
    {
        const QMutexLocker locked(&work_->mutex);
        work_->waiting.reset();
        work_->leaving = true;
        work_->stop = true;
        work_->asked.wakeAll();
    }
    work_->pool.waitForDone();
}

quint64 Planner::ask(const boat::Piece& piece, const plan::Shop& shop) {
    const QMutexLocker locked(&work_->mutex);
    const quint64 number = ++work_->last;
    work_->waiting = Request{number, piece, shop};  // the one that waited is dropped
    work_->stop = true;
    work_->asked.wakeAll();
    if (work_->running) return number;
    work_->running = true;
    work_->pool.start([this] { work(); });
    return number;
}

// On the worker: answers requests as they come; when none has come for a while, works the last one out at length.
void Planner::work() {
    do {
        std::optional<Request> request = work_->take(0);
        while (request) {
            const Outcome outcome = answer(*request, work_->before.get());
            if (outcome.plan) work_->before = outcome.plan;
            send(outcome.number, outcome.plan, outcome.path, outcome.why);
            std::optional<Request> next = work_->take(work_->rest_ms);
            if (!next && outcome.plan) {
                if (const auto plan = deeper(*request, work_->stop)) {
                    work_->before = plan;
                    sendDeeper(outcome.number, plan);
                }
                next = work_->take(0);
            }
            request = std::move(next);
        }
    } while (!work_->rest());
}

// Delivered in the window's thread; dropped by Qt if the planner is gone by then.
void Planner::send(quint64 number, const std::shared_ptr<const plan::Plan>& plan, const QString& path,
                   const QString& why) {
    QMetaObject::invokeMethod(
        this,
        [this, number, plan, path, why] {
            if (number <= work_->sent) return;
            work_->sent = number;
            if (plan) {
                emit planned(number, plan);
            } else {
                emit refused(number, path, why);
            }
        },
        Qt::QueuedConnection);
}

void Planner::sendDeeper(quint64 number, const std::shared_ptr<const plan::Plan>& plan) {
    QMetaObject::invokeMethod(
        this,
        [this, number, plan] {
            {
                const QMutexLocker locked(&work_->mutex);
                if (number != work_->last) return;
            }
            emit deepened(number, plan);
        },
        Qt::QueuedConnection);
}

bool Planner::isWorking() const {
    const QMutexLocker locked(&work_->mutex);
    return work_->running;
}

}  // namespace fayline::app

#include "moc_planner.cpp"
