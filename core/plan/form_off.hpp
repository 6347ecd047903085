// How far a form's edge lies from that of the wanted piece, along the line.
#pragma once

#include <vector>

#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::plan {

struct FormOff {
    double at_m = 0;   // along the wanted line
    double off_m = 0;  // square to the wanted edge, > 0 toward the strips
};

// From where the form begins to where it ends, every 10 mm and at both ends. Empty where the form has the wanted line.
std::vector<FormOff> formOff(const model::Piece& piece, const Plan& plan);

}  // namespace fayline::plan
