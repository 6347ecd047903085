// The boat on its blocks while props push it up.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

inline constexpr Phrase theProps{FAYLINE_TEXT("plan", "the props")};
inline constexpr Phrase thePropsAtTurn{FAYLINE_TEXT("plan", "when %1 goes on, the props")};
inline constexpr Phrase blockAt{FAYLINE_TEXT("plan", "block at x %1")};

inline constexpr Phrase boatLifts{FAYLINE_TEXT(
    "plan", "%1 push with %2 and lift the boat off its blocks (safe to %3). Weight and shore it; nobody under it.")};
inline constexpr Phrase boatTips{FAYLINE_TEXT(
    "plan", "%1 push with %2 and tip the boat about its %4 (safe to %3). Weight and shore it; nobody under it.")};
inline constexpr Phrase boatTipsAboutOutermost{FAYLINE_TEXT(
    "plan",
    "%1 push with %2 and tip the boat about its outermost block (safe to %3). Weight and shore it; nobody under it.")};
inline constexpr Phrase boatSlides{FAYLINE_TEXT(
    "plan", "%1 push the boat along the floor with %2 (its blocks hold %3). Shore it, or set the props more upright.")};

// What happens first at the margin; by HullPlan::Failure.
inline constexpr Phrase boatMargins[] = {
    {FAYLINE_TEXT("plan", "%1 push with %2, and the boat fails at %3. Keep them to %4, or weight and shore it.")},
    {FAYLINE_TEXT(
        "plan", "%1 push with %2, and the boat lifts off its blocks at %3. Keep them to %4, or weight and shore it.")},
    {FAYLINE_TEXT("plan", "%1 push with %2, and the boat tips at %3. Keep them to %4, or weight and shore it.")},
    {FAYLINE_TEXT("plan", "%1 push with %2, and the boat slides at %3. Keep them to %4, or weight and shore it.")},
};
inline constexpr Phrase boatMarginsWhileClosing[] = {
    {FAYLINE_TEXT("plan",
                  "%1 push with %2, and the boat fails at %3. Draw the stack in with a clamp first; nobody under the "
                  "boat.")},
    {FAYLINE_TEXT(
        "plan",
        "%1 push with %2, and the boat lifts off its blocks at %3. Draw the stack in with a clamp first; nobody "
        "under the boat.")},
    {FAYLINE_TEXT("plan",
                  "%1 push with %2, and the boat tips at %3. Draw the stack in with a clamp first; nobody under the "
                  "boat.")},
    {FAYLINE_TEXT("plan",
                  "%1 push with %2, and the boat slides at %3. Draw the stack in with a clamp first; nobody under the "
                  "boat.")},
};
inline constexpr Phrase marginWanted{FAYLINE_TEXT(
    "plan", "It fails at %1 times that push. With the margin of %2 that is wanted the props may push with %3.")};
inline constexpr Phrase mostOffTheMargin{FAYLINE_TEXT("plan", "%1 takes the most off the margin.")};
inline constexpr Phrase blockComesFree{FAYLINE_TEXT("plan", "%1 lift the boat off its %2. Tie it down there.")};
inline constexpr Phrase otherBlocksBear{FAYLINE_TEXT("plan", "The other blocks bear it.")};
inline constexpr Phrase boatDoesNotStand{FAYLINE_TEXT(
    "plan",
    "The boat does not stand on its blocks: its centre of weight lies beyond them. Check their places, and shore it "
    "first.")};
inline constexpr Phrase boatOverhead{FAYLINE_TEXT(
    "plan",
    "Shore and block the boat for itself before anyone is under it. Local rules and licensed practice come first.")};
inline constexpr Phrase boatOverheadWhy{FAYLINE_TEXT("plan", "It is taken as rigid, on blocks that only push.")};

}  // namespace fayline::plan::texts
