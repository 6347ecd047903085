// A stack as it lies on a given form, and the shapes that it lets go to from there.
#pragma once

#include <vector>

#include "core/laminate/springback/form_ground.hpp"
#include "core/laminate/springback/form_line.hpp"
#include "core/laminate/springback/form_plan.hpp"
#include "core/laminate/stack.hpp"
#include "core/line/line.hpp"
#include "core/model/boat.hpp"

namespace fayline::laminate {

// The first part of the stack (all of it, without a dry face).
struct OnForm {
    FormGround ground;
    FormLine onForm;             // as it lies there
    FormLine wanted;             // as it shall be
    std::vector<double> share;   // of the wanted turn, at each place of the ground: that of the form
    std::vector<double> ratios;  // rho there, by the theory

    // Turn of the released sections over the wanted one, with `factor` x rho.
    std::vector<double> shareLetGo(double factor) const;
    FormLine letGo(double factor) const;
    double theory() const { return ratios[ground.tightest]; }  // rho at the tightest place
};

// The stack `stack` of `piece` on a form of line `form`, which may have been made for another stack (one strip more):
// its sections turn as those of that form do. Throws InputError as planForm does.
OnForm lieOn(const model::Piece& piece, const line::Line& line, const StackPlan& stack, const FormLine& form);

}  // namespace fayline::laminate
