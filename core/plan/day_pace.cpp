#include "core/plan/day_pace.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/math/count.hpp"
#include "core/plan/day_clock.hpp"
#include "core/plan/day_learned.hpp"
#include "core/units/display.hpp"
#include "core/units/input_error.hpp"

namespace fayline::plan {

namespace {

constexpr double givenCounts = 2;  // days
constexpr double leastCovered = 0.5;
constexpr double mostTimes = 4;

// Real over planned working minutes of a recorded gluing; nothing where it says too little.
std::optional<double> ratioOf(const model::Piece& piece, const Shop& shop, const DayPlan& day,
                              const model::Record& record) {
    Plan plan;
    plan.day = day;
    DayInHand inHand{piece, shop, std::move(plan), 0, false, {}};
    std::vector<schedule::Event> events;
    // The gluing of which it names most tasks.
    for (std::size_t i = 0; i < day.gluings.size(); ++i) {
        DayInHand other = inHand;
        other.gluing = static_cast<int>(i);
        other.job = day.gluings[i].job;
        std::vector<schedule::Event> of = eventsOf(other, record);
        if (i > 0 && of.size() <= events.size()) continue;
        inHand = std::move(other);
        events = std::move(of);
    }
    if (events.empty()) return std::nullopt;
    inHand.job = jobInAir(inHand, record.air_C.value_or(piece.glue.air_C));
    const schedule::Now now = schedule::stateAt(jobsOf(inHand, events), events, events.back().at_s);
    double planned_s = 0;
    double real_s = 0;
    for (const schedule::Taken& taken : schedule::takenOf(inHand.job, now)) {
        planned_s += taken.planned_s;
        real_s += taken.real_s;
    }
    double all_s = 0;
    for (const schedule::Task& task : schedule::runOf(inHand.job).tasks) {
        if (task.hands > 0) all_s += task.takes_s;
    }
    if (!(planned_s > 0) || planned_s < leastCovered * all_s) return std::nullopt;
    const double ratio = real_s / planned_s;
    if (!(ratio >= 1 / mostTimes && ratio <= mostTimes)) return std::nullopt;
    return ratio;
}

}  // namespace

Pace paceOf(const model::Piece& piece, const Shop& shop, const DayPlan& day) {
    std::vector<double> seen;
    for (const model::Record& record : piece.record) {
        if (record.dryFit || day.gluings.empty()) continue;
        if (const std::optional<double> ratio = ratioOf(piece, shop, day, record)) seen.push_back(std::log(*ratio));
    }
    Pace pace{1, piece.crew.pace, math::countOf(seen)};
    if (seen.empty()) return pace;
    const double count = givenCounts + static_cast<double>(seen.size());
    double sum = 0;
    for (const double x : seen) sum += x;
    const double mean = sum / count;
    double squares = givenCounts * (piece.crew.pace * piece.crew.pace + mean * mean);
    for (const double x : seen) squares += (x - mean) * (x - mean);
    pace.middle = std::exp(mean);
    pace.scatter = std::sqrt(squares / count);
    return pace;
}

schedule::Uncertain uncertainOf(const model::Crew& crew, const Pace& pace) {
    const auto chance = [](const model::Mishap& mishap) { return schedule::Chance{mishap.chance, mishap.lasts_s}; };
    return {crew.uncertain,
            pace.scatter,
            pace.middle,
            crew.glueUncertain,
            chance(crew.mishaps.stripBreaks),
            chance(crew.mishaps.clampSlips),
            chance(crew.mishaps.cupSpills)};
}

void checkCrew(const model::Crew& crew) {
    const auto share = [](double value, const char* path) {
        if (value >= 0 && value <= 1) return;
        throw units::InputError(path, units::writeNumber(100 * value, 4) + " is not a share",
                                "give a number from 0 to 100");
    };
    share(crew.uncertain, "crew.uncertain_pct");
    share(crew.pace, "crew.pace_pct");
    share(crew.glueUncertain, "crew.glue_uncertain_pct");
    schedule::checkUncertain(uncertainOf(crew, {1, crew.pace, 0}));
}

}  // namespace fayline::plan
