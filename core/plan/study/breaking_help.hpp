// What would help where strips break or are too likely to: thinner ones, another wood, softening before.
#pragma once

#include <string>
#include <vector>

#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::plan {

// Each strained to no more than surestShare (choices_naming.hpp) of what breaks it in the mean.
struct BreakingHelp {
    // The thickest strip of the same wood, in whole thirty-seconds of an inch or half millimetres as lengths are read;
    // 0: none that is made. Strain goes with thickness; that a thinner strip lies a little nearer to the form is left
    // out.
    double thickness_m = 0;
    // Woods of which the strip would go round as thick as it is, those that bend furthest first; at most three. At the
    // stack's moisture and slope of grain, the table's own values.
    std::vector<std::string> species;
    bool hot = false;     // steamed or boiled it would not tear while it is bent
    double leastSet = 0;  // the share of the curve that it then has to keep, dried on the form
};

// Of a strip of the plan of this piece, as it is bent there.
BreakingHelp breakingHelp(const model::Piece& piece, const Shop& shop, const laminate::Strip& strip);

// What to do in one short sentence: the first that helps.
Message breakingAdvice(const BreakingHelp& help, const Shop& shop);
// All that helps, a sentence each. Soaked cold nothing is known to help, which is said.
std::vector<Message> breakingHelpTexts(const BreakingHelp& help, const Shop& shop);

}  // namespace fayline::plan
