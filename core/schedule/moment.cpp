#include "core/schedule/moment.hpp"

#include <algorithm>

namespace fayline::schedule {

namespace {

FaceState stateOf(const FaceTimes& face, double at_s) {
    if (at_s < face.wetted_s) return FaceState::dry;
    const bool late = face.openUntil_s < face.closed_s;
    if (late && at_s > face.openUntil_s) return FaceState::goneOff;
    return at_s < face.closed_s ? FaceState::open : FaceState::closed;
}

}  // namespace

Moment momentOf(const Run& run, double at_s) {
    Moment moment;
    moment.at_s = at_s;
    // A strip that several cups go on is done with the last of its tasks.
    std::vector<int> notWetted;
    std::vector<int> notSpread;
    for (std::size_t i = 0; i < run.tasks.size(); ++i) {
        const Task& task = run.tasks[i];
        const bool done = task.end_s <= at_s;
        if (!done && task.start_s <= at_s) moment.doing.push_back(static_cast<int>(i));
        if (task.work == Work::wetOut && task.strip >= 0) (done ? moment.wetted : notWetted).push_back(task.strip);
        if (task.work == Work::spread && task.strip >= 0) (done ? moment.spread : notSpread).push_back(task.strip);
        if (task.work == Work::place && done) moment.inPlace = true;
        if (task.work == Work::close && done && task.station > 0) moment.closed.push_back(task.station);
    }
    const auto settle = [](std::vector<int>& strips, const std::vector<int>& undone) {
        std::ranges::sort(strips);
        strips.erase(std::unique(strips.begin(), strips.end()), strips.end());
        std::erase_if(strips, [&](int strip) { return std::ranges::find(undone, strip) != undone.end(); });
    };
    settle(moment.wetted, notWetted);
    settle(moment.spread, notSpread);
    for (const FaceTimes& face : run.faces) moment.faces.push_back(stateOf(face, at_s));
    for (const CupTimes& cup : run.cups) {
        const auto mix = std::ranges::find_if(
            run.tasks, [&](const Task& task) { return task.work == Work::mix && task.cup == cup.number; });
        if (mix != run.tasks.end() && mix->end_s <= at_s && at_s < cup.emptied_s) moment.cups.push_back(cup.number);
    }
    return moment;
}

int mostPressing(const Run& run, const Moment& moment) {
    int found = -1;
    for (std::size_t i = 0; i < moment.faces.size(); ++i) {
        if (moment.faces[i] != FaceState::open) continue;
        if (found < 0 || run.faces[i].openUntil_s < run.faces[found].openUntil_s) {
            found = static_cast<int>(i);
        }
    }
    return found;
}

}  // namespace fayline::schedule
