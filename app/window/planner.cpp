#include "app/window/planner.hpp"

#include <chrono>
#include <condition_variable>
#include <mutex>
#include <thread>
#include <utility>

#include "core/plan/shop.hpp"
#include "core/units/input_error.hpp"

namespace fayline::app {

struct Planner::Request {
    quint64 number = 0;
    model::Piece piece;
    plan::Shop shop;
    bool forMark = false;
    bool stopped = false;  // only its plan is wanted any more
};

struct Planner::Work {
    Work(int rest, Methods with) : rest_ms(rest), methods(std::move(with)) {}

    const int rest_ms;
    const Methods methods;
    std::mutex mutex;  // guards the members from here to `deeperIsWhole`
    std::condition_variable asked;
    std::optional<Request> waiting;
    bool working = false;
    quint64 last = 0;
    // The longer work's newest plan that the window has not taken yet; null: nothing is under way.
    std::shared_ptr<const plan::Plan> deeper;
    quint64 deeperOf = 0;
    bool deeperIsWhole = false;

    std::atomic<bool> stop = false;   // the longer work is no longer wanted
    std::atomic<bool> leave = false;  // nor is any other

    std::shared_ptr<const plan::Plan> before;  // of the piece on the table; touched by the worker alone
    std::thread thread;

    // The next request, waiting for it up to `patience_ms`, or as long as it takes; nothing: none came, the longer work
    // was stopped meanwhile, or the planner ends.
    std::optional<Request> take(std::optional<int> patience_ms) {
        std::unique_lock locked(mutex);
        const auto due = [this] { return waiting || leave; };
        if (patience_ms) {
            asked.wait_for(locked, std::chrono::milliseconds(*patience_ms), [&] { return due() || stop; });
        } else {
            working = waiting.has_value();
            asked.wait(locked, due);
        }
        if (leave || !waiting) return std::nullopt;
        std::optional<Request> request = std::exchange(waiting, std::nullopt);
        stop = request->stopped;
        return request;
    }

