#include "app/panels/holding_changes.hpp"

#include <QObject>
#include <cmath>

#include "core/units/units.hpp"

namespace fayline::app {

const plan::HoldingStudy* studyOf(const Shown& shown, plan::Study part) {
    const bool any = shown.pieceIndex >= 0 && shown.plan && !shown.outOfDate && plan::has(*shown.plan, part);
    return any ? &*shown.plan->holdingStudy : nullptr;
}

std::optional<Change> adoptProposal(const Shown& shown) {
    const plan::HoldingStudy* study = studyOf(shown, plan::Study::proposal);
    if (!study || !study->proposal.finished || study->proposal.stations.empty()) return std::nullopt;
    Change change{QObject::tr("Adopt %1 proposed stations").arg(study->proposal.stations.size()), {}, shown.piece};
    change.after.holding.stations = holding::stationsOf(study->proposal);
    if (change.after == shown.piece) return std::nullopt;
    return change;
}

namespace {

double roundedUp(double length_m, const units::Display& display) {
    const bool metric = display.lengths == units::LengthNotation::millimetres;
    const double step_m = metric ? units::fromMillimetres(1) : units::sixteenth_m;
    constexpr double rounding = 1e-6;  // of a step: what is already whole is not carried on
    return std::ceil(length_m / step_m - rounding) * step_m;
}

void lengthen(double& runsPast_m, std::optional<double>& carriesOn_m, const holding::EndNeed& need,
              const units::Display& display) {
    if (!need.overRun_m || !std::isfinite(*need.overRun_m)) return;
    const double wanted_m = roundedUp(*need.overRun_m, display);
    if (*need.overRun_m > runsPast_m) runsPast_m = wanted_m;
    if (carriesOn_m && *need.overRun_m > *carriesOn_m) carriesOn_m = wanted_m;
}

}  // namespace

std::optional<Change> runOnAsNeeded(const Shown& shown) {
    const plan::HoldingStudy* study = studyOf(shown, plan::Study::overRun);
    if (!study) return std::nullopt;
    Change change{QObject::tr("Run strips and form on as needed"), {}, shown.piece};
    model::Piece& after = change.after;
    lengthen(after.stack.runsPastStart_m, after.form.carriesOnStart_m, study->overRun.start, shown.display);
    lengthen(after.stack.runsPastEnd_m, after.form.carriesOnEnd_m, study->overRun.end, shown.display);
    if (after == shown.piece) return std::nullopt;
    return change;
}

}  // namespace fayline::app
