// Which thickness to choose: every stack that the stock allows for this line, counted in every way at once.
//
// How candidates are made is said in choices_candidates.hpp, what is counted in choices_counts.hpp, which one is named
// and why in choices_naming.hpp.
#pragma once

#include <atomic>
#include <optional>
#include <string>
#include <vector>

#include "core/model/boat.hpp"
#include "core/plan/findings/text.hpp"

namespace fayline::plan {

struct Shop;
struct Plan;

struct Choice {
    std::vector<model::Strips> strips;  // what would stand in stack.strips
    std::vector<int> gluings;           // and in stack.gluings
    bool mixed = false;                 // thinner strips where the bend is tightest
    bool asItIs = false;                // the stack as the piece has it now
    double thickness_m = 0;             // of the thickest strip that is chosen (sacrificial ones are kept as given)
    int count = 0;                      // all strips that are handled, sacrificial ones too
    double depth_m = 0;                 // of the glued stack at the line's start
    double overDepth_m = 0;             // by which it is deeper than the piece as it is: planed off
    double strain = 0;                  // greatest of any strip on the wanted line, as in the stack's own table
    double strainShare = 0;             // of what breaks it
    double shareOnForm = 0;             // the same on the form that allows for its springback
    double chanceOfBreaking = 0;        // that any breaks
    int spares = 0;                     // -1: no number is sensible
    double springbackRatio = 0;         // at the tightest place, the record counted; where nothing lets go it is none
    std::optional<double> opens_m;      // of the end that the plan tells, uncorrected; < 0: in; none: nothing lets go
    double endPull_N = 0;               // pull that brings the ends down: the harder of both, square to the form
    double glue_kg = 0;                 // mixed
    int glueLines = 0;
    std::optional<double> margin_s;  // of the day: the least that any face has left of its open time
    std::optional<double> closed_s;  // from the start of each glue-up until all is closed, all glue-ups together
    double stripLength_m = 0;        // to be sawn: of all strips with their extra length, and of the spares
    // From the piece's own boards, by a first fit: the best cut list may do with less. None where it lists
    // no boards, or more than fifty sizes of them.
    std::optional<int> stripsShort;
    std::optional<double> boards_m3;  // of the boards that are cut
    double woodLost = 0;              // share of the wood sawn up that becomes sawdust and shavings
    bool possible = true;             // false: a strip breaks, no room, no form, no board
    Message whyNot;                   // in a few words; empty where it is possible
    bool paretoOptimal = false;       // possible, and no other possible one is as good on every count and better on one
    Message named;                    // why this one, in sentences; empty: not the one named
};

struct Choices {
    std::vector<Choice> all;  // by thickness; mixed ones after
    int namedIndex = -1;      // -1: none is possible
    // The wood of which boards are listed, but none from which a strip as wide as these could be sawn; empty: none
    // such.
    std::string noStripFrom;
    double boardWidth_m = 0;  // what such a board must have one way, and the other
    double boardThick_m = 0;
};

// Without any where the contact of the plan is not worked out and no thinner strips would do. Pure, as makePlan is;
// `plan` is of this piece and shop. `stop` is looked at before each choice is counted (about a millisecond each for a
// stem); once it is set nothing is returned. Of a piece so long that counting all would take more than about half a
// second, fewer mixed ones are counted. The same piece gives the same bits.
//   (1) the counts of the stack as it is are those of the plan
//   (2) adopted, a choice has these counts in its own plan (springback and what follows from it within 1 %)
std::optional<Choices> choicesFor(const model::Piece& piece, const Shop& shop, const Plan& plan,
                                  const std::atomic<bool>& stop);

// `stack` with the strips of the choice: woods, measured values, softening, dry faces and sacrificial strips stay, the
// gluings end between the same layers of the depth.
model::Stack adopt(const model::Stack& stack, const Choice& choice);

}  // namespace fayline::plan
