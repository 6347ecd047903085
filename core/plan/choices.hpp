// Which thickness to choose: every stack that the stock allows for this line, counted in every way at once.
#pragma once

#include <atomic>
#include <optional>
#include <string>
#include <vector>

#include "core/boat/boat.hpp"

namespace fayline::plan {

struct Shop;
struct Plan;

struct Choice {
    std::vector<boat::Strips> strips;  // what would stand in stack.strips
    bool mixed = false;                // thinner strips where the bend is tightest
    bool asItIs = false;               // the stack as the piece has it now
    double thickness_m = 0;            // of the thickest strip
    int count = 0;
    double depth_m = 0;           // of the finished stack
    double strain = 0;            // greatest of any strip
    double strainShare = 0;       // of what breaks it
    double chanceOfBreaking = 0;  // that any breaks
    int spares = 0;               // -1: no number is sensible
    double springbackRatio = 0;
    double endPull_N = 0;  // pull that brings the end down at the last station, or B k / arm
    double glue_kg = 0;
    int glueLines = 0;
    std::optional<double> margin_s;  // of the day, where it is known
    double woodLost = 0;             // share of the stock's wood that becomes sawdust and shavings
    bool possible = true;            // false: a strip breaks, no room, no form
    bool unbeaten = false;           // no other is as good on every count and better on one
    std::string named;               // why this one; empty: not the one named
};

struct Choices {
    std::vector<Choice> all;  // by thickness; mixed ones after
    int namedIndex = -1;
};

// `stop` as in deepen.
std::optional<Choices> choicesFor(const boat::Piece& piece, const Shop& shop, const Plan& plan,
                                  const std::atomic<bool>& stop);

}  // namespace fayline::plan
