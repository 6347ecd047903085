// What one stack costs and risks: every count of a choice.
//
// Strain, chance and spares are those of core/laminate for the wanted line; `shareOnForm` raises the share by 1 / (1 -
// rho) where the form allows for springback (within 1 % of the form's own answer, which goes section by section). Glue,
// margin and the time of the glue-up are those of the day's plan. Wood lost: kerf and two planed faces for each strip,
// what is planed off a taper and what the stack is deeper than the piece as it is, over all the wood that is sawn for
// it; over-run and rip allowance are the same for every choice and left out.
//
// The pull that brings the ends down is that of the outermost stations, the harder of both, with all stations closed
// and as strong as need be: one contact for each stack, on the form of the stack as it is. (It does not simply go with
// the bending stiffness: a pad also crushes the wood under it until its gap is closed, which weighs more the thinner
// the strips are.) Without stations, or where that contact does not settle: the tail of a stack on a circle
// (core/holding, D) of the end's curvature k, drawn down until no more than the gap limit g is left under a station at
// the trim line, pull = B k / sqrt(6 g / k). An end that is straight or hollow lies down by itself then.
#pragma once

#include <vector>

#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/study/choices.hpp"
#include "core/plan/study/choices_candidates.hpp"

namespace fayline::plan {

// What the contacts of all choices share: the stations as strong as need be, and the stack as it is held by them.
struct EndsHeld {
    std::vector<model::Station> stations;
    holding::Held asItIs;  // where a contact begins from; without stations empty
};
EndsHeld endsHeld(const model::Piece& piece, const Shop& shop, const Plan& plan);

// `piece` has the stack whose ends are drawn down. Newtons.
double endPull(const model::Piece& piece, const Shop& shop, const Plan& plan, const EndsHeld& ends);

// The tail rule above, newtons per stiffness; 0 where the end is straight or hollow.
double tailPull(double curvature_per_m, double gapLimit_m);

// Bending stiffness of the loose strips at a place of the line as far as they still resist, N m^2, as bent.
double stiffnessAt(const model::Piece& piece, const model::Stack& stack, const Shop& shop, double lineLength_m,
                   double at_m);

// Of all strips as they are cut, and of the spares, each as long as the longest; metres.
double lengthToSaw(const laminate::StackPlan& stack);

// From the start of each glue-up until all is closed, all glue-ups together; seconds.
double glueUpTime(const DayPlan& day);

// The counts of one candidate; that it is unbeaten or named is not said here.
Choice countsOf(const Candidate& candidate, const model::Piece& piece, const Shop& shop, const Plan& plan,
                const EndsHeld& ends);

}  // namespace fayline::plan