    bool isNewest(quint64 number) {
        const std::scoped_lock locked(mutex);
        return number == last;
    }
};

namespace {

QString wordsOf(const units::InputError& error) {
    return QString::fromStdString(error.wrong() + "; " + error.accepted());
}

// A defect of the program; the window lives on and shows what is known of it.
QString wordsOfDefect(const std::exception& error) {
    return Planner::tr("no plan could be made: %1").arg(QString::fromUtf8(error.what()));
}

}  // namespace

Planner::Methods Planner::Methods::ofTheCore() {
    return {[](const model::Piece& piece, const plan::Shop& shop, const plan::Plan* before,
               const std::atomic<bool>& stop) { return plan::makePlan(piece, shop, before, stop); },
            [](const model::Piece& piece, const plan::Shop& shop, const plan::Plan& plan, const std::atomic<bool>& stop,
               const plan::OnPart& onPart) { return plan::deepenStepwise(piece, shop, plan, stop, onPart); }};
}

Planner::Planner(QObject* parent, int rest_ms, Methods methods)
    : QObject(parent), work_(std::make_unique<Work>(rest_ms, std::move(methods))) {
    work_->thread = std::thread([this] { work(); });
}

Planner::~Planner() {
    {
        const std::scoped_lock locked(work_->mutex);
        work_->leave = true;
        work_->stop = true;
        work_->asked.notify_all();
    }
    work_->thread.join();
}

quint64 Planner::put(const model::Piece& piece, const plan::Shop& shop, bool forMark) {
    const std::scoped_lock locked(work_->mutex);
    work_->waiting = Request{++work_->last, piece, shop, forMark};  // the one that waited is dropped
    work_->working = true;
    work_->stop = true;
    work_->asked.notify_all();
    return work_->last;
}

quint64 Planner::ask(const model::Piece& piece, const plan::Shop& shop) {
    return put(piece, shop, false);
}

quint64 Planner::askMark(const model::Piece& piece, const plan::Shop& shop) {
    return put(piece, shop, true);
}

void Planner::stop() {
    const std::scoped_lock locked(work_->mutex);
    if (work_->waiting) work_->waiting->stopped = true;
    work_->stop = true;
    work_->asked.notify_all();
}

bool Planner::isWorking() const {
    const std::scoped_lock locked(work_->mutex);
    return work_->working;
}

// On the worker: answers requests as they come; when none has come for a while, works the last one out at length.
void Planner::work() {
    std::optional<Request> request = work_->take({});
    while (request) {
        std::optional<Request> next;
        if (request->forMark) {
            mark(*request);
        } else {
            const bool hasPlan = answer(*request);
            next = work_->take(work_->rest_ms);
            if (!next) {
                if (hasPlan) deepen(*request);
                send(request->number, [this, number = request->number] { emit finished(number); });
            }
        }
        request = next ? std::move(next) : work_->take({});
    }
}

// Dropped by Qt if the planner is gone by then.
template <class Deliver>
void Planner::send(quint64 number, Deliver deliver) {
    QMetaObject::invokeMethod(
        this,
        [this, number, deliver = std::move(deliver)] {
            if (work_->isNewest(number)) deliver();
        },
        Qt::QueuedConnection);
}

// False: there is no plan. One that was made is sent though a newer one is asked for, since it follows the hand; they
// are made and delivered one after the other, so that none comes after a newer one's.
bool Planner::answer(const Request& request) {
    const quint64 number = request.number;
    const auto refuse = [&](const QString& path, const QString& why) {
        QMetaObject::invokeMethod(
            this, [this, number, path, why] { emit refused(number, path, why); }, Qt::QueuedConnection);
        return false;
    };
    try {
        std::optional<plan::Plan> plan =
            work_->methods.make(request.piece, request.shop, work_->before.get(), work_->leave);
        if (!plan) return false;
        work_->before = std::make_shared<const plan::Plan>(std::move(*plan));
        QMetaObject::invokeMethod(
            this, [this, number, made = work_->before] { emit planned(number, made); }, Qt::QueuedConnection);
        return true;
    } catch (const units::InputError& error) {
        return refuse(QString::fromStdString(error.path()), wordsOf(error));
    } catch (const std::exception& error) {
        return refuse({}, wordsOfDefect(error));
    }
}

// The whole plan, made anew from nothing but the piece, so that what stands in the end does not depend on how the hand
// came there; nothing: given up.
std::optional<plan::Plan> Planner::wholePlan(const Request& request, const plan::OnPart& onPart) {
    const std::optional<plan::Plan> plan = work_->methods.make(request.piece, request.shop, nullptr, work_->stop);
    if (!plan) return std::nullopt;
    return work_->methods.deepen(request.piece, request.shop, *plan, work_->stop, onPart);
}

void Planner::deepen(const Request& request) {
    const quint64 number = request.number;
    const auto fail = [&](const QString& why) { send(number, [this, number, why] { emit failed(number, why); }); };
    try {
        std::optional<plan::Plan> whole = wholePlan(request, [this, number](plan::Plan part) {
            sendDeeper(number, std::make_shared<const plan::Plan>(std::move(part)), false);
        });
        if (!whole) return;
        work_->before = std::make_shared<const plan::Plan>(std::move(*whole));
        sendDeeper(number, work_->before, true);
    } catch (const units::InputError& error) {
        fail(wordsOf(error));
    } catch (const std::exception& error) {
        fail(QString::fromUtf8(error.what()));
    }
}

void Planner::mark(const Request& request) {
    const auto deliver = [this, number = request.number](const PieceMark& mark) {
        send(number, [this, number, mark] { emit marked(number, mark); });
    };
    try {
        if (const std::optional<plan::Plan> whole = wholePlan(request, nullptr)) deliver(markOf(*whole));
    } catch (const units::InputError& error) {
        deliver(markOfRefusal(wordsOf(error)));
    } catch (const std::exception& error) {
        deliver({plan::Severity::caution,
                 tr("Part of this plan could not be calculated: %1").arg(QString::fromUtf8(error.what()))});
    }
}

// One delivery is under way at most; it takes what is newest when it arrives.
void Planner::sendDeeper(quint64 number, std::shared_ptr<const plan::Plan> plan, bool whole) {
    {
        const std::scoped_lock locked(work_->mutex);
        const bool underWay = work_->deeper != nullptr;
        work_->deeper = std::move(plan);
        work_->deeperOf = number;
        work_->deeperIsWhole = whole;
        if (underWay) return;
    }
    QMetaObject::invokeMethod(
        this,
        [this] {
            std::unique_lock locked(work_->mutex);
            const std::shared_ptr<const plan::Plan> newest = std::exchange(work_->deeper, nullptr);
            const quint64 request = work_->deeperOf;
            const bool isWhole = work_->deeperIsWhole;
            const bool isNewest = request == work_->last;
            locked.unlock();
            if (!isNewest) return;
            if (isWhole) {
                emit deepened(request, newest);
            } else {
                emit studied(request, newest);
            }
        },
        Qt::QueuedConnection);
}

}  // namespace fayline::app

#include "moc_planner.cpp"
