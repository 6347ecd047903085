// How far a piece springs open when its form has the wanted line, for stacks that are tried out: without the form
// itself.
#pragma once

#include "core/laminate/springback/form_plan.hpp"

namespace fayline::laminate {

// PartForm::uncorrected of the first part. Throws as planForm does.
Opening uncorrectedOpening(const model::Piece& piece, const line::Line& line, const StackPlan& stack);

}  // namespace fayline::laminate
