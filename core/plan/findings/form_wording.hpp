// The words in which springback and form are told: shared by findings, the answer, panels and papers.
#pragma once

#include <string>
#include <vector>

#include "core/laminate/springback/form_plan.hpp"
#include "core/model/boat.hpp"
#include "core/plan/findings/text.hpp"
#include "core/plan/plan.hpp"
#include "core/units/display.hpp"

namespace fayline::plan {

// Bends that people glued, let go and measured, over the rule (tests/published/measured_bends_test.cpp, P).
inline constexpr int measuredBends = 8;
inline constexpr double measuredMean = 0.83;
inline constexpr double measuredDeviation = 0.72;

// A distance that a tape shows: "9.1 mm", "3/8 in"; under a sixteenth of an inch, or a millimetre, as smallText.
std::string tapeText(double distance_m, const units::Display& display);

// "the end stands 9.1 mm open, the start laid on", without a full stop: the end further from where the form is fixed;
// closed in where it is negative.
Message endStands(const laminate::Opening& opening, bool atStart);

// Whether an opening is told at the start: where the form is fixed nearer to the end.
bool reportedAtStart(const laminate::FormPlan& form, double lineLength_m);

// The workshop's rule for equal strips in both its meanings, which are one: with the rise x measured on the form,
// y = x / n^2; on the finished piece, y = x / (n^2 - 1). With this stack's numbers, and whether it applies to it. Empty
// where nothing lets go.
std::vector<Message> ruleTexts(const model::Stack& stack, const laminate::FormPlan& form);

// How far the springback of a plan is to be trusted: by the boat's own measured pieces where there are any that say
// something, else by published bends. Empty where nothing lets go.
std::vector<Message> spreadTexts(const Plan& plan);

// What the change of moisture from gluing to service does to the curve, with its sign, next to what springback does;
// how far the end moves comes first. Empty where nothing lets go, the moisture stays, or the wood's shrinkage is not
// known.
std::vector<Message> moistureTexts(const model::Stack& stack, const Plan& plan);

// What the boat's earlier pieces say of springback and how far to trust it.
std::vector<Message> learnedTexts(const laminate::Learned& learned);

}  // namespace fayline::plan
