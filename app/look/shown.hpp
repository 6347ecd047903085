// What every view is given to show: one piece, the newest plan that belongs to it, and whether that is out of date.
#pragma once

#include <QString>
#include <memory>

#include "core/boat/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::app {

struct Shown {
    boat::Piece piece;
    int pieceIndex = -1;                     // -1: the boat has no piece; all else is then empty
    std::shared_ptr<const plan::Plan> plan;  // the last good one; null before the first
    bool outOfDate = false;                  // the plan is not of this piece as it stands
    QString reason;      // why the piece as it stands cannot be planned; empty: it can, or is being planned
    QString reasonPath;  // the place at fault, as a path from the piece on
    measure::Display display;
    std::vector<wood::Species> species;
};

}  // namespace fayline::app
