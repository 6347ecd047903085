// What is said of the stacks that could be glued: which one is named and why, why one cannot be, what the stock gives.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

inline constexpr Phrase fewestWith{FAYLINE_TEXT("plan", "%1: the fewest with %2.")};
inline constexpr Phrase fewestMixedWith{FAYLINE_TEXT("plan", "%1: mixed, the fewest with %2.")};
inline constexpr Phrase leastBent{FAYLINE_TEXT("plan", "%1: the least bent of all (%2 of breaking).")};
inline constexpr Phrase withBend{FAYLINE_TEXT("plan", "bend %1 of breaking (at most %2)")};
inline constexpr Phrase withSpares{FAYLINE_TEXT_N("plan", "%1 spare (at most %2)"),
                                   FAYLINE_TEXT_N("plan", "%1 spares (at most %2)")};
inline constexpr Phrase withSpringback{FAYLINE_TEXT("plan", "springback %1 (at most %2)")};
inline constexpr Phrase withEndPull{FAYLINE_TEXT("plan", "end pull %1 (at most %2)")};
inline constexpr Phrase noneBendsSoLittle{FAYLINE_TEXT("plan", "None of them bends to less than %1 of breaking.")};
inline constexpr Phrase noneWithOneSpare{FAYLINE_TEXT("plan", "None of these also manages with one spare.")};
inline constexpr Phrase noneSpringsSoLittle{FAYLINE_TEXT("plan", "None of these also springs back so little.")};
inline constexpr Phrase noneEasyToPull{
    FAYLINE_TEXT("plan", "None of these also has ends that your strongest tool can pull down.")};
inline constexpr Phrase haveItNow{FAYLINE_TEXT("plan", "You have it now.")};

// Why one cannot be, as it stands within a sentence.
inline constexpr Phrase noBoardLargeEnough{FAYLINE_TEXT("plan", "no board is large enough")};
inline constexpr Phrase noRoomInside{FAYLINE_TEXT("plan", "no room for it on the inside of the bend")};
inline constexpr Phrase meetsItself{FAYLINE_TEXT("plan", "it runs into itself")};
inline constexpr Phrase noFormHolds{FAYLINE_TEXT("plan", "no form makes it keep the bend")};
inline constexpr Phrase aStripBreaks{FAYLINE_TEXT("plan", "a strip breaks")};
inline constexpr Phrase thirdBreak{FAYLINE_TEXT("plan", "more than a third would break")};
inline constexpr Phrase breaksOnItsForm{FAYLINE_TEXT("plan", "a strip breaks on its form")};

inline constexpr Phrase stockTooSmall{FAYLINE_TEXT(
    "plan",
    "No board of %1 gives strips %2 wide. Use one that thick, ripped off its edge, or that wide and %3 thick.")};
inline constexpr Phrase stripsNotFromStock{
    FAYLINE_TEXT("plan", "No board is large enough for strips %1 thick. Use strips that the boards give.")};
inline constexpr Phrase choicesShowThem{FAYLINE_TEXT("plan", "The choices show what the boards do give.")};

}  // namespace fayline::plan::texts
