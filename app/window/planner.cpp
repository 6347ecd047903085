#include "app/window/planner.hpp"

#include <chrono>
#include <condition_variable>
#include <mutex>
#include <thread>
#include <utility>

#include "app/look/place_words.hpp"
#include "core/plan/shop.hpp"
#include "core/units/input_error.hpp"

namespace fayline::app {

struct Planner::Request {
    quint64 number = 0;
    model::Piece piece;
    plan::Shop shop;
    For what = For::table;
    bool stopped = false;  // only its plan is wanted any more
};

struct Planner::Work {
    Work(int rest, PlanningMethods with) : rest_ms(rest), methods(std::move(with)) {}

    const int rest_ms;
    const PlanningMethods methods;
    std::mutex mutex;  // guards the members from here to `studied`
    std::condition_variable asked;
    std::optional<Request> waiting;
    bool working = false;
    quint64 last = 0;
    // The newest with studies that the window has not taken yet, and its request; nothing: none is under way.
    std::optional<std::pair<quint64, std::shared_ptr<const plan::Plan>>> studied;

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
};

Planner::Planner(QObject* parent, int rest_ms, PlanningMethods methods)
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

quint64 Planner::ask(const model::Piece& piece, const plan::Shop& shop, For what) {
    const std::scoped_lock locked(work_->mutex);
    work_->waiting = Request{++work_->last, piece, shop, what};  // the one that waited is dropped
    work_->working = true;
    work_->stop = true;
    work_->asked.notify_all();
    return work_->last;
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
        if (request->what == For::mark) {
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
            std::unique_lock looking(work_->mutex);
            const bool isNewest = number == work_->last;
            looking.unlock();
            if (isNewest) deliver();
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
        return refuse(QString::fromStdString(error.path()), refusalWords(error, request.piece));
    } catch (const std::exception& error) {
        // A defect of the program; the window lives on and shows what is known of it.
        return refuse({}, tr("no plan could be made: %1").arg(QString::fromUtf8(error.what())));
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
    const auto tell = [this, number](plan::Plan plan) {
        const auto studied = std::make_shared<const plan::Plan>(std::move(plan));
        sendStudied(number, studied);
        return studied;
    };
    try {
        std::optional<plan::Plan> whole = wholePlan(request, tell);
        if (whole) work_->before = tell(std::move(*whole));
    } catch (const units::InputError& error) {
        fail(refusalWords(error, request.piece));
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
        deliver(markOfRefusal(refusalWords(error, request.piece)));
    } catch (const std::exception& error) {
        deliver({plan::Severity::caution,
                 tr("Part of this plan could not be calculated: %1").arg(QString::fromUtf8(error.what()))});
    }
}

// One delivery is under way at most; it takes what is newest when it arrives.
void Planner::sendStudied(quint64 number, const std::shared_ptr<const plan::Plan>& plan) {
    const std::scoped_lock locked(work_->mutex);
    if (std::exchange(work_->studied, std::pair(number, plan))) return;
    QMetaObject::invokeMethod(
        this,
        [this] {
            std::unique_lock taking(work_->mutex);
            const auto [request, newest] = *std::exchange(work_->studied, std::nullopt);
            const bool isWanted = request == work_->last;
            taking.unlock();
            if (isWanted) emit studied(request, newest);
        },
        Qt::QueuedConnection);
}

}  // namespace fayline::app

#include "moc_planner.cpp"
