#include "core/model/new_piece.hpp"

#include "core/units/units.hpp"

namespace fayline::model {

Piece newPiece(const std::string& name, const units::Display& display) {
    const bool metric = display.lengths == units::LengthNotation::millimetres;
    const auto either = [metric](double mm, double inches) {
        return metric ? units::fromMillimetres(mm) : inches * units::inch_m;
    };
    Piece piece;
    piece.name = name;
    // Round upward, so that strips on the left lie outside the bend as on a form.
    piece.line.points = {Point{.label = "Start"},
                         Point{.label = "Middle", .x_m = either(600, 24), .y_m = either(90, 3.5)},
                         Point{.label = "End", .x_m = either(1200, 48)}};
    piece.line.readTo_m = either(1, 1.0 / 16);
    piece.line.fairWithin_m = either(1.5, 1.0 / 16);
    for (Strips& strips : piece.stack.strips) strips.thickness_m = either(6, 0.25);
    for (Width& width : piece.stack.widths) width.width_m = either(50, 2);
    piece.stack.ripAllowance_m = either(3, 1.0 / 8);
    piece.stack.runsPastStart_m = either(100, 4);
    piece.stack.runsPastEnd_m = either(150, 6);
    return piece;
}

}  // namespace fayline::model
