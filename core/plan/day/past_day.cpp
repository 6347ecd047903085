#include "core/plan/day/past_day.hpp"

#include <algorithm>
#include <ranges>

#include "core/laminate/springback/learned.hpp"
#include "core/math/count.hpp"
#include "core/units/input_error.hpp"

namespace fayline::plan {

using schedule::TaskState;
using schedule::Work;

namespace {

std::optional<double> whenClosed(const schedule::Now& now) {
    const bool closed = std::ranges::all_of(std::views::iota(std::size_t(0), now.run.tasks.size()), [&](std::size_t i) {
        const TaskState state = now.states[i];
        return now.run.tasks[i].work == Work::scrape || state == TaskState::done || state == TaskState::leftOut;
    });
    return closed ? std::optional(now.run.closed_s) : std::nullopt;
}

PastDay besidePlan(const RecordedDay& recorded) {
    const DayInHand& inHand = recorded.inHand;
    const schedule::Now& now = recorded.now;
    const schedule::Run planned = schedule::runOf(inHand.job);
    PastDay past;
    past.gluing = inHand.gluing;
    past.gluings = inHand.gluings();
    past.plannedClosed_s = planned.closed_s;
    past.closed_s = whenClosed(now);
    past.plannedEnd_s = planned.end_s;
    past.end_s = now.at_s;
    past.plannedBatches = math::countOf(inHand.job.cups);
    for (std::size_t i = 0; i < planned.tasks.size(); ++i) {
        const schedule::Task& was = now.run.tasks[i];
        PastTask task{planned.tasks[i].name, planned.tasks[i].takes_s, planned.tasks[i].start_s, {}, {}};
        if (now.states[i] == TaskState::done) {
            task.start_s = was.start_s;
            task.took_s = schedule::workedFor(was.start_s, was.end_s, now.pauses);
            if (was.work == Work::mix) ++past.batches;
        }
        past.tasks.push_back(std::move(task));
    }
    past.compared = comparedOf(inHand, now);
    past.learned = ratesOf(inHand, now);
    if (!past.compared.empty()) past.pace = now.pace;
    return past;
}

}  // namespace

std::optional<RecordedDay> recordedDay(const model::Piece& piece, const Shop& shop, const DayPlan& day,
                                       const model::Record& record) {
    Plan plan;
    plan.day = day;
    RecordedDay recorded{{piece, shop, std::move(plan), 0, record.dryFit, {}}, {}, {}};
    for (std::size_t i = 0; i < day.gluings.size(); ++i) {
        DayInHand other = recorded.inHand;
        other.gluing = static_cast<int>(i);
        other.job = record.dryFit ? dryFitOf(day.gluings[i].job) : day.gluings[i].job;
        std::vector<schedule::Event> of = eventsOf(other, record);
        if (i > 0 && of.size() <= recorded.events.size()) continue;
        recorded.inHand = std::move(other);
        recorded.events = std::move(of);
    }
    if (recorded.events.empty()) return std::nullopt;
    DayInHand& inHand = recorded.inHand;
    inHand.job = jobInAir(inHand, record.air_C.value_or(piece.glue.air_C));
    recorded.now = schedule::stateAt(jobsOf(inHand, recorded.events), recorded.events, recorded.events.back().at_s);
    return recorded;
}

bool hasChangedSince(const model::Piece& piece, const model::Record& record) {
    return record.on && *record.on != laminate::measuredOn(piece);
}

std::optional<PastDay> pastDay(const model::Piece& piece, const Shop& shop, const DayPlan& day,
                               const model::Record& record) {
    try {
        std::optional<RecordedDay> recorded;
        if (hasChangedSince(piece, record)) {
            const model::Piece was = laminate::asMeasured(piece, record);
            recorded = recordedDay(was, shop, makePlan(was, shop).day, record);
        } else {
            recorded = recordedDay(piece, shop, day, record);
        }
        if (!recorded) return std::nullopt;
        return besidePlan(*recorded);
    } catch (const units::InputError&) {
        return std::nullopt;
    }
}

}  // namespace fayline::plan
