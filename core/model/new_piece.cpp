#include "core/model/new_piece.hpp"

namespace fayline::model {

Piece newPiece(const std::string& name) {
    Piece piece;
    piece.name = name;
    // Round upward, so that strips on the left lie outside the bend as on a form.
    piece.line.points = {Point{.label = "Start"}, Point{.label = "Middle", .x_m = 0.6, .y_m = 0.09},
                         Point{.label = "End", .x_m = 1.2}};
    return piece;
}

}  // namespace fayline::model
