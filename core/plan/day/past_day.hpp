// A recorded day beside its plan: what was planned, what was, what the crew's rates learn from it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/plan/day/day_learned.hpp"

namespace fayline::plan {

// The gluing that a record is of, of which it names most tasks, and its events; in the air of the record.
struct RecordedDay {
    DayInHand inHand;  // its plan has the day alone
    std::vector<schedule::Event> events;
    schedule::Now now;  // at the last event
};

// Nothing where the record names no task of this day.
std::optional<RecordedDay> recordedDay(const model::Piece& piece, const Shop& shop, const DayPlan& day,
                                       const model::Record& record);

struct PastTask {
    std::string name;
    double planned_s = 0;          // how long it takes
    double plannedStart_s = 0;     // since the start of the day, as the next
    std::optional<double> took_s;  // without pauses; none: not done
    std::optional<double> start_s;
};

struct PastDay {
    int gluing = 0;
    int gluings = 1;
    double plannedClosed_s = 0;      // until the last station is on
    std::optional<double> closed_s;  // none: the day ended before
    double plannedEnd_s = 0;
    double end_s = 0;  // the last that was said
    int plannedBatches = 0;
    int batches = 0;             // mixed
    std::optional<double> pace;  // time taken over time planned, of what was done; none: nothing was measured
    std::vector<PastTask> tasks;
    std::vector<Compared> compared;
    RatesLearned learned;
};

// `day`: of the piece as it stands; where the record keeps a copy of another stack, line or form, a plan is made of
// that with the tools, the glue and the rates of now. Nothing where the record names no task, or where no plan can be
// made of that copy.
std::optional<PastDay> pastDay(const model::Piece& piece, const Shop& shop, const DayPlan& day,
                               const model::Record& record);

// Whether the piece has another line, stack or form than when the record was made.
bool hasChangedSince(const model::Piece& piece, const model::Record& record);

}  // namespace fayline::plan
