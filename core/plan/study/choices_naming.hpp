// Which choices no other beats, and which one is named.
//
// Beaten: another possible choice is as good on every count and better on one. Counts are compared as coarsely as they
// are told (shares to a thousandth, pulls to a newton, glue to a gram, the margin to half a minute), so that rounding
// beats nobody. Counted: share of breaking on the form, chance that any breaks, spares, springback where the form lets
// go, pull at the ends, glue, margin, wood lost, strips to handle.
//
// Named, of those unbeaten, is the one with the fewest strips (of equals the shallowest stack) that
//   breaking    strains no strip beyond surestShare of its mean breaking strain
//   spares      asks for no more than one spare
//   springback  gives back no more than mostSpringback of its curve (where it is let go at all)
//   pull        has ends that the strongest tool or station there is draws down (where there is any)
// A stack of strips all alike goes before a mixed one, since any spare then fits any place. Where none meets all four
// the last of them is dropped, then the last two, and so on; with none left to keep, the least strained is named.
#pragma once

#include <vector>

#include "core/plan/plan.hpp"
#include "core/plan/study/choices.hpp"

namespace fayline::plan {

// Two standard deviations of the scatter of bending strength (16 %) below its mean; by wood::chanceOfBreaking one strip
// in 160 of the most strained breaks there, size left out (D). That two are enough is common practice, no source.
inline constexpr double surestShare = 1 - 2 * 0.16;
// Measured pieces lie between nothing and twice the rule, so the doubt about springback is as large as itself; beyond
// this it is more than a form can be trusted with. Common practice, no source.
inline constexpr double mostSpringback = 0.05;
inline constexpr int mostSpares = 1;

// The counts of a choice as they are compared, the less the better each.
std::vector<double> comparedCounts(const Choice& choice, bool letsGo);

// `one` is as good on every count and better on one.
bool beats(const std::vector<double>& one, const std::vector<double>& other);

// Marks `unbeaten`. The order of the choices does not matter.
void markParetoOptimal(std::vector<Choice>& choices, bool letsGo);

// Index of the one to name (-1: none is possible), its reason written into `named`. Marked beforehand.
int nameOne(std::vector<Choice>& choices, const model::Piece& piece, const Shop& shop, const Plan& plan);

}  // namespace fayline::plan
