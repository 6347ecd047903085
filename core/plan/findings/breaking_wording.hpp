// The words in which breaking is told: what would keep strips whole, and what becomes of a stack that lost one.
#pragma once

#include <string>

#include "core/plan/plan.hpp"
#include "core/plan/study/breaking.hpp"

namespace fayline::plan {

// "about 1 in 20", "about 7 in 10"; "under 1 in 1,000" and "more than 99 in 100" beyond what is known of wood.
std::string chanceText(double chance);
// The same as short as a column wants it: "1 in 20", "< 0.1 %", "> 99 %".
std::string chanceBrief(double chance);

// What it is, the chance that it gives, and what it asks for: a full sentence.
Message remedyText(const BreakingRemedy& remedy);

// Fills `becomes` and `whatToDo`.
void wordLostStrip(LostStrip& lost, const model::Piece& piece, const Plan& plan);

}  // namespace fayline::plan
