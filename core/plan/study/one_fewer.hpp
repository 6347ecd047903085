// A strip that breaks at the bench with no spare at hand: what the plan becomes without it, on the form that is made.
#pragma once

#include <vector>

#include "core/laminate/springback/form_plan.hpp"
#include "core/model/boat.hpp"
#include "core/plan/findings/text.hpp"

namespace fayline::plan {

struct Shop;
struct Plan;

struct OneFewer {
    int place = 1;          // of the strip that is nearest to breaking: left out
    model::Stack stack;     // what stands there then
    double lost_m = 0;      // by which the glued stack gets shallower, at the tightest place
    double stiffShare = 0;  // its bending stiffness there once glued, of what it was
    double ratio = 0;       // rho there, the record's factor counted; where nothing lets go 0
    laminate::Opening off;  // let go from the form made for one more, against the wanted line; nothing where it stays
    Message cannot;         // why it cannot be done without the strip; empty: it can
};

// Of a single strip nothing is left, and that is why it cannot be done.
//   (1) the same piece with the stack given has, in its own plan with that form, this springback and opening
OneFewer withOneFewer(const model::Piece& piece, const Shop& shop, const Plan& plan);

// The same in full sentences.
std::vector<Message> oneFewerTexts(const OneFewer& fewer, const Plan& plan);

}  // namespace fayline::plan
