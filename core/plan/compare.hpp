// Two plans side by side: what became better or worse in each of the nine questions, and which findings went and came.
//
// A figure is alike where both sides differ by no more than its threshold, else better or worse by which way is easier
// to build: a wider radius, less bend, less springback, smaller gaps, lighter pulls, fewer clamps, less glue, more time
// to spare. The thresholds are what is read of such a figure on the bench. Common practice, no source:
//   tightest radius, glue, strips to saw   2 % of the greater
//   hardest pull                           5 % of the greater
//   misfit, gap                            0.1 mm
//   bend, chance that one breaks           0.01 (one in a hundred)
//   springback at the end                  1 mm
//   spare time, time of the glue-up        1 min
//   what is counted                        none
// A question goes by its stops where their number differs, then by its cautions, else by its figures: better where some
// are better and none is worse.
#pragma once

#include <vector>

#include "core/plan/plan.hpp"

namespace fayline::plan {

enum class Judged {
    alike,
    better,  // the second than the first
    worse,
    both,     // some figures better, some worse
    differs,  // neither better nor worse, or one side has no such figure
};
const char* judgedWord(Judged judged);  // "better"

struct FigureCompared {
    Message name;   // "tightest radius"
    Message first;  // as it is written; empty: there is none
    Message second;
    Judged judged = Judged::alike;
};

struct QuestionCompared {
    Question question = Question::line;
    std::vector<FigureCompared> figures;  // those that at least one side has; stops and cautions first
    Judged judged = Judged::alike;
};

struct Comparison {
    std::vector<QuestionCompared> questions;  // all nine, in order
    // Findings are compared where both plans have the same studies: what is not studied finds nothing.
    bool findingsCompared = true;
    std::vector<Finding> gone;  // causes of the first plan of which the second has none, or fewer; by code
    std::vector<Finding> come;  // and the other way round
};

// What the second plan is against the first. Pure; of any two pieces, studied or not.
//   (1) a plan against itself is alike in everything
//   (2) exchanged, better becomes worse, and what is gone has come
Comparison compare(const Plan& first, const Plan& second);

}  // namespace fayline::plan
