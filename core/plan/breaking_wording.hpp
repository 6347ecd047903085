// The words in which breaking is told: what would keep strips whole, and what becomes of a stack that lost one.
#pragma once

#include <string>

#include "core/plan/plan.hpp"

namespace fayline::plan {

std::string softenedText(double set);
std::string straightGrainText(double slope);

// What it is and the chance that it gives, a full sentence.
std::string breakingSentence(const BreakingRemedy& remedy);

// Fills `sentence` and `whatToDo`.
void wordLostStrip(LostStrip& lost, const boat::Piece& piece, const Plan& plan);

}  // namespace fayline::plan
