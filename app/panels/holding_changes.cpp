#include "app/panels/holding_changes.hpp"

#include <QObject>

#include "core/plan/findings/cures.hpp"

namespace fayline::app {

const plan::HoldingStudy* studyOf(const Shown& shown, plan::Study part) {
    const bool any = shown.pieceIndex >= 0 && shown.plan && !shown.outOfDate && plan::has(*shown.plan, part);
    return any ? &*shown.plan->holdingStudy : nullptr;
}

std::optional<Change> adoptProposal(const Shown& shown) {
    if (!studyOf(shown, plan::Study::proposal)) return std::nullopt;
    const std::optional<plan::Cure> cure = plan::suggestedStations(shown.piece, *shown.plan);
    if (!cure) return std::nullopt;
    return Change{QObject::tr("Use %1 suggested stations").arg(cure->piece.holding.stations.size()), {}, cure->piece};
}

std::optional<Change> runOnAsNeeded(const Shown& shown) {
    if (!studyOf(shown, plan::Study::overRun)) return std::nullopt;
    const std::optional<plan::Cure> cure = plan::longEnough(shown.piece, *shown.plan);
    if (!cure) return std::nullopt;
    return Change{QObject::tr("Lengthen strips and form"), {}, cure->piece};
}

}  // namespace fayline::app
