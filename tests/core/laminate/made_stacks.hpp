// Stacks of strips that are alike, for tests.
#pragma once

#include "core/laminate/springback/form_plan.hpp"
#include "core/laminate/stack.hpp"
#include "core/wood/species.hpp"

namespace fayline::made {

inline model::Stack stackOf(int count, double thickness_m, double glue_m = 0.0) {
    model::Stack stack;
    stack.strips = {model::Strips{.count = count, .thickness_m = thickness_m}};
    stack.glueLine_m = glue_m;
    stack.runsPastStart_m = 0;
    stack.runsPastEnd_m = 0;
    return stack;
}

inline laminate::StackPlan planOn(const line::Line& line, const model::Stack& stack,
                                  model::Side side = model::Side::left,
                                  model::Describes describes = model::Describes::innerFace) {
    return laminate::planStack(stack, describes, side, line, wood::builtInSpecies());
}

inline model::Piece pieceOf(const model::Stack& stack, model::Side side = model::Side::left,
                            model::Describes describes = model::Describes::innerFace) {
    model::Piece piece;
    piece.stack = stack;
    piece.line.stripsOn = side;
    piece.line.describes = describes;
    return piece;
}

inline laminate::FormPlan formOn(const line::Line& line, const model::Piece& piece) {
    return laminate::planForm(piece, line, wood::builtInSpecies(),
                              planOn(line, piece.stack, piece.line.stripsOn, piece.line.describes));
}

}  // namespace fayline::made
