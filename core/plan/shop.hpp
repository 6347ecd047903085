// What a plan needs beside the piece: the woods, the glues, what the boat's other pieces and its trials say.
#pragma once

#include "core/glue/adhesive.hpp"
#include "core/math/shared.hpp"
#include "core/model/boat.hpp"
#include "core/units/display.hpp"
#include "core/wood/species.hpp"
#include "core/wood/trial.hpp"

namespace fayline::plan {

struct Shop {
    units::Display display;
    math::SharedList<wood::Species> species;        // the user's own before the built-in ones
    math::SharedList<glue::Adhesive> adhesives;     // the user's own before the built-in ones
    math::SharedList<model::Piece> recorded;        // the boat's pieces whose springback was measured
    math::SharedList<wood::WoodMeasured> measured;  // what the boat's trials say of its woods
    math::SharedList<model::Board> boards;          // the boat's
    math::SharedList<model::Piece> sharing;         // the pieces that list no boards of their own and so share these
};

// The shop of a boat: its display units, its own woods, the built-in ones.
Shop shopOf(const model::Boat& boat);

}  // namespace fayline::plan
