#include "core/plan/study/deepen.hpp"

#include <algorithm>
#include <array>
#include <condition_variable>
#include <exception>
#include <mutex>
#include <thread>
#include <utility>

#include "core/plan/findings/findings.hpp"
#include "core/plan/parts.hpp"
#include "core/plan/study/studies.hpp"

namespace fayline::plan {

namespace {

// Works the studies off on several threads. A study begins when those that it stands on have ended; of those that can
// begin, the first of the table does.
class Run {
public:
    Run(const StudyTable& table, const model::Piece& piece, const Shop& shop, const Plan& plan,
        const std::atomic<bool>& stop)
        : table_(table), piece_(piece), shop_(shop), plan_(plan), stop_(stop) {}

    // On each thread: takes studies until none is left to begin.
    void work() {
        std::unique_lock locked(mutex_);
        while (true) {
            std::size_t place = count;
            changed_.wait(locked, [&] {
                place = next();
                return place < count || begun_ == count || stop_;
            });
            if (stop_ || place == count) break;
            states_[place] = State::begun;
            ++begun_;
            const std::optional<Study> needed = table_[place].needs;
            std::optional<Plan> given;
            if (needed) {
                given = plan_;
                if (const Part& part = parts_[placeOf(*needed)]) part(*given);
            }
            locked.unlock();
            Part part;
            std::exception_ptr failure;
            try {
                part = table_[place].work(piece_, shop_, given ? *given : plan_, stop_);
            } catch (...) {
                failure = std::current_exception();
            }
            locked.lock();
            parts_[place] = std::move(part);
            failures_[place] = failure;
            states_[place] = State::ended;
            ++ended_;
            changed_.notify_all();
        }
        --working_;
        changed_.notify_all();
    }

    // In the caller's thread, until every thread has ended: tells of what has come.
    void tell(const OnPart& onPart) {
        std::size_t reported = 0;
        std::unique_lock locked(mutex_);
        while (true) {
            changed_.wait(locked, [&] { return working_ == 0 || (onPart && ended_ > reported); });
            if (working_ == 0 || ended_ == count) break;
            reported = ended_;
            if (stop_) continue;
            const std::array<Part, count> parts = parts_;
            locked.unlock();
            onPart(withParts(parts));
            locked.lock();
        }
        changed_.wait(locked, [&] { return working_ == 0; });
    }

    void setThreads(unsigned threads) { working_ = threads; }

    // All of it, when every thread has ended; nothing where the work was stopped.
    std::optional<Plan> whole() const {
        for (const std::exception_ptr& failure : failures_) {
            if (failure) std::rethrow_exception(failure);
        }
        const bool all = std::ranges::all_of(parts_, [](const Part& part) { return bool(part); });
        if (!all || stop_) return std::nullopt;
        return withParts(parts_);
    }

private:
    static constexpr std::size_t count = studyCount;
    enum class State { waiting, begun, ended };

    std::size_t placeOf(Study study) const {
        const auto found = std::ranges::find(table_, study, &StudyWork::study);
        return static_cast<std::size_t>(found - table_.begin());
    }

    // The first study that can begin; `count`: none.
    std::size_t next() const {
        for (std::size_t i = 0; i < count; ++i) {
            if (states_[i] != State::waiting) continue;
            const std::optional<Study> needed = table_[i].needs;
            if (!needed || states_[placeOf(*needed)] == State::ended) return i;
        }
        return count;
    }

    Plan withParts(const std::array<Part, count>& parts) const {
        Plan plan = plan_;
        for (std::size_t i = 0; i < count; ++i) {
            if (parts[i]) parts[i](plan);
        }
        wordStudies(piece_, shop_, plan);
        return plan;
    }

    const StudyTable& table_;
    const model::Piece& piece_;
    const Shop& shop_;
    const Plan& plan_;
    const std::atomic<bool>& stop_;

    std::mutex mutex_;  // guards the members below
    std::condition_variable changed_;
    std::array<State, count> states_{};
    std::array<Part, count> parts_;
    std::array<std::exception_ptr, count> failures_;
    std::size_t begun_ = 0;
    std::size_t ended_ = 0;
    unsigned working_ = 0;
};

}  // namespace

std::optional<Plan> deepenWith(const StudyTable& table, const model::Piece& piece, const Shop& shop, const Plan& plan,
                               const std::atomic<bool>& stop, const OnPart& onPart, unsigned threads) {
    const unsigned cores = threads > 0 ? threads : std::thread::hardware_concurrency();
    const unsigned workers = std::clamp(cores, 1u, static_cast<unsigned>(studyCount));
    Run run(table, piece, shop, plan, stop);
    run.setThreads(workers);
    {
        std::vector<std::jthread> all;
        for (unsigned i = 0; i < workers; ++i) all.emplace_back([&run] { run.work(); });
        run.tell(onPart);
    }
    return run.whole();
}

std::optional<Plan> deepenStepwise(const model::Piece& piece, const Shop& shop, const Plan& plan,
                                   const std::atomic<bool>& stop, const OnPart& onPart, unsigned threads) {
    return deepenWith(studies(), piece, shop, plan, stop, onPart, threads);
}

std::optional<Plan> deepen(const model::Piece& piece, const Shop& shop, const Plan& plan, const std::atomic<bool>& stop,
                           unsigned threads) {
    return deepenStepwise(piece, shop, plan, stop, nullptr, threads);
}

}  // namespace fayline::plan
