// A change that a view asks for; the window makes the undo command.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/model/boat.hpp"

namespace fayline::app {

struct Change {
    QString name;        // as a user understands it, in the undo menu: "Move WL 12"
    QString merges;      // changes in a row with the same non-empty key become one step: "drag point 5"
    model::Piece after;  // the whole piece as it shall be
    std::optional<std::vector<model::Board>> boatBoards = std::nullopt;  // the boat's too, in the same step
};

}  // namespace fayline::app
