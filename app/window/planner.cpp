#include "app/window/planner.hpp"

#include <QMutex>
#include <QMutexLocker>
#include <QThreadPool>
#include <QWaitCondition>
#include <atomic>
#include <optional>

#include "core/plan/shop.hpp"
#include "core/units/input_error.hpp"

namespace fayline::app {

struct PlanRequest {
    quint64 number = 0;
    model::Piece piece;
    plan::Shop shop;
};

namespace {

// Either a plan or why there is none.
struct Outcome {
    quint64 number = 0;
    std::shared_ptr<const plan::Plan> plan;
    QString path;
    QString why;
};

// Every plan that the worker makes; none where it was stopped.
QString wordsOf(const units::InputError& error) {
    return QString::fromStdString(error.wrong() + "; " + error.accepted());
}

Outcome answer(const PlanRequest& request, const plan::Plan* before, const std::atomic<bool>& stop) {
    Outcome outcome{request.number, nullptr, {}, {}};
    try {
        std::optional<plan::Plan> plan = plan::makePlan(request.piece, request.shop, before, stop);
        if (plan) outcome.plan = std::make_shared<const plan::Plan>(std::move(*plan));
    } catch (const units::InputError& error) {
        outcome.path = QString::fromStdString(error.path());
        outcome.why = wordsOf(error);
    } catch (const std::exception& error) {
        // A defect of the program; the window lives on and shows what is known of it.
        outcome.why = Planner::tr("no plan could be made: %1").arg(QString::fromUtf8(error.what()));
    }
    return outcome;
}

}  // namespace

struct Planner::Work {
    Work(int rest, Deepen with) : rest_ms(rest), deepenWith(std::move(with)) {}

    const int rest_ms;
    const Deepen deepenWith;
    QMutex mutex;  // guards the five members below
    QWaitCondition asked;
    std::optional<PlanRequest> waiting;
    bool running = false;
    bool leaving = false;
    quint64 last = 0;

    std::atomic<bool> stop = false;   // the longer work is no longer wanted
    std::atomic<bool> leave = false;  // nor is any other

    // The longer work's newest plan that the window has not taken yet, guarded by the mutex; null: nothing is under
    // way.
    std::shared_ptr<const plan::Plan> deeper;
    quint64 deeperOf = 0;
    bool deeperIsWhole = false;

    std::shared_ptr<const plan::Plan> before;  // touched by the worker alone

    quint64 sent = 0;  // touched by the window's thread alone
    QThreadPool pool;  // last, so that it is waited for first

    // The next request, waiting up to `patience_ms` for it; none came: nothing.
    std::optional<PlanRequest> take(int patience_ms) {
        const QMutexLocker locked(&mutex);
        if (!waiting && !leaving && patience_ms > 0) asked.wait(&mutex, static_cast<unsigned long>(patience_ms));
        if (leaving) return std::nullopt;
        std::optional<PlanRequest> request = std::move(waiting);
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

Planner::Deepen Planner::allCores() {
    return [](const model::Piece& piece, const plan::Shop& shop, const plan::Plan& plan, const std::atomic<bool>& stop,
              const plan::OnPart& onPart) { return plan::deepenStepwise(piece, shop, plan, stop, onPart); };
}

Planner::Planner(QObject* parent, int rest_ms, Deepen deepen)
    : QObject(parent), work_(std::make_unique<Work>(rest_ms, std::move(deepen))) {
    work_->pool.setMaxThreadCount(1);
}

Planner::~Planner() {
    {
        const QMutexLocker locked(&work_->mutex);
        work_->waiting.reset();
        work_->leaving = true;
        work_->leave = true;
        work_->stop = true;
        work_->asked.wakeAll();
    }
    work_->pool.waitForDone();
}

quint64 Planner::ask(const model::Piece& piece, const plan::Shop& shop) {
    const QMutexLocker locked(&work_->mutex);
    const quint64 number = ++work_->last;
    work_->waiting = PlanRequest{number, piece, shop};  // the one that waited is dropped
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
        std::optional<PlanRequest> request = work_->take(0);
        while (request) {
            const Outcome outcome = answer(*request, work_->before.get(), work_->leave);
            if (outcome.plan) work_->before = outcome.plan;
            if (outcome.plan || !outcome.why.isEmpty()) send(outcome.number, outcome.plan, outcome.path, outcome.why);
            std::optional<PlanRequest> next = work_->take(work_->rest_ms);
            if (!next && outcome.plan) {
                deepen(outcome.number, request->piece, request->shop);
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

// On the worker: the studies of a plan that is made anew from nothing but the piece, so that what stands in the end
// does not depend on how the hand came there.
void Planner::deepen(quint64 number, const model::Piece& piece, const plan::Shop& shop) {
    try {
        const std::optional<plan::Plan> plan = plan::makePlan(piece, shop, nullptr, work_->stop);
        if (!plan) return;
        std::optional<plan::Plan> whole =
            work_->deepenWith(piece, shop, *plan, work_->stop, [this, number](plan::Plan part) {
                sendDeeper(number, std::make_shared<const plan::Plan>(std::move(part)), false);
            });
        if (!whole) return;
        work_->before = std::make_shared<const plan::Plan>(std::move(*whole));
        sendDeeper(number, work_->before, true);
    } catch (const units::InputError& error) {
        sendFailure(number, wordsOf(error));
    } catch (const std::exception& error) {
        sendFailure(number, QString::fromUtf8(error.what()));
    }
}

bool Planner::isNewest(quint64 number) const {
    const QMutexLocker locked(&work_->mutex);
    return number == work_->last;
}

// One delivery is under way at most; it takes what is newest when it arrives.
void Planner::sendDeeper(quint64 number, std::shared_ptr<const plan::Plan> plan, bool whole) {
    {
        const QMutexLocker locked(&work_->mutex);
        const bool underWay = work_->deeper != nullptr;
        work_->deeper = std::move(plan);
        work_->deeperOf = number;
        work_->deeperIsWhole = whole;
        if (underWay) return;
    }
    QMetaObject::invokeMethod(
        this,
        [this] {
            std::shared_ptr<const plan::Plan> newest;
            quint64 request = 0;
            bool isWhole = false;
            {
                const QMutexLocker locked(&work_->mutex);
                newest = std::move(work_->deeper);
                work_->deeper.reset();
                request = work_->deeperOf;
                isWhole = work_->deeperIsWhole;
            }
            if (!isNewest(request)) return;
            if (isWhole) {
                emit deepened(request, newest);
            } else {
                emit studied(request, newest);
            }
        },
        Qt::QueuedConnection);
}

void Planner::sendFailure(quint64 number, const QString& why) {
    QMetaObject::invokeMethod(
        this,
        [this, number, why] {
            if (isNewest(number)) emit failed(number, why);
        },
        Qt::QueuedConnection);
}

bool Planner::isWorking() const {
    const QMutexLocker locked(&work_->mutex);
    return work_->running;
}

}  // namespace fayline::app

#include "moc_planner.cpp"
