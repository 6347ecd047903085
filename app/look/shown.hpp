// What every view is given to show: one piece, the newest plan that belongs to it, and whether that is out of date.
#pragma once

#include <QString>
#include <cstdint>
#include <memory>

#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"
#include "core/schedule/moment.hpp"

namespace fayline::model {
struct Shed;
}

namespace fayline::app {

struct Shown {
    Shown();
    Shown(const Shown& other);
    Shown(Shown&& other) noexcept;
    Shown& operator=(const Shown& other);
    Shown& operator=(Shown&& other) noexcept;
    ~Shown();

    // Whether both show one and the same piece of one and the same boat, in whatever state.
    bool samePieceAs(const Shown& other) const;

    std::uint64_t boatNumber = 0;  // another for each boat that is opened: ids are unique in a boat only
    model::Piece piece;
    int pieceIndex = -1;                     // -1: the boat has no piece; all else is then empty
    std::shared_ptr<const plan::Plan> plan;  // the last good one; null before the first
    bool outOfDate = false;                  // the plan is not of this piece as it stands
    QString reason;        // why the piece as it stands cannot be planned; empty: it can, or is being planned
    QString reasonPath;    // the place at fault, as a path from the piece on
    QString failure;       // why the studies that the plan lacks could not be worked out; empty: they are under way
    bool stopped = false;  // the user gave up the studies that the plan lacks
    units::Display display;
    std::vector<model::Board> boatBoards;  // that the boat's pieces share
    // That may be chosen: the boat's own and those of the shed before the built-in ones. Glues: or null.
    std::vector<wood::Species> species;
    std::shared_ptr<const std::vector<glue::Adhesive>> adhesives;
    std::shared_ptr<const model::Shed> shed;  // the user's; null: there is none
};

// A moment of the glue-up that is pointed at, for views that show what is wet and held by then.
struct PointedMoment {
    std::vector<int> strips;  // that are glued in this gluing, from the form outwards; 0: the face on the boat
    schedule::Moment moment;
    QString words;  // what goes on then

    bool operator==(const PointedMoment&) const = default;
};

}  // namespace fayline::app
